//! An amount at the beginning of a text, in the ways people write one: a range, a multiple, a sum, the same again in another
//! unit.

use std::borrow::Cow;

use super::{LineProblem, say};
use crate::quantity::{Amount, Mass, Unit, Volume};
use crate::text::amount::{AmountProblem, Reading, is_part};
use crate::text::number::{NumberProblem, is_digit, is_space, scan, skip_spaces};
use crate::text::show::{fraction_of, trimmed};
use crate::text::units::{LONGEST_NAME, leading_unit, typed};

/// What a text begins with: a number, with its unit an amount, and what is behind it.
pub(super) struct Measured {
    pub(super) number: f64,
    pub(super) amount: Option<Amount>,
    /// The unit that it is written in first, so that it is shown as it was written; of a part, the ounce it is read as.
    pub(super) unit: Option<Unit>,
    pub(super) rest: String,
    /// What was decided about it that the reader should know.
    pub(super) said: String,
}

/// Reads a number with its unit, a range, a multiple, a sum, and the same again in another unit.
pub(super) fn measured_at(text: &str, reading: &Reading<'_>) -> Result<Measured, LineProblem> {
    let (mut number, rest, mut said) = number_or_range(text, reading)?;
    let mut rest = apart(rest);
    if let Some(each) = rest.strip_prefix(['x', 'X']).filter(|each| each.starts_with(|c| is_space(c) || is_digit(c))) {
        let (times, after, _) = number_or_range(each.trim_start(), reading)?;
        if unit_at(after).is_some() {
            said = format!("{} × {}", shown(number, reading), shown(times, reading));
            (number, rest) = (number * times, after.to_owned().into());
        }
    }
    let Some((unit, after)) = unit_at(&rest) else {
        return Ok(Measured { number, amount: None, unit: None, rest: rest.into_owned(), said });
    };
    let written = if let LineUnit::Known(unit) = unit { unit } else { Unit::Ounce };
    let mut amount = measured(number, unit, reading)?;
    if let LineUnit::Part = unit {
        say(&mut said, &in_parts(number, reading));
    }
    let mut rest = after;
    // "1 lb 3 oz": behind pounds an ounce is one of weight.
    if let (LineUnit::Known(Unit::Pound), Amount::Mass(pounds)) = (unit, amount)
        && let Ok((ounces, tail, _)) = number_or_range(&rest, reading)
        && let Some((LineUnit::Known(Unit::Ounce | Unit::OunceWeight), behind)) = unit_at(tail)
        && let Amount::Mass(more) = measured(ounces, LineUnit::Known(Unit::OunceWeight), reading)?
    {
        (amount, rest) = (Amount::Mass(pounds + more), behind);
    }
    // "20 ml + 10 ml", "60 ml / 2 oz", "2 oz (60 ml)".
    while let Some((sign, more)) = sign_at(&rest) {
        let Ok((again, tail, _)) = number_or_range(more, reading) else { break };
        let Some((unit, after)) = unit_at(tail) else { break };
        let next = measured(again, unit, reading)?;
        match (sign, amount, next) {
            ('+', sum, more) => amount = sum.and(more).ok_or(AmountProblem::Mixed)?,
            (_, first, second) if is_alike(first, second) => {}
            _ => {
                let unit = if let LineUnit::Known(unit) = unit { typed(unit) } else { "parts" };
                said = format!("{} {unit} is not the same: the first counts", shown(again, reading));
            }
        }
        rest = after.trim_start().strip_prefix(')').filter(|_| sign == '(').unwrap_or(&after).trim_start().to_owned();
    }
    Ok(Measured { number, amount: Some(amount), unit: Some(written), rest, said })
}

/// A sign that another amount follows, and what is behind it.
fn sign_at(rest: &str) -> Option<(char, &str)> {
    let rest = rest.trim_start();
    let behind = |word: &str| rest.get(word.len()..).filter(|_| rest.starts_with(word)).map(str::trim_start);
    let (sign, more) = match rest.chars().next()? {
        sign @ ('+' | '/' | '(' | '=' | '|') => (sign, rest[1..].trim_start()),
        _ => match behind("plus ") {
            Some(more) => ('+', more),
            None => ('/', behind("or ")?),
        },
    };
    more.starts_with(|c| is_digit(c) || c == '.').then_some((sign, more))
}

/// Whether two amounts are the same as bars convert them: to within 3 %. A weight and a volume are not compared.
pub(super) fn is_alike(first: Amount, second: Amount) -> bool {
    let near = |a: f64, b: f64| (a - b).abs() <= 0.03 * a.max(b);
    match (first, second) {
        (Amount::Volume(a), Amount::Volume(b)) => near(a.ml(), b.ml()),
        (Amount::Mass(a), Amount::Mass(b)) => near(a.g(), b.g()),
        _ => true,
    }
}

/// With spaces where a unit and the next amount stand together: "ml/2oz", "oz(60".
fn apart(text: &str) -> Cow<'_, str> {
    let bytes = text.as_bytes();
    let is_between = |at: usize| {
        let before = at.checked_sub(1).map_or(b' ', |at| bytes[at]);
        let behind = text[at + 1..].chars().next().unwrap_or('x');
        (before.is_ascii_alphabetic() || before == b'.') && (is_digit(behind) || behind == ' ')
    };
    let is_sign = |byte: &u8| matches!(byte, b'/' | b'+' | b'(' | b'=');
    let Some(at) = (0..text.len()).find(|at| is_sign(&bytes[*at]) && is_between(*at)) else { return text.into() };
    let (before, behind) = text.split_at(at);
    format!("{before} {}{}", &behind[..1], apart(&behind[1..])).into()
}

/// The unit that a text begins with, and what is behind it.
fn unit_at(text: &str) -> Option<(LineUnit, String)> {
    let words = text.split_whitespace();
    let first: Vec<&str> = words.clone().take(LONGEST_NAME).collect();
    // Of a unit in brackets, or with a bracket behind it, the bracket stays.
    let (unit, used) = leading_unit_or_part(&first)?;
    let closes = first[used - 1].ends_with(')') && !first[..used].iter().any(|word| word.contains('('));
    let mut rest = String::with_capacity(text.len());
    if closes {
        rest.push(')');
    }
    for word in words.skip(used) {
        if !rest.is_empty() {
            rest.push(' ');
        }
        rest.push_str(word);
    }
    Some((unit, rest))
}

/// A number, or the middle of two: "2–3", "2 to 3". Behind it, the rest, and what is said of it.
fn number_or_range<'a>(text: &'a str, reading: &Reading<'_>) -> Result<(f64, &'a str, String), LineProblem> {
    let (first, rest) = match leading_number(text, reading) {
        Err(LineProblem::Amount(AmountProblem::Number(NumberProblem::Range))) => {
            let dash = text.find(['-', '–']).unwrap_or(text.len());
            (leading_number(&text[..dash], reading)?.0, &text[dash..])
        }
        read => read?,
    };
    let lower = rest.trim_start();
    let second = ["–", "-", "to ", "or "].iter().find_map(|sign| lower.strip_prefix(sign)).map(str::trim_start);
    let Some(second) = second.filter(|second| second.starts_with(is_digit)) else {
        return Ok((first, rest, String::new()));
    };
    let (last, after) = leading_number(second, reading)?;
    if last <= first {
        return Err(AmountProblem::Number(NumberProblem::Range).into());
    }
    let said = format!("{}–{}: the middle counts", shown(first, reading), shown(last, reading));
    Ok(((first + last) / 2.0, after, said))
}

pub(super) fn shown(number: f64, reading: &Reading<'_>) -> String {
    fraction_of(number).unwrap_or_else(|| trimmed(number, reading.decimal))
}

/// The number that a text begins with, and what is behind it.
fn leading_number<'a>(text: &'a str, reading: &Reading<'_>) -> Result<(f64, &'a str), LineProblem> {
    // No number goes beyond a letter.
    let chars: Vec<char> = text.chars().take_while(|c| !c.is_ascii_alphabetic()).collect();
    let mut at = 0;
    let number = scan(&chars, &mut at, reading.decimal).map_err(AmountProblem::Number)?;
    skip_spaces(&chars, &mut at);
    let used: usize = chars[..at].iter().map(|c| c.len_utf8()).sum();
    Ok((number, &text[used..]))
}

/// A unit of the list, or a part, which stands for one house ounce.
#[derive(Clone, Copy)]
enum LineUnit {
    Known(Unit),
    Part,
}

fn leading_unit_or_part(words: &[&str]) -> Option<(LineUnit, usize)> {
    if is_part(words.first()?.trim_end_matches(['.', ':'])) {
        return Some((LineUnit::Part, 1));
    }
    leading_unit(words).map(|(unit, used)| (LineUnit::Known(unit), used))
}

/// One part: what the list says, else a house ounce.
fn a_part(reading: &Reading<'_>) -> Volume {
    reading.conventions.part.unwrap_or(reading.conventions.ounce.volume())
}

/// "2 parts of 30 ml".
fn in_parts(number: f64, reading: &Reading<'_>) -> String {
    let number = (shown(number, reading), if number > 1.0 { "parts" } else { "part" });
    let part = match reading.conventions.part {
        Some(part) => format!("{} ml", trimmed(part.ml(), reading.decimal)),
        None => format!("1 {}", typed(Unit::Ounce)),
    };
    format!("{} {} of {part}", number.0, number.1)
}

fn measured(number: f64, unit: LineUnit, reading: &Reading<'_>) -> Result<Amount, LineProblem> {
    let amount = match unit {
        LineUnit::Known(unit) => unit.times(number, reading.conventions),
        LineUnit::Part => Volume::from_ml(number * a_part(reading).ml()).map(Amount::Volume),
    };
    match amount.map_err(AmountProblem::from)? {
        Amount::Volume(volume) if volume <= Volume::ZERO => Err(AmountProblem::Zero.into()),
        Amount::Mass(mass) if mass <= Mass::ZERO => Err(AmountProblem::Zero.into()),
        amount => Ok(amount),
    }
}
