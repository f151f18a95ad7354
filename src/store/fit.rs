//! Values of any shape put into the slots of a record, one by one: what does not fit is named, and the rest of a file
//! can still be taken.

use super::limits::short;
use super::problem::{ImportProblem, MOST_BYTES};
use super::read::{Unknown, read};
use crate::book::{ByName, Loose, Record, Rule, Slot, Written};

/// The value that a text of JSON holds.
///
/// # Errors
/// [`ImportProblem`] with the line where it goes wrong.
pub(super) fn loose(text: &str) -> Result<Loose, ImportProblem> {
    if text.len() > MOST_BYTES {
        return Err(ImportProblem::TooLarge);
    }
    let mut value = Loose::Nothing;
    read(text, value.slot(), Unknown::Refused).map_err(|problem| ImportProblem::NotRead {
        line: problem.line(),
        field: field_at(text, problem.line(), problem.column()).map(short).unwrap_or_default(),
        is_cut: problem.is_eof(),
    })?;
    Ok(value)
}

/// The name of the field that stands at, or last before, a place in JSON.
fn field_at(text: &str, line: usize, column: usize) -> Option<&str> {
    let start: usize = text.split_inclusive('\n').take(line.checked_sub(1)?).map(str::len).sum();
    let before = text.get(..(start + column).min(text.len()))?;
    let name = before[..before.rfind(':')?].trim_end().strip_suffix('"')?;
    Some(&name[name.rfind('"')? + 1..])
}

/// Puts a value into a slot.
///
/// # Errors
/// What is wrong, in words, as the end of a sentence.
pub(super) fn fit(value: Loose, slot: Slot<'_>) -> Result<(), String> {
    into_slot(value, slot, "")
}

/// `name` is what the slot is called; empty where it has no name.
fn into_slot(value: Loose, slot: Slot<'_>, name: &str) -> Result<(), String> {
    let wanted = match (slot, value) {
        (Slot::Text(place), Loose::Text(text)) => return put(place, text),
        (Slot::MaybeText(place), Loose::Text(text)) => return put(place, Some(text)),
        (Slot::MaybeText(place), Loose::Nothing) => return put(place, None),
        (Slot::Number(place), Loose::Number(number)) => return put(place, number),
        (Slot::MaybeSmall(place), Loose::Nothing) => return put(place, None),
        (Slot::Small(place), Loose::Number(number)) => match u32::try_from(number) {
            Ok(small) => return put(place, small),
            Err(_) => "a smaller number",
        },
        (Slot::MaybeSmall(place), Loose::Number(number)) => match u32::try_from(number) {
            Ok(small) => return put(place, Some(small)),
            Err(_) => "a smaller number",
        },
        (Slot::List(many), Loose::List(list)) => {
            many.clear();
            return list.into_iter().try_for_each(|value| into_slot(value, many.add(""), name));
        }
        (Slot::Names(many), Loose::Names(names)) => {
            many.clear();
            return names.into_iter().try_for_each(|(name, value)| into_slot(value, many.add(&name), &name));
        }
        (Slot::Record(record), Loose::Names(names)) => return fields(record, names),
        (Slot::Loose(place), value) => return put(place, value),
        (Slot::Passed, _) => return Ok(()),
        (Slot::Text(_) | Slot::MaybeText(_), _) => "a text",
        (Slot::Number(_) | Slot::Small(_) | Slot::MaybeSmall(_), _) => "a whole number",
        (Slot::Flag(_), _) => "yes or no",
        (Slot::List(_), _) => "a list",
        (Slot::Names(_) | Slot::Record(_), _) => "a group of named values",
    };
    Err(match name {
        "" => format!("{wanted} was expected"),
        name => format!("in “{}” {wanted} was expected", short(name)),
    })
}

fn put<T>(place: &mut T, value: T) -> Result<(), String> {
    *place = value;
    Ok(())
}

fn fields(record: &mut dyn Record, values: ByName<Loose>) -> Result<(), String> {
    let mut fields = record.slots();
    for (name, value) in values {
        let known = fields.iter_mut().find(|field| field.name == name && field.rule != Rule::Others);
        match known.and_then(|field| field.slot.take()) {
            Some(slot) => into_slot(value, slot, &name)?,
            None => return Err(format!("“{}” is not known here", short(&name))),
        }
    }
    match fields.iter().find(|field| field.rule == Rule::Needed && field.slot.is_some()) {
        Some(missing) => Err(format!("its “{}” is missing", missing.name)),
        None => Ok(()),
    }
}
