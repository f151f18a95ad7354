//! The tools, by place. This file alone knows them all: it finds the tool of a route and has it draw its screen.

pub mod batch;
pub mod prep;
pub mod service;
pub mod shelf;
pub mod specs;

use crate::reading::label;
use crate::reading::rows::rewritten;
use crate::screen::plan::Plan;
use crate::screen::route::Route;
use crate::screen::{Bench, Block, Button, Deed, Do, Screen, Texts, Tone, Tool, empty_into, fill, laid_out};

/// The tool of a route, as it starts.
pub(super) fn tool(route: Route) -> Box<dyn Tool> {
    match route {
        Route::Measure => Box::new(service::measure::MeasureForm::default()),
        Route::Scale => Box::new(service::scale::ScaleForm::default()),
        Route::Balance => Box::new(service::balance::BalanceForm::default()),
        Route::Strength => Box::new(prep::strength::StrengthForm::default()),
        Route::Syrup => Box::new(prep::syrup::SyrupForm::default()),
        Route::Fruit => Box::new(prep::fruit::FruitForm::default()),
        Route::Clarify => Box::new(prep::clarify::ClarifyForm::default()),
        Route::Cordial => Box::new(prep::cordial::CordialForm::default()),
        Route::Infuse => Box::new(prep::infuse::InfuseForm::default()),
        Route::Run => Box::new(batch::run::RunForm::default()),
        Route::Label => Box::new(batch::label::LabelForm::default()),
        Route::Acid => Box::new(prep::acid::AcidForm::default()),
        Route::MilkWash => Box::new(prep::milk_wash::MilkWashForm::default()),
        Route::Serves => Box::new(batch::serves::ServesForm::default()),
        Route::Specs => Box::new(specs::all::SpecsForm::default()),
        Route::Card => Box::new(specs::card::CardForm::default()),
        Route::Backup => Box::new(specs::backup::BackupForm::default()),
        Route::Ingredients => Box::new(shelf::ingredients::OwnForm::default()),
        Route::Shelf => Box::new(shelf::settings::ShelfForm::default()),
    }
}

/// What the tool of a route makes, step by step.
#[must_use]
pub fn plan(route: Route, texts: &Texts, bench: &Bench) -> Option<Plan> {
    let mut form = tool(route);
    fill(form.as_mut(), texts);
    form.plan(bench)
}

/// The screen of a route for what is typed in its form.
#[must_use]
pub fn screen(route: Route, texts: &Texts, bench: &Bench) -> Screen {
    let mut form = tool(route);
    match route {
        Route::Card => fill(form.as_mut(), &specs::card::with_record(texts, bench)),
        Route::Ingredients => fill(form.as_mut(), &shelf::ingredients::with_record(texts, bench)),
        Route::Run => fill(form.as_mut(), &batch::run::with_record(texts, bench)),
        _ => fill(form.as_mut(), texts),
    }
    let (mut answer, mut layout) = (form.answer(bench), form.layout(bench));
    let plan = form.plan(bench).filter(|_| answer.strip.tone == Tone::Answer);
    if let Some(plan) = &plan {
        // The answer's own table first, then how it is made.
        if !layout.iter().any(|block| matches!(block, Block::Table(_, rows) if rows.is_empty())) {
            layout.push(Block::Table("", Vec::new()));
        }
        layout.push(Block::Table("Step by step", plan.rows()));
        layout.push(Block::Buttons(vec![Button::new("To the run sheet", Do::ToRun)]));
    }
    label::offer(route, plan.as_ref(), &mut answer);
    let is_gone = route == Route::Run && texts.get("id").is_none_or(|id| bench.book.run(id).is_none());
    let (tall, clear) = (form.is_tall(), if is_gone { "" } else { form.empty_label(bench) });
    laid_out(answer, layout, &form.fields(), (tall, clear))
}

/// The texts of a route's form after a deed.
#[must_use]
pub fn after(route: Route, texts: &Texts, deed: Deed<'_>) -> Texts {
    let mut form = tool(route);
    fill(form.as_mut(), texts);
    match deed {
        Deed::Clear => form.empty(),
        Deed::Take(name, text) => form.take(name, text),
        Deed::Rewrite(typed, fixed) => {
            // In whichever field it stands: each tool calls its lines something of its own.
            let stands = |text: &str| text.lines().any(|line| line.trim() == typed);
            if let Some((_, lines)) = form.fields().into_iter().find(|(_, text)| stands(text)) {
                *lines = rewritten(lines, typed, fixed);
            }
        }
        Deed::Put(puts) => {
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
