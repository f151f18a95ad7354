//! A label, as it is printed: one drawing in millimetres, as often as it is wanted.

use super::node::{Element, Node, Text, words};
use crate::screen::{Drawing, Placed};
use crate::text::{self, Decimal, Qr};

/// The label, and behind it, on paper alone, its copies.
pub(super) fn label(drawn: &Drawing) -> Node {
    let one = one(drawn);
    Element {
        tag: "section",
        fixed: &[("aria-label", "Label")],
        attributes: vec![("class", format!("labels {}", drawn.paper).into())],
        children: vec![one; drawn.copies],
        ..Element::default()
    }
    .into()
}

/// Millimetres as an attribute; the printer of floats of the standard library stays out of the build.
fn mm(value: f64) -> Text {
    text::plain(value, 5, Decimal::Point).into()
}

fn one(drawn: &Drawing) -> Node {
    let (width, height) = (mm(drawn.width), mm(drawn.height));
    let view_box = format!("0 0 {width} {height}").into();
    let tape = Element {
        tag: "rect",
        fixed: &[("class", "tape")],
        attributes: vec![("width", width), ("height", height)],
        ..Element::default()
    };
    let mut children: Vec<Node> = vec![tape.into()];
    children.extend(drawn.texts.iter().map(line));
    children.extend(drawn.code.iter().map(|(qr, place)| code(qr, *place)));
    Element {
        tag: "svg",
        fixed: &[("class", "label"), ("role", "img"), ("aria-label", "Label, as it is printed")],
        attributes: vec![("viewBox", view_box)],
        children,
        ..Element::default()
    }
    .into()
}

fn line(text: &Placed) -> Node {
    let weight = if text.is_heavy { "700" } else { "500" };
    let attributes =
        vec![("x", mm(text.x)), ("y", mm(text.y)), ("font-size", mm(text.size)), ("font-weight", weight.into())];
    Element { tag: "text", attributes, children: vec![words(text.words.clone())], ..Element::default() }.into()
}

fn code(code: &Qr, [left, top, side]: [f64; 3]) -> Node {
    let scale = mm(side / code.size as f64);
    let place = format!("translate({} {}) scale({scale})", mm(left), mm(top));
    let attributes = vec![("d", Text::Owned(code.path.clone())), ("transform", place.into())];
    Element { tag: "path", attributes, ..Element::default() }.into()
}
