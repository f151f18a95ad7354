//! The strip of tape that holds the answer.

use std::borrow::Cow;

use super::node::{Node, Tap, Text, button, element, owned, said, with};
use super::picture::picture;
use crate::screen::picture::Picture;
use crate::screen::{Act, Block, Screen, Strip, Tone};
use crate::text::Figure;

/// Letters of what to do that stand on one line, and of a verdict.
const ONE_LINE: usize = 28;
/// The same beside a picture.
const BESIDE: usize = 16;
/// Letters that stand on two lines beside a picture.
const TWO_BESIDE: usize = 40;
/// Letters of what to do beyond which they may take two lines, over a third.
const BESIDE_BELOW: usize = 36;
/// Letters that stand on two lines.
const TWO_LINES: usize = 66;
/// What a figure may measure beside a picture: a letter of its number counts as four of its unit.
const FIGURE_BESIDE: usize = 25;
/// Letters of a unit beyond which it is smaller.
const SHORT_UNIT: usize = 6;

/// The answer of a screen. Its height is fixed by tool, so it never moves. What it says is read out elsewhere, when it has
/// settled.
pub(super) fn strip(screen: &Screen) -> Node {
    let strip = &*without_figures(screen);
    let class = match (screen.tall, strip.tone) {
        (false, Tone::Answer) => "strip",
        (false, _) => "strip blank",
        (true, Tone::Answer) => "strip tall",
        (true, _) => "strip tall blank",
    };
    let size = size(strip, screen.tall);
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
    children.extend(pictured(strip).map(picture).into_iter().flatten());
    with("output", &[("aria-live", "off")], vec![("class", class.into())], children)
}

/// What a blank tape says: what to type; of what is wrong, where that is said.
fn without_figures(screen: &Screen) -> Cow<'_, Strip> {
    let Strip { figures, also, below, tone, .. } = &screen.strip;
    let wrong = screen.blocks.iter().find_map(|block| match block {
        Block::Field(field) if field.problem.is_some() => Some(field.label),
        _ => None,
    });
    let (also, below) = match (tone, wrong, also.split_once(", like ")) {
        (Tone::Answer, ..) => return Cow::Borrowed(&screen.strip),
        (Tone::Problem, Some(label), _) => ("No answer yet", format!("See “{label}”, below")),
        (_, _, Some((what, like))) => (what, format!("like {}", like.trim_end_matches('.'))),
        _ => (also.as_str(), below.clone()),
    };
    // What stands for a figure where there is none is not drawn.
    let figures = figures.iter().filter(|figure| !matches!(figure.value.as_str(), "?" | "–")).cloned().collect();
    Cow::Owned(Strip { figures, also: also.to_owned(), below, tone: *tone, picture: None })
}

/// The picture, where it leaves the words their room.
fn pictured(strip: &Strip) -> Option<&Picture> {
    let measures = |figure: &Figure| 4 * figure.value.chars().count() + figure.unit.chars().count();
    let fits = strip.figures.iter().all(|figure| measures(figure) <= FIGURE_BESIDE);
    strip.picture.as_ref().filter(|_| fits && strip.also.chars().count() <= TWO_BESIDE)
}

/// How many letters of what to do stand on one line.
fn one_line(strip: &Strip) -> usize {
    if pictured(strip).is_some() { BESIDE } else { ONE_LINE }
}

/// How large the figures are: by the longest, by how many, and by what stands below.
fn size(strip: &Strip, is_tall: bool) -> &'static str {
    let letters = |figure: &Figure| figure.value.chars().count() + figure.unit.chars().count() / 4;
    let longest = strip.figures.iter().map(letters).max().unwrap_or(0);
    let is_low = strip.figures.len() > 1 || !strip.below.is_empty() || strip.also.chars().count() > TWO_LINES;
    let is_tight = !is_tall && !strip.below.is_empty() && strip.also.chars().count() > BESIDE_BELOW;
    match longest {
        _ if is_tight => "figure f34",
        ..=5 if !is_low && strip.also.chars().count() <= one_line(strip) => "figure f64",
        ..=7 if !is_low => "figure f52",
        ..=10 => "figure f44",
        _ => "figure f34",
    }
}

/// How large the words are: a verdict without figures is largest.
fn also(strip: &Strip) -> &'static str {
    match (strip.figures.is_empty(), strip.also.chars().count()) {
        (true, letters) if letters <= one_line(strip) => "also verdict",
        (false, letters) if letters <= one_line(strip) => "also",
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
