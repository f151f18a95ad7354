//! The library: the book as it is in this tab, kept in step with the store at every edit.

use std::sync::Arc;

use super::effect::raise;
use super::{Desk, Effect, News, World};
use crate::book::{Book, Entry, Run};
use crate::screen::route::Route;
use crate::screen::{Act, Button};
use crate::store::deeds::Deed;
use crate::store::forms::TOOLS;
use crate::store::ledger::{self, INGREDIENTS, RUNS, SPECS};
use crate::store::{self, ImportProblem, Kept, SaveProblem, Unreadable, backup, journal};
use crate::tool::batch::run;
use crate::tool::specs::texts;

/// Records that are read one by one; of more the whole store is read.
const FEW: usize = 50;
/// Milliseconds after which no other tab can be at an act any more.
const NOBODY_AT_WORK: u64 = 6_000;

/// A run sheet as it was before a deed, with what has been typed since. A form stays as it is since, and its own Undo
/// brings back what stood before.
pub(super) fn merged(key: &str, was: &str, there: &str, now: u64) -> Option<String> {
    if key.starts_with(TOOLS) {
        let (was, there) = (store::open::<Kept>(was).ok()?, store::open::<Kept>(there).ok()?);
        let mut kept = Kept { now: was.data.now, before: there.data.before };
        kept.replace(there.data.now);
        return store::seal(&kept, there.stamp.next(now)).ok();
    }
    let (was, there) = (store::open::<Run>(was).ok()?, store::open::<Run>(there).ok()?);
    let is_ours = key.starts_with(RUNS) && was.newer.is_none() && there.newer.is_none();
    let run = run::undone(&was.data, &there.data);
    store::seal(&run, there.stamp.next(now)).ok().filter(|_| is_ours)
}

/// What is unsaved in `mine` stays as it is among `theirs`.
fn keep_unsaved<T>(theirs: &mut Vec<Arc<Entry<T>>>, mine: &[Arc<Entry<T>>], prefix: &str, unsaved: &[String]) {
    let is_unsaved = |entry: &&Arc<Entry<T>>| unsaved.iter().any(|key| key.strip_prefix(prefix) == Some(&entry.id));
    for entry in mine.iter().filter(is_unsaved) {
        theirs.retain(|there| there.id != entry.id);
        theirs.push(Arc::clone(entry));
    }
}

/// Puts a record in the place of the one of its id, or takes that away.
fn put_in_place<T>(list: &mut Vec<Arc<Entry<T>>>, id: &str, entry: Option<Entry<T>>) {
    let at = list.iter().position(|there| there.id == id);
    match (at, entry) {
        (Some(at), Some(entry)) => list[at] = Arc::new(entry),
        (None, Some(entry)) => list.push(Arc::new(entry)),
        (Some(at), None) => drop(list.remove(at)),
        (None, None) => {}
    }
}

impl Desk {
    /// Reads the store anew. What could not be saved stays as it is in this tab.
    pub(super) fn read_all(&mut self, with_cards: bool, world: &World<'_>) {
        let mut book = match ledger::load(world.keeper, with_cards) {
            Ok(book) => book,
            Err(problem) => return self.sight.notice = problem.to_string(),
        };
        let mine = &self.bench.book;
        keep_unsaved(&mut book.cards, &mine.cards, SPECS, &self.unsaved);
        keep_unsaved(&mut book.own, &mine.own, INGREDIENTS, &self.unsaved);
        keep_unsaved(&mut book.runs, &mine.runs, RUNS, &self.unsaved);
        book.sort();
        self.bench.book = crate::screen::Held::new(book);
        self.timed_at = None;
        self.bench.read_own();
        self.worked_out.clear();
    }

    /// Reads the specs, unless they have been read.
    pub(super) fn with_cards(&mut self, world: &World<'_>) {
        if !self.bench.book.has_cards {
            self.read_all(true, world);
        }
    }

    /// Reads the records under these keys anew.
    pub(super) fn reread<'k>(&mut self, keys: impl Iterator<Item = &'k str>, world: &World<'_>) {
        let mut has_own = false;
        let keys: Vec<&str> = keys.collect();
        self.timed_at = None;
        self.bench.book.change(|book| {
            for key in &keys {
                if let Some(id) = key.strip_prefix(SPECS).filter(|_| book.has_cards) {
                    put_in_place(&mut book.cards, id, ledger::card(world.keeper, id));
                } else if let Some(id) = key.strip_prefix(INGREDIENTS) {
                    put_in_place(&mut book.own, id, ledger::own(world.keeper, id));
                    has_own = true;
                } else if let Some(id) = key.strip_prefix(RUNS) {
                    put_in_place(&mut book.runs, id, ledger::run(world.keeper, id));
                }
            }
            book.deeds = journal::listed(world.keeper);
            book.sort();
        });
        if has_own {
            self.bench.read_own();
            self.worked_out.clear();
        }
    }

    /// Takes over what another tab has changed under a key of the browser's store; what is unsaved here stays.
    pub(super) fn follow(&mut self, key: &str, world: &World<'_>) {
        match key.strip_prefix("meniscus/") {
            Some(key) if !key.starts_with("tool/") => {
                let is_damaged = self.bench.book.unread.iter().any(|unread| unread.key == key);
                if is_damaged || (key.starts_with(INGREDIENTS) || key.starts_with(RUNS)) {
                    // It may be readable now, or no more.
                    self.read_all(self.bench.book.has_cards, world);
                } else if !self.unsaved.iter().any(|unsaved| unsaved == key) {
                    self.reread(std::iter::once(key), world);
                }
            }
            key => self.follow_forms(key.unwrap_or_default(), world),
        }
    }

    /// Does a deed, all of it or nothing. The record to open, when it was done; none when it was not, and that was said.
    pub(super) fn perform(&mut self, deed: Result<Deed, SaveProblem>, world: &World<'_>) -> Option<Done> {
        if !self.save_the_unsaved(world) {
            return None;
        }
        let deed = match deed {
            Ok(deed) => deed,
            Err(problem) => {
                self.fails(problem);
                return None;
            }
        };
        let done = journal::transact_as(world.keeper, &deed.words, &deed.puts, deed.is_of_many, world.now);
        if done.is_err() || deed.puts.len() > FEW {
            self.read_all(self.bench.book.has_cards, world);
        } else {
            self.reread(deed.puts.iter().map(|put| put.key.as_str()), world);
        }
        match done {
            Ok(()) => {
                self.sight.forget_failure();
                if let Some(deed) = self.bench.book.deeds.last() {
                    let (on, number, words) = (deed.on.clone(), deed.number, deed.words.clone());
                    self.note_deed(&on);
                    if on.is_empty() || on.ends_with('/') {
                        // Taken back where it was done, and later in Backup or in the list. It is said until one goes on.
                        self.offer(&format!("Done: {words}."), vec![Button::new("Undo", Act::UndoDeed(number, false))]);
                        self.sight.is_passing = true;
                    }
                }
                // There is something to lose now.
                self.effects.push(raise("meniscus-persist"));
                Some(Done { open: deed.open })
            }
            Err(problem) => {
                self.fails(problem);
                None
            }
        }
    }

    /// Says why a deed was not done.
    pub(super) fn fails(&mut self, problem: SaveProblem) {
        self.sight.failure = problem.to_string();
        self.sight.notice.clone_from(&self.sight.failure);
    }

    /// Says that the journal cannot be read, where that is so.
    pub(super) fn look_at_journal(&mut self, world: &World<'_>) {
        let then = "It is kept aside, untouched, and a new one begins.";
        let words = match journal::unreadable(world.keeper) {
            None => return,
            Some(Unreadable::Newer(_)) => "What can be taken back is noted in the way of a newer Meniscus.",
            Some(Unreadable::Damaged(_)) => "The notes of what can be taken back could not be read.",
        };
        let said = [self.sight.notice.as_str(), words, then];
        self.sight.notice = said.join(" ").trim_start().to_owned();
    }

    /// Takes back what a tab that was killed had begun, now or when no other tab can be at it any more.
    pub(super) fn recover(&mut self, world: &World<'_>) {
        if let Ok(true) = journal::recover(world.keeper, world.now) {
            self.effects.push(Effect::Later(NOBODY_AT_WORK, News::Recover));
        }
    }

    pub(super) fn recover_now(&mut self, world: &World<'_>) {
        let _ = journal::recover(world.keeper, world.now);
        self.read_all(self.bench.book.has_cards, world);
    }

    /// Looks at a file that was chosen.
    pub(super) fn look_at(&mut self, text: &str, world: &World<'_>) {
        // What boot.js hands over for a link that does not unpack.
        if text == "!" {
            let words = "This link was cut short or changed. Nothing was taken.";
            return self.bench.at_hand.import = Some(Err(words.to_owned()));
        }
        self.with_cards(world);
        if !matches!(self.text(Route::Backup, "at").as_str(), "" | "0") {
            self.type_into(Route::Backup, "at", "0".into(), world);
        }
        let is_json = text.trim_start_matches('\u{feff}').trim_start().starts_with(['{', '[']);
        let import = match backup::read(text) {
            Err(ImportProblem::NotRead { .. } | ImportProblem::OtherKind) if !is_json => texts::read(text, &self.bench),
            import => import,
        };
        match import {
            Ok(import) => self.lay_out(import, world),
            Err(problem) => self.bench.at_hand.import = Some(Err(problem.to_string())),
        }
    }

    /// The spec being shared has been packed.
    pub(super) fn packed(&mut self, text: &str) {
        let link = format!("{}#/specs/backup?packed={text}", self.device.page);
        if let Some((_, shared)) = &mut self.bench.at_hand.shared {
            *shared = link;
        }
    }

    /// Changes the book of this tab.
    pub(super) fn change_book(&mut self, change: impl FnOnce(&mut Book)) {
        self.timed_at = None;
        self.bench.book.change(change);
    }
}

/// A deed that was done.
pub(super) struct Done {
    /// The record to open.
    pub(super) open: Option<String>,
}
