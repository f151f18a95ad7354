//! The whole page, and drawn again: what has not changed stays the very piece it was, and is passed over at a glance.

use super::node::Node;
use super::{block, frame, pad, strip};
use crate::desk::View;
use crate::screen::Block;

/// How many parts there are round the blocks.
pub const FRAME: usize = 6;

/// The page, with what it was drawn from.
pub struct Canvas {
    view: View,
    blocks: Vec<Part>,
}

/// A block as it is drawn.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Part {
    /// Whose it is.
    pub whose: Whose,
    /// Its pieces.
    pub nodes: Vec<Node>,
}

/// What a block is told from others by: one of another screen or of another field is another block, though it looks
/// alike, so that nothing that was opened, typed or focused in one is so in the next.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Whose {
    screen: &'static str,
    /// The name of a field, or what kind of block it is.
    name: &'static str,
    /// How many of that name stand before it.
    turn: usize,
}

impl Canvas {
    /// Draws a page.
    #[must_use]
    pub fn of(view: View) -> Canvas {
        let mut canvas = Canvas { view: View::default(), blocks: Vec::new() };
        canvas.draw(view);
        canvas
    }

    /// Draws it again for another view.
    pub fn draw(&mut self, view: View) {
        let stays = round_blocks(&self.view) == round_blocks(&view);
        let mut blocks: Vec<Part> = Vec::with_capacity(view.screen.blocks.len());
        for (at, shown) in view.screen.blocks.iter().enumerate() {
            let nodes = match self.blocks.get_mut(at) {
                Some(drawn) if stays && self.view.screen.blocks.get(at) == Some(shown) => {
                    std::mem::take(&mut drawn.nodes)
                }
                _ => block::block(&view, shown),
            };
            let name = name_of(shown);
            let turn = blocks.iter().filter(|before| before.whose.name == name).count();
            blocks.push(Part { whose: Whose { screen: view.title, name, turn }, nodes });
        }
        self.blocks = blocks;
        self.view = view;
    }

    /// The parts round the blocks: header and strip, the notice above the blocks, then what is due, the pad and the
    /// places. What is not there now keeps its place.
    #[must_use]
    pub fn frame(&self) -> [Vec<Node>; FRAME] {
        let view = &self.view;
        [
            vec![frame::header(view)],
            vec![strip::strip(&view.screen)],
            view.not_saved.iter().chain(&view.notice).map(frame::notice).collect(),
            view.due.iter().map(frame::due).collect(),
            view.pad.iter().map(pad::pad).collect(),
            vec![frame::places(view)],
        ]
    }

    /// The blocks of the screen, in order.
    #[must_use]
    pub fn blocks(&self) -> &[Part] {
        &self.blocks
    }

    /// The page from top to bottom.
    #[must_use]
    pub fn page(&self) -> Vec<Node> {
        let [header, strip, notice, due, pad, places] = self.frame();
        let blocks = self.blocks.iter().flat_map(|part| &part.nodes).cloned();
        let main = Node::Element(frame::page(notice.into_iter().chain(blocks).collect()));
        [header, strip, vec![main], due, pad, places].concat()
    }
}

/// What the blocks show besides themselves.
fn round_blocks(view: &View) -> impl PartialEq + '_ {
    let fields = (view.active, view.as_typed.is_some(), view.has_pad, view.bare_unit);
    let buttons = (&view.undo, view.screen.copy.is_empty(), &view.copied);
    (fields, buttons, view.is_installed, view.can_install, view.screen.leads.is_empty())
}

/// The name of a field; of another block, what kind it is.
fn name_of(block: &Block) -> &'static str {
    match block {
        Block::Field(field) => field.name,
        Block::Heading(_) => "<heading>",
        Block::Table(..) => "<table>",
        Block::Cells(..) => "<cells>",
        Block::Remark(_) => "<remark>",
        Block::Caution(_) => "<caution>",
        Block::Link(..) => "<link>",
        Block::Buttons(_) => "<buttons>",
        Block::Code(..) => "<code>",
        Block::Label(_) => "<label>",
        Block::Carry(_) => "<carry>",
        Block::Actions(_) => "<actions>",
        Block::InstallHint => "<hint>",
        Block::Serves(..) => "<serves>",
        Block::Pours(_) => "<pours>",
        Block::Doing(_) => "<doing>",
        Block::Printed(_) => "<printed>",
        Block::Nothing => "<nothing>",
    }
}
