//! What a key does to a text: a pure reducer.

use crate::quantity::Unit;
use crate::screen::pad::Key;
use crate::text::{Decimal, is_digit, typed, unit_of};

/// A text and the part of it that is selected, counted in characters.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Entry {
    /// The text.
    pub text: String,
    /// Start of the selection.
    pub start: usize,
    /// End of the selection; equal to `start` for a caret.
    pub end: usize,
}

impl Entry {
    /// A text with the caret behind it.
    #[must_use]
    pub fn at_end(text: impl Into<String>) -> Entry {
        let text = text.into();
        let end = text.chars().count();
        Entry { text, start: end, end }
    }

    /// A text, all of it selected.
    #[must_use]
    pub fn selected(text: impl Into<String>) -> Entry {
        Entry { start: 0, ..Entry::at_end(text) }
    }

    fn is_selected_whole(&self) -> bool {
        self.start == 0 && self.end == self.text.chars().count() && self.end > 0
    }

    fn is_at_end(&self) -> bool {
        self.start == self.end && self.end == self.text.chars().count()
    }
}

/// The unit in which the last amount of a text is typed; of two readings that are asked about, as in "45 oz? 45 ml?", the
/// first.
#[must_use]
pub fn unit_typed(text: &str) -> Option<Unit> {
    unit_of(split_unit(text.split('?').next().unwrap_or_default()).1)
}

/// What a key makes of a field. [`Key::Turn`], [`Key::Next`] and [`Key::Done`] leave it alone.
#[must_use]
pub fn press(entry: &Entry, key: Key, decimal: Decimal) -> Entry {
    let mut entry = entry.clone();
    let length = entry.text.chars().count();
    entry.end = entry.end.min(length);
    entry.start = entry.start.min(entry.end);
    match key {
        Key::Char(c) => number(&entry, c),
        Key::Fraction(c) => fraction(&entry, c),
        Key::Unit(unit) => with_unit(&entry, unit),
        Key::Plus => follow(&entry, "+", " + "),
        Key::Semicolon => follow(&entry, ";", "; "),
        // Behind an amount another follows.
        Key::Colon if unit_typed(&entry.text).is_some() && !entry.text.contains(':') => follow(&entry, ":", " : "),
        Key::Colon if entry.is_selected_whole() || entry.text.is_empty() => Entry::at_end("1:"),
        Key::Colon if entry.text.contains(':') => entry,
        Key::Colon => insert(&entry, ":"),
        Key::Percent if entry.text.contains('%') => Entry::at_end(entry.text),
        Key::Percent => Entry::at_end(format!("{} %", entry.text.trim_end())),
        Key::Minus => minus(&entry),
        Key::Celsius => Entry::at_end(degrees(&entry)),
        Key::Fahrenheit => Entry::at_end(format!("{} °F", degrees(&entry)).trim_start()),
        // Below zero one more is nearer to zero.
        Key::Up | Key::Down => {
            step(&entry, if (key == Key::Up) != entry.text.starts_with('−') { 1.0 } else { -1.0 }, decimal)
        }
        Key::Delete => delete(&entry),
        Key::Turn | Key::Next | Key::Done => entry,
    }
}

/// Splits "1½ oz + 2 dash" into "1½ oz + 2 " and "dash".
fn split_unit(text: &str) -> (&str, &str) {
    let from = text.rfind(['+', ';', ':']).map_or(0, |at| at + 1);
    let last = &text[from..];
    let unit = last.find(|c: char| c.is_ascii_alphabetic() || c == '°').map_or(text.len(), |at| from + at);
    text.split_at(unit)
}

fn insert(entry: &Entry, new: &str) -> Entry {
    let before: String = entry.text.chars().take(entry.start).collect();
    let after: String = entry.text.chars().skip(entry.end).collect();
    let caret = entry.start + new.chars().count();
    Entry { text: format!("{before}{new}{after}"), start: caret, end: caret }
}

/// Puts a minus before the text, or takes it away.
fn minus(entry: &Entry) -> Entry {
    match entry.text.strip_prefix(['−', '-']) {
        _ if entry.is_selected_whole() => Entry::at_end("−"),
        Some(above) => Entry::at_end(above),
        None => Entry::at_end(format!("−{}", entry.text)),
    }
}

/// The number of a temperature, without the words behind it.
fn degrees(entry: &Entry) -> &str {
    entry.text.trim_end_matches(|c: char| c.is_ascii_alphabetic() || c == '°' || c.is_whitespace())
}

/// Digits typed behind a unit belong to the number before it: "4", "oz", "5" is 45 oz.
fn before_unit(entry: &Entry, edit: impl FnOnce(&str) -> String) -> Option<Entry> {
    let (amount, unit) = split_unit(&entry.text);
    if !entry.is_at_end() || unit.is_empty() {
        return None;
    }
    let edited = edit(amount.trim_end());
    let caret = edited.chars().count();
    Some(Entry { text: format!("{edited} {unit}"), start: caret, end: caret })
}

fn number(entry: &Entry, c: char) -> Entry {
    if matches!(c, '.' | ',') && !entry.is_selected_whole() && has_mark(entry) {
        return entry.clone();
    }
    let append = |amount: &str| {
        let mut amount = amount.to_owned();
        match amount.pop() {
            // "½", then "5": wholes stand before their fraction.
            Some(last) if is_fraction(last) => format!("{amount}{c}{last}"),
            Some(last @ ('+' | ';')) => format!("{amount}{last} {c}"),
            last => format!("{amount}{}{c}", last.map(String::from).unwrap_or_default()),
        }
    };
    if let Some(entry) = before_unit(entry, append) {
        return entry;
    }
    if entry.start == entry.end && entry.text.chars().take(entry.end).last().is_some_and(is_fraction) {
        let before = entry.end - 1;
        let Entry { text, end, .. } = insert(&Entry { start: before, end: before, ..entry.clone() }, &c.to_string());
        return Entry { text, start: end + 1, end: end + 1 };
    }
    insert(entry, &c.to_string())
}

fn is_fraction(c: char) -> bool {
    !c.is_ascii() && is_digit(c)
}

/// Whether the number that the caret stands in has a decimal mark already.
fn has_mark(entry: &Entry) -> bool {
    let chars: Vec<char> = entry.text.chars().collect();
    let within = |c: &&char| c.is_ascii_digit() || matches!(c, '.' | ',');
    let before = chars[..entry.start].iter().rev().take_while(within);
    let after = chars[entry.end..].iter().take_while(within);
    before.chain(after).any(|c| matches!(c, '.' | ','))
        || (entry.is_at_end()
            && split_unit(&entry.text)
                .0
                .trim_end()
                .chars()
                .rev()
                .take_while(|c| within(&c))
                .any(|c| matches!(c, '.' | ',')))
}

fn fraction(entry: &Entry, c: char) -> Entry {
    let ends_in_fraction = |text: &str| text.chars().next_back().is_some_and(is_fraction);
    let put = |amount: &str| {
        let mut amount = amount.to_owned();
        if ends_in_fraction(&amount) {
            amount.pop();
        }
        format!("{amount}{c}")
    };
    if let Some(entry) = before_unit(entry, put) {
        return entry;
    }
    let before: String = entry.text.chars().take(entry.start).collect();
    let from = if ends_in_fraction(&before) { entry.start - 1 } else { entry.start };
    insert(&Entry { start: from, ..entry.clone() }, &c.to_string())
}

/// Gives the amount that the caret stands in its unit; what follows it in a sum or list stays.
fn with_unit(entry: &Entry, unit: Unit) -> Entry {
    let caret = entry.text.char_indices().nth(entry.end).map_or(entry.text.len(), |(at, _)| at);
    let until = entry.text[caret..].find(['+', ';']).map_or(entry.text.len(), |at| caret + at);
    let (here, after) = entry.text.split_at(until);
    let (amount, _) = split_unit(here);
    let amount = if amount.ends_with(['+', ';']) { format!("{amount} ") } else { spaced(amount.trim_end()) };
    let text = format!("{amount}{}", typed(unit));
    let end = text.chars().count();
    let gap = if after.starts_with('+') { " " } else { "" };
    Entry { text: format!("{text}{gap}{after}"), start: end, end }
}

fn spaced(amount: &str) -> String {
    if amount.is_empty() { String::new() } else { format!("{amount} ") }
}

/// Starts the next amount of a sum or list, unless one has just been started.
fn follow(entry: &Entry, mark: &str, joint: &str) -> Entry {
    let text = entry.text.trim_end();
    if text.is_empty() || text.ends_with(mark) {
        Entry::at_end(entry.text.clone())
    } else {
        Entry::at_end(format!("{text}{joint}"))
    }
}

fn step(entry: &Entry, by: f64, decimal: Decimal) -> Entry {
    let (amount, rest) = split_unit(&entry.text);
    let from =
        amount.rfind([':', '+', ';']).map_or(usize::from(amount.starts_with('−')) * '−'.len_utf8(), |at| at + 1);
    let (before, last) = amount.split_at(from);
    let last = last.trim().trim_end_matches('%').trim_end();
    let value = match crate::text::read_number(last, decimal) {
        Ok(value) => value.unwrap_or(0.0) + by,
        Err(_) => return entry.clone(),
    };
    if !(0.0..1e6).contains(&value) {
        return entry.clone();
    }
    let fraction = crate::text::fraction_of(value).filter(|_| last.chars().any(is_fraction));
    let number = fraction.unwrap_or_else(|| crate::text::editable(value, decimal));
    let lead = if before.is_empty() || before.ends_with([':', '−']) { "" } else { " " };
    let space = if rest.is_empty() { "" } else { " " };
    Entry::at_end(format!("{before}{lead}{number}{space}{rest}"))
}

fn delete(entry: &Entry) -> Entry {
    if entry.start < entry.end {
        return insert(entry, "");
    }
    let (amount, unit) = split_unit(&entry.text);
    if entry.is_at_end() && !unit.is_empty() {
        return Entry::at_end(amount.trim_end());
    }
    let before: String = entry.text.chars().take(entry.start).collect();
    let kept = match before.trim_end_matches([' ', '+', ';', ':', '%']) {
        joint if joint.len() < before.len() => joint.chars().count(),
        _ => entry.start.saturating_sub(1),
    };
    insert(&Entry { start: kept, ..entry.clone() }, "")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::screen::pad::{Keys, face, others, units};

    fn typed_in(keys: &str) -> String {
        keys.split(' ')
            .fold(Entry::default(), |entry, name| {
                let own = face(Keys::Either, Decimal::Point).into_iter().chain(units(Keys::Either));
                let all = own.chain(others(Keys::Either)).chain([
                    Key::Colon,
                    Key::Semicolon,
                    Key::Up,
                    Key::Down,
                    Key::Percent,
                    Key::Minus,
                    Key::Celsius,
                    Key::Fahrenheit,
                ]);
                let key = all.into_iter().find(|key| key.label() == name).expect(name);
                press(&entry, key, Decimal::Point)
            })
            .text
    }

    #[test]
    fn types_as_bars_measure() {
        assert_eq!(typed_in("1 ¾ oz"), "1¾ oz");
        assert_eq!(typed_in("4 oz 5"), "45 oz");
        assert_eq!(typed_in("1 ½ oz + 2 dash"), "1½ oz + 2 dash");
        assert_eq!(typed_in("1 ½ ¾ oz"), "1¾ oz");
        assert_eq!(typed_in("oz 2"), "2 oz");
        assert_eq!(typed_in("1 . 5 . 5"), "1.55");
        assert_eq!(typed_in("4 5 ml oz"), "45 oz");
        assert_eq!(typed_in("4 5 ml ⌫ ⌫"), "4");
        assert_eq!(typed_in("1 oz + ⌫"), "1 oz");
        assert_eq!(typed_in("1 : 5 +1"), "1:6");
        assert_eq!(typed_in("1 oz : 5 . 7 5 oz"), "1 oz : 5.75 oz");
        assert_eq!(typed_in("1 oz : ⌫"), "1 oz");
        assert_eq!(typed_in("1 8 −1"), "17");
        assert_eq!(typed_in("5 % %"), "5 %");
        assert_eq!(typed_in("1 8 −"), "−18");
        assert_eq!(typed_in("1 8 − −"), "18");
        assert_eq!(typed_in("1 8 − +1"), "−17");
        assert_eq!(typed_in("6 °F 8"), "68 °F");
        assert_eq!(typed_in("6 8 °F °F °C"), "68");
        assert_eq!(typed_in("½ ; ¾ oz"), "½; ¾ oz");
        assert_eq!(typed_in("½ oz 5"), "5½ oz");
        assert_eq!(typed_in("½ oz 5 6"), "56½ oz");
        assert_eq!(typed_in("½ 5 6"), "56½");
        assert_eq!(typed_in("1 ⅓ +1"), "2⅓");
        assert_eq!(typed_in("5 % ⌫"), "5");
        assert_eq!(typed_in("1 . 5 oz ."), "1.5 oz");
    }

    #[test]
    fn a_selected_text_is_replaced_but_keeps_its_number_for_a_unit() {
        assert_eq!(press(&Entry::selected("1¾ oz"), Key::Char('4'), Decimal::Point).text, "4");
        assert_eq!(press(&Entry::selected("1¾ oz"), Key::Unit(Unit::Millilitre), Decimal::Point).text, "1¾ ml");
        assert_eq!(press(&Entry::selected("45 ml"), Key::Delete, Decimal::Point).text, "");
    }

    #[test]
    fn one_more_takes_the_whole_number() {
        for (text, more) in [("1 3/4", "2.75"), ("1,5", "2,5"), ("1:5", "1:6"), ("", "1")] {
            assert_eq!(
                press(&Entry::at_end(text), Key::Up, Decimal::Comma).text.replace('.', ","),
                more.replace('.', ",")
            );
        }
    }

    #[test]
    fn a_unit_goes_to_the_amount_under_the_caret() {
        let entry = Entry { text: "1½ oz + 2 dash".into(), start: 1, end: 1 };
        assert_eq!(press(&entry, Key::Unit(Unit::Millilitre), Decimal::Point).text, "1½ ml + 2 dash");
        let entry = Entry { text: "1.5 oz".into(), start: 0, end: 0 };
        assert_eq!(press(&entry, Key::Char('.'), Decimal::Point).text, "1.5 oz");
    }

    #[test]
    fn a_caret_in_the_middle_types_there() {
        let entry = Entry { text: "15 ml".into(), start: 1, end: 1 };
        assert_eq!(press(&entry, Key::Char('2'), Decimal::Point), Entry { text: "125 ml".into(), start: 2, end: 2 });
        assert_eq!(press(&entry, Key::Delete, Decimal::Point).text, "5 ml");
    }
}
