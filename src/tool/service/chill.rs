//! Chill: how cold a drink gets on ice, the water it takes up, and what that makes of it, against time.

mod choices;
mod shown;
#[cfg(test)]
mod tests;

pub use choices::{Vessel, Wet};

use crate::craft::chill::{ChillProblem, Heat, Ice, Method, Moment, Pace, Start, TURNS_A_SECOND, curve, usual};
use crate::quantity::Mass;
use crate::reading::{self, Content, Contents, counted_row, from_spec};
use crate::screen::pad::Keys;
use crate::screen::route::Route;
use crate::screen::{Act, Answer, Bench, Block, Button, Choice, Input, Problem, Tool, form};
use crate::substance::mix::Mix;
use crate::text::{self, Dimension};

form! {
    /// What is typed and chosen.
    ChillForm {
        /// How it meets the ice: a key of [`Method`].
        method = "stir",
        /// For how long, seconds.
        time = "30",
        /// The drink, a line for each ingredient.
        spec = reading::EXAMPLE,
        /// The spec it came from, and which form of it: "id/0"; empty for none.
        from_spec = "",
        /// How warm it is before.
        drink_at = "20",
        /// Ice; empty for as much as is usual.
        ice = "",
        /// How cold that is.
        ice_at = "0",
        /// Whether there is water on it: a key of [`Wet`].
        wet = "usual",
        /// What it is chilled in: a key of [`Vessel`].
        vessel = "none",
        /// What that weighs; empty for as much as is usual.
        vessel_mass = "",
        /// How warm that is.
        vessel_at = "20",
        /// "yes" while the bar's own drink is weighed.
        weigh = "",
        /// What went in.
        went_in = "",
        /// What came out.
        came_out = "",
    }
}

const TIME: &str = "time";
const SPEC: &str = "spec";
const DRINK_AT: &str = "drink_at";
const ICE: &str = "ice";
const ICE_AT: &str = "ice_at";
const VESSEL_MASS: &str = "vessel_mass";
const VESSEL_AT: &str = "vessel_at";
const WENT_IN: &str = "went_in";
const CAME_OUT: &str = "came_out";

/// How warm a drink, its ice and its vessel may be, °C. That ice melts at 0 °C is told in words of its own.
const DRINKS: (f64, f64) = (-20.0, 60.0);
const ICES: (f64, f64) = (-80.0, 60.0);
const VESSELS: (f64, f64) = (-40.0, 60.0);

/// How many times the chosen time is drawn.
const DRAWN: f64 = 3.0;
/// Most seconds that are drawn.
const LONGEST: f64 = 3_600.0;

/// A drink that was chilled.
struct Chilled<'a> {
    start: Start<'a>,
    method: Method,
    pace: Pace,
    /// At the chosen time.
    moment: Moment,
    /// From the first moment to the last that is drawn.
    curve: Vec<Moment>,
}

impl Tool for ChillForm {
    fn layout(&self, bench: &Bench) -> Vec<Block> {
        let placeholder = reading::PLACEHOLDER;
        let [from, others] = from_spec::fields(Route::Chill, &self.from_spec, Some(&self.spec), bench);
        let vessel = |block: Block| if self.vessel().made_of().is_some() { block } else { Block::Nothing };
        let mut blocks = vec![
            Block::chips::<Method>("method", "How", false),
            Block::amount(TIME, "Time", Keys::Seconds),
            self.turns(bench).map_or(Block::Nothing, Block::Remark),
            Block::Pictures(Vec::new()),
            Block::Table("", Vec::new()),
            Block::Heading("The drink"),
            from,
            others,
            Block::field(SPEC, "A line for each ingredient", Input::Lines { placeholder }),
            Block::amount(DRINK_AT, "Temperature", Keys::Celsius),
            Block::Heading("On ice"),
            Block::amount(ICE, "Ice", Keys::Weight),
            Block::amount(ICE_AT, "Ice temperature", Keys::Celsius),
            Block::chips::<Wet>("wet", "Water on it", true),
            Block::chips::<Vessel>("vessel", "In a vessel", true),
            vessel(Block::amount(VESSEL_MASS, "Vessel weighs", Keys::Weight)),
            vessel(Block::amount(VESSEL_AT, "Vessel temperature", Keys::Celsius)),
        ];
        if self.is_weighing() {
            blocks.extend([
                Block::Heading("One of yours, on this ice, after this time"),
                Block::amount(WENT_IN, "Went in", Keys::Either),
                Block::amount(CAME_OUT, "Came out", Keys::Either),
            ]);
        }
        blocks.push(Block::Buttons(Vec::new()));
        blocks
    }

    fn answer(&self, bench: &Bench) -> Answer {
        let mut answer = Answer::default();
        let read = Contents::of(&self.spec, bench);
        if read.lines.is_empty() {
            return answer.without_answer("Type or paste a spec, a line for each ingredient.");
        }
        if !self.is_weighing() {
            answer.buttons.push(Button::new("Weigh mine", Act::Choose("weigh".into(), "yes".into())));
        }
        reading::ask_part(&mut answer, SPEC, &self.spec, &read.lines, bench);
        reading::cautions(&mut answer, &read.lines, bench);
        answer.leads = read.not_counted();
        answer.rows_title = "In the glass";
        let is_left_out = |content: &Content| !matches!(content, Content::Poured(_) | Content::Counted(_));
        let left_out = read.pairs().filter(|(_, content)| is_left_out(content));
        let left_out = left_out.map(|line| counted_row(line, &read.mix, bench)).filter(|row| row.marked);
        answer.rows = left_out.collect();
        let (drink, is_washed) = read.drunk(bench);
        let seconds = bench.seconds(TIME, &self.time, &mut answer.problems);
        let start = self.start(&drink, bench, &mut answer.problems);
        let (Some(start), Some(seconds), true) = (start, seconds, read.is_something()) else {
            return answer.without_answer(match (read.is_something(), read.missing.as_slice()) {
                (true, _) => "Type how long, like 30 s.",
                (_, []) => "Add a line with an amount, like 60 ml gin.",
                _ => "None of it can be counted yet: see its lines below.",
            });
        };
        let weighed = self.weighed(&start, seconds, &mut answer, bench);
        let pace = weighed.unwrap_or_else(|| bench.pace(self.method()));
        match self.chilled(start, pace, seconds) {
            Ok(chilled) => self.show_it(answer, &read, is_washed, &chilled, bench),
            Err(problem) => {
                answer.problems.push(Problem::new(field_of(&problem), problem));
                answer.without_answer("")
            }
        }
    }

    fn empty(&mut self) {
        for text in [&mut self.spec, &mut self.ice, &mut self.went_in, &mut self.came_out, &mut self.weigh] {
            text.clear();
        }
    }

    fn take(&mut self, name: &str, text: &str) {
        match name {
            SPEC => text.clone_into(&mut self.spec),
            "method" => text.clone_into(&mut self.method),
            TIME => text.clone_into(&mut self.time),
            ICE => text.clone_into(&mut self.ice),
            _ => {}
        }
    }
}

impl ChillForm {
    fn method(&self) -> Method {
        Method::read(&self.method)
    }

    fn vessel(&self) -> Vessel {
        Vessel::read(&self.vessel)
    }

    fn is_weighing(&self) -> bool {
        [&self.weigh, &self.went_in, &self.came_out].into_iter().any(|text| !text.trim().is_empty())
    }

    /// "About 60 turns of the spoon (rule of thumb)."
    fn turns(&self, bench: &Bench) -> Option<String> {
        let seconds = text::read_seconds(&self.time, bench.decimal).ok()??;
        let turns = text::plain(seconds * TURNS_A_SECOND, 0, bench.decimal);
        (self.method() == Method::Stir).then(|| format!("About {turns} turns of the spoon (rule of thumb)."))
    }

    /// The drink about to meet its ice; none for a mistake.
    fn start<'a>(&self, drink: &'a Mix, bench: &Bench, problems: &mut Vec<Problem>) -> Option<Start<'a>> {
        let usual = usual(drink, self.method());
        let at = bench.temperature(DRINK_AT, &self.drink_at, DRINKS, problems);
        let mass = bench.mass_or_none(ICE, &self.ice, problems);
        let mass = if self.ice.trim().is_empty() { Some(usual.ice.mass) } else { mass };
        let ice_at = match self.ice_at.trim() {
            "" => Some(usual.ice.at),
            typed => bench.temperature(ICE_AT, typed, ICES, problems),
        };
        let vessel = match self.vessel().made_of() {
            None => Some(None),
            Some((material, usual)) => {
                let mass = bench.mass_or_none(VESSEL_MASS, &self.vessel_mass, problems);
                let mass = mass.map(|mass| if mass > Mass::ZERO { mass } else { usual });
                let at = bench.temperature(VESSEL_AT, &self.vessel_at, VESSELS, problems);
                mass.zip(at).map(|(mass, at)| Some(Heat::of(material, mass, at)))
            }
        };
        let ice = Ice { mass: mass?, at: ice_at?, wet: Wet::read(&self.wet).share(usual.ice.wet) };
        Some(Start { drink, at: at?, ice, vessel: vessel? })
    }

    /// How fast the bar's own drink chilled, where one was weighed, with a button that keeps it.
    fn weighed(&self, start: &Start, seconds: f64, answer: &mut Answer, bench: &Bench) -> Option<Pace> {
        let [went_in, came_out] = [(WENT_IN, &self.went_in), (CAME_OUT, &self.came_out)]
            .map(|(field, typed)| bench.amount(field, typed, Dimension::Either, &mut answer.problems));
        let (went_in, came_out) = (went_in?, came_out?);
        match Pace::from_weighed(start, seconds, went_in, came_out) {
            Ok(pace) => {
                let (called, name) = choices::called(self.method());
                let kept = text::editable(pace.seconds_to_95(self.method()), bench.decimal);
                answer.buttons.push(Button::new(format!("Keep as my own, {called}"), Act::KeepPace(name, kept)));
                Some(pace)
            }
            Err(problem) => {
                answer.problems.push(Problem::new(field_of(&problem), problem));
                None
            }
        }
    }

    fn chilled<'a>(&self, start: Start<'a>, pace: Pace, seconds: f64) -> Result<Chilled<'a>, ChillProblem> {
        let method = self.method();
        let (moment, curve) = curve(&start, method, pace, [seconds, (seconds * DRAWN).min(LONGEST)])?;
        Ok(Chilled { start, method, pace, moment, curve })
    }
}

/// The field that a problem stands under.
const fn field_of(problem: &ChillProblem) -> &'static str {
    match problem {
        ChillProblem::NoIce => ICE,
        ChillProblem::IceAboveZero | ChillProblem::FreezesOn => ICE_AT,
        ChillProblem::ColderThanIce | ChillProblem::Frozen(_) => DRINK_AT,
        ChillProblem::NoTime | ChillProblem::TooLong => TIME,
        ChillProblem::TwoKinds | ChillProblem::NothingTaken | ChillProblem::MoreThanBalance => CAME_OUT,
        ChillProblem::NoDrink | ChillProblem::Beyond(_) => SPEC,
    }
}
