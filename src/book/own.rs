//! An ingredient of the bar's own: one that it buys and has measured, or a prep that it makes.

use super::origin::Origin;
use super::slot::{Field, Record};

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
    /// What it is made of here, a line for each, as in a spec; empty for what is bought.
    pub parts: String,
    /// How much comes out of those; empty for all of it.
    pub gives: String,
    /// Days that it keeps, as typed.
    pub keeps: String,
    /// What it was made from, where a tool or a spec made it.
    pub from: Origin,
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
            Field::spare("parts", &mut self.parts),
            Field::spare("gives", &mut self.gives),
            Field::spare("keeps", &mut self.keeps),
            Field::spare("from", &mut self.from),
            Field::usual("made", &mut self.made),
        ]
    }
}

impl Own {
    /// Its fields, by the names they are kept under.
    pub fn fields(&mut self) -> [(&'static str, &mut String); 11] {
        [
            ("name", &mut self.name),
            ("like", &mut self.like),
            ("strength", &mut self.strength),
            ("sugar", &mut self.sugar),
            ("brix", &mut self.brix),
            ("acid", &mut self.acid),
            ("holds", &mut self.holds),
            ("notes", &mut self.notes),
            ("parts", &mut self.parts),
            ("gives", &mut self.gives),
            ("keeps", &mut self.keeps),
        ]
    }
}
