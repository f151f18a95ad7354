//! Names misspelt by a letter or two.

use super::abroad::{names, plain};
use super::{Fit, Measured, Taken, ends_with_words, is_of_word};
use crate::book::{LIBRARY, ingredient};

/// Most letters that are wrong in all of a phrase.
const MOST: usize = 2;
/// A word alone of fewer letters is near too many others to be taken for one.
const SURE: usize = 5;

/// A phrase that a name nearly ends in.
struct Close {
    taken: Taken,
    phrase: String,
    /// How many words it has.
    words: usize,
    /// How many letters are wrong.
    wrong: usize,
    /// Whether a wrong word is short.
    is_short: bool,
}

/// What a folded name nearly ends in, by a phrase of more words than what it ends in to the letter: `exact`, and what that
/// is taken to be.
///
/// It is taken where one ingredient alone is as near, and every other that is near, and what it ends in to the letter, has
/// the same strength and the same to declare; else it is asked about.
pub(super) fn near(folded: &str, exact: &str, taken: Option<&Taken>, own: &[(String, Taken)]) -> Fit {
    let typed: Vec<&str> = words_of(folded).collect();
    let known = words_of(exact).count();
    let mut close: Vec<Close> = Vec::new();
    let mut consider = |phrase: &str, what: &dyn Fn() -> Option<Taken>| {
        // What is right to the letter is the end of more; most are passed over by that.
        if (known == 0 || ends_with_words(phrase, exact))
            && let Some((words, wrong, is_short)) = apart(&typed, phrase)
            && words > known
            && let Some(taken) = what()
        {
            close.push(Close { taken, phrase: phrase.to_owned(), words, wrong, is_short });
        }
    };
    let plain = |ingredient| Taken { ingredient, measured: Measured::default() };
    for row in LIBRARY {
        for phrase in [row.name].iter().chain(row.names) {
            consider(phrase, &|| Some(plain(row)));
        }
    }
    for (name, key) in names() {
        consider(name, &|| ingredient(key).map(plain));
    }
    for (name, taken) in own {
        consider(name, &|| Some(*taken));
    }
    let most = close.iter().map(|close| close.words).max().unwrap_or(0);
    close.retain(|close| close.words == most);
    let Some(best) = close.iter().min_by_key(|close| close.wrong) else { return Fit::Nothing };
    if taken == Some(&best.taken) {
        return Fit::Nothing;
    }
    let is_alone = close.iter().all(|other| other.wrong > best.wrong || other.taken == best.taken);
    let others = close.iter().map(|close| &close.taken).chain(taken);
    let is_safe = best.wrong == 0
        || (!(best.is_short && best.words == 1) && others.clone().all(|other| pours_alike(other, &best.taken)));
    if is_alone && is_safe {
        let read_as = if best.wrong == 0 { String::new() } else { best.phrase.to_ascii_lowercase() };
        return Fit::As(best.taken, read_as);
    }
    let mut maybe: Vec<&'static str> = vec![best.taken.ingredient.name];
    for other in others {
        if !maybe.contains(&other.ingredient.name) {
            maybe.push(other.ingredient.name);
        }
    }
    Fit::Maybe(maybe)
}

fn words_of(text: &str) -> impl DoubleEndedIterator<Item = &str> {
    text.split(|c| !is_of_word(c)).filter(|word| !word.is_empty())
}

/// Whether guests would be told the same of both.
fn pours_alike(one: &Taken, other: &Taken) -> bool {
    let strength =
        |taken: &Taken| taken.measured.strength.map_or(taken.ingredient.percent, |abv| abv.fraction() * 100.0);
    (strength(one) - strength(other)).abs() < 0.05 && one.ingredient.allergens == other.ingredient.allergens
}

/// How many words of a phrase the typed words end in, how many letters of them are wrong, and whether in a short word.
fn apart(typed: &[&str], phrase: &str) -> Option<(usize, usize, bool)> {
    let (mut words, mut wrong, mut is_short) = (0, 0, false);
    for word in words_of(phrase).rev() {
        words += 1;
        let letters = wrong_letters(typed[typed.len().checked_sub(words)?], word)?;
        wrong += letters;
        is_short |= letters > 0 && word.len() < SURE;
    }
    (words > 0 && wrong <= MOST).then_some((words, wrong, is_short))
}

/// Whether a folded text has a word that the typed one is but for a letter, or as far as it is typed.
#[must_use]
pub fn nearly(text: &str, typed: &str) -> bool {
    let is_so = |word: &str| wrong_letters(typed, word).is_some_and(|wrong| wrong <= 1);
    let length = typed.len();
    words_of(text)
        .any(|word| is_so(word) || (length..length + 3).any(|end| word.get(..end.saturating_sub(1)).is_some_and(is_so)))
}

/// How many letters of a typed word are wrong, if few enough for its length. Letters that changed places are one; the
/// plural is none.
fn wrong_letters(typed: &str, word: &str) -> Option<usize> {
    if typed.len().abs_diff(word.len()) > MOST + 1 || !typed.is_ascii() {
        return None;
    }
    let begins = |a: usize, b: usize| typed.chars().nth(a) == word.chars().nth(b).map(plain);
    if !(begins(0, 0) || begins(0, 1) && begins(1, 0)) {
        return None;
    }
    let word: Vec<u8> = word.chars().map(|c| u8::try_from(plain(c)).unwrap_or(0)).collect();
    let typed = typed.as_bytes();
    if typed.strip_suffix(b"s") == Some(&word) {
        return Some(0);
    }
    let most = match typed.len().min(word.len()) {
        0..4 => 0,
        4..7 => 1,
        _ => MOST,
    };
    edits(typed, &word, most)
}

/// The fewest letters put in, left out, changed or swapped that make one of the other; none beyond `most`.
fn edits(a: &[u8], b: &[u8], most: usize) -> Option<usize> {
    let same = a.iter().zip(b).take_while(|(a, b)| a == b).count();
    let (a, b) = (&a[same..], &b[same..]);
    if a.is_empty() && b.is_empty() {
        return Some(0);
    }
    let most = most.checked_sub(1)?;
    let behind = |a_from: usize, b_from: usize| edits(a.get(a_from..)?, b.get(b_from..)?, most);
    let is_swapped = a.len() > 1 && b.len() > 1 && a[0] == b[1] && a[1] == b[0];
    let swapped = if is_swapped { behind(2, 2) } else { None };
    [behind(1, 1), behind(1, 0), behind(0, 1), swapped].into_iter().flatten().min().map(|rest| rest + 1)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn letters_are_counted() {
        for (typed, word, wrong) in [
            ("juise", "juice", Some(1)),
            ("jiuce", "juice", Some(1)),
            ("juce", "juice", Some(1)),
            ("juicee", "juice", Some(1)),
            ("jise", "juice", None),
            ("vermuth", "vermouth", Some(1)),
            ("grapfriut", "grapefruit", Some(2)),
            ("limes", "lime", Some(0)),
            ("gim", "gin", None),
            ("herry", "cherry", None),
            ("cherry", "sherry", None),
            ("borange", "orange", None),
            ("roange", "orange", Some(1)),
            ("puree", "purée", Some(0)),
        ] {
            assert_eq!(wrong_letters(typed, word), wrong, "{typed} {word}");
        }
    }
}
