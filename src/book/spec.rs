//! A spec: the trade's word for a recipe.

use super::named::Taken;
use crate::quantity::{Amount, Unit};

/// One measured line of a spec.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// How much.
    pub amount: Amount,
    /// The unit it is written in; none for what is counted, and where no unit says it.
    pub unit: Option<Unit>,
    /// Of what, in the bar's own words.
    pub name: String,
    /// What that is taken to be; none when nothing fits.
    pub taken: Option<Taken>,
    /// A figure in the name that cannot be used, such as "140 %".
    pub unread: Option<String>,
    /// What was decided in reading it, in words: "2–3: the middle counts"; empty where nothing was.
    pub said: String,
}

/// The measured lines of a drink.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Spec {
    /// In the order written.
    pub lines: Vec<Line>,
}
