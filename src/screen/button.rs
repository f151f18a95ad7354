//! Buttons: words, and the act that a tap on them is.

use super::act::Act;

/// A button.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Button {
    /// What it says.
    pub label: String,
    /// What it is called where the label alone would not be understood; empty where it would.
    pub spoken: String,
    /// What a tap does.
    pub act: Act,
}

impl Button {
    pub(crate) fn new(label: impl Into<String>, act: Act) -> Button {
        Button { label: label.into(), spoken: String::new(), act }
    }

    /// A small one, with a sign for a label.
    pub(crate) fn sign(label: &str, spoken: String, act: Act) -> Button {
        Button { label: label.to_owned(), spoken, act }
    }
}
