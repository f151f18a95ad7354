//! A run as the record it is: its texts, its parts, what is marked.

use super::sheet::{Sheeted, sheet};
use super::{ICE, SPEC};
use crate::book::{Logged, Part, Run, Tick};
use crate::form::Bench;
use crate::form::fields::Texts;
use crate::form::screen::Deed;
use crate::substance::fruit::Fruit;

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
pub fn changed(run: &Run, deed: Deed<'_>, bench: &Bench) -> Option<(Run, &'static str)> {
    let Deed::Put(puts) = deed else { return None };
    let now = bench.clock.now;
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
            run.log = sheet(&run, bench).steps.iter().map(|step| logged(step, bench)).collect();
            "finishing"
        }
        "reopen" => {
            run.finished = 0;
            run.log.clear();
            "opening again"
        }
        "takes" => {
            let at = run.parts.iter().position(|part| part.key.to_string() == *text)?;
            // None, then each that it can be made of, then none again.
            let choices: Vec<u32> = sources(&run, at).map(|part| part.key).collect();
            let next = match run.parts[at].from {
                None => choices.first(),
                Some(now) => choices.iter().skip_while(|key| **key != now).nth(1),
            };
            run.parts[at].from = next.copied();
            "what a prep takes"
        }
        "remove" => {
            run.parts.retain(|part| part.key.to_string() != *text);
            run.marks.retain(|key, _| key.split('/').next() != Some(text.as_str()));
            for part in run.parts.iter_mut().filter(|part| part.from.is_some_and(|key| key.to_string() == *text)) {
                part.from = None;
            }
            "a prep"
        }
        _ => return None,
    };
    Some((run, words))
}

/// What each tool takes of what came before: its makings, and what it is made of.
const CHAINS: [(&str, &[&str]); 4] =
    [("clear", &["fruit"]), ("cordial", &["fruit", "clear"]), ("milk-wash", &[SPEC]), (SPEC, &["cordial"])];

/// The parts before one that it can be made of, the nearest first.
pub(super) fn sources(run: &Run, at: usize) -> impl Iterator<Item = &Part> {
    let tool = run.parts.get(at).map_or("", |part| part.tool.as_str());
    let made_of = CHAINS.iter().find(|(made, _)| *made == tool).map_or(&[][..], |(_, of)| of);
    run.parts.iter().take(at).rev().filter(|part| made_of.contains(&part.tool.as_str()))
}

/// A run with more parts; each takes what it is made of where that is on the sheet: of the same fruit, and not taken yet.
/// A drink takes a cordial only when it is told to: which of its lines is meant, a person knows.
#[must_use]
pub fn with_parts(run: &Run, parts: Vec<Part>) -> Run {
    let mut run = run.clone();
    for mut part in parts {
        part.key = run.next_key();
        // What goes into a drink is made before it.
        let goes_in = !matches!(part.tool.as_str(), SPEC | ICE | "milk-wash");
        let drink = run.parts.iter().position(|part| matches!(part.tool.as_str(), SPEC | ICE)).filter(|_| goes_in);
        let at = drink.unwrap_or(run.parts.len());
        run.parts.insert(at, part);
        let is_free = |source: &&Part| run.parts.iter().all(|part| part.from != Some(source.key));
        let is_alike =
            |source: &&Part| run.parts[at].tool == "milk-wash" || fruit_of(source) == fruit_of(&run.parts[at]);
        let source = sources(&run, at).filter(is_free).find(is_alike).map(|part| part.key);
        run.parts[at].from = source.filter(|_| run.parts[at].tool != SPEC);
    }
    run
}

/// The ingredient that a part is about: juice of a fruit; nothing for a drink.
fn fruit_of(part: &Part) -> &str {
    let text = |name: &str| part.texts.get(name).map_or("", String::as_str);
    match part.tool.as_str() {
        "fruit" | "clear" => Fruit::of(text("fruit")).ingredient,
        "cordial" => text("juice_of"),
        _ => "",
    }
}

/// A step as it stands, for the log.
fn logged(step: &Sheeted, bench: &Bench) -> Logged {
    Logged {
        key: step.key.clone(),
        title: step.title.clone(),
        words: step.step.words.clone(),
        planned: super::rows::planned(step, bench),
    }
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
