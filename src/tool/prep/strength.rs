//! Strength: one measure of it in all others, water to let a spirit down, and what pours make together.

mod blend;
mod convert;
mod let_down;

use crate::reading::label::{self, Keeps};
use crate::screen::pad::Keys;
use crate::screen::{Answer, Bench, Block, Choice, Input, Tool, choice, form};

/// What is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ask {
    /// A strength in every measure.
    Convert,
    /// Water to let a spirit down.
    Cut,
    /// What pours make together.
    Blend,
}

choice! { Ask:
    Cut = "cut", "Let down";
    Convert = "convert", "Convert";
    Blend = "blend", "Blend";
}

/// What a strength is given as.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GivenAs {
    /// By volume at 20 °C.
    Volume,
    /// US proof.
    UsProof,
    /// By mass.
    Mass,
    /// Historical UK degrees.
    UkProof,
    /// Density of plain spirit, as a hydrometer has it.
    Density,
}

choice! { GivenAs:
    Volume = "vol", "% vol";
    UsProof = "us-proof", "US proof";
    Mass = "mass", "% mass";
    UkProof = "uk-proof", "Old UK proof";
    Density = "density", "Density";
}

/// What is known of a spirit to let down.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CutBy {
    /// The spirit there is.
    Spirit,
    /// The bottle to fill.
    Bottle,
}

choice! { CutBy:
    Spirit = "spirit", "Spirit I have";
    Bottle = "bottle", "Bottle to fill";
}

form! {
    /// What is typed.
    StrengthForm {
        /// What is asked: a key of [`Ask`].
        ask = "cut",
        /// What the strength is given as: a key of [`GivenAs`].
        given_as = "vol",
        /// The strength.
        value = "40",
        /// Temperature of the density.
        at = "20",
        /// What is known: a key of [`CutBy`].
        cut_by = "spirit",
        /// The spirit there is.
        spirit = "700 ml",
        /// The bottle to fill.
        bottle = "700 ml",
        /// Strength of the spirit.
        from = "57 %",
        /// Strength wanted.
        to = "40 %",
        /// Pours, a line each.
        pours = "500 ml gin 57 %\n200 ml pear brandy\n150 ml water",
    }
}

const VALUE: &str = "value";
const AT: &str = "at";
const SPIRIT: &str = "spirit";
const BOTTLE: &str = "bottle";
const FROM: &str = "from";
const TO: &str = "to";

/// From here up a spirit catches fire at the temperature of a room (common practice, no source).
const FLAMMABLE: f64 = 0.5;

impl Tool for StrengthForm {
    fn is_tall(&self) -> bool {
        true
    }

    fn layout(&self, _bench: &Bench) -> Vec<Block> {
        let mut blocks = vec![Block::chips::<Ask>("ask", "What is asked", false)];
        blocks.extend(match self.ask() {
            Ask::Convert => {
                let is_density = self.given_as() == GivenAs::Density;
                let label = if is_density { "Density, g/ml" } else { "Strength" };
                let mut blocks = vec![
                    Block::chips::<GivenAs>("given_as", "Given as", false),
                    Block::amount(VALUE, label, Keys::Count),
                ];
                if is_density {
                    blocks.push(Block::amount(AT, "Temperature", Keys::Celsius));
                }
                blocks
            }
            Ask::Cut => vec![
                Block::Heading("Dilute a spirit"),
                match self.cut_by() {
                    CutBy::Spirit => Block::amount(SPIRIT, "Spirit", Keys::Bulk),
                    CutBy::Bottle => Block::amount(BOTTLE, "Bottle to fill", Keys::Batch),
                },
                Block::amount(FROM, "Strength of the spirit", Keys::Percent),
                Block::amount(TO, "Strength wanted", Keys::Percent),
                Block::chips::<CutBy>("cut_by", "What is known", true),
            ],
            Ask::Blend => vec![
                Block::field(
                    "pours",
                    "What goes in, a line each",
                    Input::Lines { placeholder: "like 500 ml gin 57 %\n200 ml water" },
                ),
                Block::Table("", Vec::new()),
            ],
        });
        blocks
    }

    fn answer(&self, bench: &Bench) -> Answer {
        let mut answer = match self.ask() {
            Ask::Convert => self.convert(Answer::default(), bench),
            Ask::Cut => self.let_down(Answer::default(), bench),
            Ask::Blend => self.blend(Answer::default(), bench),
        };
        label::offer("Spirit, let down", Some(Keeps::Long), &mut answer);
        answer
    }

    fn empty(&mut self) {
        let texts = match self.ask() {
            Ask::Convert => [&mut self.value, &mut self.at],
            Ask::Cut => [&mut self.spirit, &mut self.bottle],
            Ask::Blend => return self.pours.clear(),
        };
        for text in texts {
            text.clear();
        }
    }

    fn take(&mut self, name: &str, text: &str) {
        if name == SPIRIT {
            text.clone_into(&mut self.spirit);
            Ask::Cut.key().clone_into(&mut self.ask);
            CutBy::Spirit.key().clone_into(&mut self.cut_by);
        }
    }
}

impl StrengthForm {
    fn ask(&self) -> Ask {
        Ask::read(&self.ask)
    }

    fn given_as(&self) -> GivenAs {
        GivenAs::read(&self.given_as)
    }

    fn cut_by(&self) -> CutBy {
        CutBy::read(&self.cut_by)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::screen::route::Route;
    use crate::tool::Change;
    use crate::tool::after;

    fn strip(change: impl FnOnce(&mut StrengthForm)) -> (String, String) {
        let mut form = StrengthForm::default();
        change(&mut form);
        let strip = form.answer(&Bench::default()).strip;
        let figures: Vec<String> = strip.figures.iter().map(ToString::to_string).collect();
        (figures.join(" + "), [strip.also, strip.below].join(". ").trim_end_matches(". ").to_owned())
    }

    #[test]
    fn lets_a_spirit_down() {
        let (figures, also) = strip(|form| {
            form.spirit = "1 l".into();
            form.from = "50".into();
        });
        assert_eq!(figures, "255 g water");
        assert_eq!(also, "Weighed, or 255 ml at 20 °C. Makes 1\u{202f}250 ml at 40.0 % vol");
        let (figures, _) = strip(|form| {
            form.cut_by = "bottle".into();
            form.from = "100 proof".into();
        });
        assert_eq!(figures, "559 ml spirit + 143 g water");
        assert!(strip(|form| form.to = "60".into()).1.starts_with("Water only makes it weaker."));
        assert!(strip(|form| form.to = "0".into()).1.starts_with("No amount of water"));
    }

    #[test]
    fn converts() {
        assert_eq!(strip(|form| form.ask = "convert".into()).0, "80 US proof + 33.3 % mass");
        let (figures, _) = strip(|form| {
            form.ask = "convert".into();
            form.given_as = "density".into();
            form.value = "0.94805".into();
        });
        assert_eq!(figures, "40.0 % vol + 80 US proof");
        let (figures, _) = strip(|form| {
            form.ask = "convert".into();
            form.given_as = "uk-proof".into();
            form.value = "70".into();
        });
        assert!(figures.starts_with("40.0 % vol"), "{figures}");
    }

    #[test]
    fn a_tap_settles_an_unknown_pour() {
        let form =
            StrengthForm { ask: "blend".into(), pours: "1 l gin\n100 ml moon dust".into(), ..Default::default() };
        let row = &form.answer(&Bench::default()).rows[1];
        let texts =
            [("ask", "blend"), ("pours", form.pours.as_str())].map(|(name, text)| (name.to_owned(), text.to_owned()));
        let deed = Change::Rewrite(&row.typed, &row.fixes[0].text);
        let after = after(Route::Strength, &texts.into(), deed);
        assert_eq!(after["pours"], "1 l gin\n100 ml moon dust (as spirit)");
    }

    #[test]
    fn blends() {
        let (figures, also) = strip(|form| {
            form.ask = "blend".into();
            form.pours = "1 l neutral spirit 95 %\n1 l water".into();
        });
        assert!(figures.starts_with("48."), "{figures}");
        assert!(figures.ends_with("1\u{202f}941 ml"), "{figures}");
        assert!(also.ends_with("ml lost to contraction"), "{also}");
        let asked = strip(|form| {
            form.ask = "blend".into();
            form.pours = "1 l gin\n100 ml moon dust".into();
        });
        assert_eq!(asked.1, "Without “moon dust”: see its line below");
    }
}
