//! What is bought sums to the lines that need it, however deep.

use std::sync::Arc;

use super::*;
use crate::book::{Book, Entry, Own, Stamp};
use crate::craft::pour::pour;
use crate::screen::Held;

/// Numbers that look thrown, the same at every run.
struct Thrown(u64);

impl Thrown {
    fn below(&mut self, most: usize) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) as usize % most
    }

    fn amount(&mut self) -> f64 {
        (1 + self.below(40_000)) as f64 / 100.0
    }
}

fn bench(preps: &[(String, String)]) -> Bench {
    let entry = |(name, parts): &(String, String)| {
        let value = Own {
            name: name.clone(),
            like: "cordial".into(),
            parts: parts.clone(),
            gives: "1000 ml".into(),
            ..Own::default()
        };
        Arc::new(Entry { id: name.clone(), value, stamp: Stamp::default(), newer: None, pairs: Default::default() })
    };
    let own = preps.iter().map(entry).collect();
    Bench::default().with_book(Held::new(Book { own, has_cards: true, ..Book::default() }))
}

fn is_close(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * a.abs().max(b.abs()).max(1.0)
}

/// Millilitres, grams or pieces of what is called so; nothing where it is not on the list.
fn much(bought: &Bought, name: &str) -> f64 {
    let all = bought.things.iter().filter(|thing| thing.line.name == name);
    all.map(|thing| match thing.line.amount {
        Amount::Volume(volume) => volume.ml(),
        Amount::Mass(mass) => mass.g(),
        Amount::Count(count) => count.value(),
    })
    .sum()
}

#[test]
fn the_list_sums_to_the_specs() {
    const NAMES: [&str; 6] = ["gin", "dry vermouth", "orange bitters", "honey syrup", "moon dust", "whole milk"];
    let (bench, mut thrown) = (bench(&[]), Thrown(7));
    for _ in 0..200 {
        let mut needs = Needs::new(&bench);
        let mut sums = [0.0; NAMES.len()];
        for _ in 0..1 + thrown.below(6) {
            let serves = (1 + thrown.below(20_000)) as f64 / 100.0;
            let mut lines = Vec::new();
            for _ in 0..1 + thrown.below(8) {
                let (which, amount) = (thrown.below(NAMES.len()), thrown.amount());
                sums[which] += amount * serves;
                lines.push(format!("{amount} ml {}", NAMES[which]));
            }
            needs.spec(&Contents::of(&lines.join("\n"), &bench), serves, "a spec");
        }
        let bought = needs.bought();
        for (name, sum) in NAMES.iter().zip(sums) {
            assert!(is_close(much(&bought, name), sum), "{name}: {} of {sum}", much(&bought, name));
        }
    }
}

/// Preps of which each may take those behind it. What one litre of each comes to is worked out from the last to the first.
#[test]
fn nested_preps_come_to_what_their_parts_come_to() {
    const LEAVES: [&str; 3] = ["gin", "dry vermouth", "honey syrup"];
    const PREPS: usize = 6;
    let mut thrown = Thrown(11);
    let name = |at: usize| format!("prep {}", ["alder", "birch", "cedar", "damson", "elder", "fir"][at]);
    for _ in 0..100 {
        let mut each = [[0.0; LEAVES.len()]; PREPS];
        let mut preps = Vec::new();
        for at in (0..PREPS).rev() {
            let mut lines = Vec::new();
            for _ in 0..1 + thrown.below(4) {
                let amount = thrown.amount();
                let which = thrown.below(LEAVES.len() + PREPS - at - 1);
                let called = match which.checked_sub(LEAVES.len()) {
                    None => {
                        each[at][which] += amount;
                        LEAVES[which].to_owned()
                    }
                    Some(behind) => {
                        let to = at + 1 + behind;
                        (0..LEAVES.len()).for_each(|leaf| each[at][leaf] += amount / 1000.0 * each[to][leaf]);
                        name(to)
                    }
                };
                lines.push(format!("{amount} ml {called}"));
            }
            preps.push((name(at), lines.join("\n")));
        }
        let bench = bench(&preps);
        let mut needs = Needs::new(&bench);
        let times = thrown.amount();
        needs.spec(&Contents::of(&format!("1000 ml {}", name(0)), &bench), times, "a spec");
        let bought = needs.bought();
        assert_eq!(bought.said, Vec::<String>::new());
        for (leaf, called) in LEAVES.iter().enumerate() {
            let sum = each[0][leaf] * times;
            assert!(is_close(much(&bought, called), sum), "{called}: {} of {sum}: {preps:?}", much(&bought, called));
        }
        let all: usize = LEAVES.iter().filter(|called| much(&bought, called) > 0.0).count();
        assert_eq!(all, bought.things.len(), "nothing but those is bought");
    }
}

/// Sugar is neither lost nor won where syrup is bought as sugar, straight from specs or through a prep.
#[test]
fn the_sugar_of_syrups_is_the_sugar_that_is_bought() {
    const NAMES: [&str; 5] = ["simple syrup", "rich syrup", "syrup 1:1 by weight", "demerara syrup", "sugar"];
    let mut thrown = Thrown(17);
    for _ in 0..200 {
        let lines = |thrown: &mut Thrown| {
            let lines = (0..1 + thrown.below(5)).map(|_| {
                let unit = ["ml", "g", "cl"][thrown.below(3)];
                let name = NAMES[thrown.below(NAMES.len())];
                let unit = if name == "sugar" { "g" } else { unit };
                format!("{} {unit} {name}", thrown.amount())
            });
            lines.collect::<Vec<_>>().join("\n")
        };
        let prep = lines(&mut thrown);
        let bench = bench(&[("fir dew".to_owned(), prep.clone())]);
        let (spec, dew, times) = (lines(&mut thrown), thrown.amount(), thrown.amount());
        let sugar = |lines: &str| Contents::of(lines, &bench).mix.sugar().g();
        let sum = times * (sugar(&spec) + sugar(&prep) * dew / 1000.0);
        let mut needs = Needs::new(&bench);
        needs.spec(&Contents::of(&format!("{spec}\n{dew} ml fir dew"), &bench), times, "a spec");
        let bought = needs.bought();
        let all = much(&bought, "sugar") + much(&bought, "demerara sugar");
        assert!(is_close(all, sum), "{all} of {sum}: {spec} and {prep}");
        assert!(bought.things.iter().all(|thing| thing.line.name.ends_with("sugar")), "{spec} and {prep}");
    }
}

/// As much as the parts make takes the parts: mass for mass.
#[test]
fn what_parts_make_takes_those_parts() {
    let entry = Own { name: "house mix".into(), like: "cordial".into(), ..Own::default() };
    let parts = "300 ml gin\n200 ml honey syrup\n120 g sugar";
    let own = Own { parts: parts.into(), ..entry };
    let entry = Entry { id: "a".into(), value: own, stamp: Stamp::default(), newer: None, pairs: Default::default() };
    let book = Book { own: vec![Arc::new(entry)], has_cards: true, ..Book::default() };
    let bench = Bench::default().with_book(Held::new(book));
    let read = Contents::of(parts, &bench);
    let volume = read.mix.volume(Temperature::TWENTY).expect("a volume");
    let mut needs = Needs::new(&bench);
    let line = Contents::of("1 ml house mix", &bench).lines[0].read.clone().expect("a line");
    needs.line(&Line { amount: Amount::Volume(volume), ..line }, 1.0);
    let bought = needs.bought();
    let mass = |thing: &Thing| pour(&thing.line.taken.expect("known"), thing.line.amount).expect("poured").mass().g();
    let all: f64 = bought.things.iter().map(mass).sum();
    assert!(is_close(all, read.mix.mass().g()), "{all}");
    assert!(is_close(much(&bought, "gin"), 300.0) && is_close(much(&bought, "sugar"), 120.0));
}

/// Whatever is made of whatever, it comes to an end, and what is not followed is named.
#[test]
fn circles_come_to_an_end() {
    let mut thrown = Thrown(13);
    let name = |at: usize| format!("prep {}", ["alder", "birch", "cedar", "damson", "elder"][at]);
    for _ in 0..100 {
        let preps: Vec<(String, String)> = (0..5)
            .map(|at| {
                let lines: Vec<String> = (0..1 + thrown.below(5))
                    .map(|_| format!("{} ml {}", thrown.amount(), name(thrown.below(5))))
                    .collect();
                (name(at), lines.join("\n"))
            })
            .collect();
        let bench = bench(&preps);
        let mut needs = Needs::new(&bench);
        needs.spec(&Contents::of(&format!("50 ml {}", name(0)), &bench), 1.0, "a spec");
        let bought = needs.bought();
        // Each takes another: somewhere it goes round.
        assert!(bought.said.iter().any(|said| said.starts_with("Made of itself: prep ")), "{preps:?}");
        assert!(!bought.things.is_empty(), "{preps:?}");
    }
}
