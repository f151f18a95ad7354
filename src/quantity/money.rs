//! Money: what adds up, and how often one sum is in another.

use std::iter::Sum;
use std::ops::{Add, Mul};

use super::{Money, Ratio};

impl Money {
    /// Nothing at all.
    pub const ZERO: Money = Money(0.0);

    /// How many of `part` this is; none when `part` is nothing.
    #[must_use]
    pub fn over(self, part: Money) -> Option<Ratio> {
        Ratio::from_value(self.0 / part.0).ok()
    }

    /// This less `other`, with its sign: a loss is below zero.
    #[must_use]
    pub const fn less(self, other: Money) -> f64 {
        self.0 - other.0
    }
}

impl Add for Money {
    type Output = Money;

    fn add(self, other: Money) -> Money {
        Money(self.0 + other.0)
    }
}

impl Sum for Money {
    fn sum<I: Iterator<Item = Money>>(all: I) -> Money {
        all.fold(Money::ZERO, Add::add)
    }
}

impl Mul<Ratio> for Money {
    type Output = Money;

    fn mul(self, ratio: Ratio) -> Money {
        Money(self.0 * ratio.value())
    }
}
