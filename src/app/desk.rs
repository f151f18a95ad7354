//! The desk: the slots, opened once, and the screen derived from the one in use.

use leptos::prelude::*;

use super::browser;
use super::field;
use super::pad::ActiveField;
use super::slot::Slot;
use crate::form::Bench;
use crate::form::route::{self, Place, Route};
use crate::form::screen::{Deed, Screen, after, screen};
use crate::form::shelf::{Keyboard, ShelfForm, Theme};
use crate::store;

/// What is in sight besides the forms. Kept in one signal: each type of signal costs a phone a kilobyte.
#[derive(Clone, Default)]
pub(super) struct Sight {
    /// The screen shown.
    pub(super) route: Route,
    /// The field the pad types into.
    pub(super) active: Option<ActiveField>,
    /// Whether the pad shows its back.
    pub(super) turned: bool,
    /// Something to say above the page; empty when there is nothing.
    pub(super) notice: String,
    /// What the copy button says for a moment after it was tapped; else empty.
    pub(super) copied: String,
    /// Whether a new version waits.
    pub(super) update_waits: bool,
}

/// Everything the app shares. Cheap to copy: all of it is signals.
#[derive(Clone, Copy)]
pub(super) struct Desk {
    /// What is in sight.
    pub(super) sight: RwSignal<Sight>,
    /// What the shelf and the device make of texts.
    pub(super) bench: Memo<Bench>,
    /// What is shown.
    pub(super) screen: Memo<Screen>,
    /// Whether the active field has just been entered, so that a tap selects all of it.
    pub(super) fresh: StoredValue<bool>,
    slots: StoredValue<Vec<Slot>>,
    shelf: Slot,
}

impl Desk {
    /// Opens everything that is stored.
    pub(super) fn open() -> Desk {
        let sight = RwSignal::new(Sight { update_waits: browser::page_flag("data-update"), ..Sight::default() });
        if let Err(problem) = store::trial() {
            sight.update(|sight| sight.notice = problem.to_string());
        }
        // Each form once, that of the shelf last.
        let mut slots: Vec<Slot> = Vec::new();
        for route in Place::ALL.iter().flat_map(|place| place.tools()) {
            if slots.iter().all(|slot| slot.key() != route.form_key()) {
                slots.push(Slot::open(route.form_key(), sight));
            }
        }
        let shelf = slots[slots.len() - 1];
        let device = browser::device_decimal();
        let bench = Memo::new(move |_| shelf.with(|texts| ShelfForm::of(texts).bench(device)));
        let slots = StoredValue::new(slots);
        let shown = move |_: Option<&Screen>| {
            let route = sight.with(|sight| sight.route);
            bench.with(|bench| slot_of(slots, route).with(|texts| screen(route, texts, bench)))
        };
        Desk { sight, bench, screen: Memo::new(shown), fresh: StoredValue::new(false), slots, shelf }
    }

    /// The screen shown.
    pub(super) fn route(self) -> Route {
        self.sight.with(|sight| sight.route)
    }

    /// Makes a field the active one, or none.
    pub(super) fn activate(self, field: Option<ActiveField>) {
        if self.sight.with_untracked(|sight| sight.active != field) {
            self.sight.update(|sight| {
                sight.active = field;
                sight.turned = false;
            });
        }
    }

    /// Takes over what other tabs have saved.
    pub(super) fn follow(self) {
        self.slots.with_value(|slots| slots.iter().for_each(|slot| slot.follow()));
    }

    /// The slot of the screen shown.
    pub(super) fn slot(self) -> Slot {
        slot_of(self.slots, self.route())
    }

    /// Does a deed to the form of the screen shown, and lets it be undone.
    pub(super) fn act(self, deed: Deed<'_>) {
        let route = untrack(|| self.route());
        slot_of(self.slots, route).replace(|texts| after(route, texts, deed));
    }

    /// Goes where an address leads, with what it carries.
    pub(super) fn arrive(self, hash: &str) {
        let address = route::read(hash);
        if untrack(|| self.route()) != address.route {
            self.sight.update(|sight| {
                sight.route = address.route;
                sight.active = None;
            });
            self.begin();
        }
        for (name, text) in &address.carried {
            self.act(Deed::Take(name, text));
        }
        if address.unknown {
            self.sight.update(|sight| sight.notice = "No page has that address. This is Measure, in Service.".into());
        }
        if address.unknown || !address.carried.is_empty() {
            browser::replace_hash(&address.route.href());
        }
    }

    /// Another screen begins at its top, under its name, with its first number ready.
    pub(super) fn begin(self) {
        browser::set_title(untrack(|| self.route()).label());
        browser::scroll_to_top("page");
        browser::next_frame(move || field::open_first(self));
    }

    /// The look chosen.
    pub(super) fn theme(self) -> Theme {
        self.shelf.with(Theme::of)
    }

    /// Whether numbers are entered on the app's own pad.
    pub(super) fn uses_pad(self) -> bool {
        self.shelf.with(Keyboard::of) == Keyboard::Pad
    }
}

fn slot_of(slots: StoredValue<Vec<Slot>>, route: Route) -> Slot {
    slots.with_value(|slots| *slots.iter().find(|slot| slot.key() == route.form_key()).unwrap_or(&slots[0]))
}
