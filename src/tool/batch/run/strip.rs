//! What the strip of a run sheet says, of the step that is open: how long it runs, when it starts, and what comes then.

use super::line::in_order;
use super::name::called;
use crate::book::Run;
use crate::screen::clock::{lasting, to_go};
use crate::screen::sheet::{Sheet, Sheeted};
use crate::screen::{Bench, Figure, Strip, Tone};

/// Most letters of a step that the strip says.
const LONGEST: usize = 69;
/// Most letters of the step after it.
const LONGEST_NEXT: usize = 32;

/// The strip; only its figure changes with the seconds.
pub(super) fn strip(run: &Run, sheet: &Sheet, open: Option<&Sheeted>, bench: &Bench) -> Strip {
    let said = |figure: Figure, also: String, below: String| Strip {
        figures: vec![figure],
        also,
        below,
        tone: Tone::Answer,
        ..Strip::default()
    };
    if run.finished > 0 {
        let day = bench.clock.day(i64::try_from(run.finished).unwrap_or(0));
        return said(Figure::new(called(run, sheet), ""), format!("Finished {day}"), String::new());
    }
    let Some(open) = open else {
        let blank = sheet.steps.is_empty();
        let (value, also) = match blank {
            true => ("–", "In Prep, or on a spec, tap “To the run sheet”"),
            false => ("Done", "All steps are ticked off"),
        };
        let strip = said(Figure::new(value, ""), also.into(), String::new());
        return Strip { tone: if blank { Tone::Waiting } else { Tone::Answer }, ..strip };
    };
    said(figure(open, bench), short(&open.step.words, LONGEST), below(open, sheet, bench))
}

/// How long its wait still runs; else when it starts.
fn figure(step: &Sheeted, bench: &Bench) -> Figure {
    let now = bench.clock.now();
    let wall = |at: i64| bench.clock.words(at);
    match (step.due(), step.start) {
        _ if step.is_done() => Figure::new(wall(i64::try_from(step.mark.done).unwrap_or(0)), "done"),
        (Some(due), _) if due > now => Figure::new(to_go((due - now + 999) / 1000), "to go"),
        (Some(due), _) => Figure::new(lasting((now - due) / 1000), "over"),
        (None, Some(start)) if start > now => Figure::new(wall(start), "latest"),
        (None, Some(start)) if now - start > 60_000 => Figure::new(lasting((now - start) / 1000), "late"),
        _ => Figure::new("Now", ""),
    }
}

/// That its part comes to less than was asked, else what comes after it; and when all is ready.
fn below(open: &Sheeted, sheet: &Sheet, bench: &Bench) -> String {
    let is_open = |key: u32| sheet.steps.iter().any(|step| !step.is_done() && step.part() == key);
    let cut = sheet.parts.iter().find(|made| !made.cut.is_empty() && is_open(made.key));
    let is_next = |step: &&Sheeted| step.key != open.key && !step.is_done() && !step.mark.is_running();
    let next = in_order(sheet).into_iter().find(is_next);
    let mut said = match (cut, next) {
        (Some(made), _) => vec![made.cut.clone()],
        (None, Some(next)) => vec![format!("Then {}", short(&in_sentence(&next.step.words), LONGEST_NEXT))],
        (None, None) => Vec::new(),
    };
    if let Some((ready, all)) = sheet.ready.zip(sheet.all_ready()) {
        said.push(format!("All ready {}, doors {}", bench.clock.words(all), bench.clock.words(ready)));
    }
    said.join(". ")
}

/// With a small first letter.
pub(super) fn in_sentence(words: &str) -> String {
    let mut words = words.to_owned();
    if let Some(first) = words.get_mut(..1) {
        first.make_ascii_lowercase();
    }
    words
}

/// Not more letters than that: it ends behind a word then, with dots.
fn short(words: &str, most: usize) -> String {
    let Some((end, _)) = words.char_indices().nth(most) else { return words.to_owned() };
    let words = &words[..end];
    let end = words.bytes().rposition(|byte| byte == b' ').unwrap_or(end);
    format!("{}…", words[..end].trim_end_matches(','))
}
