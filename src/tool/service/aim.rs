//! Aim: a drink is too sharp; what mends it.

mod form;
mod ice;
mod shown;
#[cfg(test)]
mod tests;

use ice::Iced;
use shown::said;

use crate::book::{Kind, Taken, ingredient};
use crate::craft::aim::{Aimed, Of, Part, Target, aim, drink, stands};
use crate::craft::pour::pour;
use crate::quantity::{Amount, Ratio, Unit, Volume};
use crate::reading::chilled::SOURCE;
use crate::reading::{self, Content, Contents, counted_row, from_spec};
use crate::screen::pad::Keys;
use crate::screen::route::Route;
use crate::screen::{Answer, Bench, Block, Choice, Figure, Input, Problem, Strip, Tone, Tool, choice, form, plural};
use crate::substance::mix::Mix;
use crate::text;

/// What is wrong with it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Taste {
    /// More sugar to the acid.
    Sharp,
    /// Less.
    Sweet,
    /// More strength.
    Weak,
    /// Less.
    Strong,
    /// Less of it.
    Big,
}

choice! { Taste:
    Sharp = "sharp", "Too sharp";
    Sweet = "sweet", "Too sweet";
    Weak = "weak", "Too weak";
    Strong = "strong", "Too strong";
    Big = "big", "Too big";
}

/// By how much is put right.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum By {
    /// One line, wherever else that leads.
    One,
    /// Two, so that something else stays.
    Two,
}

choice! { By:
    One = "one", "By one line";
    Two = "two", "By two lines";
}

form! {
    /// What is typed.
    AimForm {
        /// What is wrong: a key of [`Taste`].
        taste = "sharp",
        /// The spec it came from, and which form of it: "id/0"; empty for none.
        from_spec = "",
        /// The spec, a line for each ingredient: one serve.
        spec = reading::EXAMPLE,
        /// Serves in the tin.
        serves = "1",
        /// Sugar to acid aimed at; empty for a step that is tasted.
        ratio = "",
        /// Strength aimed at, percent; as that.
        strength = "",
        /// A serve aimed at; as that.
        serve = "",
        /// The form of a spec that it should be like: "id/0"; empty for none.
        like = "",
        /// By how many lines: a key of [`By`].
        by = "one",
    }
}

const SPEC: &str = "spec";
const SERVES: &str = "serves";
const RATIO: &str = "ratio";
const STRENGTH: &str = "strength";
const SERVE: &str = "serve";

/// A step that is tasted: of sugar to acid by its own, a quarter (of sourness people tell 0.26, as of thickness:
/// S. Camacho et al., J. Food Science 80 (2015), doi 10.1111/1750-3841.12922); of strength, 2 % vol, and of size, a sixth:
/// common practice, no source.
const RATIO_STEP: f64 = 1.25;
const STRENGTH_STEP: f64 = 0.02;
const SIZE_STEP: f64 = 5.0 / 6.0;
/// What may be poured in though it is not in the spec: by its key in the library, and whether it is sweet or sour.
const OFFERED: [(&str, Of); 2] = [("simple-syrup", Of::Sugar), ("lemon-juice", Of::Acid)];
/// A part with so much sugar to its acid is sweet, and one with so little sour, already.
const IS_SWEET: f64 = 100.0;
const IS_SOUR: f64 = 5.0;
/// And it has at least so much of it, g/l.
const ENOUGH: [f64; 2] = [250.0, 15.0];
/// Ways that are shown.
const MOST: usize = 4;

/// A part: its name, and the unit it is written in.
struct Named {
    name: String,
    unit: Option<Unit>,
}

impl Tool for AimForm {
    fn layout(&self, bench: &Bench) -> Vec<Block> {
        let [from, others] = from_spec::fields(Route::Aim, &self.from_spec, Some(&self.spec), bench);
        let mut blocks = vec![
            Block::chips::<Taste>("taste", "What is wrong", false),
            from,
            others,
            Block::field(
                SPEC,
                "One serve, a line for each ingredient",
                Input::Lines { placeholder: reading::PLACEHOLDER },
            ),
            Block::amount(SERVES, "Serves in the tin", Keys::Count),
            match self.taste() {
                Taste::Sharp | Taste::Sweet => Block::amount(RATIO, "Sugar to acid, aim", Keys::Ratio),
                Taste::Weak | Taste::Strong => Block::amount(STRENGTH, "Strength, aim", Keys::Percent),
                Taste::Big => Block::amount(SERVE, "One serve, aim", Keys::Pour),
            },
        ];
        blocks.push(self.like_field(bench));
        if self.taste() != Taste::Big {
            blocks.push(Block::chips::<By>("by", "By how many lines", false));
        }
        blocks.push(Block::Pictures(Vec::new()));
        blocks.push(Block::Table("", Vec::new()));
        blocks
    }

    fn answer(&self, bench: &Bench) -> Answer {
        let mut answer = Answer::default();
        let read = Contents::of(&self.spec, bench);
        if read.lines.is_empty() {
            return answer.without_answer("Type or paste a spec, a line for each ingredient.");
        }
        let serves = bench.count(SERVES, &self.serves, &mut answer.problems);
        if !read.is_something() || read.whole().is_none() {
            answer.leads = read.not_counted();
            answer.rows_title = "What each line brings";
            answer.rows = read.pairs().map(|line| counted_row(line, &read.mix, bench)).collect();
            return answer.without_answer("Every line must be counted first: see below.");
        }
        let ice = self.ice(bench);
        let target = self.target(&ice.serve(&read.mix, Ratio::ONE), bench, &mut answer.problems);
        let (Some(serves), Some(target)) = (serves, target) else {
            return answer.without_answer("Type how many serves are in the tin.");
        };
        match self.taste() {
            Taste::Big => self.smaller(answer, &read, target, &ice),
            _ => self.aimed(answer, &read, target, serves, &ice),
        }
    }

    fn empty(&mut self) {
        self.spec.clear();
        self.ratio.clear();
        self.strength.clear();
        self.serve.clear();
    }

    fn take(&mut self, name: &str, text: &str) {
        if name == SPEC {
            text.clone_into(&mut self.spec);
        }
    }
}

impl AimForm {
    fn taste(&self) -> Taste {
        Taste::read(&self.taste)
    }

    /// Where it should be: as typed, else as it is in another, else a step from where it is.
    fn target(&self, now: &Mix, bench: &Bench, problems: &mut Vec<Problem>) -> Option<Target> {
        let (of, step): (Of, &dyn Fn(f64) -> f64) = match self.taste() {
            Taste::Sharp => (Of::SugarToAcid, &|now| now * RATIO_STEP),
            Taste::Sweet => (Of::SugarToAcid, &|now| now / RATIO_STEP),
            Taste::Weak => (Of::Strength, &|now| (now + STRENGTH_STEP).min(0.95)),
            Taste::Strong => (Of::Strength, &|now| (now - STRENGTH_STEP).max(now / 2.0)),
            Taste::Big => (Of::Volume, &|now| now * SIZE_STEP),
        };
        let typed = match of {
            Of::SugarToAcid if !self.ratio.trim().is_empty() => {
                let side = self.ratio.split(':').next().unwrap_or_default();
                Some(bench.count(RATIO, side, problems)?.value())
            }
            Of::Strength if !self.strength.trim().is_empty() => {
                Some(bench.percent(STRENGTH, &self.strength, 95, problems)?.value())
            }
            Of::Volume if !self.serve.trim().is_empty() => Some(bench.volume(SERVE, &self.serve, problems)?.ml()),
            _ => None,
        };
        let like = || self.like(bench).map(|like| stands(&like, of)).filter(|value| *value > 0.0);
        let value = typed.or_else(like).unwrap_or_else(|| step(stands(now, of)));
        Some(Target { of, value })
    }

    /// The lines as parts, and what may be poured in beside them.
    fn parts(read: &Contents, serves: Ratio) -> (Vec<Part>, Vec<Named>) {
        let (mut parts, mut names) = (Vec::new(), Vec::new());
        for (line, content) in read.pairs() {
            let (Ok(line), Content::Poured(mix)) = (&line.read, content) else { continue };
            let is_fixed = matches!(line.unit, Some(Unit::Dash | Unit::Drop))
                || line.taken.is_some_and(|taken| taken.ingredient.kind == Kind::Bitters);
            parts.push(Part { measure: **mix * serves, now: 1.0, is_fixed });
            names.push(Named { name: line.name.clone(), unit: line.unit });
        }
        let has = |of: Of| {
            parts.iter().any(|part| {
                let [sugar, acid] = [Of::Sugar, Of::Acid].map(|of| stands(&part.measure, of));
                if of == Of::Sugar {
                    sugar > ENOUGH[0] && sugar > acid * IS_SWEET
                } else {
                    acid > ENOUGH[1] && sugar < acid * IS_SOUR
                }
            })
        };
        let offered: Vec<&str> = OFFERED.into_iter().filter(|(_, of)| !has(*of)).map(|(key, _)| key).collect();
        for key in ["water"].into_iter().chain(offered) {
            let taken =
                ingredient(key).map(|ingredient| Taken { ingredient, measured: crate::book::Measured::default() });
            let Some((taken, mix)) =
                taken.and_then(|taken| Some((taken, pour(&taken, Amount::Volume(Volume::whole_ml(1)))?)))
            else {
                continue;
            };
            if taken.ingredient.kind == Kind::Water
                && parts.iter().any(|part| part.measure.mass() == part.measure.water)
            {
                continue;
            }
            parts.push(Part { measure: mix, now: 0.0, is_fixed: false });
            names.push(Named { name: key.replace('-', " "), unit: None });
        }
        (parts, names)
    }

    fn aimed(&self, mut answer: Answer, read: &Contents, target: Target, serves: Ratio, ice: &Iced<'_>) -> Answer {
        let bench = ice.bench;
        let (parts, names) = Self::parts(read, serves);
        let serve = |mix: &Mix| ice.serve(mix, serves);
        let now = serve(&drink(&parts, &[]));
        let mut targets = vec![target];
        if By::read(&self.by) == By::Two {
            let of = if target.of == Of::Strength { Of::Sugar } else { Of::Strength };
            targets.push(Target { of, value: stands(&now, of) });
        }
        let found = match aim(&parts, &targets, &serve) {
            Ok(found) => found,
            Err(problem) => return self.out_of_reach(answer, target, problem, bench),
        };
        // What is in the tin cannot be taken out of it.
        let adds = |hit: &Aimed| hit.to.iter().all(|(at, measures)| *measures >= parts[*at].now - 1e-9);
        let (more, less): (Vec<Aimed>, Vec<Aimed>) = found.into_iter().partition(adds);
        let first = more.first().or(less.first());
        let Some(first) = first else { return answer.without_answer("") };
        answer.form = Some(self.form(read, first, (&parts, &names), serves, bench));
        let steps = self.steps(first, &parts, &names, bench);
        let of = |(_, name, pour): &(Figure, String, String)| {
            if pour.is_empty() { name.clone() } else { format!("{name}: {pour}") }
        };
        let what: Vec<String> = steps.iter().map(of).collect();
        let count = serves.value().round() as usize;
        let many = match count {
            1 => String::new(),
            _ => format!(" for {} {}", text::count(serves.value(), bench.decimal), plural(count, "serve", "serves")),
        };
        answer.strip = Strip {
            figures: steps.iter().map(|(figure, ..)| figure.clone()).collect(),
            also: format!("{}{many}", what.join(", ")),
            below: match more.is_empty() {
                true => format!("To {}, next time: it cannot be taken out", said(target.of, target.value, bench)),
                false => format!("To {}", said(target.of, target.value, bench)),
            },
            tone: Tone::Answer,
            ..Strip::default()
        };
        let there = serve(&drink(&parts, &first.to));
        answer
            .pictures
            .push((format!("In each, before and after{}", ice.words()), Self::bars([&now, &there], target, bench)));
        answer.rows_title = "Ways to it";
        let row = |(hit, when): (&Aimed, &str)| self.row(hit, when, (&parts, &names), target, &serve, bench);
        let ways = more.iter().map(|hit| (hit, "")).chain(less.iter().map(|hit| (hit, "next time: ")));
        answer.rows = ways.take(MOST).map(row).collect();
        answer.remarks.push("Solved on what is in the drink by mass: exact, then as your jiggers pour it. Sugar and acid of juice vary more than that: taste.".into());
        answer.remarks.push(match ice.chilled {
            Some(_) => SOURCE.to_owned(),
            None => {
                "Before ice: choose a spec that says how it is chilled, and it is aimed at in the glass.".to_owned()
            }
        });
        answer.remarks.push("Without an aim of yours it is a step that people taste: a quarter more or less sugar to acid (sourness: Weber fraction near 0.26, S. Camacho et al., J. Food Science 80, 2015, of thickness, said to be alike), 2 % vol (rule of thumb).".into());
        answer.carry("Its balance", Route::Balance.href_with(SPEC, &self.spec));
        answer
    }

    /// Less of everything.
    fn smaller(&self, mut answer: Answer, read: &Contents, target: Target, ice: &Iced<'_>) -> Answer {
        let bench = ice.bench;
        let of = |times: f64| {
            let mix = Ratio::from_value(times).map_or(read.mix, |times| read.mix * times);
            stands(&ice.serve(&mix, Ratio::ONE), Of::Volume)
        };
        let now = of(1.0);
        let mut times = target.value / now;
        // A smaller drink takes up a little more water, of its size.
        for _ in 0..12 {
            times *= target.value / of(times);
        }
        answer.strip = Strip {
            figures: vec![Figure::new(text::plain(times, 2, bench.decimal), "of every line")],
            also: format!("{} in place of {}", said(Of::Volume, target.value, bench), said(Of::Volume, now, bench)),
            tone: Tone::Answer,
            ..Strip::default()
        };
        let volume = Volume::from_ml(stands(&read.mix, Of::Volume) * times).unwrap_or(Volume::ZERO);
        answer.form = Some(Self::smaller_form(read, times, bench));
        answer.carry("Scale it to that", Route::Scale.href_with("total", &bench.carried(volume)));
        answer.remarks.push("All lines in proportion: sugar, acid and strength stay as they are.".into());
        answer
    }
}
