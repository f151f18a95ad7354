//! Texts, problems and results put in their places.

use super::answer::{Answer, Cell, Row, Tone};
use super::clock::lasting;
use super::plan::{Plan, Step};
use super::{Act, Block, Button, Screen};

/// Buttons that have room at the foot, in one row on a phone; letters that have; those that the edges of a button take up.
const DOINGS: usize = 4;
const LETTERS: usize = 44;
const BETWEEN: usize = 3;

/// The steps of a plan, each with the time it is left to itself.
fn step_rows(plan: &Plan) -> Vec<Row> {
    let row = |step: &Step| Row {
        name: step.words.clone(),
        amount: if step.wait > 0 { lasting(i64::from(step.wait)) } else { String::new() },
        ..Row::default()
    };
    plan.steps.iter().map(row).collect()
}

/// Puts texts, problems and results in their places.
pub(crate) fn laid_out(
    answer: Answer,
    mut layout: Vec<Block>,
    fields: &[(&'static str, &mut String)],
    (tall, clear): (bool, &'static str),
) -> Screen {
    let mut copy = if answer.strip.tone == Tone::Answer { answer.as_text() } else { String::new() };
    for block in &layout {
        if let Block::Timeline(events) = block {
            events.iter().for_each(|event| copy.push_str(&format!("\n{}", event.as_text())));
        }
    }
    let Answer {
        strip,
        leads,
        mut problems,
        cells_title,
        cells,
        rows_title,
        rows,
        remarks,
        notes,
        cautions,
        carry,
        buttons: own_buttons,
        name,
        head,
        foot,
        text: _,
        label,
        mut pictures,
        plan,
        form: _,
        prep: _,
        keeping,
    } = answer;
    let mut foot = foot;
    if let Some(plan) = plan.filter(|_| strip.tone == Tone::Answer) {
        // The answer's own table first, then how it is made.
        if !layout.iter().any(|block| matches!(block, Block::Table(_, rows) if rows.is_empty())) {
            layout.push(Block::Table("", Vec::new()));
        }
        layout.push(Block::Table("Step by step", step_rows(&plan)));
        foot.push(Button::new("To the run sheet", Act::ToRun));
    }
    // What there is to do stands at the foot, as much as has room there.
    let mut carry = carry;
    let letters = |label: &str| label.chars().count() + BETWEEN;
    let mut room = LETTERS.saturating_sub(foot.iter().map(|button| letters(&button.label)).sum());
    while foot.len() < DOINGS && carry.first().is_some_and(|to| foot.is_empty() || letters(&to.label) <= room) {
        let to = carry.remove(0);
        room = room.saturating_sub(letters(&to.label));
        foot.push(Button::new(to.label, Act::Go(to.href)));
    }
    let about = |cell: &Cell| (!cell.about.is_empty()).then(|| (cell.label.clone(), cell.about.to_owned()));
    let sources = remarks.into_iter().map(|words| (String::new(), words));
    let sources: Vec<_> = cells.iter().filter_map(about).chain(sources).collect();
    let (mut table, mut cells) = (Some(rows), Some(cells));
    let mut blocks = Vec::new();
    for block in layout {
        match block {
            Block::Table(_, rows) if rows.is_empty() => {
                blocks.push(Block::Table(rows_title, table.take().unwrap_or_default()));
            }
            Block::Buttons(shown) if shown.is_empty() => blocks.push(Block::Buttons(own_buttons.clone())),
            Block::Label(_) => blocks.push(Block::Label(label.clone())),
            Block::Pictures(_) => blocks.push(Block::Pictures(std::mem::take(&mut pictures))),
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
    blocks.extend(notes.into_iter().map(Block::Remark));
    if !keeping.is_empty() {
        blocks.push(Block::Buttons(keeping));
    }
    if !carry.is_empty() {
        blocks.push(Block::Carry(carry));
    }
    blocks.push(Block::Sources(sources));
    blocks.push(Block::Actions(clear));
    Screen { strip, leads, tall, name, head, foot, blocks, copy }
}
