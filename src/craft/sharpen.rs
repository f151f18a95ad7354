//! Bringing a juice to an acidity with powder, allowing for the room the powder takes.

use crate::quantity::{Acidity, Mass, Volume};
use crate::substance::acid::{Acid, ML_PER_GRAM_DISSOLVED};

/// Acid, as citric, to bring `juice` from one titratable acidity to another in its *final* volume:
/// a = (TA* − TA₀) / (1 − 0.0006 TA*), in g to the litre of juice there was. Nothing when it is sour enough.
///
/// None when no amount of powder gets there.
#[must_use]
pub fn citric_for(juice: Volume, from: Acidity, to: Acidity) -> Option<Mass> {
    let room = 1.0 - to.g_per_l() * ML_PER_GRAM_DISSOLVED / 1000.0;
    let per_litre = (to.g_per_l() - from.g_per_l()).max(0.0) / room;
    (room > 0.0).then(|| Mass::from_g(per_litre * juice.ml() / 1000.0).ok()).flatten()
}

/// The mass of another acid that neutralises as much base. Equal titration is not equal taste.
#[must_use]
pub fn instead_of_citric(citric: Mass, acid: Acid) -> Option<Mass> {
    Mass::from_g(citric.g() * acid.equivalent_mass() / Acid::Citric.equivalent_mass()).ok()
}

/// Titratable acidity as an acid, g/l, from a titration: base used × its normality × equivalent mass / sample.
///
/// None for an empty sample.
#[must_use]
pub fn from_titration(base: Volume, normality: f64, sample: Volume, acid: Acid) -> Option<Acidity> {
    Acidity::from_g_per_l(base.ml() * normality * acid.equivalent_mass() / sample.ml()).ok()
}
