//! What the desk asks of the browser, done.

use std::rc::Rc;

use super::browser;
use super::tab::Tab;
use crate::desk::{Effect, News};

pub(super) fn do_effect(tab: &Rc<Tab>, effect: Effect) {
    match effect {
        Effect::Go(to) => browser::go(&to),
        Effect::Replace(to) => browser::replace_hash(&to),
        Effect::Copy(text) => {
            let tab = Rc::clone(tab);
            browser::copy(&text, move |done| tab.tell(&News::Copied(done)));
        }
        Effect::Send(name, texts) => browser::send(name, &texts),
        Effect::Later(milliseconds, news) => {
            let tab = Rc::clone(tab);
            browser::later(milliseconds, move || tab.tell(&news));
        }
        Effect::Begin(title) => {
            browser::set_title(title);
            browser::scroll_to_top("page");
        }
        Effect::Enter(field) => browser::next_frame(move || {
            browser::focus(field);
            browser::select(field);
        }),
        Effect::Select(field) => browser::next_frame(move || browser::select(field)),
        Effect::Show(field) => browser::show(field.to_owned()),
        Effect::Leave => browser::next_frame(browser::leave_input),
    }
}
