//! Clearing juice: enzyme, agar, gelatin, rest.

use crate::quantity::{Mass, Ratio, Temperature};

/// Enzyme to 100 g of purée or juice. Common practice, no source: 1 g to 400 g.
pub const USUAL_ENZYME_PERCENT: f64 = 0.25;
/// Agar to the kilogram. Source: International Culinary Center, Cooking Issues, 20 Jul 2010.
pub const AGAR_G_PER_KG: f64 = 2.0;
/// Gelatin to the kilogram. Source: as [`AGAR_G_PER_KG`], 17 Jul 2009.
pub const GELATIN_G_PER_KG: f64 = 5.0;
/// Where agar sets, °C. Source: as [`AGAR_G_PER_KG`], 9 Jun 2009.
pub const AGAR_SETS_AT: (f64, f64) = (35.0, 39.0);
/// What a mix with agar should be at least, °C: three above where it sets at the latest, so that there is time to whisk.
pub const WARM_ENOUGH: f64 = 42.0;
/// Water that the agar is boiled in, as a fraction of the whole. Source: as [`AGAR_SETS_AT`], 20 to 33 %.
pub const AGAR_WATER: (f64, f64) = (0.20, 0.33);
/// Where enzyme works best, °C, found for carrot juice. Source: CIGR Journal, abstract no. 2804.
pub const ENZYME_BEST: f64 = 54.2;
/// From where enzyme loses its work to heat within the hour, °C, about: from memory. Preparations differ.
pub const ENZYME_TOO_HOT: f64 = 60.0;
/// Below this, °C, enzyme takes much longer. Common practice, no source.
pub const ENZYME_COLD: f64 = 15.0;
/// Below this pH many pectinases work poorly; near 2.2 in the source. Source: as [`AGAR_SETS_AT`].
pub const ENZYME_SOUR: f64 = 2.6;

/// Heat capacity of juice, kJ/(kg K), from memory.
const JUICE_HEAT: f64 = 3.9;
/// Heat capacity of hot water, kJ/(kg K), from memory.
const WATER_HEAT: f64 = 4.2;
/// Boiling water, °C.
const BOILING: f64 = 100.0;

/// How a juice is cleared.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Method {
    /// Pectinase, then a filter.
    Enzyme,
    /// Agar, set and broken, then a cloth.
    Agar,
    /// Gelatin, frozen and thawed over a cloth.
    Gelatin,
    /// Left to settle, and racked off.
    Rest,
}

impl Method {
    /// Of what goes in, what comes out clear: least, usual, most. Common practice, no source.
    #[must_use]
    pub const fn comes_clear(self) -> [f64; 3] {
        match self {
            Method::Enzyme => [0.65, 0.78, 0.90],
            Method::Agar => [0.70, 0.80, 0.90],
            Method::Gelatin => [0.60, 0.75, 0.85],
            Method::Rest => [0.70, 0.80, 0.90],
        }
    }
}

/// Agar for a juice.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Agar {
    /// Agar, to the whole.
    pub agar: Mass,
    /// Water it is boiled in; the juice is thinned by it.
    pub water: Mass,
    /// Juice and water together.
    pub together: Mass,
    /// What both come to when the juice is whisked into the boiling water, °C.
    pub comes_to: f64,
    /// What the juice must have at least for that to be [`WARM_ENOUGH`], °C.
    pub juice_at_least: f64,
}

/// Agar for `juice`, boiled in water that is `water_share` of the whole, and the heat balance:
/// T = Σ m c T / Σ m c. None for a share of 1.
#[must_use]
pub fn agar(juice: Mass, at: Temperature, water_share: Ratio, g_per_kg: f64) -> Option<Agar> {
    let together = Mass::from_g(juice.g() / (1.0 - water_share.value())).ok()?;
    let water = together * water_share;
    let (of_juice, of_water) = (juice.g() * JUICE_HEAT, water.g() * WATER_HEAT);
    let comes_to = (of_juice * at.celsius() + of_water * BOILING) / (of_juice + of_water);
    let juice_at_least = ((of_juice + of_water) * WARM_ENOUGH - of_water * BOILING) / of_juice;
    let agar = Mass::from_g(together.g() / 1000.0 * g_per_kg).ok()?;
    // Neither is, of no juice.
    juice_at_least.is_finite().then_some(Agar { agar, water, together, comes_to, juice_at_least })
}

/// A dose to so much, by a fraction of it: of enzyme, of gelatin.
#[must_use]
pub fn dose(to: Mass, fraction: Ratio) -> Mass {
    to * fraction
}
