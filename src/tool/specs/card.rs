//! A spec card: one drink, in one way of making it or in several.

mod lines;
mod plain;
mod record;
#[cfg(test)]
mod tests;

pub use plain::{plain, read_plain};
pub use record::{changed, edited, loses, loses_much, way_at};

use crate::book::{Card, Way};
use crate::craft::balance::balance as read_mix;
use crate::quantity::{Ratio, Temperature, Volume};
use crate::reading::contents::washed_words;
use crate::reading::label::{self, Keeps};
use crate::reading::{self, Contents, card_row, links, named};
use crate::screen::pad::Keys;
use crate::screen::route::Route;
use crate::screen::{
    Act, Answer, Bench, Block, Button, Carry, Choice, Figure, Input, Opt, Problem, Strip, Tone, Tool, choice, form,
    newer_caution,
};
use crate::substance::mix::Mix;
use crate::text;

/// How a drink is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Method {
    /// In its glass.
    Built,
    /// Stirred over ice.
    Stirred,
    /// Shaken with ice.
    Shaken,
    /// From tin to tin.
    Thrown,
    /// With a stick or a jug, or mixed as a batch.
    Blended,
    /// With gas.
    Carbonated,
}

choice! { Method:
    Built = "built", "Built";
    Stirred = "stirred", "Stirred";
    Shaken = "shaken", "Shaken";
    Thrown = "thrown", "Thrown";
    Blended = "blended", "Blended";
    Carbonated = "carbonated", "Carbonated";
}

form! {
    /// The card that is open, and its texts.
    CardForm {
        /// Its id; empty when none is open.
        id = "",
        /// Which way of making it: its number from 0.
        at = "0",
        /// Amount of a line to add.
        add_amount = "30 ml",
        /// Ingredient of a line to add.
        add_name = "",
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
    }
}

/// The fields that belong to the record.
pub const FIELDS: [&str; 11] =
    ["name", "tags", "notes", "way", "lines", "method", "glass", "holds", "ice", "garnish", "steps"];

/// Glassfuls from which on a form is a batch, not one drink.
const BATCH: f64 = 3.0;

const LINES: &str = "lines";

impl Tool for CardForm {
    fn show(&mut self, bench: &Bench) -> (Vec<Block>, Answer) {
        self.open(bench);
        (self.layout(bench), self.answer(bench))
    }

    fn empty_label(&self, bench: &Bench) -> &'static str {
        if bench.book.card(&self.id).is_some() { "Delete" } else { "" }
    }

    fn layout(&self, bench: &Bench) -> Vec<Block> {
        let Some(entry) = bench.book.card(&self.id) else {
            return vec![Block::Buttons(vec![Button::new("New spec", Act::NewSpec)])];
        };
        let mut blocks = self.versions(bench);
        blocks.push(Block::field("name", "Name", Input::Words { placeholder: "Orchard lantern" }));
        if entry.value.ways.len() > 1 {
            let options = ways(&entry.value);
            blocks.push(Block::field("at", "Form", Input::Chips { options, captioned: false }));
        }
        blocks.push(Block::field(LINES, "Lines", Input::Lines { placeholder: "45 ml pear brandy\nLemon twist" }));
        blocks.push(Block::Table("", Vec::new()));
        blocks.push(Block::amount("add_amount", "Add", Keys::Either));
        blocks.push(Block::field("add_name", "Of", Input::Words { placeholder: "search an ingredient" }));
        blocks.push(Block::Buttons(self.suggestions(bench)));
        blocks.push(Block::chips::<Method>("method", "Method", true));
        blocks.push(Block::field("glass", "Glass", Input::Words { placeholder: "tumbler" }));
        blocks.push(Block::amount("holds", "Glass holds", Keys::Batch));
        blocks.push(Block::field("ice", "Ice", Input::Words { placeholder: "one clear block" }));
        blocks.push(Block::field("garnish", "Garnish", Input::Words { placeholder: "lemon twist" }));
        blocks.push(Block::field("steps", "Steps, a line each", Input::Lines { placeholder: "Stir 30 s\nStrain" }));
        blocks.push(Block::field("notes", "Notes", Input::Lines { placeholder: "" }));
        blocks.push(Block::field("tags", "Tags", Input::Words { placeholder: "autumn, stirred" }));
        blocks.push(Block::field("way", "Name of this form", Input::Words { placeholder: "quick" }));
        let mut buttons = vec![Button::new("Add a form", Act::AddWay), Button::new("Duplicate", Act::Duplicate)];
        if entry.value.ways.len() > 1 {
            buttons.push(Button::new("Remove this form", Act::RemoveWay));
        }
        blocks.push(Block::Buttons(buttons));
        blocks.push(Block::Buttons(vec![
            Button::new("To the run sheet", Act::ToRun),
            Button::new("Share as a link", Act::Share),
            Button::new("Save as text", Act::Text),
            Button::new("Save as a recipe file", Act::Recipe),
        ]));
        blocks.extend(self.shared(bench));
        blocks
    }

    fn answer(&self, bench: &Bench) -> Answer {
        let mut answer = Answer { rows_title: "As it is read", ..Answer::default() };
        let Some(entry) = bench.book.card(&self.id) else {
            return answer.without_answer("Choose a spec in All, or start one.");
        };
        answer.cautions.extend(newer_caution(entry.newer));
        let read = Contents::of(&self.lines, bench);
        let lines = &read.lines;
        answer.rows = read.pairs().map(|line| card_row(line, bench)).collect();
        self.offer_moves(&mut answer.rows);
        let holds = bench.volume("holds", &self.holds, &mut answer.problems);
        let (drunk, is_washed) = read.drunk(bench);
        let reading = read_mix(&drunk);
        let volume = drunk.volume(Temperature::TWENTY).unwrap_or(Volume::ZERO);
        if read.is_something() {
            answer.cells_title = "Balance, before ice";
            reading::four_cells(&mut answer, &drunk, bench);
            if is_washed {
                answer.remarks.push(washed_words(bench));
            }
            if let Some(holds) = holds.filter(|holds| volume > *holds && volume.ml() < BATCH * holds.ml()) {
                let glass = text::litres_or_ml(holds, bench.decimal);
                answer.problems.push(Problem::new(
                    "holds",
                    format!("{} before ice, and the glass holds {glass}.", text::litres_or_ml(volume, bench.decimal)),
                ));
            }
        }
        answer.leads = read.not_counted();
        reading::ask_part(&mut answer, LINES, &self.lines, lines, bench);
        self.waits(&mut answer, bench);
        reading::cautions(&mut answer, lines);
        let how = [Method::read_or_none(&self.method).map_or("", Method::label), &self.glass, &self.ice, &self.garnish];
        let how: Vec<&str> = how.into_iter().map(str::trim).filter(|word| !word.is_empty()).collect();
        let amount = bench.headline(volume, lines.iter().find_map(|line| line.read.as_ref().ok()?.unit));
        let strength = text::plain(reading.strength.fraction() * 100.0, 1, bench.decimal);
        answer.strip = Strip {
            figures: vec![match read.is_something() {
                true => Figure::new(strength, "% vol"),
                false => Figure::new("–", ""),
            }],
            also: match read.missing.first() {
                Some(_) => format!("{}. {}", named(&self.name), read.not_counted()),
                None if lines.is_empty() => "Type or paste its lines".into(),
                None => format!("{}, {amount} before ice. {}", named(&self.name), how.join(", ")),
            },
            tone: if lines.is_empty() { Tone::Waiting } else { Tone::Answer },
            ..Strip::default()
        };
        if !lines.is_empty() {
            self.offer(&mut answer, &read, (&drunk, is_washed), holds, bench);
        }
        answer
    }

    fn empty(&mut self) {}

    fn take(&mut self, name: &str, text: &str) {
        // The same one again stays as it is open.
        if name == "id" && self.id != text {
            text.clone_into(&mut self.id);
            "0".clone_into(&mut self.at);
            self.add_name.clear();
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
            return vec![Block::Nothing, Block::Nothing, Block::Nothing];
        }
        let words = "More than one version of this spec is kept, so that no change is lost. Look at them and choose.";
        let choose = vec![Button::new("Keep this one", Act::KeepThis), Button::new("Keep all of them", Act::KeepAll)];
        vec![Block::Caution(words.into()), Block::Carry(others), Block::Buttons(choose)]
    }

    /// The link that it has been made into, with its code.
    fn shared(&self, bench: &Bench) -> Vec<Block> {
        let Some(link) = bench.at_hand.link_of(&self.id) else { return Vec::new() };
        let code = match text::qr(link) {
            Some(code) => Block::Code(code, link.to_owned()),
            None => Block::Remark("Too long for a code: copy the link.".into()),
        };
        let copy = Block::Buttons(vec![Button::new("Copy the link", Act::CopyLink)]);
        vec![code, copy, Block::Remark("The whole spec is in the link. Nothing is kept on any server.".into())]
    }

    /// Where its lines can go next.
    fn offer(
        &self,
        answer: &mut Answer,
        read: &Contents,
        (drunk, is_washed): (&Mix, bool),
        holds: Option<Volume>,
        bench: &Bench,
    ) {
        let lines = &read.lines;
        let volume = drunk.volume(Temperature::TWENTY).unwrap_or(Volume::ZERO);
        answer.carry("Scale it", Route::Scale.href_with("spec", &self.lines));
        answer.carry("Its balance", Route::Balance.href_with("spec", &self.lines));
        links::fruit(lines, Ratio::ONE, answer, bench);
        links::fat_wash(lines, Ratio::ONE, answer, bench);
        answer.carry("A cordial for its juice", Route::Cordial.href_with("spec", &self.lines));
        links::milk_wash(read, is_washed, &self.lines, answer, bench);
        let is_serve = holds.is_none_or(|holds| volume <= holds);
        answer.carry(
            "Label it",
            label::href(&label::Facts {
                name: named(&self.name),
                strength: text::editable(drunk.strength().fraction() * 100.0, bench.decimal),
                allergens: label::declared(reading::allergens(lines)),
                asks: reading::asks(lines),
                keeps: is_washed.then_some(Keeps::Washed),
                pour: if is_serve { text::millilitres(volume, bench.decimal).to_string() } else { String::new() },
                spec: Some((self.id.clone(), self.at.clone())),
                ..label::Facts::default()
            }),
        );
    }
}

impl Method {
    /// The method of this key; none for none.
    fn read_or_none(key: &str) -> Option<Method> {
        Method::ALL.iter().copied().find(|method| method.key() == key)
    }
}

fn ways(card: &Card) -> Vec<Opt> {
    let label = |(at, way): (usize, &Way)| match way.name.trim() {
        "" => format!("Form {}", at + 1),
        name => name.to_owned(),
    };
    card.ways.iter().enumerate().map(|way| Opt::new(way.0.to_string(), label(way))).collect()
}
