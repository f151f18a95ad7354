//! A spec as it is read and made: its lines to pour, its steps to do; and what this tab has of it in hand.

use super::act::Act;
use super::button::Button;
use crate::text::Figure;

/// Most serves that are counted up here; more is what Scale is for.
pub(crate) const MOST_SERVES: u32 = 99;

/// The lines of a spec, to pour.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Pours {
    /// In the order written.
    pub lines: Vec<Pour>,
    /// For so many, 1 to [`MOST_SERVES`].
    pub serves: u32,
}

/// A line of a spec, to pour.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Pour {
    /// Of what; a line of words is all here.
    pub name: String,
    /// How much, for all serves; nothing in it for a line of words.
    pub amount: Figure,
    /// For one serve, in print.
    pub one: String,
    /// The same with what the bar pours with; empty where that is no help.
    pub beneath: String,
    /// What was decided in reading it, or why it is not counted.
    pub note: String,
    /// Whether it needs a look.
    pub marked: bool,
    /// Whether it is in; none where there is nothing to tick.
    pub tick: Option<bool>,
    /// The line as it was typed.
    pub typed: String,
    /// What a tap does; none ticks the line for this tab.
    pub act: Option<Act>,
}

impl Pour {
    /// What stands with its amount and its name: "48.00; need 955 ml".
    #[must_use]
    pub fn beside(&self) -> String {
        let joint = if self.beneath.is_empty() || self.note.is_empty() { "" } else { "; " };
        format!("{}{joint}{}", self.beneath, self.note)
    }
}

/// A step of a spec, to do.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Doing {
    /// What to do.
    pub words: String,
    /// What it waits for, where it names a time.
    pub wait: Option<Timing>,
}

/// A wait of a step, and what can be done about it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Timing {
    /// The time to go, while it runs: "0:24"; empty before it has begun.
    pub to_go: String,
    /// Whether it is over.
    pub is_over: bool,
    /// Begins it, or ends it.
    pub button: Button,
}

/// What a spec says on paper alone.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Printed {
    /// What it is called.
    pub name: String,
    /// The form, how many, the glass.
    pub how: String,
    /// What the strip says: the figure, and the line under it.
    pub strip: [String; 2],
    /// The day.
    pub day: String,
}

/// What this tab has in hand of a form of a spec. Nothing of it is kept.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct InHand {
    /// Which form: the id of the spec, "#" and its number.
    pub which: String,
    /// For how many; 0 for one.
    pub serves: u32,
    /// What is in: the number of the line, and the line as it was typed.
    pub ticked: Vec<(usize, String)>,
}

/// A wait that was begun at a step of a spec. Nothing of it is kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Begun {
    /// Which form: the id of the spec, "#" and its number.
    pub which: String,
    /// The step, as it was written.
    pub step: String,
    /// Whose it is, in words.
    pub name: String,
    /// When it was begun, in milliseconds since 1970.
    pub at: u64,
    /// How long it lasts, seconds.
    pub lasts: u32,
}

impl Begun {
    /// When it is over, in milliseconds since 1970.
    #[must_use]
    pub fn due(&self) -> i64 {
        i64::try_from(self.at).unwrap_or(i64::MAX).saturating_add(i64::from(self.lasts) * 1000)
    }
}

/// The key of a form of a spec.
#[must_use]
pub fn form_of(id: &str, at: usize) -> String {
    format!("{id}#{at}")
}
