//! Run sheet: preps in order, what must start when, timers that go by the clock, what came out; and the log of them.

mod chain;
mod due;
mod line;
mod name;
mod paper;
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

pub use chain::{holds, with_parts};
pub use due::{Line, Timer, next_due, next_over, timers};
pub use name::title;
pub use record::{FIELDS, changed, edited, text_of, undone};
use sheet::MOST_SLACK;
pub use sheet::{Worked, sheet, sheet_of, worked_out};
pub use spec::{ICE, SPEC, parts_of};

use crate::book::{Entry, Run};
use crate::screen::clock::lasting;
use crate::screen::pad::Keys;
use crate::screen::route::{Place, Route};
use crate::screen::sheet::{Sheet, Sheeted};
use crate::screen::{
    Act, Answer, Bench, Block, Button, Fields, Figure, Input, Problem, Strip, Tone, Tool, form, newer_caution, plural,
};
use name::called;
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
        let Some(entry) = bench.book.run(&self.id) else { return vec![Block::Table("", Vec::new())] };
        self.laid_out(&entry.value, &sheet_of(entry, bench), bench)
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
        (self.laid_out(&entry.value, &sheet, bench), self.answered(entry, &sheet, bench))
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
    fn laid_out(&self, run: &Run, sheet: &Sheet, bench: &Bench) -> Vec<Block> {
        let name = Block::field("name", "Run sheet", Input::Words { placeholder: "like Friday's cordial" });
        let notes = Block::field("notes", "Notes", Input::Lines { placeholder: "how it went" });
        if run.finished > 0 {
            return vec![Block::Table("", Vec::new()), name, notes];
        }
        let open = sheet.open(&self.step);
        let mut events = line::events(run, sheet, open.map_or("", |open| &open.key), bench);
        let current = events.iter().position(|event| event.is_current).map_or(0, |at| at + 1);
        let later = events.split_off(current);
        let mut blocks = vec![Block::SheetHead(paper::head(run, sheet, bench)), Block::Timeline(events)];
        // Another tab may do a step while the name is being typed: each field keeps its place.
        let measured = open.filter(|open| open.is_measured());
        let is_got = measured.is_some_and(|open| open.step.gives.is_some());
        let fields = [
            Block::amount(GOT, "What came out", Keys::Bulk),
            Block::amount("brix", "Reading, °Bx", Keys::Count),
            Block::amount("ph", "pH", Keys::Count),
            Block::amount("celsius", "Temperature", Keys::Celsius),
        ];
        let is_asked = |at: usize| if at == 0 { is_got } else { measured.is_some() };
        blocks.extend(
            fields.into_iter().enumerate().map(|(at, field)| if is_asked(at) { field } else { Block::Nothing }),
        );
        blocks.extend([
            Block::Timeline(later),
            Block::ToHave(paper::to_have(sheet, bench)),
            Block::Table("", Vec::new()),
            name,
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
        blocks.push(notes);
        blocks
    }

    fn answered(&self, entry: &Entry<Run>, sheet: &Sheet, bench: &Bench) -> Answer {
        let run = &entry.value;
        let open = sheet.open(&self.step);
        let mut answer = Answer {
            name: called(run, sheet),
            strip: strip(run, sheet, open, bench),
            head: vec![Button::new("Print", Act::Print)],
            foot: foot(run, sheet, bench),
            ..Answer::default()
        };
        answer.cautions.extend(newer_caution(entry.newer));
        if run.finished > 0 {
            answer.rows_title = "What was done";
            answer.rows = rows::log(run, bench);
        } else {
            answer.rows.extend(rows::hands_on(sheet));
        }
        answer.cautions.extend(sheet.unread.iter().cloned());
        self.check(run, sheet, open.map(|open| open.key.as_str()), &mut answer, bench);
        if run.finished == 0 {
            if !sheet.needs.is_empty() {
                answer.carry("To buy", Route::Buy.href_with("run", &entry.id));
            }
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
        answer
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

/// What there is to do with the whole of it, the expected deed first.
fn foot(run: &Run, sheet: &Sheet, bench: &Bench) -> Vec<Button> {
    let label = rows::label(run, sheet, bench);
    let add = Button::new("Add a prep", Act::Go(Place::Prep.first().href()));
    let all = Button::new("All sheets", Act::AllRuns);
    if run.finished > 0 {
        return label.into_iter().chain([Button::new("Open again", Act::Reopen), all]).collect();
    }
    let finish = || (!sheet.steps.is_empty()).then(|| Button::new("Finish", Act::Finish));
    let is_over = !sheet.steps.is_empty() && sheet.steps.iter().all(Sheeted::is_done);
    let first = finish().filter(|_| is_over);
    let later = finish().filter(|_| !is_over);
    first.into_iter().chain([add]).chain(later).chain(label).chain([all]).collect()
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
    answer.foot.push(Button::new("New run sheet", Act::NewRun));
    answer.remarks.push(ASLEEP.into());
    answer
}
