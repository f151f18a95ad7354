//! Backups come back whole, and hostile ones change nothing.

use proptest::prelude::*;

use crate::faulty::Faulty;

use meniscus::book::{
    Aside, Besides, Card, Entry, Import, MOST_KEY, MOST_PARTS, MOST_WAYS, Origin, Own, Part, Run, Stamp, Tasting, Tick,
    Way, demo_cards, demo_own,
};
use meniscus::screen::Bench;
use meniscus::store::backup::{backup, one, read};
use meniscus::store::deeds::{self, Merge};
use meniscus::store::journal::{transact, undo};
use meniscus::store::ledger::load;
use meniscus::tool::batch::run::with_parts;

fn texts() -> impl Strategy<Value = String> {
    prop_oneof![
        "\\PC{0,30}",
        Just("я".repeat(11_000)),
        Just("<img src=x onerror=alert(1)>".to_owned()),
        Just("\"},{\\u0000\n\t".to_owned())
    ]
}

fn ways() -> impl Strategy<Value = Way> {
    (prop::collection::vec(texts(), 11), texts(), 0_u64..9_007_199_254_740_991).prop_map(|(texts, said, at)| {
        let mut way = Way::default();
        if at % 2 == 0 {
            let was = Way { lines: said.clone(), holds: said.clone(), gives: said.clone(), ..Way::default() };
            way.tastings.push(Tasting { at, words: said.clone(), whom: said.clone(), was, ..Tasting::default() });
            let texts = [("share".to_owned(), said.clone())].into();
            way.from = Origin { spec: "a1".into(), lines: said, texts, ..Origin::default() };
        }
        for ((name, field), text) in way.fields().into_iter().zip(texts) {
            *field = if name == "method" { "stirred".to_owned() } else { text };
        }
        way
    })
}

fn cards() -> impl Strategy<Value = Card> {
    (prop::collection::vec(texts(), 3), prop::collection::vec(ways(), 1..3), 0_u64..9_007_199_254_740_991).prop_map(
        |(texts, forms, made)| {
            let mut card = Card { made, ways: forms, ..Card::default() };
            for ((_, field), text) in card.fields().into_iter().zip(texts) {
                *field = text;
            }
            card
        },
    )
}

fn runs() -> impl Strategy<Value = Run> {
    let parts = prop::collection::vec((texts(), texts(), any::<bool>()), 0..3);
    let marks = prop::collection::vec((0_u64..8_640_000_000_000_000, texts()), 0..3);
    (parts, marks, prop::collection::vec(texts(), 3)).prop_map(|(parts, marks, texts)| {
        let part = |(key, (tool, text, takes)): (u32, (String, String, bool))| Part {
            key,
            tool,
            from: takes.then_some(key / 2),
            texts: [("juice".to_owned(), text)].into(),
        };
        let mark = |(at, (started, got))| (format!("{at}/rest"), Tick { started, got, ..Tick::default() });
        let mut run = Run {
            parts: (0..).zip(parts).map(part).collect(),
            marks: marks.into_iter().enumerate().map(mark).collect(),
            ..Run::default()
        };
        for ((_, field), text) in run.fields().into_iter().zip(texts) {
            *field = text;
        }
        run
    })
}

fn books() -> impl Strategy<Value = Import> {
    let own = prop::collection::vec(texts(), 7).prop_map(|texts| {
        let mut own = Own::default();
        for ((_, field), text) in own.fields().into_iter().zip(texts) {
            *field = text;
        }
        own
    });
    fn by_id<T>(letter: char, values: Vec<T>) -> Vec<(String, T)> {
        values.into_iter().enumerate().map(|(at, value)| (format!("{letter}{at}"), value)).collect()
    }
    (prop::collection::vec(cards(), 0..5), prop::collection::vec(own, 0..4), prop::collection::vec(runs(), 0..3))
        .prop_map(|(cards, own, runs)| Import {
            cards: by_id('c', cards),
            own: by_id('o', own),
            runs: by_id('r', runs),
            ..Import::default()
        })
}

/// What there is beside a book.
fn besides() -> impl Strategy<Value = Besides> {
    let form =
        || prop::collection::vec(("[a-z_0-9]{1,9}", texts()), 0..4).prop_map(|pairs| pairs.into_iter().collect());
    let aside = ("[a-z]{1,9}/[A-Za-z0-9-]{1,9}", texts()).prop_map(|(key, text)| Aside { key, text });
    let tools = prop::collection::vec(("[a-z][a-z-]{0,8}[a-z]", form()), 0..4);
    (form(), tools, prop::collection::vec(aside, 0..3)).prop_map(|(settings, tools, aside)| Besides {
        settings,
        tools: tools.into_iter().collect(),
        aside,
    })
}

/// A store with these in it.
fn stored(import: &Import) -> Faulty {
    let keeper = Faulty::default();
    let book = load(&keeper, true).expect("readable");
    let deed = deeds::import(&book, import, Merge::NewOnly, 1, || unreachable!()).expect("json");
    transact(&keeper, &deed.words, &deed.puts, 1).expect("done");
    keeper
}

fn entry<T>(id: &str, value: T) -> Entry<T> {
    Entry { id: id.into(), value, stamp: Stamp::default(), newer: None, pairs: Default::default() }
}

/// A backup of its book.
fn whole(keeper: &Faulty) -> String {
    backup(&load(keeper, true).expect("readable"), Besides::default(), 9).expect("json")
}

/// The schema in the repository, read by a library for them.
fn schema() -> jsonschema::Validator {
    let file = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/fixtures/backup.schema.json");
    let schema: serde_json::Value =
        serde_json::from_str(&std::fs::read_to_string(file).expect("a schema")).expect("json");
    jsonschema::validator_for(&schema).expect("a schema")
}

#[test]
fn the_demo_is_as_the_schema_has_it_and_the_schema_would_notice() {
    let keeper = stored(&Import { cards: demo_cards(5), own: demo_own(5), ..Import::default() });
    let text = whole(&keeper);
    let mut value: serde_json::Value = serde_json::from_str(&text).expect("json");
    let schema = schema();
    assert!(
        schema.is_valid(&value),
        "{:?}",
        schema.iter_errors(&value).map(|wrong| wrong.to_string()).collect::<Vec<_>>()
    );
    value["specs"][0]["data"]["forms"][0]["garden"] = true.into();
    assert!(!schema.is_valid(&value));
}

/// A wait goes by the clock of the phone it was begun on.
#[test]
fn a_wait_that_runs_is_not_begun_by_an_import() {
    let marks = [
        ("0/rest".to_owned(), Tick { started: 5, got: "1 l".into(), ..Tick::default() }),
        ("0/stir".to_owned(), Tick { started: 5, done: 9, ..Tick::default() }),
        ("0/wait".to_owned(), Tick { started: 7, ..Tick::default() }),
    ];
    let run = Run { name: "Friday".into(), marks: marks.into(), ..Run::default() };
    let import = Import { runs: vec![("r".into(), run.clone())], ..Import::default() };
    let other = stored(&import);
    let book = load(&other, true).expect("readable");
    let marks = &book.run("r").expect("there").value.marks;
    assert_eq!((marks["0/rest"].started, marks["0/rest"].got.as_str()), (0, "1 l"));
    assert_eq!((marks["0/stir"].started, marks.get("0/wait")), (5, None));
    assert_eq!(import.count(&book), [0, 1, 0], "nothing new in it, there");
    // Where it runs it is the same, and goes on when the rest is taken from a file.
    let here = Faulty::default();
    here.plant("run/r", &meniscus::store::ledger::sealed(&run, 1).expect("json"));
    let book = load(&here, true).expect("readable");
    assert_eq!(import.count(&book), [0, 1, 0]);
    let theirs = Import { runs: vec![("r".into(), Run { notes: "slow".into(), ..run })], ..Import::default() };
    assert_eq!(theirs.count(&book), [0, 0, 1]);
    let deed = deeds::import(&book, &theirs, Merge::Replace, 2, || unreachable!()).expect("json");
    transact(&here, &deed.words, &deed.puts, 2).expect("done");
    assert_eq!(load(&here, true).expect("readable").run("r").expect("there").value.marks["0/rest"].started, 5);
    let deed = deeds::import(&book, &theirs, Merge::Beside, 2, || "two".into()).expect("json");
    let beside = meniscus::store::open::<Run>(deed.puts[0].text.as_deref().expect("a run")).expect("readable");
    assert_eq!(beside.data.marks["0/rest"].started, 0, "it rings once");
    // One that is finished is a log: nothing of it is changed.
    let log = Run { finished: 9, ..theirs.runs[0].1.clone() };
    assert_eq!(log.stilled(None), log);
}

#[test]
fn an_import_is_taken_by_choice_and_taken_back() {
    let keeper = stored(&Import { cards: demo_cards(5), ..Import::default() });
    let before = load(&keeper, true).expect("readable");
    let mut theirs = Import { cards: demo_cards(5), own: demo_own(5), ..Import::default() };
    theirs.cards[0].1.notes = "theirs".into();
    theirs.cards.push(("fresh".into(), Card { name: "Fresh".into(), ways: vec![Way::default()], ..Card::default() }));
    assert_eq!(theirs.count(&before), [3, 2, 1]);
    for (merge, notes, cards) in [(Merge::NewOnly, 0, 4), (Merge::Replace, 1, 4), (Merge::Beside, 1, 5)] {
        let deed = deeds::import(&before, &theirs, merge, 2, || "beside".to_owned()).expect("json");
        transact(&keeper, &deed.words, &deed.puts, 2).expect("done");
        let after = load(&keeper, true).expect("readable");
        let changed = after.cards.iter().filter(|entry| entry.value.notes == "theirs").count();
        assert_eq!((changed, after.cards.len(), after.own.len()), (notes, cards, 2), "{merge:?}");
        undo(&keeper, 3, |_, _, _| None, |key| format!("{key}~u")).expect("done");
        let back = load(&keeper, true).expect("readable");
        assert_eq!((&back.cards, &back.own), (&before.cards, &before.own), "{merge:?}");
    }
}

#[test]
fn two_versions_are_chosen_between() {
    let keeper = Faulty::default();
    let mine =
        entry("a", Card { name: "Lamp".into(), notes: "mine".into(), ways: vec![Way::default()], ..Card::default() });
    let other = entry("a~b", Card { notes: "other".into(), ..mine.value.clone() });
    for entry in [&mine, &other] {
        let text = meniscus::store::ledger::sealed(&entry.value, 1).expect("json");
        keeper.plant(&format!("spec/{}", entry.id), &text);
    }
    let book = load(&keeper, true).expect("readable");
    let deed = deeds::keep_this(&book, book.card("a~b").expect("there"), 2).expect("json");
    transact(&keeper, &deed.words, &deed.puts, 2).expect("done");
    let kept = load(&keeper, true).expect("readable");
    assert_eq!((kept.cards.len(), kept.cards[0].id.as_str(), kept.cards[0].value.notes.as_str()), (1, "a", "other"));
    undo(&keeper, 3, |_, _, _| None, |key| format!("{key}~u")).expect("done");
    let book = load(&keeper, true).expect("readable");
    assert_eq!(book.cards.len(), 2);
    let deed = deeds::keep_both(&book, book.card("a").expect("there"), 4, || "fresh".to_owned()).expect("json");
    transact(&keeper, &deed.words, &deed.puts, 4).expect("done");
    let both = load(&keeper, true).expect("readable");
    let mut ids: Vec<&str> = both.cards.iter().map(|entry| entry.id.as_str()).collect();
    ids.sort_unstable();
    assert_eq!(ids, ["a", "fresh"]);
}

/// What the app lets one make comes back from a backup, and so does what was once taken from a file; no more.
#[test]
fn as_much_is_read_as_can_have_been_kept() {
    let mut card = Card::blank(1);
    for _ in 0..MOST_WAYS + 5 {
        card = deeds::with_way(&card, 0);
    }
    assert_eq!(card.ways.len(), MOST_WAYS);
    let mut run = Run { parts: vec![Part { key: MOST_KEY, ..Part::default() }], ..Run::default() };
    for _ in 0..MOST_PARTS {
        run = with_parts(&run, vec![Part { tool: "fruit".into(), ..Part::default() }; 2], &Bench::default());
    }
    assert_eq!(run.parts.len(), MOST_PARTS);
    let import = Import { cards: vec![("c".into(), card)], runs: vec![("r".into(), run)], ..Import::default() };
    let text = whole(&stored(&import));
    assert_eq!(read(&text), Ok(import));
    let with = |forms: usize| {
        let card = Card { name: "Lamp".into(), ways: vec![Way::default(); forms], ..Card::default() };
        let import = read(&one("c", &card).expect("json")).expect("a backup");
        (import.cards.first().map_or(0, |(_, card)| card.ways.len()), import.refused)
    };
    assert_eq!(with(1_000), (1_000, Vec::new()), "once taken");
    assert_eq!(with(1_001), (0, vec!["Spec 1, “Lamp”: its number of forms can't be used.".to_owned()]));
    let parts = |keys: &[u32]| {
        let parts: Vec<String> = keys.iter().map(|key| format!(r#"{{"key":{key}}}"#)).collect();
        let parts = parts.join(",");
        let text = format!(
            r#"{{"kind":"meniscus backup","version":2,"at":1,"runs":[{{"id":"r","data":{{"parts":[{parts}]}}}}]}}"#
        );
        read(&text).expect("a backup").refused
    };
    assert_eq!(parts(&[0, MOST_KEY]), Vec::<String>::new());
    let refused = |field: &str| [format!("Run sheet 1, “”: its {field} can't be used.")];
    assert_eq!(parts(&[0, MOST_KEY + 1]), refused("key of a prep"));
    assert_eq!(parts(&[1, 1]), refused("key of a prep"));
    assert_eq!(parts(&(0..1_001).collect::<Vec<u32>>()), refused("number of preps"));
}

proptest! {
    #[test]
    fn a_backup_comes_back_whole_and_fits_the_schema(import in books(), besides in besides()) {
        let mut import = import;
        let keeper = stored(&import);
        // Waits are not begun by an import.
        for (_, run) in &mut import.runs {
            *run = run.stilled(None);
        }
        let book = load(&keeper, true).expect("readable");
        let text = backup(&book, besides.clone(), 9).expect("json");
        import.besides = besides;
        let back = read(&text).expect("our own");
        let sorted = |mut import: Import| { import.cards.sort_by(|a, b| a.0.cmp(&b.0)); import.own.sort_by(|a, b| a.0.cmp(&b.0)); import };
        prop_assert_eq!(sorted(back), sorted(import));
        let value: serde_json::Value = serde_json::from_str(&text).expect("json");
        prop_assert!(schema().is_valid(&value));
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 10_000, ..ProptestConfig::default() })]

    /// A real backup with bytes changed, cut out and put in: read or refused in words, never a panic.
    #[test]
    fn no_file_breaks_the_import(at in 0_usize..4000, cut in 0_usize..60, put in "[\\PC\"{}\\[\\]:,0-9\\\\]{0,12}") {
        thread_local!(static TEXT: String = {
            let keeper = stored(&Import { cards: demo_cards(5), own: demo_own(5), ..Import::default() });
            whole(&keeper)
        });
        let mangled = TEXT.with(|text| {
            let chars: Vec<char> = text.chars().collect();
            let at = at.min(chars.len());
            let end = (at + cut).min(chars.len());
            chars[..at].iter().copied().chain(put.chars()).chain(chars[end..].iter().copied()).collect::<String>()
        });
        match read(&mangled) {
            Ok(import) => prop_assert!(import.cards.iter().all(|(id, card)| !id.contains('/') && !card.ways.is_empty())),
            Err(problem) => prop_assert!(!problem.to_string().is_empty()),
        }
    }
}
