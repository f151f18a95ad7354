//! What the trade computes, worked by hand: each sum stands beside it.

use meniscus::book::{Holds, Ingredient, LIBRARY, Measured, Taken, ingredient};
use meniscus::craft::balance::{balance, share};
use meniscus::craft::cordial::{Fill, FromJuice, Miss, Swap, swap, to_target};
use meniscus::craft::fruit::{Product, how_many, measured_share, share_of};
use meniscus::craft::milk_wash::{verdict, washed};
use meniscus::craft::pour::{fits, litre_of, pour, standard};
use meniscus::quantity::{Abv, Acidity, Amount, Brix, Mass, Ratio, Temperature, Volume};
use meniscus::substance::acid::Acid;
use meniscus::substance::fruit::Fruit;
use meniscus::substance::milk::{MEQ_TO_CLOT, Milk, WATER_KG_PER_L, ph_with_milk};
use meniscus::substance::mix::Mix;
use meniscus::substance::sucrose;

use crate::near;

fn grams(g: f64) -> Mass {
    Mass::from_g(g).expect("a mass")
}

fn ml(ml: f64) -> Volume {
    Volume::from_ml(ml).expect("a volume")
}

fn celsius(t: f64) -> Temperature {
    Temperature::from_celsius(t).expect("a temperature")
}

fn row(key: &str) -> &'static Ingredient {
    ingredient(key).expect("in the library")
}

fn poured(key: &str, volume: f64) -> Mix {
    pour(&Taken { ingredient: row(key), measured: Measured::default() }, Amount::Volume(ml(volume))).expect("poured")
}

/// Sucrose in water.
fn sweet(sugar: f64, water: f64) -> Mix {
    let mut mix = Mix::water(grams(water));
    mix.sucrose = grams(sugar);
    mix
}

/// Of 1 g citric acid and 1 g malic acid, the citric brings 1 / (1 + 64.04 / 67.045) = 51.1 % of what titrates, not half.
#[test]
fn a_share_of_acid_goes_by_equivalents() {
    let (citric, malic) = (Mix::acid(Acid::Citric, grams(1.0)), Mix::acid(Acid::Malic, grams(1.0)));
    let whole = citric + malic + sweet(30.0, 100.0);
    near(share(&citric, &whole).acid, 1.0 / (1.0 + 64.04 / 67.045), 1e-4, "citric");
    near(share(&malic, &whole).acid, 1.0 - 1.0 / (1.0 + 64.04 / 67.045), 1e-4, "malic");
    near(share(&sweet(10.0, 0.0), &whole).sugar, 1.0 / 3.0, 1e-12, "sugar");
    // Nothing of nothing.
    let of_water = share(&Mix::water(grams(1.0)), &Mix::water(grams(4.0)));
    assert_eq!((of_water.ethanol, of_water.sugar, of_water.acid), (0.0, 0.0, 0.0));
    near(of_water.volume, 0.25, 1e-12, "volume");
    near(share(&Mix::default(), &Mix::default()).volume, 0.0, 1e-12, "nothing of nothing");
}

/// 60 g of sugar and 6 g of citric acid are 10 to 1. What has no acid has no such ratio and no pH; nor has sugar of less than
/// half a gram to the litre a ratio, nor milk a pH.
#[test]
fn what_has_a_ratio_and_a_ph() {
    let sour = sweet(60.0, 900.0) + Mix::acid(Acid::Citric, grams(6.0));
    let of_sour = balance(&sour);
    near(of_sour.sugar_to_acid.expect("both"), 10.0, 1e-9, "sugar to acid");
    assert!(of_sour.ph.is_some());
    let of_syrup = balance(&sweet(500.0, 500.0));
    assert_eq!((of_syrup.sugar_to_acid, of_syrup.ph), (None, None));
    let of_acid = balance(&(sweet(0.4, 1000.0) + Mix::acid(Acid::Citric, grams(6.0))));
    assert_eq!(of_acid.sugar_to_acid, None);
    assert!(of_acid.ph.is_some());
    let mut with_milk = sour;
    with_milk.milk = grams(30.0);
    assert_eq!(balance(&with_milk).ph, None);
}

/// A trace of alcohol, 0.2 % by mass, is read through; more is not.
#[test]
fn a_reading_through_a_trace() {
    for (ethanol, is_read) in [(1.9, true), (2.05, false)] {
        let mut mix = sweet(100.0, 900.0 - ethanol);
        mix.ethanol = grams(ethanol);
        assert_eq!(mix.reads().is_some(), is_read, "{ethanol} g in a kilogram");
    }
    near(sweet(100.0, 900.0).reads().expect("a reading").degrees(), 10.0, 1e-9, "°Bx");
}

/// A million limes are counted, no more; and no fruit gives more than itself.
#[test]
fn fruit_by_the_million() {
    let each = grams(65.0);
    assert_eq!(how_many(grams(65e6), each), Some(1_000_000));
    assert_eq!((how_many(grams(65e6 + 1.0), each), how_many(each, Mass::ZERO)), (None, None));
    // 66 g are two of them, 65 g one.
    assert_eq!((how_many(grams(66.0), each), how_many(each, each)), (Some(2), Some(1)));
    assert_eq!(measured_share(grams(10.0), grams(10.0)), Some(Ratio::ONE));
    assert_eq!((measured_share(grams(10.1), grams(10.0)), measured_share(Mass::ZERO, Mass::ZERO)), (None, None));
}

/// Lime: of the fruit 45 % becomes juice and of that 90 % comes through a fine filter: 40.5 %, at least 0.35 × 0.80, at most
/// 0.55 × 0.95.
#[test]
fn filtered_juice() {
    for (found, expected) in share_of(Fruit::of("lime"), Product::Filtered).into_iter().zip([0.28, 0.405, 0.5225]) {
        near(found, expected, 1e-9, "share of the fruit");
    }
}

/// A spoon of granulated sugar is weighed as it lies: a US cup, 236.588 ml, is 200 g. Other powders are not poured.
#[test]
fn sugar_by_the_cup() {
    near(poured("sugar", 236.588).sugar().g(), 200.0, 0.001, "sugar");
    let acid = Taken { ingredient: row("citric-acid"), measured: Measured::default() };
    assert_eq!(pour(&acid, Amount::Volume(ml(5.0))), None);
    near(pour(&acid, Amount::Mass(grams(5.0))).expect("weighed").acids().g(), 5.0, 1e-12, "acid");
    // What is measured of a drink says nothing of a powder.
    let measured = Measured { strength: Abv::from_fraction(0.4).ok(), ..Measured::default() };
    assert_eq!(litre_of(&Taken { ingredient: row("sugar"), measured }), standard(row("sugar")));
}

/// What is known of a litre goes in as it is: 20 g of solids take up 0.62 ml each, sugar is of the ingredient's kind, and water
/// fills the litre. What is said of a powder is not held against it.
#[test]
fn what_is_known_of_a_litre() {
    let of = |key, measured| litre_of(&Taken { ingredient: row(key), measured });
    let holds = Holds { solids: Some(grams(20.0)), ..Holds::default() };
    let juice = of("lime-juice", Measured { holds, ..Measured::default() });
    near(juice.other.g(), 20.0, 1e-12, "solids");
    near(juice.room.ml(), 12.4, 1e-9, "their room");
    let sweet = Measured { sugar_per_litre: Mass::from_g(300.0).ok(), ..Measured::default() };
    let (honey, syrup) = (of("honey-syrup", sweet), of("simple-syrup", sweet));
    assert_eq!((honey.invert_sugar, honey.sucrose), (grams(300.0), Mass::ZERO));
    assert_eq!((syrup.invert_sugar, syrup.sucrose), (Mass::ZERO, grams(300.0)));
    for litre in [juice, honey, syrup] {
        near(litre.volume(Temperature::TWENTY).expect("in range").ml(), 1000.0, 1e-6, "ml");
    }
    let reads = Measured { reads: Brix::from_degrees(50.0).ok(), ..Measured::default() };
    assert!(fits(&Taken { ingredient: row("sugar"), measured: reads }));
    assert!(fits(&Taken { ingredient: row("simple-syrup"), measured: reads }));
    assert!(fits(&Taken { ingredient: row("lime-juice"), measured: Measured::default() }));
}

/// 200 ml of whole milk in a drink: of its 206 g, 87.3 % is water and 6.3 % curd; the other 6.4 %, 13.18 g, take up 0.62 ml
/// to the gram, 8.17 ml. The water counts where the pH is worked out: 100 g of drink and 899 g of a litre of milk.
#[test]
fn milk_brings_its_water() {
    let drink = Mix::water(grams(100.0)) + Mix::acid(Acid::Citric, grams(8.0));
    let after = washed(&drink, ml(200.0), Milk::of("whole"));
    near(after.liquid.water.g(), 100.0 + 206.0 * 0.873, 1e-9, "water");
    near(after.liquid.other.g(), 13.184, 1e-9, "what is dissolved of milk");
    near(after.liquid.room.ml(), 13.184 * 0.62, 1e-9, "the room of that");
    near(WATER_KG_PER_L, 0.899, 0.0005, "kg of water to the litre");
    let acids = [(Acid::Citric, 8.0 / 192.12)];
    let mut salted = drink;
    salted.cations = Ratio::from_value(20.0).expect("mmol");
    for (drink, moles) in [(drink, 0.0), (salted, 0.02)] {
        for (found, meq) in verdict(&drink, Volume::LITRE).ph.into_iter().zip(MEQ_TO_CLOT) {
            near(found, ph_with_milk(&acids, moles, 0.1 + 1.03 * 0.873, Volume::LITRE, meq), 1e-9, "pH");
        }
    }
}

const NEAR_ENOUGH: f64 = 1e-5;

/// Two parts of citric to one of lactic acid that is sold at 80 %: a gram of the blend titrates as
/// 2/3 + 1/3 × 0.8 × 64.04 / 90.08 = 0.856 g of citric acid.
#[test]
fn a_cordial_with_two_acids() {
    let parts = [(row("citric-acid"), 2.0), (row("lactic-acid"), 1.0)];
    let juice = poured("pear-juice", 1000.0);
    let (reads, acidity) = (Brix::from_degrees(36.0).expect("brix"), Acidity::from_g_per_l(20.0).expect("g/l"));
    let made = to_target(&juice, reads, acidity, &parts).expect("a cordial");
    near(made.mix.titratable_acidity().expect("acid").g_per_l(), 20.0, NEAR_ENOUGH, "g/l");
    near(made.mix.reads().expect("a reading").degrees(), 36.0, NEAR_ENOUGH, "°Bx");
    let [(_, citric), (_, lactic)] = made.acids[..] else { panic!("two acids") };
    near(citric.g() / lactic.g(), 2.0, 1e-9, "citric to lactic");
    let added = made.mix.titratable().g() - juice.titratable().g();
    near(added / (citric.g() + lactic.g()), 2.0 / 3.0 + 0.8 / 3.0 * 64.04 / 90.08, 1e-4, "strength of the blend");
    // The same in a swap.
    let fresh = poured("pear-juice", 30.0) + poured("lemon-juice", 20.0) + poured("rich-syrup", 10.0);
    let from = FromJuice { litre: juice, before: ml(30.0), fill: Fill::Juice };
    let swapped = swap(&fresh, &from, None, &parts, celsius(4.0)).expect("a swap");
    near(swapped.mix.titratable().g(), fresh.titratable().g(), 1e-6, "titrates, swapped");
}

/// A juice that has more acid, or more sugar, than is asked for keeps it, and it is said; the other target is met all the
/// same. Exactly what it has by itself is not too much. Nothing is sweeter than 85 °Bx, and sugar makes nothing sour.
#[test]
fn a_juice_that_is_enough_by_itself() {
    let citric = [(row("citric-acid"), 1.0)];
    let of = |juice: &Mix, reads: f64, acid: f64| {
        let (reads, acid) = (Brix::from_degrees(reads).expect("brix"), Acidity::from_g_per_l(acid).expect("g/l"));
        to_target(juice, reads, acid, &citric)
    };
    let lemon = poured("lemon-juice", 500.0);
    let sour = of(&lemon, 40.0, 5.0).expect("a cordial");
    assert_eq!((sour.is_too_sour, sour.is_too_sweet), (true, false));
    near(sour.mix.reads().expect("a reading").degrees(), 40.0, NEAR_ENOUGH, "°Bx of what is too sour");
    near(sour.acids[0].1.g(), 0.0, 1e-12, "acid to what is too sour");
    let syrup = poured("simple-syrup", 500.0);
    let too_sweet = of(&syrup, 20.0, 30.0).expect("a cordial");
    assert_eq!((too_sweet.is_too_sour, too_sweet.is_too_sweet), (false, true));
    near(too_sweet.mix.titratable_acidity().expect("acid").g_per_l(), 30.0, NEAR_ENOUGH, "g/l of what is too sweet");
    near(too_sweet.sugar.g(), 0.0, 1e-12, "sugar to what is too sweet");
    let (reads, titrates) = (lemon.shows(), lemon.titratable_acidity().expect("acid").g_per_l());
    let itself = of(&lemon, reads, titrates).expect("a cordial");
    assert_eq!((itself.is_too_sour, itself.is_too_sweet), (false, false));
    near(itself.mix.mass().g(), lemon.mass().g(), 1e-6, "nothing added");
    assert_eq!(of(&lemon, 87.0, 60.0), None);
    let sugar = [(row("sugar"), 1.0)];
    let (reads, acid) = (Brix::from_degrees(40.0).expect("brix"), Acidity::from_g_per_l(60.0).expect("g/l"));
    assert_eq!(to_target(&lemon, reads, acid, &sugar), None);
    // A tank of 10 000 l is a cordial too.
    let tank = of(&(lemon * Ratio::from_value(20_000.0).expect("a factor")), 40.0, 60.0).expect("a cordial");
    near(tank.mix.reads().expect("a reading").degrees(), 40.0, NEAR_ENOUGH, "°Bx of a tank");
}

fn swapped(replaced: &Mix, litre: Mix, before: f64, fill: Fill) -> Swap {
    let from = FromJuice { litre, before: ml(before), fill };
    swap(replaced, &from, None, &[(row("citric-acid"), 1.0)], celsius(4.0)).expect("a swap")
}

/// With water to fill up, there is as much juice as before; with juice, more.
#[test]
fn as_much_juice_as_before() {
    let fresh = poured("pear-juice", 30.0) + poured("lemon-juice", 15.0) + poured("rich-syrup", 15.0);
    let pear = standard(row("pear-juice"));
    near(swapped(&fresh, pear, 30.0, Fill::Water).juice.ml(), 30.0, 1e-9, "juice, filled with water");
    let filled = swapped(&fresh, pear, 30.0, Fill::Juice);
    assert!(filled.juice.ml() > 40.0, "{}", filled.juice.ml());
    near(filled.water.g(), 0.0, 1e-6, "water beside juice that fills");
    // Juice in place of juice is that juice.
    let itself = swapped(&poured("pear-juice", 60.0), pear, 60.0, Fill::Juice);
    assert_eq!(itself.misses, []);
    near(itself.juice.ml(), 60.0, 1e-6, "juice for juice");
}

/// A juice with 100 g of sugar in what is told as a litre, in place of a drink with 2 g: 20 ml of it are as sweet. It is the
/// sugar that stands against more, also where neither has acid; and the acid where the juice is a lemon's.
#[test]
fn less_juice_where_it_is_too_sweet_or_too_sour() {
    let thin = sweet(2.0, 98.0);
    let litre = sweet(100.0, 900.0);
    for fill in [Fill::Juice, Fill::Water] {
        let made = swapped(&thin, litre, 60.0, fill);
        assert_eq!(made.misses, [Miss::JuiceTooSweet]);
        near(made.juice.ml(), 20.0, 1e-9, "juice");
        near(made.mix.sugar().g(), 2.0, 1e-9, "sugar");
        near(made.pour.ml(), thin.volume(Temperature::TWENTY).expect("a volume").ml(), 1e-4, "pour");
    }
    let sour = sweet(30.0, 100.0) + Mix::acid(Acid::Citric, grams(0.5));
    assert_eq!(swapped(&sour, standard(row("lemon-juice")), 60.0, Fill::Water).misses, [Miss::JuiceTooSour]);
}

/// 30.5 ml of juice in place of 30, with sugar and acid to spare, are half a millilitre too much, and it is said.
#[test]
fn half_a_millilitre_too_much() {
    let fresh = poured("pear-juice", 30.0) + sweet(5.0, 0.0) + Mix::acid(Acid::Citric, grams(0.5));
    let made = swapped(&fresh, standard(row("pear-juice")), 30.5, Fill::Water);
    assert_eq!(made.misses, [Miss::TooMuchWater]);
    near(made.pour.ml() - made.wanted.ml(), 0.46, 0.03, "ml too much");
    near(made.water.g(), 0.0, 1e-12, "no water on top");
}

/// At 4 °C water holds 64.80 % of sugar (Bubník and Kadlec 1995): what is sweeter gets water to that, and a larger pour.
#[test]
fn crystals_in_the_fridge() {
    let fresh = sweet(70.0, 28.0) + Mix::acid(Acid::Citric, grams(0.5)) + poured("pear-juice", 5.0);
    let made = swapped(&fresh, standard(row("pear-juice")), 5.0, Fill::Water);
    let limit = sucrose::solubility(celsius(4.0)).expect("in range").degrees();
    near(limit, 64.80, 0.005, "% at 4 °C");
    assert_eq!(made.misses, [Miss::Crystals(limit)]);
    near(made.mix.sugar_in_water().fraction() * 100.0, limit, 1e-9, "% of sugar and water");
    near(made.mix.sugar().g(), fresh.sugar().g(), 1e-9, "sugar");
    assert!(made.pour.ml() > made.wanted.ml());
}

/// A litre of a milk is its acids, at 0.60 ml a gram, and for the rest milk: together a litre.
#[test]
fn a_litre_of_milk() {
    for row in LIBRARY.iter().filter(|row| row.is_milk) {
        let litre = standard(row);
        near(litre.volume(Temperature::TWENTY).expect("a volume").ml(), 1000.0, 1e-6, row.key);
        let acids: f64 = row.acids.iter().map(|(_, g)| g * 0.60).sum();
        near(litre.milk.g() * row.other_room, 1000.0 - acids, 1e-6, row.key);
    }
}
