//! Melt: how much water comes off the ice in a glass while it is drunk, between two edges.

use super::{HOLDS, ICE, IceForm, MINUTES, ROOM};
use crate::craft::ice::{COMES_IN, comes_in, gone_in, melted};
use crate::screen::picture::{Line, Picture};
use crate::screen::{Answer, Bench, Figure, Problem, Row, Strip, Tone};
use crate::text;

/// Points of a line, to twice the time.
const STEPS: u8 = 24;
/// Times that are told besides, minutes.
const TOLD: [f64; 4] = [5.0, 10.0, 20.0, 40.0];

impl IceForm {
    pub(super) fn melt(&self, mut answer: Answer, bench: &Bench) -> Answer {
        let problems = &mut answer.problems;
        let ice = bench.mass(ICE, &self.ice, problems);
        let holds = bench.volume(HOLDS, &self.holds, problems);
        let room = bench.temperature(ROOM, &self.room, (0.0, 45.0), problems);
        let words = "Type minutes, from 1 to 600.";
        let minutes = bench.number(MINUTES, &self.minutes, (1.0, 600.0), words, problems);
        let (Some(ice), Some(holds), Some(room), Some(minutes)) = (ice, holds, room, minutes) else {
            return answer.without_answer("Type the ice, what the glass holds, and how long it stands.");
        };
        if ice.g() > holds.ml() {
            let words = "That is more ice than the glass holds. Type ice and drink together.";
            answer.problems.push(Problem::new(HOLDS, words));
            return answer.without_answer("");
        }
        let watts = comes_in(holds, room);
        let water = |watts: f64, minutes: f64| melted(ice, watts, minutes * 60.0).g();
        let grams = |minutes: f64| {
            let [least, most] = watts.map(|watts| text::count(water(watts, minutes).round(), bench.decimal));
            if least == most { most } else { format!("{least}–{most}") }
        };
        let minute = |minutes: f64| text::count(minutes, bench.decimal);
        let [slow, fast] = watts.map(|watts| gone_in(ice, watts).map(|seconds| minute((seconds / 60.0).round())));
        let gone = slow.zip(fast).map(|(slow, fast)| format!("gone in {fast}–{slow} min"));
        answer.strip = Strip {
            figures: vec![Figure::new(grams(minutes), "g of water")],
            also: format!("in {} min; {}", minute(minutes), gone.unwrap_or_else(|| "in the cold it stays".into())),
            tone: Tone::Answer,
            ..Strip::default()
        };
        let after = |minutes: f64| format!("{} g after {} min", grams(minutes), minute(minutes));
        let line = |name, watts: f64| Line {
            name,
            points: (0..=STEPS)
                .map(|step| f64::from(step) / f64::from(STEPS) * 2.0 * minutes)
                .map(|minutes| [minutes * 60.0, water(watts, minutes)])
                .collect(),
            now: water(watts, minutes),
            unit: "",
        };
        let told = |minutes: f64| (minutes * 60.0, format!("{} min", minute(minutes)));
        let curve = Picture::Curve {
            text: format!("{}, {}", after(minutes), after(2.0 * minutes)),
            lines: vec![line("g, in a hand", watts[1]), line("g, left alone", watts[0])],
            seconds: [minutes * 60.0, 2.0 * minutes * 60.0],
            foot: [0.0, minutes, 2.0 * minutes].map(told).into(),
        };
        answer.pictures.push(("Water off the ice".into(), curve));
        let row = |after: f64| Row {
            name: format!("{} min", minute(after)),
            amount: format!("{} g", grams(after)),
            ..Row::default()
        };
        answer.rows = TOLD.into_iter().filter(|after| (*after - minutes).abs() > 0.5).map(row).collect();
        let [dry, wet] = COMES_IN.map(|each| text::plain(each, 0, bench.decimal));
        answer
            .notes
            .push("Drink and ice as cold as each other: the water of the stir or the shake came before.".into());
        answer.remarks.push(format!("By the heat that comes in: {dry} W/(m² K) for a dry glass left alone to {wet} for a wet one or a hand round it, rule of thumb, on the surface of a glass as high as it is wide. Melting takes 333.4 kJ/kg (IAPWS)."));
        answer
    }
}
