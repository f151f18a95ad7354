//! The house: what this bar means by its units and which jiggers it owns.

use crate::quantity::{Conventions, Unit, Volume};
use crate::substance::energy::StandardDrink;

/// One measure that a jigger can pour: its brim or a line inside it.
#[derive(Clone, Debug, PartialEq)]
pub struct Mark {
    /// As the bar wrote it, such as "1½ oz".
    pub label: String,
    /// What it holds.
    pub volume: Volume,
}

/// A jigger cup with its inner lines.
#[derive(Clone, Debug, PartialEq)]
pub struct Jigger {
    /// Filled to the top.
    pub brim: Mark,
    /// Lines inside, in any order.
    pub lines: Vec<Mark>,
}

/// Everything about the bar that the tools need to know.
#[derive(Clone, Debug, PartialEq)]
pub struct House {
    /// Sizes of the units that have no single definition.
    pub conventions: Conventions,
    /// The unit a bare number is read in.
    pub usual_unit: Unit,
    /// The jiggers owned.
    pub jiggers: Vec<Jigger>,
    /// The standard drink counted in.
    pub region: StandardDrink,
}

impl House {
    /// Every mark of every jigger.
    pub fn marks(&self) -> impl Iterator<Item = &Mark> {
        self.jiggers.iter().flat_map(|jigger| std::iter::once(&jigger.brim).chain(&jigger.lines))
    }
}
