//! What a bar pays, as it wrote it down.

use crate::quantity::{Amount, Money, Ratio};

/// A pack of something, and what is paid for it.
#[derive(Clone, Debug, PartialEq)]
pub struct Price {
    /// Of what, in the bar's own words.
    pub name: String,
    /// Key of the ingredient of the library that the name is in full; empty where it is none.
    pub library: &'static str,
    /// How much is in a pack: by volume, by weight or by the piece.
    pub pack: Amount,
    /// The same as the bar wrote it: "70 cl".
    pub size: String,
    /// What a pack costs.
    pub paid: Money,
    /// The share of it that ends in drinks, above 0 to 1: what is left of fruit, of a bottle that is spilt from.
    pub usable: Ratio,
    /// The day it was paid, "2026-11-20", whose letters are in the order of days; empty where nobody said.
    pub day: String,
}
