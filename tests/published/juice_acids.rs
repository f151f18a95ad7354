//! Acid in citrus juice.
//!
//! Sources: Penniston, Nakada, Holmes, Assimos, J Endourol 2008;22(3):567–570, mean of a few samples a juice:
//! lime 45.9 (SD 6.9) g/l, lemon 48.0 (SD 3.8) g/l of citric acid (from its abstract and its table as
//! quoted elsewhere). Molar masses: IUPAC atomic weights,
//! citric acid C6H8O7 192.12, malic acid C4H6O5 134.09 g/mol, three and two protons titrated.

use meniscus::craft::acid::{Acids, stand_in, stands_in_for};
use meniscus::quantity::{Acidity, Mass, Volume};
use meniscus::substance::juice::{PROFILES, acid_correction};

use crate::near;

fn acids(citric: f64, malic: f64) -> Acids {
    let g_per_l = |value| Acidity::from_g_per_l(value).expect("an acidity");
    Acids { citric: g_per_l(citric), malic: g_per_l(malic) }
}

fn grams(value: f64) -> Mass {
    Mass::from_g(value).expect("a mass")
}

/// Source: Penniston et al. 2008, as above.
#[test]
fn the_published_profiles_are_the_paper_s() {
    let of = |key: &str| PROFILES.iter().find(|profile| profile.key == key).expect("a profile");
    near(of("lime-2008").citric, 45.9, 0.05, "lime");
    near(of("lemon-2008").citric, 48.0, 0.05, "lemon");
}

/// A litre of the paper's lime: 45.9 g of citric acid and nothing else.
#[test]
fn a_litre_of_published_lime() {
    let made = stand_in(Volume::LITRE, &acids(45.9, 0.0), grams(0.1)).expect("a stand-in");
    near(made.citric_weighed.g(), 45.9, 1e-9, "citric");
    near(made.malic_weighed.g(), 0.0, 1e-12, "malic");
}

/// Equivalents: 40 g/l citric and 20 g/l malic titrate as 59.1 g/l citric
/// (40 + 20 × (192.12 / 3) / (134.09 / 2), from the molar masses above).
#[test]
fn titratable_acidity_by_equivalents() {
    near(acids(40.0, 20.0).as_citric(), 59.10, 0.005, "g/l as citric");
    let juice = stands_in_for(grams(4.0), grams(2.0), &acids(40.0, 20.0)).expect("a volume");
    near(juice.ml(), 100.0, 1e-9, "ml");
}

/// Water, by the density of citric acid solutions in the CRC Handbook of Chemistry and Physics, table
/// "Concentrative Properties of Aqueous Solutions", 10 mass %: 1.0392 g/ml (from memory), so that 1 g of
/// acid takes 0.60 ml: (100 / 1.0392 − 90 / 0.9982) / 10.
#[test]
fn the_acid_takes_room() {
    let room: f64 = (100.0 / 1.0392 - 90.0 / 0.9982) / 10.0;
    near(room, 0.60, 0.01, "ml per gram");
    let made = stand_in(Volume::whole_ml(300), &acids(40.0, 20.0), grams(0.1)).expect("a stand-in");
    near(300.0 - made.water.ml(), 18.0 * room, 0.2, "ml of room");
}

/// Water stands in for nothing sour, and nothing weighed for no juice.
#[test]
fn nothing_without_acid() {
    assert_eq!(stand_in(Volume::LITRE, &acids(0.0, 0.0), grams(0.1)), None);
    assert_eq!(stands_in_for(grams(4.0), grams(2.0), &acids(0.0, 0.0)), None);
    assert_eq!(stands_in_for(grams(0.0), grams(0.0), &acids(40.0, 20.0)), None);
}

/// 21 CFR 146.132(a)(1): 0.012 + 0.193 x − 0.0004 x² is added to a reading for x % of acid: by hand 0.2046 for 1 %, 0.967
/// for 5 %. Nothing is added where there is none.
#[test]
fn a_reading_is_corrected_for_acid() {
    for (percent, added) in [(0.0, 0.0), (1.0, 0.2046), (5.0, 0.967)] {
        near(acid_correction(percent), added, 1e-9, "°Bx");
    }
}

/// Common practice, no source: the bar rule for lime, 4 % citric + 2 % malic: 12 g and 6 g for 300 ml.
#[test]
fn the_bar_rule() {
    let made = stand_in(Volume::whole_ml(300), &acids(40.0, 20.0), grams(0.1)).expect("a stand-in");
    near(made.citric_weighed.g(), 12.0, 1e-9, "citric");
    near(made.malic_weighed.g(), 6.0, 1e-9, "malic");
    near(made.true_strength, 1.0, 1e-12, "strength");
}
