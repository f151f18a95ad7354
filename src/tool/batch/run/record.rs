//! A run as the record it is: its texts, its parts, what is marked.

use super::chain::{makings, sources};
use super::line::{more, planned};
use super::sheet::sheet;
use super::spec::SPEC;
use crate::book::{Logged, Part, Run, Tick};
use crate::screen::sheet::Sheeted;
use crate::screen::{Act, Bench};

/// The fields that belong to the record.
pub const FIELDS: [&str; 9] = ["name", "ready", "slack", "notes", "times", "got", "brix", "ph", "celsius"];

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
        let Tick { got, brix, ph, celsius, .. } = since;
        (mark.got, mark.brix, mark.ph, mark.celsius) = (got, brix, ph, celsius);
    }
    merged
}

/// A run after an act on it, and what that was; none when it changes nothing.
#[must_use]
pub fn changed(run: &Run, act: &Act, bench: &Bench) -> Option<(Run, &'static str)> {
    let now = bench.clock.now;
    let mut run = run.clone();
    let words = match act {
        Act::Start(step) => {
            let mark = run.marks.or_default(step);
            (mark.started, mark.done) = (now, 0);
            "a timer"
        }
        Act::Longer(step) => {
            let wait = sheet(&run, bench).steps.iter().find(|made| made.key == *step)?.step.wait;
            let mark = run.marks.or_default(step);
            mark.started = mark.lengthened(wait, more(wait), now)?;
            "a longer wait"
        }
        Act::Tick(step) => {
            run.marks.or_default(step).done = now;
            "a tick"
        }
        Act::Untick(step) => {
            let mark = run.marks.or_default(step);
            (mark.started, mark.done) = (0, 0);
            "a tick"
        }
        Act::Finish => {
            run.finished = now;
            run.log = sheet(&run, bench).steps.iter().map(|step| logged(step, bench)).collect();
            "finishing"
        }
        Act::Reopen => {
            run.finished = 0;
            run.log.clear();
            "opening again"
        }
        Act::MadeOf(key) => {
            let at = run.parts.iter().position(|part| part.key == *key)?;
            // None, then each that it can be made of, then none again.
            let choices = sources(&run, at, &makings(&run, bench));
            let next = match run.parts[at].from {
                None => choices.first(),
                Some(now) => choices.iter().skip_while(|key| **key != now).nth(1),
            };
            run.parts[at].from = next.copied();
            "what a prep takes"
        }
        Act::TakeOut(taken) => {
            run.parts.retain(|part| part.key != *taken);
            let is_of_it = |step: &str| step.split('/').next().and_then(|key| key.parse().ok()) == Some(*taken);
            run.marks.retain(|step, _| !is_of_it(step));
            for part in run.parts.iter_mut().filter(|part| part.from == Some(*taken)) {
                part.from = None;
            }
            "a prep"
        }
        _ => return None,
    };
    Some((run, words))
}

/// The drink that "times" counts for: that of the step, or the first that is made as often as a person says.
pub(super) fn times_part(run: &Run, step: &str) -> Option<usize> {
    let counts = |part: &Part| part.tool == SPEC && part.from.is_none();
    let of_step = step.split('/').next().and_then(|key| key.parse::<u32>().ok());
    let mine = run.parts.iter().position(|part| counts(part) && Some(part.key) == of_step);
    mine.or_else(|| run.parts.iter().position(counts))
}

/// A step as it stands, for the log.
fn logged(step: &Sheeted, bench: &Bench) -> Logged {
    Logged {
        key: step.key.clone(),
        title: step.title.clone(),
        words: step.step.words.clone(),
        planned: planned(step, bench),
    }
}

/// The texts of a run at a step, by field.
pub(super) fn texts_at(run: &Run, step: &str) -> Vec<(&'static str, String)> {
    let mut run = run.clone();
    let times = times_part(&run, step).and_then(|at| run.parts[at].texts.get("times").cloned());
    let mut mark: Tick = run.marks.get(step).cloned().unwrap_or_default();
    let texts = run.fields().into_iter().chain(mark.fields());
    let mut texts: Vec<_> = texts.map(|(name, text)| (name, std::mem::take(text))).collect();
    texts.push(("times", times.unwrap_or_default()));
    texts
}
