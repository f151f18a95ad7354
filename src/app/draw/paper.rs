//! What stands on a printed run sheet beside its steps.

use super::node::{Node, element, owned, said};
use crate::screen::{SheetHead, ToHave};

/// The head of the sheet, and of its columns: on paper alone.
pub(super) fn head(head: &SheetHead) -> Node {
    let columns = ["time", "what", "expect, and what it was", "done at", "initials"];
    let columns = columns.map(|column| said("span", &[], column.into())).into();
    let tape = vec![said("span", &[], owned(&head.ready)), said("span", &[], owned(&head.makes))];
    let children = vec![
        said("p", &[("class", "when")], owned(&head.when)),
        said("p", &[("class", "name")], owned(&head.name)),
        element("p", &[("class", "tape")], tape),
        element("p", &[("class", "columns")], columns),
    ];
    element("header", &[("class", "run-head")], children)
}

/// What to have ready, and what may need declaring.
pub(super) fn to_have(to_have: &ToHave) -> Node {
    let mut children = Vec::new();
    if !to_have.things.is_empty() {
        let thing = |(what, amount): &(String, String)| {
            element("li", &[], vec![said("span", &[], owned(what)), said("b", &[], owned(amount))])
        };
        children.push(said("h2", &[], "To have ready".into()));
        children.push(element("ul", &[], to_have.things.iter().map(thing).collect()));
    }
    if !to_have.declared.is_empty() {
        children.push(said("h2", &[], "May need declaring".into()));
        children.push(said("p", &[], owned(&to_have.declared)));
    }
    element("section", &[("class", "ready")], children)
}
