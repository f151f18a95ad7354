//! Why nothing can be said of a drink on ice, in words.

use std::fmt;

use crate::quantity::{OutOfRange, Temperature};

/// Why nothing can be said.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ChillProblem {
    /// There is no drink.
    NoDrink,
    /// There is no ice, or nothing but water of it.
    NoIce,
    /// The ice is warmer than ice can be.
    IceAboveZero,
    /// The drink is colder than its ice.
    ColderThanIce,
    /// It is frozen before it meets ice: where it begins to.
    Frozen(Temperature),
    /// The ice is so cold, and so much of it, that it freezes water out of the drink.
    FreezesOn,
    /// No time on the ice.
    NoTime,
    /// More than an hour.
    TooLong,
    /// What was weighed is not both of a kind, or not an amount.
    TwoKinds,
    /// It came out as no more than it went in.
    NothingTaken,
    /// More came out than the balance lets it take up.
    MoreThanBalance,
    /// Beyond the tables of what is known.
    Beyond(OutOfRange),
}

impl fmt::Display for ChillProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            ChillProblem::NoDrink => "There is no drink to chill. Add a line with an amount.",
            ChillProblem::NoIce => "Without ice nothing is chilled. Type how much, like 200 g.",
            ChillProblem::IceAboveZero => "Ice is at 0 °C or below. Type 0, or what your freezer says, like −18.",
            ChillProblem::ColderThanIce => "The drink is colder than the ice: it would be warmed. Check both.",
            ChillProblem::Frozen(_) => "So cold, this drink is frozen before it meets ice. Check its temperature.",
            ChillProblem::FreezesOn => "Ice so cold freezes water out of this drink. Take less of it, or warmer.",
            ChillProblem::NoTime => "Type how long, like 30 s.",
            ChillProblem::TooLong => "After an hour the room has warmed it. Type a shorter time.",
            ChillProblem::TwoKinds => "Weigh it before and after, or measure it before and after.",
            ChillProblem::NothingTaken => "It came out as no more than went in. Check both.",
            ChillProblem::MoreThanBalance => "That is more water than so much heat melts. Is there water on the ice?",
            ChillProblem::Beyond(_) => "Too strong or too sweet: how such a drink chills is not in our tables.",
        })
    }
}
