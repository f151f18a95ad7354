//! Worked by hand, beside each check.

use super::*;
use crate::book::Line;
use crate::quantity::Brix;
use crate::substance::acid::Acid;

fn ml(ml: f64) -> Volume {
    Volume::from_ml(ml).expect("ml")
}

fn abv(percent: f64) -> Abv {
    Abv::from_fraction(percent / 100.0).expect("a strength")
}

fn ratio(value: f64) -> Ratio {
    Ratio::from_value(value).expect("a factor")
}

fn line(name: &str, amount: Amount) -> Line {
    Line { amount, unit: None, name: name.into(), taken: None, unread: None, said: String::new() }
}

/// OIML R 22, as the strength tool has it: a litre of 50 % to 40 % takes 254.9 g, not the 250 that volumes alone would
/// say; and where sugar is in it too, the strength is what was asked.
#[test]
fn water_brings_it_to_the_strength_asked_with_contraction() {
    let spirit = Mix::spirit(Volume::LITRE, abv(50.0));
    let water = water_to(&spirit, abv(40.0)).expect("water");
    assert!((water.g() - 254.9).abs() < 0.2, "{water:?}");
    let sweet = spirit + Mix::syrup(Mass::from_g(200.0).expect("g"), Brix::from_degrees(60.0).expect("°Bx"));
    for percent in [40.0, 30.0, 20.0, 1.0] {
        let water = water_to(&sweet, abv(percent)).expect("water");
        let made = sweet + Mix::water(water);
        assert!((made.strength().fraction() * 100.0 - percent).abs() < 1e-8, "{percent}: {:?}", made.strength());
        assert_eq!(made.ethanol, sweet.ethanol);
    }
    for percent in [0.0, 50.1, 60.0] {
        assert_eq!(water_to(&spirit, abv(percent)), None, "{percent}");
    }
    assert_eq!(water_to(&Mix::default(), abv(20.0)), None);
}

/// 30 serves of 112 ml and 4 % lost: 3 360 / 0.96 = 3 500 ml, 31.25 times 112 ml.
#[test]
fn what_is_lost_is_made_besides() {
    let one = Mix::spirit(ml(112.0), abv(20.0));
    let times = times_for(&one, ml(3360.0), ratio(0.04)).expect("times");
    assert!((times.value() - 31.25).abs() < 1e-9, "{times:?}");
    for (wanted, loss) in [(3360.0, 1.0), (1.01e7, 0.0), (6e6, 0.5)] {
        assert_eq!(times_for(&one, ml(wanted), ratio(loss)), Err(ServesProblem::TooMany), "{wanted} {loss}");
    }
    assert!(times_for(&Mix::default(), ml(10.0), Ratio::ZERO).is_err());
}

/// 1 000 / 45 = 22.2, 500 / 20 = 25 and 700 / 15 = 46.7 times: the spirit runs out. Of the wine 500 − 22.2 × 20 = 55.6
/// is left, of the cordial 700 − 22.2 × 15 = 366.7 ml.
#[test]
fn what_runs_out_first_is_named_and_the_rest_is_left() {
    let volume = |amount| Amount::Volume(ml(amount));
    let lines = vec![line("spirit", volume(45.0)), line("wine", volume(20.0)), line("cordial", volume(15.0))];
    let spec = Spec { lines };
    let made = enough(&spec, &[(1, volume(500.0)), (0, volume(1000.0)), (2, volume(700.0))]).expect("enough");
    assert!((made.times.value() - 1000.0 / 45.0).abs() < 1e-12 && made.first == 0, "{made:?}");
    let left: Vec<(usize, f64)> = made
        .left
        .iter()
        .map(|(line, amount)| (*line, if let Amount::Volume(volume) = amount { volume.ml() } else { f64::NAN }))
        .collect();
    assert!(left[0].0 == 1 && (left[0].1 - 55.555_556).abs() < 1e-5, "{left:?}");
    assert!(left[1].0 == 2 && (left[1].1 - 366.666_667).abs() < 1e-5, "{left:?}");
    // Two bottles of one thing are both of it: 1 400 / 45 = 31.1, and the wine runs out at 25.
    let made = enough(&spec, &[(0, volume(700.0)), (0, volume(700.0)), (1, volume(500.0))]).expect("enough");
    assert!((made.times.value() - 25.0).abs() < 1e-12 && made.first == 1, "{made:?}");
    assert_eq!(enough(&spec, &[]), Err(ScaleProblem::NothingMeasured));
    assert_eq!(enough(&spec, &[(0, Amount::Count(ratio(2.0)))]), Err(ScaleProblem::NoSuchLine));
    assert_eq!(enough(&spec, &[(7, volume(2.0))]), Err(ScaleProblem::NoSuchLine));
}

/// 23 × 45 ml = 1 035 ml to 10 ml: 1 040, a two-hundred-and-seventh more of all that is in it.
#[test]
fn a_line_is_put_in_to_what_can_be_measured() {
    let exact = Mix::spirit(ml(1035.0), abv(40.0));
    let put = |measure| measured(&exact, false, measure);
    let volume = |mix: Mix| mix.volume(Temperature::TWENTY).expect("ml").ml();
    assert!((volume(put(Measure::TenMl)) - 1040.0).abs() < 1e-6);
    assert!((put(Measure::TenMl).ethanol.g() / exact.ethanol.g() - 1040.0 / 1035.0).abs() < 1e-12);
    assert!((volume(put(Measure::FiveMl)) - 1035.0).abs() < 1e-6);
    assert!((put(Measure::Gram).mass().g() - exact.mass().g().round()).abs() < 1e-9);
    assert!((measured(&exact, true, Measure::TenMl).mass().g() - exact.mass().g().round()).abs() < 1e-9);
    let acid = Mix::acid(Acid::Citric, Mass::from_g(3.44).expect("g"));
    assert!((measured(&acid, true, Measure::Gram).mass().g() - 3.4).abs() < 1e-9);
    // 3 ml, to 10: not nothing, but 4, to a fifth of ten.
    let dashes = Mix::spirit(ml(3.2), abv(45.0));
    assert!((volume(measured(&dashes, false, Measure::TenMl)) - 4.0).abs() < 1e-6);
    assert_eq!(measured(&Mix::default(), false, Measure::OneMl), Mix::default());
}

/// Two full ones of 679 ml, and 1 045 g of a bottle that weighs 480: 565 g at 0.98 g/ml are 576.5 ml.
#[test]
fn what_is_left_is_counted_and_weighed() {
    let [open, empty] = [1045.0, 480.0].map(|g| Mass::from_g(g).expect("g"));
    let density = Density::from_g_per_ml(0.98).expect("a density");
    assert!((left(ratio(2.0), ml(679.0), open, empty, density).ml() - 1_934.530_612).abs() < 1e-5);
    assert_eq!(left(Ratio::ZERO, ml(679.0), empty, open, density), Volume::ZERO);
}
