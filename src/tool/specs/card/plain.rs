//! A card as plain text, every form of it; and read back from that.
//!
//! A title; a paragraph for each form, under its name; the tags; the notes, to the end. A line that would be taken for
//! something else has a backslash before it.

use crate::book::{Card, Way};
use crate::reading::named;
use crate::text::is_digit;

/// What stands before a text of a form, where it is one line.
const LABELS: [&str; 8] = ["Method:", "Glass:", "It holds:", "Ice:", "Garnish:", "It makes:", "It gives:", NOTE];
/// What stands before each line of the notes on a form.
const NOTE: &str = "On this form:";
/// What stands before the name of a form that would not be taken for one; before the steps, where nothing else parts them
/// from the lines; before the tags, and the notes.
const FORM: &str = "Form:";
const STEPS: &str = "Steps:";
const TAGS: &str = "Tags:";
const NOTES: &str = "Notes:";

/// The texts of a form that have a label, in the order of [`LABELS`].
fn labelled(way: &mut Way) -> [&mut String; 8] {
    let Way { method, glass, holds, ice, garnish, makes, gives, notes, .. } = way;
    [method, glass, holds, ice, garnish, makes, gives, notes]
}

fn is_label(line: &str) -> bool {
    LABELS.iter().chain(&[FORM, STEPS, TAGS, NOTES]).any(|label| line.starts_with(label))
}

/// Whether the first line of a form is taken for its name: words without a number.
fn is_name(line: &str) -> bool {
    !line.is_empty() && !line.starts_with('\\') && !line.contains(is_digit) && !is_label(line)
}

fn lines(text: &str) -> impl Iterator<Item = &str> {
    text.lines().map(str::trim).filter(|line| !line.is_empty())
}

/// A text in one line.
fn one_line(text: &str) -> String {
    lines(text).collect::<Vec<_>>().join(" ")
}

/// The lines of a text, each so that it is taken for one.
fn guarded(text: &str) -> impl Iterator<Item = String> {
    let guard = |line: &str| if is_label(line) || line.starts_with('\\') { "\\" } else { "" };
    lines(text).map(move |line| format!("{}{line}", guard(line)))
}

/// A card as plain text.
#[must_use]
pub fn plain(card: &Card) -> String {
    let mut parts = vec![one_line(&named(&card.name))];
    parts.extend(card.ways.iter().map(|way| form(way, card.ways.len() > 1)));
    let (tags, notes) = (one_line(&card.tags), card.notes.trim());
    parts.extend([(TAGS, tags.as_str()), (NOTES, notes)].map(|(label, text)| match text {
        "" => String::new(),
        text => format!("{label} {text}"),
    }));
    parts.retain(|part| !part.is_empty());
    parts.join("\n\n")
}

fn form(way: &Way, is_one_of_several: bool) -> String {
    let mut said: Vec<String> = guarded(&way.lines).collect();
    let before = said.len();
    let mut way = way.clone();
    for (label, text) in LABELS.into_iter().zip(labelled(&mut way)) {
        match (label, text.as_str()) {
            (NOTE, text) => said.extend(lines(text).map(|line| format!("{label} {line}"))),
            (_, text) if text.trim().is_empty() => {}
            (_, text) => said.push(format!("{label} {}", one_line(text))),
        }
    }
    let steps: Vec<String> = guarded(&way.steps).collect();
    if said.len() == before && !steps.is_empty() {
        said.push(STEPS.into());
    }
    said.extend(steps);
    let name = one_line(&way.name);
    let first = said.first().map_or("", String::as_str);
    if is_name(&name) {
        said.insert(0, name);
    } else if !name.is_empty() || is_name(first) || (said.is_empty() && is_one_of_several) {
        said.insert(0, format!("{FORM} {name}").trim_end().to_owned());
    }
    said.join("\n")
}

/// Reads what [`plain`] writes, with or without changes by hand; none for any other text.
#[must_use]
pub fn read_plain(text: &str) -> Option<Card> {
    let text = text.replace("\r\n", "\n");
    let text = text.trim();
    let (body, notes) = text.split_once(&format!("\n\n{NOTES}")).unwrap_or((text, ""));
    let mut parts = body.split("\n\n");
    let title = parts.next().filter(|title| !title.is_empty())?;
    let name = if title == named("") { "" } else { title };
    let mut card = Card { name: name.into(), notes: notes.trim().into(), ..Card::default() };
    for part in parts {
        match part.strip_prefix(TAGS) {
            Some(tags) => tags.trim().clone_into(&mut card.tags),
            None => card.ways.push(read_form(part)),
        }
    }
    if card.ways.is_empty() {
        card.ways.push(Way::default());
    }
    // It is ours when it is written so.
    (plain(&card) == text).then_some(card)
}

fn read_form(text: &str) -> Way {
    let mut way = Way::default();
    let (mut above, mut steps) = (Vec::new(), Vec::new());
    let mut is_above = true;
    for (at, line) in text.lines().enumerate() {
        if at == 0 && is_name(line) {
            line.clone_into(&mut way.name);
        } else if let Some(name) = line.strip_prefix(FORM) {
            name.trim().clone_into(&mut way.name);
        } else if let Some(at) = LABELS.iter().position(|label| line.starts_with(label)) {
            is_above = false;
            let text = line[LABELS[at].len()..].trim();
            let field = &mut labelled(&mut way)[at];
            if LABELS[at] == NOTE && !field.is_empty() {
                field.push('\n');
                field.push_str(text);
            } else {
                text.clone_into(field);
            }
        } else if line == STEPS {
            is_above = false;
        } else {
            let line = line.strip_prefix('\\').unwrap_or(line);
            if is_above { above.push(line) } else { steps.push(line) }
        }
    }
    (way.lines, way.steps) = (above.join("\n"), steps.join("\n"));
    way
}
