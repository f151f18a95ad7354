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
        if self.before.len() > MOST_BEFORE {
            self.before.remove(0);
        }
        true
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
}
