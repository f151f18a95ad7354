//! Acid powders in water as a stand-in for citrus juice.

use crate::quantity::{Acidity, Mass, Volume};
use crate::substance::acid::{Acid, ML_PER_GRAM_DISSOLVED};

/// The acids of a juice.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Acids {
    /// Citric acid, anhydrous.
    pub citric: Acidity,
    /// Malic acid.
    pub malic: Acidity,
}

impl Acids {
    /// Titratable acidity as citric acid, g/l: what the same amount of base would neutralise.
    ///
    /// citric + malic × (64.04 / 67.045), by equivalent masses.
    #[must_use]
    pub fn as_citric(&self) -> f64 {
        self.citric.g_per_l() + Acid::Malic.as_citric(self.malic.g_per_l())
    }
}

/// Acid and water that stand in for a volume of juice.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StandIn {
    /// Citric acid before rounding.
    pub citric: Mass,
    /// Malic acid before rounding.
    pub malic: Mass,
    /// Citric acid to weigh.
    pub citric_weighed: Mass,
    /// Malic acid to weigh.
    pub malic_weighed: Mass,
    /// Water that makes up the volume, allowing for the room the acid takes.
    pub water: Volume,
    /// Titratable acidity of what is weighed, as a multiple of what was wanted.
    pub true_strength: f64,
}

/// What to weigh to a scale's `step` for `juice` of these acids.
///
/// Mass = concentration × volume; water = volume − 0.60 ml for each gram of acid weighed.
/// None when there is no acid in it or the acid alone would fill the volume.
#[must_use]
pub fn stand_in(juice: Volume, acids: &Acids, step: Mass) -> Option<StandIn> {
    let (citric, malic) = (acids.citric * juice, acids.malic * juice);
    let (citric_weighed, malic_weighed) = (to_scale(citric, step), to_scale(malic, step));
    let dissolved = (citric_weighed + malic_weighed).g() * ML_PER_GRAM_DISSOLVED;
    let water = Volume::from_ml(juice.ml() - dissolved).ok()?;
    let wanted = titratable(citric, malic);
    (wanted > 0.0).then(|| StandIn {
        citric,
        malic,
        citric_weighed,
        malic_weighed,
        water,
        true_strength: titratable(citric_weighed, malic_weighed) / wanted,
    })
}

/// The volume of juice that weighed acids stand in for, at equal titratable acidity. None without acid.
#[must_use]
pub fn stands_in_for(citric: Mass, malic: Mass, acids: &Acids) -> Option<Volume> {
    let strength = acids.as_citric();
    let have = titratable(citric, malic);
    (have > 0.0).then(|| Volume::from_ml(have / strength * 1000.0).ok()).flatten()
}

/// Grams of citric acid that neutralise as much base.
fn titratable(citric: Mass, malic: Mass) -> f64 {
    citric.g() + Acid::Malic.as_citric(malic.g())
}

fn to_scale(mass: Mass, step: Mass) -> Mass {
    if step <= Mass::ZERO {
        return mass;
    }
    Mass::from_g((mass.g() / step.g()).round() * step.g()).unwrap_or(mass)
}
