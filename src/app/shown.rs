//! The page in the document: mounted once, and drawn again when what is to be drawn has changed.

use std::rc::Rc;

use leptos::prelude::{Get, ReadUntracked, Set, mount_to};
use leptos::reactive::signal::ArcRwSignal;
use web_sys::HtmlElement;

use super::draw::nodes;
use super::element::Page;
use super::listen::listen;
use crate::desk::View;
use crate::screen::Act;

/// The page as it was drawn last.
#[derive(Clone)]
pub(super) struct Shown(ArcRwSignal<Page>);

impl Shown {
    /// Draws the page in place of what is below `root`, and hands on what a person does there.
    pub(super) fn mount(root: HtmlElement, view: &View, hand: Rc<dyn Fn(Act)>) -> Shown {
        let page = ArcRwSignal::new(Page(nodes(view)));
        listen(&root, page.clone(), hand);
        root.set_text_content(None);
        let read = page.clone();
        mount_to(root, move || move || read.get()).forget();
        Shown(page)
    }

    /// Draws it again, by the end of the turn.
    pub(super) fn draw(&self, view: &View) {
        let page = Page(nodes(view));
        if *self.0.read_untracked() != page {
            self.0.set(page);
        }
    }
}
