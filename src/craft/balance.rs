//! What a drink reads as, and what each part of it brings.

use crate::quantity::{Abv, Acidity, Mass, Temperature, Volume};
use crate::substance::acid::Acid;
use crate::substance::mix::Mix;

/// What a drink reads as.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Balance {
    /// At 20 °C.
    pub volume: Volume,
    /// By volume at 20 °C.
    pub strength: Abv,
    /// Grams of sugar to the litre.
    pub sugar: f64,
    /// Grams of acid to the litre that a titration finds, as citric.
    pub acid: f64,
    /// Grams of acid to the litre in all, as citric: also what salts hold.
    pub acid_in_all: f64,
    /// Grams of sugar to the gram of acid; none without acid, or with next to no sugar.
    pub sugar_to_acid: Option<f64>,
    /// At 25 °C; none without acid, with milk, which buffers it, or where it cannot be worked out.
    pub ph: Option<f64>,
}

/// Less sugar than this, g/l, makes no ratio.
const SWEET: f64 = 0.5;

/// Reads a mix.
#[must_use]
pub fn balance(mix: &Mix) -> Balance {
    let acid = mix.titratable_acidity().map_or(0.0, Acidity::g_per_l);
    let sugar = mix.g_per_l(mix.sugar());
    let has_acid = Acid::ALL.iter().any(|acid| mix.mass_of(*acid) > Mass::ZERO);
    Balance {
        volume: mix.volume(Temperature::TWENTY).unwrap_or(Volume::ZERO),
        strength: mix.strength(),
        sugar,
        acid,
        acid_in_all: mix.g_per_l(mix.acid_as_citric()),
        sugar_to_acid: (acid > 0.0 && sugar >= SWEET).then(|| sugar / acid),
        ph: (has_acid && mix.milk <= Mass::ZERO).then(|| mix.ph().ok()).flatten(),
    }
}

/// What one part brings of the whole, as fractions. Nothing of nothing is none.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Share {
    /// Of the volume.
    pub volume: f64,
    /// Of the ethanol.
    pub ethanol: f64,
    /// Of the sugar.
    pub sugar: f64,
    /// Of the titratable acid.
    pub acid: f64,
}

/// What `part` brings of `whole`.
#[must_use]
pub fn share(part: &Mix, whole: &Mix) -> Share {
    let of = |part: f64, whole: f64| if whole > 0.0 { part / whole } else { 0.0 };
    let ml = |mix: &Mix| mix.volume(Temperature::TWENTY).map_or(0.0, Volume::ml);
    Share {
        volume: of(ml(part), ml(whole)),
        ethanol: of(part.ethanol.g(), whole.ethanol.g()),
        sugar: of(part.sugar().g(), whole.sugar().g()),
        acid: of(part.titratable().g(), whole.titratable().g()),
    }
}
