//! Why a text is not read, where a field is told so in words of its own.

use super::number::{NumberProblem, replaced};

/// Words for the person who typed, and texts that would settle it in a tap.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unread {
    /// What is wrong and what to type.
    pub words: String,
    /// Texts for the field.
    pub fixes: Vec<String>,
}

impl Unread {
    /// What is wrong with a number in `text`: a mark that could mean two things is asked about, all else is told in
    /// `words`.
    pub(super) fn number(problem: &NumberProblem, text: &str, words: impl FnOnce() -> String) -> Unread {
        match problem {
            NumberProblem::Ambiguous { .. } => Unread { words: problem.to_string(), fixes: problem.readings(text) },
            _ => words().into(),
        }
    }
}

impl From<String> for Unread {
    fn from(words: String) -> Unread {
        Unread { words, fixes: Vec::new() }
    }
}

impl NumberProblem {
    /// `text` with each thing that its number could mean.
    #[must_use]
    pub fn readings(&self, text: &str) -> Vec<String> {
        match self {
            NumberProblem::Ambiguous { typed, grouped, decimal } => {
                [grouped, decimal].map(|reading| replaced(text, typed, reading)).to_vec()
            }
            NumberProblem::Spaced { typed, grouped } | NumberProblem::Listed { typed, grouped } => {
                vec![replaced(text, typed, grouped)]
            }
            _ => Vec::new(),
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::quantity::{Conventions, Unit};
    use crate::text::{Decimal, Dimension, Reading, read_percent, read_strength, read_sweetness, read_temperature};

    type Read<'a> = &'a dyn Fn(&str) -> Result<(), super::Unread>;

    /// Every field that takes a number offers what "1,000" and "1,250" could mean, and what is offered is read.
    #[test]
    fn a_number_of_two_meanings_is_offered_as_both() {
        let percent = |text: &str| read_percent(text, Decimal::Point, 100).map(|_| ());
        let strength = |text: &str| read_strength(text, Decimal::Point).map(|_| ());
        let conventions = Conventions::default();
        let reading = Reading {
            conventions: &conventions,
            decimal: Decimal::Point,
            bare: Unit::Millilitre,
            kind: Dimension::Either,
            own: &[],
        };
        let sweetness = |text: &str| read_sweetness(text, &reading).map(|_| ());
        let temperature = |text: &str| read_temperature(text, Decimal::Point).map(|_| ());
        let fields: [(&str, Read<'_>); 4] =
            [(" %", &percent), (" % vol", &strength), (" °Bx", &sweetness), (" °C", &temperature)];
        for (sign, read) in fields {
            let asked = read(&format!("1,250{sign}")).expect_err(sign);
            assert_eq!(asked.words, "1,250 can be read two ways. Did you mean 1250 or 1.25?", "{sign}");
            assert_eq!(asked.fixes, [format!("1250{sign}"), format!("1.25{sign}")], "{sign}");
            assert_eq!(read(&asked.fixes[1]), Ok(()), "{sign}");
            assert!(read("lots").expect_err(sign).fixes.is_empty(), "{sign}");
        }
        let asked = read_percent("1,000", Decimal::Point, 100).expect_err("two ways");
        assert_eq!(asked.fixes, ["1000", "1"]);
    }
}
