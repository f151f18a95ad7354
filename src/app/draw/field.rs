//! Fields: label, input, hint, problem and their aria, written once.

use super::node::{Attribute, Element, Fixed, Live, Node, Tap, Text, button, element, owned, said, with, words};
use crate::desk::View;
use crate::screen::pad::{Keys, unit_typed};
use crate::screen::{Field, Fix, Input, Opt, Problem};
use crate::text;

/// A field, and what is wrong with it.
pub(super) fn field(view: &View, field: &Field) -> Vec<Node> {
    let mut drawn = vec![match &field.input {
        Input::Amount(keys) => amount(view, field, *keys),
        Input::Words { placeholder } => words_row(field, placeholder, WORDS),
        Input::Search { placeholder } => words_row(field, placeholder, SEARCHED),
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
    // The unit that what is typed has taken is shown behind it, and put in the field when that is left.
    let (shown, assumed) = match &view.as_typed {
        Some((name, typed)) if *name == field.name => {
            (typed, owned(field.text.strip_prefix(typed.trim_end()).unwrap_or_default().trim_start()))
        }
        _ => (&field.text, assumed_unit(view, keys, &field.text).into()),
    };
    let assumed = said("span", &[("class", "assumed"), ("aria-hidden", "true")], assumed);
    row(class, field, vec![input(field, shown, fixed, Some(mode)), assumed])
}

/// A row with a label and a line of words, or with words to look for; the phone's own keyboard.
fn words_row(field: &Field, placeholder: &'static str, fixed: Fixed) -> Node {
    let class = if field.problem.is_some() { "field words wrong" } else { "field words" };
    row(class, field, vec![input(field, &field.text, fixed, Some(("placeholder", placeholder.into())))])
}

/// Attributes of a line of words.
const WORDS: Fixed = &[
    ("type", "text"),
    ("autocomplete", "off"),
    ("autocapitalize", "off"),
    ("spellcheck", "false"),
    ("enterkeyhint", "done"),
    ("maxlength", "2000"),
];

/// Those of words to look for.
const SEARCHED: Fixed = &[
    ("type", "search"),
    ("autocomplete", "off"),
    ("autocapitalize", "off"),
    ("spellcheck", "false"),
    ("enterkeyhint", "search"),
    ("maxlength", "200"),
];

/// A row with a day and a time, on the browser's own picker.
fn when(field: &Field) -> Node {
    let class = if field.problem.is_some() { "field when wrong" } else { "field when" };
    row(class, field, vec![input(field, &field.text, &[("type", "datetime-local")], None)])
}

/// Several lines of words under their label; the phone's own keyboard.
fn lines(field: &Field, placeholder: &'static str) -> Node {
    let rows = field.text.lines().count().clamp(3, 12) + 1;
    let mut attributes =
        vec![("id", field.name.into()), ("rows", rows.to_string().into()), ("placeholder", placeholder.into())];
    let fixed = &[("autocapitalize", "off"), ("spellcheck", "false"), ("maxlength", "20000")];
    attributes.extend(problem_of_input(field));
    row("lines", field, vec![live("textarea", fixed, attributes, Live::Value(field.text.clone()))])
}

/// A label, and what it is of.
fn row(class: &'static str, field: &Field, inside: Vec<Node>) -> Node {
    let mut children =
        vec![with("label", &[], vec![("for", field.name.into())], vec![Node::Words(field.label.into())])];
    children.extend(inside);
    let attributes = vec![("class", class.into())];
    Element { tag: "div", attributes, children, ..Element::default() }.into()
}

fn input(field: &Field, text: &str, fixed: Fixed, more: Option<Attribute>) -> Node {
    let mut attributes = vec![("id", field.name.into())];
    attributes.extend(more);
    attributes.extend(problem_of_input(field));
    live("input", fixed, attributes, Live::Value(text.to_owned()))
}

/// That something is wrong with a field, and where that is said.
fn problem_of_input(field: &Field) -> impl Iterator<Item = Attribute> {
    let invalid = field.problem.is_some().then(|| ("aria-invalid", "true".into()));
    invalid.into_iter().chain(field.problem.is_some().then(|| ("aria-describedby", problem_id(field.name))))
}

/// An element that a person can change.
fn live(tag: &'static str, fixed: Fixed, attributes: Vec<Attribute>, live: Live) -> Node {
    Element { tag, fixed, attributes, live: Some(live), ..Element::default() }.into()
}

/// The unit a bare number is read in, shown dim behind it.
fn assumed_unit(view: &View, keys: Keys, typed: &str) -> &'static str {
    let number_alone = unit_typed(typed).is_none() && typed.chars().any(text::is_digit);
    match keys {
        Keys::Weight if number_alone => "g",
        Keys::Celsius if number_alone && !typed.ends_with(['F', 'f', 'C', 'c']) => "°C",
        Keys::Seconds if number_alone && !typed.contains([':', 's', 'm', 'h']) => "s",
        Keys::Percent if !typed.contains('%') => "%",
        Keys::Pour | Keys::Batch | Keys::Either | Keys::Compared | Keys::Bulk if number_alone => view.bare_unit,
        _ => "",
    }
}

fn problem_id(name: &str) -> Text {
    format!("{name}-problem").into()
}

/// What is wrong with a field, and readings to choose from in one tap.
fn problem_of(name: &'static str, problem: &Problem) -> Node {
    let mut children = vec![said("span", &[], owned(&problem.words))];
    fix_buttons(&problem.fixes, |text| Tap::Fix(name, text), &mut children);
    with("p", &[("class", "problem")], vec![("id", problem_id(name))], children)
}

/// Texts that would settle something, one tap each.
pub(super) fn fix_buttons(fixes: &[Fix], tap: impl Fn(String) -> Tap, drawn: &mut Vec<Node>) {
    drawn.extend(fixes.iter().map(|fix| button("fix", owned(&fix.label), &fix.spoken, Some(tap(fix.text.clone())))));
}

/// Radio buttons as a tray with a scrap of tape over the chosen one. Long words get wider cells, short ones narrow ones.
fn chips(field: &Field, options: &[Opt], captioned: bool) -> Node {
    let caption = said("legend", if captioned { &[] } else { &[("class", "unseen")] }, field.label.into());
    let chip = |option: &Opt| {
        let attributes = vec![("name", field.name.into()), ("value", owned(&option.key))];
        let radio = live("input", &[("type", "radio")], attributes, Live::Checked(option.key == field.text));
        element("label", &[("class", "chip")], vec![radio, said("span", &[], owned(&option.label))])
    };
    let letters = |option: &Opt| option.label.chars().count();
    let class = match options.iter().map(letters).max().unwrap_or(0) {
        ..=6 => "tray narrow",
        7..=12 => "tray",
        _ => "tray wide",
    };
    let tray = with("div", &[], vec![("class", class.into())], options.iter().map(chip).collect());
    element("fieldset", &[("class", "chips")], vec![caption, tray])
}

/// A row with a native list.
fn pick(field: &Field, options: &[Opt]) -> Node {
    let choice = |option: &Opt| -> Node {
        Element {
            tag: "option",
            attributes: vec![("value", owned(&option.key))],
            live: Some(Live::Selected(option.key == field.text)),
            children: vec![words(&option.label)],
            ..Element::default()
        }
        .into()
    };
    let mut children = Vec::new();
    for options in options.chunk_by(|one, next| one.group == next.group) {
        let group = options[0].group;
        let choices = options.iter().map(choice);
        if group.is_empty() {
            children.extend(choices);
        } else {
            children.push(with("optgroup", &[], vec![("label", group.into())], choices.collect()));
        }
    }
    row("field pick", field, vec![with("select", &[], vec![("id", field.name.into())], children)])
}
