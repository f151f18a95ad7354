//! A keeper in memory, for where a browser allows no storage.

use std::cell::RefCell;

use super::keeper::{Keeper, SaveProblem};
use crate::book::Texts;

/// Keeps texts in memory: they last as long as the page.
#[derive(Debug, Default)]
pub struct Memory {
    texts: RefCell<Texts>,
}

impl Keeper for Memory {
    fn get(&self, key: &str) -> Result<Option<String>, SaveProblem> {
        Ok(self.texts.borrow().get(key).cloned())
    }

    fn set(&self, key: &str, text: &str) -> Result<(), SaveProblem> {
        self.texts.borrow_mut().insert(key.to_owned(), text.to_owned());
        Ok(())
    }

    fn remove(&self, key: &str) -> Result<(), SaveProblem> {
        self.texts.borrow_mut().remove(key);
        Ok(())
    }

    fn keys(&self) -> Result<Vec<String>, SaveProblem> {
        Ok(self.texts.borrow().keys().map(str::to_owned).collect())
    }
}
