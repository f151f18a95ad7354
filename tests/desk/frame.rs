//! The frame: every screen draws, whatever is in the book, and says where it is.

use crate::faulty::Faulty;
use meniscus::desk::{Effect, News};
use meniscus::screen::route::Place;
use meniscus::screen::{Act, Block};

use crate::bar::{Tab, screens};

#[test]
fn every_screen_draws_with_and_without_a_book() {
    let keeper = Faulty::default();
    for _ in 0..2 {
        for route in screens() {
            let mut tab = Tab::open(&keeper, &route.href());
            let view = tab.view();
            assert_eq!(view.title, route.row().label);
            assert_eq!(view.tools.iter().filter(|tool| tool.is_here).count(), 1, "{route:?}");
            assert_eq!(view.places.iter().filter(|link| link.is_here).count(), 1, "{route:?}");
            let strip = &view.screen.strip;
            assert!(!strip.figures.is_empty() || !strip.also.is_empty(), "{route:?}");
            assert!(view.screen.blocks.iter().any(|block| matches!(block, Block::Actions(_))), "{route:?}");
            let words = format!("{:?}", view.screen);
            assert!(!words.contains("NaN") && !words.contains("inf\""), "{route:?}");
        }
        Tab::open(&keeper, "specs").act(Act::Demo);
    }
}

#[test]
fn a_place_opens_its_sheet_and_then_the_tool_used_there_last() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "prep/cordial");
    tab.go("service/measure");
    let view = tab.act(Act::Sheet(Some(Place::Prep))).view();
    assert!(view.is_open && view.pad.is_none());
    assert!(view.tools.iter().any(|tool| tool.label == "Clarify" && !tool.question.is_empty()));
    assert!(view.places.iter().all(|place| place.has_sheet == (place.place == Place::Prep)));
    tab.act(Act::Sheet(Some(Place::Prep)));
    assert_eq!(tab.effects.last(), Some(&Effect::Go("#/prep/cordial".into())));
    assert!(!tab.view().is_open);
    assert!(!tab.act(Act::Sheet(Some(Place::Shelf))).act(Act::Sheet(None)).view().is_open);
    assert!(!tab.act(Act::Sheet(Some(Place::Shelf))).go("shelf").view().is_open);
}

#[test]
fn next_goes_round_the_numbers() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "prep/milk-wash");
    let first = tab.view().active;
    assert!(first.is_some() && tab.act(Act::Next).view().active != first);
    let mut seen = 1;
    while tab.view().active != first {
        tab.act(Act::Next);
        seen += 1;
        assert!(seen < 30);
    }
    assert!(seen > 2);
}

#[test]
fn with_a_keyboard_the_pad_waits_behind_its_word() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "service/measure");
    assert!(tab.view().pad.is_some());
    let view = tab.tell(News::Keyboard(true)).view();
    assert!(view.pad.is_none() && view.pad_waits && view.active == Some("amount"));
    assert!(tab.act(Act::Pad).view().pad.is_some());
    assert!(tab.go("prep/fruit").view().pad.is_none(), "it waits again");
}

#[test]
fn a_newcomer_is_told_what_this_is_until_the_first_key() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "service/measure");
    assert!(tab.notice().starts_with("Works out bar measures."));
    assert_eq!(tab.act(Act::Type("amount".into(), "2 oz".into())).notice(), "");
    assert_eq!(Tab::open(&keeper, "service/measure").notice(), "", "nobody is new twice");
    assert_eq!(Tab::open(&Faulty::default(), "service/measure").act(Act::Dismiss).notice(), "");
}

#[test]
fn a_phone_is_offered_to_keep_the_app_once_a_spec_is_kept_and_once_only() {
    fn spec(keeper: &Faulty) -> Tab<'_> {
        let mut tab = Tab::open(keeper, "specs");
        tab.act(Act::NewSpec).follow().type_in("lines", "45 ml gin");
        tab
    }
    let offer = "Keep Meniscus on your phone: it works without a network.";
    let labels = |tab: &mut Tab<'_>| -> Vec<String> {
        tab.view().notice.iter().flat_map(|notice| notice.buttons.iter().map(|button| button.label.clone())).collect()
    };
    let keeper = Faulty::default();
    let mut tab = spec(&keeper);
    assert_ne!(tab.notice(), offer, "not while it is typed");
    assert_eq!(tab.go("specs").notice(), offer);
    assert_eq!(labels(&mut tab), ["How", "Not now"]);
    assert!(tab.has_button("How") && tab.tap("Not now").notice().is_empty());
    // In this tab, and in one that is opened later: never again.
    assert_eq!(spec(&keeper).go("specs").notice(), "");
    assert_eq!(tab.go("service/measure").notice(), "");
    // It goes with the screen it was said on.
    let keeper = Faulty::default();
    assert_eq!(spec(&keeper).go("specs").go("shelf").notice(), "");
    // Where the browser can be asked, that is one tap.
    let keeper = Faulty::default();
    let mut tab = spec(&keeper);
    let page = |can_install, is_installed| News::Page { update_waits: false, can_install, is_installed };
    tab.tell(page(true, false)).go("specs");
    assert_eq!(labels(&mut tab), ["Install", "Not now"]);
    assert_eq!(tab.tap("Install").notice(), "");
    assert_eq!(tab.sent("meniscus-install").len(), 1);
    // Nobody else is told: where it is installed or no phone, and of a demo or a spec with nothing in it.
    assert_eq!(spec(&Faulty::default()).tell(page(false, true)).go("specs").notice(), "");
    assert_eq!(spec(&Faulty::default()).tell(News::Keyboard(true)).go("specs").notice(), "");
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "specs");
    tab.act(Act::Demo).go("specs/spec?id=demo-1").go("specs");
    assert_eq!(tab.notice(), "");
    tab.act(Act::NewSpec).follow().type_in("name", "Nothing yet").go("specs");
    assert_eq!(tab.notice(), "");
}
