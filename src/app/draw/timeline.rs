//! Steps on one line of time.

use super::node::{Element, Node, Tap, act_button, element, owned, said, with, words};
use crate::screen::{Event, Wait};

/// The line, a row a step. Two of them, with what is typed at the current step between, count on as one.
pub(super) fn timeline(events: &[Event]) -> Node {
    element("ol", &[("class", "timeline"), ("role", "list")], events.iter().map(event).collect())
}

fn event(event: &Event) -> Node {
    let class = match (event.is_current, event.is_done) {
        (false, false) => "event",
        (false, true) => "event done",
        (true, false) => "event now",
        (true, true) => "event done now",
    };
    let mut attributes = vec![("class", class.into())];
    if event.is_current {
        attributes.push(("aria-current", "step".into()));
    }
    let mut children = vec![said("span", &[("class", "at")], owned(&event.at)), dot(event), step(event)];
    let mut told = Vec::new();
    if let Some(wait) = &event.wait {
        children.push(bar(wait));
        told.push(said("small", &[], owned(&wait.words)));
    }
    if !event.detail.is_empty() {
        told.push(said("small", &[], owned(&event.detail)));
    }
    if !event.blank.is_empty() {
        told.push(said("span", &[("class", "blank"), ("aria-hidden", "true")], event.blank.into()));
    }
    if !event.mind.is_empty() {
        told.push(said("small", &[("class", "mind")], owned(&event.mind)));
    }
    // On paper they stand in one column, one behind the other.
    children.push(element("div", &[("class", "told")], told));
    if !event.buttons.is_empty() {
        let last = event.buttons.len() - 1;
        let class = |at: usize| if at == last && !event.is_done { "btn first" } else { "btn" };
        let buttons = event.buttons.iter().enumerate().map(|(at, shown)| act_button(class(at), shown));
        children.push(element("div", &[("class", "deeds")], buttons.collect()));
    }
    with("li", &[], attributes, children)
}

/// Its number, or a tick.
fn dot(event: &Event) -> Node {
    let inside = if event.is_done {
        let tick = element("path", &[("d", "M3 8.5l3.4 3.5L13 4.5")], Vec::new());
        element("svg", &[("viewBox", "0 0 16 16"), ("role", "img"), ("aria-label", "done")], vec![tick])
    } else {
        words(&event.number.to_string())
    };
    element("span", &[("class", "dot")], vec![inside])
}

/// The words of a step: a tap on any of its row makes it the current one.
fn step(event: &Event) -> Node {
    let tap = Some(Tap::Act(event.choose.clone()));
    let fixed = &[("type", "button"), ("class", "step")];
    Element { tag: "button", fixed, children: vec![words(&event.words)], tap, ..Element::default() }.into()
}

/// How much of a wait is over; the words below say it.
fn bar(wait: &Wait) -> Node {
    let part = with("rect", &[("height", "8")], vec![("width", wait.percent.to_string().into())], Vec::new());
    let fixed =
        &[("class", "wait"), ("viewBox", "0 0 100 8"), ("preserveAspectRatio", "none"), ("aria-hidden", "true")];
    element("svg", fixed, vec![part])
}
