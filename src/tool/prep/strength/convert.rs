//! A strength in every measure.

use super::{AT, GivenAs, StrengthForm, VALUE};
use crate::quantity::{Abv, Density, MassFraction, Temperature};
use crate::screen::{Answer, Bench, Figure, Problem, Strip, Tone};
use crate::substance::ethanol;
use crate::text;

impl StrengthForm {
    /// The strength typed, as a mass fraction.
    fn mass_fraction(&self, bench: &Bench, problems: &mut Vec<Problem>) -> Option<MassFraction> {
        let percent = |value: f64| Abv::from_fraction(value / 100.0).ok();
        // The unit chosen may stand behind the number too.
        let value =
            self.value.trim().trim_end_matches(|c: char| matches!(c, '%' | '°' | '/') || c.is_ascii_alphabetic());
        let mut number = |limits, words: &str| bench.number(VALUE, value, limits, words, problems);
        match self.given_as() {
            GivenAs::Volume => {
                percent(number((0.0, 100.0), "Type a percentage from 0 to 100, like 40.")?).map(ethanol::mass_fraction)
            }
            GivenAs::Mass => {
                let value = number((0.0, 100.0), "Type a percentage from 0 to 100, like 33.3.")?;
                MassFraction::from_fraction(value / 100.0).ok()
            }
            GivenAs::UsProof => {
                let value = number((0.0, 200.0), "Type a proof from 0 to 200, like 80.")?;
                ethanol::strength_of_us_proof(value).ok().map(ethanol::mass_fraction)
            }
            GivenAs::UkProof => {
                let value = number((0.0, 175.0), "Type old UK degrees from 0 to 175, like 70.")?;
                percent(value * ethanol::UK_PROOF_SPIRIT).map(ethanol::mass_fraction)
            }
            GivenAs::Density => {
                let value = number((0.7, 1.1), "Type a density in g/ml, like 0.948.")?;
                let at = bench.temperature(AT, &self.at, ethanol::VALID_CELSIUS, problems)?;
                let density = Density::from_g_per_ml(value).ok()?;
                ethanol::mass_fraction_of_density(density, at)
                    .map_err(|_| {
                        problems.push(Problem::new(
                            VALUE,
                            "No mixture of spirit and water has this density at that temperature.",
                        ));
                    })
                    .ok()
            }
        }
    }

    pub(super) fn convert(&self, mut answer: Answer, bench: &Bench) -> Answer {
        let Some(w) = self.mass_fraction(bench, &mut answer.problems) else {
            return answer.without_answer("Type a strength, like 40.");
        };
        let one = |value| text::plain(value, 1, bench.decimal);
        let percent = one(ethanol::strength(w).fraction() * 100.0);
        let uk = one(ethanol::uk_proof(w));
        let by_mass = one(w.fraction() * 100.0);
        let by_volume = Figure::new(percent, "% vol");
        // Labels give whole degrees; the cell below has the tenth.
        let us_proof = Figure::new(text::plain(ethanol::us_proof(w), 0, bench.decimal), "US proof");
        let (first, second) = match self.given_as() {
            GivenAs::Volume => (us_proof, Figure::new(by_mass.clone(), "% mass")),
            GivenAs::UsProof => (by_volume, Figure::new(by_mass.clone(), "% mass")),
            _ => (by_volume, us_proof),
        };
        let also = format!("{by_mass} % by mass, {uk} old UK degrees");
        answer.strip = Strip { figures: vec![first, second], also, tone: Tone::Answer, ..Strip::default() };
        answer.cells_title = "The same strength as";
        answer.explained(
            "by volume at 20 °C",
            Figure::new(one(ethanol::strength(w).fraction() * 100.0), "% vol"),
            "What a label states: ml of ethanol in 100 ml at 20 °C (OIML R 22).",
        );
        answer.explained(
            "US proof",
            Figure::new(one(ethanol::us_proof(w)), "°"),
            "Twice the strength by volume at 60 °F (27 CFR 5.1), so a hair off twice the label's at 20 °C.",
        );
        answer.explained(
            "by mass",
            Figure::new(by_mass, "% mass"),
            "Grams of ethanol in 100 g. Less than by volume, as ethanol is lighter than water.",
        );
        answer.explained("old UK proof", Figure::new(uk, "°"), "Before 1980: 100 degrees at 57.1 % vol.");
        if let Ok(density) = ethanol::density(w, Temperature::TWENTY) {
            answer.explained(
                "density at 20 °C",
                Figure::new(text::plain(density.g_per_ml(), 4, bench.decimal), "g/ml"),
                "Of spirit and water alone, by OIML R 22. Sugar makes a liqueur heavier.",
            );
        }
        answer.cell(
            "ethanol in 100 ml",
            Figure::new(one(ethanol::strength(w).fraction() * 100.0 * ethanol::G_PER_ML), "g"),
        );
        answer.remarks.push("OIML R 22 (1975). For spirit and water: a hydrometer reads sugar as weakness.".into());
        answer
    }
}
