//! Run sheet: preps in order, what must start when, timers that go by the clock, what came out; and the log of them.

mod chain;
mod due;
mod part;
mod readings;
mod record;
mod remarks;
mod rows;
mod sheet;
mod spec;
mod strip;
#[cfg(test)]
pub(crate) mod tests;

pub use chain::with_parts;
pub use due::{Timer, next_due, timers};
pub use record::{FIELDS, changed, edited, text_of, undone};
use sheet::MOST_SLACK;
pub use sheet::{sheet, sheet_of, worked_out};
pub use spec::{ICE, SPEC, parts_of};

use crate::book::{Entry, Run};
use crate::screen::clock::lasting;
use crate::screen::pad::Keys;
use crate::screen::sheet::{Sheet, Sheeted};
use crate::screen::{
    Act, Answer, Bench, Block, Button, Fields, Figure, Input, Problem, Strip, Tone, Tool, form, newer_caution, plural,
};
use strip::strip;

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
        /// Minutes by which it is ready before that.
        slack = "",
        /// Times that the spec in it is made.
        times = "",
        /// What came out of the step that is open.
        got = "",
        /// What that reads, °Bx.
        brix = "",
        /// Its pH.
        ph = "",
        /// How warm it is.
        celsius = "",
        /// Anything else.
        notes = "",
    }
}

const READY: &str = "ready";
const SLACK: &str = "slack";
const GOT: &str = "got";

/// What the app shows of timers, in a line.
const ASLEEP: &str = "Timers go by the clock, also when the app is closed. They ring while it is open; a phone that sleeps may ring late, so the screen is kept awake where the phone allows it.";

impl Tool for RunForm {
    fn is_tall(&self) -> bool {
        true
    }

    fn empty_label(&self, bench: &Bench) -> &'static str {
        if bench.book.run(&self.id).is_some() { "Delete" } else { "" }
    }

    fn layout(&self, bench: &Bench) -> Vec<Block> {
        let new = Button::new("New run sheet", Act::NewRun);
        let Some(entry) = bench.book.run(&self.id) else {
            return vec![Block::Buttons(vec![new]), Block::Table("", Vec::new())];
        };
        self.laid_out(&entry.value, &sheet_of(entry, bench))
    }

    fn answer(&self, bench: &Bench) -> Answer {
        match bench.book.run(&self.id) {
            Some(entry) => self.answered(entry, &sheet_of(entry, bench), bench),
            None => listed(bench),
        }
    }

    fn show(&mut self, bench: &Bench) -> (Vec<Block>, Answer) {
        let Some(entry) = bench.book.run(&self.id) else { return (self.layout(bench), self.answer(bench)) };
        let sheet = sheet_of(entry, bench);
        let step = sheet.open(&self.step).map(|step| step.key.clone()).unwrap_or_default();
        for (name, text) in record::texts_at(&entry.value, &step) {
            if let Some((_, field)) = self.fields().into_iter().find(|(field, _)| *field == name) {
                *field = text;
            }
        }
        (self.laid_out(&entry.value, &sheet), self.answered(entry, &sheet, bench))
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
    fn laid_out(&self, run: &Run, sheet: &Sheet) -> Vec<Block> {
        let mut blocks = Vec::new();
        if run.finished == 0 {
            let open = sheet.open(&self.step);
            blocks.push(open.map_or(Block::Nothing, |open| Block::Buttons(self.buttons_of(open))));
            // Another tab may do a step while the name is being typed.
            let measured = open.filter(|open| open.is_measured());
            blocks.push(match measured.and_then(|open| open.step.gives.as_ref()) {
                Some(_) => Block::amount(GOT, "What came out", Keys::Bulk),
                None => Block::Nothing,
            });
            blocks.extend(match measured {
                Some(_) => [
                    Block::amount("brix", "it reads, °Bx", Keys::Count),
                    Block::amount("ph", "its pH", Keys::Count),
                    Block::amount("celsius", "it is at", Keys::Celsius),
                ],
                None => [Block::Nothing, Block::Nothing, Block::Nothing],
            });
            blocks.push(Block::Table("", Vec::new()));
            blocks.extend([
                Block::field("name", "Run sheet", Input::Words { placeholder: "Friday's cordial" }),
                Block::field(READY, "Ready by", Input::When),
                Block::amount(SLACK, "All done before that, min", Keys::Count),
            ]);
            if run.parts.iter().any(|part| part.tool == SPEC && part.from.is_none()) {
                blocks.push(Block::amount("times", "The spec, times", Keys::Count));
            }
            let parts = rows::parts(run, sheet);
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

    fn answered(&self, entry: &Entry<Run>, sheet: &Sheet, bench: &Bench) -> Answer {
        let mut answer = Answer::default();
        let run = &entry.value;
        answer.cautions.extend(newer_caution(entry.newer));
        let open = sheet.open(&self.step).map(|step| step.key.clone());
        answer.rows_title = if run.finished == 0 { "In order of their start" } else { "What was done" };
        answer.rows = match run.finished > 0 && !run.log.is_empty() {
            true => rows::log(run, bench),
            false => rows::steps(run, sheet, open.as_deref(), &self.id, bench),
        };
        answer.cautions.extend(sheet.unread.iter().cloned());
        self.check(run, sheet, open.as_deref(), &mut answer, bench);
        answer.strip = strip(run, sheet, bench);
        answer.buttons = Self::deeds(run, sheet);
        if run.finished == 0 {
            answer.notes.extend(sheet.remarks.iter().cloned());
            if sheet.ready.is_some() {
                let typed =
                    if run.slack.trim().is_empty() { " (rule of thumb: type your own, 0 for none)" } else { "" };
                let slack = lasting(sheet.slack / 1000);
                answer
                    .remarks
                    .push(format!("Starts are worked back so that all is done {slack} before “Ready by”{typed}."));
            }
            answer.remarks.push(ASLEEP.into());
        }
        rows::carry(run, sheet, &mut answer, bench);
        answer
    }

    fn buttons_of(&self, step: &Sheeted) -> Vec<Button> {
        let button = |label: &str, act: fn(String) -> Act| Button::new(label, act(step.key.clone()));
        let has_wait = step.step.wait > 0;
        match (step.is_done(), step.mark.is_running()) {
            (true, _) => vec![button("Not done after all", Act::Untick)],
            (false, true) => vec![button("Done", Act::Tick), button("Stop the timer", Act::Untick)],
            (false, false) if has_wait => {
                let wait = lasting(i64::from(step.step.wait));
                vec![button(&format!("Start {wait}"), Act::Start), button("Done", Act::Tick)]
            }
            (false, false) => vec![button("Done", Act::Tick)],
        }
    }

    /// What is done with the whole of it.
    fn deeds(run: &Run, sheet: &Sheet) -> Vec<Button> {
        let mut buttons = Vec::new();
        if run.finished > 0 {
            buttons.push(Button::new("Take it out of the log again", Act::Reopen));
        } else if !sheet.steps.is_empty() {
            buttons.push(Button::new("Finish: keep it in the log", Act::Finish));
        }
        buttons.push(Button::new("All run sheets", Act::AllRuns));
        buttons
    }

    /// What is wrong with what was typed.
    fn check(&self, run: &Run, sheet: &Sheet, open: Option<&str>, answer: &mut Answer, bench: &Bench) {
        if !run.ready.trim().is_empty() && sheet.ready.is_none() {
            answer.problems.push(Problem::new(READY, "Choose a day and a time."));
        }
        let problems = &mut answer.problems;
        bench.number(SLACK, &self.slack, (0.0, MOST_SLACK), "Type minutes, 0 to 10080; empty for 30.", problems);
        if let Some(step) = sheet.steps.iter().find(|step| Some(step.key.as_str()) == open && step.is_measured()) {
            if step.step.gives.is_some() {
                bench.amount(GOT, &self.got, crate::text::Dimension::Either, problems);
            }
            bench.number("brix", &self.brix, (0.0, 85.0), "Type what it reads, 0 to 85 °Bx.", problems);
            bench.number("ph", &self.ph, (0.5, 12.0), "Type a pH, like 3.1.", problems);
            bench.temperature("celsius", &self.celsius, (-30.0, 110.0), problems);
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
        } else if let Some(ready) = sheet.ready
            && run.finished == 0
            && sheet.earliest > ready - sheet.slack + 60_000
            && sheet.steps.iter().any(|step| !step.is_done())
        {
            answer.cautions.push(format!(
                "{} of slack left: from now it takes until {}.",
                lasting((ready - sheet.earliest) / 1000),
                bench.clock.words(sheet.earliest)
            ));
        }
    }
}

/// All run sheets, and the log.
fn listed(bench: &Bench) -> Answer {
    let mut answer = Answer { rows_title: "Run sheets and log", rows: rows::list(bench), ..Answer::default() };
    let open = bench.book.runs.iter().filter(|entry| entry.value.finished == 0).count();
    answer.strip = Strip {
        figures: vec![Figure::new(open.to_string(), plural(open, "run sheet open", "run sheets open"))],
        also: "In Prep, or on a spec, tap “To the run sheet”".into(),
        tone: if bench.book.runs.is_empty() { Tone::Waiting } else { Tone::Answer },
        ..Strip::default()
    };
    answer.remarks.push(ASLEEP.into());
    answer
}
