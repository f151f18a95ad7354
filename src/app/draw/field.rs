//! Fields: label, input, hint, problem and their aria, written once.

use super::node::{Element, Fixed, Live, Node, Tap, Text, button, element, said, words};
use crate::desk::View;
use crate::screen::pad::{Keys, unit_typed};
use crate::screen::{Field, Fix, Input, Opt, Problem};
use crate::text;

/// A field, and what is wrong with it.
pub(super) fn field(view: &View, field: &Field) -> Vec<Node> {
    let mut drawn = vec![match &field.input {
        Input::Amount(keys) => amount(view, field, *keys),
        Input::Words { placeholder } => words_row(field, placeholder),
        Input::Lines { placeholder } => lines(field, placeholder),
        Input::Chips { options, captioned } => chips(field, options, *captioned),
        Input::Pick(options) => pick(field, options),
        Input::When => when(field),
    }];
    drawn.extend(field.problem.iter().map(|problem| problem_of(field.name, problem)));
    drawn
}

/// A row with a label on the left and a number on the right.
fn amount(view: &View, field: &Field, keys: Keys) -> Node {
    let class = match (view.active == Some(field.name), field.problem.is_some()) {
        (false, false) => "field",
        (true, false) => "field on",
        (false, true) => "field wrong",
        (true, true) => "field on wrong",
    };
    let fixed = &[
        ("type", "text"),
        ("autocomplete", "off"),
        ("autocapitalize", "off"),
        ("spellcheck", "false"),
        ("enterkeyhint", "done"),
        ("maxlength", "20000"),
    ];
    let mode = ("inputmode", if view.has_pad { "none" } else { "text" }.into());
    let assumed = assumed_unit(view, keys, &field.text);
    let assumed = said("span", &[("class", "assumed"), ("aria-hidden", "true")], assumed);
    row(class, field, vec![input(field, fixed, Some(mode)), assumed])
}

/// A row with a label and a line of words; the phone's own keyboard.
fn words_row(field: &Field, placeholder: &'static str) -> Node {
    let class = if field.problem.is_some() { "field words wrong" } else { "field words" };
    let fixed = &[
        ("type", "text"),
        ("autocomplete", "off"),
        ("autocapitalize", "off"),
        ("spellcheck", "false"),
        ("enterkeyhint", "done"),
        ("maxlength", "2000"),
    ];
    row(class, field, vec![input(field, fixed, Some(("placeholder", placeholder.into())))])
}

/// A row with a day and a time, on the browser's own picker.
fn when(field: &Field) -> Node {
    let class = if field.problem.is_some() { "field when wrong" } else { "field when" };
    row(class, field, vec![input(field, &[("type", "datetime-local")], None)])
}

/// Several lines of words under their label; the phone's own keyboard.
fn lines(field: &Field, placeholder: &'static str) -> Node {
    let rows = field.text.lines().count().clamp(3, 12) + 1;
    let area = Element {
        tag: "textarea",
        fixed: &[("autocapitalize", "off"), ("spellcheck", "false"), ("maxlength", "20000")],
        attributes: vec![
            ("id", field.name.into()),
            ("rows", rows.to_string().into()),
            ("placeholder", placeholder.into()),
        ],
        live: Some(Live::Value(field.text.clone())),
        ..Element::default()
    };
    row("lines", field, vec![area.into()])
}

/// A label, and what it is of.
fn row(class: &'static str, field: &Field, mut inside: Vec<Node>) -> Node {
    let label = Element {
        tag: "label",
        attributes: vec![("for", field.name.into())],
        children: vec![words(field.label)],
        ..Element::default()
    };
    inside.insert(0, label.into());
    Element {
        tag: "div",
        key: field.name,
        attributes: vec![("class", class.into())],
        children: inside,
        ..Element::default()
    }
    .into()
}

fn input(field: &Field, fixed: Fixed, more: Option<(&'static str, Text)>) -> Node {
    let mut attributes = vec![("id", Text::Borrowed(field.name))];
    attributes.extend(more);
    if field.problem.is_some() {
        attributes.push(("aria-invalid", "true".into()));
        attributes.push(("aria-describedby", problem_id(field.name)));
    }
    let live = Some(Live::Value(field.text.clone()));
    Element { tag: "input", fixed, attributes, live, ..Element::default() }.into()
}

/// The unit a bare number is read in, shown dim behind it.
fn assumed_unit(view: &View, keys: Keys, typed: &str) -> &'static str {
    let number_alone = unit_typed(typed).is_none() && typed.chars().any(text::is_digit);
    match keys {
        Keys::Weight if number_alone => "g",
        Keys::Celsius if number_alone && !typed.ends_with(['F', 'f', 'C', 'c']) => "°C",
        Keys::Percent if !typed.contains('%') => "%",
        Keys::Pour | Keys::Batch | Keys::Either | Keys::Bulk if number_alone => view.bare_unit,
        _ => "",
    }
}

fn problem_id(name: &str) -> Text {
    format!("{name}-problem").into()
}

/// What is wrong with a field, and readings to choose from in one tap.
fn problem_of(name: &'static str, problem: &Problem) -> Node {
    let mut children = vec![said("span", &[], problem.words.clone())];
    fix_buttons(&problem.fixes, |text| Tap::Fix(name, text), &mut children);
    let attributes = vec![("id", problem_id(name))];
    Element { tag: "p", fixed: &[("class", "problem")], attributes, children, ..Element::default() }.into()
}

/// Texts that would settle something, one tap each.
pub(super) fn fix_buttons(fixes: &[Fix], tap: impl Fn(String) -> Tap, drawn: &mut Vec<Node>) {
    drawn.extend(fixes.iter().map(|fix| button("fix", fix.label.clone(), &fix.spoken, Some(tap(fix.text.clone())))));
}

/// Radio buttons that look like chips.
fn chips(field: &Field, options: &[Opt], captioned: bool) -> Node {
    let legend = said("legend", if captioned { &[] } else { &[("class", "unseen")] }, field.label);
    let mut children = vec![legend];
    children.extend(options.iter().map(|Opt { key, label, .. }| {
        let radio = Element {
            tag: "input",
            fixed: &[("type", "radio")],
            attributes: vec![("name", field.name.into()), ("value", Text::Owned(key.clone()))],
            live: Some(Live::Checked(*key == field.text)),
            ..Element::default()
        };
        element("label", &[("class", "chip")], vec![radio.into(), said("span", &[], label.clone())])
    }));
    Element { tag: "fieldset", fixed: &[("class", "chips")], key: field.name, children, ..Element::default() }.into()
}

/// A row with a native list.
fn pick(field: &Field, options: &[Opt]) -> Node {
    let mut children = Vec::new();
    for options in options.chunk_by(|one, next| one.group == next.group) {
        let group = options[0].group;
        let options = options.iter().map(|option| choice(option, option.key == field.text));
        if group.is_empty() {
            children.extend(options);
        } else {
            let attributes = vec![("label", group.into())];
            let children_of = options.collect();
            let group = Element { tag: "optgroup", attributes, children: children_of, ..Element::default() };
            children.push(group.into());
        }
    }
    let list = Element { tag: "select", attributes: vec![("id", field.name.into())], children, ..Element::default() };
    row("field", field, vec![list.into()])
}

fn choice(option: &Opt, is_chosen: bool) -> Node {
    Element {
        tag: "option",
        attributes: vec![("value", Text::Owned(option.key.clone()))],
        live: Some(Live::Selected(is_chosen)),
        children: vec![words(option.label.clone())],
        ..Element::default()
    }
    .into()
}
