//! Run sheets: put together, timed, ticked, logged; what rings.

use crate::faulty::Faulty;
use meniscus::desk::{Effect, News};
use meniscus::screen::Act;

use crate::bar::{NOW, Tab, stored};

/// A sheet with a clarified juice on it; its id.
fn with_clarify(keeper: &Faulty) -> String {
    let mut tab = Tab::open(keeper, "prep/clear");
    tab.tap("To the run sheet");
    assert_eq!(tab.notice(), "On the run sheet.");
    stored(keeper, "run/")[0].split('=').next().expect("a key")["run/".len()..].to_owned()
}

#[test]
fn preps_find_each_other_whatever_comes_first() {
    let keeper = Faulty::default();
    Tab::open(&keeper, "prep/cordial?fruit=lime").tap("To the run sheet");
    Tab::open(&keeper, "prep/clear").tap("To the run sheet");
    Tab::open(&keeper, "prep/fruit").tap("To the run sheet");
    assert_eq!(stored(&keeper, "run/").len(), 1, "all on the sheet that is open");
    let mut tab = Tab::open(&keeper, "batch/run");
    let made: Vec<String> = tab.rows().into_iter().filter(|row| row.contains("made of what")).collect();
    assert_eq!(
        made,
        [
            "Lime, cleared with enzyme||made of what Lime juice gives",
            "Lime cordial||made of what Lime, cleared with enzyme gives"
        ]
    );
    tab.tap_sign("Made of something else: Lime cordial");
    assert!(tab.rows().contains(&"Lime cordial||amount set by you".into()), "{:?}", tab.rows());
    tab.tap_sign("Made of something else: Lime cordial");
    assert!(tab.rows().contains(&made[1]), "round again");
    tab.tap_sign("Take out: Lime juice");
    assert!(!tab.rows().iter().any(|row| row.starts_with("Lime juice|")));
    assert!(tab.act(Act::Undo).rows().iter().any(|row| row.starts_with("Lime juice|")));
}

#[test]
fn a_wait_is_told_of_as_it_begins_near_its_end_and_when_it_is_over() {
    let keeper = Faulty::default();
    let id = with_clarify(&keeper);
    let mut tab = Tab::open(&keeper, &format!("batch/run?id={id}"));
    tab.tap("Start 45 min");
    let start = tab.now;
    let mut said = Vec::new();
    for second in 0..=46 * 60 {
        tab.now = start + second * 1_000;
        tab.effects.clear();
        tab.tell(News::Tick);
        let spoken = tab.effects.iter().filter_map(|effect| match effect {
            Effect::Speak(words) => words.rsplit(": ").next().map(|to_go| (second, to_go.to_owned())),
            _ => None,
        });
        said.extend(spoken);
    }
    let expected =
        [(0, "45 minutes to go"), (40 * 60, "5 minutes to go"), (44 * 60, "1 minute to go"), (45 * 60, "over")];
    assert_eq!(said, expected.map(|(at, to_go)| (at, to_go.to_owned())));
    // One that is opened while it runs is told where it stands, by the name of the step.
    let mut other = Tab::open_later(&keeper, "service/measure", start + 44 * 60_000 + 50_000);
    other.tell(News::Tick);
    let words = other.effects.iter().find_map(|effect| match effect {
        Effect::Speak(words) => Some(words.clone()),
        _ => None,
    });
    let words = words.expect("it is told of");
    assert!(words.starts_with("Blend 1.0 g enzyme") && words.ends_with(": 10 seconds to go"), "{words}");
}

#[test]
fn a_timer_goes_by_the_clock_and_rings_once() {
    let keeper = Faulty::default();
    let id = with_clarify(&keeper);
    let mut tab = Tab::open(&keeper, &format!("batch/run?id={id}"));
    tab.tap("Start 45 min");
    assert_eq!(tab.sent("meniscus-arm").len(), 1, "the bell is readied at the tap");
    assert!(tab.strip().starts_with("45 min 0 s to go"), "{}", tab.strip());
    tab.now += 1_000;
    assert!(tab.tell(News::Tick).strip().starts_with("44 min 59 s to go"));
    assert_eq!(tab.sent("meniscus-awake"), ["1"], "once");
    // Another tab, after the app was closed: the line on every screen.
    let mut other = Tab::open_later(&keeper, "service/measure", NOW + 10 * 60_000);
    let due = other.tell(News::Tick).view().due.expect("a line");
    assert_eq!((due.figure.as_str(), due.is_over), ("35 min 0 s", false));
    assert!(due.words.starts_with("Blend 1.0 g enzyme into 400 g of lime"), "{}", due.words);
    other.now = NOW + 46 * 60_000;
    other.tell(News::Tick).tell(News::Tick);
    assert_eq!(other.sent("meniscus-ring").len(), 1, "it rings once");
    assert!(other.view().due.is_some_and(|due| due.is_over && due.figure == "1 min over"));
    other.go(&due.href).tap("Done");
    other.tell(News::Tick);
    assert_eq!(other.sent("meniscus-awake"), ["1", ""], "the screen may sleep");
    assert!(other.strip().starts_with("Now | Filter through paper"), "{}", other.strip());
}

#[test]
fn what_came_out_is_typed_at_the_step_that_is_open() {
    let keeper = Faulty::default();
    let id = with_clarify(&keeper);
    let mut tab = Tab::open(&keeper, &format!("batch/run?id={id}"));
    tab.tap("Done").type_in("got", "280 ml").type_in("brix", "9").type_in("notes", "slow");
    assert!(tab.rows().iter().any(|row| row.contains("got 280 ml, 9 °Bx")), "{:?}", tab.rows());
    tab.tap("Done").tap("Finish");
    assert!(tab.strip().contains("Finished Wed 25 Nov 2026"), "{}", tab.strip());
    assert!(tab.rows().iter().any(|row| row.contains("|Wed 25 Nov, 15:30|")), "{:?}", tab.rows());
    tab.act(Act::Undo);
    assert!(!tab.strip().contains("Finished"));
    assert_eq!(tab.value("notes"), "slow", "what was typed stays");
    tab.tap("All sheets");
    assert_eq!(tab.strip().split(" | ").next(), Some("1 run sheet open"));
}

#[test]
fn a_spec_goes_on_with_its_ice() {
    let keeper = Faulty::default();
    Tab::open(&keeper, "specs").tap("Try a demo");
    let mut tab = Tab::open(&keeper, "specs/spec?id=demo-3");
    tab.act(Act::Choose("at".into(), "1".into())).tap("Run sheet");
    tab.go("batch/run").type_in("times", "40").type_in("ready", "2026-11-28T18:30");
    let rows = tab.rows();
    assert!(rows.iter().any(|row| row.contains("Freeze clear ice: one clear block|")), "{rows:?}");
    assert!(rows.iter().any(|row| row.contains("Measure 1\u{202f}800 ml rye whiskey")), "{rows:?}");
    assert!(tab.strip().contains("latest"), "{}", tab.strip());
    // An hour more of slack, an hour earlier; it is kept, and Undo of what is typed takes it back.
    let at = |strip: String| strip.split(" latest").next().and_then(|time| time.rsplit(' ').next().map(str::to_owned));
    let before = at(tab.strip()).expect("a time");
    tab.type_in("slack", "90");
    let minutes = |time: &str| {
        let (hours, minutes) = time.split_once(':').expect("a time");
        hours.parse::<i32>().expect("hours") * 60 + minutes.parse::<i32>().expect("minutes")
    };
    let after = at(tab.strip()).expect("a time");
    assert_eq!((minutes(&before) - minutes(&after)).rem_euclid(24 * 60), 60, "{before} {after}");
    assert_eq!(Tab::open(&keeper, "batch/run").value("slack"), "90");
    // Deleted, and brought back.
    tab.act(Act::Empty);
    assert_eq!(stored(&keeper, "run/").len(), 0);
    tab.act(Act::Undo);
    assert_eq!(stored(&keeper, "run/").len(), 1);
}

#[test]
fn the_same_plan_is_not_put_on_a_sheet_twice_unasked() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "prep/cordial?fruit=lime");
    let parts = |keeper: &Faulty| stored(keeper, "run/")[0].matches("\"tool\"").count();
    tab.tap("To the run sheet");
    assert_eq!(tab.notice(), "On the run sheet.");
    tab.tap("Undo");
    assert_eq!(stored(&keeper, "run/").len(), 0, "the sheet that it was put on goes with it");
    tab.tap("To the run sheet").tap("To the run sheet");
    assert_eq!((tab.notice().as_str(), parts(&keeper)), ("Already on the run sheet.", 1));
    tab.tap("Add it again");
    assert_eq!((tab.notice().as_str(), parts(&keeper)), ("On the run sheet.", 2));
    // Another plan of the same tool is another thing; and so is the first on another sheet.
    tab.type_in("juice", "2 l").tap("To the run sheet");
    assert_eq!((tab.notice().as_str(), parts(&keeper)), ("On the run sheet.", 3));
    let see = tab.view().notice.expect("a notice").buttons.iter().find_map(|button| match &button.act {
        Act::Go(href) => Some(href.clone()),
        _ => None,
    });
    tab.go(&see.expect("a link"));
    assert!(tab.strip().contains("Stir"), "{}", tab.strip());
    tab.tap("All sheets").go("prep/cordial").tap("To the run sheet");
    assert_eq!((tab.notice().as_str(), stored(&keeper, "run/").len()), ("On the run sheet.", 2));
}

/// Clear ice that a night needs begins 31 h before it is left out to temper and cut, with what must be had.
#[test]
fn clear_ice_of_a_night_goes_on_the_run_sheet() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "service/ice");
    tab.tap("To the run sheet");
    assert_eq!(tab.notice(), "On the run sheet.");
    tab.go("batch/run");
    let screen = format!("{:?}", tab.view().screen);
    for words in ["Freeze 240 × 145 × 50 mm clear in 2 insulated tubs", "1 d 7 h", "bagged ice", "Cut 30 cubes"] {
        assert!(screen.contains(words), "{words}: {screen}");
    }
}

#[test]
fn a_step_is_chosen_by_its_row_and_other_waits_are_told_below() {
    let keeper = Faulty::default();
    let id = with_clarify(&keeper);
    let mut tab = Tab::open(&keeper, &format!("batch/run?id={id}"));
    assert!(tab.view().due.is_none(), "the strip says it");
    tab.tap("Start 45 min");
    assert!(tab.view().due.is_none(), "it is the one in the strip");
    tab.act(Act::OpenStep("0/filter".into()));
    assert!(tab.strip().contains("Filter through paper"), "{}", tab.strip());
    let due = tab.view().due.expect("the wait that runs");
    assert!(due.figure == "45 min 0 s" && due.words.starts_with("Blend"), "{due:?}");
    tab.go(&due.href);
    assert!(tab.strip().starts_with("45 min 0 s to go | Blend"), "{}", tab.strip());
    assert!(!tab.has_button("5 more min"), "it has just begun");
    tab.now += 50 * 60_000;
    tab.tell(News::Tick).tap("5 more min");
    assert!(tab.strip().starts_with("5 min 0 s to go"), "{}", tab.strip());
    tab.act(Act::Undo);
    assert!(tab.strip().starts_with("5 min over"), "{}", tab.strip());
    // What is typed on the pad belongs to the step it was typed at.
    tab.act(Act::OpenStep("0/filter".into())).act(Act::Activate(Some("got".into()))).type_in("got", "2");
    assert!(tab.view().pad.is_some());
    assert!(tab.tap("Done").view().pad.is_none());
}
