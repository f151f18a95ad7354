//! What an ingredient of the bar's own is taken to be.

use super::{Problem, fixes};
use crate::book::{Made, Measured, Own, Taken, ingredient};
use crate::quantity::{Acidity, Brix, Mass};
use crate::text::{self, Decimal, NumberProblem};

/// What an ingredient of the bar's own is; problems name their fields.
pub(crate) fn taken(own: &Own, decimal: Decimal, problems: &mut Vec<Problem>) -> Option<Taken> {
    let mut number = |field: &str, text: &str, most: f64, like: &str| match text::read_number(text, decimal) {
        Ok(value) if value.is_none_or(|value| value <= most) => value,
        Err(problem @ NumberProblem::Ambiguous { .. }) => {
            problems.push(Problem { fixes: fixes(problem.readings(text)), ..Problem::new(field, problem) });
            None
        }
        _ => {
            problems
                .push(Problem::new(field, format!("Type a number up to {}, like {like}.", text::count(most, decimal))));
            None
        }
    };
    let sugar = number("sugar", &own.sugar, 1_400.0, "250");
    let brix = number("brix", &own.brix, 85.0, "45");
    let acid = number("acid", &own.acid, 400.0, "12");
    let strength = text::read_strength(&own.strength, decimal).unwrap_or_else(|unread| {
        problems.push(Problem::unread("strength", unread));
        None
    });
    // What was typed goes before what it was made with.
    let made = text::read_figures(&own.holds, decimal);
    let reads = brix.and_then(|degrees| Brix::from_degrees(degrees).ok());
    let measured = Measured {
        strength: strength.or(made.strength),
        sugar_per_litre: sugar.and_then(|g| Mass::from_g(g).ok()).or(made.sugar_per_litre.filter(|_| reads.is_none())),
        reads,
        acid: acid.and_then(|g| Acidity::from_g_per_l(g).ok()),
        holds: made.holds,
        made: Made::No,
    };
    Some(Taken { ingredient: ingredient(&own.like)?, measured })
}
