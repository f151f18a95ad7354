//! A form as it is kept, with its taps of undo.

use crate::book::{Field, Record, Texts};

/// A form as it is kept: its texts now, and those that taps on Undo bring back.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Kept {
    /// What is typed, by field.
    pub now: Texts,
    /// What was typed before each clearing and carrying over, the latest last.
    pub before: Vec<Texts>,
}

impl Record for Kept {
    fn slots(&mut self) -> Vec<Field<'_>> {
        vec![Field::needed("now", &mut self.now), Field::spare("before", &mut self.before), Field::others()]
    }
}

/// Taps on Undo that are kept.
const MOST_BEFORE: usize = 20;

impl Kept {
    /// Puts other texts in place of these, which Undo brings back. False where they are the same.
    pub fn replace(&mut self, next: Texts) -> bool {
        if next == self.now {
            return false;
        }
        self.before.push(std::mem::replace(&mut self.now, next));
        self.before.drain(..self.before.len().saturating_sub(MOST_BEFORE));
        true
    }

    /// Takes over what another tab has saved: these texts were changed since they were `saved`, and could not be saved.
    /// Field by field, what was changed here stays; where both changed a field, Undo brings the other's text back. True
    /// in that case.
    pub fn merge(&mut self, saved: &Texts, theirs: Kept) -> bool {
        let mut next = theirs.now.clone();
        let mut is_both = false;
        for name in saved.keys().chain(self.now.keys()) {
            let (mine, was) = (self.now.get(name), saved.get(name));
            if mine != was {
                is_both |= theirs.now.get(name) != was && theirs.now.get(name) != mine;
                match mine {
                    Some(text) => next.insert(name.to_owned(), text.clone()),
                    None => drop(next.remove(name)),
                }
            }
        }
        let mine = std::mem::replace(self, theirs);
        self.before.extend(mine.before.into_iter().filter(|before| !self.before.contains(before)).collect::<Vec<_>>());
        match is_both {
            true => drop(self.replace(next)),
            false => self.now = next,
        }
        self.before.drain(..self.before.len().saturating_sub(MOST_BEFORE));
        is_both
    }

    /// Brings back what was replaced last; what stood there.
    pub fn undo(&mut self) -> Option<Texts> {
        let before = self.before.pop()?;
        Some(std::mem::replace(&mut self.now, before))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn texts(amount: &str) -> Texts {
        Texts::from([("amount".to_owned(), amount.to_owned())])
    }

    #[test]
    fn undo_goes_back_step_by_step() {
        let mut kept = Kept { now: texts("1"), before: Vec::new() };
        for next in ["2", "2", "3"] {
            kept.replace(texts(next));
        }
        assert_eq!(kept.undo(), Some(texts("3")));
        assert_eq!(kept.undo(), Some(texts("2")));
        assert_eq!((kept.undo(), &kept.now), (None, &texts("1")));
        for next in 0..30 {
            kept.replace(texts(&format!("x{next}")));
        }
        assert_eq!(kept.before.len(), MOST_BEFORE);
    }

    #[test]
    fn what_two_tabs_typed_is_merged_field_by_field() {
        let of = |pairs: &[(&str, &str)]| -> Texts {
            let mut texts = Texts::new();
            pairs.iter().for_each(|(name, text)| texts.insert((*name).into(), (*text).into()));
            texts
        };
        let saved = of(&[("a", "1"), ("b", "1"), ("gone", "1")]);
        let mut mine = Kept { now: of(&[("a", "2"), ("b", "1"), ("new", "2")]), before: vec![saved.clone()] };
        let theirs = Kept { now: of(&[("a", "1"), ("b", "3"), ("gone", "1"), ("other", "3")]), before: Vec::new() };
        assert!(!mine.merge(&saved, theirs.clone()));
        assert_eq!(mine.now, of(&[("a", "2"), ("b", "3"), ("new", "2"), ("other", "3")]));
        assert_eq!(mine.before, vec![saved.clone()]);
        // Both changed one field: what was typed here stays, the other comes back with Undo.
        let mut mine = Kept { now: of(&[("a", "2"), ("b", "1"), ("gone", "1")]), before: Vec::new() };
        let theirs = Kept { now: of(&[("a", "4"), ("b", "1"), ("gone", "1")]), before: Vec::new() };
        assert!(mine.merge(&saved, theirs.clone()));
        assert_eq!(mine.now.get("a").map(String::as_str), Some("2"));
        mine.undo();
        assert_eq!(mine.now, theirs.now);
    }
}
