//! Lists of measures, for the lines inside a jigger: "½; ¾; 1 oz".

use super::amount::{AmountProblem, Reading, read_amount};
use super::number::{Decimal, NumberProblem, is_space, starts_number};
use super::units::{typed, unit_of};
use crate::book::Mark;
use crate::quantity::Amount;

/// Reads measures parted by ";", "·" or a comma with a space behind it. A unit at the end serves all before it that have
/// none. "25,50 ml", one measure or two, is asked about.
///
/// # Errors
/// The first measure that can't be read.
pub fn read_marks(text: &str, reading: &Reading<'_>) -> Result<Vec<Mark>, AmountProblem> {
    let spaced = text.char_indices().filter(|(at, c)| *c == ',' && text[at + 1..].starts_with(is_space));
    let commas: Vec<usize> = spaced.map(|(at, _)| at).collect();
    let mut begins = 0;
    let mut parts = Vec::new();
    for at in commas.into_iter().chain([text.len()]) {
        parts.extend(text[begins..at].split([';', '·']).map(str::trim).filter(|part| !part.is_empty()));
        begins = (at + 1).min(text.len());
    }
    if let Some(problem) = parts.iter().find_map(|part| of_two_meanings(part, reading.decimal)) {
        return Err(problem.into());
    }
    let shared = parts.last().and_then(|last| unit_of(unit_text(last))).unwrap_or(reading.bare);
    let reading = Reading { bare: shared, ..*reading };
    parts
        .into_iter()
        .map(|part| match read_amount(part, &reading)? {
            Some(Amount::Volume(volume)) => {
                let label =
                    if unit_text(part).is_empty() { format!("{part} {}", typed(shared)) } else { part.to_owned() };
                Ok(Mark { label, volume })
            }
            _ => Err(AmountProblem::Zero),
        })
        .collect()
}

/// Numbers parted by commas alone: one with decimals, or several measures. With a decimal point any such comma may part
/// two measures; with a decimal comma those do that stand between two digits and two, as in "25,50".
fn of_two_meanings(part: &str, decimal: Decimal) -> Option<NumberProblem> {
    let typed = &part[..part.len() - part.trim_start_matches(|c: char| c.is_ascii_digit() || c == ',').len()];
    let numbers: Vec<&str> = typed.split(',').collect();
    let grouped = numbers.join("; ");
    match numbers[..] {
        [left, right] if !left.is_empty() && !right.is_empty() && !left.starts_with('0') => {
            // Three digits behind it are asked about as a number is.
            let is_asked = match decimal {
                Decimal::Point => right.len() < 3,
                Decimal::Comma => left.len() == 2 && right.len() == 2,
            };
            let short = right.trim_end_matches('0');
            let one = match short.len() {
                0 => left.to_owned(),
                // Written so that it can be read only one way.
                2 if decimal == Decimal::Comma => format!("{left},{short}00"),
                _ => format!("{left}{}{short}", decimal.mark()),
            };
            is_asked.then(|| NumberProblem::Ambiguous { typed: typed.to_owned(), grouped, decimal: one })
        }
        [_, _, _, ..] if numbers.iter().all(|number| (1..3).contains(&number.len())) => {
            Some(NumberProblem::Listed { typed: typed.to_owned(), grouped })
        }
        _ => None,
    }
}

fn unit_text(part: &str) -> &str {
    part.trim_start_matches(|c: char| starts_number(c) || c.is_whitespace() || c == '/')
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Conventions, Unit};
    use crate::text::Dimension;

    #[test]
    fn a_last_unit_serves_all() {
        let conventions = Conventions::default();
        let reading = Reading {
            conventions: &conventions,
            decimal: Decimal::Point,
            bare: Unit::Millilitre,
            kind: Dimension::Volume,
            own: &[],
        };
        let labels = |text| -> Vec<String> {
            read_marks(text, &reading).expect("readable").into_iter().map(|mark| mark.label).collect()
        };
        assert_eq!(labels("½; ¾; 1 1/2 oz"), ["½ oz", "¾ oz", "1 1/2 oz"]);
        assert_eq!(labels("20 · 25"), ["20 ml", "25 ml"]);
        assert_eq!(labels(""), Vec::<String>::new());
        assert_eq!(labels("½, ¾, 1 1/2 oz"), ["½ oz", "¾ oz", "1 1/2 oz"]);
        assert_eq!(labels("0,75 oz"), ["0,75 oz"]);
        assert!(read_marks("½; foo", &reading).is_err());
    }

    #[test]
    fn a_comma_that_may_part_two_measures_is_asked_about() {
        let conventions = Conventions::default();
        let asked = |text, decimal| {
            let reading = Reading {
                conventions: &conventions,
                decimal,
                bare: Unit::Millilitre,
                kind: Dimension::Volume,
                own: &[],
            };
            read_marks(text, &reading).err().map(|problem| problem.fixes(text)).unwrap_or_default()
        };
        for (text, decimal, fixes) in [
            ("25,50 ml", Decimal::Point, &["25; 50 ml", "25.5 ml"][..]),
            ("25,50 ml", Decimal::Comma, &["25; 50 ml", "25,5 ml"]),
            ("20; 37,25 ml", Decimal::Comma, &["20; 37; 25 ml", "20; 37,2500 ml"]),
            ("1,2 oz", Decimal::Point, &["1; 2 oz", "1.2 oz"]),
            ("20,00 ml", Decimal::Point, &["20; 00 ml", "20 ml"]),
            ("20,25,30 ml", Decimal::Point, &["20; 25; 30 ml"]),
            ("22,5 ml", Decimal::Comma, &[]),
            ("0,75 oz", Decimal::Point, &[]),
            ("1,250 ml", Decimal::Point, &["1250 ml", "1.25 ml"]),
        ] {
            assert_eq!(asked(text, decimal), fixes, "{text} {decimal:?}");
            for fix in fixes {
                assert_eq!(asked(fix, decimal), [""; 0], "{fix}");
            }
        }
    }
}
