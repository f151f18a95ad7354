//! Run sheet: preps in order, what must start when, timers that go by the clock, what came out; and the log of them.

mod due;
mod record;
mod rows;
mod sheet;
mod spec;
#[cfg(test)]
mod tests;

pub use due::{Timer, next_due, timers};
pub use record::{FIELDS, changed, edited, open_step, text_of, undone, with_parts};
pub use sheet::{Sheet, Sheeted, sheet};
pub use spec::{ICE, SPEC, parts_of};

pub(crate) use record::with_record;

use crate::book::Run;
use crate::reading::named;
use crate::screen::clock::{counted_down, lasting};
use crate::screen::pad::Keys;
use crate::screen::{Answer, Bench, Block, Button, Do, Figure, Input, Problem, Strip, Tone, Tool, form};

form! {
    /// The run that is open, and its texts.
    RunForm {
        /// Its id; empty when none is open.
        id = "",
        /// The step that is open; empty for the one that comes next.
        step = "",
        /// What it is called.
        name = "",
        /// When it must be ready.
        ready = "",
        /// Times that the spec in it is made.
        times = "",
        /// What came out of the step that is open.
        got = "",
        /// What that reads, °Bx.
        brix = "",
        /// Its pH.
        ph = "",
        /// Anything else.
        notes = "",
    }
}

const READY: &str = "ready";
const GOT: &str = "got";

/// What the app shows of timers, in a line.
const ASLEEP: &str = "Timers go by the clock, also when the app is closed. They ring while it is open; a phone that sleeps may ring late, so the screen is kept awake where the phone allows it.";

impl Tool for RunForm {
    fn is_tall(&self) -> bool {
        true
    }

    fn empty_label(&self, _bench: &Bench) -> &'static str {
        if self.id.is_empty() { "" } else { "Delete" }
    }

    fn layout(&self, bench: &Bench) -> Vec<Block> {
        let new = Button::new("New run sheet", Do::NewRun);
        let Some(entry) = bench.book.run(&self.id) else {
            return vec![Block::Buttons(vec![new]), Block::Table("", Vec::new())];
        };
        let run = &entry.value;
        let sheet = sheet(run, bench);
        let mut blocks = Vec::new();
        if run.finished == 0 {
            if let Some(open) = self.open(&sheet) {
                blocks.push(Block::Buttons(self.buttons_of(open)));
                if open.step.gives.is_some() {
                    blocks.extend([
                        Block::amount(GOT, "What came out", Keys::Bulk),
                        Block::amount("brix", "it reads, °Bx", Keys::Count),
                        Block::amount("ph", "its pH", Keys::Count),
                    ]);
                }
            }
            blocks.push(Block::Table("", Vec::new()));
            blocks.extend([
                Block::field("name", "Run sheet", Input::Words { placeholder: "Friday's cordial" }),
                Block::field(READY, "Ready by", Input::When),
            ]);
            if run.parts.iter().any(|part| part.tool == SPEC && part.from.is_none()) {
                blocks.push(Block::amount("times", "The spec, times", Keys::Count));
            }
            let parts = rows::parts(run, bench);
            if !parts.is_empty() {
                blocks.push(Block::Table("What is made", parts));
            }
        } else {
            blocks.extend([
                Block::Table("", Vec::new()),
                Block::field("name", "Run sheet", Input::Words { placeholder: "Friday's cordial" }),
            ]);
        }
        blocks.push(Block::field("notes", "Notes", Input::Lines { placeholder: "how it went" }));
        blocks.push(Block::Buttons(Vec::new()));
        blocks
    }

    fn answer(&self, bench: &Bench) -> Answer {
        let mut answer = Answer::default();
        let Some(entry) = bench.book.run(&self.id) else {
            answer.rows_title = "Run sheets and log";
            answer.rows = rows::list(bench);
            let open = bench.book.runs.iter().filter(|entry| entry.value.finished == 0).count();
            answer.strip = Strip {
                figures: vec![Figure::new(
                    open.to_string(),
                    if open == 1 { "run sheet open" } else { "run sheets open" },
                )],
                also: "In Prep, or on a spec, tap “To the run sheet”".into(),
                tone: if bench.book.runs.is_empty() { Tone::Waiting } else { Tone::Answer },
            };
            answer.remarks.push(ASLEEP.into());
            return answer;
        };
        let run = &entry.value;
        if let Some(version) = entry.newer {
            answer
                .cautions
                .push(format!("A newer Meniscus (version {version}) wrote this: it can be read, not changed."));
        }
        let sheet = sheet(run, bench);
        let open = self.open(&sheet).map(|step| step.key.clone());
        answer.rows_title = if run.finished == 0 { "In order of their start" } else { "What was done" };
        answer.rows = match run.finished > 0 && !run.log.is_empty() {
            true => rows::log(run, bench),
            false => rows::steps(run, &sheet, open.as_deref(), &self.id, bench),
        };
        for tool in &sheet.unread {
            answer.cautions.push(format!(
                "“{}” can't be read any more, so it has no steps: open its tool, mend it, and add it again.",
                rows::tool_name(tool)
            ));
        }
        self.check(run, &sheet, open.as_deref(), &mut answer, bench);
        answer.strip = strip(run, &sheet, bench);
        answer.buttons = Self::deeds(run, &sheet);
        if run.finished == 0 {
            answer.remarks.extend(rows::remarks(run, bench));
            answer.remarks.push(ASLEEP.into());
        }
        rows::carry(run, &sheet, &mut answer, bench);
        answer
    }

    fn empty(&mut self) {}

    fn take(&mut self, name: &str, text: &str) {
        match name {
            "id" if self.id != text => {
                text.clone_into(&mut self.id);
                self.step.clear();
            }
            "step" => text.clone_into(&mut self.step),
            _ => {}
        }
    }
}

impl RunForm {
    /// The step that is open: the one chosen, or the next to do.
    fn open<'a>(&self, sheet: &'a Sheet) -> Option<&'a Sheeted> {
        let chosen = sheet.steps.iter().find(|step| step.key == self.step);
        chosen.or_else(|| next(sheet))
    }

    fn buttons_of(&self, step: &Sheeted) -> Vec<Button> {
        let put = |label: &str, name: &'static str| {
            Button::putting(
                label,
                vec![(name, step.key.clone()), ("step", if name == "done" { String::new() } else { step.key.clone() })],
            )
        };
        let has_wait = step.step.wait > 0;
        match (step.is_done(), step.mark.is_running()) {
            (true, _) => vec![put("Not done after all", "not_done")],
            (false, true) => vec![put("Done", "done"), put("Stop the timer", "not_done")],
            (false, false) if has_wait => {
                let wait = lasting(i64::from(step.step.wait));
                vec![Button { deed: Some(Do::Arm), ..put(&format!("Start {wait}"), "start") }, put("Done", "done")]
            }
            (false, false) => vec![put("Done", "done")],
        }
    }

    /// What is done with the whole of it.
    fn deeds(run: &Run, sheet: &Sheet) -> Vec<Button> {
        let mut buttons = Vec::new();
        if run.finished > 0 {
            buttons.push(Button::putting("Take it out of the log again", vec![("reopen", "1".into())]));
        } else if !sheet.steps.is_empty() {
            buttons.push(Button::putting("Finish: keep it in the log", vec![("finish", "1".into())]));
        }
        buttons.push(Button::new("All run sheets", Do::AllRuns));
        buttons
    }

    /// What is wrong with what was typed.
    fn check(&self, run: &Run, sheet: &Sheet, open: Option<&str>, answer: &mut Answer, bench: &Bench) {
        if !run.ready.trim().is_empty() && sheet.ready.is_none() {
            answer.problems.push(Problem::new(READY, "Choose a day and a time."));
        }
        if sheet.steps.iter().any(|step| Some(step.key.as_str()) == open && step.step.gives.is_some()) {
            bench.amount(GOT, &self.got, crate::text::Kind::Either, &mut answer.problems);
            bench.number("brix", &self.brix, (0.0, 85.0), "Type what it reads, 0 to 85 °Bx.", &mut answer.problems);
            bench.number("ph", &self.ph, (0.5, 12.0), "Type a pH, like 3.1.", &mut answer.problems);
        }
        if !self.times.trim().is_empty() {
            bench.count("times", &self.times, &mut answer.problems);
        }
        if let Some(ready) = sheet.ready
            && run.finished == 0
            && sheet.earliest > ready + 60_000
            && sheet.steps.iter().any(|step| !step.is_done() && step.start.is_some_and(|start| start < sheet.now))
        {
            let late = lasting((sheet.earliest - ready) / 1000);
            answer
                .cautions
                .push(format!("Too late by {late}: from now it takes until {}.", bench.clock.words(sheet.earliest)));
        }
    }
}

/// The next step to do: one whose wait is over, else of those that may be begun the one that must start first, else the
/// one that is over first.
fn next(sheet: &Sheet) -> Option<&Sheeted> {
    let waiting = sheet.steps.iter().filter(|step| step.due().is_some()).min_by_key(|step| step.due());
    if let Some(over) = waiting.filter(|step| step.due().is_some_and(|due| due <= sheet.now)) {
        return Some(over);
    }
    let free = |step: &&Sheeted| !step.is_done() && step.is_free && !step.mark.is_running();
    sheet.steps.iter().filter(free).min_by_key(|step| step.start.unwrap_or(0)).or(waiting)
}

fn strip(run: &Run, sheet: &Sheet, bench: &Bench) -> Strip {
    if run.finished > 0 {
        let day = bench.clock.day(i64::try_from(run.finished).unwrap_or(0));
        return Strip {
            figures: vec![Figure::new(named(&run.name), "")],
            also: format!("Finished {day}"),
            tone: Tone::Answer,
        };
    }
    let running = sheet.steps.iter().filter_map(|step| Some((step.due()?, step))).min_by_key(|(due, _)| *due);
    let now = bench.clock.now();
    let to_do = next(sheet).filter(|step| !step.mark.is_running());
    let then = |step: &Sheeted| match step.start {
        Some(start) if start > now => format!("{} by {}", step.step.words, bench.clock.words(start)),
        _ => step.step.words.clone(),
    };
    match (running, to_do) {
        (Some((due, step)), to_do) => {
            let seconds = (due - now + 999).div_euclid(1000);
            let figure = if seconds > 0 {
                Figure::new(counted_down(seconds), "to go")
            } else {
                Figure::new(lasting((now - due) / 1000), "over")
            };
            let also = match to_do {
                Some(next) => format!("{}. Meanwhile: {}", step.step.words, then(next)),
                None => step.step.words.clone(),
            };
            Strip { figures: vec![figure], also, tone: Tone::Answer }
        }
        (None, Some(step)) => {
            let figure = match step.start {
                Some(start) if start > now => Figure::new(bench.clock.words(start), "latest"),
                Some(start) if now - start > 60_000 => Figure::new(lasting((now - start) / 1000), "late"),
                _ => Figure::new("Now", ""),
            };
            Strip { figures: vec![figure], also: step.step.words.clone(), tone: Tone::Answer }
        }
        (None, None) if sheet.steps.is_empty() => Strip {
            figures: vec![Figure::new("–", "")],
            also: "In Prep, or on a spec, tap “To the run sheet”".into(),
            tone: Tone::Waiting,
        },
        (None, None) => Strip {
            figures: vec![Figure::new("Done", "")],
            also: "All steps are ticked off".into(),
            tone: Tone::Answer,
        },
    }
}
