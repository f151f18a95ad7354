//! How sour citrus juices are taken to be.
//!
//! Fresh fruit varies by a fifth or more with cultivar, season and age: these are starting points.

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
    /// Where the figures come from.
    pub source: &'static str,
}

const BAR: &str = "common practice, no source";
const PENNISTON: &str = "Penniston, Nakada, Holmes, Assimos, J Endourol 2008;22(3):567–570";

/// Citric acid of fresh lime juice, g/l. Source: Penniston et al. 2008, SD 6.9.
pub const LIME_CITRIC: f64 = 45.9;
/// Citric acid of fresh lemon juice, g/l. Source: Penniston et al. 2008, SD 3.8.
pub const LEMON_CITRIC: f64 = 48.0;

/// The named profiles. The published ones give citric acid only.
///
/// The bar rule for lime (4 % citric + 2 % malic) is not borne out by the papers we know:
/// both stand here, and the person chooses.
pub const PROFILES: &[JuiceAcids] = &[
    JuiceAcids { key: "lime-bar", fruit: "lime", name: "Lime, bar rule", citric: 40.0, malic: 20.0, source: BAR },
    JuiceAcids {
        key: "lime-2008",
        fruit: "lime",
        name: "Lime, measured",
        citric: LIME_CITRIC,
        malic: 0.0,
        source: PENNISTON,
    },
    JuiceAcids { key: "lemon-bar", fruit: "lemon", name: "Lemon, bar rule", citric: 60.0, malic: 0.0, source: BAR },
    JuiceAcids {
        key: "lemon-2008",
        fruit: "lemon",
        name: "Lemon, measured",
        citric: LEMON_CITRIC,
        malic: 0.0,
        source: PENNISTON,
    },
];
