//! Milk for a wash. The drink goes over the milk, not the reverse.

use crate::quantity::{Ratio, Volume};

/// A wash laid out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wash {
    /// Milk, into the vessel first.
    pub milk: Volume,
    /// Drink, poured over it.
    pub drink: Volume,
}

impl Wash {
    /// What the vessel must hold: the volumes added as numbers.
    #[must_use]
    pub fn together(&self) -> Volume {
        self.milk + self.drink
    }
}

/// The milk for `drink` at `drink_per_milk` parts of drink to one of milk; none for a ratio of zero.
#[must_use]
pub fn milk_for(drink: Volume, drink_per_milk: Ratio) -> Option<Wash> {
    Some(Wash { milk: drink * drink_per_milk.inverse()?, drink })
}

/// The drink that `milk` can wash at that ratio.
#[must_use]
pub fn drink_for(milk: Volume, drink_per_milk: Ratio) -> Wash {
    Wash { milk, drink: milk * drink_per_milk }
}
