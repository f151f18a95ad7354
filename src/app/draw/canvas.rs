//! The whole page, and drawn again: what has not changed stays the very piece it was, and is passed over at a glance.

use super::node::Node;
use super::{block, frame, pad, strip};
use crate::desk::View;
use crate::screen::{Block, Input};

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

    /// The parts round the blocks: head and strip, then what needs saying, what there is to do, the pad and the places.
    /// What is not there now keeps its place.
    #[must_use]
    pub fn frame(&self) -> [Vec<Node>; FRAME] {
        let view = &self.view;
        [
            vec![frame::head(view)],
            vec![strip::strip(&view.screen)],
            frame::bars(view).into_iter().collect(),
            frame::foot(view).into_iter().collect(),
            view.pad.iter().map(|shown| pad::pad(shown, view.is_left)).collect(),
            vec![frame::places(view)],
        ]
    }

    /// The blocks of the screen, in order: those that ask, up to the last field, then those that answer, which stand
    /// beside them where there is room; an empty list to tick says that they begin there already. Where nothing is typed,
    /// and a tray at most asks, all stand in the first.
    #[must_use]
    pub fn columns(&self) -> [&[Part]; 2] {
        let shown = &self.view.screen.blocks;
        let is_field = |block: &Block| matches!(block, Block::Field(_));
        let is_typed =
            |block: &Block| matches!(block, Block::Field(field) if !matches!(field.input, Input::Chips { .. }));
        let begins = |block: &Block| matches!(block, Block::Pours(pours) if pours.lines.is_empty());
        let last = shown.iter().rposition(is_field).filter(|_| shown.iter().any(is_typed));
        let asked = last.map_or(self.blocks.len(), |at| shown.iter().position(begins).unwrap_or(at + 1));
        let (asked, found) = self.blocks.split_at(asked.min(self.blocks.len()));
        [asked, found]
    }

    /// The page from top to bottom.
    #[must_use]
    pub fn page(&self) -> Vec<Node> {
        let [head, strip, bars, foot, pad, places] = self.frame();
        let column = |parts: &[Part]| parts.iter().flat_map(|part| &part.nodes).cloned().collect();
        let columns = self.columns().map(|parts| Node::Element(frame::column(column(parts))));
        let main = Node::Element(frame::page(columns.to_vec()));
        [head, strip, vec![main], bars, foot, pad, places].concat()
    }
}

/// What the blocks show besides themselves.
fn round_blocks(view: &View) -> impl PartialEq + '_ {
    let fields = (view.active, view.as_typed.is_some(), view.has_pad, view.bare_unit);
    (fields, view.is_installed, view.can_install, view.screen.leads.is_empty())
}

/// The name of a field; of another block, what kind it is.
fn name_of(block: &Block) -> &'static str {
    match block {
        Block::Field(field) => field.name,
        Block::Heading(_) => "<heading>",
        Block::Table(..) => "<table>",
        Block::Timeline(_) => "<timeline>",
        Block::SheetHead(_) => "<sheet head>",
        Block::ToHave(_) => "<to have>",
        Block::Cells(..) => "<cells>",
        Block::Remark(_) => "<remark>",
        Block::Sources(_) => "<sources>",
        Block::Caution(_) => "<caution>",
        Block::Link(..) => "<link>",
        Block::Buttons(_) => "<buttons>",
        Block::Code(..) => "<code>",
        Block::Label(_) => "<label>",
        Block::Pictures(_) => "<pictures>",
        Block::Sides(_) => "<sides>",
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
