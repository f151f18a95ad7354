//! A juice brought to the sourness of another.

use super::{AcidForm, MOST_ACID, OWN, profiles};
use crate::book::{Ingredient, Kind, LIBRARY, Measured, Taken, ingredient};
use crate::craft::pour::pour;
use crate::craft::sharpen::{sharpen, with_powders};
use crate::quantity::{Acidity, Amount, Density, Mass, Temperature, Volume};
use crate::screen::pad::Keys;
use crate::screen::route::Route;
use crate::screen::{Answer, Bench, Block, Choice, Figure, Opt, Problem, Strip, Tone, choice};
use crate::substance::juice::PROFILES;
use crate::substance::mix::Mix;
use crate::substance::ph::INDICATIVE_ABOVE;
use crate::text;

/// Acids to sharpen with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Blend {
    /// Citric.
    Citric,
    /// Two parts citric, one malic.
    TwoToOne,
    /// Malic.
    Malic,
    /// Tartaric.
    Tartaric,
    /// Lactic, sold at 80 %.
    Lactic,
    /// Parts of one's own.
    Own,
}

choice! { Blend:
    Citric = "citric", "Citric";
    TwoToOne = "2:1", "Citric 2 to malic 1";
    Malic = "malic", "Malic";
    Tartaric = "tartaric", "Tartaric";
    Lactic = "lactic", "Lactic, 80 %";
    Own = "own", "My own parts";
}

const LIQUID: &str = "liquid";
const LIQUID_ACID: &str = "liquid_acid";
const WANTED_ACID: &str = "wanted_acid";
const PARTS: [(&str, &str, &str); 4] = [
    ("part_citric", "Parts of citric", "citric-acid"),
    ("part_malic", "Parts of malic", "malic-acid"),
    ("part_tartaric", "Parts of tartaric", "tartaric-acid"),
    ("part_lactic", "Parts of lactic, 80 %", "lactic-acid"),
];

const ACIDITY_WORDS: &str = "Type grams per litre from 0 to 400, like 9.";

impl AcidForm {
    pub(super) fn sharpen_layout(&self) -> Vec<Block> {
        let liquids = LIBRARY.iter().filter(|row| {
            !matches!(row.kind, Kind::Powder | Kind::Dairy | Kind::Egg | Kind::Bitters) && row.key != "ice"
        });
        // Juice is what is sharpened most.
        let is_juice = |row: &&Ingredient| row.kind == Kind::Juice;
        let liquids = liquids.clone().filter(is_juice).chain(liquids.filter(move |row| !is_juice(row)));
        let liquids = liquids.map(Opt::ingredient).chain([Opt::new(OWN, "My own figure")]).collect();
        let mut blocks = vec![
            Block::Heading("Add acid"),
            Block::amount(LIQUID, "Amount", Keys::Batch),
            Block::pick("liquid_of", "Liquid", liquids),
        ];
        if self.liquid_of == OWN {
            blocks.push(Block::amount(LIQUID_ACID, "Acid by titration, g/l", Keys::Count));
        }
        blocks.push(Block::pick("sour_as", "As sour as", profiles()));
        if self.sour_as == OWN {
            blocks.push(Block::amount(WANTED_ACID, "Acid wanted, g/l", Keys::Count));
        }
        blocks.push(Block::chips::<Blend>("blend", "Acid to add", true));
        if self.blend() == Blend::Own {
            blocks.extend(PARTS.map(|(name, label, _)| Block::amount(name, label, Keys::Count)));
        }
        blocks
    }

    fn blend(&self) -> Blend {
        Blend::read(&self.blend)
    }

    /// What is to be made sharper, in its amount.
    fn liquid(&self, bench: &Bench, problems: &mut Vec<Problem>) -> Option<(Mix, &'static str)> {
        let volume = bench.volume(LIQUID, &self.liquid, problems);
        let (row, measured) = if self.liquid_of == OWN {
            let acid = bench.number(LIQUID_ACID, &self.liquid_acid, (0.0, MOST_ACID), ACIDITY_WORDS, problems)?;
            (ingredient("juice")?, Measured { acid: Acidity::from_g_per_l(acid).ok(), ..Measured::default() })
        } else {
            let row = ingredient(&self.liquid_of).or_else(|| ingredient("orange-juice"))?;
            (row, bench.house.takes(row).measured)
        };
        let mix = pour(&Taken { ingredient: row, measured }, Amount::Volume(volume?))?;
        Some((mix, if self.liquid_of == OWN { "your liquid" } else { row.name }))
    }

    /// The acidity wanted, as citric, and what it is that of.
    fn wanted(&self, bench: &Bench, problems: &mut Vec<Problem>) -> Option<(Acidity, String)> {
        let Some(profile) = PROFILES.iter().find(|profile| profile.key == self.sour_as) else {
            let acid = bench.number(WANTED_ACID, &self.wanted_acid, (0.1, MOST_ACID), ACIDITY_WORDS, problems)?;
            return Some((Acidity::from_g_per_l(acid).ok()?, "what you want".into()));
        };
        Some((Acidity::from_g_per_l(profile.titrates()).ok()?, format!("{} juice", profile.fruit)))
    }

    /// The powders to do it with, as sold, and their parts by weight.
    fn parts(&self, bench: &Bench, problems: &mut Vec<Problem>) -> Option<Vec<(&'static Ingredient, f64)>> {
        let parts = match self.blend() {
            Blend::Citric => vec![("citric-acid", 1.0)],
            Blend::TwoToOne => vec![("citric-acid", 2.0), ("malic-acid", 1.0)],
            Blend::Malic => vec![("malic-acid", 1.0)],
            Blend::Tartaric => vec![("tartaric-acid", 1.0)],
            Blend::Lactic => vec![("lactic-acid", 1.0)],
            Blend::Own => {
                let texts = [&self.part_citric, &self.part_malic, &self.part_tartaric, &self.part_lactic];
                let mut parts = Vec::new();
                for ((name, _, key), text) in PARTS.into_iter().zip(texts) {
                    let words = "Type a number of parts, like 2.";
                    let part = match text.trim() {
                        "" => 0.0,
                        _ => bench.number(name, text, (0.0, 1e4), words, problems)?,
                    };
                    if part > 0.0 {
                        parts.push((key, part));
                    }
                }
                if parts.is_empty() {
                    problems.push(Problem::new(PARTS[0].0, "Give at least one acid some parts."));
                    return None;
                }
                parts
            }
        };
        parts.into_iter().map(|(key, part)| Some((ingredient(key)?, part))).collect()
    }

    pub(super) fn sharpen(&self, mut answer: Answer, bench: &Bench) -> Answer {
        let liquid = self.liquid(bench, &mut answer.problems);
        let wanted = self.wanted(bench, &mut answer.problems);
        let parts = self.parts(bench, &mut answer.problems);
        let (Some((liquid, name)), Some((to, sour)), Some(parts)) = (liquid, wanted, parts) else {
            return answer.without_answer("Type how much liquid there is to sharpen.");
        };
        let have = liquid.titratable_acidity().map_or(0.0, Acidity::g_per_l);
        answer.cells_title = "By titration, as citric";
        answer.cell("before", Figure::new(text::count(have, bench.decimal), "g/l"));
        answer.cell("wanted", Figure::new(text::count(to.g_per_l(), bench.decimal), "g/l"));
        if have >= to.g_per_l() {
            return thinned(answer, &liquid, have / to.g_per_l(), bench);
        }
        let Some(acids) = sharpen(&liquid, to, &parts) else {
            answer.problems.push(Problem::new(LIQUID, "No amount of this acid gets there. Choose a lower acidity."));
            return answer.without_answer("");
        };
        let total: Mass = acids.iter().map(|(_, mass)| *mass).sum();
        if total.g() < 0.5 * self.step().grams().g() {
            let step = text::grams(self.step().grams(), self.step().decimals(), bench.decimal);
            let words = format!("Under one step of a {step} scale. Make more, or use a finer scale.");
            answer.problems.push(Problem::new(LIQUID, words));
            return answer.without_answer("");
        }
        let made = with_powders(liquid, &acids);
        let volume = made.volume(Temperature::TWENTY).unwrap_or(Volume::ZERO);
        let figures: Vec<Figure> =
            acids.iter().map(|(powder, mass)| self.weighed(*mass, short_name(powder), bench)).collect();
        let is_strong = made.strength().fraction() > INDICATIVE_ABOVE;
        let ph =
            ph_words(&made, bench).filter(|_| !is_strong).map_or_else(String::new, |ph| format!(", pH about {ph}"));
        let below = format!("Makes {} as sour as {sour}{ph}", text::litres_or_ml(volume, bench.decimal));
        answer.strip = match figures.len() {
            1 | 2 => Strip { figures, also: format!("into {name}"), below, tone: Tone::Answer, ..Strip::default() },
            _ => {
                let all: Vec<String> = figures.iter().map(ToString::to_string).collect();
                let figures = vec![self.weighed(total, "acids", bench)];
                Strip { figures, also: all.join(", "), below, tone: Tone::Answer, ..Strip::default() }
            }
        };
        let exact: Vec<(&str, Mass)> = acids.iter().map(|(powder, mass)| (short_name(powder), *mass)).collect();
        self.say_exactly(&mut answer, &exact, bench);
        for (label, mix) in [("pH before, about", &liquid), ("pH after, about", &made)] {
            if let Some(ph) = ph_words(mix, bench) {
                answer.explained(label, Figure::new(ph, ""), "From its acids and the salts of juice, at 25 °C. Fruit varies by 0.2; above about 15 % vol only a hint.");
            }
        }
        answer.remarks.push("The room the powder takes is allowed for: 0.6 ml a gram.".into());
        if parts.iter().any(|(powder, _)| powder.key != "citric-acid") {
            answer.remarks.push(
                "Equal by titration, which is not equal in taste: malic and lactic linger, tartaric bites.".into(),
            );
        }
        if let Some(row) = ingredient(&self.liquid_of).filter(|_| self.liquid_of != OWN) {
            let spread = if row.range.is_empty() { String::new() } else { format!("; published: {}", row.range) };
            let varies =
                if row.kind == Kind::Juice { " Fresh fruit varies by a fifth and more: taste it." } else { "" };
            answer.remarks.push(format!("{}: {}{spread}.{varies}", row.name, row.source));
        }
        answer.carry("Share it out in serves", Route::Serves.href_with("made", &bench.carried(volume)));
        answer
    }
}

/// "citric", of "Citric acid".
fn short_name(powder: &Ingredient) -> &'static str {
    match powder.key {
        "malic-acid" => "malic",
        "tartaric-acid" => "tartaric",
        "lactic-acid" => "lactic, 80 %",
        _ => "citric",
    }
}

/// It is sourer than wanted: water brings it down.
fn thinned(mut answer: Answer, liquid: &Mix, times: f64, bench: &Bench) -> Answer {
    let volume = liquid.volume(Temperature::TWENTY).unwrap_or(Volume::ZERO);
    let water = Volume::from_ml(volume.ml() * (times - 1.0)).unwrap_or(Volume::ZERO);
    answer.strip = Strip {
        figures: vec![bench.headline_of(water, "water", None)],
        also: if water.ml() < 0.05 {
            "It is as sour as that already".into()
        } else {
            "Thin it with this much water: it is sourer".into()
        },
        tone: Tone::Answer,
        ..Strip::default()
    };
    let after = *liquid + Mix::water(water * Density::WATER);
    answer.cell("makes", text::litres_or_ml(after.volume(Temperature::TWENTY).unwrap_or(volume), bench.decimal));
    answer
}

fn ph_words(mix: &Mix, bench: &Bench) -> Option<String> {
    let has_acid = mix.acids() > Mass::ZERO;
    has_acid.then(|| mix.ph().ok()).flatten().map(|ph| text::plain(ph, 1, bench.decimal))
}
