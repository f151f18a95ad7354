//! The backup: one file of JSON with everything a bar has written down, described by `tests/fixtures/backup.schema.json`.
//!
//! Reading one is reading what a stranger may have written: sizes are limited, ids are checked, and nothing in it is
//! more than text.

use std::fmt;

use serde::{Deserialize, Serialize};

use super::recipe;

use crate::book::{Book, Card, Import, Own, Run, Tick, Way};

/// What the file says it is.
pub const KIND: &str = "meniscus backup";
/// The version this program writes; 1 had no runs.
pub const VERSION: u32 = 2;

/// Largest file, longest text, most records and most forms that are read.
pub const MOST_BYTES: usize = 8_000_000;
/// Ten times what a field takes on screen, in characters, so that whatever was kept comes back.
const LONGEST: usize = 200_000;
const MOST_RECORDS: usize = 20_000;
const MOST_FORMS: usize = 1_000;
const LONGEST_ID: usize = 200;
/// Largest number of a prep, and the latest time, the last of the calendar of browsers.
const MOST_KEY: u32 = 1_000_000;
const LATEST: u64 = 8_640_000_000_000_000;

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    kind: String,
    version: u32,
    at: u64,
    #[serde(default)]
    specs: Vec<Record<Card>>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    ingredients: Vec<Record<Own>>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    runs: Vec<Record<Run>>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Record<T> {
    id: String,
    data: T,
}

/// Why a file is not taken.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ImportProblem {
    /// Nothing in it.
    Empty,
    /// Larger than any book.
    TooLarge,
    /// No JSON, or not what is expected there; what the reader said, with line and column.
    NotRead(String),
    /// JSON of something else.
    OtherKind,
    /// Written by a later version.
    Newer(u32),
    /// A record that cannot be taken: which, its name, and the field.
    Record(String, &'static str),
}

impl fmt::Display for ImportProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            ImportProblem::Empty => f.write_str("There is nothing in it."),
            ImportProblem::TooLarge => f.write_str("It is larger than 8 MB, which no book of specs is."),
            ImportProblem::NotRead(said) => write!(f, "It can't be read: {said}. Nothing was changed."),
            ImportProblem::OtherKind => {
                f.write_str("It is no Meniscus backup and no schema.org recipe. Nothing was changed.")
            }
            ImportProblem::Newer(version) => {
                write!(f, "A newer Meniscus wrote it (backup version {version}). Update first; nothing was changed.")
            }
            ImportProblem::Record(which, field) => {
                write!(f, "{which} its {field} can't be used. Nothing was changed.")
            }
        }
    }
}

/// The text of a backup of the book.
///
/// # Errors
/// Never in practice: records have JSON.
pub fn backup(book: &Book, now: u64) -> Result<String, serde_json::Error> {
    fn records<T: Clone>(entries: &[std::sync::Arc<crate::book::Entry<T>>]) -> Vec<Record<T>> {
        entries.iter().map(|entry| Record { id: entry.id.clone(), data: entry.value.clone() }).collect()
    }
    let (specs, ingredients, runs) = (records(&book.cards), records(&book.own), records(&book.runs));
    serde_json::to_string_pretty(&File { kind: KIND.into(), version: VERSION, at: now, specs, ingredients, runs })
}

/// The text of a backup of one spec, as short as it goes, to share.
///
/// # Errors
/// As [`backup`].
pub fn one(id: &str, card: &Card) -> Result<String, serde_json::Error> {
    let specs = vec![Record { id: id.to_owned(), data: card.clone() }];
    // Nothing of it is newer than version 1: an older Meniscus opens the link too.
    let file = File { kind: KIND.into(), version: 1, at: 0, specs, ingredients: Vec::new(), runs: Vec::new() };
    serde_json::to_string(&file)
}

#[derive(Deserialize)]
struct Head {
    #[serde(default)]
    kind: Option<String>,
    #[serde(default)]
    version: serde_json::Value,
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
    let said = |problem: serde_json::Error| {
        let field = field_at(text, problem.line(), problem.column());
        let field = field.map_or_else(String::new, |field| format!(", in “{}”", short(field)));
        ImportProblem::NotRead(format!("{problem}{field}"))
    };
    if text.starts_with('[') {
        return recipe::read(text);
    }
    let head: Head = serde_json::from_str(text).map_err(said)?;
    if head.kind.as_deref() != Some(KIND) {
        return recipe::read(text);
    }
    if let Some(version) =
        head.version.as_u64().and_then(|version| u32::try_from(version).ok()).filter(|v| *v > VERSION)
    {
        return Err(ImportProblem::Newer(version));
    }
    let file: File = serde_json::from_str(text).map_err(said)?;
    if file.kind != KIND || file.version == 0 {
        return Err(ImportProblem::OtherKind);
    }
    if file.specs.len() + file.ingredients.len() + file.runs.len() > MOST_RECORDS {
        return Err(ImportProblem::TooLarge);
    }
    let mut import = Import::default();
    for (number, Record { id, mut data }) in file.specs.into_iter().enumerate() {
        let which = || format!("Spec {}, “{}”:", number + 1, short(&data.name));
        check(&id, import.cards.iter().any(|(other, _)| *other == id), &which)?;
        if data.forms.len() > MOST_FORMS {
            return Err(ImportProblem::Record(which(), "number of forms"));
        }
        let which = which();
        let ways = data.forms.iter_mut().flat_map(Way::fields).map(|(name, text)| (name, &*text)).find(is_too_long);
        if let Some((field, _)) = ways {
            return Err(ImportProblem::Record(which, field));
        }
        if let Some((field, _)) = data.fields().into_iter().map(|(name, text)| (name, &*text)).find(is_too_long) {
            return Err(ImportProblem::Record(which, field));
        }
        if data.forms.is_empty() {
            data.forms.push(Way::default());
        }
        import.cards.push((id, data));
    }
    for (number, Record { id, mut data }) in file.ingredients.into_iter().enumerate() {
        let which = || format!("Ingredient {}, “{}”:", number + 1, short(&data.name));
        check(&id, import.own.iter().any(|(other, _)| *other == id), &which)?;
        let which = which();
        if let Some((field, _)) = data.fields().into_iter().map(|(name, text)| (name, &*text)).find(is_too_long) {
            return Err(ImportProblem::Record(which, field));
        }
        import.own.push((id, data));
    }
    for (number, Record { id, mut data }) in file.runs.into_iter().enumerate() {
        let which = || format!("Run sheet {}, “{}”:", number + 1, short(&data.name));
        check(&id, import.runs.iter().any(|(other, _)| *other == id), &which)?;
        let which = which();
        let is_twice = |at: usize| data.parts[..at].iter().any(|part| part.key == data.parts[at].key);
        if (0..data.parts.len()).any(|at| is_twice(at) || data.parts[at].key > MOST_KEY) {
            return Err(ImportProblem::Record(which, "key of a prep"));
        }
        let times = data.marks.values().flat_map(|mark| [mark.started, mark.done]).chain([data.made, data.finished]);
        if times.into_iter().any(|at| at > LATEST) {
            return Err(ImportProblem::Record(which, "time"));
        }
        if data.parts.len() > MOST_FORMS || data.marks.len() > 100 * MOST_FORMS || data.log.len() > 100 * MOST_FORMS {
            return Err(ImportProblem::Record(which, "number of preps"));
        }
        let texts = data.parts.iter().flat_map(|part| part.texts.values());
        let logged = data.log.iter().flat_map(|step| [&step.key, &step.title, &step.words, &step.planned]);
        if texts.chain(logged).chain(data.marks.keys()).any(|text| text.chars().count() > LONGEST) {
            return Err(ImportProblem::Record(which, "text"));
        }
        let marks = data.marks.values_mut().flat_map(Tick::fields).map(|(name, text)| (name, &*text)).find(is_too_long);
        if let Some((field, _)) = marks {
            return Err(ImportProblem::Record(which, field));
        }
        if let Some((field, _)) = data.fields().into_iter().map(|(name, text)| (name, &*text)).find(is_too_long) {
            return Err(ImportProblem::Record(which, field));
        }
        import.runs.push((id, data));
    }
    Ok(import)
}

/// The name of the field that stands at, or last before, a place in JSON.
fn field_at(text: &str, line: usize, column: usize) -> Option<&str> {
    let start: usize = text.split_inclusive('\n').take(line.checked_sub(1)?).map(str::len).sum();
    let before = text.get(..(start + column).min(text.len()))?;
    let name = before[..before.rfind(':')?].trim_end().strip_suffix('"')?;
    Some(&name[name.rfind('"')? + 1..])
}

fn is_too_long((_, text): &(&'static str, &String)) -> bool {
    text.chars().count() > LONGEST
}

fn short(name: &str) -> String {
    name.chars().take(40).collect()
}

/// Ids are short and plain, so that they make good keys, and each stands once.
fn check(id: &str, is_twice: bool, which: &dyn Fn() -> String) -> Result<(), ImportProblem> {
    let is_plain = |c: char| c.is_ascii_alphanumeric() || matches!(c, '-' | '~');
    if id.is_empty() || id.len() > LONGEST_ID || !id.chars().all(is_plain) || is_twice {
        return Err(ImportProblem::Record(which(), "id"));
    }
    Ok(())
}
