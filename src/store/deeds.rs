//! What is done to the book beyond typing: each deed as the texts it puts under keys, for the journal.

use serde::Serialize;

use super::keeper::SaveProblem;
use super::ledger::{INGREDIENTS, SPECS, sealed};
use crate::book::{Book, Card, DEMO, Entry, Import, Own, Stamp, Standing, Way, demo_cards, demo_own};

/// A deed, worked out.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Deed {
    /// What it is, for the Undo button.
    pub words: String,
    /// What it puts under which keys; none takes a key away.
    pub texts: Vec<(String, Option<String>)>,
    /// The record to open afterwards.
    pub open: Option<String>,
}

type Worked = Result<Deed, SaveProblem>;

fn name_of(name: &str) -> String {
    if name.trim().is_empty() { "a spec without a name".into() } else { name.trim().chars().take(40).collect() }
}

fn put<T: Serialize>(prefix: &str, id: &str, value: &T, now: u64) -> Result<(String, Option<String>), SaveProblem> {
    Ok((format!("{prefix}{id}"), Some(sealed(value, now)?)))
}

/// As the next write of a record that is there.
fn rewrite<T: Serialize>(
    prefix: &str,
    entry: &Entry<T>,
    value: &T,
    now: u64,
) -> Result<(String, Option<String>), SaveProblem> {
    let Stamp { rev, .. } = entry.stamp;
    let text = super::envelope::seal(value, Stamp { rev, at: 0 }.next(now)).map_err(|_| SaveProblem::Blocked)?;
    Ok((format!("{prefix}{}", entry.id), Some(text)))
}

/// Starts a spec with these lines.
///
/// # Errors
/// [`SaveProblem`] never in practice: records have JSON.
pub fn new_card(lines: &str, id: &str, now: u64) -> Worked {
    let mut card = Card::blank(now);
    for way in &mut card.forms {
        lines.clone_into(&mut way.lines);
    }
    Ok(Deed { words: "a new spec".into(), texts: vec![put(SPECS, id, &card, now)?], open: Some(id.to_owned()) })
}

/// Starts an ingredient.
///
/// # Errors
/// As [`new_card`].
pub fn new_own(id: &str, now: u64) -> Worked {
    let own = Own { like: "cordial".into(), made: now, ..Own::default() };
    Ok(Deed {
        words: "a new ingredient".into(),
        texts: vec![put(INGREDIENTS, id, &own, now)?],
        open: Some(id.to_owned()),
    })
}

/// Copies a spec.
///
/// # Errors
/// As [`new_card`].
pub fn duplicate(entry: &Entry<Card>, id: &str, now: u64) -> Worked {
    let card = Card { name: format!("{} (copy)", entry.value.name.trim()), made: now, ..entry.value.clone() };
    let words = format!("the copy of {}", name_of(&entry.value.name));
    Ok(Deed { words, texts: vec![put(SPECS, id, &card, now)?], open: Some(id.to_owned()) })
}

/// Takes a spec away.
#[must_use]
pub fn delete_card(entry: &Entry<Card>) -> Deed {
    let words = format!("deleting {}", name_of(&entry.value.name));
    Deed { words, texts: vec![(format!("{SPECS}{}", entry.id), None)], open: None }
}

/// Takes an ingredient away.
#[must_use]
pub fn delete_own(entry: &Entry<Own>) -> Deed {
    let words = format!("deleting {}", name_of(&entry.value.name));
    Deed { words, texts: vec![(format!("{INGREDIENTS}{}", entry.id), None)], open: None }
}

/// A card changed in a way that Undo should take back.
///
/// # Errors
/// As [`new_card`].
pub fn change(entry: &Entry<Card>, card: &Card, what: &str, now: u64) -> Worked {
    let words = format!("{what} of {}", name_of(&entry.value.name));
    Ok(Deed { words, texts: vec![rewrite(SPECS, entry, card, now)?], open: None })
}

/// The card with a form more, like the one that is open.
#[must_use]
pub fn with_way(card: &Card, at: usize) -> Card {
    let mut card = card.clone();
    let like = card.forms.get(at).cloned().unwrap_or_default();
    card.forms.push(Way { name: String::new(), ..like });
    card
}

/// The card without a form; the last one stays.
#[must_use]
pub fn without_way(card: &Card, at: usize) -> Card {
    let mut card = card.clone();
    if card.forms.len() > 1 && at < card.forms.len() {
        card.forms.remove(at);
    }
    card
}

/// Keeps this version of a spec under its first id, and takes the others away.
///
/// # Errors
/// As [`new_card`].
pub fn keep_this(book: &Book, entry: &Entry<Card>, now: u64) -> Worked {
    let first = entry.id.split('~').next().unwrap_or_default().to_owned();
    let mut texts = vec![match book.card(&first) {
        Some(there) => rewrite(SPECS, there, &entry.value, now)?,
        None => put(SPECS, &first, &entry.value, now)?,
    }];
    let all = book.rivals(&entry.id).map(|entry| entry.id.clone()).chain([entry.id.clone()]);
    texts.extend(all.filter(|id| *id != first).map(|id| (format!("{SPECS}{id}"), None)));
    Ok(Deed { words: format!("choosing one {}", name_of(&entry.value.name)), texts, open: Some(first) })
}

/// Keeps every version of a spec, each under an id of its own.
///
/// # Errors
/// As [`new_card`].
pub fn keep_both(book: &Book, entry: &Entry<Card>, now: u64, mut id: impl FnMut() -> String) -> Worked {
    let mut texts = Vec::new();
    let mut open = entry.id.clone();
    for rival in book.cards.iter().filter(|other| {
        other.rival_of().is_some() && (other.id == entry.id || book.rivals(&entry.id).any(|rival| rival.id == other.id))
    }) {
        let fresh = id();
        let card = Card { name: format!("{} (other)", rival.value.name.trim()), ..rival.value.clone() };
        texts.push(put(SPECS, &fresh, &card, now)?);
        texts.push((format!("{SPECS}{}", rival.id), None));
        if rival.id == entry.id {
            open = fresh;
        }
    }
    Ok(Deed { words: format!("keeping both {}", name_of(&entry.value.name)), texts, open: Some(open) })
}

/// Puts the demo in the book.
///
/// # Errors
/// As [`new_card`].
pub fn demo(now: u64) -> Worked {
    let mut texts = Vec::new();
    for (id, card) in demo_cards(now) {
        texts.push(put(SPECS, &id, &card, now)?);
    }
    for (id, own) in demo_own(now) {
        texts.push(put(INGREDIENTS, &id, &own, now)?);
    }
    Ok(Deed { words: "the demo".into(), texts, open: None })
}

/// Takes the demo away, changed or not.
#[must_use]
pub fn remove_demo(book: &Book) -> Deed {
    let cards = book.cards.iter().map(|entry| (SPECS, &entry.id));
    let own = book.own.iter().map(|entry| (INGREDIENTS, &entry.id));
    let texts =
        cards.chain(own).filter(|(_, id)| id.starts_with(DEMO)).map(|(prefix, id)| (format!("{prefix}{id}"), None));
    Deed { words: "taking the demo away".into(), texts: texts.collect(), open: None }
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
    let mut texts = Vec::new();
    for (at, (card_id, card)) in import.cards.iter().enumerate() {
        match (import.card_standing(book, at), merge, book.card(card_id)) {
            (Standing::New, ..) => texts.push(put(SPECS, card_id, card, now)?),
            (Standing::Differing, Merge::Replace, Some(entry)) if entry.newer.is_none() => {
                texts.push(rewrite(SPECS, entry, card, now)?);
            }
            (Standing::Differing, Merge::Beside, _) => texts.push(put(SPECS, &id(), card, now)?),
            _ => {}
        }
    }
    for (at, (own_id, own)) in import.own.iter().enumerate() {
        match (import.own_standing(book, at), merge, book.own(own_id)) {
            (Standing::New, ..) => texts.push(put(INGREDIENTS, own_id, own, now)?),
            (Standing::Differing, Merge::Replace, Some(entry)) if entry.newer.is_none() => {
                texts.push(rewrite(INGREDIENTS, entry, own, now)?);
            }
            (Standing::Differing, Merge::Beside, _) => texts.push(put(INGREDIENTS, &id(), own, now)?),
            _ => {}
        }
    }
    Ok(Deed { words: "the import".into(), texts, open: None })
}
