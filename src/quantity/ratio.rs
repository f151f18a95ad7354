//! A plain factor: how many times.

use std::ops::{Add, Mul};

use super::{Mass, OutOfRange, Volume};

/// A factor without a unit, 0 to 10⁹.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Ratio(f64);

impl Ratio {
    /// Not at all.
    pub const ZERO: Ratio = Ratio(0.0);
    /// Once.
    pub const ONE: Ratio = Ratio(1.0);
    const MAX: f64 = 1e9;

    /// Checked constructor.
    ///
    /// # Errors
    /// [`OutOfRange`] for NaN, infinities, negative values and values above 10⁹.
    pub fn from_value(value: f64) -> Result<Ratio, OutOfRange> {
        if (0.0..=Self::MAX).contains(&value) {
            Ok(Ratio(value))
        } else {
            Err(OutOfRange { quantity: "factor", value, min: 0.0, max: Self::MAX, unit: "times" })
        }
    }

    /// The factor as a number.
    #[must_use]
    pub const fn value(self) -> f64 {
        self.0
    }

    /// The other way round; none for zero.
    #[must_use]
    pub fn inverse(self) -> Option<Ratio> {
        Ratio::from_value(1.0 / self.0).ok()
    }
}

impl Default for Ratio {
    fn default() -> Self {
        Ratio::ZERO
    }
}

impl Add for Ratio {
    type Output = Ratio;

    fn add(self, other: Ratio) -> Ratio {
        Ratio(self.0 + other.0)
    }
}

impl Mul<Ratio> for Ratio {
    type Output = Ratio;

    fn mul(self, other: Ratio) -> Ratio {
        Ratio(self.0 * other.0)
    }
}

impl Mul<Ratio> for Volume {
    type Output = Volume;

    fn mul(self, ratio: Ratio) -> Volume {
        Volume(self.0 * ratio.0)
    }
}

impl Mul<Ratio> for Mass {
    type Output = Mass;

    fn mul(self, ratio: Ratio) -> Mass {
        Mass(self.0 * ratio.0)
    }
}
