//! Run sheets: ticks and timers, and what a screen makes put on one.

use super::effect::raise;
use super::records::Open;
use super::{Desk, World};
use crate::book::{Part, Run};
use crate::screen::route::Route;
use crate::screen::{Act, Button, plural};
use crate::store::deeds;
use crate::tool::batch::run;
use crate::tool::{Change, after};

impl Desk {
    /// Does something to the run that is open.
    pub(super) fn change_run(&mut self, act: &Act, world: &World<'_>) {
        if let Act::Start(_) | Act::Longer(_) = act {
            self.effects.push(raise("meniscus-arm"));
        }
        let Some(Open::Run(entry)) = self.open_record() else { return };
        if *act == Act::Finish {
            let sheet = run::sheet_of(&entry, self.timed());
            let open = sheet.steps.iter().filter(|step| !step.is_done()).count();
            if open > 0 {
                let words = format!("{open} {} still open on this sheet.", plural(open, "step is", "steps are"));
                return self.offer(&words, vec![Button::new("Finish all the same", Act::FinishOpen)]);
            }
        }
        let act = if *act == Act::FinishOpen { &Act::Finish } else { act };
        let Some((run, what)) = run::changed(&entry.value, act, &self.bench) else { return };
        if self.perform(deeds::change_run(&entry, &run, what, world.now), world).is_none() {
            return;
        }
        // A step that has begun stays open; after one that is done the next one comes.
        match act {
            Act::Start(step) | Act::Longer(step) | Act::Untick(step) => self.open_step_of(step, world),
            Act::Tick(_) => self.open_step_of("", world),
            _ => {}
        }
    }

    /// Makes a step of the run that is open the one that strip and buttons speak of; empty for the next to do. The pad goes:
    /// what was typed on it belongs to the step before.
    pub(super) fn open_step_of(&mut self, step: &str, world: &World<'_>) {
        if self.text(Route::Run, "step") != step {
            self.sight.activate(None);
            self.type_into(Route::Run, "step", step.to_owned(), world);
        }
    }

    /// Puts what the screen makes on the run sheet that is open, or on a new one; asks first where it is there already.
    pub(super) fn put_on_run(&mut self, is_sure: bool, world: &World<'_>) {
        self.sight.activate(None);
        let parts = match self.open_record() {
            Some(Open::Spec(entry, at)) => run::parts_of(&entry.id, &entry.value, at),
            _ => {
                // All texts of the form, also those that nobody has typed over.
                let texts = after(self.route, self.texts(self.route), Change::Put(&[]));
                vec![Part { tool: self.route.form_key().into(), texts, ..Part::default() }]
            }
        };
        let chosen = self.bench.book.run(&self.text(Route::Run, "id")).cloned();
        let open = chosen.filter(|entry| entry.value.finished == 0 && entry.newer.is_none());
        let see = |id: &str| Button::new("See it", Act::Go(Route::Run.href_with("id", id)));
        if let Some(entry) = open.as_ref().filter(|entry| !is_sure && run::holds(&entry.value, &parts)) {
            let buttons = vec![see(&entry.id), Button::new("Add it again", Act::ToRunAgain)];
            return self.offer("Already on the run sheet.", buttons);
        }
        let worked = match &open {
            Some(entry) => {
                deeds::change_run(entry, &run::with_parts(&entry.value, parts, &self.bench), "a prep", world.now)
            }
            None => {
                let run = Run { made: world.now, ..Run::default() };
                deeds::new_run(&run::with_parts(&run, parts, &self.bench), &(world.fresh)(), world.now)
            }
        };
        let Some(done) = self.perform(worked, world) else { return };
        let Some(id) = done.open.or_else(|| open.map(|entry| entry.id.clone())) else { return };
        self.type_into(Route::Run, "id", id.clone(), world);
        self.type_into(Route::Run, "step", String::new(), world);
        let number = self.bench.book.deeds.last().map(|deed| deed.number);
        let undo = number.map(|number| Button::new("Undo", Act::UndoDeed(number, false)));
        self.offer("On the run sheet.", undo.into_iter().chain([see(&id)]).collect());
        self.sight.is_passing = true;
    }
}
