//! A run as the steps it comes to, each with its amounts and the time it must start.

use std::rc::Rc;

use super::chain::{makings, sources};
use super::part::{Came, plan, tool_name};
use super::remarks::remarks;
use crate::book::{Entry, Run};
use crate::craft::run::Task;
use crate::quantity::{Amount, Density};
use crate::screen::Bench;
use crate::screen::plan::{Makes, Plan};
use crate::screen::sheet::{Made, Sheet, Sheeted};
use crate::text::{self, Dimension};

/// Most that a juice reads, °Bx, and most that is a pH: what goes on to the next prep.
const MOST_BRIX: f64 = 60.0;
const MOST_PH: f64 = 9.0;

/// A part worked out: what it gives, and its last step.
struct Out {
    key: u32,
    came: Came,
    last: usize,
}

/// The sheet of a run at the time it is: as the bench has worked it out already, or worked out now.
#[must_use]
pub fn sheet_of(entry: &Entry<Run>, bench: &Bench) -> Rc<Sheet> {
    let known = bench.sheets.iter().find(|(id, _)| *id == entry.id);
    known.map_or_else(|| Rc::new(sheet(&entry.value, bench)), |(_, sheet)| Rc::clone(sheet))
}

/// Works a run out.
#[must_use]
pub fn sheet(run: &Run, bench: &Bench) -> Sheet {
    worked_out(run, bench).at(&bench.clock)
}

/// Works a run out, but for its times.
#[must_use]
pub fn worked_out(run: &Run, bench: &Bench) -> Sheet {
    #[cfg(test)]
    super::tests::WORKED_OUT.with(|count| count.set(count.get() + 1));
    let mut sheet = Sheet { ready: bench.clock.read(&run.ready), ..Sheet::default() };
    let (mut outs, mut tasks): (Vec<Out>, Vec<Task>) = Default::default();
    let makings = makings(run, bench);
    let mut parts = Vec::new();
    for (at, (part, making)) in run.parts.iter().zip(&makings).enumerate() {
        let source = outs.iter().find(|out| Some(out.key) == part.from);
        let given = source.map(|out| out.came.clone());
        let plan = plan(part, given.as_ref(), bench).filter(|plan| !plan.steps.is_empty());
        let title = plan.as_ref().map_or_else(|| tool_name(&part.tool).to_owned(), |plan| plan.title.clone());
        let sources = sources(run, at, &makings);
        parts.push(Made { key: part.key, title, making: making.clone(), sources });
        let Some(plan) = plan else {
            sheet.unread.push(part.tool.clone());
            continue;
        };
        // A drink is put together when all that goes into it is there; anything else waits for what it takes.
        let mut before: Vec<usize> = match making.makes {
            Makes::Drink => outs.iter().map(|out| out.last).collect(),
            _ => source.iter().map(|out| out.last).collect(),
        };
        let mut came = came(making.makes, given.as_ref(), &plan, bench);
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
    let remarks = remarks(run, &makings, bench);
    Sheet { parts: parts.into(), remarks: remarks.into(), tasks: tasks.into(), ..sheet }
}

/// What a part gives before anything of it is measured: what is known of its juice goes on, unless it is thinned.
fn came(makes: Makes, given: Option<&Came>, plan: &Plan, bench: &Bench) -> Came {
    let mut came = Came { makes: makes.word(), ..Came::default() };
    if let Some(juice) = &plan.juice {
        came.brix = juice.reads().map_or(String::new(), |reads| text::editable(reads.degrees(), bench.decimal));
        came.acid =
            juice.titratable_acidity().map_or(String::new(), |acid| text::editable(acid.g_per_l(), bench.decimal));
        came.holds = text::whole_figures(juice, bench.decimal);
    } else if let Some(given) = given.filter(|_| makes == Makes::ClearJuice) {
        (came.brix, came.ph) = (given.brix.clone(), given.ph.clone());
    }
    came
}

/// What came out, by volume; none where it cannot be read: that is said beside its field, and does not stop what follows.
fn got(typed: &str, density: Option<Density>, bench: &Bench) -> Option<String> {
    match text::read_amount(typed, &bench.reading(Dimension::Either)) {
        Ok(Some(Amount::Mass(mass))) => Some(bench.carried(mass.volume_at(density.unwrap_or(Density::WATER)))),
        Ok(Some(Amount::Volume(volume))) => Some(bench.carried(volume)),
        _ => None,
    }
}

/// An amount as text for another tool.
fn carried(amount: Amount, bench: &Bench) -> String {
    match amount {
        Amount::Volume(volume) => bench.carried(volume),
        Amount::Mass(mass) => format!("{} g", text::editable(mass.g(), bench.decimal)),
        Amount::Count(count) => text::editable(count.value(), bench.decimal),
    }
}
