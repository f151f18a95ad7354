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
            "Made Wed 25 Nov, 15:30",
            "Use by Tue 1 Dec 2026",
            "Contains milk",
            "22.5 % vol, pour 60 ml"
        ]
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
