//! What an import may hold: whatever a Meniscus can have kept, and no more of it than a screen can bear.

use crate::book::{Card, MOST_KEY, MOST_PARTS, MOST_WAYS, Own, Run, Slot, Written};

/// Ten times what a field takes on screen, in characters, so that whatever was kept comes back.
const LONGEST: usize = 200_000;
const LONGEST_ID: usize = 200;
/// Most records of all kinds together.
pub(super) const MOST_RECORDS: usize = 20_000;
/// Ten times the forms that a card is given here: as many were once taken from a file, and come back from a backup.
const MOST_WAYS_READ: usize = 10 * MOST_WAYS;
/// Most steps of a run.
const MOST_STEPS: usize = 100 * MOST_PARTS;
/// The latest time, the last of the calendar of browsers.
const LATEST: u64 = 8_640_000_000_000_000;

/// Ids are short and plain, so that they make good keys; "~" parts the ids of versions.
pub(super) fn is_plain_id(id: &str) -> bool {
    let is_plain = |c: char| c.is_ascii_alphanumeric() || matches!(c, '-' | '~');
    let has_ends = !id.is_empty() && !id.starts_with('~') && !id.ends_with('~');
    has_ends && id.len() <= LONGEST_ID && id.chars().all(is_plain)
}

/// Keys are ids with slashes between them.
pub(super) fn is_plain_key(key: &str) -> bool {
    key.len() <= LONGEST_ID && key.split('/').all(is_plain_id)
}

/// A kind of record, and what one of it can have wrong.
pub(super) trait Checked: Written {
    /// What it is called.
    const KIND: &'static str;

    /// The field that its kind alone can have wrong.
    fn wrong(&self) -> Option<&'static str>;

    /// What of it cannot be used.
    fn unusable(&mut self) -> Option<&'static str> {
        self.wrong().or_else(|| too_long(self.slot(), "text"))
    }
}

impl Checked for Card {
    const KIND: &'static str = "Spec";

    fn wrong(&self) -> Option<&'static str> {
        (self.ways.len() > MOST_WAYS_READ).then_some("number of forms")
    }
}

impl Checked for Own {
    const KIND: &'static str = "Ingredient";

    fn wrong(&self) -> Option<&'static str> {
        None
    }
}

impl Checked for Run {
    const KIND: &'static str = "Run sheet";

    fn wrong(&self) -> Option<&'static str> {
        of_run(self)
    }
}

fn of_run(run: &Run) -> Option<&'static str> {
    let is_twice = |at: usize| run.parts[..at].iter().any(|part| part.key == run.parts[at].key);
    let times = run.marks.values().flat_map(|mark| [mark.started, mark.done]).chain([run.made, run.finished]);
    if run.parts.len() > MOST_PARTS || run.marks.len() > MOST_STEPS || run.log.len() > MOST_STEPS {
        return Some("number of preps");
    }
    if (0..run.parts.len()).any(|at| is_twice(at) || run.parts[at].key > MOST_KEY) {
        return Some("key of a prep");
    }
    times.into_iter().any(|at| at > LATEST).then_some("time")
}

/// The first field with a text that is too long; `field` is what this one is called.
pub(super) fn too_long(slot: Slot<'_>, field: &'static str) -> Option<&'static str> {
    let is_too_long = |text: &str| text.len() > LONGEST && text.chars().count() > LONGEST;
    match slot {
        Slot::Text(text) => is_too_long(text).then_some(field),
        Slot::List(many) | Slot::Names(many) => {
            let mut at = 0;
            while let Some((name, slot)) = many.at(at) {
                let found = if is_too_long(name) { Some("text") } else { too_long(slot, "text") };
                if found.is_some() {
                    return found;
                }
                at += 1;
            }
            None
        }
        Slot::Record(record) => record.slots().into_iter().find_map(|field| too_long(field.slot?, field.name)),
        _ => None,
    }
}

/// As much of a name as is shown.
pub(super) fn short(name: &str) -> String {
    name.chars().take(40).collect()
}
