//! Bubbles: how much CO₂ a drink holds under a pressure at a temperature, and back.
//!
//! Source: R. F. Weiss, Marine Chemistry 2 (1974) 203-215, in fresh water: the solubility of CO₂ by Henry's law, sure to
//! 2 % up to 5 atm. The gas over the drink is CO₂ and water vapour alone: the air has been let out.

use crate::quantity::{OutOfRange, Pressure, Ratio, Temperature};
use crate::substance::mix::Mix;

/// Temperatures that the solubility is published for, °C.
pub const VALID_CELSIUS: (f64, f64) = (-1.0, 40.0);

/// Litres that a mole of gas takes up at 0 °C and 1 atm: by this a volume of CO₂ is counted.
const LITRES_IN_MOLE: f64 = 22.414;

/// Grams of CO₂ to the mole. By the IUPAC atomic weights: 12.011 + 2 × 15.999.
const GRAMS_IN_MOLE: f64 = 44.009;

/// What the air presses with, bar: a standard atmosphere at the height of the sea, by definition.
pub const AIR: f64 = 1.013_25;

/// Volumes of CO₂ that a volume of drink holds under a pressure.
///
/// # Errors
/// [`OutOfRange`] outside −1 to 40 °C.
pub fn volumes_at(pressure: Pressure, at: Temperature) -> Result<Ratio, OutOfRange> {
    let (solubility, vapour) = in_water(at)?;
    Ratio::from_value(((pressure.bar() + AIR) / AIR - vapour) * solubility * LITRES_IN_MOLE)
}

/// The pressure under which a volume of drink holds so many volumes of CO₂.
///
/// # Errors
/// [`OutOfRange`] outside −1 to 40 °C; when it holds as many under no pressure, or takes over 10 bar.
pub fn pressure_for(volumes: Ratio, at: Temperature) -> Result<Pressure, OutOfRange> {
    let (solubility, vapour) = in_water(at)?;
    Pressure::from_bar((volumes.value() / (solubility * LITRES_IN_MOLE) + vapour) * AIR - AIR)
}

/// Grams of CO₂ in a litre that holds so many volumes.
#[must_use]
pub fn grams_in_litre(volumes: Ratio) -> f64 {
    volumes.value() / LITRES_IN_MOLE * GRAMS_IN_MOLE
}

/// How far what a drink holds may lie from what is worked out, as a share of it.
///
/// Water: 2 %, and any drink 5 %, less with sugar and more with strong alcohol, an estimate. Above 4 bar on the gauge as much
/// again: CO₂ is no ideal gas then, with a second virial coefficient of −0.12 to −0.15 l/mol, from memory.
#[must_use]
pub fn doubt(drink: Option<&Mix>, pressure: Pressure) -> f64 {
    let is_water = drink.is_some_and(|drink| (drink.ethanol + drink.sugar()).g() <= 0.01 * drink.mass().g());
    let of_drink = if is_water { 0.02 } else { 0.05 };
    if pressure.bar() > 4.0 { of_drink + 0.05 } else { of_drink }
}

/// Moles of CO₂ that a litre of water takes up under 1 atm of it, and the pressure of water's vapour over it, atm.
///
/// The vapour: R. F. Weiss and B. A. Price, Marine Chemistry 8 (1980) 347-359, in fresh water; from memory, and within
/// 0.5 % of IAPWS.
fn in_water(at: Temperature) -> Result<(f64, f64), OutOfRange> {
    let (celsius, (min, max)) = (at.celsius(), VALID_CELSIUS);
    if !(min..=max).contains(&celsius) {
        return Err(OutOfRange { quantity: "temperature", value: celsius, min, max, unit: "°C" });
    }
    let hundreds = (celsius + 273.15) / 100.0;
    let curve = |constant: f64, inverse: f64, log: f64| (constant + inverse / hundreds + log * hundreds.ln()).exp();
    Ok((curve(-58.0931, 90.5069, 22.2940), curve(24.4543, -67.4509, -4.8489)))
}
