//! A spec changed line by line: amount and ingredient each typed for itself, in the text that all lines are.

use crate::bar::{Tab, stored};
use crate::faulty::Faulty;
use meniscus::desk::{Effect, News};
use meniscus::screen::Act;

/// The first form of the demo's first spec, with its fields in sight.
fn change(keeper: &Faulty) -> Tab<'_> {
    Tab::open(keeper, "specs").tap("Try a demo");
    let mut tab = Tab::open(keeper, "specs/spec?id=demo-1");
    tab.tap("Change");
    tab
}

/// The spec of these lines, with its fields in sight.
fn spec_of<'a>(keeper: &'a Faulty, lines: &str) -> Tab<'a> {
    let mut tab = Tab::open(keeper, "specs");
    tab.tap("New spec").follow().type_in("lines", lines).tap("Line by line");
    tab
}

/// The lines as they are kept: of the spec that comes first.
fn lines(tab: &Tab<'_>) -> String {
    let kept = stored(tab.keeper, "spec/");
    let behind = kept[0].split("\"lines\":\"").nth(1).unwrap_or_default();
    behind.split('"').next().unwrap_or_default().replace("\\n", "\n")
}

/// The fields of the line that is open: amount, ingredient, note.
fn fields(tab: &mut Tab<'_>) -> [Option<String>; 3] {
    let view = tab.view();
    ["line_amount", "line_of", "line_note"].map(|name| view.screen.field(name).map(|field| field.text.clone()))
}

fn some(text: &str) -> Option<String> {
    Some(text.to_owned())
}

/// What stands at the foot.
fn foot(tab: &mut Tab<'_>) -> Vec<String> {
    tab.view().screen.foot.iter().map(|button| button.label.clone()).collect()
}

#[test]
fn an_amount_is_typed_in_its_line_and_undo_takes_it_back() {
    let keeper = Faulty::default();
    let mut tab = change(&keeper);
    assert!(tab.view().screen.field("lines").is_none(), "they stand once");
    let before = lines(&tab);
    tab.open_line("pear juice");
    assert_eq!(fields(&mut tab), [some("30 ml"), some("pear juice"), None]);
    assert_eq!(tab.view().active, None, "the pad waits until it is asked for");
    // A number takes the unit that stood there, a letter at a time.
    for (typed, made) in [("2", "2 ml"), ("25", "25 ml")] {
        tab.act(Act::Type("line_amount".into(), typed.into()));
        assert_eq!(fields(&mut tab)[..2], [some(made), some("pear juice")]);
    }
    assert_eq!(lines(&tab), before.replace("30 ml pear juice", "25 ml pear juice"));
    // What is not yet an amount leaves the ingredient alone.
    for typed in ["", "1 ", "1 o", "1 oz"] {
        tab.act(Act::Type("line_amount".into(), typed.into()));
        assert_eq!(fields(&mut tab)[1], some("pear juice"), "{typed:?}");
    }
    assert_eq!(lines(&tab), before.replace("30 ml pear juice", "1 oz pear juice"));
    tab.act(Act::Type("line_of".into(), "pear purée".into()));
    assert_eq!(tab.view().undo.as_deref(), Some("Ingredient"), "a step to a field");
    tab.act(Act::Undo);
    assert_eq!(tab.view().undo.as_deref(), Some("Amount"));
    assert_eq!(fields(&mut tab)[..2], [some("1 oz"), some("pear juice")]);
    tab.act(Act::Undo);
    assert_eq!((lines(&tab), tab.view().undo), (before, None));
    tab.tap("Redo");
    assert_eq!(fields(&mut tab)[..2], [some("1 oz"), some("pear juice")]);
}

#[test]
fn an_ingredient_is_offered_and_the_last_offer_is_the_words_as_typed() {
    let keeper = Faulty::default();
    let mut tab = change(&keeper);
    let before = lines(&tab);
    tab.open_line("pear juice");
    assert_eq!(foot(&mut tab), ["Done", "Add a line"], "nothing is offered for what stands there");
    tab.act(Act::Type("line_of".into(), "lim".into()));
    let offers = foot(&mut tab);
    assert!(offers.len() <= 4 && offers.last().is_some_and(|last| last == "lim"), "{offers:?}");
    tab.tap("Lime juice");
    assert_eq!(fields(&mut tab)[..2], [some("30 ml"), some("Lime juice")]);
    assert_eq!(lines(&tab), before.replace("30 ml pear juice", "30 ml Lime juice"));
    assert_eq!(foot(&mut tab), ["Done", "Add a line"]);
    // A step for the offer, a step for the letters.
    tab.act(Act::Undo);
    assert_eq!(lines(&tab), before.replace("pear juice", "lim"));
    assert_eq!(lines(tab.act(Act::Undo)), before);
    // Words that nothing is called by stay as they are typed.
    tab.open_line("pear brandy");
    tab.act(Act::Type("line_of".into(), "xyloph dust".into()));
    assert_eq!(foot(&mut tab), ["xyloph dust"]);
    tab.tap("xyloph dust");
    assert_eq!(foot(&mut tab), ["Done", "Add a line"]);
    assert_eq!(lines(&tab), before.replace("pear brandy", "xyloph dust"));
}

#[test]
fn lines_go_up_and_down_and_away_and_come_back() {
    let keeper = Faulty::default();
    let mut tab = spec_of(&keeper, "60 ml gin\n\n20 ml lime juice\n10 ml sugar syrup");
    tab.open_line("gin");
    assert!(!tab.has_button("Up"), "the first cannot go up");
    tab.tap("Down");
    assert_eq!(lines(&tab), "20 ml lime juice\n\n60 ml gin\n10 ml sugar syrup");
    assert_eq!(fields(&mut tab)[..2], [some("60 ml"), some("gin")], "it stays open");
    tab.tap("Down");
    assert!(!tab.has_button("Down"), "the last cannot go down");
    tab.tap("Up").tap("Remove");
    assert_eq!(lines(&tab), "20 ml lime juice\n\n10 ml sugar syrup");
    assert_eq!(fields(&mut tab), [None, None, None]);
    assert_eq!(lines(tab.act(Act::Undo)), "20 ml lime juice\n\n60 ml gin\n10 ml sugar syrup");
    for _ in 0..3 {
        tab.act(Act::Undo);
    }
    assert_eq!(lines(&tab), "60 ml gin\n\n20 ml lime juice\n10 ml sugar syrup");
}

#[test]
fn a_note_stands_in_brackets_behind_its_line() {
    let keeper = Faulty::default();
    let mut tab = spec_of(&keeper, "60 ml gin\n20 ml lime juice");
    tab.open_line("gin");
    tab.tap("Note").act(Act::Type("line_note".into(), "frozen".into()));
    assert_eq!(lines(&tab), "60 ml gin (frozen)\n20 ml lime juice");
    assert_eq!(fields(&mut tab), [some("60 ml"), some("gin"), some("frozen")]);
    assert!(!tab.has_button("Note"), "it has one");
    // It stays as the rest is typed, and its field stays while it is emptied.
    tab.act(Act::Type("line_of".into(), "dry gin".into())).act(Act::Type("line_amount".into(), "2 oz".into()));
    assert_eq!(lines(&tab), "2 oz dry gin (frozen)\n20 ml lime juice");
    tab.act(Act::Type("line_note".into(), String::new()));
    assert_eq!(fields(&mut tab), [some("2 oz"), some("dry gin"), some("")]);
    assert_eq!(lines(&tab), "2 oz dry gin\n20 ml lime juice");
    assert!(tab.strip().contains("% vol"), "it counts: {}", tab.strip());
}

#[test]
fn what_cannot_be_told_apart_is_changed_whole() {
    let keeper = Faulty::default();
    let mut tab = spec_of(&keeper, "Gin 60 ml\n45 ml\n8 mint leaves\nsoda");
    tab.open_line("Gin");
    assert_eq!(fields(&mut tab), [None, some("Gin 60 ml"), None]);
    tab.act(Act::Type("line_of".into(), "Gin 50 ml".into()));
    assert_eq!(lines(&tab), "Gin 50 ml\n45 ml\n8 mint leaves\nsoda");
    assert_eq!(fields(&mut tab), [None, some("Gin 50 ml"), None], "it stays whole while it is typed");
    // An amount of nothing asks of what, under its line, and takes an ingredient.
    tab.open_line("45 ml");
    assert_eq!(fields(&mut tab)[..2], [some("45 ml"), some("")]);
    assert!(tab.rows().iter().any(|row| row.contains("An amount of what?")), "{:?}", tab.rows());
    tab.act(Act::Type("line_of".into(), "rum".into()));
    // A number of things takes no unit.
    tab.open_line("mint leaves");
    tab.act(Act::Activate(Some("line_amount".into())));
    assert_eq!(tab.view().pad.and_then(|pad| pad.unit), None, "no unit is lit");
    tab.act(Act::Type("line_amount".into(), "10".into()));
    // Words without a number take an amount.
    tab.open_line("soda");
    assert_eq!(fields(&mut tab)[..2], [some(""), some("soda")]);
    tab.act(Act::Type("line_amount".into(), "90 ml".into()));
    assert_eq!(lines(&tab), "Gin 50 ml\n45 ml rum\n10 mint leaves\n90 ml soda");
}

#[test]
fn a_line_is_added_with_the_pad_up_and_a_new_spec_begins_with_one() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "specs");
    tab.tap("New spec").follow();
    assert_eq!(fields(&mut tab), [some(""), some(""), None]);
    tab.act(Act::Type("line_amount".into(), "60 ml".into())).act(Act::Type("line_of".into(), "gin".into()));
    assert_eq!(lines(&tab), "60 ml gin");
    tab.tap("gin").tap("Add a line");
    assert_eq!(tab.effects.last(), Some(&Effect::Enter("line_amount")));
    assert_eq!(tab.view().active, Some("line_amount"));
    tab.act(Act::Type("line_amount".into(), "20 ml".into()));
    assert_eq!(lines(&tab), "60 ml gin\n20 ml");
    tab.act(Act::Type("line_of".into(), "lime juice".into()));
    assert_eq!(lines(&tab), "60 ml gin\n20 ml lime juice");
    // Pasted as text, and back.
    tab.tap("lime juice").tap("As text").act(Act::Type("lines".into(), "30 ml rum\n10 ml lemon juice".into()));
    tab.tap("Line by line");
    tab.open_line("rum");
    // Another spec opens with none of its lines open.
    tab.go("specs").tap("New").follow();
    assert_eq!(fields(&mut tab), [some(""), some(""), None]);
}

#[test]
fn another_tab_changes_the_lines_under_the_open_one() {
    let keeper = Faulty::default();
    let mut one = spec_of(&keeper, "60 ml gin\n20 ml lime juice");
    let id = stored(&keeper, "spec/")[0].split('=').next().unwrap_or_default().trim_start_matches("spec/").to_owned();
    one.open_line("lime juice");
    let mut two = Tab::open(&keeper, &format!("specs/spec?id={id}"));
    two.tap("Change");
    two.act(Act::Type("line_of".into(), "lemon juice, fresh".into()));
    one.tell(News::Stored(format!("meniscus/spec/{id}")));
    assert_eq!(fields(&mut one)[..2], [some("20 ml"), some("lemon juice, fresh")]);
    one.act(Act::Type("line_amount".into(), "25 ml".into()));
    assert_eq!(lines(&one), "60 ml gin\n25 ml lemon juice, fresh");
    // A line that is gone there is open no longer.
    two.tell(News::Stored(format!("meniscus/spec/{id}")));
    two.tap("Remove");
    two.open_line("gin");
    two.tap("Remove");
    one.tell(News::Stored(format!("meniscus/spec/{id}")));
    assert_eq!(fields(&mut one)[..2], [some(""), some("")], "an empty spec has its first line open");
}
