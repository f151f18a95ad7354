//! How a form of a spec tasted, and what it was made of then.

use super::slot::{Field, Record};

/// One tasting.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Tasting {
    /// When, in milliseconds since 1970.
    pub at: u64,
    /// In words.
    pub words: String,
    /// A score, as it was typed; empty for none.
    pub score: String,
    /// For whom, or by whom.
    pub whom: String,
    /// What was tasted.
    pub was: Version,
}

/// What a form was made of, and how, at a time.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Version {
    /// Its lines.
    pub lines: String,
    /// Key of its method.
    pub method: String,
    /// Its glass.
    pub glass: String,
    /// What that holds.
    pub holds: String,
    /// Its ice.
    pub ice: String,
    /// What goes on it.
    pub garnish: String,
    /// What to do.
    pub steps: String,
    /// How many serves its lines make.
    pub makes: String,
    /// How much comes out of them.
    pub gives: String,
}

impl Record for Tasting {
    fn slots(&mut self) -> Vec<Field<'_>> {
        vec![
            Field::usual("at", &mut self.at),
            Field::spare("words", &mut self.words),
            Field::spare("score", &mut self.score),
            Field::spare("whom", &mut self.whom),
            Field::spare("was", &mut self.was),
        ]
    }
}

impl Record for Version {
    fn slots(&mut self) -> Vec<Field<'_>> {
        vec![
            Field::spare("lines", &mut self.lines),
            Field::spare("method", &mut self.method),
            Field::spare("glass", &mut self.glass),
            Field::spare("holds", &mut self.holds),
            Field::spare("ice", &mut self.ice),
            Field::spare("garnish", &mut self.garnish),
            Field::spare("steps", &mut self.steps),
            Field::spare("makes", &mut self.makes),
            Field::spare("gives", &mut self.gives),
        ]
    }
}
