//! Aiming and reading again hits the target.

use proptest::prelude::*;

use meniscus::craft::aim::{AimProblem, Of, Part, Target, aim, drink, stands};
use meniscus::quantity::{Abv, Brix, Density, Mass, Ratio, Temperature, Volume};
use meniscus::substance::acid::Acid;
use meniscus::substance::mix::Mix;

const ALL: [Of; 5] = [Of::Sugar, Of::Acid, Of::SugarToAcid, Of::Strength, Of::Volume];

fn g(value: f64) -> Mass {
    Mass::from_g(value).expect("a mass")
}

/// A mix with the water of its ice: so much to its own volume.
fn watered(drink: &Mix, water: Ratio) -> Mix {
    let volume = drink.volume(Temperature::TWENTY).expect("a volume");
    *drink + Mix::water(volume * water * Density::WATER)
}

/// A sour of some kind, and water that could be added.
fn parts() -> impl Strategy<Value = Vec<Part>> {
    let spirit = (20.0_f64..90.0, 0.15_f64..0.6).prop_map(|(ml, abv)| {
        Mix::spirit(Volume::from_ml(ml).expect("ml"), Abv::from_fraction(abv).expect("a strength"))
    });
    let syrup = (5.0_f64..60.0, 20.0_f64..70.0)
        .prop_map(|(grams, degrees)| Mix::syrup(g(grams), Brix::from_degrees(degrees).expect("°Bx")));
    let juice = (10.0_f64..60.0, 5.0_f64..60.0, 5.0_f64..80.0).prop_map(|(grams, acid, sugar)| {
        let litre = Mix::acid(Acid::Citric, g(acid)) + Mix::syrup(g(sugar), Brix::from_degrees(100.0).expect("°Bx"));
        (litre + Mix::water(g(940.0))) * Ratio::from_value(grams / 1000.0).expect("a ratio")
    });
    (spirit, syrup, juice).prop_map(|(spirit, syrup, juice)| {
        let in_it = [spirit, syrup, juice].map(|measure| Part { measure, now: 1.0, is_fixed: false });
        in_it.into_iter().chain([Part { measure: Mix::water(g(1.0)), now: 0.0, is_fixed: false }]).collect()
    })
}

proptest! {
    #[test]
    fn what_is_aimed_at_is_hit(parts in parts(), of in 0..5_usize, times in 0.5_f64..1.8, ice in 0.0_f64..0.8) {
        let serve = |drink: &Mix| watered(drink, Ratio::from_value(ice).expect("a ratio"));
        let now = stands(&serve(&drink(&parts, &[])), ALL[of]);
        let target = Target { of: ALL[of], value: now * times };
        match aim(&parts, &[target], &serve) {
            Ok(found) => for hit in found {
                let there = stands(&serve(&drink(&parts, &hit.to)), target.of);
                prop_assert!((there / target.value - 1.0).abs() < 1e-9, "{target:?}: {there}");
                prop_assert!(hit.to.iter().all(|(_, measures)| *measures >= 0.0 && measures.is_finite()));
                prop_assert!(hit.moved.is_finite() && hit.moved >= 0.0);
            },
            // What cannot be hit is not just not found: no part has both less and more of it than that.
            Err(AimProblem::Nearest(near)) => prop_assert!((near - target.value).abs() > 1e-6 * target.value),
            Err(problem) => prop_assert!(false, "{problem:?}"),
        }
    }

    #[test]
    fn two_at_once_are_both_hit(parts in parts(), first in 0..5_usize, second in 0..5_usize, up in 0.8_f64..1.25, down in 0.8_f64..1.25) {
        prop_assume!(first != second);
        let serve = |drink: &Mix| *drink;
        let aims = [(first, up), (second, down)];
        let targets = aims.map(|(of, times)| Target { of: ALL[of], value: stands(&drink(&parts, &[]), ALL[of]) * times });
        for hit in aim(&parts, &targets, &serve).unwrap_or_default() {
            for target in targets {
                let there = stands(&drink(&parts, &hit.to), target.of);
                prop_assert!((there / target.value - 1.0).abs() < 1e-9, "{target:?}: {there}");
            }
        }
    }

    /// What is within reach is found: between all of a part left out and twice of it.
    #[test]
    fn what_one_part_reaches_is_found(parts in parts(), of in 0..5_usize, share in 0.05_f64..0.95, which in 0..3_usize) {
        let serve = |drink: &Mix| *drink;
        let at = |measures: f64| stands(&drink(&parts, &[(which, measures)]), ALL[of]);
        let value = at(2.0 * share);
        prop_assume!(value > 1e-6 && at(0.0).is_finite() && (at(2.0) - at(0.0)).abs() > 1e-3 * value);
        let found = aim(&parts, &[Target { of: ALL[of], value }], &serve);
        let found = found.unwrap_or_default();
        let hit = found.iter().find(|hit| hit.to[0].0 == which);
        prop_assert!(hit.is_some_and(|hit| (hit.to[0].1 - 2.0 * share).abs() < 1e-6), "{hit:?} for {}", 2.0 * share);
    }

    /// So is what two reach together, and no amount is below nothing.
    #[test]
    fn what_two_parts_reach_is_found(parts in parts(), syrup in 0.3_f64..1.9, juice in 0.3_f64..1.9) {
        let serve = |drink: &Mix| *drink;
        let there = drink(&parts, &[(1, syrup), (2, juice)]);
        let targets = [Of::Sugar, Of::Acid].map(|of| Target { of, value: stands(&there, of) });
        let found = aim(&parts, &targets, &serve).unwrap_or_default();
        let hit = found.iter().find(|hit| hit.to[0].0 == 1 && hit.to[1].0 == 2);
        prop_assert!(
            hit.is_some_and(|hit| (hit.to[0].1 - syrup).abs() < 1e-6 && (hit.to[1].1 - juice).abs() < 1e-6),
            "{hit:?} for {syrup} and {juice}"
        );
        for hit in &found {
            prop_assert!(hit.to.iter().all(|(_, measures)| *measures >= 0.0), "{hit:?}");
        }
    }

    /// So are sugar and acid by the litre in the glass, by any two; and what is said to be as near as it gets is within reach,
    /// and nothing nearer is.
    #[test]
    fn sweet_and_sour_by_the_litre(parts in parts(), sugar in 5.0_f64..250.0, acid in 0.5_f64..25.0, ice in 0.0_f64..0.8) {
        let serve = |drink: &Mix| watered(drink, Ratio::from_value(ice).expect("a ratio"));
        let targets = [Target { of: Of::Sugar, value: sugar }, Target { of: Of::Acid, value: acid }];
        match aim(&parts, &targets, &serve) {
            Ok(found) => for hit in found {
                for target in targets {
                    let there = stands(&serve(&drink(&parts, &hit.to)), target.of);
                    prop_assert!((there / target.value - 1.0).abs() < 1e-3, "{target:?}: {there}");
                }
            },
            Err(AimProblem::NotBoth(Some(near))) => {
                let toward = |share: f64| targets.map(|target| match target.of == near.of {
                    true => Target { value: near.value + (target.value - near.value) * share, ..target },
                    false => target,
                });
                let nearer = aim(&parts, &toward(0.5), &serve);
                prop_assert!(nearer.is_err(), "{near:?} {sugar} {acid} {ice}: {:?}", nearer.unwrap_or_default());
                prop_assert!(near.value <= 0.0 || aim(&parts, &toward(-1e-6), &serve).is_ok(), "{near:?}");
            }
            Err(problem) => prop_assert_eq!(problem, AimProblem::NotBoth(None)),
        }
    }
}
