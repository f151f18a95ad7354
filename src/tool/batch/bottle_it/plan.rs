//! A batch, step by step.

use super::drink::{Drink, Part};
use super::{BottleItForm, Water};
use crate::book::{Own, Way};
use crate::quantity::Amount;
use crate::reading::from_spec::FromSpec;
use crate::reading::rows::{amount_words, line_of};
use crate::reading::{named, origin};
use crate::screen::plan::{MINUTE, Need, Plan, Step};
use crate::screen::{Bench, plural};
use crate::text;

impl BottleItForm {
    /// The batch as a form of the spec that it came from: its water is in it.
    pub(super) fn form(&self, drink: &Drink, bench: &Bench) -> Option<Box<Way>> {
        FromSpec::of(&self.from_spec, bench)?;
        let line = |part: &Part| line_of(part.amount, None, &part.name, bench);
        let lines: Vec<String> = drink.parts.iter().map(line).collect();
        let serves = drink.volume.over(drink.serve).map_or(1.0, |serves| serves.value().round());
        Some(Box::new(Way {
            name: "bottled".into(),
            lines: lines.join("\n"),
            method: "blended".into(),
            steps: "Onto one scale, all but the fresh juice\nThe fresh juice last\nFill the bottles, label them".into(),
            makes: text::editable(serves, bench.decimal),
            gives: bench.carried(drink.volume),
            ..Way::default()
        }))
    }

    /// The batch as an ingredient, with its water: worked out of what goes onto the scale; of what is washed with milk, all
    /// that comes through.
    pub(super) fn prep(&self, drink: &Drink, bench: &Bench) -> Box<Own> {
        let name = FromSpec::of(&self.from_spec, bench)
            .map_or_else(|| "house".into(), |form| named(&form.parts().0.value.name));
        let needs: Vec<Need> = drink.parts.iter().map(|part| Need::of(&part.name, part.amount)).collect();
        let made = (&drink.made, drink.volume);
        let mut prep = origin::prep(&format!("{name} batch"), origin::like(&drink.made), made, &needs, bench);
        if !drink.is_washed {
            prep.holds.clear();
        }
        prep
    }

    pub(super) fn plan(&self, drink: &Drink, bench: &Bench) -> Plan {
        let list = |is_last: bool| {
            let parts = drink.parts.iter().filter(|part| part.is_last == is_last);
            let words = |part: &Part| format!("{} {}", amount_words(part.amount, bench), part.name);
            parts.map(words).collect::<Vec<_>>().join(", ")
        };
        let mut steps = vec![Step::work("mix", format!("Onto one scale: {}", list(false)), 10 * MINUTE)];
        let last = list(true);
        if !last.is_empty() {
            steps.push(Step::work("last", format!("Last, fresh: {last}"), 5 * MINUTE));
        }
        let (count, size) = (drink.bottling.bottles, text::litres_or_ml(drink.size, bench.decimal));
        let most = if count > 1 { drink.bottling.full } else { drink.bottling.last };
        let full = text::litres_or_ml(most, bench.decimal);
        let words =
            format!("Fill {count} {} of {size}, {full} in each; label", plural(count as usize, "bottle", "bottles"));
        steps.push(Step::work("bottle", words, 10 * MINUTE).giving(Some(Amount::Volume(drink.volume))));
        if self.water() != Water::None {
            steps.push(Step::chill());
        }
        let needs = drink.parts.iter().filter(|part| part.name != "water");
        Plan {
            title: FromSpec::of(&self.from_spec, bench).map_or_else(|| "Bottled drink".into(), |form| form.name()),
            steps,
            density: drink.made.density(crate::quantity::Temperature::TWENTY).ok(),
            needs: needs.map(|part| Need::of(&part.name, part.amount)).collect(),
            ..Plan::default()
        }
    }
}
