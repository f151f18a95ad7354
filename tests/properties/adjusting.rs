//! What is adjusted reads as it was asked to, and nothing is lost on the way.

use proptest::prelude::*;

use meniscus::book::{Ingredient, Kind, LIBRARY, Measured, Taken, ingredient, named};
use meniscus::craft::pour::{fits, litre_of, pour};
use meniscus::craft::sharpen::{sharpen, with_powders};
use meniscus::craft::strength::cut_to_fill;
use meniscus::craft::syrup::{Correction, correct, instead, make_mass, with_sugar};
use meniscus::quantity::{Abv, Acidity, Amount, Brix, Mass, Ratio, Temperature, Volume};
use meniscus::substance::juice::acid_correction;
use meniscus::substance::mix::Mix;
use meniscus::text::{
    Decimal, Dimension, read_milk_ratio, read_sides, read_strength, read_sweetness, read_taken, read_temperature,
    whole_figures,
};
use meniscus::tool::shelf::settings::ShelfForm;

fn rows() -> impl Strategy<Value = &'static Ingredient> {
    (0..LIBRARY.len()).prop_map(|at| &LIBRARY[at])
}

fn poured(row: &'static Ingredient, ml: f64) -> Option<Mix> {
    let taken = Taken { ingredient: row, measured: Measured::default() };
    pour(&taken, Amount::Volume(Volume::from_ml(ml).expect("ml")))
}

proptest! {
    #[test]
    fn a_sharpened_liquid_reads_the_acidity_wanted(
        row in rows(), ml in 1.0_f64..5000.0, to in 1.0_f64..120.0, parts in prop::collection::vec(0.1_f64..5.0, 1..4)
    ) {
        let Some(liquid) = poured(row, ml) else { return Ok(()) };
        prop_assume!(liquid.titratable_acidity().expect("possible").g_per_l() < to);
        let powders = ["citric-acid", "malic-acid", "lactic-acid"].map(|key| ingredient(key).expect("a powder"));
        let parts: Vec<(&'static Ingredient, f64)> = powders.into_iter().zip(parts).collect();
        let acids = sharpen(&liquid, Acidity::from_g_per_l(to).expect("an acidity"), &parts).expect("reachable");
        let made = with_powders(liquid, &acids);
        let reads = made.titratable_acidity().expect("possible").g_per_l();
        prop_assert!((reads - to).abs() < 1e-6 * to, "{} for {to}", reads);
        prop_assert!((made.ethanol.g() - liquid.ethanol.g()).abs() < 1e-9);
        prop_assert!((made.sugar().g() - liquid.sugar().g()).abs() < 1e-9);
    }

    #[test]
    fn a_swapped_sweetener_keeps_its_sugar(from in rows(), to in rows(), ml in 0.5_f64..2000.0) {
        let Some(was) = poured(from, ml) else { return Ok(()) };
        let litre = litre_of(&Taken { ingredient: to, measured: Measured::default() });
        prop_assume!(was.sugar().g() > 0.0);
        match instead(&was, &litre) {
            Some(made) => {
                prop_assert!((made.mix.sugar().g() - was.sugar().g()).abs() < 1e-9 * was.sugar().g());
                prop_assert!((made.mix.water.g() - was.water.g() - made.more_water).abs() < 1e-6);
            }
            None => prop_assert!(litre.sugar().g() <= 0.0),
        }
    }

    #[test]
    fn a_bottle_filled_is_full_and_as_strong_as_wanted(ml in 10.0_f64..10_000.0, from in 0.2_f64..0.96, part in 0.1_f64..0.95) {
        let (total, from) = (Volume::from_ml(ml).expect("ml"), Abv::from_fraction(from).expect("a strength"));
        let to = Abv::from_fraction(from.fraction() * part).expect("a strength");
        let (spirit, made) = cut_to_fill(total, from, to).expect("weaker");
        let mix = Mix::spirit(spirit, from) + Mix::water(made.water);
        prop_assert!((mix.volume(Temperature::TWENTY).expect("in range").ml() - ml).abs() < 1e-6 * ml);
        prop_assert!((mix.strength().fraction() - to.fraction()).abs() < 1e-8);
    }

    #[test]
    fn a_syrup_put_right_reads_right(grams in 1.0_f64..5000.0, have in 1.0_f64..84.0, want in 1.0_f64..84.0) {
        let brix = |degrees| Brix::from_degrees(degrees).expect("degrees");
        let mass = Mass::from_g(grams).expect("a mass");
        let syrup = make_mass(mass, brix(have)).expect("possible");
        let (sugar, water) = match correct(mass, brix(have), brix(want)).expect("possible") {
            Correction::Sugar(sugar) => (syrup.sugar.g() + sugar.g(), syrup.water.g()),
            Correction::Water(water) => (syrup.sugar.g(), syrup.water.g() + water.g()),
        };
        prop_assert!((100.0 * sugar / (sugar + water) - want).abs() < 1e-9 * want.max(1.0));
        let again = with_sugar(syrup.sugar, brix(have)).expect("possible");
        prop_assert!((again.water.g() - syrup.water.g()).abs() < 1e-9 * grams);
    }

    #[test]
    fn what_was_measured_goes_before_the_library(row in rows(), abv in 0.0_f64..0.5, sugar in 0.0_f64..400.0, acid in 0.5_f64..60.0) {
        prop_assume!(row.kind != Kind::Powder && !row.is_milk && row.other < 100.0);
        let measured = Measured {
            strength: Abv::from_fraction(abv).ok(),
            sugar_per_litre: Mass::from_g(sugar).ok(),
            acid: Acidity::from_g_per_l(acid).ok(),
            ..Measured::default()
        };
        let litre = litre_of(&Taken { ingredient: row, measured });
        prop_assert!((litre.volume(Temperature::TWENTY).expect("in range").ml() - 1000.0).abs() < 1e-3);
        prop_assert!((litre.strength().fraction() - abv).abs() < 1e-6);
        prop_assert!((litre.g_per_l(litre.sugar()) - sugar).abs() < 1e-3);
        prop_assert!((litre.titratable_acidity().expect("possible").g_per_l() - acid).abs() < 1e-4);
        let by_degrees = Measured { reads: Brix::from_degrees(sugar / 8.0).ok(), ..Measured::default() };
        let taken = Taken { ingredient: row, measured: by_degrees };
        let litre = litre_of(&taken);
        prop_assume!(litre.water.g() > 0.0 && fits(&taken));
        let percent = |mass: Mass| 100.0 * mass.g() / litre.mass().g();
        let shown = percent(litre.dissolved()) - acid_correction(percent(litre.titratable()));
        prop_assert!((shown - sugar / 8.0).abs() < 0.06, "{}: {shown}", row.key);
    }

    /// All that a mix holds, written as figures behind a name, is read as the same.
    #[test]
    fn a_whole_mix_goes_through_its_figures(
        pear in 0.0..500.0_f64, lemon in 1.0..200.0_f64, honey in 0.0..200.0_f64, gin in 0.0..200.0_f64, vinegar in 0.0..100.0_f64,
    ) {
        let ml = |key: &str, ml: f64| {
            let taken = Taken { ingredient: ingredient(key).expect("known"), measured: Measured::default() };
            pour(&taken, Amount::Volume(Volume::from_ml(ml).expect("a volume"))).expect("poured")
        };
        let mix = ml("pear-juice", pear) + ml("lemon-juice", lemon) + ml("honey", honey) + ml("london-dry-gin", gin) + ml("vinegar", vinegar);
        let litre = mix * Ratio::from_value(1000.0 / mix.volume(Temperature::TWENTY).expect("a volume").ml()).expect("a ratio");
        for decimal in [Decimal::Point, Decimal::Comma] {
            let read = read_taken(&format!("cordial ({})", whole_figures(&mix, decimal)), decimal, &[]).expect("a cordial");
            let again = litre_of(&read);
            for (what, a, b) in [
                ("ethanol", again.ethanol.g(), litre.ethanol.g()),
                ("sucrose", again.sucrose.g(), litre.sucrose.g()),
                ("invert", again.invert_sugar.g(), litre.invert_sugar.g()),
                ("acids", again.acids().g(), litre.acids().g()),
                ("titrates", again.titratable().g(), litre.titratable().g()),
                ("solids", again.other.g(), litre.other.g()),
                ("salts", again.cations.value(), litre.cations.value()),
            ] {
                prop_assert!((a - b).abs() < 0.04, "{what}: {a} for {b}");
            }
            prop_assert!((again.ph().expect("a pH") - litre.ph().expect("a pH")).abs() < 0.01);
        }
    }

    #[test]
    fn no_text_breaks_a_reading(text in "\\PC{0,40}", figures in "[0-9.,:%°()a-z −/-]{0,24}") {
        for text in [text, figures] {
            let _ = named(&text);
            for decimal in [Decimal::Point, Decimal::Comma] {
                let _ = read_taken(&text, decimal, &[]);
                let bench = ShelfForm::default().bench(decimal);
                let reading = bench.reading(Dimension::Either);
                let _ = (read_sweetness(&text, &reading), read_milk_ratio(&text, &reading), read_sides(&text, &reading));
                let _ = (read_strength(&text, decimal), read_temperature(&text, decimal));
            }
        }
    }
}
