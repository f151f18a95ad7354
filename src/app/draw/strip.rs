//! The strip of tape that holds the answer.

use super::node::{Node, Tap, Text, button, owned, said, with};
use super::picture::picture;
use crate::screen::{Act, Screen, Tone};
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
    children.push(said("span", &[("class", "also")], owned(&screen.strip.also)));
    if !screen.leads.is_empty() {
        children.push(button(
            "leads",
            Text::Borrowed(""),
            &format!("{}: go there", screen.leads),
            Some(Tap::Act(Act::Look)),
        ));
    }
    children.extend(screen.strip.picture.iter().flat_map(picture));
    with("output", &[], vec![("class", class.into())], children)
}

fn figure(figure: &Figure) -> Node {
    let long = figure.value.chars().count() + figure.unit.chars().count() > 15;
    let class = if long { "figure long" } else { "figure" };
    let children = vec![
        said("b", &[], owned(&figure.value)),
        Node::Words(Text::Borrowed(" ")),
        said("small", &[], owned(&figure.unit)),
    ];
    with("span", &[], vec![("class", class.into())], children)
}
