//! The steps of a run as events on one line of time.

use crate::book::{Run, Tick};
use crate::reading::rows::amount_words;
use crate::screen::clock::lasting;
use crate::screen::plan::MINUTE;
use crate::screen::sheet::{Sheet, Sheeted};
use crate::screen::{Act, Bench, Button, Event, Wait};

/// Seconds that a wait of so many is lengthened by at a tap.
pub(super) const fn more(wait: u32) -> u32 {
    if wait >= 5 * MINUTE { 5 * MINUTE } else { MINUTE }
}

/// The steps in order of their start.
pub(super) fn in_order(sheet: &Sheet) -> Vec<&Sheeted> {
    let mut order: Vec<&Sheeted> = Vec::new();
    for step in &sheet.steps {
        let place = order.iter().position(|other| other.start.unwrap_or(0) > step.start.unwrap_or(0));
        order.insert(place.unwrap_or(order.len()), step);
    }
    order
}

/// All steps on the line; `current` is the key of the one that strip and buttons speak of.
pub(super) fn events(run: &Run, sheet: &Sheet, current: &str, bench: &Bench) -> Vec<Event> {
    let several = run.parts.len() > 1;
    let event = |(at, step): (usize, &Sheeted)| {
        let is_current = step.key == current;
        Event {
            at: when(step, bench),
            number: at + 1,
            words: step.step.words.clone(),
            detail: detail(step, several, is_current, bench),
            blank: blank(step),
            mind: mind(step, bench),
            is_done: step.is_done(),
            is_current,
            choose: Act::OpenStep(step.key.clone()),
            wait: wait(step, bench).filter(|_| is_current),
            buttons: if is_current { buttons(step, bench) } else { Vec::new() },
        }
    };
    in_order(sheet).into_iter().enumerate().map(event).collect()
}

/// When it was done, began, or must start.
fn when(step: &Sheeted, bench: &Bench) -> String {
    let Tick { done, started, .. } = step.mark;
    let noted = |at: u64| i64::try_from(at).ok().filter(|at| *at > 0);
    let at = noted(done).or(noted(started)).or(step.start);
    at.map_or_else(String::new, |at| bench.clock.words(at))
}

/// What it makes where there is more than one thing, then what it takes and should give, or what it gave.
fn detail(step: &Sheeted, several: bool, is_current: bool, bench: &Bench) -> String {
    let mut said = Vec::new();
    if several {
        said.push(step.title.clone());
    }
    let got = got(&step.mark);
    // What runs or is over has its wait said where it stands.
    said.push(if step.is_done() && !got.is_empty() { String::new() } else { planned(step, bench) });
    if let Some(due) = step.due().filter(|_| !is_current) {
        said.push(ends(due, bench));
    }
    said.push(got);
    said.retain(|part| !part.is_empty());
    said.join(" · ")
}

/// How long a step keeps the hands, how long it waits, and what it should give.
pub(super) fn planned(step: &Sheeted, bench: &Bench) -> String {
    let work = (step.step.work > 0).then(|| format!("{} hands on", lasting(i64::from(step.step.work))));
    let wait = (step.step.wait > 0).then(|| format!("waits {}", lasting(i64::from(step.step.wait))));
    let gives = step.step.gives.map(|gives| format!("expect {}", amount_words(gives, bench)));
    work.into_iter().chain(wait).chain(gives).collect::<Vec<_>>().join(", ")
}

/// "got 910 ml, 9.8 °Bx"; empty where nothing was noted.
pub(super) fn got(mark: &Tick) -> String {
    let noted = [("got ", &mark.got, ""), ("", &mark.brix, " °Bx"), ("pH ", &mark.ph, ""), ("", &mark.celsius, " °C")];
    let noted = noted.into_iter().filter(|(_, text, _)| !text.trim().is_empty());
    noted.map(|(before, text, after)| format!("{before}{}{after}", text.trim())).collect::<Vec<_>>().join(", ")
}

/// Where on paper what comes out is written, while nothing was noted.
fn blank(step: &Sheeted) -> &'static str {
    match (step.step.gives.is_some(), step.step.is_read) {
        _ if !got(&step.mark).is_empty() => "",
        (true, _) => "got ______, ______ °Bx",
        (false, true) => "pH ______, ______ °C",
        (false, false) => "",
    }
}

/// What to mind: what is too late, whose clock went back, what guests must be told.
fn mind(step: &Sheeted, bench: &Bench) -> String {
    let now = bench.clock.now();
    let mut said = Vec::new();
    if let Some(due) = step.due().filter(|due| *due <= now) {
        said.push(format!("{} over", lasting((now - due) / 1000)));
    } else if step.is_late(now) {
        said.push("should have started".into());
    }
    if step.mark.is_running() && bench.clock.is_set_back(step.mark.started) {
        said.push("the clock was set back since it began: go by another clock".into());
    }
    if !step.contains.is_empty() {
        said.push(step.contains.clone());
    }
    said.join(", ")
}

/// Its wait, while that runs.
fn wait(step: &Sheeted, bench: &Bench) -> Option<Wait> {
    let due = step.due()?;
    let whole = i64::from(step.step.wait) * 1000;
    let over = (bench.clock.now() - (due - whole)).clamp(0, whole);
    let percent = u8::try_from(over * 100 / whole.max(1)).unwrap_or(100);
    Some(Wait { percent, words: format!("{}, {}", lasting(whole / 1000), ends(due, bench)) })
}

/// "ends 14:35".
fn ends(due: i64, bench: &Bench) -> String {
    let ends = if due > bench.clock.now() { "ends" } else { "ended" };
    format!("{ends} {}", bench.clock.words(due))
}

/// What there is to do with a step, the expected deed last.
fn buttons(step: &Sheeted, bench: &Bench) -> Vec<Button> {
    let words = &step.step.words;
    let button =
        |label: &str, act: fn(String) -> Act| Button::sign(label, format!("{label}: {words}"), act(step.key.clone()));
    let wait = || format!("Start {}", lasting(i64::from(step.step.wait)));
    match (step.is_done(), step.mark.is_running()) {
        (true, _) => vec![button("Not done after all", Act::Untick)],
        (false, true) => {
            let more = more(step.step.wait);
            let can = step.mark.lengthened(step.step.wait, more, bench.clock.now).is_some();
            let more = can.then(|| button(&format!("{} more min", more / MINUTE), Act::Longer));
            [button("Stop", Act::Untick)].into_iter().chain(more).chain([button("Done", Act::Tick)]).collect()
        }
        (false, false) if step.step.wait > 0 => vec![button("Done", Act::Tick), button(&wait(), Act::Start)],
        (false, false) => vec![button("Done", Act::Tick)],
    }
}
