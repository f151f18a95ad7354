//! Two tabs at one store, without a word from one to the other: what each typed stays, field by field.

use crate::bar::{NOW, Tab, stored};
use crate::faulty::{Fault, Faulty};
use meniscus::desk::News;
use meniscus::screen::Act;

#[test]
fn two_tabs_type_on_the_shelf_and_lose_nothing() {
    let keeper = Faulty::default();
    let mut one = Tab::open(&keeper, "shelf");
    let mut two = Tab::open(&keeper, "shelf");
    one.type_in("yields", "lime 40 %");
    two.type_in("dash", "1 ml");
    one.type_in("brim_1", "45 ml");
    let mut again = Tab::open(&keeper, "shelf");
    let whole = [again.value("yields"), again.value("dash"), again.value("brim_1")];
    assert_eq!(whole, ["lime 40 %", "1 ml", "45 ml"].map(str::to_owned));
    assert_eq!((two.value("yields"), two.value("brim_1")), ("lime 40 %".into(), "2 oz".into()));
    assert_eq!(two.tell(News::Seen).value("brim_1"), "45 ml", "read anew when one comes back");
    assert_eq!(one.notice() + &two.notice(), "", "nothing to say of it");
}

#[test]
fn two_tabs_type_in_one_field_and_the_other_s_text_comes_back() {
    let keeper = Faulty::default();
    let mut one = Tab::open(&keeper, "prep/milk-wash");
    one.act(Act::Choose("known".into(), "spec".into()));
    let mut two = Tab::open(&keeper, "prep/milk-wash");
    one.type_in("spec", "60 ml London dry gin\n30 ml lemon juice");
    two.type_in("spec", "50 ml dry vermouth\n20 ml lemon juice");
    assert_eq!(two.notice(), "Another tab had typed there too. Undo brings its text back.");
    assert_eq!(two.value("spec"), "50 ml dry vermouth\n20 ml lemon juice");
    assert_eq!(two.act(Act::Undo).value("spec"), "60 ml London dry gin\n30 ml lemon juice");
    assert_eq!(one.tell(News::Stored("meniscus/tool/milk-wash".into())).value("spec"), two.value("spec"));
}

#[test]
fn what_could_not_be_saved_meets_what_another_tab_saved() {
    for fault in [Fault::Throws, Fault::Dropped] {
        let keeper = Faulty::default();
        let mut one = Tab::open(&keeper, "shelf");
        let mut two = Tab::open(&keeper, "shelf");
        keeper.fail_every(1, fault);
        one.type_in("yields", "lime 40 %");
        assert!(one.notice().starts_with("Not saved"), "{}", one.notice());
        keeper.heal();
        two.type_in("dash", "1 ml");
        // A second later it is tried again, by itself.
        one.tell(News::Tick);
        assert_eq!((one.notice(), one.value("dash")), (String::new(), "1 ml".into()));
        let mut again = Tab::open(&keeper, "shelf");
        assert_eq!([again.value("yields"), again.value("dash")], ["lime 40 %", "1 ml"].map(str::to_owned));
    }
}

#[test]
fn clearing_and_undoing_a_tool_is_tried_again_as_typing_is() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "service/measure");
    tab.type_in("amount", "77 ml");
    for (act, amount) in [(Act::Empty, ""), (Act::Undo, "77 ml")] {
        keeper.fail_every(1, Fault::Throws);
        tab.act(act);
        assert!(tab.notice().starts_with("Not saved"), "{}", tab.notice());
        // OK cannot put it out, nor going elsewhere.
        tab.act(Act::Dismiss).go("service/balance").tell(News::Tick);
        assert!(tab.notice().starts_with("Not saved"), "{}", tab.notice());
        keeper.heal();
        tab.go("service/measure");
        assert_eq!(tab.notice(), "");
        assert_eq!(Tab::open(&keeper, "service/measure").value("amount"), amount);
    }
}

#[test]
fn clearing_over_what_another_tab_typed_brings_that_back_too() {
    let keeper = Faulty::default();
    let mut one = Tab::open(&keeper, "service/measure");
    let mut two = Tab::open(&keeper, "service/measure");
    one.type_in("amount", "77 ml");
    two.act(Act::Empty);
    assert_eq!(two.act(Act::Undo).value("amount"), "77 ml");
    assert_eq!(stored(&keeper, "tool/measure").len(), 1);
}

#[test]
fn a_store_without_room_lets_records_go_and_looks_at_other_tabs_first() {
    let keeper = Faulty::default();
    Tab::open(&keeper, "specs").tap("Try a demo");
    let mut tab = Tab::open(&keeper, "specs/spec?id=demo-1");
    keeper.limit(1);
    tab.act(Act::Empty);
    assert_eq!(tab.notice(), "There is no room to keep what is deleted for Undo.");
    // Another tab has room to write less; what it wrote is not deleted unseen.
    keeper.limit(10_000_000);
    Tab::open(&keeper, "specs/spec?id=demo-1").type_in("garnish", "fig");
    keeper.limit(1);
    tab.tap("Delete without Undo");
    assert!(tab.notice().contains("another tab has just changed this"), "{}", tab.notice());
    assert_eq!(tab.value("garnish"), "fig");
    tab.act(Act::Empty).tap("Delete without Undo");
    assert_eq!(tab.notice(), "Done: deleting Orchard lantern, without Undo.");
    assert_eq!(stored(&keeper, "spec/").len(), 2);
    assert_eq!(Tab::open_later(&keeper, "specs", NOW + 60_000).strip().split(" | ").next(), Some("2 specs"));
}

#[test]
fn a_journal_that_cannot_be_read_is_said_and_kept() {
    for (journal, said) in [
        ("gibberish", "The notes of what can be taken back could not be read."),
        (r#"{"v":9,"rev":1,"at":1,"data":[]}"#, "What can be taken back is noted in the way of a newer Meniscus."),
    ] {
        let keeper = Faulty::default();
        keeper.plant("acts", journal);
        let mut tab = Tab::open(&keeper, "specs");
        assert_eq!(tab.notice(), format!("{said} It is kept aside, untouched, and a new one begins."));
        tab.tap("Try a demo");
        assert_eq!(stored(&keeper, "aside/"), [format!("aside/acts/1={journal}")]);
        assert_eq!(stored(&keeper, "spec/").len(), 3);
        assert!(Tab::open(&keeper, "specs").notice().is_empty());
    }
}

#[test]
fn every_damaged_tool_is_named() {
    let keeper = Faulty::default();
    for key in ["measure", "scale", "fruit", "acid"] {
        keeper.plant(&format!("tool/{key}"), "gibberish");
    }
    keeper.plant("tool/shelf", r#"{"v":9,"rev":1,"at":1,"data":{"now":{"dash":"1 ml"}}}"#);
    let said = Tab::open(&keeper, "shelf").notice();
    let damaged = "What was saved for Measure, Scale, Fruit and 1 more could not be used. It is kept aside, untouched, and the usual values stand in.";
    let newer =
        "What was saved for Settings is of a newer Meniscus. It is shown, and what you type there now is not saved.";
    assert_eq!(said, format!("{damaged} {newer}"));
    assert_eq!(Tab::open(&keeper, "shelf").value("dash"), "1 ml");
}

#[test]
fn a_clock_set_back_is_said_where_a_wait_goes_by_it() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "prep/clear");
    tab.act(Act::ToRun).go("batch/run");
    tab.tap("Start 45 min").tell(News::Tick);
    tab.now -= 600_000;
    tab.tell(News::Tick);
    assert!(tab.notice().starts_with("The clock of this device was set back by 10 min."), "{}", tab.notice());
    // Opened again, it began later than it is.
    let mut again = Tab::open_later(&keeper, "service/measure", NOW - 600_000);
    assert!(again.view().due.expect("due").words.ends_with("(the clock was set back)"));
    again.go("batch/run");
    assert!(again.rows().iter().any(|row| row.contains("the clock was set back since it began")), "{:?}", again.rows());
}
