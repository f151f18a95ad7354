//! What is made on a run sheet, its log, the list of runs, and where they lead.

use super::line::got;
use super::name::called;
use super::sheet::sheet_of;
use super::spec::SPEC;
use crate::book::{Allergen, Entry, Logged, Part, Run};
use crate::reading::label::{self, Keeps};
use crate::screen::clock::lasting;
use crate::screen::plan::{CHILL, Makes};
use crate::screen::route::Route;
use crate::screen::sheet::{Made, Sheet, Sheeted};
use crate::screen::{Act, Bench, Button, Row, once};

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
            name: called(run, &sheet),
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

/// How long hands are on, in all and still.
pub(super) fn hands_on(sheet: &Sheet) -> Option<Row> {
    let (all, left) = sheet.hands_on();
    let detail = match left {
        0 => "all of it done".into(),
        left if left < all => format!("{} of it still to do", lasting(left)),
        _ => String::new(),
    };
    (all > 0).then(|| Row {
        name: "Hands on, all steps together".into(),
        amount: lasting(all),
        detail,
        ..Row::default()
    })
}

/// The steps of a finished run, as they were.
pub(super) fn log(run: &Run, bench: &Bench) -> Vec<Row> {
    let wall = |at: u64| bench.clock.stamp(i64::try_from(at).unwrap_or(0));
    let row = |step: &Logged| {
        let mark = run.marks.get(&step.key).cloned().unwrap_or_default();
        let said = [step.title.clone(), step.planned.clone(), got(&mark)].into_iter().filter(|text| !text.is_empty());
        Row {
            name: step.words.clone(),
            amount: if mark.done > 0 { wall(mark.done) } else { "not done".into() },
            detail: said.collect::<Vec<_>>().join(" · "),
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
            buttons.push(Button::sign("Made of", format!("Made of something else: {name}"), Act::MadeOf(part.key)));
        }
        if let Some(prep) = &made.prep {
            let spoken = format!("Keep {} as an ingredient, as it was measured", prep.name);
            buttons.push(Button::sign("Keep", spoken, Act::KeepIngredient(prep.clone())));
        }
        buttons.push(Button::sign("Take out", format!("Take out: {name}"), Act::TakeOut(part.key)));
        let mut detail = match part.from {
            Some(source) if made.making.makes == Makes::Drink => format!("as often as {} allows", title(source)),
            Some(source) => format!("made of what {} gives", title(source)),
            None => "amount set by you".into(),
        };
        if !made.cut.is_empty() {
            detail = format!("{}; {detail}", made.cut);
        }
        Row { name, detail, buttons, marked: !made.cut.is_empty(), ..Row::default() }
    };
    run.parts.iter().zip(sheet.parts.iter()).map(row).collect()
}

/// Where the label is that the run asks for.
pub(super) fn label(run: &Run, sheet: &Sheet, bench: &Bench) -> Option<Button> {
    let last = sheet.steps.last()?;
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
        asks: once(asks),
        keeps: match sheet.parts.last().is_some_and(|made| made.making.is_fresh) {
            true => Some(Keeps::Fresh),
            false => is_washed.then_some(Keeps::Washed),
        },
        name: last.title.clone(),
        allergens: label::declared(declared),
        made,
        spec,
        ..label::Facts::default()
    };
    Some(Button::new("Label it", Act::Go(label::href(&known))))
}
