//! What is done to the book beyond typing: each deed as the texts it puts under keys, for the journal.

use std::sync::Arc;

use super::journal::Put;
use super::keeper::SaveProblem;
use super::ledger::{INGREDIENTS, RUNS, SPECS, sealed};
use crate::book::{
    Book, Card, DEMO, Entry, Import, MOST_WAYS, Own, Run, Standing, Way, Written, demo_cards, demo_own, run_standing,
    standing,
};

/// A deed, worked out.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Deed {
    /// What it is, for the Undo button.
    pub words: String,
    /// What it puts under which keys.
    pub puts: Vec<Put>,
    /// The record to open afterwards.
    pub open: Option<String>,
    /// Whether it is of many records by its nature: an import, the demo.
    pub is_of_many: bool,
}

type Worked = Result<Deed, SaveProblem>;

fn name_of(name: &str) -> String {
    if name.trim().is_empty() { "one without a name".into() } else { name.trim().chars().take(40).collect() }
}

/// A record under a key that must be free.
fn put<T: Written>(prefix: &str, id: &str, value: &T, now: u64) -> Result<Put, SaveProblem> {
    Ok(Put { key: format!("{prefix}{id}"), text: Some(sealed(value, now)?), from: None })
}

/// As the next write of a record that is there.
fn rewrite<T: Written>(prefix: &str, entry: &Entry<impl Sized>, value: &T, now: u64) -> Result<Put, SaveProblem> {
    let text = super::envelope::seal(value, entry.stamp.next(now)).map_err(|_| SaveProblem::Blocked)?;
    Ok(Put { key: format!("{prefix}{}", entry.id), text: Some(text), from: Some(entry.stamp) })
}

/// Takes a record away.
fn take_away<T>(prefix: &str, entry: &Entry<T>) -> Put {
    Put { key: format!("{prefix}{}", entry.id), text: None, from: Some(entry.stamp) }
}

/// Starts a spec with these lines.
///
/// # Errors
/// [`SaveProblem`] never in practice: records have JSON.
pub fn new_card(lines: &str, id: &str, now: u64) -> Worked {
    let mut card = Card::blank(now);
    for way in &mut card.ways {
        lines.clone_into(&mut way.lines);
    }
    Ok(Deed {
        words: "a new spec".into(),
        puts: vec![put(SPECS, id, &card, now)?],
        open: Some(id.to_owned()),
        is_of_many: false,
    })
}

/// Starts an ingredient.
///
/// # Errors
/// As [`new_card`].
pub fn new_own(id: &str, now: u64) -> Worked {
    let own = Own { like: "cordial".into(), made: now, ..Own::default() };
    Ok(Deed {
        words: "a new ingredient".into(),
        puts: vec![put(INGREDIENTS, id, &own, now)?],
        open: Some(id.to_owned()),
        is_of_many: false,
    })
}

/// Starts a spec with this form.
///
/// # Errors
/// As [`new_card`].
pub fn new_card_of(way: Way, id: &str, now: u64) -> Worked {
    let card = Card { ways: vec![way], ..Card::blank(now) };
    let words = "a new spec".into();
    Ok(Deed { words, puts: vec![put(SPECS, id, &card, now)?], open: Some(id.to_owned()), is_of_many: false })
}

/// Keeps what was made here as an ingredient; where there is one of its name that was made here too, what it is made of and
/// its figures change.
///
/// # Errors
/// As [`new_card`].
pub fn keep_own(book: &Book, own: &Own, id: &str, now: u64) -> Worked {
    let is_made = |there: &Own| !there.holds.is_empty() || !there.parts.is_empty();
    let is_it = |entry: &&Arc<Entry<Own>>| entry.value.name.trim() == own.name.trim() && is_made(&entry.value);
    let (put, id) = match book.own.iter().find(is_it) {
        Some(entry) => {
            let Own { holds, parts, gives, from, brix, .. } = own.clone();
            let brix = if brix.is_empty() { entry.value.brix.clone() } else { brix };
            let own = Own { holds, parts, gives, from, brix, ..entry.value.clone() };
            (rewrite(INGREDIENTS, entry, &own, now)?, entry.id.clone())
        }
        None => (put(INGREDIENTS, id, &Own { made: now, ..own.clone() }, now)?, id.to_owned()),
    };
    Ok(Deed { words: format!("keeping {}", name_of(&own.name)), puts: vec![put], open: Some(id), is_of_many: false })
}

/// Copies a spec.
///
/// # Errors
/// As [`new_card`].
pub fn duplicate(entry: &Entry<Card>, id: &str, now: u64) -> Worked {
    let mut card = Card { name: format!("{} (copy)", entry.value.name.trim()), made: now, ..entry.value.clone() };
    // Its forms are made from each other, not from those of the first.
    for way in card.ways.iter_mut().filter(|way| way.from.spec == entry.id) {
        id.clone_into(&mut way.from.spec);
    }
    let words = format!("the copy of {}", name_of(&entry.value.name));
    Ok(Deed { words, puts: vec![put(SPECS, id, &card, now)?], open: Some(id.to_owned()), is_of_many: false })
}

/// Takes a spec away.
#[must_use]
pub fn delete_card(entry: &Entry<Card>) -> Deed {
    let words = format!("deleting {}", name_of(&entry.value.name));
    Deed { words, puts: vec![take_away(SPECS, entry)], open: None, is_of_many: false }
}

/// Takes an ingredient away.
#[must_use]
pub fn delete_own(entry: &Entry<Own>) -> Deed {
    let words = format!("deleting {}", name_of(&entry.value.name));
    Deed { words, puts: vec![take_away(INGREDIENTS, entry)], open: None, is_of_many: false }
}

/// Starts a run sheet, or keeps one that was made.
///
/// # Errors
/// As [`new_card`].
pub fn new_run(run: &Run, id: &str, now: u64) -> Worked {
    Ok(Deed {
        words: "a new run sheet".into(),
        puts: vec![put(RUNS, id, run, now)?],
        open: Some(id.to_owned()),
        is_of_many: false,
    })
}

/// Takes a run away, by what it is called.
#[must_use]
pub fn delete_run(entry: &Entry<Run>, name: &str) -> Deed {
    let words = format!("deleting {}", name_of(name));
    Deed { words, puts: vec![take_away(RUNS, entry)], open: None, is_of_many: false }
}

/// A run changed: a tick, a timer, a part.
///
/// # Errors
/// As [`new_card`].
pub fn change_run(entry: &Entry<Run>, run: &Run, what: &str, now: u64) -> Worked {
    Ok(Deed { words: what.to_owned(), puts: vec![rewrite(RUNS, entry, run, now)?], open: None, is_of_many: false })
}

/// A card changed in a way that Undo should take back.
///
/// # Errors
/// As [`new_card`].
pub fn change(entry: &Entry<Card>, card: &Card, what: &str, now: u64) -> Worked {
    Ok(Deed { words: what.to_owned(), puts: vec![rewrite(SPECS, entry, card, now)?], open: None, is_of_many: false })
}

/// The card with a form more, like the one that is open, which nobody has tasted.
#[must_use]
pub fn with_way(card: &Card, at: usize) -> Card {
    let mut card = card.clone();
    let like = card.ways.get(at).cloned().unwrap_or_default();
    if card.ways.len() < MOST_WAYS {
        card.ways.push(Way { name: String::new(), key: String::new(), tastings: Vec::new(), ..like });
    }
    card
}

/// The card without a form; the last one stays.
#[must_use]
pub fn without_way(card: &Card, at: usize) -> Card {
    let mut card = card.clone();
    if card.ways.len() > 1 && at < card.ways.len() {
        card.ways.remove(at);
    }
    card
}

/// Keeps this version of a spec under its first id, and takes the others away.
///
/// # Errors
/// As [`new_card`].
pub fn keep_this(book: &Book, entry: &Entry<Card>, now: u64) -> Worked {
    let first = entry.id.split('~').next().unwrap_or_default().to_owned();
    let mut puts = vec![match book.card(&first) {
        Some(there) => rewrite(SPECS, there, &entry.value, now)?,
        None => put(SPECS, &first, &entry.value, now)?,
    }];
    let all = book.rivals(&entry.id).map(AsRef::as_ref).chain([entry]);
    puts.extend(all.filter(|version| version.id != first).map(|version| take_away(SPECS, version)));
    Ok(Deed {
        words: format!("choosing one {}", name_of(&entry.value.name)),
        puts,
        open: Some(first),
        is_of_many: false,
    })
}

/// Keeps every version of a spec, each under an id of its own.
///
/// # Errors
/// As [`new_card`].
pub fn keep_both(book: &Book, entry: &Entry<Card>, now: u64, mut id: impl FnMut() -> String) -> Worked {
    let mut puts = Vec::new();
    let mut open = entry.id.clone();
    for rival in book.cards.iter().filter(|other| {
        other.rival_of().is_some() && (other.id == entry.id || book.rivals(&entry.id).any(|rival| rival.id == other.id))
    }) {
        let fresh = id();
        let card = Card { name: format!("{} (other)", rival.value.name.trim()), ..rival.value.clone() };
        puts.push(put(SPECS, &fresh, &card, now)?);
        puts.push(take_away(SPECS, rival));
        if rival.id == entry.id {
            open = fresh;
        }
    }
    Ok(Deed {
        words: format!("keeping both {}", name_of(&entry.value.name)),
        puts,
        open: Some(open),
        is_of_many: false,
    })
}

/// Whether the book has, or cannot read, something under a key.
fn is_taken(book: &Book, prefix: &str, id: &str) -> bool {
    let is_read = match prefix {
        SPECS => book.card(id).is_some(),
        RUNS => book.run(id).is_some(),
        _ => book.own(id).is_some(),
    };
    is_read || book.unread.iter().any(|unread| unread.key.strip_prefix(prefix) == Some(id))
}

/// Puts the demo in the book; what is there of it, changed or not, stays.
///
/// # Errors
/// As [`new_card`].
pub fn demo(book: &Book, now: u64) -> Worked {
    let mut puts = Vec::new();
    for (id, card) in demo_cards(now) {
        if !is_taken(book, SPECS, &id) {
            puts.push(put(SPECS, &id, &card, now)?);
        }
    }
    for (id, own) in demo_own(now) {
        if !is_taken(book, INGREDIENTS, &id) {
            puts.push(put(INGREDIENTS, &id, &own, now)?);
        }
    }
    Ok(Deed { words: "the demo".into(), puts, open: None, is_of_many: true })
}

/// Takes the demo away. What was changed of it is somebody's own by now: it stays, and is named.
#[must_use]
pub fn remove_demo(book: &Book) -> (Deed, Vec<String>) {
    let mut kept = Vec::new();
    let mut puts = Vec::new();
    for entry in book.cards.iter().filter(|entry| entry.id.starts_with(DEMO) && entry.newer.is_none()) {
        match demo_cards(entry.value.made).contains(&(entry.id.clone(), entry.value.clone())) {
            true => puts.push(take_away(SPECS, entry)),
            false => kept.push(name_of(&entry.value.name)),
        }
    }
    for entry in book.own.iter().filter(|entry| entry.id.starts_with(DEMO) && entry.newer.is_none()) {
        match demo_own(entry.value.made).contains(&(entry.id.clone(), entry.value.clone())) {
            true => puts.push(take_away(INGREDIENTS, entry)),
            false => kept.push(name_of(&entry.value.name)),
        }
    }
    (Deed { words: "taking the demo away".into(), puts, open: None, is_of_many: true }, kept)
}

/// What to do with records that differ from those in the book.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Merge {
    /// Leave what is there.
    NewOnly,
    /// Put the import's in their place.
    Replace,
    /// Take the import's beside them.
    Beside,
}

/// Takes an import into the book.
///
/// # Errors
/// As [`new_card`].
pub fn import(book: &Book, import: &Import, merge: Merge, now: u64, mut id: impl FnMut() -> String) -> Worked {
    let mut puts = Vec::new();
    let taking = Taking { book, merge, now };
    taking.take(SPECS, &import.cards, |id| book.card(id), &standing, &mut id, &mut puts)?;
    taking.take(INGREDIENTS, &import.own, |id| book.own(id), &standing, &mut id, &mut puts)?;
    // Waits that ran where it was saved are not begun here.
    let runs = import.runs.iter().map(|(id, run)| match run_standing(book.run(id).map(AsRef::as_ref), run) {
        Standing::Same => (id.clone(), run.clone()),
        // A second one would ring, too.
        _ if merge == Merge::Beside => (id.clone(), run.stilled(None)),
        _ => (id.clone(), run.stilled(book.run(id).map(|entry| &entry.value))),
    });
    let runs: Vec<(String, Run)> = runs.collect();
    taking.take(RUNS, &runs, |id| book.run(id), &run_standing, &mut id, &mut puts)?;
    let words = format!("import of {}", puts.len());
    Ok(Deed { words, puts, open: None, is_of_many: true })
}

/// How an import is taken.
struct Taking<'a> {
    book: &'a Book,
    merge: Merge,
    now: u64,
}

impl<'a> Taking<'a> {
    /// Takes the records of one kind.
    fn take<T: Written + PartialEq + 'a>(
        &self,
        prefix: &str,
        records: &[(String, T)],
        there: impl Fn(&str) -> Option<&'a Arc<Entry<T>>>,
        standing: &dyn Fn(Option<&Entry<T>>, &T) -> Standing,
        id: &mut dyn FnMut() -> String,
        puts: &mut Vec<Put>,
    ) -> Result<(), SaveProblem> {
        for (record_id, value) in records {
            let there = there(record_id);
            match (standing(there.map(AsRef::as_ref), value), self.merge, there) {
                // What stands there and cannot be read is not written over.
                (Standing::New, ..) if is_taken(self.book, prefix, record_id) => {
                    puts.push(put(prefix, &id(), value, self.now)?);
                }
                (Standing::New, ..) => puts.push(put(prefix, record_id, value, self.now)?),
                (Standing::Differing, Merge::Replace, Some(entry)) if entry.newer.is_none() => {
                    puts.push(rewrite(prefix, entry, value, self.now)?);
                }
                (Standing::Differing, Merge::Beside, _) => puts.push(put(prefix, &id(), value, self.now)?),
                _ => {}
            }
        }
        Ok(())
    }
}
