//! Several keys changed at once or not at all, and taken back when asked: also after a reload, and when the app was
//! killed halfway.
//!
//! Before anything is changed, what stood there is written down under [`KEY`] as a deed that is not done. When all
//! is changed it is marked as done. A deed found not done when the app opens is taken back.

use super::envelope::{Unreadable, checksum, open, sealed, stamp_of};
use super::keeper::{Keeper, SaveProblem, put, set_aside};
use crate::book::{Deed, Field, Record, Stamp, Written};

/// The key of the journal.
pub const KEY: &str = "acts";
/// Deeds of one place that can be taken back, and deeds in all.
const MOST_OF_ONE: usize = 20;
const MOST_DEEDS: usize = 60;

/// Something done to the book.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Noted {
    /// What it was, for the Undo button: "Delete Lantern".
    pub words: String,
    /// Grows from one deed to the next; zero where an older version wrote it.
    pub number: u32,
    /// When it was done, in milliseconds since 1970; zero where an older version wrote it.
    pub at: u64,
    /// Whether it is one of many records by its nature, however many it touched: an import, the demo.
    is_of_many: bool,
    /// Whether all of it was done.
    done: bool,
    /// What it changed.
    changes: Vec<Change>,
}

/// The key of a record, of which there may be other versions.
fn first(key: &str) -> &str {
    key.split('~').next().unwrap_or(key)
}

impl Noted {
    /// Where it is offered to be taken back: the key of the one record that it put or changed, in however many versions,
    /// or the prefix of the list that it took one from; empty where it touched more than one.
    #[must_use]
    pub fn on(&self) -> &str {
        match self.changes.as_slice() {
            _ if self.is_of_many => "",
            [Change { key, put: Some(_), .. }] => key,
            [Change { key, put: None, .. }] => key.find('/').map_or("", |at| &key[..=at]),
            [Change { key, put: Some(_), .. }, others @ ..] if others.iter().all(|other| first(&other.key) == key) => {
                key
            }
            _ => "",
        }
    }

    /// The record that it began; none where it did something else.
    #[must_use]
    pub fn began(&self) -> Option<&str> {
        match self.changes.as_slice() {
            [Change { key, was: None, put: Some(_), .. }] => Some(key),
            _ => None,
        }
    }

    /// The keys it touched.
    pub fn keys(&self) -> impl Iterator<Item = &str> {
        self.changes.iter().map(|change| change.key.as_str())
    }
}

#[derive(Clone, Debug, Default, PartialEq, Eq)]
struct Change {
    key: String,
    /// What stood there.
    was: Option<String>,
    /// The checksum of what was put there; none when it was taken away.
    put: Option<u32>,
    /// The checksum of that without its stamp; none also where an older version wrote it.
    data: Option<u32>,
}

impl Change {
    fn new(key: &str, was: Option<String>, put: Option<&str>) -> Change {
        Change { key: key.to_owned(), was, put: put.map(checksum), data: put.map(data_of) }
    }
}

impl Record for Noted {
    fn slots(&mut self) -> Vec<Field<'_>> {
        vec![
            Field::needed("words", &mut self.words),
            Field::usual("number", &mut self.number),
            Field::usual("at", &mut self.at),
            Field::usual("many", &mut self.is_of_many),
            Field::needed("done", &mut self.done),
            Field::needed("changes", &mut self.changes),
            Field::others(),
        ]
    }
}

impl Record for Change {
    fn slots(&mut self) -> Vec<Field<'_>> {
        vec![
            Field::needed("key", &mut self.key),
            Field::usual("was", &mut self.was),
            Field::usual("put", &mut self.put),
            Field::usual("data", &mut self.data),
            Field::others(),
        ]
    }
}

/// The deeds. A journal that cannot be read is set aside, not written over.
fn read(keeper: &dyn Keeper) -> Result<(Vec<Noted>, Stamp), SaveProblem> {
    let Some(text) = keeper.get(KEY)? else { return Ok(Default::default()) };
    match open::<Vec<Noted>>(&text) {
        Ok(opened) if opened.newer.is_none() => Ok((opened.data, opened.stamp)),
        _ if set_aside(keeper, KEY, &text) => Ok(Default::default()),
        _ => Err(SaveProblem::ReadOnly),
    }
}

fn write(keeper: &dyn Keeper, deeds: &mut Vec<Noted>, stamp: Stamp) -> Result<(), SaveProblem> {
    let text = sealed(deeds.slot(), stamp).map_err(|_| SaveProblem::Blocked)?;
    put(keeper, KEY, Some(&text))
}

/// What a deed puts under a key.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Put {
    /// The key.
    pub key: String,
    /// The text; none takes the key away.
    pub text: Option<String>,
    /// The write that it was made from; none for a key that must be free.
    pub from: Option<Stamp>,
}

/// Puts the texts in place, all or none.
///
/// # Errors
/// [`SaveProblem`]; then everything is as it was, but for older deeds that made room. [`SaveProblem::ReadOnly`] where a
/// key holds what cannot be read here, [`SaveProblem::Elsewhere`] where it was written since.
pub fn transact(keeper: &dyn Keeper, words: &str, puts: &[Put], now: u64) -> Result<(), SaveProblem> {
    transact_as(keeper, words, puts, false, now)
}

/// As [`transact`], for a deed of many records by its nature, or not.
///
/// # Errors
/// As [`transact`].
pub fn transact_as(
    keeper: &dyn Keeper,
    words: &str,
    puts: &[Put],
    is_of_many: bool,
    now: u64,
) -> Result<(), SaveProblem> {
    recover(keeper, now)?;
    let (mut deeds, stamp) = read(keeper)?;
    if deeds.last().is_some_and(|deed| !deed.done) {
        return Err(SaveProblem::Elsewhere);
    }
    let mut changes = Vec::new();
    for put in puts {
        changes.push(Change::new(&put.key, what_stands(keeper, put)?, put.text.as_deref()));
    }
    let number = deeds.iter().map(|deed| deed.number).max().unwrap_or(0).max(stamp.rev).wrapping_add(1);
    let deed = Noted { words: words.to_owned(), number, at: now, is_of_many, done: false, changes };
    let of_one = deeds.iter().filter(|other| other.on() == deed.on()).count();
    if let Some(oldest) = deeds.iter().position(|other| other.on() == deed.on()).filter(|_| of_one >= MOST_OF_ONE) {
        deeds.remove(oldest);
    }
    deeds.push(deed);
    while deeds.len() > MOST_DEEDS {
        deeds.remove(0);
    }
    let next: Vec<_> = puts.iter().map(|put| (put.key.clone(), put.text.clone())).collect();
    carry_out(keeper, deeds, &next, stamp, now, |_| {})
}

/// What stands under a key that something is to be put under.
fn what_stands(keeper: &dyn Keeper, put: &Put) -> Result<Option<String>, SaveProblem> {
    let was = keeper.get(&put.key)?;
    let there = match was.as_deref().map(stamp_of) {
        None => None,
        Some(Ok((stamp, None))) => Some(stamp),
        Some(_) => return Err(SaveProblem::ReadOnly),
    };
    if there == put.from { Ok(was) } else { Err(SaveProblem::Elsewhere) }
}

/// Puts texts in place without noting what stood there: for a store that has no room to note it.
///
/// # Errors
/// As [`transact`]; what was put before the one that fails stays.
pub fn without_undo(keeper: &dyn Keeper, puts: &[Put]) -> Result<(), SaveProblem> {
    puts.iter().try_for_each(|to_put| what_stands(keeper, to_put).map(drop))?;
    puts.iter().try_for_each(|to_put| put(keeper, &to_put.key, to_put.text.as_deref()))
}

/// Why the journal cannot be read, where it cannot. It is set aside before a new one begins.
#[must_use]
pub fn unreadable(keeper: &dyn Keeper) -> Option<Unreadable> {
    let text = keeper.get(KEY).ok()??;
    match open::<Vec<Noted>>(&text) {
        Ok(opened) => opened.newer.map(Unreadable::Newer),
        Err(why) => Some(why),
    }
}

/// Writes the last of `deeds` down, does it, and marks it as done after `finish` has looked at them.
fn carry_out(
    keeper: &dyn Keeper,
    mut deeds: Vec<Noted>,
    next: &[(String, Option<String>)],
    stamp: Stamp,
    now: u64,
    finish: impl FnOnce(&mut Vec<Noted>),
) -> Result<(), SaveProblem> {
    // Older deeds make room for this one.
    while let Err(problem) = write(keeper, &mut deeds, stamp.next(now)) {
        if deeds.len() <= 1 || problem == SaveProblem::Blocked {
            return Err(problem);
        }
        deeds.remove(0);
    }
    let done = next.iter().try_for_each(|(key, text)| put(keeper, key, text.as_deref()));
    let done = done.and_then(|()| {
        if let Some(deed) = deeds.last_mut() {
            deed.done = true;
        }
        finish(&mut deeds);
        write(keeper, &mut deeds, stamp.next(now).next(now))
    });
    if done.is_err() {
        // If this fails too, the deed stays written down as not done, and is taken back at the next chance.
        let _ = take_back(keeper);
    }
    done
}

/// Milliseconds within which another tab may still be at a deed; they take a tenth of that.
const AT_WORK: u64 = 5_000;

/// Takes back a deed that was begun and not done, once nobody can be at it any more. True when one is still to wait for.
///
/// # Errors
/// [`SaveProblem`] when it cannot be taken back yet.
pub fn recover(keeper: &dyn Keeper, now: u64) -> Result<bool, SaveProblem> {
    let (deeds, stamp) = read(keeper)?;
    match deeds.last() {
        Some(deed) if !deed.done && now.abs_diff(stamp.at) < AT_WORK => Ok(true),
        Some(deed) if !deed.done => take_back(keeper).map(|()| false),
        _ => Ok(false),
    }
}

/// Takes the last deed back where it is not done. What has been written since stays, and what stood there before comes
/// back beside it.
fn take_back(keeper: &dyn Keeper) -> Result<(), SaveProblem> {
    let (mut deeds, stamp) = read(keeper)?;
    let Some(deed) = deeds.pop_if(|deed| !deed.done) else { return Ok(()) };
    // What was added is taken away first, so that there is room for what stood there.
    for change in deed.changes.iter().filter(|change| change.was.is_none()) {
        if keeper.get(&change.key)?.as_deref().map(checksum) == change.put {
            put(keeper, &change.key, None)?;
        }
    }
    for Change { key, was, put: ours, .. } in deed.changes.iter().filter(|change| change.was.is_some()) {
        let there = keeper.get(key)?;
        if there == *was {
            continue;
        }
        if there.as_deref().map(checksum) == *ours {
            put(keeper, key, was.as_deref())?;
        } else if let Some(was) = was {
            put(keeper, &format!("{key}~{:08x}", checksum(was)), Some(was))?;
        }
    }
    write(keeper, &mut deeds, Stamp { rev: stamp.rev.wrapping_add(1), ..stamp })
}

/// The deeds that can be taken back, the latest last.
#[must_use]
pub fn deeds(keeper: &dyn Keeper) -> Vec<Noted> {
    let (mut deeds, _) = read(keeper).unwrap_or_default();
    deeds.retain(|deed| deed.done);
    deeds
}

/// The deeds that can be taken back, as the book lists them.
#[must_use]
pub fn listed(keeper: &dyn Keeper) -> Vec<Deed> {
    let listed = |deed: Noted| Deed { number: deed.number, on: deed.on().to_owned(), at: deed.at, words: deed.words };
    deeds(keeper).into_iter().map(listed).collect()
}

/// What the last deed was.
#[must_use]
pub fn last(keeper: &dyn Keeper) -> Option<String> {
    deeds(keeper).pop().map(|deed| deed.words)
}

/// The part of a saved text that its stamp does not touch: a record typed back to what it was is untouched.
fn data_of(text: &str) -> u32 {
    checksum(text.find("\"data\":").map_or(text, |at| &text[at..]))
}

/// Whether a key holds what a deed has put there.
fn is_untouched(there: Option<&str>, change: &Change) -> bool {
    there.map(checksum) == change.put || (there.is_some() && there.map(data_of) == change.data)
}

/// The records that a deed put or changed, and that have been changed since, by key.
///
/// # Errors
/// [`SaveProblem::Blocked`].
pub fn changed_since(keeper: &dyn Keeper, deed: &Noted) -> Result<Vec<String>, SaveProblem> {
    let mut changed = Vec::new();
    for change in &deed.changes {
        if !is_untouched(keeper.get(&change.key)?.as_deref(), change) {
            changed.push(change.key.clone());
        }
    }
    Ok(changed)
}

/// Takes the last deed back, as [`undo_one`].
///
/// # Errors
/// As [`undo_one`].
pub fn undo(
    keeper: &dyn Keeper,
    now: u64,
    merge: impl Fn(&str, &str, &str) -> Option<String>,
    beside: impl FnMut(&str) -> String,
) -> Result<Option<String>, SaveProblem> {
    let number = deeds(keeper).last().map_or(0, |deed| deed.number);
    undo_one(keeper, number, now, merge, beside)
}

/// Takes the deed of this number back, the latest of them. What has been changed since stays: `merge` puts it together with
/// what stood there before, by key, was and now; where it cannot, what stood there comes back beside it, under the key
/// that `beside` makes of its own. None when there is no such deed.
///
/// # Errors
/// [`SaveProblem`]; then everything is as it was, but for older deeds that made room.
pub fn undo_one(
    keeper: &dyn Keeper,
    number: u32,
    now: u64,
    merge: impl Fn(&str, &str, &str) -> Option<String>,
    mut beside: impl FnMut(&str) -> String,
) -> Result<Option<String>, SaveProblem> {
    recover(keeper, now)?;
    let (mut deeds, stamp) = read(keeper)?;
    if deeds.last().is_some_and(|deed| !deed.done) {
        return Err(SaveProblem::Elsewhere);
    }
    let Some(at) = deeds.iter().rposition(|deed| deed.number == number) else { return Ok(None) };
    let deed = deeds[at].clone();
    let mut next = Vec::new();
    for change in deed.changes {
        let there = keeper.get(&change.key)?;
        match (is_untouched(there.as_deref(), &change), change.was) {
            (true, was) => next.push((change.key, was)),
            (false, Some(was)) => match there.and_then(|there| merge(&change.key, &was, &there)) {
                Some(merged) => next.push((change.key, Some(merged))),
                None => next.push((beside(&change.key), Some(was))),
            },
            // Added by the deed and changed since: it is somebody's work now.
            (false, None) => {}
        }
    }
    let mut changes = Vec::new();
    for (key, text) in &next {
        changes.push(Change::new(key, keeper.get(key)?, text.as_deref()));
    }
    let undoing = Noted { words: deed.words.clone(), changes, at: now, ..Noted::default() };
    deeds.push(undoing);
    // Older deeds may have gone to make room: it is found by its number.
    let both_go = |deeds: &mut Vec<Noted>| {
        deeds.pop();
        if let Some(at) = deeds.iter().rposition(|deed| deed.number == number) {
            deeds.remove(at);
        }
    };
    carry_out(keeper, deeds, &next, stamp, now, both_go)?;
    Ok(Some(deed.words))
}
