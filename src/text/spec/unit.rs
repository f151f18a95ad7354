//! The unit that a line's amount is written in, so that it is shown as it was written.

use super::Line;
use crate::quantity::{Amount, Unit};
use crate::text::number::{is_digit, is_space};
use crate::text::units::leading_unit;

/// The unit behind the first number of a line that has one; a part is read as an ounce. None where it does not weigh or pour
/// as the line was read.
pub(super) fn unit_written(line: &str, read: &Line) -> Option<Unit> {
    let is_joint = |c: char| is_space(c) || matches!(c, '/' | '(' | ')' | '|' | '+' | '=' | ':');
    let words: Vec<&str> = line.split(is_joint).filter(|word| !word.is_empty()).collect();
    let unit = words.iter().enumerate().find_map(|(at, word)| {
        let behind = word.trim_start_matches(|c| is_digit(c) || matches!(c, '.' | ',' | '-' | '–' | '~'));
        let next = match behind.len() {
            same if same == word.len() => return None,
            0 => words.get(at + 1..)?,
            _ => &[behind],
        };
        let is_part = |word: &&str| word.eq_ignore_ascii_case("part") || word.eq_ignore_ascii_case("parts");
        next.first().filter(|word| is_part(word)).map(|_| Unit::Ounce).or_else(|| Some(leading_unit(next)?.0))
    })?;
    match read.amount {
        Amount::Volume(_) => !unit.weighs(),
        Amount::Mass(_) => unit.weighs(),
        Amount::Count(_) => false,
    }
    .then_some(unit)
}

#[cfg(test)]
mod tests {
    use crate::quantity::{Conventions, Unit};
    use crate::text::{Decimal, Dimension, Reading, read_spec};

    #[test]
    fn the_unit_a_line_is_written_in() {
        let conventions = Conventions::default();
        let reading = Reading {
            conventions: &conventions,
            decimal: Decimal::Point,
            bare: Unit::Millilitre,
            kind: Dimension::Either,
            own: &[],
        };
        for (line, unit) in [
            ("2 oz gin", Some(Unit::Ounce)),
            ("1½oz rum", Some(Unit::Ounce)),
            ("• 1-1/2 oz — rum", Some(Unit::Ounce)),
            ("60ml/2oz gin", Some(Unit::Millilitre)),
            ("2–3 dashes bitters", Some(Unit::Dash)),
            ("2 x 30 ml gin", Some(Unit::Millilitre)),
            ("Gin: 4 cl", Some(Unit::Centilitre)),
            ("Rich syrup 2:1 1 oz", Some(Unit::Ounce)),
            ("2 parts gin", Some(Unit::Ounce)),
            ("1 fl oz gin", Some(Unit::Ounce)),
            ("½ lb sugar", Some(Unit::Pound)),
            ("8 mint leaves", None),
            ("juice of half a lime", None),
        ] {
            let read = read_spec(line, &reading).remove(0).read.expect(line);
            assert_eq!(read.unit, unit, "{line}");
        }
    }
}
