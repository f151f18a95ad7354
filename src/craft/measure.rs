//! One amount read in other units.

use crate::quantity::{Amount, Density, Mass, Ratio, Temperature, Volume};
use crate::substance::mix::Mix;

/// An amount of a liquid both poured and weighed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Both {
    /// Poured.
    pub volume: Volume,
    /// Weighed.
    pub mass: Mass,
}

/// Volume and mass of `amount` of a liquid of this density: m = ρ V. None for a count.
///
/// ```
/// use meniscus::craft::measure::both;
/// use meniscus::quantity::{Amount, Density, Volume};
///
/// let rich_syrup = Density::from_g_per_ml(1.3268).unwrap();
/// let jigger = both(Amount::Volume(Volume::US_FLUID_OUNCE), rich_syrup).unwrap();
/// assert!((jigger.mass.g() - 39.24).abs() < 0.01);
/// ```
#[must_use]
pub fn both(amount: Amount, density: Density) -> Option<Both> {
    match amount {
        Amount::Volume(volume) => Some(Both { volume, mass: volume * density }),
        Amount::Mass(mass) => Some(Both { volume: mass.volume_at(density), mass }),
        Amount::Count(_) => None,
    }
}

/// As [`both`], of a liquid in any amount of it at 20 °C; a count is nothing.
#[must_use]
pub fn both_of(amount: Amount, liquid: &Mix) -> Both {
    let density = liquid.density(Temperature::TWENTY).unwrap_or(Density::WATER);
    both(amount, density).unwrap_or(Both { volume: Volume::ZERO, mass: Mass::ZERO })
}

/// The nearest multiple of a step, and how far it is off.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Nearest {
    /// How many steps.
    pub steps: Ratio,
    /// What they come to.
    pub volume: Volume,
    /// `volume` minus what was wanted, as a fraction of what was wanted.
    pub error: f64,
}

/// The nearest whole number of `step`s to `wanted`; none when either is zero.
#[must_use]
pub fn nearest(wanted: Volume, step: Volume) -> Option<Nearest> {
    let steps = Ratio::from_value(wanted.over(step)?.value().round()).ok()?;
    let volume = step * steps;
    let error = volume.over(wanted)?.value() - 1.0;
    Some(Nearest { steps, volume, error })
}
