//! Undo and Redo: of what is on the screen shown, step by step, and of deeds on many records where they were done.

use crate::bar::{Tab, stored};
use crate::faulty::Faulty;
use meniscus::desk::News;
use meniscus::screen::Act;

fn with_demo(keeper: &Faulty) {
    Tab::open(keeper, "specs").tap("Try a demo");
}

/// A backup of so many specs.
fn backup_of(count: usize) -> String {
    let specs: Vec<String> = (0..count)
        .map(|at| format!("{{\"id\":\"s{at}\",\"data\":{{\"name\":\"Weir {at}\",\"made\":1,\"forms\":[{{\"lines\":\"60 ml gin\"}}]}}}}"))
        .collect();
    format!("{{\"kind\":\"meniscus backup\",\"version\":1,\"at\":1,\"specs\":[{}]}}", specs.join(","))
}

fn undo_of(tab: &mut Tab<'_>) -> Option<String> {
    tab.view().undo
}

#[test]
fn an_import_never_hides_behind_a_garnish() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "specs/backup");
    tab.tell(News::File(backup_of(300))).tap("Add 300 to my specs");
    assert_eq!(stored(&keeper, "spec/").len(), 300);
    tab.go("specs/spec?id=s7").type_in("garnish", "b").type_in("garnish", "bay leaf");
    assert_eq!(undo_of(&mut tab).as_deref(), Some("Garnish"));
    assert_eq!(tab.act(Act::Undo).value("garnish"), "");
    assert_eq!(stored(&keeper, "spec/").len(), 300, "the book stays");
    assert_eq!(tab.tap("Redo").value("garnish"), "bay leaf");
    assert_eq!(tab.act(Act::Undo).act(Act::Undo).value("garnish"), "");
    assert_eq!((undo_of(&mut tab), stored(&keeper, "spec/").len()), (None, 300));
    // Also after a reload.
    let mut again = Tab::open(&keeper, "specs/spec?id=s7");
    assert_eq!(undo_of(&mut again), None);
    // It is taken back in Backup, under what it was; what was changed since is named, and stays.
    again.type_in("garnish", "mint").go("specs/backup");
    assert_eq!(again.rows()[0].split('|').next(), Some("import of 300"));
    again.tap_sign("undo import of 300");
    let said = again.view().notice.expect("a question").words;
    assert!(said.contains("Weir 7"), "{said}");
    assert_eq!(stored(&keeper, "spec/").len(), 300, "not before it is said");
    again.tap("Undo the rest");
    assert_eq!(stored(&keeper, "spec/").len(), 1);
    assert_eq!(again.go("specs/spec?id=s7").value("garnish"), "mint");
}

#[test]
fn an_import_is_taken_back_where_it_was_taken() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "specs/backup");
    tab.tell(News::File(backup_of(300))).tap("Add 300 to my specs").tap("Undo");
    assert_eq!(stored(&keeper, "spec/").len(), 0);
    tab.tap("Redo");
    assert_eq!(stored(&keeper, "spec/").len(), 300);
}

#[test]
fn twenty_steps_back_and_forth_in_a_tool_and_in_a_spec() {
    let keeper = Faulty::default();
    with_demo(&keeper);
    for (at, fields) in [("service/measure", ["amount", "at"]), ("specs/spec?id=demo-1", ["garnish", "glass"])] {
        let mut tab = Tab::open(&keeper, at);
        let before = fields.map(|field| tab.value(field));
        for step in 1..=20 {
            let field = fields[step % 2];
            tab.type_in(field, "1").type_in(field, &format!("1{step} g"));
        }
        for step in (1..=20).rev() {
            assert_eq!(tab.value(fields[step % 2]), format!("1{step} g"), "{at}");
            tab.act(Act::Undo);
        }
        assert_eq!(fields.map(|field| tab.value(field)), before, "{at}");
        for _ in 0..20 {
            tab.tap("Redo");
        }
        assert_eq!(fields.map(|field| tab.value(field)), ["120 g", "119 g"].map(str::to_owned), "{at}");
    }
}

#[test]
fn a_deed_and_typing_come_back_in_their_order() {
    let keeper = Faulty::default();
    with_demo(&keeper);
    let mut tab = Tab::open(&keeper, "specs/spec?id=demo-1");
    let (lines, garnish) = (tab.value("lines"), tab.value("garnish"));
    tab.type_in("garnish", "bay")
        .tap("Line by line")
        .open_line("pear juice")
        .tap("Up")
        .tap("As text")
        .type_in("glass", "cup");
    assert_eq!(undo_of(&mut tab).as_deref(), Some("Glass"));
    tab.act(Act::Undo);
    assert_eq!(undo_of(&mut tab).as_deref(), Some("the lines"));
    assert_eq!(tab.act(Act::Undo).value("lines"), lines);
    assert_eq!(tab.act(Act::Undo).value("garnish"), garnish);
    assert_eq!(stored(&keeper, "spec/").len(), 3, "no version beside it");
    for _ in 0..3 {
        tab.tap("Redo");
    }
    assert_eq!((tab.value("garnish"), tab.value("glass")), ("bay".into(), "cup".into()));
    assert_ne!(tab.value("lines"), lines);
}

#[test]
fn one_screen_s_undo_leaves_another_s_work() {
    let keeper = Faulty::default();
    with_demo(&keeper);
    let mut tab = Tab::open(&keeper, "batch/run");
    tab.tap("New run sheet").type_in("name", "Friday");
    tab.go("specs/spec?id=demo-1");
    assert_eq!(undo_of(&mut tab), None);
    tab.act(Act::Undo).go("batch/run");
    assert_eq!(tab.value("name"), "Friday");
    // What a link brings is one step.
    let drink = tab.go("prep/milk-wash").value("drink");
    tab.go("prep/milk-wash?drink=500+ml&ratio=4");
    assert_eq!(tab.value("drink"), "500 ml");
    tab.act(Act::Undo);
    assert_eq!((undo_of(&mut tab), tab.value("drink")), (None, drink));
}

#[test]
fn the_demo_goes_but_for_what_was_changed() {
    let keeper = Faulty::default();
    with_demo(&keeper);
    let mut tab = Tab::open(&keeper, "specs/spec?id=demo-2");
    tab.type_in("garnish", "bay leaf").go("specs/backup").tap("Take the demo away");
    assert_eq!(stored(&keeper, "spec/").len(), 1);
    let notice = tab.view().notice.expect("a word");
    assert!(notice.words.starts_with("You have changed"), "{}", notice.words);
    tab.tap("Undo");
    assert_eq!(stored(&keeper, "spec/").len(), 3);
    assert_eq!(tab.go("specs/spec?id=demo-2").value("garnish"), "bay leaf");
}

#[test]
fn a_spec_left_empty_leaves_nothing() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "specs");
    tab.tap("New spec").follow();
    assert_eq!(stored(&keeper, "spec/").len(), 1);
    tab.go("specs");
    assert_eq!(stored(&keeper, "spec/").len(), 0);
    assert_eq!((tab.strip().starts_with("0 specs"), undo_of(&mut tab)), (true, None), "{}", tab.strip());
    tab.tap("New spec").follow().type_in("name", "W");
    tab.go("specs");
    assert_eq!(stored(&keeper, "spec/").len(), 1);
}

#[test]
fn finishing_with_open_steps_asks() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "prep/milk-wash?drink=500+ml");
    tab.act(Act::ToRun).go("batch/run").tap("Finish");
    let notice = tab.view().notice.expect("a question");
    assert!(notice.words.ends_with("still open on this sheet."), "{}", notice.words);
    assert!(stored(&keeper, "run/")[0].contains("\"parts\"") && !stored(&keeper, "run/")[0].contains("\"finished\""));
    tab.tap("Finish all the same");
    assert!(stored(&keeper, "run/")[0].contains("\"finished\""));
}

#[test]
fn what_another_tab_cleared_comes_back_before_what_was_typed_here() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "service/measure");
    tab.type_in("amount", "60 ml");
    Tab::open(&keeper, "service/measure").act(Act::Empty);
    tab.tell(News::Stored("meniscus/tool/measure".into()));
    assert_eq!(tab.value("amount"), "");
    assert_eq!(tab.act(Act::Undo).value("amount"), "60 ml");
}
