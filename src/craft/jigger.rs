//! How to pour an amount with the jiggers a bar owns.
//!
//! A plan is a handful of pours, each to the brim or to a line. The search is exhaustive up
//! to [`MOST_POURS`], so "fewest" and "closest" are meant.

use crate::book::House;
use crate::quantity::Volume;

/// More pours than this and a jug is the better tool. Common practice, no source.
pub const MOST_POURS: u32 = 6;
/// An error nobody tastes in one line of a drink: 2.5 %. Common practice, no source.
pub const TOLERANCE: f64 = 0.025;
/// An error nobody can pour to: 0.2 %.
const EXACT: f64 = 0.002;
/// A plan further off than this is no help: a quarter.
const WORTH_SAYING: f64 = 0.25;
/// Extra pours worth making to hit an amount exactly.
const POURS_FOR_EXACT: u32 = 2;
/// Barspoons anybody will count out beside jiggers.
const MOST_BARSPOONS: u32 = 2;

/// Different measures that are searched, largest first: more than any bar owns, few enough to
/// try every set of six pours while a person types.
const MOST_MEASURES: usize = 24;

/// What is poured with.
#[derive(Clone, Debug, PartialEq)]
pub enum Vessel {
    /// A mark of a jigger, by its label.
    Jigger(String),
    /// The barspoon.
    Barspoon,
    /// The dasher.
    Dash,
}

/// The same measure poured a number of times.
#[derive(Clone, Debug, PartialEq)]
pub struct Pour {
    /// With what.
    pub vessel: Vessel,
    /// What it holds.
    pub volume: Volume,
    /// How often.
    pub times: u32,
}

/// A way to pour an amount.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// Largest measure first.
    pub pours: Vec<Pour>,
    /// What the pours come to.
    pub total: Volume,
    /// What was wanted.
    pub wanted: Volume,
}

impl Plan {
    /// How many pours in all.
    #[must_use]
    pub fn count(&self) -> u32 {
        self.pours.iter().map(|pour| pour.times).sum()
    }

    /// What is poured minus what was wanted, in millilitres.
    #[must_use]
    pub fn error_ml(&self) -> f64 {
        self.total.ml() - self.wanted.ml()
    }

    /// [`Plan::error_ml`] as a fraction of what was wanted.
    #[must_use]
    pub fn error(&self) -> f64 {
        self.error_ml() / self.wanted.ml()
    }

    /// Whether no hand could pour the difference (0.2 %).
    #[must_use]
    pub fn is_exact(&self) -> bool {
        self.error().abs() <= EXACT
    }

    /// Whether the difference stays within [`TOLERANCE`].
    #[must_use]
    pub fn is_close(&self) -> bool {
        self.error().abs() <= TOLERANCE
    }
}

/// The best plan for `wanted`: exact if that costs at most two pours more than being close,
/// else the fewest pours that are close, else the closest there is within a quarter.
///
/// None when nothing comes that close or it would take more than [`MOST_POURS`].
#[must_use]
pub fn plan(wanted: Volume, house: &House) -> Option<Plan> {
    let measures = Measures::of(house);
    let largest = measures.0.first().map_or(Volume::ZERO, |(volume, _)| *volume);
    let reach = largest.ml().max(house.conventions.barspoon.ml());
    if wanted <= Volume::ZERO || wanted.ml() > f64::from(MOST_POURS) * reach * (1.0 + TOLERANCE) {
        return None;
    }
    let mut plans: Vec<Plan> = (0..=MOST_BARSPOONS).flat_map(|spoons| measures.plans(wanted, house, spoons)).collect();
    plans.extend(dashes(wanted, house));
    let fewest = |plans: &[Plan], good: fn(&Plan) -> bool| {
        plans
            .iter()
            .filter(|plan| good(plan))
            .min_by(|a, b| a.count().cmp(&b.count()).then(a.error().abs().total_cmp(&b.error().abs())))
            .cloned()
    };
    let close = fewest(&plans, Plan::is_close);
    let exact = fewest(&plans, Plan::is_exact);
    match (close, exact) {
        (Some(close), Some(exact)) if exact.count() <= close.count() + POURS_FOR_EXACT => Some(exact),
        (Some(close), _) => Some(close),
        (None, _) => plans
            .into_iter()
            .min_by(|a, b| {
                // Half a percent of difference is worth a pour.
                let cost = |plan: &Plan| plan.error().abs() + 0.005 * f64::from(plan.count());
                cost(a).total_cmp(&cost(b))
            })
            .filter(|plan| plan.error().abs() <= WORTH_SAYING),
    }
}

/// The different measures of a bar's jiggers, largest first, with their labels.
struct Measures(Vec<(Volume, String)>);

impl Measures {
    fn of(house: &House) -> Measures {
        let mut measures: Vec<(Volume, String)> = Vec::new();
        for mark in house.marks().filter(|mark| mark.volume > Volume::ZERO) {
            let at = measures.partition_point(|(larger, _)| larger.ml() > mark.volume.ml() + 1e-3);
            let known = measures.get(at).is_some_and(|(volume, _)| (volume.ml() - mark.volume.ml()).abs() <= 1e-3);
            if !known {
                measures.insert(at, (mark.volume, mark.label.clone()));
            }
        }
        measures.truncate(MOST_MEASURES);
        Measures(measures)
    }

    /// For each number of jigger pours, the closest plan that has `spoons` barspoons beside them.
    fn plans(&self, wanted: Volume, house: &House, spoons: u32) -> Vec<Plan> {
        let jiggered = wanted.ml() - house.conventions.barspoon.ml() * f64::from(spoons);
        let mut closest = vec![(i64::MAX, Vec::new()); (MOST_POURS - spoons + 1) as usize];
        self.search((0, jiggered, WORTH_SAYING * wanted.ml()), &mut Vec::new(), &mut closest);
        // One without pours is too far off to be taken.
        closest.into_iter().map(|(_, pours)| self.plan_of(&pours, spoons, wanted, house)).collect()
    }

    /// Tries every set of pours, larger measures first, and keeps the closest of each length.
    /// Between equals, to a hundredth of a millilitre, the one with the larger measures stays. What would still be short by
    /// more than `short` is not gone into: many lines are worked out at a keystroke.
    #[allow(clippy::cast_possible_truncation)]
    fn search(
        &self,
        (from, left, short): (usize, f64, f64),
        pours: &mut Vec<usize>,
        closest: &mut [(i64, Vec<usize>)],
    ) {
        let off = (left.abs() * 100.0).round() as i64;
        if off < closest[pours.len()].0 {
            closest[pours.len()] = (off, pours.clone());
        }
        if pours.len() + 1 == closest.len() {
            return;
        }
        // Nothing is gained by pouring past the mark by more than the smallest measure.
        let past = self.0.last().map_or(0.0, |(smallest, _)| smallest.ml());
        let more = (closest.len() - 1 - pours.len()) as f64;
        for (index, (volume, _)) in self.0.iter().enumerate().skip(from) {
            if left - more * volume.ml() > short {
                return;
            }
            if volume.ml() <= left + past {
                pours.push(index);
                self.search((index, left - volume.ml(), short), pours, closest);
                pours.pop();
            }
        }
    }

    fn plan_of(&self, pours: &[usize], spoons: u32, wanted: Volume, house: &House) -> Plan {
        let mut listed: Vec<Pour> = Vec::new();
        for (index, (volume, label)) in self.0.iter().enumerate() {
            let times = u32::try_from(pours.iter().filter(|pour| **pour == index).count()).unwrap_or(0);
            if times > 0 {
                listed.push(Pour { vessel: Vessel::Jigger(label.clone()), volume: *volume, times });
            }
        }
        if spoons > 0 {
            listed.push(Pour { vessel: Vessel::Barspoon, volume: house.conventions.barspoon, times: spoons });
        }
        plan_from(listed, wanted)
    }
}

fn plan_from(pours: Vec<Pour>, wanted: Volume) -> Plan {
    let total = pours.iter().flat_map(|pour| (0..pour.times).map(|_| pour.volume)).sum();
    Plan { pours, total, wanted }
}

/// Whole dashes, for amounts that small.
fn dashes(wanted: Volume, house: &House) -> Option<Plan> {
    let dash = house.conventions.dash;
    (1..=MOST_POURS)
        .map(|times| plan_from(vec![Pour { vessel: Vessel::Dash, volume: dash, times }], wanted))
        .min_by(|a, b| a.error().abs().total_cmp(&b.error().abs()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::book::{Jigger, Mark};
    use crate::quantity::{Conventions, Ratio, Unit};
    use crate::substance::energy::StandardDrink;

    fn house(cups: &[&[(&str, f64)]]) -> House {
        let mark = |(label, ml): &(&str, f64)| Mark {
            label: (*label).to_owned(),
            volume: Volume::from_ml(*ml).expect("a volume"),
        };
        House {
            conventions: Conventions::default(),
            usual_unit: Unit::Millilitre,
            jiggers: cups
                .iter()
                .map(|cup| Jigger { brim: mark(&cup[0]), lines: cup[1..].iter().map(mark).collect() })
                .collect(),
            region: StandardDrink::default(),
            citrus: crate::substance::juice::Citrus::default(),
        }
    }

    fn ounces(n: f64) -> Volume {
        Volume::US_FLUID_OUNCE * Ratio::from_value(n).expect("a factor")
    }

    fn ounce_house() -> House {
        let oz = Volume::US_FLUID_OUNCE.ml();
        house(&[
            &[("2 oz", 2.0 * oz), ("1½ oz", 1.5 * oz)],
            &[("1 oz", oz), ("¼ oz", oz / 4.0), ("½ oz", oz / 2.0), ("¾ oz", oz * 0.75)],
        ])
    }

    #[track_caller]
    fn poured(wanted: Volume, house: &House, expected: &str) {
        let plan = plan(wanted, house).expect("a plan");
        let words: Vec<String> = plan
            .pours
            .iter()
            .map(|pour| match &pour.vessel {
                Vessel::Jigger(label) => format!("{}×{label}", pour.times),
                Vessel::Barspoon => format!("{}×bsp", pour.times),
                Vessel::Dash => format!("{}×dash", pour.times),
            })
            .collect();
        assert_eq!(words.join(" + "), expected);
    }

    #[test]
    fn fewest_exact_pours() {
        let house = ounce_house();
        poured(ounces(1.75), &house, "1×1½ oz + 1×¼ oz");
        poured(ounces(2.0), &house, "1×2 oz");
        poured(ounces(4.0), &house, "2×2 oz");
        poured(ounces(2.25), &house, "1×2 oz + 1×¼ oz");
        poured(Volume::from_ml(1.6).expect("ml"), &house, "2×dash");
        poured(Volume::whole_ml(5), &house, "1×bsp");
        poured(Volume::whole_ml(3), &house, "4×dash");
        poured(Volume::from_ml(2.3).expect("ml"), &house, "3×dash");
    }

    #[test]
    fn close_when_exact_would_take_too_many() {
        poured(Volume::whole_ml(50), &ounce_house(), "1×1½ oz + 1×bsp");
        poured(Volume::whole_ml(45), &house(&[&[("25 ml", 25.0), ("20 ml", 20.0)]]), "1×25 ml + 1×20 ml");
    }

    /// 60 is 3 × 20 and nearly 61: two pours more are worth it. 80 is 4 × 20 and nearly 81: three are not.
    #[test]
    fn two_more_pours_for_an_exact_one() {
        poured(Volume::whole_ml(60), &house(&[&[("61", 61.0)], &[("20", 20.0)]]), "3×20");
        poured(Volume::whole_ml(80), &house(&[&[("81", 81.0)], &[("20", 20.0)]]), "1×81");
        // 2 % over is close, and stands back for what is exact with as many pours.
        let both = house(&[&[("20.4", 20.4)], &[("20", 20.0)]]);
        poured(Volume::whole_ml(20), &both, "1×20");
        assert_eq!(plan(Volume::whole_ml(60), &both).expect("a plan").count(), 3);
    }

    /// With nothing close, a pour is worth half a percent: 4 % in one goes before 3.7 in two, 4 in two before 5 in one.
    #[test]
    fn as_near_as_it_gets() {
        let without_spoon = |cups: &[&[(&str, f64)]]| {
            let mut house = house(cups);
            house.conventions.barspoon = Volume::whole_ml(500);
            house
        };
        let wanted = Volume::whole_ml(100);
        poured(wanted, &without_spoon(&[&[("96", 96.0)], &[("48", 48.15)]]), "1×96");
        poured(wanted, &without_spoon(&[&[("95", 95.0)], &[("48", 48.0)]]), "2×48");
        // Past the mark by less than the smallest measure: 11 is nearer than 10.
        poured(Volume::from_ml(10.6).expect("ml"), &without_spoon(&[&[("10", 10.0)], &[("1", 1.0)]]), "1×10 + 1×1");
    }

    /// Six of the largest reach 360 ml, and 2.5 % over that is close to them: 369. More is for a jug.
    #[test]
    fn six_pours_at_most() {
        let house = house(&[&[("60", 60.0)]]);
        poured(Volume::whole_ml(360), &house, "6×60");
        poured(Volume::whole_ml(368), &house, "6×60");
        assert_eq!(plan(Volume::whole_ml(370), &house), None);
        // Six of 50 and 2.5 % are 307.5 to the last digit.
        poured(Volume::from_ml(307.5).expect("ml"), &self::house(&[&[("50", 50.0)]]), "6×50");
        assert_eq!(plan(Volume::whole_ml(400), &house), None);
    }

    /// A measure written on two jiggers, to a thousandth of a millilitre, is one; an empty one is none.
    #[test]
    fn measures_are_told_apart() {
        let house = house(&[
            &[("30", 30.0), ("10", 10.0)],
            &[("30 again", 30.000_5), ("0", 0.0)],
            &[("45", 45.0), ("30", 30.0)],
        ]);
        let labels: Vec<String> = Measures::of(&house).0.into_iter().map(|(_, label)| label).collect();
        assert_eq!(labels, ["45", "30", "10"]);
    }

    #[test]
    fn a_jug_for_the_rest() {
        assert_eq!(plan(Volume::whole_ml(750), &ounce_house()), None);
        assert_eq!(plan(Volume::ZERO, &ounce_house()), None);
        assert_eq!(plan(Volume::whole_ml(60), &house(&[])), None);
        assert_eq!(plan(Volume::whole_ml(30), &house(&[])), None);
        assert_eq!(plan(Volume::from_ml(0.1).expect("ml"), &ounce_house()), None);
    }
}
