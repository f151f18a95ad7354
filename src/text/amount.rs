//! Amounts as people type them: "1 3/4 oz", "45ml", "1½ oz + 2 dashes".

use std::fmt;

use super::number::{
    Decimal, NumberProblem, is_digit, is_space, read_number, replaced, scan, skip_spaces, starts_number,
};
use super::units::{typed, unit_of};
use super::unread::Unread;
use crate::book::Taken;
use crate::quantity::{Amount, Conventions, Mass, OutOfRange, Ratio, Unit, Volume};

/// What a field takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Dimension {
    /// A volume only.
    Volume,
    /// A mass only.
    Mass,
    /// Either.
    Either,
}

/// How to read a text.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading<'a> {
    /// What the house means by its units.
    pub conventions: &'a Conventions,
    /// The decimal mark in use.
    pub decimal: Decimal,
    /// The unit of a number that has none.
    pub bare: Unit,
    /// What the field takes.
    pub kind: Dimension,
    /// The bar's own ingredients, by name.
    pub own: &'a [(String, Taken)],
}

/// Longest text that is read at all.
const LONGEST: usize = 120;
/// Most that one field takes: ten cubic metres.
const MOST_LITRES: f64 = 10_000.0;

/// Why a text is not an amount for its field.
#[derive(Clone, Debug, PartialEq)]
pub enum AmountProblem {
    /// The number in it can't be read.
    Number(NumberProblem),
    /// A word that names no unit.
    UnknownUnit(String),
    /// A weight where a volume is wanted, or the reverse.
    WrongKind {
        /// The unit typed.
        unit: Unit,
        /// What is wanted.
        wanted: Dimension,
    },
    /// Weights and volumes in one sum.
    Mixed,
    /// Two amounts with nothing between.
    MissingPlus,
    /// "45 oz? 45 ml?": one or the other, for the person to say.
    Which(String, String),
    /// Zero.
    Zero,
    /// More than anybody pours or weighs.
    TooMuch,
    /// Too long to be an amount.
    TooLong,
}

impl fmt::Display for AmountProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            AmountProblem::Number(problem) => problem.fmt(f),
            AmountProblem::UnknownUnit(word) if is_part(word) => {
                f.write_str("A part is as much as you choose. Type the amount in ml or oz.")
            }
            AmountProblem::UnknownUnit(word) => {
                write!(f, "No unit is called “{word}”. Try ml, cl, oz, dash, bsp or g.")
            }
            AmountProblem::WrongKind { unit: Unit::Ounce, wanted: Dimension::Mass } => {
                f.write_str("oz is a volume, and this is weighed. An ounce by weight is oz wt.")
            }
            AmountProblem::WrongKind { unit, wanted: Dimension::Mass } => {
                write!(f, "{} is a volume, and this is weighed. Type it in g, kg or lb.", typed(*unit))
            }
            AmountProblem::WrongKind { unit, .. } => {
                write!(f, "{} is a weight, and this is poured. Type it in ml, cl, l or oz.", typed(*unit))
            }
            AmountProblem::Mixed => f.write_str("A sum can't mix weights and volumes. Type one of the two."),
            AmountProblem::MissingPlus => f.write_str("Put a + between two amounts, like 1 oz + 2 dash."),
            AmountProblem::Which(one, other) => write!(f, "Did you mean {one} or {other}?"),
            AmountProblem::Zero => f.write_str("Zero makes nothing. Type an amount above zero."),
            AmountProblem::TooMuch => f.write_str("That is more than 10 000 l. Check the number and its unit."),
            AmountProblem::TooLong => f.write_str("That is too long for an amount. Type one like 45 ml."),
        }
    }
}

/// Whether a word is "part": a list of them says what one is.
#[must_use]
pub fn is_part(word: &str) -> bool {
    word.eq_ignore_ascii_case("part") || word.eq_ignore_ascii_case("parts")
}

impl AmountProblem {
    /// Texts that would settle it, for one tap; `text` is what was typed.
    #[must_use]
    pub fn fixes(&self, text: &str) -> Vec<String> {
        match self {
            AmountProblem::Number(problem) => problem.readings(text),
            AmountProblem::Which(one, other) => vec![one.clone(), other.clone()],
            AmountProblem::WrongKind { unit: Unit::Ounce, wanted: Dimension::Mass } if !text.contains('+') => {
                let number = text.trim_end_matches(|c: char| !is_digit(c)).trim();
                vec![format!("{number} oz wt")]
            }
            AmountProblem::UnknownUnit(word) if is_part(word) => vec![replaced(text, word, typed(Unit::Ounce))],
            _ => Vec::new(),
        }
    }
}

impl From<NumberProblem> for AmountProblem {
    fn from(problem: NumberProblem) -> Self {
        AmountProblem::Number(problem)
    }
}

impl From<OutOfRange> for AmountProblem {
    fn from(_: OutOfRange) -> Self {
        AmountProblem::TooMuch
    }
}

/// Reads a sum of amounts. An empty text is "not yet": `None`.
///
/// # Errors
/// [`AmountProblem`], in words for the person who typed.
pub fn read_amount(text: &str, reading: &Reading<'_>) -> Result<Option<Amount>, AmountProblem> {
    if text.chars().count() > LONGEST {
        return Err(AmountProblem::TooLong);
    }
    if text.trim().is_empty() {
        return Ok(None);
    }
    if let Some((one, other)) = text.split_once('?')
        && let other = other.trim().trim_end_matches('?')
        && !other.is_empty()
    {
        return Err(AmountProblem::Which(one.trim().to_owned(), other.to_owned()));
    }
    let mut total: Option<Amount> = None;
    for term in text.split('+') {
        let Some(amount) = read_term(term, reading)? else {
            continue; // "1 oz +" is a sum still being typed, "oz" an amount.
        };
        total = Some(match (total, amount) {
            (None, first) => first,
            (Some(sum), more) => sum.and(more).ok_or(AmountProblem::Mixed)?,
        });
    }
    match total {
        None => Ok(None),
        Some(Amount::Volume(sum)) if sum <= Volume::ZERO => Err(AmountProblem::Zero),
        Some(Amount::Mass(sum)) if sum <= Mass::ZERO => Err(AmountProblem::Zero),
        Some(Amount::Volume(sum)) if sum.ml() > MOST_LITRES * 1e3 => Err(AmountProblem::TooMuch),
        Some(Amount::Mass(sum)) if sum.g() > MOST_LITRES * 1e3 => Err(AmountProblem::TooMuch),
        sum => Ok(sum),
    }
}

fn read_term(term: &str, reading: &Reading<'_>) -> Result<Option<Amount>, AmountProblem> {
    let chars: Vec<char> = term.trim().chars().collect();
    if chars.is_empty() || unit_of(term).is_some() {
        return Ok(None);
    }
    let mut at = 0;
    let count = scan(&chars, &mut at, reading.decimal)?;
    skip_spaces(&chars, &mut at);
    let rest: String = chars[at..].iter().collect();
    if let Some(ounces) = ounces_behind(&rest, reading)? {
        if reading.kind == Dimension::Volume {
            return Err(AmountProblem::WrongKind { unit: Unit::Pound, wanted: reading.kind });
        }
        let all = Mass::from_g(count * Mass::POUND.g() + ounces * Mass::OUNCE.g())?;
        return Ok(Some(Amount::Mass(all)));
    }
    let unit = if rest.is_empty() { reading.bare } else { unit_after(&rest)? };
    let wrong = match reading.kind {
        Dimension::Volume => unit.weighs(),
        Dimension::Mass => !unit.weighs(),
        Dimension::Either => false,
    };
    if wrong {
        return Err(AmountProblem::WrongKind { unit, wanted: reading.kind });
    }
    Ok(Some(unit.times(count, reading.conventions)?))
}

/// The ounces behind pounds, which are by weight: of "lb 3 oz", as of "lb 3", three.
fn ounces_behind(rest: &str, reading: &Reading<'_>) -> Result<Option<f64>, AmountProblem> {
    let (word, behind) = rest.split_at(rest.find(|c: char| !c.is_ascii_alphabetic()).unwrap_or(rest.len()));
    let behind = behind.trim_start_matches(|c| is_space(c) || matches!(c, '.' | ','));
    if unit_of(word) != Some(Unit::Pound) || !behind.starts_with(is_digit) {
        return Ok(None);
    }
    let chars: Vec<char> = behind.chars().collect();
    let mut at = 0;
    let ounces = scan(&chars, &mut at, reading.decimal)?;
    let unit: String = chars[at..].iter().collect();
    match unit_of(&unit) {
        Some(Unit::Ounce | Unit::OunceWeight) => Ok(Some(ounces)),
        None if unit.trim().is_empty() => Ok(Some(ounces)),
        _ => Err(AmountProblem::MissingPlus),
    }
}

fn unit_after(rest: &str) -> Result<Unit, AmountProblem> {
    unit_of(rest).ok_or_else(|| {
        let word: String = rest.chars().take_while(|c| !is_space(*c)).collect();
        let has_another_number = rest.chars().skip(1).any(|c| c.is_ascii_digit());
        if has_another_number && unit_of(&word).is_some() {
            AmountProblem::MissingPlus
        } else if word.chars().any(|c| c.is_ascii_alphabetic()) {
            AmountProblem::UnknownUnit(rest.chars().take(24).collect())
        } else {
            NumberProblem::Unreadable(word.chars().next()).into()
        }
    })
}

/// Reads a plain count above zero ("18", "2½"), at most a million. Empty is "not yet".
///
/// # Errors
/// [`AmountProblem`], in words for the person who typed.
pub fn read_count(text: &str, decimal: Decimal) -> Result<Option<Ratio>, AmountProblem> {
    if text.chars().count() > LONGEST {
        return Err(AmountProblem::TooLong);
    }
    let bare = text.trim().trim_start_matches(['×', 'x']).trim();
    if bare.chars().next().is_some_and(|c| !starts_number(c)) {
        return Err(NumberProblem::Unreadable(bare.chars().next()).into());
    }
    match read_number(bare, decimal)? {
        None => Ok(None),
        Some(0.0) => Err(AmountProblem::Zero),
        Some(value) if value > 1e6 => Err(AmountProblem::TooMuch),
        Some(value) => Ok(Some(Ratio::from_value(value)?)),
    }
}

/// Reads a percentage of at least zero and under `limit`, with or without its sign, as a fraction. Empty is none.
///
/// # Errors
/// A sentence for the person who typed.
pub fn read_percent(text: &str, decimal: Decimal, limit: u8) -> Result<Option<Ratio>, Unread> {
    let words = || format!("Type a percentage from 0 to under {limit}, like 5 %.");
    let bare = text.trim().trim_end_matches('%').trim_end();
    let value = read_number(bare, decimal).map_err(|problem| Unread::number(&problem, text, words))?;
    match value {
        None => Ok(None),
        Some(percent) if percent < f64::from(limit) => {
            Ratio::from_value(percent / 100.0).map(Some).map_err(|_| words().into())
        }
        Some(_) => Err(words().into()),
    }
}

#[cfg(test)]
mod tests;
