//! What the buttons do: to the form of the screen shown, and to the book.

use std::sync::Arc;

use leptos::prelude::*;

use super::browser;
use super::desk::{Desk, slot_of};
use super::ticker;
use crate::book::{Card, DEMO, Entry, Part, Run};
use crate::screen::route::Route;
use crate::screen::{Deed, Do, Screen};
use crate::store::deeds::{self, Merge};
use crate::store::{self, Keeper, Local, backup, recipe};
use crate::tool::batch::run;
use crate::tool::specs::{all as specs, card};
use crate::tool::{self, after};

/// What a backup is called.
const BACKUP_FILE: &str = "meniscus-backup.json";

impl Desk {
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
            (Some((Route::Card, id, at)), deed) => bench.book.card(&id).and_then(|entry| {
                let card = card::changed(&entry.value, at, deed)?;
                Some(deeds::change(entry, &card, "the lines", now))
            }),
            (Some((Route::Run, id, _)), Deed::Clear) => bench.book.run(&id).map(|entry| Ok(deeds::delete_run(entry))),
            (Some((Route::Run, id, _)), deed) => bench.book.run(&id).and_then(|entry| {
                let (run, what) = run::changed(&entry.value, deed, &untrack(|| ticker::timed_now(self)))?;
                Some(deeds::change_run(entry, &run, what, now))
            }),
            (_, Deed::Take("packed", text)) => return browser::send("meniscus-unpack", &[("text", text)]),
            (_, Deed::Clear) if route == Route::Backup => return self.library.put_away(),
            _ => None,
        };
        if let Some(worked) = worked {
            let Ok(opened) = self.library.perform(worked) else { return };
            self.tick.set(now);
            self.open_record(opened);
            if !matches!(deed, Deed::Put(_)) {
                return;
            }
        }
        slot_of(self.slots, route).replace(|texts| after(route, texts, deed));
    }

    /// Does something to the book.
    pub(super) fn do_to_book(self, what: Do) {
        self.activate(None);
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
                let lines = self.screen.with_untracked(|screen| screen.field("spec").map(|field| field.text.clone()));
                Some(deeds::new_card(&lines.unwrap_or_default(), &id(), now))
            }
            (Do::NewRun, _) => Some(deeds::new_run(&Run { made: now, ..Run::default() }, &id(), now)),
            (Do::ToRun, _) => return self.to_run(),
            (Do::NewOwn, _) => Some(deeds::new_own(&id(), now)),
            (Do::Demo, _) => Some(deeds::demo(&book, now)),
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
        let Ok(opened) = self.library.perform(worked) else { return };
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

    /// Puts what the screen makes on the run sheet that is open, or on a new one.
    fn to_run(self) {
        let book = self.bench.get_untracked().book;
        let (now, route) = (store::now(), untrack(|| self.route()));
        let (name, parts) = match self.record() {
            Some((Route::Card, id, at)) => {
                let Some(entry) = book.card(&id) else { return };
                (entry.value.name.clone(), run::parts_of(&id, &entry.value, at))
            }
            _ => {
                // All texts of the form, also those that nobody has typed over.
                let texts = untrack(|| self.slot().with(|texts| after(route, texts, Deed::Put(&[]))));
                let bench = self.bench.get_untracked();
                let name = tool::plan(route, &texts, &bench).map(|plan| plan.title).unwrap_or_default();
                (name, vec![Part { tool: route.form_key().into(), texts, ..Part::default() }])
            }
        };
        let slot = slot_of(self.slots, Route::Run);
        let chosen = untrack(|| slot.with(|texts| texts.get("id").cloned())).and_then(|id| book.run(&id).cloned());
        let open = chosen.filter(|entry| entry.value.finished == 0 && entry.newer.is_none());
        let worked = match &open {
            Some(entry) => deeds::change_run(entry, &run::with_parts(&entry.value, parts), "a prep", now),
            None => {
                let run = Run { name, made: now, ..Run::default() };
                deeds::new_run(&run::with_parts(&run, parts), &browser::fresh_id(), now)
            }
        };
        let Ok(opened) = self.library.perform(worked) else { return };
        if let Some(id) = opened.or_else(|| open.map(|entry| entry.id.clone())) {
            slot.set("id", id.clone());
            slot.set("step", String::new());
            let book = self.bench.get_untracked().book;
            if let Some(entry) = book.run(&id) {
                let count = entry.value.parts.len();
                let name = entry.value.name.trim();
                self.say(&format!("On the run sheet “{name}”, as prep {count}. Batch, then Run sheet, shows it."));
            }
        }
    }

    /// Has boot.js pack the spec of the label shown, for its code.
    pub(super) fn pack_label(self) {
        self.library.with_cards();
        let book = self.bench.get_untracked().book;
        let (id, at) = untrack(|| {
            slot_of(self.slots, Route::Label).with(|texts| {
                let text = |name: &str| texts.get(name).cloned().unwrap_or_default();
                (text("spec"), text("at"))
            })
        });
        let Some(entry) = book.card(&id) else { return };
        let mut card = entry.value.clone();
        let at_way = at.parse().unwrap_or(0_usize).min(card.forms.len().saturating_sub(1));
        // The form alone, without notes: the code must stay coarse enough to print.
        card.forms = card.forms.into_iter().skip(at_way).take(1).collect();
        (card.notes, card.tags) = (String::new(), String::new());
        if let Ok(text) = backup::one(&id, &card) {
            self.library.share(&format!("{id}#{at}"));
            browser::send("meniscus-pack", &[("text", &text)]);
        }
    }

    /// A file has been shared or downloaded.
    pub(super) fn given(self, file: &str) {
        if file == BACKUP_FILE {
            slot_of(self.slots, Route::Backup).set("last", store::now().to_string());
            self.library.backed_up();
        }
    }

    /// The spec that is open.
    fn open_card(self) -> Option<Arc<Entry<Card>>> {
        let (_, id, _) = self.record()?;
        self.bench.get_untracked().book.card(&id).cloned()
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
                self.library.with_cards();
                if let Some(text) = self.library.backup() {
                    browser::give(BACKUP_FILE, &text);
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
                let Some(entry) = self.open_card() else { return };
                // What is shared of the demo is somebody's own.
                let id = if entry.id.starts_with(DEMO) { browser::fresh_id() } else { entry.id.clone() };
                if let Ok(text) = backup::one(&id, &entry.value) {
                    self.library.share(&entry.id);
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
                if let Some(entry) = self.open_card() {
                    browser::give("recipe.json", &recipe::recipes(&entry.value));
                }
            }
            Do::Csv => browser::give("batch.csv", &self.screen.with_untracked(Screen::csv)),
            Do::AllRuns => {
                self.slot().set("id", String::new());
                browser::replace_hash(&Route::Run.href());
            }
            Do::Print => browser::raise("meniscus-print"),
            Do::Picture => browser::raise("meniscus-picture"),
            Do::Paste => browser::raise("meniscus-paste"),
            Do::Text => {
                if let Some(entry) = self.open_card() {
                    browser::give("spec.txt", &card::plain(&entry.value));
                }
            }
            Do::ChooseFile => browser::raise("meniscus-choose-file"),
            Do::PutAway => self.library.put_away(),
            _ => {}
        }
    }
}
