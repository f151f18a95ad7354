//! Preps within preps: what is in them, and what is made of itself.

use crate::book::{Allergen, Book, Entry, Made, Own, Pairs, Stamp};
use crate::craft::pour::pour;
use crate::quantity::{Amount, Mass, Temperature, Volume};
use crate::screen::{Bench, Held, Prep};
use crate::substance::mix::Mix;

fn own(name: &str, parts: &str) -> Own {
    Own { name: name.into(), like: "cordial".into(), parts: parts.into(), ..Own::default() }
}

fn bench(records: Vec<Own>) -> Bench {
    let entry = |(at, value): (usize, Own)| {
        Entry { id: at.to_string(), value, stamp: Stamp::default(), newer: None, pairs: Pairs::default() }.into()
    };
    let own = records.into_iter().enumerate().map(entry).collect();
    Bench::default().with_book(Held::new(Book { own, ..Book::default() }))
}

fn prep<'a>(name: &str, bench: &'a Bench) -> &'a Prep {
    bench.preps.iter().find(|prep| prep.name == name).expect("a prep")
}

/// What is in so many ml of a line of this name.
fn poured(name: &str, ml: f64, bench: &Bench) -> Option<Mix> {
    let (_, taken) = bench.own.iter().find(|(own, _)| own == name)?;
    if matches!(taken.measured.made, Made::Here(_, None)) {
        return None;
    }
    pour(taken, Amount::Volume(Volume::from_ml(ml).ok()?))
}

/// A syrup of 500 g and 500 g is 50 °Bx; ten grams of it hold five of sugar, whichever way it is nested.
#[test]
fn a_prep_is_what_its_parts_are() {
    let bench = bench(vec![
        own("spice cordial", "200 g house syrup\n100 ml water\n2 dash orange bitters"),
        own("house syrup", "500 g sugar\n500 g water"),
        own("supper cordial", "100 g spice cordial"),
    ]);
    let sugar = |name: &str| {
        let mix = poured(name, 100.0, &bench).expect("known");
        mix.sugar().g() / mix.mass().g()
    };
    assert!((sugar("house syrup") - 0.5).abs() < 1e-12);
    let spice = &prep("spice cordial", &bench);
    assert_eq!((spice.why.as_str(), spice.parts().collect::<Vec<_>>()), ("", vec![1]));
    // 100 g of sugar in 200 g of syrup, 100 ml of water (99.8 g) and the bitters.
    assert!((sugar("spice cordial") - 100.0 / 301.3).abs() < 2e-3, "{}", sugar("spice cordial"));
    assert!((sugar("supper cordial") - sugar("spice cordial")).abs() < 1e-12);
    let all = poured("supper cordial", 100.0, &bench).expect("known").volume(Temperature::TWENTY).expect("a volume");
    assert!((all.ml() - 100.0).abs() < 1e-9);
}

#[test]
fn what_is_made_of_itself_says_by_what_way() {
    let circle = bench(vec![
        own("house syrup", "100 g supper cordial\n100 g sugar"),
        own("spice cordial", "200 g house syrup\n50 ml water"),
        own("supper cordial", "1 l spice cordial"),
        own("late punch", "30 ml supper cordial\n60 ml gin"),
        own("alone", "10 ml alone"),
        own("plain", "500 g sugar\n500 g water"),
    ]);
    let why = |name: &str| prep(name, &circle).why.clone();
    assert_eq!(why("house syrup"), "Made of itself: house syrup → supper cordial → spice cordial → house syrup.");
    assert_eq!(why("late punch"), "Made of itself: supper cordial → spice cordial → house syrup → supper cordial.");
    assert_eq!(why("alone"), "Made of itself: alone → alone.");
    assert_eq!(why("plain"), "");
    assert_eq!(poured("late punch", 10.0, &circle), None);
    assert!(poured("plain", 10.0, &circle).is_some());
}

#[test]
fn what_its_parts_do_not_say_is_as_what_it_is_most_like() {
    let bench = bench(vec![
        Own { strength: "38".into(), like: "spirit-40".into(), ..own("butter rum", "90 g butter\n700 ml aged rum") },
        Own { like: "spirit-40".into(), ..own("nut rum", "90 g hazelnut butter\n700 ml aged rum") },
        Own { holds: "sugar 300 g/l".into(), ..own("leaf syrup", "20 g leaves\n300 g sugar") },
    ]);
    let strength = |name: &str| poured(name, 100.0, &bench).expect("counted").strength().fraction() * 100.0;
    assert!((strength("butter rum") - 38.0).abs() < 0.05);
    assert!((strength("nut rum") - 40.0).abs() < 0.05);
    assert_eq!(prep("butter rum", &bench).why, "Not all that butter rum is made of is known: butter.");
    let leaf = poured("leaf syrup", 1000.0, &bench).expect("counted");
    assert!((leaf.sugar().g() - 300.0).abs() < 1e-6);
    // And guests are told by all of them.
    assert_eq!(prep("butter rum", &bench).allergens, [Allergen::Milk]);
    assert_eq!(prep("nut rum", &bench).allergens, [Allergen::Milk, Allergen::Nuts]);
}

#[test]
fn what_was_measured_goes_before_its_parts() {
    let bench = bench(vec![Own { brix: "60".into(), ..own("house syrup", "500 g honey\n500 g water") }]);
    let litre = poured("house syrup", 1000.0, &bench).expect("counted");
    assert!((litre.reads().expect("it reads").degrees() - 60.0).abs() < 0.05);
    // It stays the sugar of honey.
    assert!(litre.invert_sugar > litre.sucrose);
    assert!(litre.mass() > Mass::ZERO);
}

/// A chain of thousands, the wrong way round, and one circle of as many: neither hangs nor overflows.
#[test]
fn long_chains_end() {
    let name = |at: usize| format!("prep {at} x");
    let chain: Vec<Own> = (0..600)
        .map(|at| {
            own(&name(at), &if at == 599 { "50 g sugar\n50 g water".into() } else { format!("10 g {}", name(at + 1)) })
        })
        .collect();
    let straight = bench(chain.clone());
    assert!(straight.preps.iter().all(|prep| prep.why.is_empty()));
    let mut round = chain;
    round[599].parts = format!("10 g {}", name(0));
    let circle = bench(round);
    assert!(circle.preps.iter().all(|prep| prep.why == "Made of itself, by way of more than 12 preps."));
}
