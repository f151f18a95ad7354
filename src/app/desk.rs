//! The desk: the slots, opened once, and the screen derived from the one in use.

use leptos::prelude::*;

use super::browser;
use super::pad::ActiveField;
use super::slot::Slot;
use crate::form::route::{self, Route};
use crate::form::screen::{Deed, Screen, after, screen};
use crate::form::shelf::{Keyboard, ShelfForm};
use crate::form::{Bench, Fields};
use crate::store;

/// Everything the app shares. Cheap to copy: all of it is signals.
#[derive(Clone, Copy)]
pub(super) struct Desk {
    /// The screen shown.
    pub(super) route: RwSignal<Route>,
    /// Something to say above the page; empty when there is nothing.
    pub(super) notice: RwSignal<String>,
    /// What the shelf and the device make of texts.
    pub(super) bench: Memo<Bench>,
    /// What is shown.
    pub(super) screen: Memo<Screen>,
    /// The field the pad types into.
    pub(super) active: RwSignal<Option<ActiveField>>,
    /// What the copy button says for a moment after it was tapped; else empty.
    pub(super) copied: RwSignal<String>,
    /// Whether the active field has just been entered, so that a tap selects all of it.
    pub(super) fresh: StoredValue<bool>,
    slots: StoredValue<Vec<Slot>>,
    shelf: Slot,
}

impl Desk {
    /// Opens everything that is stored.
    pub(super) fn open() -> Desk {
        let notice = RwSignal::new(String::new());
        if !store::is_working() {
            notice.set(store::SaveProblem::Blocked.to_string());
        }
        let keys = [Route::Measure, Route::Scale, Route::Acid, Route::MilkWash, Route::Serves, Route::Shelf];
        let slots: Vec<Slot> = keys.iter().map(|route| Slot::open(route.form_key(), notice)).collect();
        let shelf = slots[slots.len() - 1];
        let device = browser::device_decimal();
        let bench = Memo::new(move |_| shelf.with(|texts| ShelfForm::from_texts(texts).bench(device)));
        let route = RwSignal::new(Route::default());
        let slots = StoredValue::new(slots);
        let shown = move |_: Option<&Screen>| {
            let route = route.get();
            bench.with(|bench| slot_of(slots, route).with(|texts| screen(route, texts, bench)))
        };
        Desk {
            route,
            notice,
            bench,
            screen: Memo::new(shown),
            active: RwSignal::new(None),
            copied: RwSignal::new(String::new()),
            fresh: StoredValue::new(false),
            slots,
            shelf,
        }
    }

    /// The slot of the screen shown.
    pub(super) fn slot(self) -> Slot {
        slot_of(self.slots, self.route.get())
    }

    /// Does a deed to the form of the screen shown, and lets it be undone.
    pub(super) fn act(self, deed: Deed<'_>) {
        let route = self.route.get_untracked();
        slot_of(self.slots, route).replace(|texts| after(route, texts, deed));
    }

    /// Goes where an address leads, with what it carries.
    pub(super) fn arrive(self, hash: &str) {
        let address = route::read(hash);
        if self.route.get_untracked() != address.route {
            self.active.set(None);
            self.route.set(address.route);
        }
        for (name, text) in &address.carried {
            self.act(Deed::Take(name, text));
        }
        if address.unknown {
            self.notice.set("No page has that address. This is Measure, in Service.".into());
        }
        if address.unknown || !address.carried.is_empty() {
            browser::replace_hash(&address.route.href());
        }
    }

    /// What is chosen on the shelf.
    pub(super) fn shelf(self) -> ShelfForm {
        self.shelf.with(ShelfForm::from_texts)
    }

    /// Whether numbers are entered on the app's own pad.
    pub(super) fn uses_pad(self) -> bool {
        self.shelf().keyboard() == Keyboard::Pad
    }
}

fn slot_of(slots: StoredValue<Vec<Slot>>, route: Route) -> Slot {
    slots.with_value(|slots| *slots.iter().find(|slot| slot.key() == route.form_key()).unwrap_or(&slots[0]))
}
