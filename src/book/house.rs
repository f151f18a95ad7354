//! The house: what this bar means by its units and which jiggers it owns.

use crate::quantity::{Conventions, Unit, Volume};

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

/// The region whose standard drink is counted in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum DrinkRegion {
    /// 14 g of ethanol (NIAAA).
    #[default]
    UnitedStates,
    /// A unit: 10 ml of ethanol.
    UnitedKingdom,
    /// 10 g of ethanol.
    Australia,
    /// 17.05 ml of ethanol.
    Canada,
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
    pub region: DrinkRegion,
}

impl House {
    /// Every mark of every jigger.
    pub fn marks(&self) -> impl Iterator<Item = &Mark> {
        self.jiggers.iter().flat_map(|jigger| std::iter::once(&jigger.brim).chain(&jigger.lines))
    }
}
