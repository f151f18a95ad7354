//! Texts, problems and results put in their places.

use super::{Answer, Block, Screen, Tone};

/// Puts texts, problems and results in their places.
pub(crate) fn laid_out(
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
