//! Numbers as people type them: "1 3/4", "1¾", "1.75", "1,75", ".5", "1 350".
//!
//! A mark that could group thousands or part decimals is asked about, never guessed.

use std::fmt;

/// Which mark shows decimals. Both are read; this one is written, and decides what needs asking.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Decimal {
    /// 1.5
    #[default]
    Point,
    /// 1,5
    Comma,
}

impl Decimal {
    /// The mark itself.
    #[must_use]
    pub const fn mark(self) -> char {
        match self {
            Decimal::Point => '.',
            Decimal::Comma => ',',
        }
    }
}

/// Why a text is not a number.
#[derive(Clone, Debug, PartialEq)]
pub enum NumberProblem {
    /// "1,000": one, or a thousand? Both are offered, written so that they can be read only one way.
    Ambiguous {
        /// What was typed.
        typed: String,
        /// The number as thousands.
        grouped: String,
        /// The number as decimals.
        decimal: String,
    },
    /// "2 700": one number grouped by a space, or two?
    Spaced {
        /// What was typed.
        typed: String,
        /// As one number.
        grouped: String,
    },
    /// "20,25,30" in a list of measures: how to part them.
    Listed {
        /// What was typed.
        typed: String,
        /// As several numbers.
        grouped: String,
    },
    /// A fraction over zero.
    OverZero,
    /// Below zero.
    Negative,
    /// Marks that fit no way of writing numbers, such as "1.2.3".
    Marks(String),
    /// Not a number at all; the character at which reading stopped.
    Unreadable(Option<char>),
    /// "2-3": more than one number.
    Range,
}

impl fmt::Display for NumberProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            NumberProblem::Ambiguous { typed, grouped, decimal } => {
                write!(f, "{typed} can be read two ways. Did you mean {grouped} or {decimal}?")
            }
            NumberProblem::Spaced { typed, grouped } => write!(f, "Is {typed} one number? Write it {grouped}."),
            NumberProblem::Listed { typed, grouped } => write!(f, "Are {typed} several? Write them {grouped}."),
            NumberProblem::OverZero => f.write_str("A fraction can't have zero below the line."),
            NumberProblem::Negative => f.write_str("Below zero can't be poured. Type an amount above zero."),
            NumberProblem::Marks(typed) => write!(f, "{typed} has too many marks. Type it like 1250.5."),
            NumberProblem::Unreadable(Some(c)) if is_pictograph(*c) => {
                write!(f, "{c} isn't a number. Type an amount, like 45 ml or 1½ oz.")
            }
            NumberProblem::Unreadable(_) => f.write_str("Type an amount, like 45 ml or 1½ oz."),
            NumberProblem::Range => f.write_str("That is a range. Type one number."),
        }
    }
}

fn is_pictograph(c: char) -> bool {
    c as u32 >= 0x2190
}

/// Reads a whole text as one number. An empty text is "not yet": `None`.
///
/// # Errors
/// [`NumberProblem`], in words for the person who typed.
pub fn read_number(text: &str, decimal: Decimal) -> Result<Option<f64>, NumberProblem> {
    let chars: Vec<char> = text.trim().chars().collect();
    if chars.is_empty() {
        return Ok(None);
    }
    let mut at = 0;
    let value = scan(&chars, &mut at, decimal)?;
    skip_spaces(&chars, &mut at);
    match chars.get(at) {
        None => Ok(Some(value)),
        Some(c) => Err(NumberProblem::Unreadable(Some(*c))),
    }
}

/// The fractions with a character of their own: (character, numerator, denominator).
pub(super) const VULGAR: [(char, u32, u32); 9] = [
    ('¼', 1, 4),
    ('½', 1, 2),
    ('¾', 3, 4),
    ('⅓', 1, 3),
    ('⅔', 2, 3),
    ('⅛', 1, 8),
    ('⅜', 3, 8),
    ('⅝', 5, 8),
    ('⅞', 7, 8),
];

/// Fractions that are read, but that no bar measures in.
const RARE: [(char, u32, u32); 6] = [('⅕', 1, 5), ('⅖', 2, 5), ('⅗', 3, 5), ('⅘', 4, 5), ('⅙', 1, 6), ('⅚', 5, 6)];

fn vulgar(c: char) -> Option<f64> {
    VULGAR.iter().chain(&RARE).find(|(sign, ..)| *sign == c).map(|(_, n, d)| f64::from(*n) / f64::from(*d))
}

/// Whether a character is a digit or a fraction: part of a number.
#[must_use]
pub fn is_digit(c: char) -> bool {
    c.is_ascii_digit() || vulgar(c).is_some()
}

pub(super) fn starts_number(c: char) -> bool {
    is_digit(c) || matches!(c, '.' | ',' | '-' | '−' | '–')
}

pub(super) fn is_space(c: char) -> bool {
    c.is_whitespace() || matches!(c, '\u{a0}' | '\u{202f}' | '\u{2009}')
}

/// `text` with `new` in place of the first `old`. The standard search brings two kilobytes along.
#[must_use]
pub fn replaced(text: &str, old: &str, new: &str) -> String {
    match text.char_indices().find(|(at, _)| text[*at..].starts_with(old)) {
        Some((at, _)) => format!("{}{new}{}", &text[..at], &text[at + old.len()..]),
        None => text.to_owned(),
    }
}

pub(super) fn skip_spaces(chars: &[char], at: &mut usize) {
    while chars.get(*at).copied().is_some_and(is_space) {
        *at += 1;
    }
}

/// Reads one number at `at` and moves past it.
pub(super) fn scan(chars: &[char], at: &mut usize, decimal: Decimal) -> Result<f64, NumberProblem> {
    let first = chars.get(*at).copied();
    if first.is_some_and(|c| matches!(c, '-' | '−' | '–')) && chars.get(*at + 1).copied().is_some_and(starts_number)
    {
        return Err(NumberProblem::Negative);
    }
    if let Some(part) = first.and_then(vulgar) {
        *at += 1;
        return Ok(part);
    }
    let numeral = take_numeral(chars, at)?;
    if !numeral.chars().any(|c| c.is_ascii_digit()) {
        return Err(NumberProblem::Unreadable(first));
    }
    if chars.get(*at).copied().is_some_and(is_slash) {
        return over(whole(&numeral)?, chars, at);
    }
    let value = interpret(&numeral, decimal)?;
    let part = trailing_fraction(chars, at)?;
    if matches!(chars.get(*at), Some('-' | '–')) && chars.get(*at + 1).copied().is_some_and(starts_number) {
        return Err(NumberProblem::Range);
    }
    Ok(value + part)
}

fn is_slash(c: char) -> bool {
    matches!(c, '/' | '⁄')
}

fn digits_at(chars: &[char], at: usize) -> usize {
    chars[at.min(chars.len())..].iter().take_while(|c| c.is_ascii_digit()).count()
}

/// Digits with their marks, and spaces that group thousands ("1 350").
fn take_numeral(chars: &[char], at: &mut usize) -> Result<String, NumberProblem> {
    let mut numeral = String::new();
    let mut plain = true;
    while let Some(&c) = chars.get(*at) {
        if c.is_ascii_digit() {
            numeral.push(c);
        } else if matches!(c, '.' | ',') {
            plain = false;
            numeral.push(c);
        } else if plain && is_space(c) && !numeral.is_empty() && numeral.len() <= 9 && groups_after(chars, *at) {
            if c == ' ' {
                let typed: String = numeral.chars().chain(chars[*at..].iter().copied().take(4)).collect();
                let grouped = typed.replace(' ', "");
                return Err(NumberProblem::Spaced { typed, grouped });
            }
            // A group of thousands, as we show them, with a space that does not break.
        } else {
            break;
        }
        *at += 1;
    }
    Ok(numeral)
}

/// Whether exactly three digits follow the space at `at`, and no fraction.
fn groups_after(chars: &[char], at: usize) -> bool {
    let leading = chars[..at].iter().rev().take_while(|c| c.is_ascii_digit()).count();
    (1..=3).contains(&leading) && digits_at(chars, at + 1) == 3 && !chars.get(at + 4).copied().is_some_and(is_slash)
}

/// "¾", "3/4" or " 3/4" after a whole number, else nothing.
fn trailing_fraction(chars: &[char], at: &mut usize) -> Result<f64, NumberProblem> {
    let mut ahead = *at;
    skip_spaces(chars, &mut ahead);
    if let Some(part) = chars.get(ahead).copied().and_then(vulgar) {
        *at = ahead + 1;
        return Ok(part);
    }
    let digits = digits_at(chars, ahead);
    if digits == 0 || !chars.get(ahead + digits).copied().is_some_and(is_slash) {
        return Ok(0.0);
    }
    let numerator: String = chars[ahead..ahead + digits].iter().collect();
    *at = ahead + digits;
    over(whole(&numerator)?, chars, at)
}

/// The denominator after the slash at `at`.
fn over(numerator: f64, chars: &[char], at: &mut usize) -> Result<f64, NumberProblem> {
    let digits = digits_at(chars, *at + 1);
    let denominator: String = chars[*at + 1..*at + 1 + digits].iter().collect();
    *at += 1 + digits;
    match whole(&denominator) {
        Ok(0.0) => Err(NumberProblem::OverZero),
        Ok(below) => Ok(numerator / below),
        Err(_) => Err(NumberProblem::Unreadable(Some('/'))),
    }
}

fn whole(digits: &str) -> Result<f64, NumberProblem> {
    if digits.is_empty() || !digits.chars().all(|c| c.is_ascii_digit()) {
        return Err(NumberProblem::Marks(digits.to_owned()));
    }
    Ok(value_of(digits, ""))
}

/// The number written with these digits before and after the mark: correctly rounded up to
/// fifteen of them in all, which is more than any bench can tell apart.
fn value_of(whole: &str, part: &str) -> f64 {
    let part = &part[..part.len().min(15)];
    let digits = whole.bytes().chain(part.bytes()).map(|digit| f64::from(digit - b'0'));
    let scale = part.bytes().fold(1.0, |scale, _| scale * 10.0);
    digits.fold(0.0, |value, digit| value * 10.0 + digit) / scale
}

/// What digits and marks mean.
fn interpret(numeral: &str, decimal: Decimal) -> Result<f64, NumberProblem> {
    let marks: Vec<char> = numeral.chars().filter(|c| !c.is_ascii_digit()).collect();
    match marks.as_slice() {
        [] => Ok(value_of(numeral, "")),
        [mark] => {
            let (left, right) = numeral.split_once(*mark).unwrap_or((numeral, ""));
            if is_ambiguous(left, right, *mark, decimal) {
                return Err(ambiguous(numeral, left, right, decimal));
            }
            Ok(value_of(left, right))
        }
        [grouping @ .., last] => {
            let alike = grouping.iter().all(|mark| mark == &grouping[0]);
            let decimals_last = alike && *last != grouping[0];
            let (whole_part, rest) = match numeral.rsplit_once(*last) {
                Some(parts) if decimals_last => parts,
                _ if alike => (numeral, ""),
                _ => return Err(NumberProblem::Marks(numeral.to_owned())),
            };
            let groups: Vec<&str> = whole_part.split(grouping[0]).collect();
            let well_grouped = (1..=3).contains(&groups[0].len()) && groups[1..].iter().all(|group| group.len() == 3);
            if !well_grouped {
                return Err(NumberProblem::Marks(numeral.to_owned()));
            }
            Ok(value_of(&groups.concat(), rest))
        }
    }
}

/// A comma before three digits is always asked about; a point only where commas show decimals.
fn is_ambiguous(left: &str, right: &str, mark: char, decimal: Decimal) -> bool {
    right.len() == 3
        && (1..=3).contains(&left.len())
        && !left.starts_with('0')
        && (mark == ',' || decimal == Decimal::Comma)
}

fn ambiguous(typed: &str, left: &str, right: &str, decimal: Decimal) -> NumberProblem {
    let mark = decimal.mark();
    let trimmed = right.trim_end_matches('0');
    let as_decimal = match trimmed.len() {
        0 => left.to_owned(),
        3 => format!("{left}{mark}{right}0"),
        _ => format!("{left}{mark}{trimmed}"),
    };
    NumberProblem::Ambiguous { typed: typed.to_owned(), grouped: format!("{left}{right}"), decimal: as_decimal }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn reads(text: &str, expected: f64) {
        let value = read_number(text, Decimal::Point).expect(text).expect(text);
        assert!((value - expected).abs() < 1e-12, "{text}: {value}");
    }

    #[test]
    fn every_way_of_writing() {
        for text in ["1 3/4", "1¾", "1 ¾", "1.75", "1,75", "7/4", "1 3⁄4", " 1.750 "] {
            reads(text, 1.75);
        }
        reads(".5", 0.5);
        reads(",5", 0.5);
        reads("1.", 1.0);
        reads("0,750", 0.75);
        reads("1\u{202f}350", 1350.0);
        reads("1,350.5", 1350.5);
        reads("1.350,5", 1350.5);
        reads("1,000,000", 1_000_000.0);
        reads("1.125", 1.125);
        reads("12 1/2", 12.5);
        reads("1/10", 0.1);
        reads("1 125/250", 1.5);
    }

    #[test]
    fn asks_when_a_mark_could_mean_two_things() {
        let asked = |text, decimal| match read_number(text, decimal) {
            Err(NumberProblem::Ambiguous { grouped, decimal, .. }) => (grouped, decimal),
            other => panic!("{text}: {other:?}"),
        };
        assert_eq!(asked("1,000", Decimal::Point), ("1000".into(), "1".into()));
        assert_eq!(asked("1,250", Decimal::Point), ("1250".into(), "1.25".into()));
        assert_eq!(asked("1,125", Decimal::Comma), ("1125".into(), "1,1250".into()));
        assert_eq!(asked("1.250", Decimal::Comma), ("1250".into(), "1,25".into()));
        // The offered readings are not asked about again.
        for (text, value) in [("1000", 1000.0), ("1", 1.0), ("1,1250", 1.125), ("1,25", 1.25)] {
            assert_eq!(read_number(text, Decimal::Comma), Ok(Some(value)));
        }
    }

    #[test]
    fn asks_when_a_space_could_part_two_numbers() {
        let problem = read_number("2 700", Decimal::Point).expect_err("two numbers?");
        assert_eq!(problem.to_string(), "Is 2 700 one number? Write it 2700.");
        assert_eq!(read_number("2\u{202f}700", Decimal::Point), Ok(Some(2700.0)));
        assert_eq!(read_number("2 1/2", Decimal::Point), Ok(Some(2.5)));
    }

    #[test]
    fn each_kind_of_nonsense_has_its_words() {
        let words = |text| read_number(text, Decimal::Point).expect_err(text).to_string();
        assert_eq!(words("-5"), "Below zero can't be poured. Type an amount above zero.");
        assert_eq!(words("1/0"), "A fraction can't have zero below the line.");
        for text in ["1.2.3", "1.2,3.500"] {
            assert_eq!(words(text), format!("{text} has too many marks. Type it like 1250.5."));
        }
        assert_eq!(words("🍋"), "🍋 isn't a number. Type an amount, like 45 ml or 1½ oz.");
        assert_eq!(words("lots"), "Type an amount, like 45 ml or 1½ oz.");
        assert_eq!(words("2-3"), "That is a range. Type one number.");
        assert_eq!(words("2–3"), "That is a range. Type one number.");
        // A dash without a number behind it is neither below zero nor a range.
        for text in ["-lots", "2-lots", "2x3", "2 1", "2 /", "1/"] {
            assert_eq!(words(text), "Type an amount, like 45 ml or 1½ oz.", "{text}");
        }
        assert_eq!(read_number("  ", Decimal::Point), Ok(None));
    }
}
