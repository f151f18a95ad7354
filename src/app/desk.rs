//! The desk: the slots, opened once, and the screen derived from the one in use.

use leptos::prelude::*;

use super::browser;
use super::field;
use super::library::Library;
use super::pad::ActiveField;
use super::slot::Slot;
use crate::form::route::{self, Place, Route};
use crate::form::screen::{Deed, Do, Screen, after, screen};
use crate::form::shelf::{Keyboard, ShelfForm, Theme};
use crate::form::{Bench, card, own, specs};
use crate::store::deeds::{self, Merge};
use crate::store::{self, Keeper, Local};
use crate::store::{backup, recipe};

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
    /// What the bar has written down.
    pub(super) library: Library,
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
        let shown = move |_: Option<&Screen>| {
            let route = sight.with(|sight| sight.route);
            bench.with(|bench| slot_of(slots, route).with(|texts| screen(route, texts, bench)))
        };
        Desk { sight, bench, screen: Memo::new(shown), fresh: StoredValue::new(false), library, slots, shelf }
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
            Some((Route::Ingredients, id, _)) if own::FIELDS.contains(&name) => self.library.edit_own(&id, name, &text),
            _ => return self.slot().set(name, text),
        };
        self.open_record(opened);
    }

    /// The screen of a record, its id, and which way of making it is open.
    fn record(self) -> Option<(Route, String, usize)> {
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
                    _ => None,
                }
            })
        })
    }

    /// Opens a record on the screen shown, if there is one to open.
    fn open_record(self, id: Option<String>) {
        if let Some(id) = id {
            untrack(|| self.slot()).replace(|texts| {
                let mut texts = texts.clone();
                texts.insert("id".into(), id);
                texts.insert("at".into(), "0".into());
                texts
            });
        }
    }

    /// Whether the screen shown is of the book, whose deeds Undo takes back.
    fn is_of_book(self) -> bool {
        matches!(self.route(), Route::Specs | Route::Card | Route::Backup | Route::Ingredients)
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

    /// Does a deed to the form of the screen shown, and lets it be undone.
    pub(super) fn act(self, deed: Deed<'_>) {
        let route = untrack(|| self.route());
        let bench = self.bench.get_untracked();
        let now = store::now();
        let worked = match (self.record(), deed) {
            (Some((Route::Card, id, _)), Deed::Clear) => {
                bench.book.card(&id).map(|entry| Ok(deeds::delete_card(entry)))
            }
            (Some((Route::Ingredients, id, _)), Deed::Clear) => {
                bench.book.own(&id).map(|entry| Ok(deeds::delete_own(entry)))
            }
            (Some((Route::Card, id, at)), Deed::Put(puts)) => bench.book.card(&id).and_then(|entry| {
                let change = |card, (name, text): &(&str, String)| card::edited(&card, at, name, text).unwrap_or(card);
                let card = puts.iter().fold(entry.value.clone(), change);
                (card != entry.value).then(|| deeds::change(entry, &card, "the lines", now))
            }),
            (_, Deed::Take("new", lines)) => Some(deeds::new_card(lines, &browser::fresh_id(), now)),
            (_, Deed::Take("packed", text)) => return browser::send("meniscus-unpack", &[("text", text)]),
            (_, Deed::Clear) if route == Route::Backup => return self.library.put_away(),
            _ => None,
        };
        if let Some(worked) = worked {
            let opened = self.library.perform(worked);
            self.open_record(opened);
            if !matches!(deed, Deed::Put(_)) {
                return;
            }
        }
        slot_of(self.slots, route).replace(|texts| after(route, texts, deed));
    }

    /// Does something to the book.
    pub(super) fn do_to_book(self, what: Do) {
        let book = self.bench.get_untracked().book;
        let (now, id) = (store::now(), browser::fresh_id);
        let record = self.record();
        let open = record.as_ref().and_then(|(_, id, at)| Some((book.card(id)?, *at)));
        let importing = |merge| match &book.import {
            Some(Ok(import)) => Some(deeds::import(&book, import, merge, now, id)),
            _ => None,
        };
        let worked = match (what, open) {
            (Do::NewCard, _) => {
                // From Scale, its spec comes along.
                let lines = untrack(|| self.slot().with(|texts| texts.get("spec").cloned()));
                Some(deeds::new_card(&lines.unwrap_or_default(), &id(), now))
            }
            (Do::NewOwn, _) => Some(deeds::new_own(&id(), now)),
            (Do::Demo, _) => Some(deeds::demo(now)),
            (Do::RemoveDemo, _) => Some(Ok(deeds::remove_demo(&book))),
            (Do::Duplicate, Some((entry, _))) => Some(deeds::duplicate(entry, &id(), now)),
            (Do::AddWay, Some((entry, at))) => {
                Some(deeds::change(entry, &deeds::with_way(&entry.value, at), "a new form", now))
            }
            (Do::RemoveWay, Some((entry, at))) => {
                Some(deeds::change(entry, &deeds::without_way(&entry.value, at), "a form", now))
            }
            (Do::KeepThis, Some((entry, _))) => Some(deeds::keep_this(&book, entry, now)),
            (Do::KeepBoth, Some((entry, _))) => Some(deeds::keep_both(&book, entry, now, id)),
            (Do::TakeNew, _) => importing(Merge::NewOnly),
            (Do::TakeAll, _) => importing(Merge::Replace),
            (Do::TakeBoth, _) => importing(Merge::Beside),
            _ => None,
        };
        let Some(worked) = worked else { return self.do_else(what) };
        let opened = self.library.perform(worked);
        match (what, opened) {
            (Do::NewCard, Some(opened)) => browser::go(&Route::Card.href_with("id", &opened)),
            (Do::TakeNew | Do::TakeAll | Do::TakeBoth, _) => self.library.put_away(),
            (Do::AddWay, _) => {
                let last = open.map_or(0, |(entry, _)| entry.value.forms.len());
                self.slot().set("at", last.to_string());
            }
            (_, opened) => self.open_record(opened),
        }
    }

    /// The spec that is open: its id, and its text to share.
    fn shared_text(self) -> Option<(String, String)> {
        let book = self.bench.get_untracked().book;
        let (_, id, _) = self.record()?;
        let entry = book.card(&id)?;
        Some((id.clone(), backup::one(&id, &entry.value).ok()?))
    }

    /// Copies a text, and says so on the button for a moment.
    pub(super) fn copy(self, text: &str) {
        browser::copy(text, move |done| {
            self.sight.update(|sight| sight.copied = if done { "Copied" } else { "Can't copy here" }.into());
            browser::later(2000, move || self.sight.update(|sight| sight.copied.clear()));
        });
    }

    /// What does not change the book.
    fn do_else(self, what: Do) {
        match what {
            Do::More => {
                let shown = self.screen.with_untracked(Screen::rows);
                self.slot().set("shown", (shown + specs::STEP).to_string());
            }
            Do::Backup => {
                if let Some(text) = self.library.backup() {
                    browser::give("meniscus-backup.json", &text);
                    self.slot().set("last", store::now().to_string());
                    self.library.backed_up();
                }
            }
            Do::GiveUnsaved if self.is_of_book() => self.do_else(Do::Backup),
            Do::GiveUnsaved => {
                let texts = untrack(|| {
                    self.slot().with(|texts| {
                        texts.iter().map(|(name, text)| format!("{name}:\n{text}\n")).collect::<Vec<_>>().join("\n")
                    })
                });
                browser::give("meniscus-unsaved.txt", &texts);
            }
            Do::GiveUnread => {
                let book = self.bench.get_untracked().book;
                let texts: Vec<String> = book
                    .unread
                    .iter()
                    .map(|unread| {
                        format!("{}\n{}\n", unread.key, Local.get(&unread.key).ok().flatten().unwrap_or_default())
                    })
                    .collect();
                browser::give("meniscus-unread.txt", &texts.join("\n"));
            }
            Do::Share => {
                if let Some((entry, text)) = self.shared_text() {
                    self.library.share(&entry);
                    browser::send("meniscus-pack", &[("text", &text)]);
                }
            }
            Do::CopyLink => {
                let shared = self.bench.get_untracked().book.shared.clone();
                if let Some((_, link)) = shared {
                    self.copy(&link);
                }
            }
            Do::Recipe => {
                let book = self.bench.get_untracked().book;
                if let Some(entry) = self.record().and_then(|(_, id, _)| book.card(&id).cloned()) {
                    browser::give("recipe.json", &recipe::recipes(&entry.value));
                }
            }
            Do::Csv => browser::give("batch.csv", &self.screen.with_untracked(Screen::csv)),
            Do::ChooseFile => browser::raise("meniscus-choose-file"),
            Do::PutAway => self.library.put_away(),
            _ => {}
        }
    }

    /// Goes where an address leads, with what it carries.
    pub(super) fn arrive(self, hash: &str) {
        let address = route::read(hash);
        if untrack(|| self.route()) != address.route {
            self.sight.update(|sight| {
                sight.route = address.route;
                sight.active = None;
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
