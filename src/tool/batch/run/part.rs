//! A part of a run: a prep, with what was typed in its tool, or a form of a spec, or its ice.

use super::readings::{KINDS, of_mark};
use super::spec;
use crate::book::{Own, Part, Run, Tick};
use crate::screen::plan::{Making, Plan};
use crate::screen::route::Route;
use crate::screen::{Bench, Tone, Tool, fill};
use crate::tool::batch::bottle_it::BottleItForm;
use crate::tool::prep;
use crate::tool::service::ice::IceForm;

/// What a part gives to another.
#[derive(Clone, Default, PartialEq)]
pub(super) struct Came {
    /// What it is, as a line of a spec may call it.
    pub(super) makes: &'static str,
    /// Key of the ingredient that it is.
    pub(super) of: String,
    /// How much, as text.
    pub(super) amount: Option<String>,
    /// Whether that was measured.
    pub(super) is_measured: bool,
    /// What it titrates, g/l.
    pub(super) acid: String,
    /// All that is in it, as figures.
    pub(super) holds: String,
    /// What it reads, in the order of [`KINDS`], and which of the readings that were noted each is.
    pub(super) reads: [(String, Option<usize>); KINDS.len()],
}

/// A part worked out.
pub(super) struct Planned {
    /// Its steps; in words why there are none.
    pub(super) plan: Result<Plan, String>,
    /// The readings that it was given and counts with, by name.
    pub(super) taken: Vec<String>,
    /// What it makes, as an ingredient; none where it is none.
    pub(super) prep: Option<Box<Own>>,
}

/// A text that nobody types: where it arrives, a tool counts with the reading that it is given by that name, which takes its
/// place.
const PROBE: &str = "\u{1}";

fn route_of(part: &Part) -> Option<Route> {
    Route::of_key(&part.tool)
}

/// The tool of a part, with what was typed in it; none for a form of a spec and its ice.
fn tool_of(part: &Part) -> Option<Box<dyn Tool>> {
    let mut form: Box<dyn Tool> = match route_of(part)? {
        Route::Ice => Box::new(IceForm::default()),
        Route::BottleIt => Box::new(BottleItForm::default()),
        route => prep::tool(route)?,
    };
    fill(form.as_mut(), &part.texts);
    Some(form)
}

/// What the tool of a part is called.
pub(super) fn tool_name(key: &str) -> &'static str {
    Route::of_key(key).map_or("The spec", |route| route.row().label)
}

/// What a part makes and of what, whatever its amounts are.
pub(super) fn making(part: &Part, bench: &Bench) -> Making {
    match tool_of(part) {
        Some(form) => form.making(bench),
        None => spec::making(part, bench),
    }
}

/// What a part comes to, with what came out of the one before and what was noted at its own steps, where it takes that.
pub(super) fn planned(run: &Run, part: &Part, came: Option<&Came>, bench: &Bench) -> Planned {
    let mut taken = Vec::new();
    if part.tool == spec::SPEC || part.tool == spec::ICE {
        let given = came.and_then(|came| Some((came.makes, came.amount.as_deref()?)));
        let plan = spec::plan(part, given, bench).ok_or_else(|| gone(part));
        return Planned { plan, taken, prep: None };
    }
    let Some(mut form) = tool_of(part) else { return Planned { plan: Err(gone(part)), taken, prep: None } };
    let mut give = |name: String, text: &str, is_reading: bool| {
        if text.trim().is_empty() {
            return;
        }
        if !is_reading {
            return form.take(&name, text);
        }
        form.take(&name, PROBE);
        let mut is_taken = false;
        for (_, field) in form.fields().into_iter().filter(|(_, field)| *field == PROBE) {
            text.clone_into(field);
            is_taken = true;
        }
        if is_taken {
            taken.push(name);
        }
    };
    if let Some(came) = came {
        give("came_of".into(), &came.of, false);
        give("came".into(), came.amount.as_deref().unwrap_or_default(), false);
        give("came_acid".into(), &came.acid, false);
        give("came_holds".into(), &came.holds, false);
        for (kind, (text, _)) in KINDS.iter().zip(&came.reads) {
            give(format!("came_{}", kind.field), text, true);
        }
    }
    for (step, mark) in marks_of(run, part) {
        give(format!("got_{step}"), &mark.got, false);
        for (kind, text) in KINDS.iter().zip(of_mark(mark)) {
            give(format!("{}_{step}", kind.field), text, true);
        }
    }
    let answer = form.answer(bench);
    let why = || match answer.strip.tone {
        // It is read, and makes nothing: it says why itself.
        Tone::Answer => format!("“{}” has no steps: {}.", tool_name(&part.tool), answer.strip.also),
        _ => gone(part),
    };
    let plan = answer.plan.clone().filter(|plan| !plan.steps.is_empty()).ok_or_else(why);
    Planned { plan, taken, prep: answer.prep }
}

/// What was noted at the steps of a part.
fn marks_of<'a>(run: &'a Run, part: &Part) -> impl Iterator<Item = (&'a str, &'a Tick)> {
    let key = part.key;
    run.marks.iter().filter_map(move |(step, mark)| {
        let (of, step) = step.split_once('/')?;
        (of.parse() == Ok(key)).then_some((step, mark))
    })
}

/// Whether the same was noted at the steps of a part in two states of a run: all that [`planned`] goes by there.
pub(super) fn notes_stay(was: &Run, run: &Run, part: &Part) -> bool {
    let noted = |run| marks_of(run, part).map(|(step, mark)| (step, &mark.got, of_mark(mark)));
    noted(was).eq(noted(run))
}

/// That a part cannot be read.
fn gone(part: &Part) -> String {
    format!(
        "“{}” can't be read any more, so it has no steps: open its tool, mend it, and add it again.",
        tool_name(&part.tool)
    )
}
