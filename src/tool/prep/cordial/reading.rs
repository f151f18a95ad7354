//! What a cordial reads as, and how it keeps.

use super::KEPT_AT;
use crate::craft::balance::balance;
use crate::craft::keeping::{ACID_FOOD, COLD_DAYS};
use crate::quantity::Temperature;
use crate::screen::{Answer, Bench, Figure};
use crate::substance::mix::Mix;
use crate::substance::sucrose;
use crate::text;

/// "40.1 °Bx, 25 g/l acid, pH 2.2", and the same as cells.
pub(super) fn figures(answer: &mut Answer, mix: &Mix, bench: &Bench) -> String {
    let reading = balance(mix);
    let brix = text::plain(mix.sweetness().fraction() * 100.0, 1, bench.decimal);
    let acid = text::count(reading.acid, bench.decimal);
    answer.cells_title = "The cordial";
    answer.explained(
        "sweetness",
        Figure::new(brix.clone(), "°Bx"),
        "Sugar by weight, which is what a refractometer shows, give or take the acid and what else is dissolved.",
    );
    answer.explained("acid", Figure::new(acid.clone(), "g/l"), "As citric acid, by titration.");
    let ph = reading.ph.map(|ph| text::plain(ph, 1, bench.decimal));
    if let Some(ph) = &ph {
        answer.explained(
            "pH",
            Figure::new(ph.clone(), ""),
            "At 25 °C, from its acids and the salts of juice: an estimate. Measure it where it matters.",
        );
    }
    answer.cell("weighs", text::grams(mix.mass(), 0, bench.decimal));
    let ph = ph.map_or_else(String::new, |ph| format!(", pH {ph}"));
    format!("{brix} °Bx, acid {acid} g/l{ph}")
}

/// How it keeps, and what it must stay below.
pub(super) fn keeping(answer: &mut Answer, mix: &Mix, bench: &Bench) {
    answer.cautions.push(format!(
        "Keep it at 5 °C or below, {COLD_DAYS} days with the day it is made (FDA Food Code 3-501.17, from memory). Your local food code goes first."
    ));
    if balance(mix).ph.is_none_or(|ph| ph > ACID_FOOD) {
        answer
            .cautions
            .push("Not sour enough to be an acid food, pH 4.6 (21 CFR 114.3): keep it cold and short.".into());
    }
    let kept = Temperature::from_celsius(KEPT_AT).unwrap_or(Temperature::TWENTY);
    let sweet = mix.sweetness().fraction() * 100.0;
    if let Ok(limit) = sucrose::solubility(kept)
        && sweet > limit.degrees()
    {
        let limit = text::plain(limit.degrees(), 1, bench.decimal);
        answer.cautions.push(format!("May crystallise at 4 °C, where {limit} °Bx dissolve."));
    }
}
