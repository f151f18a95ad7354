//! Cordials as they are asked for.

use super::*;
use crate::craft::balance::balance;
use crate::screen::{Act, Button};
use crate::substance::mix::Mix;

fn answer(change: impl FnOnce(&mut CordialForm)) -> Answer {
    let mut form = CordialForm::default();
    change(&mut form);
    form.answer(&Bench::default())
}

fn figures(answer: &Answer) -> Vec<String> {
    answer.strip.figures.iter().map(ToString::to_string).collect()
}

#[test]
fn the_house_recipe_scales() {
    let made = answer(|form| form.juice = "105 ml".into());
    assert_eq!(figures(&made), ["45.0 g sugar", "2.5 g acid"]);
    assert_eq!(figures(&answer(|form| form.juice = "1050 ml".into())), ["450 g sugar", "25.0 g acid"]);
}

#[test]
fn a_target_is_met() {
    let made = answer(|form| form.to = "target".into());
    assert!(made.strip.also.contains("at 40.0 °Bx, acid 25 g/l, pH 2."), "{}", made.strip.also);
    let sour = answer(|form| {
        form.to = "target".into();
        form.juice_of = "lemon-juice".into();
    });
    assert!(sour.problems.iter().any(|problem| problem.words.starts_with("The juice is sourer")));
}

#[test]
fn both_forms_side_by_side() {
    let swapped = answer(|form| form.ask = "swap".into());
    assert!(swapped.strip.figures[0].to_string().ends_with("ml cordial"), "{:?}", swapped.strip);
    let cell = |label: &str| swapped.cells.iter().find(|cell| cell.label == label).map(|cell| cell.figure.to_string());
    for what in ["sugar", "acid", "volume", "strength"] {
        assert_eq!(cell(&format!("{what}, fresh")), cell(&format!("{what}, cordial")), "{what}");
    }
}

/// The new form goes on with all that its cordial holds: read again, it is the drink that stood beside the fresh one.
#[test]
fn the_swapped_form_is_the_same_drink_elsewhere() {
    let swapped = answer(|form| form.ask = "swap".into());
    let href = swapped.carry.iter().find(|carry| carry.label == "Scale it").expect("a link").href.clone();
    let spec = crate::screen::percent::decode(href.split("spec=").nth(1).expect("a spec"));
    let read = balance(&Contents::of(&spec, &Bench::default()).mix);
    let cell =
        |label: &str| swapped.cells.iter().find(|cell| cell.label == label).map(|cell| cell.figure.value.clone());
    let one = |value: f64| text::plain(value, 1, text::Decimal::Point);
    assert_eq!(cell("pH, cordial"), read.ph.map(one), "{spec}");
    assert_eq!(cell("strength, cordial"), Some(one(read.strength.fraction() * 100.0)));
    let fresh = Contents::of(&CordialForm::default().spec, &Bench::default()).mix;
    let ph = |mix: &Mix| balance(mix).ph.expect("a pH");
    assert!((ph(&fresh) - read.ph.expect("a pH")).abs() < 0.15, "{} {:?}", ph(&fresh), read.ph);
}

/// For the juice there is as many serves as it makes; a pour of another size holds the same sugar and acid.
#[test]
fn a_swap_for_the_juice_there_is_and_for_a_pour() {
    let swapped = |change: fn(&mut CordialForm)| {
        answer(|form| {
            form.ask = "swap".into();
            change(form);
        })
    };
    let row = |answer: &Answer, starts: &str| {
        answer.rows.iter().find(|row| row.name.starts_with(starts)).map(|row| (row.name.clone(), row.amount.clone()))
    };
    let by_serves = swapped(|_| {});
    let (_, juice) = row(&by_serves, "Pear juice, clear").expect("juice");
    assert!(row(&by_serves, "The cordial, for 40 serves").is_some());
    let by_juice = swapped(|form| {
        form.make_for = "juice".into();
        form.juice = "500 ml".into();
    });
    assert_eq!(row(&by_juice, "Pear juice, clear").expect("juice").1, "500 ml", "{juice}");
    let cell = |answer: &Answer, label: &str| {
        answer.cells.iter().find(|cell| cell.label == label).map(|cell| cell.figure.to_string())
    };
    let larger = swapped(|form| form.pour = "75 ml".into());
    assert_eq!(larger.strip.figures[0].to_string(), "75 ml cordial");
    for what in ["sugar", "acid"] {
        assert_eq!(cell(&larger, &format!("{what}, fresh")), cell(&larger, &format!("{what}, cordial")), "{what}");
    }
    assert!(larger.remarks.iter().any(|words| words.contains("another size and strength")), "{:?}", larger.remarks);
    // The form that is kept is written as a hand pours it; the strip says what matches.
    let odd = swapped(|form| form.pour = "59.41 ml".into());
    let kept = odd.form.expect("a form").lines;
    assert!(kept.contains("\n59.5 ml pear cordial (sugar "), "{kept}");
    assert_eq!(odd.strip.figures[0].to_string(), "59.4 ml cordial");
    let asked = swapped(|form| form.pour = "1,000".into());
    assert_eq!(asked.problems[0].field, "pour");
}

/// What is kept as an ingredient is what was made: its line in a spec reads as the cordial itself.
#[test]
fn a_cordial_kept_as_an_ingredient_is_the_same() {
    let made = answer(|form| form.to = "target".into());
    let own = *made.prep.clone().expect("an ingredient");
    assert_eq!(
        (own.name.as_str(), own.like.as_str(), own.gives.as_str()),
        ("pear cordial", "cordial", "1\u{202f}313 ml")
    );
    assert_eq!(own.parts, "1000 ml pear juice\n471.27 g sugar\n31.55 g citric acid");
    let taken = crate::screen::own::taken(&own, text::Decimal::Point, &mut Vec::new()).expect("taken");
    let bench = Bench { own: vec![(own.name, taken)], ..Bench::default() };
    let read = balance(&Contents::of("30 ml pear cordial", &bench).mix);
    let cell = |label: &str| made.cells.iter().find(|cell| cell.label == label).map(|cell| cell.figure.value.clone());
    assert_eq!(cell("pH"), read.ph.map(|ph| text::plain(ph, 1, text::Decimal::Point)));
    assert_eq!(cell("acid"), Some(text::count(read.acid, text::Decimal::Point)));
    assert_eq!(cell("sugar"), Some(text::count(read.sugar, text::Decimal::Point)));
}

/// More sugar than dissolves in its water is said, as for a syrup.
#[test]
fn crystals_are_said() {
    let warned = |brix: &str| {
        let made = answer(|form| {
            form.to = "target".into();
            form.to_brix = brix.into();
        });
        made.cautions.iter().any(|words| words.starts_with("May crystallise"))
    };
    assert!(warned("75") && warned("67.5") && !warned("60"));
}

#[test]
fn what_is_declared_or_kept_stays() {
    let swapped = |stays: &str| {
        answer(|form| {
            form.ask = "swap".into();
            form.spec = "50 ml gin\n25 ml lemon juice\n15 ml orgeat\n20 ml honey syrup".into();
            form.stays = stays.into();
        })
    };
    assert_eq!(swapped("").strip.below, "In place of lemon juice, honey syrup");
    assert_eq!(swapped("20 ml honey syrup").strip.below, "In place of lemon juice");
    let put = swapped("").rows.into_iter().flat_map(|row| row.buttons).map(put_by).collect::<Vec<_>>();
    assert_eq!(put, ["25 ml lemon juice", "20 ml honey syrup"]);
    // All kept: each has its way back.
    let all = swapped("25 ml lemon juice\n20 ml honey syrup");
    assert!(all.problems[0].words.starts_with("Every line"), "{:?}", all.problems);
    assert_eq!(all.rows.iter().filter(|row| !row.buttons.is_empty()).count(), 2);
}

#[test]
fn a_swap_says_why_there_is_water_or_little_juice() {
    let swapped = answer(|form| {
        form.ask = "swap".into();
        form.spec = "50 ml gin\n60 ml simple syrup".into();
    });
    let [why] = swapped.problems.as_slice() else { panic!("{:?}", swapped.problems) };
    assert!(why.field == "fill" && why.words.starts_with("More juice would be sourer than the drink"), "{why:?}");
    assert_eq!(swapped.strip.tone, Tone::Answer);
    assert!(!swapped.rows.iter().any(|row| row.name == "citric acid"));
}

/// The text that a button puts.
fn put_by(button: Button) -> String {
    match button.act {
        Act::Put(puts) => puts.into_iter().map(|(_, text)| text).collect(),
        other => panic!("{other:?}"),
    }
}
