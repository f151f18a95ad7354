//! The acids of the bench.

/// Grams of an acid that neutralise one mole of base: molar mass / protons titrated.
///
/// Molar masses from IUPAC atomic weights; protons titrated at pH 8.2: three for citric, two for malic.
pub const CITRIC_EQUIVALENT_MASS: f64 = 192.12 / 3.0;
/// As [`CITRIC_EQUIVALENT_MASS`], for malic acid.
pub const MALIC_EQUIVALENT_MASS: f64 = 134.09 / 2.0;

/// Millilitres that one gram of dissolved acid adds to its solution.
///
/// From the density of a 10 % citric acid solution, CRC Handbook of Chemistry and Physics;
/// used for malic acid too (our assumption, worth under 0.1 % of the volume).
pub const ML_PER_GRAM_DISSOLVED: f64 = 0.60;
