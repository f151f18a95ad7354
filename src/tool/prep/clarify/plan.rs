//! Clearing, step by step.

use super::{ClarifyForm, Worked};
use crate::craft::clarify::Method;
use crate::quantity::{Amount, Temperature};
use crate::screen::Bench;
use crate::screen::plan::{HOUR, MINUTE, Need, Plan, Step, titled};
use crate::text;

impl ClarifyForm {
    pub(super) fn steps(&self, worked: &Worked, bench: &Bench) -> Plan {
        let juice = text::grams(worked.juice.mass, 0, bench.decimal);
        let name = worked.fruit.name;
        let gives = Some(Amount::Volume(worked.clear.volume));
        let dose = |at: usize| {
            worked.doses.get(at).map_or_else(String::new, |(what, mass)| bench.grams_of(*mass, what).to_string())
        };
        let steps = match self.method() {
            Method::Enzyme => vec![
                Step::work("blend", format!("Blend {} into {juice} of {name}, 1 min", dose(0)), 5 * MINUTE)
                    .then_wait(self.rest(bench)),
                Step::work("filter", "Filter through paper", 10 * MINUTE).then_wait(HOUR).giving(gives),
            ],
            Method::Agar => vec![
                Step::work("boil", format!("Boil {} in {}, 2 min", dose(0), dose(1)), 8 * MINUTE),
                Step::work("whisk", format!("Whisk {juice} of warm {name} juice in, by and by"), 5 * MINUTE)
                    .then_wait(45 * MINUTE),
                Step::work("drain", "Break the gel gently, drain through a cloth", 5 * MINUTE)
                    .then_wait(45 * MINUTE)
                    .giving(gives),
            ],
            Method::Gelatin => vec![
                Step::work("melt", format!("Melt {} into {juice} of {name} juice", dose(0)), 15 * MINUTE),
                Step::work("freeze", "Freeze it whole", 5 * MINUTE).then_wait(12 * HOUR),
                Step::work("thaw", "Thaw over a cloth in the cold", 5 * MINUTE).then_wait(36 * HOUR).giving(gives),
            ],
            Method::Rest => vec![
                Step::work("rest", format!("Rest {juice} of {name} juice, cold and still"), 5 * MINUTE)
                    .then_wait(16 * HOUR),
                Step::work("rack", "Rack the clear juice off", 10 * MINUTE).giving(gives),
            ],
        };
        let how = match self.method() {
            Method::Rest => "rested",
            Method::Enzyme => "cleared with enzyme",
            Method::Agar => "cleared with agar",
            Method::Gelatin => "cleared with gelatin",
        };
        let title = titled(format!("{name}, {how}"));
        let mut needs = vec![Need::given(&format!("{name} juice"), Amount::Mass(worked.juice.mass))];
        needs.extend(worked.doses.iter().map(|(what, mass)| Need::of(what, Amount::Mass(*mass))));
        let juice = worked.agar.map(|_| worked.litre);
        Plan { title, steps, density: worked.litre.density(Temperature::TWENTY).ok(), juice, needs, ..Plan::default() }
    }

    /// How long enzyme rests: longer in the cold. Common practice, no source.
    fn rest(&self, bench: &Bench) -> u32 {
        let is_cold = bench
            .temperature("", &self.enzyme_at, (0.0, 95.0), &mut Vec::new())
            .is_some_and(|at| at.celsius() < crate::craft::clarify::ENZYME_COLD);
        if is_cold { 12 * HOUR } else { 45 * MINUTE }
    }
}
