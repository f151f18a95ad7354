//! Every version that was ever saved opens today: one file a value in `fixtures/v<version>`, never changed once
//! shipped. When the format changes, add a folder.

use std::fs;
use std::path::Path;

use meniscus::book::{Card, Logged, Origin, Own, Part, Run, Stamp, Tasting, Texts, Tick, Way};
use meniscus::store::{Kept, VERSION, checksum, open, seal};

fn fixture(name: &str) -> String {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/fixtures").join(name);
    fs::read_to_string(&file).unwrap_or_else(|problem| panic!("{}: {problem}", file.display()))
}

fn texts(pairs: &[(&str, &str)]) -> Texts {
    pairs.iter().map(|(name, text)| ((*name).to_owned(), (*text).to_owned())).collect()
}

fn card() -> Card {
    Card {
        name: "Orchard lantern".into(),
        tags: "autumn, stirred".into(),
        notes: "Warm the glass — “never” the drink.".into(),
        made: 1_764_072_000_000,
        ways: vec![Way {
            name: "clear".into(),
            lines: "45 ml pear brandy\n20 ml dry vermouth\nLemon twist".into(),
            method: "stirred".into(),
            glass: "small wine glass".into(),
            holds: "140 ml".into(),
            ice: "one clear block".into(),
            garnish: "lemon twist".into(),
            steps: "Stir 30 s\nRest 2 min".into(),
            ..Way::default()
        }],
    }
}

fn own() -> Own {
    Own {
        name: "quince liqueur".into(),
        like: "liqueur".into(),
        strength: "22".into(),
        sugar: "250".into(),
        acid: "4".into(),
        made: 1_764_072_000_000,
        ..Own::default()
    }
}

/// Since version 3 an ingredient may have all that it holds.
fn made_here() -> Own {
    Own { holds: "sugar 250 g/l, citric 3 g/l, malic 1 g/l, solids 5 g/l, salts 6 mmol/l".into(), ..own() }
}

fn run() -> Run {
    let part =
        |key, tool: &str, from, pairs: &[(&str, &str)]| Part { key, tool: tool.into(), from, texts: texts(pairs) };
    let blend = Tick { started: 1_764_072_060_000, done: 1_764_074_760_000, ..Tick::default() };
    let filter =
        Tick { done: 1_764_078_000_000, got: "780 ml".into(), brix: "11".into(), ph: "2.4".into(), ..Tick::default() };
    Run {
        name: "Friday, orchard lantern".into(),
        ready: "2026-11-28T18:30".into(),
        slack: String::new(),
        notes: "Slow through the paper — warm it next time.".into(),
        made: 1_764_072_000_000,
        finished: 0,
        parts: vec![
            part(0, "clear", None, &[("juice", "1 kg"), ("method", "enzyme")]),
            part(2, "cordial", Some(0), &[("juice", "1 l")]),
        ],
        marks: [("0/blend".to_owned(), blend), ("0/filter".to_owned(), filter)].into(),
        log: vec![Logged {
            key: "0/blend".into(),
            title: "Lime, cleared with enzyme".into(),
            words: "Blend 2.5 g enzyme into 1 000 g of lime, 1 min".into(),
            planned: "waits 45 min".into(),
        }],
    }
}

#[test]
fn version_1() {
    let opened = open::<Kept>(&fixture("v1/tool-measure.json")).expect("readable");
    assert_eq!(opened.data.now, texts(&[("amount", "45 ml"), ("liquid", "spirit-40")]));
    assert_eq!(opened.data.before, [texts(&[("amount", "1¾ oz")])]);
    assert_eq!((opened.stamp, opened.newer), (Stamp::default(), None));
}

#[test]
fn version_2() {
    let stamp = Stamp { rev: 3, at: 1_764_072_000_000 };
    let kept = Kept { now: texts(&[("amount", "45 ml")]), before: Vec::new() };
    assert_eq!(
        open::<Kept>(&fixture("v2/tool-measure.json")).map(|opened| (opened.data, opened.stamp)),
        Ok((kept, stamp))
    );
    assert_eq!(open::<Card>(&fixture("v2/spec.json")).map(|opened| (opened.data, opened.stamp)), Ok((card(), stamp)));
    assert_eq!(
        open::<Own>(&fixture("v2/ingredient.json")).map(|opened| (opened.data, opened.stamp)),
        Ok((own(), stamp))
    );
    assert_eq!(open::<Run>(&fixture("v2/run.json")).map(|opened| (opened.data, opened.stamp)), Ok((run(), stamp)));
}

/// A run as version 3 first had it: with its slack, and how warm what came out was.
fn run_3() -> Run {
    let mut run = Run { slack: "45".into(), ..run() };
    run.marks.or_default("0/filter").celsius = "4".into();
    run
}

#[test]
fn version_3() {
    let stamp = Stamp { rev: 3, at: 1_764_072_000_000 };
    let opened = open::<Own>(&fixture("v3/ingredient.json")).map(|opened| (opened.data, opened.stamp));
    assert_eq!(opened, Ok((made_here(), stamp)));
    assert_eq!(open::<Card>(&fixture("v3/spec.json")).map(|opened| (opened.data, opened.stamp)), Ok((card(), stamp)));
    let opened = open::<Run>(&fixture("v3/run.json"));
    assert_eq!(opened.map(|opened| (opened.data, opened.stamp, opened.newer)), Ok((run_3(), stamp, None)));
}

/// A spec as version 4 first had it: a form made from another, and how it tasted.
fn card_4() -> Card {
    let first = Way { key: "k1".into(), ..card().ways.remove(0) };
    let was = Way {
        lines: "45 ml pear brandy".into(),
        method: "stirred".into(),
        steps: "Stir 20 s".into(),
        ..Way::default()
    };
    let tasting = Tasting {
        at: 1_764_075_600_000,
        words: "Thin — stir less.".into(),
        score: "7".into(),
        whom: "the kitchen".into(),
        was,
    };
    let washed = Way {
        name: "washed".into(),
        lines: "900 ml pear brandy\n350 ml whole milk".into(),
        method: "washed".into(),
        makes: "12".into(),
        gives: "1.1 l".into(),
        notes: "Strain twice.".into(),
        from: Origin {
            spec: "a1".into(),
            form: "k1".into(),
            lines: first.lines.clone(),
            tool: "milk".into(),
            texts: texts(&[("share", "25")]),
        },
        tastings: vec![tasting],
        ..Way::default()
    };
    Card { ways: vec![first, washed], ..card() }
}

/// A prep as version 4 first had it.
fn prep() -> Own {
    Own { parts: "500 ml quince juice\n300 g sugar".into(), gives: "700 ml".into(), keeps: "14".into(), ..made_here() }
}

#[test]
fn version_4() {
    let stamp = Stamp { rev: 3, at: 1_764_072_000_000 };
    assert_eq!(open::<Card>(&fixture("v4/spec.json")).map(|opened| (opened.data, opened.stamp)), Ok((card_4(), stamp)));
    let opened = open::<Own>(&fixture("v4/ingredient.json"));
    assert_eq!(opened.map(|opened| (opened.data, opened.stamp, opened.newer)), Ok((prep(), stamp, None)));
}

/// What is written today is what the newest fixtures hold: a change of format cannot slip in unseen.
#[test]
fn todays_writing_is_the_newest_fixture() {
    assert_eq!(VERSION, 4);
    let stamp = Stamp { rev: 3, at: 1_764_072_000_000 };
    let kept = Kept { now: texts(&[("amount", "45 ml")]), before: Vec::new() };
    for (name, text) in [
        ("tool-measure", seal(&kept, stamp)),
        ("spec", seal(&card_4(), stamp)),
        ("ingredient", seal(&prep(), stamp)),
        ("run", seal(&run_3(), stamp)),
    ] {
        assert_eq!(text.expect("json"), fixture(&format!("v4/{name}.json")), "{name}");
    }
}

/// The check value of CRC-32/ISO-HDLC, the CRC of gzip (RFC 1952) and ITU-T V.42: "123456789" gives CBF43926.
/// Source: G. Cook, Catalogue of parametrised CRC algorithms, from memory; crc32fast computes the same.
#[test]
fn the_checksum_is_the_published_one() {
    assert_eq!(checksum("123456789"), 0xCBF4_3926);
    for text in ["", "a", "{\"v\":2}", "pear brandy — 45 ml"] {
        assert_eq!(checksum(text), crc32fast::hash(text.as_bytes()), "{text}");
    }
}
