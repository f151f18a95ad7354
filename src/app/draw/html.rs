//! Pieces of the page as HTML: for the first paint, and to look at in tests.

use super::node::{Element, Live, Node};

/// Pieces of the page as text.
#[must_use]
pub fn html(nodes: &[Node]) -> String {
    let mut text = String::new();
    for node in nodes {
        write(node, &mut text);
    }
    text
}

fn write(node: &Node, text: &mut String) {
    let element = match node {
        Node::Words(words) => return escape(words, text),
        Node::Element(element) => element,
    };
    text.push('<');
    text.push_str(element.tag);
    for (name, value) in element.fixed {
        attribute(name, value, text);
    }
    for (name, value) in &element.attributes {
        attribute(name, value, text);
    }
    let inside = live(element, text);
    text.push('>');
    // A field to type in has nothing inside, and no end.
    if element.tag == "input" {
        return;
    }
    escape(inside, text);
    element.children.iter().for_each(|child| write(child, text));
    text.push_str("</");
    text.push_str(element.tag);
    text.push('>');
}

/// Writes how a field stands, as an attribute; what stands inside it instead.
fn live<'a>(element: &'a Element, text: &mut String) -> &'a str {
    match &element.live {
        Some(Live::Value(value)) if element.tag == "textarea" => return value,
        Some(Live::Value(value)) if !value.is_empty() => attribute("value", value, text),
        Some(Live::Checked(true)) => attribute("checked", "", text),
        Some(Live::Selected(true)) => attribute("selected", "", text),
        _ => {}
    }
    ""
}

fn attribute(name: &str, value: &str, text: &mut String) {
    text.push(' ');
    text.push_str(name);
    text.push_str("=\"");
    escape(value, text);
    text.push('"');
}

fn escape(words: &str, text: &mut String) {
    for c in words.chars() {
        match c {
            '&' => text.push_str("&amp;"),
            '<' => text.push_str("&lt;"),
            '>' => text.push_str("&gt;"),
            '"' => text.push_str("&quot;"),
            c => text.push(c),
        }
    }
}
