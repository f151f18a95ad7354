//! What a line of a recipe can measure out.

use super::{Mass, Ratio, Volume};

/// A volume, a mass, or a count of things ("8 mint leaves").
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Amount {
    /// Poured.
    Volume(Volume),
    /// Weighed.
    Mass(Mass),
    /// Counted.
    Count(Ratio),
}

impl Amount {
    /// Whether it is nothing.
    #[must_use]
    pub fn is_none(self) -> bool {
        match self {
            Amount::Volume(volume) => volume <= Volume::ZERO,
            Amount::Mass(mass) => mass <= Mass::ZERO,
            Amount::Count(count) => count.value() <= 0.0,
        }
    }

    /// This amount `ratio` times.
    #[must_use]
    pub fn times(self, ratio: Ratio) -> Amount {
        match self {
            Amount::Volume(volume) => Amount::Volume(volume * ratio),
            Amount::Mass(mass) => Amount::Mass(mass * ratio),
            Amount::Count(count) => Ratio::from_value(count.value() * ratio.value()).map_or(self, Amount::Count),
        }
    }
}
