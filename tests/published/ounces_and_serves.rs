//! Arithmetic of pours, computed from the exact factors of NIST Handbook 44, Appendix C, as in
//! nist_units.rs; and bottle sizes, Directive 2007/45/EC, Annex, section 1, as the GOV.UK page "Specified
//! quantities" lists them.

use meniscus::book::{BOTTLES, GLASSES, Line, Spec, glass_of};
use meniscus::craft::measure::nearest;
use meniscus::craft::scale::{Target, factor};
use meniscus::craft::serves::{self, ServesProblem};
use meniscus::quantity::{Amount, Ratio, Volume};

use crate::near;

fn ratio(value: f64) -> Ratio {
    Ratio::from_value(value).expect("a ratio")
}

fn spec(volumes: &[Volume]) -> Spec {
    let line = |volume: &Volume| Line {
        amount: Amount::Volume(*volume),
        unit: None,
        name: "gin".into(),
        taken: None,
        unread: None,
        said: String::new(),
    };
    Spec { lines: volumes.iter().map(line).collect() }
}

/// 1½ US fl oz = 44.3603 ml; 25 ml = 0.845 35 US fl oz = 0.879 88 imperial fl oz (factors of Handbook 44).
#[test]
fn a_jigger_and_a_measure() {
    near((Volume::US_FLUID_OUNCE * ratio(1.5)).ml(), 44.360_3, 5e-5, "ml");
    let measure = Volume::whole_ml(25);
    near(measure.over(Volume::US_FLUID_OUNCE).expect("ounces").value(), 0.845_35, 5e-6, "US fl oz");
    near(measure.over(Volume::IMPERIAL_FLUID_OUNCE).expect("ounces").value(), 0.879_88, 5e-6, "imperial fl oz");
}

/// 1½ US fl oz, 44.3603 ml, in steps of 5 ml is nine of them, 45 ml and 1.44 % more; in steps of 30 ml one, 32.4 % less.
#[test]
fn the_nearest_step() {
    let wanted = Volume::US_FLUID_OUNCE * ratio(1.5);
    for (step, steps, ml, error) in [(5, 9.0, 45.0, 0.014_421), (30, 1.0, 30.0, -0.323_719)] {
        let found = nearest(wanted, Volume::whole_ml(step)).expect("a step");
        assert_eq!((found.steps.value(), found.volume.ml()), (steps, ml));
        near(found.error, error, 1e-6, "off by");
    }
    assert_eq!(nearest(wanted, Volume::ZERO), None);
    assert_eq!(nearest(Volume::ZERO, wanted), None);
}

/// 2, ¾ and ¾ US fl oz for 24: 1419.5, 532.3 and 532.3 ml (factors of Handbook 44).
#[test]
fn a_spec_for_24() {
    let ounces = [2.0, 0.75, 0.75].map(|n| Volume::US_FLUID_OUNCE * ratio(n));
    let times = factor(&spec(&ounces), Target::Factor(ratio(24.0))).expect("a factor");
    for (volume, expected) in ounces.iter().zip([1419.5, 532.3, 532.3]) {
        near((*volume * times).ml(), expected, 0.05, "ml");
    }
}

/// 60 + 22.5 + 22.5 ml to 750 ml: × 7.142 86 (arithmetic).
#[test]
fn a_spec_to_a_bottle() {
    let volumes = [60.0, 22.5, 22.5].map(|ml| Volume::from_ml(ml).expect("a volume"));
    let times = factor(&spec(&volumes), Target::Total(Volume::whole_ml(750))).expect("a factor");
    near(times.value(), 7.142_857, 1e-6, "times");
}

/// Directive 2007/45/EC, Annex, section 1: spirit drinks between 100 and 2000 ml only in
/// 100, 200, 350, 500, 700, 1000, 1500, 1750 and 2000 ml.
#[test]
fn the_spirit_bottles_of_the_directive_are_listed() {
    for ml in [100, 200, 350, 500, 700, 1000, 1500, 1750, 2000] {
        let bottle = BOTTLES.iter().find(|bottle| bottle.ml == ml).expect("listed");
        assert!(bottle.regions.contains("EU"), "{ml}");
    }
    assert!(BOTTLES.windows(2).all(|pair| pair[0].ml < pair[1].ml), "smallest first");
}

/// US spirits: 700, 720, 900 and 1800 ml since 2020 (TTB Newsletter 28 Dec 2020); 15 more since 2025 (T.D. TTB-200, 90 FR
/// 1868, 10 Jan 2025).
#[test]
fn the_us_spirit_bottles_are_listed() {
    let added = [187, 250, 331, 350, 355, 475, 500, 570, 710, 945, 1500, 2000, 3000, 3750];
    for ml in [700, 720, 900, 1800].into_iter().chain(added) {
        let bottle = BOTTLES.iter().find(|bottle| bottle.ml == ml).expect("listed");
        assert!(bottle.regions.ends_with("US") || bottle.regions.ends_with("US spirits"), "{ml}");
    }
}

/// US wine: 200, 250 and 355 ml since 2020 (TTB Newsletter 28 Dec 2020), 13 more since 2025 (T.D. TTB-200, as the
/// newspapers of the trade list them); 27 CFR 4.37 as of 2008 names 3 l, 1.5 l, 1 l, 750, 500, 375, 187, 100 and 50 ml.
#[test]
fn the_us_wine_bottles_are_listed() {
    let added = [180, 300, 330, 360, 473, 550, 568, 600, 620, 700, 720, 1800, 2250];
    for ml in [50, 100, 187, 200, 250, 355, 375, 500, 750, 1000, 1500, 3000].into_iter().chain(added) {
        let bottle = BOTTLES.iter().find(|bottle| bottle.ml == ml).expect("listed");
        assert!(bottle.regions.ends_with("US") || bottle.regions.ends_with("US wine"), "{ml}");
    }
}

/// Directive 2007/45/EC, Annex, section 1, as GOV.UK lists it: sparkling wine in 125, 200, 375, 750 and 1500 ml; of still
/// wine also 187 and 250 ml (from memory).
#[test]
fn the_wine_bottles_of_the_directive_are_listed() {
    for ml in [125, 187, 200, 250, 375, 750, 1500] {
        let bottle = BOTTLES.iter().find(|bottle| bottle.ml == ml).expect("listed");
        assert!(bottle.regions.starts_with("EU, UK"), "{ml}");
    }
}

/// GOV.UK, "Specified quantities": gin, rum, vodka and whisky in 25 or 35 ml, still wine in 125 or 175 ml, fortified wine in
/// 50 or 70 ml; draught beer and cider in a third, a half and two thirds of a pint of 568.261 25 ml, and in pints.
#[test]
fn measures_by_the_glass() {
    let of = |ml: f64| glass_of(Volume::from_ml(ml).expect("a volume"));
    for (ml, named) in [
        (25.0, "gin"),
        (35.0, "whisky"),
        (50.0, "fortified wine"),
        (70.0, "fortified wine"),
        (125.0, "still wine"),
        (175.0, "still wine"),
        (189.42, "draught"),
        (284.13, "draught"),
        (378.84, "draught"),
        (568.26, "draught"),
    ] {
        assert!(of(ml).is_some_and(|of| of.contains(named)), "{ml}");
    }
    assert_eq!(GLASSES.len(), 10);
    assert_eq!(of(100.0), None);
}

/// A million serves and ten cubic metres are made, no more; a tenth lost, 100 serves of 90 ml take 10 l; when all is lost, or
/// more, nothing is served.
#[test]
fn what_is_made_for_serves() {
    let of = |serves, serve: f64, loss| {
        serves::volume_for(ratio(serves), Volume::from_ml(serve).expect("a volume"), ratio(loss)).map(Volume::ml)
    };
    near(of(100.0, 90.0, 0.1).expect("made"), 10_000.0, 1e-9, "ml");
    assert_eq!((of(1e6, 10.0, 0.0), of(1e6, 10.1, 0.0)), (Ok(1e7), Err(ServesProblem::TooMany)));
    assert_eq!((of(1e6, 1.0, 0.0), of(1e6 + 1.0, 1.0, 0.0)), (Ok(1e6), Err(ServesProblem::TooMany)));
    for loss in [1.0, 1.5] {
        assert_eq!([of(0.0, 90.0, loss), of(10.0, 90.0, loss)], [Err(ServesProblem::TooMany); 2], "{loss}");
    }
    // Nor are more shared out.
    assert_eq!(
        serves::share(Volume::whole_ml(1_000_001), Volume::whole_ml(1), ratio(0.0)),
        Err(ServesProblem::TooMany)
    );
    assert!(ServesProblem::TooMany.to_string().starts_with("That is more"));
}

/// Of 2100 ml come three bottles of 700 ml, of a millilitre more a fourth with that in it; with 2 % of room left, 686 ml go in
/// one, and the fourth has 42 ml. What no hand could measure starts no bottle.
#[test]
fn full_bottles_and_the_last() {
    let of = |ml: f64, headspace| {
        let made = Volume::from_ml(ml).expect("a volume");
        serves::bottle(made, Volume::whole_ml(700), ratio(headspace)).expect("bottled")
    };
    for (ml, headspace, bottles, full, last) in [
        (2100.0, 0.0, 3, 700.0, 700.0),
        (2_100.000_5, 0.0, 3, 700.0, 700.0),
        (2101.0, 0.0, 4, 700.0, 1.0),
        (2100.0, 0.02, 4, 686.0, 42.0),
    ] {
        let found = of(ml, headspace);
        assert_eq!(found.bottles, bottles, "{ml}");
        near(found.full.ml(), full, 1e-9, "full");
        near(found.last.ml(), last, 1e-9, "last");
        near(found.even.ml(), ml / f64::from(bottles), 1e-9, "even");
    }
}

/// A tenth of a litre lost, 900 ml are five serves of 170 ml with 50 ml over; 180 ml would empty it.
#[test]
fn what_empties_the_jug() {
    let of = |serve| serves::share(Volume::LITRE, Volume::whole_ml(serve), ratio(0.1)).expect("shared");
    let shared = of(170);
    assert_eq!((shared.serves, shared.lost.ml(), shared.emptying.map(Volume::ml)), (5, 100.0, Some(180.0)));
    near(shared.spare.ml(), 50.0, 1e-9, "spare");
    assert_eq!((of(950).serves, of(950).emptying), (0, None));
}

/// 2.8 l in serves of 92 ml: 30, and 40 ml over; four bottles of 700 ml (arithmetic).
#[test]
fn a_batch_shared_and_bottled() {
    let batch = Volume::whole_ml(2800);
    let shared = serves::share(batch, Volume::whole_ml(92), ratio(0.0)).expect("shared");
    assert_eq!(shared.serves, 30);
    near(shared.spare.ml(), 40.0, 1e-9, "spare");
    let bottled = serves::bottle(batch, Volume::whole_ml(700), ratio(0.0)).expect("bottled");
    assert_eq!(bottled.bottles, 4);
}
