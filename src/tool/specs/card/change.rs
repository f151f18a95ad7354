//! A spec as it is changed: its fields, in place.

use super::line::{AMOUNT, LINE, NOTE, OF, OpenLine};
use super::{CardForm, LINES, ways};
use crate::book::Card;
use crate::craft::balance::balance;
use crate::quantity::{Temperature, Volume};
use crate::reading::from_spec::{MORE, is_more};
use crate::reading::{self, Contents, card_row, named};
use crate::screen::pad::Keys;
use crate::screen::{
    Act, Answer, Bench, Block, Button, Choice, Face, Figure, Input, Problem, Row, Strip, Tone, choice,
};
use crate::text::{self, LineProblem};
use crate::tool::specs::method::Method;

/// How its lines are changed: they stand once.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Lines {
    /// One by one: amount, ingredient.
    Each,
    /// Typed or pasted.
    Typed,
}

choice! { Lines:
    Each = "each", "Line by line";
    Typed = "typed", "As text";
}

impl CardForm {
    /// The screen of it, with what stands above it.
    pub(super) fn change(&self, card: &Card, above: Vec<Block>, bench: &Bench) -> (Vec<Block>, Answer) {
        let each = Lines::read(&self.write) == Lines::Each;
        let read = Contents::of(&self.lines, bench);
        let mut answer = Answer { name: named(&self.name), ..Answer::default() };
        answer.leads = read.not_counted();
        reading::ask_part(&mut answer, LINES, &self.lines, &read.lines, bench);
        let mut blocks = self.named(card, above);
        answer.foot = vec![Button::new("Done", Act::Show(Face::Read))];
        if each {
            answer.head = vec![Button::new("As text", Act::Choose("write".into(), Lines::Typed.key().into()))];
            self.each(&read, &mut blocks, &mut answer, bench);
        } else {
            answer.head = vec![Button::new("Line by line", Act::Choose("write".into(), Lines::Each.key().into()))];
            let placeholder = "like 45 ml pear brandy\nLemon twist";
            blocks.push(Block::field(LINES, "A line for each ingredient", Input::Lines { placeholder }));
            // The text above holds them all: what needs a look is left.
            answer.rows = read.pairs().map(|line| card_row(line, bench)).filter(|row| row.marked).collect();
            answer.rows_title = if answer.rows.is_empty() { "" } else { "Needs a look" };
            blocks.push(Block::Table("", Vec::new()));
        }
        bench.volume("holds", &self.holds, &mut answer.problems);
        bench.count("makes", &self.makes, &mut answer.problems);
        let gives = bench.volume("gives", &self.gives, &mut answer.problems);
        let whole = read.drunk(bench).0.volume(Temperature::TWENTY).unwrap_or(Volume::ZERO);
        if gives.is_some_and(|gives| read.whole().is_some() && is_more(gives, whole)) {
            answer.problems.push(Problem::new("gives", MORE));
        }
        answer.strip = self.strip(&read, bench);
        rest(card, &mut blocks);
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

    /// What it is called, and which form of it is changed.
    fn named(&self, card: &Card, above: Vec<Block>) -> Vec<Block> {
        let mut blocks = above;
        blocks.push(Block::field("name", "Name", Input::Words { placeholder: "like Orchard lantern" }));
        if card.ways.len() > 1 {
            let options = ways(card);
            blocks.push(Block::field("at", "Form", Input::Chips { options, captioned: false }));
        }
        blocks
    }

    /// Its lines one by one, with the fields of the one that is open in its place.
    fn each(&self, read: &Contents, blocks: &mut Vec<Block>, answer: &mut Answer, bench: &Bench) {
        let open = self.line(bench);
        let (mut before, mut after, mut own) = (Vec::new(), Vec::new(), Row::default());
        let typed = self.lines.lines().enumerate().filter(|(_, line)| !line.trim().is_empty());
        for ((at, line), pair) in typed.zip(read.pairs()) {
            let mut row = Row { typed: pair.0.typed.clone(), ..card_row(pair, bench) };
            if pair.0.read != Err(LineProblem::TooMany) {
                row.opens = Some(Act::Choose(LINE.into(), OpenLine::of(at, line, bench).note()));
            }
            match open.as_ref().map_or(std::cmp::Ordering::Less, |open| at.cmp(&open.at)) {
                std::cmp::Ordering::Less => before.push(row),
                std::cmp::Ordering::Equal => {
                    own = Row { name: String::new(), amount: String::new(), opens: None, ..row };
                }
                std::cmp::Ordering::Greater => after.push(row),
            }
        }
        let table = |rows: Vec<Row>| if rows.is_empty() { Block::Nothing } else { Block::Table("", rows) };
        blocks.extend([Block::Heading("Ingredients"), table(before)]);
        // Each keeps its place while one types.
        let mut fields = [const { Block::Nothing }; 5];
        answer.foot.push(Button::new("Add a line", self.added(bench)));
        if let Some(open) = &open {
            let words = |name, label, placeholder| Block::field(name, label, Input::Words { placeholder });
            fields[1] = match open.is_whole() {
                true => words(OF, "The line", ""),
                false => words(OF, "Ingredient", "search an ingredient"),
            };
            if !open.is_whole() {
                fields[0] = Block::amount(AMOUNT, "Amount", Keys::Line);
            }
            if open.has_note {
                fields[2] = words(NOTE, "Note", "like chilled");
            }
            fields[3] = table(vec![own]);
            fields[4] = Block::Buttons(self.deeds(open));
            let offers = self.offers(open, bench);
            if !offers.is_empty() {
                answer.foot = offers;
            }
        }
        blocks.extend(fields);
        blocks.push(table(after));
        // What one part is, is asked of all lines.
        for asked in answer.problems.extract_if(.., |problem| problem.field == LINES) {
            let offer = |fix: crate::screen::Fix| Button::new(fix.label, Act::Put(vec![(LINES, fix.text)]));
            blocks.extend([Block::Caution(asked.words), Block::Buttons(asked.fixes.into_iter().map(offer).collect())]);
        }
    }
}

/// The fields behind its lines.
fn rest(card: &Card, blocks: &mut Vec<Block>) {
    blocks.push(Block::chips::<Method>("method", "Method", true));
    blocks.push(Block::field("steps", "Steps, a line each", Input::Lines { placeholder: "like stir 30 s\nstrain" }));
    blocks.push(Block::field("glass", "Glass", Input::Words { placeholder: "like tumbler" }));
    blocks.push(Block::amount("holds", "Glass holds", Keys::Batch));
    blocks.push(Block::field("ice", "Ice", Input::Words { placeholder: "like one clear block" }));
    blocks.push(Block::field("garnish", "Garnish", Input::Words { placeholder: "like lemon twist" }));
    blocks.push(Block::amount("makes", "Serves it makes", Keys::Count));
    blocks.push(Block::amount("gives", "Comes out of it", Keys::Batch));
    blocks.push(Block::field("form_notes", "Notes on this form", Input::Lines { placeholder: "" }));
    blocks.push(Block::field("notes", "Notes on the drink", Input::Lines { placeholder: "" }));
    blocks.push(Block::field("tags", "Tags", Input::Words { placeholder: "like autumn, stirred" }));
    blocks.push(Block::field("way", "Name of this form", Input::Words { placeholder: "like quick" }));
    let mut buttons = vec![Button::new("Add a form", Act::AddWay)];
    if card.ways.len() > 1 {
        buttons.push(Button::new("Remove this form", Act::RemoveWay));
    }
    blocks.push(Block::Buttons(buttons));
}
