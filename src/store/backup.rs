//! The backup: one file of JSON with everything a bar has, described by `tests/fixtures/backup.schema.json`: its book, its
//! shelf, what is typed in its tools, and what could not be read.
//!
//! Reading one is reading what a stranger may have written: sizes are limited, ids are made plain, and nothing in it is
//! more than text. What cannot be taken is named, and does not keep the rest from being taken.

use std::sync::Arc;

use super::envelope::checksum;
use super::fit::{fit, loose};
use super::limits::{Checked, MOST_RECORDS, is_plain_id, is_plain_key, short, too_long};
use super::problem::{ImportProblem, MOST_BYTES};
use super::recipe;
use super::write::{Layout, written};
use crate::book::{
    Aside, Besides, Book, Card, Entry, Field, Import, Loose, Origin, Record, Slot, Texts, Way, Written, stood_before,
};

/// What the file says it is.
pub const KIND: &str = "meniscus backup";
/// The version this program writes; 1 had no runs, 2 nothing but the book, 3 no slack and no temperatures in runs, and no
/// ingredient by all that it holds, 4 no preps, no tastings, and no forms that say what they were made from.
pub const VERSION: u32 = 5;

/// The file, as it is written.
#[derive(Default)]
struct File {
    kind: String,
    version: u32,
    at: u64,
    records: Import,
}

impl Record for File {
    fn slots(&mut self) -> Vec<Field<'_>> {
        let Import { cards, own, runs, besides, .. } = &mut self.records;
        vec![
            Field::needed("kind", &mut self.kind),
            Field::needed("version", &mut self.version),
            Field::needed("at", &mut self.at),
            Field::usual("specs", cards),
            Field::spare("ingredients", own),
            Field::spare("runs", runs),
            Field::spare("settings", &mut besides.settings),
            Field::spare("tools", &mut besides.tools),
            Field::spare("aside", &mut besides.aside),
        ]
    }
}

/// The text of a backup of the book and what there is besides.
///
/// # Errors
/// Never in practice: records have JSON.
pub fn backup(book: &Book, besides: Besides, now: u64) -> Result<String, serde_json::Error> {
    fn records<T: Written>(entries: &[Arc<Entry<T>>]) -> Vec<(String, T)> {
        entries.iter().map(|entry| (entry.id.clone(), entry.value.clone())).collect()
    }
    let (cards, own, runs) = (records(&book.cards), records(&book.own), records(&book.runs));
    let records = Import { cards, own, runs, besides, ..Import::default() };
    let mut file = File { kind: KIND.into(), version: VERSION, at: now, records };
    written(Slot::Record(&mut file), Layout::Wide)
}

/// The text of a backup of one spec, as short as it goes, to share.
///
/// # Errors
/// As [`backup`].
pub fn one(id: &str, card: &Card) -> Result<String, serde_json::Error> {
    let mut card = card.clone();
    let mut is_old = true;
    for way in &mut card.ways {
        // What one bar says of its guests, and what its forms were made from, is not handed on.
        way.tastings.clear();
        way.from = Origin::default();
        way.key.clear();
        is_old &= [&way.makes, &way.gives, &way.notes].into_iter().all(String::is_empty);
    }
    let records = Import { cards: vec![(id.to_owned(), card)], ..Import::default() };
    // Where nothing of it is newer than version 1, an older Meniscus opens the link too.
    let version = if is_old { 1 } else { VERSION };
    let mut file = File { kind: KIND.into(), version, at: 0, records };
    written(Slot::Record(&mut file), Layout::Close)
}

/// Reads a backup or recipes: all that can be taken, and what cannot.
///
/// # Errors
/// [`ImportProblem`] where nothing of it can, in words for the person who chose the file.
pub fn read(text: &str) -> Result<Import, ImportProblem> {
    if text.len() > MOST_BYTES {
        return Err(ImportProblem::TooLarge);
    }
    let text = text.trim_start_matches('\u{feff}').trim();
    if text.is_empty() {
        return Err(ImportProblem::Empty);
    }
    let file = loose(text)?;
    if !matches!(file.get("kind"), Loose::Text(kind) if kind == KIND) {
        return recipe::read_in(&file);
    }
    match file.get("version") {
        Loose::Number(version) if *version > u64::from(VERSION) => {
            return Err(ImportProblem::Newer(u32::try_from(*version).unwrap_or(u32::MAX)));
        }
        Loose::Number(1..) => {}
        _ => return Err(ImportProblem::OtherKind),
    }
    let count = |name: &str| if let Loose::List(list) = file.get(name) { list.len() } else { 0 };
    if ["specs", "ingredients", "runs", "aside"].map(count).iter().sum::<usize>() > MOST_RECORDS {
        return Err(ImportProblem::TooLarge);
    }
    Ok(taken(file))
}

/// What can be taken of a backup.
fn taken(file: Loose) -> Import {
    let mut import = Import::default();
    let Loose::Names(parts) = file else { return import };
    for (name, value) in parts {
        match name.as_str() {
            "kind" | "version" | "at" => {}
            "specs" => import.cards = records(&name, value, &mut import.remarks, &mut import.refused),
            "ingredients" => import.own = records(&name, value, &mut import.remarks, &mut import.refused),
            "runs" => import.runs = records(&name, value, &mut import.remarks, &mut import.refused),
            "settings" => import.besides.settings = texts("Settings", value, &mut import.refused).unwrap_or_default(),
            "tools" => tools(value, &mut import),
            "aside" => aside(value, &mut import),
            _ => import.refused.push(format!("“{}” is not known here.", short(&name))),
        }
    }
    for (_, card) in import.cards.iter_mut().filter(|(_, card)| card.ways.is_empty()) {
        card.ways.push(Way::default());
    }
    import
}

/// The entries of a list; that it is none is said.
fn entries(name: &str, value: Loose, refused: &mut Vec<String>) -> Vec<Loose> {
    match value {
        Loose::List(list) => list,
        _ => {
            refused.push(format!("“{name}”: a list was expected."));
            Vec::new()
        }
    }
}

/// A record as it stands in a file.
#[derive(Default)]
struct Raw<T> {
    id: Loose,
    data: T,
}

impl<T: Written> Record for Raw<T> {
    fn slots(&mut self) -> Vec<Field<'_>> {
        vec![Field::usual("id", &mut self.id), Field::needed("data", &mut self.data)]
    }
}

/// The records of one kind.
fn records<T: Checked>(
    name: &str,
    value: Loose,
    remarks: &mut Vec<String>,
    refused: &mut Vec<String>,
) -> Vec<(String, T)> {
    let (mut all, mut which) = (Vec::new(), Vec::new());
    for (at, value) in entries(name, value, refused).into_iter().enumerate() {
        let called = if let Loose::Text(name) = value.get("data").get("name") { short(name) } else { String::new() };
        let this = format!("{} {}, “{called}”", T::KIND, at + 1);
        let mut raw = Raw::<T>::default();
        let wrong = fit(value, Slot::Record(&mut raw)).err();
        match wrong.or_else(|| Some(format!("its {} can't be used", raw.data.unusable()?))) {
            Some(wrong) => refused.push(format!("{this}: {wrong}.")),
            None => {
                let id = if let Loose::Text(id) = raw.id { id } else { String::new() };
                all.push((id, raw.data));
                which.push(this);
            }
        }
    }
    make_ids_plain(&mut all, &which, remarks);
    all
}

/// Longest first part of an id that another version keeps.
const LONGEST_FIRST: usize = 100;

/// Gives those another id that have none that can be kept, or one that stands before. It is made of what they say, so
/// that the same file brings the same; a version of a record stays one of it.
fn make_ids_plain<T: Written>(all: &mut [(String, T)], which: &[String], remarks: &mut Vec<String>) {
    let twice = |all: &[(String, T)]| stood_before(&all.iter().map(|(id, _)| id.as_str()).collect::<Vec<_>>());
    let before = twice(all);
    for (at, (id, value)) in all.iter_mut().enumerate() {
        if before[at] || !is_plain_id(id) {
            let content = checksum(&written(value.slot(), Layout::Close).unwrap_or_default());
            let first = id.split_once('~').map(|(first, _)| first);
            *id = match first.filter(|first| is_plain_id(first) && first.len() <= LONGEST_FIRST) {
                Some(first) => format!("{first}~{content:08x}"),
                None => format!("i-{content:08x}"),
            };
            remarks.push(format!("{}: its id can't be kept, so it gets another.", which[at]));
        }
    }
    // Those that say the same are told apart by their place.
    loop {
        let before = twice(all);
        if !before.contains(&true) {
            return;
        }
        for (at, (id, _)) in all.iter_mut().enumerate().filter(|(at, _)| before[*at]) {
            id.push_str(&format!("-{at}"));
        }
    }
}

/// Texts by the name of their field.
fn texts(which: &str, value: Loose, refused: &mut Vec<String>) -> Option<Texts> {
    let mut texts = Texts::new();
    let wrong = fit(value, texts.slot()).err();
    match wrong.or_else(|| Some(format!("its {} can't be used", too_long(texts.slot(), "text")?))) {
        Some(wrong) => {
            refused.push(format!("{which}: {wrong}."));
            None
        }
        None => Some(texts),
    }
}

/// Most tools, and most texts set aside, that are taken.
const MOST_TOOLS: usize = 200;
const MOST_ASIDE: usize = 1_000;

fn tools(value: Loose, import: &mut Import) {
    let Loose::Names(tools) = value else {
        return import.refused.push("“tools”: a group of named values was expected.".into());
    };
    for (key, value) in tools {
        let which = format!("What is typed in “{}”", short(&key));
        if !is_plain_id(&key) || import.besides.tools.len() == MOST_TOOLS {
            import.refused.push(format!("{which}: no tool is called so."));
        } else if let Some(texts) = texts(&which, value, &mut import.refused) {
            import.besides.tools.insert(key, texts);
        }
    }
}

fn aside(value: Loose, import: &mut Import) {
    for (at, value) in entries("aside", value, &mut import.refused).into_iter().enumerate() {
        let mut aside = Aside::default();
        match fit(value, aside.slot()) {
            Ok(()) if at < MOST_ASIDE => {
                if !is_plain_key(&aside.key) {
                    "file".clone_into(&mut aside.key);
                }
                import.besides.aside.push(aside);
            }
            Ok(()) => import.refused.push(format!("Set aside, text {}: there are too many.", at + 1)),
            Err(wrong) => import.refused.push(format!("Set aside, text {}: {wrong}.", at + 1)),
        }
    }
}
