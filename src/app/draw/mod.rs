//! What is to be drawn, as pieces of the page: plain data, still without a browser.

mod block;
mod field;
mod frame;
mod html;
mod label;
mod node;
mod pad;
mod strip;
#[cfg(test)]
mod tests;

pub use html::html;
pub use node::{Element, Fixed, Live, Node, Press, Tap, Text, at, kept};

use crate::desk::View;

/// The whole page, part by part.
#[must_use]
pub fn nodes(view: &View) -> Vec<Node> {
    let mut parts = vec![frame::header(view), strip::strip(&view.screen), frame::page(view)];
    parts.extend(view.due.iter().map(frame::due));
    parts.extend(view.pad.iter().map(pad::pad));
    parts.push(frame::places(view));
    parts
}
