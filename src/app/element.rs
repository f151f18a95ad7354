//! The page as views of Leptos: one function makes any element, of Leptos' own types.

use std::sync::Arc;

use leptos::html::custom;
use leptos::prelude::{AddAnyAttr, AnyView, ElementChild, IntoAny};
use leptos::svg::{circle, defs, path, pattern, rect, svg, text};

use super::attributes::Attributes;
use super::draw::{Element, Node};

/// Pieces of the page, one after the other.
pub(super) fn views(nodes: &[Node]) -> Vec<AnyView> {
    let view = |node: &Node| match node {
        Node::Words(words) => words.clone().into_owned().into_any(),
        Node::Element(one) => element(one, views(&one.children)),
    };
    nodes.iter().map(view).collect()
}

/// An element with its attributes, and what stands in it.
///
/// Leptos tells one tag from another by the name that the document has for it, which of HTML is in capitals.
pub(super) fn element(element: &Arc<Element>, children: Vec<AnyView>) -> AnyView {
    let attributes = Attributes(Arc::clone(element));
    match element.tag {
        "svg" => svg().add_any_attr(attributes).child(children).into_any(),
        "rect" => rect().add_any_attr(attributes).child(children).into_any(),
        "circle" => circle().add_any_attr(attributes).child(children).into_any(),
        "defs" => defs().add_any_attr(attributes).child(children).into_any(),
        "pattern" => pattern().add_any_attr(attributes).child(children).into_any(),
        "path" => path().add_any_attr(attributes).child(children).into_any(),
        "text" => text().add_any_attr(attributes).child(children).into_any(),
        tag => custom(tag.to_ascii_uppercase()).add_any_attr(attributes).child(children).into_any(),
    }
}
