//! All attributes of an element as one attribute of Leptos, and with them what a person can change in it.
//!
//! Leptos has a list of attributes of any kind too, but takes each off and puts it on again whenever the element is
//! drawn, and sets a text that is being typed to `undefined` in between, which costs the caret.

use std::sync::Arc;

use leptos::attr::{Attribute, NextAttribute};
use leptos::tachys::renderer::{Rndr, types};
use wasm_bindgen::JsCast;
use web_sys::{HtmlInputElement, HtmlOptionElement};

use super::draw::{Element, Live};

/// The attributes of this element of the page.
#[derive(Clone)]
pub(super) struct Attributes(pub(super) Arc<Element>);

/// The element in the document, and what it was drawn from last.
pub(super) struct Standing {
    stands: types::Element,
    drawn: Arc<Element>,
}

/// Every attribute with its value.
fn all(element: &Element) -> impl Iterator<Item = (&'static str, &str)> {
    let fixed = element.fixed.iter().map(|(name, value)| (*name, *value));
    fixed.chain(element.attributes.iter().map(|(name, value)| (*name, value.as_ref())))
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

impl Attribute for Attributes {
    const MIN_LENGTH: usize = 0;

    type State = Standing;
    type AsyncOutput = Attributes;
    type Cloneable = Attributes;
    type CloneableOwned = Attributes;

    fn build(self, stands: &types::Element) -> Standing {
        all(&self.0).for_each(|(name, value)| Rndr::set_attribute(stands, name, value));
        set_live(stands, &self.0);
        Standing { stands: stands.clone(), drawn: self.0 }
    }

    fn rebuild(self, state: &mut Standing) {
        let (old, new, stands) = (&state.drawn, &self.0, &state.stands);
        if Arc::ptr_eq(old, new) {
            return;
        }
        for (name, _) in all(old).filter(|(name, _)| all(new).all(|(other, _)| other != *name)) {
            Rndr::remove_attribute(stands, name);
        }
        for (name, value) in all(new).filter(|attribute| all(old).all(|other| other != *attribute)) {
            Rndr::set_attribute(stands, name, value);
        }
        set_live(stands, new);
        state.drawn = self.0;
    }

    fn into_cloneable(self) -> Attributes {
        self
    }

    fn into_cloneable_owned(self) -> Attributes {
        self
    }

    fn dry_resolve(&mut self) {}

    async fn resolve(self) -> Attributes {
        self
    }

    // Nothing here is drawn on a server, or taken over from one.

    fn html_len(&self) -> usize {
        0
    }

    fn to_html(self, _: &mut String, _: &mut String, _: &mut String, _: &mut String) {}

    fn hydrate<const FROM_SERVER: bool>(self, stands: &types::Element) -> Standing {
        self.build(stands)
    }
}

impl NextAttribute for Attributes {
    type Output<Next: Attribute> = (Attributes, Next);

    fn add_any_attr<Next: Attribute>(self, next: Next) -> (Attributes, Next) {
        (self, next)
    }
}
