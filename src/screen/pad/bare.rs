//! A number typed without a unit takes the unit that stood in its field, which is the one that is lit.

use super::{Keys, unit_typed};
use crate::quantity::{Amount, Unit};
use crate::text::{Dimension, Reading, is_digit, read_amount, typed};

/// A number that leaps by more than this from what stood there may have been meant in another unit.
const LEAP: f64 = 20.0;

/// `new`, with the unit of what stood there behind every number that has none. Where that leaps, and another unit comes
/// nearer, both are written, as in "45 oz? 45 ml?": that is asked about where it is read.
#[must_use]
pub fn with_unit_of(stood: &str, new: &str, keys: Keys, reading: &Reading<'_>) -> String {
    let unit = match keys {
        Keys::Celsius if is_bare(new) && stood.ends_with(['F', 'f']) => return format!("{} °F", new.trim_end()),
        Keys::Count | Keys::Percent | Keys::Ratio | Keys::Celsius | Keys::Seconds => None,
        Keys::Pour
        | Keys::Batch
        | Keys::Either
        | Keys::Line
        | Keys::Compared
        | Keys::Bulk
        | Keys::Weight
        | Keys::Marks => unit_typed(stood),
    };
    // A side of a ratio takes the unit of the other, where it is read.
    let Some(unit) = unit.filter(|_| !new.contains(':')) else { return new.to_owned() };
    if keys == Keys::Marks {
        // A unit at the end of a list serves all of it.
        let last = new.trim_end_matches(|c: char| c == ';' || c.is_whitespace());
        let is_bare = is_bare(last.rsplit(';').next().unwrap_or_default());
        return if is_bare { format!("{last} {}{}", typed(unit), &new[last.len()..]) } else { new.to_owned() };
    }
    if !new.contains('+') && is_bare(new) {
        let one = given(new, unit);
        return match nearer(stood, new, unit, reading) {
            Some(other) => format!("{one}? {other}?"),
            None => one,
        };
    }
    let terms: Vec<String> = new
        .split('+')
        .map(|term| {
            let number = term.trim_end();
            if is_bare(term) { format!("{}{}", given(number, unit), &term[number.len()..]) } else { term.to_owned() }
        })
        .collect();
    terms.join("+")
}

fn given(number: &str, unit: Unit) -> String {
    format!("{} {}", number.trim_end(), typed(unit))
}

/// Whether a text is a number, as far as it is typed, and nothing behind it.
fn is_bare(text: &str) -> bool {
    text.trim_end().ends_with(|c| is_digit(c) || matches!(c, '.' | ','))
        && !text.contains(|c: char| c.is_ascii_alphabetic())
}

/// The number in another unit that comes nearer to what stood there than in the unit that did, where that leaps.
fn nearer(stood: &str, number: &str, unit: Unit, reading: &Reading<'_>) -> Option<String> {
    let size = |text: &str| match read_amount(text, &Reading { kind: Dimension::Either, ..*reading }) {
        Ok(Some(Amount::Volume(volume))) => Some(volume.ml()),
        Ok(Some(Amount::Mass(mass))) => Some(mass.g()),
        _ => None,
    };
    let stood = size(stood)?;
    let leap = |text: &str| size(text).map(|size| (size / stood).max(stood / size));
    let far = leap(&given(number, unit)).filter(|leap| *leap > LEAP)?;
    // Nobody pours three quarters of a millilitre.
    let is_fraction = number.contains(|c: char| c == '/' || (!c.is_ascii() && is_digit(c)));
    let others = [(reading.bare != unit).then_some(reading.bare), is_fraction.then_some(Unit::Ounce)];
    others
        .into_iter()
        .flatten()
        .map(|other| given(number, other))
        .find(|other| leap(other).is_some_and(|leap| leap < far))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Conventions;
    use crate::text::Decimal;

    fn taken(stood: &str, new: &str, keys: Keys) -> String {
        let conventions = Conventions::default();
        let bare = if keys == Keys::Weight { Unit::Gram } else { Unit::Millilitre };
        let reading =
            Reading { conventions: &conventions, decimal: Decimal::Point, bare, kind: Dimension::Either, own: &[] };
        with_unit_of(stood, new, keys, &reading)
    }

    #[test]
    fn the_unit_that_stood_there_is_taken() {
        for (stood, new, keys, made) in [
            ("2 oz", "1¾", Keys::Either, "1¾ oz"),
            ("2.8 l", "1.1", Keys::Batch, "1.1 l"),
            ("2.8 l", "1.", Keys::Batch, "1. l"),
            ("400 g", "500", Keys::Bulk, "500 g"),
            ("1 kg", "2", Keys::Weight, "2 kg"),
            ("⅓ oz", "½", Keys::Marks, "½ oz"),
            ("½; ¾ oz", "⅓; ½", Keys::Marks, "⅓; ½ oz"),
            ("½; ¾ oz", "⅓; ", Keys::Marks, "⅓ oz; "),
            ("½; ¾ oz", "⅓; 1 ml", Keys::Marks, "⅓; 1 ml"),
            ("1 oz + 2 dash", "1 oz + 3", Keys::Either, "1 oz + 3 dash"),
            ("2 oz", "1 + 2 dash", Keys::Either, "1 oz + 2 dash"),
            ("2 oz", "1 + ", Keys::Either, "1 oz + "),
            ("68 °F", "140", Keys::Celsius, "140 °F"),
            ("20", "140", Keys::Celsius, "140"),
            ("2 oz", "45 ml", Keys::Either, "45 ml"),
            ("2 oz", "4 m", Keys::Either, "4 m"),
            ("2 oz", "", Keys::Either, ""),
            ("2", "3", Keys::Either, "3"),
            ("2 oz", "1:5", Keys::Either, "1:5"),
            ("18", "20", Keys::Count, "20"),
            ("5 %", "20", Keys::Percent, "20"),
        ] {
            assert_eq!(taken(stood, new, keys), made, "{stood} {new}");
        }
    }

    #[test]
    fn a_leap_is_asked_about_where_another_unit_comes_nearer() {
        for (stood, new, made) in [
            ("1¾ oz", "45", "45 oz? 45 ml?"),
            ("1¾ oz", "34", "34 oz"),
            ("2.8 l", "750", "750 l? 750 ml?"),
            ("2.8 l", "75", "75 l"),
            ("2.8 l", "0.1", "0.1 l"),
            ("45 ml", "1¾", "1¾ ml? 1¾ oz?"),
            ("45 ml", "1", "1 ml"),
            ("45 oz? 45 ml?", "1", "1 oz"),
        ] {
            assert_eq!(taken(stood, new, Keys::Either), made, "{stood} {new}");
        }
    }
}
