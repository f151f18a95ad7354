//! A label, as it is printed: one drawing in millimetres, as often as it is wanted.

use super::node::{Node, Text, owned, with, words};
use crate::screen::{Drawing, Placed};
use crate::text::{self, Decimal, Qr};

/// The label, and behind it, on paper alone, its copies.
pub(super) fn label(drawn: &Drawing) -> Node {
    let class = vec![("class", format!("labels {}", drawn.paper).into())];
    with("section", &[("aria-label", "Label")], class, vec![one(drawn); drawn.copies])
}

/// Millimetres as an attribute; the printer of floats of the standard library stays out of the build.
fn mm(value: f64) -> Text {
    text::plain(value, 5, Decimal::Point).into()
}

fn one(drawn: &Drawing) -> Node {
    let (width, height) = (mm(drawn.width), mm(drawn.height));
    let view_box = format!("0 0 {width} {height}").into();
    let tape = with("rect", &[("class", "tape")], vec![("width", width), ("height", height)], Vec::new());
    let mut children = vec![tape];
    children.extend(drawn.texts.iter().map(line));
    children.extend(drawn.rule.map(rule));
    children.extend(drawn.code.iter().map(|(qr, place)| code(qr, *place)));
    let fixed = &[("class", "label"), ("role", "img"), ("aria-label", "Label, as it is printed")];
    with("svg", fixed, vec![("viewBox", view_box)], children)
}

fn line(text: &Placed) -> Node {
    let weight = if text.is_heavy { "700" } else { "500" };
    let attributes =
        vec![("x", mm(text.x)), ("y", mm(text.y)), ("font-size", mm(text.size)), ("font-weight", weight.into())];
    with("text", &[], attributes, vec![words(&text.words)])
}

/// A rule, as thick as one that a label printer draws: 0.3 mm.
fn rule([left, height, right]: [f64; 3]) -> Node {
    let path = format!("M{} {}H{}v0.3H{}z", mm(left), mm(height), mm(right), mm(left));
    with("path", &[], vec![("d", path.into())], Vec::new())
}

fn code(code: &Qr, [left, top, side]: [f64; 3]) -> Node {
    let scale = mm(side / code.size as f64);
    let place = format!("translate({} {}) scale({scale})", mm(left), mm(top));
    with("path", &[], vec![("d", owned(&code.path)), ("transform", place.into())], Vec::new())
}
