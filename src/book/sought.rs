//! What is looked for by a few letters: in any case, with accents or without, and with a letter wrong.

use super::named::{folded, nearly};
use super::records::Pairs;

/// From this rank on, a letter is wrong.
pub const NEAR: u64 = 1_000;
/// How much worse it is to stand where less is said of a thing than by its name.
pub const BESIDE: u64 = 10;

/// Words that are looked for.
pub struct Sought {
    words: Vec<(String, Pairs)>,
}

impl Sought {
    /// Those of a text.
    #[must_use]
    pub fn of(text: &str) -> Sought {
        let folded = folded(text);
        let words = folded.split_whitespace().map(|word| (word.to_owned(), Pairs::within(word)));
        Sought { words: words.collect() }
    }

    /// Whether nothing is.
    #[must_use]
    pub const fn is_nothing(&self) -> bool {
        self.words.is_empty()
    }

    /// How far texts are from it, the name of a thing before what else is said of it: the sum over its words, 0 for those
    /// that begin the name. None where a word is not there. `pairs` are those of letters side by side in them.
    #[must_use]
    pub fn rank(&self, texts: &[&str], pairs: &Pairs) -> Option<u64> {
        let is_there = self.words.iter().all(|(_, within)| pairs.may_hold(within));
        // Where a word cannot be, no more than the name is looked at.
        let looked_at = if is_there { texts.len() } else { 1 };
        let texts: Vec<String> = texts[..looked_at].iter().map(|text| folded(text)).collect();
        let of_word = |(word, _): &(String, Pairs)| {
            let found = texts.iter().enumerate().filter_map(|(at, text)| {
                let beside = if at == 0 { 0 } else { BESIDE };
                stands(text.as_bytes(), word.as_bytes()).map(|rank| rank + beside)
            });
            found.min().or_else(|| nearly(&texts[0], word).then_some(NEAR))
        };
        self.words.iter().map(of_word).sum()
    }
}

/// Where a word stands in a text: it begins it, begins a word of it, or is within one.
fn stands(text: &[u8], word: &[u8]) -> Option<u64> {
    let mut best = None;
    for at in 0..(text.len() + 1).saturating_sub(word.len()) {
        if text[at..].starts_with(word) {
            match at {
                0 => return Some(0),
                at if !text[at - 1].is_ascii_alphanumeric() && text[at - 1].is_ascii() => return Some(1),
                _ => best = Some(2),
            }
        }
    }
    best
}

/// The places of at most so many of a list of `count` that rank best, the best first; those that are equal stay as they
/// are.
#[must_use]
pub fn best(count: usize, most: usize, rank: &dyn Fn(usize) -> Option<u64>) -> Vec<usize> {
    let mut found: Vec<(u64, usize)> = Vec::new();
    for at in 0..count {
        let Some(rank) = rank(at) else { continue };
        if found.len() == most && found.last().is_some_and(|(last, _)| *last <= rank) {
            continue;
        }
        let place = found.iter().rposition(|(better, _)| *better <= rank).map_or(0, |at| at + 1);
        found.insert(place, (rank, at));
        found.truncate(most);
    }
    // What is misspelt is passed over where something is not.
    if found.first().is_some_and(|(first, _)| *first < NEAR) {
        found.retain(|(rank, _)| *rank < NEAR);
    }
    found.into_iter().map(|(_, at)| at).collect()
}
