//! Specs as people type or paste them, line by line: "2 oz gin", "Gin 60 ml", "2 dashes bitters".

mod juice;
mod measured;
mod unit;
mod written;

use std::fmt;

use super::amount::{AmountProblem, Reading};
use super::figures::{Named, read_named};
use super::number::{NumberProblem, is_digit, is_space, replaced, starts_number};
use super::units::{leading_unit, typed};
use crate::book::{Line, is_poured};
use crate::quantity::{Amount, Ratio, Unit};
use juice::juice_of;
use measured::{Measured, is_alike, measured_at};
use unit::unit_written;
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
    /// A number that looks like a measure, without a unit.
    NoUnit(String),
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
            LineProblem::NoUnit(number) => write!(f, "{number} of what? Add a unit, like {number} ml."),
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
const MOST_LINES: usize = 200;

/// Reads every line that is not blank, up to 200 of them; one more line says how many are left.
#[must_use]
pub fn read_spec(text: &str, reading: &Reading<'_>) -> Vec<SpecLine> {
    let mut lines = text.lines().map(str::trim).filter(|line| !line.is_empty());
    let read = |line: &str| {
        let written = |read: Line| Line { unit: unit_written(line, &read), ..read };
        SpecLine { typed: line.to_owned(), read: read_line(line, reading).map(written) }
    };
    let mut all: Vec<SpecLine> = lines.by_ref().take(MOST_LINES).map(read).collect();
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
    let line = &*undressed(line);
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
            Ok((amount, said)) => return named(amount, name, said, reading),
            Err(LineProblem::NoAmount | LineProblem::Amount(AmountProblem::Number(NumberProblem::Unreadable(_)))) => {}
            Err(problem) => asked = asked.or(Some(problem)),
        }
    }
    if let Some(name) = topped_with(line) {
        return Err(LineProblem::Top(name.to_owned()));
    }
    Err(asked.unwrap_or(if holds_amount(line) { LineProblem::Unclear } else { LineProblem::NoAmount }))
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
    let Measured { number, amount, rest, mut said } = measured_at(line, reading)?;
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
    let outside = without_brackets(&cells.join(", "));
    match amount {
        Some(amount) => named(amount, &outside, said, reading),
        // "1 bottle (750 ml) gin": counting it would leave it out of the total.
        None if holds_amount(&rest) => Err(LineProblem::Unclear),
        None if is_poured(&outside) && number > 0.0 => Err(no_unit(line, &rest)),
        None => named(counted(number, line, &rest)?, &outside, said, reading),
    }
}

fn no_unit(line: &str, rest: &str) -> LineProblem {
    let is_figure = |c: char| is_digit(c) || is_space(c) || matches!(c, '.' | ',' | '/' | '-' | '–');
    // What is behind the number may have been put apart in reading.
    let number = line.strip_suffix(rest).unwrap_or(&line[..line.len() - line.trim_start_matches(is_figure).len()]);
    LineProblem::NoUnit(number.trim().to_owned())
}

/// An amount, and nothing behind it but a note in brackets.
fn amount_alone(text: &str, reading: &Reading<'_>) -> Result<(Amount, String), LineProblem> {
    let Measured { number, amount, rest, said } = measured_at(text, reading)?;
    let rest = rest.trim_matches(|c: char| is_space(c) || matches!(c, ')' | '|' | '.' | ','));
    let is_note = rest.starts_with('(') && !rest.contains(|c: char| c.is_ascii_digit());
    match amount {
        Some(amount) if rest.is_empty() || is_note => Ok((amount, said)),
        None if rest.is_empty() => Ok((counted(number, text, "")?, said)),
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
        let Named { taken, unread } = read_named(first, reading.decimal, reading.own);
        if taken.is_some() {
            said.push_str(if said.is_empty() { "not counted: or " } else { "; not counted: or " });
            said.push_str(other);
            return Ok(Line { amount, unit: None, name: first.to_owned(), taken, unread, said });
        }
    }
    let Named { taken, unread } = read_named(name, reading.decimal, reading.own);
    Ok(Line { amount, unit: None, name: name.to_owned(), taken, unread, said })
}

/// "(60 ml) gin" is "gin": the bracket says the amount again.
fn without_brackets(text: &str) -> String {
    match (text.starts_with('('), text.find(')')) {
        (true, Some(end)) => text[end + 1..].trim().to_owned(),
        _ => text.to_owned(),
    }
}

impl LineProblem {
    /// The line rewritten so that it can be read, for one tap.
    #[must_use]
    pub fn fixes(&self, line: &str) -> Vec<String> {
        match self {
            LineProblem::Amount(problem) => problem.fixes(line),
            LineProblem::Top(name) => [60, 90, 120].map(|ml| format!("{ml} ml {name}")).to_vec(),
            LineProblem::NoUnit(number) => [Unit::Millilitre, Unit::Ounce, Unit::Gram]
                .map(|unit| replaced(line, number, &format!("{number} {}", typed(unit))))
                .to_vec(),
            _ => Vec::new(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Conventions, Mass};
    use crate::text::{Decimal, Dimension};

    fn read(line: &str) -> Result<Line, LineProblem> {
        let conventions = Conventions::default();
        let reading = Reading {
            conventions: &conventions,
            decimal: Decimal::Point,
            bare: Unit::Millilitre,
            kind: Dimension::Either,
            own: &[],
        };
        read_spec(line, &reading).remove(0).read
    }

    #[track_caller]
    fn volume(line: &str, ml: f64, name: &str) {
        match read(line).expect(line) {
            Line { amount: Amount::Volume(volume), name: found, .. } => {
                assert!((volume.ml() - ml).abs() < 1e-3, "{line}: {volume:?}");
                assert_eq!(found, name, "{line}");
            }
            other => panic!("{line}: {other:?}"),
        }
    }

    #[test]
    fn lines_as_bars_write_them() {
        volume("2 oz gin", 59.147, "gin");
        volume("3/4 oz lemon juice", 22.180, "lemon juice");
        volume("2 dashes bitters", 1.6, "bitters");
        volume("2 dashes of bitters", 1.6, "bitters");
        volume("Gin 60 ml", 60.0, "Gin");
        volume("Gin: 60ml", 60.0, "Gin");
        volume("Rich syrup 2:1 30 ml", 30.0, "Rich syrup 2:1");
        volume("• 1½ oz pear brandy", 44.360, "pear brandy");
        volume("- 22,5 ml lime", 22.5, "lime");
        volume("2 oz (60 ml) gin", 59.147, "gin");
        volume("Gin (60 ml)", 60.0, "Gin");
        volume("1 part vermouth", 29.574, "vermouth");
        volume("Vermouth 1 1/2 oz", 44.360, "Vermouth");
        volume("1. 60 ml gin", 60.0, "gin");
        volume("2) Gin 60 ml", 60.0, "Gin");
        volume("2 oz, gin", 59.147, "gin");
        volume("Lime .75 oz", 22.180, "Lime");
        volume("○ 45 ml gin", 45.0, "gin");
    }

    #[test]
    fn lines_beyond_the_limit_are_counted_not_dropped() {
        let conventions = Conventions::default();
        let reading = Reading {
            conventions: &conventions,
            decimal: Decimal::Point,
            bare: Unit::Millilitre,
            kind: Dimension::Either,
            own: &[],
        };
        let lines = read_spec(&"1 ml gin\n".repeat(210), &reading);
        assert_eq!(lines.len(), 201);
        assert_eq!((lines[200].typed.as_str(), &lines[200].read), ("… and 10 more", &Err(LineProblem::TooMany)));
    }

    #[test]
    fn weights_and_counts() {
        let line = read("400 g pear purée").expect("a line");
        assert_eq!(line.amount, Amount::Mass(Mass::from_g(400.0).expect("mass")));
        assert_eq!((line.name.as_str(), line.taken.map(|taken| taken.ingredient.key)), ("pear purée", Some("puree")));
        assert!(matches!(read("8 mint leaves"), Ok(Line { amount: Amount::Count(_), .. })));
        assert!(matches!(read("1 egg white"), Ok(Line { amount: Amount::Count(_), .. })));
        assert!(matches!(read("½ lime"), Ok(Line { amount: Amount::Count(_), .. })));
        // What is squeezed is its juice.
        assert!(matches!(read("½ lime, squeezed"), Ok(Line { amount: Amount::Volume(_), .. })));
    }

    #[test]
    fn what_cannot_be_read_says_why() {
        assert_eq!(read("Orchard lantern"), Err(LineProblem::NoAmount));
        assert_eq!(read("top with soda"), Err(LineProblem::Top("soda".into())));
        assert_eq!(read("60 gin"), Err(LineProblem::NoUnit("60".into())));
        assert_eq!(read("45 ml"), Err(LineProblem::NoName));
        assert_eq!(read("2 gin"), Err(LineProblem::NoUnit("2".into())));
        assert_eq!(read("Gin 60"), Err(LineProblem::NoUnit("60".into())));
        assert_eq!(read("1 bottle (750 ml) gin"), Err(LineProblem::Unclear));
        for line in ["1 750 ml bottle gin", "Gin 1,000 ml", "Gin 3-2 oz"] {
            assert!(matches!(read(line), Err(LineProblem::Amount(AmountProblem::Number(_)))), "{line}");
        }
        assert_eq!(read("0 oz gin"), Err(LineProblem::Amount(AmountProblem::Zero)));
        assert_eq!(
            read("3-2 dashes bitters").map_err(|p| p.to_string()),
            Err("That is a range. Type one number.".into())
        );
        assert_eq!(read(&"x".repeat(300)), Err(LineProblem::TooLong));
        let problem = read("1,000 ml gin").expect_err("ambiguous");
        assert_eq!(problem.fixes("1,000 ml gin"), ["1000 ml gin", "1 ml gin"]);
        assert_eq!(LineProblem::NoUnit("60".into()).fixes("60 gin"), ["60 ml gin", "60 oz gin", "60 g gin"]);
    }
}
