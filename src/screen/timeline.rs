//! Steps on one line of time: what was done, what is done now, what comes.

use super::act::Act;
use super::button::Button;

/// A step on the line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Event {
    /// When, on the clock on the wall; empty where no time is set.
    pub at: String,
    /// Its turn, from 1.
    pub number: usize,
    /// What to do.
    pub words: String,
    /// What it takes, should give and gave; empty for nothing.
    pub detail: String,
    /// Where on paper what came out is written: "got ____ ml, ____ °Bx"; empty where nothing is measured.
    pub blank: &'static str,
    /// What to mind, said after a triangle; empty for nothing.
    pub mind: String,
    /// Whether it is done.
    pub is_done: bool,
    /// Whether it is the one that strip and buttons speak of.
    pub is_current: bool,
    /// A tap on it: it becomes the current one.
    pub choose: Act,
    /// Its wait, while that runs and it is the current one.
    pub wait: Option<Wait>,
    /// What there is to do with it while it is the current one; the expected one last, under the thumb.
    pub buttons: Vec<Button>,
}

/// A wait that runs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wait {
    /// How much of it is over, 0 to 100.
    pub percent: u8,
    /// "45 min, ends 14:35": words that do not change with each second.
    pub words: String,
}

impl Event {
    /// It as a line of text: "13:05 Press 10 pears, expect 900 ml".
    #[must_use]
    pub fn as_text(&self) -> String {
        let said = [self.at.as_str(), &self.words].join(" ");
        let said = [said.trim_start(), &self.detail, &self.mind];
        said.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", ")
    }
}
