//! A spec as somebody wrote it down, parted by its headings and its empty lines.

use crate::book::{Card, Way, folded};
use crate::reading::chilled::says;
use crate::tool::specs::method::Method;

/// Longest line that is a name.
const LONGEST_NAME: usize = 80;

const LINES: &str = "lines";
const STEPS: &str = "steps";
const MAKES: &str = "makes";
const NOTES: &str = "notes";

/// What heads a part of a recipe, folded, by the field that it goes into.
const HEADINGS: [(&str, &str); 7] = [
    (LINES, "ingredients zutaten ingredientes ingredienti"),
    (STEPS, "method directions preparation instructions steps zubereitung preparacion preparazione"),
    (MAKES, "serves makes servings portionen"),
    (NOTES, "notes note notizen"),
    ("garnish", "garnish garnitur deko garniture"),
    ("glass", "glass glassware glas"),
    ("ice", "ice eis"),
];
/// Methods that a step tells, by what a word of it begins with.
const TOLD: [(&str, &str); 4] = [("shaken", "shak"), ("stirred", "stir"), ("thrown", "throw"), ("built", "buil")];

/// The field that a line heads, and what it says there itself. How many a spec makes is a number alone.
fn heading(line: &str) -> Option<(&'static str, &str)> {
    let (head, rest) = line.split_once(':').or_else(|| line.split_once(' ')).unwrap_or((line, ""));
    let (head, rest) = (folded(head.trim()), rest.trim());
    let (field, _) = HEADINGS.into_iter().find(|(_, words)| words.split(' ').any(|word| word == head))?;
    let is_heading = match field {
        MAKES => rest.parse::<u16>().is_ok_and(|count| count > 0),
        LINES | STEPS if rest.is_empty() => true,
        _ => line.contains(':'),
    };
    is_heading.then_some((field, rest))
}

/// A step without its number: "2. Strain".
fn unnumbered(line: &str) -> &str {
    let rest = line.trim_start_matches(|c: char| c.is_ascii_digit());
    let step = rest.strip_prefix(['.', ')']).filter(|_| rest.len() < line.len());
    step.and_then(|step| step.strip_prefix(' ')).map_or(line, str::trim_start)
}

/// Whether a heading stands in it that we don't write.
pub(super) fn is_headed(text: &str) -> bool {
    text.lines().any(|line| match heading(line.trim()) {
        Some((STEPS, rest)) => line != "Steps:" && Method::read_or_none(rest).is_none(),
        Some((field, _)) => matches!(field, LINES | MAKES),
        None => false,
    })
}

/// The first line is its name, where it is no amount. What stands under a heading goes into its field; a block after the
/// lines in which nothing is measured is steps; all else is a line.
pub(super) fn as_written(text: &str, is_read: &dyn Fn(&str) -> bool) -> Card {
    let mut card = Card::default();
    let mut way = Way::default();
    let mut text = text;
    let (first, rest) = text.split_once('\n').unwrap_or((text, ""));
    let first = first.trim();
    if first.chars().count() <= LONGEST_NAME && !is_read(first) && heading(first).is_none() {
        first.clone_into(&mut card.name);
        text = rest;
    }
    let lines: Vec<&str> = text.lines().map(str::trim).collect();
    let (mut at, mut is_headed, mut has_lines) = (LINES, false, false);
    for block in lines.split(|line| line.is_empty()) {
        let is_measured = block.iter().any(|line| is_read(unnumbered(line)));
        if is_measured && !has_lines || !is_headed {
            at = if has_lines && !is_measured { STEPS } else { LINES };
        }
        for line in block {
            let (field, said) = match heading(line) {
                Some((MAKES, "1")) => continue,
                Some((field, said)) => {
                    if said.is_empty() || matches!(field, LINES | STEPS) {
                        (at, is_headed) = (field, matches!(field, STEPS | NOTES));
                    }
                    (field, said)
                }
                None => (at, *line),
            };
            let method = said.to_ascii_lowercase();
            let is_method = way.method.is_empty() && Method::read_or_none(&method).is_some();
            if is_method && field == STEPS && said.len() < line.len() {
                way.method = method;
                continue;
            }
            has_lines |= field == LINES && is_read(said);
            let said = if field == STEPS { unnumbered(said) } else { said };
            let mut fields = card.fields().into_iter().chain(way.fields());
            let Some((_, text)) = fields.find(|(name, _)| *name == field).filter(|_| !said.is_empty()) else {
                continue;
            };
            if !text.is_empty() {
                text.push_str(if matches!(field, LINES | STEPS | NOTES) { "\n" } else { ", " });
            }
            text.push_str(said);
        }
    }
    let mut told = TOLD.into_iter().filter(|(_, begins)| says(&way.steps, &[begins]));
    if let (true, Some((method, _)), None) = (way.method.is_empty(), told.next(), told.next()) {
        method.clone_into(&mut way.method);
    }
    card.ways.push(way);
    card
}
