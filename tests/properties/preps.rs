//! Preps within preps, over random books: masses are conserved whichever way they are nested, and what is made of itself
//! is never counted.

use meniscus::book::{Book, Entry, Made, Own, Pairs, Stamp};
use meniscus::craft::pour::pour;
use meniscus::quantity::{Amount, Mass};
use meniscus::screen::{Bench, Held};
use meniscus::substance::mix::Mix;
use proptest::prelude::*;

/// What preps are made of in the end: an amount in grams, whatever it is.
const BASES: [&str; 5] = ["sugar", "water", "lime juice", "London dry gin", "honey"];

fn name(at: usize) -> String {
    format!("prep {at} x")
}

fn bench(parts: &[String]) -> Bench {
    let entry = |(at, parts): (usize, &String)| {
        let value = Own { name: name(at), like: "cordial".into(), parts: parts.clone(), ..Own::default() };
        Entry { id: at.to_string(), value, stamp: Stamp::default(), newer: None, pairs: Pairs::default() }.into()
    };
    let own = parts.iter().enumerate().map(entry).collect();
    Bench::default().with_book(Held::new(Book { own, ..Book::default() }))
}

fn grams(of: &str, g: f64, bench: &Bench) -> Mix {
    let taken = meniscus::text::read_taken(of, bench.decimal, &bench.own).expect("known");
    pour(&taken, Amount::Mass(Mass::from_g(g).expect("a mass"))).expect("poured")
}

/// For each prep its parts: what, and how many grams. A prep is made of bases and of those before it.
fn recipes() -> impl Strategy<Value = Vec<Vec<(usize, u32)>>> {
    let part = (0_usize..100, 1_u32..500);
    prop::collection::vec(prop::collection::vec(part, 1..5), 1..8).prop_map(|recipes| {
        let of = |at: usize, pick: usize| pick % (BASES.len() + at);
        let one =
            |(at, parts): (usize, Vec<(usize, u32)>)| parts.into_iter().map(|(pick, g)| (of(at, pick), g)).collect();
        recipes.into_iter().enumerate().map(one).collect()
    })
}

proptest! {
    #[test]
    fn nested_preps_conserve_what_is_in_them(recipes in recipes()) {
        let called = |of: usize| BASES.get(of).map_or_else(|| name(of - BASES.len()), |base| (*base).to_owned());
        let lines = |parts: &Vec<(usize, u32)>| {
            parts.iter().map(|(of, g)| format!("{g} g {}", called(*of))).collect::<Vec<_>>().join("\n")
        };
        let bench = bench(&recipes.iter().map(lines).collect::<Vec<_>>());
        // By hand: masses are added, and a prep is shared out by mass.
        let mut whole: Vec<Mix> = Vec::new();
        for parts in &recipes {
            let mut sum = Mix::default();
            for (of, g) in parts {
                let part = match of.checked_sub(BASES.len()) {
                    None => grams(BASES[*of], f64::from(*g), &bench),
                    Some(prep) => {
                        let times = f64::from(*g) / whole[prep].mass().g();
                        whole[prep] * meniscus::quantity::Ratio::from_value(times).expect("a ratio")
                    }
                };
                sum = sum + part;
            }
            whole.push(sum);
        }
        for (at, made) in whole.iter().enumerate() {
            let mass = made.mass().g();
            let read = grams(&name(at), mass, &bench);
            let pairs = [
                (read.mass(), made.mass()),
                (read.ethanol, made.ethanol),
                (read.sugar(), made.sugar()),
                (read.acids(), made.acids()),
                (read.water, made.water),
            ];
            for (read, made) in pairs {
                prop_assert!((read.g() - made.g()).abs() <= 1e-9 * mass, "{at}: {read:?} {made:?}");
            }
        }
    }

    /// Which preps lead to a circle is told apart by following every way for as many steps as there are preps.
    #[test]
    fn what_leads_to_itself_is_never_counted(edges in prop::collection::vec((0_usize..9, 0_usize..9), 0..16)) {
        let parts = |at: usize| {
            let of = edges.iter().filter(|(from, _)| *from == at).map(|(_, to)| format!("10 g {}", name(*to)));
            of.chain(["10 g sugar".to_owned(), "10 g water".to_owned()]).collect::<Vec<_>>().join("\n")
        };
        let bench = bench(&(0..9).map(parts).collect::<Vec<_>>());
        for at in 0..9 {
            // Everywhere one is after nine steps; with a circle one can walk on for ever.
            let mut there = vec![at];
            for _ in 0..9 {
                there = (0..9).filter(|to| there.iter().any(|from| edges.contains(&(*from, *to)))).collect();
            }
            let prep = &bench.preps[at];
            let is_known = matches!(bench.own[at].1.measured.made, Made::Here(_, Some(_)));
            prop_assert_eq!(there.is_empty(), is_known, "{}: {:?}", at, prep.why);
            prop_assert_eq!(prep.is_circle, !is_known);
            if prep.is_circle {
                let way = prep.why.strip_prefix("Made of itself: ").expect("its way");
                let names: Vec<&str> = way.trim_end_matches('.').split(" → ").collect();
                prop_assert_eq!(names.first(), names.last());
                for pair in names.windows(2) {
                    let number = |name: &str| name[5..6].parse::<usize>().expect("a number");
                    prop_assert!(edges.contains(&(number(pair[0]), number(pair[1]))), "{}", prep.why);
                }
            }
        }
    }
}
