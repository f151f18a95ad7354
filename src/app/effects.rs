//! What the desk asks of the browser, done.

use std::rc::Rc;

use super::browser;
use crate::desk::{Effect, News};

/// Does an effect; what it brings back is told.
pub(super) fn do_effect(effect: Effect, tell: &Rc<dyn Fn(&News)>) {
    match effect {
        Effect::Go(to) => browser::go(&to),
        Effect::Replace(to) => browser::replace_hash(&to),
        Effect::Step => browser::step(),
        Effect::Back => browser::back(),
        Effect::Instead(to) => browser::go_instead(&to),
        Effect::Copy(text) => {
            let tell = Rc::clone(tell);
            browser::copy(&text, move |done| tell(&News::Copied(done)));
        }
        Effect::Send(name, texts) => browser::send(name, &texts),
        Effect::Speak(words) => browser::speak(&words),
        Effect::Later(milliseconds, news) => {
            let tell = Rc::clone(tell);
            browser::later(milliseconds, move || tell(&news));
        }
        Effect::Begin(title) => {
            browser::set_title(title);
            browser::scroll_to_top("page");
        }
        Effect::Enter(field) => browser::next_frame(move || {
            browser::focus(field);
            browser::select(field);
        }),
        Effect::Show(field) => {
            browser::show(format!("{field}-problem"));
            browser::show(field.to_owned());
        }
        Effect::Reach(id) => {
            browser::show(id.to_owned());
            browser::next_frame(move || browser::focus(id));
        }
        Effect::Leave => browser::next_frame(browser::leave_input),
    }
}
