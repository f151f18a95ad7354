//! Specs as people type or paste them, line by line: "2 oz gin", "Gin 60 ml", "2 dashes bitters".

mod begins;
pub(super) mod egg;
mod juice;
mod measured;
mod share;
mod written;

use std::fmt;

use super::amount::{AmountProblem, Reading, is_part};
use super::figures::{Named, read_named};
use super::number::{NumberProblem, is_digit, is_space, replaced, starts_number};
use super::show::fraction_of;
use super::units::{leading_unit, typed};
use crate::book::{Fit, Line, fit, is_poured};
use crate::quantity::{Amount, Conventions, Ratio, Unit, Volume};
pub use begins::amount_ends;
use egg::{is_egg, poured};
use juice::juice_of;
use measured::{Measured, is_alike, measured_at};
use share::{counted_in, share_of};
use written::undressed;

/// A line of text and what was understood of it. Nothing typed is dropped.
#[derive(Clone, Debug, PartialEq)]
pub struct SpecLine {
    /// As typed, trimmed.
    pub typed: String,
    /// The measured line, or why there is none.
    pub read: Result<Line, LineProblem>,
}

/// Why a line has no measured amount.
#[derive(Clone, Debug, PartialEq)]
pub enum LineProblem {
    /// No number with it: a title, a garnish, a step.
    NoAmount,
    /// As much as fills the glass; of what.
    Top(String),
    /// Eggs, their whites or yolks, without their number; the line.
    HowMany(String),
    /// No ingredient: it says what one part is.
    Part,
    /// A share of the whole, percent, and of what, where that cannot be worked out.
    Share(f64, String),
    /// A number that looks like a measure, without a unit.
    NoUnit(String),
    /// Bottles of something, and what they hold is not said: how many, and of what.
    Bottles(f64, String),
    /// An amount of nothing.
    NoName,
    /// An amount that can't be read.
    Amount(AmountProblem),
    /// An amount that is there but can't be told from the rest.
    Unclear,
    /// Longer than any line of a spec.
    TooLong,
    /// Beyond the lines that are read.
    TooMany,
}

impl fmt::Display for LineProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            LineProblem::NoAmount => f.write_str("No amount, so it is kept as it is."),
            LineProblem::Top(name) => write!(f, "How much fills the glass? Write it like 90 ml {name}."),
            LineProblem::HowMany(line) => write!(f, "How many? Write it like {}.", one_or_two(line)),
            LineProblem::Part => f.write_str("So much is one part."),
            LineProblem::Share(_, name) => write!(f, "A share of how much? Write it like 30 ml {name}."),
            LineProblem::NoUnit(number) => write!(f, "{number} of what? Add a unit, like {number} ml."),
            LineProblem::Bottles(count, name) => {
                write!(f, "How much is a bottle? 700 ml is usual: write {}.", bottles(*count, 700, name))
            }
            LineProblem::NoName => f.write_str("An amount of what? Add a name."),
            LineProblem::Amount(problem) => problem.fmt(f),
            LineProblem::Unclear => {
                f.write_str("There is an amount in this that can't be read. Write it like 60 ml gin.")
            }
            LineProblem::TooMany => f.write_str("Only the first 200 lines are read."),
            LineProblem::TooLong => f.write_str("Too long to be one line of a spec."),
        }
    }
}

impl From<AmountProblem> for LineProblem {
    fn from(problem: AmountProblem) -> Self {
        LineProblem::Amount(problem)
    }
}

/// Most a bare number counts ("12 mint leaves"); above it a unit is asked for.
const MOST_COUNTED: f64 = 15.0;
const LONGEST_LINE: usize = 200;
/// What a bottle holds, millilitres: the usual first.
pub const BOTTLE_SIZES: [u32; 3] = [700, 750, 1000];
const MOST_LINES: usize = 200;

/// Reads every line that is not blank, up to 200 of them; one more line says how many are left.
#[must_use]
pub fn read_spec(text: &str, reading: &Reading<'_>) -> Vec<SpecLine> {
    let mut lines = text.lines().map(str::trim).filter(|line| !line.is_empty());
    let part = match names_parts(text) {
        true => lines.clone().take(MOST_LINES).find_map(|line| part_in(line, reading)),
        false => None,
    };
    let conventions = Conventions { part, ..*reading.conventions };
    let reading = &Reading { conventions: &conventions, ..*reading };
    let read = |line: &str| SpecLine { typed: line.to_owned(), read: read_line(line, reading) };
    let mut all: Vec<SpecLine> = lines.by_ref().take(MOST_LINES).map(read).collect();
    counted_in(&mut all, reading);
    let rest = lines.count();
    if rest > 0 {
        all.push(SpecLine { typed: format!("… and {rest} more"), read: Err(LineProblem::TooMany) });
    }
    all
}

fn read_line(line: &str, reading: &Reading<'_>) -> Result<Line, LineProblem> {
    if line.chars().count() > LONGEST_LINE {
        return Err(LineProblem::TooLong);
    }
    if reading.conventions.part.is_some() && part_in(line, reading).is_some() {
        return Err(LineProblem::Part);
    }
    let line = &*undressed(line);
    if let Some((percent, name)) = share_of(line, reading) {
        return Err(LineProblem::Share(percent, name.to_owned()));
    }
    if let Some(juice) = juice_of(line, reading) {
        return juice;
    }
    if line.chars().next().is_some_and(starts_number) {
        return amount_first(line, reading);
    }
    if is_heading(line) {
        return Err(LineProblem::NoAmount);
    }
    // The amount may stand at the end; try each word that starts like a number, from the left.
    let mut asked = None;
    for (at, _) in line.match_indices(|c: char| is_digit(c) || c == '.').filter(|(at, _)| starts_word(line, *at)) {
        let (name, tail) = line.split_at(at);
        match amount_alone(tail, reading) {
            Ok((amount, unit, said)) => {
                return named(amount, name, said, reading).map(|read| Line { unit, ..read });
            }
            Err(LineProblem::Bottles(count, _)) => {
                return Err(LineProblem::Bottles(count, name.trim_end_matches([' ', ':', ',']).to_owned()));
            }
            Err(LineProblem::NoAmount | LineProblem::Amount(AmountProblem::Number(NumberProblem::Unreadable(_)))) => {}
            Err(problem) => asked = asked.or(Some(problem)),
        }
    }
    if asked.is_none() && is_egg(line) {
        return Err(LineProblem::HowMany(line.to_owned()));
    }
    if let Some(name) = topped_with(line) {
        return Err(LineProblem::Top(name.to_owned()));
    }
    Err(asked.unwrap_or(if holds_amount(line) { LineProblem::Unclear } else { LineProblem::NoAmount }))
}

/// Whether a text says "part" anywhere; most do not.
fn names_parts(text: &str) -> bool {
    text.as_bytes().windows(4).any(|word| word[0] | 32 == b'p' && word.eq_ignore_ascii_case(b"part"))
}

/// What a line says that one part is: "1 part = 30 ml".
fn part_in(line: &str, reading: &Reading<'_>) -> Option<Volume> {
    let line = undressed(line);
    let line = line.trim_matches(['(', ')']);
    let line = ["1 ", "a ", "A "].iter().find_map(|one| line.strip_prefix(one)).unwrap_or(line);
    let (_, rest) = line.split_at_checked(4).filter(|(word, _)| is_part(word))?;
    let rest = rest.trim_start();
    let amount = rest.strip_prefix(['=', ':']).or_else(|| rest.strip_prefix("is "))?;
    match amount_alone(amount.trim_start(), reading) {
        Ok((Amount::Volume(part), ..)) => Some(part),
        _ => None,
    }
}

/// What heads a list, or says what it makes, is no ingredient. Ice may be one: it is not where a colon follows.
fn is_heading(line: &str) -> bool {
    const HEADINGS: [&str; 9] =
        ["serves", "makes", "yield", "yields", "serving", "servings", "portions", "garnish", "for"];
    const WITH_COLON: [&str; 5] = ["glass", "method", "ice", "note", "notes"];
    let word = line.split(|c: char| is_space(c) || c == ':').next().unwrap_or_default();
    let is_one_of = |words: &[&str]| words.iter().any(|heading| heading.eq_ignore_ascii_case(word));
    is_one_of(&HEADINGS) && word.len() < line.len() || is_one_of(&WITH_COLON) && line[word.len()..].starts_with(':')
}

/// What the glass is topped up with: "top with soda", "soda to top".
fn topped_with(line: &str) -> Option<&str> {
    const BEFORE: [&str; 9] = [
        "top: ",
        "top up with ",
        "top off with ",
        "top with ",
        "topped with ",
        "fill with ",
        "fill up with ",
        "splash of ",
        "top ",
    ];
    const BEHIND: [&str; 6] = [" to top up", " to top", ", top up", ", top", " to fill", " top"];
    let lower = line.to_ascii_lowercase();
    let name =
        BEFORE.iter().find_map(|words| lower.starts_with(words).then(|| &line[words.len()..])).or_else(|| {
            BEHIND.iter().find_map(|words| lower.ends_with(words).then(|| &line[..line.len() - words.len()]))
        })?;
    let name = name.trim_matches(|c: char| is_space(c) || matches!(c, ':' | ',' | '–' | '-' | '.'));
    is_poured(name).then_some(name)
}

/// Whether a word begins at a place: after a space, a colon or a bracket.
fn starts_word(line: &str, at: usize) -> bool {
    line[..at].ends_with(|c: char| is_space(c) || matches!(c, ':' | '(' | ','))
}

/// Whether a number with a unit stands anywhere in a text.
fn holds_amount(text: &str) -> bool {
    let words: Vec<&str> = text.split(|c: char| is_space(c) || matches!(c, '(' | ')' | '~')).collect();
    words.iter().enumerate().any(|(at, word)| {
        let unit = word.trim_start_matches(|c| is_digit(c) || matches!(c, '.' | ',' | '/'));
        unit.len() < word.len()
            && if unit.is_empty() { leading_unit(&words[at + 1..]).is_some() } else { leading_unit(&[unit]).is_some() }
    })
}

fn amount_first(line: &str, reading: &Reading<'_>) -> Result<Line, LineProblem> {
    let Measured { number, amount, unit, rest, mut said } = measured_at(line, reading)?;
    // Another column may hold it again in another unit.
    let mut cells: Vec<&str> = rest.split('|').map(str::trim).collect();
    if let (Some(first), true) = (amount, cells.len() > 1) {
        cells.retain(|cell| match measured_at(cell, reading) {
            Ok(Measured { amount: Some(again), rest, .. }) if rest.is_empty() => {
                if !is_alike(first, again) {
                    said = format!("{cell} is not the same: the first counts");
                }
                false
            }
            _ => true,
        });
    }
    let outside = cells.join(", ");
    let outside = without_brackets(&outside);
    match amount {
        Some(amount) => named(amount, outside, said, reading).map(|read| Line { unit, ..read }),
        // "1 bottle (750 ml) gin": counting it would leave it out of the total.
        None if holds_amount(&rest) => Err(LineProblem::Unclear),
        None if number > 0.0 && bottles_of(&rest).is_some_and(|name| !name.is_empty()) => {
            Err(LineProblem::Bottles(number, bottles_of(outside).unwrap_or_default().to_owned()))
        }
        None if number > 0.0 && (is_poured(outside) || is_misspelt(outside, reading)) => Err(no_unit(line, &rest)),
        None => named(counted(number, line, &rest)?, outside, said, reading),
    }
}

/// What bottles are of: of "bottles of gin", "gin"; none for what is no bottles.
fn bottles_of(text: &str) -> Option<&str> {
    let (word, of) = text.split_at(text.find(is_space).unwrap_or(text.len()));
    let is_bottle = ["bottle", "bottles", "btl"].iter().any(|bottle| bottle.eq_ignore_ascii_case(word));
    let of = of.trim_start();
    is_bottle.then(|| of.strip_prefix("of ").unwrap_or(of))
}

/// Whether a name is that of something poured but for a letter or two.
fn is_misspelt(name: &str, reading: &Reading<'_>) -> bool {
    matches!(fit(name, reading.own), Fit::As(_, read_as) if is_poured(&read_as))
}

fn no_unit(line: &str, rest: &str) -> LineProblem {
    let is_figure = |c: char| is_digit(c) || is_space(c) || matches!(c, '.' | ',' | '/' | '-' | '–');
    // What is behind the number may have been put apart in reading.
    let number = line
        .strip_suffix(rest.trim_start_matches(is_figure))
        .unwrap_or(&line[..line.len() - line.trim_start_matches(is_figure).len()]);
    LineProblem::NoUnit(number.trim().to_owned())
}

/// An amount, and nothing behind it but a note in brackets.
fn amount_alone(text: &str, reading: &Reading<'_>) -> Result<(Amount, Option<Unit>, String), LineProblem> {
    let Measured { number, amount, unit, rest, said } = measured_at(text, reading)?;
    let rest = rest.trim_matches(|c: char| is_space(c) || matches!(c, ')' | '|' | '.' | ','));
    let is_note = rest.starts_with('(') && !rest.contains(|c: char| c.is_ascii_digit());
    match amount {
        Some(amount) if rest.is_empty() || is_note => Ok((amount, unit, said)),
        None if bottles_of(rest) == Some("") => Err(LineProblem::Bottles(number, String::new())),
        None if rest.is_empty() => Ok((counted(number, text, "")?, None, said)),
        _ => Err(LineProblem::NoAmount),
    }
}

fn counted(number: f64, line: &str, rest: &str) -> Result<Amount, LineProblem> {
    if number <= 0.0 {
        return Err(AmountProblem::Zero.into());
    }
    if number > MOST_COUNTED {
        return Err(no_unit(line, rest));
    }
    Ratio::from_value(number).map(Amount::Count).map_err(|problem| AmountProblem::from(problem).into())
}

/// Where a word stands in a text, not at its beginning.
fn word_at(text: &str, word: &str) -> Option<usize> {
    let starts = text.char_indices().filter(|(_, c)| *c == ' ').map(|(at, _)| at + 1);
    let is_there = |at: &usize| text[*at..].strip_prefix(word).is_some_and(|rest| rest.starts_with(' '));
    starts.into_iter().find(is_there)
}

fn named(amount: Amount, name: &str, mut said: String, reading: &Reading<'_>) -> Result<Line, LineProblem> {
    let is_mark = |c: char| is_space(c) || matches!(c, ':' | ',' | '-' | '–' | '=' | '|');
    let name = name.trim_matches(is_mark).trim_end_matches('(').trim_end();
    let name = ["of ", "de ", "di ", "d'", "von "].iter().find_map(|of| name.strip_prefix(of)).unwrap_or(name).trim();
    if name.is_empty() {
        return Err(LineProblem::NoName);
    }
    // "gin or vodka": the first counts, where it is known.
    if let Some(at) = word_at(name, "or") {
        let (first, other) = (name[..at].trim_end(), name[at + 2..].trim_start());
        let known = read_named(first, reading.decimal, reading.own);
        if known.taken.is_some() {
            say(&mut said, &format!("not counted: or {other}"));
            return Ok(line(amount, first, known, said));
        }
    }
    Ok(line(amount, name, read_named(name, reading.decimal, reading.own), said))
}

fn line(amount: Amount, name: &str, known: Named, mut said: String) -> Line {
    let Named { taken, read_as, unread } = known;
    let amount = poured(amount, taken.as_ref(), name, &mut said);
    if !read_as.is_empty() {
        say(&mut said, &format!("read as {read_as}"));
    }
    Line { amount, unit: None, name: name.to_owned(), taken, unread, said }
}

/// So many bottles of a size.
fn bottles(count: f64, ml: u32, name: &str) -> String {
    let count = fraction_of(count).unwrap_or_else(|| count.to_string());
    format!("{count} × {ml} ml {name}").trim_end().to_owned()
}

/// Adds to what is said of a line.
fn say(said: &mut String, more: &str) {
    if !said.is_empty() {
        said.push_str("; ");
    }
    said.push_str(more);
}

/// A line with a number before it: one, or two of what it has more of.
fn one_or_two(line: &str) -> String {
    let name = line.split(['(', ',']).next().unwrap_or_default().trim_end();
    format!("{} {line}", if name.ends_with('s') { 2 } else { 1 })
}

/// "(60 ml) gin" is "gin": the bracket says the amount again.
fn without_brackets(text: &str) -> &str {
    match (text.starts_with('('), text.find(')')) {
        (true, Some(end)) => text[end + 1..].trim(),
        _ => text,
    }
}

impl LineProblem {
    /// Whether the line is no ingredient, and so lacks nothing.
    #[must_use]
    pub const fn is_words(&self) -> bool {
        matches!(self, LineProblem::NoAmount | LineProblem::Part)
    }

    /// The line rewritten so that it can be read, for one tap.
    #[must_use]
    pub fn fixes(&self, line: &str) -> Vec<String> {
        match self {
            LineProblem::Amount(problem) => problem.fixes(line),
            LineProblem::Top(name) => [60, 90, 120].map(|ml| format!("{ml} ml {name}")).to_vec(),
            LineProblem::HowMany(line) => vec![one_or_two(line)],
            LineProblem::Bottles(count, name) => BOTTLE_SIZES.map(|ml| bottles(*count, ml, name)).to_vec(),
            LineProblem::NoUnit(number) => [Unit::Millilitre, Unit::Ounce, Unit::Gram]
                .map(|unit| replaced(line, number, &format!("{number} {}", typed(unit))))
                .to_vec(),
            _ => Vec::new(),
        }
    }
}

#[cfg(test)]
mod tests;
