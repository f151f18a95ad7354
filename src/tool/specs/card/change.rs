//! A spec as it is changed: its fields, in place.

use super::{CardForm, LINES, ways};
use crate::book::Card;
use crate::craft::balance::balance;
use crate::quantity::{Temperature, Volume};
use crate::reading::{self, Contents, card_row, named};
use crate::screen::pad::Keys;
use crate::screen::{Act, Answer, Bench, Block, Button, Choice, Face, Figure, Input, Strip, Tone, choice};
use crate::text;
use crate::tool::specs::method::Method;

/// How its lines are changed: they stand once.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Lines {
    /// Typed or pasted.
    Typed,
    /// One by one.
    Each,
}

choice! { Lines:
    Typed = "typed", "Typed";
    Each = "each", "Line by line";
}

impl CardForm {
    /// The screen of it, with what stands above it.
    pub(super) fn change(&self, card: &Card, above: Vec<Block>, bench: &Bench) -> (Vec<Block>, Answer) {
        let each = Lines::read(&self.write) == Lines::Each;
        let read = Contents::of(&self.lines, bench);
        let mut answer = Answer { name: named(&self.name), rows_title: "Ingredients", ..Answer::default() };
        answer.head = vec![Button::new("Done", Act::Show(Face::Read))];
        answer.rows = read.pairs().map(|line| card_row(line, bench)).collect();
        match each {
            true => self.offer_moves(&mut answer.rows),
            // The text above holds them all: what needs a look is left.
            false => {
                answer.rows.retain(|row| row.marked);
                answer.rows_title = "Needs a look";
            }
        }
        if answer.rows.is_empty() {
            answer.rows_title = "";
        }
        answer.leads = read.not_counted();
        reading::ask_part(&mut answer, LINES, &self.lines, &read.lines, bench);
        bench.volume("holds", &self.holds, &mut answer.problems);
        answer.strip = self.strip(&read, bench);
        let blocks = self.fields_of(card, above, each, bench);
        (blocks, answer)
    }

    fn strip(&self, read: &Contents, bench: &Bench) -> Strip {
        let (drunk, is_washed) = read.drunk(bench);
        let volume = drunk.volume(Temperature::TWENTY).unwrap_or(Volume::ZERO);
        let written = read.lines.iter().find_map(|line| line.read.as_ref().ok()?.unit);
        let strength = text::plain(balance(&drunk).strength.fraction() * 100.0, 1, bench.decimal);
        let when = if is_washed { "through the milk" } else { "before ice" };
        Strip {
            figures: vec![match read.is_something() {
                true => bench.headline_of(volume, when, written),
                false => Figure::new("–", ""),
            }],
            also: match (read.lines.is_empty(), read.missing.is_empty()) {
                (true, _) => "Type or paste its lines".into(),
                (_, true) => format!("{strength} % vol"),
                _ => format!("{strength} % vol. {}", read.not_counted()),
            },
            tone: if read.lines.is_empty() { Tone::Waiting } else { Tone::Answer },
            ..Strip::default()
        }
    }

    fn fields_of(&self, card: &Card, above: Vec<Block>, each: bool, bench: &Bench) -> Vec<Block> {
        let mut blocks = above;
        blocks.push(Block::field("name", "Name", Input::Words { placeholder: "Orchard lantern" }));
        if card.ways.len() > 1 {
            let options = ways(card);
            blocks.push(Block::field("at", "Form", Input::Chips { options, captioned: false }));
        }
        blocks.push(Block::chips::<Lines>("write", "Its lines", false));
        if !each {
            let placeholder = "45 ml pear brandy\nLemon twist";
            blocks.push(Block::field(LINES, "A line for each ingredient", Input::Lines { placeholder }));
        }
        blocks.push(Block::Table("", Vec::new()));
        blocks.push(Block::amount("add_amount", "Add", Keys::Either));
        blocks.push(Block::field("add_name", "Of", Input::Words { placeholder: "search an ingredient" }));
        let found = self.suggestions(bench);
        blocks.push(if found.is_empty() { Block::Nothing } else { Block::Buttons(found) });
        blocks.push(Block::chips::<Method>("method", "Method", true));
        blocks.push(Block::field("steps", "Steps, a line each", Input::Lines { placeholder: "Stir 30 s\nStrain" }));
        blocks.push(Block::field("glass", "Glass", Input::Words { placeholder: "tumbler" }));
        blocks.push(Block::amount("holds", "Glass holds", Keys::Batch));
        blocks.push(Block::field("ice", "Ice", Input::Words { placeholder: "one clear block" }));
        blocks.push(Block::field("garnish", "Garnish", Input::Words { placeholder: "lemon twist" }));
        blocks.push(Block::field("notes", "Notes", Input::Lines { placeholder: "" }));
        blocks.push(Block::field("tags", "Tags", Input::Words { placeholder: "autumn, stirred" }));
        blocks.push(Block::field("way", "Name of this form", Input::Words { placeholder: "quick" }));
        let mut buttons = vec![Button::new("Add a form", Act::AddWay)];
        if card.ways.len() > 1 {
            buttons.push(Button::new("Remove this form", Act::RemoveWay));
        }
        blocks.push(Block::Buttons(buttons));
        blocks
    }
}
