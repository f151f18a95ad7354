//! A run: preps to be made for a time, what has been done of them, and afterwards the log of it. Texts as they were
//! typed; steps, amounts and times are derived.

use super::by_name::{ByName, Texts};
use super::slot::{Field, Record};

/// Most parts of a run.
pub const MOST_PARTS: usize = 1_000;
/// The largest key of a part.
pub const MOST_KEY: u32 = 1_000_000;

/// A run sheet; once finished, an entry of the log.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Run {
    /// What it is called.
    pub name: String,
    /// When it must be ready on the clock on the wall, as "2026-11-28T18:30"; empty for no time.
    pub ready: String,
    /// Minutes by which it is ready before that, as typed; empty for the usual.
    pub slack: String,
    /// Anything else.
    pub notes: String,
    /// When it was first written down, in milliseconds since 1970.
    pub made: u64,
    /// When it was finished; 0 while it is not.
    pub finished: u64,
    /// What is made, in order.
    pub parts: Vec<Part>,
    /// What has been done, by step: "2/rest" is the step "rest" of the part of key 2.
    pub marks: ByName<Tick>,
    /// Its steps as they were when it was finished: figures that change later do not change what was done.
    pub log: Vec<Logged>,
}

/// A step as it was done.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Logged {
    /// Which: "2/rest".
    pub key: String,
    /// What its part made.
    pub title: String,
    /// What was done, with its amounts.
    pub words: String,
    /// How long it was to wait, and what it should have given.
    pub planned: String,
}

/// Something to make.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Part {
    /// Its number in this run, never used again.
    pub key: u32,
    /// The key of the form it comes from.
    pub tool: String,
    /// The part whose making it takes, by its number; none for its own amount.
    pub from: Option<u32>,
    /// What was typed in that form.
    pub texts: Texts,
}

/// What has been done of a step.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Tick {
    /// When its wait began, in milliseconds since 1970; 0 for not.
    pub started: u64,
    /// When it was ticked off; 0 for not.
    pub done: u64,
    /// What came out, as typed.
    pub got: String,
    /// What that reads, °Bx.
    pub brix: String,
    /// Its pH.
    pub ph: String,
    /// How warm it is, °C.
    pub celsius: String,
}

impl Record for Run {
    fn slots(&mut self) -> Vec<Field<'_>> {
        vec![
            Field::usual("name", &mut self.name),
            Field::spare("ready", &mut self.ready),
            Field::spare("slack", &mut self.slack),
            Field::spare("notes", &mut self.notes),
            Field::usual("made", &mut self.made),
            Field::spare("finished", &mut self.finished),
            Field::usual("parts", &mut self.parts),
            Field::usual("marks", &mut self.marks),
            Field::spare("log", &mut self.log),
        ]
    }
}

impl Record for Logged {
    fn slots(&mut self) -> Vec<Field<'_>> {
        vec![
            Field::usual("key", &mut self.key),
            Field::usual("title", &mut self.title),
            Field::usual("words", &mut self.words),
            Field::spare("planned", &mut self.planned),
        ]
    }
}

impl Record for Part {
    fn slots(&mut self) -> Vec<Field<'_>> {
        vec![
            Field::usual("key", &mut self.key),
            Field::usual("tool", &mut self.tool),
            Field::spare("from", &mut self.from),
            Field::usual("texts", &mut self.texts),
        ]
    }
}

impl Record for Tick {
    fn slots(&mut self) -> Vec<Field<'_>> {
        vec![
            Field::spare("started", &mut self.started),
            Field::spare("done", &mut self.done),
            Field::spare("got", &mut self.got),
            Field::spare("brix", &mut self.brix),
            Field::spare("ph", &mut self.ph),
            Field::spare("celsius", &mut self.celsius),
        ]
    }
}

impl Run {
    /// The fields that are one text each, by the names they are kept under.
    pub fn fields(&mut self) -> [(&'static str, &mut String); 4] {
        let Run { name, ready, slack, notes, .. } = self;
        [("name", name), ("ready", ready), ("slack", slack), ("notes", notes)]
    }

    /// Whether a wait of it runs.
    #[must_use]
    pub fn has_running(&self) -> bool {
        self.finished == 0 && self.marks.values().any(Tick::is_running)
    }

    /// As another device takes it: waits that run are not begun, but for those that run in `there` too.
    #[must_use]
    pub fn stilled(&self, there: Option<&Run>) -> Run {
        let mut run = self.clone();
        if self.has_running() {
            let runs_there = |step: &str, mark: &Tick| there.and_then(|run| run.marks.get(step)) == Some(mark);
            run.marks.retain(|step, mark| {
                if mark.is_running() && !runs_there(step, mark) {
                    mark.started = 0;
                }
                *mark != Tick::default()
            });
        }
        run
    }

    /// The number of the next part: one that none has had, up to the largest; after that one that none has.
    #[must_use]
    pub fn next_key(&self) -> u32 {
        let has = |key| self.parts.iter().any(|part| part.key == key);
        let next = self.parts.iter().map(|part| part.key.saturating_add(1)).max().unwrap_or(0);
        if next <= MOST_KEY { next } else { (0..=MOST_KEY).find(|key| !has(*key)).unwrap_or(MOST_KEY) }
    }
}

impl Tick {
    /// Its texts, by the names they are kept under.
    pub fn fields(&mut self) -> [(&'static str, &mut String); 4] {
        let Tick { got, brix, ph, celsius, .. } = self;
        [("got", got), ("brix", brix), ("ph", ph), ("celsius", celsius)]
    }

    /// When a wait of so many seconds would have begun, were it so many longer: from now on where it is over. None while
    /// that has not come yet, for a wait that begins later than it is goes by a clock that was set back.
    #[must_use]
    pub fn lengthened(&self, wait: u32, by: u32, now: u64) -> Option<u64> {
        let began = self.started.max(now.saturating_sub(u64::from(wait) * 1000));
        Some(began + u64::from(by) * 1000).filter(|began| *began <= now)
    }

    /// Whether its wait runs.
    #[must_use]
    pub const fn is_running(&self) -> bool {
        self.started > 0 && self.done == 0
    }
}
