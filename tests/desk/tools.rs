//! Tools: typed into, emptied, undone, carried from one to the next, kept.

use crate::faulty::Faulty;
use meniscus::desk::{Effect, News};
use meniscus::screen::Act;
use meniscus::screen::pad::Key;

use crate::bar::{Tab, screens, stored};

#[test]
fn what_is_typed_is_answered_and_kept() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "service/measure");
    assert_eq!((tab.strip(), tab.below()), ("51.8 ml | Pour 1½ oz + ¼ oz".into(), String::new()));
    assert_eq!(tab.type_in("amount", "45 ml").strip(), "1.52 oz | Pour 1½ oz");
    assert_eq!(tab.below(), "−0.6 ml, −1.4 %");
    assert_eq!(stored(&keeper, "tool/measure").len(), 1);
    assert_eq!(Tab::open(&keeper, "service/measure").value("amount"), "45 ml", "after a reload");
}

#[test]
fn emptied_and_brought_back() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "service/measure");
    assert_eq!(tab.view().undo, None);
    tab.type_in("amount", "45 ml").act(Act::Empty);
    assert_eq!(tab.value("amount"), "");
    assert!(tab.view().undo.is_some());
    assert_eq!(tab.act(Act::Undo).value("amount"), "45 ml");
    tab.act(Act::Copy);
    assert_eq!(tab.effects.last(), Some(&Effect::Copy("1.52 oz\nPour 1½ oz\n−0.6 ml, −1.4 %".into())));
    assert_eq!(tab.tell(News::Copied(true)).view().copied, "Copied");
    assert_eq!(tab.tell(News::CopiedIsOver).view().copied, "");
}

#[test]
fn the_strip_leads_to_the_line_that_is_asked_about() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "service/balance");
    tab.type_in("spec", "60 ml gin\n20 ml moon dust");
    assert_eq!(tab.view().screen.leads, "1 line not counted");
    tab.act(Act::Look);
    assert_eq!(tab.effects.last(), Some(&Effect::Reach("asked")));
    assert_eq!(tab.type_in("spec", "60 ml gin").view().screen.leads, "");
}

#[test]
fn an_amount_is_carried_to_the_next_tool() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "service/measure");
    let href = tab.type_in("amount", "1 l").link("Into serves");
    tab.go(&href);
    assert_eq!(tab.value("made"), "1000 ml");
    assert!(tab.effects.contains(&Effect::Replace("#/batch/serves".into())), "what was carried leaves the address");
    assert!(tab.view().undo.is_some());
    assert_eq!(tab.act(Act::Undo).value("made"), "2.8 l");
}

#[test]
fn a_line_is_settled_in_a_tap() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "service/scale");
    tab.type_in("spec", "60 gin\n30 ml lime juice");
    tab.act(Act::Rewrite("60 gin".into(), "60 ml gin".into()));
    assert_eq!(tab.value("spec"), "60 ml gin\n30 ml lime juice");
    assert_eq!(tab.act(Act::Undo).value("spec"), "60 gin\n30 ml lime juice");
    // Balance shares the form.
    assert_eq!(tab.go("service/balance").value("spec"), "60 gin\n30 ml lime juice");
}

#[test]
fn settings_reach_every_tool() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "shelf");
    tab.act(Act::Choose("ounce".into(), "round".into())).act(Act::Choose("usual_unit".into(), "oz".into()));
    tab.act(Act::Choose("theme".into(), "paper".into()));
    assert_eq!(tab.view().look, "paper");
    assert_eq!(tab.go("service/measure").strip(), "52.5 ml | Pour 1½ oz + ¼ oz");
    assert_eq!(tab.view().bare_unit, "oz");
}

#[test]
fn a_yield_is_kept_on_the_shelf_and_counts() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "prep/fruit");
    tab.type_in("got", "800 ml");
    let label = tab.view().screen.blocks.iter().find_map(|block| match block {
        meniscus::screen::Block::Buttons(buttons) => {
            buttons.iter().find(|button| button.label.starts_with("Keep ")).map(|button| button.label.clone())
        }
        _ => None,
    });
    tab.tap(&label.expect("an offer"));
    assert!(tab.notice().starts_with("Kept in Shelf"));
    assert_eq!(tab.value("got"), "");
    assert!(tab.strip().ends_with("your own yield"), "{}", tab.strip());
    assert!(Tab::open(&keeper, "shelf").value("yields").starts_with("lime juice "));
    let words = tab.notice();
    assert_eq!(tab.tell(News::SaidIsOver("something else".into())).notice(), words);
    assert_eq!(tab.tell(News::SaidIsOver(words)).notice(), "");
}

/// From a spec without a price to its cost, without leaving: typed, kept in a tap, and there for every spec.
#[test]
fn a_price_is_kept_where_it_is_missed() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "specs/cost");
    tab.type_in("spec", "60 ml gin\n30 ml lime juice");
    assert!(tab.strip().contains("No prices yet"), "{}", tab.strip());
    assert_eq!(tab.view().screen.leads, "2 prices missing");
    assert_eq!(tab.view().screen.field("price_of").expect("asked").text, "gin");
    tab.type_in("price", "24.50 for 700 ml");
    tab.tap("Keep 24.50 for 700 ml for gin");
    assert!(tab.notice().starts_with("Kept in Shelf, under your prices."), "{}", tab.notice());
    // 60 / 700 × 24.50; on to the next.
    assert_eq!(tab.strip(), "2.10 a serve, at least | For 20 %, ask at least 10.50");
    assert_eq!(
        (tab.value("price"), tab.view().screen.field("price_of").expect("asked").text.clone()),
        (String::new(), "lime juice".into())
    );
    tab.type_in("price", "9 for 1 l");
    tab.tap("Keep 9 for 1 l for lime juice");
    assert_eq!(tab.strip(), "2.37 a serve | For 20 %, ask 11.85");
    assert!(tab.view().screen.field("price").is_none());
    // One that is there is changed from its line, which leads to the field.
    tab.act(Act::Put(vec![("price_of", "gin".into())]));
    assert_eq!(tab.effects.last(), Some(&Effect::Reach("price")));
    assert_eq!(tab.view().screen.field("price_of").expect("chosen").text, "gin");
    // Another spec, another name and another tab.
    let mut other = Tab::open(&keeper, "specs/cost");
    other.type_in("spec", "60 ml London dry gin");
    assert_eq!(other.strip(), "2.10 a serve | For 20 %, ask 10.50");
    let kept = other.go("shelf").value("prices");
    assert!(kept.starts_with("gin, 700 ml, 24.50, "), "{kept}");
    // What is put right is put right at once.
    other.type_in("prices", "gin, 700 ml, 28");
    assert_eq!(other.go("specs/cost").strip(), "2.40 a serve | For 20 %, ask 12.00");
    // What is paid is no setting that starts over.
    other.go("shelf").type_in("dash", "1 ml").act(Act::Empty);
    assert_eq!((other.value("dash").as_str(), other.value("prices").as_str()), ("0.8 ml", "gin, 700 ml, 28"));
}

#[test]
fn the_pad_is_ready_where_a_tool_begins_with_a_number() {
    let keeper = Faulty::default();
    for route in screens() {
        let mut tab = Tab::open(&keeper, "service/measure");
        let view = tab.go(&route.href()).view();
        let read_first = [
            "Scale",
            "Balance",
            "Cost",
            "Bottle it",
            "Chill",
            "Aim",
            "Glass",
            "Book",
            "Spec",
            "Find",
            "Side by side",
            "Backup",
            "Settings",
            "Run sheet",
            "To buy",
            "Label",
            "Ingredients",
        ];
        assert_eq!(view.pad.is_none(), read_first.contains(&route.row().label), "{route:?}");
        assert_eq!(view.pad.map(|pad| pad.field), view.active, "{route:?}");
    }
}

#[test]
fn the_pad_follows_a_choice_and_turns() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "batch/serves");
    assert_eq!(tab.view().active, Some("made"));
    tab.act(Act::Choose("ask".into(), "make".into()));
    assert_eq!(tab.view().active, Some("wanted"));
    assert_eq!(tab.effects.last(), Some(&Effect::Show("wanted")));
    let to_focus = |effect: &&Effect| matches!(effect, Effect::Enter("wanted") | Effect::Reach("wanted"));
    assert_eq!(tab.effects.iter().find(to_focus), None, "the focus stays on the choice: arrow keys go on");
    let front = tab.view().pad.expect("a pad").keys;
    assert!(tab.act(Act::Turn).view().pad.is_some_and(|pad| pad.keys != front));
    assert!(
        tab.act(Act::Activate(Some("serve".into())))
            .view()
            .pad
            .is_some_and(|pad| !pad.is_turned && pad.units.contains(&Key::Turn))
    );
    assert_eq!(tab.act(Act::Activate(None)).view().pad, None);
    tab.go("shelf").act(Act::Choose("keyboard".into(), "phone".into()));
    assert_eq!(tab.go("service/measure").view().pad, None, "the phone's keyboard is chosen");
}

#[test]
fn an_unknown_address_leads_to_measure_and_says_so() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "cellar/rats");
    assert_eq!(tab.view().title, "Measure");
    assert!(tab.notice().starts_with("No page has that address."));
    assert_ne!(tab.act(Act::Dismiss).notice(), "No page has that address. This is Measure, in Service.");
}

#[test]
fn a_drink_of_the_bars_own_is_weighed_and_counts_from_then_on() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "service/chill");
    let usual = tab.strip();
    assert!(tab.view().screen.field("went_in").is_none());
    tab.tap("Weigh mine").type_in("went_in", "90 ml").type_in("came_out", "120 ml");
    let own = tab.strip();
    assert!(own != usual && tab.below().starts_with("Your own, stirred"), "{own} {}", tab.below());
    tab.tap("Keep as my own, stirred");
    assert_eq!(tab.notice(), "Kept in Shelf, under your own chill. It counts from now on.");
    assert_eq!((tab.strip(), tab.value("came_out")), (own, String::new()));
    let kept = tab.go("shelf").value("pace_stir");
    assert!(kept.parse::<f64>().is_ok_and(|seconds| seconds > 48.0), "{kept}");
    // Taken off the shelf it counts as usual again; what is no time is said.
    tab.type_in("pace_stir", "soon");
    let told = tab.view().screen.field("pace_stir").and_then(|field| field.problem.clone()).expect("a problem");
    assert_eq!(told.words, "Type how long, like 30 s or 1:30.");
    tab.type_in("pace_stir", "");
    assert_eq!(tab.go("service/chill").strip(), usual);
}
