//! What an import brings, set against the book.

use super::by_name::{ByName, Texts};
use super::card::Card;
use super::own::Own;
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
    /// What is no record.
    pub besides: Besides,
    /// What is taken otherwise than it stands there, in words.
    pub remarks: Vec<String>,
    /// What cannot be taken: which, its name, and why, in words.
    pub refused: Vec<String>,
}

/// What a bar has beside its book.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Besides {
    /// What stands on the shelf.
    pub settings: Texts,
    /// What is typed in the tools, by the key of their form.
    pub tools: ByName<Texts>,
    /// What could not be read.
    pub aside: Vec<Aside>,
}

/// A text that could not be read, untouched.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Aside {
    /// The key that it stood under.
    pub key: String,
    /// The text.
    pub text: String,
}

impl Record for Aside {
    fn slots(&mut self) -> Vec<Field<'_>> {
        vec![Field::needed("key", &mut self.key), Field::needed("text", &mut self.text)]
    }
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

/// How a run stands to the one of its id. Waits that ran where it was saved do not run here: with them or without, it
/// is the same.
#[must_use]
pub fn run_standing(there: Option<&Entry<Run>>, run: &Run) -> Standing {
    match standing(there, run) {
        Standing::Differing => standing(there, &run.stilled(None)),
        standing => standing,
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
        self.runs.get(at).map_or(Standing::Same, |(id, run)| run_standing(book.run(id).map(AsRef::as_ref), run))
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
