//! A syrup put right, and sugar into juice.

use super::{
    JUICE, JUICE_READS, JUICE_WANTS, READS, REFRACTOMETER, SYRUP, SyrupForm, WANTS, degrees, figures, warn_of_crystals,
    weighed,
};
use crate::craft::syrup::{self, Correction};
use crate::quantity::{Brix, Mass, Temperature};
use crate::screen::route::Route;
use crate::screen::{Answer, Bench, Figure, Problem, Strip, Tone};
use crate::substance::sucrose;
use crate::text::{self, Dimension, Sweetness};

impl SyrupForm {
    pub(super) fn correct(&self, mut answer: Answer, bench: &Bench) -> Answer {
        let problems = &mut answer.problems;
        let amount = bench.amount(SYRUP, &self.syrup, Dimension::Either, problems);
        let reads = self.brix(READS, &self.reads, bench, problems);
        let wants = self.brix(WANTS, &self.wants, bench, problems);
        let (Some(amount), Some(reads), Some(wants)) = (amount, reads, wants) else {
            return answer.without_answer("Type how much syrup, what it reads, and what it should be.");
        };
        answer.cautions.push(REFRACTOMETER.into());
        let Some(mass) = weighed(amount, reads) else { return answer.without_answer("") };
        let Some(correction) = syrup::correct(mass, reads, wants) else {
            answer
                .problems
                .push(Problem::new(WANTS, "No sugar and no water gets there. Type a sweetness from 1 to 85 °Bx."));
            return answer.without_answer("");
        };
        let (figure, more) = match correction {
            Correction::Sugar(sugar) => (bench.grams_of(sugar, "sugar"), sugar),
            Correction::Water(water) => (bench.grams_of(water, "water"), water),
        };
        self.corrected(answer, figure, (mass, more), (reads, wants), bench)
    }

    /// Sugar into juice: to a sweetness, or so many parts to one of juice by weight.
    pub(super) fn sweeten(&self, mut answer: Answer, bench: &Bench) -> Answer {
        let problems = &mut answer.problems;
        let amount = bench.amount(JUICE, &self.juice, Dimension::Either, problems);
        let reads = Self::read(JUICE_READS, &self.juice_reads, bench, problems);
        let wants = Self::read(JUICE_WANTS, &self.juice_wants, bench, problems);
        let reads = match reads {
            Some(Sweetness::Parts(_)) => {
                problems.push(Problem::new(JUICE_READS, "Type what the juice reads in °Bx, like 11."));
                None
            }
            Some(Sweetness::Degrees(brix)) => Some(brix),
            None => None,
        };
        let (Some(amount), Some(reads), Some(wants)) = (amount, reads, wants) else {
            return answer.without_answer("Type how much juice, what it reads, and how sweet it should be.");
        };
        answer.cautions.push(REFRACTOMETER.into());
        answer.remarks.push(
            "Sour juice reads a little low: add 0.2 °Bx for each 1 % of citric acid in it (21 CFR 146.132).".into(),
        );
        let Some(mass) = weighed(amount, reads) else { return answer.without_answer("") };
        let sugar = match wants {
            Sweetness::Parts(parts) => Some(mass * parts),
            Sweetness::Degrees(brix) => match syrup::correct(mass, reads, brix) {
                Some(Correction::Sugar(sugar)) => Some(sugar),
                _ => None,
            },
        };
        let Some(sugar) = sugar else {
            answer
                .problems
                .push(Problem::new(JUICE_WANTS, "The juice is sweeter than that already. Type more than it reads."));
            return answer.without_answer("");
        };
        let figure = bench.grams_of(sugar, "sugar");
        let held = mass.g() * reads.degrees() / 100.0 + sugar.g();
        match Brix::from_degrees(100.0 * held / (mass + sugar).g()) {
            Ok(made) => self.corrected(answer, figure, (mass, sugar), (reads, made), bench),
            Err(_) => answer.without_answer(""),
        }
    }

    /// Shows what `more` makes of `mass`, now at the second sweetness.
    fn corrected(
        &self,
        mut answer: Answer,
        figure: Figure,
        (mass, more): (Mass, Mass),
        (reads, makes): (Brix, Brix),
        bench: &Bench,
    ) -> Answer {
        let whole = mass + more;
        let Ok(density) = sucrose::density(makes, Temperature::TWENTY) else {
            answer.problems.push(Problem::new(JUICE_WANTS, "That is too much sugar to dissolve. Type less."));
            return answer.without_answer("");
        };
        let volume = whole.volume_at(density);
        let ml = text::litres_or_ml(volume, bench.decimal);
        let degrees = degrees(makes, bench);
        let is_right = more.g() < 0.05;
        answer.strip = Strip {
            figures: vec![figure],
            also: if is_right {
                "It is right already".into()
            } else {
                format!("Stir it in: makes {ml} at {degrees} °Bx")
            },
            tone: Tone::Answer,
            ..Strip::default()
        };
        answer.cells_title = "Then";
        figures(&mut answer, makes, bench);
        let was = mass.volume_at(sucrose::density(reads, Temperature::TWENTY).unwrap_or(density));
        answer.cell("before", text::litres_or_ml(was, bench.decimal));
        warn_of_crystals(&mut answer, makes, Temperature::TWENTY, bench);
        answer.remarks.push("ICUMSA formula (Bubník et al. 1995), all of it counted as sucrose.".into());
        answer.carry("Into serves", Route::Serves.href_with("made", &bench.carried(volume)));
        answer
    }
}
