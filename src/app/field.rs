//! Fields: label, input, hint, problem and their aria, written once.

use leptos::prelude::*;

use super::browser;
use super::desk::Desk;
use super::pad::ActiveField;
use super::part::{On, all, button, nothing, on_tap};
use crate::screen::pad::{Keys, unit_typed};
use crate::screen::route::Route;
use crate::screen::{Block, Field, Input, Opt};
use crate::screen::{Fix, Problem};
use crate::text;

/// A field and what is wrong with it.
pub(super) fn field(desk: Desk, field: &Field) -> AnyView {
    let filled_in = match &field.input {
        Input::Amount(keys) => amount(desk, field, *keys),
        Input::Words { placeholder } => words(desk, field, placeholder),
        Input::Lines { placeholder } => lines(desk, field, placeholder),
        Input::Chips { options, captioned } => chips(desk, field, options, *captioned),
        Input::Pick(options) => pick(desk, field, options),
        Input::When => when(desk, field),
    };
    view! { {filled_in}{problem(desk, field)} }.into_any()
}

/// Keeps what is typed or chosen.
fn typed(desk: Desk, name: &'static str) -> On {
    Box::new(move |event| desk.set(name, event_target_value(&event)))
}

/// As [`typed`], for a choice that may bring other fields.
fn chosen(desk: Desk, name: &'static str) -> On {
    Box::new(move |event| {
        let before = first_of(desk);
        desk.set(name, event_target_value(&event));
        browser::next_frame(move || keep_pad(desk, before));
    })
}

/// A row with a label on the left and a number on the right.
fn amount(desk: Desk, field: &Field, keys: Keys) -> AnyView {
    let name = field.name;
    let active = ActiveField { name, keys };
    let is_wrong = field.problem.is_some();
    let class = match (desk.sight.with(|sight| sight.active == Some(active)), is_wrong) {
        (false, false) => "field",
        (true, false) => "field on",
        (false, true) => "field wrong",
        (true, true) => "field on wrong",
    };
    let on_focus: Box<dyn FnMut(leptos::ev::FocusEvent)> = Box::new(move |_| {
        desk.fresh.set_value(true);
        // Where the window has come back to a field that never was left, nothing moves under the finger.
        if desk.sight.with_untracked(|sight| sight.active != Some(active)) {
            activate(desk, active);
        }
        browser::select(name);
    });
    // The first tap selects all, ready for a new number; a second one puts the caret where it lands.
    let on_click = on_tap(move || {
        activate(desk, active);
        if desk.fresh.get_value() {
            desk.fresh.set_value(false);
            browser::select(name);
        }
    });
    let on_key: Box<dyn FnMut(leptos::ev::KeyboardEvent)> = Box::new(move |event| {
        desk.fresh.set_value(false);
        match event.key().as_str() {
            "Enter" => browser::select(name),
            "Escape" => desk.activate(None),
            _ => {}
        }
    });
    view! {
        <div class=class>
            <label for=name>{field.label}</label>
            <input
                id=name
                type="text"
                inputmode=if desk.uses_pad() { "none" } else { "text" }
                autocomplete="off"
                autocapitalize="off"
                spellcheck="false"
                enterkeyhint="done"
                maxlength="20000"
                aria-invalid=is_wrong.then_some("true")
                aria-describedby=is_wrong.then(|| problem_id(name))
                prop:value=field.text.clone()
                on:input=typed(desk, name)
                on:focus=on_focus
                on:click=on_click
                on:keydown=on_key
            />
            <span class="assumed" aria-hidden="true">{assumed_unit(desk, keys, &field.text)}</span>
        </div>
    }
    .into_any()
}

fn activate(desk: Desk, field: ActiveField) {
    desk.activate(Some(field));
    browser::show(field.name);
}

/// The unit a bare number is read in, shown dim behind it.
fn assumed_unit(desk: Desk, keys: Keys, typed: &str) -> &'static str {
    let number_alone = unit_typed(typed).is_none() && typed.chars().any(text::is_digit);
    match keys {
        Keys::Weight if number_alone => "g",
        Keys::Celsius if number_alone && !typed.ends_with(['F', 'f', 'C', 'c']) => "°C",
        Keys::Percent if !typed.contains('%') => "%",
        Keys::Pour | Keys::Batch | Keys::Either | Keys::Bulk if number_alone => {
            desk.bench.with(|bench| text::typed(bench.house.usual_unit))
        }
        _ => "",
    }
}

fn problem_id(name: &str) -> String {
    format!("{name}-problem")
}

/// What is wrong with a field, and readings to choose from in one tap.
fn problem(desk: Desk, field: &Field) -> AnyView {
    let name = field.name;
    let Some(Problem { words, fixes, .. }) = &field.problem else { return nothing() };
    let fixes = fix_buttons(fixes, move |text| {
        desk.set(name, text.to_owned());
        // The button is gone now: the focus goes where it was meant for.
        browser::focus(name);
    });
    view! { <p class="problem" id=problem_id(name)><span>{words.clone()}</span>{fixes}</p> }.into_any()
}

/// Texts that would settle something, one tap each.
pub(super) fn fix_buttons(fixes: &[Fix], put: impl Fn(&str) + Clone + 'static) -> AnyView {
    all(fixes.iter().map(|Fix { label, text, .. }| {
        let (put, text) = (put.clone(), text.clone());
        button("fix", label.clone(), true, on_tap(move || put(&text)))
    }))
}

/// A row with a label and a line of words; the phone's own keyboard.
fn words(desk: Desk, field: &Field, placeholder: &'static str) -> AnyView {
    let name = field.name;
    let is_wrong = field.problem.is_some();
    view! {
        <div class=if is_wrong { "field words wrong" } else { "field words" }>
            <label for=name>{field.label}</label>
            <input
                id=name
                type="text"
                autocomplete="off"
                autocapitalize="off"
                spellcheck="false"
                enterkeyhint="done"
                maxlength="2000"
                placeholder=placeholder
                aria-invalid=is_wrong.then_some("true")
                aria-describedby=is_wrong.then(|| problem_id(name))
                prop:value=field.text.clone()
                on:input=typed(desk, name)
                on:click=on_tap(move || desk.activate(None))
            />
        </div>
    }
    .into_any()
}

/// A row with a day and a time, on the browser's own picker.
fn when(desk: Desk, field: &Field) -> AnyView {
    let name = field.name;
    let is_wrong = field.problem.is_some();
    view! {
        <div class=if is_wrong { "field when wrong" } else { "field when" }>
            <label for=name>{field.label}</label>
            <input
                id=name
                type="datetime-local"
                aria-invalid=is_wrong.then_some("true")
                aria-describedby=is_wrong.then(|| problem_id(name))
                prop:value=field.text.clone()
                on:input=typed(desk, name)
                on:click=on_tap(move || desk.activate(None))
            />
        </div>
    }
    .into_any()
}

/// Several lines of words under their label; the phone's own keyboard.
fn lines(desk: Desk, field: &Field, placeholder: &'static str) -> AnyView {
    let name = field.name;
    let rows = field.text.lines().count().clamp(3, 12) + 1;
    view! {
        <div class="lines">
            <label for=name>{field.label}</label>
            <textarea
                id=name
                rows=rows.to_string()
                placeholder=placeholder
                autocapitalize="off"
                spellcheck="false"
                maxlength="20000"
                prop:value=field.text.clone()
                on:input=typed(desk, name)
                on:click=on_tap(move || desk.activate(None))
            ></textarea>
        </div>
    }
    .into_any()
}

/// Radio buttons that look like chips.
fn chips(desk: Desk, field: &Field, options: &[Opt], captioned: bool) -> AnyView {
    let name = field.name;
    let chips = all(options.iter().map(|Opt { key, label, .. }| {
        let checked = *key == field.text;
        view! {
            <label class="chip">
                <input type="radio" name=name value=key.clone() prop:checked=checked on:change=chosen(desk, name)/>
                <span>{label.clone()}</span>
            </label>
        }
        .into_any()
    }));
    let class = if captioned { "" } else { "unseen" };
    view! { <fieldset class="chips"><legend class=class>{field.label}</legend>{chips}</fieldset> }.into_any()
}

/// A row with a native list.
fn pick(desk: Desk, field: &Field, options: &[Opt]) -> AnyView {
    let name = field.name;
    let grouped = options.chunk_by(|one, next| one.group == next.group);
    let options = all(grouped.map(|options| {
        let group = options[0].group;
        let options = all(options.iter().map(|Opt { key, label, .. }| {
            view! { <option value=key.clone() prop:selected=*key == field.text>{label.clone()}</option> }.into_any()
        }));
        if group.is_empty() { options } else { view! { <optgroup label=group>{options}</optgroup> }.into_any() }
    }));
    view! {
        <div class="field">
            <label for=name>{field.label}</label>
            <select id=name on:change=typed(desk, name)>{options}</select>
        </div>
    }
    .into_any()
}

/// The first number of a screen, unless words come before it: those are typed on the phone's own keyboard.
fn first_of(desk: Desk) -> Option<ActiveField> {
    desk.screen.with_untracked(|screen| {
        let typed_in = screen.blocks.iter().find_map(|block| match block {
            Block::Field(field)
                if matches!(field.input, Input::Amount(_) | Input::Lines { .. } | Input::Words { .. }) =>
            {
                Some(field)
            }
            _ => None,
        });
        match typed_in? {
            Field { name, input: Input::Amount(keys), .. } => Some(ActiveField { name, keys: *keys }),
            _ => None,
        }
    })
}

/// After a choice that brought another first number the pad goes there; the focus stays on the choice.
fn keep_pad(desk: Desk, before: Option<ActiveField>) {
    let first = first_of(desk);
    let active = desk.sight.with_untracked(|sight| sight.active);
    if let (Some(field), Some(_)) = (first.filter(|_| first != before), active) {
        activate(desk, field);
        browser::select(field.name);
    }
}

/// Makes the first number of a screen the active field: the pad is ready when a tool opens.
pub(super) fn open_first(desk: Desk) {
    let first = first_of(desk);
    let reads_first = |route| matches!(route, Route::Shelf | Route::Run | Route::Label);
    let calls_for_it = untrack(|| !reads_first(desk.route()) && desk.uses_pad());
    match first.filter(|_| calls_for_it) {
        Some(field) => {
            browser::focus(field.name);
            activate(desk, field);
            browser::select(field.name);
        }
        None => browser::leave_input(),
    }
}
