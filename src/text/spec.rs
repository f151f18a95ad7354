//! Specs as people type or paste them, line by line: "2 oz gin", "Gin 60 ml", "2 dashes bitters".

use std::fmt;

use super::amount::{AmountProblem, Reading};
use super::number::{is_digit, is_space, scan, skip_spaces, starts_number};
use super::units::{leading_unit, typed};
use crate::book::Line;
use crate::quantity::{Amount, Mass, Ratio, Volume};

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
    /// A number that looks like a measure, without a unit.
    NoUnit(String),
    /// An amount of nothing.
    NoName,
    /// An amount that can't be read.
    Amount(AmountProblem),
    /// Longer than any line of a spec.
    TooLong,
}

impl fmt::Display for LineProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            LineProblem::NoAmount => f.write_str("No amount, so it is kept as it is."),
            LineProblem::NoUnit(number) => write!(f, "{number} of what? Add a unit, like {number} ml."),
            LineProblem::NoName => f.write_str("An amount of what? Add a name."),
            LineProblem::Amount(problem) => problem.fmt(f),
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

/// Reads every line that is not blank, up to 200 of them.
#[must_use]
pub fn read_spec(text: &str, reading: &Reading<'_>) -> Vec<SpecLine> {
    text.lines()
        .map(str::trim)
        .filter(|line| !line.is_empty())
        .take(MOST_LINES)
        .map(|line| SpecLine { typed: line.to_owned(), read: read_line(line, reading) })
        .collect()
}

fn read_line(line: &str, reading: &Reading<'_>) -> Result<Line, LineProblem> {
    if line.chars().count() > LONGEST_LINE {
        return Err(LineProblem::TooLong);
    }
    let line = without_bullet(line);
    if line.chars().next().is_some_and(starts_number) {
        return amount_first(line, reading);
    }
    // The amount may stand at the end; try each word that starts like a number, from the left.
    let mut first_problem = None;
    for (at, _) in line.char_indices().filter(|(at, c)| {
        starts_number(*c) && is_digit(*c) && line[..*at].chars().next_back().is_some_and(|before| !is_digit(before))
    }) {
        let (name, tail) = line.split_at(at);
        if !name.ends_with(|c: char| is_space(c) || c == ':' || c == '(') {
            continue;
        }
        match amount_alone(tail.trim_end_matches(')'), reading) {
            Ok(amount) => return named(amount, name),
            Err(problem @ LineProblem::Amount(AmountProblem::Zero | AmountProblem::TooMuch)) => {
                first_problem = first_problem.or(Some(problem));
            }
            Err(_) => {}
        }
    }
    Err(first_problem.unwrap_or(LineProblem::NoAmount))
}

fn without_bullet(line: &str) -> &str {
    let rest = line.trim_start_matches(['-', '–', '*', '•', '·']);
    if rest.len() < line.len() && rest.starts_with(is_space) { rest.trim_start() } else { line }
}

fn amount_first(line: &str, reading: &Reading<'_>) -> Result<Line, LineProblem> {
    let (number, rest) = leading_number(line, reading)?;
    let outside = without_brackets(&rest);
    let words: Vec<&str> = rest.split_whitespace().collect();
    match leading_unit_or_part(&words) {
        Some((unit, used)) => {
            let name = without_brackets(&words[used..].join(" "));
            named(measured(number, unit, reading)?, &name)
        }
        None => named(counted(number, line, &rest)?, &outside),
    }
}

fn amount_alone(text: &str, reading: &Reading<'_>) -> Result<Amount, LineProblem> {
    let (number, rest) = leading_number(text, reading)?;
    let words: Vec<&str> = rest.split_whitespace().collect();
    match leading_unit_or_part(&words) {
        Some((unit, used)) if used == words.len() => measured(number, unit, reading),
        None if words.is_empty() => counted(number, text, ""),
        _ => Err(LineProblem::NoAmount),
    }
}

fn leading_number(text: &str, reading: &Reading<'_>) -> Result<(f64, String), LineProblem> {
    let chars: Vec<char> = text.chars().collect();
    let mut at = 0;
    let number = scan(&chars, &mut at, reading.decimal).map_err(AmountProblem::Number)?;
    skip_spaces(&chars, &mut at);
    Ok((number, chars[at..].iter().collect()))
}

/// A unit of the list, or a part, which stands for one house ounce.
#[derive(Clone, Copy)]
enum LineUnit {
    Known(crate::quantity::Unit),
    Part,
}

fn leading_unit_or_part(words: &[&str]) -> Option<(LineUnit, usize)> {
    let first = words.first()?.trim_end_matches(['.', ':']).to_ascii_lowercase();
    if matches!(first.as_str(), "part" | "parts") {
        return Some((LineUnit::Part, 1));
    }
    leading_unit(words).map(|(unit, used)| (LineUnit::Known(unit), used))
}

fn measured(number: f64, unit: LineUnit, reading: &Reading<'_>) -> Result<Amount, LineProblem> {
    let amount = match unit {
        LineUnit::Known(unit) => unit.times(number, reading.conventions),
        LineUnit::Part => Volume::from_ml(number * reading.conventions.ounce.volume().ml()).map(Amount::Volume),
    };
    match amount.map_err(AmountProblem::from)? {
        Amount::Volume(volume) if volume <= Volume::ZERO => Err(AmountProblem::Zero.into()),
        Amount::Mass(mass) if mass <= Mass::ZERO => Err(AmountProblem::Zero.into()),
        amount => Ok(amount),
    }
}

fn counted(number: f64, line: &str, rest: &str) -> Result<Amount, LineProblem> {
    if number <= 0.0 {
        return Err(AmountProblem::Zero.into());
    }
    if number > MOST_COUNTED {
        return Err(LineProblem::NoUnit(line[..line.len() - rest.len()].trim().to_owned()));
    }
    Ratio::from_value(number).map(Amount::Count).map_err(|problem| AmountProblem::from(problem).into())
}

fn named(amount: Amount, name: &str) -> Result<Line, LineProblem> {
    let name = name.trim().trim_end_matches([':', ',', '-', '–', '=', '(']).trim();
    let name = name.strip_prefix("of ").unwrap_or(name).trim();
    if name.is_empty() {
        return Err(LineProblem::NoName);
    }
    Ok(Line { amount, name: name.to_owned() })
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
            LineProblem::NoUnit(number) => [crate::quantity::Unit::Millilitre, crate::quantity::Unit::Gram]
                .map(|unit| line.replacen(number, &format!("{number} {}", typed(unit)), 1))
                .to_vec(),
            _ => Vec::new(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Conventions, Unit};
    use crate::text::{Decimal, Kind};

    fn read(line: &str) -> Result<Line, LineProblem> {
        let conventions = Conventions::default();
        let reading =
            Reading { conventions: &conventions, decimal: Decimal::Point, bare: Unit::Millilitre, kind: Kind::Either };
        read_spec(line, &reading).remove(0).read
    }

    #[track_caller]
    fn volume(line: &str, ml: f64, name: &str) {
        match read(line).expect(line) {
            Line { amount: Amount::Volume(volume), name: found } => {
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
    }

    #[test]
    fn weights_and_counts() {
        assert_eq!(
            read("400 g pear purée"),
            Ok(Line { amount: Amount::Mass(Mass::from_g(400.0).expect("mass")), name: "pear purée".into() })
        );
        assert!(matches!(read("8 mint leaves"), Ok(Line { amount: Amount::Count(_), .. })));
        assert!(matches!(read("1 egg white"), Ok(Line { amount: Amount::Count(_), .. })));
        assert!(matches!(read("½ lime, squeezed"), Ok(Line { amount: Amount::Count(_), .. })));
    }

    #[test]
    fn what_cannot_be_read_says_why() {
        assert_eq!(read("Orchard lantern"), Err(LineProblem::NoAmount));
        assert_eq!(read("top with soda"), Err(LineProblem::NoAmount));
        assert_eq!(read("60 gin"), Err(LineProblem::NoUnit("60".into())));
        assert_eq!(read("45 ml"), Err(LineProblem::NoName));
        assert_eq!(read("0 oz gin"), Err(LineProblem::Amount(AmountProblem::Zero)));
        assert_eq!(
            read("2-3 dashes bitters").map_err(|p| p.to_string()),
            Err("That is a range. Type one number.".into())
        );
        assert_eq!(read(&"x".repeat(300)), Err(LineProblem::TooLong));
        let problem = read("1,000 ml gin").expect_err("ambiguous");
        assert_eq!(problem.fixes("1,000 ml gin"), ["1000 ml gin", "1 ml gin"]);
        assert_eq!(LineProblem::NoUnit("60".into()).fixes("60 gin"), ["60 ml gin", "60 g gin"]);
    }
}
