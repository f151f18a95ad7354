//! Drinks beside one another, as a table: a column each, a row for each thing that is compared.

use super::node::{Node, element, owned, said, with, words};
use super::picture::to_one_scale;
use crate::screen::{Column, Compared, Side, Sides};

/// The most that a glass may measure, px.
const GLASS: [f64; 2] = [64.0, 112.0];
/// Columns that a phone has room for.
const FEW: usize = 3;

/// The table; many columns scroll in their own box.
pub(super) fn sides(shown: &Sides) -> Option<Node> {
    if shown.sides.is_empty() {
        return None;
    }
    let mut rows = Vec::new();
    let pictures: Vec<_> = shown.sides.iter().map(|side| side.picture.as_ref()).collect();
    if pictures.iter().any(Option::is_some) {
        let glass = |drawn: Option<Node>| element("td", &[("class", "glass")], drawn.into_iter().collect());
        let name = said("span", &[("class", "unseen")], "glass".into());
        rows.push(row(name, to_one_scale(&pictures, GLASS).into_iter().map(glass).collect()));
    }
    rows.extend(shown.rows.iter().map(compared));
    let corner = element("td", &[], Vec::new());
    let head = [corner].into_iter().chain(shown.sides.iter().map(head)).collect();
    let table = element(
        "table",
        &[("aria-label", "Side by side")],
        vec![element("thead", &[], vec![element("tr", &[], head)]), element("tbody", &[], rows)],
    );
    Some(match shown.sides.len() > FEW {
        // What scrolls must be reached by the keyboard.
        true => element(
            "div",
            &[("class", "sides many"), ("tabindex", "0"), ("role", "region"), ("aria-label", "All of them")],
            vec![table],
        ),
        false => element("div", &[("class", "sides")], vec![table]),
    })
}

fn head(column: &Column) -> Node {
    let mut children = vec![said("b", &[], owned(&column.name))];
    children.extend(column.below.iter().map(|line| said("small", &[], owned(line))));
    element("th", &[("scope", "col")], children)
}

fn row(name: Node, cells: Vec<Node>) -> Node {
    let head = element("th", &[("scope", "row")], vec![name]);
    element("tr", &[], [head].into_iter().chain(cells).collect())
}

fn compared(shown: &Compared) -> Node {
    row(Node::Words(shown.of.into()), shown.each.iter().map(side).collect())
}

/// What stands apart has its sign before it, and in words for those who don't see it.
fn side(shown: &Side) -> Node {
    let mut children = Vec::new();
    if shown.is_apart {
        children.push(said("i", &[("aria-hidden", "true")], "≠ ".into()));
        children.push(said("span", &[("class", "unseen")], "differs: ".into()));
    }
    children.push(words(&shown.said));
    if !shown.below.is_empty() {
        children.push(said("small", &[], owned(&shown.below)));
    }
    let attributes = if shown.is_apart { vec![("class", "apart".into())] } else { Vec::new() };
    with("td", &[], attributes, children)
}
