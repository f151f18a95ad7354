//! Milk and acid: casein's point, how much acid milk takes up, and pH against PHREEQC.

use meniscus::book::{Measured, Taken, ingredient};
use meniscus::craft::milk_wash::{Clots, citric_to_clot, meq_by_groups, verdict, washed};
use meniscus::craft::pour::litre_of;
use meniscus::quantity::{Acidity, Ratio, Volume};
use meniscus::substance::acid::Acid;
use meniscus::substance::milk::{
    CASEIN_CLOTS_AT, FRESH_PH, MEQ_TO_CLOT, Milk, WATER_KG_PER_L, acid_given_up, acid_taken_up, ionic_strength,
    ph_with_milk,
};
use meniscus::substance::mix::Mix;

use crate::near;

/// Litres of milk to a kilogram of water, citric acid in mmol, pH: computed with phreeqpython 1.6.2 (PHREEQC 3.7.3) from
/// the groups of our model (mmol/l: citrate 9.25, phosphate of pKa 7.198 10.4, and of pKa 5.307, 6.107, 3.607, 4.307,
/// 5.007 and 5.707 at no ionic strength 15, 9, 11, 12, 10 and 4.5), sodium so that undiluted milk has pH 6.60, Davies,
/// 25 °C, neutral species at activity 1. It checks the solver, not the model of milk.
#[allow(clippy::approx_constant)]
const PHREEQC: &[(f64, f64, f64)] = &[
    (0.1, 5.0, 4.1969),
    (0.1, 10.0, 3.4804),
    (0.1, 20.0, 2.9887),
    (0.1, 40.0, 2.6457),
    (0.1, 60.0, 2.4802),
    (0.1, 80.0, 2.3732),
    (0.1, 100.0, 2.2949),
    (0.1, 150.0, 2.1614),
    (0.2, 5.0, 4.8562),
    (0.2, 10.0, 4.1577),
    (0.2, 20.0, 3.4394),
    (0.2, 40.0, 2.9369),
    (0.2, 60.0, 2.7161),
    (0.2, 80.0, 2.5781),
    (0.2, 100.0, 2.4791),
    (0.2, 150.0, 2.3131),
    (0.25, 5.0, 5.0514),
    (0.25, 10.0, 4.3773),
    (0.25, 20.0, 3.6412),
    (0.25, 40.0, 3.0636),
    (0.25, 60.0, 2.8178),
    (0.25, 80.0, 2.6670),
    (0.25, 100.0, 2.5596),
    (0.25, 150.0, 2.3808),
    (0.5, 5.0, 5.5599),
    (0.5, 10.0, 5.0045),
    (0.5, 20.0, 4.3301),
    (0.5, 40.0, 3.6025),
    (0.5, 60.0, 3.2369),
    (0.5, 80.0, 3.0262),
    (0.5, 100.0, 2.8832),
    (0.5, 150.0, 2.6548),
    (1.0, 5.0, 5.9086),
    (1.0, 10.0, 5.5062),
    (1.0, 20.0, 4.9544),
    (1.0, 40.0, 4.2803),
    (1.0, 60.0, 3.8594),
    (1.0, 80.0, 3.5636),
    (1.0, 100.0, 3.3551),
    (1.0, 150.0, 3.0371),
];

fn litres(value: f64) -> Volume {
    Volume::from_ml(value * 1000.0).expect("a volume")
}

/// Our solver takes the ionic strength from the milk alone, which PHREEQC works out: worth 0.04 pH at most.
#[test]
fn phreeqc_agrees() {
    for &(milk, citric, ph) in PHREEQC {
        let acids = [(Acid::Citric, citric / 1000.0)];
        let ours = ph_with_milk(&acids, 0.0, 1.0, litres(milk), meq_by_groups());
        near(ours, ph, 0.04, &format!("{milk} l of milk, {citric} mmol of citric acid"));
    }
}

/// Without milk the same solver gives what PHREEQC gives for citric acid alone (phreeqpython 1.6.2: 0.1 mol/kg 2.083,
/// 0.01 mol/kg 2.623).
#[test]
fn citric_acid_alone() {
    for (moles, ph) in [(0.1, 2.083), (0.01, 2.623)] {
        near(ph_with_milk(&[(Acid::Citric, moles)], 0.0, 1.0, Volume::ZERO, 60.0), ph, 0.02, "citric acid");
    }
}

/// By hand, Davies: at an ionic strength of 0.1, √0.1 = 0.3162, log γ = −0.509 (0.3162 / 1.3162 − 0.03) = −0.1070, so that at
/// pH 2 half a kilogram of water holds 0.5 × 0.01 × 10^0.1070 = 6.397 mmol of protons, which milk does not get; nor what
/// cations hold. Half a litre of milk with 50 mmol of salts in 1.5 kg of water: (0.08 / 2 + 0.05) / 1.5 = 0.06.
#[test]
fn what_milk_does_not_get() {
    near(acid_given_up(&[], 0.0, 0.5, 0.1, 2.0), -0.006_397, 1e-6, "protons in the water");
    near(acid_given_up(&[], 0.02, 0.0, 0.1, 2.0), -0.02, 1e-12, "held by salts");
    near(ionic_strength(litres(0.5), 0.05, 1.5), 0.06, 1e-12, "ionic strength");
    // Held between what the model is for.
    near(ionic_strength(Volume::ZERO, 0.0, 1.0), 0.005, 1e-12, "least");
    near(ionic_strength(litres(1.0), 2.0, 1.0), 0.5, 1e-12, "most");
    near(ionic_strength(Volume::ZERO, 0.0, 0.0), 0.08, 1e-12, "of nothing, as of milk");
}

/// Zoller, J. Ind. Eng. Chem. 13 (1921) 510: casein clots at pH 4.6. Fox and McSweeney (1998) p. 450: milk has pH 6.5
/// to 6.7.
#[test]
fn casein_and_fresh_milk() {
    near(CASEIN_CLOTS_AT, 4.6, 1e-12, "casein");
    assert!((6.5..=6.7).contains(&FRESH_PH));
}

/// Maximum buffer index, mmol/(l pH), of whole milk and of skim milk: Indian Council of Agricultural Research, Dairy
/// e-course, lesson 24 (0.0277 and 0.0333, unit assumed).
const MOST_BUFFERING: [f64; 2] = [27.7, 33.3];

/// Milk buffers the most at about pH 5.0 to 5.1: Tomasula et al., Milchwissenschaft 54 (1999) 667–670.
#[test]
fn buffer_index() {
    let index = |ph: f64| (acid_taken_up(ph - 0.01) - acid_taken_up(ph + 0.01)) / 0.02;
    let most = (380..650).map(|ph| f64::from(ph) / 100.0).max_by(|a, b| index(*a).total_cmp(&index(*b))).expect("some");
    near(most, 5.05, 0.05, "pH of the most buffering");
    near(index(most), MOST_BUFFERING[0], MOST_BUFFERING[0] * 0.03, "buffer index");
}

/// The groups as they stand above [`PHREEQC`], from pH 6.6 to these, by a script of its own (Python): meq/l.
#[test]
fn taken_up_by_the_groups() {
    for (ph, meq) in [(6.6, 0.0), (6.0, 10.824), (5.5, 22.960), (5.05, 35.213), (4.6, 47.488), (4.0, 62.166)] {
        near(acid_taken_up(ph), meq, 0.002, &format!("to pH {ph}"));
    }
}

/// Estimate, no published datum: 60 ± 10 meq to the litre down to pH 4.6. The published maximum of the index times two
/// units of pH, 55 for whole milk and 67 for skim milk, is the most that milk can take up.
#[test]
fn acid_to_clot() {
    let [whole, skim] = MOST_BUFFERING.map(|index| index * (FRESH_PH - CASEIN_CLOTS_AT));
    let [least, likely, most] = MEQ_TO_CLOT;
    near(likely - least, 10.0, 1e-9, "below");
    near(most - likely, 10.0, 1e-9, "above");
    near(likely, 60.0, 1e-9, "likely");
    assert!(least < whole && whole < likely && likely < skim && skim < most, "the range spans both milks");
    assert!((0.8 * whole..whole).contains(&meq_by_groups()), "by groups: {}", meq_by_groups());
    // A litre of milk needs 60 meq: lime juice of 45.9 g/l of citric acid gives 1.618 meq to the mmol there, so 155 ml,
    // 129 to 181 (worked example of the reference; malic acid and salts left out).
    for (meq, ml) in MEQ_TO_CLOT.into_iter().zip([129.0, 155.0, 181.0]) {
        near(citric_to_clot(Volume::LITRE, meq).g() / 45.9 * 1000.0, ml, ml * 0.03, "lime juice");
        // phreeqpython 1.6.2: citric acid gives up 1.6190 protons at pH 4.6 and an ionic strength of 0.1.
        near(citric_to_clot(Volume::LITRE, meq).g(), meq / 1.619 * 0.192_12, meq * 6e-5, "citric acid");
    }
}

fn drink(acid: f64) -> Mix {
    let measured = Measured { acid: Acidity::from_g_per_l(acid).ok(), ..Measured::default() };
    litre_of(&Taken { ingredient: ingredient("water").expect("water"), measured })
}

#[test]
fn verdicts_stand_on_the_same_numbers() {
    let milk = litres(0.2);
    // 0.2 l of milk take up 10, 12, 14 meq: 1.29, 1.54, 1.80 g of citric acid.
    assert_eq!(verdict(&drink(2.0), milk).clots, Clots::Yes);
    assert_eq!(verdict(&drink(1.43), milk).clots, Clots::Perhaps);
    let no = verdict(&drink(0.5), milk);
    assert_eq!(no.clots, Clots::No);
    // At the ionic strength of so little milk, 0.0136, citric acid gives up 1.494 protons there
    // (phreeqpython 1.6.2: 1.495).
    near(no.citric_to_add.g(), 0.014 / 1.495 * 192.12 - 0.5, 0.01, "citric acid to add");
    // What it asks for is enough.
    assert_eq!(verdict(&drink(0.5 + no.citric_to_add.g() + 0.01), milk).clots, Clots::Yes);
}

/// 800 ml of drink with 200 ml of milk of 49 g/l lactose: 9.8 g/l (worked example of the reference). FAO's whole milk
/// has 5.0 g in 100 g, 51.5 g/l.
#[test]
fn lactose_stays() {
    let of_08 = drink(5.0) * Ratio::from_value(0.8).expect("a ratio");
    let after = washed(&of_08, litres(0.2), Milk::of("whole"));
    near(after.lactose.g(), 0.2 * 51.5, 0.01, "lactose");
    near(after.liquid.g_per_l(after.lactose), 9.8 * 51.5 / 49.0, 0.2, "lactose in the liquid");
}

/// FAO Food Composition Tables for International Use, item 250, whole milk: 87.3 g of water, 3.5 protein, 3.5 fat, 5.0
/// carbohydrate, 0.7 ash; item 254, skim milk: 90.2, 3.6, 0.4, 5.1, 0.7. Semi-skimmed milk is both mixed to 1.7 % fat.
/// Casein is about 80 % of the protein (dairy texts), 2.6 g in 100 ml (from memory).
#[test]
fn composition() {
    let whole = Milk::of("whole");
    let figures = |key: &str| {
        let milk = Milk::of(key);
        [milk.water, milk.protein, milk.fat, milk.lactose, milk.ash]
    };
    let (full, skim) = ([87.3, 3.5, 3.5, 5.0, 0.7], [90.2, 3.6, 0.4, 5.1, 0.7]);
    assert_eq!((figures("whole"), figures("skim")), (full, skim));
    let of_whole = (1.7 - 0.4) / (3.5 - 0.4);
    for (at, found) in figures("semi").into_iter().enumerate() {
        near(found, of_whole * full[at] + (1.0 - of_whole) * skim[at], 0.006, "semi-skimmed");
    }
    // 1.030 kg to the litre (from memory).
    near(WATER_KG_PER_L, 0.90, 0.002, "water in a litre");
    near(whole.water + whole.protein + whole.fat + whole.lactose + whole.ash, 100.0, 1e-9, "all of it");
    near(whole.curd() - whole.fat, 2.6, 0.25, "casein");
}
