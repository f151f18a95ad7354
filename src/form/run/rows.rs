//! The rows of a run sheet, of the list of runs, and where they lead.

use super::sheet::{Sheet, Sheeted, plan, sheet};
use super::{ICE, SPEC};
use crate::book::{Allergen, Part, Run};
use crate::form::Bench;
use crate::form::answer::{Answer, Fix, Row};
use crate::form::clock::{counted_down, lasting};
use crate::form::own::named;
use crate::form::route::{Place, Route, encode};
use crate::form::scale::exact_words;
use crate::form::{balance, label};
use crate::quantity::Amount;
use crate::substance::milk::Milk;
use crate::text::{self, Kind, read_spec};

/// What a tool is called, by the key of its form.
pub(super) fn tool_name(key: &str) -> &'static str {
    let all = Place::ALL.iter().flat_map(|place| place.tools());
    all.copied().find(|route| route.form_key() == key).map_or("The spec", Route::label)
}

/// All runs: those that are open first, then the log, the latest first.
pub(super) fn list(bench: &Bench) -> Vec<Row> {
    let row = |entry: &std::sync::Arc<crate::book::Entry<Run>>| {
        let run = &entry.value;
        let sheet = sheet(run, bench);
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
    order.into_iter().map(|at| row(run, &sheet.steps[at], open, id, several, bench)).collect()
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
    if step.step.wait > 0 {
        said.push(format!("waits {}", lasting(i64::from(step.step.wait))));
    }
    match (step.mark.got.trim(), step.step.gives) {
        ("", Some(gives)) => said.push(format!("should give {}", amount_words(gives, bench))),
        (got, _) if !got.is_empty() => said.push(format!("gave {got}")),
        _ => {}
    }
    let more = [("°Bx", &step.mark.brix), ("pH", &step.mark.ph)];
    said.extend(more.iter().filter(|(_, text)| !text.trim().is_empty()).map(|(unit, text)| format!("{text} {unit}")));
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

/// What is made, each to take out, or to take what came before instead of its own amount.
pub(super) fn parts(run: &Run, bench: &Bench) -> Vec<Row> {
    let button = |name: &'static str, label: &str, spoken: String, part: &Part| {
        (name, Fix { label: label.into(), spoken, text: part.key.to_string() })
    };
    let row = |(at, part): (usize, &Part)| {
        let title = plan(part, bench).map_or_else(|| tool_name(&part.tool).to_owned(), |plan| plan.title);
        let mut puts = Vec::new();
        if at > 0 && part.tool != ICE {
            let spoken = if part.takes { "by its own amount" } else { "take what came before" };
            puts.push(button("takes", "⇄", format!("{title}: {spoken}"), part));
        }
        puts.push(button("remove", "✕", format!("take {title} out"), part));
        let detail = if part.takes { "takes what came out before it" } else { "by its own amount" };
        Row { name: title, detail: if at > 0 { detail.into() } else { String::new() }, puts, ..Row::default() }
    };
    run.parts.iter().enumerate().map(row).collect()
}

/// Lines of the spec that are preps of their own, and not on the sheet.
pub(super) fn missing(run: &Run, bench: &Bench) -> Option<String> {
    let part = run.parts.iter().find(|part| part.tool == SPEC)?;
    if run.parts.iter().any(|part| part.tool == Route::Cordial.form_key()) {
        return None;
    }
    let lines = part.texts.get("lines").map_or("", String::as_str);
    let lines = read_spec(lines, &bench.reading(Kind::Either));
    let line = lines.into_iter().filter_map(|line| line.read.ok()).find(|line| line.name.contains("cordial"))?;
    Some(format!("“{}” is a prep of its own: work it out in Cordial, and put it on this sheet too.", line.name))
}

fn amount_words(amount: Amount, bench: &Bench) -> String {
    match amount {
        Amount::Volume(volume) => text::litres_or_ml(volume, bench.decimal).to_string(),
        other => exact_words(other, bench),
    }
}

/// A label for what the run makes.
pub(super) fn carry(run: &Run, sheet: &Sheet, answer: &mut Answer, bench: &Bench) {
    let Some(last) = sheet.steps.last() else { return };
    let mut declared: Vec<&str> = Vec::new();
    for part in &run.parts {
        for name in ["lines", "spec"] {
            let lines = part.texts.get(name).map_or("", String::as_str);
            declared.extend(
                balance::allergens(&read_spec(lines, &bench.reading(Kind::Either))).into_iter().map(Allergen::name),
            );
        }
        // What it is washed with is declared, whatever it is.
        if part.tool == Route::MilkWash.form_key() {
            let kind = Milk::of(part.texts.get("kind").map_or("", String::as_str));
            declared.push(if kind.is_of_cows() { "milk" } else { kind.name });
        }
    }
    let mut names: Vec<&str> = Vec::new();
    for name in declared {
        if !names.contains(&name) {
            names.push(name);
        }
    }
    let known = label::Known { name: last.title.clone(), allergens: names.join(", "), ..label::Known::default() };
    answer.carry("Label it", label::href(&known));
}
