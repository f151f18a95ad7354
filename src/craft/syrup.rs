//! Syrups: made to a sweetness, corrected, and swapped for one another at equal sugar.

use crate::quantity::{Brix, Density, Mass, OutOfRange, Ratio, Temperature, Volume};
use crate::substance::mix::Mix;
use crate::substance::sucrose;

/// Sugar and water for a syrup.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Syrup {
    /// Dry sugar.
    pub sugar: Mass,
    /// Water.
    pub water: Mass,
}

/// °Brix of `sugar` parts to one of water, by weight: 1:1 is 50.
///
/// # Errors
/// Never for a ratio that a [`Ratio`] can hold; kept for the caller's `?`.
pub fn brix_by_weight(sugar: Ratio) -> Result<Brix, OutOfRange> {
    Brix::from_degrees(100.0 * sugar.value() / (sugar.value() + 1.0))
}

/// °Brix of `sugar` parts to one of water, by volume, with sugar as it lies in a cup: 1:1 is about 45.9.
///
/// # Errors
/// As [`brix_by_weight`].
pub fn brix_by_volume(sugar: Ratio) -> Result<Brix, OutOfRange> {
    let grams = sugar.value() * sucrose::GRANULATED_G_PER_ML;
    Brix::from_degrees(100.0 * grams / (grams + Density::WATER.g_per_ml()))
}

/// Sugar and water for a volume of syrup at 20 °C: density × °Brix.
///
/// # Errors
/// [`OutOfRange`] beyond 85 °Brix.
pub fn make(volume: Volume, sweetness: Brix) -> Result<Syrup, OutOfRange> {
    make_mass(volume * sucrose::density(sweetness, Temperature::TWENTY)?, sweetness)
}

/// Sugar and water for a mass of syrup.
///
/// # Errors
/// [`OutOfRange`] beyond what a mass can be.
pub fn make_mass(mass: Mass, sweetness: Brix) -> Result<Syrup, OutOfRange> {
    let part = sweetness.degrees() / 100.0;
    Ok(Syrup { sugar: Mass::from_g(mass.g() * part)?, water: Mass::from_g(mass.g() * (1.0 - part))? })
}

/// Water for the sugar there is: s (100 − b) / b.
///
/// # Errors
/// [`OutOfRange`] for 0 °Brix.
pub fn with_sugar(sugar: Mass, sweetness: Brix) -> Result<Syrup, OutOfRange> {
    let water = sugar.g() * (100.0 - sweetness.degrees()) / sweetness.degrees();
    Ok(Syrup { sugar, water: Mass::from_g(water)? })
}

/// The volume that sugar and water make at 20 °C.
///
/// # Errors
/// [`OutOfRange`] beyond 85 °Brix.
pub fn yielded(syrup: Syrup) -> Result<Volume, OutOfRange> {
    let mass = syrup.sugar + syrup.water;
    let sweetness = Brix::from_degrees(100.0 * syrup.sugar.g() / mass.g().max(f64::MIN_POSITIVE))?;
    Ok(mass.volume_at(sucrose::density(sweetness, Temperature::TWENTY)?))
}

/// What to add to a syrup that measures wrong.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Correction {
    /// Dry sugar: m (b₂ − b₁) / (100 − b₂).
    Sugar(Mass),
    /// Water: m (b₁ − b₂) / b₂.
    Water(Mass),
}

/// What brings `mass` of syrup from one sweetness to another. None where nothing does: to 0 or 100 °Brix.
#[must_use]
pub fn correct(mass: Mass, from: Brix, to: Brix) -> Option<Correction> {
    let (have, want) = (from.degrees(), to.degrees());
    let grams = |value: f64| Mass::from_g(mass.g() * value).ok();
    if want >= have {
        grams((want - have) / (100.0 - want)).map(Correction::Sugar)
    } else {
        grams((have - want) / want).map(Correction::Water)
    }
}

/// One sweetener in place of another.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Instead {
    /// How many times a litre, or for a powder a kilogram, it takes.
    pub times: Ratio,
    /// What that is.
    pub mix: Mix,
    /// Grams of water it brings more than what it replaces; below zero, less.
    pub more_water: f64,
}

/// As much sugar as `was` has, of which `litre` is a litre. None for one without sugar.
#[must_use]
pub fn instead(was: &Mix, litre: &Mix) -> Option<Instead> {
    let times = Ratio::from_value(was.sugar().g() / litre.sugar().g()).ok()?;
    let mix = *litre * times;
    Some(Instead { times, mix, more_water: mix.water.g() - was.water.g() })
}

/// Whether sucrose at this sweetness may crystallise at a temperature, and by how many °Brix it is over.
///
/// # Errors
/// [`OutOfRange`] outside 0 to 100 °C.
pub fn over_the_limit(sweetness: Brix, at: Temperature) -> Result<Option<f64>, OutOfRange> {
    let over = sweetness.degrees() - sucrose::solubility(at)?.degrees();
    Ok((over > 0.0).then_some(over))
}
