//! Sucrose and water: density, °Brix, solubility.
//!
//! Source: ICUMSA formula as given in Bubník, Kadlec, Urban, Bruhns, Sugar Technologists Manual
//! (Bartens 1995), p. 164. Valid to 85 % by mass and from 0 to 100 °C.

use super::ethanol::{polynomial, within};
use crate::quantity::{Brix, Density, OutOfRange, Temperature, Volume};

/// Coefficients b of ((t − 20)/100)ⁱ wᵏ, k from 1.
const COEFFICIENTS: [&[f64]; 5] = [
    &[385.176, 135.37, 40.929_9, -3.964_3, 13.485_3, -17.289],
    &[-46.272, -7.172, 1.159_7, 5.112_6, 17.525_4],
    &[59.771_2, 7.249_1, 12.363, -35.479_1],
    &[-47.220_7, -21.697_7, 27.630_1],
    &[18.318_4, 12.308_1],
];

/// Most and least sucrose of the formula, °Brix.
pub const VALID_BRIX: (f64, f64) = (0.0, 85.0);
/// Coldest and warmest temperature of the formula, °C.
pub const VALID_CELSIUS: (f64, f64) = (0.0, 100.0);

/// Bulk density of granulated sugar, g/ml: 200 g to the US cup (USDA portion data, from memory), ± 5 %.
pub const GRANULATED_G_PER_ML: f64 = 200.0 / Volume::US_CUP.ml();

/// Density of a solution of sucrose in water: that of water at the temperature, plus
/// Σ ((t − 20)/100)ⁱ b wᵏ.
///
/// # Errors
/// [`OutOfRange`] beyond 85 °Brix or outside 0 to 100 °C.
pub fn density(sweetness: Brix, at: Temperature) -> Result<Density, OutOfRange> {
    within("sweetness", sweetness.degrees(), VALID_BRIX, "°Bx")?;
    within("temperature", at.celsius(), VALID_CELSIUS, "°C")?;
    Density::from_g_per_ml(kg_per_m3(sweetness.degrees() / 100.0, at.celsius()) / 1000.0)
}

/// Specific gravity 20/20: density at 20 °C over that of water at 20 °C.
///
/// # Errors
/// As [`density`].
pub fn specific_gravity(sweetness: Brix) -> Result<f64, OutOfRange> {
    within("sweetness", sweetness.degrees(), VALID_BRIX, "°Bx")?;
    Ok(kg_per_m3(sweetness.degrees() / 100.0, 20.0) / kg_per_m3(0.0, 20.0))
}

/// The °Brix at which sucrose stops dissolving in water:
/// 64.447 + 0.082 22 t + 1.6169·10⁻³ t² − 1.558·10⁻⁶ t³ − 4.63·10⁻⁸ t⁴.
///
/// Source: Bubník and Kadlec in Mathlouthi and Reiser (eds.), Sucrose: Properties and Applications
/// (1995), pp. 101–125.
///
/// # Errors
/// [`OutOfRange`] outside 0 to 100 °C.
pub fn solubility(at: Temperature) -> Result<Brix, OutOfRange> {
    within("temperature", at.celsius(), VALID_CELSIUS, "°C")?;
    Brix::from_degrees(polynomial(&[64.447, 0.082_22, 1.616_9e-3, -1.558e-6, -4.63e-8], at.celsius()))
}

fn kg_per_m3(w: f64, celsius: f64) -> f64 {
    let x = (celsius - 20.0) / 100.0;
    let terms = COEFFICIENTS.iter().rev().fold(0.0, |sum, row| sum * x + w * polynomial(row, w));
    water_kg_per_m3(celsius) + terms
}

/// Density of water, as the sucrose formula takes it.
fn water_kg_per_m3(t: f64) -> f64 {
    let over =
        polynomial(&[999.839_52, 16.952_577, -7.990_512_7e-3, -46.241_757e-6, 105.846_01e-9, -281.030_06e-12], t);
    over / (1.0 + 16.887_236e-3 * t)
}

/// Millilitres that a gram of sucrose takes up in a solution of this mass fraction: at 20 °C 0.616 in
/// thin solutions to 0.633 in thick ones. Held at the values of 85 %, 0 and 100 °C beyond them.
pub(super) fn ml_per_gram(w: f64, celsius: f64) -> f64 {
    let (w, t) = (w.clamp(1e-4, 0.85), celsius.clamp(0.0, 100.0));
    (1000.0 / kg_per_m3(w, t) - (1.0 - w) * 1000.0 / kg_per_m3(0.0, t)) / w
}
