//! A run sheet: the steps that a run comes to, each with the time it must start.

use std::rc::Rc;

use super::clock::Clock;
use super::plan::{Making, Need, Step};
use crate::book::{Own, Tick};
use crate::craft::run::{Progress, Task, earliest_ends, latest_starts};

/// A run worked out.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Sheet {
    /// Its steps, part by part.
    pub steps: Vec<Sheeted>,
    /// When it must be ready, in milliseconds since 1970.
    pub ready: Option<i64>,
    /// By how much it is ready before that, milliseconds.
    pub slack: i64,
    /// The time it was worked out for.
    pub now: i64,
    /// When it can be ready from now on.
    pub earliest: i64,
    /// Parts that come to no step, each with why.
    pub unread: Vec<String>,
    /// What is made.
    pub(crate) parts: Rc<[Made]>,
    /// What to mind.
    pub(crate) remarks: Rc<[String]>,
    /// What must be there before it begins.
    pub(crate) needs: Rc<[Need]>,
    /// What each step takes, and which it waits for.
    pub(crate) tasks: Rc<[Task]>,
}

/// Something that a run makes.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Made {
    /// The number of its part.
    pub(crate) key: u32,
    /// What it is called.
    pub(crate) title: String,
    /// What it is, and of what.
    pub(crate) making: Making,
    /// The parts that it can be made of, the nearest first.
    pub(crate) sources: Vec<u32>,
    /// That it is less than was asked, in words; empty where it is not.
    pub(crate) cut: String,
    /// It as an ingredient with what was measured of it; none where nothing was.
    pub(crate) prep: Option<Box<Own>>,
}

/// A step of a run.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Sheeted {
    /// "2/rest": the key of its part and its own.
    pub key: String,
    /// What its part makes.
    pub title: String,
    /// What to do.
    pub step: Step,
    /// What has been done.
    pub mark: Tick,
    /// When it must start at the latest, in milliseconds since 1970; none without a time to be ready.
    pub start: Option<i64>,
    /// Whether everything it waits for is over.
    pub is_free: bool,
    /// What guests must be told of that is named in it; empty for nothing.
    pub contains: String,
}

impl Sheeted {
    /// When its wait is over; none while it has not begun, or is ticked off.
    #[must_use]
    pub fn due(&self) -> Option<i64> {
        let started = i64::try_from(self.mark.started).ok()?;
        self.mark.is_running().then(|| started.saturating_add(i64::from(self.step.wait) * 1000))
    }

    /// The number of its part.
    #[must_use]
    pub fn part(&self) -> u32 {
        self.key.split('/').next().and_then(|key| key.parse().ok()).unwrap_or(u32::MAX)
    }

    /// Whether it should have begun.
    #[must_use]
    pub fn is_late(&self, now: i64) -> bool {
        !self.is_done() && !self.mark.is_running() && self.is_free && self.start.is_some_and(|start| start < now)
    }

    /// Whether it is ticked off.
    #[must_use]
    pub const fn is_done(&self) -> bool {
        self.mark.done > 0
    }

    /// Whether something of it is measured.
    #[must_use]
    pub const fn is_measured(&self) -> bool {
        self.step.gives.is_some() || self.step.is_read
    }
}

impl Sheet {
    /// The same at a time: when each step must start, and when all can be over.
    #[must_use]
    pub fn at(mut self, clock: &Clock) -> Sheet {
        self.now = clock.now();
        let now = self.now.div_euclid(1000);
        if let Some(ready) = self.ready {
            let starts = latest_starts(&self.tasks, (ready - self.slack).div_euclid(1000));
            for (step, start) in self.steps.iter_mut().zip(starts) {
                step.start = Some(start * 1000);
            }
        }
        let progress: Vec<Progress> = self
            .steps
            .iter()
            .map(|step| match step.due() {
                Some(due) => Progress::OverAt(due.div_euclid(1000)),
                None if step.is_done() => Progress::Done,
                None => Progress::Due,
            })
            .collect();
        for (at, task) in self.tasks.iter().enumerate() {
            self.steps[at].is_free = task.after.iter().all(|before| self.steps[*before].is_done());
        }
        self.earliest = earliest_ends(&self.tasks, &progress, now).into_iter().max().unwrap_or(now) * 1000;
        self
    }

    /// The next step to do: one whose wait is over, else of those that may be begun the one that must start first, else
    /// the one that is over first.
    #[must_use]
    pub fn next(&self) -> Option<&Sheeted> {
        let waiting = self.steps.iter().filter(|step| step.due().is_some()).min_by_key(|step| step.due());
        if let Some(over) = waiting.filter(|step| step.due().is_some_and(|due| due <= self.now)) {
            return Some(over);
        }
        let free = |step: &&Sheeted| !step.is_done() && step.is_free && !step.mark.is_running();
        self.steps.iter().filter(free).min_by_key(|step| step.start.unwrap_or(0)).or(waiting)
    }

    /// When all is to be ready, its slack before the time it must be: later where it cannot be ready then.
    #[must_use]
    pub fn all_ready(&self) -> Option<i64> {
        self.ready.map(|ready| (ready - self.slack).max(self.earliest))
    }

    /// Hands on, in seconds: in all, and what of it is still to do.
    #[must_use]
    pub fn hands_on(&self) -> (i64, i64) {
        let of = |steps: &mut dyn Iterator<Item = &Sheeted>| steps.map(|step| i64::from(step.step.work)).sum();
        let is_open = |step: &&Sheeted| !step.is_done() && !step.mark.is_running();
        (of(&mut self.steps.iter()), of(&mut self.steps.iter().filter(is_open)))
    }

    /// The step that is open: the one chosen by its key, or the next to do.
    #[must_use]
    pub fn open(&self, chosen: &str) -> Option<&Sheeted> {
        self.steps.iter().find(|step| step.key == chosen).or_else(|| self.next())
    }
}
