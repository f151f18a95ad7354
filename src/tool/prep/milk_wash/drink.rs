//! The drink that is washed, from its lines: as often as the juice that came for it allows, and with what that reads.

use super::{MilkWashForm, SPEC};
use crate::book::{Allergen, Ask, Line, Measured, Taken};
use crate::craft::pour::pour;
use crate::quantity::{Acidity, Amount, Brix, Mass, Ratio, Temperature, Volume};
use crate::reading::rows::{amount_words, line_words};
use crate::reading::{Content, Contents, allergens, asks};
use crate::screen::plan::{Cut, Need};
use crate::screen::{Bench, Problem};
use crate::substance::mix::Mix;
use crate::text::{self, Dimension};

/// A drink of a spec, as often as it is made.
pub(super) struct Drink {
    pub(super) mix: Mix,
    pub(super) volume: Volume,
    /// What goes in: "900 ml rye whiskey, 400 ml black tea".
    pub(super) parts: String,
    /// The same, each by itself.
    pub(super) needs: Vec<Need>,
    pub(super) cut: Option<Cut>,
    pub(super) allergens: Vec<Allergen>,
    pub(super) asks: Vec<Ask>,
}

impl MilkWashForm {
    pub(super) fn of_spec(&self, bench: &Bench, problems: &mut Vec<Problem>) -> Option<Drink> {
        let spec = Contents::of(&self.spec, bench);
        if let Some(name) = spec.missing.first() {
            problems.push(Problem::new(
                SPEC,
                format!("“{name}” is not counted: write it so that it can be, like 45 ml gin."),
            ));
        }
        if spec.mix.milk > Mass::ZERO {
            problems.push(Problem::new(SPEC, "Leave the milk out: it goes in by the ratio."));
        }
        let mut mix = Mix::default();
        let mut juice = Volume::ZERO;
        for (line, content) in spec.pairs() {
            let (Ok(line), Content::Poured(poured)) = (&line.read, content) else { continue };
            let came = line.taken.filter(|taken| taken.ingredient.key == self.came_of);
            let measured = came.and_then(|taken| pour(&self.as_it_came(taken, bench), line.amount));
            if came.is_some() {
                juice = juice + poured.volume(Temperature::TWENTY).unwrap_or(Volume::ZERO);
            }
            mix = mix + measured.unwrap_or(**poured);
        }
        let own = mix.volume(Temperature::TWENTY).ok().filter(|volume| *volume > Volume::ZERO)?;
        let came = bench.volume(SPEC, &self.came, problems);
        // Of the whole drink so much has come; or of a juice that goes into it, which is no reason to make more.
        let (times, short) = match came {
            Some(came) if self.came_of.is_empty() => (came.over(own)?, None),
            Some(came) => match came.over(juice).filter(|times| *times < Ratio::ONE) {
                Some(times) => (times, Some(came)),
                None => (Ratio::ONE, None),
            },
            None => (Ratio::ONE, None),
        };
        let ml = |volume| amount_words(Amount::Volume(volume), bench);
        let cut = short.map(|came| Cut {
            made: format!("{} of {} of the drink", ml(own * times), ml(own)),
            there: format!("{} of {}", ml(came), self.juice_name(&spec)),
            asked: ml(juice),
        });
        let lines = || spec.lines.iter().filter_map(|line| line.read.as_ref().ok());
        let parts: Vec<String> = lines().map(|line| line_words(line, times, bench)).collect();
        let is_given = |line: &Line| line.taken.is_some_and(|taken| taken.ingredient.key == self.came_of);
        let need = |line: &Line| Need { is_given: is_given(line), ..Need::of(&line.name, line.amount.times(times)) };
        let needs = lines().map(need).collect();
        let (allergens, asks) = (allergens(&spec.lines, bench), asks(&spec.lines, bench));
        Some(Drink { mix: mix * times, volume: own * times, parts: parts.join(", "), needs, cut, allergens, asks })
    }

    /// The juice that came, as it was measured.
    fn as_it_came(&self, taken: Taken, bench: &Bench) -> Taken {
        let read = |text: &str| text::read_number(text, bench.decimal).ok().flatten();
        let reads = read(&self.came_brix).and_then(|degrees| Brix::from_degrees(degrees).ok());
        let acid = read(&self.came_acid).and_then(|grams| Acidity::from_g_per_l(grams).ok());
        let Measured { reads: own_reads, acid: own_acid, .. } = taken.measured;
        let holds = text::read_figures(&self.came_holds, bench.decimal).holds.or(taken.measured.holds);
        let measured = Measured { reads: reads.or(own_reads), acid: acid.or(own_acid), holds, ..taken.measured };
        Taken { measured, ..taken }
    }

    /// What the lines call the juice that came.
    fn juice_name(&self, spec: &Contents) -> String {
        let mut lines = spec.lines.iter().filter_map(|line| line.read.as_ref().ok());
        let line = lines.find(|line| line.taken.is_some_and(|taken| taken.ingredient.key == self.came_of));
        line.map_or_else(|| "juice".to_owned(), |line| line.name.clone())
    }

    /// How much of the drink was mixed, where that was measured: a weight by what it weighs.
    pub(super) fn mixed(&self, drink: Option<&Mix>, bench: &Bench) -> Option<Volume> {
        let density = drink.and_then(|drink| drink.density(Temperature::TWENTY).ok());
        match text::read_amount(&self.mixed, &bench.reading(Dimension::Either)).ok()?? {
            Amount::Volume(volume) => Some(volume),
            Amount::Mass(mass) => Some(mass.volume_at(density.unwrap_or(crate::quantity::Density::WATER))),
            Amount::Count(_) => None,
        }
    }
}
