//! Readings: what was noted at the steps of a run, whether it counts in what follows, and in words why it does not.

use crate::book::{Run, Tick};
use crate::quantity::Temperature;
use crate::screen::Bench;
use crate::screen::sheet::Made;
use crate::text;

/// What is read of what came out.
pub(super) struct Kind {
    /// The field it is noted in.
    pub(super) field: &'static str,
    /// What it is called.
    name: &'static str,
    /// Least and most that goes on to the next prep.
    limits: (f64, f64),
    /// Behind a figure of it.
    unit: &'static str,
}

/// All that is read, in the order of [`of_mark`].
pub(super) const KINDS: [Kind; 3] = [
    Kind { field: "brix", name: "°Bx", limits: (0.0, 60.0), unit: "°Bx" },
    Kind { field: "ph", name: "pH", limits: (0.5, 9.0), unit: "pH" },
    Kind { field: "celsius", name: "temperature", limits: (0.0, 95.0), unit: "°C" },
];

/// Which of them reads sugar.
pub(super) const BRIX: usize = 0;

/// What was noted of each kind.
pub(super) fn of_mark(mark: &Tick) -> [&str; KINDS.len()] {
    [&mark.brix, &mark.ph, &mark.celsius].map(|text| text.trim())
}

/// A reading that was noted.
pub(super) struct Noted {
    /// The part it was noted at.
    part: u32,
    kind: usize,
    /// Whether anything is reckoned by it.
    pub(super) counts: bool,
}

impl Noted {
    pub(super) const fn new(part: u32, kind: usize, counts: bool) -> Noted {
        Noted { part, kind, counts }
    }
}

/// Whether a reading can be used; in words why it cannot.
pub(super) fn check(kind: &Kind, typed: &str, step: &str, bench: &Bench) -> Result<(), String> {
    let value = match kind.field {
        "celsius" => text::read_temperature(typed, bench.decimal).ok().flatten().map(Temperature::celsius),
        _ => text::read_number(typed, bench.decimal).ok().flatten(),
    };
    let (least, most) = kind.limits;
    match value {
        Some(value) if (least..=most).contains(&value) => Ok(()),
        _ => Err(format!(
            "“{typed}”, noted at “{step}”, does not count: what goes on is {} to {} {}.",
            text::count(least, bench.decimal),
            text::count(most, bench.decimal),
            kind.unit
        )),
    }
}

/// What was noted and counts for nothing, with why: a remark for each part.
pub(super) fn idle(run: &Run, parts: &[Made], noted: &[Noted]) -> Vec<String> {
    let mut said = Vec::new();
    for made in parts {
        let idle =
            |kind: &usize| noted.iter().any(|noted| (noted.part, noted.kind, noted.counts) == (made.key, *kind, false));
        let names: Vec<&str> = (0..KINDS.len()).filter(idle).map(|kind| KINDS[kind].name).collect();
        if names.is_empty() {
            continue;
        }
        let takers = run.parts.iter().zip(parts).filter(|(part, _)| part.from == Some(made.key));
        let why = match takers.map(|(_, taker)| taker.title.as_str()).next() {
            Some(taker) => format!("{taker} is not reckoned by that"),
            None => "nothing on this sheet is made of it".to_owned(),
        };
        let (are, count) = if names.len() == 1 { ("is", "counts") } else { ("are", "count") };
        said.push(format!(
            "{} noted at “{}” {are} kept in the log and {count} for nothing else: {why}.",
            names.join(" and "),
            made.title
        ));
    }
    said
}
