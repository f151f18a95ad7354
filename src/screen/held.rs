//! The book as a bench holds it.

use std::ops::Deref;
use std::sync::Arc;

use crate::book::Book;

/// A book, shared. Two are the same when they are one.
#[derive(Clone, Debug, Default)]
pub struct Held(Arc<Book>);

impl Held {
    /// Holds a book.
    #[must_use]
    pub fn new(book: Book) -> Held {
        Held(Arc::new(book))
    }

    /// Changes the book: in place where nobody else holds it.
    pub fn change(&mut self, change: impl FnOnce(&mut Book)) {
        change(Arc::make_mut(&mut self.0));
    }
}

impl PartialEq for Held {
    fn eq(&self, other: &Held) -> bool {
        Arc::ptr_eq(&self.0, &other.0)
    }
}

impl Deref for Held {
    type Target = Book;

    fn deref(&self) -> &Book {
        &self.0
    }
}
