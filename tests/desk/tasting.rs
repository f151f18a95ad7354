//! How a form of a spec tasted: kept with the version tasted, shown against the form of today, brought back.

use meniscus::screen::{Act, Block};

use crate::bar::{NOW, Tab, stored};
use crate::faulty::Faulty;

const LINES: &str = "60 ml gin\n30 ml lemon juice\n20 ml sugar syrup";

/// A spec whose page of tasting is open.
fn tasting(keeper: &Faulty) -> Tab<'_> {
    let mut tab = Tab::open(keeper, "specs");
    tab.act(Act::NewSpec).follow().type_in("name", "Lamp").type_in("lines", LINES).type_in("glass", "coupe");
    tab.tap("Done").tap("More").tap("Taste");
    tab
}

fn keep<'a, 'b>(tab: &'b mut Tab<'a>, words: &str, score: &str, whom: &str) -> &'b mut Tab<'a> {
    tab.type_in("taste_words", words).type_in("taste_score", score).type_in("taste_whom", whom).tap("Keep this tasting")
}

/// The plain remarks of the page.
fn said(tab: &mut Tab<'_>) -> Vec<String> {
    let blocks = tab.view().screen.blocks.clone();
    blocks.into_iter().filter_map(|block| if let Block::Remark(words) = block { Some(words) } else { None }).collect()
}

#[test]
fn a_tasting_is_kept_and_read_on_the_spec() {
    let keeper = Faulty::default();
    let mut tab = tasting(&keeper);
    assert!(!tab.has_button("Keep this tasting"), "nothing is said yet");
    assert_eq!(tab.strip(), " | Say how it tastes, and keep it");
    keep(&mut tab, "Thin,\nstir less", " 7 ", "the kitchen");
    assert_eq!(tab.strip(), "7 | last tasted: the kitchen, 25 Nov");
    assert_eq!(["taste_words", "taste_score", "taste_whom"].map(|name| tab.value(name)), [""; 3].map(str::to_owned));
    assert_eq!(tab.rows(), ["Thin,\nstir less|7|the kitchen, 25 Nov. As it is made now"]);
    assert_eq!(said(tab.tap("Done")), ["coupe", "7 · Thin, stir less · the kitchen, 25 Nov"]);
    // Undo takes it away, Redo brings it back.
    tab.act(Act::Undo);
    assert_eq!(said(&mut tab), ["coupe"]);
    tab.act(Act::Redo);
    assert_eq!(said(&mut tab).len(), 2);
    // It is there in another tab, tomorrow.
    let kept = stored(&keeper, "spec/").pop().expect("kept");
    let id = kept["spec/".len()..].split('=').next().expect("a key");
    let mut other = Tab::open_later(&keeper, "specs", NOW + 86_400_000);
    let at = format!("specs/spec?id={id}");
    assert_eq!(said(other.go(&at)).len(), 2);
    // One comes back to the spec, not to its tastings; long words are cut short there, and there alone.
    let long = "sharp ".repeat(30);
    keep(tab.tap("More").tap("Taste"), &long, "", "").go("service/measure").go(&at);
    assert_eq!(said(&mut tab)[1], format!("{}… · 25 Nov", "sharp ".repeat(20)));
    assert!(tab.tap("More").tap("Taste").rows()[0].starts_with(&format!("{}|", long.trim())));
}

#[test]
fn what_changed_since_is_shown_by_line_and_what_was_is_brought_back() {
    let keeper = Faulty::default();
    let mut tab = tasting(&keeper);
    keep(&mut tab, "Sharp", "", "");
    let today = "60 ml gin\n25 ml lemon juice\n1 egg white";
    tab.tap("Done")
        .type_in("lines", today)
        .type_in("glass", "tumbler")
        .type_in("makes", "2")
        .act(Act::Choose("method".into(), "shaken".into()));
    tab.tap("Done").tap("More").tap("Taste");
    tab.now += 60_000;
    keep(&mut tab, "Better", "8", "");
    assert_eq!(tab.rows(), ["Better|8|25 Nov. As it is made now", "Sharp||25 Nov"]);
    tab.tap_sign("Show what changed since: Sharp · 25 Nov");
    assert_eq!(
        tab.rows(),
        [
            "Better|8|25 Nov. As it is made now",
            "Sharp||25 Nov",
            "sugar syrup|20 ml|left out",
            "lemon juice|30 ml → 25 ml|",
            "egg white|1|added",
            "Method||none → Shaken",
            "Glass||coupe → tumbler",
            "Serves it makes||none → 2",
        ]
    );
    tab.tap_sign("Bring it back: Sharp · 25 Nov");
    assert_eq!(tab.rows(), ["Better|8|25 Nov", "Sharp||25 Nov. As it is made now"], "both tastings stay");
    assert_eq!([tab.value("lines"), tab.value("glass"), tab.value("makes")], [LINES, "coupe", ""].map(str::to_owned));
    assert_eq!(tab.act(Act::Undo).value("lines"), today);
    tab.tap("Done").tap("More").tap("Taste").tap_sign("Delete: Sharp · 25 Nov");
    assert_eq!(tab.rows(), ["Better|8|25 Nov. As it is made now"]);
    tab.act(Act::Undo);
    assert_eq!(tab.rows().len(), 2);
}

/// Any two versions are compared: that tasted, with today's or with another's, the newest first.
#[test]
fn two_tastings_are_compared_with_each_other() {
    let keeper = Faulty::default();
    let mut tab = tasting(&keeper);
    for (words, whom, lines) in [
        ("Sharp", "Jo", "60 ml gin\n25 ml lemon juice"),
        ("Flat", "", "55 ml gin\n25 ml lemon juice"),
        ("Weak", "", "55 ml gin\n25 ml lemon juice"),
    ] {
        keep(&mut tab, words, "", whom);
        assert_eq!(tab.view().screen.field("tasting_with").is_some(), words != "Sharp", "two are compared");
        tab.tap("Done").type_in("lines", lines).tap("Done").tap("More").tap("Taste");
    }
    let field = tab.view().screen.field("tasting_with").cloned().expect("a choice");
    let meniscus::screen::Input::Pick(options) = field.input else { panic!("{:?}", field.input) };
    let keys: Vec<(&str, &str)> = options.iter().map(|of| (of.key.as_str(), of.label.as_str())).collect();
    assert_eq!(keys, [("", "today"), ("2", "25 Nov"), ("1", "25 Nov"), ("0", "Jo, 25 Nov")]);
    let differing = |tab: &mut Tab<'_>| tab.rows().into_iter().filter(|row| row.contains('→')).collect::<Vec<_>>();
    tab.tap_sign("Show what changed since: Sharp · Jo, 25 Nov");
    assert_eq!(differing(&mut tab), ["gin|60 ml → 55 ml|", "lemon juice|30 ml → 25 ml|"]);
    tab.act(Act::Choose("tasting_with".into(), "1".into()));
    assert_eq!(differing(&mut tab), ["lemon juice|30 ml → 25 ml|"]);
    // From the earlier to the later, whichever is open; also of one that is as it is made now.
    tab.tap_sign("Hide what changed: Sharp · Jo, 25 Nov").tap_sign("Show how it differs: Weak · 25 Nov");
    assert_eq!(differing(&mut tab), ["gin|60 ml → 55 ml|"]);
    tab.tap_sign("Delete: Flat · 25 Nov");
    assert_eq!(tab.value("tasting_with"), "", "the numbers are others now");
}

#[test]
fn a_form_has_tastings_of_its_own() {
    let keeper = Faulty::default();
    let mut tab = tasting(&keeper);
    keep(&mut tab, "Good", "", "");
    tab.tap("Done").tap("Change").tap("Add a form").type_in("way", "quick").tap("Done").tap("More").tap("Taste");
    assert!(tab.rows().is_empty(), "nobody has tasted the new one");
    keep(&mut tab, "Weak", "", "");
    assert_eq!(tab.rows().len(), 1);
    // What it is called, and was made from, is no part of what was tasted.
    let kept = stored(&keeper, "spec/").pop().expect("kept");
    assert_eq!(kept.matches("\"was\":{\"lines\"").count(), 2, "{kept}");
    tab.act(Act::Choose("at".into(), "0".into()));
    assert_eq!(tab.rows(), ["Good||25 Nov. As it is made now"]);
}

#[test]
fn what_cannot_be_kept_says_why_and_stays() {
    let keeper = Faulty::default();
    let mut tab = tasting(&keeper);
    tab.type_in("taste_score", "seven out of ten, I'd say");
    let problem = tab.view().screen.field("taste_score").and_then(|field| field.problem.clone()).expect("too long");
    assert_eq!(problem.words, "A score has up to 20 letters, like 7 or 7/10. The rest is for the words.");
    assert!(!tab.has_button("Keep this tasting"));
    tab.act(Act::Taste);
    assert_eq!(tab.value("taste_score"), "seven out of ten, I'd say");
    // What was begun for one spec is said on another.
    tab.type_in("taste_score", "7");
    tab.act(Act::Go("#/specs".into())).go("specs").act(Act::NewSpec).follow().type_in("lines", "50 ml rum").tap("Done");
    tab.tap("More").tap("Taste");
    let cautions =
        tab.view().screen.blocks.iter().filter(|block| matches!(block, Block::Caution(_))).cloned().collect::<Vec<_>>();
    assert_eq!(cautions, [Block::Caution("You began to type this for Lamp.".into())]);
    // It may be kept here all the same.
    assert_eq!(tab.tap("Keep this tasting").rows(), ["No words|7|25 Nov. As it is made now"]);
}

/// The two versions that two tabs have left are shown against each other before one is chosen.
#[test]
fn two_versions_of_a_spec_say_how_they_differ() {
    let keeper = Faulty::default();
    let mut one = Tab::open(&keeper, "specs");
    one.act(Act::Demo).go("specs/spec?id=demo-1");
    let mut two = Tab::open(&keeper, "specs/spec?id=demo-1");
    let mut three = Tab::open(&keeper, "specs/spec?id=demo-1");
    one.type_in("lines", "45 ml pear brandy\n25 ml dry vermouth").type_in("notes", "Cold glass.");
    two.type_in("lines", "45 ml pear brandy\n30 ml dry vermouth\n1 dash bitters");
    assert!(two.notice().contains("Both are kept"), "{}", two.notice());
    let rows = two.tap("Done").rows();
    let differing = [
        "First drink of the supper, forty guests. 11 coins.||only here",
        "Cold glass.||only there",
        "bitters|1 dash|quick: only here",
        "dry vermouth|30 ml → 25 ml|quick",
    ];
    let rows: Vec<&String> = rows.iter().filter(|row| row.contains("only ") || row.contains('→')).collect();
    assert_eq!(rows, differing);
    assert_eq!(two.view().screen.buttons().iter().filter(|button| button.label.starts_with("Keep ")).count(), 2);
    // Of three each row says of which of the others it is.
    let rows = three.type_in("garnish", "fig leaf").tap("Done").rows();
    for row in ["Garnish||version 2: quick: fig leaf → pear slice", "bitters|1 dash|version 3: quick: only there"] {
        assert!(rows.iter().any(|there| there == row), "{rows:?}");
    }
}
