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
            (Some(Amount::Volume(a)), Amount::Volume(b)) => Amount::Volume(a + b),
            (Some(Amount::Mass(a)), Amount::Mass(b)) => Amount::Mass(a + b),
            _ => return Err(AmountProblem::Mixed),
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
mod tests {
    use super::*;

    fn read(text: &str, kind: Dimension) -> Result<Option<Amount>, AmountProblem> {
        let conventions = Conventions::default();
        read_amount(
            text,
            &Reading { conventions: &conventions, decimal: Decimal::Point, bare: Unit::Millilitre, kind, own: &[] },
        )
    }

    #[track_caller]
    fn ml(text: &str, expected: f64) {
        match read(text, Dimension::Volume) {
            Ok(Some(Amount::Volume(volume))) => assert!((volume.ml() - expected).abs() < 1e-6, "{text}: {volume:?}"),
            other => panic!("{text}: {other:?}"),
        }
    }

    #[test]
    fn amounts_with_and_without_unit_or_space() {
        ml("45", 45.0);
        ml("45ml", 45.0);
        ml("4.5 CL", 45.0);
        ml("0,75 cl", 7.5);
        ml("1 3/4 oz", 51.753_676_734_375);
        ml("1¾oz", 51.753_676_734_375);
        ml("1 1/2 oz + 2 dashes", 45.960_294_343_75);
        ml("1 oz +", 29.573_529_562_5);
        ml("1\u{202f}350 ml", 1350.0);
    }

    #[test]
    fn each_mistake_has_its_own_words() {
        let words = |text: &str| read(text, Dimension::Volume).expect_err(text).to_string();
        assert_eq!(words("0 ml"), "Zero makes nothing. Type an amount above zero.");
        assert_eq!(words("-1 oz"), "Below zero can't be poured. Type an amount above zero.");
        assert_eq!(words("1000000 l"), "That is more than 10 000 l. Check the number and its unit.");
        assert_eq!(words("5 g"), "g is a weight, and this is poured. Type it in ml, cl, l or oz.");
        assert_eq!(words("5 splosh"), "No unit is called “splosh”. Try ml, cl, oz, dash, bsp or g.");
        assert_eq!(words("2 parts"), "A part is as much as you choose. Type the amount in ml or oz.");
        assert_eq!(AmountProblem::UnknownUnit("parts".into()).fixes("2 parts"), ["2 oz"]);
        assert_eq!(AmountProblem::UnknownUnit("splosh".into()).fixes("5 splosh"), [""; 0]);
        assert_eq!(words("1 oz 2 dash"), "Put a + between two amounts, like 1 oz + 2 dash.");
        assert_eq!(words("lime"), "Type an amount, like 45 ml or 1½ oz.");
        assert_eq!(words("🍸"), "🍸 isn't a number. Type an amount, like 45 ml or 1½ oz.");
        assert_eq!(words("5 🍸"), "🍸 isn't a number. Type an amount, like 45 ml or 1½ oz.");
        assert_eq!(words(&"9".repeat(10_000)), "That is too long for an amount. Type one like 45 ml.");
        assert_eq!(words(&"9".repeat(100)), "That is more than 10 000 l. Check the number and its unit.");
        let mass = read("5 ml", Dimension::Mass).expect_err("a volume").to_string();
        assert_eq!(mass, "ml is a volume, and this is weighed. Type it in g, kg or lb.");
        assert_eq!(read("1 oz + 5 g", Dimension::Either), Err(AmountProblem::Mixed));
        assert_eq!(read("", Dimension::Volume), Ok(None));
    }

    #[test]
    fn what_is_as_large_or_as_long_as_may_be_is_read() {
        for (most, more) in [("10000 l", "10001 l"), ("10000 kg", "10001 kg")] {
            assert!(matches!(read(most, Dimension::Either), Ok(Some(_))), "{most}");
            assert_eq!(read(more, Dimension::Either), Err(AmountProblem::TooMuch));
        }
        assert_eq!(read("0 g", Dimension::Mass), Err(AmountProblem::Zero));
        let padded = |length: usize| format!("{:>length$}", "45 ml");
        assert_eq!(read(&padded(LONGEST), Dimension::Volume), read("45 ml", Dimension::Volume));
        assert_eq!(read(&padded(LONGEST + 1), Dimension::Volume), Err(AmountProblem::TooLong));
    }

    #[test]
    fn an_ambiguous_number_offers_both_readings() {
        let problem = read("1,000 ml", Dimension::Volume).expect_err("ambiguous");
        assert_eq!(problem.to_string(), "1,000 can be read two ways. Did you mean 1000 or 1?");
        assert_eq!(problem.fixes("1,000 ml"), ["1000 ml", "1 ml"]);
    }

    #[test]
    fn pounds_and_ounces_are_weighed() {
        // A pound is 453.592 37 g (NIST Handbook 44, as in tests/published/nist_units.rs).
        for (text, pounds) in [
            ("1 lb 8 oz", 1.5),
            ("1lb 8oz", 1.5),
            ("2 lb 4", 2.25),
            ("1 lb. 8 oz.", 1.5),
            ("1 lb, 3½ oz wt", 1.218_75),
            ("½ lb", 0.5),
            ("1 lb 8 oz + 1 lb", 2.5),
        ] {
            let Ok(Some(Amount::Mass(mass))) = read(text, Dimension::Mass) else { panic!("{text}") };
            assert!((mass.g() - pounds * 453.592_37).abs() < 1e-6, "{text}: {mass:?}");
        }
        assert_eq!(read("1 lb 8 g", Dimension::Mass), Err(AmountProblem::MissingPlus));
        let poured = read("1 lb 8 oz", Dimension::Volume).expect_err("a weight").to_string();
        assert!(poured.starts_with("lb is a weight"), "{poured}");
        let asked = read("5½ oz", Dimension::Mass).expect_err("a volume");
        assert_eq!(asked.to_string(), "oz is a volume, and this is weighed. An ounce by weight is oz wt.");
        assert_eq!(asked.fixes("5½ oz"), ["5½ oz wt"]);
        // Of a sum the other ounces would stay.
        assert_eq!(asked.fixes("1 oz + 2 oz"), [""; 0]);
        assert!(read("5½ oz wt", Dimension::Mass).is_ok());
    }

    #[test]
    fn two_readings_are_asked_about() {
        let problem = read("45 oz? 45 ml?", Dimension::Volume).expect_err("two readings");
        assert_eq!(problem.to_string(), "Did you mean 45 oz or 45 ml?");
        assert_eq!(problem.fixes("45 oz? 45 ml?"), ["45 oz", "45 ml"]);
        for fix in problem.fixes("") {
            assert!(read(&fix, Dimension::Volume).is_ok(), "{fix}");
        }
    }

    #[test]
    fn counts_and_percentages() {
        assert_eq!(read_count("×18", Decimal::Point).map(|c| c.map(Ratio::value)), Ok(Some(18.0)));
        assert_eq!(read_count("0", Decimal::Point), Err(AmountProblem::Zero));
        assert_eq!(read_percent("5 %", Decimal::Point, 100).map(|p| p.map(Ratio::value)), Ok(Some(0.05)));
        assert_eq!(
            read_percent("100", Decimal::Point, 100),
            Err("Type a percentage from 0 to under 100, like 5 %.".to_owned().into())
        );
    }
}
