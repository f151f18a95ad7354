//! What an import may hold: whatever a Meniscus can have kept, and no more of it than a screen can bear.

use super::problem::ImportProblem;
use crate::book::{Card, Import, MOST_KEY, MOST_PARTS, MOST_WAYS, Run, Slot, Written, first_twice};

/// Ten times what a field takes on screen, in characters, so that whatever was kept comes back.
const LONGEST: usize = 200_000;
const LONGEST_ID: usize = 200;
/// Most records of all kinds together.
const MOST_RECORDS: usize = 20_000;
/// Ten times the forms that a card is given here: as many were once taken from a file, and come back from a backup.
const MOST_WAYS_READ: usize = 10 * MOST_WAYS;
/// Most steps of a run.
const MOST_STEPS: usize = 100 * MOST_PARTS;
/// The latest time, the last of the calendar of browsers.
const LATEST: u64 = 8_640_000_000_000_000;

/// Looks through all of an import.
pub(super) fn check(import: &mut Import) -> Result<(), ImportProblem> {
    if import.cards.len() + import.own.len() + import.runs.len() > MOST_RECORDS {
        return Err(ImportProblem::TooLarge);
    }
    each("Spec", &mut import.cards, |card| &card.name, of_card)?;
    each("Ingredient", &mut import.own, |own| &own.name, |_| None)?;
    each("Run sheet", &mut import.runs, |run| &run.name, of_run)
}

/// Looks through the records of one kind. `wrong` is the field that its kind alone can have wrong.
fn each<T: Written>(
    kind: &str,
    records: &mut [(String, T)],
    name: fn(&T) -> &str,
    wrong: fn(&T) -> Option<&'static str>,
) -> Result<(), ImportProblem> {
    let twice = first_twice(&records.iter().map(|(id, _)| id.as_str()).collect::<Vec<_>>());
    for (at, (id, value)) in records.iter_mut().enumerate() {
        let is_wrong_id = twice == Some(at) || !is_plain(id);
        let field = is_wrong_id.then_some("id").or_else(|| wrong(value)).or_else(|| too_long(value.slot(), "text"));
        if let Some(field) = field {
            return Err(ImportProblem::Record(format!("{kind} {}, “{}”:", at + 1, short(name(value))), field));
        }
    }
    Ok(())
}

/// Ids are short and plain, so that they make good keys.
fn is_plain(id: &str) -> bool {
    let is_plain = |c: char| c.is_ascii_alphanumeric() || matches!(c, '-' | '~');
    !id.is_empty() && id.len() <= LONGEST_ID && id.chars().all(is_plain)
}

fn of_card(card: &Card) -> Option<&'static str> {
    (card.ways.len() > MOST_WAYS_READ).then_some("number of forms")
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
fn too_long(slot: Slot<'_>, field: &'static str) -> Option<&'static str> {
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
