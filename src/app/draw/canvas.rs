//! The whole page, and drawn again: what has not changed stays the very piece it was, and is passed over at a glance.

use super::node::Node;
use super::{block, frame, pad, strip};
use crate::desk::View;

/// The page, with what it was drawn from.
pub struct Canvas {
    view: View,
    /// The pieces of each block, in the order of the blocks.
    blocks: Vec<Vec<Node>>,
}

impl Canvas {
    /// Draws a page.
    #[must_use]
    pub fn of(view: View) -> Canvas {
        let blocks = view.screen.blocks.iter().map(|shown| block::block(&view, shown)).collect();
        Canvas { view, blocks }
    }

    /// Draws it again for another view.
    pub fn draw(&mut self, view: View) {
        let stays = round_blocks(&self.view) == round_blocks(&view);
        let one = |(at, shown)| match self.blocks.get_mut(at) {
            Some(drawn) if stays && self.view.screen.blocks.get(at) == Some(shown) => std::mem::take(drawn),
            _ => block::block(&view, shown),
        };
        self.blocks = view.screen.blocks.iter().enumerate().map(one).collect();
        self.view = view;
    }

    /// The page, part by part.
    #[must_use]
    pub fn parts(&self) -> Vec<Node> {
        let view = &self.view;
        let blocks = self.blocks.iter().flatten().cloned();
        let mut parts = vec![frame::header(view), strip::strip(&view.screen), frame::page(view, blocks)];
        parts.extend(view.due.iter().map(frame::due));
        parts.extend(view.pad.iter().map(pad::pad));
        parts.push(frame::places(view));
        parts
    }
}

/// What the blocks show besides themselves.
fn round_blocks(view: &View) -> impl PartialEq + '_ {
    let fields = (view.active, view.has_pad, view.bare_unit);
    let buttons = (&view.undo, view.screen.copy.is_empty(), &view.copied);
    (fields, buttons, view.is_installed, view.can_install)
}
