//! What is bought is enough and no pack too many; preps come down to what they are made of, whatever leads back to itself.

use proptest::prelude::*;

use meniscus::craft::buy::{as_measured, bill, less, makings, packs};
use meniscus::quantity::{Amount, Density, Mass, Money, Ratio, Volume};

use super::volumes;

const MOST: usize = 9;

/// What goes into each, line by line.
type Takes = Vec<Vec<Option<(usize, f64)>>>;

fn shares() -> impl Strategy<Value = Ratio> {
    (0.05_f64..=1.0).prop_map(|share| Ratio::from_value(share).expect("a share"))
}

/// Things that take each other, each any other or itself, and how many are wanted of each.
fn graphs() -> impl Strategy<Value = (Takes, Vec<f64>)> {
    (1..=MOST).prop_flat_map(|count| {
        let takes = prop::collection::vec(
            prop::collection::vec(prop::option::weighted(0.8, (0..count, 0.0_f64..3.0)), 0..5),
            count,
        );
        (takes, prop::collection::vec(0.0_f64..100.0, count))
    })
}

proptest! {
    #[test]
    fn packs_are_enough_and_one_fewer_is_not(amount in volumes(), pack in 10.0_f64..5e3, usable in shares()) {
        let pack = Volume::from_ml(pack).expect("ml");
        if let Some(many) = packs(Amount::Volume(amount), usable, Amount::Volume(pack)) {
            let holds = |many: f64| many * pack.ml() * usable.value();
            prop_assert!(holds(f64::from(many)) >= amount.ml() * (1.0 - 1e-8) - 1e-6);
            prop_assert!(many == 0 || holds(f64::from(many) - 1.0) < amount.ml());
        }
    }

    /// Of each there is what is wanted, and what the others take, but for what is cut; and without that nothing goes round.
    #[test]
    fn each_is_made_as_often_as_it_is_needed((takes, wanted) in graphs()) {
        let all = makings(&takes, &wanted, &vec![0.0; takes.len()]);
        for (of, times) in all.times.iter().enumerate() {
            let mut sum = wanted[of];
            for (by, takes) in takes.iter().enumerate() {
                let taken = takes.iter().enumerate().filter_map(|(which, line)| {
                    line.filter(|(to, _)| *to == of && !all.cut.contains(&(by, which)))
                });
                sum += taken.map(|(_, each)| all.times[by] * each).sum::<f64>();
            }
            prop_assert!((times - sum).abs() <= 1e-9 * sum.max(1.0), "{of}: {times} of {sum}");
        }
        prop_assert_eq!(all.cut.len(), all.circles.len());
        for (circle, (of, which)) in all.circles.iter().zip(&all.cut) {
            prop_assert_eq!(circle.first(), circle.last());
            prop_assert_eq!(Some(circle[circle.len() - 1]), takes[*of][*which].map(|(to, _)| to));
            for pair in circle.windows(2) {
                prop_assert!(takes[pair[0]].iter().flatten().any(|(to, _)| *to == pair[1]), "{circle:?}");
            }
        }
        // What nothing is made of any more can be taken away until nothing is left.
        let mut left: Vec<usize> = (0..takes.len()).collect();
        while !left.is_empty() {
            let is_taken = |at: usize| left.iter().any(|by| {
                takes[*by].iter().enumerate().any(|(which, line)| {
                    line.is_some_and(|(to, _)| to == at) && !all.cut.contains(&(*by, which))
                })
            });
            let free: Vec<usize> = left.iter().copied().filter(|at| !is_taken(*at)).collect();
            prop_assert!(!free.is_empty(), "still round: {left:?} of {takes:?}");
            left.retain(|at| !free.contains(at));
        }
    }

    /// What is there of a prep is not made, and what goes into it is not bought.
    #[test]
    fn what_is_there_is_not_made((takes, wanted) in graphs()) {
        let all = makings(&takes, &wanted, &vec![1e12; takes.len()]);
        prop_assert!(all.times.iter().all(|times| *times == 0.0));
    }

    #[test]
    fn what_is_left_and_what_is_there_are_all_of_it(amount in volumes(), part in 0.0_f64..1.5) {
        let there = Amount::Volume(Volume::from_ml(amount.ml() * part).expect("ml"));
        let left = less(Amount::Volume(amount), there);
        if part < 1.0 - 1e-8 {
            let Amount::Volume(all) = left.and(there).expect("like measures") else { panic!("poured") };
            prop_assert!((all.ml() - amount.ml()).abs() <= 1e-9 * amount.ml().max(1.0));
        } else {
            prop_assert!(left.is_none() || part < 1.0);
        }
    }

    #[test]
    fn poured_and_weighed_and_back(amount in volumes(), density in 0.5_f64..2.0) {
        let density = Density::from_g_per_ml(density).ok();
        let weighed = as_measured(Amount::Volume(amount), Amount::Mass(Mass::ZERO), density, None).expect("weighed");
        let Some(Amount::Volume(back)) = as_measured(weighed, Amount::Volume(amount), density, None) else { panic!("poured") };
        prop_assert!((back.ml() - amount.ml()).abs() <= 1e-9 * amount.ml().max(1.0));
    }

    #[test]
    fn what_is_open_and_what_is_got_are_the_whole(things in prop::collection::vec((any::<bool>(), prop::option::of(0.0_f64..1e4)), 0..20)) {
        let money = |cost: f64| Money::from_units(cost).expect("money");
        let list: Vec<_> = things.iter().map(|(is_got, cost)| (*is_got, cost.map(money))).collect();
        let (all, open) = (bill(&list), list.iter().filter(|(is_got, _)| !is_got).count());
        let sum = |is_got: bool| things.iter().filter(|thing| thing.0 == is_got).filter_map(|thing| thing.1).sum::<f64>();
        prop_assert_eq!((all.open, all.unknown), (open, things.iter().filter(|thing| thing.1.is_none()).count()));
        prop_assert!((all.to_pay.units() - sum(false)).abs() < 1e-6);
        prop_assert!((all.whole.units() - sum(false) - sum(true)).abs() < 1e-6);
    }
}
