//! A part of a run: a prep, with what was typed in its tool, or a form of a spec, or its ice.

use super::spec;
use crate::book::Part;
use crate::screen::plan::{Making, Plan};
use crate::screen::route::Route;
use crate::screen::{Bench, Tool, fill};
use crate::tool::prep;

/// What a part gives to another.
#[derive(Clone, Default)]
pub(super) struct Came {
    /// What it is, as a line of a spec may call it.
    pub(super) makes: &'static str,
    /// How much, as text.
    pub(super) amount: Option<String>,
    /// What it reads, °Bx.
    pub(super) brix: String,
    /// What it titrates, g/l.
    pub(super) acid: String,
    /// All that is in it, as figures.
    pub(super) holds: String,
    /// Its pH.
    pub(super) ph: String,
}

fn route_of(part: &Part) -> Option<Route> {
    Route::ALL.iter().copied().find(|route| route.form_key() == part.tool)
}

/// The tool of a part, with what was typed in it; none for a form of a spec and its ice.
fn tool_of(part: &Part) -> Option<Box<dyn Tool>> {
    let mut form = prep::tool(route_of(part)?)?;
    fill(form.as_mut(), &part.texts);
    Some(form)
}

/// What the tool of a part is called.
pub(super) fn tool_name(key: &str) -> &'static str {
    Route::ALL.iter().find(|route| route.form_key() == key).map_or("The spec", |route| route.row().label)
}

/// What a part makes and of what, whatever its amounts are.
pub(super) fn making(part: &Part, bench: &Bench) -> Making {
    match tool_of(part) {
        Some(form) => form.making(bench),
        None => spec::making(part, bench),
    }
}

/// What a part comes to, with what came out of the one before where it takes that.
pub(super) fn plan(part: &Part, came: Option<&Came>, bench: &Bench) -> Option<Plan> {
    if part.tool == spec::SPEC || part.tool == spec::ICE {
        return spec::plan(part, came.and_then(|came| Some((came.makes, came.amount.as_deref()?))), bench);
    }
    let mut form = tool_of(part)?;
    if let Some(came) = came {
        for (name, text) in [
            ("came", came.amount.as_deref().unwrap_or_default()),
            ("came_brix", &came.brix),
            ("came_acid", &came.acid),
            ("came_holds", &came.holds),
            ("came_ph", &came.ph),
        ] {
            if !text.trim().is_empty() {
                form.take(name, text);
            }
        }
    }
    form.answer(bench).plan
}
