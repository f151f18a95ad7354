//! The strip of tape that holds the answer.

use super::node::{Node, Tap, Text, button, element, owned, said, with};
use crate::screen::{Act, Screen, Strip, Tone};
use crate::text::Figure;

/// Letters of what to do that stand on one line, and of a verdict.
const ONE_LINE: usize = 28;
/// Letters that stand on two lines.
const TWO_LINES: usize = 66;
/// Letters of a unit beyond which it is smaller.
const SHORT_UNIT: usize = 6;

/// The answer of a screen. Its height is fixed by tool, so it never moves. What it says is read out elsewhere, when it has
/// settled.
pub(super) fn strip(screen: &Screen) -> Node {
    let strip = &screen.strip;
    let class = match (screen.tall, strip.tone) {
        (false, Tone::Answer) => "strip",
        (false, _) => "strip blank",
        (true, Tone::Answer) => "strip tall",
        (true, _) => "strip tall blank",
    };
    let size = size(strip);
    let mut words: Vec<Node> = strip.figures.iter().map(|shown| figure(shown, size)).collect();
    words.push(with("span", &[], vec![("class", also(strip).into())], vec![Node::Words(owned(&strip.also))]));
    if !strip.below.is_empty() {
        words.push(said("span", &[("class", "below")], owned(&strip.below)));
    }
    let mut children = vec![element("span", &[("class", "said")], words)];
    if !screen.leads.is_empty() {
        children.push(button(
            "leads",
            Text::Borrowed(""),
            &format!("{}: go there", screen.leads),
            Some(Tap::Act(Act::Look)),
        ));
    }
    with("output", &[("aria-live", "off")], vec![("class", class.into())], children)
}

/// How large the figures are: by the longest, by how many, and by what stands below.
fn size(strip: &Strip) -> &'static str {
    let letters = |figure: &Figure| figure.value.chars().count() + figure.unit.chars().count() / 4;
    let longest = strip.figures.iter().map(letters).max().unwrap_or(0);
    let is_low = strip.figures.len() > 1 || !strip.below.is_empty() || strip.also.chars().count() > TWO_LINES;
    match longest {
        ..=5 if !is_low && strip.also.chars().count() <= ONE_LINE => "figure f64",
        ..=7 if !is_low => "figure f52",
        ..=10 => "figure f44",
        _ => "figure f34",
    }
}

/// How large the words are: a verdict without figures is largest.
fn also(strip: &Strip) -> &'static str {
    match (strip.figures.is_empty(), strip.also.chars().count()) {
        (true, ..=ONE_LINE) => "also verdict",
        (false, ..=ONE_LINE) => "also",
        (_, ..=TWO_LINES) => "also long",
        _ => "also longest",
    }
}

fn figure(figure: &Figure, class: &'static str) -> Node {
    let small = if figure.unit.chars().count() > SHORT_UNIT { "long" } else { "" };
    let children = vec![
        said("b", &[], owned(&figure.value)),
        with("small", &[], vec![("class", small.into())], vec![Node::Words(format!(" {}", figure.unit).into())]),
    ];
    with("span", &[], vec![("class", class.into())], children)
}
