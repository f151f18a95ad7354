//! A keeper that fails on demand: writes that throw or are dropped, room that runs out, and every moment at which a
//! killed app could have left it. For any integration test: `mod faulty;`, in a folder `#[path = "../faulty/mod.rs"]`
//! before it.

#![allow(dead_code)] // Each test uses what it needs of it.

use std::cell::{Cell, RefCell};
use std::collections::BTreeMap;

use meniscus::store::{Keeper, SaveProblem};

/// How a write goes wrong.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// It throws.
    Throws,
    /// It is dropped without a word.
    Dropped,
}

/// Keeps texts, until it is told to fail.
#[derive(Debug, Default)]
pub struct Faulty {
    texts: RefCell<BTreeMap<String, String>>,
    writes: Cell<u32>,
    fails: Cell<Option<(u32, Fault, bool)>>,
    room: Cell<Option<usize>>,
    /// Noted only once somebody has asked for it.
    history: RefCell<Option<Vec<BTreeMap<String, String>>>>,
}

impl Faulty {
    /// Makes write number `at` from now go wrong, counting from 0.
    pub fn fail_at(&self, at: u32, fault: Fault) {
        self.writes.set(0);
        self.fails.set(Some((at, fault, false)));
    }

    /// Makes every `nth` write from now on go wrong.
    pub fn fail_every(&self, nth: u32, fault: Fault) {
        self.writes.set(1);
        self.fails.set(Some((nth, fault, true)));
    }

    /// Makes every write arrive again.
    pub fn heal(&self) {
        self.fails.set(None);
    }

    /// Limits the room, in bytes of keys and texts.
    pub fn limit(&self, bytes: usize) {
        self.room.set(Some(bytes));
    }

    /// What it held after each write since the last call: where a killed app would have left it.
    pub fn take_history(&self) -> Vec<BTreeMap<String, String>> {
        self.history.borrow_mut().replace(Vec::new()).unwrap_or_default()
    }

    fn note(&self, texts: &BTreeMap<String, String>) {
        if let Some(history) = self.history.borrow_mut().as_mut() {
            history.push(texts.clone());
        }
    }

    /// A keeper that holds these texts.
    pub fn holding(texts: BTreeMap<String, String>) -> Faulty {
        Faulty { texts: RefCell::new(texts), ..Faulty::default() }
    }

    /// Everything in it, in order.
    pub fn dump(&self) -> BTreeMap<String, String> {
        self.texts.borrow().clone()
    }

    /// Puts a text in it as it is.
    pub fn plant(&self, key: &str, text: &str) {
        self.texts.borrow_mut().insert(key.to_owned(), text.to_owned());
    }

    fn fault(&self) -> Option<Fault> {
        let now = self.writes.replace(self.writes.get() + 1);
        let (at, fault, again) = self.fails.get()?;
        (if again { now.is_multiple_of(at) } else { now == at }).then_some(fault)
    }
}

impl Keeper for Faulty {
    fn get(&self, key: &str) -> Result<Option<String>, SaveProblem> {
        Ok(self.texts.borrow().get(key).cloned())
    }

    fn set(&self, key: &str, text: &str) -> Result<(), SaveProblem> {
        match self.fault() {
            Some(Fault::Throws) => return Err(SaveProblem::Full),
            Some(Fault::Dropped) => return Ok(()),
            None => {}
        }
        let mut texts = self.texts.borrow_mut();
        let others: usize =
            texts.iter().filter(|(other, _)| *other != key).map(|(key, text)| key.len() + text.len()).sum();
        if self.room.get().is_some_and(|room| others + key.len() + text.len() > room) {
            return Err(SaveProblem::Full);
        }
        texts.insert(key.to_owned(), text.to_owned());
        self.note(&texts);
        Ok(())
    }

    fn remove(&self, key: &str) -> Result<(), SaveProblem> {
        match self.fault() {
            Some(Fault::Throws) => return Err(SaveProblem::Full),
            Some(Fault::Dropped) => return Ok(()),
            None => {}
        }
        let mut texts = self.texts.borrow_mut();
        texts.remove(key);
        self.note(&texts);
        Ok(())
    }

    fn keys(&self) -> Result<Vec<String>, SaveProblem> {
        Ok(self.texts.borrow().keys().cloned().collect())
    }
}
