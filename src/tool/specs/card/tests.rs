//! A spec as it is shown.

use std::sync::Arc;

use super::*;
use crate::book::{Book, Entry, Stamp, demo_cards};
use crate::screen::{Begun, Button, Doing, Held, InHand, Pour, Screen, Texts};
use crate::text;
use crate::tool::screen;
use crate::tool::shelf::settings::ShelfForm;

fn bench() -> Bench {
    let entry =
        |(id, value)| Arc::new(Entry { id, value, stamp: Stamp::default(), newer: None, pairs: Default::default() });
    let book = Book { cards: demo_cards(0).into_iter().map(entry).collect(), ..Book::default() };
    Bench { book: Held::new(book), ..ShelfForm::default().bench(text::Decimal::Point) }
}

/// With one spec of one form.
fn bench_of(way: Way) -> Bench {
    let value = Card { name: "Lamp".into(), ways: vec![way], ..Card::default() };
    let entry = Entry { id: "a".into(), value, stamp: Stamp::default(), newer: None, pairs: Default::default() };
    let book = Held::new(Book { cards: vec![Arc::new(entry)], ..Book::default() });
    Bench { book, ..ShelfForm::default().bench(text::Decimal::Point) }
}

fn way(lines: &str) -> Way {
    Way { lines: lines.into(), ..Way::default() }
}

fn showing(id: &str, face: Face, bench: Bench) -> Bench {
    let mut bench = bench;
    bench.at_hand.face = (id.into(), face);
    bench
}

fn texts(pairs: &[(&str, &str)]) -> Texts {
    pairs.iter().map(|(name, text)| ((*name).to_owned(), (*text).to_owned())).collect()
}

fn strip(screen: &Screen) -> String {
    let figures: Vec<String> = screen.strip.figures.iter().map(ToString::to_string).collect();
    format!("{} | {}", figures.join(" + "), screen.strip.also)
}

fn pours(screen: &Screen) -> Vec<Pour> {
    let pours = screen.blocks.iter().find_map(|block| match block {
        Block::Pours(pours) => Some(pours.lines.clone()),
        _ => None,
    });
    pours.expect("lines to pour")
}

fn doing(screen: &Screen) -> Vec<Doing> {
    let steps = screen.blocks.iter().find_map(|block| match block {
        Block::Doing(steps) => Some(steps.clone()),
        _ => None,
    });
    steps.expect("steps")
}

fn said(screen: &Screen) -> Vec<String> {
    let said = screen.blocks.iter().filter_map(|block| match block {
        Block::Remark(words) | Block::Caution(words) => Some(words.clone()),
        _ => None,
    });
    said.collect()
}

#[test]
fn a_spec_is_read_first_in_the_form_that_is_open() {
    let quick = screen(Route::Card, &texts(&[("id", "demo-1")]), &bench());
    assert_eq!(quick.name, "Orchard lantern");
    // Over crushed ice in its tumbler of 300 ml: near 105 ml at 17 % vol take up 36 ml by the balance of heat.
    assert_eq!(strip(&quick), "140 ml in the glass | about 13 % vol, as swizzled 10 s");
    assert!(quick.field("lines").is_none(), "to read, not to type in");
    let stirred = screen(Route::Card, &texts(&[("id", "demo-1"), ("at", "1")]), &bench());
    // 81.6 ml at near 27.5 % vol take up 36 ml by the balance of heat: 32 ml by the remembered curve.
    assert_eq!(strip(&stirred), "117 ml in the glass | about 19 % vol, as stirred 30 s");
    let rows: Vec<(String, String, String)> =
        pours(&stirred).into_iter().map(|line| (line.name, line.amount.to_string(), line.beneath)).collect();
    assert_eq!(rows[0], ("pear brandy".into(), "45 ml".into(), "≈ 1½ oz".into()));
    assert_eq!(rows[3], ("orange bitters".into(), "2 dashes".into(), String::new()));
    assert!(stirred.strip.picture.is_some(), "the small wine glass");
    let said = said(&stirred);
    assert_eq!(said[0], "Stirred · small wine glass, 140 ml · no ice · garnish: lemon twist");
    assert_eq!(said[1], "May need declaring: sulphites.");
    let labels = |buttons: &[Button]| buttons.iter().map(|button| button.label.clone()).collect::<Vec<_>>();
    assert_eq!(labels(&stirred.head), ["Change", Route::Specs.row().label]);
    assert_eq!(labels(&stirred.foot), ["Batch it", "Run sheet", "Label it", "More"]);
    assert_eq!(stirred.copy, "", "the head has room for three words");
    let more = showing("demo-1", Face::More, bench());
    let more = screen(Route::Card, &texts(&[("id", "demo-1"), ("at", "1")]), &more);
    assert_eq!(
        more.copy.lines().collect::<Vec<_>>(),
        [
            "Orchard lantern, stirred",
            "45 ml pear brandy",
            "20 ml dry vermouth",
            "15 ml orchard cordial",
            "2 dashes orange bitters",
            "Stir 30 s",
            "Strain",
        ]
    );
    let washed = screen(Route::Card, &texts(&[("id", "demo-1"), ("at", "99")]), &bench());
    assert!(
        strip(&washed).contains("ml in all | ") && strip(&washed).ends_with("% vol through the milk"),
        "{washed:?}"
    );
    let none = screen(Route::Card, &texts(&[("id", "gone")]), &bench());
    assert_eq!(none.strip.also, "Choose a spec in the book, or start one.");
}

/// 20 % and 10 % of ethanol by mass, 24.5 and 12.4 % vol, begin to freeze at −10.9 and −4.5 °C (CRC Handbook, 102nd ed.);
/// by its rows of 24 and 30 %, what is left at −18 °C has 27.6 %, so that near 28 and 64 % are ice.
#[test]
fn a_spec_says_what_it_is_in_a_freezer() {
    let says = |lines: &str| {
        let shown = screen(Route::Card, &texts(&[("id", "a")]), &bench_of(way(lines)));
        let cells = shown.blocks.iter().find_map(|block| match block {
            Block::Cells(_, cells) => Some(cells.clone()),
            _ => None,
        });
        let cells = cells.expect("figures").into_iter().skip_while(|cell| cell.label != "at −18 °C");
        cells.map(|cell| format!("{}: {}", cell.label, cell.figure)).collect::<Vec<_>>()
    };
    assert_eq!(says("100 ml gin 24.5 %"), ["at −18 °C: slush 28 % ice", "starts to freeze: −10.9 °C"]);
    assert_eq!(says("100 ml gin 12.4 %"), ["at −18 °C: solid 64 % ice", "starts to freeze: −4.5 °C"]);
    assert_eq!(says("100 ml gin 40 %")[0], "at −18 °C: syrupy no ice");
    // Beyond the tables: of spirit, from 57.9 % vol; of sugar, from 40 % of it in its water.
    assert_eq!(says("100 ml gin 70 %"), ["at −18 °C: syrupy no ice"]);
    assert_eq!(says("100 ml water\n10 g sugar"), ["at −18 °C: solid 77 % ice or more", "starts to freeze: −0.6 °C"]);
    assert!(says("100 g sugar\n50 ml water").is_empty(), "a thick syrup");
    assert!(says("lemon twist").is_empty(), "nothing measured");
}

#[test]
fn a_spec_in_ounces_is_read_in_ounces() {
    let way = Way { holds: "3 oz".into(), ..way("2 oz gin\n1 oz lemon juice") };
    let shaken = Way { method: "shaken".into(), ..way };
    let read = screen(Route::Card, &texts(&[("id", "a")]), &bench_of(shaken));
    assert!(
        strip(&read).starts_with("4½ oz in the glass, 132 ml | about 18 % vol, as shaken 15 s"),
        "{}",
        strip(&read)
    );
    assert_eq!(pours(&read)[0].beneath, "59.1 ml");
    assert!(said(&read).iter().any(|words| words == "132 ml in a glass of 88.7 ml: 43.3 ml too much."));
}

#[test]
fn a_glass_that_runs_over_is_said_with_its_ice_and_leads_to_what_fits() {
    let over = |glass: &str, ice: &str| {
        let way = Way {
            glass: glass.into(),
            holds: "140 ml".into(),
            ice: ice.into(),
            ..way("60 ml gin\n60 ml apple juice\n30 ml water")
        };
        let read = screen(Route::Card, &texts(&[("id", "a")]), &bench_of(way));
        let cautions: Vec<String> = said(&read).into_iter().filter(|words| words.contains("too much")).collect();
        let link = read.links().into_iter().find(|link| link.label == "Does it fit?").map(|link| link.href);
        (cautions, link.unwrap_or_default())
    };
    let (cautions, link) = over("small wine glass", "none");
    assert_eq!(cautions, ["150 ml in a glass of 140 ml: 10 ml too much."]);
    assert!(link.starts_with("#/service/glass?glass=small+wine+glass%2C+140+ml&drink=150+ml&ice=none"), "{link}");
    assert!(over("tumbler", "crushed").0[0].contains(" with crushed in a glass of 140 ml: "));
    // Of no shape that is known, its size is enough; a glass of its own size fits.
    assert_eq!(over("gourd", "none").0, cautions);
    let fits = Way { glass: "tumbler".into(), holds: "300 ml".into(), ..way("60 ml gin") };
    let read = screen(Route::Card, &texts(&[("id", "a")]), &bench_of(fits));
    assert!(said(&read).iter().all(|words| !words.contains("too much")));
}

#[test]
fn for_more_serves_all_is_as_many_times_as_much() {
    let mut bench = bench();
    bench.at_hand.in_hand.push(InHand { which: "demo-1#1".into(), serves: 10, ticked: Vec::new() });
    let read = screen(Route::Card, &texts(&[("id", "demo-1"), ("at", "1")]), &bench);
    assert_eq!(strip(&read), "1\u{202f}170 ml in 10 glasses | about 19 % vol, as stirred 30 s, 117 ml each");
    let amounts: Vec<String> = pours(&read).iter().map(|line| line.amount.to_string()).collect();
    assert_eq!(amounts, ["450 ml", "200 ml", "150 ml", "20 dashes"]);
    assert_eq!((pours(&read)[0].one.as_str(), pours(&read)[0].beneath.as_str()), ("45 ml", "≈ 15¼ oz"));
    let Act::Go(batch) = &read.foot[0].act else { panic!("{:?}", read.foot) };
    assert!(batch.starts_with("#/batch/bottle?") && batch.contains("&water=stirred&"), "{batch}");
    assert!(batch.ends_with("&from_spec=demo-1%2F1&serves=10"), "{batch}");
    // The other forms, and the other specs, have their own.
    let quick = screen(Route::Card, &texts(&[("id", "demo-1")]), &bench);
    assert_eq!(pours(&quick)[0].amount.to_string(), "45 ml");
}

#[test]
fn a_ticked_line_stays_ticked_while_it_stays_as_it_was() {
    let mut bench = bench();
    let ticked = vec![(0, "45 ml pear brandy".to_owned()), (1, "20 ml something else".to_owned())];
    bench.at_hand.in_hand.push(InHand { which: "demo-1#1".into(), serves: 0, ticked });
    let read = screen(Route::Card, &texts(&[("id", "demo-1"), ("at", "1")]), &bench);
    let ticks: Vec<Option<bool>> = pours(&read).iter().map(|line| line.tick).collect();
    assert_eq!(ticks, [Some(true), Some(false), Some(false), Some(false)]);
}

#[test]
fn a_step_with_a_time_has_its_wait() {
    let mut bench = bench();
    let at = texts(&[("id", "demo-1"), ("at", "1")]);
    let steps = doing(&screen(Route::Card, &at, &bench));
    let wait = steps[0].wait.clone().expect("a wait");
    assert_eq!((wait.to_go.as_str(), wait.button.label.as_str()), ("", "Start 30 s"));
    assert_eq!(wait.button.act, Act::Begin("Stir 30 s".into(), 30));
    assert_eq!((steps[1].words.as_str(), &steps[1].wait), ("Strain", &None));
    let begun = |which: &str| Begun {
        which: which.into(),
        step: "Stir 30 s".into(),
        name: "Orchard lantern".into(),
        at: 1_000,
        lasts: 30,
    };
    bench.at_hand.begun = vec![begun("demo-1#0"), begun("demo-1#1")];
    for (now, to_go, is_over, label) in
        [(1_000, "30 s", false, "Stop"), (30_001, "1 s", false, "Stop"), (31_000, "over", true, "Done")]
    {
        bench.clock.now = now;
        let wait = doing(&screen(Route::Card, &at, &bench))[0].wait.clone().expect("a wait");
        assert_eq!((wait.to_go.as_str(), wait.is_over, wait.button.label.as_str()), (to_go, is_over, label), "{now}");
    }
}

#[test]
fn what_is_not_counted_is_said_at_its_line() {
    let read = screen(
        Route::Card,
        &texts(&[("id", "a")]),
        &bench_of(way("60 ml gin\n20 ml lime juise\n20 ml moon dust\n8 mint leaves\nStir")),
    );
    let notes: Vec<(bool, String)> = pours(&read).into_iter().map(|line| (line.marked, line.note)).collect();
    assert_eq!(
        notes,
        [
            (false, String::new()),
            (false, "read as lime juice".into()),
            (true, "Not known, so not counted. What is it like?".into()),
            (false, String::new()),
            (false, String::new()),
        ]
    );
    assert_eq!((read.leads.as_str(), read.strip.below.as_str()), ("1 line not counted", "1 line not counted"));
    let none = screen(Route::Card, &texts(&[("id", "a")]), &bench_of(way("Lemon twist")));
    assert_eq!(strip(&none), "– | Nothing in it is measured");
}

/// The lines stand once: as typed, with what needs a look below; or one by one, each with what it is read as.
#[test]
fn what_each_line_is_read_as_is_said_where_it_is_changed() {
    let lines = "60 ml gin\n20 ml lime juise\n20 ml moon dust\n8 mint leaves\nStir";
    let bench = showing("a", Face::Change, bench_of(way(lines)));
    let rows = |write: &str| {
        let shown = screen(Route::Card, &texts(&[("id", "a"), ("write", write)]), &bench);
        let tables = shown.blocks.into_iter().filter_map(|block| match block {
            Block::Table(_, rows) => Some(rows),
            _ => None,
        });
        tables.flatten().collect::<Vec<_>>()
    };
    let typed = rows("typed");
    assert_eq!(typed.iter().map(|row| row.name.as_str()).collect::<Vec<_>>(), ["moon dust"]);
    let each = rows("each");
    let details: Vec<&str> = each.iter().map(|row| row.detail.as_str()).collect();
    assert_eq!(
        details,
        [
            "pour 2 oz, −0.9 ml, −1.4 %; as London dry gin, 40 % vol",
            "pour ½ oz + 1 bsp, −0.2 ml, −1.1 %; as Lime juice, 15 g/l sugar, 44.3 g/l acid (citric 39 to 53 g/l); read as lime juice",
            "pour ½ oz + 1 bsp, −0.2 ml, −1.1 %; Not known, so not counted. What is it like?",
            "By the piece, not in the volume.",
            "No amount, so it is kept as it is.",
        ]
    );
    assert!(!each.iter().any(|row| row.detail.contains("; volume ")));
    // A tap on what it is like puts the line right.
    let fix = each[2].fixes[0].clone();
    let settled = lines.replace("20 ml moon dust", &fix.text);
    let settled = CardForm { id: "a".into(), lines: settled, ..CardForm::default() };
    assert_eq!(settled.answer(&bench).leads, "");
}

#[test]
fn the_fields_of_the_form_that_is_open_are_changed() {
    let bench = showing("demo-1", Face::Change, bench());
    let stirred = screen(Route::Card, &texts(&[("id", "demo-1"), ("at", "1"), ("write", "typed")]), &bench);
    assert!(stirred.field("lines").is_some_and(|field| field.text.starts_with("45 ml pear brandy\n20 ml dry")));
    let far = screen(Route::Card, &texts(&[("id", "demo-1"), ("at", "99")]), &bench);
    assert_eq!(far.field("way").map(|field| field.text.as_str()), Some("washed"));
    // An empty one has nothing to read.
    let blank = bench_of(Way::default());
    let blank = Bench {
        book: Held::new(Book {
            cards: vec![Arc::new(Entry { value: Card::blank(0), ..Entry::clone(&blank.book.cards[0]) })],
            ..Book::default()
        }),
        ..Bench::default()
    };
    assert!(screen(Route::Card, &texts(&[("id", "a")]), &blank).field("name").is_some());
}

#[test]
fn what_else_there_is_to_do_is_under_more() {
    let bench = showing("demo-1", Face::More, bench());
    let more = screen(Route::Card, &texts(&[("id", "demo-1"), ("at", "1")]), &bench);
    let mut words: Vec<String> = more.links().into_iter().map(|link| link.label).collect();
    for block in &more.blocks {
        if let Block::Buttons(buttons) = block {
            words.extend(buttons.iter().map(|button| button.label.clone()));
        }
    }
    assert_eq!(
        words,
        [
            "Compare",
            "Balance",
            "Cost",
            "To buy",
            "Chill it",
            "Scale it",
            "Does it fit?",
            "Into serves",
            "Fat-wash",
            "A cordial for its juice",
            "Wash it with milk",
            "Bubbles for it",
            "Label it",
            "Share as a link",
            "Print",
            "Save as text",
            "Save as a recipe file",
            "Duplicate",
            "Keep as an ingredient",
            "Delete",
        ]
    );
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
