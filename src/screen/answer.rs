//! What a tool shows: one strip, then everything quieter.

use super::act::Act;
use super::button::Button;
use super::drawing::Drawing;
use super::picture::Picture;
use super::plan::Plan;
use crate::book::{Own, Way};
pub(super) use crate::text::Figure;
use crate::text::Unread;

/// What the strip says.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Strip {
    /// The numbers to act on: one, at most two.
    pub figures: Vec<Figure>,
    /// What to do with it, or what else matters; without figures the answer itself, in words.
    pub also: String,
    /// A third line, small.
    pub below: String,
    /// A small drawing beside the words.
    pub picture: Option<Picture>,
    /// Whether this is an answer.
    pub tone: Tone,
}

/// Whether the strip holds an answer.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Tone {
    /// Not yet: something is still empty.
    #[default]
    Waiting,
    /// Something typed needs a look.
    Problem,
    /// An answer.
    Answer,
}

/// A problem with one field, in words, with texts that would settle it in a tap.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Problem {
    /// The field's name.
    pub field: String,
    /// What is wrong and what to do.
    pub words: String,
    /// Texts for the field, offered as buttons.
    pub fixes: Vec<Fix>,
}

/// A small labelled figure.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Cell {
    /// What it is.
    pub label: String,
    /// The figure.
    pub figure: Figure,
    /// What it means, in plain words on demand; empty where it needs none.
    pub about: &'static str,
}

/// A line of a table: name, what to do, and a detail; or a line kept as it was typed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Row {
    /// What it is, in the person's own words.
    pub name: String,
    /// The amount to pour or weigh.
    pub amount: String,
    /// The exact amount and the drift, or why the line was not read.
    pub detail: String,
    /// Whether it needs a look.
    pub marked: bool,
    /// A small drawing before its name.
    pub picture: Option<Picture>,
    /// The line as it was typed; empty where the name is that.
    pub typed: String,
    /// Rewritten lines, offered as buttons.
    pub fixes: Vec<Fix>,
    /// Where it leads; empty for nowhere.
    pub href: String,
    /// What a tap on all of it does, where that is no link.
    pub opens: Option<Act>,
    /// What can be done with it, offered as small buttons.
    pub buttons: Vec<Button>,
}

/// A whole text for a field or a line, offered as a button.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fix {
    /// What the button says.
    pub label: String,
    /// What it is called where the label alone would not be understood; empty where it would.
    pub spoken: String,
    /// The text it puts in place.
    pub text: String,
}

impl From<String> for Fix {
    fn from(text: String) -> Fix {
        Fix { label: text.clone(), spoken: String::new(), text }
    }
}

/// Texts that say themselves what they are.
pub(crate) fn fixes(texts: Vec<String>) -> Vec<Fix> {
    texts.into_iter().map(Fix::from).collect()
}

/// A link to the tool that comes next.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Carry {
    /// What the link says.
    pub label: String,
    /// A hash address with the amount in it.
    pub href: String,
}

/// The word for one, or for several.
pub(crate) const fn plural(count: usize, one: &'static str, several: &'static str) -> &'static str {
    if count == 1 { one } else { several }
}

/// A caution on a record that a later version wrote.
pub(crate) fn newer_caution(newer: Option<u32>) -> Option<String> {
    newer.map(|version| format!("A newer Meniscus (version {version}) wrote this: it can be read, not changed."))
}

/// Everything a tool shows.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Answer {
    /// The answer.
    pub strip: Strip,
    /// What a tap on the strip leads to, in words: the first row that needs a look; empty where none does.
    pub leads: String,
    /// What is wrong, by field.
    pub problems: Vec<Problem>,
    /// Heading of `cells`.
    pub cells_title: &'static str,
    /// Small figures.
    pub cells: Vec<Cell>,
    /// Heading of `rows`.
    pub rows_title: &'static str,
    /// A table.
    pub rows: Vec<Row>,
    /// Where the figures come from, and what was taken for granted: folded away.
    pub remarks: Vec<String>,
    /// What to know besides, in sight.
    pub notes: Vec<String>,
    /// Cautions, shown with a triangle.
    pub cautions: Vec<String>,
    /// Where to go next.
    pub carry: Vec<Carry>,
    /// Buttons, where the layout keeps a place for them.
    pub buttons: Vec<Button>,
    /// What is on the screen, by its own name; empty where it is called as the tool is.
    pub name: String,
    /// Words in the head, beside Undo and Copy: Change, Print, All.
    pub head: Vec<Button>,
    /// What there is to do with the answer, at the foot of the screen: at most four; the expected one first.
    pub foot: Vec<Button>,
    /// What Copy copies, nothing where it is empty; none for the strip and the table.
    pub text: Option<String>,
    /// A label, where the layout keeps a place for it.
    pub label: Option<Drawing>,
    /// Drawings under their headings, where the layout keeps a place for them.
    pub pictures: Vec<(String, Picture)>,
    /// What it takes to make, step by step; none where there is nothing to make.
    pub plan: Option<Plan>,
    /// The answer as a form of a spec: its lines, and what else of that it changes; none where it is none.
    pub form: Option<Box<Way>>,
    /// What is made, as an ingredient of the bar's own; none where it is none.
    pub prep: Option<Box<Own>>,
    /// What the answer can be kept as, behind the page.
    pub keeping: Vec<Button>,
}

impl Problem {
    pub(crate) fn new(field: impl Into<String>, words: impl std::fmt::Display) -> Problem {
        Problem { field: field.into(), words: words.to_string(), fixes: Vec::new() }
    }

    /// With the texts that would settle it.
    pub(crate) fn unread(field: impl Into<String>, unread: Unread) -> Problem {
        Problem { field: field.into(), words: unread.words, fixes: fixes(unread.fixes) }
    }
}

impl Answer {
    /// The answer as text to copy: all of the strip, then the table if there is one.
    #[must_use]
    pub fn as_text(&self) -> String {
        if let Some(text) = &self.text {
            return text.clone();
        }
        let figures: Vec<String> = self.strip.figures.iter().map(ToString::to_string).collect();
        let mut text = figures.join(" + ");
        for line in [&self.strip.also, &self.strip.below] {
            if !line.is_empty() {
                text.push_str(&format!("\n{line}"));
            }
        }
        for row in &self.rows {
            text.push_str(&match row.amount.as_str() {
                "" => format!("\n{}", row.name),
                amount => format!("\n{amount} {}", row.name),
            });
        }
        text
    }

    pub(crate) fn cell(&mut self, label: impl Into<String>, figure: Figure) {
        self.explained(label, figure, "");
    }

    /// A cell that explains itself when asked.
    pub(crate) fn explained(&mut self, label: impl Into<String>, figure: Figure, about: &'static str) {
        self.cells.push(Cell { label: label.into(), figure, about });
    }

    pub(crate) fn carry(&mut self, label: impl Into<String>, href: String) {
        self.carry.push(Carry { label: label.into(), href });
    }

    /// Says on the strip what is wrong or missing; call when there is no answer.
    pub(crate) fn without_answer(mut self, missing: &str) -> Answer {
        self.strip = match self.problems.first() {
            Some(problem) => Strip {
                figures: vec![Figure::new("?", "")],
                also: problem.words.clone(),
                tone: Tone::Problem,
                ..Strip::default()
            },
            None => Strip {
                figures: vec![Figure::new("–", "")],
                also: missing.to_owned(),
                tone: Tone::Waiting,
                ..Strip::default()
            },
        };
        self
    }
}
