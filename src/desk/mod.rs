//! The desk: what an act does, and what is then to be drawn. Pure: it is handed a store, the time and fresh ids, and hands
//! back effects; it knows no browser.
//!
//! [`Desk::act`] does what a person does, [`Desk::tell`] takes in what happens besides, [`Desk::view`] says what is drawn.

mod acts;
mod arrive;
mod as_form;
mod besides;
mod book_acts;
mod clock;
mod draw;
mod effect;
mod forms;
mod gives;
mod history;
mod library;
mod making;
mod news;
mod records;
mod runs;
mod sight;
mod strongest;
#[cfg(test)]
mod tests;
mod typing;
mod view;

use std::rc::Rc;
use std::sync::Arc;

use crate::book::{Entry, Run};
use crate::reading::from_spec::FROM;
use crate::screen::clock::Clock;
use crate::screen::route::Route;
use crate::screen::{Act, Bench, Screen};
use crate::store::{Keeper, SaveProblem};
use crate::text::Decimal;
use crate::tool::batch::run::Worked;

pub use effect::Effect;
pub use news::News;
pub use view::{Due, Notice, Pad, PlaceLink, ToolLink, View};

use forms::Form;
use history::History;
use sight::Sight;
use strongest::Strengths;

/// What the desk is handed with every act.
pub struct World<'a> {
    /// Where everything is kept.
    pub keeper: &'a dyn Keeper,
    /// The time, in milliseconds since 1970.
    pub now: u64,
    /// Makes an id that no record has.
    pub fresh: &'a dyn Fn() -> String,
}

/// The device that the app runs on.
#[derive(Clone, Debug)]
pub struct Device {
    /// The decimal mark of its language.
    pub decimal: Decimal,
    /// Minutes that its clock on the wall is ahead of universal time, at a time in milliseconds since 1970.
    pub ahead: fn(i64) -> i64,
    /// The address of the page, without what stands after "#".
    pub page: String,
    /// Whether numbers are at hand without the pad, or there is no room for it: it waits behind a word then.
    pub has_keyboard: bool,
}

/// The state of the app in this tab.
pub struct Desk {
    device: Device,
    route: Route,
    forms: Vec<Form>,
    /// What the shelf and the book make of texts.
    bench: Bench,
    /// Keys of what could not be saved.
    unsaved: Vec<String>,
    /// Why the last of them could not be; or why nothing can.
    why_unsaved: Option<SaveProblem>,
    sight: Sight,
    history: History,
    /// Whether a text is being put back, which is not typing.
    is_undoing: bool,
    /// Run sheets as they were worked out, but for their times; for each the record it was worked out from.
    worked_out: Vec<(Arc<Entry<Run>>, Rc<Worked>)>,
    /// How strong the specs are, once that was asked for.
    strengths: Strengths,
    /// The time that the sheets on the bench stand for; none when something has changed since.
    timed_at: Option<u64>,
    /// Waits that have been told of in this tab, and how many of their marks had passed.
    told: Vec<(String, usize)>,
    /// Whether a screen has begun: the first does so wherever it is.
    has_begun: bool,
    /// Whether the screen is kept awake.
    is_awake: bool,
    screen: Rc<Screen>,
    /// Whether something has changed since the screen was worked out.
    is_stale: bool,
    effects: Vec<Effect>,
}

impl Desk {
    /// Opens everything that is stored. `trial` says whether anything can be saved at all.
    #[must_use]
    pub fn open(device: Device, trial: Result<(), SaveProblem>, world: &World<'_>) -> (Desk, Vec<Effect>) {
        let clock = Clock { now: world.now, ahead: device.ahead };
        let mut desk = Desk {
            device,
            route: Route::default(),
            forms: Vec::new(),
            bench: Bench { clock, ..Bench::default() },
            unsaved: Vec::new(),
            why_unsaved: trial.err(),
            sight: Sight::default(),
            history: History::default(),
            is_undoing: false,
            worked_out: Vec::new(),
            strengths: Strengths::default(),
            timed_at: None,
            told: Vec::new(),
            has_begun: false,
            is_awake: false,
            screen: Rc::default(),
            is_stale: true,
            effects: Vec::new(),
        };
        desk.open_forms(world);
        desk.read_shelf();
        desk.look_at_journal(world);
        desk.recover(world);
        desk.read_all(false, world);
        desk.sight.is_first &=
            desk.bench.book.own.is_empty() && desk.bench.book.runs.is_empty() && desk.why_unsaved.is_none();
        let effects = std::mem::take(&mut desk.effects);
        (desk, effects)
    }

    /// Does what a person does.
    #[must_use]
    pub fn act(&mut self, act: &Act, world: &World<'_>) -> Vec<Effect> {
        if let Act::Type(name, _) | Act::Choose(name, _) = act
            && name != FROM
        {
            self.note_typing(name, matches!(act, Act::Choose(..)));
            self.sight.is_first = false;
        }
        let sheet = self.sight.sheet;
        self.is_stale = true;
        self.set_clock(world);
        self.save_again(world);
        self.do_act(act, world);
        // What is wrong with what is typed is said where it is seen, above the pad.
        if let (Act::Type(..), Some((field, _))) = (act, self.sight.active)
            && self.shown().field(field).is_some_and(|field| field.problem.is_some())
        {
            self.effects.push(Effect::Show(field));
        }
        self.step_of_sheet(sheet.is_some());
        self.timed_at = None;
        std::mem::take(&mut self.effects)
    }

    /// Takes in what has happened.
    #[must_use]
    pub fn tell(&mut self, news: &News, world: &World<'_>) -> Vec<Effect> {
        let is_quiet = matches!(news, News::Tick | News::Back);
        self.is_stale |= !is_quiet || self.route.row().shows_time || self.counts();
        self.set_clock(world);
        self.save_again(world);
        match news {
            News::Address(hash) => self.arrive(hash, world),
            News::Back => self.sight.sheet = None,
            News::Stored(key) => self.follow(key, world),
            News::Seen => {
                self.read_all(self.bench.book.has_cards, world);
                self.follow_forms("", world);
                self.beat();
            }
            News::Tick => self.beat(),
            News::Given(file) => self.given(file, world),
            News::File(text) => {
                self.look_at(text, world);
                // Wherever it was handed over.
                if self.route != Route::Backup {
                    self.effects.push(Effect::Go(Route::Backup.href()));
                    self.step_of_sheet(self.sight.sheet.is_some());
                }
            }
            News::Packed(text) => self.packed(text),
            News::Copied(done) => self.copied(*done),
            News::CopiedIsOver => self.sight.copied.clear(),
            News::SaidIsOver(words) => self.sight.is_over(words),
            News::Recover => self.recover_now(world),
            News::Page { update_waits, can_install, is_installed } => {
                self.sight.update_waits |= *update_waits;
                (self.sight.can_install, self.sight.is_installed) = (*can_install, *is_installed);
            }
            News::Keyboard(is_there) => self.device.has_keyboard = *is_there,
        }
        if !is_quiet {
            self.timed_at = None;
        }
        std::mem::take(&mut self.effects)
    }
}
