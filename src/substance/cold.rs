//! Cold: where drinks freeze, and what ice and drinks hold of heat.

use super::ethanol::within;
use crate::quantity::{MassFraction, OutOfRange, Temperature};

/// Freezing points of ethanol in water: % mass, °C.
///
/// Source: CRC Handbook of Chemistry and Physics, 102nd ed., Concentrative Properties of Aqueous Solutions.
const ETHANOL: [(f64, f64); 11] = [
    (0.0, 0.0),
    (2.0, -0.81),
    (5.0, -2.09),
    (10.0, -4.47),
    (15.0, -7.36),
    (20.0, -10.92),
    (24.0, -14.47),
    (30.0, -20.47),
    (34.0, -24.27),
    (40.0, -29.26),
    (50.0, -37.67),
];

/// Freezing points of sucrose in water: % mass, °C. Source: as [`ETHANOL`].
const SUCROSE: [(f64, f64); 6] = [(0.0, 0.0), (5.0, -0.29), (10.0, -0.63), (20.0, -1.47), (30.0, -2.64), (40.0, -4.45)];

/// Heat capacity of ethanol in water at 0 °C: % mass, kJ/(kg K). Above water's at the strength of drinks.
///
/// Source: CoolProp 8.0.0, INCOMP::MEA (Melinder's data). Water: IAPWS-95 at 0 °C, from memory.
const HEAT_CAPACITY: [(f64, f64); 6] =
    [(0.0, HEAT_CAPACITY_OF_WATER), (10.0, 4.402), (20.0, 4.369), (30.0, 4.163), (40.0, 3.893), (50.0, 3.634)];

/// Heat capacity of water at 0 °C, kJ/(kg K). Source: IAPWS-95, from memory.
pub const HEAT_CAPACITY_OF_WATER: f64 = 4.220;
/// Heat capacity of dissolved sugar, kJ/(kg K): the apparent one of sucrose in dilute water near 25 °C, about
/// 640 J/(mol K), from memory; 15 % of it is 0.6 % of a sour's.
pub const HEAT_CAPACITY_OF_SUGAR: f64 = 1.87;
/// Heat capacity of whole milk, kJ/(kg K), from memory.
pub const HEAT_CAPACITY_OF_MILK: f64 = 3.9;

/// Heat to melt ice at 0 °C, kJ/kg. Source: IAPWS-06 and IAPWS-95, by iapws 1.5.5.
pub const LATENT_HEAT_OF_ICE: f64 = 333.42;
/// Heat capacity of ice just below 0 °C, kJ/(kg K). Source: as [`LATENT_HEAT_OF_ICE`].
pub const HEAT_CAPACITY_OF_ICE: f64 = 2.0967;
/// Heat of ice for each kelvin from 0 °C and for its square, kJ/(kg K) and kJ/(kg K²): [`HEAT_CAPACITY_OF_ICE`], and the
/// 36.55 kJ/kg that warm it from −18 to 0 °C, of the same source.
pub const ICE_HOLDS: (f64, f64) = (HEAT_CAPACITY_OF_ICE, (HEAT_CAPACITY_OF_ICE - 36.55 / 18.0) / 18.0);
/// Density of ice at 0 °C, g/ml. Source: as [`LATENT_HEAT_OF_ICE`].
pub const DENSITY_OF_ICE: f64 = 0.916_72;

/// Where a mixture of ethanol and water begins to freeze, to 50 % mass.
///
/// # Errors
/// [`OutOfRange`] beyond the table.
pub fn ethanol_freezing_point(ethanol: MassFraction) -> Result<Temperature, OutOfRange> {
    Temperature::from_celsius(read(&ETHANOL, ethanol, "ethanol by mass")?)
}

/// Where a solution of sucrose begins to freeze, to 40 % mass.
///
/// # Errors
/// [`OutOfRange`] beyond the table.
pub fn sucrose_freezing_point(sucrose: MassFraction) -> Result<Temperature, OutOfRange> {
    Temperature::from_celsius(read(&SUCROSE, sucrose, "sucrose by mass")?)
}

/// Grams of sucrose to the mole, C12H22O11.
pub const SUCROSE_MOLAR_MASS: f64 = 342.3;
/// Grams of glucose or fructose to the mole, C6H12O6.
pub const HEXOSE_MOLAR_MASS: f64 = 180.16;

/// Where a drink begins to freeze: the depressions of its ethanol in its water and of its sugar in its
/// water, added. Glucose, fructose and acids count as the sucrose of as many moles. The rule is ours, without a
/// published source: an estimate.
///
/// # Errors
/// [`OutOfRange`] beyond either table.
pub fn freezing_point(ethanol_in_water: MassFraction, sugar_in_water: MassFraction) -> Result<Temperature, OutOfRange> {
    let ethanol = ethanol_freezing_point(ethanol_in_water)?;
    let sugar = sucrose_freezing_point(sugar_in_water)?;
    Temperature::from_celsius(ethanol.celsius() + sugar.celsius())
}

/// Heat of ice at a temperature, kJ/kg, less that of ice at 0 °C: below nothing, as it is colder.
#[must_use]
pub fn heat_of_ice(at: Temperature) -> f64 {
    let celsius = at.celsius();
    ICE_HOLDS.0 * celsius + ICE_HOLDS.1 * celsius * celsius
}

/// Heat capacity of ethanol and water at 0 °C, kJ/(kg K), to 50 % mass.
///
/// # Errors
/// [`OutOfRange`] beyond the table.
pub fn heat_capacity(ethanol: MassFraction) -> Result<f64, OutOfRange> {
    read(&HEAT_CAPACITY, ethanol, "ethanol by mass")
}

/// Reads a table between its rows, on the monotone cubic through them (Fritsch and Carlson 1980).
fn read(table: &[(f64, f64)], at: MassFraction, what: &'static str) -> Result<f64, OutOfRange> {
    let x = at.fraction() * 100.0;
    within(what, x, (table[0].0, table[table.len() - 1].0), "%")?;
    let row = table.windows(2).position(|pair| x <= pair[1].0).unwrap_or(0);
    let (left, right) = (table[row], table[row + 1]);
    let width = right.0 - left.0;
    let (s, rise) = ((x - left.0) / width, right.1 - left.1);
    let (from, to) = (tangent(table, row) * width, tangent(table, row + 1) * width);
    // Hermite's basis, in the form that needs the rise alone.
    Ok(left.1 + s * (from + s * (3.0 * rise - 2.0 * from - to + s * (from + to - 2.0 * rise))))
}

/// The slope at a row: the weighted harmonic mean of its neighbours', which keeps the curve monotone.
fn tangent(table: &[(f64, f64)], row: usize) -> f64 {
    let slope = |row: usize| (table[row + 1].1 - table[row].1) / (table[row + 1].0 - table[row].0);
    if row == 0 {
        return slope(0);
    }
    if row + 1 == table.len() {
        return slope(row - 1);
    }
    let (before, after) = (slope(row - 1), slope(row));
    if before * after <= 0.0 {
        return 0.0;
    }
    let (left, right) = (table[row].0 - table[row - 1].0, table[row + 1].0 - table[row].0);
    let (heavy, light) = (2.0 * right + left, right + 2.0 * left);
    (heavy + light) / (heavy / before + light / after)
}
