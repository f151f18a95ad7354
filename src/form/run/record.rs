//! A run as the record it is: its texts, its parts, what is marked.

use super::sheet::{Sheeted, sheet};
use super::{ICE, SPEC};
use crate::book::{Logged, MOST_PARTS, Part, Run, Tick};
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
        let at = times_part(&run, step)?;
        run.parts[at].texts.insert(name.to_owned(), text.to_owned());
        return Some(run);
    }
    let own = run.fields().into_iter().find(|(field, _)| *field == name).map(|(_, field)| text.clone_into(field));
    if own.is_none() {
        let mark = run.marks.or_default(step);
        let (_, field) = mark.fields().into_iter().find(|(field, _)| *field == name)?;
        text.clone_into(field);
    }
    Some(run)
}

/// A text of a run, as it stands.
#[must_use]
pub fn text_of(run: &Run, step: &str, name: &str) -> String {
    let mut run = run.clone();
    let mut mark = run.marks.get(step).cloned().unwrap_or_default();
    let found = run.fields().into_iter().chain(mark.fields()).find(|(field, _)| *field == name);
    found.map(|(_, text)| std::mem::take(text)).unwrap_or_default()
}

/// A run as it was before a deed, with what has been typed since: ticks and parts go back, words stay.
#[must_use]
pub fn undone(was: &Run, now: &Run) -> Run {
    let mut merged = was.clone();
    let mut typed = now.clone();
    for ((_, text), (_, since)) in merged.fields().into_iter().zip(typed.fields()) {
        *text = std::mem::take(since);
    }
    for part in &mut merged.parts {
        if let Some(since) = now.parts.iter().find(|since| since.key == part.key) {
            part.texts.clone_from(&since.texts);
        }
    }
    for (key, since) in typed.marks {
        let mark = merged.marks.or_default(&key);
        let Tick { got, brix, ph, .. } = since;
        (mark.got, mark.brix, mark.ph) = (got, brix, ph);
    }
    merged
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
            let mark = run.marks.or_default(text);
            (mark.started, mark.done) = (now, 0);
            "a timer"
        }
        "done" => {
            run.marks.or_default(text).done = now;
            "a tick"
        }
        "not_done" => {
            let mark = run.marks.or_default(text);
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

/// The parts before one that it can be made of and no other takes, the nearest first.
pub(super) fn sources(run: &Run, at: usize) -> impl Iterator<Item = &Part> {
    let part = run.parts.get(at);
    let of = made_of(part.map_or("", |part| part.tool.as_str()));
    let key = part.map(|part| part.key);
    let is_free =
        move |source: &&Part| run.parts.iter().all(|other| other.from != Some(source.key) || Some(other.key) == key);
    run.parts.iter().take(at).rev().filter(move |part| of.contains(&part.tool.as_str())).filter(is_free)
}

fn made_of(tool: &str) -> &'static [&'static str] {
    CHAINS.iter().find(|(made, _)| *made == tool).map_or(&[], |(_, of)| of)
}

/// Whether one part can be made of another, and is about the same fruit.
fn makes(source: &Part, part: &Part) -> bool {
    made_of(&part.tool).contains(&source.tool.as_str())
        && (part.tool == "milk-wash" || part.tool == SPEC || fruit_of(source) == fruit_of(part))
}

/// The drink that "times" counts for: that of the step, or the first that is made as often as a person says.
pub(super) fn times_part(run: &Run, step: &str) -> Option<usize> {
    let counts = |part: &Part| part.tool == SPEC && part.from.is_none();
    let of_step = step.split('/').next().and_then(|key| key.parse::<u32>().ok());
    let mine = run.parts.iter().position(|part| counts(part) && Some(part.key) == of_step);
    mine.or_else(|| run.parts.iter().position(counts))
}

/// A run with more parts; each takes what it is made of where that is on the sheet: of the same fruit, and not taken yet.
/// A drink takes a cordial only when it is told to: which of its lines is meant, a person knows.
#[must_use]
pub fn with_parts(run: &Run, parts: Vec<Part>) -> Run {
    let mut run = run.clone();
    let room = MOST_PARTS.saturating_sub(run.parts.len());
    for mut part in parts.into_iter().take(room) {
        part.key = run.next_key();
        // Before what can be made of it and takes nothing yet; before the drink, where it goes into one.
        let takes_it = |other: &Part| other.from.is_none() && makes(&part, other);
        let goes_in = !matches!(part.tool.as_str(), SPEC | ICE | "milk-wash");
        let is_before = |other: &Part| match part.tool.as_str() {
            ICE => other.tool == "milk-wash",
            _ => takes_it(other) || goes_in && matches!(other.tool.as_str(), SPEC | ICE),
        };
        let at = run.parts.iter().position(is_before).unwrap_or(run.parts.len());
        if let Some(taker) =
            run.parts.get_mut(at).filter(|other| other.from.is_none() && makes(&part, other) && other.tool != SPEC)
        {
            taker.from = Some(part.key);
        }
        run.parts.insert(at, part);
        let source = sources(&run, at).find(|source| makes(source, &run.parts[at])).map(|part| part.key);
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
    let times = times_part(&run, &key).and_then(|at| run.parts[at].texts.get("times").cloned());
    all.insert("times".into(), times.unwrap_or_default());
    all
}
