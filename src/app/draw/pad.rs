//! The pad, docked at the bottom.

use super::node::{Element, Node, Press, Tap, element};
use crate::desk::Pad;
use crate::quantity::Unit;
use crate::screen::Act;
use crate::screen::pad::Key;

/// The pad, with the keys in sight.
pub(super) fn pad(pad: &Pad) -> Node {
    // Only the front has the key that puts it away.
    let is_back = !pad.keys.contains(&Key::Done);
    let keys = pad.keys.iter().map(|key| one(*key, pad, is_back)).collect();
    element("section", &[("class", "pad"), ("aria-label", "Pad")], keys)
}

fn one(key: Key, pad: &Pad, is_back: bool) -> Node {
    let tap = match key {
        Key::Turn => Tap::Act(Act::Turn),
        Key::Done => Tap::Act(Act::Activate(None)),
        // A unit or fraction picked from the back: the digits come next.
        key => {
            let turns = is_back && key != Key::Delete;
            Tap::Press(Press { field: pad.field, key, decimal: pad.decimal, turns })
        }
    };
    let mut attributes = vec![("class", class_of(key, pad.unit).into())];
    attributes.extend(key.spoken().map(|spoken| ("aria-label", spoken.into())));
    Element {
        tag: "button",
        fixed: &[("type", "button"), ("tabindex", "-1")],
        attributes,
        children: vec![Node::Words(key.label().into())],
        tap: Some(tap),
        ..Element::default()
    }
    .into()
}

fn class_of(key: Key, unit: Option<Unit>) -> &'static str {
    match key {
        Key::Fraction(_) => "key fraction",
        Key::Unit(own) if Some(own) == unit => "key unit on",
        Key::Unit(_)
        | Key::Colon
        | Key::Semicolon
        | Key::Percent
        | Key::Minus
        | Key::Fahrenheit
        | Key::Up
        | Key::Down
        | Key::Plus => "key unit",
        Key::Done => "key done",
        Key::Char(_) | Key::Delete | Key::Turn => "key",
    }
}
