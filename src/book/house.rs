//! The house: what this bar means by its units and which jiggers it owns.

use super::named::{Holds, Measured, Taken};
use super::{Ingredient, ingredient};
use crate::quantity::{Acidity, Conventions, Mass, Unit, Volume};
use crate::substance::acid::Acid;
use crate::substance::energy::StandardDrink;
use crate::substance::juice::{Citrus, JuiceAcids};

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

impl Jigger {
    /// Its brim and its lines.
    pub fn marks(&self) -> impl Iterator<Item = &Mark> {
        std::iter::once(&self.brim).chain(&self.lines)
    }
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
    /// How sour its limes and lemons are taken to be.
    pub citrus: Citrus,
}

impl House {
    /// What an ingredient is taken to be here: lime and lemon by the bar rule where the house goes by it.
    #[must_use]
    pub fn takes(&self, ingredient: &'static Ingredient) -> Taken {
        let profile = JuiceAcids::of(ingredient.key.trim_end_matches("-juice"), self.citrus);
        let measured = match profile.filter(|_| self.citrus == Citrus::BarRule) {
            Some(profile) => {
                let mut acids = [Mass::ZERO; Acid::ALL.len()];
                let grams = |g| Mass::from_g(g).unwrap_or(Mass::ZERO);
                acids[Acid::Citric as usize] = grams(profile.citric);
                acids[Acid::Malic as usize] = grams(profile.malic);
                Measured {
                    acid: Acidity::from_g_per_l(profile.titrates()).ok(),
                    holds: Holds { acids: Some(acids), ..Holds::default() },
                    ..Measured::default()
                }
            }
            None => Measured::default(),
        };
        Taken { ingredient, measured }
    }

    /// Names that mean something of its own here, though the bar wrote none of it down.
    pub fn names(&self) -> impl Iterator<Item = (String, Taken)> + '_ {
        let citrus = ["lime-juice", "lemon-juice"].into_iter().filter_map(ingredient);
        let its_own = citrus.filter(|_| self.citrus == Citrus::BarRule);
        its_own.flat_map(|row| {
            let names = [row.name].into_iter().chain(row.names.iter().copied());
            let taken = self.takes(row);
            names.map(move |name| (name.to_owned(), taken))
        })
    }

    /// Every mark of every jigger.
    pub fn marks(&self) -> impl Iterator<Item = &Mark> {
        self.jiggers.iter().flat_map(Jigger::marks)
    }
}
