//! The clock: once a second it moves what shows the time, and rings for what is over.

use leptos::prelude::*;

use super::browser;
use super::desk::Desk;
use super::part::{nothing, part};
use crate::screen::Bench;
use crate::screen::clock::Clock;
use crate::store::now;
use crate::tool::batch::run;

/// The bench at the time it is now.
pub(super) fn timed(desk: Desk, bench: &Bench) -> Bench {
    at(bench, desk.tick.get())
}

/// A bench at a time.
pub(super) fn at(bench: &Bench, now: u64) -> Bench {
    Bench { clock: Clock { now, ahead: browser::minutes_ahead }, ..bench.clone() }
}

/// The bench at this moment, for a deed.
pub(super) fn timed_now(desk: Desk) -> Bench {
    desk.bench.with(|bench| at(bench, now()))
}

/// Starts the clock.
pub(super) fn start(desk: Desk) {
    // What has rung in this tab.
    let rung = StoredValue::new(Vec::<String>::new());
    let beat = move || {
        desk.tick.set(now());
        let bench = untrack(|| desk.bench.with(|bench| timed(desk, bench)));
        let timers = run::timers(&bench);
        browser::keep_awake(!timers.is_empty());
        for timer in timers.into_iter().filter(|timer| timer.due <= bench.clock.now()) {
            if !rung.with_value(|rung| rung.contains(&timer.key)) {
                browser::send("meniscus-ring", &[("text", &timer.words), ("tag", &timer.key), ("href", &timer.href)]);
                rung.update_value(|rung| rung.push(timer.key));
            }
        }
    };
    browser::every_second(beat);
    browser::on_event("visibilitychange", beat);
}

/// What is due next, on every screen but the run sheet's own.
pub(super) fn line(desk: Desk) -> AnyView {
    part(move || {
        let due = desk.bench.with(|bench| match bench.book.runs.is_empty() {
            true => None,
            false => run::next_due(&timed(desk, bench)),
        });
        let Some((figure, words, is_over, href)) = due.filter(|_| !desk.shows_runs()) else { return nothing() };
        let class = if is_over { "due over" } else { "due" };
        view! { <a class=class href=href><b>{figure}</b><span>{words}</span></a> }.into_any()
    })
}
