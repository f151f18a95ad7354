//! A spec of the book taken into a tool: from a list, from its page, by search; and the way back.

use crate::faulty::Faulty;
use meniscus::desk::Effect;
use meniscus::screen::{Act, Block, Input, Opt};

use crate::bar::Tab;

const LANTERN: &str = "demo-1/1";

fn with_demo() -> Faulty {
    let keeper = Faulty::default();
    Tab::open(&keeper, "specs").act(Act::Demo);
    keeper
}

/// What stands in the list of specs.
fn listed(tab: &mut Tab<'_>) -> Vec<Opt> {
    match &tab.view().screen.field("from_spec").expect("a list of specs").input {
        Input::Pick(options) => options.clone(),
        other => panic!("{other:?}"),
    }
}

/// What the list shows.
fn chosen(tab: &mut Tab<'_>) -> String {
    let key = tab.value("from_spec");
    let options = listed(tab);
    options.into_iter().find(|option| option.key == key).expect("the chosen one is in the list").label
}

fn back(tab: &mut Tab<'_>) -> Option<String> {
    let head = tab.view().screen.head.clone();
    head.into_iter().find(|button| button.label == "Back").map(|button| match button.act {
        Act::Go(href) => href,
        act => panic!("{act:?}"),
    })
}

/// The lines of a form of the demo.
fn lines(keeper: &Faulty, at: &str) -> String {
    let mut tab = Tab::open(keeper, "specs/spec?id=demo-1");
    tab.act(Act::Choose("at".into(), at.into())).value("lines")
}

#[test]
fn a_spec_is_chosen_in_each_tool_that_takes_one() {
    let keeper = with_demo();
    let stirred = lines(&keeper, "1");
    for (at, choice) in [
        ("service/scale", None),
        ("service/balance", None),
        ("service/chill", None),
        ("prep/milk-wash", Some(("known", "spec"))),
        ("prep/cordial", Some(("ask", "swap"))),
    ] {
        let mut tab = Tab::open(&keeper, at);
        if let Some((field, key)) = choice {
            tab.act(Act::Choose(field.into(), key.into()));
        }
        tab.type_in("spec", "60 ml gin");
        let stood = tab.value("spec");
        assert_eq!(back(&mut tab), None, "{at}");
        tab.type_in("from_spec", LANTERN);
        assert_eq!(tab.value("spec"), stirred, "{at}");
        assert_eq!(chosen(&mut tab), "Orchard lantern, stirred", "{at}");
        assert_eq!(back(&mut tab).as_deref(), Some("#/specs/spec?id=demo-1&at=1"), "{at}");
        // One step of Undo, and what was typed is back.
        tab.act(Act::Undo);
        assert_eq!((tab.value("spec"), tab.value("from_spec")), (stood, String::new()), "{at}");
    }
}

/// A drink takes its ice by its method and what stands in its card of ice: stirred and strained, 180 g and none; built on
/// crushed ice, none and 200 g. The serves of the night stay.
#[test]
fn ice_takes_what_a_drink_is_made_on() {
    let keeper = with_demo();
    let mut tab = Tab::open(&keeper, "service/ice");
    tab.type_in("serves", "40").type_in("from_spec", LANTERN);
    assert_eq!(chosen(&mut tab), "Orchard lantern, stirred");
    assert_eq!(["serves", "made_with", "glass"].map(|name| tab.value(name)), ["40", "180 g", "0 g"]);
    assert_eq!(back(&mut tab).as_deref(), Some("#/specs/spec?id=demo-1&at=1"));
    tab.type_in("from_spec", "demo-1/0");
    assert_eq!(["serves", "made_with", "glass"].map(|name| tab.value(name)), ["40", "0 g", "200 g"]);
    // None: what stands there stays.
    tab.type_in("from_spec", "");
    assert_eq!((tab.value("glass"), chosen(&mut tab)), ("200 g".into(), "none".into()));
}

/// What each tool says of a drink in its glass, by the method and steps of its spec: nothing to know by heart.
#[test]
fn a_spec_says_what_it_is_in_the_glass() {
    let keeper = with_demo();
    for (at, says) in [
        ("service/scale", "In the glass, as stirred 30 s: about 117 ml, 19 % vol."),
        ("batch/label", "In the glass, as stirred 30 s: about 117 ml, 19 % vol."),
        ("batch/serves", "In the glass, as stirred 30 s: about 117 ml, 19 % vol."),
    ] {
        let mut tab = Tab::open(&keeper, at);
        let said = |tab: &mut Tab<'_>| format!("{:?}", tab.view().screen).contains(says);
        assert!(!said(&mut tab), "{at}");
        tab.type_in("from_spec", LANTERN);
        assert!(said(&mut tab), "{at}: {:?}", tab.view().screen);
    }
    let mut tab = Tab::open(&keeper, "service/balance");
    tab.type_in("from_spec", LANTERN).type_in("ice", "own");
    assert_eq!(tab.below(), "A serve is 117 ml as stirred 30 s");
}

#[test]
fn a_spec_brings_to_chill_how_it_is_made_and_how_long() {
    let keeper = with_demo();
    let mut tab = Tab::open(&keeper, "service/chill");
    for (spec, method, time) in [
        ("demo-2/0", "shake", "12"),
        (LANTERN, "stir", "30"),
        ("demo-1/0", "swizzle", "10"),
        ("demo-3/1", "stir", "25"),
        // Of what is carbonated it is not said: what was chosen stays.
        ("demo-2/1", "stir", "25"),
    ] {
        tab.type_in("from_spec", spec);
        assert_eq!((tab.value("method").as_str(), tab.value("time").as_str()), (method, time), "{spec}");
    }
    let mut card = Tab::open(&keeper, "specs/spec?id=demo-2");
    let link = card.tap("More").link("Chill it");
    tab.go(link.trim_start_matches("#/"));
    assert_eq!((tab.value("method"), tab.value("time")), ("shake".into(), "12".into()));
    assert_eq!(tab.value("from_spec"), "demo-2/0");
}

#[test]
fn a_spec_brings_to_glass_what_it_stands_in_and_goes_on_to_scale_as_much_less() {
    let keeper = with_demo();
    let mut tab = Tab::open(&keeper, "service/glass");
    let stands = |tab: &mut Tab<'_>| ["glass", "drink", "ice"].map(|field| tab.value(field));
    tab.type_in("from_spec", "demo-2/0");
    assert_eq!(stands(&mut tab)[2], "cubes");
    // Of a batch nothing is poured yet.
    tab.type_in("from_spec", "demo-1/2");
    assert_eq!(stands(&mut tab), ["small wine glass, 140 ml", "", "block"]);
    tab.type_in("from_spec", LANTERN);
    let found = stands(&mut tab);
    assert_eq!(found, ["small wine glass, 140 ml", "117 ml", "none"]);
    let mut card = Tab::open(&keeper, "specs/spec?id=demo-1&at=1");
    let link = card.tap("More").link("Does it fit?");
    let mut there = Tab::open(&keeper, link.trim_start_matches("#/"));
    assert_eq!((stands(&mut there), there.value("from_spec")), (found, LANTERN.into()));
    tab.type_in("drink", "160 ml");
    let factor =
        tab.below().rsplit_once("Make it ").expect("as much less").1.trim_end_matches(" of the spec").to_owned();
    let link = tab.link(&format!("Scale it to {factor}"));
    tab.go(link.trim_start_matches("#/"));
    let scaled = (tab.value("by"), tab.value("factor"), tab.value("spec"), tab.value("from_spec"));
    assert_eq!(scaled, ("times".into(), factor, lines(&keeper, "1"), LANTERN.into()));
}

#[test]
fn lines_that_were_changed_say_so() {
    let keeper = with_demo();
    let mut tab = Tab::open(&keeper, "service/scale");
    tab.type_in("makes", "12").type_in("from_spec", LANTERN);
    assert_eq!(tab.value("makes"), "1", "what the last spec made is not this one's");
    let spec = tab.value("spec");
    tab.type_in("spec", &format!("{spec}\n10 ml soda"));
    assert_eq!(chosen(&mut tab), "Orchard lantern, stirred (changed)");
    // Balance shows the same lines, and the same spec.
    tab.go("service/balance");
    assert_eq!(chosen(&mut tab), "Orchard lantern, stirred (changed)");
    tab.type_in("spec", &spec);
    assert_eq!(chosen(&mut tab), "Orchard lantern, stirred");
    // None: what stands there stays, and is nobody's.
    tab.type_in("from_spec", "");
    assert_eq!((tab.value("spec"), chosen(&mut tab), back(&mut tab)), (spec, "none".into(), None));
}

#[test]
fn serves_and_a_label_take_what_they_ask_of_a_spec() {
    let keeper = with_demo();
    let mut tab = Tab::open(&keeper, "batch/serves");
    tab.type_in("from_spec", LANTERN);
    assert_eq!(tab.value("serve"), "81.4 ml");
    assert_eq!(tab.value("made"), "2.8 l");
    tab.go("batch/label").type_in("note", "shake").type_in("from_spec", LANTERN);
    assert_eq!(tab.value("name"), "Orchard lantern, stirred");
    assert_eq!((tab.value("pour"), tab.value("allergens")), ("81.4 ml".into(), "sulphites".into()));
    assert_eq!(chosen(&mut tab), "Orchard lantern, stirred");
    assert_eq!(tab.sent("meniscus-pack").len(), 1, "its code is of that spec");
    // No spec: no code, and the words stay.
    tab.type_in("from_spec", "");
    assert_eq!((tab.value("name"), chosen(&mut tab)), ("Orchard lantern, stirred".into(), "none".into()));
    assert!(!tab.view().screen.blocks.iter().any(|block| format!("{block:?}").contains("Its code holds")));
}

#[test]
fn a_spec_comes_along_from_its_page_through_fruit_and_clarify_to_its_cordial() {
    let keeper = with_demo();
    let mut tab = Tab::open(&keeper, "specs/spec?id=demo-1");
    assert_eq!(back(&mut tab), None);
    let quick = tab.value("lines");
    let fruit = tab.tap("Done").tap("More").link("Fruit for the lemon juice");
    tab.go(&fruit);
    assert_eq!(tab.view().screen.strip.below, "For Orchard lantern, quick");
    let clarify = tab.link("Clarify it");
    tab.go(&clarify);
    assert_eq!(tab.view().screen.strip.below, "For Orchard lantern, quick");
    let cordial = tab.link("Make a cordial");
    tab.go(&cordial);
    assert_eq!(back(&mut tab).as_deref(), Some("#/specs/spec?id=demo-1&at=0"));
    tab.act(Act::Choose("ask".into(), "swap".into()));
    assert_eq!((tab.value("spec"), chosen(&mut tab)), (quick, "Orchard lantern, quick".into()));
    // Back opens the form that it came from; which spec it is stays in the address.
    tab.go("#/specs/spec?id=demo-1&at=2");
    assert_eq!(
        tab.effects.iter().rfind(|effect| matches!(effect, Effect::Replace(_))),
        Some(&Effect::Replace("#/specs/spec?id=demo-1".into()))
    );
    let way = back(tab.go("prep/cordial")).expect("a way back");
    assert_eq!(tab.go(&way).value("at"), "0");
    // Lines from elsewhere are of no spec.
    tab.go("service/scale?spec=60+ml+gin");
    assert_eq!((tab.value("from_spec"), back(&mut tab)), (String::new(), None));
}

#[test]
fn bubbles_for_a_spec_know_when_it_freezes() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "specs");
    tab.act(Act::NewSpec).follow().type_in("name", "Fizz").type_in("lines", "30 ml gin\n170 ml water");
    let bubbles = tab.tap("Done").tap("More").link("Bubbles for it");
    tab.go(&bubbles);
    assert_eq!((chosen(&mut tab).as_str(), tab.strip().as_str()), ("Fizz", "1.0 bar | 15 psi on the gauge, at 4 °C"));
    assert!(back(&mut tab).is_some() && tab.view().screen.field("strength").is_none(), "the spec says its strength");
    // At 6 % vol it is still liquid at −1 °C; with more water it is not.
    assert!(tab.type_in("at", "−1").strip().starts_with("0.7 bar | "), "{}", tab.strip());
    tab.act(Act::NewSpec).follow().type_in("lines", "200 ml water").tap("Done").tap("More");
    let bubbles = tab.link("Bubbles for it");
    assert_eq!(tab.go(&bubbles).strip(), "? | This drink begins to freeze at 0 °C. Type a warmer temperature.");
    // A spec that it does not know is of a strength unknown.
    assert!(tab.type_in("from_spec", "").view().screen.field("strength").is_some());
    assert!(tab.strip().starts_with("0.7 bar"), "{}", tab.strip());
}

#[test]
fn a_preset_is_a_tap() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "batch/bubbles");
    assert_eq!(tab.tap("Lively, 4").value("bubbles"), "4");
    assert_eq!(tab.strip(), "1.7 bar | 25 psi on the gauge, at 4 °C");
    assert_eq!(tab.act(Act::Undo).value("bubbles"), "3");
}

#[test]
fn a_spec_that_is_gone_is_said_and_leads_nowhere() {
    let keeper = with_demo();
    let mut tab = Tab::open(&keeper, "service/scale");
    tab.type_in("from_spec", LANTERN);
    Tab::open(&keeper, "specs/backup").act(Act::RemoveDemo);
    let mut tab = Tab::open(&keeper, "service/scale");
    assert_eq!((chosen(&mut tab), back(&mut tab)), ("no longer in the book".into(), None));
    // Without a spec in the book there is nothing to choose from.
    tab.type_in("from_spec", "");
    assert!(tab.view().screen.field("from_spec").is_none());
}

#[test]
fn of_a_large_book_the_latest_are_listed_and_the_rest_are_found() {
    let keeper = Faulty::default();
    for number in 0..70 {
        let mut tab = Tab::open_later(&keeper, "specs", crate::bar::NOW + number * 1000);
        tab.act(Act::NewSpec).follow().type_in("name", &format!("Drink {number:02}")).type_in("lines", "60 ml gin");
    }
    let mut tab = Tab::open(&keeper, "service/scale");
    let labels: Vec<String> = listed(&mut tab).into_iter().map(|option| option.label).collect();
    assert_eq!((labels.len(), labels[0].as_str(), labels[1].as_str()), (9, "none", "Drink 69"));
    assert!(labels.contains(&"Drink 62".to_owned()) && !labels.contains(&"Drink 61".to_owned()));
    let find = tab.view().screen.blocks.iter().find_map(|block| match block {
        Block::Buttons(buttons) => buttons.iter().find(|button| button.label == "Find another spec").cloned(),
        _ => None,
    });
    let Act::Go(find) = find.expect("a way to the others").act else { panic!("it leads nowhere") };
    tab.go(&find).type_in("search", "drink 07");
    let rows = tab.view().screen.blocks.iter().find_map(|block| match block {
        Block::Table(_, rows) => Some(rows.clone()),
        _ => None,
    });
    let rows = rows.expect("it is found");
    assert_eq!(rows.len(), 1);
    tab.go(&rows[0].href);
    assert_eq!((tab.value("spec"), chosen(&mut tab)), ("60 ml gin".into(), "Drink 07".into()));
    // The next time Find finds anything, and is typed in at once.
    tab.effects.clear();
    tab.go("find").type_in("search", "milk");
    assert!(tab.rows().iter().any(|row| row.starts_with("Milk wash|")));
    assert!(tab.effects.contains(&Effect::Enter("search")), "{:?}", tab.effects);
}

#[test]
fn a_strength_called_from_is_no_spec() {
    let keeper = with_demo();
    let mut tab = Tab::open(&keeper, "prep/strength");
    tab.type_in("from", "60");
    assert_eq!((tab.value("from"), back(&mut tab)), ("60".into(), None));
}

#[test]
fn a_label_names_a_strength_only_where_every_line_is_counted() {
    let label = |lines: &str| {
        let keeper = Faulty::default();
        let mut tab = Tab::open(&keeper, "specs");
        tab.act(Act::NewSpec).follow().type_in("lines", lines).tap("Done").tap("More").link("Label it")
    };
    assert!(label("45 ml gin\n30 ml water").contains("&strength=24"));
    assert!(!label("45 ml gin\n30 ml moon dust").contains("strength="));
}
