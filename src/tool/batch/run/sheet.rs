//! A run as the steps it comes to, each with its amounts and the time it must start.

use super::spec;
use crate::book::{Part, Run, Tick};
use crate::craft::run::{Progress, Task, earliest_ends, latest_starts};
use crate::quantity::{Amount, Density};
use crate::screen::plan::{Plan, Step};
use crate::screen::route::{Place, Route};
use crate::screen::{Bench, Texts, fill};
use crate::text::{self, Kind};
use crate::tool::tool;

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
        self.mark.is_running().then(|| started.saturating_add(i64::from(self.step.wait) * 1000))
    }

    /// Whether it is ticked off.
    #[must_use]
    pub const fn is_done(&self) -> bool {
        self.mark.done > 0
    }
}

/// Most that a juice reads, °Bx, and most that is a pH: what goes on to the next prep.
const MOST_BRIX: f64 = 60.0;
const MOST_PH: f64 = 9.0;

/// What a part gives to another.
#[derive(Clone)]
pub(super) struct Came {
    /// What it is, as a line of a spec may call it.
    pub(super) makes: &'static str,
    /// How much, as text.
    pub(super) amount: Option<String>,
    brix: String,
    acid: String,
    ph: String,
}

/// A part worked out: what it gives, and its last step.
struct Out {
    key: u32,
    came: Came,
    last: usize,
}

/// Works a run out.
#[must_use]
pub fn sheet(run: &Run, bench: &Bench) -> Sheet {
    let mut sheet = Sheet { ready: bench.clock.read(&run.ready), now: bench.clock.now(), ..Sheet::default() };
    let mut tasks: Vec<Task> = Vec::new();
    let mut outs: Vec<Out> = Vec::new();
    for part in &run.parts {
        let source = outs.iter().find(|out| Some(out.key) == part.from);
        let given = source.map(|out| out.came.clone());
        let Some(plan) = planned(part, given.as_ref(), bench).filter(|plan| !plan.steps.is_empty()) else {
            sheet.unread.push(part.tool.clone());
            continue;
        };
        // A drink is put together when all that goes into it is there; anything else waits for what it takes.
        let mut before: Vec<usize> = match part.tool == spec::SPEC {
            true => outs.iter().map(|out| out.last).collect(),
            false => source.iter().map(|out| out.last).collect(),
        };
        let mut came = came(part, given.as_ref(), &plan, bench);
        for step in plan.steps {
            let key = format!("{}/{}", part.key, step.key);
            let mark = run.marks.get(&key).cloned().unwrap_or_default();
            if let Some(gives) = step.gives {
                came.amount = Some(got(&mark.got, plan.density, bench).unwrap_or_else(|| carried(gives, bench)));
                for (field, measured, most) in
                    [(&mut came.brix, &mark.brix, MOST_BRIX), (&mut came.ph, &mark.ph, MOST_PH)]
                {
                    if matches!(text::read_number(measured, bench.decimal), Ok(Some(value)) if value <= most) {
                        field.clone_from(measured);
                    }
                }
            }
            tasks.push(Task { work: step.work, wait: step.wait, after: before });
            before = vec![tasks.len() - 1];
            sheet.steps.push(Sheeted { key, title: plan.title.clone(), step, mark, ..Sheeted::default() });
        }
        outs.push(Out { key: part.key, came, last: tasks.len() - 1 });
    }
    times(&mut sheet, &tasks, bench);
    sheet
}

/// What a part gives before anything of it is measured: what is known of its juice goes on, unless it is thinned.
fn came(part: &Part, given: Option<&Came>, plan: &Plan, bench: &Bench) -> Came {
    let mut came =
        Came { makes: plan.makes, amount: None, brix: String::new(), acid: String::new(), ph: String::new() };
    if let Some((brix, acid)) = plan.reads {
        (came.brix, came.acid) = (text::editable(brix, bench.decimal), text::editable(acid, bench.decimal));
    } else if let Some(given) = given.filter(|_| part.tool == Route::Clarify.form_key()) {
        (came.brix, came.ph) = (given.brix.clone(), given.ph.clone());
    }
    came
}

/// What came out, by volume; none where it cannot be read: that is said beside its field, and does not stop what follows.
fn got(typed: &str, density: Option<Density>, bench: &Bench) -> Option<String> {
    match text::read_amount(typed, &bench.reading(Kind::Either)) {
        Ok(Some(Amount::Mass(mass))) => Some(bench.carried(mass.volume_at(density.unwrap_or(Density::WATER)))),
        Ok(Some(Amount::Volume(volume))) => Some(bench.carried(volume)),
        _ => None,
    }
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
        for (name, text) in [
            ("came", came.amount.as_deref().unwrap_or_default()),
            ("came_brix", &came.brix),
            ("came_acid", &came.acid),
            ("came_ph", &came.ph),
        ] {
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
