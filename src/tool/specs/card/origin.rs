//! What a form was made from, and what was made from it: said where they are out of step.

use super::form_name;
use crate::book::Card;
use crate::reading::differ;
use crate::reading::origin::{is_out_of_step, out_of_step, source};
use crate::screen::route::Route;
use crate::screen::{Act, Bench, Block, Button, Carry};

/// What stands above a form that is read.
pub(super) fn said(id: &str, card: &Card, at: usize, bench: &Bench) -> Vec<Block> {
    let mut blocks = Vec::new();
    let Some(way) = card.ways.get(at) else { return blocks };
    let from = &way.from;
    if is_out_of_step(from, bench) {
        match source(from, bench) {
            None => blocks.push(Block::Caution("What this form was made from is gone. It stays as it is.".into())),
            Some(form) => {
                let name = match form.parts() {
                    (entry, at) if entry.id == id => form_name(card, at),
                    _ => form.name(),
                };
                let words = format!("Made from “{name}”, whose lines have changed since.");
                let mut buttons = vec![Button::new("Leave it as it is", Act::LeaveForm)];
                if !from.tool.is_empty() {
                    buttons.insert(0, Button::new("Work it out anew", Act::WorkOut));
                }
                let changed = differ::rows(&from.lines, form.lines(), ("left out", "added"), bench);
                blocks.push(Block::Caution(words));
                // An empty table would take that of the answer.
                if !changed.is_empty() {
                    blocks.push(Block::Table("", changed));
                }
                blocks.push(Block::Buttons(buttons));
            }
        }
    }
    let others = out_of_step(id, card, at, bench);
    if !others.is_empty() {
        let link = |at: &usize| Carry {
            label: form_name(card, *at),
            href: format!("{}&at={at}", Route::Card.href_with("id", id)),
        };
        blocks.push(Block::Caution("Made from this form before it changed, so out of step:".into()));
        blocks.push(Block::Carry(others.iter().map(link).collect()));
    }
    blocks
}
