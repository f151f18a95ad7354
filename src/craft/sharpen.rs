//! Bringing a juice to an acidity with powder, allowing for the room the powder takes.

use crate::book::Ingredient;
use crate::quantity::{Acidity, Mass, Temperature, Volume};
use crate::substance::acid::{Acid, ML_PER_GRAM_DISSOLVED};
use crate::substance::mix::Mix;

/// Grams of acids, in proportion, that bring a liquid to an acidity in its *final* volume. With e the
/// citric acid that a gram of the blend titrates as:
/// x = (TA* − TA₀) V / (e − 0.0006 TA*), TA in g/l and V in litres. Nothing when it is sour enough.
///
/// None for no acid at all, or when no amount of it gets there.
#[must_use]
pub fn sharpen(liquid: &Mix, to: Acidity, parts: &[(Acid, f64)]) -> Option<Vec<(Acid, Mass)>> {
    let all: f64 = parts.iter().map(|(_, part)| part).sum();
    let strength: f64 =
        parts.iter().map(|(acid, part)| part / all * Acid::Citric.equivalent_mass() / acid.equivalent_mass()).sum();
    let litres = liquid.volume(Temperature::TWENTY).ok()?.ml() / 1000.0;
    let missing = (to.g_per_l() - liquid.titratable_acidity().ok()?.g_per_l()).max(0.0) * litres;
    let room = strength - to.g_per_l() * ML_PER_GRAM_DISSOLVED / 1000.0;
    let grams = (room > 0.0).then(|| missing / room)?;
    parts.iter().map(|(acid, part)| Some((*acid, Mass::from_g(grams * part / all).ok()?))).collect()
}

/// The mass of another acid, as it is sold, that neutralises as much base. Equal titration is not equal
/// taste. None for what holds no acid.
#[must_use]
pub fn instead(mass: Mass, from: &Ingredient, to: &Ingredient) -> Option<Mass> {
    // Moles of base that a kilogram neutralises.
    let strength =
        |powder: &Ingredient| powder.acids.iter().map(|(acid, grams)| grams / acid.equivalent_mass()).sum::<f64>();
    Mass::from_g(mass.g() * strength(from) / strength(to)).ok()
}

/// Titratable acidity as an acid, g/l, from a titration: base used × its normality × equivalent mass / sample.
///
/// None for an empty sample.
#[must_use]
pub fn from_titration(base: Volume, normality: f64, sample: Volume, acid: Acid) -> Option<Acidity> {
    Acidity::from_g_per_l(base.ml() * normality * acid.equivalent_mass() / sample.ml()).ok()
}
