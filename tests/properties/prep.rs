//! Preps: nothing gets lost between fruit, cordial and glass, and no step starts too late.

use proptest::prelude::*;

use meniscus::book::{Book, Entry, Ingredient, Kind, LIBRARY, Measured, Part, Run, Stamp, Taken, Tick, ingredient};
use meniscus::craft::clarify::agar;
use meniscus::craft::cordial::{Fill, FromJuice, Miss, made, swap, to_target};
use meniscus::craft::fruit::{fruit_for, given_by, measured_share};
use meniscus::craft::milk_wash::{Clots, verdict, washed};
use meniscus::craft::pour::{litre_of, pour};
use meniscus::craft::run::{Progress, Task, earliest_ends, latest_starts};
use meniscus::quantity::{Acidity, Amount, Brix, Mass, Ratio, Temperature, Volume};
use meniscus::screen::clock::Clock;
use meniscus::screen::{Bench, Held};
use meniscus::substance::milk::Milk;
use meniscus::substance::mix::Mix;
use meniscus::tool::batch::run::sheet;

fn ratio(value: f64) -> Ratio {
    Ratio::from_value(value).expect("a ratio")
}

fn grams(value: f64) -> Mass {
    Mass::from_g(value).expect("a mass")
}

fn millilitres(key: &str, ml: f64) -> Mix {
    let taken = Taken { ingredient: ingredient(key).expect("known"), measured: Measured::default() };
    pour(&taken, Amount::Volume(Volume::from_ml(ml).expect("a volume"))).expect("poured")
}

fn citric() -> [(&'static Ingredient, f64); 1] {
    [(ingredient("citric-acid").expect("citric"), 1.0)]
}

/// A juice of the library.
fn juices() -> impl Strategy<Value = &'static Ingredient> {
    prop::sample::select(LIBRARY.iter().filter(|row| row.kind == Kind::Juice).collect::<Vec<_>>())
}

/// Steps of any length; each may wait for any of those before it.
fn tasks() -> impl Strategy<Value = Vec<Task>> {
    prop::collection::vec((0_u32..7_200, 0_u32..200_000, any::<u32>()), 1..12).prop_map(|steps| {
        steps
            .into_iter()
            .enumerate()
            .map(|(at, (work, wait, bits))| Task {
                work,
                wait,
                after: (0..at).filter(|before| bits >> before & 1 == 1).collect(),
            })
            .collect()
    })
}

proptest! {
    /// Nothing starts before what it waits for is over, all is over in time, and no two steps need hands at once.
    #[test]
    fn starts_never_violate_a_wait(tasks in tasks(), ready in 0_i64..2_000_000_000) {
        let starts = latest_starts(&tasks, ready);
        let end = |at: usize| starts[at] + i64::from(tasks[at].work) + i64::from(tasks[at].wait);
        for (at, task) in tasks.iter().enumerate() {
            prop_assert!(end(at) <= ready);
            for before in &task.after {
                prop_assert!(end(*before) <= starts[at], "{before} ends {} after {at} begins {}", end(*before), starts[at]);
            }
            for (other, task_other) in tasks.iter().enumerate().filter(|(other, _)| *other != at) {
                let (mine, theirs) = (i64::from(task.work), i64::from(task_other.work));
                let apart = starts[at] + mine <= starts[other] || starts[other] + theirs <= starts[at];
                prop_assert!(apart || mine == 0 || theirs == 0);
            }
        }
    }

    /// Forwards the same holds, from now on; and starting at the latest times is never too late by the other reckoning.
    #[test]
    fn ends_never_violate_a_wait(tasks in tasks(), now in 0_i64..1_000_000) {
        let ends = earliest_ends(&tasks, &vec![Progress::Due; tasks.len()], now);
        for (at, task) in tasks.iter().enumerate() {
            let start = ends[at] - i64::from(task.work) - i64::from(task.wait);
            prop_assert!(start >= now);
            for before in &task.after {
                prop_assert!(ends[*before] <= start);
            }
        }
        let done = earliest_ends(&tasks, &vec![Progress::Done; tasks.len()], now);
        prop_assert!(done.iter().all(|end| *end == now));
    }

    /// A swap keeps sugar and titratable acid to 0.1 % (far better), whatever the juice; and the volume, unless it says so.
    #[test]
    fn a_swap_keeps_sugar_and_acid(
        juice in 5.0..90.0_f64, sour in 0.0..60.0_f64, sweet in 0.0..60.0_f64, rich in any::<bool>(), lemon in any::<bool>(),
        row in juices(), brix in 2.0..30.0_f64, acid in 0.0..60.0_f64, fill in any::<bool>(),
    ) {
        let fresh = millilitres(row.key, juice)
            + millilitres(if lemon { "lemon-juice" } else { "lime-juice" }, sour)
            + millilitres(if rich { "rich-syrup" } else { "honey-syrup" }, sweet);
        let measured = Measured {
            reads: Brix::from_degrees(brix).ok(),
            acid: Acidity::from_g_per_l(acid).ok(),
            ..Measured::default()
        };
        let litre = litre_of(&Taken { ingredient: row, measured });
        let fill = if fill { Fill::Juice } else { Fill::Water };
        let kept = Temperature::from_celsius(4.0).expect("cold");
        let before = Volume::from_ml(juice).expect("a volume");
        let Some(swapped) = swap(&fresh, &FromJuice { litre, before, fill }, None, &citric(), kept) else {
            return Err(TestCaseError::fail("a swap"));
        };
        let close = |found: f64, wanted: f64| (found - wanted).abs() <= 1e-6 * (1.0 + wanted);
        prop_assert!(close(swapped.mix.sugar().g(), fresh.sugar().g()), "sugar {} {}", swapped.mix.sugar().g(), fresh.sugar().g());
        prop_assert!(close(swapped.mix.titratable().g(), fresh.titratable().g()));
        let is_larger = |miss: &Miss| matches!(miss, Miss::TooMuchWater | Miss::Crystals(_));
        if swapped.misses.iter().any(is_larger) {
            prop_assert!(swapped.pour.ml() >= swapped.wanted.ml() - 1e-6);
        } else {
            prop_assert!((swapped.pour.ml() - swapped.wanted.ml()).abs() < 1e-4, "{} {}", swapped.pour.ml(), swapped.wanted.ml());
        }
        // What goes in is what is in it.
        let whole = litre * ratio(swapped.juice.ml() / 1000.0);
        let mass = whole.mass().g() + swapped.sugar.g() + swapped.acids.iter().map(|(_, mass)| mass.g()).sum::<f64>() + swapped.water.g();
        prop_assert!(close(swapped.mix.mass().g(), mass));
    }

    /// A cordial made to a target has its sweetness and its acidity, unless the juice has more by itself.
    #[test]
    fn a_target_is_met(ml in 100.0..5_000.0_f64, brix in 20.0..65.0_f64, acid in 5.0..60.0_f64) {
        let juice = millilitres("pear-juice", ml);
        let made = to_target(&juice, Brix::from_degrees(brix).expect("brix"), Acidity::from_g_per_l(acid).expect("acid"), &citric())
            .expect("a cordial");
        prop_assert!(!made.is_too_sweet && !made.is_too_sour);
        prop_assert!((made.mix.reads().expect("a reading").degrees() - brix).abs() < 1e-5);
        let titrates = made.mix.titratable_acidity().expect("acid").g_per_l();
        prop_assert!((titrates - acid).abs() < 1e-5, "{titrates}");
    }

    /// Fruit → juice → clear → cordial → serves: every gram is somewhere.
    #[test]
    fn mass_is_kept_from_fruit_to_glass(
        fruit in 100.0..20_000.0_f64, share in 0.2..0.7_f64, clear in 0.5..0.95_f64, sugar in 0.0..2_000.0_f64, acid in 0.0..100.0_f64, serves in 1_u32..200,
    ) {
        let whole = grams(fruit);
        let juice = given_by(whole, ratio(share));
        prop_assert!((fruit_for(juice, ratio(share)).expect("fruit").g() - fruit).abs() < 1e-6 * fruit);
        prop_assert!((measured_share(juice, whole).expect("a share").value() - share).abs() < 1e-9);
        let through = juice * ratio(clear);
        let lost = juice.g() - through.g();
        let taken = Taken { ingredient: ingredient("lime-juice").expect("lime"), measured: Measured::default() };
        let poured = pour(&taken, Amount::Mass(through)).expect("poured");
        let cordial = made(&poured, grams(sugar), &[(ingredient("citric-acid").expect("citric"), acid)]).mix;
        let glass = cordial * ratio(1.0 / f64::from(serves));
        let back = glass.mass().g() * f64::from(serves);
        prop_assert!((back - (fruit * share - lost + sugar + acid)).abs() < 1e-6 * (1.0 + back));
        let sugars = poured.sugar().g() + sugar;
        prop_assert!((glass.sugar().g() * f64::from(serves) - sugars).abs() < 1e-6 * (1.0 + sugars));
    }

    /// A wash loses nothing but the curd: ethanol, sugar and acid stay, and masses add up.
    #[test]
    fn a_wash_keeps_what_it_must(spirit in 0.0..900.0_f64, lemon in 0.0..300.0_f64, syrup in 0.0..400.0_f64, milk in 1.0..500.0_f64, kind in 0..3_usize) {
        let drink = millilitres("light-rum", spirit) + millilitres("lemon-juice", lemon) + millilitres("honey-syrup", syrup) + Mix::water(grams(1.0));
        let kind = Milk::of(["whole", "semi", "skim"][kind]);
        let volume = Volume::from_ml(milk).expect("a volume");
        let after = washed(&drink, volume, kind);
        prop_assert!((after.liquid.ethanol.g() - drink.ethanol.g()).abs() < 1e-9 * (1.0 + drink.ethanol.g()));
        prop_assert!((after.liquid.sugar().g() - drink.sugar().g()).abs() < 1e-9 * (1.0 + drink.sugar().g()));
        prop_assert!((after.liquid.acids().g() - drink.acids().g()).abs() < 1e-9);
        let together = drink.mass().g() + milk * 1.030;
        prop_assert!((after.liquid.mass().g() + after.curd.g() - together).abs() < 1e-6 * together);
    }

    /// More acid never clots less, and what is asked for is enough.
    #[test]
    fn the_verdict_follows_the_acid(acid in 0.0..20.0_f64, more in 0.0..5.0_f64, milk in 20.0..500.0_f64) {
        let of = |acid: f64| {
            let measured = Measured { acid: Acidity::from_g_per_l(acid).ok(), ..Measured::default() };
            litre_of(&Taken { ingredient: ingredient("water").expect("water"), measured })
        };
        let milk = Volume::from_ml(milk).expect("a volume");
        let (less, later) = (verdict(&of(acid), milk), verdict(&of(acid + more), milk));
        prop_assert!(later.ph[1] <= less.ph[1] + 1e-9);
        prop_assert!(less.ph[0] <= less.ph[1] && less.ph[1] <= less.ph[2]);
        prop_assert_eq!(less.clots == Clots::Yes, less.citric_to_add.g() < 1e-9);
        let enough = verdict(&of(acid + less.citric_to_add.g() * 1.001 + 0.01), milk);
        prop_assert_eq!(enough.clots, Clots::Yes);
    }

    /// Agar: the warmer the juice, the warmer the mix; juice as warm as it says is warm enough.
    #[test]
    fn agar_is_warm_enough_when_it_says_so(juice in 10.0..50_000.0_f64, at in 0.0..90.0_f64, share in 0.05..0.6_f64) {
        let worked = agar(grams(juice), Temperature::from_celsius(at).expect("°C"), ratio(share), 2.0).expect("an answer");
        prop_assert!(worked.comes_to >= at - 1e-9 && worked.comes_to <= 100.0);
        prop_assert_eq!(worked.comes_to >= 42.0 - 1e-9, at >= worked.juice_at_least - 1e-9);
        prop_assert!((worked.together.g() - worked.water.g() - juice).abs() < 1e-6 * juice);
    }

    /// Any minute between 1970 and 2100 is written so that it is read again, on a clock ahead or behind.
    #[test]
    fn times_are_read_as_they_are_written(minute in 0_i64..68_000_000, east in any::<bool>()) {
        let clock = Clock { now: 0, ahead: if east { |_| 330 } else { |_| -570 } };
        prop_assume!(minute > 600);
        prop_assert_eq!(clock.read(&clock.written(minute * 60_000)), Some(minute * 60_000));
    }

    /// A run of anything, with anything marked, comes to a sheet; and what came out moves what follows in proportion.
    #[test]
    fn what_came_out_rescales_what_follows(hundredths in 5_000_u32..500_000) {
        // A sheet carries hundredths of a millilitre: what is typed in them goes on as it is.
        let got = f64::from(hundredths) / 100.0;
        let part = |key, tool: &str, from| Part { key, tool: tool.into(), from, texts: [].into() };
        let mut run = Run { parts: vec![part(0, "clear", None), part(1, "cordial", Some(0))], ..Run::default() };
        run.marks.insert("0/filter".into(), Tick { got: format!("{got:.2} ml"), ..Tick::default() });
        let entry = Entry { id: "r".into(), value: run.clone(), stamp: Stamp::default(), newer: None, pairs: Default::default() };
        let bench = Bench::default().with_book(Held::new(Book { runs: vec![entry.into()], ..Book::default() }));
        let steps = sheet(&run, &bench).steps;
        let mix = steps.iter().find(|step| step.key == "1/mix").expect("a step");
        let sugar = got * 45.0 / 105.0;
        let said = mix.step.words.replace('\u{202f}', "");
        let said = said.strip_prefix("Stir ").and_then(|words| words.split(" g").next()).and_then(|grams| grams.parse::<f64>().ok());
        let said = said.expect("grams of sugar");
        // So nothing is rounded but the grams, to whole ones from a hundred up and to tenths below.
        let half = if sugar >= 99.95 { 0.5 } else { 0.05 };
        prop_assert!((said - sugar).abs() <= half + 1e-9, "{said} {sugar}");
    }

    /// Hostile runs break nothing.
    #[test]
    fn any_run_comes_to_a_sheet(tool in "[a-z-]{0,12}", text in "\\PC{0,20}", ready in "\\PC{0,20}", started in any::<u64>()) {
        let names = ["fruit", "clear", "cordial", "milk-wash", "infuse", "spec-form", "clear-ice", tool.as_str()];
        let fields = ["juice", "wanted", "lines", "steps", "times", "spec", "drink", "saline"];
        let parts = (0..).zip(names).map(|(key, tool)| Part {
            key,
            tool: tool.into(),
            from: (key % 2 == 1).then(|| key - 1),
            texts: fields.iter().map(|field| ((*field).to_owned(), text.clone())).collect(),
        });
        let mut run = Run { ready, parts: parts.collect(), ..Run::default() };
        for step in ["0/press", "1/filter", "5/measure"] {
            run.marks.insert(step.into(), Tick { started, got: text.clone(), ..Tick::default() });
        }
        let sheet = sheet(&run, &Bench::default());
        for step in &sheet.steps {
            prop_assert!(!step.step.words.contains("NaN") && !step.step.words.contains("inf"), "{}", step.step.words);
        }
    }
}
