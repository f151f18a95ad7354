//! Records as they were read from the store, and the book of them.

use std::sync::Arc;

use super::card::{Card, Own};

/// Which write of a key this is, and when it was.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Stamp {
    /// Counts the writes; 0 before the first.
    pub rev: u32,
    /// Milliseconds since 1970.
    pub at: u64,
}

impl Stamp {
    /// The stamp of the next write.
    #[must_use]
    pub const fn next(self, now: u64) -> Stamp {
        Stamp { rev: self.rev.wrapping_add(1), at: now }
    }
}

/// A record as it was read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry<T> {
    /// Its key without the prefix.
    pub id: String,
    /// The record.
    pub value: T,
    /// Which write of it this is.
    pub stamp: Stamp,
    /// The later version that wrote it: it is shown and not written again.
    pub newer: Option<u32>,
}

impl<T> Entry<T> {
    /// The record that this is another version of.
    #[must_use]
    pub fn rival_of(&self) -> Option<&str> {
        self.id.split_once('~').map(|(id, _)| id)
    }
}

/// Something that could not be read. It is still there, untouched.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unread {
    /// Its key.
    pub key: String,
    /// Why, in plain words.
    pub why: String,
}

/// Everything a bar has written down.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Book {
    /// Specs, by name.
    pub cards: Vec<Arc<Entry<Card>>>,
    /// Whether the specs have been read.
    pub has_cards: bool,
    /// Ingredients of its own, by name.
    pub own: Vec<Arc<Entry<Own>>>,
    /// What could not be read.
    pub unread: Vec<Unread>,
    /// What Undo would take back.
    pub last_act: Option<String>,
}

impl Book {
    /// Puts both lists in the order of their names.
    pub fn sort(&mut self) {
        self.cards.sort_unstable_by(|a, b| by_name((&a.value.name, &a.id), (&b.value.name, &b.id)));
        self.own.sort_unstable_by(|a, b| by_name((&a.value.name, &a.id), (&b.value.name, &b.id)));
    }

    /// The spec of this id.
    #[must_use]
    pub fn card(&self, id: &str) -> Option<&Arc<Entry<Card>>> {
        self.cards.iter().find(|entry| entry.id == id)
    }

    /// The ingredient of this id.
    #[must_use]
    pub fn own(&self, id: &str) -> Option<&Arc<Entry<Own>>> {
        self.own.iter().find(|entry| entry.id == id)
    }

    /// Other versions of a spec, itself left out.
    pub fn rivals<'a>(&'a self, id: &'a str) -> impl Iterator<Item = &'a Arc<Entry<Card>>> {
        let first = |id: &'a str| id.split('~').next().unwrap_or_default();
        self.cards.iter().filter(move |entry| entry.id != id && first(&entry.id) == first(id))
    }
}

/// In any case, then by id.
fn by_name((a, a_id): (&str, &str), (b, b_id): (&str, &str)) -> std::cmp::Ordering {
    fn lower(name: &str) -> impl Iterator<Item = u8> {
        name.bytes().map(|byte| byte.to_ascii_lowercase())
    }
    lower(a).cmp(lower(b)).then_with(|| a_id.cmp(b_id))
}
