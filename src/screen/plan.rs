//! What a tool's answer takes to make, step by step: what a run sheet is put together from.

use crate::quantity::{Amount, Density};
use crate::screen::Row;
use crate::screen::clock::lasting;

/// Something to make.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Plan {
    /// What it is called: "Lime juice by enzyme".
    pub title: String,
    /// What comes out, as a line of a spec may call it: "cordial".
    pub makes: &'static str,
    /// Its steps, one after the other.
    pub steps: Vec<Step>,
    /// Grams to the millilitre of what comes out; none for about water's.
    pub density: Option<Density>,
    /// What it reads, °Bx, and its acid, g/l, where that is no more what its juice had.
    pub reads: Option<(f64, f64)>,
}

/// A title with its first letter large, where that is a plain one.
pub(crate) fn titled(mut title: String) -> String {
    if let Some(first) = title.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    title
}

impl Plan {
    /// Its steps, each with the time it is left to itself.
    pub(crate) fn rows(&self) -> Vec<Row> {
        let row = |step: &Step| Row {
            name: step.words.clone(),
            amount: if step.wait > 0 { lasting(i64::from(step.wait)) } else { String::new() },
            ..Row::default()
        };
        self.steps.iter().map(row).collect()
    }
}

/// A step.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Step {
    /// Its name within its plan; kept in saved runs, so it never changes.
    pub key: String,
    /// What to do, with its amounts.
    pub words: String,
    /// Hands on, seconds.
    pub work: u32,
    /// Left to itself, seconds.
    pub wait: u32,
    /// What should come out, where it is worth measuring.
    pub gives: Option<Amount>,
}

/// Seconds of a minute.
pub(crate) const MINUTE: u32 = 60;
/// Seconds of an hour.
pub(crate) const HOUR: u32 = 60 * MINUTE;

impl Step {
    /// A step with hands on for so many seconds.
    pub(crate) fn work(key: impl Into<String>, words: impl Into<String>, seconds: u32) -> Step {
        Step { key: key.into(), words: words.into(), work: seconds, ..Step::default() }
    }

    /// And then left to itself for so long.
    pub(crate) fn then_wait(mut self, seconds: u32) -> Step {
        self.wait = seconds;
        self
    }

    /// And so much comes out.
    pub(crate) fn giving(mut self, amount: Option<Amount>) -> Step {
        self.gives = amount;
        self
    }
}
