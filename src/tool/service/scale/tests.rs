//! Scale, asked in each of its ways.

use super::*;
use crate::reading::rows::rewritten;
use crate::text::Decimal;
use crate::tool::shelf::settings::ShelfForm;

fn answer(change: impl FnOnce(&mut ScaleForm)) -> Answer {
    let mut form = ScaleForm::default();
    change(&mut form);
    form.answer(&ShelfForm::default().bench(Decimal::Point))
}

fn rows(answer: &Answer) -> Vec<String> {
    answer.rows.iter().map(|row| format!("{}|{}|{}", row.amount, row.name, row.detail)).collect()
}

#[test]
fn by_serves() {
    let answer = answer(|_| {});
    assert_eq!(answer.strip.figures[0].to_string(), "1\u{202f}469 ml before ice");
    assert_eq!(
        (answer.strip.also.as_str(), answer.strip.below.as_str()),
        ("18 serves", "Proportions kept within 0.1 %")
    );
    assert_eq!(rows(&answer)[0], "810 ml|pear brandy|");
    assert_eq!(rows(&answer)[4], "|Lemon twist|No amount, so it is kept as it is.");
}

#[test]
fn by_what_there_is() {
    let answer = answer(|form| {
        form.by = "have".into();
        form.have_of = "pear cordial".into();
        form.have = "400 g".into();
    });
    // 400 g of cordial with 430 g/l sugar and 23 g/l acid, 1.17 g/ml, is 342 ml: 22.8 times 15 ml.
    assert!(answer.strip.also.starts_with("22.8 times the spec"), "{:?}", answer.strip);
}

#[test]
fn jiggers_and_weights() {
    let by_jigger = answer(|form| form.rounding = "jiggers".into());
    assert_eq!(by_jigger.rows[0].amount, "27½ oz");
    let by_weight = answer(|form| form.rounding = "0.1g".into());
    assert_eq!(by_weight.rows[0].amount, "767.9 g");
}

#[test]
fn an_unread_line_is_kept_marked_and_can_be_fixed() {
    let form = ScaleForm { spec: "60 gin\n30 ml lime".into(), ..Default::default() };
    let answer = form.answer(&Bench::default());
    assert!(answer.rows[0].marked);
    assert_eq!(answer.rows[0].detail, "60 of what? Add a unit, like 60 ml.");
    assert_eq!(rewritten(&form.spec, "60 gin", &answer.rows[0].fixes[0].text), "60 ml gin\n30 ml lime");
}

#[test]
fn what_is_taken_for_granted_is_said() {
    let answer = answer(|form| form.spec = "2 parts gin\n1 part moon dust\n8 mint leaves\n10 g gum".into());
    assert!(answer.remarks[0].contains("gum is taken as water"), "{:?}", answer.remarks);
    assert!(answer.remarks[1].starts_with("Counted things"));
    assert!(answer.problems[0].words.starts_with("How much is one part?"), "{:?}", answer.problems);
    assert!(rows(&answer)[0].ends_with("; 2 parts of 1 oz"), "{:?}", rows(&answer));
}

#[test]
fn an_empty_spec_waits() {
    let answer = answer(|form| form.spec.clear());
    assert_eq!(answer.strip.tone, Tone::Waiting);
}
