//! A form that says how many serves its lines make, and how much comes out of them.

use meniscus::screen::{Act, Block};

use crate::bar::Tab;
use crate::faulty::Faulty;

/// Gin of 40 % vol with as much water. By OIML R 22 it has 948.05 g/l and is 20.0 % vol and 973.6 g/l with 300 ml of water
/// at 998.2 g/l (figures from memory): 583.9 g, 599.7 ml.
fn batch<'a>(keeper: &'a Faulty, makes: &str, gives: &str) -> Tab<'a> {
    let mut tab = Tab::open(keeper, "specs");
    tab.act(Act::NewSpec).follow().type_in("name", "Punch").type_in("lines", "300 ml gin 40 %\n300 ml water");
    tab.type_in("makes", makes)
        .type_in("gives", gives)
        .type_in("form_notes", "Strain twice.")
        .type_in("notes", "Cold.");
    tab
}

fn said(tab: &mut Tab<'_>) -> Vec<String> {
    let blocks = tab.view().screen.blocks.clone();
    blocks.into_iter().filter_map(|block| if let Block::Remark(words) = block { Some(words) } else { None }).collect()
}

#[test]
fn a_batch_says_what_one_serve_of_it_is() {
    let keeper = Faulty::default();
    // Without a glass, one drink.
    let mut tab = batch(&keeper, "", "");
    assert_eq!(tab.tap("Done").strip(), "600 ml before ice | 20.0 % vol");
    tab.type_in("makes", "6").tap("Done");
    assert_eq!(tab.strip(), "600 ml in all | 20.0 % vol, 100 ml each");
    assert_eq!(said(&mut tab), ["makes 6 serves", "Cold.", "Strain twice."]);
    // What comes out goes before what goes in.
    tab.type_in("gives", "540 ml").tap("Done");
    assert_eq!(tab.strip(), "540 ml in all | 20.0 % vol, 90 ml each");
    assert_eq!(said(&mut tab)[0], "makes 6 serves · gives 540 ml");
    assert!(tab.view().screen.blocks.iter().any(|block| matches!(block, Block::Serves("Times", 1))));
    // One that says it makes one is one, whatever there is of it.
    tab.type_in("lines", "3 l water").type_in("makes", "1").type_in("gives", "").tap("Done");
    assert!(tab.strip().contains("before ice"), "{}", tab.strip());
    assert_eq!(said(&mut tab)[0], "makes 1 serve");
}

#[test]
fn how_many_it_makes_goes_along() {
    let keeper = Faulty::default();
    let mut tab = batch(&keeper, "6", "");
    tab.tap("Done");
    for (label, field) in [("Scale it", "makes"), ("Balance", "makes"), ("Cost", "makes")] {
        let link = tab.tap("More").link(label);
        assert!(link.contains("&makes=6"), "{label}: {link}");
        let mut tool = Tab::open(&keeper, &link);
        if tool.view().screen.field(field).is_none() {
            tool.act(Act::Choose("by".into(), "serves".into()));
        }
        assert_eq!(tool.value(field), "6", "{label}");
        tab.tap("Done");
    }
    let link = tab.link("Batch it");
    assert!(link.contains("&makes=6"), "{link}");
    let link = tab.tap("More").link("Into serves");
    assert!(link.contains("made=") && link.contains("&serve=99.95"), "{link}");
    let mut serves = Tab::open(&keeper, &link);
    assert!(serves.strip().starts_with("6 serves"), "{}", serves.strip());
    let link = tab.link("Does it fit?");
    assert!(link.contains("drink=100"), "one serve: {link}");
    let link = tab.link("Label it");
    assert!(link.contains("pour=100+ml") || link.contains("pour=100%20ml"), "one serve: {link}");
    // One that says nothing makes one.
    tab.type_in("makes", "").tap("Done").tap("More");
    assert!(tab.link("Balance").contains("&makes=1"), "{}", tab.link("Balance"));
}

#[test]
fn what_cannot_be_read_is_said_at_its_field() {
    let keeper = Faulty::default();
    let mut tab = batch(&keeper, "a dozen", "1.1 stone");
    let mut problem = |field: &str| {
        let screen = tab.view().screen;
        screen.field(field).and_then(|field| field.problem.as_ref()).map(|problem| problem.words.clone())
    };
    assert_eq!(problem("makes"), Some("Type a number above zero, like 18 or 2½.".into()));
    assert!(problem("gives").is_some());
    // It counts as nothing said, and is not read out as if it were something.
    assert_eq!(tab.tap("Done").strip(), "600 ml before ice | 20.0 % vol");
    assert!(said(&mut tab).iter().all(|words| !words.contains("dozen") && !words.contains("stone")));
    assert!(tab.tap("More").link("Balance").contains("&makes=1"));
}
