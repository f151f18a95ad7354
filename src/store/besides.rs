//! What a bar has beside its book, out of the store for a backup and back into it.

use std::sync::Arc;

use super::envelope::{open, seal, stamp_of};
use super::forms::{TOOLS, stored_under};
use super::journal::{self, Put};
use super::keeper::{ASIDE, Keeper, SaveProblem};
use super::kept::Kept;
use super::ledger::{INGREDIENTS, RUNS, SPECS};
use crate::book::{Aside, Book, Entry, Stamp, Texts};

/// Everything in the store that could not be read here: what has been set aside, and what is left where it stands,
/// damaged or of a later version.
///
/// # Errors
/// [`SaveProblem::Blocked`].
pub fn unread(keeper: &dyn Keeper, book: &Book) -> Result<Vec<Aside>, SaveProblem> {
    fn newer<T>(prefix: &str, entries: &[Arc<Entry<T>>], keys: &mut Vec<String>) {
        let newer = entries.iter().filter(|entry| entry.newer.is_some());
        keys.extend(newer.map(|entry| format!("{prefix}{}", entry.id)));
    }
    let mut keys: Vec<String> = book.unread.iter().map(|unread| unread.key.clone()).collect();
    newer(SPECS, &book.cards, &mut keys);
    newer(INGREDIENTS, &book.own, &mut keys);
    newer(RUNS, &book.runs, &mut keys);
    let of_book = keys.len();
    keys.extend(
        keeper
            .keys()?
            .into_iter()
            .filter(|key| key.starts_with(ASIDE) || key.starts_with(TOOLS) || key == journal::KEY),
    );
    let mut all = Vec::new();
    for (at, key) in keys.into_iter().enumerate() {
        let Some(text) = keeper.get(&key)? else { continue };
        let key = match key.strip_prefix(ASIDE) {
            Some(aside) => aside.rsplit_once('/').map_or(aside, |(key, _)| key).to_owned(),
            None if at < of_book || is_unread_form(&key, &text) => key,
            None => continue,
        };
        let aside = Aside { key, text };
        // What was set aside may stand where it stood, too.
        if !all.contains(&aside) {
            all.push(aside);
        }
    }
    Ok(all)
}

/// Whether a text is that of a form, or the journal, and cannot be read.
fn is_unread_form(key: &str, text: &str) -> bool {
    let is_ours = |newer: Option<u32>| newer.is_none();
    match key {
        journal::KEY => !stamp_of(text).is_ok_and(|(_, newer)| is_ours(newer)),
        key if key.starts_with(TOOLS) => !open::<Kept>(text).is_ok_and(|opened| is_ours(opened.newer)),
        _ => false,
    }
}

/// Puts texts aside that are not here yet, each under a free key.
///
/// # Errors
/// [`SaveProblem::Blocked`].
pub fn put_aside(keeper: &dyn Keeper, all: &[Aside]) -> Result<Vec<Put>, SaveProblem> {
    let mut puts: Vec<Put> = Vec::new();
    for Aside { key, text } in all {
        if keeper.get(key)?.as_ref() == Some(text) {
            continue;
        }
        for number in 1.. {
            let key = format!("{ASIDE}{key}/{number}");
            let put = puts.iter().find(|put| put.key == key).and_then(|put| put.text.clone());
            match put.map_or_else(|| keeper.get(&key), |text| Ok(Some(text)))? {
                Some(there) if there == *text => break,
                Some(_) => {}
                None => {
                    puts.push(Put { key, text: Some(text.clone()), from: None });
                    break;
                }
            }
        }
    }
    Ok(puts)
}

/// Puts texts in place of those of a form, which its own Undo brings back too; none where they stand there, or where
/// what stands there cannot be read here.
///
/// # Errors
/// [`SaveProblem::Blocked`].
pub fn put_form(keeper: &dyn Keeper, key: &str, texts: &Texts, now: u64) -> Result<Option<Put>, SaveProblem> {
    let key = stored_under(key);
    let (mut kept, from) = match keeper.get(&key)?.map(|text| open::<Kept>(&text)) {
        None => (Kept::default(), None),
        Some(Ok(opened)) if opened.newer.is_none() => (opened.data, Some(opened.stamp)),
        Some(_) => return Ok(None),
    };
    if kept.now == *texts {
        return Ok(None);
    }
    kept.replace(texts.clone());
    let stamp = from.unwrap_or_else(Stamp::default).next(now);
    let text = seal(&kept, stamp).map_err(|_| SaveProblem::Blocked)?;
    Ok(Some(Put { key, text: Some(text), from }))
}
