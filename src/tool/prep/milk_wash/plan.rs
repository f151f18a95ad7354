//! A wash, step by step.

use super::{Given, MilkWashForm, Worked};
use crate::book::{Allergen, Way, allergens_in};
use crate::quantity::Amount;
use crate::reading::from_spec::FromSpec;
use crate::reading::rows::amount_words;
use crate::screen::Bench;
use crate::screen::plan::{HOUR, MINUTE, Plan, Step};
use crate::substance::milk::CASEIN_CLOTS_AT;
use crate::text;

impl MilkWashForm {
    pub(super) fn steps(&self, worked: &Worked, bench: &Bench) -> Plan {
        let ml = |volume| amount_words(Amount::Volume(volume), bench);
        let milk = worked.kind.name.to_ascii_lowercase();
        let named: Vec<&str> = allergens_in(worked.kind.name).map(Allergen::name).collect();
        let declared = if named.is_empty() { String::new() } else { format!(": contains {}", named.join(", ")) };
        let gives = Some(Amount::Volume(self.comes_through(worked, bench).0));
        let mut steps = Vec::new();
        if !worked.mix.is_empty() {
            let mix = Step::work("mix", worked.mix.clone(), 10 * MINUTE);
            steps.push(mix.giving(Some(Amount::Volume(worked.to_mix))));
        }
        steps.extend([
            Step::work(
                "milk",
                format!("{} of {milk} into a vessel that holds {}", ml(worked.wash.milk), ml(worked.wash.together())),
                5 * MINUTE,
            ),
            Step::work("pour", format!("Pour {} of the drink over it, slowly", ml(worked.wash.drink)), 10 * MINUTE)
                .then_wait(45 * MINUTE)
                .read(),
            Step::work("filter", "Filter, the first runnings back through the curd", 20 * MINUTE).then_wait(2 * HOUR),
            Step::work("bottle", format!("Bottle and label it{declared}"), 10 * MINUTE).giving(gives),
            Step::chill(),
        ]);
        let notes = self.of_ph(bench).into_iter().collect();
        let needs = worked.needs.clone();
        Plan { title: "Milk wash".into(), steps, cut: worked.cut.clone(), notes, needs, ..Plan::default() }
    }

    /// The washed drink as a form of the spec that it is made of.
    pub(super) fn form(&self, worked: &Worked, bench: &Bench) -> Option<Box<Way>> {
        if self.known() != Given::Spec {
            return None;
        }
        let milk = format!("{} {}", bench.carried(worked.wash.milk), worked.kind.name.to_ascii_lowercase());
        // Without amounts, which its lines have: they are made for as many as one likes.
        let steps = "Mix the drink\nMilk into a vessel that holds both\nPour the drink over it, slowly, then rest 45 min\n\
            Filter, the first runnings back through the curd\nBottle and label it\nInto the cold 2 h";
        Some(Box::new(Way {
            name: "milk-washed".into(),
            lines: format!("{}\n{milk}", self.spec.trim_end()),
            method: "washed".into(),
            steps: steps.into(),
            makes: FromSpec::of(&self.from_spec, bench).map_or_else(String::new, |form| form.way().makes.clone()),
            gives: bench.carried(self.comes_through(worked, bench).0),
            ..Way::default()
        }))
    }

    /// What the pH says that drink and milk read together.
    pub(super) fn of_ph(&self, bench: &Bench) -> Option<String> {
        let ph = text::read_number(&self.ph, bench.decimal).ok()??;
        let (typed, limit) = (self.ph.trim(), text::plain(CASEIN_CLOTS_AT, 1, bench.decimal));
        Some(match ph <= CASEIN_CLOTS_AT {
            true => format!("Milk wash: at pH {typed} together the milk clots (casein, at {limit} or less)."),
            false => format!(
                "Milk wash: pH {typed} together is above {limit}, where casein clots: stir in dissolved citric acid, and read it again before you filter."
            ),
        })
    }
}
