//! A backup is everything: whatever can be reached by taps comes back from it; and a full store says so first.

use std::collections::BTreeMap;

use proptest::prelude::*;

use crate::faulty::Faulty;
use meniscus::book::{Besides, Import};
use meniscus::desk::{Effect, News};
use meniscus::screen::route::Route;
use meniscus::screen::{Act, Block, Face, Texts};
use meniscus::store::backup::read;
use meniscus::store::ledger::load;
use meniscus::tool::{Change, after};

use crate::bar::{Tab, stored};

/// The backup of a store.
fn backup(keeper: &Faulty) -> String {
    Tab::open(keeper, "specs/backup").tap("Save a backup").sent("meniscus-give").pop().expect("a file")
}

fn cautions(tab: &mut Tab<'_>) -> Vec<String> {
    let blocks = &tab.view().screen.blocks;
    blocks
        .iter()
        .filter_map(|block| if let Block::Caution(words) = block { Some(words.clone()) } else { None })
        .collect()
}

/// Takes all of a file.
fn take_all(tab: &mut Tab<'_>) {
    let add = tab.labels().into_iter().find(|label| label.starts_with("Add "));
    if let Some(add) = add.filter(|label| label.contains(" to my ")) {
        tab.tap(&add);
    }
    for label in ["Keep it", "Take its settings", "Take what is typed in its tools"] {
        if tab.has_button(label) {
            tab.tap(label);
        }
    }
}

#[test]
fn settings_and_tools_come_along_by_their_own_buttons() {
    let keeper = Faulty::default();
    keeper.plant("tool/fruit", "gibberish");
    let mut tab = Tab::open(&keeper, "shelf");
    tab.type_in("dash", "1 ml").go("service/measure").type_in("amount", "77 ml").go("specs").tap("Try a demo");
    let file = backup(&keeper);
    assert!(!file.contains("\"before\""), "what Undo brings back stays here");
    let elsewhere = Faulty::default();
    let mut other = Tab::open(&elsewhere, "service/measure");
    other.type_in("amount", "3 oz").go("specs/backup").tell(News::File(file.clone()));
    assert_eq!(other.strip(), "6 new | Nothing is taken until you say");
    let rows = other.rows();
    assert_eq!(rows[0], "Settings||yours here differ: take the file's?");
    assert_eq!(rows[1], "Measure||something else is typed in it here");
    assert_eq!(rows[2], "1 text that could not be read||new, kept aside again");
    other.tap("Add 6 to my book");
    assert_eq!(stored(&elsewhere, "aside/"), ["aside/tool/fruit/1=gibberish"]);
    assert_eq!(other.go("shelf").value("dash"), "0.8 ml", "not silently");
    assert_eq!(other.go("service/measure").value("amount"), "3 oz", "not silently");
    // The file is still at hand for the rest.
    other.go("specs/backup").tap("Take its settings");
    assert_eq!(other.go("shelf").value("dash"), "1 ml");
    other.go("specs/backup").tap("Take what is typed in its tools");
    assert_eq!(other.go("service/measure").value("amount"), "77 ml");
    assert_eq!(other.go("specs/backup").strip(), "3 specs | Never backed up. Save a backup now and then");
    other.tell(News::File(file.clone()));
    assert_eq!(other.strip(), "0 new | 5 already here. Nothing is taken until you say");
    assert!(!other.has_button("Take its settings") && !other.has_button("Take what is typed in its tools"));
    // Each is taken back; also after a reload.
    other.tap("Close without taking").act(Act::Undo);
    assert_eq!(other.go("service/measure").value("amount"), "3 oz");
    let mut again = Tab::open(&elsewhere, "specs/backup");
    again.act(Act::Undo);
    assert_eq!(again.go("shelf").value("dash"), "0.8 ml");
    again.go("specs/backup").act(Act::Undo);
    assert_eq!((stored(&elsewhere, "aside/").len(), stored(&elsewhere, "spec/").len()), (0, 0));
}

#[test]
fn a_tool_s_own_undo_brings_back_what_a_file_replaced() {
    let keeper = Faulty::default();
    Tab::open(&keeper, "service/measure").type_in("amount", "77 ml");
    let file = backup(&keeper);
    let elsewhere = Faulty::default();
    let mut tab = Tab::open(&elsewhere, "service/measure");
    tab.type_in("amount", "3 oz").go("specs/backup").tell(News::File(file)).tap("Take what is typed in its tools");
    assert_eq!(tab.go("service/measure").value("amount"), "77 ml");
    assert_eq!(tab.act(Act::Undo).value("amount"), "3 oz");
}

/// What has been typed since stays; the form's own Undo goes back over it step by step, to what stood there at first.
#[test]
fn a_form_typed_in_since_keeps_that_when_the_import_is_taken_back() {
    let keeper = Faulty::default();
    Tab::open(&keeper, "service/measure").type_in("amount", "77 ml");
    let file = backup(&keeper);
    let elsewhere = Faulty::default();
    let mut tab = Tab::open(&elsewhere, "service/measure");
    tab.type_in("amount", "3 oz").go("specs/backup").tell(News::File(file)).tap("Take what is typed in its tools");
    tab.go("service/measure").type_in("amount", "5 cl").go("specs/backup").act(Act::Undo);
    assert_eq!(tab.go("service/measure").value("amount"), "5 cl");
    assert_eq!(tab.act(Act::Undo).value("amount"), "77 ml");
    assert_eq!(tab.act(Act::Undo).value("amount"), "3 oz");
    assert_eq!(stored(&elsewhere, "tool/measure").len(), 1, "and no key of its own beside");
}

#[test]
fn what_cannot_be_taken_is_named_and_the_rest_is() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "specs/backup");
    let file = r#"{"kind":"meniscus backup","version":2,"at":1,"specs":[{"id":"a","data":{"name":"Lamp","forms":7}},
        {"id":"b/c","data":{"name":"Owl"}}],"tools":{"abacus":{"beads":"7"}}}"#;
    tab.tell(News::File(file.into()));
    assert_eq!(tab.strip(), "1 new | 2 can't be taken. Nothing is taken until you say");
    let said = cautions(&mut tab);
    assert_eq!(
        said,
        [
            "Not taken: Spec 1, “Lamp”: in “forms” a list was expected.",
            "Not taken: What is typed in “abacus”: no tool is called so.",
            "Spec 2, “Owl”: its id can't be kept, so it gets another."
        ]
    );
    tab.tap("Add 1 to my specs");
    assert_eq!(stored(&keeper, "spec/i-").len(), 1);
    tab.tell(News::File(file.into()));
    assert!(tab.strip().starts_with("0 new | 1 already here"), "the same file twice: {}", tab.strip());
}

#[test]
fn texts_and_tables_open_as_specs() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "specs");
    tab.tap("Try a demo").go("specs/spec?id=demo-1");
    let text = tab.tap("More").tap("Save as text").sent("meniscus-give").pop().expect("a file");
    let csv = tab.go("service/scale").tap("Save as CSV").sent("meniscus-give").pop().expect("a file");
    for (text, name) in [(text.as_str(), "Orchard lantern"), (csv.as_str(), ""), ("Sour\n60 ml gin", "Sour")] {
        let elsewhere = Faulty::default();
        let mut other = Tab::open(&elsewhere, "specs/backup");
        other.tell(News::File(text.into()));
        assert!(cautions(&mut other)[0].starts_with("Not yours yet. It is read"), "{text}: {:?}", cautions(&mut other));
        assert_eq!(stored(&elsewhere, "spec/").len(), 0, "not before it is said");
        other.tap("Keep it");
        assert!(stored(&elsewhere, "spec/t-")[0].contains(&format!("\"name\":\"{name}\"")), "{text}");
    }
    tab.go("specs/backup").tell(News::File("Dear all".into()));
    assert!(tab.strip().starts_with("? | No line of it is an amount"), "{}", tab.strip());
}

#[test]
fn files_are_called_by_name_and_date() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "specs");
    tab.tap("Try a demo").go("specs/spec?id=demo-1").tap("More").tap("Save as text").tap("Save as a recipe file");
    tab.go("service/scale").tap("Save as CSV").go("specs/backup").tap("Save a backup");
    let file = |effect: &Effect| match effect {
        Effect::Send("meniscus-give", texts) => Some(texts[0].1.clone()),
        _ => None,
    };
    let files: Vec<String> = tab.effects.iter().filter_map(file).collect();
    let day = "2026-11-25";
    let names = ["orchard-lantern X.txt", "orchard-lantern X.json", "batch X.csv", "meniscus-backup X.json"];
    assert_eq!(files, names.map(|name| name.replace('X', day)));
    tab.tell(News::Given(files[1].clone()));
    assert!(tab.strip().ends_with("Never backed up. Save a backup now and then"), "a recipe is none");
    assert!(tab.tell(News::Given(files[3].clone())).strip().ends_with("Backed up today"));
}

#[test]
fn no_link_says_when_the_last_backup_was_made() {
    let keeper = Faulty::default();
    Tab::open(&keeper, "specs").tap("Try a demo");
    Tab::open(&keeper, "#/specs/backup?last=1795620600000");
    assert!(Tab::open(&keeper, "specs/backup").strip().ends_with("Never backed up. Save a backup now and then"));
}

#[test]
fn an_import_that_does_not_fit_says_so_first() {
    let keeper = Faulty::default();
    Tab::open(&keeper, "specs").tap("Try a demo");
    let file = backup(&keeper);
    let mut tab = Tab::open(&keeper, "specs/backup");
    assert_eq!(cautions(&mut tab), Vec::<String>::new());
    tab.tap("Take the demo away");
    // All but a few of 5 242 880 characters.
    keeper.plant("spec/big", &meniscus::store::ledger::sealed(&large("big", 5_242_000), 1).expect("json"));
    tab.tell(News::Seen).tell(News::File(file));
    let said = cautions(&mut tab).pop().expect("a caution");
    assert!(said.starts_with("With its Undo this takes about 8 kB, and 0 kB are free here."), "{said}");
    assert_eq!(stored(&keeper, "spec/").len(), 1, "before anything is taken");
}

fn large(name: &str, letters: usize) -> meniscus::book::Card {
    meniscus::book::Card { name: name.into(), notes: "x".repeat(letters), ..Default::default() }
}

#[test]
fn what_is_set_aside_is_named_and_taken_home() {
    let keeper = Faulty::default();
    keeper.plant("tool/measure", "gibberish");
    keeper.plant("aside/tool/scale/1", "older gibberish");
    let mut tab = Tab::open(&keeper, "specs/backup");
    let said = cautions(&mut tab);
    for key in ["Measure", "Scale"] {
        assert!(
            said.iter().any(|words| words.starts_with(&format!("What was saved for “{key}” could not"))),
            "{said:?}"
        );
    }
    let file = tab.tap("Download what is set aside").sent("meniscus-give").pop().expect("a file");
    assert!(file.contains("tool/measure\ngibberish\n") && file.contains("tool/scale\nolder gibberish\n"), "{file}");
    assert_eq!(file.matches("gibberish").count(), 2, "each once: {file}");
}

/// A form of a later version opens for reading.
#[test]
fn a_newer_form_is_shown_and_not_written_over() {
    let keeper = Faulty::default();
    let newer = r#"{"v":9,"rev":4,"at":1,"data":{"now":{"amount":"77 ml","hue":"5"},"since":[1.5]}}"#;
    keeper.plant("tool/measure", newer);
    let mut tab = Tab::open(&keeper, "service/measure");
    assert!(tab.notice().starts_with("What was saved for Measure is of a newer Meniscus."), "{}", tab.notice());
    assert_eq!(tab.value("amount"), "77 ml");
    tab.type_in("amount", "5 cl");
    assert!(tab.notice().starts_with("What was saved for Measure is of a newer Meniscus."), "{}", tab.notice());
    assert_eq!(keeper.dump()["tool/measure"], newer);
    assert_eq!(stored(&keeper, "aside/"), Vec::<String>::new(), "it is safe where it stands");
    assert_eq!(read(&backup(&keeper)).expect("ours").besides.aside[0].text, newer, "and goes into backups");
}

/// What a person does, by number.
fn deed<'k>(tab: &mut Tab<'k>, keeper: &'k Faulty, what: u8, word: &str) {
    let keys = stored(keeper, "spec/");
    let key = keys.get(usize::from(what) * 7 % keys.len().max(1)).and_then(|key| key.split('=').next());
    let at = key.map(|key| format!("specs/spec?id={}", &key["spec/".len()..]));
    let spec = |tab: &mut Tab<'k>| {
        if let Some(at) = &at {
            tab.go(at);
        }
        at.is_some()
    };
    let tap_if = |tab: &mut Tab<'k>, label: &str| {
        if tab.has_button(label) {
            tab.tap(label);
        }
    };
    match what % 18 {
        0 => drop(tab.go("specs/spec").act(Act::NewSpec).follow().type_in("name", word)),
        1 if spec(tab) => drop(tab.type_in("lines", &format!("60 ml gin\n{word}")).type_in("notes", word)),
        2 if spec(tab) => tap_if(tab.act(Act::Show(Face::More)), "Duplicate"),
        3 if spec(tab) => tap_if(tab.act(Act::Show(Face::Change)), "Add a form"),
        4 if spec(tab) => tap_if(tab.act(Act::Show(Face::Change)), "Remove this form"),
        5 if spec(tab) => drop(tab.act(Act::Empty)),
        6 | 7 if spec(tab) => {
            // Another tab types into the same one meanwhile.
            if let Some(at) = &at {
                Tab::open(keeper, at).type_in("garnish", word);
                tab.type_in("ice", word);
            }
        }
        8 if spec(tab) => tap_if(tab, "Keep this one"),
        9 if spec(tab) => tap_if(tab, "Keep all of them"),
        10 => drop(tab.go("shelf/ingredients").tap("New ingredient").type_in("name", word).type_in("strength", "22")),
        11 => drop(tab.go("prep/clear").tap("To the run sheet")),
        12 => {
            tab.go("batch/run");
            let labels = ["Start 45 min", "Done", "Finish"];
            tap_if(tab, labels[word.len() % 3]);
        }
        13 => drop(tab.go("shelf").type_in("dash", "1 ml").type_in("yields", word)),
        14 => drop(tab.go("service/measure").type_in("amount", word)),
        15 => drop(tab.go("specs").act(Act::Undo)),
        17 if spec(tab) => {
            tap_if(tab.act(Act::Show(Face::Taste)).type_in("taste_words", word), "Keep this tasting");
        }
        16 => tap_if(tab.go("specs/backup"), "Put the demo in"),
        _ => {}
    }
}

/// The records of a store, by key; waits that run are not begun.
fn records(keeper: &Faulty) -> BTreeMap<String, String> {
    let book = load(keeper, true).expect("readable");
    assert_eq!(book.unread, []);
    let cards = book.cards.iter().map(|entry| (format!("spec/{}", entry.id), format!("{:?}", entry.value)));
    let own = book.own.iter().map(|entry| (format!("ingredient/{}", entry.id), format!("{:?}", entry.value)));
    let runs = book.runs.iter().map(|entry| (format!("run/{}", entry.id), format!("{:?}", entry.value.stilled(None))));
    cards.chain(own).chain(runs).collect()
}

/// The keys that records stand under.
fn keys(keeper: &Faulty) -> Vec<String> {
    let is_record = |key: &String| ["spec/", "ingredient/", "run/"].iter().any(|prefix| key.starts_with(prefix));
    keeper.dump().into_keys().filter(is_record).collect()
}

/// What settings and tools come to, with the usual values where nothing is typed.
fn typed(file: &str) -> Vec<(Route, Texts)> {
    let Import { besides: Besides { settings, tools, .. }, .. } = read(file).expect("ours");
    let of = |route: Route| match route {
        Route::Shelf => settings.clone(),
        route => tools.get(route.form_key()).cloned().unwrap_or_default(),
    };
    Route::ALL.iter().map(|route| (*route, after(*route, &of(*route), Change::Put(&[])))).collect()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 150, ..ProptestConfig::default() })]

    /// Whatever book can be reached by taps, its backup imports to the same book.
    #[test]
    fn any_book_comes_back_from_its_backup(deeds in prop::collection::vec((any::<u8>(), "[a-z~/é\"]{0,6}"), 1..30)) {
        let keeper = Faulty::default();
        let mut tab = Tab::open(&keeper, "specs");
        for (what, word) in &deeds {
            deed(&mut tab, &keeper, *what, word);
        }
        let file = backup(&keeper);
        let import = read(&file).expect("ours");
        prop_assert_eq!((import.refused, import.remarks), (Vec::<String>::new(), Vec::<String>::new()));
        let elsewhere = Faulty::default();
        let mut other = Tab::open(&elsewhere, "specs/backup");
        other.tell(News::File(file.clone()));
        take_all(&mut other);
        prop_assert_eq!(records(&elsewhere), records(&keeper));
        prop_assert_eq!(keys(&elsewhere), keys(&keeper));
        let again = backup(&elsewhere);
        prop_assert_eq!(typed(&again), typed(&file));
        // Here, it is all the same.
        let mut here = Tab::open(&keeper, "specs/backup");
        here.tell(News::File(file));
        let strip = here.strip();
        let all = match records(&keeper).len() {
            0 => "0 new | Nothing is taken until you say".to_owned(),
            all => format!("0 new | {all} already here. Nothing is taken until you say"),
        };
        let is_one_spec = cautions(&mut here).iter().any(|words| words == "You have this one already.");
        prop_assert!(strip == all || is_one_spec, "{}", strip);
    }
}
