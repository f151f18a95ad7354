//! What an act does: each to the form of the screen shown, to the record that is open, or to the book.

use super::effect::{raise, send};
use super::records::Open;
use super::{Desk, Effect, News, World};
use crate::book::{DEMO, Way};
use crate::reading::from_spec::{self, FROM, LINES};
use crate::screen::pad::Keys;
use crate::screen::route::{Place, Route};
use crate::screen::{ASKED, Act, Block, Button, Field, Input, SHEET};
use crate::store::SaveProblem;
use crate::store::deeds::{self, Deed};
use crate::tool::batch::run;
use crate::tool::shelf::ingredients;
use crate::tool::specs::{all, card};
use crate::tool::{Change, after};

/// The number that a block asks for, and its keys.
fn number(block: &Block) -> Option<(&'static str, Keys)> {
    match block {
        Block::Field(Field { name, input: Input::Amount(keys), .. }) => Some((*name, *keys)),
        _ => None,
    }
}

impl Desk {
    pub(super) fn do_act(&mut self, act: &Act, world: &World<'_>) {
        match act {
            Act::Type(name, from) | Act::Choose(name, from) if name == FROM => self.take_spec(from, world),
            Act::Type(name, to) | Act::Choose(name, to) if name == "price_of" => self.price_of(to, world),
            Act::Type(name, text) => {
                if name == "price" && self.text(self.route, name).is_empty() {
                    self.stay_priced(world);
                }
                let text = self.with_unit(name, text);
                self.type_text(name, &text, world);
            }
            Act::Choose(name, text) => self.choose(name, text, world),
            Act::Put(puts) if let [("price_of", to)] = puts.as_slice() => {
                self.price_of(to, world);
                // Of which line a price is typed is said at the line; the field may be out of sight.
                self.effects.push(Effect::Reach("price"));
            }
            Act::Put(_) | Act::Rewrite(..) | Act::Empty => self.change(act, world),
            Act::Undo => self.undo(world),
            Act::Redo => self.redo(world),
            Act::UndoDeed(number, is_sure) => self.undo_deed(*number, *is_sure, world),
            Act::DeleteForGood => self.delete_for_good(world),
            Act::Copy => {
                let text = self.shown().copy.clone();
                self.effects.push(Effect::Copy(text));
            }
            Act::Activate(name) => self.activate(name.as_deref()),
            Act::Turn => self.sight.is_turned = !self.sight.is_turned,
            Act::Next => self.next_number(),
            Act::Pad => self.sight.wants_pad = true,
            Act::Sheet(place) => self.sheet(*place),
            Act::Dismiss => self.dismiss(),
            Act::Go(to) => self.effects.push(Effect::Go(to.clone())),
            Act::Look => self.effects.push(Effect::Reach(ASKED)),
            Act::UpdateLater => self.sight.update_waits = false,
            Act::Update => self.effects.push(raise("meniscus-update-now")),
            Act::Install => {
                self.sight.overtake();
                self.effects.push(raise("meniscus-install"));
            }
            Act::KeepYield(yields) => {
                let said = "Kept in Shelf, under your own yields. It counts from now on.";
                self.keep_on_shelf(("yields", yields), &["got"], said, world);
            }
            Act::KeepPrice(prices) => {
                let said = "Kept in Shelf, under your prices. It counts in every spec.";
                self.keep_on_shelf(("prices", prices), &["price", "price_of"], said, world);
            }
            Act::KeepPace(name, seconds) => {
                let said = "Kept in Shelf, under your own chill. It counts from now on.";
                self.keep_on_shelf((name, seconds), &["came_out"], said, world);
            }
            Act::More => {
                let shown = self.shown().rows() + all::STEP;
                self.type_into(self.route, "shown", shown.to_string(), world);
            }
            Act::OpenStep(step) => self.open_step_of(step, world),
            Act::Start(_)
            | Act::Longer(_)
            | Act::Tick(_)
            | Act::Untick(_)
            | Act::Finish
            | Act::FinishOpen
            | Act::Reopen
            | Act::MadeOf(_)
            | Act::TakeOut(_) => self.change_run(act, world),
            Act::Show(_) | Act::TickLine(..) | Act::UntickLines | Act::Serves(_) | Act::Begin(..) | Act::End(_) => {
                self.make(act, world);
            }
            Act::OpenTool => self.open_tool(world),
            Act::ToRun => self.put_on_run(false, world),
            Act::ToRunAgain => self.put_on_run(true, world),
            Act::AllRuns => {
                self.type_into(self.route, "id", String::new(), world);
                self.effects.push(Effect::Replace(Route::Run.href()));
            }
            Act::TakeSettings | Act::TakeTools => self.take_besides(act, world),
            Act::Backup
            | Act::GiveUnread
            | Act::GiveAside
            | Act::GiveUnsaved
            | Act::ChooseFile
            | Act::Paste
            | Act::Share
            | Act::CopyLink
            | Act::Text
            | Act::Recipe
            | Act::Csv
            | Act::Print
            | Act::Picture => self.give(act, world),
            Act::PutAway => self.bench.at_hand.import = None,
            _ => self.do_to_book(act, world),
        }
    }

    /// Puts texts, rewrites a line or empties: the record that is open, else the form.
    fn change(&mut self, act: &Act, world: &World<'_>) {
        let worked = match (self.open_record(), act) {
            (Some(_), Act::Empty) => self.deletion(),
            (Some(Open::Spec(entry, at)), act) => match card::changed(&entry.value, at, act) {
                Some(value) => match deeds::change(&entry, &value, "the lines", world.now) {
                    Ok(deed) => Some(deed),
                    Err(problem) => return self.sight.notice = problem.to_string(),
                },
                None => None,
            },
            _ if *act == Act::Empty && self.route == Route::Backup => {
                return self.bench.at_hand.import = None;
            }
            _ => None,
        };
        let went_into = match self.open_record() {
            Some(Open::Ingredient(entry)) if *act == Act::Empty => {
                ingredients::went_into(&entry.value.name, &self.bench)
            }
            _ => String::new(),
        };
        let done = worked.map(|deed| self.perform(Ok(deed), world).is_some());
        if done == Some(true) && !went_into.is_empty() {
            // Guests may have to be told of what was in it.
            let (words, buttons) = self.sight.offered.clone();
            self.offer(&format!("{words} {went_into}"), buttons);
        }
        if let Some(done) = done
            && (!done || !matches!(act, Act::Put(_)))
        {
            if *act == Act::Empty && self.open_record().is_some() && self.sight.notice == SaveProblem::Full.to_string()
            {
                let words = "There is no room to keep what is deleted for Undo.";
                self.offer(words, vec![Button::new("Delete without Undo", Act::DeleteForGood)]);
            }
            return;
        }
        let change = match act {
            Act::Put(puts) => Change::Put(puts),
            Act::Rewrite(typed, fixed) => Change::Rewrite(typed, fixed),
            _ => Change::Empty,
        };
        self.change_form(self.route, change, world);
    }

    /// Deleting the record that is open.
    pub(super) fn deletion(&self) -> Option<Deed> {
        Some(match self.open_record()? {
            Open::Spec(entry, _) => deeds::delete_card(&entry),
            Open::Ingredient(entry) => deeds::delete_own(&entry),
            Open::Run(entry) => deeds::delete_run(&entry, &run::title(&entry, &self.bench)),
        })
    }

    /// Keeps what was measured or paid on the shelf, and empties the fields that it came from: what came out has been counted,
    /// and once more it would be set against itself.
    fn keep_on_shelf(&mut self, (name, kept): (&str, &str), came_from: &[&str], said: &str, world: &World<'_>) {
        let mut texts = self.texts(Route::Shelf).clone();
        texts.insert(name.to_owned(), kept.to_owned());
        self.replace_form(Route::Shelf, texts, world);
        for field in came_from {
            self.type_into(self.route, field, String::new(), world);
        }
        self.say(said);
    }

    /// The line that a price is typed for stays the one that is shown, whatever comes before it.
    fn stay_priced(&mut self, world: &World<'_>) {
        if let Some(of) = self.shown().field("price_of").map(|field| field.text.clone()) {
            self.type_into(self.route, "price_of", of, world);
        }
        self.is_stale = true;
    }

    /// Asks for the price of another line.
    fn price_of(&mut self, name: &str, world: &World<'_>) {
        self.stay_priced(world);
        self.change_form(self.route, Change::Take("price_of", name), world);
    }

    /// Says something above the page, for a while.
    pub(super) fn say(&mut self, words: &str) {
        words.clone_into(&mut self.sight.notice);
        self.passes();
    }

    /// What is said above the page goes by itself.
    pub(super) fn passes(&mut self) {
        self.sight.is_passing = true;
        self.effects.push(Effect::Later(6_000, News::SaidIsOver(self.sight.notice.clone())));
    }

    /// Says something above the page, with what can be done about it.
    pub(super) fn offer(&mut self, words: &str, buttons: Vec<Button>) {
        words.clone_into(&mut self.sight.notice);
        self.sight.offered = (words.to_owned(), buttons);
    }

    /// Whether a spec of one's own is open that has something in it.
    pub(super) fn has_own_spec_open(&self) -> bool {
        let has_lines = |way: &Way| !way.lines.trim().is_empty();
        self.open_spec().is_some_and(|(entry, _)| !entry.id.starts_with(DEMO) && entry.value.ways.iter().any(has_lines))
    }

    /// Says once, on a phone, that the app can be kept there: now something is.
    pub(super) fn offer_install(&mut self, world: &World<'_>) {
        let was_said = |name| !self.text(Route::Shelf, name).is_empty();
        let sight = &self.sight;
        if sight.is_installed || self.device.has_keyboard || self.why_unsaved.is_some() || !sight.notice.is_empty() {
            return;
        }
        if was_said("install_said") || was_said("install_hint") {
            return;
        }
        let can = match sight.can_install {
            true => Button::new("Install", Act::Install),
            false => Button::new("How", Act::Go(Route::Shelf.href())),
        };
        let words = "Keep Meniscus on your phone: it works without a network.";
        self.offer(words, vec![can, Button::new("Not now", Act::Dismiss)]);
        self.sight.is_passing = true;
        self.type_into(Route::Shelf, "install_said", "said".into(), world);
    }

    /// A text was copied, or could not be: the button says so for a moment.
    pub(super) fn copied(&mut self, done: bool) {
        if done { "Copied" } else { "Can't copy here" }.clone_into(&mut self.sight.copied);
        self.effects.push(Effect::Later(2_000, News::CopiedIsOver));
    }

    /// Makes a choice; when that brings another first number, the pad goes there. The focus stays on the choice.
    fn choose(&mut self, name: &str, text: &str, world: &World<'_>) {
        let before = self.first_number();
        self.type_text(name, text, world);
        self.is_stale = true;
        let first = self.first_number().filter(|first| Some(*first) != before);
        if let (Some((field, _)), Some(_)) = (first, self.sight.active) {
            self.sight.activate(first);
            self.effects.push(Effect::Show(field));
        }
        // A line that is added is typed in at once.
        if name == card::LINE && self.shown().field(card::AMOUNT).is_some_and(|amount| amount.text.is_empty()) {
            self.activate(Some(card::AMOUNT));
            self.effects.push(Effect::Enter(card::AMOUNT));
        }
    }

    /// Makes a number the field that the pad types into, and shows it; none puts the pad away.
    fn activate(&mut self, name: Option<&str>) {
        let field = self.shown().blocks.iter().filter_map(number).find(|(field, _)| Some(*field) == name);
        self.sight.activate(field);
        if let Some((field, _)) = field {
            self.effects.push(Effect::Show(field));
        }
    }

    /// Takes a spec from the book into the tool shown, as a link to it would.
    fn take_spec(&mut self, from: &str, world: &World<'_>) {
        self.with_cards(world);
        let carried = from_spec::carried(self.route, from, &self.bench);
        self.carry(&carried, world);
        if self.route == Route::Label {
            self.pack_label(world);
        }
    }

    /// Makes the number after the active one the field that the pad types into; after the last the first.
    fn next_number(&mut self) {
        let active = self.sight.active.map(|(field, _)| field);
        let numbers: Vec<_> = self.shown().blocks.iter().filter_map(number).collect();
        let at = numbers.iter().position(|(field, _)| Some(*field) == active).map_or(0, |at| at + 1);
        if let Some(next) = numbers.get(at).or(numbers.first()) {
            self.sight.activate(Some(*next));
            self.effects.push(Effect::Enter(next.0));
            self.effects.push(Effect::Show(next.0));
        }
    }

    /// Opens the sheet of tools of a place, or closes it; of the place whose sheet is open, goes to the tool used there last.
    fn sheet(&mut self, place: Option<Place>) {
        if place.is_some() && place == self.sight.sheet {
            let place = place.unwrap_or(Place::Service);
            let last = self.sight.last.iter().find(|route| route.row().place == place);
            self.effects.push(Effect::Go(last.copied().unwrap_or(place.first()).href()));
            self.sight.sheet = None;
            return;
        }
        self.sight.sheet = place;
        if place.is_some() {
            self.sight.activate(None);
            self.effects.push(Effect::Enter(SHEET));
        }
    }

    /// While the sheet is open, the history has a step more, so that Back closes it: noted as it opens, taken back as it
    /// closes, and what is gone to takes its place.
    pub(super) fn step_of_sheet(&mut self, was_open: bool) {
        let is_open = self.sight.sheet.is_some();
        let goes = self.effects.iter_mut().find(|effect| matches!(effect, Effect::Go(_)));
        match (was_open, goes) {
            (true, Some(goes)) => {
                if let Effect::Go(to) = goes {
                    *goes = Effect::Instead(std::mem::take(to));
                }
                self.sight.sheet = None;
            }
            (true, None) if !is_open => self.effects.push(Effect::Back),
            (false, _) if is_open => self.effects.push(Effect::Step),
            _ => {}
        }
    }

    /// Puts away what is said, or the words to a newcomer.
    fn dismiss(&mut self) {
        self.sight.is_first &= !self.sight.notice.is_empty();
        self.sight.notice.clear();
    }

    /// What an address brings goes into the form of its screen: one step for Undo, however much it is.
    pub(super) fn carry(&mut self, carried: &[(String, String)], world: &World<'_>) {
        let mut next = self.texts(self.route).clone();
        // The lines of the spec that a link names come along, for when they are asked for.
        let brought = from_spec::brought(carried, &self.bench).map(|lines| (LINES.to_owned(), lines));
        for (name, text) in carried.iter().chain(&brought) {
            if name == "packed" {
                self.bench.at_hand.is_by_link = true;
                self.effects.push(send("meniscus-unpack", text));
            } else {
                next = after(self.route, &next, Change::Take(name, text));
            }
        }
        self.note_deed(self.route.form_key());
        self.replace_form(self.route, next, world);
    }
}
