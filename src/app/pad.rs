//! The pad, docked at the bottom: types into the active field.

use leptos::prelude::*;

use super::browser;
use super::desk::Desk;
use super::part::{all, nothing, on_tap, part};
use crate::quantity::Unit;
use crate::screen::pad::{Entry, FACE, Key, Keys, back, front, press, unit_typed};

/// The field the pad types into.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) struct ActiveField {
    /// Its name.
    pub(super) name: &'static str,
    /// Its keys.
    pub(super) keys: Keys,
}

/// The pad; gone while no field is active or the phone's keyboard is chosen.
pub(super) fn pad(desk: Desk) -> AnyView {
    part(move || {
        let Some((keys, unit)) = face_of(desk) else { return nothing() };
        let keys = all(keys.into_iter().map(|key| {
            let tap = on_tap(move || match key {
                Key::Turn => desk.sight.update(|sight| sight.turned = !sight.turned),
                Key::Done => desk.activate(None),
                key => {
                    type_into(desk, key);
                    // A unit or fraction picked from the back: the digits come next.
                    if key != Key::Delete && desk.sight.with_untracked(|sight| sight.turned) {
                        desk.sight.update(|sight| sight.turned = false);
                    }
                }
            });
            view! {
                <button type="button" tabindex="-1" class=class_of(key, unit) aria-label=key.spoken() on:click=tap>
                    {key.label()}
                </button>
            }
            .into_any()
        }));
        view! {
            // Taking the press keeps the focus, and so the caret, in the field.
            <section class="pad" aria-label="Pad" on:mousedown=|event| event.prevent_default()>{keys}</section>
        }
        .into_any()
    })
}

/// The keys in sight, and the unit typed in the active field or else read into it.
fn face_of(desk: Desk) -> Option<([Key; FACE], Unit)> {
    let (field, turned) = desk.sight.with(|sight| (sight.active, sight.turned));
    let field = field.filter(|_| desk.uses_pad())?;
    let (decimal, usual) = desk.bench.with(|bench| (bench.decimal, bench.house.usual_unit));
    let keys = if turned { back(field.keys) } else { front(field.keys, decimal) };
    let bare = if field.keys == Keys::Weight { Unit::Gram } else { usual };
    // A choice may have taken the field off the screen.
    let typed = desk.screen.with(|screen| screen.field(field.name).map(|shown| unit_typed(&shown.text)))?;
    Some((keys, typed.unwrap_or(bare)))
}

fn class_of(key: Key, unit: Unit) -> &'static str {
    match key {
        Key::Fraction(_) => "key fraction",
        Key::Unit(own) if own == unit => "key unit on",
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

/// Presses a key in the active field, at its caret.
fn type_into(desk: Desk, key: Key) {
    let Some(active) = desk.sight.with_untracked(|sight| sight.active) else { return };
    let Some(input) = browser::input(active.name) else { return };
    let text = input.value();
    let caret = |position: Option<u32>| position.map_or(usize::MAX, |utf16| char_index(&text, utf16));
    let start = caret(input.selection_start().ok().flatten());
    let end = caret(input.selection_end().ok().flatten());
    let decimal = desk.bench.with_untracked(|bench| bench.decimal);
    let entry = press(&Entry { text: text.clone(), start, end }, key, decimal);
    input.set_value(&entry.text);
    desk.fresh.set_value(false);
    if !browser::has_focus(&input) {
        browser::focus(active.name);
    }
    let at = utf16_index(&entry.text, entry.end);
    let _ = input.set_selection_range(at, at);
    desk.set(active.name, entry.text);
}

fn char_index(text: &str, utf16: u32) -> usize {
    let mut units = 0;
    text.chars()
        .take_while(|c| {
            units += c.len_utf16();
            units <= utf16 as usize
        })
        .count()
}

fn utf16_index(text: &str, chars: usize) -> u32 {
    u32::try_from(text.chars().take(chars).map(char::len_utf16).sum::<usize>()).unwrap_or(u32::MAX)
}
