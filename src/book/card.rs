//! What a bar writes down for good: spec cards, and ingredients of its own. Texts as they were typed; every
//! figure is derived from them.

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
    /// Its fields, by the names they are kept under.
    pub fn fields(&mut self) -> [(&'static str, &mut String); 8] {
        [
            ("way", &mut self.name),
            ("lines", &mut self.lines),
            ("method", &mut self.method),
            ("glass", &mut self.glass),
            ("holds", &mut self.holds),
            ("ice", &mut self.ice),
            ("garnish", &mut self.garnish),
            ("steps", &mut self.steps),
        ]
    }
}

/// An ingredient of the bar's own, or its own figures for one of the library's.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Own {
    /// What it is called in specs.
    pub name: String,
    /// Key of the ingredient of the library that it is like.
    pub like: String,
    /// Strength, as typed; empty for the library's.
    pub strength: String,
    /// Sugar, g/l.
    pub sugar: String,
    /// °Brix, in place of g/l.
    pub brix: String,
    /// What it titrates, g/l as citric.
    pub acid: String,
    /// All that it holds, where it was made here, as figures: "sugar 430 g/l, citric 20 g/l, salts 18 mmol/l".
    pub holds: String,
    /// Anything else: where it comes from, how it keeps, whom to tell.
    pub notes: String,
    /// When it was first written down, in milliseconds since 1970.
    pub made: u64,
}

impl Record for Own {
    fn slots(&mut self) -> Vec<Field<'_>> {
        vec![
            Field::usual("name", &mut self.name),
            Field::usual("like", &mut self.like),
            Field::spare("strength", &mut self.strength),
            Field::spare("sugar", &mut self.sugar),
            Field::spare("brix", &mut self.brix),
            Field::spare("acid", &mut self.acid),
            Field::spare("holds", &mut self.holds),
            Field::spare("notes", &mut self.notes),
            Field::usual("made", &mut self.made),
        ]
    }
}

impl Own {
    /// Its fields, by the names they are kept under.
    pub fn fields(&mut self) -> [(&'static str, &mut String); 8] {
        [
            ("name", &mut self.name),
            ("like", &mut self.like),
            ("strength", &mut self.strength),
            ("sugar", &mut self.sugar),
            ("brix", &mut self.brix),
            ("acid", &mut self.acid),
            ("holds", &mut self.holds),
            ("notes", &mut self.notes),
        ]
    }
}
