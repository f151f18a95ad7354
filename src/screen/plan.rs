//! What a tool's answer takes to make, step by step: what a run sheet is put together from.

use crate::book::{Allergen, Ask};
use crate::craft::run::CHILLS_IN;
use crate::quantity::{Amount, Density};
use crate::substance::mix::Mix;

/// Something to make.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Plan {
    /// What it is called: "Lime juice by enzyme".
    pub title: String,
    /// Its steps, one after the other.
    pub steps: Vec<Step>,
    /// Grams to the millilitre of what comes out; none for about water's.
    pub density: Option<Density>,
    /// What is in its juice, in some amount, where that is no more what it was.
    pub juice: Option<Mix>,
    /// Less than was asked, for want of what it is made of; none where there is enough.
    pub cut: Option<Cut>,
    /// What to mind about what was noted at its steps, or came to it.
    pub notes: Vec<String>,
    /// What must be there before it begins.
    pub needs: Vec<Need>,
}

/// Something that must be there.
#[derive(Clone, Debug, PartialEq)]
pub struct Need {
    /// What it is.
    pub what: String,
    /// How much of it.
    pub amount: Amount,
    /// Whether it is what the part before it on a run sheet gives.
    pub is_given: bool,
}

impl Need {
    pub(crate) fn of(what: &str, amount: Amount) -> Need {
        Need { what: what.to_owned(), amount, is_given: false }
    }

    /// As it comes out of the part before, where there is one.
    pub(crate) fn given(what: &str, amount: Amount) -> Need {
        Need { is_given: true, ..Need::of(what, amount) }
    }
}

/// Less than was asked, as it is said: "14 of 40 serves: 1.2 l of juice came, 3.4 l asked".
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Cut {
    /// "14 of 40 serves".
    pub made: String,
    /// "1.2 l of juice".
    pub there: String,
    /// "3.4 l".
    pub asked: String,
}

impl Cut {
    /// In words; whether what there is has come, or only should.
    #[must_use]
    pub fn words(&self, has_come: bool) -> String {
        let come = if has_come { "came" } else { "should come" };
        format!("{}: {} {come}, {} asked", self.made, self.there, self.asked)
    }
}

/// What comes out of making something.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Makes {
    /// Something that goes in a drink and is made into nothing else here.
    #[default]
    Prep,
    /// Juice or purée.
    Juice,
    /// Juice made clear.
    ClearJuice,
    /// Cordial.
    Cordial,
    /// A drink.
    Drink,
    /// A drink washed with milk.
    WashedDrink,
    /// Ice.
    Ice,
}

impl Makes {
    /// As a line of a spec may call it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Makes::Prep => "prep",
            Makes::Juice => "juice",
            Makes::ClearJuice => "clear juice",
            Makes::Cordial => "cordial",
            Makes::Drink => "drink",
            Makes::WashedDrink => "washed drink",
            Makes::Ice => "ice",
        }
    }

    /// Whether it is something that goes into a drink.
    #[must_use]
    pub const fn goes_in(self) -> bool {
        matches!(self, Makes::Prep | Makes::Juice | Makes::ClearJuice | Makes::Cordial)
    }
}

/// What is made and of what: how preps find each other on a run sheet, whatever their amounts are.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Making {
    /// What comes out.
    pub makes: Makes,
    /// Key of the ingredient that it is about; empty where that does not matter.
    pub of: String,
    /// What it can be made of.
    pub takes: &'static [Makes],
    /// Keys of the juices that go into it, where it is a drink.
    pub juices: Vec<&'static str>,
    /// What guests must be told of.
    pub allergens: Vec<Allergen>,
    /// What must be asked about before that is known.
    pub asks: Vec<Ask>,
    /// Whether its fresh juice decides how long it keeps.
    pub is_fresh: bool,
}

impl Making {
    /// Whether it can be made of another: of its kind, and about the same ingredient, or a juice that goes into it.
    #[must_use]
    pub fn takes(&self, other: &Making) -> bool {
        let is_juice = matches!(other.makes, Makes::Juice | Makes::ClearJuice);
        let is_of_it = match self.makes {
            Makes::WashedDrink if is_juice => self.juices.contains(&other.of.as_str()),
            _ => self.of.is_empty() || self.of == other.of,
        };
        self.takes.contains(&other.makes) && is_of_it
    }
}

/// A title with its first letter large, where that is a plain one.
pub(crate) fn titled(mut title: String) -> String {
    if let Some(first) = title.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    title
}

/// A step.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Step {
    /// Its name within its plan; kept in saved runs, so it never changes.
    pub key: String,
    /// What to do, with its amounts.
    pub words: String,
    /// Hands on, seconds.
    pub work: u32,
    /// Left to itself, seconds.
    pub wait: u32,
    /// What should come out, where it is worth measuring.
    pub gives: Option<Amount>,
    /// Whether it is worth reading all the same where nothing comes out: the pH of a wash.
    pub is_read: bool,
}

/// The key of the step that chills what is served cold.
pub(crate) const CHILL: &str = "chill";
/// Seconds of a minute.
pub(crate) const MINUTE: u32 = 60;
/// Seconds of an hour.
pub(crate) const HOUR: u32 = 60 * MINUTE;

impl Step {
    /// A step with hands on for so many seconds.
    pub(crate) fn work(key: impl Into<String>, words: impl Into<String>, seconds: u32) -> Step {
        Step { key: key.into(), words: words.into(), work: seconds, ..Step::default() }
    }

    /// And then left to itself for so long.
    pub(crate) fn then_wait(mut self, seconds: u32) -> Step {
        self.wait = seconds;
        self
    }

    /// And it is worth reading.
    pub(crate) fn read(mut self) -> Step {
        self.is_read = true;
        self
    }

    /// Into the cold before it is served.
    pub(crate) fn chill() -> Step {
        Step::work(CHILL, "Into the cold, it is served cold (2 h, rule of thumb)", 2 * MINUTE).then_wait(CHILLS_IN)
    }

    /// And so much comes out.
    pub(crate) fn giving(mut self, amount: Option<Amount>) -> Step {
        self.gives = amount;
        self
    }
}
