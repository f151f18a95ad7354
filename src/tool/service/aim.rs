//! Aim: a drink is too sharp; what mends it.

mod form;
mod ice;
mod shown;
mod target;
#[cfg(test)]
mod tests;

use ice::Iced;
use shown::said;

use crate::book::{Kind, Taken, ingredient};
use crate::craft::aim::{Aimed, Of, Part, Target, aim, drink, stands};
use crate::craft::pour::pour;
use crate::quantity::{Amount, Ratio, Unit, Volume};
use crate::reading::{self, Content, Contents, counted_row, from_spec};
use crate::screen::pad::Keys;
use crate::screen::route::Route;
use crate::screen::{Answer, Bench, Block, Choice, Figure, Input, Strip, Tone, Tool, choice, form, plural};
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
        /// Sugar aimed at, grams to the litre; as that.
        sugar_aim = "",
        /// Acid aimed at, as citric, grams to the litre; as that.
        acid_aim = "",
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
const SUGAR: &str = "sugar_aim";
const ACID: &str = "acid_aim";
const STRENGTH: &str = "strength";
const SERVE: &str = "serve";

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
    fn is_tall(&self) -> bool {
        true
    }

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
        ];
        match self.taste() {
            Taste::Sharp | Taste::Sweet => blocks.extend([
                Block::amount(RATIO, "Sugar to acid, aim", Keys::Ratio),
                Block::amount(SUGAR, "Sugar in g/l, aim", Keys::Count),
                Block::amount(ACID, "Acid in g/l, aim", Keys::Count),
            ]),
            Taste::Weak | Taste::Strong => blocks.push(Block::amount(STRENGTH, "Strength, aim", Keys::Percent)),
            Taste::Big => blocks.push(Block::amount(SERVE, "One serve, aim", Keys::Pour)),
        }
        blocks.push(self.like_field(bench));
        // Two figures take two lines.
        blocks.push(match self.taste() == Taste::Big || self.aims().count() > 1 {
            true => Block::Nothing,
            false => Block::chips::<By>("by", "By how many lines", false),
        });
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
        let now = ice.serve(&read.mix, Ratio::ONE);
        let aim = self.target(&now, bench, &mut answer.problems);
        let (Some(serves), Some(aim)) = (serves, aim) else {
            return answer.without_answer("Type how many serves are in the tin.");
        };
        let contrary = self.contrary(&aim.0, &now, bench);
        let mut answer = match self.taste() {
            Taste::Big => self.smaller(answer, &read, aim, &ice),
            _ => self.aimed(answer, &read, aim, serves, &ice),
        };
        answer.problems.extend(contrary);
        answer
    }

    fn empty(&mut self) {
        self.spec.clear();
        self.aim_anew();
    }

    fn take(&mut self, name: &str, text: &str) {
        if name == SPEC {
            // What another drink was aimed at is not its own.
            if text.trim() != self.spec.trim() {
                self.aim_anew();
            }
            text.clone_into(&mut self.spec);
        } else if name == SERVES {
            text.clone_into(&mut self.serves);
        }
    }
}

impl AimForm {
    fn taste(&self) -> Taste {
        Taste::read(&self.taste)
    }

    /// Empties what is typed of where it should be.
    fn aim_anew(&mut self) {
        for text in [&mut self.ratio, &mut self.sugar_aim, &mut self.acid_aim, &mut self.strength, &mut self.serve] {
            text.clear();
        }
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

    fn aimed(
        &self,
        mut answer: Answer,
        read: &Contents,
        (mut targets, to): (Vec<Target>, String),
        serves: Ratio,
        ice: &Iced<'_>,
    ) -> Answer {
        let bench = ice.bench;
        let (parts, names) = Self::parts(read, serves);
        let serve = |mix: &Mix| ice.serve(mix, serves);
        let now = serve(&drink(&parts, &[]));
        let aims = targets.len();
        if aims == 1 && By::read(&self.by) == By::Two {
            let of = if targets[0].of == Of::Strength { Of::Sugar } else { Of::Strength };
            let value = stands(&now, of);
            targets.extend((value > 0.0).then_some(Target { of, value }));
        }
        let found = match aim(&parts, &targets, &serve) {
            Ok(found) => found,
            Err(problem) => return Self::out_of_reach(answer, &targets, aims, problem, bench),
        };
        // What is in the tin cannot be taken out of it.
        let adds = |hit: &Aimed| hit.to.iter().all(|(at, measures)| *measures >= parts[*at].now - 1e-9);
        let (more, less): (Vec<Aimed>, Vec<Aimed>) = found.into_iter().partition(adds);
        let first = more.first().or(less.first());
        let Some(first) = first else { return answer.without_answer("") };
        let steps = self.steps(first, &parts, &names, bench);
        if steps.is_empty() {
            return there_already(answer, to);
        }
        answer.form = Some(self.form(read, first, (&parts, &names), serves, bench));
        let count = serves.value().round() as usize;
        let many = match count {
            1 => String::new(),
            _ => format!(" for {} {}", text::count(serves.value(), bench.decimal), plural(count, "serve", "serves")),
        };
        let next_time = if more.is_empty() { ". Next time: it cannot be taken out" } else { "" };
        // Of two, each is named beside its figure, and how they are poured stands in the table.
        let (figures, also, below) = match steps.as_slice() {
            [(figure, name, pour)] => {
                let colon = if pour.is_empty() { "" } else { ": " };
                (vec![figure.clone()], format!("{name}{colon}{pour}{many}"), format!("{to}{next_time}"))
            }
            _ => {
                let named = |(Figure { value, unit }, name, _): &(Figure, String, String)| {
                    Figure::new(value.as_str(), format!("{unit} {name}"))
                };
                (steps.iter().map(named).collect(), format!("{to}{many}{next_time}"), String::new())
            }
        };
        answer.strip = Strip { figures, also, below, tone: Tone::Answer, ..Strip::default() };
        let there = serve(&drink(&parts, &first.to));
        answer.pictures.push((
            format!("In each, before and after{}", ice.words()),
            Self::bars([&now, &there], &targets[..aims], bench),
        ));
        answer.rows_title = "Ways to it";
        let row = |(hit, when): (&Aimed, &str)| self.row(hit, when, (&parts, &names), &targets[..aims], &serve, bench);
        let ways = more.iter().map(|hit| (hit, "")).chain(less.iter().map(|hit| (hit, "next time: ")));
        answer.rows = ways.take(MOST).map(row).collect();
        answer.remarks.push("Solved on what is in the drink by mass: exact, then as your jiggers pour it. Sugar and acid of juice vary more than that: taste.".into());
        answer.remarks.push(match ice.chilled {
            Some(chilled) => chilled.source().to_owned(),
            None => {
                "Before ice: choose a spec that says how it is chilled, and it is aimed at in the glass.".to_owned()
            }
        });
        answer.remarks.push("Without an aim of yours it is a step that people taste: a quarter more or less sugar to acid (sourness: Weber fraction near 0.26, S. Camacho et al., J. Food Science 80, 2015, of thickness, said to be alike), 2 % vol (rule of thumb).".into());
        answer.carry("Balance", Route::Balance.href_with(SPEC, &self.spec));
        answer
    }

    /// Less of everything.
    fn smaller(
        &self,
        mut answer: Answer,
        read: &Contents,
        (targets, to): (Vec<Target>, String),
        ice: &Iced<'_>,
    ) -> Answer {
        let bench = ice.bench;
        let target = targets[0].value;
        let of = |times: f64| {
            let mix = Ratio::from_value(times).map_or(read.mix, |times| read.mix * times);
            stands(&ice.serve(&mix, Ratio::ONE), Of::Volume)
        };
        let now = of(1.0);
        if said(Of::Volume, target, bench) == said(Of::Volume, now, bench) {
            return there_already(answer, to);
        }
        let mut times = target / now;
        // A smaller drink takes up a little more water, of its size.
        for _ in 0..12 {
            times *= target / of(times);
        }
        answer.strip = Strip {
            figures: vec![Figure::new(text::plain(times, 2, bench.decimal), "of every line")],
            also: format!("{} in place of {}", said(Of::Volume, target, bench), said(Of::Volume, now, bench)),
            below: if self.like.is_empty() { String::new() } else { to },
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

/// Nothing is to be poured.
fn there_already(mut answer: Answer, to: String) -> Answer {
    answer.strip = Strip { also: "It is there already".into(), below: to, tone: Tone::Answer, ..Strip::default() };
    answer
}
