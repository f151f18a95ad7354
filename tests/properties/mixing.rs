//! Pouring together conserves mass, in any order.

use proptest::prelude::*;

use meniscus::craft::bubbles::{pressure_for, volumes_at};
use meniscus::craft::freezer::{self, State};
use meniscus::quantity::{Abv, Brix, Density, Mass, MassFraction, Pressure, Ratio, Temperature, Volume};
use meniscus::substance::acid::Acid;
use meniscus::substance::mix::Mix;
use meniscus::substance::ph::{Dissolved, ph};
use meniscus::substance::{ethanol, sucrose};

pub(super) fn mixes() -> impl Strategy<Value = Mix> {
    let grams = |most: f64| (0.0..most).prop_map(|g| Mass::from_g(g).expect("a mass"));
    let spirit = (1.0_f64..2000.0, 0.0_f64..0.96).prop_map(|(ml, abv)| {
        Mix::spirit(Volume::from_ml(ml).expect("ml"), Abv::from_fraction(abv).expect("a strength"))
    });
    let syrup = (grams(500.0), 0.0_f64..70.0)
        .prop_map(|(mass, degrees)| Mix::syrup(mass, Brix::from_degrees(degrees).expect("a sweetness")));
    let acid = (0..Acid::ALL.len(), grams(20.0)).prop_map(|(place, mass)| Mix::acid(Acid::ALL[place], mass));
    let salts = (0.0_f64..60.0).prop_map(|mmol| {
        let mut mix = Mix::default();
        mix.cations = Ratio::from_value(mmol).expect("salts");
        mix
    });
    (spirit, syrup, acid, salts).prop_map(|(spirit, syrup, acid, salts)| spirit + syrup + acid + salts)
}

fn close(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-12 * a.abs().max(b.abs()).max(1.0)
}

fn same(a: &Mix, b: &Mix) -> bool {
    close(a.ethanol.g(), b.ethanol.g())
        && close(a.water.g(), b.water.g())
        && close(a.sugar().g(), b.sugar().g())
        && Acid::ALL.into_iter().all(|acid| close(a.mass_of(acid).g(), b.mass_of(acid).g()))
}

proptest! {
    #[test]
    fn every_mass_is_conserved(parts in prop::collection::vec(mixes(), 1..6), k in 0.01_f64..100.0) {
        let whole: Mix = parts.iter().copied().sum();
        let sum = |of: fn(&Mix) -> Mass| parts.iter().map(|part| of(part).g()).sum::<f64>();
        prop_assert!(close(whole.ethanol.g(), sum(|mix| mix.ethanol)));
        prop_assert!(close(whole.water.g(), sum(|mix| mix.water)));
        prop_assert!(close(whole.sugar().g(), sum(Mix::sugar)));
        prop_assert!(close(whole.acids().g(), sum(Mix::acids)));
        prop_assert!(close(whole.mass().g(), sum(Mix::mass)));
        let ratio = Ratio::from_value(k).expect("a factor");
        prop_assert!((( whole * ratio).mass().g() - whole.mass().g() * k).abs() <= 1e-9 * whole.mass().g() * k);
    }

    #[test]
    fn what_freezes_is_water_and_the_rest_freezes_no_further(mix in mixes(), t in -40.0_f64..10.0, less in 0.0_f64..5.0) {
        let at = |celsius: f64| freezer::at(&mix, Temperature::from_celsius(celsius).expect("a temperature"));
        let Ok(frozen) = at(t) else { return Ok(()) };
        prop_assert!(frozen.ice >= Mass::ZERO && frozen.ice <= mix.water);
        prop_assert!(close(frozen.share.value() * mix.mass().g(), frozen.ice.g()));
        let has_ice = frozen.ice > Mass::ZERO;
        prop_assert_eq!(has_ice, matches!(frozen.state, State::Slush | State::Solid));
        prop_assert_eq!(has_ice, t < frozen.begins.celsius());
        let mut left = mix;
        left.water = Mass::from_g(mix.water.g() - frozen.ice.g()).expect("a mass");
        prop_assert!(close(left.mass().g() + frozen.ice.g(), mix.mass().g()));
        if has_ice && !frozen.bounded && left.water.g() > 0.0 {
            prop_assert!((left.freezing_point().expect("in the tables").celsius() - t).abs() < 1e-6);
        }
        if let Ok(colder) = at(t - less) {
            prop_assert!(colder.ice >= frozen.ice && colder.begins == frozen.begins);
        }
    }

    #[test]
    fn bubbles_and_their_pressure_lead_back_to_each_other(bar in 0.0_f64..10.0, t in -1.0_f64..40.0, more in 0.01_f64..1.0) {
        let at = Temperature::from_celsius(t).expect("a temperature");
        let holds = |bar: f64| volumes_at(Pressure::from_bar(bar.min(10.0)).expect("a pressure"), at).expect("in range");
        if let Ok(pressure) = pressure_for(holds(bar), at) {
            prop_assert!((pressure.bar() - bar).abs() < 1e-9);
        }
        prop_assert!(holds(bar + more) >= holds(bar), "more pressure holds more");
        let warmer = Temperature::from_celsius((t + more).min(40.0)).expect("a temperature");
        prop_assert!(volumes_at(Pressure::NONE, warmer).expect("in range") <= holds(0.0), "warm holds less");
    }

    #[test]
    fn the_order_of_pouring_does_not_matter(a in mixes(), b in mixes(), c in mixes()) {
        prop_assert!(same(&(a + b + c), &(c + (b + a))));
    }

    #[test]
    fn what_a_mix_shows_is_finite_and_possible(mix in mixes(), t in -20.0_f64..40.0) {
        let at = Temperature::from_celsius(t).expect("a temperature");
        let density = mix.density(at).expect("in range").g_per_ml();
        prop_assert!((0.7..1.7).contains(&density), "{}", density);
        prop_assert!((0.0..=1.0).contains(&mix.strength().fraction()));
        prop_assert!(mix.titratable_acidity().expect("possible").g_per_l().is_finite());
        if let Ok(ph) = mix.ph() {
            // Phosphate nearly neutralised stands at its second constant, 7.2, and a little over.
            prop_assert!((0.0..=7.6).contains(&ph), "{}", ph);
        }
    }

    #[test]
    fn strength_and_mass_fraction_are_inverse(abv in 0.0_f64..=1.0) {
        let strength = Abv::from_fraction(abv).expect("a strength");
        prop_assert!((ethanol::strength(ethanol::mass_fraction(strength)).fraction() - abv).abs() < 1e-10);
    }

    #[test]
    fn density_falls_with_ethanol_and_rises_with_sugar(a in 0.0_f64..1.0, b in 0.0_f64..1.0, t in 0.0_f64..40.0) {
        prop_assume!((a - b).abs() > 1e-6);
        let (less, more) = if a < b { (a, b) } else { (b, a) };
        let at = Temperature::from_celsius(t).expect("a temperature");
        let spirit = |w: f64| ethanol::density(MassFraction::from_fraction(w).expect("w"), at).map(Density::g_per_ml);
        prop_assert!(spirit(more).expect("in range") < spirit(less).expect("in range"));
        let syrup = |w: f64| sucrose::density(Brix::from_degrees(w * 85.0).expect("w"), at).map(Density::g_per_ml);
        prop_assert!(syrup(more).expect("in range") > syrup(less).expect("in range"));
    }

    #[test]
    fn more_acid_is_a_lower_ph(place in 0..Acid::ALL.len(), molal in 1e-4_f64..0.2, more in 1.01_f64..5.0) {
        let of = |molal| ph(&Dissolved { acids: &[(Acid::ALL[place], molal)], cations: 0.0 });
        if let (Ok(weak), Ok(strong)) = (of(molal), of(molal * more)) {
            prop_assert!(strong < weak);
        }
    }
}
