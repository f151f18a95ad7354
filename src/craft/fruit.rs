//! Fruit to juice and back, by weight.

use crate::quantity::{Mass, Ratio};
use crate::substance::fruit::{FILTERED, Fruit, Share};

/// What fruit becomes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Product {
    /// Pressed juice.
    Juice,
    /// Juice through a fine filter.
    Filtered,
    /// Sieved purée.
    Puree,
}

/// The share of a fruit that becomes a product: least, usual, most.
#[must_use]
pub fn share_of(fruit: &Fruit, product: Product) -> Share {
    match product {
        Product::Juice => fruit.juice,
        Product::Puree => fruit.puree,
        Product::Filtered => std::array::from_fn(|at| fruit.juice[at] * FILTERED[at]),
    }
}

/// Whole fruit for so much of a product: product / share. None for a share of nothing.
#[must_use]
pub fn fruit_for(product: Mass, share: Ratio) -> Option<Mass> {
    Some(product * share.inverse()?)
}

/// What so much whole fruit gives.
#[must_use]
pub fn given_by(fruit: Mass, share: Ratio) -> Mass {
    fruit * share
}

/// How many that is, whole ones, each of so many grams; none for over a million.
#[must_use]
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
pub fn how_many(fruit: Mass, each: Mass) -> Option<u32> {
    let count = (fruit.g() / each.g() - 1e-9).ceil();
    (0.0..=1e6).contains(&count).then_some(count as u32)
}

/// The share that came out of so much fruit; none when it is more than the fruit.
#[must_use]
pub fn measured_share(got: Mass, fruit: Mass) -> Option<Ratio> {
    let share = got.g() / fruit.g();
    (0.0..=1.0).contains(&share).then(|| Ratio::from_value(share).ok()).flatten()
}
