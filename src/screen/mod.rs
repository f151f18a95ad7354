//! What a screen is made of, as plain data: the strip, blocks in order, fields, buttons, drawings; the table of
//! routes; the bench a form is read at; the pad. It names no tool and knows no browser.

mod act;
pub mod address;
mod answer;
mod at_hand;
mod bench;
mod block;
mod button;
pub mod clock;
mod drawing;
mod face;
mod fields;
mod held;
mod laid_out;
mod making;
pub(crate) mod own;
pub mod pad;
mod paper;
pub(crate) mod percent;
pub mod picture;
pub mod plan;
mod preps;
pub mod route;
pub mod sheet;
mod sides;
mod timeline;
mod tool;

pub use act::Act;
pub use answer::{Answer, Carry, Cell, Fix, Problem, Row, Strip, Tone};
pub(crate) use answer::{fixes, newer_caution, plural};
pub use at_hand::{AtHand, Stands};
pub use bench::Bench;
pub use block::{Block, Field, Input, Opt};
pub use button::Button;
pub use drawing::{Drawing, Placed};
pub use face::Face;
pub use fields::{Choice, Fields, Texts, fill};
pub(crate) use fields::{choice, empty_into, form};
pub use held::Held;
pub(crate) use laid_out::laid_out;
pub(crate) use making::MOST_SERVES;
pub use making::{Begun, Doing, InHand, Pour, Pours, Printed, Timing, form_of};
pub use paper::{SheetHead, ToHave};
pub use preps::Prep;
pub(crate) use preps::once;
pub use sides::{Column, Compared, Side, Sides};
pub use timeline::{Event, Wait};
pub use tool::Tool;

pub(crate) use crate::text::Figure;

/// Id of the row that the strip leads to.
pub const ASKED: &str = "asked";

/// Id of the head of the sheet of tools.
pub const SHEET: &str = "sheet";

/// Id of the name of the screen, in its head.
pub const HEAD: &str = "head";

/// What the app draws.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Screen {
    /// The strip.
    pub strip: Strip,
    /// What a tap on the strip leads to, in words: the first row that needs a look; empty where none does.
    pub leads: String,
    /// Whether the strip has room for two figures, by tool and not by answer, so that it never moves.
    pub tall: bool,
    /// What is on it, by its own name; empty where it is called as the tool is.
    pub name: String,
    /// Words in its head, beside Undo and Copy.
    pub head: Vec<Button>,
    /// What there is to do with its answer, at its foot.
    pub foot: Vec<Button>,
    /// The blocks in order. A field keeps its place while only texts change, so that drawing the
    /// screen again keeps its caret.
    pub blocks: Vec<Block>,
    /// The answer as text, to copy; empty when there is none.
    pub copy: String,
}

impl Screen {
    /// Its tables, and what is poured or bought, as CSV (RFC 4180), with a line that names the columns. What a spreadsheet would take for a formula
    /// has an apostrophe before it.
    #[must_use]
    pub fn csv(&self) -> String {
        let cell = |text: &str| {
            let text = text.replace('"', "\"\"");
            let guard = if text.starts_with(['=', '+', '-', '@', '\t']) { "'" } else { "" };
            format!("\"{guard}{text}\"")
        };
        let mut csv = "\"ingredient\",\"amount\",\"remark\"\r\n".to_owned();
        for block in &self.blocks {
            let mut put = |name: &str, amount: &str, remark: &str| {
                csv.push_str(&format!("{},{},{}\r\n", cell(name), cell(amount), cell(remark)));
            };
            match block {
                Block::Table(_, rows) => rows.iter().for_each(|row| put(&row.name, &row.amount, &row.detail)),
                Block::Pours(pours) => {
                    pours.lines.iter().for_each(|line| put(&line.name, &line.amount.to_string(), &line.beside()));
                }
                _ => {}
            }
        }
        csv
    }

    /// Its answer as it is read out; of one that shows time, nothing that changes with it.
    #[must_use]
    pub fn spoken(&self) -> String {
        let figures: Vec<String> = self.strip.figures.iter().map(ToString::to_string).collect();
        let words = [figures.join(" and "), self.strip.also.clone(), self.strip.below.clone()];
        words.into_iter().filter(|words| !words.is_empty()).collect::<Vec<_>>().join(". ")
    }

    /// Where one can go on from it, with what.
    #[must_use]
    pub fn links(&self) -> Vec<Carry> {
        let on_page =
            self.blocks.iter().filter_map(|block| if let Block::Carry(links) = block { Some(links) } else { None });
        let at_foot = self.foot.iter().chain(&self.head).filter_map(|button| match &button.act {
            Act::Go(href) => Some(Carry { label: button.label.clone(), href: href.clone() }),
            _ => None,
        });
        at_foot.chain(on_page.flatten().cloned()).collect()
    }

    /// Its buttons, wherever they stand.
    #[must_use]
    pub fn buttons(&self) -> Vec<Button> {
        let on_page = self.blocks.iter().flat_map(|block| match block {
            Block::Buttons(shown) => shown.clone(),
            Block::Timeline(events) => events.iter().flat_map(|event| event.buttons.clone()).collect(),
            Block::Doing(steps) => steps.iter().filter_map(|step| Some(step.wait.as_ref()?.button.clone())).collect(),
            _ => Vec::new(),
        });
        self.foot.iter().chain(&self.head).cloned().chain(on_page).collect()
    }

    /// How many rows its tables have.
    #[must_use]
    pub fn rows(&self) -> usize {
        let rows = |block: &Block| if let Block::Table(_, rows) = block { rows.len() } else { 0 };
        self.blocks.iter().map(rows).sum()
    }

    /// The field of this name.
    #[must_use]
    pub fn field(&self, name: &str) -> Option<&Field> {
        self.blocks.iter().find_map(|block| match block {
            Block::Field(field) if field.name == name => Some(field),
            _ => None,
        })
    }
}
