//! A run as the record it is: its texts, its parts, what is marked.

use super::sheet::sheet;
use super::{ICE, SPEC};
use crate::book::{Part, Run, Tick};
use crate::form::Bench;
use crate::form::fields::Texts;
use crate::form::screen::Deed;

/// The fields that belong to the record.
pub const FIELDS: [&str; 7] = ["name", "ready", "notes", "times", "got", "brix", "ph"];

/// A run with a text in place; none for a field that it has not, or that no step is open for.
#[must_use]
pub fn edited(run: &Run, step: &str, name: &str, text: &str) -> Option<Run> {
    let mut run = run.clone();
    if name == "times" {
        let part = run.parts.iter_mut().find(|part| part.tool == SPEC)?;
        part.texts.insert(name.to_owned(), text.to_owned());
        return Some(run);
    }
    let own = run.fields().into_iter().find(|(field, _)| *field == name).map(|(_, field)| text.clone_into(field));
    if own.is_none() {
        let mark = run.marks.entry(step.to_owned()).or_default();
        let (_, field) = mark.fields().into_iter().find(|(field, _)| *field == name)?;
        text.clone_into(field);
    }
    Some(run)
}

/// A run after a deed on it, and what that was; none when it changes nothing.
#[must_use]
pub fn changed(run: &Run, deed: Deed<'_>, now: u64) -> Option<(Run, &'static str)> {
    let Deed::Put(puts) = deed else { return None };
    let (name, text) = puts.first()?;
    let mut run = run.clone();
    let words = match *name {
        "start" => {
            let mark = run.marks.entry(text.clone()).or_default();
            (mark.started, mark.done) = (now, 0);
            "a timer"
        }
        "done" => {
            run.marks.entry(text.clone()).or_default().done = now;
            "a tick"
        }
        "not_done" => {
            let mark = run.marks.entry(text.clone()).or_default();
            (mark.started, mark.done) = (0, 0);
            "a tick"
        }
        "finish" => {
            run.finished = now;
            "finishing"
        }
        "reopen" => {
            run.finished = 0;
            "opening again"
        }
        "takes" => {
            let part = run.parts.iter_mut().find(|part| part.key.to_string() == *text)?;
            part.takes = !part.takes;
            "what a prep takes"
        }
        "remove" => {
            run.parts.retain(|part| part.key.to_string() != *text);
            run.marks.retain(|key, _| key.split('/').next() != Some(text.as_str()));
            "a prep"
        }
        _ => return None,
    };
    Some((run, words))
}

/// What each tool takes of what came before: its makings, and what it is made of.
const CHAINS: [(&str, &[&str]); 4] =
    [("clear", &["fruit"]), ("cordial", &["fruit", "clear"]), ("milk-wash", &[SPEC]), (SPEC, &["cordial"])];

/// A run with more parts; each takes what comes before where that is what it is made of.
#[must_use]
pub fn with_parts(run: &Run, parts: Vec<Part>) -> Run {
    let mut run = run.clone();
    for mut part in parts {
        part.key = run.next_key();
        let made_of = CHAINS.iter().find(|(tool, _)| *tool == part.tool).map_or(&[][..], |(_, of)| of);
        // What goes into a drink is made before it.
        let goes_in = !matches!(part.tool.as_str(), SPEC | ICE | "milk-wash");
        let drink = run.parts.iter().position(|part| part.tool == SPEC).filter(|_| goes_in);
        let at = drink.unwrap_or(run.parts.len());
        let before = at.checked_sub(1).and_then(|before| run.parts.get(before));
        part.takes = before.is_some_and(|before| made_of.contains(&before.tool.as_str()));
        run.parts.insert(at, part);
    }
    run
}

/// The key of the step that is open: the one chosen, or the next to do.
#[must_use]
pub fn open_step(texts: &Texts, bench: &Bench) -> String {
    let Some(entry) = texts.get("id").and_then(|id| bench.book.run(id)) else { return String::new() };
    let chosen = texts.get("step").map_or("", String::as_str);
    let sheet = sheet(&entry.value, bench);
    let open = sheet.steps.iter().find(|step| step.key == chosen).or_else(|| super::next(&sheet));
    open.map(|step| step.key.clone()).unwrap_or_default()
}

/// The texts of the run that is open, over those of its screen.
pub(in crate::form) fn with_record(texts: &Texts, bench: &Bench) -> Texts {
    let mut all = texts.clone();
    let Some(entry) = texts.get("id").and_then(|id| bench.book.run(id)) else { return all };
    let mut run = entry.value.clone();
    let key = open_step(texts, bench);
    let mut mark: Tick = run.marks.get(&key).cloned().unwrap_or_default();
    for (name, text) in run.fields().into_iter().chain(mark.fields()) {
        all.insert(name.to_owned(), std::mem::take(text));
    }
    let times = run.parts.iter().find(|part| part.tool == SPEC).and_then(|part| part.texts.get("times").cloned());
    all.insert("times".into(), times.unwrap_or_default());
    all
}
