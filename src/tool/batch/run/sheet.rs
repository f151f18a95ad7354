//! A run as the steps it comes to, each with its amounts and the time it must start.

use std::rc::Rc;

use super::chain::sources;
use super::part::{Came, Planned, making, notes_stay, planned, tool_name};
use super::readings::{BRIX, KINDS, Noted, check, idle, of_mark};
use super::remarks::remarks;
use crate::book::{Entry, Part, Run, allergens_in};
use crate::craft::run::{Task, USUAL_SLACK};
use crate::quantity::{Amount, Density};
use crate::reading::label::declared;
use crate::reading::rows::carried;
use crate::screen::Bench;
use crate::screen::plan::{CHILL, Makes, Making, Need, Plan};
use crate::screen::sheet::{Made, Sheet, Sheeted};
use crate::text::{self, Dimension};

/// Most minutes that a run is ready before its time: a week.
pub(super) const MOST_SLACK: f64 = 7.0 * 24.0 * 60.0;

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
    worked_out(run, None, bench).sheet.at(&bench.clock)
}

/// A run worked out, but for its times.
#[derive(Default)]
pub struct Worked {
    /// Its sheet.
    pub sheet: Sheet,
    parts: Vec<Rc<Known>>,
}

/// A part as it was worked out, and what it was given then.
struct Known {
    making: Making,
    given: Option<Came>,
    planned: Planned,
}

/// Works a run out, but for its times. What was worked out before, at the same bench, stays where nothing of a part has
/// changed: neither its texts nor what it is given nor what was noted at its steps.
#[must_use]
pub fn worked_out(run: &Run, before: Option<(&Run, &Worked)>, bench: &Bench) -> Worked {
    #[cfg(test)]
    super::tests::WORKED_OUT.with(|count| count.set(count.get() + 1));
    let mut sheet = Sheet { ready: bench.clock.read(&run.ready), slack: slack(&run.slack, bench), ..Sheet::default() };
    let (mut outs, mut tasks): (Vec<Out>, Vec<Task>) = Default::default();
    let (mut noted, mut said): (Vec<Noted>, Vec<String>) = Default::default();
    let known = |part: &Part| {
        let (was, worked) = before?;
        let at = was
            .parts
            .iter()
            .position(|there| there.key == part.key && there.tool == part.tool && there.texts == part.texts)?;
        worked.parts.get(at).map(|known| (was, known))
    };
    let makings: Vec<Making> = run
        .parts
        .iter()
        .map(|part| known(part).map_or_else(|| making(part, bench), |(_, known)| known.making.clone()))
        .collect();
    let mut worked: Vec<Rc<Known>> = Vec::new();
    let (mut parts, mut needs): (Vec<Made>, Vec<Need>) = Default::default();
    for (at, (part, making)) in run.parts.iter().zip(&makings).enumerate() {
        let source = outs.iter().find(|out| Some(out.key) == part.from);
        let given = source.map(|out| &out.came);
        let stays = known(part).filter(|(was, known)| known.given.as_ref() == given && notes_stay(was, run, part));
        let now = match stays {
            Some((_, known)) => Rc::clone(known),
            None => {
                let planned = planned(run, part, given, bench);
                Rc::new(Known { making: making.clone(), given: given.cloned(), planned })
            }
        };
        worked.push(Rc::clone(&now));
        let Planned { plan, taken, prep } = &now.planned;
        let counts = |name: String| taken.contains(&name);
        for (kind, (_, which)) in given.iter().flat_map(|given| KINDS.iter().zip(&given.reads)) {
            if let Some(which) = which.filter(|_| counts(format!("came_{}", kind.field))) {
                noted[which].counts = true;
            }
        }
        let mut made =
            Made { key: part.key, making: making.clone(), sources: sources(run, at, &makings), ..Made::default() };
        let plan = match plan {
            Ok(plan) => plan,
            Err(why) => {
                sheet.unread.push(why.clone());
                parts.push(Made { title: tool_name(&part.tool).to_owned(), ..made });
                continue;
            }
        };
        made.title.clone_from(&plan.title);
        if let Some(cut) = &plan.cut {
            made.cut = cut.words(given.is_some_and(|given| given.is_measured));
        }
        // A drink is put together when all that goes into it is there, its ice too unless it is kept cold in a bottle
        // first; anything else waits for what it takes.
        let is_kept = plan.steps.iter().any(|step| step.key == CHILL);
        let goes_in = |out: &&Out| !is_kept || out.came.makes != Makes::Ice.word();
        let mut before: Vec<usize> = match making.makes {
            Makes::Drink => outs.iter().filter(goes_in).map(|out| out.last).collect(),
            Makes::WashedDrink => {
                let is_juice_of_it = |out: &Out| making.juices.contains(&out.came.of.as_str());
                let goes_in = |out: &&Out| Some(out.key) == part.from || is_juice_of_it(out);
                outs.iter().filter(goes_in).map(|out| out.last).collect()
            }
            _ => source.iter().map(|out| out.last).collect(),
        };
        let mut came = came(making, given, plan, bench);
        said.extend(plan.notes.iter().cloned());
        // What the part before gives is made here.
        let is_needed = |need: &Need| !(need.amount.is_none() || need.is_given && source.is_some());
        plan.needs.iter().filter(|need| is_needed(need)).for_each(|need| add(need.clone(), &mut needs));
        for step in plan.steps.iter().cloned() {
            let key = format!("{}/{}", part.key, step.key);
            let mark = run.marks.get(&key).cloned().unwrap_or_default();
            if let Some(gives) = step.gives {
                let got = got(&mark.got, plan.density, bench);
                if got.is_none() && !mark.got.trim().is_empty() {
                    said.push(format!(
                        "“{}”, noted at “{}”, is no amount: what follows goes by what should come out.",
                        mark.got.trim(),
                        step.words
                    ));
                }
                came.is_measured = got.is_some();
                came.amount = Some(got.unwrap_or_else(|| carried(gives, bench)));
            }
            for (at, text) in of_mark(&mark).into_iter().enumerate().filter(|(_, text)| !text.is_empty()) {
                match check(&KINDS[at], text, &step.words, bench) {
                    Ok(()) => {
                        came.reads[at] = (text.to_owned(), Some(noted.len()));
                        noted.push(Noted::new(part.key, at, counts(format!("{}_{}", KINDS[at].field, step.key))));
                    }
                    Err(why) => said.push(why),
                }
            }
            tasks.push(Task { work: step.work, wait: step.wait, after: before });
            before = vec![tasks.len() - 1];
            let contains = declared(allergens_in(&step.words));
            sheet.steps.push(Sheeted { key, title: plan.title.clone(), step, mark, contains, ..Sheeted::default() });
        }
        // What was measured is the ingredient's own.
        made.prep = prep.clone().filter(|_| came.is_measured || !came.reads[BRIX].0.is_empty()).map(|mut prep| {
            prep.brix.clone_from(&came.reads[BRIX].0);
            prep.gives = came.amount.clone().filter(|_| came.is_measured).unwrap_or(prep.gives);
            prep
        });
        outs.push(Out { key: part.key, came, last: tasks.len() - 1 });
        parts.push(made);
    }
    said.extend(idle(run, &parts, &noted));
    said.extend(remarks(run, &makings, bench));
    let sheet = Sheet { parts: parts.into(), remarks: said.into(), needs: needs.into(), tasks: tasks.into(), ..sheet };
    Worked { sheet, parts: worked }
}

/// Adds what must be there to what must be there already.
fn add(need: Need, needs: &mut Vec<Need>) {
    let there = needs.iter_mut().find(|there| there.what == need.what);
    let sum = there.and_then(|there| Some((there.amount.and(need.amount)?, there)));
    match sum {
        Some((sum, there)) => there.amount = sum,
        None => needs.push(need),
    }
}

/// By how much a run is to be ready before its time, milliseconds: as typed in minutes, or the usual.
fn slack(typed: &str, bench: &Bench) -> i64 {
    let minutes = text::read_number(typed, bench.decimal).ok().flatten();
    #[allow(clippy::cast_possible_truncation)]
    minutes
        .filter(|minutes| (0.0..=MOST_SLACK).contains(minutes))
        .map_or(i64::from(USUAL_SLACK) * 1000, |minutes| (minutes * 60_000.0) as i64)
}

/// What a part gives before anything of it is measured: what is known of its juice goes on, unless it is thinned.
fn came(making: &Making, given: Option<&Came>, plan: &Plan, bench: &Bench) -> Came {
    let mut came = Came { makes: making.makes.word(), of: making.of.clone(), ..Came::default() };
    if let Some(juice) = &plan.juice {
        let number = |value: f64| text::editable(value, bench.decimal);
        came.reads[0].0 = juice.reads().map_or(String::new(), |reads| number(reads.degrees()));
        came.acid = juice.titratable_acidity().map_or(String::new(), |acid| number(acid.g_per_l()));
        came.holds = text::whole_figures(juice, bench.decimal);
    } else if let Some(given) = given.filter(|_| making.makes == Makes::ClearJuice) {
        let [brix, ph, _] = &given.reads;
        came.reads = [brix.clone(), ph.clone(), Default::default()];
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
