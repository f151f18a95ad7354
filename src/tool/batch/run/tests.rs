//! A run as a person goes through it.

mod following;
mod on_the_line;

use super::*;
use crate::book::{Book, Entry, Part, Stamp, Tick, demo_cards};
use crate::screen::clock::Clock;
use crate::screen::route::Route;
use crate::screen::{Block, Event, Held, Screen, Texts};
use crate::tool::screen;

thread_local! {
    /// How often a sheet was worked out.
    pub(crate) static WORKED_OUT: std::cell::Cell<u32> = const { std::cell::Cell::new(0) };
}

/// Wednesday, 25 November 2026, 15:30.
const NOW: u64 = 1_795_620_600_000;

fn part(tool: &str, pairs: &[(&str, &str)]) -> Part {
    let texts = pairs.iter().map(|(name, text)| ((*name).to_owned(), (*text).to_owned())).collect();
    Part { tool: tool.into(), texts, ..Part::default() }
}

fn chain() -> Run {
    let parts = vec![
        part("fruit", &[("fruit", "pear"), ("wanted", "1 l")]),
        part("clear", &[("fruit", "pear"), ("juice", "1 l")]),
        part("cordial", &[("juice", "780 ml"), ("juice_of", "pear-juice")]),
    ];
    with_parts(&Run { name: "Pears".into(), made: NOW, ..Run::default() }, parts, &Bench::default())
}

fn bench(run: &Run, now: u64) -> Bench {
    let entry =
        Entry { id: "r".into(), value: run.clone(), stamp: Stamp::default(), newer: None, pairs: Default::default() };
    let book = Book { runs: vec![std::sync::Arc::new(entry)], ..Book::default() };
    Bench { book: Held::new(book), clock: Clock { now, ahead: |_| 0 }, ..Bench::default() }
}

fn shown(run: &Run, now: u64) -> Screen {
    screen(Route::Run, &Texts::from([("id".to_owned(), "r".to_owned())]), &bench(run, now))
}

fn done(run: &Run, key: &str, now: u64) -> Run {
    changed(run, &Act::Tick(key.to_owned()), &bench(run, now)).expect("a change").0
}

/// The steps on the line of time.
fn events(screen: &Screen) -> Vec<Event> {
    let events =
        screen.blocks.iter().filter_map(|block| if let Block::Timeline(events) = block { Some(events) } else { None });
    events.flatten().cloned().collect()
}

/// The address of the label of a run.
fn label_of(screen: &Screen) -> String {
    let label = screen.foot.iter().find(|button| button.label == "Label it");
    let href = label.and_then(|button| if let Act::Go(href) = &button.act { Some(href.clone()) } else { None });
    href.unwrap_or_default()
}

/// What is wrong with the fields, by name.
fn problems(screen: &Screen) -> Vec<(&'static str, String)> {
    let fields =
        screen.blocks.iter().filter_map(|block| if let Block::Field(field) = block { Some(field) } else { None });
    fields.filter_map(|field| Some((field.name, field.problem.as_ref()?.words.clone()))).collect()
}

#[test]
fn each_part_takes_what_came_before_where_it_is_made_of_it() {
    let run = chain();
    assert_eq!(run.parts.iter().map(|part| part.from).collect::<Vec<_>>(), [None, Some(0), Some(1)]);
    assert_eq!(run.parts.iter().map(|part| part.key).collect::<Vec<_>>(), [0, 1, 2]);
    let apart = with_parts(&run, vec![part("infuse", &[]), part("clear", &[])], &Bench::default());
    assert_eq!(apart.parts[3..].iter().map(|part| part.from).collect::<Vec<_>>(), [None, None]);
}

#[test]
fn times_work_back_from_when_it_must_be_ready() {
    let mut run = chain();
    run.ready = "2026-11-28T18:30".into();
    let first = shown(&run, NOW);
    assert_eq!(first.strip.figures[0].to_string(), "Sat 14:55 latest");
    assert_eq!(first.strip.also, "Press 10 pears, 1\u{202f}742 g");
    let sheet = sheet(&run, &bench(&run, NOW));
    let ends: Vec<i64> = sheet
        .steps
        .iter()
        .filter_map(|step| Some(step.start? + i64::from(step.step.work + step.step.wait) * 1000))
        .collect();
    let starts: Vec<i64> = sheet.steps.iter().filter_map(|step| step.start).collect();
    assert!(ends.iter().zip(&starts[1..]).all(|(end, start)| end <= start), "{starts:?} {ends:?}");
    // Half an hour before it must be ready, or as long as a person says; what cannot be read is said, and counts as none.
    let last = |run: &Run| {
        let sheet = super::sheet(run, &bench(run, NOW));
        let step = sheet.steps.last().expect("a step");
        (sheet.ready.unwrap_or(0) - step.start.unwrap_or(0)) / 60_000 - i64::from(step.step.work + step.step.wait) / 60
    };
    assert_eq!(last(&run), 30);
    for (typed, minutes) in [("0", 0), ("90", 90), ("soon", 30), ("-5", 30), ("99999", 30)] {
        run.slack = typed.into();
        assert_eq!(last(&run), minutes, "{typed}");
        let problems = problems(&shown(&run, NOW));
        assert_eq!(problems.iter().any(|(field, _)| *field == "slack"), !["0", "90"].contains(&typed), "{typed}");
    }
    run.slack.clear();
    run.ready = "2026-11-25T16:00".into();
    let late = shown(&run, NOW);
    let cautions: Vec<_> = late
        .blocks
        .iter()
        .filter_map(|block| if let Block::Caution(words) = block { Some(words) } else { None })
        .collect();
    assert!(cautions.iter().any(|words| words.starts_with("Too late by 2 h 35 min")), "{cautions:?}");
}

#[test]
fn what_came_out_changes_what_follows() {
    let mut run = chain();
    run.marks.insert("1/filter".into(), Tick { got: "700 ml".into(), brix: "12".into(), ..Tick::default() });
    let words: Vec<String> = sheet(&run, &bench(&run, NOW)).steps.into_iter().map(|step| step.step.words).collect();
    assert_eq!(words[3], "Stir 300 g sugar, 16.7 g citric acid into 700 ml pear juice till clear");
    // Nothing that can be read: it goes on by what was planned, and says so beside the field.
    run.marks.insert("1/filter".into(), Tick { got: "plenty".into(), ..Tick::default() });
    let words: Vec<String> = sheet(&run, &bench(&run, NOW)).steps.into_iter().map(|step| step.step.words).collect();
    assert_eq!(words[3], "Stir 334 g sugar, 18.6 g citric acid into 780 ml pear juice till clear");
}

#[test]
fn a_timer_goes_by_the_clock_and_comes_first_when_it_is_over() {
    let run = done(&chain(), "0/press", NOW);
    let (run, _) = changed(&run, &Act::Start("1/blend".to_owned()), &bench(&run, NOW)).expect("a change");
    assert_eq!(shown(&run, NOW + 60_000).strip.figures[0].to_string(), "44 min 0 s to go");
    let timers = timers(&bench(&run, NOW));
    assert_eq!((timers.len(), timers[0].due), (1, 1_795_620_600_000 + 2_700_000));
    let later = shown(&run, NOW + 3 * 3_600_000);
    assert_eq!(later.strip.figures[0].to_string(), "2 h 15 min over");
    let (figure, words, is_over, _) = next_due(&bench(&run, NOW + 3 * 3_600_000)).expect("a line");
    assert!(is_over && figure == "2 h 15 min over" && words.ends_with(", Pears"), "{figure} {words}");
    let stopped = changed(&run, &Act::Untick("1/blend".to_owned()), &bench(&run, NOW)).expect("a change").0;
    assert_eq!(super::timers(&bench(&stopped, NOW)), []);
}

#[test]
fn ticked_to_the_end_and_kept_in_the_log() {
    let mut run = chain();
    for step in sheet(&run, &bench(&run, NOW)).steps {
        run = done(&run, &step.key, NOW);
    }
    assert_eq!(shown(&run, NOW).strip.also, "All steps are ticked off");
    let (run, _) = changed(&run, &Act::Finish, &bench(&run, NOW)).expect("a change");
    assert_eq!(shown(&run, NOW).strip.also, "Finished Wed 25 Nov 2026");
    assert_eq!(next_due(&bench(&run, NOW)), None);
}

#[test]
fn a_spec_brings_its_ice_and_its_steps_and_preps_go_before_it() {
    let (_, card) = demo_cards(NOW).remove(0);
    let run = with_parts(&Run::default(), parts_of("demo-1", &card, 2), &Bench::default());
    let words =
        |run: &Run| sheet(run, &bench(run, NOW)).steps.into_iter().map(|step| step.step.words).collect::<Vec<_>>();
    let plain = words(&run);
    assert_eq!(plain[0], "Freeze clear ice: one clear block");
    assert!(plain[2].starts_with("Measure 900 ml pear brandy, 400 ml dry vermouth"), "{plain:?}");
    assert_eq!(plain[5], "Filter through the curd, 2 h");
    let both = with_parts(&run, vec![part("cordial", &[])], &Bench::default());
    assert_eq!(both.parts.iter().map(|part| part.tool.as_str()).collect::<Vec<_>>(), ["cordial", ICE, SPEC]);
    let answer = screen(Route::Run, &Texts::from([("id".to_owned(), "r".to_owned())]), &bench(&both, NOW));
    let label = label_of(&answer);
    assert!(label.contains("spec=demo-1&at=2") && label.contains("milk"), "{label}");
    // When the drink takes the cordial that came out, it is made of it: 640 ml at 300 ml is 2.13 times.
    let mut taking = both.clone();
    taking.parts[2].from = Some(2);
    taking.marks.insert("2/bottle".into(), Tick { got: "600 ml".into(), ..Tick::default() });
    assert!(
        words(&taking).iter().any(|words| words.starts_with("Measure 1\u{202f}800 ml pear brandy")),
        "{:?}",
        words(&taking)
    );
    // The drink waits for the cordial and for the ice.
    let sheet = sheet(&both, &bench(&both, NOW));
    let measure = sheet.steps.iter().find(|step| step.step.words.starts_with("Measure")).expect("a step");
    assert!(!measure.is_free);
}

#[test]
fn a_finished_run_stays_as_it_was() {
    let (run, _) = changed(&chain(), &Act::Finish, &bench(&chain(), NOW)).expect("a change");
    let rows = |bench: &Bench| {
        let shown = screen(Route::Run, &Texts::from([("id".to_owned(), "r".to_owned())]), bench);
        let Some(Block::Table(_, rows)) = shown.blocks.into_iter().find(|block| matches!(block, Block::Table(..)))
        else {
            panic!("a table")
        };
        rows.into_iter().map(|row| row.name).collect::<Vec<_>>()
    };
    let before = rows(&bench(&run, NOW));
    assert_eq!(before[0], "Press 10 pears, 1\u{202f}742 g");
    // Another yield and another ounce tell nothing of what was done.
    let later = Bench { yields: "pear juice 30 %".into(), ..bench(&run, NOW) };
    assert_eq!(rows(&later), before);
    let (open, _) = changed(&run, &Act::Reopen, &later).expect("a change");
    assert!(open.log.is_empty());
}

#[test]
fn what_is_weighed_counts_as_what_is_poured() {
    let mut run = chain();
    let words = |run: &Run| sheet(run, &bench(run, NOW)).steps[3].step.words.clone();
    run.marks.insert("1/filter".into(), Tick { got: "700 ml".into(), ..Tick::default() });
    let poured = words(&run);
    run.marks.insert("1/filter".into(), Tick { got: "731.5 g".into(), ..Tick::default() });
    assert_eq!(words(&run), poured);
    // Grams of a drink go into a wash that is reckoned by volume.
    let (_, card) = demo_cards(NOW).remove(0);
    let mut parts = parts_of("demo-1", &card, 1);
    parts.push(part("milk-wash", &[("drink", "1 l")]));
    let mut run = with_parts(&Run::default(), parts, &Bench::default());
    assert_eq!(run.parts[1].from, Some(0));
    run.marks.insert("0/2".into(), Tick { got: "1600 g".into(), ..Tick::default() });
    let sheet = sheet(&run, &bench(&run, NOW));
    assert!(sheet.unread.is_empty() && sheet.steps.len() == 8, "{:?}", sheet.steps);
}

#[test]
fn other_fruit_is_not_taken_and_a_part_in_the_middle_can_go() {
    let lime = part("clear", &[("fruit", "lime")]);
    let run =
        with_parts(&Run::default(), vec![lime, part("cordial", &[("juice_of", "pear-juice")])], &Bench::default());
    assert_eq!(run.parts[1].from, None);
    // A tap offers it all the same, and another takes it back.
    let tap = |run: &Run| changed(run, &Act::MadeOf(1), &bench(run, NOW)).expect("a change").0;
    assert_eq!(tap(&run).parts[1].from, Some(0));
    assert_eq!(tap(&tap(&run)).parts[1].from, None);
    let gone = changed(&chain(), &Act::TakeOut(1), &bench(&chain(), NOW)).expect("a change").0;
    assert_eq!(gone.parts.iter().map(|part| (part.key, part.from)).collect::<Vec<_>>(), [(0, None), (2, None)]);
}

#[test]
fn a_cordial_for_a_spec_is_made_of_the_juice_that_came() {
    let run = with_parts(
        &Run::default(),
        vec![part("clear", &[("fruit", "pear")]), part("cordial", &[("ask", "swap"), ("juice_of", "pear-juice")])],
        &Bench::default(),
    );
    let mut run = run;
    let juice = |run: &Run| {
        let words =
            sheet(run, &bench(run, NOW)).steps.into_iter().find(|step| step.key == "1/mix").expect("a step").step.words;
        words.split("into ").nth(1).unwrap_or_default().to_owned()
    };
    run.marks.insert("0/filter".into(), Tick { got: "150 ml".into(), ..Tick::default() });
    assert!(juice(&run).starts_with("150 ml pear juice"), "{}", juice(&run));
}

#[test]
fn hands_go_where_they_are_needed_first() {
    // The ice is frozen for a day: everything else is made meanwhile, and nothing is too late.
    let (_, card) = demo_cards(NOW).remove(0);
    let mut run = with_parts(&chain(), parts_of("demo-1", &card, 2), &Bench::default());
    run.ready = "2026-11-26T19:30".into();
    let shown = shown(&run, NOW);
    let is_late = |block: &Block| matches!(block, Block::Caution(words) if words.starts_with("Too late"));
    assert!(!shown.blocks.iter().any(is_late), "{:?}", shown.strip);
}

#[test]
fn an_undo_takes_the_tick_back_and_leaves_what_was_typed() {
    let was = chain();
    let mut now = done(&was, "0/press", NOW);
    now = edited(&now, "0/press", "got", "900 ml").expect("a text");
    now = edited(&now, "0/press", "notes", "dry fruit").expect("a text");
    let back = undone(&was, &now);
    assert_eq!(back.marks["0/press"], Tick { got: "900 ml".into(), ..Tick::default() });
    assert_eq!((back.notes.as_str(), back.parts.len()), ("dry fruit", 3));
    let fewer = changed(&was, &Act::TakeOut(1), &bench(&was, NOW)).expect("a change").0;
    assert_eq!(undone(&was, &fewer).parts, was.parts);
}

#[test]
fn what_cannot_be_read_takes_nothing_away() {
    let mut run = chain();
    run.parts[1].texts.insert("method".into(), "agar".into());
    let count = sheet(&run, &bench(&run, NOW)).steps.len();
    for brix in ["9 °Bx", "about 9", "84", "-3", "300"] {
        run.marks.insert("0/press".into(), Tick { ph: brix.into(), celsius: brix.into(), ..Tick::default() });
        run.marks.insert("1/filter".into(), Tick { brix: brix.into(), ph: brix.into(), ..Tick::default() });
        assert_eq!(sheet(&run, &bench(&run, NOW)).steps.len(), count, "{brix}");
    }
}

#[test]
fn preps_in_any_order_find_each_other_and_nothing_is_given_twice() {
    let fruit = || part("fruit", &[("fruit", "pear")]);
    let clear = || part("clear", &[("fruit", "pear")]);
    let cordial = || part("cordial", &[("juice_of", "pear-juice")]);
    for parts in [[fruit(), clear(), cordial()], [cordial(), clear(), fruit()], [clear(), fruit(), cordial()]] {
        let run = with_parts(&Run::default(), parts.to_vec(), &Bench::default());
        let order: Vec<&str> = run.parts.iter().map(|part| part.tool.as_str()).collect();
        assert_eq!(order, ["fruit", "clear", "cordial"]);
        let key = |at: usize| Some(run.parts[at].key);
        assert_eq!([run.parts[0].from, run.parts[1].from, run.parts[2].from], [None, key(0), key(1)]);
    }
    // Two cordials and one juice: the second makes do with its own amount.
    let two = with_parts(&Run::default(), vec![clear(), cordial(), cordial()], &Bench::default());
    assert_eq!([two.parts[1].from, two.parts[2].from], [Some(0), None]);
    let tap = changed(&two, &Act::MadeOf(2), &bench(&two, NOW)).expect("a change").0;
    assert_eq!(tap.parts[2].from, None);
}

#[test]
fn times_counts_for_the_drink_whose_step_is_open() {
    let (_, card) = demo_cards(NOW).remove(0);
    let run = with_parts(&Run::default(), parts_of("demo-1", &card, 0), &Bench::default());
    let run = with_parts(&run, parts_of("demo-1", &card, 1), &Bench::default());
    let times = |run: &Run| run.parts.iter().map(|part| part.texts["times"].clone()).collect::<Vec<_>>();
    assert_eq!(times(&edited(&run, "1/measure", "times", "3").expect("a text")), ["1", "3"]);
    assert_eq!(times(&edited(&run, "", "times", "3").expect("a text")), ["3", "1"]);
}
