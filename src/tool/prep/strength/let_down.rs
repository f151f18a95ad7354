//! Water to let a spirit down.

use super::{BOTTLE, CutBy, FLAMMABLE, FROM, SPIRIT, StrengthForm, TO};
use crate::craft::strength::{Cut, cut, cut_to_fill};
use crate::quantity::{Abv, Amount, Temperature, Volume};
use crate::screen::pad::unit_typed;
use crate::screen::route::Route;
use crate::screen::{Answer, Bench, Problem, Strip, Tone};
use crate::substance::ethanol;
use crate::text::{self, Dimension};

impl StrengthForm {
    pub(super) fn let_down(&self, mut answer: Answer, bench: &Bench) -> Answer {
        let problems = &mut answer.problems;
        let from = bench.strength(FROM, &self.from, problems);
        let to = bench.strength(TO, &self.to, problems);
        let amount = match self.cut_by() {
            CutBy::Spirit => bench.amount(SPIRIT, &self.spirit, Dimension::Either, problems),
            CutBy::Bottle => bench.volume(BOTTLE, &self.bottle, problems).map(Amount::Volume),
        };
        let (Some(amount), Some(from), Some(to)) = (amount, from, to) else {
            return answer.without_answer("Type how much, its strength, and the strength wanted.");
        };
        let volume = match amount {
            Amount::Mass(mass) => {
                let density = ethanol::density(ethanol::mass_fraction(from), Temperature::TWENTY);
                density.map_or(Volume::ZERO, |density| mass.volume_at(density))
            }
            Amount::Volume(volume) => volume,
            Amount::Count(_) => Volume::ZERO,
        };
        let made = match self.cut_by() {
            CutBy::Spirit => cut(volume, from, to).map(|made| (volume, made)),
            CutBy::Bottle => cut_to_fill(volume, from, to),
        };
        match made {
            Ok((spirit, made)) => self.show_cut(answer, spirit, &made, (from, to), bench),
            Err(problem) => {
                answer.problems.push(Problem::new(TO, problem));
                answer.without_answer("")
            }
        }
    }

    fn show_cut(
        &self,
        mut answer: Answer,
        spirit: Volume,
        made: &Cut,
        (from, to): (Abv, Abv),
        bench: &Bench,
    ) -> Answer {
        let ml = |volume| text::litres_or_ml(volume, bench.decimal);
        let water = bench.grams_of(made.water, "water");
        let percent = text::percent(to.fraction(), bench.decimal);
        let mut figures = vec![water];
        if self.cut_by() == CutBy::Bottle {
            figures.insert(0, bench.headline_of(spirit, "spirit", unit_typed(&self.bottle)));
        }
        answer.strip = Strip {
            figures,
            also: format!("Weighed, or {} at 20 °C", ml(made.water_volume)),
            below: format!("Makes {} at {percent} vol", ml(made.total)),
            tone: Tone::Answer,
            ..Strip::default()
        };
        answer.cells_title = "Letting it down";
        if self.cut_by() == CutBy::Spirit {
            answer.cell("spirit", ml(spirit));
        }
        answer.explained("lost to contraction", text::millilitres(made.contraction, bench.decimal),
            "Spirit and water draw together: what they make is less than the two poured. Weighing is exact whatever the temperature.");
        let naive = spirit.ml() * (from.fraction() / to.fraction() - 1.0);
        let naive = Volume::from_ml(naive.max(0.0)).map(ml);
        if let Ok(naive) = naive {
            answer.explained("by volumes alone", naive,
                "The usual sum, volume × strength ÷ strength, leaves contraction out: too little water for strong spirit.");
        }
        if from.fraction() >= FLAMMABLE {
            answer.cautions.push("Spirit this strong catches fire easily: no flame near it.".into());
        }
        answer
            .remarks
            .push("OIML R 22 (1975), by mass. A liqueur's sugar is not allowed for here: put it in Blend.".into());
        answer.carry("Share it out in serves", Route::Serves.href_with("made", &bench.carried(made.total)));
        answer
    }
}
