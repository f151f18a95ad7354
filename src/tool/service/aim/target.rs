//! Where a drink should be: as typed, as another is, or a step from where it is.

use super::shown::{list, said};
use super::{ACID, AimForm, RATIO, SERVE, STRENGTH, SUGAR, Taste};
use crate::craft::aim::{Of, Target, stands};
use crate::quantity::{Ratio, Volume};
use crate::reading::from_spec;
use crate::screen::{Bench, Fix, Problem};
use crate::substance::mix::Mix;

/// A step that is tasted: of sugar to acid by its own, a quarter (of sourness people tell 0.26, as of thickness:
/// S. Camacho et al., J. Food Science 80 (2015), doi 10.1111/1750-3841.12922); of strength, 2 % vol, and of size, a sixth:
/// common practice, no source.
const RATIO_STEP: f64 = 1.25;
const STRENGTH_STEP: f64 = 0.02;
const SIZE_STEP: f64 = 5.0 / 6.0;
impl AimForm {
    /// What is typed of where it should be: the field, the text, and of what.
    pub(super) fn aims(&self) -> impl Iterator<Item = (&'static str, &str, Of)> {
        let all = [
            (RATIO, &self.ratio, Of::SugarToAcid),
            (SUGAR, &self.sugar_aim, Of::Sugar),
            (ACID, &self.acid_aim, Of::Acid),
            (STRENGTH, &self.strength, Of::Strength),
            (SERVE, &self.serve, Of::Volume),
        ];
        let which = match self.taste() {
            Taste::Sharp | Taste::Sweet => 0..3,
            Taste::Weak | Taste::Strong => 3..4,
            Taste::Big => 4..5,
        };
        let all = all.into_iter().skip(which.start).take(which.len());
        all.map(|(field, text, of)| (field, text.trim(), of)).filter(|(_, text, _)| !text.is_empty())
    }

    /// That, read; none for a mistake, and where one contradicts the others.
    fn typed(&self, bench: &Bench, problems: &mut Vec<Problem>) -> Option<Vec<Target>> {
        let (mut typed, mut is_read) = (Vec::new(), true);
        for (field, text, of) in self.aims() {
            let value = match of {
                Of::Strength => bench.percent(field, text, 95, problems).map(Ratio::value),
                Of::Volume => bench.volume(field, text, problems).map(Volume::ml),
                _ => {
                    let side = text.split(':').next().unwrap_or_default();
                    bench.count(field, side, problems).map(Ratio::value)
                }
            };
            is_read &= value.is_some();
            typed.extend(value.map(|value| Target { of, value }));
        }
        if let [ratio, sugar, acid] = typed.as_slice() {
            let there = said(Of::SugarToAcid, sugar.value / acid.value, bench);
            if said(Of::SugarToAcid, ratio.value, bench) != there {
                let both = list(&typed[1..], bench);
                let fix = Fix { label: there.clone(), spoken: String::new(), text: there.clone() };
                let words = format!("{both}: that is {there}. Empty one of the three.");
                problems.push(Problem { fixes: vec![fix], ..Problem::new(RATIO, words) });
                return None;
            }
            typed.remove(0);
        }
        is_read.then_some(typed)
    }

    /// That what is typed makes worse what is wrong; none where it does not.
    pub(super) fn contrary(&self, aimed: &[Target], now: &Mix, bench: &Bench) -> Option<Problem> {
        let (field, ..) = self.aims().next()?;
        let (of, value) = match aimed {
            [] => return None,
            // Of both, how they stand to each other.
            [sugar, acid] if sugar.of == Of::Sugar => (Of::SugarToAcid, sugar.value / acid.value),
            [first, ..] => (first.of, first.value),
        };
        let (is_more, worse) = match self.taste() {
            Taste::Sharp => (true, "sharper"),
            Taste::Sweet => (false, "sweeter"),
            Taste::Weak => (true, "weaker"),
            Taste::Strong => (false, "stronger"),
            Taste::Big => (false, "bigger"),
        };
        let now = stands(now, of);
        let is_worse = (value < now) == (is_more != (of == Of::Acid));
        let there = said(of, now, bench);
        let words = || format!("That is {worse} than it is now, {there}.");
        (is_worse && said(of, value, bench) != there).then(|| Problem::new(field, words()))
    }

    /// Where it should be: as typed, else as it is in another, else a step from where it is; and that in words.
    pub(super) fn target(
        &self,
        now: &Mix,
        bench: &Bench,
        problems: &mut Vec<Problem>,
    ) -> Option<(Vec<Target>, String)> {
        let (of, step): (Of, &dyn Fn(f64) -> f64) = match self.taste() {
            Taste::Sharp => (Of::SugarToAcid, &|now| now * RATIO_STEP),
            Taste::Sweet => (Of::SugarToAcid, &|now| now / RATIO_STEP),
            Taste::Weak => (Of::Strength, &|now| (now + STRENGTH_STEP).min(0.95)),
            Taste::Strong => (Of::Strength, &|now| (now - STRENGTH_STEP).max(now / 2.0)),
            Taste::Big => (Of::Volume, &|now| now * SIZE_STEP),
        };
        let mut targets = self.typed(bench, problems)?;
        let is_typed = !targets.is_empty();
        if !is_typed {
            targets.push(Target { of, value: step(stands(now, of)) });
        }
        if self.like.is_empty() {
            let words = format!("To {}", list(&targets, bench));
            return Some((targets, words));
        }
        // What is typed goes first, and it is said.
        let name = from_spec::name_of(&self.like, bench);
        let like = self.like(bench).filter(|like| targets.iter().all(|target| stands(like, target.of) > 0.0));
        let like: Option<Vec<Target>> = like
            .map(|like| targets.iter().map(|target| Target { value: stands(&like, target.of), ..*target }).collect());
        let words = match &like {
            Some(like) if is_typed => format!("To {}, as typed; {name}: {}", list(&targets, bench), list(like, bench)),
            Some(like) => format!("To {}, as in {name}", list(like, bench)),
            None => format!("To {}; {name}: nothing to go by", list(&targets, bench)),
        };
        Some((like.filter(|_| !is_typed).unwrap_or(targets), words))
    }
}
