//! What a bar writes down for good: its spec cards. Texts as they were typed; every figure is derived from them.

use super::origin::Origin;
use super::slot::{Field, Record};

/// Most forms that a card is given here.
pub const MOST_WAYS: usize = 100;

/// A spec card: a drink, in one way of making it or in several.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Card {
    /// What it is called.
    pub name: String,
    /// Words to find it by, parted by commas.
    pub tags: String,
    /// Anything else.
    pub notes: String,
    /// When it was first written down, in milliseconds since 1970.
    pub made: u64,
    /// Its forms: the same drink made in several ways. At least one.
    pub ways: Vec<Way>,
}

/// One way of making a drink.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Way {
    /// What this way is called: "quick", "clear". May be empty when there is one.
    pub name: String,
    /// The lines: an amount and an ingredient, or words.
    pub lines: String,
    /// Key of the method.
    pub method: String,
    /// The glass.
    pub glass: String,
    /// What the glass holds.
    pub holds: String,
    /// The ice.
    pub ice: String,
    /// What goes on it.
    pub garnish: String,
    /// What to do, a line each; a line may hold a time, such as "rest 45 min".
    pub steps: String,
    /// How many serves its lines make as they are written; empty where they are one drink, or where it shows.
    pub makes: String,
    /// How much comes out of them, where that is not what goes in: "700 ml".
    pub gives: String,
    /// What there is to say of this form alone.
    pub notes: String,
    /// What those go by that were made from it: given once, and kept whatever it is called; empty until then.
    pub key: String,
    /// What it was made from; empty for one that was written down.
    pub from: Origin,
    /// How it tasted, the first first.
    pub tastings: Vec<Tasting>,
}

/// How a form tasted, and what it was made of then.
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
    /// What was tasted, without its name, its notes, its key, what it was made from and its tastings: see [`Way::version`].
    pub was: Way,
}

impl Record for Card {
    fn slots(&mut self) -> Vec<Field<'_>> {
        vec![
            Field::usual("name", &mut self.name),
            Field::spare("tags", &mut self.tags),
            Field::spare("notes", &mut self.notes),
            Field::usual("made", &mut self.made),
            Field::usual("forms", &mut self.ways),
        ]
    }
}

impl Record for Way {
    fn slots(&mut self) -> Vec<Field<'_>> {
        vec![
            Field::spare("name", &mut self.name),
            Field::spare("lines", &mut self.lines),
            Field::spare("method", &mut self.method),
            Field::spare("glass", &mut self.glass),
            Field::spare("holds", &mut self.holds),
            Field::spare("ice", &mut self.ice),
            Field::spare("garnish", &mut self.garnish),
            Field::spare("steps", &mut self.steps),
            Field::spare("makes", &mut self.makes),
            Field::spare("gives", &mut self.gives),
            Field::spare("notes", &mut self.notes),
            Field::spare("key", &mut self.key),
            Field::spare("from", &mut self.from),
            Field::spare("tastings", &mut self.tastings),
        ]
    }
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

impl Card {
    /// A card with one empty way.
    #[must_use]
    pub fn blank(made: u64) -> Card {
        Card { made, ways: vec![Way::default()], ..Card::default() }
    }

    /// The fields that all ways share, by the names they are kept under.
    pub fn fields(&mut self) -> [(&'static str, &mut String); 3] {
        [("name", &mut self.name), ("tags", &mut self.tags), ("notes", &mut self.notes)]
    }
}

impl Way {
    /// What it is made of, and how; the rest is as `rest` has it.
    #[must_use]
    pub fn version(&self, rest: &Way) -> Way {
        let Way { name, notes, key, from, tastings, .. } = rest.clone();
        Way { name, notes, key, from, tastings, ..self.clone() }
    }

    /// Its fields, by the names they are kept under.
    pub fn fields(&mut self) -> [(&'static str, &mut String); 11] {
        [
            ("way", &mut self.name),
            ("lines", &mut self.lines),
            ("method", &mut self.method),
            ("glass", &mut self.glass),
            ("holds", &mut self.holds),
            ("ice", &mut self.ice),
            ("garnish", &mut self.garnish),
            ("steps", &mut self.steps),
            ("makes", &mut self.makes),
            ("gives", &mut self.gives),
            ("form_notes", &mut self.notes),
        ]
    }
}
