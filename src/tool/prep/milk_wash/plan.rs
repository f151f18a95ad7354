//! A wash, step by step.

use super::{MilkWashForm, Worked};
use crate::book::{Allergen, allergens_in};
use crate::quantity::Amount;
use crate::screen::Bench;
use crate::screen::plan::{HOUR, MINUTE, Plan, Step};
use crate::text;

impl MilkWashForm {
    pub(super) fn steps(&self, worked: &Worked, bench: &Bench) -> Plan {
        let ml = |volume| text::litres_or_ml(volume, bench.decimal);
        let milk = worked.kind.name.to_ascii_lowercase();
        let named: Vec<&str> = allergens_in(worked.kind.name).map(Allergen::name).collect();
        let declared = if named.is_empty() { String::new() } else { format!(": contains {}", named.join(", ")) };
        let gives = Some(Amount::Volume(self.comes_through(worked, bench).0));
        let steps = vec![
            Step::work(
                "milk",
                format!("{} of {milk} into a vessel that holds {}", ml(worked.wash.milk), ml(worked.wash.together())),
                5 * MINUTE,
            ),
            Step::work("pour", format!("Pour {} of the drink over it, slowly", ml(worked.wash.drink)), 10 * MINUTE)
                .then_wait(45 * MINUTE),
            Step::work("filter", "Filter, the first runnings back through the curd", 20 * MINUTE).then_wait(2 * HOUR),
            Step::work("bottle", format!("Bottle and label it{declared}"), 10 * MINUTE).giving(gives),
        ];
        Plan { title: "Milk wash".into(), steps, ..Plan::default() }
    }
}
