//! What a tool works out, kept: as a form of the spec that it came from, in step with it or not; as an ingredient.

use crate::bar::Tab;
use crate::faulty::Faulty;
use meniscus::desk::News;
use meniscus::screen::{Act, Block, Input};

/// All that the page says.
fn text(tab: &mut Tab<'_>) -> String {
    format!("{:?}", tab.view().screen.blocks)
}

/// The forms of the spec that is open.
fn forms(tab: &mut Tab<'_>) -> Vec<String> {
    let screen = tab.view().screen;
    let field = screen.blocks.iter().find_map(|block| match block {
        Block::Field(field) if field.name == "at" => Some(field),
        _ => None,
    });
    match field.map(|field| &field.input) {
        Some(Input::Chips { options, .. }) => options.iter().map(|option| option.label.to_string()).collect(),
        other => panic!("{other:?}"),
    }
}

fn choose(tab: &mut Tab<'_>, name: &str, key: &str) {
    tab.act(Act::Choose(name.into(), key.into()));
}

const LINES: &str = "60 ml gin\\n25 ml lime juice\\n20 ml simple syrup\\nLime wheel";

fn book(keeper: &Faulty) -> Tab<'_> {
    let mut tab = Tab::open(keeper, "specs/backup");
    tab.tell(News::File(format!(
        "{{\"kind\":\"meniscus backup\",\"version\":1,\"at\":1,\"specs\":[{{\"id\":\"s\",\"data\":{{\"name\":\"Weir lamp\",\"made\":1,\"forms\":[\
         {{\"name\":\"quick\",\"lines\":\"{LINES}\",\"method\":\"shaken\",\"glass\":\"coupe\",\"holds\":\"150 ml\",\"steps\":\"Shake 12 s\"}}]}}}}]}}"
    )))
    .tap("Keep it");
    tab
}

/// A cordial in place of its juice and syrup; then the first form is changed, and the second worked out anew.
#[test]
fn a_form_comes_from_a_form_and_says_when_it_is_out_of_step() {
    let keeper = Faulty::default();
    let mut tab = book(&keeper);
    tab.go("prep/cordial");
    for (field, key) in [("ask", "swap"), ("from_spec", "s/0"), ("juice_of", "lime-juice")] {
        choose(&mut tab, field, key);
    }
    tab.tap("As a form of Weir lamp").follow();
    let shown = text(&mut tab);
    assert!(shown.contains("lime cordial"), "{shown}");
    assert_eq!((tab.value("at").as_str(), forms(&mut tab)), ("1", vec!["quick".to_owned(), "cordial".to_owned()]));
    assert!(!shown.contains("out of step") && !shown.contains("have changed"), "{shown}");
    // Its lines are called as on the page that is read; a line that is opened holds all of it.
    tab.tap("Change").open_line("lime cordial");
    assert!(tab.value("line_of").starts_with("lime cordial (sugar "), "{}", tab.value("line_of"));
    // The rest is as the first has it.
    tab.tap("As text");
    assert_eq!((tab.value("glass").as_str(), tab.value("method").as_str()), ("coupe", "shaken"));
    let before = tab.value("lines");
    choose(&mut tab, "at", "0");
    tab.type_in("lines", "60 ml gin\n30 ml lime juice\n20 ml simple syrup\nLime wheel").tap("Done");
    let said = text(&mut tab);
    assert!(said.contains("Made from this form before it changed, so out of step:"), "{said}");
    choose(&mut tab, "at", "1");
    let said = text(&mut tab);
    assert!(said.contains("Made from “quick”, whose lines have changed since."), "{said}");
    tab.tap("Work it out anew");
    let said = text(&mut tab);
    assert!(!said.contains("have changed since"), "{said}");
    tab.tap("Change");
    let after = tab.value("lines");
    assert_ne!(before, after);
    // Whatever the first is called, and the one that was made from it.
    tab.type_in("way", "long").tap("Done");
    choose(&mut tab, "at", "0");
    tab.tap("Change").type_in("way", "short").tap("Done");
    let said = text(&mut tab);
    assert!(!said.contains("is gone") && !said.contains("out of step"), "{said}");
    tab.act(Act::Undo);
    choose(&mut tab, "at", "1");
    tab.act(Act::Undo).act(Act::Undo);
    let said = text(&mut tab);
    assert!(said.contains("have changed since"), "{said}");
    tab.tap("Leave it as it is");
    let said = text(&mut tab);
    assert!(!said.contains("have changed since"), "{said}");
}

/// Every tool that has one makes a form, and it stays when the tab is gone.
#[test]
fn every_way_to_a_form() {
    for (address, name, holds) in [
        ("service/scale", "for 18", "1\u{202f}080 ml gin"),
        ("service/aim", "aimed", "simple syrup"),
        ("batch/bottle", "bottled", "water"),
        ("prep/milk-wash", "milk-washed", "whole milk"),
        ("prep/clear?juice=1%20l&fruit=lime&from_spec=s%2F0", "clarified", "25 ml clear lime juice"),
    ] {
        let keeper = Faulty::default();
        let mut tab = book(&keeper);
        tab.go(address);
        if !address.contains('?') {
            choose(&mut tab, "from_spec", "s/0");
        }
        tab.tap("As a form of Weir lamp").follow();
        let mut again = Tab::open(&keeper, "specs/spec?id=s&at=1");
        assert_eq!(forms(&mut again), ["quick", name], "{address}");
        again.tap("Change").tap("As text");
        assert!(again.value("lines").contains(holds), "{address}: {}", again.value("lines"));
    }
}

#[test]
fn what_was_made_is_kept_as_a_prep() {
    let keeper = Faulty::default();
    let mut tab = book(&keeper);
    tab.go("prep/syrup").tap("Keep house syrup as an ingredient").follow();
    assert_eq!(tab.value("name"), "house syrup");
    assert!(tab.value("parts").contains("g sugar"), "{}", tab.value("parts"));
    tab.tap("New ingredient");
    tab.type_in("name", "spice syrup").type_in("parts", "100 g house syrup\n100 g water");
    assert!(tab.view().screen.strip.figures[0].to_string().contains("g/l sugar"), "{:?}", tab.view().screen.strip);
    // The circle is closed from the other side, and refused with its way.
    let at = house(&mut tab);
    tab.go(&at).type_in("parts", "100 g spice syrup\n100 g sugar");
    let said = text(&mut tab);
    assert!(said.contains("Made of itself: house syrup → spice syrup → house syrup."), "{said}");
}

/// A prep that others are made of is not deleted without a word, and comes back.
#[test]
fn what_goes_without_a_prep_is_said() {
    let keeper = Faulty::default();
    let mut tab = book(&keeper);
    tab.go("prep/syrup").tap("Keep house syrup as an ingredient").follow();
    tab.tap("New ingredient").type_in("name", "spice syrup").type_in("parts", "100 g house syrup\n100 g milk");
    let at = house(&mut tab);
    tab.go(&at).act(Act::Empty);
    let said = tab.notice();
    assert!(said.contains("It went into 1 prep: what is in them, their cost and their allergens"), "{said}");
    tab.tap("Undo");
    assert!(text(&mut tab).contains("house syrup"));
}

/// Another of the same name is put in its place, or beside it: nothing is replaced without a word.
#[test]
fn a_prep_of_a_name_that_is_there_is_asked_about() {
    let keeper = Faulty::default();
    let mut tab = book(&keeper);
    tab.go("prep/syrup").tap("Keep house syrup as an ingredient");
    tab.go("prep/syrup");
    assert!(!tab.labels().iter().any(|label| label.contains("house syrup")), "it is there: {:?}", tab.labels());
    tab.type_in("sweetness", "1:1");
    assert!(tab.has_button("Put it in place of house syrup"), "{:?}", tab.labels());
    tab.tap("Keep it as house syrup 2").follow();
    assert_eq!(tab.value("name"), "house syrup 2");
}

/// What a run measured becomes the prep's own, beside all that it holds.
#[test]
fn what_a_run_measured_is_kept_with_its_prep() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "prep/cordial");
    tab.tap("To the run sheet");
    tab.go("batch/run");
    let has_it = |tab: &mut Tab<'_>| text(tab).contains("Keep pear cordial as an ingredient, as it was measured");
    assert!(!has_it(&mut tab), "nothing was measured");
    tab.act(Act::OpenStep("0/bottle".into())).type_in("brix", "38").type_in("got", "1.2 l");
    assert!(has_it(&mut tab), "{}", text(&mut tab));
    tab.tap_sign("Keep pear cordial as an ingredient, as it was measured").follow();
    let kept = ["name", "brix", "gives"].map(|field| tab.value(field));
    assert_eq!(kept, ["pear cordial", "38", "1200 ml"]);
    assert!(tab.strip().contains("38.0 °Bx"), "{}", tab.strip());
}

/// Where the house syrup is.
fn house(tab: &mut Tab<'_>) -> String {
    let screen = tab.view().screen;
    let rows = screen.blocks.iter().find_map(|block| match block {
        Block::Table(_, rows) if rows.len() > 1 => Some(rows.clone()),
        _ => None,
    });
    let row = rows.into_iter().flatten().find(|row| row.name == "house syrup");
    row.expect("a row").href
}

/// Undo of a form leads to the one that it came from, not to the last of the spec; Redo to the form.
#[test]
fn undo_of_a_form_leads_back_to_the_one_it_came_from() {
    let keeper = Faulty::default();
    let mut tab = book(&keeper);
    tab.go("specs/spec?id=s").tap("Change").tap("As text").tap("Add a form");
    tab.type_in("way", "long").type_in("lines", "60 ml gin\n90 ml soda water");
    choose(&mut tab, "at", "0");
    tab.go("service/scale?from_spec=s%2F0").tap("As a form of Weir lamp").follow();
    assert_eq!((tab.value("at").as_str(), forms(&mut tab).len()), ("2", 3));
    tab.act(Act::Undo);
    assert_eq!((tab.value("at").as_str(), forms(&mut tab)), ("0", vec!["quick".to_owned(), "long".to_owned()]));
    tab.tap("Redo");
    assert_eq!((tab.value("at").as_str(), forms(&mut tab).len()), ("2", 3));
    // One more of a form, like it: back at that.
    choose(&mut tab, "at", "1");
    tab.tap("Change").tap("Add a form");
    assert_eq!(tab.value("at"), "3");
    tab.act(Act::Undo);
    assert_eq!((tab.value("at").as_str(), forms(&mut tab).len()), ("1", 3));
}

/// Until days are typed those of the rule are said, with whose it is; where more are typed, that the local code goes first.
#[test]
fn a_prep_says_how_long_it_keeps() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "prep/syrup");
    tab.tap("Keep house syrup as an ingredient").follow();
    let rule = "7 days (FDA Food Code 3-501.17, from memory)";
    let proposal = format!("Keeps {rule}, cold, the day it is made counted, until you type your own.");
    assert!(text(&mut tab).contains(&proposal), "{}", text(&mut tab));
    tab.type_in("keeps", "7");
    assert!(!text(&mut tab).contains(rule), "{}", text(&mut tab));
    tab.type_in("keeps", "30");
    let caution = format!("Longer than {rule}: your local food code goes first.");
    assert!(text(&mut tab).contains(&caution), "{}", text(&mut tab));
    // Fresh juice, milk, and what is strong.
    tab.tap("New ingredient").type_in("name", "sour mix").type_in("like", "water").type_in("gives", "");
    for (parts, said) in [
        ("100 g lime juice\n100 g water", "Keeps 1 day (fresh juice, rule of thumb)"),
        ("100 g lime juice\n100 g milk", "Keeps 7 days (FDA"),
    ] {
        tab.type_in("parts", parts);
        assert!(text(&mut tab).contains(said), "{parts}: {}", text(&mut tab));
    }
    tab.type_in("parts", "100 ml gin\n50 ml water");
    assert!(!text(&mut tab).contains("Keeps "), "{}", text(&mut tab));
}

/// A batch is kept with its water, its parts and what guests must be told of, and goes into other drinks.
#[test]
fn a_batch_is_kept_as_a_prep() {
    let keeper = Faulty::default();
    let mut tab = book(&keeper);
    tab.go("batch/bottle?spec=60%20ml%20gin%0A30%20ml%20cream%0A20%20ml%20simple%20syrup%0A1%20egg%20white");
    choose(&mut tab, "water", "percent");
    let strength = |tab: &mut Tab<'_>| {
        let cells = tab.view().screen.blocks.clone().into_iter().filter_map(|block| match block {
            Block::Cells(_, cells) => Some(cells),
            _ => None,
        });
        let cell = cells.flatten().find(|cell| cell.label == "strength").expect("a strength");
        cell.figure.to_string()
    };
    let was = strength(&mut tab);
    tab.tap("Keep house batch as an ingredient").follow();
    assert_eq!(tab.value("name"), "house batch");
    let parts = tab.value("parts");
    assert!(parts.contains(" ml water") && parts.contains("egg white"), "{parts}");
    assert!(!tab.value("gives").is_empty());
    let said = text(&mut tab);
    assert!(said.contains("Worked out of its parts.") && said.contains("Keeps 7 days"), "{said}");
    assert!(said.contains("milk") && said.contains("egg"), "{said}");
    tab.go("service/balance?spec=100%20ml%20house%20batch");
    assert_eq!(strength(&mut tab), was);
    // What is washed with milk is less than what goes in.
    tab.go("batch/bottle?spec=60%20ml%20gin%0A30%20ml%20lemon%20juice%0A30%20ml%20whole%20milk");
    tab.tap("Keep it as house batch 2").follow();
    assert!(
        tab.value("parts").contains("whole milk") && tab.value("holds").contains("% vol"),
        "{}",
        tab.value("holds")
    );
}

/// What cannot be worked out anew says why in the words of its tool, and leads to it, filled in.
#[test]
fn what_cannot_be_worked_out_anew_leads_to_its_tool() {
    let keeper = Faulty::default();
    let mut tab = book(&keeper);
    tab.go("prep/cordial");
    for (field, key) in [("ask", "swap"), ("from_spec", "s/0"), ("juice_of", "lime-juice")] {
        choose(&mut tab, field, key);
    }
    tab.tap("As a form of Weir lamp");
    tab.act(Act::Empty).type_in("serves", "12");
    let left = tab.value("spec");
    tab.go("specs/spec?id=s").tap("Change").tap("As text").type_in("lines", "60 ml gin");
    choose(&mut tab, "at", "1");
    tab.tap("Done").tap("Work it out anew");
    let why = "Nothing here for a cordial to stand for: add juice or syrup, like 30 ml pear juice.";
    assert_eq!(tab.notice(), format!("It can't be worked out anew. {why}"));
    tab.tap("Open Cordial").follow();
    assert_eq!(["spec", "juice_of", "from_spec"].map(|name| tab.value(name)), ["60 ml gin", "lime-juice", "s/0"]);
    assert!(tab.strip().contains(why), "{}", tab.strip());
    assert!(!tab.has_button("Open Cordial"), "one is there");
    // What stood in the tool comes back.
    tab.act(Act::Undo);
    assert_eq!([tab.value("serves"), tab.value("spec")], ["12".to_owned(), left]);
}

/// Two of one name are each shown by their own figures, in the list and on their pages.
#[test]
fn two_ingredients_of_one_name_are_each_themselves() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "shelf/ingredients");
    for (like, figures) in [("strength", "30"), ("strength", "25")] {
        tab.tap("New ingredient").type_in("name", "house bitter").type_in("like", "liqueur").type_in(like, figures);
    }
    for parts in ["100 ml gin\n100 ml water", "100 ml gin\n300 ml water"] {
        tab.tap("New ingredient").type_in("name", "let down").type_in("parts", parts);
    }
    let rows: Vec<(String, String, String)> = tab
        .view()
        .screen
        .blocks
        .iter()
        .filter_map(|block| match block {
            Block::Table("Your ingredients", rows) => Some(rows.clone()),
            _ => None,
        })
        .flatten()
        .map(|row| (row.name, row.detail, row.href))
        .collect();
    assert_eq!(rows.len(), 4);
    let mut strengths: Vec<&str> = rows.iter().filter_map(|row| row.1.split(" % vol").next()).collect();
    strengths.sort_unstable();
    assert_eq!(strengths, ["20", "25", "30", "9.99"]);
    for (_, detail, href) in rows {
        let strength = detail.split(',').next().expect("a strength").to_owned();
        assert!(tab.go(&href).strip().starts_with(&strength), "{strength}: {}", tab.strip());
    }
}

/// A label of a drink with fresh juice counts the days of juice: from its spec, chosen in the list, from its batch and its
/// run sheet. What is typed goes first; milk is kept cold.
#[test]
fn a_label_takes_its_days_from_what_is_in_it() {
    let keeper = Faulty::default();
    let mut tab = book(&keeper);
    tab.go("batch/label");
    choose(&mut tab, "from_spec", "s/0");
    let days = |tab: &mut Tab<'_>| tab.view().screen.field("days_fresh").map(|field| field.text.clone());
    assert_eq!(days(&mut tab).as_deref(), Some("1"));
    assert!(text(&mut tab).contains("Fresh juice: 1 day, the day it is pressed (rule of thumb)."));
    tab.go("batch/bottle");
    choose(&mut tab, "from_spec", "s/0");
    for from in ["specs/spec?id=s", "batch/bottle"] {
        tab.go("batch/label?name=Saline");
        assert_eq!(days(&mut tab), None);
        tab.go(from).tap("Label it").follow();
        assert_eq!(days(&mut tab).as_deref(), Some("1"), "{from}");
        tab.go("batch/label?name=Saline").go("batch/run").act(Act::AllRuns).go(from).act(Act::ToRun);
        tab.go("batch/run").tap("Label it").follow();
        assert_eq!(days(&mut tab).as_deref(), Some("1"), "{from}, by its run sheet");
    }
    tab.type_in("days_fresh", "2").go("specs/spec?id=s").tap("Label it").follow();
    assert_eq!(days(&mut tab).as_deref(), Some("2"));
    tab.go("specs/spec?id=s").type_in("lines", "60 ml gin\n25 ml lime juice\n20 ml cream").tap("Done");
    tab.tap("Label it").follow();
    assert_eq!(days(&mut tab), None);
}

/// What was kept is said where it leads, with the way back; the words go with the next screen.
#[test]
fn what_is_kept_is_said_with_the_way_back() {
    let keeper = Faulty::default();
    let mut tab = book(&keeper);
    tab.go("batch/bottle").tap("Keep house batch as an ingredient").follow();
    assert_eq!(tab.notice(), "Kept: house batch.");
    // As other amounts are shown, from a litre up; a drop of it less changes nothing.
    let gives = tab.value("gives");
    assert!(gives.ends_with(" ml") && gives.contains('\u{202f}') && !gives.contains('.'), "{gives}");
    tab.tap("Back to Bottle it").follow();
    assert_eq!((tab.value("bottle").as_str(), tab.notice().as_str()), ("700 ml", ""));
    tab.go("prep/syrup").tap("Keep house syrup as an ingredient").follow();
    assert_eq!(tab.notice(), "Kept: house syrup.");
    tab.act(Act::Undo);
    assert!(!tab.notice().contains("Kept"), "{}", tab.notice());
}
