//! What stands on a run sheet beside its steps: its head on paper, what to have ready, what to declare.

use super::name::called;
use crate::book::Run;
use crate::reading::label::declared;
use crate::reading::rows::amount_words;
use crate::screen::plan::Need;
use crate::screen::sheet::{Made, Sheet};
use crate::screen::{Bench, SheetHead, ToHave};

/// The head of the sheet on paper.
pub(super) fn head(run: &Run, sheet: &Sheet, bench: &Bench) -> SheetHead {
    let words = |at: i64| bench.clock.words(at);
    let when = sheet.ready.map_or_else(
        || bench.clock.day(bench.clock.now()),
        |ready| format!("{} · doors {}", bench.clock.day(ready), words(ready)),
    );
    let makes: Vec<&str> = sheet.parts.iter().map(|made| made.title.as_str()).collect();
    SheetHead {
        name: called(run, sheet),
        when,
        ready: sheet.all_ready().map_or_else(String::new, |at| format!("All ready {}", words(at))),
        makes: makes.join(", "),
    }
}

/// What must be there before it begins, and what guests must be told of.
pub(super) fn to_have(sheet: &Sheet, bench: &Bench) -> ToHave {
    let thing = |need: &Need| (need.what.clone(), amount_words(need.amount, bench));
    let allergens = |made: &Made| made.making.allergens.clone();
    ToHave {
        things: sheet.needs.iter().map(thing).collect(),
        declared: declared(sheet.parts.iter().flat_map(allergens)),
    }
}
