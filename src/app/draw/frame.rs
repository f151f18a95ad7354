//! Round the blocks: pills for the tools of a place, the five places, what needs saying, what is due.

use std::sync::Arc;

use super::block::act_button;
use super::node::{Element, Node, Tap, button, element, link, owned, said, with};
use crate::desk::{Due, Link, Notice, View};
use crate::screen::Act;

/// The pills, and the offer of an update.
pub(super) fn header(view: &View) -> Node {
    let pills = element("nav", &[("class", "pills"), ("aria-label", "Tools")], links(&view.pills));
    let mut children = vec![said("h1", &[("class", "unseen")], view.title.into()), pills];
    if view.update_waits {
        children.push(button("update", "Update".into(), "", Some(Tap::Act(Act::Update))));
    }
    element("header", &[("class", "top")], children)
}

/// The five places.
pub(super) fn places(view: &View) -> Node {
    element("nav", &[("class", "places"), ("aria-label", "Places")], links(&view.places))
}

fn links(links: &[Link]) -> Vec<Node> {
    links.iter().map(|to| link(&to.href, to.label.into(), to.is_here)).collect()
}

/// What stands between strip and pad.
#[must_use]
pub fn page(children: Vec<Node>) -> Arc<Element> {
    Arc::new(Element { tag: "main", fixed: &[("id", "page")], children, ..Element::default() })
}

/// What needs saying.
pub(super) fn notice(notice: &Notice) -> Node {
    let mut children = vec![said("span", &[], owned(&notice.words))];
    children.extend(notice.buttons.iter().map(|shown| act_button("", shown)));
    element("p", &[("class", "notice"), ("role", "alert")], children)
}

/// What is due next.
pub(super) fn due(due: &Due) -> Node {
    let class = if due.is_over { "due over" } else { "due" };
    let attributes = vec![("class", class.into()), ("href", owned(&due.href))];
    let children = vec![said("b", &[], owned(&due.figure)), said("span", &[], owned(&due.words))];
    with("a", &[], attributes, children)
}
