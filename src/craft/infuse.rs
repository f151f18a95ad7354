//! Salt, peel, botanicals, fat and gum: how much to so much.

use crate::quantity::{Mass, Ratio};

/// Salt in a solution of this strength by weight, and the water: m p and m (1 − p).
#[must_use]
pub fn solution(whole: Mass, strength: Ratio) -> (Mass, Mass) {
    let salt = whole * strength;
    (salt, Mass::from_g(whole.g() - salt.g()).unwrap_or(Mass::ZERO))
}

/// Gum, sugar and water for a gomme.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gomme {
    /// Gum arabic.
    pub gum: Mass,
    /// Hot water it swells in: two parts.
    pub gum_water: Mass,
    /// Sugar.
    pub sugar: Mass,
    /// Water for the sugar: one part to two.
    pub water: Mass,
}

/// A gomme from so much sugar, with gum as a fraction of it. Common practice, no source.
#[must_use]
pub fn gomme(sugar: Mass, gum: Ratio) -> Gomme {
    let two = Ratio::from_value(2.0).unwrap_or(Ratio::ONE);
    let half = Ratio::from_value(0.5).unwrap_or(Ratio::ONE);
    let gum = sugar * gum;
    Gomme { gum, gum_water: gum * two, sugar, water: sugar * half }
}
