//! What a drink takes up of its ice when it is stirred or shaken.
//!
//! Source: D. Arnold, Liquid Intelligence (W. W. Norton, 2014): two curves fitted on drinks of a bar, with ice at 0 °C,
//! all chilling by melting. The coefficients are from memory. Real drinks lie within a fifth of it: ice colder than
//! 0 °C gives less, wet ice more.

use crate::quantity::{Abv, Ratio};

/// Strengths that the curves were fitted on, ml/ml before ice.
const FITTED: std::ops::RangeInclusive<f64> = 0.15..=0.45;

/// How a drink is chilled with ice that does not stay in it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Chilled {
    /// Stirred.
    Stirred,
    /// Shaken.
    Shaken,
}

/// The water that a drink of this strength takes up, in its own volumes; none beyond the strengths that are known.
#[must_use]
pub fn takes_up(strength: Abv, chilled: Chilled) -> Option<Ratio> {
    let before = strength.fraction();
    let (square, straight, constant) = match chilled {
        Chilled::Stirred => (-1.21, 1.246, 0.145),
        Chilled::Shaken => (-1.567, 1.742, 0.203),
    };
    let water = square * before * before + straight * before + constant;
    Ratio::from_value(water).ok().filter(|_| FITTED.contains(&before))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn water(strength: f64, chilled: Chilled) -> Option<f64> {
        takes_up(Abv::from_fraction(strength).expect("a strength"), chilled).map(Ratio::value)
    }

    /// The same book (from memory): stirred drinks take up 41 to 49 %, shaken sours 51 to 60 %. And by the balance of
    /// heat down to where ice and drink stand together, a drink of 30 % takes up 48 % (freezing points of the CRC
    /// Handbook, 102nd edition), which lies between stirring, which stops before, and shaking.
    #[test]
    fn stirring_and_shaking_lie_where_the_book_and_the_balance_of_heat_have_them() {
        for strength in [0.30, 0.35, 0.40] {
            let stirred = water(strength, Chilled::Stirred).expect("known");
            assert!((0.405..0.49).contains(&stirred), "{strength}: {stirred}");
        }
        for strength in [0.23, 0.27, 0.30] {
            let shaken = water(strength, Chilled::Shaken).expect("known");
            assert!((0.51..0.60).contains(&shaken), "{strength}: {shaken}");
        }
        let (stirred, shaken) = (water(0.30, Chilled::Stirred), water(0.30, Chilled::Shaken));
        assert!(stirred < Some(0.476) && shaken > Some(0.476), "{stirred:?} {shaken:?}");
        // 90 ml at 32 %: 37.8 ml, worked by hand: (-1.21 x 0.1024 + 1.246 x 0.32 + 0.145) x 90.
        assert!((water(0.32, Chilled::Stirred).expect("known") * 90.0 - 37.8).abs() < 0.05);
    }

    #[test]
    fn nothing_is_said_beyond_the_strengths_it_was_fitted_on() {
        for strength in [0.0, 0.1, 0.149, 0.46, 1.0] {
            assert_eq!(water(strength, Chilled::Stirred), None, "{strength}");
        }
        assert!(water(0.15, Chilled::Shaken).is_some() && water(0.45, Chilled::Shaken).is_some());
    }
}
