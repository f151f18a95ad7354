//! The bench a form is read at: the house and the locale. Reads fields and collects their problems.

use std::rc::Rc;

use super::clock::Clock;
use super::preps::{self, Prep};
use super::sheet::Sheet;
use super::{Act, AtHand, Button, Figure, Held, Problem, fixes};
use crate::book::{Glass, House, Made, Price, Taken};
use crate::craft::chill::{Method, Pace};
use crate::craft::jigger::TOLERANCE;
use crate::craft::measure::nearest;
use crate::quantity::{Abv, Amount, Conventions, Mass, Ratio, Temperature, Unit, Volume};
use crate::substance::energy::StandardDrink;
use crate::substance::juice::Citrus;
use crate::text::{self, AmountProblem, Decimal, Dimension, NumberProblem, Reading};

/// Everything besides the form that decides what a text means and how a figure is shown.
#[derive(Clone, Debug, PartialEq)]
pub struct Bench {
    /// The house.
    pub house: House,
    /// The decimal mark.
    pub decimal: Decimal,
    /// Whether weights are shown in pounds and ounces.
    pub in_pounds: bool,
    /// What the bar has written down.
    pub book: Held,
    /// Its own ingredients, by name.
    pub own: Vec<(String, Taken)>,
    /// Those of them that it makes of others.
    pub preps: Vec<Prep>,
    /// Its own yields, a line each.
    pub yields: String,
    /// How fast its drinks chill, by [`crate::craft::chill::Method`].
    pub paces: [Pace; 6],
    /// The glasses it owns.
    pub glasses: Vec<Glass>,
    /// What it pays, a line each; and those that can be read.
    pub price_lines: String,
    /// See [`Bench::price_lines`].
    pub prices: Vec<Price>,
    /// What money is called; empty where the bar has not said.
    pub currency: String,
    /// What lies on it for now.
    pub at_hand: AtHand,
    /// The time.
    pub clock: Clock,
    /// Run sheets that have been worked out for that time, by the id of their run.
    pub sheets: Vec<(String, Rc<Sheet>)>,
    /// The places of the specs in the book, the strongest first; empty unless they are asked for so.
    pub strongest: Vec<usize>,
}

impl Default for Bench {
    /// A bench with the default units and no jiggers.
    fn default() -> Self {
        Bench {
            house: House {
                conventions: Conventions::default(),
                usual_unit: Unit::Millilitre,
                jiggers: Vec::new(),
                region: StandardDrink::default(),
                citrus: Citrus::default(),
            },
            decimal: Decimal::default(),
            in_pounds: false,
            book: Held::default(),
            own: Vec::new(),
            preps: Vec::new(),
            yields: String::new(),
            paces: [Pace::Usual; 6],
            glasses: Vec::new(),
            price_lines: String::new(),
            prices: Vec::new(),
            currency: String::new(),
            at_hand: AtHand::default(),
            clock: Clock::default(),
            sheets: Vec::new(),
            strongest: Vec::new(),
        }
    }
}

impl Bench {
    /// With what the bar has written down.
    #[must_use]
    pub fn with_book(mut self, book: Held) -> Bench {
        self.book = book;
        self.read_own();
        self
    }

    /// Reads the bar's own ingredients anew.
    pub(crate) fn read_own(&mut self) {
        (self.own, self.preps) = preps::read(&self.book, &self.house, self.decimal);
    }

    /// The prep that something is taken as; none for what is bought.
    pub(crate) fn prep(&self, taken: Option<Taken>) -> Option<&Prep> {
        match taken?.measured.made {
            Made::Here(place, _) => self.preps.get(place as usize),
            Made::No => None,
        }
    }

    /// The yield that the bar has measured, by what it is of.
    pub(crate) fn own_yield(&self, name: &str) -> Option<Ratio> {
        text::read_yield(&self.yields, name, self.decimal)
    }

    /// How fast a drink chills here by a method.
    #[must_use]
    pub const fn pace(&self, method: Method) -> Pace {
        self.paces[method as usize]
    }

    /// The seconds of a field; a problem is added to `problems`.
    pub(crate) fn seconds(&self, field: &'static str, text: &str, problems: &mut Vec<Problem>) -> Option<f64> {
        text::read_seconds(text, self.decimal).unwrap_or_else(|unread| {
            problems.push(Problem::unread(field, unread));
            None
        })
    }

    /// A button that keeps this yield on the shelf.
    pub(crate) fn keep_yield(&self, name: &str, share: Ratio) -> Button {
        let kept = text::with_yield(&self.yields, name, share, self.decimal);
        let label = format!("Keep {} as my yield", text::percent(share.value(), self.decimal));
        Button::new(label, Act::KeepYield(kept))
    }

    /// A button that keeps a price of what is called so on the shelf, of today.
    pub(crate) fn keep_price(&self, name: &str, offer: &str) -> Button {
        let day: String = self.clock.written(self.clock.now()).chars().take(10).collect();
        let kept = text::with_price(&self.price_lines, (name, offer), &day, &self.reading(Dimension::Either));
        Button::new(format!("Keep {} for {name}", offer.trim()), Act::KeepPrice(kept))
    }

    /// Money to a hundredth: "24.00", and what it is called where the bar has said so.
    pub(crate) fn money(&self, units: f64) -> Figure {
        Figure::new(text::plain(units, 2, self.decimal), self.currency.as_str())
    }

    /// How to read a field of this kind.
    #[must_use]
    pub fn reading(&self, kind: Dimension) -> Reading<'_> {
        let bare = if kind == Dimension::Mass { Unit::Gram } else { self.house.usual_unit };
        Reading { conventions: &self.house.conventions, decimal: self.decimal, bare, kind, own: &self.own }
    }

    /// The amount of a field that is not empty and has no problem; a problem is added to `problems`.
    pub(crate) fn amount(
        &self,
        field: &'static str,
        text: &str,
        kind: Dimension,
        problems: &mut Vec<Problem>,
    ) -> Option<Amount> {
        text::read_amount(text, &self.reading(kind)).unwrap_or_else(|problem| {
            problems.push(Problem { fixes: fixes(problem.fixes(text)), ..Problem::new(field, problem) });
            None
        })
    }

    pub(crate) fn volume(&self, field: &'static str, text: &str, problems: &mut Vec<Problem>) -> Option<Volume> {
        match self.amount(field, text, Dimension::Volume, problems)? {
            Amount::Volume(volume) => Some(volume),
            Amount::Mass(_) | Amount::Count(_) => None,
        }
    }

    pub(crate) fn mass(&self, field: &'static str, text: &str, problems: &mut Vec<Problem>) -> Option<Mass> {
        match self.amount(field, text, Dimension::Mass, problems)? {
            Amount::Mass(mass) => Some(mass),
            Amount::Volume(_) | Amount::Count(_) => None,
        }
    }

    /// A mass that may be none: zero and empty are both nothing. None only for a mistake.
    pub(crate) fn mass_or_none(&self, field: &'static str, text: &str, problems: &mut Vec<Problem>) -> Option<Mass> {
        match text::read_amount(text, &self.reading(Dimension::Mass)) {
            Ok(None) | Err(AmountProblem::Zero) => Some(Mass::ZERO),
            _ => self.mass(field, text, problems),
        }
    }

    pub(crate) fn count(&self, field: &'static str, text: &str, problems: &mut Vec<Problem>) -> Option<Ratio> {
        text::read_count(text, self.decimal).unwrap_or_else(|problem| {
            let words = match &problem {
                AmountProblem::Number(NumberProblem::Ambiguous { .. } | NumberProblem::Spaced { .. }) => {
                    problem.to_string()
                }
                AmountProblem::TooMuch => "That is over a million. Check the number.".to_owned(),
                _ => "Type a number above zero, like 18 or 2½.".to_owned(),
            };
            problems.push(Problem { fixes: fixes(problem.fixes(text)), ..Problem::new(field, words) });
            None
        })
    }

    /// A percentage as a fraction; empty is zero.
    pub(crate) fn percent(
        &self,
        field: &'static str,
        text: &str,
        limit: u8,
        problems: &mut Vec<Problem>,
    ) -> Option<Ratio> {
        match text::read_percent(text, self.decimal, limit) {
            Ok(fraction) => fraction.or(Ratio::from_value(0.0).ok()),
            Err(unread) => {
                problems.push(Problem::unread(field, unread));
                None
            }
        }
    }

    /// A plain number within limits; `words` say what to type.
    pub(crate) fn number(
        &self,
        field: &'static str,
        text: &str,
        (least, most): (f64, f64),
        words: &str,
        problems: &mut Vec<Problem>,
    ) -> Option<f64> {
        let problem = match text::read_number(text, self.decimal) {
            Ok(Some(value)) if (least..=most).contains(&value) => return Some(value),
            Ok(None) => return None,
            Err(problem @ NumberProblem::Ambiguous { .. }) => {
                let problem = AmountProblem::from(problem);
                Problem { fixes: fixes(problem.fixes(text)), ..Problem::new(field, problem) }
            }
            _ => Problem::new(field, words),
        };
        problems.push(problem);
        None
    }

    /// A strength by volume; none for an empty field.
    pub(crate) fn strength(&self, field: &'static str, text: &str, problems: &mut Vec<Problem>) -> Option<Abv> {
        text::read_strength(text, self.decimal).unwrap_or_else(|unread| {
            problems.push(Problem::unread(field, unread));
            None
        })
    }

    /// A temperature within limits; empty is 20 °C.
    pub(crate) fn temperature(
        &self,
        field: &'static str,
        text: &str,
        (coldest, warmest): (f64, f64),
        problems: &mut Vec<Problem>,
    ) -> Option<Temperature> {
        let problem = match text::read_temperature(text, self.decimal) {
            Ok(None) => return Some(Temperature::TWENTY),
            Ok(Some(at)) if (coldest..=warmest).contains(&at.celsius()) => return Some(at),
            Ok(Some(at)) => {
                let limit = |celsius| text::plain(celsius, 0, self.decimal);
                // What is typed in °F is told in the degrees of the limits.
                let typed = match text::is_fahrenheit(text) {
                    true => format!("{} is {}. ", text.trim(), text::other_scale(at, text, self.decimal)),
                    false => String::new(),
                };
                let (least, most) = (limit(coldest), limit(warmest));
                Problem::new(field, format!("{typed}Known from {least} to {most} °C. Type a temperature between."))
            }
            Err(unread) => Problem::unread(field, unread),
        };
        problems.push(problem);
        None
    }

    /// A length in mm within limits; none for an empty field.
    pub(crate) fn length(
        &self,
        field: &'static str,
        text: &str,
        (least, most): (f64, f64),
        problems: &mut Vec<Problem>,
    ) -> Option<f64> {
        let problem = match text::read_length(text, self.decimal) {
            Ok(None) => return None,
            Ok(Some(mm)) if (least..=most).contains(&mm) => return Some(mm),
            Ok(Some(_)) => {
                let limit = |mm| text::plain(mm, 0, self.decimal);
                Problem::new(field, format!("Type a length from {} to {} mm.", limit(least), limit(most)))
            }
            Err(unread) => Problem::unread(field, unread),
        };
        problems.push(problem);
        None
    }

    /// "45.0 g sugar".
    pub(crate) fn grams_of(&self, mass: Mass, what: &str) -> Figure {
        named(self.weight(mass), what)
    }

    /// "345 ml milk": a volume in a headline, of something.
    pub(crate) fn headline_of(&self, volume: Volume, what: &str, written: Option<Unit>) -> Figure {
        named(self.headline(volume, written), what)
    }

    /// A weight to what a good scale can tell.
    pub(crate) fn weight(&self, mass: Mass) -> Figure {
        self.weighed(mass, text::fine_grams(mass, self.decimal))
    }

    /// A weight that is these grams: in pounds and ounces where the bar weighs so, and then the grams. Less than an ounce
    /// is weighed in grams.
    pub(crate) fn weighed(&self, mass: Mass, grams: Figure) -> Figure {
        if !self.in_pounds || mass < Mass::OUNCE {
            return grams;
        }
        let Figure { value, unit } = text::pounds(mass, self.decimal);
        Figure { value, unit: format!("{unit}, {grams}") }
    }

    /// A volume in a headline: in ounces where the bar counts in them, or what was typed is `written` so; in quarters where
    /// they are close enough, and then what that is in millilitres.
    pub(crate) fn headline(&self, volume: Volume, written: Option<Unit>) -> Figure {
        let ml = text::litres_or_ml(volume, self.decimal);
        if self.house.usual_unit != Unit::Ounce && written != Some(Unit::Ounce) {
            return ml;
        }
        let house = &self.house.conventions;
        let quarters = nearest(volume, house.ounce.volume() / 4).filter(|near| near.error.abs() <= TOLERANCE);
        let Figure { value, unit } = text::ounces(quarters.map_or(volume, |near| near.volume), house, self.decimal);
        Figure { value, unit: format!("{unit}, {ml}") }
    }

    /// A volume as text for another tool, to a hundredth of a millilitre.
    pub(crate) fn carried(&self, volume: Volume) -> String {
        format!("{} ml", text::editable(volume.ml(), self.decimal))
    }
}

/// A figure of something: "45.0 g sugar", "1 lb 3¼ oz sugar, 546 g".
fn named(figure: Figure, what: &str) -> Figure {
    let Figure { value, unit } = figure;
    match unit.split_once(',') {
        Some((unit, same)) => Figure { value, unit: format!("{unit} {what},{same}") },
        None => Figure { value, unit: format!("{unit} {what}") },
    }
}
