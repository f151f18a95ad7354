//! Round the blocks: the head, what there is to do, what needs saying and what is due, the places with their sheet of tools.

use std::sync::Arc;

use super::block::act_button;
use super::node::{Element, Node, Tap, Text, button, element, link, owned, said, with};
use crate::desk::{Due, Notice, PlaceLink, ToolLink, View};
use crate::screen::{Act, HEAD, SHEET};

/// Letters of what there is to do, beyond which they are smaller, to stand in one row.
const MANY_LETTERS: usize = 26;
/// Letters of a name that stand on one line of the head.
const ONE_LINE: usize = 18;

/// The name of what is shown, and at most three words: Undo, Copy, then the screen's own.
pub(super) fn head(view: &View) -> Node {
    let screen = &view.screen;
    let name = if screen.name.is_empty() { Text::Borrowed(view.title) } else { owned(&screen.name) };
    let class = if name.chars().count() > ONE_LINE { "two" } else { "" };
    let fixed = &[("id", HEAD), ("tabindex", "-1")];
    let mut children = vec![with("h1", fixed, vec![("class", class.into())], vec![Node::Words(name)])];
    let mut words = Vec::new();
    if let Some(undone) = &view.undo {
        words.push(button("word", "Undo".into(), &format!("Undo: {undone}"), Some(Tap::Act(Act::Undo))));
    }
    if !screen.copy.is_empty() {
        let copy = if view.copied.is_empty() { "Copy".into() } else { owned(&view.copied) };
        words.push(button("word", copy, "", Some(Tap::Act(Act::Copy))));
    }
    words.extend(screen.head.iter().map(|shown| act_button("word", shown)));
    if view.pad_waits {
        words.push(button("word", "Pad".into(), "", Some(Tap::Act(Act::Pad))));
    }
    children.push(element("div", &[("class", "words"), ("aria-live", "polite")], words));
    element("header", &[("class", "head")], children)
}

/// The five places, and the sheet of tools of one.
pub(super) fn places(view: &View) -> Node {
    let mut children = Vec::new();
    for place in &view.places {
        children.push(place_button(place, view.is_open));
        if place.has_sheet {
            children.push(sheet(view));
        }
    }
    let class = if view.is_open { "places open" } else { "places" };
    with("nav", &[("aria-label", "Places")], vec![("class", class.into())], children)
}

fn place_button(place: &PlaceLink, is_open: bool) -> Node {
    let mut attributes = vec![("class", if place.is_here { "place here" } else { "place" }.into())];
    let is_open = is_open && place.has_sheet;
    attributes.push(("aria-expanded", if is_open { "true" } else { "false" }.into()));
    if place.is_here {
        attributes.push(("aria-current", "true".into()));
    }
    Element {
        tag: "button",
        fixed: &[("type", "button")],
        attributes,
        children: vec![Node::Words(place.place.label().into())],
        tap: Some(Tap::Act(Act::Sheet(Some(place.place)))),
        ..Element::default()
    }
    .into()
}

/// The tools of a place, each with its question; over a veil that closes it.
fn sheet(view: &View) -> Node {
    let close = || Some(Tap::Act(Act::Sheet(None)));
    let find = with("a", &[("class", "word")], vec![("href", owned(&view.find))], vec![Node::Words("Find".into())]);
    let head = vec![
        with("h2", &[("id", SHEET), ("tabindex", "-1")], Vec::new(), vec![Node::Words(view.asks.into())]),
        find,
        button("word", "Close".into(), "", close()),
    ];
    let tools = view.tools.iter().map(tool).collect();
    let children = vec![
        button("veil", Text::Borrowed(""), "Close the sheet of tools", close()),
        element("div", &[("class", "asks")], head),
        element("div", &[("class", "tools")], tools),
    ];
    element("div", &[("class", "sheet")], children)
}

fn tool(tool: &ToolLink) -> Node {
    let mut attributes = vec![("href", owned(&tool.href))];
    if tool.is_here {
        attributes.push(("aria-current", "page".into()));
    }
    let children = vec![said("b", &[], tool.label.into()), said("span", &[], tool.question.into())];
    with("a", &[("class", "tool")], attributes, children)
}

/// What stands between strip and pad.
#[must_use]
pub fn page(children: Vec<Node>) -> Arc<Element> {
    Arc::new(Element { tag: "main", fixed: &[("id", "page")], children, ..Element::default() })
}

/// The blocks that ask, or those that answer.
#[must_use]
pub fn column(children: Vec<Node>) -> Arc<Element> {
    Arc::new(Element { tag: "div", fixed: &[("class", "column")], children, ..Element::default() })
}

/// What there is to do with the answer; gone while the pad is up.
pub(super) fn foot(view: &View) -> Option<Node> {
    let doings = &view.screen.foot;
    if doings.is_empty() || view.pad.is_some() {
        return None;
    }
    let shown =
        doings.iter().enumerate().map(|(at, shown)| act_button(if at == 0 { "btn first" } else { "btn" }, shown));
    let letters: usize = doings.iter().map(|shown| shown.label.chars().count()).sum();
    let class = if letters > MANY_LETTERS { "foot many" } else { "foot" };
    Some(with("section", &[("aria-label", "To do")], vec![("class", class.into())], shown.collect()))
}

/// What is due and what needs saying, two lines at most.
pub(super) fn bars(view: &View) -> Option<Node> {
    let notices: Vec<Node> = view.not_saved.iter().chain(&view.notice).map(notice).collect();
    let has_room = notices.len() < 2;
    let due = view.due.iter().filter(|due| due.is_over || has_room).map(due);
    let bars: Vec<Node> = due.chain(notices).collect();
    (!bars.is_empty()).then(|| element("div", &[("class", "bars")], bars))
}

/// What needs saying.
fn notice(notice: &Notice) -> Node {
    let mut children = vec![said("span", &[], owned(&notice.words))];
    children.extend(notice.buttons.iter().map(|shown| act_button("word", shown)));
    element("p", &[("class", "bar"), ("role", "alert")], children)
}

/// What is due next.
fn due(due: &Due) -> Node {
    let class = if due.is_over { "bar due over" } else { "bar due" };
    let words = vec![said("b", &[], owned(&due.figure)), Node::Words(" ".into()), said("span", &[], owned(&due.words))];
    let go = link(&due.href, "See it".into(), false);
    with("div", &[], vec![("class", class.into())], vec![element("p", &[], words), go])
}
