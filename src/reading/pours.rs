//! How an amount is poured with one's own jiggers, in words.

use crate::book::Jigger;
use crate::craft::jigger::{Plan, Vessel, plan};
use crate::craft::vessel::JIGGER;
use crate::quantity::Volume;
use crate::screen::Bench;
use crate::screen::picture::{Filled, Picture};
use crate::text;

/// Jiggers that a strip has room for.
const MOST_DRAWN: usize = 4;

/// "1½ oz + ¼ oz".
pub(crate) fn measures(plan: &Plan) -> String {
    let pours: Vec<String> = plan
        .pours
        .iter()
        .map(|pour| {
            let times = if pour.times > 1 { format!("{} × ", pour.times) } else { String::new() };
            match &pour.vessel {
                Vessel::Jigger(label) => format!("{times}{label}"),
                Vessel::Barspoon => format!("{} bsp", pour.times),
                Vessel::Dash if pour.times == 1 => "1 dash".to_owned(),
                Vessel::Dash => format!("{} dashes", pour.times),
            }
        })
        .collect();
    pours.join(" + ")
}

/// "exact", or how far off the pours are.
pub(crate) fn off_words(plan: &Plan, bench: &Bench) -> String {
    if plan.is_exact() {
        return "exact".to_owned();
    }
    let ml = text::plain(plan.error_ml(), 1, bench.decimal);
    let sign = if plan.error_ml() > 0.0 { "+" } else { "" };
    let verdict = if plan.is_close() { "" } else { "closest: " };
    format!("{verdict}{sign}{ml} ml, {}", text::signed_percent(plan.error(), bench.decimal))
}

/// The jiggers that are poured, and how full each is; none where it takes none, or more than a strip has room for.
pub(crate) fn jiggers(plan: &Plan, bench: &Bench) -> Option<Picture> {
    let (mut vessels, mut words) = (Vec::new(), Vec::new());
    for pour in &plan.pours {
        let Vessel::Jigger(label) = &pour.vessel else { continue };
        let has = |jigger: &&Jigger| jigger.marks().any(|mark| (mark.volume.ml() - pour.volume.ml()).abs() <= 1e-3);
        let smallest = |a: &&Jigger, b: &&Jigger| a.brim.volume.ml().total_cmp(&b.brim.volume.ml());
        let brim = &bench.house.jiggers.iter().filter(has).min_by(smallest)?.brim;
        let vessel = JIGGER.holding(brim.volume.ml());
        let filled = Filled { level: vessel.level(pour.volume), ice: Vec::new(), vessel };
        vessels.extend(vec![filled; pour.times as usize]);
        let times = if pour.times > 1 { format!(", {} times", pour.times) } else { String::new() };
        let full = if brim.label == *label { "full".to_owned() } else { format!("filled to {label}") };
        words.push(format!("{} jigger {full}{times}", brim.label));
    }
    let text = words.join("; ");
    (1..=MOST_DRAWN).contains(&vessels.len()).then_some(Picture::Vessels { text, vessels })
}

/// "pour 1½ oz + ¼ oz, exact", beneath an amount that is shown as `shown`; none where the jiggers cannot, or where that is
/// what is shown.
pub(crate) fn poured(volume: Volume, shown: &str, bench: &Bench) -> Option<String> {
    let plan = plan(volume, &bench.house)?;
    (measures(&plan) != shown).then(|| format!("pour {}, {}", measures(&plan), off_words(&plan, bench)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tool::shelf::settings::ShelfForm;

    #[test]
    fn the_jiggers_are_those_of_the_plan_each_as_full_as_it_is_poured() {
        let bench = ShelfForm::default().bench(text::Decimal::Point);
        let ounces = |n: f64| Volume::from_ml(Volume::US_FLUID_OUNCE.ml() * n).expect("ml");
        let drawn = |n| plan(ounces(n), &bench.house).and_then(|plan| jiggers(&plan, &bench));
        let Some(Picture::Vessels { text, vessels }) = drawn(1.75) else { panic!("no jiggers") };
        assert_eq!(text, "2 oz jigger filled to 1½ oz; 1 oz jigger filled to ¼ oz");
        let holds = |of: &Filled, height| of.vessel.ml_to(height) / Volume::US_FLUID_OUNCE.ml();
        let fills: Vec<[f64; 2]> =
            vessels.iter().map(|one| [holds(one, one.vessel.height()), holds(one, one.level)]).collect();
        for (fill, expected) in fills.iter().flatten().zip([2.0, 1.5, 1.0, 0.25]) {
            assert!((fill - expected).abs() < 1e-6, "{fills:?}");
        }
        let Some(Picture::Vessels { text, vessels }) = drawn(4.0) else { panic!("no jiggers") };
        assert_eq!((text.as_str(), vessels.len()), ("2 oz jigger full, 2 times", 2));
        // A barspoon is no jigger, and six are more than there is room for.
        assert_eq!((drawn(0.17), drawn(12.0)), (None, None));
    }
}
