//! Run sheets: put together, timed, ticked, logged; what rings.

use crate::faulty::Faulty;
use meniscus::desk::News;
use meniscus::screen::Act;

use crate::bar::{NOW, Tab, stored};

/// A sheet with a clarified juice on it; its id.
fn with_clarify(keeper: &Faulty) -> String {
    let mut tab = Tab::open(keeper, "prep/clear");
    tab.tap("To the run sheet");
    assert_eq!(
        tab.notice(),
        "On the run sheet “Lime, cleared with enzyme”, as prep 1. Batch, then Run sheet, shows it."
    );
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
    tab.tap_sign("Lime cordial: made of something else");
    assert!(tab.rows().contains(&"Lime cordial||by its own amount".into()), "{:?}", tab.rows());
    tab.tap_sign("Lime cordial: made of something else");
    assert!(tab.rows().contains(&made[1]), "round again");
    tab.tap_sign("take Lime juice out");
    assert!(!tab.rows().iter().any(|row| row.starts_with("Lime juice|")));
    assert!(tab.act(Act::Undo).rows().iter().any(|row| row.starts_with("Lime juice|")));
}

#[test]
fn a_timer_goes_by_the_clock_and_rings_once() {
    let keeper = Faulty::default();
    let id = with_clarify(&keeper);
    let mut tab = Tab::open(&keeper, &format!("batch/run?id={id}"));
    tab.tap("Start 45 min");
    assert_eq!(tab.sent("meniscus-arm").len(), 1, "the bell is readied at the tap");
    assert!(tab.strip().starts_with("45:00 to go"), "{}", tab.strip());
    tab.now += 1_000;
    assert!(tab.tell(News::Tick).strip().starts_with("44:59 to go"));
    assert_eq!(tab.sent("meniscus-awake"), ["1"], "once");
    // Another tab, after the app was closed: the line on every screen.
    let mut other = Tab::open_later(&keeper, "service/measure", NOW + 10 * 60_000);
    let due = other.tell(News::Tick).view().due.expect("a line");
    assert_eq!((due.figure.as_str(), due.is_over), ("35:00", false));
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
    assert!(tab.rows().iter().any(|row| row.contains("gave 280 ml, 9 °Bx")), "{:?}", tab.rows());
    tab.tap("Done").tap("Finish: keep it in the log");
    assert!(tab.strip().contains("Finished Wed 25 Nov 2026"), "{}", tab.strip());
    assert!(tab.rows().iter().any(|row| row.contains("✓ Wed 25 Nov, 15:30")), "{:?}", tab.rows());
    tab.act(Act::Undo);
    assert!(!tab.strip().contains("Finished"));
    assert_eq!(tab.value("notes"), "slow", "what was typed stays");
    tab.tap("All run sheets");
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
