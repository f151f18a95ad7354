//! Specs scaled, worked by hand.

use super::*;
use crate::book::{Jigger, Mark};
use crate::quantity::{Conventions, Unit};
use crate::substance::energy::StandardDrink;
use crate::substance::juice::Citrus;

#[test]
fn steps_never_reach_zero() {
    for (value, step, expected) in [(22.0, 5.0, 20.0), (3.2, 5.0, 3.0), (0.4, 1.0, 0.4), (0.04, 0.1, 0.04)] {
        assert!((to_step(value, step) - expected).abs() < 1e-9, "{value} to {step}");
    }
    assert!(to_step(1e-6, 5.0) > 0.0);
    // Nothing stays nothing; three quarters of a step are a step, and less goes by fifths of it.
    assert!(to_step(0.0, 5.0).abs() < 1e-12);
    assert!((to_step(3.75, 5.0) - 5.0).abs() < 1e-9 && (to_step(3.7, 5.0) - 4.0).abs() < 1e-9);
}

fn spec(amounts: &[Amount]) -> Spec {
    let line = |amount: &Amount| Line {
        unit: None,
        amount: *amount,
        name: "moon dust".into(),
        taken: None,
        unread: None,
        said: String::new(),
    };
    Spec { lines: amounts.iter().map(line).collect() }
}

fn house(marks: &[f64]) -> House {
    let mark = |ml: &f64| Mark { label: String::new(), volume: Volume::from_ml(*ml).expect("a volume") };
    House {
        conventions: Conventions::default(),
        usual_unit: Unit::Millilitre,
        jiggers: marks.iter().map(|ml| Jigger { brim: mark(ml), lines: Vec::new() }).collect(),
        region: StandardDrink::default(),
        citrus: Citrus::default(),
    }
}

fn count(value: f64) -> Amount {
    Amount::Count(Ratio::from_value(value).expect("a count"))
}

fn grams(value: f64) -> Amount {
    Amount::Mass(Mass::from_g(value).expect("a mass"))
}

fn ml(value: f64) -> Amount {
    Amount::Volume(Volume::from_ml(value).expect("a volume"))
}

/// 20 leaves where 8 are asked for are 2.5 times, 300 g where 40 are 7.5, 90 ml where 60 are 1.5; 99.8201 g of what is
/// taken to be as heavy as water are 100 ml, where 50 are asked for twice.
#[test]
fn what_there_is_of_a_line() {
    let spec = spec(&[count(8.0), grams(40.0), ml(60.0), ml(50.0)]);
    for (line, amount, times) in
        [(0, count(20.0), 2.5), (1, grams(300.0), 7.5), (2, ml(90.0), 1.5), (3, grams(99.820_1), 2.0)]
    {
        let found = factor(&spec, Target::Have { line, amount }).expect("a factor").value();
        assert!((found - times).abs() < 1e-9, "line {line}: {found}");
    }
    for (line, amount) in [(0, ml(90.0)), (2, count(3.0)), (4, ml(90.0))] {
        assert_eq!(factor(&spec, Target::Have { line, amount }), Err(ScaleProblem::NoSuchLine));
    }
    assert!(ScaleProblem::NoSuchLine.to_string().starts_with("Choose a line"));
    assert!(ScaleProblem::NothingMeasured.to_string().starts_with("Add a line"));
    assert!(ScaleProblem::TooMuch.to_string().starts_with("That is more"));
}

/// Of leaves alone there is no volume to bring to a total; twice as many there are.
#[test]
fn leaves_alone() {
    let (leaves, two) = (spec(&[count(8.0)]), Ratio::from_value(2.0).expect("a factor"));
    assert_eq!(factor(&leaves, Target::Factor(two)), Ok(two));
    assert_eq!(factor(&leaves, Target::Total(Volume::LITRE)), Err(ScaleProblem::NothingMeasured));
    assert_eq!(factor(&Spec::default(), Target::Factor(two)), Err(ScaleProblem::NothingMeasured));
}

/// Ten cubic metres are made, a drop more is not.
#[test]
fn ten_cubic_metres() {
    let spec = spec(&[ml(100.0)]);
    let of = |times| factor(&spec, Target::Factor(Ratio::from_value(times).expect("a factor")));
    assert!(of(1e5).is_ok());
    assert_eq!(of(1e5 + 0.1), Err(ScaleProblem::TooMuch));
}

/// Jiggers of 40 and 20 ml pour from three quarters of the smaller on, the dasher of 0.8 ml six dashes and a half; between
/// them, and without jiggers above the dasher, it takes a jug. An empty mark is none.
#[test]
fn what_it_is_poured_with() {
    let of = |value: f64, marks: &[f64]| with(Volume::from_ml(value).expect("a volume"), &house(marks));
    let jiggers = With::Jiggers(Volume::whole_ml(20));
    for (value, expected) in
        [(60.0, jiggers), (15.0, jiggers), (14.9, With::Jug), (5.3, With::Jug), (5.2, With::Dasher)]
    {
        assert_eq!(of(value, &[40.0, 20.0, 0.0]), expected, "{value} ml");
    }
    assert_eq!((of(60.0, &[]), of(5.0, &[])), (With::Jug, With::Dasher));
}

/// Counts go to quarters, what is poured to 5 or 1 ml or the smaller jigger, from a jug to 1 ml, what is weighed to 0.1 g.
#[test]
fn rounded_as_it_is_measured() {
    let house = house(&[40.0, 20.0]);
    for (exact, rounding, expected) in [
        (count(2.3), Rounding::OneMl, count(2.25)),
        (ml(222.0), Rounding::FiveMl, ml(220.0)),
        (ml(222.4), Rounding::OneMl, ml(222.0)),
        (ml(222.4), Rounding::Jiggers, ml(220.0)),
        (ml(13.7), Rounding::Jiggers, ml(14.0)),
        (ml(2.5), Rounding::Jiggers, ml(2.4)),
        (grams(33.33), Rounding::OneMl, grams(33.3)),
        (ml(100.0), Rounding::TenthGram, grams(99.8)),
    ] {
        let plain = |amount: Amount| match amount {
            Amount::Volume(volume) => volume.ml(),
            Amount::Mass(mass) => mass.g(),
            Amount::Count(count) => count.value(),
        };
        let (found, _) = round(exact, None, rounding, &house, Density::WATER);
        assert_eq!(std::mem::discriminant(&found), std::mem::discriminant(&expected), "{exact:?}");
        assert!((plain(found) - plain(expected)).abs() < 1e-9, "{exact:?}: {found:?}");
    }
}

/// What is weighed keeps a unit of weight; what is poured and then weighed does not keep its ounces.
#[test]
fn the_unit_that_stays() {
    let of = |exact, unit, rounding| round(exact, Some(unit), rounding, &house(&[]), Density::WATER).1;
    assert_eq!(of(grams(33.3), Unit::Gram, Rounding::OneMl), Some(Unit::Gram));
    assert_eq!(of(grams(33.3), Unit::OunceWeight, Rounding::OneMl), Some(Unit::OunceWeight));
    assert_eq!(of(ml(60.0), Unit::Ounce, Rounding::TenthGram), None);
    assert_eq!(of(ml(60.0), Unit::Ounce, Rounding::OneMl), Some(Unit::Ounce));
    assert_eq!(of(ml(60.0), Unit::Centilitre, Rounding::OneMl), Some(Unit::Centilitre));
    assert_eq!(of(ml(60.0), Unit::Centilitre, Rounding::Jiggers), None);
}

/// A density is a guess only where one was needed: to weigh what is poured, or pour what is weighed.
#[test]
fn what_is_guessed_is_said() {
    let house = house(&[]);
    let of = |amount, rounding| scaled(&spec(&[amount]), Ratio::ONE, rounding, &house)[0].density_assumed;
    assert!(!of(ml(60.0), Rounding::OneMl));
    assert!(of(ml(60.0), Rounding::TenthGram));
    assert!(of(grams(60.0), Rounding::OneMl));
    assert!(!of(count(8.0), Rounding::TenthGram));
}

#[test]
fn too_much_is_refused() {
    let line = Line {
        amount: Amount::Volume(Volume::whole_ml(60)),
        unit: None,
        name: "gin".into(),
        taken: None,
        unread: None,
        said: String::new(),
    };
    let spec = Spec { lines: vec![line] };
    let huge = Target::Factor(Ratio::from_value(1e8).expect("a factor"));
    assert_eq!(factor(&spec, huge), Err(ScaleProblem::TooMuch));
    assert_eq!(factor(&Spec::default(), Target::Total(Volume::LITRE)), Err(ScaleProblem::NothingMeasured));
}
