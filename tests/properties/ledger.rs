//! Nothing that was acknowledged is lost, and an act on the book is done whole or not at all: with writes that throw
//! or are dropped, room that runs out, an app killed between any two writes, and two tabs.

use proptest::prelude::*;

use crate::faulty::{Fault, Faulty};

use meniscus::book::{Card, Entry, Import, Stamp, Way};
use meniscus::store::deeds::{self, Merge};
use meniscus::store::journal::{Put, last, recover, transact, undo};
use meniscus::store::ledger::{SPECS, Saved, load, save};
use meniscus::store::{Keeper, SaveProblem, open, seal};

fn card(name: &str, lines: &str) -> Card {
    Card { name: name.into(), ways: vec![Way { lines: lines.into(), ..Way::default() }], ..Card::default() }
}

fn entry(id: &str, value: Card) -> Entry<Card> {
    Entry { id: id.into(), value, stamp: Stamp::default(), newer: None, pairs: Default::default() }
}

fn names(keeper: &Faulty) -> Vec<String> {
    let mut names: Vec<String> = load(keeper, true)
        .expect("readable")
        .cards
        .into_iter()
        .map(|entry| format!("{}={}", entry.id, entry.value.name))
        .collect();
    names.sort();
    names
}

fn put_of(keeper: &Faulty, id: &str, name: &str) -> Put {
    let key = format!("{SPECS}{id}");
    let there = keeper.get(&key).expect("readable").and_then(|text| open::<Card>(&text).ok());
    let from = there.map(|there| there.stamp);
    let text = seal(&card(name, "60 ml gin"), from.unwrap_or_default().next(1)).expect("json");
    Put { key, text: Some(text), from }
}

fn gone_of(keeper: &Faulty, id: &str) -> Put {
    Put { text: None, ..put_of(keeper, id, "") }
}

/// As the app does when it opens, once nobody else can be at work.
fn reopened(keeper: &Faulty) {
    recover(keeper, LATER).expect("recovered");
}

/// Long after every act of these tests.
const LATER: u64 = 1_000_000;

/// What a step of the session acknowledged.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Step {
    SaveA,
    Import,
    DeleteA,
    UndoDelete,
    SaveB,
}

const SESSION: [Step; 5] = [Step::SaveA, Step::Import, Step::DeleteA, Step::UndoDelete, Step::SaveB];

/// Does a step; true when it was acknowledged.
fn take(keeper: &Faulty, step: Step) -> bool {
    match step {
        Step::SaveA => save(keeper, SPECS, &entry("a", card("Lantern", "45 ml pear brandy")), 1, "x").is_ok(),
        Step::Import => {
            transact(keeper, "Import", &[put_of(keeper, "b", "Second"), put_of(keeper, "c", "Third")], 200_000).is_ok()
        }
        Step::DeleteA => transact(keeper, "Delete Lantern", &[gone_of(keeper, "a")], 300_000).is_ok(),
        // Only when there is a deletion to take back.
        Step::UndoDelete if last(keeper).as_deref() != Some("Delete Lantern") => false,
        Step::UndoDelete => matches!(undo(keeper, 400_000, |_, _, _| None, |key| format!("{key}~u")), Ok(Some(_))),
        Step::SaveB => {
            let book = load(keeper, true).expect("readable");
            let Some(mut b) = book.card("b").map(|entry| Entry::clone(entry)) else { return false };
            b.value.notes = "tasted".into();
            save(keeper, SPECS, &b, 5, "y").is_ok()
        }
    }
}

/// Acts are whole: both imported or neither; and what was acknowledged shows.
fn holds(keeper: &Faulty, acknowledged: &[Step], in_doubt: Option<Step>) -> Result<(), String> {
    reopened(keeper);
    let there = names(keeper);
    let has = |id: &str| there.iter().any(|name| name.starts_with(&format!("{id}=")));
    let was = |step| acknowledged.contains(&step);
    if has("b") != has("c") {
        return Err(format!("half an import: {there:?}"));
    }
    if was(Step::Import) && !has("b") {
        return Err(format!("an import is gone: {there:?}"));
    }
    let deleted = was(Step::DeleteA) && !was(Step::UndoDelete);
    let unsure = matches!(in_doubt, Some(Step::DeleteA | Step::UndoDelete));
    if was(Step::SaveA) && !unsure && has("a") == deleted {
        return Err(format!("deleted: {deleted}, but {there:?}"));
    }
    if was(Step::SaveB) {
        let book = load(keeper, true).expect("readable");
        if !book.cards.iter().any(|entry| entry.value.notes == "tasted") {
            return Err("an edit is gone".into());
        }
    }
    match load(keeper, true).expect("readable").unread.as_slice() {
        [] => Ok(()),
        unread => Err(format!("{unread:?}")),
    }
}

#[test]
fn every_write_may_throw_or_be_dropped() {
    for fault in [Fault::Throws, Fault::Dropped] {
        for at in 0..40 {
            let keeper = Faulty::default();
            keeper.fail_at(at, fault);
            let mut acknowledged = Vec::new();
            for step in SESSION {
                if take(&keeper, step) {
                    acknowledged.push(step);
                }
                let healed = Faulty::holding(keeper.dump());
                holds(&healed, &acknowledged, None)
                    .unwrap_or_else(|wrong| panic!("{fault:?} at {at}, {step:?}: {wrong}"));
            }
            assert!(acknowledged.len() >= 3, "one fault stops little: {acknowledged:?}");
        }
        for nth in 2..20 {
            let keeper = Faulty::default();
            keeper.fail_every(nth, fault);
            let mut acknowledged = Vec::new();
            for step in SESSION {
                if take(&keeper, step) {
                    acknowledged.push(step);
                }
                let healed = Faulty::holding(keeper.dump());
                holds(&healed, &acknowledged, None)
                    .unwrap_or_else(|wrong| panic!("{fault:?} every {nth}, {step:?}: {wrong}"));
            }
        }
    }
}

#[test]
fn the_app_may_be_killed_between_any_two_writes() {
    let keeper = Faulty::default();
    keeper.take_history();
    let mut acknowledged = Vec::new();
    let mut moments = 0;
    for step in SESSION {
        assert!(take(&keeper, step), "{step:?}");
        let history = keeper.take_history();
        for (at, texts) in history.iter().enumerate() {
            let reopened = Faulty::holding(texts.clone());
            holds(&reopened, &acknowledged, Some(step)).unwrap_or_else(|wrong| panic!("{step:?}, write {at}: {wrong}"));
            moments += 1;
        }
        acknowledged.push(step);
    }
    assert!(moments > 10, "{moments}");
    holds(&keeper, &acknowledged, None).expect("all of it");
}

#[test]
fn room_that_runs_out_takes_nothing_away() {
    for room in (100..4000).step_by(50) {
        let keeper = Faulty::default();
        keeper.limit(room);
        let mut acknowledged = Vec::new();
        for step in SESSION {
            if take(&keeper, step) {
                acknowledged.push(step);
            }
            holds(&keeper, &acknowledged, None).unwrap_or_else(|wrong| panic!("{room} bytes, {step:?}: {wrong}"));
        }
    }
}

#[test]
fn an_edit_in_two_tabs_is_kept_twice() {
    let keeper = Faulty::default();
    let first = entry("a", card("Lantern", "45 ml pear brandy"));
    let Ok(Saved::Kept(stamp)) = save(&keeper, SPECS, &first, 1, "x") else { panic!("saved") };
    let mut one = Entry { stamp, ..first.clone() };
    let mut other = one.clone();
    one.value.notes = "by one".into();
    other.value.notes = "by the other".into();
    assert!(matches!(save(&keeper, SPECS, &one, 2, "y"), Ok(Saved::Kept(_))));
    let Ok(Saved::Beside(id, _)) = save(&keeper, SPECS, &other, 3, "z") else { panic!("beside") };
    assert_eq!(id, "a~z");
    let book = load(&keeper, true).expect("readable");
    let mut notes: Vec<(&str, Option<&str>)> =
        book.cards.iter().map(|entry| (entry.value.notes.as_str(), entry.rival_of())).collect();
    notes.sort_unstable();
    assert_eq!(notes, [("by one", None), ("by the other", Some("a"))]);
    // The same edit in both is no conflict.
    let same = Entry { value: one.value.clone(), stamp, ..first };
    assert!(matches!(save(&keeper, SPECS, &same, 4, "w"), Ok(Saved::Kept(_))));
}

#[test]
fn what_was_changed_since_survives_an_undo() {
    let keeper = Faulty::default();
    let Ok(Saved::Kept(stamp)) = save(&keeper, SPECS, &entry("a", card("Old", "")), 1, "x") else { panic!("saved") };
    transact(&keeper, "Import", &[put_of(&keeper, "a", "New"), put_of(&keeper, "b", "Added")], 2).expect("done");
    assert_eq!(last(&keeper).as_deref(), Some("Import"));
    let book = load(&keeper, true).expect("readable");
    for entry in &book.cards {
        let mut entry = Entry::clone(entry);
        entry.value.notes = "mine".into();
        assert!(matches!(save(&keeper, SPECS, &entry, 3, "y"), Ok(Saved::Kept(_))), "{stamp:?}");
    }
    assert_eq!(undo(&keeper, 4, |_, _, _| None, |key| format!("{key}~u")).expect("done").as_deref(), Some("Import"));
    assert_eq!(names(&keeper), ["a=New", "a~u=Old", "b=Added"]);
    assert_eq!(undo(&keeper, 5, |_, _, _| None, |key| format!("{key}~v")), Ok(None));
}

#[test]
fn what_is_newer_or_damaged_is_left_as_it_is() {
    let keeper = Faulty::default();
    let newer = r#"{"v":9,"rev":3,"at":5,"data":{"name":"From next year","forms":[]}}"#;
    let stranger = r#"{"v":9,"data":{"name":"Odd","garden":true}}"#;
    keeper.plant("spec/newer", newer);
    keeper.plant("spec/stranger", stranger);
    keeper.plant("spec/odd", r#"{"v":9,"data":{"name":["Odd"]}}"#);
    keeper.plant("spec/torn", "{\"sum\":\"00000000\",\"v\":2");
    save(&keeper, SPECS, &entry("a", card("Mine", "")), 1, "x").expect("saved");
    let book = load(&keeper, true).expect("readable");
    assert_eq!((book.cards.len(), book.unread.len()), (3, 2));
    let stranger_shown = book.cards.iter().find(|entry| entry.id == "stranger").expect("shown without its garden");
    assert_eq!((stranger_shown.newer, stranger_shown.value.name.as_str()), (Some(9), "Odd"));
    assert_eq!(save(&keeper, SPECS, stranger_shown, 2, "y"), Err(SaveProblem::ReadOnly));
    // Nor by somebody who knows of it no more than its stamp.
    let unaware = Entry { newer: None, ..Entry::clone(stranger_shown) };
    assert!(matches!(save(&keeper, SPECS, &unaware, 2, "y"), Ok(Saved::Beside(..))));
    let gone = [Put { key: "spec/stranger".into(), text: None, from: Some(stranger_shown.stamp) }];
    assert_eq!(transact(&keeper, "Delete", &gone, 2), Err(SaveProblem::ReadOnly));
    let shown = book.cards.iter().find(|entry| entry.id == "newer").expect("shown");
    assert_eq!((shown.newer, shown.value.ways.len()), (Some(9), 1));
    assert!(save(&keeper, SPECS, shown, 2, "y").is_err());
    assert_eq!(keeper.get("spec/newer").expect("there").as_deref(), Some(newer));
    assert_eq!(keeper.get("spec/stranger").expect("there").as_deref(), Some(stranger));
}

/// Another tab that looks in the middle of an act neither takes it back nor begins another.
#[test]
fn an_act_that_is_going_on_is_left_alone() {
    let keeper = Faulty::default();
    let puts = [put_of(&keeper, "b", "Second"), put_of(&keeper, "c", "Third")];
    keeper.take_history();
    transact(&keeper, "Import", &puts, 2).expect("done");
    let history = keeper.take_history();
    for texts in &history[..history.len() - 1] {
        let other = Faulty::holding(texts.clone());
        load(&other, true).expect("readable");
        assert_eq!(recover(&other, 3), Ok(true), "somebody may be at it");
        assert_eq!(transact(&other, "Mine", &[put_of(&other, "d", "Mine")], 3), Err(SaveProblem::Elsewhere));
        assert_eq!(&other.dump(), texts);
        assert_eq!(recover(&other, LATER), Ok(false));
        assert_eq!(names(&other), Vec::<String>::new(), "nobody is at it any more");
    }
}

/// An act fails and cannot be taken back at once; an edit is saved; when the act is taken back the edit stays.
#[test]
fn taking_an_act_back_leaves_later_edits() {
    let keeper = Faulty::default();
    save(&keeper, SPECS, &entry("a", card("Lantern", "")), 1, "x").expect("saved");
    keeper.take_history();
    transact(&keeper, "Lines", &[put_of(&keeper, "a", "Lamp")], 2).expect("done");
    // The moment before it was marked as done.
    let history = keeper.take_history();
    let reopened = Faulty::holding(history[history.len() - 2].clone());
    let mut edited = Entry::clone(load(&reopened, true).expect("readable").card("a").expect("there"));
    edited.value.notes = "written since".into();
    save(&reopened, SPECS, &edited, 3, "y").expect("saved");
    recover(&reopened, LATER).expect("taken back");
    let book = load(&reopened, true).expect("readable");
    assert!(book.cards.iter().any(|entry| entry.id == "a" && entry.value.notes == "written since"));
    assert!(book.cards.iter().any(|entry| entry.id.starts_with("a~") && entry.value.name == "Lantern"));
}

#[test]
fn deeds_write_over_nothing_that_is_newer_damaged_or_changed_since() {
    let keeper = Faulty::default();
    let newer = r#"{"v":9,"rev":3,"at":5,"data":{"name":"From next year","forms":[{}]}}"#;
    for (key, text) in [("spec/newer", newer), ("spec/torn", "{\"sum\""), ("acts", r#"{"v":9,"data":[]}"#)] {
        keeper.plant(key, text);
    }
    save(&keeper, SPECS, &entry("a", card("Lantern", "")), 1, "x").expect("saved");
    let book = load(&keeper, true).expect("readable");
    let newer_entry = book.card("newer").expect("shown");
    for deed in [
        Ok(deeds::delete_card(newer_entry)),
        deeds::change(newer_entry, &card("Mine", ""), "a line", 2),
        deeds::keep_this(&book, newer_entry, 2),
    ] {
        assert_eq!(transact(&keeper, "deed", &deed.expect("json").puts, 2), Err(SaveProblem::ReadOnly));
    }
    // An import of these ids comes beside them.
    let import = Import {
        cards: vec![("torn".into(), card("Restored", "")), ("newer".into(), card("Restored", ""))],
        ..Import::default()
    };
    for merge in [Merge::NewOnly, Merge::Replace] {
        let deed = deeds::import(&book, &import, merge, 3, || format!("fresh{}", merge as u8)).expect("json");
        transact(&keeper, "Import", &deed.puts, 3).expect("done");
    }
    assert_eq!(keeper.get("spec/newer").expect("there").as_deref(), Some(newer));
    assert_eq!(keeper.get("spec/torn").expect("there").as_deref(), Some("{\"sum\""));
    assert_eq!(keeper.get("aside/acts/1").expect("there").as_deref(), Some(r#"{"v":9,"data":[]}"#));
    // Another tab has written since: the deed is not done.
    let stale = book.card("a").expect("there");
    let fresh = Entry { value: card("Lantern", "60 ml gin"), ..Entry::clone(stale) };
    save(&keeper, SPECS, &fresh, 4, "y").expect("saved");
    let deed = deeds::change(stale, &card("Stale", ""), "a line", 5).expect("json");
    assert_eq!(transact(&keeper, "deed", &deed.puts, 5), Err(SaveProblem::Elsewhere));
    assert_eq!(transact(&keeper, "deed", &deeds::delete_card(stale).puts, 5), Err(SaveProblem::Elsewhere));
    assert!(load(&keeper, true).expect("readable").cards.iter().any(|entry| entry.value.ways[0].lines == "60 ml gin"));
    // The demo leaves what is there of it.
    let own = meniscus::book::Own { name: "mine".into(), like: "cordial".into(), ..Default::default() };
    let text = seal(&own, Stamp { rev: 1, at: 1 }).expect("json");
    keeper.plant("ingredient/demo-2", &text);
    let book = load(&keeper, true).expect("readable");
    transact(&keeper, "demo", &deeds::demo(&book, 6).expect("json").puts, 6).expect("done");
    assert_eq!(keeper.get("ingredient/demo-2").expect("there"), Some(text));
}

proptest! {
    /// Any cards, saved and read back in any order, with some deleted and brought back.
    #[test]
    fn what_is_saved_is_read(cards in prop::collection::vec(("\\PC{0,20}", "\\PC{0,60}"), 1..12), gone in 0_usize..12) {
        let keeper = Faulty::default();
        for (number, (name, lines)) in cards.iter().enumerate() {
            save(&keeper, SPECS, &entry(&format!("id{number}"), card(name, lines)), 1, "x").expect("saved");
        }
        let before = keeper.dump();
        let id = format!("id{}", gone % cards.len());
        transact(&keeper, "Delete", &[gone_of(&keeper, &id)], 2).expect("done");
        prop_assert_eq!(load(&keeper, true).expect("readable").cards.len(), cards.len() - 1);
        undo(&keeper, 3, |_, _, _| None, |key| format!("{key}~u")).expect("done");
        let mut after = keeper.dump();
        after.remove("acts");
        prop_assert_eq!(&before, &after);
        let book = load(&keeper, true).expect("readable");
        for (number, (name, lines)) in cards.iter().enumerate() {
            let entry = book.cards.iter().find(|entry| entry.id == format!("id{number}")).expect("there");
            prop_assert_eq!((&entry.value.name, &entry.value.ways[0].lines), (name, lines));
        }
    }
}
