//! The strip of tape that holds the answer.

use super::node::{Element, Node, element, said, words};
use crate::screen::{Screen, Tone};
use crate::text::Figure;

/// The answer of a screen. Its height is fixed, so it never moves.
pub(super) fn strip(screen: &Screen) -> Node {
    let class = match (screen.tall, screen.strip.tone) {
        (false, Tone::Answer) => "strip",
        (false, _) => "strip waiting",
        (true, Tone::Answer) => "strip tall",
        (true, _) => "strip tall waiting",
    };
    let mut children: Vec<Node> = screen.strip.figures.iter().map(figure).collect();
    children.push(said("span", &[("class", "also")], screen.strip.also.clone()));
    Element { tag: "output", attributes: vec![("class", class.into())], children, ..Element::default() }.into()
}

fn figure(figure: &Figure) -> Node {
    let long = figure.value.chars().count() + figure.unit.chars().count() > 15;
    let class = if long { "figure long" } else { "figure" };
    let children =
        vec![said("b", &[], figure.value.clone()), words(" "), element("small", &[], vec![words(figure.unit.clone())])];
    Element { tag: "span", attributes: vec![("class", class.into())], children, ..Element::default() }.into()
}
