//! What a backup holds beside the book: put together, compared with what is here, and taken.

use std::rc::Rc;

use super::{Desk, World};
use crate::book::{Besides, Import};
use crate::screen::route::Route;
use crate::screen::{Act, Stands, Texts};
use crate::store::deeds::{self, Deed, Merge};
use crate::store::ledger::{self, INGREDIENTS, ROOM, RUNS, SPECS};
use crate::store::{SaveProblem, besides};
use crate::tool::{Change, after};

/// What has been said on this device is no setting.
const SAID: &str = "install_said";

/// The screens whose texts are the tools': those of the book only say what is open.
fn tools() -> impl Iterator<Item = Route> {
    Route::ALL.iter().copied().filter(|route| !route.row().is_of_book && *route != Route::Shelf)
}

impl Desk {
    /// What is here beside the book.
    pub(super) fn besides(&self, world: &World<'_>) -> Besides {
        let mut settings = self.texts(Route::Shelf).clone();
        settings.remove(SAID);
        let typed = tools().map(|route| (route.form_key().to_owned(), self.texts(route).clone()));
        Besides {
            settings,
            tools: typed.filter(|(_, texts)| !texts.is_empty()).collect(),
            aside: besides::unread(world.keeper, &self.bench.book).unwrap_or_default(),
        }
    }

    /// Lays an import out to be looked at.
    pub(super) fn lay_out(&mut self, mut import: Import, world: &World<'_>) {
        let Import { besides, refused, .. } = &mut import;
        besides.tools.retain(|key, _| {
            let is_known = tools().any(|route| route.form_key() == key);
            if !is_known {
                refused.push(format!("What is typed in “{key}”: no tool is called so."));
            }
            is_known
        });
        self.bench.at_hand.import = Some(Ok(Rc::new(import)));
        self.compare(world);
    }

    /// Whether texts mean something else in a form than those in it; where nothing is typed its usual values count.
    fn differs(&self, route: Route, texts: &Texts) -> bool {
        let whole = |texts| after(route, texts, Change::Put(&[(SAID, String::new())]));
        !texts.is_empty() && whole(texts) != whole(self.texts(route))
    }

    /// The texts of an import that differ from those here.
    fn differing<'i>(&self, import: &'i Import) -> Vec<(Route, &'i Texts)> {
        let mut all: Vec<(Route, &Texts)> = Vec::new();
        for route in tools() {
            let texts = import.besides.tools.get(route.form_key()).filter(|texts| self.differs(route, texts));
            // Two screens may share a form.
            if let Some(texts) = texts.filter(|_| all.iter().all(|(other, _)| other.form_key() != route.form_key())) {
                all.push((route, texts));
            }
        }
        all
    }

    /// How an import stands to what is here.
    pub(super) fn compare(&mut self, world: &World<'_>) {
        self.look_aside(world);
        let Some(Ok(import)) = self.bench.at_hand.import.clone() else { return };
        let aside = besides::put_aside(world.keeper, &import.besides.aside).unwrap_or_default();
        let deed = deeds::import(&self.bench.book, &import, Merge::Replace, world.now, world.fresh);
        let puts = deed.map(|deed| deed.puts).unwrap_or_default();
        self.bench.at_hand.stands = Stands {
            settings: self.differs(Route::Shelf, &import.besides.settings),
            tools: self.differing(&import).into_iter().map(|(route, _)| route.row().label).collect(),
            aside: aside.len(),
            takes: ledger::takes(world.keeper, &puts) + ledger::takes(world.keeper, &aside),
            free: ROOM.saturating_sub(ledger::usage(world.keeper)),
        };
    }

    /// Notes how much room is taken, and what is set aside.
    pub(super) fn look_aside(&mut self, world: &World<'_>) {
        self.bench.at_hand.usage = ledger::usage(world.keeper);
        let book = &self.bench.book;
        // What the book shows or names itself is left out.
        let is_of_book = |key: &str| {
            book.unread.iter().any(|unread| unread.key == key)
                || key.strip_prefix(SPECS).is_some_and(|id| book.card(id).is_some())
                || key.strip_prefix(INGREDIENTS).is_some_and(|id| book.own(id).is_some())
                || key.strip_prefix(RUNS).is_some_and(|id| book.run(id).is_some())
        };
        let aside = besides::unread(world.keeper, book).unwrap_or_default();
        self.bench.at_hand.aside = aside.into_iter().map(|aside| aside.key).filter(|key| !is_of_book(key)).collect();
    }

    /// With a deed that takes an import, what is set aside in it comes along.
    pub(super) fn with_aside(&self, deed: Deed, import: &Import, world: &World<'_>) -> Deed {
        let aside = besides::put_aside(world.keeper, &import.besides.aside).unwrap_or_default();
        Deed { puts: deed.puts.into_iter().chain(aside).collect(), ..deed }
    }

    /// Takes the settings of an import, or what is typed in its tools.
    pub(super) fn take_besides(&mut self, act: &Act, world: &World<'_>) {
        let Some(Ok(import)) = self.bench.at_hand.import.clone() else { return };
        self.save_forms_again(world);
        let mut settings = import.besides.settings.clone();
        settings.insert(SAID.into(), self.text(Route::Shelf, SAID));
        let (words, all) = match act {
            Act::TakeSettings => ("the settings of a file", vec![(Route::Shelf, &settings)]),
            _ => ("what a file has typed in tools", self.differing(&import)),
        };
        let mut puts = Vec::new();
        for (route, texts) in all {
            let put = || besides::put_form(world.keeper, route.form_key(), texts, world.now).ok().flatten();
            // What cannot be read is aside by now, and may be written over.
            puts.extend(put().or_else(|| {
                self.save_form(route, world);
                put()
            }));
        }
        if puts.is_empty() {
            return self.sight.notice = SaveProblem::ReadOnly.to_string();
        }
        let deed = Deed { words: words.into(), puts, open: None, is_of_many: true };
        if self.perform(Ok(deed), world).is_some() {
            self.reread_forms(world);
            self.has_taken(world);
        }
    }

    /// Something of an import has been taken: it is put away when nothing of it waits for its own button.
    pub(super) fn has_taken(&mut self, world: &World<'_>) {
        self.compare(world);
        let stands = &self.bench.at_hand.stands;
        if !stands.settings && stands.tools.is_empty() {
            self.bench.at_hand.import = None;
        }
    }
}
