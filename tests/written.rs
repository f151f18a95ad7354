//! What is written, letter for letter: the fields, their order, which are left out when they are empty, and how texts
//! are quoted. A program of another year reads it, so it does not change unseen.

mod faulty;

use faulty::Faulty;
use meniscus::book::{
    Aside, Besides, Book, Card, Entry, Import, Logged, Origin, Own, Part, Run, Stamp, Tasting, Tick, Way,
};
use meniscus::store::backup::{backup, one, read};
use meniscus::store::deeds::{self, Merge};
use meniscus::store::journal::{Put, transact, undo};
use meniscus::store::recipe::recipes;
use meniscus::store::{Keeper, Kept, checksum, open, seal};

/// What stands in the envelope.
fn data(text: Result<String, serde_json::Error>) -> String {
    inner(&text.expect("json"))
}

fn inner(text: &str) -> String {
    let (_, data) = text.split_once("\"v\":4,\"rev\":1,\"at\":2,\"data\":").expect("an envelope");
    data.strip_suffix('}').expect("its end").to_owned()
}

const ONE: Stamp = Stamp { rev: 1, at: 2 };

#[test]
fn what_is_empty_is_left_out_and_the_rest_is_not() {
    assert_eq!(data(seal(&Card::default(), ONE)), r#"{"name":"","made":0,"forms":[]}"#);
    assert_eq!(data(seal(&Card::blank(7), ONE)), r#"{"name":"","made":7,"forms":[{}]}"#);
    assert_eq!(data(seal(&Own::default(), ONE)), r#"{"name":"","like":"","made":0}"#);
    assert_eq!(data(seal(&Run::default(), ONE)), r#"{"name":"","made":0,"parts":[],"marks":{}}"#);
    assert_eq!(data(seal(&Kept::default(), ONE)), r#"{"now":{}}"#);
    let run = Run {
        finished: 9,
        parts: vec![Part::default(), Part { from: Some(0), ..Part::default() }],
        marks: [("0/a".to_owned(), Tick::default()), ("0/b".to_owned(), Tick { done: 3, ..Tick::default() })].into(),
        log: vec![Logged::default()],
        ..Run::default()
    };
    assert_eq!(
        data(seal(&run, ONE)),
        concat!(
            r#"{"name":"","made":0,"finished":9,"#,
            r#""parts":[{"key":0,"tool":"","texts":{}},{"key":0,"tool":"","from":0,"texts":{}}],"#,
            r#""marks":{"0/a":{},"0/b":{"done":3}},"log":[{"key":"","title":"","words":""}]}"#
        )
    );
}

fn own() -> Own {
    Own {
        name: "a".into(),
        like: "b".into(),
        strength: "c".into(),
        sugar: "d".into(),
        brix: "e".into(),
        acid: "f".into(),
        holds: "h".into(),
        notes: "g".into(),
        made: u64::MAX,
        ..Own::default()
    }
}

fn run() -> Run {
    let tick = Tick { started: 1, done: 2, got: "i".into(), brix: "j".into(), ph: "k".into(), celsius: "p".into() };
    Run {
        name: "a".into(),
        ready: "b".into(),
        slack: "q".into(),
        notes: "c".into(),
        made: 3,
        finished: 4,
        parts: vec![Part {
            key: u32::MAX,
            tool: "d".into(),
            from: Some(5),
            texts: [("z".to_owned(), "e".to_owned()), ("é".into(), "f".into()), ("A".into(), "g".into())].into(),
        }],
        marks: [("h".to_owned(), tick)].into(),
        log: vec![Logged { key: "l".into(), title: "m".into(), words: "n".into(), planned: "o".into() }],
    }
}

#[test]
fn fields_stand_in_their_order_and_names_in_theirs() {
    assert_eq!(
        data(seal(&own(), ONE)),
        concat!(
            r#"{"name":"a","like":"b","strength":"c","sugar":"d","brix":"e","acid":"f","holds":"h","notes":"g","#,
            r#""made":18446744073709551615}"#
        )
    );
    assert_eq!(
        data(seal(&run(), ONE)),
        concat!(
            r#"{"name":"a","ready":"b","slack":"q","notes":"c","made":3,"finished":4,"#,
            r#""parts":[{"key":4294967295,"tool":"d","from":5,"texts":{"A":"g","z":"e","é":"f"}}],"#,
            r#""marks":{"h":{"started":1,"done":2,"got":"i","brix":"j","ph":"k","celsius":"p"}},"#,
            r#""log":[{"key":"l","title":"m","words":"n","planned":"o"}]}"#
        )
    );
    for text in [seal(&own(), ONE), seal(&run(), ONE)] {
        let text = text.expect("json");
        let again = open::<Own>(&text).map(|own| seal(&own.data, own.stamp));
        let again = again.or_else(|_| open::<Run>(&text).map(|run| seal(&run.data, run.stamp)));
        assert_eq!(again.expect("opens").expect("json"), text);
    }
}

#[test]
fn every_letter_is_quoted_as_ever() {
    let all: String = (0..0x100_u32).chain([0x2028, 0x1F34B]).filter_map(char::from_u32).collect();
    let kept = Kept { now: [(all.clone(), all.clone())].into(), before: vec![[(String::new(), "\\\"".into())].into()] };
    let mut quoted = String::new();
    for c in all.chars() {
        match c {
            '"' => quoted.push_str("\\\""),
            '\\' => quoted.push_str("\\\\"),
            '\u{8}' => quoted.push_str("\\b"),
            '\t' => quoted.push_str("\\t"),
            '\n' => quoted.push_str("\\n"),
            '\u{c}' => quoted.push_str("\\f"),
            '\r' => quoted.push_str("\\r"),
            c if c < ' ' => quoted.push_str(&format!("\\u{:04x}", u32::from(c))),
            c => quoted.push(c),
        }
    }
    let text = seal(&kept, ONE).expect("json");
    assert_eq!(inner(&text), format!(r#"{{"now":{{"{quoted}":"{quoted}"}},"before":[{{"":"\\\""}}]}}"#));
    assert_eq!(open::<Kept>(&text).expect("opens").data, kept);
}

#[test]
fn the_journal_is_written_with_what_undo_needs_and_read_without() {
    let keeper = Faulty::default();
    let put = |key: &str, text: Option<&str>| Put { key: key.into(), text: text.map(str::to_owned), from: None };
    transact(&keeper, "“two”", &[put("spec/a", Some("x")), put("spec/b", None)], 7).expect("done");
    let text = keeper.get("acts").expect("readable").expect("there");
    let (_, body) = text.split_once(',').expect("an envelope");
    assert_eq!(
        body,
        concat!(
            r#""v":4,"rev":2,"at":7,"data":[{"words":"“two”","number":1,"at":7,"many":false,"done":true,"#,
            r#""changes":[{"key":"spec/a","was":null,"put":2363233923,"data":2363233923},"#,
            r#"{"key":"spec/b","was":null,"put":null,"data":null}]}]}"#
        )
    );
    assert_eq!(undo(&keeper, 8, |_, _, _| None, str::to_owned), Ok(Some("“two”".into())));
    assert_eq!(keeper.get("spec/a"), Ok(None));
    // Without number, time and data: as it was written before a deed was told apart by where it was done.
    let body = concat!(
        r#""v":4,"rev":2,"at":7,"data":[{"words":"“two”","done":true,"#,
        r#""changes":[{"key":"spec/a","was":null,"put":2363233923},{"key":"spec/b","was":null,"put":null}]}]}"#
    );
    keeper.set("acts", &format!("{{\"sum\":\"{:08x}\",{body}", checksum(body))).expect("room");
    keeper.set("spec/a", "x").expect("room");
    assert_eq!(undo(&keeper, 8, |_, _, _| None, str::to_owned), Ok(Some("“two”".into())));
    assert_eq!(keeper.get("spec/a"), Ok(None));
}

fn entry<T>(id: &str, value: T) -> std::sync::Arc<Entry<T>> {
    Entry { id: id.into(), value, stamp: ONE, newer: None, pairs: Default::default() }.into()
}

fn lamp() -> Card {
    let way = Way { name: "clear".into(), lines: "45 ml gin\n\n20 ml lime".into(), ..Way::default() };
    let full = Way {
        name: "w".into(),
        lines: "l".into(),
        method: "stirred".into(),
        glass: "g".into(),
        holds: "140 ml".into(),
        ice: "i".into(),
        garnish: "r".into(),
        steps: "Stir\nRest 2 min".into(),
        ..Way::default()
    };
    Card { name: "Lamp".into(), tags: "t".into(), notes: "n".into(), made: 3, ways: vec![way, full, Way::default()] }
}

#[test]
fn a_backup_is_written_as_ever() {
    let short = concat!(
        r#"{"kind":"meniscus backup","version":1,"at":0,"specs":[{"id":"a","data":{"name":"Lamp","tags":"t","#,
        r#""notes":"n","made":3,"forms":[{"name":"clear","lines":"45 ml gin\n\n20 ml lime"},"#,
        r#"{"name":"w","lines":"l","method":"stirred","glass":"g","holds":"140 ml","ice":"i","garnish":"r","#,
        r#""steps":"Stir\nRest 2 min"},{}]}}]}"#
    );
    assert_eq!(one("a", &lamp()).expect("json"), short);
    // What one bar says of its guests, and what a form was made from, is not handed on.
    let mut tasted = lamp();
    let was = Way { lines: "45 ml gin".into(), ..Way::default() };
    tasted.ways[0].tastings.push(Tasting {
        at: 7,
        words: "Thin".into(),
        whom: "table 4".into(),
        was,
        ..Tasting::default()
    });
    tasted.ways[1].from = Origin { spec: "b".into(), lines: "l".into(), ..Origin::default() };
    assert_eq!(one("a", &tasted).expect("json"), short);
    // What it makes, gives and its notes are.
    let Way { makes, gives, notes, .. } = &mut tasted.ways[2];
    ["12", "1.1 l", "f"].map(str::to_owned).into_iter().zip([makes, gives, notes]).for_each(|(text, to)| *to = text);
    let handed = short.replace("\"version\":1", "\"version\":5");
    let handed = handed.replace(",{}]", r#",{"makes":"12","gives":"1.1 l","notes":"f"}]"#);
    assert_eq!(one("a", &tasted).expect("json"), handed);
    let empty = "{\n  \"kind\": \"meniscus backup\",\n  \"version\": 5,\n  \"at\": 9,\n  \"specs\": []\n}";
    assert_eq!(backup(&Book::default(), Besides::default(), 9).expect("json"), empty);
    let card = Card { name: "Lamp".into(), ways: vec![Way::default()], ..Card::default() };
    let part = Part { texts: [("juice".to_owned(), "1 l".to_owned())].into(), ..Part::default() };
    let book = Book {
        cards: vec![entry("a", card)],
        own: vec![entry("b", Own::default())],
        runs: vec![entry("c", Run { parts: vec![part], ..Run::default() })],
        ..Book::default()
    };
    let texts = |name: &str, text: &str| [(name.to_owned(), text.to_owned())].into();
    let besides = Besides {
        settings: texts("dash", "1 ml"),
        tools: [("measure".to_owned(), texts("amount", "2 oz"))].into(),
        aside: vec![Aside { key: "tool/scale".into(), text: "{\"v\"".into() }],
    };
    let text = backup(&book, besides, 9).expect("json");
    assert_eq!(
        text,
        r#"{
  "kind": "meniscus backup",
  "version": 5,
  "at": 9,
  "specs": [
    {
      "id": "a",
      "data": {
        "name": "Lamp",
        "made": 0,
        "forms": [
          {}
        ]
      }
    }
  ],
  "ingredients": [
    {
      "id": "b",
      "data": {
        "name": "",
        "like": "",
        "made": 0
      }
    }
  ],
  "runs": [
    {
      "id": "c",
      "data": {
        "name": "",
        "made": 0,
        "parts": [
          {
            "key": 0,
            "tool": "",
            "texts": {
              "juice": "1 l"
            }
          }
        ],
        "marks": {}
      }
    }
  ],
  "settings": {
    "dash": "1 ml"
  },
  "tools": {
    "measure": {
      "amount": "2 oz"
    }
  },
  "aside": [
    {
      "key": "tool/scale",
      "text": "{\"v\""
    }
  ]
}"#
    );
    let import: Import = read(&text).expect("our own");
    assert!(deeds::import(&book, &import, Merge::Replace, 3, String::new).expect("json").puts.is_empty(), "the same");
}

#[test]
fn recipes_are_written_as_ever() {
    let card = Card { ways: lamp().ways.into_iter().skip(1).collect(), ..lamp() };
    assert_eq!(
        recipes(&card),
        r#"{
  "@context": {
    "@vocab": "https://schema.org/"
  },
  "@graph": [
    {
      "@type": "Recipe",
      "alternateName": "w",
      "cookingMethod": "stirred",
      "description": "n",
      "keywords": "t",
      "name": "Lamp",
      "recipeCategory": "Drink",
      "recipeIngredient": [
        "l"
      ],
      "recipeInstructions": [
        {
          "@type": "HowToStep",
          "text": "Stir"
        },
        {
          "@type": "HowToStep",
          "text": "Rest 2 min"
        }
      ],
      "supply": [
        {
          "@type": "HowToSupply",
          "description": "i",
          "name": "ice"
        },
        {
          "@type": "HowToSupply",
          "description": "r",
          "name": "garnish"
        }
      ],
      "tool": [
        {
          "@type": "HowToTool",
          "description": "140 ml",
          "name": "g"
        }
      ]
    },
    {
      "@type": "Recipe",
      "description": "n",
      "keywords": "t",
      "name": "Lamp",
      "recipeCategory": "Drink",
      "recipeIngredient": []
    }
  ]
}"#
    );
}
