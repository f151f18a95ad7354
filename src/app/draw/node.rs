//! Pieces of the page, as plain data.

use std::borrow::Cow;
use std::sync::Arc;

use crate::screen::pad::Key;
use crate::screen::{Act, Button};
use crate::text::Decimal;

/// Words of the page; most stand in the program.
pub type Text = Cow<'static, str>;

/// Attributes that an element has for good.
pub type Fixed = &'static [(&'static str, &'static str)];

/// The name of an attribute, and what it says.
pub type Attribute = (&'static str, Text);

/// A piece of the page. Cheap to clone.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Node {
    /// Words.
    Words(Text),
    /// An element.
    Element(Arc<Element>),
}

/// An element of HTML or SVG.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Element {
    /// Its tag.
    pub tag: &'static str,
    /// Attributes that it has for good.
    pub fixed: Fixed,
    /// Attributes that may change; those that are off are left out.
    pub attributes: Vec<Attribute>,
    /// What a person can change in it.
    pub live: Option<Live>,
    /// What is in it.
    pub children: Vec<Node>,
    /// What a tap on it does.
    pub tap: Option<Tap>,
}

/// What a person can change in an element, as it must stand now.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Live {
    /// The text of an input.
    Value(String),
    /// Whether a radio button is on.
    Checked(bool),
    /// Whether an option of a list is chosen.
    Selected(bool),
}

/// What a tap does.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Tap {
    /// An act.
    Act(Act),
    /// Puts a text in a field, and the focus there, since the button goes.
    Fix(&'static str, String),
    /// Presses a key of the pad.
    Press(Press),
}

/// A key pressed into a field.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Press {
    /// The field.
    pub field: &'static str,
    /// The key.
    pub key: Key,
    /// The decimal mark.
    pub decimal: Decimal,
    /// Whether the pad turns to its front again: the digits come next.
    pub turns: bool,
}

impl From<Element> for Node {
    fn from(element: Element) -> Node {
        Node::Element(Arc::new(element))
    }
}

/// The element that a path leads to: at each turn the number of the child, elements alone counted.
#[must_use]
pub fn at<'a>(nodes: &'a [Node], path: &[usize]) -> Option<&'a Element> {
    let (turn, rest) = path.split_first()?;
    let element = |node: &'a Node| match node {
        Node::Words(_) => None,
        Node::Element(element) => Some(element.as_ref()),
    };
    let element = nodes.iter().filter_map(element).nth(*turn)?;
    if rest.is_empty() { Some(element) } else { at(&element.children, rest) }
}

/// Words that are a person's own, or counted.
#[inline(never)]
pub(super) fn owned(words: &str) -> Text {
    Text::Owned(words.to_owned())
}

/// Such words as a piece of the page.
pub(super) fn words(words: &str) -> Node {
    Node::Words(owned(words))
}

/// An element of which nothing but what is in it changes.
pub(super) fn element(tag: &'static str, fixed: Fixed, children: Vec<Node>) -> Node {
    with(tag, fixed, Vec::new(), children)
}

/// An element with attributes that may change.
#[inline(never)]
pub(super) fn with(tag: &'static str, fixed: Fixed, attributes: Vec<Attribute>, children: Vec<Node>) -> Node {
    Element { tag, fixed, attributes, children, ..Element::default() }.into()
}

/// An element with nothing but words in it.
#[inline(never)]
pub(super) fn said(tag: &'static str, fixed: Fixed, said: Text) -> Node {
    element(tag, fixed, vec![Node::Words(said)])
}

/// A number, and its unit where it has one.
pub(super) fn number_and_unit(number: &str, unit: &str) -> Vec<Node> {
    let mut drawn = vec![said("b", &[], owned(number))];
    if !unit.is_empty() {
        drawn.extend([Node::Words(" ".into()), said("i", &[], owned(unit))]);
    }
    drawn
}

/// A link; `is_here` marks the one that leads to what is shown.
pub(super) fn link(href: &str, label: Text, is_here: bool) -> Node {
    let mut attributes = vec![("href", owned(href))];
    if is_here {
        attributes.push(("aria-current", "page".into()));
    }
    with("a", &[], attributes, vec![Node::Words(label)])
}

/// A button; without a tap it is one that cannot be tapped now.
#[inline(never)]
pub(super) fn button(class: &'static str, label: Text, spoken: &str, tap: Option<Tap>) -> Node {
    let mut attributes = Vec::new();
    if !class.is_empty() {
        attributes.push(("class", class.into()));
    }
    if !spoken.is_empty() {
        attributes.push(("aria-label", owned(spoken)));
    }
    if tap.is_none() {
        attributes.push(("disabled", "".into()));
    }
    let children = vec![Node::Words(label)];
    Element { tag: "button", fixed: &[("type", "button")], attributes, children, tap, ..Element::default() }.into()
}

/// A button that carries its act.
pub(super) fn act_button(class: &'static str, shown: &Button) -> Node {
    if let Act::Go(href) = &shown.act {
        let attributes = vec![("class", class.into()), ("href", owned(href))];
        return with("a", &[], attributes, vec![words(&shown.label)]);
    }
    button(class, owned(&shown.label), &shown.spoken, Some(Tap::Act(shown.act.clone())))
}
