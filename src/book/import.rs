//! What an import brings, set against the book.

use super::card::{Card, Own};
use super::records::{Book, Entry};
use super::run::Run;
use super::slot::{Field, Record, Written};

/// How a record of an import stands to the book.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// The book has none of this id.
    New,
    /// The book has the same.
    Same,
    /// The book has another of this id.
    Differing,
}

/// Records read from a backup or another file.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Import {
    /// Specs, by id.
    pub cards: Vec<(String, Card)>,
    /// Ingredients, by id.
    pub own: Vec<(String, Own)>,
    /// Run sheets and the log, by id.
    pub runs: Vec<(String, Run)>,
}

/// A record with its id.
impl<T: Written> Record for (String, T) {
    fn slots(&mut self) -> Vec<Field<'_>> {
        vec![Field::needed("id", &mut self.0), Field::needed("data", &mut self.1)]
    }
}

/// How a record stands to the one of its id.
#[must_use]
pub fn standing<T: PartialEq>(there: Option<&Entry<T>>, value: &T) -> Standing {
    match there {
        None => Standing::New,
        Some(entry) if entry.value == *value => Standing::Same,
        Some(_) => Standing::Differing,
    }
}

impl Import {
    /// How a spec of it stands to the book.
    #[must_use]
    pub fn card_standing(&self, book: &Book, at: usize) -> Standing {
        self.cards.get(at).map_or(Standing::Same, |(id, card)| standing(book.card(id).map(AsRef::as_ref), card))
    }

    /// How an ingredient of it stands to the book.
    #[must_use]
    pub fn own_standing(&self, book: &Book, at: usize) -> Standing {
        self.own.get(at).map_or(Standing::Same, |(id, own)| standing(book.own(id).map(AsRef::as_ref), own))
    }

    /// How a run of it stands to the book.
    #[must_use]
    pub fn run_standing(&self, book: &Book, at: usize) -> Standing {
        self.runs.get(at).map_or(Standing::Same, |(id, run)| standing(book.run(id).map(AsRef::as_ref), run))
    }

    /// How many are new, the same, and differing.
    #[must_use]
    pub fn count(&self, book: &Book) -> [usize; 3] {
        let cards = (0..self.cards.len()).map(|at| self.card_standing(book, at));
        let own = (0..self.own.len()).map(|at| self.own_standing(book, at));
        let runs = (0..self.runs.len()).map(|at| self.run_standing(book, at));
        let mut count = [0; 3];
        for standing in cards.chain(own).chain(runs) {
            count[standing as usize] += 1;
        }
        count
    }
}
