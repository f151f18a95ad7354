//! A spec card: one drink, in one way of making it or in several.

mod change;
mod differ;
mod line;
mod more;
mod origin;
mod plain;
mod read;
mod record;
mod taste;
#[cfg(test)]
mod tests;

pub use line::{AMOUNT, LINE, is_of_line, typed_in};
pub use plain::{plain, read_plain};
pub(super) use read::Read;
pub use record::{changed, edited, is_blank, loses, loses_much, way_at};
pub use taste::{AGAINST, OF, OPEN, SCORE, WHOM, WORDS, is_untold, tasted};

use crate::book::{Card, Way};
use crate::reading::named;
use crate::screen::route::Route;
use crate::screen::{Act, Answer, Bench, Block, Button, Carry, Face, Opt, Row, Tool, form, newer_caution};

form! {
    /// The card that is open, and its texts.
    CardForm {
        /// Its id; empty when none is open.
        id = "",
        /// Which way of making it: its number from 0.
        at = "0",
        /// How its lines are changed: a key of [`change::Lines`].
        write = "each",
        /// The line that is open: see [`line::OpenLine`].
        line = "",
        /// Its amount; what is typed there goes into `lines`.
        line_amount = "",
        /// Its ingredient, or all of it.
        line_of = "",
        /// Its note, in brackets behind.
        line_note = "",
        /// What it is called.
        name = "",
        /// Words to find it by.
        tags = "",
        /// Anything else.
        notes = "",
        /// What this way is called.
        way = "",
        /// The lines.
        lines = "",
        /// Method: a key of [`Method`].
        method = "",
        /// The glass.
        glass = "",
        /// What the glass holds.
        holds = "",
        /// The ice.
        ice = "",
        /// The garnish.
        garnish = "",
        /// What to do, a line each.
        steps = "",
        /// How many serves its lines make.
        makes = "",
        /// How much comes out of them.
        gives = "",
        /// What there is to say of this form alone.
        form_notes = "",
        /// How this form tastes, until that is kept: see [`taste::WORDS`].
        taste_words = "",
        /// A score.
        taste_score = "",
        /// For whom.
        taste_whom = "",
        /// The spec that this was typed for.
        taste_of = "",
        /// Which of the earlier tastings is open: see [`taste::OPEN`].
        tasting = "",
        /// Which of them the others are compared with: see [`taste::AGAINST`].
        tasting_with = "",
    }
}

/// The fields that belong to the record.
pub const FIELDS: [&str; 14] = [
    "name",
    "tags",
    "notes",
    "way",
    "lines",
    "method",
    "glass",
    "holds",
    "ice",
    "garnish",
    "steps",
    "makes",
    "gives",
    "form_notes",
];

const LINES: &str = "lines";

impl Tool for CardForm {
    fn show(&mut self, bench: &Bench) -> (Vec<Block>, Answer) {
        self.open(bench);
        self.face(bench)
    }

    fn empty_label(&self, _bench: &Bench) -> &'static str {
        ""
    }

    fn layout(&self, bench: &Bench) -> Vec<Block> {
        self.face(bench).0
    }

    fn answer(&self, bench: &Bench) -> Answer {
        self.face(bench).1
    }

    fn empty(&mut self) {}

    fn take(&mut self, name: &str, text: &str) {
        // The same one again stays as it is open.
        if name == "id" && self.id != text {
            text.clone_into(&mut self.id);
            "0".clone_into(&mut self.at);
            self.line.clear();
            self.tasting.clear();
            self.tasting_with.clear();
        }
        if name == "at" {
            text.clone_into(&mut self.at);
            self.line.clear();
        }
    }
}

impl CardForm {
    /// The other versions that are kept of this spec, to look at and choose from.
    fn versions(&self, bench: &Bench) -> Vec<Block> {
        let others: Vec<Carry> = bench
            .book
            .rivals(&self.id)
            .enumerate()
            .map(|(at, other)| Carry {
                label: format!("Version {}: {}", at + 2, named(&other.value.name)),
                href: Route::Card.href_with("id", &other.id),
            })
            .collect();
        if others.is_empty() {
            // Another tab may bring one while the name is being typed.
            return vec![Block::Nothing, Block::Nothing, Block::Nothing, Block::Nothing];
        }
        let words = "More than one version of this spec is kept, so that no change is lost. Look at them and choose.";
        let choose = vec![Button::new("Keep this one", Act::KeepThis), Button::new("Keep all of them", Act::KeepAll)];
        let rows = self.differences(bench);
        let table =
            if rows.is_empty() { Block::Nothing } else { Block::Table("What differs: this one → the other", rows) };
        vec![Block::Caution(words.into()), Block::Carry(others), table, Block::Buttons(choose)]
    }

    /// How each of the other versions differs from the one that is open.
    fn differences(&self, bench: &Bench) -> Vec<Row> {
        let Some(open) = bench.book.card(&self.id) else { return Vec::new() };
        let has_several = bench.book.rivals(&self.id).count() > 1;
        let others = bench.book.rivals(&self.id).enumerate();
        let rows = others.flat_map(|(at, other)| {
            let which = if has_several { format!("version {}", at + 2) } else { String::new() };
            differ::cards(&open.value, &other.value, &which, bench)
        });
        rows.collect()
    }

    /// What is seen of it: how it is made, its fields, or what else can be done with it.
    fn face(&self, bench: &Bench) -> (Vec<Block>, Answer) {
        let Some(entry) = bench.book.card(&self.id) else {
            let start = Button::new("New spec", Act::NewSpec);
            let answer = Answer {
                head: vec![Button::new(Route::Specs.row().label, Act::Go(Route::Specs.href()))],
                ..Answer::default()
            };
            return (
                vec![Block::Buttons(vec![start])],
                answer.without_answer("Choose a spec in the book, or start one."),
            );
        };
        let card = &entry.value;
        let at = way_at(&self.at, card);
        let above = self.versions(bench);
        let (blocks, mut answer) = match bench.at_hand.face_of(&self.id) {
            // There is nothing to read yet.
            Face::Read if is_blank(card) => self.change(card, above, bench),
            Face::Read => Read { card, at, id: Some(&self.id), bench }.show(above),
            Face::Change => self.change(card, above, bench),
            Face::Taste => self.tasting(card, at, above, bench),
            Face::More => self.more(card, card.ways.get(at).unwrap_or(&Way::default()), bench),
        };
        answer.cautions.splice(0..0, newer_caution(entry.newer));
        (blocks, answer)
    }
}

fn ways(card: &Card) -> Vec<Opt> {
    (0..card.ways.len()).map(|at| Opt::new(at.to_string(), form_name(card, at))).collect()
}

/// What a form is called beside the others of its spec.
pub(super) fn form_name(card: &Card, at: usize) -> String {
    match card.ways.get(at).map_or("", |way| way.name.trim()) {
        "" => format!("Form {}", at + 1),
        name => name.to_owned(),
    }
}
