//! What follows of what came, was noted, and is to be ready: the wash, readings, cuts, hands on, the cold.

use super::*;

/// Remarks and cautions.
fn said(screen: &Screen) -> Vec<String> {
    let words = |block: &Block| match block {
        Block::Remark(words) | Block::Caution(words) => Some(words.clone()),
        _ => None,
    };
    screen.blocks.iter().filter_map(words).collect()
}

fn wash(spec: &str) -> Part {
    part("milk-wash", &[("known", "spec"), ("spec", spec)])
}

/// A wash of a drink with 125 ml of lemon juice, after a press and a clarifying of lemons.
fn washing() -> Run {
    let parts = vec![
        wash("900 ml rye whiskey\n400 ml black tea\n300 ml honey syrup\n125 ml lemon juice"),
        part("fruit", &[("fruit", "lemon"), ("wanted", "200 ml")]),
        part("clear", &[("fruit", "lemon"), ("juice", "200 ml")]),
        part("fruit", &[("fruit", "pear"), ("wanted", "200 ml")]),
    ];
    with_parts(&Run { name: "Wash".into(), made: NOW, ..Run::default() }, parts, &Bench::default())
}

fn words_of(run: &Run, key: &str) -> String {
    let steps = sheet(run, &bench(run, NOW)).steps;
    steps.into_iter().find(|step| step.key == key).map(|step| step.step.words).unwrap_or_default()
}

#[test]
fn a_wash_mixes_its_drink_of_the_juice_that_came() {
    let run = washing();
    // Pressed, cleared, washed: the lemon is taken and the pear is not, whatever came on the sheet first.
    let order: Vec<_> = run.parts.iter().map(|part| (part.tool.as_str(), part.key, part.from)).collect();
    assert_eq!(order, [("fruit", 1, None), ("clear", 2, Some(1)), ("fruit", 3, None), ("milk-wash", 0, Some(2))]);
    let mix = "Mix the drink: 900 ml rye whiskey, 400 ml black tea, 300 ml honey syrup, 125 ml lemon juice";
    assert_eq!(words_of(&run, "0/mix"), mix);
    // More than it takes is no reason to make more; less makes less, and says so.
    let mut more = run.clone();
    more.marks.insert("2/filter".into(), Tick { got: "180 ml".into(), ..Tick::default() });
    assert_eq!(words_of(&more, "0/mix"), mix);
    let mut less = run.clone();
    less.marks.insert("2/filter".into(), Tick { got: "50 ml".into(), ..Tick::default() });
    assert_eq!(
        words_of(&less, "0/mix"),
        "Mix the drink: 360 ml rye whiskey, 160 ml black tea, 120 ml honey syrup, 50 ml lemon juice"
    );
    let shown = shown(&less, NOW);
    let cut = "50 ml of lemon juice came, 125 ml asked";
    assert!(shown.strip.below.ends_with(cut), "{}", shown.strip.below);
    let rows =
        shown.blocks.iter().filter_map(|block| if let Block::Table(_, rows) = block { Some(rows) } else { None });
    assert!(rows.flatten().any(|row| row.name == "Milk wash" && row.detail.contains(cut) && row.marked));
    // Pressed only: taken from there.
    let gone = changed(&run, &Act::TakeOut(2), &bench(&run, NOW)).expect("a change").0;
    let tap = changed(&gone, &Act::MadeOf(0), &bench(&gone, NOW)).expect("a change").0;
    assert_eq!(tap.parts.last().and_then(|part| part.from), Some(1), "not the pear that is nearer");
}

#[test]
fn a_wash_waits_for_each_of_its_juices() {
    let fruit = |fruit: &str| part("fruit", &[("fruit", fruit), ("wanted", "500 ml")]);
    let parts =
        vec![fruit("pear"), fruit("lemon"), wash("500 ml gin\n200 ml pear juice\n100 ml lemon juice"), fruit("lime")];
    let mut run = with_parts(&Run::default(), parts, &Bench::default());
    let order: Vec<_> = run.parts.iter().map(|part| part.tool.as_str()).collect();
    assert_eq!(order, ["fruit", "fruit", "fruit", "milk-wash"]);
    let is_free = |run: &Run| sheet(run, &bench(run, NOW)).steps.iter().any(|step| step.key == "2/mix" && step.is_free);
    let goes_by_one = |run: &Run| said(&shown(run, NOW)).iter().any(|said| said.contains("goes by one juice alone"));
    assert!(goes_by_one(&run));
    run = done(&run, "1/press", NOW);
    assert!(!is_free(&run), "the pear is not pressed");
    run = done(&run, "0/press", NOW);
    assert!(is_free(&run), "the lime goes into nothing");
    assert!(!goes_by_one(&washing()));
}

#[test]
fn what_is_noted_at_a_wash_counts_in_it() {
    let mut run = washing();
    let milk = |run: &Run| words_of(run, "0/milk");
    let planned = milk(&run);
    // 1.6 l are mixed where 1.7 should be: a fifth of that is milk.
    run.marks.insert("0/mix".into(), Tick { got: "1.6 l".into(), ..Tick::default() });
    assert!(milk(&run).starts_with("320 ml of whole milk") && milk(&run) != planned, "{}", milk(&run));
    assert!(words_of(&run, "0/mix").contains("900 ml rye"), "what was to be mixed stays");
    for (ph, words) in [("4.9", "pH 4.9 together is above 4.6"), ("4.45", "at pH 4.45 together the milk clots")] {
        run.marks.insert("0/pour".into(), Tick { ph: ph.into(), ..Tick::default() });
        let said = said(&shown(&run, NOW));
        assert!(said.iter().any(|said| said.contains(words)), "{ph}: {said:?}");
        assert!(!said.iter().any(|said| said.contains("for nothing else")), "it counts: {said:?}");
    }
    // It is too cold where the juice is sour enough: nothing of it is lost on the sheet.
    let mut weak = washing();
    weak.parts
        .iter_mut()
        .find(|part| part.tool == "milk-wash")
        .expect("a wash")
        .texts
        .insert("spec".into(), "900 ml rye whiskey\n400 ml black tea\n5 ml lemon juice".into());
    let said = said(&shown(&weak, NOW));
    assert!(said.iter().any(|said| said.starts_with("“Milk wash” has no steps: Too little acid")), "{said:?}");
}

#[test]
fn a_reading_counts_or_says_why_it_does_not() {
    let mut run = chain();
    let noted = |run: &Run| {
        said(&shown(run, NOW)).into_iter().filter(|said| said.contains("for nothing else")).collect::<Vec<_>>()
    };
    assert_eq!(noted(&run), Vec::<String>::new());
    // Noted at the press: °Bx goes on through the clearing to the cordial, warmth makes the enzyme slow.
    let press = Tick { brix: "12".into(), celsius: "4".into(), ..Tick::default() };
    run.marks.insert("0/press".into(), press);
    assert_eq!(noted(&run), Vec::<String>::new());
    assert_eq!(sheet(&run, &bench(&run, NOW)).steps[1].step.wait, 12 * 3_600);
    // The cordial is not reckoned by pH and nothing is made of the cordial.
    run.marks.insert("1/filter".into(), Tick { ph: "3.9".into(), ..Tick::default() });
    run.marks.insert("2/bottle".into(), Tick { brix: "41".into(), ph: "2.9".into(), ..Tick::default() });
    assert_eq!(
        noted(&run),
        [
            "pH noted at “Pear, cleared with enzyme” is kept in the log and counts for nothing else: Pear cordial is not reckoned by that.",
            "°Bx and pH noted at “Pear cordial” are kept in the log and count for nothing else: nothing on this sheet is made of it.",
        ]
    );
    // What cannot go on says so.
    run.marks.insert("1/filter".into(), Tick { got: "plenty".into(), brix: "70".into(), ..Tick::default() });
    let said = said(&shown(&run, NOW));
    for words in [
        "“plenty”, noted at “Filter through paper”, is no amount",
        "“70”, noted at “Filter through paper”, does not count",
    ] {
        assert!(said.iter().any(|said| said.starts_with(words)), "{said:?}");
    }
}

#[test]
fn a_cut_is_said_in_serves() {
    let parts = vec![
        part("clear", &[("fruit", "pear")]),
        part("cordial", &[("ask", "swap"), ("juice_of", "pear-juice"), ("serves", "40")]),
    ];
    let mut run = with_parts(&Run::default(), parts, &Bench::default());
    let strip = |run: &Run| shown(run, NOW).strip.below;
    assert!(strip(&run).contains("should come"), "{}", strip(&run));
    run.marks.insert("0/filter".into(), Tick { got: "500 ml".into(), ..Tick::default() });
    let some = strip(&run);
    assert!(some.contains(" of 40 serves: 500 ml of pear juice came, ") && some.ends_with(" asked"), "{some}");
    run.marks.insert("0/filter".into(), Tick { got: "5 l".into(), ..Tick::default() });
    assert!(!strip(&run).contains("of 40 serves"), "{}", strip(&run));
    // A drink made as often as its cordial allows.
    let (_, card) = demo_cards(NOW).remove(0);
    let mut run = with_parts(
        &Run::default(),
        [vec![part("cordial", &[])], parts_of("demo-1", &card, 1)].concat(),
        &Bench::default(),
    );
    let drink = run.parts.iter().position(|part| part.tool == SPEC).expect("a drink");
    run.parts[drink].from = Some(0);
    run.parts[drink].texts.insert("times".into(), "40".into());
    run.marks.insert("0/bottle".into(), Tick { got: "210 ml".into(), ..Tick::default() });
    assert!(strip(&run).ends_with("14 of 40 times: 210 ml of orchard cordial came, 600 ml asked"), "{}", strip(&run));
}

#[test]
fn hands_on_is_told_by_step_and_in_all() {
    let run = done(&chain(), "0/press", NOW);
    let shown = shown(&run, NOW);
    let table = shown.blocks.iter().find_map(|block| if let Block::Table(_, rows) = block { Some(rows) } else { None });
    let last = table.and_then(|rows| rows.last()).expect("a row");
    // Press 10, blend 5, filter 10, stir 15, bottle 10.
    assert_eq!((last.name.as_str(), last.amount.as_str()), ("Hands on, all steps together", "50 min"));
    assert_eq!(last.detail, "40 min of it still to do");
    assert!(events(&shown)[1].detail.contains("5 min hands on"), "{:?}", events(&shown)[1]);
}

#[test]
fn what_is_served_cold_is_chilled_before_it_is_served() {
    let (_, card) = demo_cards(NOW).remove(0);
    let mut run = with_parts(&Run::default(), parts_of("demo-1", &card, 2), &Bench::default());
    run.ready = "2026-11-28T18:30".into();
    let steps = sheet(&run, &bench(&run, NOW)).steps;
    let chill = steps.last().expect("a step");
    assert_eq!((chill.key.as_str(), chill.step.wait), ("1/chill", 2 * 3_600));
    // Half an hour, two hours, and two minutes to put it there.
    assert_eq!(
        sheet(&run, &bench(&run, NOW)).ready.zip(chill.start).map(|(ready, start)| (ready - start) / 60_000),
        Some(152)
    );
}

#[test]
fn a_washed_spec_gives_on_a_sheet_what_its_balance_says() {
    let (_, card) = demo_cards(NOW).remove(2);
    let run = with_parts(&Run::default(), parts_of("demo-3", &card, 2), &Bench::default());
    let balance =
        screen(Route::Balance, &Texts::from([("spec".to_owned(), card.ways[2].lines.clone())]), &bench(&run, NOW));
    let shown = shown(&run, NOW);
    let events = events(&shown);
    let gives = events.iter().find_map(|event| event.detail.split("expect ").nth(1)).expect("a volume").to_owned();
    assert_eq!(balance.strip.below, format!("A serve is {gives} before ice"));
}

#[test]
fn its_label_asks_what_its_parts_ask() {
    let parts = vec![
        part("clear", &[("fruit", "pear"), ("method", "gelatin")]),
        part("cordial", &[("juice_of", "pear-juice")]),
    ];
    let label_of = |run: &Run| label_of(&shown(run, NOW));
    let cordial = label_of(&with_parts(&Run::default(), parts, &Bench::default()));
    assert!(cordial.contains("name=Pear+cordial") && cordial.contains("asks=gelatin"), "{cordial}");
    // A wash keeps by no rule of its own.
    let wash = label_of(&washing());
    assert!(wash.contains("keeps=washed") && wash.contains("asks=enzyme"), "{wash}");
    assert!(!label_of(&chain()).contains("keeps="));
}
