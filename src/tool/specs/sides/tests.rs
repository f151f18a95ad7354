//! Forms beside one another, as they are shown.

use std::sync::Arc;

use super::*;
use crate::book::{Book, Stamp, Way, demo_cards, demo_own};
use crate::reading::contents::READ;
use crate::screen::{Compared, Face, Held, Input, Screen, Side, Sides, Texts};
use crate::text;
use crate::tool::screen;
use crate::tool::shelf::settings::ShelfForm;

fn entry<T>(id: impl Into<String>, value: T) -> Arc<Entry<T>> {
    Arc::new(Entry { id: id.into(), value, stamp: Stamp::default(), newer: None, pairs: Default::default() })
}

fn bench_of(cards: Vec<(String, Card)>) -> Bench {
    let cards = cards.into_iter().map(|(id, card)| entry(id, card)).collect();
    let own = demo_own(0).into_iter().map(|(id, own)| entry(id, own)).collect();
    let book = Book { cards, own, has_cards: true, ..Book::default() };
    ShelfForm::default().bench(text::Decimal::Point).with_book(Held::new(book))
}

fn demo() -> Bench {
    bench_of(demo_cards(0))
}

fn way(name: &str, lines: &str) -> Way {
    Way { name: name.into(), lines: lines.into(), ice: "none".into(), ..Way::default() }
}

fn card(name: &str, ways: Vec<Way>) -> Card {
    Card { name: name.into(), ways, ..Card::default() }
}

fn shown(bench: &Bench, picks: &[(&str, &str)]) -> Screen {
    let texts: Texts = picks.iter().map(|(name, text)| ((*name).to_owned(), (*text).to_owned())).collect();
    screen(Route::Sides, &texts, bench)
}

fn table(screen: &Screen) -> Sides {
    let sides = screen.blocks.iter().find_map(|block| match block {
        Block::Sides(sides) => Some(sides.clone()),
        _ => None,
    });
    sides.expect("a table")
}

/// A row of it: what stands apart with its sign.
fn row(screen: &Screen, of: &str) -> Vec<String> {
    let Compared { each, .. } = table(screen).rows.into_iter().find(|row| row.of == of).expect("a row");
    let said = |Side { said, is_apart, .. }: Side| if is_apart { format!("≠ {said}") } else { said };
    each.into_iter().map(said).collect()
}

fn names(screen: &Screen) -> Vec<String> {
    table(screen).sides.into_iter().map(|side| side.name).collect()
}

fn strip(screen: &Screen) -> String {
    format!("{} | {}", screen.strip.also, screen.strip.below)
}

fn problem(screen: &Screen, field: &str) -> String {
    screen.field(field).and_then(|field| field.problem.clone()).map_or_else(String::new, |problem| problem.words)
}

#[test]
fn the_forms_of_a_spec_stand_side_by_side() {
    let bench = demo();
    let before = READ.with(std::cell::Cell::get);
    let screen = shown(&bench, &[("one", "demo-1")]);
    assert_eq!(READ.with(std::cell::Cell::get) - before, 3, "each is read once");
    assert_eq!(screen.name, "Orchard lantern");
    assert_eq!(names(&screen), ["quick", "stirred", "washed"]);
    assert_eq!(
        strip(&screen),
        "Stirred is the least sharp | 0.42 g acid in the glass; the others 0.73 and 0.67. Washed holds milk. Alike in sugar."
    );
    let below: Vec<Vec<String>> = table(&screen).sides.into_iter().map(|side| side.below).collect();
    assert_eq!(below, [["crushed ice"], ["no ice"], ["one clear block"]]);
    assert!(table(&screen).sides.iter().all(|side| side.picture.is_some()));
    assert_eq!(row(&screen, "% vol"), ["≠ 12.9", "19.0", "18.1"]);
    assert_eq!(row(&screen, "volume, ml"), ["≠ 140", "117", "≠ 103"]);
    assert_eq!(row(&screen, "acid, g"), ["0.73", "≠ 0.42", "0.67"]);
    assert_eq!(row(&screen, "allergens"), ["none read", "≠ sulphites", "≠ sulphites, milk"]);
    assert_eq!(row(&screen, "keeps"), ["today, cold", "days, cold", "cold, your own days"]);
}

/// By hand: 50 ml of 40 % hold 20 ml of ethanol, 15.8 g; 20 g of sugar to 100 ml and 40 are 200 g/l and 500.
#[test]
fn what_differs_is_marked_and_told_first() {
    let ways = vec![
        way("one", "50 ml vodka 40 %\n50 ml water"),
        way("two", "50 ml vodka 40 %\n50 ml water"),
        way("three", "50 ml vodka 40 %\n10 ml lemon juice\n50 ml water"),
    ];
    let screen = shown(&bench_of(vec![("a".into(), card("Lamp", ways))]), &[("one", "a")]);
    assert_eq!(row(&screen, "acid, g")[..2], ["0.00", "0.00"]);
    assert!(row(&screen, "acid, g")[2].starts_with("≠ 0."), "{:?}", row(&screen, "acid, g"));
    assert_eq!(row(&screen, "alcohol, g"), ["15.8", "15.8", "15.8"]);
    assert!(screen.strip.also.starts_with("Three is the sharp one"), "{}", strip(&screen));
    assert!(screen.strip.below.ends_with(" g acid in the glass; the others 0.00 and 0.00. Alike in sugar and volume."));
    assert!(screen.copy.contains("% vol: one 20.0; two 20.0; three ≠ 18.2"), "{}", screen.copy);
}

/// A large glass holds more acid and tastes of less: 20 ml of lemon juice in 200 ml against 10 in 40.
#[test]
fn what_tastes_of_more_is_told_to_the_litre_where_grams_would_deny_it() {
    let ways = vec![
        way("long", "60 ml vodka\n20 ml lemon juice\n120 ml water"),
        way("short", "30 ml vodka\n10 ml lemon juice"),
    ];
    let screen = shown(&bench_of(vec![("a".into(), card("Lamp", ways))]), &[("one", "a")]);
    assert_eq!(row(&screen, "acid, g"), ["≠ 0.93", "≠ 0.46"]);
    assert!(screen.strip.also == "Short is sharper", "{}", strip(&screen));
    assert!(screen.strip.below.starts_with("11.6 g/l acid in the glass; the other 4.6."), "{}", strip(&screen));
}

#[test]
fn one_that_has_more_to_tell_guests_of_says_so() {
    let ways = vec![way("plain", "50 ml vodka\n20 ml milk"), way("oaten", "50 ml vodka\n20 ml oat milk")];
    let screen = shown(&bench_of(vec![("a".into(), card("Lamp", ways))]), &[("one", "a")]);
    assert_eq!(row(&screen, "allergens"), ["≠ milk", "≠ gluten"]);
    let ways = vec![way("one", "50 ml vodka\n20 ml milk"), way("two", "51 ml vodka\n20 ml milk")];
    let screen_of_two = shown(&bench_of(vec![("a".into(), card("Lamp", ways))]), &[("one", "a")]);
    assert_eq!(strip(&screen_of_two), "Alike in the glass | Alike in acid, sugar, strength and volume.");
    assert_eq!(row(&screen_of_two, "allergens"), ["milk", "milk"]);
    let ways = vec![way("plain", "50 ml vodka\n20 ml milk"), way("bare", "50 ml vodka\n20 ml water")];
    let screen = shown(&bench_of(vec![("a".into(), card("Lamp", ways))]), &[("one", "a")]);
    assert_eq!(row(&screen, "allergens"), ["≠ milk", "none read"]);
    assert!(screen.strip.below.starts_with("Plain holds milk."), "{}", strip(&screen));
    // Two have something of their own: the table says what.
    let screen = shown(&demo(), &[("one", "demo-3")]);
    assert_eq!(row(&screen, "allergens"), ["none read", "≠ sulphites", "≠ milk"]);
    assert!(!screen.strip.below.contains("holds"), "{}", strip(&screen));
}

#[test]
fn one_form_waits_for_another() {
    let bench = bench_of(vec![("a".into(), card("Lamp", vec![way("", "50 ml gin")]))]);
    let screen = shown(&bench, &[]);
    assert_eq!(
        (strip(&screen).as_str(), names(&screen)),
        ("One form only: choose one to put beside it | ", vec!["Form 1".to_owned()])
    );
    assert_eq!(screen.copy, "");
    // An empty book has no fields, and a way to begin.
    let screen = shown(&bench_of(Vec::new()), &[]);
    assert_eq!(strip(&screen), "Keep a spec in the book first | ");
    assert!(screen.field("one").is_none() && screen.buttons().iter().any(|button| button.label == "New spec"));
    assert_eq!(table(&screen), Sides::default());
}

#[test]
fn what_is_not_counted_is_shown_and_not_compared() {
    let ways = vec![
        way("one", "50 ml vodka\n20 ml moon dust\n10 ml star dust"),
        way("two", "50 ml vodka"),
        way("three", "50 ml vodka\n20 ml lime juice"),
        way("four", ""),
    ];
    let screen = shown(&bench_of(vec![("a".into(), card("Lamp", ways))]), &[("one", "a")]);
    let below: Vec<String> = table(&screen).sides.into_iter().map(|side| side.below.join(", ")).collect();
    assert_eq!(below, ["no ice, without moon dust and 1 more", "no ice", "no ice", "no ice, nothing measured"]);
    assert!(screen.strip.also.starts_with("Three is sharper"), "{}", strip(&screen));
    assert!(row(&screen, "acid, g")[0] == "0.00" && row(&screen, "acid, g")[3] == "–");
    let said = format!("{:?}", screen.blocks);
    assert!(said.contains("Shown, but not compared, as not all of it is known: one; four."), "{said}");
    // Nothing that is counted is left to compare.
    let ways = vec![way("one", "20 ml moon dust"), way("two", "50 ml vodka")];
    let screen = shown(&bench_of(vec![("a".into(), card("Lamp", ways))]), &[]);
    assert_eq!(screen.strip.also, "Not all lines are counted: nothing to compare yet");
}

#[test]
fn specs_are_chosen_one_by_one() {
    let bench = demo();
    let screen = shown(&bench, &[("one", "demo-1/1"), ("two", "demo-2/0")]);
    assert_eq!(names(&screen), ["Orchard lantern, stirred", "Hedgerow clerk, quick"]);
    assert_eq!(screen.name, "");
    assert!(screen.field("three").is_some() && screen.field("four").is_none(), "room for one more");
    let options = match &screen.field("one").expect("a list").input {
        Input::Pick(options) => options.iter().map(|option| option.label.clone()).collect::<Vec<_>>(),
        other => panic!("{other:?}"),
    };
    let few = ["the last: Orchard lantern", "Orchard lantern, all 3 forms", "Orchard lantern, quick"];
    assert_eq!(options[..3], few);
    // The same twice, and one that is deleted.
    let screen = shown(&bench, &[("one", "demo-1/1"), ("two", "demo-1"), ("three", "gone/0")]);
    assert_eq!(names(&screen), ["stirred", "quick", "washed"]);
    assert_eq!(problem(&screen, "two"), "", "the others of it are new");
    let twice = shown(&bench, &[("one", "demo-1/1"), ("two", "demo-1/1")]);
    assert_eq!(
        (names(&twice).len(), problem(&twice, "two").as_str()),
        (1, "Stands there already. Choose another, or none.")
    );
    assert_eq!(problem(&screen, "three"), "No longer in the book. Choose another, or none.");
    // More than six.
    let screen = shown(&bench, &[("one", "demo-1"), ("two", "demo-2"), ("three", "demo-3")]);
    assert_eq!(names(&screen).len(), MOST);
    assert!(
        format!("{:?}", screen.blocks).contains("Left out: Teapot magistrate, stirred; Teapot magistrate, washed.")
    );
}

#[test]
fn the_spec_that_was_looked_at_last_comes_first() {
    let mut bench = demo();
    bench.at_hand.face = ("demo-2".into(), Face::Read);
    assert_eq!(shown(&bench, &[]).name, "Hedgerow clerk");
    assert_eq!(names(&shown(&bench, &[("two", "demo-1/0")])).len(), 3);
}

#[test]
fn what_is_looked_for_stands_beside_and_what_is_compared_begins_anew() {
    let mut form = SidesForm::default();
    form.take(ALL, "demo-1");
    form.take(FROM, "demo-1/0");
    assert_eq!(form.picks(), ["demo-1", "", "", "", "", ""], "it stands there whole");
    form.take(FROM, "demo-2/1");
    form.take(FROM, "demo-2/1");
    assert_eq!(form.picks(), ["demo-1", "demo-2/1", "", "", "", ""]);
    form.take(ALL, "demo-3");
    assert_eq!(form.picks(), ["demo-3", "", "", "", "", ""]);
}

#[test]
fn a_batch_is_poured() {
    let bench = demo();
    let volume = |pour: &str| row(&shown(&bench, &[("one", "demo-1"), ("pour", pour)]), "volume, ml").swap_remove(2);
    assert!(volume("90 ml").trim_start_matches("≠ ").parse::<f64>().expect("ml") < 110.0, "{}", volume("90 ml"));
    assert_ne!(volume("60 ml"), volume("90 ml"));
    let screen = shown(&bench, &[("one", "demo-1"), ("pour", "many")]);
    assert!(!problem(&screen, "pour").is_empty());
    // Until it is known how much is poured, it is shown whole and compared with nothing.
    let screen = shown(&bench, &[("one", "demo-1"), ("pour", "")]);
    assert_eq!(problem(&screen, "pour"), "Type what is poured of it, like 90 ml.");
    assert_eq!(table(&screen).sides[2].below, ["one clear block", "the whole batch"]);
    assert!(table(&screen).sides[2].picture.is_none());
    assert_eq!(screen.strip.also, "Quick is sharper");
    assert!(shown(&bench, &[("one", "demo-2")]).field("pour").is_none(), "no batch, no question");
}

#[test]
fn six_long_names_and_a_large_book() {
    let long = |at: usize| format!("The very long name of a drink that somebody has written down in full, number {at}");
    let ways =
        |at: usize| vec![way(&long(at), "50 ml gin\n20 ml lime juice"), way("b", "60 ml gin"), way("c", "1 l gin")];
    let cards = (0..5_000).map(|at| (format!("id{at}"), card(&long(at), ways(at)))).collect();
    let bench = bench_of(cards);
    let picks = ["one", "two", "three", "four", "five", "six"];
    let keys: Vec<String> = (0..6).map(|at| format!("id{}/{}", 4_990 + at, at % 3)).collect();
    let chosen: Vec<(&str, &str)> = picks.into_iter().zip(keys.iter().map(String::as_str)).collect();
    let screen = shown(&bench, &chosen);
    assert_eq!(names(&screen).len(), 6);
    assert!(screen.strip.also.starts_with("The "), "{}", strip(&screen));
    assert!(screen.strip.also.chars().count() <= 66, "{}", strip(&screen));
    for pick in picks {
        let Input::Pick(options) = &screen.field(pick).expect("a list").input else { panic!("{pick}") };
        assert!(options.len() < 50, "{}", options.len());
        assert!(options.iter().any(|option| keys.contains(&option.key)), "{pick}");
    }
    assert!(screen.buttons().iter().any(|button| button.label == "Find another spec"));
}

/// Of a batch that says how many it makes one serve stands there, and nothing is asked.
#[test]
fn one_serve_of_a_batch_stands_beside_a_drink() {
    let batch = Way { makes: "20".into(), ..way("batched", "900 ml gin\n600 ml lemon juice") };
    let bench = bench_of(vec![("a".into(), card("Lamp", vec![way("one", "45 ml gin\n30 ml lemon juice"), batch]))]);
    let screen = shown(&bench, &[("all", "a"), ("one", "a")]);
    assert!(screen.field("pour").is_none(), "one serve is a twentieth");
    let volumes = row(&screen, "volume, ml");
    assert_eq!(volumes[0], volumes[1]);
    assert_eq!(screen.strip.also, "Alike in the glass");
}

/// Of what nobody has priced it is not said that it costs nothing.
#[test]
fn what_has_no_price_costs_no_nought() {
    let cards = ["30 ml gin\n10 ml rye", "30 ml rye", "30 ml gin"].map(|lines| way("", lines)).to_vec();
    let mut bench = bench_of(vec![("a".into(), card("Three", cards))]);
    bench.prices =
        ShelfForm { prices: "gin, 1 l, 20".into(), ..ShelfForm::default() }.bench(text::Decimal::Point).prices;
    let cost = table(&shown(&bench, &[("one", "a")])).rows.into_iter().find(|row| row.of == "cost").expect("a row");
    let said: Vec<_> = cost.each.into_iter().map(|side| (side.said, side.below)).collect();
    let pair = |said: &str, below: &str| (said.to_owned(), below.to_owned());
    assert_eq!(said, [pair("0.60", "at least"), pair("no prices", ""), pair("0.60", "")]);
}
