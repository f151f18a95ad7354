//! A spec as it is shown.

use std::sync::Arc;

use super::*;
use crate::book::{Book, Entry, Stamp, demo_cards};
use crate::screen::{Held, Texts};
use crate::tool::screen;

fn bench() -> Bench {
    let entry =
        |(id, value)| Arc::new(Entry { id, value, stamp: Stamp::default(), newer: None, pairs: Default::default() });
    let book = Book { cards: demo_cards(0).into_iter().map(entry).collect(), ..Book::default() };
    Bench { book: Held::new(book), ..Bench::default() }
}

fn texts(pairs: &[(&str, &str)]) -> Texts {
    pairs.iter().map(|(name, text)| ((*name).to_owned(), (*text).to_owned())).collect()
}

#[test]
fn shows_the_way_that_is_open() {
    let quick = screen(Route::Card, &texts(&[("id", "demo-1")]), &bench());
    assert_eq!(quick.strip.figures[0].to_string(), "17.2 % vol");
    assert!(
        quick.strip.also.starts_with("Orchard lantern, 105 ml before ice. Built, tumbler, crushed"),
        "{:?}",
        quick.strip
    );
    let stirred = screen(Route::Card, &texts(&[("id", "demo-1"), ("at", "1")]), &bench());
    assert!(stirred.field("lines").is_some_and(|field| field.text.starts_with("45 ml pear brandy\n20 ml dry")));
    let oz = bench();
    let card = Arc::new(Entry {
        value: edited(&oz.book.cards[0].value, 0, "lines", "2 oz gin\n1 oz lemon juice").expect("a field"),
        ..Entry::clone(&oz.book.cards[0])
    });
    let oz = Bench { book: Held::new(Book { cards: vec![card], ..Book::default() }), ..Bench::default() };
    let ounces = screen(Route::Card, &texts(&[("id", "demo-1")]), &oz);
    assert!(ounces.strip.also.starts_with("Orchard lantern, 3 oz, 88."), "{:?}", ounces.strip);
    let far = screen(Route::Card, &texts(&[("id", "demo-1"), ("at", "99")]), &bench());
    assert_eq!(far.field("way").map(|field| field.text.as_str()), Some("washed"));
    let none = screen(Route::Card, &texts(&[("id", "gone")]), &bench());
    assert_eq!(none.strip.also, "Choose a spec in All, or start one.");
}

#[test]
fn what_each_line_is_read_as_is_said_on_the_spec() {
    let bench = bench();
    let form = CardForm {
        id: "demo-1".into(),
        lines: "60 ml gin\n20 ml lime juise\n20 ml moon dust\n8 mint leaves\nStir".into(),
        ..CardForm::default()
    };
    let answer = form.answer(&bench);
    let details: Vec<&str> = answer.rows.iter().map(|row| row.detail.as_str()).collect();
    assert_eq!(
        details,
        [
            "as London dry gin, 40 % vol",
            "as Lime juice, 15 g/l sugar, 44.3 g/l acid (citric 39 to 53 g/l); read as lime juice",
            "Not known, so not counted. What is it like?",
            "By the piece, not in the volume.",
            "No amount, so it is kept as it is.",
        ]
    );
    assert!(!answer.rows.iter().any(|row| row.detail.contains("; volume ")));
    assert!(answer.strip.also.ends_with("1 line not counted"), "{:?}", answer.strip);
    assert_eq!(answer.leads, "1 line not counted");
    // A tap on what it is like puts the line right.
    let fix = answer.rows[2].fixes[0].clone();
    let settled = CardForm { lines: form.lines.replace("20 ml moon dust", &fix.text), ..form };
    assert_eq!(settled.answer(&bench).leads, "");
}

#[test]
fn lines_move_and_go() {
    let shown = screen(Route::Card, &texts(&[("id", "demo-1"), ("at", "1")]), &bench());
    let Some(Block::Table(_, rows)) = shown.blocks.iter().find(|block| matches!(block, Block::Table(..))) else {
        panic!("a table")
    };
    assert_eq!(rows[0].buttons.len(), 1, "the first cannot go up");
    let put = |button: &Button| match &button.act {
        Act::Put(puts) => puts[0].1.clone(),
        other => panic!("{other:?}"),
    };
    assert!(put(&rows[1].buttons[0]).starts_with("20 ml dry vermouth\n45 ml pear brandy\n15 ml"));
    assert!(!put(&rows[1].buttons[1]).contains("vermouth"));
}

#[test]
fn a_text_goes_into_its_record_and_no_other() {
    let card = demo_cards(0).remove(0).1;
    let changed = edited(&card, 1, "garnish", "pear fan").expect("a field");
    assert_eq!(changed.ways[1].garnish, "pear fan");
    assert_eq!(changed.ways[0], card.ways[0]);
    assert_eq!(edited(&card, 0, "name", "Lamp").expect("a field").name, "Lamp");
    assert_eq!(edited(&card, 9, "lines", ""), None);
    // A tap on a line's fix, and one that changes nothing.
    let fixed = super::changed(&card, 0, &Act::Rewrite("30 ml pear juice".into(), "30 ml pear purée".into()))
        .expect("a change");
    assert!(fixed.ways[0].lines.contains("\n30 ml pear purée\n"));
    assert_eq!(super::changed(&card, 0, &Act::Rewrite("no such line".into(), "x".into())), None);
    assert_eq!(edited(&card, 0, "search", ""), None);
    let mut card = card;
    for name in FIELDS {
        assert!(
            card.fields().iter().any(|(field, _)| *field == name)
                || card.ways[0].fields().iter().any(|(field, _)| *field == name),
            "{name}"
        );
    }
}

#[test]
fn plain_text_says_all_of_it() {
    let card = demo_cards(0).remove(0).1;
    let text = plain(&card);
    assert!(text.starts_with("Orchard lantern\n\nquick\n45 ml pear brandy\n"), "{text}");
    for part in
        ["Method: stirred", "Glass: tumbler", "It holds: 300 ml", "Garnish: pear slice", "Stir 30 s", "11 coins"]
    {
        assert!(text.contains(part), "{part}");
    }
}
