//! What Undo takes back: the last change of what is on the screen shown, step by step, and Redo brings it back.
//!
//! Deeds are in the journal, and what replaced the texts of a form is kept with it: both outlive the tab. What was typed is
//! here, a step to a field. A step knows how many deeds stood before it, so that all come in one order.

use std::sync::Arc;

use super::records::Open;
use super::sight::few;
use super::{Desk, World};
use crate::book::{Card, Entry, Texts, Way};
use crate::reading::from_spec::LINES;
use crate::screen::route::{Record, Route};
use crate::screen::{Act, Button};
use crate::store::journal::{self, Noted, Put};
use crate::store::ledger::{INGREDIENTS, RUNS, SPECS};
use crate::store::{SaveProblem, stamp_of};
use crate::tool::batch::run;
use crate::tool::specs::backup::is_looked_at;
use crate::tool::specs::card;

/// Steps of typing that are remembered.
const MOST_STEPS: usize = 200;

/// A text as it stood before a field was typed in.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Typed {
    /// Where: the key of a record or of a form.
    on: String,
    /// The field.
    name: String,
    /// What the screen calls it.
    label: String,
    /// The way of the spec, or the step of the run, that the field was of.
    of: String,
    /// What stood there.
    was: String,
    /// The deed that came before it there; zero for none.
    after: u32,
}

/// Something taken back, which Redo does again.
#[derive(Clone, Debug, PartialEq, Eq)]
enum Taken {
    Typed(Typed),
    Texts { on: String, words: String, next: Texts },
    Deed { on: String, words: String, puts: Vec<(String, Option<String>)> },
}

impl Taken {
    fn on(&self) -> &str {
        match self {
            Taken::Typed(typed) => &typed.on,
            Taken::Texts { on, .. } | Taken::Deed { on, .. } => on,
        }
    }

    fn words(&self) -> &str {
        match self {
            Taken::Typed(typed) => &typed.label,
            Taken::Texts { words, .. } | Taken::Deed { words, .. } => words,
        }
    }
}

/// What was typed in this tab, and what was taken back.
#[derive(Clone, Debug, Default)]
pub(super) struct History {
    typed: Vec<Typed>,
    taken: Vec<Taken>,
    /// Whether the next letter in the same field belongs to the last step.
    is_open: bool,
}

/// What Undo would take back.
enum Last {
    Typed(Typed),
    Texts,
    Deed(u32),
}

impl Desk {
    /// What Undo is about on the screen shown: the record that is open, the list, or the form; by key.
    fn here(&self) -> String {
        match (self.open_record(), self.route) {
            (Some(open), _) => open.key(),
            // What is looked at is not of the book yet.
            (None, Route::Backup) if is_looked_at(&self.bench) => "-".into(),
            (None, Route::Backup) => String::new(),
            (None, route) => match route.row().record {
                Some(Record::Ingredient) => INGREDIENTS.into(),
                Some(Record::Run) => RUNS.into(),
                Some(Record::Spec) => SPECS.into(),
                None if route.row().is_of_book => SPECS.into(),
                None => route.form_key().into(),
            },
        }
    }

    /// The way or the step that the fields on the screen are of.
    fn part_here(&mut self) -> String {
        match self.open_record() {
            Some(Open::Spec(_, at)) => at.to_string(),
            Some(Open::Run(entry)) => self.open_step(&entry),
            _ => String::new(),
        }
    }

    /// The deed that came last on a place; zero for none.
    fn last_there(&self, on: &str) -> u32 {
        let deeds = self.bench.book.deeds.iter().rev();
        let deed = deeds.map(|deed| (deed.on.as_str(), deed.number)).find(|(there, _)| *there == on);
        let replaced = self.forms.iter().find(|form| form.key == on).map(|form| form.replaced);
        deed.map(|(_, number)| number).or(replaced).unwrap_or(0)
    }

    /// Notes what stands in a field that is about to be typed in, once for all letters in a row.
    pub(super) fn note_typing(&mut self, name: &str, is_choice: bool) {
        self.shown();
        let mut stood = self.stood(name);
        // What is typed in a line is typed in the text that all lines are.
        let name = if self.open_spec().is_some() && card::is_of_line(name) {
            let lines = self.stood(LINES).map(|(_, lines)| lines);
            stood = stood.zip(lines).map(|((label, _), lines)| (label, lines));
            LINES
        } else {
            name
        };
        self.history.is_open &= !is_choice;
        let on = self.here();
        let is_of_record = |name: &str| {
            card::FIELDS.contains(&name)
                || run::FIELDS.contains(&name)
                || crate::tool::shelf::ingredients::FIELDS.contains(&name)
        };
        // What is searched for, and which record is open, is nobody's work.
        if self.route.row().is_of_book && (!on.contains('/') || on.ends_with('/') || !is_of_record(name)) {
            return;
        }
        let (of, after) = (self.part_here(), self.last_there(&on));
        self.sight.overtake();
        let history = &mut self.history;
        history.taken.retain(|taken| taken.on() != on);
        let is_open = std::mem::replace(&mut history.is_open, !is_choice) && !is_choice;
        let is_same = history
            .typed
            .last()
            .is_some_and(|last| (&*last.on, &*last.name, &*last.of, last.after) == (&*on, name, &*of, after));
        let Some((label, was)) = stood else { return };
        if is_open && is_same && self.history.typed.last().is_some_and(|last| last.label == label) {
            return;
        }
        self.history.typed.push(Typed { on, name: name.to_owned(), label, of, was, after });
        if self.history.typed.len() > MOST_STEPS {
            self.history.typed.remove(0);
        }
    }

    /// What a field of the screen as it was drawn is called, and holds; the lines of a spec also where they stand each for
    /// itself.
    fn stood(&self, name: &str) -> Option<(String, String)> {
        if let Some(field) = self.screen.field(name) {
            return Some((field.label.to_string(), field.text.clone()));
        }
        let (entry, at) = self.open_spec().filter(|_| name == LINES)?;
        Some(("Ingredients".into(), entry.value.ways.get(at)?.lines.clone()))
    }

    /// A text lost at one stroke is a deed of its own, named so: no step of typing besides. What the field is called.
    pub(super) fn as_deed(&mut self, name: &str) -> String {
        // The screen is as it was drawn before the stroke.
        let (label, was) = self.stood(name).unwrap_or_default();
        self.history.typed.pop_if(|typed| typed.name == name && typed.was == was);
        if label.is_empty() { "a text".into() } else { label }
    }

    /// Something was done there that is not typing: what was taken back there cannot be done again.
    pub(super) fn note_deed(&mut self, on: &str) {
        self.history.is_open = false;
        self.history.taken.retain(|taken| taken.on() != on);
        self.sight.overtake();
    }

    fn last_step(&self, on: &str) -> Option<(Last, String)> {
        let there = self.last_there(on);
        let typed = self.history.typed.iter().rev().find(|typed| typed.on == on);
        if let Some(typed) = typed.filter(|typed| typed.after >= there) {
            return Some((Last::Typed(typed.clone()), typed.label.clone()));
        }
        if let Some(deed) = self.bench.book.deeds.iter().rev().find(|deed| deed.on == on) {
            return Some((Last::Deed(deed.number), deed.words.clone()));
        }
        let form = self.forms.iter().find(|form| form.key == on)?;
        let before = form.kept.before.last()?;
        Some((Last::Texts, self.what_differs(before, &form.kept.now)))
    }

    /// What has been replaced in a form, in words.
    fn what_differs(&self, before: &Texts, now: &Texts) -> String {
        let gone = before.keys().filter(|name| now.get(name).is_none());
        let names: Vec<&str> = gone.chain(now.keys().filter(|name| before.get(name) != now.get(name))).collect();
        let label = |name: &str| self.screen.field(name).map(|field| field.label.to_string());
        match names.as_slice() {
            &[name] => label(name).unwrap_or_else(|| "a change".into()),
            _ if now.values().all(String::is_empty) => "emptying".into(),
            _ => format!("{} fields", names.len()),
        }
    }

    /// What Undo would take back on the screen shown, where there is something.
    pub(super) fn undo_words(&self) -> Option<String> {
        self.last_step(&self.here()).map(|(_, words)| words)
    }

    /// Takes the last change of what is on the screen shown back.
    pub(super) fn undo(&mut self, world: &World<'_>) {
        let on = self.here();
        let Some((last, words)) = self.last_step(&on) else { return };
        self.history.is_open = false;
        match last {
            Last::Deed(number) => {
                let stood = self.open_spec();
                self.undo_deed(number, false, world);
                self.land(stood, world);
            }
            Last::Typed(typed) => {
                let at = self.history.typed.iter().rposition(|there| *there == typed);
                at.map(|at| self.history.typed.remove(at));
                let now = self.retype(&typed, world);
                self.history.taken.push(Taken::Typed(Typed { was: now, ..typed }));
                self.said_taken_back(&on, &words);
            }
            Last::Texts => {
                if let Some(next) = self.undo_form(self.route, world) {
                    self.history.taken.push(Taken::Texts { on: on.clone(), words: words.clone(), next });
                    self.said_taken_back(&on, &words);
                }
            }
        }
    }

    /// Where the form that stood open is gone, the one that it was made from is shown, or that it was begun like; one that
    /// came once more is shown itself.
    fn land(&mut self, stood: Option<(Arc<Entry<Card>>, usize)>, world: &World<'_>) {
        let (Some((stood, at)), Some((entry, _))) = (stood, self.open_spec()) else { return };
        let (was, ways) = (&stood.value.ways, &entry.value.ways);
        let is_it = |way: &Way, gone: &Way| match gone.name.is_empty() {
            true => way.lines == gone.lines,
            false => !way.key.is_empty() && way.key == gone.from.form,
        };
        let to = match was.get(at) {
            Some(gone) if at >= ways.len() => was.iter().position(|way| is_it(way, gone)),
            _ => (ways.len() > was.len() && was.iter().zip(ways).all(|(was, way)| was.lines == way.lines))
                .then_some(was.len()),
        };
        if let Some(to) = to {
            self.type_text("at", &to.to_string(), world);
        }
    }

    /// Puts a text back in its field; what stood there.
    fn retype(&mut self, typed: &Typed, world: &World<'_>) -> String {
        let is_elsewhere = self.part_here() != typed.of;
        match self.route.row().record.filter(|_| is_elsewhere) {
            Some(Record::Spec) => self.type_into(self.route, "at", typed.of.clone(), world),
            Some(Record::Run) => self.type_into(self.route, "step", typed.of.clone(), world),
            _ => {}
        }
        self.is_stale = true;
        self.shown();
        let now = self.stood(&typed.name).unwrap_or_default().1;
        self.is_undoing = true;
        self.type_text(&typed.name, &typed.was, world);
        self.is_undoing = false;
        self.is_stale = true;
        now
    }

    /// Takes a deed back; asks first where records were changed since, unless that was answered.
    pub(super) fn undo_deed(&mut self, number: u32, is_sure: bool, world: &World<'_>) {
        if !self.save_the_unsaved(world) {
            return;
        }
        let deeds = journal::deeds(world.keeper);
        let Some(deed) = deeds.iter().rfind(|deed| deed.number == number) else {
            self.read_all(self.bench.book.has_cards, world);
            return;
        };
        let changed = journal::changed_since(world.keeper, deed).unwrap_or_default();
        if !is_sure && deed.on().is_empty() && !changed.is_empty() {
            return self.ask_undo(deed, &changed);
        }
        let there: Vec<(String, Option<String>)> =
            deed.keys().map(|key| (key.to_owned(), world.keeper.get(key).ok().flatten())).collect();
        let beside = |key: &str| format!("{key}~{}", (world.fresh)());
        let merge = |key: &str, was: &str, there: &str| super::library::merged(key, was, there, world.now);
        let undone = journal::undo_one(world.keeper, number, world.now, merge, beside);
        self.read_all(self.bench.book.has_cards, world);
        self.reread_forms(world);
        if self.route == Route::Backup {
            self.compare(world);
        }
        match undone {
            Err(problem) => self.sight.notice = problem.to_string(),
            Ok(None) => {}
            Ok(Some(words)) => {
                let on = deed.on().to_owned();
                if changed.is_empty() {
                    self.history.taken.push(Taken::Deed { on: on.clone(), words: words.clone(), puts: there });
                }
                self.said_taken_back(&on, &words);
            }
        }
    }

    /// Says which records a deed of many touched and were changed since, and what then becomes of them.
    fn ask_undo(&mut self, deed: &Noted, changed: &[String]) {
        let book = &self.bench.book;
        let mut names: Vec<&str> = Vec::new();
        for key in changed {
            let (prefix, id) = key.split_at(key.find('/').map_or(0, |at| at + 1));
            let name = match prefix {
                SPECS => book.card(id).map(|entry| entry.value.name.trim()),
                INGREDIENTS => book.own(id).map(|entry| entry.value.name.trim()),
                _ => book.run(id).map(|entry| entry.value.name.trim()),
            };
            names.extend(name.filter(|name| !name.is_empty()));
        }
        let which = few(&names, changed.len());
        let words = format!("Changed since “{}”: {which}. What was changed stays; the rest is taken back.", deed.words);
        self.offer(&words, vec![Button::new("Undo the rest", Act::UndoDeed(deed.number, true))]);
    }

    fn said_taken_back(&mut self, on: &str, words: &str) {
        let buttons = match self.history.taken.iter().rfind(|taken| taken.on() == on) {
            Some(_) => vec![Button::new("Redo", Act::Redo)],
            None => Vec::new(),
        };
        self.offer(&format!("Taken back: {words}."), buttons);
        self.passes();
    }

    /// Does again what was taken back last on what is on the screen shown.
    pub(super) fn redo(&mut self, world: &World<'_>) {
        let Some(taken) = self.history.taken.pop() else { return };
        if !taken.on().is_empty() && taken.on() != self.here() && !taken.on().starts_with(&self.here()) {
            // It was taken back on another screen.
            return self.history.taken.push(taken);
        }
        let words = taken.words().to_owned();
        let still_taken = self.history.taken.clone();
        match taken {
            Taken::Typed(typed) => {
                let was = self.retype(&typed, world);
                let after = self.last_there(&typed.on);
                self.history.typed.push(Typed { was, after, ..typed });
            }
            Taken::Texts { next, .. } => self.replace_form(self.route, next, world),
            Taken::Deed { words, puts, on } => {
                let puts = puts.into_iter().map(|(key, text)| {
                    let there = world.keeper.get(&key).ok().flatten();
                    let from = there.and_then(|there| stamp_of(&there).ok()).map(|(stamp, _)| stamp);
                    // It is a write more than what stands there now.
                    Put { key, text, from }
                });
                let puts = puts.collect();
                let stood = self.open_spec();
                self.perform(
                    Ok(crate::store::deeds::Deed { words, puts, open: None, is_of_many: on.is_empty() }),
                    world,
                );
                self.land(stood, world);
            }
        }
        self.history.taken = still_taken;
        let more = self.history.taken.last().filter(|taken| taken.on() == self.here());
        let buttons = more.map(|_| Button::new("Redo", Act::Redo)).into_iter().collect();
        self.offer(&format!("Done again: {words}."), buttons);
        self.passes();
    }

    /// A spec that was begun and left empty leaves nothing behind.
    pub(super) fn leave_empty(&mut self, world: &World<'_>) {
        let Some(open) = self.open_record() else { return };
        let Open::Spec(entry, _) = &open else { return };
        if entry.value != crate::book::Card::blank(entry.value.made) || entry.newer.is_some() {
            return;
        }
        let key = open.key();
        let begun =
            journal::deeds(world.keeper).iter().rfind(|deed| deed.began() == Some(&key)).map(|deed| deed.number);
        if let Some(number) = begun {
            let merge = |_: &str, _: &str, _: &str| None;
            let _: Result<_, SaveProblem> = journal::undo_one(world.keeper, number, world.now, merge, str::to_owned);
            self.reread(std::iter::once(key.as_str()), world);
        }
    }
}
