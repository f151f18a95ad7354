//! The rows of a run sheet, of the list of runs, and where they lead.

use super::sheet::sheet_of;
use super::spec::SPEC;
use crate::book::{Allergen, Entry, Logged, Part, Run};
use crate::reading::label::{self, Keeps};
use crate::reading::named;
use crate::reading::rows::amount_words;
use crate::screen::clock::{counted_down, lasting};
use crate::screen::percent::encode;
use crate::screen::plan::{CHILL, Makes};
use crate::screen::route::Route;
use crate::screen::sheet::{Made, Sheet, Sheeted};
use crate::screen::{Act, Answer, Bench, Button, Row};

/// All runs: those that are open first, then the log, the latest first.
pub(super) fn list(bench: &Bench) -> Vec<Row> {
    let row = |entry: &std::sync::Arc<Entry<Run>>| {
        let run = &entry.value;
        let sheet = sheet_of(entry, bench);
        let done = sheet.steps.iter().filter(|step| step.is_done()).count();
        let day = |at: u64| bench.clock.day(i64::try_from(at).unwrap_or(0));
        let detail = match (run.finished, sheet.ready) {
            (0, Some(ready)) => format!("ready by {}", bench.clock.words(ready)),
            (0, None) => format!("begun {}", day(run.made)),
            (finished, _) => format!("in the log since {}", day(finished)),
        };
        Row {
            name: named(&run.name),
            amount: format!("{done}/{}", sheet.steps.len()),
            detail,
            href: Route::Run.href_with("id", &entry.id),
            ..Row::default()
        }
    };
    let open = bench.book.runs.iter().filter(|entry| entry.value.finished == 0);
    let log = bench.book.runs.iter().filter(|entry| entry.value.finished > 0);
    open.chain(log).map(row).collect()
}

/// The steps, in order of their start; those of a finished run as they were done.
pub(super) fn steps(run: &Run, sheet: &Sheet, open: Option<&str>, id: &str, bench: &Bench) -> Vec<Row> {
    let mut order: Vec<usize> = Vec::new();
    for at in 0..sheet.steps.len() {
        let start = |at: usize| sheet.steps[at].start.unwrap_or(0);
        let place = order.iter().position(|other| start(*other) > start(at)).unwrap_or(order.len());
        order.insert(place, at);
    }
    let several = run.parts.len() > 1;
    let mut rows: Vec<Row> = order.into_iter().map(|at| row(run, &sheet.steps[at], open, id, several, bench)).collect();
    let (all, left) = sheet.hands_on();
    if all > 0 {
        let detail = match left {
            0 => "all of it done".into(),
            left if left < all => format!("{} of it still to do", lasting(left)),
            _ => String::new(),
        };
        rows.push(Row { name: "Hands on, all steps together".into(), amount: lasting(all), detail, ..Row::default() });
    }
    rows
}

fn row(run: &Run, step: &Sheeted, open: Option<&str>, id: &str, several: bool, bench: &Bench) -> Row {
    let now = bench.clock.now();
    let wall = |at: u64| bench.clock.words(i64::try_from(at).unwrap_or(0));
    let is_open = open == Some(step.key.as_str()) && run.finished == 0;
    let (amount, is_late) = match (step.mark.done, step.due(), step.start) {
        (0, Some(due), _) if due > now => (counted_down((due - now + 999).div_euclid(1000)), false),
        (0, Some(due), _) => (format!("{} over", lasting((now - due) / 1000)), true),
        (0, None, Some(start)) => (bench.clock.words(start), start < now && step.is_free),
        (0, None, None) => (String::new(), false),
        (done, ..) => (format!("✓ {}", wall(done)), false),
    };
    let mut said = Vec::new();
    if several {
        said.push(step.title.clone());
    }
    let got = step.mark.got.trim();
    let planned = planned(step, bench);
    if !planned.is_empty() {
        said.push(planned);
    }
    if !got.is_empty() {
        said.push(format!("gave {got}"));
    }
    let more = [("°Bx", &step.mark.brix), ("pH", &step.mark.ph), ("°C", &step.mark.celsius)];
    said.extend(more.iter().filter(|(_, text)| !text.trim().is_empty()).map(|(unit, text)| format!("{text} {unit}")));
    if step.mark.is_running() && bench.clock.is_set_back(step.mark.started) {
        said.push("the clock was set back since it began: go by another clock".into());
    }
    if is_late && step.mark.started == 0 {
        said.push("should have started".into());
    }
    Row {
        name: if is_open { format!("▸ {}", step.step.words) } else { step.step.words.clone() },
        amount,
        detail: said.join(", "),
        marked: is_late,
        href: format!("{}&step={}", Route::Run.href_with("id", id), encode(&step.key)),
        ..Row::default()
    }
}

/// How long a step keeps the hands, how long it waits, and what it should give.
pub(super) fn planned(step: &Sheeted, bench: &Bench) -> String {
    let work = (step.step.work > 0).then(|| format!("{} hands on", lasting(i64::from(step.step.work))));
    let wait = (step.step.wait > 0).then(|| format!("waits {}", lasting(i64::from(step.step.wait))));
    let gives = step.step.gives.map(|gives| format!("should give {}", amount_words(gives, bench)));
    work.into_iter().chain(wait).chain(gives).collect::<Vec<_>>().join(", ")
}

/// The steps of a finished run, as they were.
pub(super) fn log(run: &Run, bench: &Bench) -> Vec<Row> {
    let wall = |at: u64| bench.clock.stamp(i64::try_from(at).unwrap_or(0));
    let row = |step: &Logged| {
        let mark = run.marks.get(&step.key).cloned().unwrap_or_default();
        let measured =
            [("gave ", &mark.got, ""), ("", &mark.brix, " °Bx"), ("", &mark.ph, " pH"), ("", &mark.celsius, " °C")];
        let measured = measured.iter().filter(|(_, text, _)| !text.trim().is_empty());
        let said = [step.title.clone(), step.planned.clone()].into_iter().filter(|text| !text.is_empty());
        let said = said.chain(measured.map(|(before, text, after)| format!("{before}{}{after}", text.trim())));
        Row {
            name: step.words.clone(),
            amount: if mark.done > 0 { format!("✓ {}", wall(mark.done)) } else { "not done".into() },
            detail: said.collect::<Vec<_>>().join(", "),
            ..Row::default()
        }
    };
    run.log.iter().map(row).collect()
}

/// What is made, each to take out, or to take what another gives instead of its own amount.
pub(super) fn parts(run: &Run, sheet: &Sheet) -> Vec<Row> {
    let title = |key: u32| sheet.parts.iter().find(|made| made.key == key).map_or("", |made| made.title.as_str());
    let row = |(part, made): (&Part, &Made)| {
        let name = made.title.clone();
        let mut buttons = Vec::new();
        if part.from.is_some() || !made.sources.is_empty() {
            buttons.push(Button::sign("⇄", format!("{name}: made of something else"), Act::MadeOf(part.key)));
        }
        buttons.push(Button::sign("✕", format!("take {name} out"), Act::TakeOut(part.key)));
        let mut detail = match part.from {
            Some(source) if made.making.makes == Makes::Drink => format!("as often as {} allows", title(source)),
            Some(source) => format!("made of what {} gives", title(source)),
            None => "by its own amount".into(),
        };
        if !made.cut.is_empty() {
            detail = format!("{}; {detail}", made.cut);
        }
        Row { name, detail, buttons, marked: !made.cut.is_empty(), ..Row::default() }
    };
    run.parts.iter().zip(sheet.parts.iter()).map(row).collect()
}

/// A label for what the run makes.
pub(super) fn carry(run: &Run, sheet: &Sheet, answer: &mut Answer, bench: &Bench) {
    let Some(last) = sheet.steps.last() else { return };
    let declared: Vec<Allergen> = sheet.parts.iter().flat_map(|made| made.making.allergens.iter().copied()).collect();
    // Made when the last of it was done; while it is not, when it is labelled.
    let last_done = sheet.steps.iter().map(|step| step.mark.done).max();
    let is_over = run.finished > 0 || sheet.steps.iter().all(Sheeted::is_done);
    // A finished run without a tick was made when it was finished.
    let made = last_done.map(|done| if done > 0 { done } else { run.finished }).filter(|_| is_over);
    let made =
        made.and_then(|made| i64::try_from(made).ok()).map_or_else(String::new, |made| bench.clock.written(made));
    let spec =
        run.parts.iter().rev().find(|part| part.tool == SPEC).and_then(|part| {
            Some((part.texts.get("card")?.clone(), part.texts.get("at").cloned().unwrap_or_default()))
        });
    let asks = sheet.parts.iter().flat_map(|made| made.making.asks.iter().copied());
    // What is chilled in the bottle is a drink washed with milk.
    let is_washed = last.step.key == CHILL;
    let known = label::Facts {
        asks: label::once(asks),
        keeps: is_washed.then_some(Keeps::Washed),
        name: last.title.clone(),
        allergens: label::declared(declared),
        made,
        spec,
        ..label::Facts::default()
    };
    answer.carry("Label it", label::href(&known));
}
