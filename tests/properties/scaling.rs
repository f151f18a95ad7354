//! Conversions come back, parts sum to wholes, acid is conserved.

use proptest::prelude::*;

use super::{factors, volumes};
use meniscus::book::{House, Jigger, Line, Mark, Spec};
use meniscus::craft::acid::{Acids, stand_in, stands_in_for};
use meniscus::craft::jigger;
use meniscus::craft::milk_wash::{drink_for, milk_for};
use meniscus::craft::scale::{Rounding, Target, factor, scaled, total};
use meniscus::craft::serves;
use meniscus::quantity::{Acidity, Amount, Conventions, Mass, Ounce, Ratio, Size, Unit, Volume};
use meniscus::substance::energy::StandardDrink;
use meniscus::text::{Decimal, read_taken};

fn close(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * a.abs().max(b.abs()).max(1e-9)
}

fn houses() -> impl Strategy<Value = House> {
    let ounces = prop_oneof![Just(Ounce::Us), Just(Ounce::Imperial), Just(Ounce::Round30)];
    let mark =
        (2.0_f64..80.0).prop_map(|ml| Mark { label: format!("{ml} ml"), volume: Volume::from_ml(ml).expect("ml") });
    let jigger = (mark.clone(), prop::collection::vec(mark, 0..4)).prop_map(|(brim, lines)| Jigger { brim, lines });
    (ounces, prop::collection::vec(jigger, 0..4)).prop_map(|(ounce, jiggers)| House {
        conventions: Conventions { ounce, ..Conventions::default() },
        usual_unit: Unit::Millilitre,
        jiggers,
        region: StandardDrink::default(),
        citrus: meniscus::substance::juice::Citrus::default(),
    })
}

fn specs() -> impl Strategy<Value = Spec> {
    let amount = prop_oneof![
        volumes().prop_map(Amount::Volume),
        (0.1_f64..1e5).prop_map(|g| Amount::Mass(Mass::from_g(g).expect("g"))),
    ];
    let names = prop_oneof![Just("gin"), Just("lime juice"), Just("syrup"), Just("pear purée"), Just("moon dust")];
    let line = (amount, names).prop_map(|(amount, name)| Line {
        said: String::new(),
        amount,
        unit: None,
        name: name.into(),
        taken: read_taken(name, Decimal::Point, &[]),
        unread: None,
    });
    prop::collection::vec(line, 1..8).prop_map(|lines| Spec { lines })
}

fn times(spec: &Spec, ratio: Ratio) -> Spec {
    let line = |line: &Line| Line { amount: line.amount.times(ratio), ..line.clone() };
    Spec { lines: spec.lines.iter().map(line).collect() }
}

proptest! {
    #[test]
    fn every_unit_converts_there_and_back(volume in volumes(), house in houses(), place in 0..Unit::ALL.len()) {
        let unit = Unit::ALL[place];
        if let Size::Volume(one) = unit.size(&house.conventions) {
            let count = volume.over(one).expect("not zero").value();
            let Ok(Amount::Volume(back)) = unit.times(count, &house.conventions) else { panic!("a volume") };
            prop_assert!(close(back.ml(), volume.ml()));
        }
    }

    #[test]
    fn scaling_by_k_and_by_its_inverse_is_nothing(spec in specs(), k in factors()) {
        let back = times(&times(&spec, k), k.inverse().expect("not zero"));
        prop_assert!(close(total(&back).ml(), total(&spec).ml()));
    }

    #[test]
    fn a_spec_scaled_to_a_total_has_that_total(spec in specs(), wanted in volumes()) {
        if let Ok(ratio) = factor(&spec, Target::Total(wanted)) {
            prop_assert!(close(total(&times(&spec, ratio)).ml(), wanted.ml()));
        }
    }

    #[test]
    fn what_there_is_of_a_line_is_what_the_scaled_line_takes(spec in specs(), have in volumes(), at in 0_usize..8) {
        let line = at % spec.lines.len();
        if let Ok(ratio) = factor(&spec, Target::Have { line, amount: Amount::Volume(have) }) {
            let (density, _) = meniscus::craft::scale::density_of(&spec.lines[line]);
            let taken = meniscus::craft::scale::volume_of(spec.lines[line].amount.times(ratio), density);
            prop_assert!(close(taken.ml(), have.ml()));
        }
    }

    #[test]
    fn rounding_never_loses_a_line_and_drifts_sum_to_nothing(spec in specs(), k in factors(), house in houses(), rule in 0_usize..4) {
        let rule = [Rounding::Jiggers, Rounding::FiveMl, Rounding::OneMl, Rounding::TenthGram][rule];
        let lines = scaled(&spec, k, rule, &house);
        prop_assert_eq!(lines.len(), spec.lines.len());
        for line in &lines {
            let more_than_nothing = match line.rounded {
                Amount::Volume(volume) => volume > Volume::ZERO,
                Amount::Mass(mass) => mass > Mass::ZERO,
                Amount::Count(count) => count.value() > 0.0,
            };
            prop_assert!(more_than_nothing, "{:?}", line);
        }
        let sum: f64 = lines.iter().map(|line| line.drift).sum();
        prop_assert!(sum.abs() < 1e-9, "{}", sum);
    }

    #[test]
    fn a_jigger_plan_adds_up(wanted in 0.5_f64..400.0, house in houses()) {
        let wanted = Volume::from_ml(wanted).expect("ml");
        if let Some(plan) = jigger::plan(wanted, &house) {
            let sum: f64 = plan.pours.iter().map(|pour| pour.volume.ml() * f64::from(pour.times)).sum();
            prop_assert!(close(sum, plan.total.ml()));
            prop_assert!(close(plan.total.ml() - wanted.ml(), plan.error_ml()) || plan.error_ml().abs() < 1e-9);
            prop_assert!((1..=jigger::MOST_POURS).contains(&plan.count()));
        }
    }

    #[test]
    fn no_plan_of_fewer_pours_is_close(wanted in 5.0_f64..120.0, house in houses()) {
        let wanted = Volume::from_ml(wanted).expect("ml");
        let Some(plan) = jigger::plan(wanted, &house).filter(jigger::Plan::is_close) else { return Ok(()) };
        // One pour less than the fewest the plan could have had without being exact.
        let single = house.marks().any(|mark| ((mark.volume.ml() - wanted.ml()) / wanted.ml()).abs() <= jigger::TOLERANCE);
        if single {
            prop_assert!(plan.count() == 1 || plan.is_exact(), "{:?}", plan);
        }
    }

    #[test]
    fn batch_parts_sum_to_the_batch(made in volumes(), serve in volumes(), loss in 0.0_f64..0.9) {
        let loss = Ratio::from_value(loss).expect("a fraction");
        if let Ok(shared) = serves::share(made, serve, loss) {
            let poured = serve.ml() * f64::from(shared.serves);
            let sum = poured + shared.spare.ml() + shared.lost.ml();
            prop_assert!((sum - made.ml()).abs() <= 1e-6 * made.ml());
            prop_assert!(shared.spare.ml() <= serve.ml() * (1.0 + 1e-6));
        }
    }

    #[test]
    fn what_is_made_for_serves_gives_those_serves(wanted in 1_u32..5000, serve in 1.0_f64..500.0, loss in 0.0_f64..0.9) {
        let (serve, loss) = (Volume::from_ml(serve).expect("ml"), Ratio::from_value(loss).expect("a fraction"));
        let Ok(make) = serves::volume_for(Ratio::from_value(f64::from(wanted)).expect("count"), serve, loss) else {
            // Refused only above ten cubic metres.
            prop_assert!(f64::from(wanted) * serve.ml() / (1.0 - loss.value()) > 0.999e7);
            return Ok(());
        };
        let shared = serves::share(make, serve, loss).expect("shared");
        prop_assert_eq!(shared.serves, wanted);
    }

    #[test]
    fn bottles_hold_what_was_made(volume in 1.0_f64..1e5, size in 50_u32..3000, headspace in 0.0_f64..0.4) {
        let volume = Volume::from_ml(volume).expect("ml");
        let size = Volume::whole_ml(size);
        let bottled = serves::bottle(volume, size, Ratio::from_value(headspace).expect("a fraction")).expect("bottled");
        let held = bottled.full.ml() * f64::from(bottled.bottles - 1) + bottled.last.ml();
        prop_assert!((held - volume.ml()).abs() <= 1e-6 * volume.ml());
        prop_assert!(bottled.even.ml() <= bottled.full.ml() * (1.0 + 1e-9));
    }

    #[test]
    fn milk_and_drink_are_inverse(drink in volumes(), ratio in 0.5_f64..100.0) {
        let ratio = Ratio::from_value(ratio).expect("a ratio");
        let wash = milk_for(drink, ratio).expect("a wash");
        prop_assert!(close(drink_for(wash.milk, ratio).drink.ml(), drink.ml()));
    }

    #[test]
    fn acid_mass_is_conserved_and_the_way_back_is_the_inverse(juice in 10.0_f64..1e5, citric in 1.0_f64..120.0, malic in 0.0_f64..80.0) {
        let acids = Acids {
            citric: Acidity::from_g_per_l(citric).expect("g/l"),
            malic: Acidity::from_g_per_l(malic).expect("g/l"),
        };
        let juice = Volume::from_ml(juice).expect("ml");
        let made = stand_in(juice, &acids, Mass::from_g(0.01).expect("g")).expect("a stand-in");
        prop_assert!(close(made.citric.g(), citric * juice.ml() / 1000.0));
        prop_assert!((made.citric_weighed.g() - made.citric.g()).abs() <= 0.005 + 1e-9);
        let back = stands_in_for(made.citric, made.malic, &acids).expect("a volume");
        prop_assert!(close(back.ml(), juice.ml()));
    }
}
