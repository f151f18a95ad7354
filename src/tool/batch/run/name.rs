//! What a run sheet is called: as a person says, else after what it makes.

use super::sheet::sheet_of;
use crate::book::{Entry, Run};
use crate::reading::named;
use crate::screen::Bench;
use crate::screen::plan::Makes;
use crate::screen::sheet::{Made, Sheet};

/// What a run that is kept is called.
#[must_use]
pub fn title(entry: &Entry<Run>, bench: &Bench) -> String {
    called(&entry.value, &sheet_of(entry, bench))
}

/// Its own name, else "Lime cordial", or "Lime cordial and 2 more": what is made of nothing else on the sheet counts, ice
/// does not.
pub(super) fn called(run: &Run, sheet: &Sheet) -> String {
    if !run.name.trim().is_empty() {
        return named(&run.name);
    }
    let is_end =
        |made: &&Made| made.making.makes != Makes::Ice && run.parts.iter().all(|part| part.from != Some(made.key));
    let mut ends = sheet.parts.iter().filter(is_end);
    match (ends.next_back(), ends.count()) {
        (None, _) => sheet.parts.last().map_or_else(|| "Run sheet".into(), |made| made.title.clone()),
        (Some(last), 0) => last.title.clone(),
        (Some(last), more) => format!("{} and {more} more", last.title),
    }
}
