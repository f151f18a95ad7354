//! How to pour an amount with the jiggers a bar owns.
//!
//! A plan is a handful of pours, each to the brim or to a line. The search is exhaustive up
//! to [`MOST_POURS`], so "fewest" and "closest" are meant.

use std::collections::BTreeMap;

use crate::book::House;
use crate::quantity::Volume;

/// More pours than this and a jug is the better tool. Common practice, no source.
pub const MOST_POURS: u32 = 6;
/// An error nobody tastes in one line of a drink: 2.5 %. Common practice, no source.
pub const TOLERANCE: f64 = 0.025;
/// An error nobody can pour to: 0.2 %.
const EXACT: f64 = 0.002;
/// Extra pours worth making to hit an amount exactly.
const POURS_FOR_EXACT: u32 = 2;
/// Barspoons anybody will count out beside jiggers.
const MOST_BARSPOONS: u32 = 2;

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
/// else the fewest pours that are close, else the closest there is.
///
/// None when nothing can be poured or it would take more than [`MOST_POURS`].
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
        (None, _) => plans.into_iter().min_by(|a, b| {
            // Half a percent of difference is worth a pour.
            let cost = |plan: &Plan| plan.error().abs() + 0.005 * f64::from(plan.count());
            cost(a).total_cmp(&cost(b))
        }),
    }
}

/// The different measures of a bar's jiggers, largest first, with their labels.
struct Measures(Vec<(Volume, String)>);

impl Measures {
    fn of(house: &House) -> Measures {
        let mut measures: Vec<(Volume, String)> = house
            .marks()
            .filter(|mark| mark.volume > Volume::ZERO)
            .map(|mark| (mark.volume, mark.label.clone()))
            .collect();
        measures.sort_by(|a, b| b.0.ml().total_cmp(&a.0.ml()));
        measures.dedup_by(|a, b| (a.0.ml() - b.0.ml()).abs() < 1e-3);
        Measures(measures)
    }

    /// For each number of jigger pours, the closest plan that has `spoons` barspoons beside them.
    fn plans(&self, wanted: Volume, house: &House, spoons: u32) -> Vec<Plan> {
        let spooned = house.conventions.barspoon.ml() * f64::from(spoons);
        let jiggered = wanted.ml() - spooned;
        let limit = jiggered + self.0.last().map_or(0.0, |(volume, _)| volume.ml());
        let mut plans = Vec::new();
        let mut sums: BTreeMap<i64, Vec<usize>> = BTreeMap::from([(0, Vec::new())]);
        for poured in 0..=MOST_POURS - spoons {
            if poured > 0 {
                sums = self.one_pour_more(&sums, limit);
            }
            let closest =
                sums.iter().min_by(|a, b| (as_ml(*a.0) - jiggered).abs().total_cmp(&(as_ml(*b.0) - jiggered).abs()));
            if let Some((_, pours)) = closest.filter(|_| poured + spoons > 0) {
                plans.push(self.plan_of(pours, spoons, wanted, house));
            }
        }
        plans
    }

    /// All sums of one pour more, each kept once: the first way found, which prefers large measures.
    fn one_pour_more(&self, sums: &BTreeMap<i64, Vec<usize>>, limit: f64) -> BTreeMap<i64, Vec<usize>> {
        let mut longer = BTreeMap::new();
        for (sum, pours) in sums {
            for (index, (volume, _)) in self.0.iter().enumerate() {
                let total = sum + as_key(volume.ml());
                if as_ml(total) <= limit {
                    longer.entry(total).or_insert_with(|| pours.iter().copied().chain([index]).collect());
                }
            }
        }
        longer
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

/// Sums are told apart to a thousandth of a millilitre.
#[allow(clippy::cast_possible_truncation)]
fn as_key(ml: f64) -> i64 {
    (ml * 1000.0).round() as i64
}

#[allow(clippy::cast_precision_loss)]
fn as_ml(key: i64) -> f64 {
    key as f64 / 1000.0
}

/// Whole dashes, for amounts that small.
fn dashes(wanted: Volume, house: &House) -> Option<Plan> {
    let dash = house.conventions.dash;
    (1..=MOST_POURS)
        .map(|times| plan_from(vec![Pour { vessel: Vessel::Dash, volume: dash, times }], wanted))
        .min_by(|a, b| a.error().abs().total_cmp(&b.error().abs()))
        .filter(Plan::is_close)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::book::{DrinkRegion, Jigger, Mark};
    use crate::quantity::{Conventions, Ratio, Unit};

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
            region: DrinkRegion::default(),
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
    }

    #[test]
    fn close_when_exact_would_take_too_many() {
        poured(Volume::whole_ml(50), &ounce_house(), "1×1½ oz + 1×bsp");
        poured(Volume::whole_ml(45), &house(&[&[("25 ml", 25.0), ("20 ml", 20.0)]]), "1×25 ml + 1×20 ml");
    }

    #[test]
    fn a_jug_for_the_rest() {
        assert_eq!(plan(Volume::whole_ml(750), &ounce_house()), None);
        assert_eq!(plan(Volume::ZERO, &ounce_house()), None);
        assert_eq!(plan(Volume::whole_ml(60), &house(&[])), None);
    }
}
