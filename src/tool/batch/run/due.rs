//! What is due next over all run sheets that are open, for the line that stands on every screen, and for the bell.

use super::sheet::sheet_of;
use crate::reading::named;
use crate::screen::Bench;
use crate::screen::clock::{counted_down, lasting};
use crate::screen::percent::encode;
use crate::screen::route::Route;

/// A wait that runs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Timer {
    /// Which: its run, step and beginning.
    pub key: String,
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
        for step in &sheet_of(entry, bench).steps {
            let Some(due) = step.due() else { continue };
            let href = format!("{}&step={}", Route::Run.href_with("id", &entry.id), encode(&step.key));
            let is_back = bench.clock.is_set_back(step.mark.started);
            let but = if is_back { " (the clock was set back)" } else { "" };
            let words = format!("{}, {}{but}", step.step.words, named(&entry.value.name));
            let timer = Timer { key: format!("{}/{}/{}", entry.id, step.key, step.mark.started), words, due, href };
            // A handful: insertion keeps the order.
            let at = timers.iter().position(|other: &Timer| other.due > due).unwrap_or(timers.len());
            timers.insert(at, timer);
        }
    }
    timers
}

/// The line on every screen: a figure, its words, whether it is over, and where it leads. None when nothing waits.
#[must_use]
pub fn next_due(bench: &Bench) -> Option<(String, String, bool, String)> {
    let now = bench.clock.now();
    if let Some(Timer { words, due, href, .. }) = timers(bench).into_iter().next() {
        let seconds = (due - now + 999).div_euclid(1000);
        let figure = if seconds > 0 { counted_down(seconds) } else { format!("{} over", lasting((now - due) / 1000)) };
        return Some((figure, words, seconds <= 0, href));
    }
    // Nothing waits: the next step that must start at a time.
    let mut first: Option<(i64, String, String)> = None;
    for entry in bench.book.runs.iter().filter(|entry| entry.value.finished == 0 && !entry.value.ready.is_empty()) {
        for step in &sheet_of(entry, bench).steps {
            let Some(start) = step.start.filter(|_| !step.is_done() && step.is_free) else { continue };
            if first.as_ref().is_none_or(|(earliest, ..)| start < *earliest) {
                let words = format!("{}, {}", step.step.words, named(&entry.value.name));
                let href = format!("{}&step={}", Route::Run.href_with("id", &entry.id), encode(&step.key));
                first = Some((start, words, href));
            }
        }
    }
    first.map(|(start, words, href)| (bench.clock.words(start), words, start < now, href))
}
