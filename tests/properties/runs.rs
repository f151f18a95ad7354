//! What holds for every run sheet: its order, its times and its hands, whatever was typed and noted on it.

use meniscus::book::{Part, Run, Tick};
use meniscus::screen::Bench;
use meniscus::screen::clock::Clock;
use meniscus::tool::batch::run::{sheet, with_parts};
use proptest::prelude::*;

/// Wednesday, 25 November 2026, 15:30.
const NOW: u64 = 1_795_620_600_000;
/// Three days later, 18:30.
const READY: &str = "2026-11-28T18:30";
const READY_AT: i64 = 1_795_890_600_000;

fn part(which: usize) -> Part {
    let (tool, texts): (&str, &[(&str, &str)]) = [
        ("fruit", &[("fruit", "lemon")][..]),
        ("clear", &[("fruit", "lemon"), ("method", "gelatin")][..]),
        ("cordial", &[("juice_of", "lemon-juice")][..]),
        ("milk-wash", &[("known", "spec")][..]),
        ("milk-wash", &[][..]),
        ("infuse", &[("make", "oleo")][..]),
        ("clear-ice", &[("ice", "one clear block")][..]),
        (
            "spec-form",
            &[("lines", "45 ml gin\n20 ml lemon cordial"), ("steps", "Stir 30 s\nRest 1 h"), ("times", "20")][..],
        ),
    ][which % 8];
    let texts = texts.iter().map(|(name, text)| ((*name).to_owned(), (*text).to_owned())).collect();
    Part { tool: tool.into(), texts, ..Part::default() }
}

proptest! {
    /// In whatever order its parts are put on it, and whatever is noted: no step begins before the one before it in its part
    /// is over, no part before what it takes, no two steps need the hands at once, and all is over by its time less its
    /// slack. No time is negative.
    #[test]
    fn a_sheet_keeps_order_hands_and_slack(
        which in prop::collection::vec(0_usize..8, 1..7),
        minutes in prop::option::of(0_u32..2_000),
        notes in prop::collection::vec(("[0-7]/(press|filter|thaw|mix|pour|bottle|measure|2)", "[0-9]{1,4}( ml| g|)", "[0-9]{1,2}"), 0..8),
    ) {
        let bench = Bench { clock: Clock { now: NOW, ahead: |_| 0 }, ..Bench::default() };
        let slack = minutes.map_or_else(String::new, |minutes| minutes.to_string());
        let mut run = with_parts(&Run { ready: READY.into(), slack, ..Run::default() }, which.into_iter().map(part).collect(), &bench);
        for (key, got, read) in notes {
            let tick = Tick { got, brix: read.clone(), ph: read.clone(), celsius: read, ..Tick::default() };
            run.marks.insert(key, tick);
        }
        let sheet = sheet(&run, &bench);
        prop_assert_eq!(sheet.ready, Some(READY_AT));
        let latest = READY_AT - i64::from(minutes.unwrap_or(30)) * 60_000;
        let part_of = |key: &str| key.split('/').next().and_then(|key| key.parse::<u32>().ok()).expect("a part");
        let spans: Vec<_> = sheet.steps.iter().map(|step| {
            let start = step.start.expect("a start");
            let hands = start + i64::from(step.step.work) * 1000;
            (part_of(&step.key), start, hands, hands + i64::from(step.step.wait) * 1000)
        }).collect();
        for (at, (part, start, hands, end)) in spans.iter().enumerate() {
            prop_assert!(*start > 0 && *end <= latest, "{} ends after {latest}", sheet.steps[at].key);
            for (other, (its, begins, busy, over)) in spans.iter().enumerate() {
                prop_assert!(at == other || hands <= begins || busy <= start || start == hands || begins == busy);
                if its == part && other < at {
                    prop_assert!(over <= start, "{} before {}", sheet.steps[at].key, sheet.steps[other].key);
                }
                let takes = run.parts.iter().find(|made| made.key == *part).and_then(|made| made.from);
                prop_assert!(takes != Some(*its) || over <= start);
            }
        }
        let (all, left) = sheet.hands_on();
        prop_assert!(0 <= left && left <= all && all == spans.iter().map(|(_, start, hands, _)| (hands - start) / 1000).sum::<i64>());
        prop_assert!(sheet.earliest >= i64::try_from(NOW).expect("a time"));
    }
}
