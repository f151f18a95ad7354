//! pH of defined solutions, and equivalents.
//!
//! Sources: PHREEQC (phreeqpython 1.6.2) with the constants of NIST46 and Davies activities, stored results,
//! 25 °C; Staples and Bates, J. Res. NBS 73A (1969) 37–41 for the citrate buffer; FDA, "Approximate pH of
//! Foods", for lime juice.

use meniscus::quantity::{Mass, Ratio};
use meniscus::substance::acid::Acid;
use meniscus::substance::mix::Mix;
use meniscus::substance::ph::{Dissolved, PhProblem, ph, protons_lost};

use crate::near;

fn of(acids: &[(Acid, f64)], cations: f64) -> f64 {
    ph(&Dissolved { acids, cations }).expect("a pH")
}

/// PHREEQC, stored results. Tolerance 0.02.
#[test]
fn phreeqc_agrees() {
    for (acids, cations, expected) in [
        (&[(Acid::Citric, 0.1)][..], 0.0, 2.083),
        (&[(Acid::Citric, 0.01)], 0.0, 2.623),
        (&[(Acid::Acetic, 0.1)], 0.0, 2.881),
        (&[(Acid::Malic, 0.1)], 0.0, 2.242),
        (&[(Acid::Lactic, 0.1)], 0.0, 2.438),
        (&[(Acid::Citric, 0.05)], 0.05, 3.766),
        (&[(Acid::Citric, 0.239), (Acid::Malic, 0.03)], 0.0, 1.874),
        (&[(Acid::Citric, 0.239), (Acid::Malic, 0.03)], 0.025, 2.211),
    ] {
        near(of(acids, cations), expected, 0.005, "pH");
    }
}

/// Staples and Bates 1969: potassium dihydrogen citrate, 0.05 molal, pH 3.776 at 25 °C. Tolerance 0.02.
#[test]
fn the_citrate_standard() {
    near(of(&[(Acid::Citric, 0.05)], 0.05), 3.776, 0.02, "pH");
}

/// FDA: lime juice 2.00 to 2.35. The model of it needs the juice's potassium to get there.
#[test]
fn lime_juice_with_its_salts() {
    let lime = of(&[(Acid::Citric, 0.239), (Acid::Malic, 0.03)], 0.025);
    assert!((2.0..=2.35).contains(&lime), "{lime}");
    assert!(of(&[(Acid::Citric, 0.239), (Acid::Malic, 0.03)], 0.0) < 2.0);
}

/// A mole of acid over the protons it gives: citric 64.04, malic 67.045, tartaric 75.045, lactic 90.08, phosphoric
/// 49.00 g (IUPAC atomic weights). 45 ml of 0.1 N base to 5 ml of juice: 57.64 g/l as citric.
#[test]
fn equivalents_and_a_titration() {
    for (acid, grams) in [
        (Acid::Citric, 64.04),
        (Acid::Malic, 67.045),
        (Acid::Tartaric, 75.045),
        (Acid::Lactic, 90.08),
        (Acid::Phosphoric, 49.0),
    ] {
        near(acid.equivalent_mass(), grams, 0.005, "g");
    }
    near(45.0 * 0.1 * Acid::Citric.equivalent_mass() / 5.0, 57.64, 0.005, "g/l");
}

/// A mix sums its acids by equivalents and finds its pH in its own water: 0.1 mol of citric acid in 1 kg.
#[test]
fn a_mix_has_the_ph_of_its_acids() {
    let grams = |g| Mass::from_g(g).expect("a mass");
    let mix = Mix::water(grams(1000.0)) + Mix::acid(Acid::Citric, grams(19.212));
    near(mix.ph().expect("a pH"), 2.083, 0.005, "pH");
    let mut salted = mix;
    salted.cations = Ratio::from_value(50.0).expect("mmol");
    assert!(salted.ph().expect("a pH") > mix.ph().expect("a pH"));
}

/// The same engine (phreeqpython 1.6.2, the constants of `substance/acid.rs`, Davies, neutral acid at activity 1): 0.1 mol/kg of
/// each, with 0.05 and with 0.15 mol/kg of sodium.
#[test]
fn each_acid_and_its_salts() {
    for (acid, expected) in [
        (Acid::Citric, &[2.0835, 3.0193, 4.3795][..]),
        (Acid::Malic, &[2.2426, 3.3418, 4.7617]),
        (Acid::Tartaric, &[2.0383, 2.8985, 4.0678]),
        (Acid::Succinic, &[2.6102, 4.0657, 5.3267]),
        (Acid::Lactic, &[2.4386, 3.7779]),
        (Acid::Acetic, &[2.8810, 4.6709]),
        (Acid::Ascorbic, &[2.5270, 3.9567]),
        (Acid::Phosphoric, &[1.6414, 2.1954, 6.8170]),
    ] {
        for (sodium, expected) in [0.0, 0.05, 0.15].into_iter().zip(expected) {
            near(of(&[(acid, 0.1)], sodium), *expected, 0.005, &format!("{acid:?} with {sodium}"));
        }
    }
}

/// Grams to the mole by the IUPAC atomic weights C 12.011, H 1.008, O 15.999, P 30.974.
#[test]
fn molar_masses() {
    for (acid, [carbon, hydrogen, oxygen, phosphorus]) in [
        (Acid::Citric, [6.0, 8.0, 7.0, 0.0]),
        (Acid::Malic, [4.0, 6.0, 5.0, 0.0]),
        (Acid::Tartaric, [4.0, 6.0, 6.0, 0.0]),
        (Acid::Lactic, [3.0, 6.0, 3.0, 0.0]),
        (Acid::Acetic, [2.0, 4.0, 2.0, 0.0]),
        (Acid::Phosphoric, [0.0, 3.0, 4.0, 1.0]),
        (Acid::Ascorbic, [6.0, 8.0, 6.0, 0.0]),
        (Acid::Succinic, [4.0, 6.0, 4.0, 0.0]),
    ] {
        let mass = 12.011 * carbon + 1.008 * hydrogen + 15.999 * oxygen + 30.974 * phosphorus;
        near(acid.constants().molar_mass, mass, 0.01, &format!("{acid:?}"));
    }
}

/// Water alone has half its ion product's exponent, 13.995, and salts
/// that hold nine tenths of the acid and more leave no model of a juice: 100 mmol of equivalents are 6.404 g of citric acid.
#[test]
fn water_and_too_much_salt() {
    let grams = |g| Mass::from_g(g).expect("a mass");
    let water = Mix::water(grams(1000.0));
    near(water.ph().expect("a pH"), 6.9975, 1e-3, "pH of water");
    let mut mix = water + Mix::acid(Acid::Citric, grams(6.404));
    for (salts, has_ph) in [(85.0, true), (89.9, true), (90.1, false), (95.0, false), (100.0, false)] {
        mix.cations = Ratio::from_value(salts).expect("mmol");
        assert_eq!(mix.ph().is_ok(), has_ph, "{salts}");
    }
    assert_eq!(mix.ph(), Err(PhProblem::NotSour));
    let said =
        [PhProblem::NotSour, PhProblem::TooConcentrated, PhProblem::NotAConcentration].map(|why| why.to_string());
    assert_eq!(
        said.map(|why| why.split(' ').next().map(str::to_owned)),
        ["more", "too", "not"].map(|word| Some(word.into()))
    );
    // Of nothing there is nothing to read.
    let nothing = Mix::default();
    assert_eq!((nothing.g_per_l(nothing.sugar()), nothing.reads()), (0.0, None));
}

/// Citric acid at pH 4.6 and an ionic strength of 0.1 has given up 1.62 protons (computed from the constants by
/// a separate script that was not kept): what a wash has of it to curdle milk with.
#[test]
fn protons_at_the_curdling_point() {
    near(protons_lost(Acid::Citric, 4.6, 0.1).expect("possible"), 1.618, 0.005, "protons");
    assert_eq!(protons_lost(Acid::Citric, 4.6, f64::NAN), None);
}

/// Ascorbic acid's first constant: 4.04 to 4.10 in the CRC Handbook (from memory), by edition; 4.04 at 25 °C.
#[test]
fn ascorbic_acid() {
    let [first] = Acid::Ascorbic.constants().pka else { panic!("one proton") };
    assert!((4.04..=4.10).contains(first), "{first}");
}

#[test]
fn outside_the_model_is_an_error() {
    assert_eq!(ph(&Dissolved { acids: &[(Acid::Citric, 3.0)], cations: 2.0 }), Err(PhProblem::TooConcentrated));
    for bad in [f64::NAN, f64::INFINITY, -0.1] {
        assert_eq!(ph(&Dissolved { acids: &[(Acid::Malic, bad)], cations: 0.0 }), Err(PhProblem::NotAConcentration));
    }
}
