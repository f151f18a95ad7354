//! Records as they were read from the store, and the book of them.

use std::sync::Arc;

use super::card::Card;
use super::named::folded;
use super::order::{order, put_in_order};
use super::own::Own;
use super::run::Run;

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
    /// What letters stand side by side in it, so that a search can pass it by.
    pub pairs: Pairs,
}

/// The pairs of letters of a text, in any case, hashed into 256 bits: a text without all the pairs of a word does not
/// hold the word.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Pairs([u64; 4]);

impl Pairs {
    /// With those of a text.
    #[must_use]
    pub fn of(mut self, text: &str) -> Pairs {
        let mut before = b' ';
        for byte in text.bytes() {
            self.note(before, byte);
            before = byte;
        }
        self
    }

    fn note(&mut self, first: u8, second: u8) {
        let hash = first.to_ascii_lowercase().wrapping_mul(31) ^ second.to_ascii_lowercase().wrapping_mul(7);
        self.0[usize::from(hash >> 6)] |= 1 << (hash & 63);
    }

    /// The pairs within a word.
    #[must_use]
    pub fn within(word: &str) -> Pairs {
        let mut pairs = Pairs::default();
        for pair in word.as_bytes().windows(2) {
            pairs.note(pair[0], pair[1]);
        }
        pairs
    }

    /// Whether all of `other` are among these. Of a text not looked at, anything may be.
    #[must_use]
    pub fn may_hold(&self, other: &Pairs) -> bool {
        *self == Pairs::default() || self.0.iter().zip(other.0).all(|(mine, other)| mine & other == other)
    }
}

impl Entry<Card> {
    /// With its pairs of letters noted.
    #[must_use]
    pub fn noted(mut self) -> Entry<Card> {
        let Card { name, tags, ways, .. } = &self.value;
        let ways = ways.iter().flat_map(|way| [&way.name, &way.lines]);
        let with = |pairs: Pairs, text: &String| match text.is_ascii() {
            true => pairs.of(text),
            // Also as it is looked for without accents.
            false => pairs.of(text).of(&folded(text)),
        };
        self.pairs = [name, tags].into_iter().chain(ways).fold(Pairs::default(), with);
        self
    }
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

/// Something done to the book that can be taken back.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Deed {
    /// Its number in the journal.
    pub number: u32,
    /// What it was.
    pub words: String,
    /// The key of the record it changed, or the prefix of the list it took one from; empty where it touched more than one.
    pub on: String,
    /// When, in milliseconds since 1970; zero where that is not known.
    pub at: u64,
}

/// Everything a bar has written down.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Book {
    /// Specs, by name.
    pub cards: Vec<Arc<Entry<Card>>>,
    /// Whether the specs have been read.
    pub has_cards: bool,
    /// Whether any spec has another version: looked at before all are compared.
    pub has_rivals: bool,
    /// Ingredients of its own, by name.
    pub own: Vec<Arc<Entry<Own>>>,
    /// Run sheets and the log, the latest first.
    pub runs: Vec<Arc<Entry<Run>>>,
    /// What could not be read.
    pub unread: Vec<Unread>,
    /// What can be taken back, the latest last.
    pub deeds: Vec<Deed>,
    /// When the last backup was made, in milliseconds since 1970; none for never.
    pub last_backup: Option<u64>,
}

impl Book {
    /// Puts the lists in their order, and notes whether any spec has another version.
    pub fn sort(&mut self) {
        self.has_rivals = self.cards.iter().any(|entry| entry.rival_of().is_some());
        put_in_order(&mut self.cards, &|a, b| comes_after((&a.value.name, &a.id), (&b.value.name, &b.id)));
        put_in_order(&mut self.runs, &|a, b| (b.value.made, &a.id) > (a.value.made, &b.id));
        put_in_order(&mut self.own, &|a, b| comes_after((&a.value.name, &a.id), (&b.value.name, &b.id)));
    }

    /// The spec of this id.
    #[must_use]
    pub fn card(&self, id: &str) -> Option<&Arc<Entry<Card>>> {
        self.cards.iter().find(|entry| entry.id == id)
    }

    /// The place of the first spec that is called so, in any case.
    #[must_use]
    pub fn called(&self, name: &str) -> Option<usize> {
        let is_it = |entry: &Entry<Card>| entry.value.name.trim().eq_ignore_ascii_case(name);
        // Of many, which are in order, not each is looked at; one that is written with a blank before it is not found then.
        if self.cards.len() < FEW {
            return self.cards.iter().position(|entry| is_it(entry));
        }
        let at = self.cards.partition_point(|entry| lower(&entry.value.name).lt(lower(name)));
        self.cards.get(at).is_some_and(|entry| is_it(entry)).then_some(at)
    }

    /// The specs, what was written down last first; of one time by name.
    pub fn newest(&self) -> impl Iterator<Item = &Entry<Card>> {
        let cards = &self.cards;
        let order = order(cards.len(), &|a, b| cards[a].value.made < cards[b].value.made);
        order.unwrap_or_else(|| (0..cards.len()).collect()).into_iter().map(|at| cards[at].as_ref())
    }

    /// The ingredient of this id.
    #[must_use]
    pub fn own(&self, id: &str) -> Option<&Arc<Entry<Own>>> {
        self.own.iter().find(|entry| entry.id == id)
    }

    /// The run of this id.
    #[must_use]
    pub fn run(&self, id: &str) -> Option<&Arc<Entry<Run>>> {
        self.runs.iter().find(|entry| entry.id == id)
    }

    /// Other versions of a spec, itself left out.
    pub fn rivals<'a>(&'a self, id: &'a str) -> impl Iterator<Item = &'a Arc<Entry<Card>>> {
        let first = |id: &'a str| id.split('~').next().unwrap_or_default();
        let all = if self.has_rivals { self.cards.as_slice() } else { &[] };
        all.iter().filter(move |entry| entry.id != id && first(&entry.id) == first(id))
    }
}

/// Fewer specs than these are looked at one by one.
const FEW: usize = 50;

fn lower(name: &str) -> impl Iterator<Item = u8> {
    name.bytes().map(|byte| byte.to_ascii_lowercase())
}

/// By name in any case, then by id.
fn comes_after((a, a_id): (&str, &str), (b, b_id): (&str, &str)) -> bool {
    lower(a).cmp(lower(b)).then_with(|| a_id.cmp(b_id)).is_gt()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// As the standard library sorts, for many records, and again after one of them is renamed.
    #[test]
    fn a_book_of_thousands_is_in_order() {
        let card = |at: u32| {
            let name = format!("{}{}", if at.is_multiple_of(2) { "Lamp " } else { "lamp " }, at * 7919 % 1009);
            let value = Card { name, ..Card::default() };
            Arc::new(Entry { id: at.to_string(), value, stamp: Stamp::default(), newer: None, pairs: Pairs::default() })
        };
        let mut book = Book { cards: (0..5000).map(card).collect(), ..Book::default() };
        let key = |entry: &Arc<Entry<Card>>| (entry.value.name.to_ascii_lowercase(), entry.id.clone());
        for _ in 0..2 {
            let mut expected = book.cards.clone();
            expected.sort_by_key(key);
            book.sort();
            assert!(book.cards == expected);
            book.cards[17] = card(4000);
        }
        // And each is found by its name.
        for name in ["Lamp 0", "lamp 0", "LAMP 1008", "lamp 512", "lamp 1009", "", "zebra"] {
            let first = book.cards.iter().position(|entry| entry.value.name.eq_ignore_ascii_case(name));
            assert_eq!(book.called(name), first, "{name}");
        }
        let run = |(id, made): (&str, u64)| {
            let value = Run { made, ..Run::default() };
            Arc::new(Entry { id: id.into(), value, stamp: Stamp::default(), newer: None, pairs: Pairs::default() })
        };
        book.runs = [("c", 1), ("a", 1), ("b", 3), ("d", 2)].into_iter().map(run).collect();
        book.sort();
        assert_eq!(book.runs.iter().map(|entry| entry.id.as_str()).collect::<Vec<_>>(), ["b", "d", "a", "c"]);
    }
}
