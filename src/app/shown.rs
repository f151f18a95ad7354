//! The page in the document: mounted once; each part is drawn again by itself, when it has changed.

use std::cell::RefCell;
use std::rc::Rc;
use std::vec::IntoIter;

use leptos::prelude::{AnyView, Get, IntoAny, Set, With, WithUntracked, mount_to};
use leptos::reactive::signal::ArcRwSignal;
use leptos::tachys::view::keyed::keyed;
use web_sys::HtmlElement;

use super::browser;
use super::draw::{Canvas, FRAME, Node, Part, Whose, column, page};
use super::element::{element, views};
use super::listen::listen;
use crate::desk::View;
use crate::screen::Act;

/// The page as it was drawn last.
pub(super) struct Shown {
    canvas: Rc<RefCell<Canvas>>,
    frame: [Pieces; FRAME],
    columns: [Blocks; 2],
}

/// The blocks of a column.
type Blocks = ArcRwSignal<Vec<Block>>;

/// The pieces of one part of the page.
type Pieces = ArcRwSignal<Vec<Node>>;

/// A block of the screen.
#[derive(Clone)]
struct Block {
    whose: Whose,
    pieces: Pieces,
}

impl Shown {
    /// Draws the page aside, puts it in place of what is below `root`, and hands on what a person does there. Between its
    /// pieces the browser gets its turn: all at once is the longest task of a start.
    pub(super) fn mount(root: HtmlElement, view: View, hand: Rc<dyn Fn(Act)>, then: Box<dyn FnOnce(Shown)>) {
        let canvas = Canvas::of(view);
        let frame = canvas.frame().map(Pieces::new);
        let columns = canvas.columns().map(|parts| Blocks::new(parts.iter().map(Block::of).collect()));
        let canvas = Rc::new(RefCell::new(canvas));
        listen(&root, Rc::clone(&canvas), hand);
        let [head, strip, bars, foot, pad, places] = frame.clone().map(part);
        let lists = columns.clone().map(|blocks| element(&column(Vec::new()), vec![list(blocks)]));
        let main = element(&page(Vec::new()), lists.into());
        let shown = Shown { canvas, frame, columns };
        let Some(aside) = browser::aside() else { return };
        let pieces = vec![vec![head, strip, main], vec![bars, foot, pad], vec![places]];
        stand(
            aside.clone(),
            pieces.into_iter(),
            Box::new(move || {
                root.set_text_content(None);
                let _ = root.append_child(&aside);
                then(shown);
            }),
        );
    }

    /// Draws it again, by the end of the turn.
    pub(super) fn draw(&self, view: View) {
        let mut canvas = self.canvas.borrow_mut();
        canvas.draw(view);
        self.frame.iter().zip(canvas.frame()).for_each(|(pieces, nodes)| set(pieces, &nodes));
        self.columns.iter().zip(canvas.columns()).for_each(|(blocks, drawn)| draw(blocks, drawn));
    }
}

/// Draws pieces one after another into `aside`, then does what is left.
fn stand(aside: HtmlElement, mut pieces: IntoIter<Vec<AnyView>>, then: Box<dyn FnOnce()>) {
    let Some(next) = pieces.next() else { return then() };
    mount_to(aside.clone(), move || next).forget();
    browser::later(0, move || stand(aside, pieces, then));
}

/// Draws a column again: the blocks that stand there already keep their places in the document.
fn draw(column: &Blocks, drawn: &[Part]) {
    let stay = column.with_untracked(|blocks| {
        let stay = blocks.iter().map(|block| &block.whose).eq(drawn.iter().map(|part| &part.whose));
        if stay {
            blocks.iter().zip(drawn).for_each(|(block, part)| set(&block.pieces, &part.nodes));
        }
        stay
    });
    if !stay {
        let blocks = column.with_untracked(|blocks| drawn.iter().map(|part| again(blocks, part)).collect());
        column.set(blocks);
    }
}

impl Block {
    fn of(part: &Part) -> Block {
        Block { whose: part.whose, pieces: Pieces::new(part.nodes.clone()) }
    }
}

/// The block that stands there already, with what it shows now; else a new one.
fn again(blocks: &[Block], part: &Part) -> Block {
    let Some(block) = blocks.iter().find(|block| block.whose == part.whose) else { return Block::of(part) };
    set(&block.pieces, &part.nodes);
    block.clone()
}

fn set(pieces: &Pieces, nodes: &[Node]) {
    if pieces.with_untracked(|old| old != nodes) {
        pieces.set(nodes.to_vec());
    }
}

/// A part of the page, drawn again whenever its pieces change.
fn part(pieces: Pieces) -> AnyView {
    (move || pieces.with(|nodes| views(nodes))).into_any()
}

/// The blocks of the screen: one keeps what stands in the document, and caret and focus, while others come and go.
fn list(blocks: Blocks) -> AnyView {
    (move || keyed(blocks.get(), |block| block.whose, |_, block| (|_| {}, part(block.pieces)))).into_any()
}
