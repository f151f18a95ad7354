//! Acid: powders and water in place of citrus and back, juice made sharper, one acid for another, titration.

mod sharpen;
mod stand_in;
mod swap;

use crate::quantity::Mass;
use crate::reading::label;
use crate::screen::pad::Keys;
use crate::screen::{Answer, Bench, Block, Choice, Figure, Opt, Tool, choice, form};
use crate::substance::juice::{Citrus, JuiceAcids, PROFILES};
use crate::text;

/// What is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ask {
    /// Juice → powders and water.
    Replace,
    /// Powders → juice.
    Backwards,
    /// A juice brought to an acidity.
    Sharpen,
    /// One acid for another.
    Swap,
    /// Acidity from a titration.
    Titrate,
}

choice! { Ask:
    Replace = "replace", "Replace juice";
    Backwards = "powder", "Use up powder";
    Sharpen = "sharpen", "Sharpen";
    Swap = "swap", "Swap acids";
    Titrate = "titrate", "Titrate";
}

/// The finest step of the scale.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ScaleStep {
    /// 0.1 g.
    Tenth,
    /// 0.01 g.
    Hundredth,
    /// 1 g.
    Gram,
}

choice! { ScaleStep:
    Tenth = "0.1", "0.1 g";
    Hundredth = "0.01", "0.01 g";
    Gram = "1", "1 g";
}

impl ScaleStep {
    fn grams(self) -> Mass {
        let grams = match self {
            ScaleStep::Hundredth => 0.01,
            ScaleStep::Tenth => 0.1,
            ScaleStep::Gram => 1.0,
        };
        Mass::from_g(grams).unwrap_or(Mass::ZERO)
    }

    const fn decimals(self) -> usize {
        match self {
            ScaleStep::Hundredth => 2,
            ScaleStep::Tenth => 1,
            ScaleStep::Gram => 0,
        }
    }
}

form! {
    /// What is typed.
    AcidForm {
        /// Which way: a key of [`Ask`].
        direction = "replace",
        /// Juice to replace.
        juice = "300 ml",
        /// Key of the profile, or [`OWN`]; empty for limes as the shelf has them.
        profile = "",
        /// Own profile: citric acid, g/l.
        own_citric = "45",
        /// Own profile: malic acid, g/l.
        own_malic = "15",
        /// What the scale reads to: a key of [`ScaleStep`].
        step = "0.1",
        /// Citric acid there is.
        citric = "12 g",
        /// Malic acid there is.
        malic = "6 g",
        /// Liquid to make sharper.
        liquid = "500 ml",
        /// Key of what it is, or [`OWN`].
        liquid_of = "orange-juice",
        /// Its acidity, g/l as citric.
        liquid_acid = "9",
        /// Key of the profile it is to be as sour as, or [`OWN`].
        sour_as = "lime-2008",
        /// Acidity wanted, g/l as citric.
        wanted_acid = "45",
        /// Acids to do it with: a key of [`Blend`](sharpen::Blend).
        blend = "citric",
        /// Parts of citric acid in a blend of one's own.
        part_citric = "2",
        /// Parts of malic acid.
        part_malic = "1",
        /// Parts of tartaric acid.
        part_tartaric = "0",
        /// Parts of lactic acid.
        part_lactic = "0",
        /// Acid to swap.
        swapped = "10 g",
        /// Key of the acid there was.
        swap_from = "citric-acid",
        /// Key of the acid there is.
        swap_to = "malic-acid",
        /// Base used in a titration.
        base = "12.5 ml",
        /// Its normality.
        normality = "0.1",
        /// Juice titrated.
        sample = "2 ml",
        /// Key of the acid it is counted as.
        counted_as = "citric-acid",
    }
}

const JUICE: &str = "juice";
const OWN_CITRIC: &str = "own_citric";
const OWN_MALIC: &str = "own_malic";
const CITRIC: &str = "citric";
const MALIC: &str = "malic";
/// Profile key of the person's own figures.
pub const OWN: &str = "own";

/// Acid that still dissolves and is still a juice: 0 to 400 g/l.
const MOST_ACID: f64 = 400.0;

impl Tool for AcidForm {
    fn is_tall(&self) -> bool {
        true
    }

    fn show(&mut self, bench: &Bench) -> (Vec<Block>, Answer) {
        if self.profile.is_empty() {
            self.profile = JuiceAcids::of("lime", bench.house.citrus).unwrap_or(&PROFILES[0]).key.into();
        }
        (self.layout(bench), self.answer(bench))
    }

    fn layout(&self, _bench: &Bench) -> Vec<Block> {
        let mut blocks = vec![Block::chips::<Ask>("direction", "What is asked", false)];
        blocks.extend(match self.ask() {
            Ask::Replace => {
                let mut blocks = vec![Block::amount(JUICE, "Juice to replace", Keys::Batch)];
                blocks.extend(self.profile_layout());
                blocks.push(Block::chips::<ScaleStep>("step", "Weighed to", true));
                blocks
            }
            Ask::Backwards => {
                let mut blocks = vec![
                    Block::amount(CITRIC, "Citric acid", Keys::Weight),
                    Block::amount(MALIC, "Malic acid", Keys::Weight),
                ];
                blocks.extend(self.profile_layout());
                blocks
            }
            Ask::Sharpen => self.sharpen_layout(),
            Ask::Swap => swap::swap_layout(),
            Ask::Titrate => swap::titration_layout(),
        });
        blocks
    }

    fn answer(&self, bench: &Bench) -> Answer {
        let mut answer = Answer::default();
        answer.cautions.push("Food-grade acid only. Keep the powder and strong solutions off eyes and skin.".into());
        let mut answer = match self.ask() {
            Ask::Replace => {
                let acids = self.acids(bench, &mut answer.problems);
                self.replace(answer, acids, bench)
            }
            Ask::Backwards => {
                let acids = self.acids(bench, &mut answer.problems);
                self.backwards(answer, acids, bench)
            }
            Ask::Sharpen => self.sharpen(answer, bench),
            Ask::Swap => self.swap(answer, bench),
            Ask::Titrate => self.titrate(answer, bench),
        };
        label::offer("Acid solution", None, &mut answer);
        answer
    }

    fn empty(&mut self) {
        match self.ask() {
            Ask::Replace => self.juice.clear(),
            Ask::Backwards => {
                self.citric.clear();
                self.malic.clear();
            }
            Ask::Sharpen => self.liquid.clear(),
            Ask::Swap => self.swapped.clear(),
            Ask::Titrate => {
                self.base.clear();
                self.sample.clear();
            }
        }
    }

    fn take(&mut self, name: &str, text: &str) {
        if name == JUICE {
            text.clone_into(&mut self.juice);
            Ask::Replace.key().clone_into(&mut self.direction);
        }
    }
}

impl AcidForm {
    fn ask(&self) -> Ask {
        Ask::read(&self.direction)
    }

    /// What a juice is taken as, and the figures of one's own.
    fn profile_layout(&self) -> Vec<Block> {
        let mut blocks = vec![Block::pick("profile", "Juice", profiles())];
        if self.named_profile().is_none() {
            blocks.push(Block::amount(OWN_CITRIC, "Citric acid, g/l", Keys::Count));
            blocks.push(Block::amount(OWN_MALIC, "Malic acid, g/l", Keys::Count));
        }
        blocks
    }

    /// An acid to weigh, as the scale shows it.
    fn weighed(&self, mass: Mass, name: &str, bench: &Bench) -> Figure {
        let figure = text::grams(mass, self.step().decimals(), bench.decimal);
        Figure::new(figure.value, format!("{} {name}", figure.unit))
    }

    fn step(&self) -> ScaleStep {
        ScaleStep::read(&self.step)
    }

    fn named_profile(&self) -> Option<&'static JuiceAcids> {
        match self.profile.as_str() {
            "" => JuiceAcids::of("lime", Citrus::default()),
            key => PROFILES.iter().find(|profile| profile.key == key),
        }
    }
}

/// The named profiles, and one's own.
fn profiles() -> Vec<Opt> {
    let named = PROFILES.iter().map(|profile| Opt::new(profile.key, profile.name));
    named.chain([Opt::new(OWN, "My own")]).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::screen::Tone;

    #[test]
    fn replaces_lime_by_the_bar_rule() {
        let by_the_rule = AcidForm { profile: "lime-bar".into(), ..AcidForm::default() };
        let answer = by_the_rule.answer(&Bench::default());
        let figures: Vec<String> = answer.strip.figures.iter().map(ToString::to_string).collect();
        assert_eq!(figures, ["12.0 g citric", "6.0 g malic"]);
        let strip = &answer.strip;
        assert_eq!(
            (strip.also.as_str(), strip.below.as_str()),
            ("in water to 300 ml", "As sour as that much lime juice")
        );
        assert_eq!(answer.cells[0].figure.to_string(), "289 ml");
        // 59.1 against 45.9 − 1.6 g/l.
        let said =
            |answer: &Answer| answer.cautions.iter().find(|words| words.contains("as Balance counts it")).cloned();
        assert!(
            said(&answer).is_some_and(|words| words.starts_with("33 % sourer than lime juice")),
            "{:?}",
            answer.cautions
        );
    }

    #[test]
    fn limes_are_the_same_here_and_in_balance() {
        let mut bench = Bench::default();
        bench.house.citrus = Citrus::BarRule;
        let mut form = AcidForm::default();
        let (_, answer) = form.show(&bench);
        assert_eq!(form.profile, "lime-bar");
        assert!(!answer.cautions.iter().any(|words| words.contains("Balance")), "{:?}", answer.cautions);
        let lime =
            crate::craft::pour::litre_of(&bench.house.takes(crate::book::ingredient("lime-juice").expect("lime")));
        let titrates = lime.titratable_acidity().map_or(0.0, crate::quantity::Acidity::g_per_l);
        assert!((titrates - 59.1).abs() < 0.01, "{titrates}");
        // As published: its salts hold 1.6 of 45.9 g/l.
        let (_, answer) = AcidForm::default().show(&Bench::default());
        assert!(
            answer.remarks.iter().any(|words| words.starts_with("4 % sourer than lime juice")),
            "{:?}",
            answer.remarks
        );
    }

    #[test]
    fn says_the_true_strength_after_rounding() {
        let form =
            AcidForm { juice: "10 ml".into(), step: "1".into(), profile: "lime-2008".into(), ..Default::default() };
        let answer = form.answer(&Bench::default());
        assert!(answer.problems[0].words.starts_with("Under one step of a 1 g scale"));
        let form = AcidForm { juice: "30 ml".into(), ..form };
        let answer = form.answer(&Bench::default());
        assert_eq!(answer.strip.figures[0].to_string(), "1 g citric");
        assert_eq!(answer.cells[1].figure.to_string(), "72.6 %");
    }

    #[test]
    fn backwards_is_the_inverse() {
        let form = AcidForm { direction: "powder".into(), profile: "lime-bar".into(), ..Default::default() };
        assert_eq!(form.answer(&Bench::default()).strip.figures[0].to_string(), "300 ml lime juice");
        let none = AcidForm { citric: String::new(), malic: String::new(), ..form };
        assert_eq!(none.answer(&Bench::default()).strip.tone, Tone::Waiting);
    }

    fn asked(ask: &str, change: impl FnOnce(&mut AcidForm)) -> (String, String) {
        let mut form = AcidForm { direction: ask.into(), ..Default::default() };
        change(&mut form);
        let strip = form.answer(&Bench::default()).strip;
        let figures: Vec<String> = strip.figures.iter().map(ToString::to_string).collect();
        (figures.join(" + "), [strip.also, strip.below].join(": "))
    }

    #[test]
    fn sharpens_orange_to_lime() {
        // 500 ml from 9.1 − 2.88 to 45.9 − 1.6 g/l by titration: (44.3 − 6.22) × 0.5 / (1 − 0.0006 × 44.3) = 19.56 g.
        let (figures, also) = asked("sharpen", |_| {});
        assert_eq!(figures, "19.6 g citric");
        // The worked example of the trade by typed titrations: (60 − 20.72) / (1 − 0.0006 × 60) = 40.75 g a litre.
        let (typed, _) = asked("sharpen", |form| {
            (form.liquid_of, form.liquid_acid) = (OWN.into(), "20.72".into());
            (form.sour_as, form.wanted_acid, form.liquid) = (OWN.into(), "60".into(), "1 l".into());
        });
        assert_eq!(typed, "40.7 g citric");
        assert_eq!(also, "into Orange juice: Makes 512 ml as sour as lime juice, pH about 2.4");
        let (figures, _) = asked("sharpen", |form| form.blend = "2:1".into());
        assert!(figures.contains("citric + 6."), "{figures}");
        let (figures, also) = asked("sharpen", |form| {
            form.blend = "own".into();
            form.part_lactic = "1".into();
        });
        assert!(figures.ends_with("g acids") && also.contains("g lactic, 80 %"), "{figures} {also}");
        let (figures, also) = asked("sharpen", |form| {
            form.liquid_of = OWN.into();
            // 500 ml × (91.8 / 44.3 − 1).
            form.liquid_acid = "91.8".into();
        });
        assert_eq!((figures.as_str(), also.starts_with("Thin it")), ("536 ml water", true));
    }

    #[test]
    fn swaps_and_titrates() {
        // 10 g × (134.09 / 2) / (192.12 / 3).
        assert_eq!(asked("swap", |_| {}).0, "10.5 g");
        let (figures, _) = asked("swap", |form| form.swap_from = "citric-monohydrate".into());
        assert_eq!(figures, "9.6 g");
        // 12.5 ml of 0.1 N in 2 ml: 0.625 eq/l × 64.04 g.
        assert_eq!(asked("titrate", |_| {}).0, "40 g/l");
    }
}
