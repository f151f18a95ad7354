//! Run sheets: ticks and timers, and what a screen makes put on one.

use super::effect::raise;
use super::records::Open;
use super::{Desk, World};
use crate::book::{Part, Run};
use crate::screen::route::Route;
use crate::screen::{Act, Button, plural};
use crate::store::deeds;
use crate::tool::batch::run;
use crate::tool::{self, Change, after};

impl Desk {
    /// Does something to the run that is open.
    pub(super) fn change_run(&mut self, act: &Act, world: &World<'_>) {
        if let Act::Start(_) = act {
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
        let step = match act {
            Act::Start(step) | Act::Untick(step) => step.clone(),
            Act::Tick(_) => String::new(),
            _ => return,
        };
        self.change_form(Route::Run, Change::Put(&[("step", step)]), world);
    }

    /// Puts what the screen makes on the run sheet that is open, or on a new one.
    pub(super) fn put_on_run(&mut self, world: &World<'_>) {
        self.sight.activate(None);
        let (name, parts) = match self.open_record() {
            Some(Open::Spec(entry, at)) => (entry.value.name.clone(), run::parts_of(&entry.id, &entry.value, at)),
            _ => {
                // All texts of the form, also those that nobody has typed over.
                let texts = after(self.route, self.texts(self.route), Change::Put(&[]));
                let plan = tool::plan(self.route, &texts, &self.bench);
                let part = Part { tool: self.route.form_key().into(), texts, ..Part::default() };
                (plan.map(|plan| plan.title).unwrap_or_default(), vec![part])
            }
        };
        let chosen = self.bench.book.run(&self.text(Route::Run, "id")).cloned();
        let open = chosen.filter(|entry| entry.value.finished == 0 && entry.newer.is_none());
        let worked = match &open {
            Some(entry) => {
                deeds::change_run(entry, &run::with_parts(&entry.value, parts, &self.bench), "a prep", world.now)
            }
            None => {
                let run = Run { name, made: world.now, ..Run::default() };
                deeds::new_run(&run::with_parts(&run, parts, &self.bench), &(world.fresh)(), world.now)
            }
        };
        let Some(done) = self.perform(worked, world) else { return };
        let Some(id) = done.open.or_else(|| open.map(|entry| entry.id.clone())) else { return };
        self.type_into(Route::Run, "id", id.clone(), world);
        self.type_into(Route::Run, "step", String::new(), world);
        if let Some(entry) = self.bench.book.run(&id) {
            let (count, name) = (entry.value.parts.len(), entry.value.name.trim());
            let words = format!("On the run sheet “{name}”, as prep {count}. Batch, then Run sheet, shows it.");
            self.say(&words);
        }
    }
}
