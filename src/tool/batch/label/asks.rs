//! What a label must ask before it tells what is in it: what gelatin is of, what coconut is counted as, how long a wash keeps.

use super::LabelForm;
use crate::book::{Allergen, Ask, allergens_in, asked_in};
use crate::reading::about;
use crate::reading::label::Keeps;
use crate::screen::{Answer, Bench, Choice, Problem, choice, once};

/// What gelatin is of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Gelatin {
    /// Nobody has said.
    Unsaid,
    /// An allergen.
    Fish,
    /// For diets.
    Beef,
    /// For diets.
    Pork,
}

choice! { Gelatin:
    Unsaid = "", "Not said yet";
    Fish = "fish", "Fish";
    Beef = "beef", "Beef";
    Pork = "pork", "Pork";
}

/// What coconut is counted as.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Coconut {
    /// Nobody has said.
    Unsaid,
    /// A tree nut.
    Nut,
    /// No nut.
    Plain,
}

choice! { Coconut:
    Unsaid = "", "Not said yet";
    Nut = "nut", "A tree nut here";
    Plain = "plain", "Not a nut here";
}

impl LabelForm {
    /// What must be asked about: what a link brought, and what its name and the lines of its spec say.
    pub(super) fn asked(&self, bench: &Bench) -> Vec<Ask> {
        let brought = Ask::ALL.iter().copied().filter(|ask| self.asks.split(' ').any(|key| key == ask.key()));
        let way = bench.book.card(&self.spec).and_then(|card| card.value.ways.get(self.at.parse::<usize>().ok()?));
        let lines = way.map_or("", |way| way.lines.as_str());
        once(brought.chain(asked_in(&self.name)).chain(asked_in(lines)))
    }

    /// What it contains, with what was asked: what nobody has said is told as that, and never as nothing.
    pub(super) fn contains(&self, bench: &Bench) -> String {
        let typed = self.allergens.trim();
        let has = |allergen| allergens_in(typed).any(|named| named == allergen);
        let mut parts = vec![typed];
        for ask in self.asked(bench) {
            parts.push(match (ask, Gelatin::read(&self.gelatin), Coconut::read(&self.coconut)) {
                (Ask::Gelatin, Gelatin::Unsaid, _) => "gelatin (of what is not said)",
                (Ask::Gelatin, Gelatin::Fish, _) if has(Allergen::Fish) => "fish gelatin",
                (Ask::Gelatin, Gelatin::Fish, _) => "fish (gelatin)",
                (Ask::Gelatin, Gelatin::Beef, _) => "beef gelatin",
                (Ask::Gelatin, Gelatin::Pork, _) => "pork gelatin",
                (Ask::Coconut, _, Coconut::Nut) if !has(Allergen::Nuts) => "nuts (coconut)",
                (Ask::Coconut, ..) => "coconut",
                (Ask::Enzyme, ..) => "",
            });
        }
        parts.retain(|part| !part.is_empty());
        parts.join(", ")
    }

    /// Asks what is not said yet, and tells what there is to know of it; and of how long it keeps.
    pub(super) fn ask(&self, bench: &Bench, answer: &mut Answer) {
        for ask in self.asked(bench) {
            match ask {
                Ask::Gelatin if Gelatin::read(&self.gelatin) == Gelatin::Unsaid => {
                    answer.problems.push(Problem::new("gelatin", "Say what it is of: fish is an allergen."));
                }
                Ask::Coconut if Coconut::read(&self.coconut) == Coconut::Unsaid => {
                    answer.problems.push(Problem::new("coconut", "Say what your local code counts it as."));
                }
                _ => {}
            }
            answer.remarks.push(about(ask).into());
        }
        if Keeps::read(&self.keeps) == Keeps::Washed && self.days_washed.trim().is_empty() {
            answer.cautions.push(
                "No date: for a milk-washed drink no published time was found. Type your own days: cold, and short."
                    .into(),
            );
        }
    }
}
