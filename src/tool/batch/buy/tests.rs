//! The list as it is shown.

mod besides;

use std::sync::Arc;

use super::*;
use crate::book::{Book, Card, Entry, Own, Stamp, Way};
use crate::reading::contents::READ;
use crate::screen::{Held, Pour, Screen, Texts};
use crate::text::Decimal;
use crate::tool::shelf::settings::ShelfForm;
use crate::tool::{Change, after, screen};

fn entry<T>(id: &str, value: T) -> Arc<Entry<T>> {
    Arc::new(Entry { id: id.into(), value, stamp: Stamp::default(), newer: None, pairs: Default::default() })
}

fn card(name: &str, lines: &str) -> Card {
    Card { name: name.into(), ways: vec![Way { lines: lines.into(), ..Way::default() }], ..Card::default() }
}

fn prep(name: &str, parts: &str, gives: &str) -> Own {
    Own { name: name.into(), like: "cordial".into(), parts: parts.into(), gives: gives.into(), ..Own::default() }
}

fn bench(cards: &[(&str, Card)], own: &[Own], prices: &str) -> Bench {
    let cards = cards.iter().map(|(id, card)| entry(id, card.clone())).collect();
    let own = own.iter().map(|own| entry(&own.name, own.clone())).collect();
    let book = Book { cards, own, has_cards: true, ..Book::default() };
    ShelfForm { prices: prices.into(), ..ShelfForm::default() }.bench(Decimal::Point).with_book(Held::new(book))
}

fn shown(bench: &Bench, texts: &[(&str, &str)]) -> Screen {
    let texts: Texts = texts.iter().map(|(name, text)| ((*name).to_owned(), (*text).to_owned())).collect();
    screen(Route::Buy, &texts, bench)
}

fn pours(screen: &Screen) -> Vec<Pour> {
    let of = |block: &Block| if let Block::Pours(pours) = block { pours.lines.clone() } else { Vec::new() };
    screen.blocks.iter().flat_map(of).collect()
}

/// Headings and lines: "limes|16|no price|need 1.03 kg".
fn list(screen: &Screen) -> Vec<String> {
    let mut list = Vec::new();
    for block in &screen.blocks {
        match block {
            Block::Heading(words) => list.push(format!("# {words}")),
            Block::Pours(pours) => {
                list.extend(pours.lines.iter().map(|Pour { name, amount, beneath, note, tick, .. }| {
                    let tick = if *tick == Some(true) { "x " } else { "" };
                    format!("{tick}{name}|{amount}|{beneath}|{note}")
                }));
            }
            Block::Remark(words) if words.starts_with("Enough") => list.push(words.clone()),
            _ => {}
        }
    }
    // What parts thousands is a narrow space.
    list.into_iter().map(|line| line.replace('\u{202f}', " ")).collect()
}

fn strip(screen: &Screen) -> String {
    let figures: Vec<String> = screen.strip.figures.iter().map(ToString::to_string).collect();
    format!("{} | {}", figures.join(" + "), screen.strip.also)
}

fn cautions(screen: &Screen) -> Vec<String> {
    let of = |block: &Block| if let Block::Caution(words) = block { Some(words.clone()) } else { None };
    screen.blocks.iter().filter_map(of).collect()
}

const SUPPER: &str = "45 ml pear brandy\n20 ml dry vermouth\n15 ml lime juice\n10 ml whole milk\nLemon twist";

/// By hand, 20 serves: 900 ml of brandy less 400 is one bottle of 700 ml, 24.00; 400 ml of vermouth, of which there are
/// 500; 300 ml of lime juice at 1.026 g/ml are 308 g, at 45 % of 684 g, and so 11 limes of 65 g; 200 ml of milk is a pack of half a
/// litre, 0.80.
#[test]
fn a_spec_for_so_many_is_what_is_missing_in_packs() {
    let prices = "pear brandy, 700 ml, 24.00\nwhole milk, 0.5 l, 0.80\nlimes, 10 pieces, 3.00";
    let bench = bench(&[("a", card("Orchard", SUPPER))], &[], prices);
    let texts = [("from_spec", "a/0"), ("serves", "20"), ("have", "400 ml pear brandy\n500 ml dry vermouth")];
    let screen = shown(&bench, &texts);
    assert_eq!(
        list(&screen),
        [
            "# Market",
            "limes|2 × 10 pieces|6.00|need 11 (684 g)",
            "# Dairy and dry",
            "whole milk|0.5 l|0.80|need 200 ml",
            "# Bottles",
            "pear brandy|700 ml|24.00|need 900 ml, have 400 ml",
            "Enough on the shelf: dry vermouth.",
        ]
    );
    assert_eq!(strip(&screen), "3 of 3 to get | 30.80 of 30.80 still to pay");
    let csv = screen.csv();
    assert!(csv.contains("\"limes\",\"2 × 10 pieces\",\"6.00; need 11 (684 g)\"\r\n"), "{csv}");
}

const PRICES: &str = "pear brandy, 700 ml, 24.00\nwhole milk, 0.5 l, 0.80\nlimes, 10 pieces, 3.00";

fn supper() -> Bench {
    bench(&[("a", card("Orchard", SUPPER))], &[], PRICES)
}

/// What a tap on a line leaves ticked.
fn tapped(screen: &Screen, name: &str) -> String {
    let pour = pours(screen).into_iter().find(|pour| pour.name == name).expect("a line");
    match pour.act {
        Some(Act::Put(puts)) => match puts.as_slice() {
            [("got", got)] => got.clone(),
            other => panic!("{other:?}"),
        },
        other => panic!("{other:?}"),
    }
}

#[test]
fn what_is_got_is_ticked_for_that_many_packs() {
    let bench = supper();
    let with = |serves: &str, got: &str| {
        let have = "400 ml pear brandy\n500 ml dry vermouth";
        shown(&bench, &[("from_spec", "a/0"), ("serves", serves), ("have", have), ("got", got)])
    };
    let none = with("20", "");
    let milk = tapped(&none, "whole milk");
    assert_eq!(milk, "0.5 l whole milk");
    let one = with("20", &milk);
    assert_eq!(list(&one)[3], "x whole milk|0.5 l|0.80|need 200 ml");
    assert_eq!(strip(&one), "2 of 3 to get | 30.00 of 30.80 still to pay");
    assert_eq!(tapped(&one, "limes"), "0.5 l whole milk\n2 × 10 pieces limes");
    assert_eq!(tapped(&one, "whole milk"), "");
    assert!(one.foot.iter().any(|button| button.label == "Untick all"), "{:?}", one.foot);
    assert_eq!(
        one.copy,
        "To buy\n\nMarket\n2 × 10 pieces limes, 6.00; need 11 (684 g)\n\nBottles\n700 ml pear brandy, 24.00; \
         need 900 ml, have 400 ml\n\nEnough on the shelf: dry vermouth."
    );
    // For 60 serves two packs of milk are needed: one of them is still to get.
    let more = with("60", &milk);
    assert!(list(&more).contains(&"whole milk|2 × 0.5 l|1.60|need 600 ml".to_owned()), "{:?}", list(&more));
}

#[test]
fn what_has_no_price_is_said_and_never_taken_as_nothing() {
    let texts = [("from_spec", "a/0"), ("serves", "20")];
    let screen = shown(&supper(), &texts);
    assert_eq!(strip(&screen), "4 of 4 to get | at least 54.80 of 54.80 still to pay");
    assert!(list(&screen).contains(&"dry vermouth|750 ml|no price|need 400 ml".to_owned()), "{:?}", list(&screen));
    let prices = screen.links().into_iter().find(|link| link.label == "Type prices").expect("a link");
    assert_eq!(prices.href, "#/specs/cost?spec=400+ml+dry+vermouth&makes=1&from_spec=");
    let screen = shown(&bench(&[("a", card("Orchard", SUPPER))], &[], ""), &texts);
    assert_eq!(strip(&screen), "4 of 4 to get | No prices yet");
    assert_eq!(list(&screen)[1], "limes|11||need 684 g");
    assert_eq!(list(&screen)[3], "whole milk|200 ml||");
    // A bottle costs by weight what it holds; a piece has no weight.
    let screen = shown(&bench(&[], &[], "mint, 1 kg, 9.00\nhoney, 500 g, 5.00"), &[("lines", "40 mint\n30 ml honey")]);
    assert_eq!(strip(&screen), "1 of 1 to get | 5.00 of 5.00 still to pay");
    assert_eq!(screen.strip.below, "Not all is counted: see what is marked");
    let problem = screen.field("lines").and_then(|field| field.problem.clone()).expect("a problem");
    assert_eq!(problem.words, "“40 mint”: 40 of what? Add a unit, like 40 ml.");
    let screen = shown(&bench(&[], &[], "mint, 1 kg, 9.00\nhoney, 500 g, 5.00"), &[("lines", "12 mint\n30 ml honey")]);
    assert_eq!(
        list(&screen),
        ["# Market", "mint|12|no price|its price is for 1 kg", "# Dairy and dry", "honey|500 g|5.00|need 30 ml"]
    );
    assert_eq!(strip(&screen), "2 of 2 to get | at least 5.00 of 5.00 still to pay");
}

#[test]
fn what_a_price_says_is_used_is_what_is_bought_for() {
    // 665 ml are needed of which 95 % is used: 700 ml. A drop more takes two.
    let bench = bench(&[], &[], "gin, 700 ml, 20.00, 95 %");
    let of = |lines: &str| list(&shown(&bench, &[("lines", lines)]))[1].clone();
    assert_eq!(of("665 ml gin"), "gin|700 ml|20.00|need 665 ml; 95 % of it is used");
    assert_eq!(of("666 ml gin"), "gin|2 × 700 ml|40.00|need 666 ml; 95 % of it is used");
}

#[test]
fn one_thing_is_one_line_whatever_it_is_called() {
    let of = |prices: &str, lines: &str| list(&shown(&bench(&[], &[], prices), &[("lines", lines)]));
    assert_eq!(
        of("", "300 ml gin\n500 ml London dry gin\n2 limes\n100 ml lime juice\n100 ml fresh lime juice\n4 egg whites"),
        [
            "# Market",
            "limes|10||need 586 g",
            "egg whites|4 eggs||need 120 ml",
            "# Bottles",
            "gin|2 × 700 ml||need 800 ml"
        ]
    );
    assert_eq!(of("eggs, 10 pieces, 3.00", "11 egg whites")[1], "egg whites|2 × 10 pieces|6.00|need 11 eggs (330 ml)");
    // Juice that is bought as juice.
    assert_eq!(of("orange juice, 1 l, 2.00", "1.2 l orange juice")[1], "orange juice|2 × 1 l|4.00|need 1 200 ml");
    // So is purée that is bought by weight.
    assert_eq!(of("raspberry purée, 1 kg, 9.00", "100 g raspberry purée")[1], "raspberry purée|1 kg|9.00|need 100 g");
    // Of fruit, what the price says is used; an own yield goes first.
    assert_eq!(of("limes, 1 kg, 4.00, 50 %", "500 ml lime juice")[1], "limes|2 × 1 kg|8.00|need 16 (1.03 kg)");
    let own = ShelfForm { yields: "lime juice 30 %".into(), ..ShelfForm::default() }.bench(Decimal::Point);
    assert_eq!(list(&shown(&own, &[("lines", "500 ml lime juice")]))[1], "limes|27||need 1.71 kg");
    assert_eq!(of("", "500 ml water\n2 kg ice"), ["# Ice", "ice|2 kg||"]);
}

/// Cordial: 600 ml of juice and 400 g of sugar give 800 ml. A punch takes 200 ml of that, and 300 ml of gin.
#[test]
fn preps_are_bought_as_what_they_are_made_of() {
    let own = [prep("house cordial", "600 ml pear juice\n400 g sugar", "800 ml"), prep("our gin", "", "")];
    let punch = card("Pear punch", "300 ml gin\n200 ml house cordial");
    let bench = bench(&[("a", punch)], &own, "");
    let of = |texts: &[(&str, &str)]| list(&shown(&bench, texts));
    let pears = "pears|2||need 261 g";
    assert_eq!(
        of(&[("from_spec", "a/0"), ("serves", "1")]),
        ["# Market", pears, "# Dairy and dry", "sugar|100 g||", "# Bottles", "gin|700 ml||need 300 ml"]
    );
    // Half of it is on the shelf already.
    let half = of(&[("from_spec", "a/0"), ("serves", "1"), ("have", "100 ml house cordial")]);
    assert_eq!(half[3], "sugar|50.0 g||");
    // A line that is called as a spec is that; what is bought is bought.
    let nested = of(&[("lines", "1 l Pear punch\n50 ml our gin")]);
    assert!(nested.contains(&"sugar|200 g||".to_owned()), "{nested:?}");
    assert!(nested.contains(&"our gin|50 ml||".to_owned()), "{nested:?}");
}

#[test]
fn what_leads_back_to_itself_is_not_followed_and_named() {
    let own = [
        prep("plum shrub", "100 ml plum cordial\n100 ml vinegar", "200 ml"),
        prep("plum cordial", "50 ml plum shrub\n50 g sugar", "100 ml"),
        prep("tea gin", "700 ml gin\n1 handful of tea", ""),
    ];
    let bench = bench(&[], &own, "");
    let screen = shown(&bench, &[("lines", "200 ml plum shrub\n100 ml tea gin")]);
    assert_eq!(
        cautions(&screen),
        [
            "Not all that tea gin is made of is known: 1 handful of tea. tea gin is listed as it is.",
            "Made of itself: plum shrub → plum cordial → plum shrub. plum shrub is listed as it is.",
        ]
    );
    assert!(list(&screen).contains(&"plum shrub|50 ml||".to_owned()), "{:?}", list(&screen));
}

#[test]
fn a_batch_is_asked_for_what_is_poured_of_it() {
    let lines = "900 ml pear brandy\n600 ml dry vermouth";
    let mut of_ten = card("Ten", lines);
    of_ten.ways[0].makes = "10".into();
    let bench = bench(&[("a", card("Bowl", lines)), ("b", of_ten)], &[], "");
    let of = |texts: &[(&str, &str)]| shown(&bench, texts);
    // What draws together: of 1 498 ml, 1 500 are poured.
    let bowl = of(&[("from_spec", "a/0"), ("serves", "10"), ("pour", "150 ml")]);
    assert!(bowl.field("pour").is_some());
    assert_eq!(list(&bowl)[1], "pear brandy|2 × 700 ml||need 901 ml");
    let open = of(&[("from_spec", "a/0"), ("serves", "10"), ("pour", "")]);
    assert_eq!(strip(&open), "? | Type what is poured of it, like 90 ml.");
    let ten = of(&[("from_spec", "b/0"), ("serves", "20")]);
    assert!(ten.field("pour").is_none());
    assert_eq!(list(&ten)[1], "pear brandy|3 × 700 ml||need 1 800 ml");
    // A tenth is spilt.
    let spilt = of(&[("from_spec", "b/0"), ("serves", "9"), ("waste", "10")]);
    assert_eq!(list(&spilt)[1], "pear brandy|2 × 700 ml||need 900 ml");
}

fn taken(texts: &Texts, pairs: &[(&str, &str)]) -> Texts {
    pairs.iter().fold(texts.clone(), |texts, (name, text)| after(Route::Buy, &texts, Change::Take(name, text)))
}

#[test]
fn specs_stand_beside_each_other_each_for_its_own_number() {
    let bench = bench(&[("a", card("One", "10 ml gin")), ("b", card("Two", "10 ml dry vermouth"))], &[], "");
    let rows = |texts: &Texts| -> Vec<String> {
        let of = |block: &Block| if let Block::Table("For", rows) = block { rows.clone() } else { Vec::new() };
        let rows = screen(Route::Buy, texts, &bench).blocks.iter().flat_map(of).collect::<Vec<_>>();
        rows.iter()
            .map(|row| format!("{} {}{}", row.name, row.amount, row.detail).replace("Its number stands above.", " ^"))
            .collect()
    };
    let first = taken(&Texts::default(), &[("from_spec", "a/0")]);
    assert_eq!(rows(&first), ["One 10"]);
    let mut second = taken(&first, &[("serves", "40"), ("from_spec", "b/0")]);
    assert_eq!(rows(&second), ["One 10", "Two 40 ^"]);
    // What is typed is that one's; coming back to the first, it stays.
    second.insert("serves".into(), "50".into());
    let third = taken(&second, &[("from_spec", "a/0")]);
    assert_eq!((third["serves"].as_str(), rows(&third)), ("10", vec!["One 10 ^".to_owned(), "Two 50".to_owned()]));
    // None is open; both stay.
    assert_eq!(rows(&taken(&third, &[("from_spec", "")])), ["One 10", "Two 50"]);
    // The same again by a link: for as many as that says.
    assert_eq!(rows(&taken(&third, &[("serves", "5"), ("from_spec", "b/0")])), ["One 10", "Two 5 ^"]);
    let row = |texts: &Texts, name: &str, label: &str| {
        let of = |block: &Block| if let Block::Table("For", rows) = block { rows.clone() } else { Vec::new() };
        let rows = screen(Route::Buy, texts, &bench).blocks.iter().flat_map(of).collect::<Vec<_>>();
        let row = rows.into_iter().find(|row| row.name == name).expect("a row");
        match row.buttons.into_iter().find(|button| button.label == label).expect("a button").act {
            Act::Put(puts) => after(Route::Buy, texts, Change::Put(&puts)),
            act => panic!("{act:?}"),
        }
    };
    assert_eq!(rows(&row(&third, "One", "Remove")), ["Two 50"]);
    let changed = row(&third, "Two", "Change");
    assert_eq!((changed["serves"].as_str(), changed["from_spec"].as_str()), ("50", "b/0"));
    assert_eq!(rows(&changed), ["One 10", "Two 50 ^"]);
    assert_eq!(rows(&row(&changed, "Two", "Remove")), ["One 10"]);
    let gone = taken(&third, &[("from_spec", "c/0")]);
    assert_eq!(rows(&gone)[2], "No longer in the book 10");
    let unread = taken(&third, &[("serves", "many"), ("from_spec", "a/0")]);
    assert_eq!(rows(&unread)[0], "One manyNot counted: type for how many.");
}

/// The field that adds one stands at none again, and holds what is not on the list: the second is as near as the first.
#[test]
fn another_spec_is_a_tap_away() {
    let bench = bench(&[("a", card("One", "10 ml gin")), ("b", card("Two", "10 ml dry vermouth"))], &[], "");
    let field = |texts: &Texts| {
        let screen = screen(Route::Buy, texts, &bench);
        let field = screen.field("from_spec").expect("the field").clone();
        let Input::Pick(options) = field.input else { panic!("{:?}", field.input) };
        let options: Vec<String> = options
            .into_iter()
            .map(|option| format!("{}{}", if option.key == field.text { ">" } else { "" }, option.label))
            .collect();
        (field.label, options.join(" "))
    };
    assert_eq!(field(&Texts::default()), ("Add a spec", ">choose One Two".into()));
    let first = taken(&Texts::default(), &[("from_spec", "a/0")]);
    assert_eq!(field(&first), ("Add another spec", ">choose Two".into()));
    let both = taken(&first, &[("from_spec", "b/0")]);
    assert_eq!(field(&both), ("Add a spec", ">all are on the list".into()));
}

#[test]
fn each_spec_and_each_prep_is_read_once() {
    let own = [prep("house cordial", "600 ml pear juice\n400 g sugar", "800 ml")];
    let cards: Vec<(String, Card)> =
        (0..20).map(|at| (format!("s{at}"), card(&format!("Spec {at}"), "45 ml gin\n15 ml house cordial"))).collect();
    let cards: Vec<(&str, Card)> = cards.iter().map(|(id, card)| (id.as_str(), card.clone())).collect();
    let of: Vec<String> = cards.iter().map(|(id, _)| format!("{id}/0=10")).collect();
    let bench = bench(&cards, &own, "");
    READ.with(|count| count.set(0));
    let screen = shown(&bench, &[("of", &of.join("\n"))]);
    assert_eq!(READ.with(std::cell::Cell::get), 20, "preps are read with the shelf");
    assert_eq!(list(&screen)[5], "gin|13 × 700 ml||need 9 000 ml");
}

#[test]
fn what_cannot_be_read_is_said_at_its_field_and_nothing_is_a_list() {
    let screen = shown(&supper(), &[]);
    assert_eq!(strip(&screen), "– | Choose a spec, or type what is needed.");
    let screen = shown(&supper(), &[("lines", "1 l gin"), ("have", "some gin")]);
    let problem = screen.field("have").and_then(|field| field.problem.clone()).expect("a problem");
    assert_eq!(problem.words, "“some gin”: Say how much, like 2 kg.");
    assert_eq!(list(&screen)[1], "gin|2 × 700 ml|no price|need 1 000 ml");
    let screen = shown(&supper(), &[("lines", "1 l gin"), ("have", "2 l gin")]);
    assert_eq!(strip(&screen), "0 of 0 to get | All of it is on the shelf");
}
