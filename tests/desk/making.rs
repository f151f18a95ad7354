//! A spec being made: read first, ticked, made for more, its steps timed; all of it this tab's own.

use crate::faulty::Faulty;
use meniscus::desk::{Effect, News};
use meniscus::screen::{Act, Block, Event, Face, Pour};

use crate::bar::{NOW, Tab, stored};

fn with_demo(keeper: &Faulty) {
    Tab::open(keeper, "specs").tap("Try a demo");
}

fn pours(tab: &mut Tab<'_>) -> Vec<Pour> {
    let view = tab.view();
    let pours = view.screen.blocks.iter().find_map(|block| match block {
        Block::Pours(pours) => Some(pours.lines.clone()),
        _ => None,
    });
    pours.expect("lines to pour")
}

/// Taps a line.
fn tick(tab: &mut Tab<'_>, at: usize) {
    let typed = pours(tab)[at].typed.clone();
    tab.act(Act::TickLine(at, typed));
}

fn ticks(tab: &mut Tab<'_>) -> Vec<bool> {
    pours(tab).into_iter().map(|line| line.tick.expect("a tick")).collect()
}

fn to_go(tab: &mut Tab<'_>) -> Vec<String> {
    let view = tab.view();
    let steps = view.screen.blocks.iter().find_map(|block| match block {
        Block::Doing(steps) => Some(steps.clone()),
        _ => None,
    });
    steps.into_iter().flatten().filter_map(|step| Some(step.wait?.to_go)).collect()
}

#[test]
fn ticks_and_serves_are_the_tab_s_own_and_stay_while_one_looks_elsewhere() {
    let keeper = Faulty::default();
    with_demo(&keeper);
    let mut tab = Tab::open(&keeper, "specs/spec?id=demo-1");
    let before = keeper.dump();
    tick(&mut tab, 1);
    tab.act(Act::Serves(2));
    assert_eq!(keeper.dump(), before, "nothing of it is kept");
    tab.go("service/measure").go("specs/spec?id=demo-2");
    assert_eq!((ticks(&mut tab), pours(&mut tab)[0].amount.to_string()), (vec![false; 4], "50 ml".into()));
    tab.go("specs/spec?id=demo-1");
    assert_eq!(ticks(&mut tab), [false, true, false, false]);
    assert_eq!(pours(&mut tab)[0].amount.to_string(), "90 ml");
    // Another form has its own, and another tab.
    tab.act(Act::Choose("at".into(), "1".into()));
    assert_eq!((ticks(&mut tab), pours(&mut tab)[0].amount.to_string()), (vec![false; 4], "45 ml".into()));
    tab.act(Act::Choose("at".into(), "0".into()));
    assert_eq!(ticks(&mut Tab::open(&keeper, "specs/spec?id=demo-1")), [false; 4]);
    // A second tap takes the tick off; when all are in, one tap takes them all off.
    tick(&mut tab, 1);
    assert_eq!(ticks(&mut tab), [false; 4]);
    assert!(!tab.has_button("Untick all"));
    (0..4).for_each(|at| tick(&mut tab, at));
    tab.tap("Untick all");
    assert_eq!(ticks(&mut tab), [false; 4]);
    tab.act(Act::Serves(0));
    assert_eq!(pours(&mut tab)[0].amount.to_string(), "45 ml", "one at least");
}

#[test]
fn what_is_changed_is_read_at_once_and_the_other_ticks_stay() {
    let keeper = Faulty::default();
    with_demo(&keeper);
    let mut tab = Tab::open(&keeper, "specs/spec?id=demo-1");
    tick(&mut tab, 0);
    tick(&mut tab, 1);
    tab.tap("Change").tap("As text");
    assert!(tab.view().screen.field("lines").is_some() && tab.effects.contains(&Effect::Begin("Spec")));
    let lines = tab.value("lines").replace("30 ml pear juice", "25 ml pear juice");
    tab.type_in("lines", &lines).tap("Done");
    assert!(tab.view().screen.field("lines").is_none());
    assert_eq!(ticks(&mut tab), [true, false, false, false], "a line that is another is not in yet");
    // While one looks elsewhere, what is changed stays so; another spec is read first, and so is this one then.
    tab.tap("Change").go("service/measure").go("specs/spec");
    assert!(tab.view().screen.field("lines").is_some());
    tab.go("specs/spec?id=demo-2");
    assert!(tab.view().screen.field("lines").is_none());
    tab.go("specs/spec?id=demo-1");
    assert!(tab.view().screen.field("lines").is_none());
    tab.tap("More").go("specs").go("specs/spec?id=demo-1");
    assert!(tab.has_button("Change"), "read first");
}

#[test]
fn a_new_spec_opens_with_its_fields_which_stay_while_it_is_written() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "specs");
    tab.tap("New spec").follow();
    let id = stored(&keeper, "spec/")[0].split('=').next().expect("a key")["spec/".len()..].to_owned();
    assert_eq!(tab.effects.last(), Some(&Effect::Enter("name")));
    tab.act(Act::Type("name".into(), "W".into()));
    assert_eq!(tab.view().screen.field("name").map(|field| field.text.clone()), Some("W".into()));
    // Also where it was left empty and the app was opened again.
    tab.act(Act::Type("name".into(), String::new()));
    let mut again = Tab::open(&keeper, &format!("specs/spec?id={id}"));
    assert!(again.view().screen.field("name").is_some(), "there is nothing to read");
    again.act(Act::Type("name".into(), "W".into()));
    assert!(again.view().screen.field("name").is_some(), "no field goes from under the caret");
}

#[test]
fn a_step_s_wait_begins_at_a_tap_counts_and_rings() {
    let keeper = Faulty::default();
    with_demo(&keeper);
    let mut tab = Tab::open(&keeper, "specs/spec?id=demo-1");
    tab.act(Act::Choose("at".into(), "1".into())).tap("Start 30 s");
    assert_eq!((tab.sent("meniscus-arm").len(), tab.sent("meniscus-awake")), (1, vec!["1".to_owned()]));
    assert_eq!((to_go(&mut tab), tab.view().due), (vec!["30 s".into()], None), "it counts at its step");
    let second = |tab: &mut Tab<'_>, seconds: u64| {
        tab.now = NOW + seconds * 1000;
        tab.tell(News::Tick);
    };
    second(&mut tab, 6);
    assert_eq!(to_go(&mut tab), ["24 s"]);
    // Elsewhere it is in the line of what is due.
    tab.go("service/measure");
    let due = tab.view().due.expect("due");
    assert_eq!((due.figure.as_str(), due.is_over), ("24 s", false));
    assert_eq!(due.words, "Stir 30 s, Orchard lantern, stirred");
    assert!(tab.sent("meniscus-ring").is_empty());
    second(&mut tab, 31);
    second(&mut tab, 32);
    assert_eq!(tab.sent("meniscus-ring").len(), 1, "once");
    let due = tab.view().due.expect("due");
    assert!(due.is_over && due.figure == "2 s over", "{due:?}");
    // It leads to its form, and stays until it is seen to.
    tab.act(Act::Choose("at".into(), "0".into())).go(&due.href);
    assert_eq!(to_go(&mut tab), ["over"]);
    assert!(tab.view().due.is_some_and(|due| due.is_over));
    tab.tap("Done");
    assert_eq!((to_go(&mut tab), tab.view().due), (vec![String::new()], None));
    assert_eq!(tab.sent("meniscus-awake"), ["1", ""], "and the screen may sleep");
    // One that is stopped does not ring.
    tab.tap("Start 30 s").tap("Stop");
    second(&mut tab, 99);
    assert_eq!(tab.sent("meniscus-ring").len(), 1);
}

/// A wait of a run sheet that is over goes before a spec's that runs, and the other way round.
#[test]
fn what_is_over_is_shown_before_what_runs() {
    let keeper = Faulty::default();
    with_demo(&keeper);
    let mut tab = Tab::open(&keeper, "prep/clear");
    tab.tap("To the run sheet").go("batch/run").tap("Start 45 min");
    tab.go("specs/spec?id=demo-1").act(Act::Choose("at".into(), "1".into())).tap("Start 30 s");
    tab.go("service/measure");
    let words = |tab: &mut Tab<'_>| tab.view().due.expect("due").words;
    assert!(words(&mut tab).starts_with("Stir 30 s"), "{}", words(&mut tab));
    tab.now = NOW + 46 * 60_000;
    tab.act(Act::Choose("at".into(), String::new()));
    assert!(words(&mut tab).starts_with("Stir 30 s"), "over for longer than it ran");
    tab.go("specs/spec?id=demo-1").tap("Done").tap("Start 30 s").go("service/measure");
    assert!(!words(&mut tab).starts_with("Stir"), "{}", words(&mut tab));
}

#[test]
fn a_spec_is_printed_as_it_is_read() {
    let keeper = Faulty::default();
    with_demo(&keeper);
    let mut tab = Tab::open(&keeper, "specs/spec?id=demo-1");
    tab.act(Act::Choose("at".into(), "1".into())).act(Act::Serves(2)).tap("More").tap("Print");
    assert_eq!(tab.sent("meniscus-print").len(), 1);
    let view = tab.view();
    let Some(Block::Printed(printed)) = view.screen.blocks.first() else { panic!("{:?}", view.screen.blocks) };
    assert_eq!((printed.name.as_str(), printed.how.as_str()), ("Orchard lantern", "stirred · for 2"));
    assert_eq!(printed.strip, ["234 ml in 2 glasses", "about 19 % vol, as stirred 30 s, 117 ml each"]);
    assert_eq!(printed.day, "Printed Wed 25 Nov 2026");
    assert_eq!((pours(&mut tab)[0].one.as_str(), pours(&mut tab)[0].amount.to_string()), ("45 ml", "90 ml".into()));
}

#[test]
fn what_another_tab_has_changed_takes_no_field_from_under_the_caret() {
    let keeper = Faulty::default();
    with_demo(&keeper);
    let mut first = Tab::open(&keeper, "specs/spec?id=demo-3");
    let mut second = Tab::open(&keeper, "specs/spec?id=demo-3");
    for tab in [&mut first, &mut second] {
        tab.tap("Change");
    }
    second.act(Act::Type("notes".into(), "by the second".into()));
    first.act(Act::Type("notes".into(), "by the first".into()));
    assert!(first.notice().contains("Both are kept"), "{}", first.notice());
    let notes = first.view().screen.field("notes").map(|field| field.text.clone());
    assert_eq!(notes.as_deref(), Some("by the first"));
}

/// The serves that a card is set to go where its links go.
#[test]
fn the_serves_of_a_card_go_with_its_links() {
    let keeper = Faulty::default();
    with_demo(&keeper);
    let mut tab = Tab::open(&keeper, "specs/spec?id=demo-1&at=1");
    let mut goes = |serves: u32, more: bool, label: &str| {
        tab.go("specs/spec?id=demo-1&at=1").act(Act::Show(Face::Read)).act(Act::Serves(serves));
        if more {
            tab.tap("More");
        }
        let to = tab.link(label);
        tab.go(&to);
        tab.value("serves")
    };
    for (more, label) in
        [(false, "Too sharp?"), (false, "Batch it"), (true, "Scale it"), (true, "Cost"), (true, "To buy")]
    {
        assert_eq!(goes(6, more, label), "6", "{label}");
    }
    // And one, where it is what is in the tin.
    assert_eq!(goes(1, false, "Too sharp?"), "1");
}

/// From a card in two taps: its lines, for how many it is made, and which spec it is; and back.
#[test]
fn a_spec_is_costed_from_its_card() {
    let keeper = Faulty::default();
    with_demo(&keeper);
    let mut tab = Tab::open(&keeper, "specs/spec?id=demo-1");
    tab.act(Act::Serves(3)).tap("More");
    let to = tab.link("Cost");
    tab.go(&to);
    assert_eq!((tab.value("serves").as_str(), tab.value("from_spec").as_str()), ("3", "demo-1/0"));
    tab.type_in("price", "24.00 for 700 ml").tap("Keep 24.00 for 700 ml for pear brandy");
    assert!(tab.strip().contains(" a serve, at least | For 20 %, ask at least "), "{}", tab.strip());
    assert!(tab.rows()[0].starts_with("pear brandy|1.54|"), "{:?}", tab.rows());
    assert!(tab.view().screen.head.iter().any(|button| button.label == "Back"));
}

/// Tapped or chosen: what is typed stays with its line, and nothing typed is lost.
#[test]
fn a_price_is_of_the_line_it_was_typed_for() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "specs/cost");
    tab.type_in("spec", "45 ml pear brandy\n20 ml lemon juice\n10 ml rye").type_in("price", "24 for 700 ml");
    tab.tap_sign("Price of lemon juice");
    assert_eq!((tab.value("price_of").as_str(), tab.value("price").as_str()), ("lemon juice", ""));
    tab.type_in("price", "9").act(Act::Choose("price_of".into(), "pear brandy".into()));
    assert_eq!(tab.value("price"), "24 for 700 ml");
    // A line before it is no reason to be taken for that.
    tab.type_in("spec", "30 ml rum\n45 ml pear brandy").tap("Keep 24 for 700 ml for pear brandy");
    tab.act(Act::Choose("price_of".into(), "lemon juice".into()));
    assert_eq!(tab.value("price"), "9");
    assert_eq!(tab.act(Act::Undo).value("price"), "");
}

#[test]
fn a_batch_is_ticked_as_it_goes_onto_the_scale_and_a_tick_is_for_its_amount() {
    let keeper = Faulty::default();
    with_demo(&keeper);
    let mut tab = Tab::open(&keeper, "specs/spec?id=demo-1&at=1");
    assert!(tab.strip().starts_with("117 ml in the glass"), "{}", tab.strip());
    let batch = tab.link("Batch it");
    tab.go(&batch);
    // With the water that its own stir gives it.
    assert!(tab.strip().contains("30 serves, pour 117 ml"), "{}", tab.strip());
    assert_eq!((tab.value("from_spec"), tab.value("water")), ("demo-1/1".into(), "stirred".into()));
    let before = keeper.dump();
    tick(&mut tab, 0);
    tick(&mut tab, 2);
    assert_eq!(keeper.dump(), before, "nothing of it is kept");
    assert_eq!(ticks(&mut tab), [true, false, true, false, false]);
    tab.go("service/measure").go("batch/bottle");
    assert_eq!(ticks(&mut tab), [true, false, true, false, false]);
    // Of another amount nothing is in yet; nor is it forgotten.
    tab.type_in("serves", "20");
    assert_eq!(ticks(&mut tab), [false; 5]);
    tab.type_in("serves", "30");
    for at in [1, 3, 4] {
        tick(&mut tab, at);
    }
    assert_eq!(ticks(&mut tab), [true; 5]);
    tab.tap("Untick all");
    assert_eq!(ticks(&mut tab), [false; 5]);
    // It goes onto the run sheet with its amounts, and what comes of it.
    tab.tap("To the run sheet").go("batch/run");
    let view = tab.view();
    let steps = view.screen.blocks.iter().flat_map(|block| match block {
        Block::Timeline(events) => events.iter().map(Event::as_text).collect(),
        _ => Vec::new(),
    });
    let steps = steps.collect::<Vec<_>>().join("\n");
    assert!(steps.contains("Onto one scale: 1\u{202f}350 ml pear brandy (scale reads 1\u{202f}280 g), 600 ml dry vermouth (scale reads "), "{steps}");
    assert!(steps.contains("Fill 5 bottles of 700 ml with 679 ml each, one more with "), "{steps}");
    // A place opens with what it opened with until another has been used.
    assert_eq!(meniscus::screen::route::Place::Batch.first().row().label, "Serves");
}
