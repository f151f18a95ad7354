//! The desk: the slots, opened once, and the screen derived from the one in use.

use leptos::prelude::*;

use super::browser;
use super::field;
use super::library::Library;
use super::pad::ActiveField;
use super::slot::Slot;
use super::ticker;
use crate::screen::Bench;
use crate::screen::route::{self, Place, Route};
use crate::screen::{Deed, Screen};
use crate::store;
use crate::tool::batch::run;
use crate::tool::screen;
use crate::tool::shelf::ingredients as own;
use crate::tool::shelf::settings::{Keyboard, ShelfForm, Theme};
use crate::tool::specs::card;

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
    /// Keys of what could not be saved.
    pub(super) unsaved: Vec<String>,
    /// Whether a new version waits.
    pub(super) update_waits: bool,
    /// Whether what is said above the page goes by itself.
    pub(super) is_passing: bool,
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
    /// What the bar has written down.
    pub(super) library: Library,
    /// The time, moved on every second; read by what shows it alone.
    pub(super) tick: RwSignal<u64>,
    pub(super) slots: StoredValue<Vec<Slot>>,
    shelf: Slot,
}

impl Desk {
    /// Opens everything that is stored.
    pub(super) fn open() -> Desk {
        let sight = RwSignal::new(Sight { update_waits: browser::page_flag("data-update"), ..Sight::default() });
        if let Err(problem) = store::trial() {
            sight.update(|sight| sight.notice = problem.to_string());
        }
        // Each form once.
        let mut slots: Vec<Slot> = Vec::new();
        for route in Place::ALL.iter().flat_map(|place| place.tools()) {
            if slots.iter().all(|slot| slot.key() != route.form_key()) {
                slots.push(Slot::open(route.form_key(), sight));
            }
        }
        let shelf = slots.iter().copied().find(|slot| slot.key() == Route::Shelf.form_key()).unwrap_or(slots[0]);
        let device = browser::device_decimal();
        let library = Library::open(sight);
        let bench =
            Memo::new(move |_| shelf.with(|texts| ShelfForm::of(texts).bench(device)).with_book(library.held()));
        let slots = StoredValue::new(slots);
        let tick = RwSignal::new(store::now());
        let shown = move |_: Option<&Screen>| {
            let route = sight.with(|sight| sight.route);
            bench.with(|bench| {
                let slot = slot_of(slots, route);
                match route {
                    Route::Run | Route::Label => {
                        slot.with(|texts| screen(route, texts, &ticker::at(bench, tick.get())))
                    }
                    _ => slot.with(|texts| screen(route, texts, bench)),
                }
            })
        };
        Desk { sight, bench, screen: Memo::new(shown), fresh: StoredValue::new(false), library, tick, slots, shelf }
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

    /// Takes over what another tab has saved under a key.
    pub(super) fn follow(self, key: &str) {
        match key.strip_prefix("meniscus/") {
            Some(key) if !key.starts_with("tool/") => self.library.follow(key),
            _ => self.slots.with_value(|slots| slots.iter().for_each(|slot| slot.follow())),
        }
    }

    /// Keeps a text of the screen shown: in the record that is open, or among the texts of the form.
    pub(super) fn set(self, name: &str, text: String) {
        let opened = match self.record() {
            Some((Route::Card, id, at)) if card::FIELDS.contains(&name) => self.library.edit_card(&id, at, name, &text),
            Some((Route::Run, id, _)) if run::FIELDS.contains(&name) => {
                let step = self.open_step();
                self.library.edit_run(&id, &step, name, &text)
            }
            Some((Route::Ingredients, id, _)) if own::FIELDS.contains(&name) => self.library.edit_own(&id, name, &text),
            _ => {
                self.slot().set(name, text);
                None
            }
        };
        self.save_again();
        // The same form of it stays open under its other id.
        if let Some(id) = opened {
            untrack(|| self.slot()).set("id", id);
        }
    }

    /// Saves what could not be saved: there may be room now.
    fn save_again(self) {
        if self.sight.with_untracked(|sight| !sight.unsaved.is_empty()) {
            self.slots.with_value(|slots| slots.iter().for_each(|slot| slot.save_again()));
            self.library.save_the_unsaved();
        }
    }

    /// The screen of a record, its id, and which way of making it is open.
    pub(super) fn record(self) -> Option<(Route, String, usize)> {
        untrack(|| {
            let route = self.route();
            let bench = self.bench.get();
            self.slot().with(|texts| {
                let id = texts.get("id").cloned().unwrap_or_default();
                match route {
                    Route::Card => {
                        bench.book.card(&id).map(|entry| (route, id.clone(), card::way_at(texts, &entry.value)))
                    }
                    Route::Ingredients => bench.book.own(&id).map(|_| (route, id.clone(), 0)),
                    Route::Run => bench.book.run(&id).map(|_| (route, id.clone(), 0)),
                    _ => None,
                }
            })
        })
    }

    /// Opens a record on the screen shown, if there is one to open.
    pub(super) fn open_record(self, id: Option<String>) {
        if let Some(id) = id {
            let route = untrack(|| self.route());
            browser::replace_hash(&route.href_with("id", &id));
            untrack(|| self.slot()).replace(|texts| {
                let mut texts = texts.clone();
                texts.insert("id".into(), id);
                texts.insert("at".into(), "0".into());
                texts
            });
        }
    }

    /// Whether the screen shown is of the book, whose deeds Undo takes back.
    pub(super) fn is_of_book(self) -> bool {
        matches!(self.route(), Route::Specs | Route::Card | Route::Backup | Route::Ingredients | Route::Run)
    }

    /// Whether the run sheet itself is shown.
    pub(super) fn shows_runs(self) -> bool {
        self.route() == Route::Run
    }

    /// The step of the run shown that is open.
    fn open_step(self) -> String {
        untrack(|| {
            let bench = self.bench.with(|bench| ticker::timed(self, bench));
            self.slot().with(|texts| run::open_step(texts, &bench))
        })
    }

    /// Keeps yields on the shelf.
    pub(super) fn keep_yield(self, puts: &[(&'static str, String)]) {
        for (name, text) in puts {
            let (name, text) = ((*name).to_owned(), text.clone());
            self.shelf.replace(|texts| {
                let mut texts = texts.clone();
                texts.insert(name, text);
                texts
            });
        }
        // What came out has been counted: once more it would be set against the new yield.
        untrack(|| self.slot()).set("got", String::new());
        self.say("Kept in Shelf, under your own yields. It counts from now on.");
    }

    /// Says something above the page, for a while.
    pub(super) fn say(self, words: &str) {
        self.sight.update(|sight| {
            words.clone_into(&mut sight.notice);
            sight.is_passing = true;
        });
        let said = words.to_owned();
        browser::later(6_000, move || {
            if self.sight.with_untracked(|sight| sight.notice == said) {
                self.sight.update(|sight| sight.notice.clear());
            }
        });
    }

    /// Whether there is something to undo.
    pub(super) fn can_undo(self) -> bool {
        if self.is_of_book() { self.bench.with(|bench| bench.book.last_act.is_some()) } else { self.slot().can_undo() }
    }

    /// Takes back what was done last.
    pub(super) fn undo(self) {
        if untrack(|| self.is_of_book()) { self.library.undo() } else { untrack(|| self.slot()).undo() }
    }

    /// The slot of the screen shown.
    pub(super) fn slot(self) -> Slot {
        slot_of(self.slots, self.route())
    }

    /// Goes where an address leads, with what it carries.
    pub(super) fn arrive(self, hash: &str) {
        let address = route::read(hash);
        if untrack(|| self.route()) != address.route {
            self.sight.update(|sight| {
                sight.route = address.route;
                sight.active = None;
                if std::mem::take(&mut sight.is_passing) && sight.unsaved.is_empty() {
                    sight.notice.clear();
                }
            });
            match address.route {
                Route::Specs | Route::Card => self.library.with_cards(),
                Route::Backup => {
                    self.library.with_cards();
                    self.library.count_room();
                }
                _ => {}
            }
            self.begin();
        }
        for (name, text) in &address.carried {
            self.act(Deed::Take(name, text));
        }
        if address.unknown {
            self.sight.update(|sight| sight.notice = "No page has that address. This is Measure, in Service.".into());
        }
        // Which record is open stays in the address: each tab has its own.
        let is_record = address.carried.iter().all(|(name, _)| name == "id");
        if address.route == Route::Label {
            self.pack_label();
        }
        if address.unknown || !is_record {
            browser::replace_hash(&address.route.href());
        }
    }

    /// Another screen begins at its top, under its name, with its first number ready.
    pub(super) fn begin(self) {
        browser::set_title(untrack(|| self.route()).label());
        browser::scroll_to_top("page");
        browser::next_frame(move || {
            field::open_first(self);
            // A new record begins with its name.
            let is_new = |screen: &Screen| screen.field("name").is_some_and(|field| field.text.is_empty());
            if self.screen.with_untracked(is_new) {
                browser::focus("name");
            }
        });
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

pub(super) fn slot_of(slots: StoredValue<Vec<Slot>>, route: Route) -> Slot {
    slots.with_value(|slots| *slots.iter().find(|slot| slot.key() == route.form_key()).unwrap_or(&slots[0]))
}
