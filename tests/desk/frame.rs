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
    assert_eq!(tab.effects.last(), Some(&Effect::Instead("#/prep/cordial".into())));
    assert!(!tab.view().is_open);
    assert!(!tab.act(Act::Sheet(Some(Place::Shelf))).act(Act::Sheet(None)).view().is_open);
    assert!(!tab.act(Act::Sheet(Some(Place::Shelf))).go("shelf").view().is_open);
}

/// The pad covers half a phone: what is wrong is said above it.
#[test]
fn what_is_wrong_with_what_is_typed_is_shown_above_the_pad() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "service/measure");
    tab.effects.clear();
    tab.act(Act::Type("amount".into(), "2 oz".into()));
    assert!(!tab.effects.contains(&Effect::Show("amount")));
    tab.act(Act::Type("amount".into(), "abc".into()));
    assert!(tab.effects.contains(&Effect::Show("amount")));
}

#[test]
fn a_new_ingredient_begins_at_its_top_with_its_name() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "shelf/ingredients");
    tab.effects.clear();
    tab.act(Act::NewIngredient);
    assert!(tab.effects.iter().any(|effect| matches!(effect, Effect::Begin(_))), "{:?}", tab.effects);
    assert!(tab.effects.contains(&Effect::Enter("name")), "{:?}", tab.effects);
}

/// The history as a browser keeps it, of what the app asked for: the addresses, the one shown last.
fn history(at: &str, effects: &[Effect]) -> Vec<String> {
    let mut all = vec![at.to_owned()];
    for effect in effects {
        let shown = all.last().cloned().unwrap_or_default();
        match effect {
            Effect::Go(to) => all.push(to.clone()),
            Effect::Step => all.push(shown),
            Effect::Back => drop(all.pop()),
            Effect::Instead(to) => *all.last_mut().expect("a step") = to.clone(),
            _ => {}
        }
    }
    all
}

#[test]
fn back_closes_the_sheet_and_no_step_of_it_stays_behind() {
    let (start, open) = ("#/service/measure", || Act::Sheet(Some(Place::Prep)));
    let after = |acts: &dyn Fn(&mut Tab<'_>) -> bool| {
        let keeper = Faulty::default();
        let mut tab = Tab::open(&keeper, start);
        tab.effects.clear();
        let is_open = acts(&mut tab);
        (history(start, &tab.effects), is_open)
    };
    let at = |all: &[&str], is_open| (all.iter().map(|to| (*to).to_owned()).collect::<Vec<_>>(), is_open);
    let opened = after(&|tab| tab.act(open()).view().is_open);
    assert_eq!(opened, at(&[start, start], true));
    let another = after(&|tab| tab.act(open()).act(Act::Sheet(Some(Place::Batch))).view().is_open);
    assert_eq!(another, at(&[start, start], true), "one step, however many places are looked at");
    // Back has taken the step by itself.
    assert_eq!(after(&|tab| tab.act(open()).tell(News::Back).view().is_open), at(&[start, start], false));
    // Close, the veil and Escape take it back; the news of that changes nothing.
    let closed = after(&|tab| tab.act(open()).act(Act::Sheet(None)).tell(News::Back).view().is_open);
    assert_eq!(closed, at(&[start], false));
    assert_eq!(after(&|tab| tab.act(Act::Sheet(None)).view().is_open), at(&[start], false), "nothing to close");
    // A tool, the place once more, and whatever else leads away go where the step was.
    let chosen = after(&|tab| tab.act(open()).act(Act::Go("#/prep/fruit".into())).view().is_open);
    assert_eq!(chosen, at(&[start, "#/prep/fruit"], false));
    let twice = after(&|tab| tab.act(open()).act(open()).view().is_open);
    assert_eq!((twice.0.len(), twice.1), (2, false));
    let file = after(&|tab| tab.act(open()).tell(News::File("{}".into())).view().is_open);
    assert_eq!(file, at(&[start, "#/specs/backup"], false));
    // Without a sheet a link is a step of its own.
    assert_eq!(after(&|tab| tab.act(Act::Go("#/shelf".into())).view().is_open), at(&[start, "#/shelf"], false));
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
