//! Ethanol and water: density, strength and proof by the OIML general formula.
//!
//! Source: OIML R 22 (1975), International Alcoholometric Tables, general formula; the same
//! coefficients stand in the annex of Directive 76/766/EEC. Valid from −20 to 40 °C, above the
//! freezing curve. Not valid with sugar in it: liqueurs need their sugar counted.

use crate::quantity::{Abv, Density, MassFraction, OutOfRange, Temperature};

const A: [f64; 12] = [
    998.201_23,
    -192.976_949_5,
    389.123_895_8,
    -1_668.103_923,
    13_522.154_41,
    -88_292.783_88,
    306_287.404_2,
    -613_838.123_4,
    747_017.299_8,
    -547_846.135_4,
    223_446.033_4,
    -39_032.854_26,
];

const B: [f64; 6] = [-0.206_185_13, -0.005_268_254_2, 3.613_001_3e-5, -3.895_770_2e-7, 7.169_354e-9, -9.973_923_1e-11];

const C1: [f64; 11] = [
    0.169_344_346_153_008_7,
    -10.469_147_434_551_69,
    71.963_534_695_465_23,
    -704.747_805_427_279_2,
    3_924.090_430_035_045,
    -12_101.646_590_687_47,
    22_486.465_504_007_88,
    -26_055.629_821_881_64,
    18_523.739_220_694_67,
    -7_420.201_433_430_137,
    1_285.617_841_998_974,
];

const C2: [f64; 10] = [
    -0.011_930_130_050_570_1,
    0.251_739_963_380_346_1,
    -2.170_575_700_536_993,
    13.530_349_888_430_29,
    -50.299_887_585_470_14,
    109.635_566_657_757,
    -142.275_394_642_115_5,
    108.043_594_285_623,
    -44.141_532_368_173_92,
    7.442_971_530_188_783,
];

const C3: [f64; 9] = [
    -0.000_680_299_573_350_380_3,
    0.018_768_377_902_896_64,
    -0.200_256_181_373_415_6,
    1.022_992_966_719_22,
    -2.895_696_483_903_638,
    4.810_060_584_300_675,
    -4.672_147_440_794_683,
    2.458_043_105_903_461,
    -0.541_122_762_143_681_2,
];

const C4: [f64; 4] =
    [4.075_376_675_622_027e-6, -8.763_058_573_471_11e-6, 6.515_031_360_099_368e-6, -1.515_784_836_987_21e-6];

const C5: [f64; 2] = [-2.788_074_354_782_409e-8, 1.345_612_883_493_354e-8];

/// Coldest and warmest temperature of the formula, °C.
pub const VALID_CELSIUS: (f64, f64) = (-20.0, 40.0);

/// 60 °F in °C, at which US proof is defined.
const SIXTY_FAHRENHEIT: f64 = 140.0 / 9.0;

/// Grams of pure ethanol to the millilitre at 20 °C, as the formula gives it.
pub const G_PER_ML: f64 = 0.789_239_1;

/// Density of a mixture of ethanol and water: the sum of A, B and C terms in mass fraction and
/// temperature − 20 °C.
///
/// ```
/// use meniscus::quantity::{MassFraction, Temperature};
/// use meniscus::substance::ethanol::density;
///
/// // 40 % vol is 33.30 % by mass.
/// let spirit = MassFraction::from_fraction(0.332_996).unwrap();
/// let at_20 = density(spirit, Temperature::from_celsius(20.0).unwrap()).unwrap();
/// assert!((at_20.g_per_ml() - 0.948_05).abs() < 1e-5);
/// ```
///
/// # Errors
/// [`OutOfRange`] outside −20 to 40 °C: the formula is not stretched.
pub fn density(ethanol: MassFraction, at: Temperature) -> Result<Density, OutOfRange> {
    within("temperature", at.celsius(), VALID_CELSIUS, "°C")?;
    Density::from_g_per_ml(kg_per_m3(ethanol.fraction(), at.celsius()) / 1000.0)
}

/// Strength by volume at 20 °C of a mass fraction: w ρ(w, 20) / ρ(1, 20).
#[must_use]
pub fn strength(ethanol: MassFraction) -> Abv {
    let w = ethanol.fraction();
    Abv::from_fraction((w * kg_per_m3(w, 20.0) / (1000.0 * G_PER_ML)).clamp(0.0, 1.0)).unwrap_or(Abv::NONE)
}

/// The mass fraction of a strength by volume at 20 °C: the inverse of [`strength`], to 10⁻¹².
#[must_use]
pub fn mass_fraction(strength: Abv) -> MassFraction {
    let wanted = strength.fraction();
    let found = bisect(|w| w * kg_per_m3(w, 20.0) / (1000.0 * G_PER_ML) - wanted);
    MassFraction::from_fraction(found).unwrap_or(MassFraction::NONE)
}

/// The mass fraction of ethanol in a mixture of nothing but ethanol and water, from its density.
///
/// # Errors
/// [`OutOfRange`] outside −20 to 40 °C, or for a density that no such mixture has.
pub fn mass_fraction_of_density(density: Density, at: Temperature) -> Result<MassFraction, OutOfRange> {
    within("temperature", at.celsius(), VALID_CELSIUS, "°C")?;
    let kg = density.g_per_ml() * 1000.0;
    let limits = (kg_per_m3(1.0, at.celsius()), kg_per_m3(0.0, at.celsius()));
    within("density", kg, limits, "kg/m³")?;
    MassFraction::from_fraction(bisect(|w| kg - kg_per_m3(w, at.celsius())))
}

/// US proof: twice the strength by volume at 60 °F (15.56 °C).
///
/// Source: 27 CFR 5.1 and 30.11, definition of proof.
#[must_use]
pub fn us_proof(ethanol: MassFraction) -> f64 {
    let w = ethanol.fraction();
    200.0 * w * kg_per_m3(w, SIXTY_FAHRENHEIT) / kg_per_m3(1.0, SIXTY_FAHRENHEIT)
}

/// Strength by volume at 20 °C of a US proof: the inverse of [`us_proof`].
///
/// # Errors
/// [`OutOfRange`] outside 0 to 200.
pub fn strength_of_us_proof(proof: f64) -> Result<Abv, OutOfRange> {
    within("proof", proof, (0.0, 200.0), "° proof")?;
    let found = bisect(|w| 200.0 * w * kg_per_m3(w, SIXTY_FAHRENHEIT) / kg_per_m3(1.0, SIXTY_FAHRENHEIT) - proof);
    Ok(strength(MassFraction::from_fraction(found)?))
}

/// Strength by volume of 100 historical UK degrees.
pub const UK_PROOF_SPIRIT: f64 = 0.571;

/// Historical UK degrees proof: 100 at 57.1 % vol, so strength by volume × 175 / 100 and a little.
///
/// Source: 57.1 % vol as stated by a trade association of distillers (proof spirit weighs 12/13 of an
/// equal volume of water at 51 °F); the straight line through it is common practice.
#[must_use]
pub fn uk_proof(ethanol: MassFraction) -> f64 {
    strength(ethanol).fraction() / UK_PROOF_SPIRIT * 100.0
}

pub(super) fn within(
    quantity: &'static str,
    value: f64,
    (min, max): (f64, f64),
    unit: &'static str,
) -> Result<(), OutOfRange> {
    if value >= min && value <= max { Ok(()) } else { Err(OutOfRange { quantity, value, min, max, unit }) }
}

/// The root of a rising function of a fraction.
pub(super) fn bisect(rising: impl Fn(f64) -> f64) -> f64 {
    let (mut low, mut high) = (0.0, 1.0);
    for _ in 0..48 {
        let middle = 0.5 * (low + high);
        if rising(middle) < 0.0 {
            low = middle;
        } else {
            high = middle;
        }
    }
    0.5 * (low + high)
}

fn kg_per_m3(w: f64, celsius: f64) -> f64 {
    let t = celsius - 20.0;
    let c = [polynomial(&C1, w), polynomial(&C2, w), polynomial(&C3, w), polynomial(&C4, w), polynomial(&C5, w)];
    polynomial(&A, w) + t * polynomial(&B, t) + w * t * polynomial(&c, t)
}

/// c₀ + c₁ x + c₂ x² …, by Horner's rule.
pub(super) fn polynomial(coefficients: &[f64], x: f64) -> f64 {
    coefficients.iter().rev().fold(0.0, |sum, coefficient| sum * x + coefficient)
}
