//! The line of time, the strip above it, and what stays when a sheet changes.

use super::*;

#[test]
fn strip_and_done_speak_of_the_step_that_is_chosen() {
    let run = chain();
    for (step, words) in [("", "Press 10 pears, 1\u{202f}742 g"), ("1/filter", "Filter through paper")] {
        let texts = Texts::from([("id".to_owned(), "r".to_owned()), ("step".to_owned(), step.to_owned())]);
        let shown = screen(Route::Run, &texts, &bench(&run, NOW));
        assert_eq!(shown.strip.also, words);
        let events = events(&shown);
        let current: Vec<&Event> = events.iter().filter(|event| event.is_current).collect();
        assert_eq!(current.len(), 1, "{events:?}");
        assert_eq!(current[0].words, words);
        let done = current[0].buttons.iter().find(|button| button.label == "Done" || button.label == "Start 1 h");
        assert!(done.expect("a button").spoken.ends_with(words));
        assert!(events.iter().all(|event| event.is_current || event.buttons.is_empty()));
        // What is noted at it is typed right behind it, before the steps that follow.
        let at = |is: fn(&Block) -> bool| shown.blocks.iter().position(is).expect("a block");
        let (line, got) = (
            at(|block| matches!(block, Block::Timeline(_))),
            at(|block| matches!(block, Block::Field(field) if field.name == "got")),
        );
        assert_eq!(got, line + 1);
    }
}

#[test]
fn the_strip_tells_what_comes_then_and_when_all_is_ready() {
    let mut run = chain();
    run.ready = "2026-11-28T18:30".into();
    assert_eq!(
        shown(&run, NOW).strip.below,
        "Then blend 2.6 g enzyme into 1\u{202f}045 g…. All ready Sat 18:00, doors Sat 18:30"
    );
    // Too late: when it can be.
    run.ready = "2026-11-25T16:00".into();
    assert!(shown(&run, NOW).strip.below.ends_with("All ready 18:35, doors 16:00"), "{}", shown(&run, NOW).strip.below);
}

#[test]
fn a_wait_is_lengthened_by_its_beginning() {
    let run = done(&chain(), "0/press", NOW);
    let start = |run: &Run, act: Act, now: u64| changed(run, &act, &bench(run, now)).map(|(run, _)| run);
    let step = || "1/blend".to_owned();
    let run = start(&run, Act::Start(step()), NOW).expect("a timer");
    let due = |run: &Run, now: u64| timers(&bench(run, now))[0].due - NOW as i64;
    let minute = 60_000;
    // Not before it has run for so long: what begins later than it is goes by a clock that was set back.
    assert_eq!(start(&run, Act::Longer(step()), NOW + 4 * minute), None);
    let offers = |run: &Run, now: u64| {
        let shown = shown(run, now);
        events(&shown).iter().flat_map(|event| &event.buttons).any(|button| button.label == "5 more min")
    };
    assert!(!offers(&run, NOW + 4 * minute) && offers(&run, NOW + 5 * minute));
    // 45 min and 5; once over, from now on.
    let longer = start(&run, Act::Longer(step()), NOW + 5 * minute).expect("a longer wait");
    assert_eq!(due(&longer, NOW), 50 * minute as i64);
    let late = start(&run, Act::Longer(step()), NOW + 60 * minute).expect("a longer wait");
    assert_eq!(due(&late, NOW), 65 * minute as i64);
    assert!(!events(&shown(&late, NOW + 60 * minute)).iter().any(|event| event.mind.contains("set back")));
}

#[test]
fn a_sheet_is_called_after_what_it_makes_until_it_has_a_name() {
    let mut run = chain();
    let name = |run: &Run| shown(run, NOW).name;
    assert_eq!(name(&run), "Pears");
    run.name.clear();
    assert_eq!(name(&run), "Pear cordial");
    run = with_parts(&run, vec![part("infuse", &[]), part("clear-ice", &[])], &Bench::default());
    assert!(name(&run).ends_with(" and 1 more"), "{}", name(&run));
    assert_eq!(name(&Run::default()), "Run sheet");
}

#[test]
fn what_stays_of_a_sheet_is_what_would_be_worked_out_anew() {
    let (_, card) = demo_cards(NOW).remove(0);
    let mut run =
        with_parts(&chain(), [parts_of("demo-1", &card, 1), vec![part("infuse", &[])]].concat(), &Bench::default());
    let mut worked = worked_out(&run, None, &bench(&run, NOW));
    let note = |run: &Run, key: &str, tick: Tick| {
        let mut run = run.clone();
        run.marks.insert(key.to_owned(), tick);
        Some(run)
    };
    let got = |got: &str| Tick { got: got.into(), ..Tick::default() };
    type Change<'a> = &'a dyn Fn(&Run) -> Option<Run>;
    let act = |run: &Run, act: Act| changed(run, &act, &bench(run, NOW)).map(|(run, _)| run);
    let changes: &[Change] = &[
        &|run| note(run, "0/press", got("700 ml")),
        &|run| note(run, "0/press", got("plenty")),
        &|run| note(run, "0/press", Tick { brix: "12".into(), celsius: "4".into(), ..Tick::default() }),
        &|run| note(run, "1/filter", Tick { got: "500 ml".into(), ph: "3.4".into(), done: NOW, ..Tick::default() }),
        &|run| act(run, Act::TakeOut(1)),
        &|run| act(run, Act::MadeOf(2)),
        &|run| edited(run, "", "times", "3"),
        &|run| {
            let mut run = run.clone();
            run.parts[0].texts.insert("fruit".into(), "lime".into());
            Some(run)
        },
        &|run| Some(with_parts(run, vec![part("clear", &[("fruit", "lime")])], &Bench::default())),
    ];
    for (at, change) in changes.iter().enumerate() {
        let next = change(&run).expect("a change");
        let again = worked_out(&next, Some((&run, &worked)), &bench(&next, NOW));
        assert_eq!(again.sheet, worked_out(&next, None, &bench(&next, NOW)).sheet, "{at}");
        (run, worked) = (next, again);
    }
}
