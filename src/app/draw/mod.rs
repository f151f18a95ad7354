//! What is to be drawn, as pieces of the page: plain data, still without a browser.

mod block;
mod canvas;
mod field;
mod frame;
mod html;
mod label;
mod making;
mod node;
mod pad;
mod paper;
mod picture;
mod sides;
mod strip;
#[cfg(test)]
mod tests;
mod timeline;

pub use canvas::{Canvas, FRAME, Part, Whose};
pub use frame::{column, page};
pub use html::html;
pub use node::{Attribute, Element, Fixed, Live, Node, Press, Tap, Text, at};
