//! Washes as they are asked for.

use super::*;

#[test]
fn answers_both_ways() {
    let answer = MilkWashForm::default().answer(&Bench::default());
    assert_eq!(answer.strip.figures[0].to_string(), "345 ml milk");
    assert_eq!(answer.strip.also, "1 part milk to 5 parts drink, 2\u{202f}070 ml together. It clots");
    assert_eq!(answer.cautions.len(), 1);

    let milk = MilkWashForm { known: "milk".into(), ratio: "1:5¾".into(), milk: "1 oz".into(), ..Default::default() };
    assert_eq!(milk.answer(&Bench::default()).strip.figures[0].to_string(), "5¾ oz drink, 170 ml");
}

#[test]
fn an_unusual_ratio_is_remarked_on() {
    let remarks =
        |ratio: &str| MilkWashForm { ratio: ratio.into(), ..Default::default() }.answer(&Bench::default()).remarks;
    let usual = remarks("1:5").len();
    assert!(remarks("1:2")[usual].starts_with("More milk"));
    assert!(remarks("1:10")[usual].starts_with("Less milk"));
}

#[test]
fn says_plainly_whether_it_clots() {
    let said = |change: &dyn Fn(&mut MilkWashForm)| {
        let mut form = MilkWashForm::default();
        change(&mut form);
        let answer = form.answer(&Bench::default());
        (answer.strip.also.split(". ").nth(1).unwrap_or_default().to_owned(), answer)
    };
    assert_eq!(said(&|form| form.acid = "1".into()).0, "Too little acid to clot it");
    let close = said(&|form| form.acid = "1.4".into()).1;
    assert!(close.remarks.iter().any(|remark| remark.contains("g of citric acid")), "{:?}", close.remarks);
    assert_eq!(said(&|form| form.acid.clear()).0, "Its acid is not known");
    assert_eq!(said(&|form| form.kind = "oat".into()).0, "How it clots is not known");
    let spec = said(&|form| form.known = "spec".into());
    assert_eq!(spec.0, "It clots");
    assert!(said(&|form| form.strength = "50".into()).1.cautions.iter().any(|caution| caution.contains("strong")));
    assert!(said(&|form| form.at = "70".into()).1.cautions.iter().any(|caution| caution.contains("warm")));
    assert!(said(&|form| form.acid = "0".into()).1.cautions.iter().any(|caution| caution.contains("no acid")));
}

#[test]
fn its_label_names_what_is_in_it() {
    let label = |form: MilkWashForm| {
        let answer = form.answer(&Bench::default());
        answer.carry.into_iter().find(|carry| carry.label == "Label it").map(|carry| carry.href).unwrap_or_default()
    };
    let spec = "900 ml rye whiskey\n300 ml orgeat\n125 ml lemon juice\n2 egg whites";
    let washed = label(MilkWashForm { known: "spec".into(), spec: spec.into(), ..MilkWashForm::default() });
    assert!(washed.contains("allergens=milk%2C+nuts%2C+egg"), "{washed}");
    let oat = label(MilkWashForm { kind: "oat".into(), ..MilkWashForm::default() });
    assert!(oat.contains("allergens=gluten"), "{oat}");
}
