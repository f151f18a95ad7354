//! What goes onto the scale is in the bottles, and nothing is used beyond what there is.

use proptest::prelude::*;

use meniscus::book::{Line, Spec};
use meniscus::craft::bottle_it::{Measure, enough, measured, times_for, water_to};
use meniscus::craft::serves::bottle;
use meniscus::quantity::{Abv, Amount, Mass, Ratio, Temperature, Volume};
use meniscus::substance::mix::Mix;

use crate::mixing::mixes;

const MEASURES: [Measure; 4] = [Measure::OneMl, Measure::FiveMl, Measure::TenMl, Measure::Gram];

fn close(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * a.abs().max(b.abs()).max(1.0)
}

fn ml(mix: &Mix) -> f64 {
    mix.volume(Temperature::TWENTY).expect("ml").ml()
}

fn times(mix: Mix, factor: f64) -> Mix {
    mix * Ratio::from_value(factor).expect("a factor")
}

proptest! {
    #[test]
    fn ethanol_sugar_and_acid_go_from_the_lines_into_the_bottles(
        lines in prop::collection::vec(mixes(), 1..6),
        wanted in 100.0_f64..20_000.0,
        size in 100.0_f64..20_000.0,
        headspace in 0.0_f64..0.5,
        measure in 0..MEASURES.len(),
    ) {
        let one: Mix = lines.iter().copied().sum();
        let often = times_for(&one, Volume::from_ml(wanted).expect("ml"), Ratio::ZERO).expect("times");
        prop_assert!(close(ml(&(one * often)), wanted));
        let put: Vec<Mix> = lines.iter().map(|line| measured(&(*line * often), false, MEASURES[measure])).collect();
        let batch: Mix = put.iter().copied().sum();
        let whole = Volume::from_ml(ml(&batch)).expect("ml");
        let headspace = Ratio::from_value(headspace).expect("a share");
        let bottling = bottle(whole, Volume::from_ml(size).expect("ml"), headspace).expect("bottles");
        // Less than a millionth of a bottle begins no other.
        let poured = f64::from(bottling.bottles - 1) * bottling.full.ml() + bottling.last.ml();
        prop_assume!(close(poured, whole.ml()));
        // Each bottle by what is poured into it.
        let of = |volume: Volume| times(batch, volume.ml() / whole.ml());
        let mut bottled = of(bottling.last);
        for _ in 1..bottling.bottles {
            bottled = bottled + of(bottling.full);
        }
        let all: [fn(&Mix) -> f64; 3] = [|mix| mix.ethanol.g(), |mix| mix.sugar().g(), |mix| mix.acids().g()];
        for of in all {
            let on_scale: f64 = put.iter().map(of).sum();
            prop_assert!(close(on_scale, of(&bottled)), "{on_scale} {}", of(&bottled));
        }
    }

    #[test]
    fn a_strength_that_is_reached_is_the_one_asked(drink in mixes(), part in 0.05_f64..0.99) {
        prop_assume!(drink.strength().fraction() > 0.01);
        let asked = Abv::from_fraction(drink.strength().fraction() * part).expect("a strength");
        let water = water_to(&drink, asked).expect("water");
        let made = drink + Mix::water(water);
        prop_assert!((made.strength().fraction() - asked.fraction()).abs() < 1e-9);
        prop_assert!(close(made.ethanol.g(), drink.ethanol.g()) && water > Mass::ZERO);
    }

    #[test]
    fn one_thing_is_used_up_and_nothing_beyond_what_there_is(
        lines in prop::collection::vec((1.0_f64..100.0, 1.0_f64..5000.0), 1..8),
    ) {
        let volume = |ml: f64| Amount::Volume(Volume::from_ml(ml).expect("ml"));
        let line = |(at, (ml, _)): (usize, &(f64, f64))| Line {
            amount: volume(*ml),
            unit: None,
            name: format!("line {at}"),
            taken: None,
            unread: None,
            said: String::new(),
        };
        let spec = Spec { lines: lines.iter().enumerate().map(line).collect() };
        let stock: Vec<(usize, Amount)> = lines.iter().enumerate().map(|(at, (_, have))| (at, volume(*have))).collect();
        let made = enough(&spec, &stock).expect("enough");
        for (at, (each, have)) in lines.iter().enumerate() {
            let used = each * made.times.value();
            let left = made.left.iter().find(|(line, _)| *line == at);
            let left = left.map_or(0.0, |(_, amount)| if let Amount::Volume(left) = amount { left.ml() } else { f64::NAN });
            prop_assert!(used <= have * (1.0 + 1e-12), "{used} of {have}");
            prop_assert!(close(used + left, *have), "{used} and {left} of {have}");
            prop_assert!(at != made.first || close(used, *have));
        }
    }
}
