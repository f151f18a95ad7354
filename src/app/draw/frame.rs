//! Round the blocks: pills for the tools of a place, the five places, what needs saying, what is due.

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

/// What stands between strip and pad: a notice, then the blocks of the screen. Each screen has a page of its own, so
/// that nothing that was opened or focused on one is so on the next.
pub(super) fn page(view: &View, blocks: impl Iterator<Item = Node>) -> Node {
    let children = view.notice.iter().map(notice).chain(blocks).collect();
    Element { tag: "main", fixed: &[("id", "page")], key: view.title, children, ..Element::default() }.into()
}

fn notice(notice: &Notice) -> Node {
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
