//! Lines as people write and paste them, made into what [`super`] reads: list marks, bold marks and odd characters
//! go, columns become one line, numbers in words become figures. Amounts and names stay as they stand.

use std::borrow::Cow;

use crate::text::number::{is_digit, is_space};
use crate::text::units::leading_unit;

/// A line without what only dresses it.
#[must_use]
pub(super) fn undressed(line: &str) -> Cow<'_, str> {
    if is_plain(line) {
        return line.into();
    }
    let mut plain = String::new();
    for c in line.chars() {
        // "1¹⁄₂" is one and a half.
        let is_raised = matches!(c, '¹' | '²' | '³' | '⁴'..='⁹');
        if is_raised && plain.ends_with(|c: char| c.is_ascii_digit()) {
            plain.push(' ');
        }
        plain.extend(self::plain(c));
    }
    let line: String = in_one_line(without_marks(&plain)).chars().filter(|c| !matches!(c, '*' | '`' | '_')).collect();
    figures_for_words(without_hedge(without_marks(&line).trim())).into()
}

/// The columns of a table side by side; a number and its unit may have one each.
fn in_one_line(line: &str) -> String {
    let mut joined = String::new();
    for cell in line.split(['|', '\t']).map(str::trim).filter(|cell| !cell.is_empty()) {
        if !joined.is_empty() {
            joined.push_str(if joined.ends_with(is_digit) { " " } else { " | " });
        }
        joined.push_str(cell);
    }
    joined
}

/// Most lines are as they are read: a number, then words.
fn is_plain(line: &str) -> bool {
    let is_usual = |c: &u8| c.is_ascii_alphanumeric() || b" .,:/%()+='".contains(c);
    let mut words = line.split(' ');
    let is_numbered = words.next().is_some_and(|first| first.ends_with([')', '.']));
    let second = words.next().unwrap_or_default();
    line.starts_with(|c: char| c.is_ascii_digit())
        && line.as_bytes().iter().all(is_usual)
        && !is_numbered
        && second != "and"
        && !is_hedge(second)
}

/// A character as it is read; none for those that show nothing.
fn plain(c: char) -> Option<char> {
    Some(match c {
        '\u{200b}'..='\u{200f}' | '\u{2060}' | '\u{feff}' | '\u{fe0e}' | '\u{fe0f}' | '\u{ad}' => return None,
        '\u{2044}' | '\u{2215}' => '/',
        '\u{ff01}'..='\u{ff5e}' => char::from_u32(c as u32 - 0xfee0)?,
        '⁰' => '0',
        '¹' => '1',
        '²' => '2',
        '³' => '3',
        '⁴'..='⁹' => char::from_u32(c as u32 - 0x2070 + 0x30)?,
        '₀'..='₉' => char::from_u32(c as u32 - 0x2080 + 0x30)?,
        '×' | '✕' => 'x',
        '–' | '—' | '‐' | '‑' | '−' => '–',
        '’' | '‘' => '\'',
        c => c,
    })
}

/// Marks that stand before a line of a list, whether or not a space follows.
const MARKS: &str = "•*·○◦●▪▫■□◆◇◻◼▢‣⁃►▸▶→>#☐☑☒✓✔✗";
/// Those that are a mark only with a space behind them: a number may follow the others.
const DASHES: &str = "-–+~";

/// Without the dashes, dots, boxes, pictures and numbers that lists begin their lines with.
fn without_marks(line: &str) -> &str {
    let mut rest = line.trim_start();
    loop {
        let before = rest.len();
        rest = rest.trim_start_matches(|c: char| MARKS.contains(c) || is_picture(c)).trim_start();
        for (open, close) in [("[", ']'), ("(", ')')] {
            if let Some((within, after)) = rest.strip_prefix(open).and_then(|rest| rest.split_once(close)) {
                let is_box = matches!(within.trim(), "" | "x" | "X" | "✓" | "✔");
                let is_number = !within.is_empty() && within.len() <= 2 && within.bytes().all(|c| c.is_ascii_digit());
                if is_box || is_number {
                    rest = after.trim_start();
                }
            }
        }
        let mut signs = rest.chars();
        if signs.next().is_some_and(|c| DASHES.contains(c)) && signs.next().is_some_and(is_space) {
            rest = signs.as_str().trim_start();
        }
        let digits = rest.len() - rest.trim_start_matches(|c: char| c.is_ascii_digit()).len();
        let letters = rest.len() - rest.trim_start_matches(|c: char| c.is_ascii_lowercase()).len();
        let counted = if (1..=2).contains(&digits) { digits } else { usize::from(letters == 1) };
        let marks: &[char] = if counted == digits { &[')', '.'] } else { &[')'] };
        if counted > 0
            && let Some(after) = rest[counted..].strip_prefix(marks)
            && after.starts_with(is_space)
        {
            rest = after.trim_start();
        }
        if rest.len() == before {
            return rest;
        }
    }
}

/// A picture, an arrow, a box: no letter, and no part of a number.
const fn is_picture(c: char) -> bool {
    matches!(c, '\u{2190}'..='\u{2247}' | '\u{2249}'..='\u{2bff}' | '\u{1f000}'..='\u{1faff}')
}

/// Words that say an amount is not exact. What it is stays.
const HEDGES: [&str; 17] = [
    "about",
    "approx",
    "approx.",
    "approximately",
    "ca",
    "ca.",
    "circa",
    "around",
    "roughly",
    "scant",
    "generous",
    "heaped",
    "heaping",
    "level",
    "barely",
    "just",
    "good",
];

fn without_hedge(line: &str) -> &str {
    let mut rest = line.trim_start_matches(['~', '≈']).trim_start();
    while let Some((word, after)) = rest.split_once(' ').filter(|(word, _)| is_hedge(word)) {
        let after = after.trim_start();
        let words = words_of(after);
        let counts = after.starts_with(|c| is_digit(c) || c == '.') || number_in_words(&words).is_some();
        if !counts && !is_hedge(words.first().copied().unwrap_or_default()) && !begins_with_measure(&words) {
            break;
        }
        rest = rest[word.len()..].trim_start();
    }
    rest
}

fn is_hedge(word: &str) -> bool {
    HEDGES.iter().any(|hedge| hedge.eq_ignore_ascii_case(word))
}

/// "dash of bitters" is one dash of them.
fn begins_with_measure(words: &[&str]) -> bool {
    const MEASURES: [&str; 10] =
        ["dash", "drop", "barspoon", "bsp", "teaspoon", "tsp", "tablespoon", "tbsp", "ounce", "pinch"];
    words.len() > 1 && MEASURES.iter().any(|measure| measure.eq_ignore_ascii_case(words[0]))
}

fn words_of(text: &str) -> Vec<&str> {
    text.split_whitespace().collect()
}

const NUMBERS: [(&str, &str); 14] = [
    ("one", "1"),
    ("two", "2"),
    ("three", "3"),
    ("four", "4"),
    ("five", "5"),
    ("six", "6"),
    ("seven", "7"),
    ("eight", "8"),
    ("nine", "9"),
    ("ten", "10"),
    ("eleven", "11"),
    ("twelve", "12"),
    ("a", "1"),
    ("an", "1"),
];

/// What may be counted in words without a unit: "half a lime", "an egg white".
const PIECES: [&str; 14] = [
    "lime",
    "lemon",
    "orange",
    "grapefruit",
    "egg",
    "whole",
    "pinch",
    "sprig",
    "leaf",
    "leaves",
    "slice",
    "wedge",
    "cube",
    "sugar",
];

/// The number that words begin with, in figures, and how many of them it takes: "one and a half".
fn number_in_words(words: &[&str]) -> Option<(String, usize)> {
    let lower: Vec<String> = words.iter().take(6).map(|word| word.to_ascii_lowercase()).collect();
    let word = |at: usize| lower.get(at).map(String::as_str);
    let number = |at: usize| NUMBERS.iter().find(|(name, _)| word(at) == Some(name)).map(|(_, figure)| *figure);
    let part = |at: usize| match (word(at), word(at + 1)) {
        (Some("half" | "one-half"), _) => Some(("1/2", 1)),
        (Some("one-quarter"), _) => Some(("1/4", 1)),
        (Some("three-quarter" | "three-quarters"), _) => Some(("3/4", 1)),
        (Some("one-third"), _) => Some(("1/3", 1)),
        (Some("two-thirds"), _) => Some(("2/3", 1)),
        (Some("a"), Some("half")) => Some(("1/2", 2)),
        (Some("quarter"), _) => Some(("1/4", 1)),
        (Some("a"), Some("quarter")) => Some(("1/4", 2)),
        (Some("three"), Some("quarter" | "quarters")) => Some(("3/4", 2)),
        (Some("a"), Some("third")) => Some(("1/3", 2)),
        (Some("two"), Some("thirds")) => Some(("2/3", 2)),
        (Some("third"), _) => Some(("1/3", 1)),
        _ => None,
    };
    let (figure, mut used) = match part(0) {
        Some((figure, used)) => (figure.to_owned(), used),
        None => {
            let first = number(0)?;
            match (word(1), part(2)) {
                (Some("and" | "&"), Some((figure, more))) => (format!("{first} {figure}"), 2 + more),
                _ => (first.to_owned(), 1),
            }
        }
    };
    // "a half of an ounce", "half a lime"
    for between in ["of", "a", "an"] {
        if word(used) == Some(between) && figure.contains('/') {
            used += 1;
        }
    }
    let rest = &words[used.min(words.len())..];
    let is_piece = word(used)
        .is_some_and(|next| PIECES.iter().any(|piece| next.strip_suffix('s') == Some(piece) || next == *piece));
    (leading_unit(rest).is_some() || is_piece || word(used).is_some_and(|next| matches!(next, "part" | "parts")))
        .then_some((figure, used))
}

/// Numbers in words as figures, also behind "1 and"; "1-1/2" is one number.
fn figures_for_words(line: &str) -> String {
    let mut words = words_of(line);
    let joined;
    if let [first, and, part, ..] = words.as_slice()
        && first.bytes().all(|c| c.is_ascii_digit())
        && matches!(*and, "and" | "&")
        && part.starts_with(is_digit)
        && (part.contains('/') || part.chars().any(|c| !c.is_ascii_digit()))
    {
        words.remove(1);
        joined = words.join(" ");
        return with_mixed_number(&joined);
    }
    if begins_with_measure(&words) {
        return format!("1 {line}");
    }
    // "1 heaped tsp", "a scant ounce"
    if words.len() > 2 && is_hedge(words[1]) && leading_unit(&words[2..]).is_some() {
        words.remove(1);
        return figures_for_words(&words.join(" "));
    }
    match number_in_words(&words) {
        Some((figure, used)) => format!("{figure} {}", words[used..].join(" ")),
        None => with_mixed_number(line),
    }
}

/// "1-1/2 oz" as "1 1/2 oz".
fn with_mixed_number(line: &str) -> String {
    let chars: Vec<char> = line.chars().collect();
    let mut plain = String::new();
    for (at, c) in chars.iter().enumerate() {
        let digits = |from: usize| chars[from.min(chars.len())..].iter().take_while(|c| c.is_ascii_digit()).count();
        let is_joint = matches!(c, '-' | '–') && at > 0 && chars[at - 1].is_ascii_digit();
        let over = digits(at + 1);
        let is_fraction = over > 0 && chars.get(at + 1 + over) == Some(&'/') && digits(at + 2 + over) > 0;
        let is_sign = chars.get(at + 1).is_some_and(|c| is_digit(*c) && !c.is_ascii_digit());
        plain.push(if is_joint && (is_fraction || is_sign) { ' ' } else { *c });
    }
    plain
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_only_dresses_a_line_goes() {
        for (line, plain) in [
            ("• 2 oz — gin", "2 oz – gin"),
            ("🍸 2 oz gin", "2 oz gin"),
            ("- [x] 45 ml gin", "45 ml gin"),
            ("☐ 45 ml gin", "45 ml gin"),
            ("**2 oz** gin", "2 oz gin"),
            ("\u{feff}2\u{a0}oz\u{200b} gin", "2\u{a0}oz gin"),
            ("1\u{202f}035 ml gin", "1\u{202f}035 ml gin"),
            ("(3) 45 ml gin", "45 ml gin"),
            ("a) 45 ml gin", "45 ml gin"),
            ("2. - 45 ml gin", "45 ml gin"),
            ("| gin | 45 ml |", "gin | 45 ml"),
            ("４５ ml gin", "45 ml gin"),
            ("1¹⁄₂ oz gin", "1 1/2 oz gin"),
            ("about 2 oz gin", "2 oz gin"),
            ("~30 ml soda", "30 ml soda"),
            ("half a lime", "1/2 lime"),
            ("one and a half oz gin", "1 1/2 oz gin"),
            ("a dash of bitters", "1 dash of bitters"),
            ("three quarters of an ounce lemon juice", "3/4 ounce lemon juice"),
            ("1-1/2 oz rum", "1 1/2 oz rum"),
            ("1 and 1/2 oz gin", "1 1/2 oz gin"),
            ("A garden at dusk", "A garden at dusk"),
            ("half and half 30 ml", "half and half 30 ml"),
            ("Good morning", "Good morning"),
        ] {
            assert_eq!(undressed(line), plain, "{line}");
        }
    }
}
