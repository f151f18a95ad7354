//! What is saved as text or as a table opens again, and so does what people write down.

use proptest::prelude::*;

use meniscus::book::{Card, Way, demo_cards};
use meniscus::screen::route::Route;
use meniscus::screen::{Bench, Texts};
use meniscus::store::ImportProblem;
use meniscus::tool::screen;
use meniscus::tool::specs::card::{AMOUNT, plain, read_plain, typed_in};
use meniscus::tool::specs::texts::read;

fn one_line(text: &str) -> String {
    text.lines().map(str::trim).filter(|line| !line.is_empty()).collect::<Vec<_>>().join(" ")
}

/// As text has it: without blank lines among lines, spaces at their ends, and when it was made.
fn normal(mut card: Card) -> Card {
    card.made = 0;
    (card.name, card.tags) = (one_line(&card.name), one_line(&card.tags));
    card.notes = card.notes.replace("\r\n", "\n").trim().to_owned();
    for way in &mut card.ways {
        for (name, text) in way.fields() {
            let lines: Vec<&str> = text.lines().map(str::trim).filter(|line| !line.is_empty()).collect();
            *text = lines.join(if matches!(name, "lines" | "steps" | "form_notes") { "\n" } else { " " });
        }
    }
    card
}

/// Lines, some of which look like something else.
fn lines() -> impl Strategy<Value = String> {
    let sly = [
        "60 ml gin",
        "Lemon twist",
        "Garnish: lemon twist",
        "\\Ice: none",
        "\\",
        "",
        "  ",
        "Form: x",
        "Steps:",
        "Steps: stir",
        "Notes: none",
        "Tags: a",
        "quick",
        "½ lime",
        "It holds:",
        "It makes: 12",
        "On this form: strain twice",
        "Without a name",
    ];
    let line = prop_oneof![4 => prop::sample::select(sly.to_vec()).prop_map(str::to_owned), 1 => "\\PC{0,20}"];
    prop::collection::vec(line, 0..5).prop_map(|lines| lines.join("\n"))
}

fn cards() -> impl Strategy<Value = Card> {
    let way = prop::collection::vec(lines(), 11).prop_map(|texts| {
        let mut way = Way::default();
        for ((_, field), text) in way.fields().into_iter().zip(texts) {
            *field = text;
        }
        way
    });
    (prop::collection::vec(lines(), 3), prop::collection::vec(way, 1..4)).prop_map(|(texts, ways)| {
        let mut card = Card { ways, ..Card::default() };
        for ((_, field), text) in card.fields().into_iter().zip(texts) {
            *field = text;
        }
        card.notes = card.notes.replace('\n', "\n\n");
        card
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 2_000, ..ProptestConfig::default() })]

    #[test]
    fn a_card_saved_as_text_opens_as_it_was(card in cards()) {
        prop_assume!(one_line(&card.name) != "Without a name");
        prop_assert_eq!(read_plain(&plain(&card)), Some(normal(card.clone())), "{}", plain(&card));
        prop_assert_eq!(read_plain(&plain(&card).replace('\n', "\r\n")), Some(normal(card)));
    }

    #[test]
    fn no_text_breaks_the_import(text in "(\\PC|\n|\"|,|;){0,200}") {
        if let Ok(import) = read(&text, &Bench::default()) {
            prop_assert!(import.cards.len() == 1 && !import.cards[0].1.ways.is_empty());
        }
    }

    /// The table that Scale saves, opened and scaled by one, is that table.
    #[test]
    fn a_table_opens_with_its_amounts(picked in prop::collection::vec(0_usize..12, 0..9), factor in 1_u32..40) {
        let all = [
            "60 ml gin", "22.5 ml lime juice", "2 dashes bitters", "1 egg white", "8 mint leaves", "400 g pear purée",
            "Lemon twist", "=1+1 ml gin", "-- top with soda", "1 oz \"quoted\" syrup, dry; still", "1.2 l water", "½ lime",
        ];
        let mut spec: Vec<&str> = picked.into_iter().map(|at| all[at]).collect();
        spec.push("45 ml rye whiskey");
        let csv = |spec: &str, factor: u32| {
            let texts = [("by", "times"), ("factor", &factor.to_string()), ("rounding", "1ml"), ("spec", spec)];
            let texts: Texts = texts.map(|(name, text)| (name.to_owned(), text.to_owned())).into();
            screen(Route::Scale, &texts, &Bench::default()).csv()
        };
        let saved = csv(&spec.join("\n"), factor);
        let lines = |saved: &str| read(saved, &Bench::default()).expect("a spec").cards.remove(0).1.ways.remove(0).lines;
        let opened = lines(&saved);
        prop_assert_eq!(opened.lines().count(), spec.len());
        prop_assert_eq!(lines(&csv(&opened, 1)), opened.clone(), "{}", saved);
        // As a spreadsheet may save it again.
        prop_assert_eq!(lines(&saved.replace("\",\"", "\";\"")), opened);
    }
}

#[test]
fn the_demo_opens_from_its_text() {
    for (_, card) in demo_cards(7) {
        let import = read(&plain(&card), &Bench::default()).expect("ours");
        assert_eq!(import.cards[0].1, normal(card.clone()));
        assert_eq!(read(&plain(&card), &Bench::default()), Ok(import), "the same twice");
    }
}

#[test]
fn what_somebody_wrote_down_is_one_spec() {
    let of = |text: &str| read(text, &Bench::default()).map(|mut import| import.cards.remove(0).1);
    let lines = |text: &str| of(text).map(|card| (card.name, card.ways[0].lines.clone()));
    let pair = |name: &str, lines: &str| Ok((name.to_owned(), lines.to_owned()));
    assert_eq!(lines("2 oz gin\n3/4 oz lemon"), pair("", "2 oz gin\n3/4 oz lemon"));
    let parted = of("2 oz gin\n\n3/4 oz lemon\n\nshake").map(|mut card| card.ways.remove(0));
    let steps = parted.map(|way| (way.lines, way.steps));
    assert_eq!(steps, pair("2 oz gin\n3/4 oz lemon", "shake"), "a block without an amount is steps");
    assert_eq!(lines("\u{feff}Gin sour\r\n2 oz gin\r\nshake"), pair("Gin sour", "2 oz gin\nshake"));
    assert_eq!(lines("Gin sour\n\n2 oz gin\n1 oz lemon"), pair("Gin sour", "2 oz gin\n1 oz lemon"));
    assert_eq!(lines("60 ml gin"), pair("", "60 ml gin"));
    let long = format!("{}\n60 ml gin", "word ".repeat(30).trim());
    assert_eq!(lines(&long), pair("", &long), "no name is so long");
    for text in ["Dear all,\n\nsee you at six.", "x", "ingredient,amount\nlemon twist,"] {
        assert_eq!(of(text), Err(ImportProblem::NoSpec), "{text}");
    }
    assert_eq!(of(&"60 ml gin\n".repeat(30_000)), Err(ImportProblem::TooLong));
    assert_eq!(
        lines("ingredient,amount\ngin,60 ml\n\"lemon, dry\",\"22 ml\""),
        pair("", "60 ml gin\n22 ml lemon, dry")
    );
}

proptest! {
    /// What is typed in a field of a line changes nothing else: the other lines stay, and so does what stands in its other
    /// field, whatever stood in this one on the way.
    #[test]
    fn a_line_typed_in_its_fields_keeps_all_else(
        lines in lines(), at in 0_usize..6, amount in any::<bool>(),
        on_the_way in prop::collection::vec("[0-9½ ./,+a-zé]{0,8}", 0..4), last in "\\PC{0,12}",
    ) {
        let bench = Bench::default();
        let name = if amount { AMOUNT } else { "line_of" };
        let opened = at.to_string();
        let direct = typed_in(&lines, &opened, name, &last, &bench);
        let (mut now, mut note) = (lines.clone(), opened);
        for text in &on_the_way {
            (now, note) = typed_in(&now, &note, name, text, &bench);
        }
        let by_steps = typed_in(&now, &note, name, &last, &bench);
        prop_assert_eq!(by_steps.0.trim_end(), direct.0.trim_end());
        let again = typed_in(&by_steps.0, &by_steps.1, name, &last, &bench);
        prop_assert_eq!((again.0.trim_end(), &again.1), (by_steps.0.trim_end(), &by_steps.1));
        let others = |text: &str| {
            text.lines().enumerate().filter(|(nth, line)| *nth != at && !line.trim().is_empty()).map(|(_, line)| line.to_owned()).collect::<Vec<_>>()
        };
        if at < lines.lines().count() {
            prop_assert_eq!(others(&by_steps.0), others(&lines));
        }
    }
}
