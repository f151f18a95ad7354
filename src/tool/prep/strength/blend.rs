//! What pours make together.

use super::StrengthForm;
use crate::craft::balance::balance as read_mix;
use crate::reading::{self, Contents, counted_row};
use crate::screen::route::Route;
use crate::screen::{Answer, Bench, Figure, Strip, Tone};
use crate::substance::ethanol;
use crate::text;

impl StrengthForm {
    pub(super) fn blend(&self, mut answer: Answer, bench: &Bench) -> Answer {
        let read = Contents::of(&self.pours, bench);
        if read.lines.is_empty() {
            return answer.without_answer("Type what goes in, a line each, like 500 ml gin 57 %.");
        }
        answer.rows_title = "What each brings";
        answer.rows = read.pairs().map(|line| counted_row(line, &read.mix, bench)).collect();
        answer.leads = read.not_counted();
        if !read.is_something() {
            return answer.without_answer("None of it can be counted yet: see its lines below.");
        }
        let reading = read_mix(&read.mix);
        let strength = text::plain(reading.strength.fraction() * 100.0, 1, bench.decimal);
        let apart = read.apart;
        answer.strip = Strip {
            figures: vec![Figure::new(strength, "% vol"), bench.headline(reading.volume, None)],
            also: match read.missing.first() {
                Some(name) => format!("Without “{name}”: see its line below"),
                None => format!("{} lost to contraction", text::millilitres(apart.less(reading.volume), bench.decimal)),
            },
            tone: Tone::Answer,
            ..Strip::default()
        };
        answer.cells_title = "Together";
        let proof = ethanol::us_proof(ethanol::mass_fraction(reading.strength));
        answer.cell("US proof", Figure::new(text::plain(proof, 1, bench.decimal), "°"));
        answer.cell("ethanol", text::grams(read.mix.ethanol, 1, bench.decimal));
        answer.cell("sugar", Figure::new(text::count(reading.sugar, bench.decimal), "g/l"));
        if !read.missing.is_empty() {
            answer.cell("lost to contraction", text::millilitres(apart.less(reading.volume), bench.decimal));
        }
        reading::ask_part(&mut answer, "pours", &self.pours, &read.lines, bench);
        answer.remarks.push("Give a strength behind a name: gin 57 %, rum 126 proof.".into());
        answer.carry("Into serves", Route::Serves.href_with("made", &bench.carried(reading.volume)));
        answer
    }
}
