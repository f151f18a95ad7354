//! What a bar writes down for good: spec cards, and ingredients of its own. Texts as they were typed; every
//! figure is derived from them.

use serde::{Deserialize, Serialize};

/// A spec card: a drink, in one way of making it or in several.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Card {
    /// What it is called.
    pub name: String,
    /// Words to find it by, parted by commas.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub tags: String,
    /// Anything else.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub notes: String,
    /// When it was first written down, in milliseconds since 1970.
    pub made: u64,
    /// Its forms: the same drink made in several ways. At least one.
    pub forms: Vec<Way>,
}

/// One way of making a drink.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Way {
    /// What this way is called: "quick", "clear". May be empty when there is one.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub name: String,
    /// The lines: an amount and an ingredient, or words.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub lines: String,
    /// Key of the method.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub method: String,
    /// The glass.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub glass: String,
    /// What the glass holds.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub holds: String,
    /// The ice.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub ice: String,
    /// What goes on it.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub garnish: String,
    /// What to do, a line each; a line may hold a time, such as "rest 45 min".
    #[serde(skip_serializing_if = "String::is_empty")]
    pub steps: String,
}

impl Card {
    /// A card with one empty way.
    #[must_use]
    pub fn blank(made: u64) -> Card {
        Card { made, forms: vec![Way::default()], ..Card::default() }
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
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Own {
    /// What it is called in specs.
    pub name: String,
    /// Key of the ingredient of the library that it is like.
    pub like: String,
    /// Strength, as typed; empty for the library's.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub strength: String,
    /// Sugar, g/l.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub sugar: String,
    /// °Brix, in place of g/l.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub brix: String,
    /// Acid as citric, g/l.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub acid: String,
    /// Anything else: where it comes from, how it keeps, whom to tell.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub notes: String,
    /// When it was first written down, in milliseconds since 1970.
    pub made: u64,
}

impl Own {
    /// Its fields, by the names they are kept under.
    pub fn fields(&mut self) -> [(&'static str, &mut String); 7] {
        [
            ("name", &mut self.name),
            ("like", &mut self.like),
            ("strength", &mut self.strength),
            ("sugar", &mut self.sugar),
            ("brix", &mut self.brix),
            ("acid", &mut self.acid),
            ("notes", &mut self.notes),
        ]
    }
}
