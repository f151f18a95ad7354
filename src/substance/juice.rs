//! How sour citrus juices are taken to be.
//!
//! Fresh fruit varies by a fifth or more with cultivar, season and age: these are starting points.

use super::acid::Acid;

/// Potassium of lime and lemon juice, mmol/l: about 20 to 50 in juices (from memory); with 25 lime reads the published
/// pH 2.00 to 2.35.
pub const CITRUS_SALTS: f64 = 25.0;

/// Acid in a juice, in grams per litre.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct JuiceAcids {
    /// Stable key, kept in saved data.
    pub key: &'static str,
    /// The juice, "lime" or "lemon".
    pub fruit: &'static str,
    /// Short name of the profile.
    pub name: &'static str,
    /// Citric acid, g/l.
    pub citric: f64,
    /// Malic acid, g/l.
    pub malic: f64,
    /// Salts that hold some of it, mmol/l: of juice; none where the figures are of what titrates.
    pub salts: f64,
    /// Where the figures come from.
    pub source: &'static str,
}

impl JuiceAcids {
    /// All its acid as citric, g/l, by equivalents: what as much of it in water titrates.
    #[must_use]
    pub fn as_citric(&self) -> f64 {
        self.citric + Acid::Malic.as_citric(self.malic)
    }

    /// What the juice titrates, g/l as citric: its acid less what its salts hold.
    #[must_use]
    pub fn titrates(&self) -> f64 {
        self.as_citric() - self.salts / 1000.0 * Acid::Citric.equivalent_mass()
    }

    /// The profile of a fruit that a bar goes by.
    #[must_use]
    pub fn of(fruit: &str, citrus: Citrus) -> Option<&'static JuiceAcids> {
        let is_bar = citrus == Citrus::BarRule;
        PROFILES.iter().find(|profile| profile.fruit == fruit && (profile.source == BAR) == is_bar)
    }
}

/// How sour a bar takes its limes and lemons to be, in every tool.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Citrus {
    /// As published.
    #[default]
    Published,
    /// By the bar rule.
    BarRule,
}

const BAR: &str = "common practice, no source";
const PENNISTON: &str = "Penniston, Nakada, Holmes, Assimos, J Endourol 2008;22(3):567–570";

/// What is added to the °Brix of a refractometer for acid of so many percent by weight, titrated, as anhydrous citric:
/// 0.012 + 0.193 x − 0.0004 x². With it a reading is all that is dissolved, acid included. Nothing without acid.
///
/// Source: 21 CFR 146.132(a)(1).
#[must_use]
pub fn acid_correction(percent: f64) -> f64 {
    if percent > 0.0 { 0.012 + 0.193 * percent - 0.000_4 * percent * percent } else { 0.0 }
}

/// Citric acid of fresh lime juice, g/l. Source: Penniston et al. 2008, SD 6.9.
pub const LIME_CITRIC: f64 = 45.9;
/// Citric acid of fresh lemon juice, g/l. Source: Penniston et al. 2008, SD 3.8.
pub const LEMON_CITRIC: f64 = 48.0;

/// The named profiles. The published ones give citric acid only.
///
/// The bar rule for lime (4 % citric + 2 % malic) is not borne out by the papers we know:
/// both stand here, and the person chooses.
pub const PROFILES: &[JuiceAcids] = &[
    JuiceAcids {
        key: "lime-bar",
        fruit: "lime",
        name: "Lime, bar rule",
        citric: 40.0,
        malic: 20.0,
        salts: 0.0,
        source: BAR,
    },
    JuiceAcids {
        key: "lime-2008",
        fruit: "lime",
        name: "Lime, measured",
        citric: LIME_CITRIC,
        malic: 0.0,
        salts: CITRUS_SALTS,
        source: PENNISTON,
    },
    JuiceAcids {
        key: "lemon-bar",
        fruit: "lemon",
        name: "Lemon, bar rule",
        citric: 60.0,
        malic: 0.0,
        salts: 0.0,
        source: BAR,
    },
    JuiceAcids {
        key: "lemon-2008",
        fruit: "lemon",
        name: "Lemon, measured",
        citric: LEMON_CITRIC,
        malic: 0.0,
        salts: CITRUS_SALTS,
        source: PENNISTON,
    },
];
