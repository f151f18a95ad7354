//! The page in the document: mounted once, and drawn again when what is to be drawn has changed.

use std::cell::RefCell;
use std::rc::Rc;

use leptos::prelude::{Get, Set, mount_to};
use leptos::reactive::signal::ArcRwSignal;
use web_sys::HtmlElement;

use super::draw::Canvas;
use super::element::Page;
use super::listen::listen;
use crate::desk::View;
use crate::screen::Act;

/// The page as it was drawn last.
pub(super) struct Shown {
    page: ArcRwSignal<Page>,
    canvas: RefCell<Canvas>,
}

impl Shown {
    /// Draws the page in place of what is below `root`, and hands on what a person does there.
    pub(super) fn mount(root: HtmlElement, view: View, hand: Rc<dyn Fn(Act)>) -> Shown {
        let canvas = Canvas::of(view);
        let page = ArcRwSignal::new(Page(canvas.parts()));
        listen(&root, page.clone(), hand);
        root.set_text_content(None);
        let read = page.clone();
        mount_to(root, move || move || read.get()).forget();
        Shown { page, canvas: RefCell::new(canvas) }
    }

    /// Draws it again, by the end of the turn.
    pub(super) fn draw(&self, view: View) {
        let parts = {
            let mut canvas = self.canvas.borrow_mut();
            canvas.draw(view);
            canvas.parts()
        };
        self.page.set(Page(parts));
    }
}
