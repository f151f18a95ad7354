//! What a drink holds of energy, and how it is counted in standard drinks.

use super::ethanol;
use super::mix::Mix;

/// Kilojoules and kilocalories to the gram. Source: Regulation (EU) 1169/2011, Annex XIV.
const ETHANOL: (f64, f64) = (29.0, 7.0);
const CARBOHYDRATE: (f64, f64) = (17.0, 4.0);
const ORGANIC_ACID: (f64, f64) = (13.0, 3.0);

/// Energy of a drink, as a label gives it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Energy {
    /// Kilojoules.
    pub kilojoules: f64,
    /// Kilocalories.
    pub kilocalories: f64,
}

/// Energy from ethanol, sugar and acids: 29, 17 and 13 kJ/g. Milk is not counted.
#[must_use]
pub fn energy(mix: &Mix) -> Energy {
    let sum = |pick: fn((f64, f64)) -> f64| {
        mix.ethanol.g() * pick(ETHANOL) + mix.sugar().g() * pick(CARBOHYDRATE) + mix.acids().g() * pick(ORGANIC_ACID)
    };
    Energy { kilojoules: sum(|factor| factor.0), kilocalories: sum(|factor| factor.1) }
}

/// A national standard drink. Confirm with the national body before giving advice.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum StandardDrink {
    /// 14 g of ethanol: US, NIAAA.
    #[default]
    UnitedStates,
    /// A unit, 10 ml of ethanol: UK.
    UnitedKingdom,
    /// 10 g of ethanol: Australia.
    Australia,
    /// 17.05 ml of ethanol, 0.6 imperial fluid ounces: Canada.
    Canada,
    /// 20 g of ethanol: Austria. Source: A. Kalinowski, K. Humphreys, Addiction 111 (2016), as the press gives its table.
    Austria,
    /// About 20 g of ethanol: Japan. Source: encyclopaedia pages on "Standard drink"; an older one has 19.75 g.
    Japan,
    /// 10 g of ethanol: New Zealand. Source: as Austria.
    NewZealand,
    /// 10 g of ethanol: Portugal. From memory; an encyclopaedia page of 2007 has 14 g.
    Portugal,
    /// 10 g of ethanol: Spain. Source: encyclopaedia pages on "Standard drink".
    Spain,
    /// 10 g of ethanol: the WHO's AUDIT. Source: encyclopaedia pages on "Standard drink" citing it.
    Who,
}

impl StandardDrink {
    /// Grams of ethanol in one.
    #[must_use]
    pub const fn grams(self) -> f64 {
        match self {
            StandardDrink::UnitedStates => 14.0,
            StandardDrink::UnitedKingdom => 10.0 * ethanol::G_PER_ML,
            StandardDrink::Australia
            | StandardDrink::NewZealand
            | StandardDrink::Portugal
            | StandardDrink::Spain
            | StandardDrink::Who => 10.0,
            StandardDrink::Austria | StandardDrink::Japan => 20.0,
            StandardDrink::Canada => 17.05 * ethanol::G_PER_ML,
        }
    }

    /// How many of them a drink is.
    #[must_use]
    pub fn count(self, mix: &Mix) -> f64 {
        mix.ethanol.g() / self.grams()
    }
}
