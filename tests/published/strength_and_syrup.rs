//! Letting down, syrups and sharpening.
//!
//! Sources: OIML R 22 (1975) and ICUMSA (Bubník et al. 1995), worked out from them once more by a separate
//! script that was not kept; 27 CFR 30.66, Table 6, for contraction; Karadeniz, Turk J Agric For 2004;28:267–271, for orange.

use meniscus::book::{Measured, Taken, ingredient};
use meniscus::craft::pour::{litre_of, pour};
use meniscus::craft::sharpen::{from_titration, instead as acid_instead, sharpen};
use meniscus::craft::strength::{CutProblem, cut, cut_to_fill};
use meniscus::craft::syrup::{
    Correction, Syrup, brix_by_volume, brix_by_weight, correct, instead, make, over_the_limit, yielded,
};
use meniscus::quantity::{Abv, Acidity, Amount, Brix, Mass, Ratio, Temperature, Volume};
use meniscus::substance::acid::Acid;

use crate::near;

fn percent(value: f64) -> Abv {
    Abv::from_fraction(value / 100.0).expect("a strength")
}

fn brix(degrees: f64) -> Brix {
    Brix::from_degrees(degrees).expect("a sweetness")
}

fn grams(g: f64) -> Mass {
    Mass::from_g(g).expect("a mass")
}

/// 1000 ml at 50 % to 40 %: 254.9 g or 255.4 ml of water, 1250.0 ml in all. Tolerance 0.2.
#[test]
fn fifty_to_forty() {
    let made = cut(Volume::LITRE, percent(50.0), percent(40.0)).expect("weaker");
    near(made.water.g(), 254.9, 0.2, "g");
    near(made.water_volume.ml(), 255.4, 0.2, "ml");
    near(made.total.ml(), 1250.0, 0.2, "ml");
    near(made.contraction.ml(), 5.4, 0.2, "ml lost");
    assert_eq!(cut(Volume::LITRE, percent(40.0), percent(40.0)), Err(CutProblem::NotWeaker));
    assert_eq!(cut(Volume::LITRE, percent(40.0), percent(0.0)), Err(CutProblem::ToNothing));
}

/// The same to fill a bottle of 700 ml: 560 ml of spirit and 142.7 g, 143.0 ml, of water, of which 3.0 ml are lost.
#[test]
fn fifty_to_forty_in_a_bottle() {
    let (spirit, made) = cut_to_fill(Volume::whole_ml(700), percent(50.0), percent(40.0)).expect("weaker");
    near(spirit.ml(), 560.0, 0.1, "ml of spirit");
    near(made.water.g(), 254.9 * 0.56, 0.1, "g");
    near(made.water_volume.ml(), 255.4 * 0.56, 0.1, "ml of water");
    near(made.total.ml(), 700.0, 1e-9, "ml");
    near(made.contraction.ml(), 5.4 * 0.56, 0.05, "ml lost");
    near(made.contraction.ml(), spirit.ml() + made.water_volume.ml() - 700.0, 1e-9, "ml lost, as they add up");
    assert_eq!(cut_to_fill(Volume::LITRE, percent(40.0), percent(50.0)), Err(CutProblem::NotWeaker));
    assert!(CutProblem::NotWeaker.to_string().starts_with("Water only makes it weaker."));
    assert!(CutProblem::ToNothing.to_string().starts_with("No amount of water"));
}

/// 95 to 40 % takes 144.45 volumes of water to 100, not 137.5; 30 to 15 % takes 99.68, not 100 (from the formula;
/// at 60 °F, so to 0.3 here at 20 °C).
#[test]
fn the_naive_sum_errs_both_ways() {
    let water = |from, to| cut(Volume::whole_ml(100), percent(from), percent(to)).expect("weaker").water_volume.ml();
    near(water(95.0, 40.0), 144.45, 0.3, "volumes");
    near(water(30.0, 15.0), 99.68, 0.3, "volumes");
}

/// By weight 1:1 is 50.00 and 2:1 66.67 °Bx; 1:1 by the cup 45.85. Yields of a kilogram of sugar: 1626.5 ml at 1:1
/// and 1130.6 at 2:1 (2261.2 ml of two).
#[test]
fn ratios_and_yields() {
    let ratio = |value| Ratio::from_value(value).expect("a ratio");
    near(brix_by_weight(ratio(1.0)).expect("possible").degrees(), 50.0, 1e-9, "°Bx");
    near(brix_by_weight(ratio(2.0)).expect("possible").degrees(), 66.67, 0.005, "°Bx");
    near(brix_by_weight(ratio(1.5)).expect("possible").degrees(), 60.0, 1e-9, "°Bx");
    near(brix_by_volume(ratio(1.0)).expect("possible").degrees(), 45.85, 0.05, "°Bx");
    near(brix_by_volume(ratio(2.0)).expect("possible").degrees(), 62.9, 0.05, "°Bx");
    let volume = |sugar, water| yielded(Syrup { sugar: grams(sugar), water: grams(water) }).expect("in range").ml();
    near(volume(1000.0, 1000.0), 1626.5, 0.5, "ml");
    near(volume(2000.0, 1000.0), 2261.2, 0.5, "ml");
    near(volume(200.0, 236.2), 361.3, 0.5, "ml");
}

/// A litre of 50 °Bx: 614.8 g of sugar and as much water.
#[test]
fn a_litre_of_simple() {
    let made = make(Volume::LITRE, brix(50.0)).expect("in range");
    near(made.sugar.g(), 614.8, 0.1, "g");
    near(made.water.g(), 614.8, 0.1, "g");
}

/// Corrections come back: after adding, the sweetness is the one wanted (mass balance).
#[test]
fn a_syrup_that_measures_wrong() {
    let mass = grams(1000.0);
    let Some(Correction::Sugar(sugar)) = correct(mass, brix(45.0), brix(50.0)) else { panic!("sugar") };
    near((450.0 + sugar.g()) / (1000.0 + sugar.g()), 0.5, 1e-12, "Brix");
    let Some(Correction::Water(water)) = correct(mass, brix(55.0), brix(50.0)) else { panic!("water") };
    near(550.0 / (1000.0 + water.g()), 0.5, 1e-12, "Brix");
    assert_eq!(correct(mass, brix(50.0), brix(100.0)), None);
}

/// Sugar of 2:1 is 884.5 g/l and of 1:1 614.8 (ICUMSA), so 1 of 2:1 is 1.4387 of 1:1.
#[test]
fn out_of_rich_syrup() {
    let taken = |key| Taken { ingredient: ingredient(key).expect("a syrup"), measured: Measured::default() };
    let rich = pour(&taken("rich-syrup"), Amount::Volume(Volume::whole_ml(100))).expect("poured");
    let simple = instead(&rich, &litre_of(&taken("simple-syrup"))).expect("sweet");
    near(simple.times.value() * 1000.0, 100.0 * 884.5 / 614.8, 0.05, "ml");
    let dry = instead(&rich, &litre_of(&taken("sugar"))).expect("sweet");
    near(dry.mix.mass().g(), 88.45, 0.01, "g of sugar");
    // 1326.8 − 884.5 g of water to the litre.
    near(dry.more_water, -44.23, 0.02, "g of water");
    let fridge = Temperature::from_celsius(4.0).expect("a temperature");
    near(over_the_limit(brix(200.0 / 3.0), fridge).expect("in range").expect("over"), 1.87, 0.005, "°Bx over");
    assert_eq!(over_the_limit(brix(50.0), fridge), Ok(None));
    // What is at the limit stays dissolved.
    assert_eq!(over_the_limit(meniscus::substance::sucrose::solubility(fridge).expect("in range"), fridge), Ok(None));
}

/// Orange of 13.28 g/l citric and 7.79 malic (Karadeniz 2004) titrates as 20.72 g/l citric; to 60 g/l it takes
/// 40.75 g to the litre there was.
#[test]
fn orange_as_sour_as_lime() {
    let g_per_l = |value| Acidity::from_g_per_l(value).expect("an acidity");
    let malic = 7.79 * Acid::Citric.equivalent_mass() / Acid::Malic.equivalent_mass();
    near(13.28 + malic, 20.72, 0.005, "g/l");
    let measured = Measured { acid: Some(g_per_l(20.72)), ..Measured::default() };
    let taken = Taken { ingredient: ingredient("orange-juice").expect("a juice"), measured };
    let juice = pour(&taken, Amount::Volume(Volume::LITRE)).expect("poured");
    let dose = |to| {
        sharpen(&juice, g_per_l(to), &[(ingredient("citric-acid").expect("an acid"), 1.0)]).expect("possible")[0].1
    };
    near(dose(60.0).g(), 40.75, 0.05, "g");
    assert_eq!(dose(20.0), Mass::ZERO);
}

/// 45 ml of 0.1 N base to 5 ml of juice: 57.64 g/l as citric, 60.34 as malic.
#[test]
fn a_titration_reads_as_either_acid() {
    let read = |acid| from_titration(Volume::whole_ml(45), 0.1, Volume::whole_ml(5), acid).expect("a sample").g_per_l();
    near(read(Acid::Citric), 57.64, 0.05, "g/l");
    near(read(Acid::Malic), 60.34, 0.05, "g/l");
    // By molar mass, 40 g of citric acid are 43.75 g of its monohydrate, and 64.04 g titrate as 75.045 g tartaric.
    let powder = |key| ingredient(key).expect("an acid");
    let of = |g, key| acid_instead(grams(g), powder("citric-acid"), powder(key)).expect("possible").g();
    near(of(40.0, "citric-monohydrate"), 43.75, 0.02, "g");
    near(of(64.04, "tartaric-acid"), 75.045, 0.005, "g");
    assert_eq!(acid_instead(grams(1.0), powder("citric-acid"), powder("sugar")), None);
    assert_eq!(from_titration(Volume::whole_ml(45), 0.1, Volume::ZERO, Acid::Citric), None);
}
