//! The backup: one file of JSON with everything a bar has written down, described by `tests/fixtures/backup.schema.json`.
//!
//! Reading one is reading what a stranger may have written: sizes are limited, ids are checked, and nothing in it is
//! more than text.

use std::sync::Arc;

use super::limits;
use super::problem::{ImportProblem, MOST_BYTES};
use super::read::{Unknown, read as read_json};
use super::recipe;
use super::write::{Layout, written};
use crate::book::{Book, Card, Entry, Field, Import, Loose, Record, Slot, Written};

/// What the file says it is.
pub const KIND: &str = "meniscus backup";
/// The version this program writes; 1 had no runs.
pub const VERSION: u32 = 2;

/// The file.
#[derive(Default)]
struct File {
    kind: String,
    version: u32,
    at: u64,
    records: Import,
}

impl Record for File {
    fn slots(&mut self) -> Vec<Field<'_>> {
        vec![
            Field::needed("kind", &mut self.kind),
            Field::needed("version", &mut self.version),
            Field::needed("at", &mut self.at),
            Field::usual("specs", &mut self.records.cards),
            Field::spare("ingredients", &mut self.records.own),
            Field::spare("runs", &mut self.records.runs),
        ]
    }
}

/// What is looked at first: whether it is ours, and which version.
#[derive(Default)]
struct Head {
    kind: Option<String>,
    version: Loose,
}

impl Record for Head {
    fn slots(&mut self) -> Vec<Field<'_>> {
        vec![Field::usual("kind", &mut self.kind), Field::usual("version", &mut self.version), Field::others()]
    }
}

/// The text of a backup of the book.
///
/// # Errors
/// Never in practice: records have JSON.
pub fn backup(book: &Book, now: u64) -> Result<String, serde_json::Error> {
    fn records<T: Written>(entries: &[Arc<Entry<T>>]) -> Vec<(String, T)> {
        entries.iter().map(|entry| (entry.id.clone(), entry.value.clone())).collect()
    }
    let records = Import { cards: records(&book.cards), own: records(&book.own), runs: records(&book.runs) };
    let mut file = File { kind: KIND.into(), version: VERSION, at: now, records };
    written(Slot::Record(&mut file), Layout::Wide)
}

/// The text of a backup of one spec, as short as it goes, to share.
///
/// # Errors
/// As [`backup`].
pub fn one(id: &str, card: &Card) -> Result<String, serde_json::Error> {
    let records = Import { cards: vec![(id.to_owned(), card.clone())], ..Import::default() };
    // Nothing of it is newer than version 1: an older Meniscus opens the link too.
    let mut file = File { kind: KIND.into(), version: 1, at: 0, records };
    written(Slot::Record(&mut file), Layout::Close)
}

/// Reads a backup: all of it or nothing.
///
/// # Errors
/// [`ImportProblem`], in words for the person who chose the file.
pub fn read(text: &str) -> Result<Import, ImportProblem> {
    if text.len() > MOST_BYTES {
        return Err(ImportProblem::TooLarge);
    }
    let text = text.trim_start_matches('\u{feff}').trim();
    if text.is_empty() {
        return Err(ImportProblem::Empty);
    }
    if text.starts_with('[') {
        return recipe::read(text);
    }
    let mut head = Head::default();
    read_into(text, &mut head)?;
    if head.kind.as_deref() != Some(KIND) {
        return recipe::read(text);
    }
    if let Loose::Number(version) = head.version
        && let Some(version) = u32::try_from(version).ok().filter(|version| *version > VERSION)
    {
        return Err(ImportProblem::Newer(version));
    }
    let mut file = File::default();
    read_into(text, &mut file)?;
    if file.kind != KIND || file.version == 0 {
        return Err(ImportProblem::OtherKind);
    }
    limits::check(&mut file.records)?;
    for (_, card) in file.records.cards.iter_mut().filter(|(_, card)| card.ways.is_empty()) {
        card.ways.push(Default::default());
    }
    Ok(file.records)
}

fn read_into(text: &str, record: &mut dyn Record) -> Result<(), ImportProblem> {
    read_json(text, Slot::Record(record), Unknown::Refused).map_err(|problem| {
        let field = field_at(text, problem.line(), problem.column());
        let field = field.map_or_else(String::new, |field| format!(", in “{}”", limits::short(field)));
        ImportProblem::NotRead(format!("{problem}{field}"))
    })
}

/// The name of the field that stands at, or last before, a place in JSON.
fn field_at(text: &str, line: usize, column: usize) -> Option<&str> {
    let start: usize = text.split_inclusive('\n').take(line.checked_sub(1)?).map(str::len).sum();
    let before = text.get(..(start + column).min(text.len()))?;
    let name = before[..before.rfind(':')?].trim_end().strip_suffix('"')?;
    Some(&name[name.rfind('"')? + 1..])
}
