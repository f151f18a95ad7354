//! What is due next over all run sheets that are open, for the line that stands on every screen, and for the bell.

use super::name::called;
use super::sheet::sheet_of;
use crate::screen::Bench;
use crate::screen::clock::{lasting, to_go};
use crate::screen::percent::encode;
use crate::screen::route::Route;

/// A wait that runs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Timer {
    /// Which: its run, step and beginning.
    pub key: String,
    /// Its run and its step.
    pub of: (String, String),
    /// What it is for: "Rest 45 min, Orchard cordial".
    pub words: String,
    /// When it is over, in milliseconds since 1970.
    pub due: i64,
    /// Where its step is.
    pub href: String,
}

/// Every wait that runs, the first to be over first.
#[must_use]
pub fn timers(bench: &Bench) -> Vec<Timer> {
    let mut timers = Vec::new();
    for entry in bench.book.runs.iter().filter(|entry| entry.value.finished == 0) {
        if !entry.value.marks.values().any(crate::book::Tick::is_running) {
            continue;
        }
        let sheet = sheet_of(entry, bench);
        for step in &sheet.steps {
            let Some(due) = step.due() else { continue };
            let href = format!("{}&step={}", Route::Run.href_with("id", &entry.id), encode(&step.key));
            let is_back = bench.clock.is_set_back(step.mark.started);
            let but = if is_back { " (the clock was set back)" } else { "" };
            let words = format!("{}, {}{but}", step.step.words, called(&entry.value, &sheet));
            let key = format!("{}/{}/{}", entry.id, step.key, step.mark.started);
            let of = (entry.id.clone(), step.key.clone());
            let timer = Timer { key, of, words, due, href };
            // A handful: insertion keeps the order.
            let at = timers.iter().position(|other: &Timer| other.due > due).unwrap_or(timers.len());
            timers.insert(at, timer);
        }
    }
    timers
}

/// What is due: a figure, its words, whether it is over, and where it leads.
pub type Line = (String, String, bool, String);

/// The first wait that is over, of all but the one that the strip shows; by run and step.
#[must_use]
pub fn next_over(bench: &Bench, but: (&str, &str)) -> Option<Line> {
    let now = bench.clock.now();
    let Timer { words, due, href, .. } =
        timers(bench).into_iter().find(|timer| (timer.of.0.as_str(), timer.of.1.as_str()) != but)?;
    let seconds = (due - now + 999).div_euclid(1000);
    let figure = if seconds > 0 { to_go(seconds) } else { format!("{} over", lasting((now - due) / 1000)) };
    Some((figure, words, seconds <= 0, href))
}

/// The line on every screen: the first wait that is over, else the next step that must start. None when nothing waits.
#[must_use]
pub fn next_due(bench: &Bench) -> Option<Line> {
    let now = bench.clock.now();
    if let Some(line) = next_over(bench, ("", "")) {
        return Some(line);
    }
    // Nothing waits: the next step that must start at a time.
    let mut first: Option<(i64, String, String)> = None;
    for entry in bench.book.runs.iter().filter(|entry| entry.value.finished == 0 && !entry.value.ready.is_empty()) {
        let sheet = sheet_of(entry, bench);
        for step in &sheet.steps {
            let Some(start) = step.start.filter(|_| !step.is_done() && step.is_free) else { continue };
            if first.as_ref().is_none_or(|(earliest, ..)| start < *earliest) {
                let words = format!("{}, {}", step.step.words, called(&entry.value, &sheet));
                let href = format!("{}&step={}", Route::Run.href_with("id", &entry.id), encode(&step.key));
                first = Some((start, words, href));
            }
        }
    }
    first.map(|(start, words, href)| (bench.clock.words(start), words, start < now, href))
}
