//! The tools, by place. This file alone knows them all: it finds the tool of a route and has it draw its screen.

pub mod batch;
mod kept;
pub mod prep;
pub mod service;
pub mod shelf;
pub mod specs;

pub use kept::{made_by, typed, worked_out};

use crate::reading::from_spec::{self, FROM, SPEC};
use crate::reading::rows::rewritten;
use crate::screen::plan::Plan;
use crate::screen::route::{Place, Route};
use crate::screen::{Bench, Block, Screen, Texts, Tool, empty_into, fill, laid_out};

/// The tool of a route, as it starts.
fn tool(route: Route) -> Box<dyn Tool> {
    let found = match route.row().place {
        Place::Service => service::tool(route),
        Place::Prep => prep::tool(route),
        Place::Batch => batch::tool(route),
        Place::Specs => specs::tool(route),
        Place::Shelf => shelf::tool(route),
    };
    // A test holds that each place knows its own.
    found.unwrap_or_else(|| Box::new(service::measure::MeasureForm::default()))
}

/// A tool with these texts typed in it.
fn filled(route: Route, texts: &Texts) -> Box<dyn Tool> {
    let mut form = tool(route);
    fill(form.as_mut(), texts);
    form
}

/// Whether the tool of a route notes which spec it came from.
fn takes_spec(route: Route) -> bool {
    tool(route).fields().into_iter().any(|(name, _)| name == FROM)
}

/// What the tool of a route makes, step by step.
#[must_use]
pub fn plan(route: Route, texts: &Texts, bench: &Bench) -> Option<Plan> {
    filled(route, texts).answer(bench).plan
}

/// The screen of a route for what is typed in its form.
#[must_use]
pub fn screen(route: Route, texts: &Texts, bench: &Bench) -> Screen {
    let mut form = filled(route, texts);
    let (layout, mut answer) = form.show(bench);
    kept::keeping(route, form.as_mut(), &mut answer, bench);
    // The spec that it came from, or is.
    let from = match route {
        Route::Card => {
            let (id, at) = (texts.get("id"), texts.get("at"));
            id.map_or_else(String::new, |id| format!("{id}/{}", at.map_or("0", |at| at)))
        }
        _ => {
            form.fields().into_iter().find(|(name, _)| *name == FROM).map_or_else(String::new, |(_, from)| from.clone())
        }
    };
    let shows =
        |block: &Block| matches!(block, Block::Sides(_)) || matches!(block, Block::Field(field) if field.name == FROM);
    let is_shown = layout.iter().any(shows);
    from_spec::keep(&from, (is_shown, route == Route::Card), &mut answer, bench, &takes_spec);
    let (tall, label) = (form.is_tall(), form.empty_label(bench));
    laid_out(answer, layout, &form.fields(), (tall, label))
}

/// A change to what is typed in a tool.
#[derive(Clone, Copy, Debug)]
pub enum Change<'a> {
    /// Empties the amounts.
    Empty,
    /// Takes an amount carried over, by name.
    Take(&'a str, &'a str),
    /// Puts the second line in place of the first, where that stands.
    Rewrite(&'a str, &'a str),
    /// Puts texts in fields.
    Put(&'a [(&'static str, String)]),
}

/// The texts of a route's form after a change.
#[must_use]
pub fn after(route: Route, texts: &Texts, change: Change<'_>) -> Texts {
    let mut form = filled(route, texts);
    match change {
        Change::Empty => form.empty(),
        Change::Take(name, text) => {
            form.take(name, text);
            // Other lines are of no spec until it is said of which.
            let from = if name == SPEC { "" } else { text };
            if let Some((_, field)) =
                form.fields().into_iter().find(|(field, _)| *field == FROM && matches!(name, FROM | SPEC))
            {
                from.clone_into(field);
            }
        }
        Change::Rewrite(typed, fixed) => {
            // In whichever field it stands: each tool calls its lines something of its own.
            let stands = |text: &str| text.lines().any(|line| line.trim() == typed);
            if let Some((_, lines)) = form.fields().into_iter().find(|(_, text)| stands(text)) {
                *lines = rewritten(lines, typed, fixed);
            }
        }
        Change::Put(puts) => {
            for (name, text) in puts {
                if let Some((_, field)) = form.fields().into_iter().find(|(field, _)| field == name) {
                    field.clone_from(text);
                }
            }
        }
    }
    // What this form does not know stays as it was: another version or screen may.
    let mut after = texts.clone();
    empty_into(form.as_mut(), &mut after);
    after
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_screen_has_the_tool_of_its_place() {
        let places = [service::tool, prep::tool, batch::tool, specs::tool, shelf::tool];
        for route in Route::ALL {
            let who: Vec<bool> = places.iter().map(|tool| tool(*route).is_some()).collect();
            let mine: Vec<bool> = Place::ALL.iter().map(|place| *place == route.row().place).collect();
            assert_eq!(who, mine, "{route:?}");
        }
    }
}
