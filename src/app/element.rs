//! The page as a view of Leptos: one function makes any element, one draws it over what stands there.
//!
//! Leptos' own erased types make any element too, but take every attribute off and put it on again at each drawing,
//! set a text that is being typed to `undefined` in between, know a namespace by type alone, and take `div` for another
//! tag than `DIV`. A type of its own for each shape of element costs a phone kilobytes. So the page implements the two
//! traits that Leptos draws through, once.

use leptos::tachys::html::attribute::any_attribute::AnyAttribute;
use leptos::tachys::hydration::Cursor;
use leptos::tachys::no_attrs;
use leptos::tachys::renderer::{Rndr, types};
use leptos::tachys::view::{Mountable, Position, PositionState, Render, RenderHtml};
use wasm_bindgen::JsCast;
use web_sys::{HtmlInputElement, HtmlOptionElement};

use super::draw::{Element, Live, Node, Text, html, kept};

const SVG: &str = "http://www.w3.org/2000/svg";

/// What is to be drawn.
#[derive(Clone, PartialEq)]
pub(super) struct Page(pub(super) Vec<Node>);

/// A piece of the page that stands in the document.
struct Drawn {
    node: Node,
    stands: types::Node,
    children: Vec<Drawn>,
}

/// The page as it stands in the document.
pub(super) struct Standing {
    parent: Option<types::Element>,
    drawn: Vec<Drawn>,
}

impl Render for Page {
    type State = Standing;

    fn build(self) -> Standing {
        Standing { parent: None, drawn: self.0.into_iter().map(make).collect() }
    }

    fn rebuild(self, state: &mut Standing) {
        if let Some(parent) = &state.parent {
            draw_all(parent, &mut state.drawn, &self.0);
        }
    }
}

impl Mountable for Standing {
    fn unmount(&mut self) {
        self.drawn.iter().for_each(|drawn| Rndr::remove(&drawn.stands));
        self.parent = None;
    }

    fn mount(&mut self, parent: &types::Element, marker: Option<&types::Node>) {
        self.drawn.iter().for_each(|drawn| Rndr::insert_node(parent, &drawn.stands, marker));
        self.parent = Some(parent.clone());
    }

    fn insert_before_this(&self, child: &mut dyn Mountable) -> bool {
        match (&self.parent, self.drawn.first()) {
            (Some(parent), Some(first)) => {
                child.mount(parent, Some(&first.stands));
                true
            }
            _ => false,
        }
    }

    fn elements(&self) -> Vec<types::Element> {
        Vec::new()
    }
}

/// Makes a piece of the page.
fn make(node: Node) -> Drawn {
    let element = match &node {
        Node::Words(words) => {
            let stands = Rndr::create_text_node(words).into();
            return Drawn { node, stands, children: Vec::new() };
        }
        Node::Element(element) => element,
    };
    let stands = Rndr::create_element(element.tag, element.is_svg().then_some(SVG));
    element.fixed.iter().for_each(|(name, value)| Rndr::set_attribute(&stands, name, value));
    set_attributes(&stands, &[], &element.attributes);
    let children: Vec<Drawn> = element.children.iter().cloned().map(make).collect();
    children.iter().for_each(|child| Rndr::insert_node(&stands, &child.stands, None));
    set_live(&stands, element);
    Drawn { node, stands: stands.into(), children }
}

/// Draws a piece over one like it.
fn draw(drawn: &mut Drawn, node: &Node) {
    if drawn.node.is_same(node) {
        return;
    }
    match (&drawn.node, node) {
        (Node::Element(old), Node::Element(new)) => {
            let stands = drawn.stands.unchecked_ref();
            set_attributes(stands, &old.attributes, &new.attributes);
            draw_all(stands, &mut drawn.children, &new.children);
            set_live(stands, new);
        }
        (_, Node::Words(words)) => Rndr::set_text(drawn.stands.unchecked_ref(), words),
        _ => {}
    }
    drawn.node = node.clone();
}

/// Draws pieces over those that stand there: what is kept keeps its place in the document, and with it the text that is
/// typed in it, caret and focus.
fn draw_all(parent: &types::Element, drawn: &mut Vec<Drawn>, nodes: &[Node]) {
    if drawn.len() == nodes.len() && drawn.iter().zip(nodes).all(|(old, node)| old.node.is_like(node)) {
        return drawn.iter_mut().zip(nodes).for_each(|(old, node)| draw(old, node));
    }
    let kept = kept(&drawn.iter().map(|old| &old.node).collect::<Vec<_>>(), nodes);
    let mut old: Vec<Option<Drawn>> = std::mem::take(drawn).into_iter().map(Some).collect();
    for (_, gone) in old.iter_mut().enumerate().filter(|(at, _)| !kept.contains(&Some(*at))) {
        gone.take().iter().for_each(|gone| Rndr::remove(&gone.stands));
    }
    // From the end, so that each finds what it stands before.
    let mut before = old.len();
    for (node, from) in nodes.iter().zip(kept).rev() {
        let stays = from.is_some_and(|from| from < before);
        let one = match from.and_then(|from| old.get_mut(from)?.take()) {
            Some(mut one) => {
                draw(&mut one, node);
                one
            }
            None => make(node.clone()),
        };
        if stays {
            before = from.unwrap_or(before);
        } else {
            Rndr::insert_node(parent, &one.stands, drawn.last().map(|next: &Drawn| &next.stands));
        }
        drawn.push(one);
    }
    drawn.reverse();
}

fn set_attributes(stands: &types::Element, old: &[(&'static str, Text)], new: &[(&'static str, Text)]) {
    for (name, _) in old.iter().filter(|(name, _)| new.iter().all(|(other, _)| other != name)) {
        Rndr::remove_attribute(stands, name);
    }
    for (name, value) in new.iter().filter(|attribute| !old.contains(attribute)) {
        Rndr::set_attribute(stands, name, value);
    }
}

/// Sets what a person can change, where it stands otherwise: to set the same text again would move the caret.
fn set_live(stands: &types::Element, element: &Element) {
    match &element.live {
        None => {}
        Some(Live::Value(text)) => {
            let input: &HtmlInputElement = stands.unchecked_ref();
            if input.value() != *text {
                input.set_value(text);
            }
        }
        Some(Live::Checked(is_on)) => {
            let radio: &HtmlInputElement = stands.unchecked_ref();
            if radio.checked() != *is_on {
                radio.set_checked(*is_on);
            }
        }
        Some(Live::Selected(is_chosen)) => {
            let option: &HtmlOptionElement = stands.unchecked_ref();
            if option.selected() != *is_chosen {
                option.set_selected(*is_chosen);
            }
        }
    }
}

no_attrs!(Page);

/// As Leptos wants it of all that can stand in a view; nothing here is drawn on a server or taken over from one.
impl RenderHtml for Page {
    type AsyncOutput = Page;
    type Owned = Page;

    const MIN_LENGTH: usize = 0;

    fn dry_resolve(&mut self) {}

    async fn resolve(self) -> Page {
        self
    }

    fn to_html_with_buf(self, text: &mut String, _: &mut Position, _: bool, _: bool, _: Vec<AnyAttribute>) {
        text.push_str(&html(&self.0));
    }

    fn hydrate<const FROM_SERVER: bool>(self, _: &Cursor, _: &PositionState) -> Standing {
        self.build()
    }

    fn into_owned(self) -> Page {
        self
    }
}
