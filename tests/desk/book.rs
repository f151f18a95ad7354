//! The book: specs and ingredients written, found, changed, copied, deleted, brought back, taken in and given out.

use crate::faulty::Faulty;
use meniscus::desk::News;
use meniscus::screen::{Act, Block};

use crate::bar::{NOW, Tab, stored};

fn with_demo(keeper: &Faulty) {
    Tab::open(keeper, "specs").tap("Try a demo");
}

#[test]
fn a_spec_is_found_changed_deleted_and_brought_back() {
    let keeper = Faulty::default();
    with_demo(&keeper);
    let mut tab = Tab::open(&keeper, "specs");
    assert_eq!(tab.strip(), "3 specs | Kept on this device");
    assert_eq!(tab.type_in("search", "verjus").rows().len(), 1);
    tab.act(Act::Empty);
    assert_eq!(tab.rows().len(), 3);
    tab.go("specs/spec?id=demo-2").type_in("garnish", "bay leaf");
    assert_eq!(tab.value("garnish"), "bay leaf");
    tab.act(Act::Empty);
    assert_eq!(tab.strip().split(" | ").nth(1), Some("Choose a spec in the book, or start one."));
    let mut again = Tab::open(&keeper, "specs");
    assert_eq!(again.strip(), "2 specs | Kept on this device");
    again.act(Act::Undo);
    assert_eq!(again.strip(), "3 specs | Kept on this device", "also after a reload");
    assert_eq!(again.go("specs/spec?id=demo-2").value("garnish"), "bay leaf");
}

#[test]
fn a_new_spec_is_written_and_lines_come_along_from_scale() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "service/scale");
    tab.type_in("spec", "60 ml gin").tap("Keep it in Specs").follow();
    assert_eq!(tab.value("lines"), "60 ml gin");
    tab.type_in("name", "Weir").type_in("way", "quick").tap("Line by line").tap("Add a line");
    tab.type_in("line_amount", "30 ml").type_in("line_of", "lime").tap("Lime juice");
    assert_eq!(tab.value("lines"), "60 ml gin\n30 ml Lime juice");
    tab.tap("Add a form");
    assert_eq!((tab.value("at"), tab.value("way")), ("1".into(), String::new()));
    tab.tap("Done").tap("More").tap("Duplicate");
    assert_eq!(tab.value("name"), "Weir (copy)");
    assert_eq!(stored(&keeper, "spec/").len(), 2);
    tab.act(Act::Undo);
    assert_eq!(stored(&keeper, "spec/").len(), 1);
}

#[test]
fn lines_move_and_a_text_pasted_over_comes_back() {
    let keeper = Faulty::default();
    with_demo(&keeper);
    let mut tab = Tab::open(&keeper, "specs/spec?id=demo-1");
    let lines = tab.value("lines");
    tab.tap("Line by line").open_line("pear juice").tap("Up").tap("As text");
    assert!(tab.value("lines").starts_with("30 ml pear juice\n45 ml pear brandy"));
    assert_eq!(tab.act(Act::Undo).value("lines"), lines);
    tab.type_in("steps", "");
    assert_eq!(tab.value("steps"), "");
    assert!(tab.act(Act::Undo).value("steps").starts_with("Build over"));
}

/// A cordial is kept as an ingredient with all that it holds; kept again, its figures change, and Undo brings the old back.
#[test]
fn a_cordial_kept_is_an_ingredient_with_all_that_it_holds() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "prep/cordial");
    tab.tap("Keep pear cordial as an ingredient").follow();
    assert_eq!(tab.value("name"), "pear cordial");
    let first = tab.value("holds");
    assert!(first.starts_with("sugar ") && first.contains("citric") && first.contains("salts"), "{first}");
    tab.go("prep/cordial").type_in("house_sugar", "60 g").tap("Put it in place of pear cordial").follow();
    assert_ne!(tab.value("holds"), first);
    assert_eq!(stored(&keeper, "ingredient/").len(), 1);
    assert_eq!(tab.act(Act::Undo).value("holds"), first);
}

#[test]
fn a_bar_s_own_figures_count_at_once() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "shelf/ingredients");
    tab.tap("New ingredient").type_in("name", "hedge gin").type_in("like", "london-dry-gin");
    tab.type_in("strength", "50");
    assert_eq!((tab.strip().as_str(), tab.view().screen.name.as_str()), ("50 % vol | ", "hedge gin"));
    tab.go("service/balance").type_in("spec", "60 ml hedge gin");
    assert!(tab.strip().starts_with("50.0 % vol"), "{}", tab.strip());
    tab.go("shelf/ingredients").act(Act::Empty);
    assert!(tab.go("service/balance").strip().starts_with("40.0 % vol"), "gin again: {}", tab.strip());
}

#[test]
fn a_backup_goes_out_and_comes_back_by_choice() {
    let keeper = Faulty::default();
    with_demo(&keeper);
    let mut tab = Tab::open(&keeper, "specs/backup");
    assert!(tab.strip().ends_with("Never backed up. Save a backup now and then"));
    let file = tab.tap("Save a backup").sent("meniscus-give").pop().expect("a file");
    assert!(tab.tell(News::Given("meniscus-backup.json".into())).strip().ends_with("Backed up today"));
    tab.tap("Take the demo away");
    assert_eq!(stored(&keeper, "spec/").len(), 0);
    tab.tell(News::File(file.clone()));
    assert_eq!(tab.strip(), "5 new | Nothing is taken until you say");
    assert_eq!(stored(&keeper, "spec/").len(), 0, "not before it is said");
    tab.tap("Add 5 to my book");
    assert_eq!((stored(&keeper, "spec/").len(), stored(&keeper, "ingredient/").len()), (3, 2));
    // What differs is taken beside, or in its place.
    tab.go("specs/spec?id=demo-1").type_in("name", "Lamp");
    tab.go("specs/backup").tell(News::File(file.clone())).tap("Take all, keeping mine too");
    assert_eq!(stored(&keeper, "spec/").len(), 4);
    tab.tell(News::File(file)).tap("Take all, replacing mine");
    assert_eq!(tab.go("specs/spec?id=demo-1").value("name"), "Orchard lantern");
    // Nothing in it, cut short, or put away.
    tab.go("specs/backup").tell(News::File("{".into()));
    assert!(tab.strip().starts_with("? | It can't be read"), "{}", tab.strip());
    tab.tell(News::File("!".into()));
    assert!(tab.strip().contains("cut short"), "{}", tab.strip());
    tab.act(Act::PutAway);
    assert!(tab.strip().starts_with("4 specs"));
}

#[test]
fn a_spec_travels_as_a_link_a_recipe_a_text_and_a_table() {
    let keeper = Faulty::default();
    with_demo(&keeper);
    let mut tab = Tab::open(&keeper, "specs/spec?id=demo-1");
    let packed = tab.tap("More").tap("Share as a link").sent("meniscus-pack").pop().expect("a text to pack");
    assert!(packed.contains("Orchard lantern") && !packed.contains("\"id\":\"demo-1\""), "somebody's own: {packed}");
    tab.tell(News::Packed("abc".into())).tap("Copy the link");
    let link = "https://bar.example/#/specs/backup?packed=abc";
    assert_eq!(tab.effects.last(), Some(&meniscus::desk::Effect::Copy(link.into())));
    assert!(tab.tap("Save as a recipe file").sent("meniscus-give")[0].contains("schema.org"));
    assert!(tab.tap("Save as text").sent("meniscus-give")[1].starts_with("Orchard lantern\n\nquick\n"));
    assert!(tab.go("service/scale").tap("Save as CSV").sent("meniscus-give")[2].starts_with("\"ingredient\","));
    // The link opens as what it is: something to look at first.
    let elsewhere = Faulty::default();
    let mut other = Tab::open(&elsewhere, "#/specs/backup?packed=abc");
    assert_eq!(other.sent("meniscus-unpack"), ["abc"]);
    other.tell(News::File(packed));
    assert_eq!(
        (other.view().screen.name.as_str(), other.strip().as_str()),
        ("Orchard lantern", "140 ml in the glass | about 13 % vol, as swizzled 10 s")
    );
    let words = |tab: &mut Tab<'_>| match tab.view().screen.blocks.get(1) {
        Some(Block::Caution(words)) => words.clone(),
        other => panic!("{other:?}"),
    };
    assert_eq!(words(&mut other), "Not yours yet. It came inside the link; nothing was sent anywhere.");
    other.act(Act::Choose("at".into(), "1".into()));
    assert_eq!(other.strip(), "117 ml in the glass | about 19 % vol, as stirred 30 s", "each of its forms");
    assert_eq!(stored(&elsewhere, "spec/").len(), 0, "not before it is said");
    other.tap("Keep it").follow();
    assert_eq!((stored(&elsewhere, "spec/").len(), other.value("name")), (1, "Orchard lantern".into()));
    // The same link again.
    let again = tab.sent("meniscus-pack").pop().expect("a text to pack");
    other.go("#/specs/backup?packed=abc").tell(News::File(again));
    assert_eq!(words(&mut other), "You have this one already.");
    other.tap("Close");
    assert!(other.strip().starts_with("1 spec | "), "{}", other.strip());
}

#[test]
fn a_label_holds_the_form_alone() {
    let keeper = Faulty::default();
    with_demo(&keeper);
    let mut tab = Tab::open(&keeper, "specs/spec?id=demo-1");
    tab.act(Act::Choose("at".into(), "1".into()));
    let href = tab.link("Label it");
    tab.go(&href);
    assert_eq!(tab.value("name"), "Orchard lantern, stirred");
    let packed = tab.sent("meniscus-pack").pop().expect("a text to pack");
    assert!(packed.contains("dry vermouth") && !packed.contains("whole milk") && !packed.contains("coins"), "{packed}");
    tab.tell(News::Packed("x".repeat(300)));
    let code = |tab: &mut Tab<'_>| {
        tab.view()
            .screen
            .blocks
            .iter()
            .any(|block| matches!(block, meniscus::screen::Block::Label(Some(label)) if label.code.is_some()))
    };
    assert!(code(&mut tab));
    tab.act(Act::Print).act(Act::Picture);
    assert_eq!((tab.sent("meniscus-print").len(), tab.sent("meniscus-picture").len()), (1, 1));
}

#[test]
fn a_backup_grows_old() {
    let keeper = Faulty::default();
    Tab::open(&keeper, "specs/backup").tell(News::Given("meniscus-backup.json".into()));
    for (days, words) in [(0, "Nothing to back up yet"), (40, "Nothing to back up yet")] {
        let later = NOW + days * 86_400_000;
        assert!(Tab::open_later(&keeper, "specs/backup", later).strip().ends_with(words), "{days}");
    }
    with_demo(&keeper);
    for (days, words) in [(1, "Backed up yesterday"), (40, "Last backup 40 days ago. Save one now")] {
        let later = NOW + days * 86_400_000;
        assert!(Tab::open_later(&keeper, "specs/backup", later).strip().ends_with(words), "{days}");
    }
}

/// The strongest first, as they are served; what nothing is known of last. A change, a new one and one less find their places.
#[test]
fn specs_come_in_the_order_of_their_strength() {
    let keeper = Faulty::default();
    with_demo(&keeper);
    let mut tab = Tab::open(&keeper, "specs");
    for (name, lines) in [("Soft", "100 ml soda water"), ("Words", "Lemon twist"), ("Bare", "60 ml gin")] {
        tab.tap("New").follow().type_in("name", name).type_in("lines", lines).go("specs");
    }
    tab.act(Act::Choose("sort".into(), "strongest".into()));
    let names = |tab: &mut Tab<'_>| -> Vec<String> {
        tab.rows().iter().map(|row| row.split('|').next().unwrap_or_default().to_owned()).collect()
    };
    // 40 %, then by the percents that their rows say; soda before what has no strength.
    let percent = |row: &String| row.split(" % ").next().and_then(|text| text.rsplit(' ').next()?.parse::<f64>().ok());
    let listed = names(&mut tab);
    assert_eq!((listed[0].as_str(), listed[4].as_str(), listed[5].as_str()), ("Bare", "Soft", "Words"));
    let percents: Vec<f64> = tab.rows().iter().filter_map(percent).collect();
    assert!(percents.is_sorted_by(|one, next| one >= next), "{percents:?} of {:?}", tab.rows());
    // Once changed it is read again, and the others stay.
    let id = stored(&keeper, "spec/").into_iter().find(|text| text.contains("\"Soft\"")).expect("it");
    let id = id.split('=').next().unwrap_or_default().trim_start_matches("spec/").to_owned();
    tab.go(&format!("specs/spec?id={id}")).type_in("lines", "60 ml gin 57 %").go("specs");
    assert_eq!(names(&mut tab)[..2], ["Soft", "Bare"]);
    tab.go(&format!("specs/spec?id={id}")).act(Act::Empty).go("specs");
    assert_eq!((names(&mut tab)[0].as_str(), tab.rows().len()), ("Bare", 5));
    // Where an ingredient is the bar's own, the order is by its figures.
    tab.go("shelf/ingredients").tap("New ingredient").type_in("name", "soda water").type_in("like", "spirit-40");
    tab.type_in("strength", "90")
        .go("specs")
        .tap("New")
        .follow()
        .type_in("name", "Odd")
        .type_in("lines", "60 ml soda water");
    tab.go("specs");
    assert_eq!(names(&mut tab)[0], "Odd");
}
