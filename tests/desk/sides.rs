//! Forms of a spec side by side: from its page and back, others beside them.

use crate::bar::Tab;
use crate::faulty::Faulty;
use meniscus::screen::{Act, Block};

/// What stands there.
fn names(tab: &mut Tab<'_>) -> Vec<String> {
    let sides = tab.view().screen.blocks.iter().find_map(|block| match block {
        Block::Sides(sides) => Some(sides.clone()),
        _ => None,
    });
    sides.expect("a table").sides.into_iter().map(|side| side.name).collect()
}

#[test]
fn the_forms_of_a_spec_are_compared_from_its_page_and_back() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "specs");
    tab.act(Act::Demo).go("specs/spec?id=demo-1");
    let compare = tab.tap("More").link("Compare");
    tab.go(&compare);
    assert_eq!(names(&mut tab), ["quick", "stirred", "washed"]);
    assert_eq!(tab.view().screen.name, "Orchard lantern");
    assert_eq!(tab.strip(), " | Stirred is the least sharp");
    assert!(!tab.below().contains("For Orchard lantern"), "its table says of which: {}", tab.below());
    assert_eq!(tab.link("Back"), "#/specs/spec?id=demo-1&at=0");
    // One more beside them; then another spec, from its own page.
    tab.act(Act::Choose("two".into(), "demo-2/0".into()));
    assert_eq!(names(&mut tab).len(), 4);
    tab.act(Act::Undo);
    assert_eq!(names(&mut tab).len(), 3);
    tab.act(Act::Choose("two".into(), "demo-2/0".into()));
    let compare = tab.go("specs/spec?id=demo-2").tap("More").link("Compare");
    tab.go(&compare);
    assert_eq!(names(&mut tab), ["quick", "clear"]);
    assert_eq!(tab.link("Back"), "#/specs/spec?id=demo-2&at=0");
    tab.act(Act::Copy);
    assert!(format!("{:?}", tab.effects.last()).contains("% vol: quick"), "{:?}", tab.effects.last());
    // Emptied, it is of the spec that was looked at last; of one that is gone it says so.
    tab.act(Act::Empty);
    assert_eq!(names(&mut tab), ["quick", "clear"]);
    tab.act(Act::Choose("two".into(), "demo-1/1".into()));
    Tab::open(&keeper, "specs/backup").act(Act::RemoveDemo);
    let mut tab = Tab::open(&keeper, "specs/sides");
    assert_eq!(tab.strip(), " | Keep a spec in the book first");
    assert!(tab.has_button("New spec"));
    // It is found by what it does.
    tab.go("find").type_in("search", "compare");
    assert!(tab.rows().iter().any(|row| row.starts_with("Side by side|")), "{:?}", tab.rows());
}

#[test]
fn where_nothing_is_chosen_it_is_of_the_spec_that_was_opened_last() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "specs");
    tab.act(Act::Demo);
    for (id, name) in [("demo-2", "Hedgerow clerk"), ("demo-3", "Teapot magistrate"), ("demo-1", "Orchard lantern")] {
        tab.go(&format!("specs/spec?id={id}")).go("specs/sides");
        assert_eq!(tab.view().screen.name, name);
        assert!(tab.view().screen.head.iter().all(|button| button.label != "Back"), "nobody came from there");
    }
}

#[test]
fn a_spec_of_one_form_offers_no_comparison() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "specs");
    tab.act(Act::NewSpec).follow().type_in("lines", "60 ml gin").tap("Done").tap("More");
    assert!(tab.view().screen.links().iter().all(|link| link.label != "Compare"));
}

#[test]
fn of_a_large_book_what_is_looked_for_stands_beside() {
    let keeper = Faulty::default();
    for number in 0..70 {
        let mut tab = Tab::open_later(&keeper, "specs", crate::bar::NOW + number * 1000);
        tab.act(Act::NewSpec).follow().type_in("name", &format!("Drink {number:02}")).type_in("lines", "60 ml gin");
    }
    let mut tab = Tab::open(&keeper, "specs/sides");
    assert_eq!(
        (names(&mut tab), tab.strip().as_str()),
        (vec!["Form 1".into()], " | One form only: choose one to put beside it")
    );
    tab.tap("Find another spec").follow().type_in("search", "drink 07");
    let row = tab.view().screen.blocks.iter().find_map(|block| match block {
        Block::Table(_, rows) => rows.first().map(|row| row.href.clone()),
        _ => None,
    });
    tab.go(&row.expect("it is found"));
    assert_eq!(names(&mut tab), ["Drink 69", "Drink 07"]);
    assert_eq!(tab.strip(), " | Alike in the glass");
}
