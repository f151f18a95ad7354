//! What else Measure tells of what is typed: a temperature on the other scale, and the ratio of two amounts.

use super::{AMOUNT, MeasureForm};
use crate::quantity::Amount;
use crate::screen::{Answer, Bench, Figure, Problem, Strip, Tone};
use crate::text;

impl MeasureForm {
    /// A temperature typed for an amount, on the other scale.
    pub(super) fn degrees(&self, bench: &Bench) -> Answer {
        let mut answer = Answer::default();
        let Some(at) = bench.temperature(AMOUNT, &self.amount, (-273.15, 1000.0), &mut answer.problems) else {
            return answer.without_answer("");
        };
        let figure = text::other_scale(at, &self.amount, bench.decimal);
        let also = format!("is {}", self.amount.trim());
        answer.strip = Strip { figures: vec![figure], also, tone: Tone::Answer, ..Strip::default() };
        answer
    }

    /// The temperature of the liquid on the scale that it was not typed on, where one was typed.
    pub(super) fn other_degrees(&self, answer: &mut Answer, bench: &Bench) {
        let typed = self.at.trim();
        if let (false, Ok(Some(at))) =
            (typed == MeasureForm::default().at, text::read_temperature(typed, bench.decimal))
        {
            answer.cell(format!("at {typed}, that is"), text::other_scale(at, typed, bench.decimal));
        }
    }

    /// The ratio of two amounts, "1 oz : 5.75 oz".
    pub(super) fn ratio(&self, bench: &Bench) -> Answer {
        let mut answer = Answer::default();
        let sides = text::read_sides(&self.amount, &bench.reading(text::Dimension::Either));
        let (first, second) = match sides {
            Some([Amount::Volume(first), Amount::Volume(second)]) => (first.ml(), second.ml()),
            Some([Amount::Mass(first), Amount::Mass(second)]) => (first.g(), second.g()),
            Some(_) => {
                answer.problems.push(Problem::new(AMOUNT, "One is poured and the other weighed. Type two of a kind."));
                return answer.without_answer("");
            }
            None => {
                answer.problems.push(Problem::new(AMOUNT, "Type two amounts, like 1 oz : 5.75 oz."));
                return answer.without_answer("");
            }
        };
        let count = |value| text::count(value, bench.decimal);
        let parts = match second >= first {
            true => format!("1 : {}", count(second / first)),
            false => format!("{} : 1", count(first / second)),
        };
        let share = text::percent(first / (first + second), bench.decimal);
        let also = format!("The first is {share} of both together");
        answer.strip = Strip { figures: vec![Figure::new(parts, "")], also, tone: Tone::Answer, ..Strip::default() };
        answer.cells_title = "Of these two";
        answer.cell("first, of the second", Figure::new(text::percent(first / second, bench.decimal), ""));
        answer.cell("second, of the first", Figure::new(text::percent(second / first, bench.decimal), ""));
        answer
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::screen::Tool;
    use crate::text::Decimal;
    use crate::tool::shelf::settings::ShelfForm;

    fn bench() -> Bench {
        ShelfForm::default().bench(Decimal::Point)
    }

    fn strip(amount: &str) -> (String, String) {
        let form = MeasureForm { amount: amount.into(), ..MeasureForm::default() };
        let strip = form.answer(&bench()).strip;
        (strip.figures[0].to_string(), strip.also)
    }

    #[test]
    fn a_temperature_is_told_on_the_other_scale() {
        for (typed, told) in [("140 °F", "60 °C"), ("60 °C", "140 °F"), ("-40F", "−40 °C"), ("21 °C", "69.8 °F")]
        {
            assert_eq!(strip(typed), (told.into(), format!("is {typed}")), "{typed}");
        }
        assert_eq!(strip("9999 °F").0, "?");
        let tiles = |at: &str| {
            let answer = MeasureForm { at: at.into(), ..MeasureForm::default() }.answer(&bench());
            answer.cells.last().map(|cell| format!("{} {}", cell.label, cell.figure)).unwrap_or_default()
        };
        assert_eq!(tiles("50 °F"), "at 50 °F, that is 10 °C");
        assert_eq!(tiles("10"), "at 10, that is 50 °F");
        assert!(!tiles("20").contains('°'));
        let hot = MeasureForm { at: "140 °F".into(), ..MeasureForm::default() }.answer(&bench());
        assert!(hot.strip.also.starts_with("140 °F is 60 °C. Known from −20 to 40 °C."), "{}", hot.strip.also);
    }

    #[test]
    fn two_amounts_are_told_as_their_ratio() {
        for (typed, ratio, share) in [
            ("1 oz : 5.75 oz", "1 : 5.75", "14.8 %"),
            ("1:5", "1 : 5", "16.7 %"),
            ("2 oz : 30 ml", "1.97 : 1", "66.3 %"),
            ("1 : 3 oz", "1 : 3", "25.0 %"),
            ("500 g : 1 kg", "1 : 2", "33.3 %"),
        ] {
            let also = format!("The first is {share} of both together");
            assert_eq!(strip(typed), (ratio.into(), also), "{typed}");
        }
        assert_eq!(strip("1 oz : 5 g").1, "One is poured and the other weighed. Type two of a kind.");
        for typed in ["1 oz :", ":", "1 oz : 0", "a : b", "1 : 2 : 3"] {
            assert_eq!(strip(typed).1, "Type two amounts, like 1 oz : 5.75 oz.", "{typed}");
        }
    }
}
