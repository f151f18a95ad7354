//! A batch, step by step.

use super::drink::{Drink, Part};
use super::{BottleItForm, Water};
use crate::book::{Own, Way};
use crate::craft::serves::Bottling;
use crate::quantity::{Amount, Mass};
use crate::reading::from_spec::FromSpec;
use crate::reading::rows::{amount_words, line_of};
use crate::reading::{named, origin};
use crate::screen::Bench;
use crate::screen::plan::{MINUTE, Need, Plan, Step};
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
            let parts = drink.parts.iter().zip(scale_reads(drink, bench)).filter(|(part, _)| part.is_last == is_last);
            let words = |(part, reads): (&Part, String)| {
                format!("{} {} ({reads})", amount_words(part.amount, bench), part.name)
            };
            parts.map(words).collect::<Vec<_>>().join(", ")
        };
        let mut steps = vec![Step::work("mix", format!("Onto one scale: {}", list(false)), 10 * MINUTE)];
        let last = list(true);
        if !last.is_empty() {
            steps.push(Step::work("last", format!("Last, fresh: {last}"), 5 * MINUTE));
        }
        let words = format!("{}; label", filling(drink, bench));
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

/// How the bottles are filled: "Fill 2 bottles of 700 ml with 679 ml each, the third with 380 ml".
pub(super) fn filling(drink: &Drink, bench: &Bench) -> String {
    let Bottling { bottles, full, last, .. } = drink.bottling;
    let [full, rest] = [full, last].map(|volume| text::litres_or_ml(volume, bench.decimal));
    let is_all_full = last >= drink.bottling.full;
    let (count, first) = match bottles {
        1 => (1, rest.clone()),
        _ => (if is_all_full { bottles } else { bottles - 1 }, full),
    };
    let each = if count > 1 { " each" } else { "" };
    let which = match count {
        1 => "the second",
        2 => "the third",
        _ => "one more",
    };
    let more = if count < bottles { format!(", {which} with {rest}") } else { String::new() };
    format!("Fill {} with {first}{each}{more}", BottleItForm::bottles(drink, count, "", bench))
}

/// What the scale shows when each line is in.
pub(super) fn scale_reads(drink: &Drink, bench: &Bench) -> Vec<String> {
    let mut on_scale = Mass::ZERO;
    let reads = |part: &Part| {
        on_scale = on_scale + part.mix.mass();
        match part.mix.mass() > Mass::ZERO {
            true => format!("scale reads {}", bench.weighed(on_scale, text::grams(on_scale, 0, bench.decimal))),
            false => "by the piece".into(),
        }
    };
    drink.parts.iter().map(reads).collect()
}
