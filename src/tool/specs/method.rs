//! How a drink is made, as its spec says.

use crate::screen::{Choice, choice};

/// How a drink is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Method {
    /// In its glass.
    Built,
    /// Stirred over ice.
    Stirred,
    /// Shaken with ice.
    Shaken,
    /// From tin to tin.
    Thrown,
    /// With a stick or a jug, or mixed as a batch.
    Blended,
    /// Clear by milk that has clotted in it.
    Washed,
    /// Clear by agar, gelatin, enzyme or a filter.
    Clarified,
    /// With gas.
    Carbonated,
}

choice! { Method:
    Built = "built", "Built";
    Stirred = "stirred", "Stirred";
    Shaken = "shaken", "Shaken";
    Thrown = "thrown", "Thrown";
    Blended = "blended", "Blended";
    Washed = "washed", "Milk-washed";
    Clarified = "clarified", "Clarified";
    Carbonated = "carbonated", "Carbonated";
}

impl Method {
    /// The method of this key; none for none.
    pub(super) fn read_or_none(key: &str) -> Option<Method> {
        Method::ALL.iter().copied().find(|method| method.key() == key)
    }
}
