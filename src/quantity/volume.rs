//! Exact volumes, derived from each other so that no fact is written twice.

use std::ops::{Add, Div};

use super::{Ratio, Volume};

const MILLILITRES_IN_CUBIC_INCH: f64 = 2.54 * 2.54 * 2.54;

impl Volume {
    /// Nothing at all.
    pub const ZERO: Volume = Volume(0.0);
    /// One litre.
    pub const LITRE: Volume = Volume(1000.0);

    /// The US gallon, exactly 231 in³ with an inch of exactly 2.54 cm.
    ///
    /// Source: NIST Handbook 44, Appendix C.
    pub const US_GALLON: Volume = Volume(231.0 * MILLILITRES_IN_CUBIC_INCH);
    /// The US liquid quart, a quarter gallon.
    pub const US_QUART: Volume = Volume(Self::US_GALLON.0 / 4.0);
    /// The US liquid pint, an eighth of a gallon.
    pub const US_PINT: Volume = Volume(Self::US_GALLON.0 / 8.0);
    /// The US cup, a sixteenth of a gallon.
    pub const US_CUP: Volume = Volume(Self::US_GALLON.0 / 16.0);
    /// The US fluid ounce, 1/128 gallon: 29.573 529 562 5 ml.
    pub const US_FLUID_OUNCE: Volume = Volume(Self::US_GALLON.0 / 128.0);
    /// The US tablespoon, half a US fluid ounce.
    pub const US_TABLESPOON: Volume = Volume(Self::US_FLUID_OUNCE.0 / 2.0);
    /// The US teaspoon, a third of a tablespoon.
    pub const US_TEASPOON: Volume = Volume(Self::US_TABLESPOON.0 / 3.0);

    /// The imperial gallon, exactly 4.546 09 l.
    ///
    /// Source: NIST Handbook 44, Appendix C.
    pub const IMPERIAL_GALLON: Volume = Volume(4546.09);
    /// The imperial pint, an eighth of an imperial gallon.
    pub const IMPERIAL_PINT: Volume = Volume(Self::IMPERIAL_GALLON.0 / 8.0);
    /// A third of an imperial pint.
    pub const THIRD_OF_A_PINT: Volume = Volume(Self::IMPERIAL_PINT.0 / 3.0);
    /// Half an imperial pint.
    pub const HALF_A_PINT: Volume = Volume(Self::IMPERIAL_PINT.0 / 2.0);
    /// Two thirds of an imperial pint.
    pub const TWO_THIRDS_OF_A_PINT: Volume = Volume(Self::IMPERIAL_PINT.0 / 3.0 * 2.0);
    /// The imperial fluid ounce, 1/160 imperial gallon: 28.413 062 5 ml.
    pub const IMPERIAL_FLUID_OUNCE: Volume = Volume(Self::IMPERIAL_GALLON.0 / 160.0);

    /// A whole number of millilitres, for constants.
    #[must_use]
    pub const fn whole_ml(ml: u32) -> Volume {
        Volume(ml as f64)
    }

    /// How many of `part` this is; none when `part` is nothing.
    #[must_use]
    pub fn over(self, part: Volume) -> Option<Ratio> {
        Ratio::from_value(self.0 / part.0).ok()
    }

    /// What is left after `taken`, never below nothing.
    #[must_use]
    pub fn less(self, taken: Volume) -> Volume {
        Volume((self.0 - taken.0).max(0.0))
    }
}

impl Add for Volume {
    type Output = Volume;

    /// Volumes read off a vessel, added as numbers. Real mixtures contract a little.
    fn add(self, other: Volume) -> Volume {
        Volume(self.0 + other.0)
    }
}

impl std::iter::Sum for Volume {
    fn sum<I: Iterator<Item = Volume>>(volumes: I) -> Volume {
        volumes.fold(Volume::ZERO, Add::add)
    }
}

impl Div<u32> for Volume {
    type Output = Volume;

    /// An equal share; the whole when shared among none.
    fn div(self, shares: u32) -> Volume {
        Volume(self.0 / f64::from(shares.max(1)))
    }
}
