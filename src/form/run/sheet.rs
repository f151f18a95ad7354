//! A run as the steps it comes to, each with its amounts and the time it must start.

use super::spec;
use crate::book::{Part, Run, Tick};
use crate::craft::run::{Progress, Task, earliest_ends, latest_starts};
use crate::form::Bench;
use crate::form::plan::{Plan, Step};
use crate::form::route::Place;
use crate::form::screen::tool;
use crate::form::{Texts, fill};
use crate::quantity::Amount;
use crate::text::{self, Kind};

/// A run worked out.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Sheet {
    /// Its steps, part by part.
    pub steps: Vec<Sheeted>,
    /// When it must be ready, in milliseconds since 1970.
    pub ready: Option<i64>,
    /// The time it was worked out for.
    pub now: i64,
    /// When it can be ready from now on.
    pub earliest: i64,
    /// Parts that come to no step: something in them cannot be read.
    pub unread: Vec<String>,
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
}

impl Sheeted {
    /// When its wait is over; none while it has not begun, or is ticked off.
    #[must_use]
    pub fn due(&self) -> Option<i64> {
        let started = i64::try_from(self.mark.started).ok()?;
        self.mark.is_running().then(|| started + i64::from(self.step.wait) * 1000)
    }

    /// Whether it is ticked off.
    #[must_use]
    pub const fn is_done(&self) -> bool {
        self.mark.done > 0
    }
}

/// What a part gives to the next.
struct Came {
    makes: &'static str,
    amount: Option<String>,
    brix: String,
    ph: String,
}

/// Works a run out.
#[must_use]
pub fn sheet(run: &Run, bench: &Bench) -> Sheet {
    let mut sheet = Sheet { ready: bench.clock.read(&run.ready), now: bench.clock.now(), ..Sheet::default() };
    let mut tasks: Vec<Task> = Vec::new();
    let mut last: Option<usize> = None;
    let mut ends: Vec<usize> = Vec::new();
    let mut came: Option<Came> = None;
    for part in &run.parts {
        let given = came.take().filter(|_| part.takes);
        let plan = planned(part, given.as_ref(), bench).filter(|plan| !plan.steps.is_empty());
        let Some(plan) = plan else {
            sheet.unread.push(part.tool.clone());
            continue;
        };
        let mut before: Vec<usize> = last.filter(|_| part.takes).into_iter().collect();
        if part.tool == spec::SPEC {
            // A drink is put together when all that goes into it is there.
            before.clone_from(&ends);
        }
        let mut next = Came { makes: plan.makes, amount: None, brix: String::new(), ph: String::new() };
        for step in plan.steps {
            let key = format!("{}/{}", part.key, step.key);
            let mark = run.marks.get(&key).cloned().unwrap_or_default();
            if let Some(gives) = step.gives {
                // What cannot be read is said beside its field, and does not stop what follows.
                let is_read = matches!(text::read_amount(&mark.got, &bench.reading(Kind::Either)), Ok(Some(_)));
                next.amount = Some(if is_read { mark.got.clone() } else { carried(gives, bench) });
                next.brix.clone_from(&mark.brix);
                next.ph.clone_from(&mark.ph);
            }
            tasks.push(Task { work: step.work, wait: step.wait, after: before });
            before = vec![tasks.len() - 1];
            sheet.steps.push(Sheeted { key, title: plan.title.clone(), step, mark, ..Sheeted::default() });
        }
        last = tasks.len().checked_sub(1);
        ends.extend(last);
        came = Some(next);
    }
    times(&mut sheet, &tasks, bench);
    sheet
}

/// When each step must start, and when all can be over.
fn times(sheet: &mut Sheet, tasks: &[Task], bench: &Bench) {
    let now = bench.clock.now().div_euclid(1000);
    if let Some(ready) = sheet.ready {
        let starts = latest_starts(tasks, ready.div_euclid(1000));
        for (step, start) in sheet.steps.iter_mut().zip(starts) {
            step.start = Some(start * 1000);
        }
    }
    let progress: Vec<Progress> = sheet
        .steps
        .iter()
        .map(|step| match step.due() {
            Some(due) => Progress::OverAt(due.div_euclid(1000)),
            None if step.is_done() => Progress::Done,
            None => Progress::Due,
        })
        .collect();
    for (at, task) in tasks.iter().enumerate() {
        sheet.steps[at].is_free = task.after.iter().all(|before| sheet.steps[*before].is_done());
    }
    sheet.earliest = earliest_ends(tasks, &progress, now).into_iter().max().unwrap_or(now) * 1000;
}

/// What a part comes to, with what came out of the one before where it takes that.
fn planned(part: &Part, came: Option<&Came>, bench: &Bench) -> Option<Plan> {
    if part.tool == spec::SPEC || part.tool == spec::ICE {
        return spec::plan(part, came.and_then(|came| Some((came.makes, came.amount.as_deref()?))), bench);
    }
    let route = Place::ALL.iter().flat_map(|place| place.tools()).find(|route| route.form_key() == part.tool)?;
    let mut form = tool(*route);
    let texts: &Texts = &part.texts;
    fill(form.as_mut(), texts);
    if let Some(came) = came {
        for (name, text) in
            [("came", came.amount.as_deref().unwrap_or_default()), ("came_brix", &came.brix), ("came_ph", &came.ph)]
        {
            if !text.trim().is_empty() {
                form.take(name, text);
            }
        }
    }
    form.plan(bench)
}

/// What a part comes to by its own amount.
pub(super) fn plan(part: &Part, bench: &Bench) -> Option<Plan> {
    planned(part, None, bench)
}

/// An amount as text for another tool.
fn carried(amount: Amount, bench: &Bench) -> String {
    match amount {
        Amount::Volume(volume) => bench.carried(volume),
        Amount::Mass(mass) => format!("{} g", text::editable(mass.g(), bench.decimal)),
        Amount::Count(count) => text::editable(count.value(), bench.decimal),
    }
}
