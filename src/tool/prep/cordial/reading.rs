//! What a cordial reads as, and how it keeps.

use super::KEPT_AT;
use crate::craft::balance::balance;
use crate::craft::keeping::{ACID_FOOD, COLD_DAYS};
use crate::quantity::{Brix, Temperature};
use crate::screen::{Answer, Bench, Figure};
use crate::substance::mix::Mix;
use crate::substance::sucrose;
use crate::text;

const READS: &str = "What a refractometer shows: all that is dissolved, less about 0.2 for each percent of acid (21 CFR \
    146.132). Not the sugar alone.";
const SUGAR: &str = "Sugar alone, in a litre.";
const ACID: &str = "By titration, as citric: what the salts of juice hold is not in it.";

/// "40.1 °Bx, 25 g/l acid, pH 2.2", and the same as cells.
pub(super) fn figures(answer: &mut Answer, mix: &Mix, bench: &Bench) -> String {
    let reading = balance(mix);
    let reads = mix.reads().map_or(0.0, Brix::degrees);
    let brix = text::plain(reads, 1, bench.decimal);
    let acid = text::count(reading.acid, bench.decimal);
    answer.cells_title = "The cordial";
    answer.explained("reads", Figure::new(brix.clone(), "°Bx"), READS);
    answer.explained("sugar", Figure::new(text::count(reading.sugar, bench.decimal), "g/l"), SUGAR);
    answer.explained("acid", Figure::new(acid.clone(), "g/l"), ACID);
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
    let sweet = mix.sugar_in_water().fraction() * 100.0;
    if let Ok(limit) = sucrose::solubility(kept)
        && sweet > limit.degrees()
    {
        let limit = text::plain(limit.degrees(), 1, bench.decimal);
        let sweet = text::plain(sweet, 1, bench.decimal);
        answer.cautions.push(format!(
            "May crystallise at 4 °C: of sugar and water together {sweet} % is sugar, and {limit} % dissolves."
        ));
    }
}
