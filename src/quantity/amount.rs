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

    /// Two amounts by the same measure together; none of two by different ones.
    #[must_use]
    pub fn and(self, more: Amount) -> Option<Amount> {
        match (self, more) {
            (Amount::Volume(one), Amount::Volume(other)) => Some(Amount::Volume(one + other)),
            (Amount::Mass(one), Amount::Mass(other)) => Some(Amount::Mass(one + other)),
            (Amount::Count(one), Amount::Count(other)) => Some(Amount::Count(one + other)),
            _ => None,
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_is_nothing_poured_weighed_or_counted() {
        let poured = |ml| Amount::Volume(Volume::from_ml(ml).expect("ml"));
        let weighed = |g| Amount::Mass(Mass::from_g(g).expect("g"));
        let counted = |count| Amount::Count(Ratio::from_value(count).expect("a count"));
        for amount in [poured(0.0), weighed(0.0), counted(0.0)] {
            assert!(amount.is_none(), "{amount:?}");
        }
        for amount in [poured(0.01), weighed(0.01), counted(0.01)] {
            assert!(!amount.is_none(), "{amount:?}");
        }
        assert_eq!(poured(20.0).and(poured(10.0)), Some(poured(30.0)));
        assert_eq!(weighed(20.0).and(weighed(10.0)), Some(weighed(30.0)));
        assert_eq!(counted(2.0).and(counted(1.0)), Some(counted(3.0)));
        assert_eq!([poured(1.0).and(weighed(1.0)), weighed(1.0).and(counted(1.0))], [None, None]);
    }
}
