//! Ingredients of the bar's own: its figures go before the library's, in every spec.

mod keeps;
mod uses;

pub use uses::went_into;

use crate::book::{LIBRARY, Own, Taken};
use crate::craft::pour::{fits, litre_of};
use crate::quantity::{Temperature, Volume};
use crate::reading::contents::{figures, figures_of};
use crate::reading::from_spec::{MORE, is_more};
use crate::reading::label::Keeps;
use crate::reading::{Contents, label, named};
use crate::screen::own::taken;
use crate::screen::pad::Keys;
use crate::screen::percent::encode;
use crate::screen::route::Route;
use crate::screen::{
    Act, Answer, Bench, Block, Button, Fields, Figure, Input, Opt, Problem, Row, Strip, Tone, Tool, form,
};
use crate::text;

form! {
    /// The ingredient that is open, and its texts.
    OwnForm {
        /// Its id; empty when none is open.
        id = "",
        /// What it is called in specs.
        name = "",
        /// Key of the ingredient of the library that it is like.
        like = "cordial",
        /// Its strength.
        strength = "",
        /// Its sugar, g/l.
        sugar = "",
        /// °Brix, in place of g/l.
        brix = "",
        /// What it titrates, g/l.
        acid = "",
        /// All that it holds, as figures.
        holds = "",
        /// Anything else.
        notes = "",
        /// What it is made of here, a line for each.
        parts = "",
        /// How much comes out of those.
        gives = "",
        /// Days that it keeps.
        keeps = "",
    }
}

/// The fields that belong to the record.
pub const FIELDS: [&str; 11] =
    ["name", "like", "strength", "sugar", "brix", "acid", "holds", "notes", "parts", "gives", "keeps"];

impl OwnForm {
    fn own(&self) -> Own {
        Own {
            name: self.name.clone(),
            like: self.like.clone(),
            strength: self.strength.clone(),
            sugar: self.sugar.clone(),
            brix: self.brix.clone(),
            acid: self.acid.clone(),
            holds: self.holds.clone(),
            notes: self.notes.clone(),
            parts: self.parts.clone(),
            gives: self.gives.clone(),
            keeps: self.keeps.clone(),
            ..Own::default()
        }
    }
}

/// An ingredient with a text in place; none for a field that it has not.
#[must_use]
pub fn edited(own: &Own, name: &str, text: &str) -> Option<Own> {
    let mut own = own.clone();
    let (_, field) = own.fields().into_iter().find(|(field, _)| *field == name)?;
    text.clone_into(field);
    Some(own)
}

/// What an ingredient is: a prep by its parts, found by its id, as two may have one name; else by what is typed.
fn figures_now(id: &str, own: &Own, bench: &Bench, problems: &mut Vec<Problem>) -> Option<Taken> {
    let made = bench.own.iter().find(|(_, taken)| bench.prep(Some(*taken)).is_some_and(|prep| prep.id == id));
    made.map_or_else(|| taken(own, bench.decimal, problems), |(_, taken)| Some(*taken))
}

impl Tool for OwnForm {
    fn show(&mut self, bench: &Bench) -> (Vec<Block>, Answer) {
        if let Some(entry) = bench.book.own(&self.id) {
            let mut own = entry.value.clone();
            for (name, field) in self.fields() {
                if let Some((_, text)) = own.fields().into_iter().find(|(other, _)| *other == name) {
                    *field = std::mem::take(text);
                }
            }
        }
        (self.layout(bench), self.answer(bench))
    }

    fn empty_label(&self, bench: &Bench) -> &'static str {
        if bench.book.own(&self.id).is_some() { "Delete" } else { "" }
    }

    fn layout(&self, bench: &Bench) -> Vec<Block> {
        let new = Block::Buttons(vec![Button::new("New ingredient", Act::NewIngredient)]);
        if bench.book.own(&self.id).is_none() {
            return vec![new, Block::Table("", Vec::new())];
        }
        let poured = LIBRARY.iter().filter(|row| row.key != "ice");
        let parts = Input::Lines { placeholder: "like 500 ml quince juice\n300 g sugar" };
        let mut blocks = vec![
            Block::field("name", "Name in specs", Input::Words { placeholder: "like orchard cordial" }),
            Block::pick("like", "Most like", poured.map(Opt::ingredient).collect()),
            Block::amount("strength", "Strength", Keys::Percent),
            Block::amount("sugar", "Sugar, g/l", Keys::Count),
            Block::amount("brix", "Or it reads, °Brix", Keys::Count),
            Block::amount("acid", "Acid by titration, g/l", Keys::Count),
        ];
        if !self.holds.is_empty() {
            blocks.push(Block::field("holds", "What it holds", Input::Lines { placeholder: "" }));
        }
        blocks.extend([
            Block::field("parts", "Made here of, a line for each", parts),
            Block::amount("gives", "Comes out of that", Keys::Batch),
            Block::amount("keeps", "Keeps, days", Keys::Count),
        ]);
        blocks.extend([
            Block::field(
                "notes",
                "Notes",
                Input::Lines { placeholder: "where it comes from, how it keeps, whom to tell" },
            ),
            Block::Cells("", Vec::new()),
        ]);
        blocks.extend(uses::goes_into(self.name.trim(), bench));
        blocks.extend([new, Block::Table("", Vec::new())]);
        blocks
    }

    fn answer(&self, bench: &Bench) -> Answer {
        let mut answer = Answer { rows_title: "Your ingredients", ..Answer::default() };
        answer.rows = bench
            .book
            .own
            .iter()
            .map(|entry| {
                let figures = figures_now(&entry.id, &entry.value, bench, &mut Vec::new());
                Row {
                    name: named(&entry.value.name),
                    detail: figures.map_or_else(String::new, |taken| figures_of(&litre_of(&taken), bench)),
                    href: Route::Ingredients.href_with("id", &entry.id),
                    ..Row::default()
                }
            })
            .collect();
        if bench.book.own(&self.id).is_none() {
            answer.strip = Strip {
                figures: vec![Figure::new(text::count(bench.book.own.len() as f64, bench.decimal), "of your own")],
                also: "Your figures replace ours in every spec".into(),
                tone: Tone::Answer,
                ..Strip::default()
            };
            return answer;
        }
        let own = self.own();
        if own.name.trim().is_empty() {
            answer.problems.push(Problem::new("name", "Give it a name, as specs call it."));
        }
        if !own.sugar.trim().is_empty() && !own.brix.trim().is_empty() {
            answer.problems.push(Problem::new("brix", "Sugar is given twice. Keep g/l or °Bx, not both."));
        }
        bench.volume("gives", &own.gives, &mut answer.problems);
        let days = bench.number("keeps", &own.keeps, (0.0, 3650.0), "Type days, like 14.", &mut answer.problems);
        let prep = bench.preps.iter().find(|prep| prep.id == self.id);
        if let Some(prep) = prep.filter(|prep| prep.is_circle) {
            answer.problems.push(Problem::new("parts", &prep.why));
            return answer.without_answer("");
        }
        let taken = figures_now(&self.id, &own, bench, &mut answer.problems);
        let Some(taken) = taken.filter(|_| answer.problems.is_empty()) else { return answer.without_answer("") };
        if !fits(&taken) {
            answer.problems.push(Problem::new("sugar", "These figures don't go together in one litre."));
            return answer.without_answer("");
        }
        let litre = litre_of(&taken);
        let mut shown = figures(&litre, bench);
        if let Some(reads) = litre.reads().filter(|reads| reads.degrees() >= 0.05) {
            shown.push(Figure::new(text::plain(reads.degrees(), 1, bench.decimal), "°Bx"));
        }
        let others: Vec<String> = shown.iter().skip(1).map(ToString::to_string).collect();
        answer.name = named(&own.name);
        answer.strip = Strip {
            also: if shown.is_empty() { "As water".into() } else { others.join(", ") },
            figures: shown.into_iter().take(1).collect(),
            below: uses::changes(self.name.trim(), bench),
            tone: Tone::Answer,
            ..Strip::default()
        };
        if let Some(prep) = prep {
            let known = label::Facts {
                name: own.name.clone(),
                strength: text::editable(litre.strength().fraction() * 100.0, bench.decimal),
                allergens: label::declared(prep.allergens.iter().copied()),
                asks: prep.asks.clone(),
                keeps: keeps::said(&own, days, prep, &taken, &mut answer).then_some(Keeps::Fresh),
                ..label::Facts::default()
            };
            let days =
                if own.keeps.trim().is_empty() { String::new() } else { format!("&days={}", encode(own.keeps.trim())) };
            answer.carry("Label it", format!("{}{days}", label::href(&known)));
            let whole = Contents::of_lines(&prep.lines).mix.volume(Temperature::TWENTY).unwrap_or(Volume::ZERO);
            let gives = prep.gives.filter(|_| prep.why.is_empty());
            if gives.is_some_and(|gives| is_more(gives, whole)) {
                answer.problems.push(Problem::new("gives", MORE));
            } else if gives.is_some_and(|gives| gives.ml() < whole.ml() * 0.97) {
                answer
                    .notes
                    .push("What does not come out is taken as lost: what does is as strong and as sweet.".into());
            }
            if !prep.why.is_empty() {
                answer.problems.push(Problem::new(
                    "parts",
                    format!("{} So it goes by its figures, and by what it is most like.", prep.why),
                ));
            }
            if own.holds.trim().is_empty() {
                answer.remarks.push("Worked out of its parts.".into());
                return answer;
            }
        }
        answer
            .remarks
            .push(format!("Empty figures are those of {}: {}.", taken.ingredient.name, taken.ingredient.source));
        answer
    }

    fn empty(&mut self) {}

    fn take(&mut self, name: &str, text: &str) {
        if name == "id" {
            text.clone_into(&mut self.id);
        }
    }
}
