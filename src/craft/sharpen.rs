//! Bringing a juice to an acidity with powder, allowing for the room the powder takes.

use super::pour::standard;
use crate::book::Ingredient;
use crate::quantity::{Acidity, Mass, Ratio, Temperature, Volume};
use crate::substance::acid::Acid;
use crate::substance::mix::Mix;

/// Powders, as they are sold and in proportion by weight, that bring a liquid to an acidity in its *final* volume:
/// x = (TA* V(x) − A₀) / e, with e the citric acid that a gram of the blend titrates as, A₀ that of the liquid and V
/// the volume with x grams in it, found by going round until it stands. Without water in the powder this is
/// (TA* − TA₀) V / (e − 0.0006 TA*). Nothing when it is sour enough.
///
/// None for no acid at all, or when no amount of it gets there.
#[must_use]
pub fn sharpen(
    liquid: &Mix,
    to: Acidity,
    parts: &[(&'static Ingredient, f64)],
) -> Option<Vec<(&'static Ingredient, Mass)>> {
    let all: f64 = parts.iter().map(|(_, part)| part).sum();
    let strength: f64 =
        parts.iter().map(|(powder, part)| part / all / 1000.0 * standard(powder).acid_as_citric().g()).sum();
    let have = liquid.titratable().g();
    let powders = |grams: f64| -> Option<Vec<(&'static Ingredient, Mass)>> {
        parts.iter().map(|(powder, part)| Some((*powder, Mass::from_g(grams * part / all).ok()?))).collect()
    };
    let mut grams = 0.0;
    for _ in 0..60 {
        let volume = with_powders(*liquid, &powders(grams)?).volume(Temperature::TWENTY).ok()?;
        let next = ((to * volume).g() - have).max(0.0) / strength;
        let settled = (next - grams).abs() <= 1e-9 * next;
        grams = next;
        if settled {
            return powders(grams);
        }
    }
    None
}

/// A liquid with powders in it.
#[must_use]
pub fn with_powders(liquid: Mix, powders: &[(&'static Ingredient, Mass)]) -> Mix {
    let dissolved = |(powder, mass): &(&'static Ingredient, Mass)| {
        standard(powder) * Ratio::from_value(mass.g() / 1000.0).unwrap_or(Ratio::ZERO)
    };
    powders.iter().map(dissolved).fold(liquid, |mix, powder| mix + powder)
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
