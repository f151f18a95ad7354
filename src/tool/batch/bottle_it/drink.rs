//! What is typed, read: the drink with its water, how often it is made, and what goes in of each line.

use super::{BOTTLE, BOTTLES, BottleItForm, By, HAVE, HEADSPACE, LOSS, MAKES, PERCENT, SERVES, STRENGTH, WATER, Water};
use crate::book::{Line, Spec};
use crate::craft::bottle_it::{Enough, Measure, enough, measured, times_for, water_to};
use crate::craft::chill::{Method, served};
use crate::craft::serves::{Bottling, Shared, bottle, share};
use crate::quantity::{Amount, Density, Mass, Ratio, Temperature, Volume};
use crate::reading::chilled::Chilled;
use crate::reading::from_spec::FromSpec;
use crate::reading::{Content, Contents};
use crate::screen::{Answer, Bench, Problem};
use crate::substance::mix::Mix;
use crate::text::{self, Dimension, read_spec};

/// More water than this is no drink: as much again, twice.
const MOST_WATER: u8 = 200;

/// A drink to bottle, worked out.
pub(super) struct Drink {
    /// How often the spec is made.
    pub(super) times: Ratio,
    /// Serves that the spec makes.
    pub(super) makes: Ratio,
    /// Its lines, in the order in which they go in; water before fresh citrus.
    pub(super) parts: Vec<Part>,
    /// The water, once.
    water: Mass,
    /// All of it, exactly; and as it is measured.
    pub(super) exact: Mix,
    pub(super) made: Mix,
    /// What comes into bottles.
    pub(super) volume: Volume,
    /// One serve.
    pub(super) serve: Volume,
    /// How it shares out.
    pub(super) shared: Shared,
    pub(super) bottling: Bottling,
    /// What a bottle holds.
    pub(super) size: Volume,
    /// What runs out first, where that is asked.
    pub(super) enough: Option<Enough>,
    /// Whether it is washed with milk.
    pub(super) is_washed: bool,
}

/// A line as it goes in.
pub(super) struct Part {
    /// Of what.
    pub(super) name: String,
    /// What is in it, to what can be measured; nothing of what is counted.
    pub(super) mix: Mix,
    /// How much that is.
    pub(super) amount: Amount,
    /// Whether it goes in last: fresh citrus.
    pub(super) is_last: bool,
}

impl Drink {
    /// The water of one serve.
    pub(super) fn water_each(&self) -> Mass {
        self.water * self.makes.inverse().unwrap_or(Ratio::ONE)
    }
}

fn volume(mix: &Mix) -> Volume {
    mix.volume(Temperature::TWENTY).unwrap_or(Volume::ZERO)
}

/// Whether a line is the juice of citrus.
fn is_citrus(line: &Line) -> bool {
    let key = line.taken.map_or("", |taken| taken.ingredient.key);
    matches!(key, "lemon-juice" | "lime-juice" | "orange-juice" | "grapefruit-juice")
}

impl BottleItForm {
    /// What is typed as a drink worked out; none where something is missing or wrong, which is then said.
    pub(super) fn drink(&self, read: &Contents, bench: &Bench, answer: &mut Answer) -> Option<Drink> {
        let problems = &mut answer.problems;
        let size = bench.volume(BOTTLE, &self.bottle, problems);
        let headspace = bench.percent(HEADSPACE, &self.headspace, 50, problems);
        let loss = bench.percent(LOSS, &self.loss, 90, problems);
        let makes = match self.makes.trim() {
            "" => Some(Ratio::ONE),
            makes => bench.count(MAKES, makes, problems),
        };
        if !read.is_something() || !uncounted(read).is_empty() {
            return None;
        }
        let (drunk, is_washed) = read.drunk(bench);
        let water = self.water_in(&drunk, bench, problems)?;
        let one = drunk + Mix::water(water);
        let (size, headspace, loss, makes) = (size?, headspace?, loss?, makes?);
        let serve = volume(&one) * makes.inverse()?;
        if size < serve {
            let serve = text::litres_or_ml(serve, bench.decimal);
            problems.push(Problem::new(
                BOTTLE,
                format!("A serve is {serve}. Type a bottle that holds more, or how many serves the drink makes."),
            ));
            return None;
        }
        let full = size.less(size * headspace);
        let (mut left, mut asked) = (None, None);
        let times = match self.by() {
            By::Serves => {
                let serves = bench.count(SERVES, &self.serves, problems)?;
                times_for(&one, serve * serves, loss)
            }
            By::Bottles => {
                let bottles = bench.count(BOTTLES, &self.bottles, problems)?;
                asked = Some(bottles);
                times_for(&one, full * bottles, loss)
            }
            By::Have => {
                let made = self.stock(read, bench, problems)?;
                let kept = Ratio::from_value(1.0 - loss.value()).unwrap_or(Ratio::ONE);
                let times = times_for(&one, volume(&one) * made.times * kept, loss);
                left = Some(made);
                times
            }
        };
        let worked = times.and_then(|times| {
            let (parts, exact) = (self.parts(read, times, water), one * times);
            // What is washed with milk leaves its curd, whatever it was measured to.
            let made = if is_washed { exact } else { parts.iter().map(|part| part.mix).sum() };
            let whole = volume(&made);
            let bottled = whole.less(whole * loss);
            let shared = share(bottled, serve, Ratio::ZERO)?;
            // What rounding adds goes into the bottles that were asked for, where it has room under the brim.
            let each = asked.and_then(|bottles| Some(bottled * bottles.inverse()?));
            let headspace = match each.filter(|each| *each > full && *each <= size) {
                Some(each) => Ratio::from_value(1.0 - each.ml() / size.ml()).unwrap_or(headspace),
                None => headspace,
            };
            let bottling = bottle(bottled, size, headspace)?;
            let volume = bottled;
            let drink = Drink {
                times,
                makes,
                parts,
                water,
                exact,
                made,
                volume,
                serve,
                shared,
                bottling,
                size,
                enough: left,
                is_washed,
            };
            Ok(drink)
        });
        match worked {
            Ok(drink) => Some(drink),
            Err(problem) => {
                problems.push(Problem::new(self.asked(), problem));
                None
            }
        }
    }

    /// What goes in of each line and of water, so often.
    fn parts(&self, read: &Contents, times: Ratio, water: Mass) -> Vec<Part> {
        let measure = self.measure();
        let part = |name: &str, exact: Mix, amount: Amount| {
            let is_weighed = matches!(amount, Amount::Mass(_));
            let mix = measured(&exact, is_weighed, measure);
            let amount = match amount {
                Amount::Count(_) => amount,
                Amount::Volume(_) if measure != Measure::Gram => Amount::Volume(volume(&mix)),
                _ => Amount::Mass(mix.mass()),
            };
            Part { name: name.to_owned(), mix, amount, is_last: false }
        };
        let (mut parts, mut last) = (Vec::new(), Vec::new());
        for (line, content) in read.pairs() {
            let Ok(line) = &line.read else { continue };
            let mix = if let Content::Poured(mix) = content { **mix } else { Mix::default() };
            let part = part(&line.name, mix * times, line.amount.times(times));
            match is_citrus(line) {
                true => last.push(Part { is_last: true, ..part }),
                false => parts.push(part),
            }
        }
        if water > Mass::ZERO {
            let exact = Mix::water(water) * times;
            parts.push(part("water", exact, Amount::Volume(volume(&exact))));
        }
        parts.append(&mut last);
        parts
    }

    /// The water for the drink as it is written.
    fn water_in(&self, drunk: &Mix, bench: &Bench, problems: &mut Vec<Problem>) -> Option<Mass> {
        // As long as the steps of its spec say, where it is of one that is chilled so; else as usual, at the bar's own pace.
        let own = FromSpec::of(&self.from_spec, bench).and_then(|form| Chilled::of(form.way(), bench));
        let on_ice = |method, problems: &mut Vec<Problem>| match served(drunk, method) {
            Ok(moment) => {
                let usual = || Chilled::usual(if method == Method::Stir { "stir" } else { "shake" });
                let chilled = own.filter(|own| own.method == method && !own.is_built).or_else(usual);
                Some(chilled.and_then(|chilled| chilled.water(drunk, bench)).unwrap_or(moment.water))
            }
            Err(problem) => {
                problems.push(Problem::new(WATER, problem));
                None
            }
        };
        match self.water() {
            Water::None => Some(Mass::ZERO),
            Water::Stirred => on_ice(Method::Stir, problems),
            Water::Shaken => on_ice(Method::Shake, problems),
            Water::Percent => {
                let percent = bench.percent(PERCENT, &self.percent, MOST_WATER, problems)?;
                Some(volume(drunk) * percent * Density::WATER)
            }
            Water::Strength => {
                let strength = bench.strength(STRENGTH, &self.strength, problems)?;
                let water = water_to(drunk, strength);
                if water.is_none() {
                    let most = text::plain(drunk.strength().fraction() * 100.0, 1, bench.decimal);
                    let words = format!("Without water it is {most} % vol. Type a strength below that, above 0.");
                    problems.push(Problem::new(STRENGTH, words));
                }
                water
            }
        }
    }

    /// How far what there is goes.
    fn stock(&self, read: &Contents, bench: &Bench, problems: &mut Vec<Problem>) -> Option<Enough> {
        let spec = Spec { lines: read.lines.iter().filter_map(|line| line.read.clone().ok()).collect() };
        let mut stock = Vec::new();
        for have in read_spec(&self.have, &bench.reading(Dimension::Either)) {
            let found = have.read.as_ref().map_err(ToString::to_string).and_then(|have| {
                let is_it = |line: &&Line| {
                    let key = |line: &Line| line.taken.map(|taken| taken.ingredient.key);
                    line.name.eq_ignore_ascii_case(&have.name) || key(line).is_some() && key(line) == key(have)
                };
                let mut lines = spec.lines.iter().enumerate().filter(|(_, line)| is_it(line));
                match (lines.next(), lines.next()) {
                    (Some((at, _)), None) => Ok((at, have.amount)),
                    (Some(_), _) => Err("It stands twice in the drink: put it on one line there.".to_owned()),
                    _ => Err("Not in the drink: name it as its line does.".to_owned()),
                }
            });
            match found {
                Ok(found) => stock.push(found),
                Err(words) => {
                    problems.push(Problem::new(HAVE, format!("“{}”: {words}", have.typed)));
                    return None;
                }
            }
        }
        if stock.is_empty() {
            return None;
        }
        let made = enough(&spec, &stock);
        if made.is_err() {
            problems.push(Problem::new(HAVE, "Type how much there is in ml, l or g, as the drink has it."));
        }
        made.ok()
    }
}

/// Lines of a drink that are not counted and should be, but for what fills up the glass.
pub(super) fn uncounted(read: &Contents) -> Vec<usize> {
    let is_open = |(at, (line, content)): (usize, (&text::SpecLine, &Content))| {
        let is_counted = matches!(content, Content::Poured(_) | Content::Counted(_) | Content::Words);
        (!is_counted && !is_top(line)).then_some(at)
    };
    read.pairs().enumerate().filter_map(is_open).collect()
}

/// Whether a line fills up the glass: that is done when it is served.
pub(super) fn is_top(line: &text::SpecLine) -> bool {
    matches!(line.read, Err(text::LineProblem::Top(_)))
}
