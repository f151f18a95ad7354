//! What the strip of a run sheet says: what runs, what comes next, what is late.

use crate::book::Run;
use crate::reading::named;
use crate::screen::clock::{counted_down, lasting};
use crate::screen::sheet::{Sheet, Sheeted};
use crate::screen::{Bench, Figure, Strip, Tone};

pub(super) fn strip(run: &Run, sheet: &Sheet, bench: &Bench) -> Strip {
    let mut strip = next(run, sheet, bench);
    // A part that comes to less than was asked says so until all of it is done.
    let is_open = |key: u32| {
        let prefix = format!("{key}/");
        sheet.steps.iter().any(|step| !step.is_done() && step.key.starts_with(prefix.as_str()))
    };
    let cut = sheet.parts.iter().find(|made| !made.cut.is_empty() && is_open(made.key));
    if let Some(made) = cut.filter(|_| run.finished == 0) {
        strip.also = format!("{}. {}", strip.also, made.cut);
    }
    strip
}

/// What runs, what comes next, what is late.
fn next(run: &Run, sheet: &Sheet, bench: &Bench) -> Strip {
    if run.finished > 0 {
        let day = bench.clock.day(i64::try_from(run.finished).unwrap_or(0));
        return Strip {
            figures: vec![Figure::new(named(&run.name), "")],
            also: format!("Finished {day}"),
            tone: Tone::Answer,
            ..Strip::default()
        };
    }
    let running = sheet.steps.iter().filter_map(|step| Some((step.due()?, step))).min_by_key(|(due, _)| *due);
    let now = bench.clock.now();
    let to_do = sheet.next().filter(|step| !step.mark.is_running());
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
            Strip { figures: vec![figure], also, tone: Tone::Answer, ..Strip::default() }
        }
        (None, Some(step)) => {
            let figure = match step.start {
                Some(start) if start > now => Figure::new(bench.clock.words(start), "latest"),
                Some(start) if now - start > 60_000 => Figure::new(lasting((now - start) / 1000), "late"),
                _ => Figure::new("Now", ""),
            };
            Strip { figures: vec![figure], also: step.step.words.clone(), tone: Tone::Answer, ..Strip::default() }
        }
        (None, None) if sheet.steps.is_empty() => Strip {
            figures: vec![Figure::new("–", "")],
            also: "In Prep, or on a spec, tap “To the run sheet”".into(),
            tone: Tone::Waiting,
            ..Strip::default()
        },
        (None, None) => Strip {
            figures: vec![Figure::new("Done", "")],
            also: "All steps are ticked off".into(),
            tone: Tone::Answer,
            ..Strip::default()
        },
    }
}
