//! This tab: the desk, the store it keeps things in, and what happens to it from outside.

use std::cell::{Cell, RefCell};
use std::rc::Rc;

use super::browser;
use super::effects::do_effect;
use super::shown::Shown;
use crate::desk::{Desk, Device, Effect, News, World};
use crate::screen::{Act, Screen};
use crate::store::{self, Local};

/// The desk of this tab, and the page as it was drawn last.
struct Tab {
    desk: RefCell<Desk>,
    shown: RefCell<Option<Shown>>,
    look: Cell<&'static str>,
    /// Whether what the strip says changes with the time.
    is_timed: Cell<bool>,
    /// The screen as it was drawn last.
    answer: RefCell<Rc<Screen>>,
    /// The answer that was read out last, or is to be.
    spoken: RefCell<String>,
}

fn world<'a>() -> World<'a> {
    World { keeper: &Local, now: store::now(), fresh: &browser::fresh_id }
}

impl Tab {
    /// Does what a person does.
    fn act(self: &Rc<Tab>, act: &Act) {
        let effects = self.desk.borrow_mut().act(act, &world());
        self.draw(effects);
        self.speak();
    }

    /// Takes in what has happened.
    fn tell(self: &Rc<Tab>, news: &News) {
        let effects = self.desk.borrow_mut().tell(news, &world());
        self.draw(effects);
    }

    /// Draws what has changed, then does what is left to do.
    fn draw(self: &Rc<Tab>, effects: Vec<Effect>) {
        let view = self.desk.borrow_mut().view(&world());
        if self.look.replace(view.look) != view.look {
            browser::set_look(view.look);
        }
        if self.is_timed.replace(view.shows_time) != view.shows_time {
            browser::mark_page("data-timed", view.shows_time);
        }
        *self.answer.borrow_mut() = Rc::clone(&view.screen);
        if let Some(shown) = self.shown.borrow().as_ref() {
            shown.draw(view);
        }
        let tab = Rc::clone(self);
        let tell: Rc<dyn Fn(&News)> = Rc::new(move |news| tab.tell(news));
        effects.into_iter().for_each(|effect| do_effect(effect, &tell));
    }
}

/// Milliseconds after the last key before an answer is read out.
const SETTLED: u64 = 700;

impl Tab {
    /// Has the answer read out, once it has settled: of a clock, only what a tap brings.
    fn speak(self: &Rc<Tab>) {
        let answer = self.answer.borrow().spoken();
        if *self.spoken.borrow() == answer {
            return;
        }
        self.spoken.replace(answer.clone());
        let tab = Rc::clone(self);
        browser::later(SETTLED, move || {
            if *tab.spoken.borrow() == answer {
                browser::speak(&answer);
            }
        });
    }
}

/// What the page has noted so far.
fn noted() -> News {
    News::Page {
        update_waits: browser::page_flag("data-update"),
        can_install: browser::page_flag("data-can-install"),
        is_installed: browser::page_flag("data-installed"),
    }
}

/// Waits until boot.js says that all is there which opening needs.
pub fn start() {
    browser::on_event("meniscus-begin", open);
}

/// Opens everything that is stored, and then puts the app in place of the first screen.
fn open() {
    let device = Device {
        decimal: browser::device_decimal(),
        ahead: browser::minutes_ahead,
        page: browser::page_address(),
        has_keyboard: browser::has_keyboard(),
    };
    let (desk, effects) = Desk::open(device, store::trial(), &world());
    // The browser gets its turn between the two.
    browser::later(0, move || appear(desk, effects));
}

fn appear(mut desk: Desk, mut effects: Vec<Effect>) {
    let Some(root) = browser::app_root() else { return };
    for news in [noted(), News::Address(browser::hash())] {
        effects.extend(desk.tell(&news, &world()));
    }
    let view = desk.view(&world());
    let tab = Rc::new(Tab {
        desk: RefCell::new(desk),
        shown: RefCell::default(),
        look: Cell::new(""),
        is_timed: Cell::new(false),
        answer: RefCell::new(Rc::clone(&view.screen)),
        spoken: RefCell::default(),
    });
    let handed = Rc::clone(&tab);
    let stands = move |shown| {
        *tab.shown.borrow_mut() = Some(shown);
        hear(&tab);
        tab.draw(effects);
        browser::send("meniscus-opened", &[]);
    };
    Shown::mount(root, view, Rc::new(move |act| handed.act(&act)), Box::new(stands));
}

/// Hears what happens besides.
fn hear(tab: &Rc<Tab>) {
    let on = |name: &str, news: fn() -> News| {
        let tab = Rc::clone(tab);
        browser::on_event(name, move || tab.tell(&news()));
    };
    let with = |name: &str, field: &'static str, news: fn(String) -> News| {
        let tab = Rc::clone(tab);
        browser::on_event_with(name, field, move |text| tab.tell(&news(text)));
    };
    on("popstate", || News::Back);
    // A field that goes while it has the focus has the browser lay the page out once more, half drawn: 5 of 17 ms.
    on("hashchange", || {
        browser::leave_input();
        browser::fetch_rest();
        News::Address(browser::hash())
    });
    for name in ["meniscus-update-waiting", "meniscus-can-install", "meniscus-installed"] {
        on(name, noted);
    }
    on("resize", || News::Keyboard(browser::has_keyboard()));
    // A phone may have slept through what other tabs did.
    on("visibilitychange", || if browser::is_visible() { News::Seen } else { News::Tick });
    with("storage", "key", News::Stored);
    with("meniscus-given", "text", News::Given);
    with("meniscus-packed", "text", News::Packed);
    with("meniscus-file", "text", News::File);
    let tab = Rc::clone(tab);
    browser::every_second(move || tab.tell(&News::Tick));
}
