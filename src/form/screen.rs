//! A whole screen as data: the strip, and below it blocks in order. The app draws it and knows no tool.

mod block;

pub use block::{Block, Button, Do, Field, Input, Opt};

use super::answer::{Answer, Strip, Tone};
use super::fields::{Fields, Texts, empty_into, fill};
use super::plan::Plan;
use super::route::Route;
use super::{
    Bench, acid, backup, balance, card, clear, cordial, fruit, infuse, label, measure, milk_wash, own, run, scale,
    serves, shelf, specs, strength, syrup,
};

/// What the app draws.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Screen {
    /// The strip.
    pub strip: Strip,
    /// Whether the strip has room for two figures, by tool and not by answer, so that it never moves.
    pub tall: bool,
    /// The blocks in order. A field keeps its place while only texts change, so that drawing the
    /// screen again keeps its caret.
    pub blocks: Vec<Block>,
    /// The answer as text, to copy; empty when there is none.
    pub copy: String,
}

impl Screen {
    /// Its tables as CSV (RFC 4180), with a line that names the columns. What a spreadsheet would take for a formula
    /// has an apostrophe before it.
    #[must_use]
    pub fn csv(&self) -> String {
        let cell = |text: &str| {
            let text = text.replace('"', "\"\"");
            let guard = if text.starts_with(['=', '+', '-', '@', '\t']) { "'" } else { "" };
            format!("\"{guard}{text}\"")
        };
        let mut csv = "\"ingredient\",\"amount\",\"remark\"\r\n".to_owned();
        for block in &self.blocks {
            let Block::Table(_, rows) = block else { continue };
            for row in rows {
                csv.push_str(&format!("{},{},{}\r\n", cell(&row.name), cell(&row.amount), cell(&row.detail)));
            }
        }
        csv
    }

    /// How many rows its tables have.
    #[must_use]
    pub fn rows(&self) -> usize {
        let rows = |block: &Block| if let Block::Table(_, rows) = block { rows.len() } else { 0 };
        self.blocks.iter().map(rows).sum()
    }

    /// The field of this name.
    #[must_use]
    pub fn field(&self, name: &str) -> Option<&Field> {
        self.blocks.iter().find_map(|block| match block {
            Block::Field(field) if field.name == name => Some(field),
            _ => None,
        })
    }
}

/// A tool: a form that lays itself out and answers.
pub trait Tool: Fields {
    /// Whether its strip needs room for two figures.
    fn is_tall(&self) -> bool {
        false
    }

    /// What the button that clears says; empty for none.
    fn clear_label(&self) -> &'static str {
        "Clear"
    }

    /// The fields, with whatever stands between them.
    fn layout(&self, bench: &Bench) -> Vec<Block>;

    /// What its answer takes to make, step by step; none where there is nothing to make, or not yet.
    fn plan(&self, _bench: &Bench) -> Option<Plan> {
        None
    }

    /// What to show for what was typed.
    fn answer(&self, bench: &Bench) -> Answer;

    /// Empties the amounts and keeps the choices.
    fn clear(&mut self);

    /// Takes an amount carried over from another tool. Names it does not know are ignored.
    fn take(&mut self, name: &str, text: &str);
}

/// The tool of a route, as it starts.
pub(super) fn tool(route: Route) -> Box<dyn Tool> {
    match route {
        Route::Measure => Box::new(measure::MeasureForm::default()),
        Route::Scale => Box::new(scale::ScaleForm::default()),
        Route::Balance => Box::new(balance::BalanceForm::default()),
        Route::Strength => Box::new(strength::StrengthForm::default()),
        Route::Syrup => Box::new(syrup::SyrupForm::default()),
        Route::Fruit => Box::new(fruit::FruitForm::default()),
        Route::Clear => Box::new(clear::ClearForm::default()),
        Route::Cordial => Box::new(cordial::CordialForm::default()),
        Route::Infuse => Box::new(infuse::InfuseForm::default()),
        Route::Run => Box::new(run::RunForm::default()),
        Route::Label => Box::new(label::LabelForm::default()),
        Route::Acid => Box::new(acid::AcidForm::default()),
        Route::MilkWash => Box::new(milk_wash::MilkWashForm::default()),
        Route::Serves => Box::new(serves::ServesForm::default()),
        Route::Specs => Box::new(specs::SpecsForm::default()),
        Route::Card => Box::new(card::CardForm::default()),
        Route::Backup => Box::new(backup::BackupForm::default()),
        Route::Ingredients => Box::new(own::OwnForm::default()),
        Route::Shelf => Box::new(shelf::ShelfForm::default()),
    }
}

/// What the tool of a route makes, step by step.
#[must_use]
pub fn plan(route: Route, texts: &Texts, bench: &Bench) -> Option<Plan> {
    let mut form = tool(route);
    fill(form.as_mut(), texts);
    form.plan(bench)
}

/// What a screen's tool does with its form.
#[derive(Clone, Copy, Debug)]
pub enum Deed<'a> {
    /// Empties the amounts.
    Clear,
    /// Takes an amount carried over, by name.
    Take(&'a str, &'a str),
    /// Puts the second line in place of the first, where that stands.
    Rewrite(&'a str, &'a str),
    /// Puts texts in fields.
    Put(&'a [(&'static str, String)]),
}

/// The screen of a route for what is typed in its form.
#[must_use]
pub fn screen(route: Route, texts: &Texts, bench: &Bench) -> Screen {
    let mut form = tool(route);
    match route {
        Route::Card => fill(form.as_mut(), &card::with_record(texts, bench)),
        Route::Ingredients => fill(form.as_mut(), &own::with_record(texts, bench)),
        Route::Run => fill(form.as_mut(), &run::with_record(texts, bench)),
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
    let (tall, clear) = (form.is_tall(), if is_gone { "" } else { form.clear_label() });
    laid_out(answer, layout, &form.fields(), (tall, clear))
}

/// The texts of a route's form after a deed.
#[must_use]
pub fn after(route: Route, texts: &Texts, deed: Deed<'_>) -> Texts {
    let mut form = tool(route);
    fill(form.as_mut(), texts);
    match deed {
        Deed::Clear => form.clear(),
        Deed::Take(name, text) => form.take(name, text),
        Deed::Rewrite(typed, fixed) => {
            // In whichever field it stands: each tool calls its lines something of its own.
            let stands = |text: &str| text.lines().any(|line| line.trim() == typed);
            if let Some((_, lines)) = form.fields().into_iter().find(|(_, text)| stands(text)) {
                *lines = scale::rewritten(lines, typed, fixed);
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

/// Puts texts, problems and results in their places.
fn laid_out(
    answer: Answer,
    layout: Vec<Block>,
    fields: &[(&'static str, &mut String)],
    (tall, clear): (bool, &'static str),
) -> Screen {
    let copy = if answer.strip.tone == Tone::Answer { answer.as_text() } else { String::new() };
    let Answer {
        strip,
        mut problems,
        cells_title,
        cells,
        rows_title,
        rows,
        remarks,
        cautions,
        carry,
        buttons: own_buttons,
        label,
    } = answer;
    let (mut table, mut cells) = (Some(rows), Some(cells));
    let mut blocks = Vec::new();
    for block in layout {
        match block {
            Block::Table(_, rows) if rows.is_empty() => {
                blocks.push(Block::Table(rows_title, table.take().unwrap_or_default()));
            }
            Block::Buttons(shown) if shown.is_empty() => blocks.push(Block::Buttons(own_buttons.clone())),
            Block::Label(_) => blocks.push(Block::Label(label.clone())),
            Block::Cells(..) => blocks.push(Block::Cells(cells_title, cells.take().unwrap_or_default())),
            Block::Field(mut field) => {
                if let Some((_, text)) = fields.iter().find(|(name, _)| *name == field.name) {
                    field.text.clone_from(text);
                }
                field.problem =
                    problems.iter().position(|problem| problem.field == field.name).map(|at| problems.swap_remove(at));
                blocks.push(Block::Field(field));
            }
            block => blocks.push(block),
        }
    }
    // Empty ones hold their place too, so that what follows is not drawn from scratch when they fill.
    if let Some(rows) = table {
        blocks.push(Block::Table(rows_title, rows));
    }
    if let Some(cells) = cells {
        blocks.push(Block::Cells(cells_title, cells));
    }
    blocks.extend(cautions.into_iter().map(Block::Caution));
    blocks.push(Block::Actions(clear));
    blocks.extend(remarks.into_iter().map(Block::Remark));
    if !carry.is_empty() {
        blocks.push(Block::Carry(carry));
    }
    Screen { strip, tall, blocks, copy }
}
