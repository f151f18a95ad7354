//! What Chill says, and of what it says that it cannot.

use super::*;
use crate::screen::picture::Picture;
use crate::screen::{Texts, Tone, fill};
use crate::text::Decimal;
use crate::tool::shelf::settings::ShelfForm;

fn form(texts: &[(&str, &str)]) -> ChillForm {
    let mut form = ChillForm::default();
    let texts: Texts = texts.iter().map(|(name, text)| ((*name).to_owned(), (*text).to_owned())).collect();
    fill(&mut form, &texts);
    form
}

fn answer(texts: &[(&str, &str)]) -> Answer {
    form(texts).answer(&Bench::default())
}

/// Temperature of the strip, and the millilitres of "+31 ml water, …".
fn told(answer: &Answer) -> [f64; 2] {
    let water = answer.strip.also.strip_prefix('+').and_then(|rest| rest.split(' ').next());
    [Some(answer.strip.figures[0].value.as_str()), water].map(|number| {
        let number = number.map(|number| number.replace('−', "-").parse());
        number.and_then(Result::ok).unwrap_or_else(|| panic!("{:?} {:?}", answer.strip, answer.problems))
    })
}

#[test]
fn the_example_is_answered_with_its_curve_and_what_it_was() {
    let answer = answer(&[]);
    assert_eq!(answer.strip.figures[0].to_string(), "−5.0 °C");
    assert_eq!(answer.strip.also, "+35 ml water, 19.1 % vol");
    assert_eq!(answer.strip.below, "± a fifth in a bar");
    // Of 163 g of ice 35 g are gone.
    let Some(Picture::Vessels { text, vessels }) = &answer.strip.picture else { panic!("no drawing") };
    assert_eq!(text, "117 ml on 128 g ice");
    assert!(vessels.len() == 1 && vessels[0].level > 0.0 && !vessels[0].ice.is_empty());
    let rows: Vec<String> =
        answer.rows.iter().map(|row| format!("{} {}, {}", row.name, row.amount, row.detail)).collect();
    let shown = [
        "strength 19.1 %, was 27.3",
        "volume 117 ml, was 81.4 ml",
        "sugar 60.8 g/l, was 87.1",
        "acid, as citric 3.74 g/l, was 5.36",
    ];
    assert_eq!(rows, shown);
    let [(title, Picture::Curve { text, lines, seconds, foot })] = answer.pictures.as_slice() else {
        panic!("{:?}", answer.pictures)
    };
    assert_eq!((title.as_str(), *seconds), ("", [30.0, 90.0]));
    assert_eq!(text, "From 20.0 °C to −5.0 °C in 30 s, with 35 ml of water; −7.9 °C and 41 ml after 90 s");
    assert_eq!(foot.iter().map(|(_, words)| words.as_str()).collect::<Vec<_>>(), ["0", "30 s", "60", "90 s"]);
    assert!(lines.iter().all(|line| line.points.len() < 20), "cheap to draw");
    // Straight between its points, and off by no more than half a pixel of 150: the water is by 1 − e^(−t/16).
    for pair in lines[1].points.windows(2) {
        let [[from, low], [to, high]] = [pair[0], pair[1]];
        let middle = f64::midpoint(from, to);
        let share = |seconds: f64| 1.0 - (-seconds / 16.0).exp();
        let there = lines[1].points[18][1] * share(middle) / share(90.0);
        assert!((f64::midpoint(low, high) - there).abs() < lines[1].points[18][1] * 0.5 / 150.0, "{from} to {to}");
    }
    // What is drawn at the chosen time is what the strip says.
    assert!((lines[0].now + 5.0).abs() < 0.05 && (lines[1].now - 35.2).abs() < 0.1, "{lines:?}");
    let block = |texts: &[(&str, &str)]| form(texts).layout(&Bench::default()).swap_remove(2);
    assert_eq!(block(&[]), Block::Remark("About 60 turns of the spoon (rule of thumb).".into()));
    assert_eq!(block(&[("time", "0:45")]), Block::Remark("About 90 turns of the spoon (rule of thumb).".into()));
    assert_eq!(block(&[("method", "shake")]), Block::Nothing);
}

#[test]
fn a_drink_in_fahrenheit_is_told_in_fahrenheit() {
    let warm = answer(&[("drink_at", "68 °F")]);
    // −5.0 °C.
    assert_eq!(warm.strip.figures[0].to_string(), "23.0 °F");
    assert_eq!(warm.strip.also, answer(&[]).strip.also);
    let [(_, Picture::Curve { text, lines, .. })] = warm.pictures.as_slice() else { panic!("no curve") };
    assert!(text.starts_with("From 68.0 °F to 23.0 °F in 30 s") && lines[0].name == "°F, left", "{text}");
    assert!(lines[0].points[0][1] > 67.9, "{lines:?}");
}

#[test]
fn ice_vessel_and_time_count() {
    let usual = told(&answer(&[]));
    for (texts, is_colder, is_wetter) in [
        (&[("time", "10")] as &[(&str, &str)], false, false),
        (&[("time", "1:30")], true, true),
        (&[("ice_at", "-18")], true, false),
        (&[("wet", "wet")], true, true),
        (&[("wet", "dry")], false, false),
        (&[("drink_at", "4")], true, false),
        (&[("ice", "30 g")], false, false),
        (&[("method", "shake")], true, true),
        (&[("vessel", "tin")], false, true),
        (&[("vessel", "tin"), ("vessel_at", "-18")], true, false),
    ] {
        let [at, water] = told(&answer(texts));
        // The water on the ice is at 0 °C: it adds water, and next to no cold.
        let is_as_cold = (at - usual[0]).abs() < 0.65 && texts[0].0 == "wet";
        assert!(is_as_cold || (at < usual[0]) == is_colder, "{texts:?}: {at} {usual:?}");
        assert!((water > usual[1]) == is_wetter, "{texts:?}: {water} {usual:?}");
    }
    let tin = |mass: &str| answer(&[("vessel", "tin"), ("vessel_mass", mass)]);
    assert_eq!(tin("").strip, tin("250 g").strip);
    assert!(told(&tin("800 g"))[1] > told(&tin("250 g"))[1]);
    let ice = answer(&[]).notes;
    assert_eq!(ice, ["On 163 g ice, as is usual for it (rule of thumb)."]);
    assert!(answer(&[("ice", "163 g")]).notes.is_empty());
}

#[test]
fn what_cannot_be_is_said_at_its_field() {
    for (texts, field, words) in [
        (&[("drink_at", "-10")] as &[(&str, &str)], "drink_at", "The drink is colder than the ice"),
        (&[("ice_at", "4")], "ice_at", "Ice is at 0 °C or below."),
        (&[("ice", "0")], "ice", "Without ice nothing is chilled."),
        (&[("spec", "60 ml spirit 100 %")], "spec", "Too strong or too sweet"),
        (&[("drink_at", "-19"), ("ice_at", "-30")], "drink_at", "So cold, this drink is frozen before"),
        (&[("time", "0")], "time", "Type how long"),
        (&[("time", "0 s")], "time", "Type how long"),
        (&[("time", "10 h")], "time", "After an hour the room has warmed it."),
        (&[("time", "soon")], "time", "Type how long"),
        (&[("drink_at", "200")], "drink_at", "Known from −20 to 60 °C."),
        (&[("vessel", "glass"), ("vessel_at", "200")], "vessel_at", "Known from −40 to 60 °C."),
    ] {
        let answer = answer(texts);
        assert_eq!(answer.strip.tone, Tone::Problem, "{texts:?}");
        let told: Vec<(&str, &str)> =
            answer.problems.iter().map(|problem| (problem.field.as_str(), problem.words.as_str())).collect();
        assert!(
            matches!(told.as_slice(), [(at, said)] if *at == field && said.starts_with(words)),
            "{texts:?} {told:?}"
        );
    }
    for (texts, words) in [
        (&[("spec", "")] as &[(&str, &str)], "Type or paste a spec, a line for each ingredient."),
        (&[("spec", "Lemon twist")], "Add a line with an amount, like 60 ml gin."),
        (&[("spec", "20 ml moon dust")], "None of it can be counted yet: see its lines below."),
        (&[("time", "")], "Type how long, like 30 s."),
    ] {
        let answer = answer(texts);
        assert_eq!((answer.strip.tone, answer.strip.also.as_str()), (Tone::Waiting, words), "{texts:?}");
    }
}

#[test]
fn a_line_that_is_not_counted_is_never_silent() {
    let answer = answer(&[("spec", "60 ml gin\n20 ml moon dust")]);
    assert_eq!(answer.strip.also, "Without “moon dust”: see its line below");
    let marked: Vec<&str> = answer.rows.iter().filter(|row| row.marked).map(|row| row.name.as_str()).collect();
    assert_eq!(marked, ["moon dust"]);
    assert_eq!((answer.rows.len(), answer.leads.as_str()), (5, "1 line not counted"));
}

#[test]
fn a_second_opinion_says_why_it_differs() {
    let second = |texts: &[(&str, &str)]| {
        let remarks = answer(texts).remarks;
        remarks.into_iter().find(|remark| remark.starts_with("A second opinion")).unwrap_or_default()
    };
    assert!(second(&[]).ends_with("have 32 ml water."), "{}", second(&[]));
    assert!(second(&[("ice_at", "-18")]).ends_with("Ice colder than 0 °C melts less."));
    assert!(second(&[("time", "8")]).ends_with("It is for the usual time, which is longer."));
    assert!(second(&[("wet", "wet")]).ends_with("The water on your ice goes in too."));
    assert!(second(&[("method", "shake")]).contains("shaken drinks"));
    assert_eq!(second(&[("method", "block")]), "");
}

#[test]
fn the_bars_own_drink_is_weighed_and_kept() {
    let closed = answer(&[]);
    assert_eq!(closed.buttons[0].label, "Weigh mine");
    assert!(
        form(&[])
            .layout(&Bench::default())
            .iter()
            .all(|block| !matches!(block, Block::Field(field) if field.name == CAME_OUT))
    );
    // 90 ml that come out as 120 ml: a third of its volume in water, less what it shrinks by; as usual it is 43 %.
    let weighed = [("weigh", "yes"), ("went_in", "90 ml"), ("came_out", "120 ml")];
    let answer_of = answer(&weighed);
    let [_, water] = told(&answer_of);
    assert!((27.0..=29.0).contains(&water), "{:?}", answer_of.strip);
    assert!(answer_of.strip.below.starts_with("Your own, stirred"), "{:?}", answer_of.strip);
    let [button] = answer_of.buttons.as_slice() else { panic!("{:?}", answer_of.buttons) };
    assert_eq!(button.label, "Keep as my own, stirred");
    let Act::KeepPace("pace_stir", kept) = &button.act else { panic!("{button:?}") };
    // Kept, it says the same of the next drink, and of no other method.
    let bench = ShelfForm { pace_stir: kept.clone(), ..ShelfForm::default() }.bench(Decimal::Point);
    let next = ChillForm::default().answer(&bench);
    assert_eq!([&next.strip.also, &next.strip.below], [&answer_of.strip.also, &answer_of.strip.below]);
    assert!(next.remarks.iter().any(|remark| remark.starts_with("How fast is your own: 95 % of the water after ")));
    assert_eq!(form(&[("method", "shake")]).answer(&bench).strip, answer(&[("method", "shake")]).strip);
    // The same by weight: 27.9 g more on 80.6 g.
    let by_weight = answer(&[("went_in", "80 g"), ("came_out", "107.7 g")]);
    assert!((told(&by_weight)[1] - water).abs() <= 1.0, "{:?}", by_weight.strip);
}

#[test]
fn what_cannot_have_been_weighed_is_said() {
    for (came_out, words) in [
        ("80 ml", "It came out as no more than went in."),
        ("90 ml", "It came out as no more than went in."),
        ("180 ml", "That is more water than so much heat melts."),
        ("120 g", "Weigh it before and after, or measure it before and after."),
    ] {
        let answer = answer(&[("went_in", "90 ml"), ("came_out", came_out)]);
        let told: Vec<(&str, &str)> =
            answer.problems.iter().map(|problem| (problem.field.as_str(), problem.words.as_str())).collect();
        assert!(matches!(told.as_slice(), [(CAME_OUT, said)] if said.starts_with(words)), "{came_out}: {told:?}");
        assert!(answer.buttons.is_empty() && answer.strip.tone == Tone::Answer, "{came_out}");
    }
}

#[test]
fn the_drawing_is_of_one_drink_and_its_ice() {
    let ice = |texts: &[(&str, &str)]| match answer(texts).strip.picture {
        Some(Picture::Vessels { vessels, .. }) => vessels[0].ice.len(),
        Some(other) => panic!("{other:?}"),
        None => 99,
    };
    assert_eq!(ice(&[("method", "block")]), 1);
    assert!(ice(&[("method", "build")]) > ice(&[]), "crushed ice is in more pieces");
    assert_eq!(ice(&[("ice", "15 g"), ("time", "10 min")]), 0, "all melted");
    assert_eq!(ice(&[("spec", "2 l gin")]), 99, "no batch is drawn");
}
