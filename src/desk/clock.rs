//! The clock: run sheets at the time it is, what rings, what is due next.

use std::rc::Rc;
use std::sync::Arc;

use super::view::Due;
use super::{Desk, Effect, World};
use crate::screen::Bench;
use crate::screen::clock::lasting;
use crate::screen::route::Route;
use crate::tool::batch::run;

const WAITS_GO_BY_IT: &str = "Waits go by it: those that run end that much later than they should.";

/// Seconds to go at which a wait is told of, after its beginning.
const MARKS: [i64; 3] = [300, 60, 0];

/// The time to go as it is read out: "5 minutes to go".
fn spoken(seconds: i64) -> String {
    match seconds {
        ..=0 => "over".to_owned(),
        1..60 => format!("{seconds} seconds to go"),
        60 => "1 minute to go".to_owned(),
        61..3_600 if seconds % 60 == 0 => format!("{} minutes to go", seconds / 60),
        _ => format!("{} to go", lasting(seconds)),
    }
}

impl Desk {
    /// The bench, with the run sheets at the time it is. Each is worked out once, until its record or the bench changes, and
    /// then but for the parts that stay; only its times are worked out anew.
    pub(super) fn timed(&mut self) -> &Bench {
        if self.timed_at == Some(self.bench.clock.now) {
            return &self.bench;
        }
        self.timed_at = Some(self.bench.clock.now);
        let shows_all = self.route == Route::Run;
        let runs = self.bench.book.runs.iter().filter(|entry| shows_all || entry.value.finished == 0);
        let runs: Vec<_> = runs.map(Arc::clone).collect();
        self.bench.sheets.clear();
        let mut known = std::mem::take(&mut self.worked_out);
        for entry in runs {
            let at = known.iter().position(|(there, _)| Arc::ptr_eq(there, &entry));
            let sheet = match at {
                Some(at) => known.swap_remove(at).1,
                None => {
                    let was = known.iter().find(|(there, _)| there.id == entry.id);
                    let was = was.map(|(there, worked)| (&there.value, worked.as_ref()));
                    Rc::new(run::worked_out(&entry.value, was, &self.bench))
                }
            };
            let timed = Rc::new(sheet.sheet.clone().at(&self.bench.clock));
            self.bench.sheets.push((entry.id.clone(), timed));
            self.worked_out.push((entry, sheet));
        }
        &self.bench
    }

    /// Tells of waits as they begin, near their end and are over, each once; rings for what is over, and keeps the screen awake
    /// while a wait runs.
    pub(super) fn beat(&mut self) {
        let mut timers = match self.bench.book.runs.is_empty() {
            true => Vec::new(),
            false => run::timers(self.timed()),
        };
        timers.extend(self.begun());
        if self.is_awake == timers.is_empty() {
            self.is_awake = !timers.is_empty();
            let text = if self.is_awake { "1" } else { "" };
            self.effects.push(Effect::Send("meniscus-awake", vec![("text", text.to_owned())]));
        }
        let now = self.bench.clock.now();
        let mut said = Vec::new();
        for timer in timers {
            let seconds = (timer.due - now + 999).div_euclid(1000);
            let passed = MARKS.iter().filter(|mark| seconds <= **mark).count();
            let known = self.told.iter_mut().find(|(key, _)| *key == timer.key);
            match known {
                Some((_, told)) if *told >= passed => continue,
                Some((_, told)) => *told = passed,
                None => self.told.push((timer.key.clone(), passed)),
            }
            said.push(format!("{}: {}", timer.words, spoken(seconds)));
            if seconds <= 0 {
                let texts = vec![("text", timer.words), ("tag", timer.key), ("href", timer.href)];
                self.effects.push(Effect::Send("meniscus-ring", texts));
            }
        }
        if !said.is_empty() {
            self.effects.push(Effect::Speak(said.join(". ")));
        }
    }

    /// Notes the time. Where the clock goes back while a wait runs, that is said: waits go by it.
    pub(super) fn set_clock(&mut self, world: &World<'_>) {
        let before = std::mem::replace(&mut self.bench.clock.now, world.now);
        if self.bench.clock.is_set_back(before) && self.is_awake {
            let by = lasting(i64::try_from((before - world.now) / 1000).unwrap_or(0));
            self.sight.notice = format!("The clock of this device was set back by {by}. {WAITS_GO_BY_IT}");
        }
    }

    /// Whether a wait ends within so many seconds, or is over. The bench is timed already.
    pub(super) fn is_due_within(&self, seconds: i64) -> bool {
        let by = self.bench.clock.now() + 1_000 * seconds;
        let is_by = |timer: &run::Timer| timer.due < by;
        self.begun().iter().any(is_by)
            || (!self.bench.book.runs.is_empty() && run::timers(&self.bench).iter().any(is_by))
    }

    /// What is due next: on a run sheet, of what its own strip does not show; of a spec where it is not counted in sight.
    /// The bench is timed already.
    pub(super) fn due(&self) -> Option<Due> {
        let of_spec = self.due_of_spec();
        // What is over goes before what runs, and a spec's short wait before what a sheet plans.
        match self.due_of_runs() {
            Some(due) if of_spec.as_ref().is_none_or(|spec| due.is_over && !spec.is_over) => Some(due),
            _ => of_spec,
        }
    }

    fn due_of_runs(&self) -> Option<Due> {
        if self.bench.book.runs.is_empty() {
            return None;
        }
        let shown = self.bench.book.run(&self.text(Route::Run, "id")).filter(|_| self.route == Route::Run);
        let (figure, words, is_over, href) = match shown {
            Some(entry) => {
                let sheet = run::sheet_of(entry, &self.bench);
                let step = sheet.open(&self.text(Route::Run, "step")).map_or("", |step| &step.key);
                run::next_over(&self.bench, (&entry.id, step))?
            }
            None => run::next_due(&self.bench)?,
        };
        Some(Due { figure, words, is_over, href })
    }
}
