//! The drink of the example: 45 ml pear brandy, 20 ml dry vermouth, 15 ml pear cordial, 2 dashes of bitters.

use super::*;
use crate::screen::picture::Picture;
use crate::screen::{Problem, Tone};
use crate::text::Decimal;
use crate::tool::shelf::settings::ShelfForm;

fn form(texts: &[(&str, &str)]) -> BottleItForm {
    let mut form = BottleItForm::default();
    let texts = texts.iter().map(|(name, text)| ((*name).to_owned(), (*text).to_owned())).collect();
    crate::screen::fill(&mut form, &texts);
    form
}

fn answer(texts: &[(&str, &str)]) -> Answer {
    form(texts).answer(&Bench::default())
}

fn pours(texts: &[(&str, &str)]) -> Vec<String> {
    let blocks = form(texts).layout(&Bench::default());
    let pours = blocks.into_iter().find_map(|block| if let Block::Pours(pours) = block { Some(pours) } else { None });
    let line = |pour: &Pour| format!("{} {}, {}", pour.amount, pour.name, pour.beneath);
    pours.expect("pours").lines.iter().map(line).collect()
}

fn cell(answer: &Answer, label: &str) -> String {
    let cell = answer.cells.iter().find(|cell| cell.label == label);
    cell.map_or_else(|| "none".into(), |cell| cell.figure.to_string())
}

/// Thirty times 45, 20, 15 ml and 2 dashes of 0.8 ml: 1 350, 600, 450 and 48 ml.
#[test]
fn thirty_serves_go_onto_one_scale() {
    let lines = pours(&[("water", "none")]);
    let amounts: Vec<&str> = lines.iter().map(|line| line.split(", ").next().unwrap_or_default()).collect();
    assert_eq!(
        amounts,
        ["1\u{202f}350 ml pear brandy", "600 ml dry vermouth", "450 ml pear cordial", "48 ml orange bitters"]
    );
    // 1 350 ml at 40 % vol weigh 0.948 g/ml (OIML R 22): 1 280 g.
    assert!(lines[0].ends_with(", scale reads 1\u{202f}280 g"), "{lines:?}");
    let dry = answer(&[("water", "none")]);
    assert_eq!(dry.strip.figures[0].to_string(), "4 bottles of 700 ml");
    assert!(dry.strip.also.starts_with("30 serves, pour 81."), "{}", dry.strip.also);
    let wet = answer(&[("water", "percent"), ("percent", "40")]);
    assert_eq!(wet.strip.figures[0].to_string(), "6 bottles of 700 ml");
    let Some((heading, Picture::Vessels { vessels, .. })) = wet.pictures.first() else { panic!("no bottles") };
    assert!(
        heading.starts_with("Fill 5 bottles of 700 ml with 679 ml each, one more with ") && vessels.len() == 6,
        "{heading}"
    );
    assert!(pours(&[]).last().expect("water").contains(" water, "));
}

#[test]
fn a_strength_is_reached_and_one_above_it_is_refused() {
    let made = answer(&[("water", "strength"), ("strength", "20")]);
    assert_eq!(cell(&made, "strength"), "20.0 % vol");
    let problem = |texts: &[(&str, &str)]| {
        let answer = answer(texts);
        assert_eq!(answer.strip.tone, Tone::Problem, "{texts:?}");
        let Problem { field, words, .. } = answer.problems[0].clone();
        (field, words)
    };
    let (field, words) = problem(&[("water", "strength"), ("strength", "30")]);
    assert_eq!(field, "strength");
    assert!(words.starts_with("Without water it is 27.") && words.contains("below that"), "{words}");
    let (field, words) = problem(&[("bottle", "50 ml")]);
    assert!(field == "bottle" && words.starts_with("A serve is 1"), "{words}");
    assert_eq!(problem(&[("serves", "0")]).0, "serves");
    let (field, words) = problem(&[("serves", "999999")]);
    assert!(field == "serves" && words.starts_with("That is more than anybody"), "{words}");
    let (field, words) = problem(&[("by", "have"), ("have", "1 l gin")]);
    assert!(field == "have" && words == "“1 l gin”: Not in the drink: name it as its line does.", "{words}");
    assert_eq!(problem(&[("by", "have"), ("have", "gin")]).0, "have");
    assert_eq!(problem(&[("spec", "60 ml moon dust\n20 ml gin")]).0, "spec");
    assert_eq!(problem(&[("spec", "60 ml gin\nsoda water")]).0, "spec");
    assert!(problem(&[("spec", "60 ml overproof rum"), ("water", "shaken")]).0 == "water");
    for (texts, missing) in [
        ([("spec", "")], "Add a line with an amount, like 60 ml gin."),
        ([("spec", "Lemon twist")], "Add a line with an amount, like 60 ml gin."),
        ([("serves", "")], "Type how many serves, like 30."),
    ] {
        let answer = answer(&texts);
        assert_eq!((answer.strip.also.as_str(), answer.strip.tone), (missing, Tone::Waiting), "{texts:?}");
    }
}

/// 1 000 / 45 = 22.2, 500 / 20 = 25: the brandy runs out, 500 − 22.2 × 20 = 55.56 ml of vermouth stay.
#[test]
fn from_what_there_is_what_runs_out_first_is_named() {
    let made = answer(&[("by", "have")]);
    assert_eq!(made.strip.below, "First to run out: pear brandy");
    assert!(made.strip.also.starts_with("22 serves, pour "), "{}", made.strip.also);
    assert_eq!(cell(&made, "dry vermouth left over"), "55.56 ml");
    assert!(pours(&[("by", "have")])[0].starts_with("1\u{202f}000 ml pear brandy"));
    // Six bottles of 700 ml with 3 % headspace: 4 074 ml.
    let six = answer(&[("by", "bottles"), ("rounding", "10ml")]);
    assert_eq!(six.strip.figures[0].to_string(), "6 bottles of 700 ml");
    assert!(six.notes.iter().any(|note| note.starts_with("Rounded it makes 4\u{202f}0")), "{:?}", six.notes);
}

#[test]
fn fresh_citrus_goes_in_last_and_what_fills_the_glass_stays_out() {
    let sour = [("spec", "60 ml gin\n22.5 ml lemon juice\n20 ml simple syrup\ntop with soda"), ("water", "percent")];
    let lines = pours(&sour);
    assert!(lines[2].contains("water") && lines[3].contains("lemon juice"), "{lines:?}");
    let made = answer(&sour);
    assert!(made.notes.iter().any(|note| note == "Goes in the glass, not in the bottle: top with soda."));
    assert!(made.notes.iter().any(|note| note.starts_with("Fresh juice is best the day")), "{:?}", made.notes);
    let plan = made.plan.expect("a plan");
    let keys: Vec<&str> = plan.steps.iter().map(|step| step.key.as_str()).collect();
    assert_eq!(keys, ["mix", "last", "bottle", "chill"]);
    assert!(made.carry.iter().any(|carry| carry.label == "Label it" && carry.href.contains("keeps=fresh")));
}

#[test]
fn the_freezer_is_warned_of_where_it_freezes() {
    let made = answer(&[]);
    assert!(made.cautions.iter().any(|words| words.starts_with("Slush at −18 °C: it begins to freeze near −")));
    let strong = answer(&[("water", "none"), ("spec", "60 ml gin")]);
    assert!(strong.cautions.is_empty() && cell(&strong, "at −18 °C") == "syrupy", "{:?}", strong.cautions);
    let weak = answer(&[("water", "none"), ("spec", "10 ml gin\n90 ml water")]);
    assert!(weak.cautions.iter().any(|words| words.contains("Glass bottles burst when solid.")), "{:?}", weak.cautions);
    assert_eq!(cell(&answer(&[("water", "none"), ("freezer", "")]), "at −18 °C"), "none");
    assert!(answer(&[("freezer", "5")]).problems.iter().any(|problem| problem.field == "freezer"));
}

/// Two full ones, 679 ml each, are 1 358 ml; a serve with 37.7 % more water is about 112 ml: twelve.
#[test]
fn what_is_left_mid_shift_is_counted_in_serves() {
    let left = |texts: &[(&str, &str)]| {
        cell(&answer(&[&[("water", "percent"), ("percent", "37.7")], texts].concat()), "serves left")
    };
    assert_eq!(left(&[]), "none");
    assert_eq!(left(&[("left", "2")]), "12 serves");
    // 480 g of glass and 300 g in it, some 307 ml: two more.
    assert_eq!(left(&[("left", "0"), ("open", "780 g"), ("empty", "480 g")]), "2 serves");
    assert_eq!(left(&[("left", "2"), ("open", "780 g"), ("empty", "480 g")]), "14 serves");
    for (open, empty, field) in [("780 g", "", "empty"), ("400 g", "480 g", "open")] {
        let answer = answer(&[("open", open), ("empty", empty)]);
        assert!(answer.problems.iter().any(|problem| problem.field == field), "{field}");
        assert_eq!(answer.strip.tone, Tone::Answer);
    }
}

#[test]
fn a_bar_of_ounces_sees_both_and_pours_with_its_jiggers() {
    let bench = ShelfForm { usual_unit: "oz".into(), ..ShelfForm::default() }.bench(Decimal::Point);
    let made = BottleItForm::default().answer(&bench);
    assert!(made.strip.also.contains(" oz, 1"), "{}", made.strip.also);
    assert!(made.text.expect("text").contains(" oz, 1\u{202f}350 ml pear brandy"));
    assert_eq!(made.rows[0].name, "One serve");
}

/// A serve of 100 ml, bottles of 679 ml: 6 serves are 600 ml; 12 are 679 and 521; 18 are 1 800, twice 679 and 442.
#[test]
fn how_the_bottles_are_filled_is_one_sentence() {
    for (serves, bottle, said) in [
        ("6", "700 ml", "Fill 1 bottle of 700 ml with 600 ml"),
        ("12", "700 ml", "Fill 1 bottle of 700 ml with 679 ml, the second with 521 ml"),
        ("18", "700 ml", "Fill 2 bottles of 700 ml with 679 ml each, the third with 442 ml"),
        ("28", "700 ml", "Fill 4 bottles of 700 ml with 679 ml each, one more with 84 ml"),
        ("97", "5 l", "Fill 2 vessels of 5\u{202f}000 ml with 4\u{202f}850 ml each"),
        ("1", "700 ml", "Fill 1 bottle of 700 ml with 100 ml"),
    ] {
        let made = answer(&[("spec", "100 ml water"), ("water", "none"), ("serves", serves), ("bottle", bottle)]);
        assert_eq!(made.pictures[0].0, said);
        let steps = made.plan.expect("a plan").steps;
        assert!(steps.iter().any(|step| step.words.contains(&format!("{said}; label"))), "{steps:?}");
    }
}
