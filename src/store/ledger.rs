//! The book in the store: one record a key, so that there is no index to fall out of step.
//!
//! `spec/<id>`, `ingredient/<id>` and `run/<id>` each hold one record. A record that two tabs changed at once is kept twice:
//! the second under `spec/<id>~<other id>`, until somebody picks.

use super::envelope::{Opened, open, seal};
use super::journal::{self, Put};
use super::keeper::{Keeper, SaveProblem, put};
use super::kept::Kept;
use crate::book::{Book, Card, Entry, Own, Pairs, Run, Stamp, Unread, Way, Written};
use std::sync::Arc;

/// Where specs are kept.
pub const SPECS: &str = "spec/";
/// Where a bar's own ingredients are kept.
pub const INGREDIENTS: &str = "ingredient/";
/// Where run sheets and the log are kept.
pub const RUNS: &str = "run/";

/// The form that knows when the last backup was made.
const BACKUP: &str = "tool/backup";

/// Reads the ingredients and the runs, and the specs where asked. What cannot be read is listed and left as it is.
///
/// # Errors
/// [`SaveProblem::Blocked`].
pub fn load(keeper: &dyn Keeper, with_cards: bool) -> Result<Book, SaveProblem> {
    let mut book = Book { deeds: journal::listed(keeper), has_cards: with_cards, ..Book::default() };
    for key in keeper.keys()? {
        if let Some(id) = key.strip_prefix(SPECS).filter(|_| with_cards) {
            if let Some(entry) = read(keeper, &key, id, &mut book.unread)? {
                book.cards.push(Arc::new(with_a_way(entry)));
            }
        } else if let Some(id) = key.strip_prefix(INGREDIENTS) {
            book.own.extend(read(keeper, &key, id, &mut book.unread)?.map(Arc::new));
        } else if let Some(id) = key.strip_prefix(RUNS) {
            book.runs.extend(read(keeper, &key, id, &mut book.unread)?.map(Arc::new));
        }
    }
    book.sort();
    let backup = keeper.get(BACKUP)?.and_then(|text| open::<Kept>(&text).ok());
    book.last_backup = backup.and_then(|kept| kept.data.now.get("last")?.parse().ok());
    Ok(book)
}

/// Reads one spec anew; none when it is gone or cannot be read.
#[must_use]
pub fn card(keeper: &dyn Keeper, id: &str) -> Option<Entry<Card>> {
    read(keeper, &format!("{SPECS}{id}"), id, &mut Vec::new()).ok().flatten().map(with_a_way)
}

/// Reads one ingredient anew; none when it is gone or cannot be read.
#[must_use]
pub fn own(keeper: &dyn Keeper, id: &str) -> Option<Entry<Own>> {
    read(keeper, &format!("{INGREDIENTS}{id}"), id, &mut Vec::new()).ok().flatten()
}

/// Reads one run anew; none when it is gone or cannot be read.
#[must_use]
pub fn run(keeper: &dyn Keeper, id: &str) -> Option<Entry<Run>> {
    read(keeper, &format!("{RUNS}{id}"), id, &mut Vec::new()).ok().flatten()
}

/// A card has one way at least.
fn with_a_way(mut entry: Entry<Card>) -> Entry<Card> {
    if entry.value.ways.is_empty() {
        entry.value.ways.push(Way::default());
    }
    entry.noted()
}

fn read<T: Written>(
    keeper: &dyn Keeper,
    key: &str,
    id: &str,
    unread: &mut Vec<Unread>,
) -> Result<Option<Entry<T>>, SaveProblem> {
    let Some(text) = keeper.get(key)? else { return Ok(None) };
    Ok(match open(&text) {
        Ok(Opened { data, stamp, newer }) => {
            Some(Entry { id: id.to_owned(), value: data, stamp, newer, pairs: Pairs::default() })
        }
        Err(why) => {
            unread.push(Unread { key: key.to_owned(), why: why.to_string() });
            None
        }
    })
}

/// What became of a record that was to be saved.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Saved {
    /// It is saved, as this write.
    Kept(Stamp),
    /// Somebody else had changed it: theirs stays, and this is saved beside it under this id.
    Beside(String, Stamp),
}

/// Saves a record over the write it was made from.
///
/// # Errors
/// [`SaveProblem`]; what was there is there still.
pub fn save<T: Written + PartialEq>(
    keeper: &dyn Keeper,
    prefix: &str,
    entry: &Entry<T>,
    now: u64,
    other_id: &str,
) -> Result<Saved, SaveProblem> {
    if entry.newer.is_some() {
        return Err(SaveProblem::ReadOnly);
    }
    let key = format!("{prefix}{}", entry.id);
    let there = keeper.get(&key)?;
    let is_ours = match &there {
        // Taken away by another tab, or not yet written.
        None => true,
        Some(text) => open::<T>(text)
            .is_ok_and(|there| there.newer.is_none() && (there.stamp == entry.stamp || there.data == entry.value)),
    };
    let (id, stamp) = if is_ours {
        (entry.id.clone(), entry.stamp.next(now))
    } else {
        let first = entry.id.split('~').next().unwrap_or_default();
        (format!("{first}~{other_id}"), Stamp { rev: 1, at: now })
    };
    let text = seal(&entry.value, stamp).map_err(|_| SaveProblem::Blocked)?;
    put(keeper, &format!("{prefix}{id}"), Some(&text))?;
    Ok(if is_ours { Saved::Kept(stamp) } else { Saved::Beside(id, stamp) })
}

/// The text of a record as a first write.
///
/// # Errors
/// [`SaveProblem`] never in practice: records have JSON.
pub fn sealed<T: Written>(value: &T, now: u64) -> Result<String, SaveProblem> {
    seal(value, Stamp { rev: 1, at: now }).map_err(|_| SaveProblem::Blocked)
}

/// Characters of a text, as browsers count them.
fn length(text: &str) -> usize {
    text.chars().map(char::len_utf16).sum()
}

/// Bytes that keys and texts take up, as most browsers count them: two to a character.
#[must_use]
pub fn usage(keeper: &dyn Keeper) -> usize {
    let keys = keeper.keys().unwrap_or_default();
    let size = |key: &String| length(key) + length(&keeper.get(key).ok().flatten().unwrap_or_default());
    keys.iter().map(size).sum::<usize>() * 2
}

/// Bytes that most browsers give a page: 5 242 880 characters.
pub const ROOM: usize = 2 * 5_242_880;
/// What stands before each key in the browser's store, and what the journal writes round each change.
const BEFORE_KEY: usize = 9;
const ROUND_CHANGE: usize = 45;

/// Bytes that a deed takes up, with what its Undo keeps.
#[must_use]
pub fn takes(keeper: &dyn Keeper, puts: &[Put]) -> usize {
    let size = |put: &Put| {
        let was = keeper.get(&put.key).ok().flatten();
        let key = length(&put.key);
        let quoted = |text: &String| length(text) + text.matches(['"', '\\', '\n']).count();
        let noted = key + ROUND_CHANGE + was.as_ref().map_or(0, quoted);
        let grown = length(put.text.as_deref().unwrap_or_default()) + if was.is_none() { key + BEFORE_KEY } else { 0 };
        noted + grown.saturating_sub(was.as_deref().map_or(0, length))
    };
    puts.iter().map(size).sum::<usize>() * 2
}
