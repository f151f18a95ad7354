//! The shelf, field by field.

use super::*;
use crate::quantity::Mass;

#[test]
fn the_default_shelf_reads_without_a_problem() {
    let shelf = ShelfForm::default();
    assert_eq!(shelf.problems(Decimal::Point), []);
    assert_eq!(shelf.problems(Decimal::Comma), []);
    let bench = shelf.bench(Decimal::Point);
    let labels: Vec<&str> = bench.house.marks().map(|mark| mark.label.as_str()).collect();
    assert_eq!(labels, ["2 oz", "1½ oz", "1 oz", "¼ oz", "½ oz", "¾ oz"]);
}

#[test]
fn one_choice_reads_as_the_whole_shelf_does() {
    let empty = Texts::new();
    let whole = ShelfForm::of(&empty);
    assert_eq!((Theme::of(&empty).key(), Keyboard::of(&empty).key()), (whole.theme.as_str(), whole.keyboard.as_str()));
    let paper = Texts::from([("theme".to_owned(), "paper".to_owned())]);
    assert_eq!(Theme::of(&paper), Theme::Paper);
}

#[test]
fn a_bad_measure_is_said_and_the_default_holds() {
    let shelf = ShelfForm { dash: "40 ml".into(), barspoon: "spoon".into(), ..ShelfForm::default() };
    let words: Vec<String> = shelf.problems(Decimal::Comma).into_iter().map(|problem| problem.words).collect();
    assert_eq!(words, ["Type 0,1 to 5 ml.", "Type an amount, like 45 ml or 1½ oz."]);
    assert_eq!(shelf.bench(Decimal::Point).house.conventions, Conventions::default());
}

#[test]
fn prices_are_read_and_a_line_that_is_none_is_said() {
    let prices = "gin, 700 ml, 24.00\n\nmy note\negg, 0 pieces, 3";
    let shelf = ShelfForm { prices: prices.into(), currency: " € ".into(), ..ShelfForm::default() };
    let bench = shelf.bench(Decimal::Point);
    assert_eq!((bench.prices.len(), bench.prices[0].library, bench.currency.as_str()), (1, "london-dry-gin", "€"));
    let words: Vec<String> = shelf.problems(Decimal::Point).into_iter().map(|problem| problem.words).collect();
    assert_eq!(words, ["“my note” can't be read as a price. Write it like London dry gin, 700 ml, 24.00, 2026-11-20."]);
}

#[test]
fn a_yield_that_no_tool_asks_for_is_said() {
    let words = |yields: &str| {
        let shelf = ShelfForm { yields: yields.into(), ..ShelfForm::default() };
        shelf.problems(Decimal::Point).into_iter().map(|problem| problem.words).collect::<Vec<_>>().join("|")
    };
    for known in ["lime juice 38 %", "Lime JUICE: 40", "pear by agar 80 %\nmilk wash 85 %", "lime filtered juice 35"] {
        assert_eq!(words(known), "", "{known}");
    }
    assert!(words("lime juice 38 %\nlimes 40 %").starts_with("No tool asks for “limes”."));
    assert!(words("my note").starts_with("“my note” is no yield."));
}

#[test]
fn two_numbers_or_one_among_the_jiggers_is_asked() {
    let shelf = ShelfForm { lines_1: "25,50 ml".into(), ..ShelfForm::default() };
    let problems = shelf.problems(Decimal::Comma);
    assert_eq!(problems[0].words, "25,50 can be read two ways. Did you mean 25; 50 or 25,5?");
    let fixes: Vec<&str> = problems[0].fixes.iter().map(|fix| fix.text.as_str()).collect();
    assert_eq!(fixes, ["25; 50 ml", "25,5 ml"]);
    for fix in fixes {
        let shelf = ShelfForm { lines_1: fix.into(), ..ShelfForm::default() };
        assert_eq!(shelf.problems(Decimal::Comma), [], "{fix}");
    }
}

/// 500 g is 1 lb 1.6 oz of 453.592 37 g (NIST Handbook 44, as in tests/published/nist_units.rs).
#[test]
fn weights_are_shown_as_the_bar_weighs() {
    let bench = |weights: &str| ShelfForm { weights: weights.into(), ..ShelfForm::default() }.bench(Decimal::Point);
    let shown = |g: f64, weights| bench(weights).grams_of(Mass::from_g(g).expect("g"), "sugar").to_string();
    assert_eq!((shown(500.0, "g"), shown(500.0, "lb")), ("500 g sugar".into(), "1 lb 1.6 oz sugar, 500 g".into()));
    assert_eq!(shown(2.5, "lb"), "2.5 g sugar", "less than an ounce");
}

#[test]
fn the_round_ounce_reaches_the_jiggers() {
    let shelf = ShelfForm { ounce: "round".into(), ..ShelfForm::default() };
    let bench = shelf.bench(Decimal::Point);
    assert!((bench.house.jiggers[0].brim.volume.ml() - 60.0).abs() < 1e-9);
}

#[test]
fn glasses_are_read_a_line_each_and_what_is_none_is_said() {
    let read = |glasses: &str| {
        let shelf = ShelfForm { glasses: glasses.into(), ..ShelfForm::default() };
        let words: Vec<String> = shelf.problems(Decimal::Point).into_iter().map(|problem| problem.words).collect();
        let names: Vec<String> = shelf.bench(Decimal::Point).glasses.into_iter().map(|glass| glass.name).collect();
        (names, words.join("|"))
    };
    assert_eq!(read("stem, 14 cl, wine\n\nNan's mug, 300").0, ["stem", "Nan's mug"]);
    let (names, words) = read("stem, 14 cl, wine\ngourd, 300 ml\nmug");
    assert_eq!(names, ["stem"]);
    assert_eq!(
        words,
        "No shape is known for “gourd”. Put one behind: tumbler, tall, pint, shot, mug, wine, goblet, coupe, flute, cone."
    );
    assert_eq!(read("mug, 0 ml").1, "“mug, 0 ml” is no glass. Write it like small wine glass, 140 ml, wine.");
    // None of its own: the generic ones.
    assert_eq!(read("").0.len(), 10);
    assert_eq!(read(""), read(crate::book::GENERIC));
}
