//! The pad, docked at the bottom: a row of units over the keys.

use super::node::{Element, Node, Press, Tap, element, with};
use crate::desk::Pad;
use crate::screen::Act;
use crate::screen::pad::Key;

/// Keys in a row.
const ROW: usize = 5;

/// The pad, with the keys in sight.
pub(super) fn pad(pad: &Pad, is_left: bool) -> Node {
    let units = pad.units.iter().map(|key| one(*key, pad)).collect();
    let keys = match is_left && !pad.is_turned {
        true => pad.keys.chunks(ROW).flat_map(mirrored).collect(),
        false => pad.keys.clone(),
    };
    let keys = keys.into_iter().map(|key| one(key, pad)).collect();
    let class = if pad.is_turned { "keys others" } else { "keys" };
    let children =
        vec![element("div", &[("class", "units")], units), with("div", &[], vec![("class", class.into())], keys)];
    let class = if is_left { "pad left" } else { "pad" };
    with("section", &[("aria-label", "Pad")], vec![("class", class.into())], children)
}

/// A row for the left hand: its columns mirrored, but digits keep their order.
fn mirrored(row: &[Key]) -> Vec<Key> {
    let is_digit = |key: &&Key| matches!(key, Key::Char('1'..='9'));
    let others = row.iter().rev().filter(|key| !is_digit(key));
    others.chain(row.iter().filter(is_digit)).copied().collect()
}

fn one(key: Key, pad: &Pad) -> Node {
    let tap = match key {
        Key::Turn => Tap::Act(Act::Turn),
        Key::Next => Tap::Act(Act::Next),
        Key::Done => Tap::Act(Act::Activate(None)),
        // A unit or fraction picked from the others: the digits come next.
        key => {
            let turns = pad.is_turned && key != Key::Delete;
            Tap::Press(Press { field: pad.field, key, decimal: pad.decimal, turns })
        }
    };
    let is_on = Some(key) == pad.lit || key == Key::Turn && pad.is_turned;
    let mut attributes = vec![("class", class_of(key, is_on).into())];
    attributes.extend(key.spoken().map(|spoken| ("aria-label", spoken.into())));
    if is_on {
        attributes.push(("aria-pressed", "true".into()));
    }
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

fn class_of(key: Key, is_on: bool) -> &'static str {
    match key {
        Key::Fraction(_) => "key fraction",
        Key::Done => "key done",
        Key::Next => "key next",
        Key::Char(_) | Key::Delete => "key",
        _ if is_on => "key unit on",
        _ => "key unit",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::screen::pad::{Keys, face};
    use crate::text::Decimal;

    #[test]
    fn for_the_left_hand_the_columns_are_mirrored() {
        let labels = |row: &[Key]| row.iter().map(|key| key.label()).collect::<Vec<_>>().join(" ");
        let rows: Vec<String> =
            face(Keys::Pour, Decimal::Point).chunks(ROW).map(|row| labels(&mirrored(row))).collect();
        assert_eq!(rows, ["⌫ ¼ 7 8 9", "⅓ ½ 4 5 6", "⅔ ¾ 1 2 3", "Done Next ⅛ 0 ."]);
    }
}
