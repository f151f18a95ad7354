//! Labels as they are filled in.

use super::*;
use crate::screen::clock::Clock;

fn bench() -> Bench {
    Bench { clock: Clock { now: 1_795_620_600_000, ahead: |_| 0 }, ..Bench::default() }
}

#[test]
fn says_what_it_must() {
    let form =
        LabelForm { strength: "22.5".into(), pour: "60 ml".into(), allergens: "milk".into(), ..LabelForm::default() };
    let answer = form.answer(&bench());
    let label = answer.label.expect("a label");
    let texts: Vec<&str> = label.texts.iter().map(|text| text.words.as_str()).collect();
    assert_eq!(
        texts,
        [
            "Orchard cordial",
            "22.5 % vol · pour 60 ml · keep",
            "cold",
            "Made Wed 25 Nov, 15:30",
            "Use by Tue 1 Dec 2026",
            "▲ Contains milk",
        ]
    );
    // What guests must be told of stands heavy below a rule, in larger letters than what stands above it.
    let [.., above, contains] = label.texts.as_slice() else { panic!("lines") };
    let [_, rule, _] = label.rule.expect("a rule");
    assert!(
        contains.is_heavy && contains.size > above.size && above.y < rule && rule < contains.y - contains.size * 0.8
    );
    assert_eq!(answer.strip.also, "Orchard cordial. Contains milk");
}

#[test]
fn another_thing_has_a_label_of_its_own() {
    let mut form = LabelForm { allergens: "milk".into(), days: "5".into(), ..LabelForm::default() };
    form.take("name", "Saline");
    assert_eq!((form.name.as_str(), form.allergens.as_str(), form.days.as_str()), ("Saline", "", "5"));
}

#[test]
fn a_label_whose_spec_is_gone_says_why_it_has_no_code() {
    let remarks = |spec: &str| LabelForm { spec: spec.into(), ..LabelForm::default() }.answer(&bench()).remarks;
    assert!(remarks("gone").iter().any(|remark| remark.starts_with("Its spec is no longer in the book")));
    assert!(!remarks("").iter().any(|remark| remark.contains("no code")));
}

#[test]
fn mistakes_are_said() {
    for (form, field) in [
        (LabelForm { days: "0".into(), ..LabelForm::default() }, "days"),
        (LabelForm { days: "1.5".into(), ..LabelForm::default() }, "days"),
        (LabelForm { keeps: "fresh".into(), days_fresh: "x".into(), ..LabelForm::default() }, "days_fresh"),
        (LabelForm { made: "yesterday".into(), ..LabelForm::default() }, "made"),
        (LabelForm { copies: "51".into(), ..LabelForm::default() }, "copies"),
    ] {
        assert_eq!(form.answer(&bench()).problems[0].field, field);
    }
}

/// What is printed of a form.
fn printed(form: &LabelForm) -> String {
    let label = form.answer(&bench()).label.expect("a label");
    label.texts.iter().map(|text| text.words.as_str()).collect::<Vec<_>>().join(" ")
}

/// The fields that are asked, and what is asked.
fn asked(form: &LabelForm) -> Vec<String> {
    form.answer(&bench()).problems.into_iter().map(|problem| problem.field).collect()
}

#[test]
fn gelatin_asks_what_it_is_of_before_nothing_is_declared() {
    let of = |gelatin: &str, allergens: &str| LabelForm {
        name: "Lime, cleared with gelatin".into(),
        gelatin: gelatin.into(),
        allergens: allergens.into(),
        ..LabelForm::default()
    };
    assert_eq!(asked(&of("", "")), ["gelatin"]);
    for (gelatin, allergens, contains) in [
        ("", "", "Contains gelatin (of what is not said)"),
        ("fish", "", "Contains fish (gelatin)"),
        ("fish", "milk, fish", "Contains milk, fish, fish gelatin"),
        ("beef", "", "Contains beef gelatin"),
        ("pork", "milk", "Contains milk, pork gelatin"),
    ] {
        let form = of(gelatin, allergens);
        assert!(printed(&form).contains(contains), "{}", printed(&form));
        assert_eq!(asked(&form).is_empty(), !gelatin.is_empty());
    }
    // A link says so too, as a run does of the juice in a cordial; and the next label begins anew.
    let mut form = LabelForm::default();
    form.take("name", "Lime cordial");
    form.take("asks", "enzyme gelatin");
    assert_eq!(asked(&form), ["gelatin"]);
    assert!(form.answer(&bench()).remarks.iter().any(|remark| remark.starts_with("Enzyme: food-grade")));
    form.gelatin = "fish".into();
    form.take("name", "Saline");
    assert_eq!((form.asks.as_str(), form.gelatin.as_str()), ("", ""));
    assert!(!printed(&LabelForm { name: "Agar lime".into(), ..LabelForm::default() }).contains("Contains"));
}

#[test]
fn coconut_is_a_question() {
    let of = |coconut: &str, allergens: &str| LabelForm {
        name: "Coconut milk wash".into(),
        coconut: coconut.into(),
        allergens: allergens.into(),
        ..LabelForm::default()
    };
    assert_eq!(asked(&of("", "")), ["coconut"]);
    assert!(of("", "").answer(&bench()).remarks.iter().any(|remark| remark.contains("January 2025 (from memory)")));
    for (coconut, allergens, contains) in [
        ("", "", "Contains coconut"),
        ("plain", "", "Contains coconut"),
        ("nut", "", "Contains nuts (coconut)"),
        ("nut", "nuts", "Contains nuts, coconut"),
    ] {
        let form = of(coconut, allergens);
        assert!(printed(&form).contains(contains), "{}", printed(&form));
        assert_eq!(asked(&form).is_empty(), !coconut.is_empty());
    }
}

#[test]
fn a_wash_gets_no_date_until_days_are_typed() {
    let mut form = LabelForm::default();
    form.take("name", "Milk-washed drink");
    form.take("keeps", "washed");
    assert!(!printed(&form).contains("Use by"), "{}", printed(&form));
    assert!(form.answer(&bench()).cautions[0].starts_with("No date: for a milk-washed drink"));
    form.days_washed = "3".into();
    assert!(printed(&form).contains("Use by Fri 27 Nov 2026"), "{}", printed(&form));
    assert!(!form.answer(&bench()).cautions[0].starts_with("No date"));
    // A rule of the house, which the next label keeps.
    form.take("name", "Another wash");
    assert_eq!(form.days_washed, "3");
}
