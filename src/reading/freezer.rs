//! What a drink is in a freezer, in words.

use crate::craft::freezer::{self, Frozen, State};
use crate::quantity::{Mass, Temperature};
use crate::screen::{Answer, Bench, Figure};
use crate::substance::mix::Mix;
use crate::text;

/// A freezer's, °C: what quick-frozen food is kept at. Source: Council Directive 89/108/EEC, from memory.
const FREEZER: f64 = -18.0;

const IN_IT: &str = "As it stands here, before ice. Ice is water alone, so what is left freezes colder. Up to half ice is a \
    slush; what has none is syrupy from −10 °C (rule of thumb). Glass bursts when it freezes solid.";

const BEGINS: &str = "Where ice begins to form. From tables for spirit and for sugar in water, added up: our own rule, \
    an estimate.";

/// What it is at −18 °C, as far as the tables reach.
pub(crate) fn in_freezer(drink: &Mix) -> Option<Frozen> {
    freezer::at(drink, Temperature::from_celsius(FREEZER).ok()?).ok()
}

/// "slush", "38 % ice".
pub(crate) fn state(frozen: &Frozen, bench: &Bench) -> Figure {
    let word = match frozen.state {
        State::Pours => "pours",
        State::Syrupy => "syrupy",
        State::Slush => "slush",
        State::Solid => "solid",
    };
    let ice = match frozen.ice > Mass::ZERO {
        true => format!("{} % ice", text::plain(frozen.share.value() * 100.0, 0, bench.decimal)),
        false => "no ice".to_owned(),
    };
    Figure::new(word, if frozen.bounded && frozen.ice > Mass::ZERO { format!("{ice} or more") } else { ice })
}

/// Where it begins to freeze; nothing of what does so beyond the tables.
pub(crate) fn begins(answer: &mut Answer, frozen: &Frozen, bench: &Bench) {
    if frozen.ice > Mass::ZERO || !frozen.bounded {
        let begins = text::plain(frozen.begins.celsius(), 1, bench.decimal);
        answer.explained("starts to freeze", Figure::new(begins, "°C"), BEGINS);
    }
}

/// What a drink is at −18 °C, and where it begins to freeze, as small figures.
pub(crate) fn freezer_cells(answer: &mut Answer, drink: &Mix, bench: &Bench) {
    if let Some(frozen) = in_freezer(drink) {
        answer.explained("at −18 °C", state(&frozen, bench), IN_IT);
        begins(answer, &frozen, bench);
    }
}
