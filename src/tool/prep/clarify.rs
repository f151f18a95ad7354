//! Clarify: juice or purée made clear by enzyme, agar, gelatin or rest.

mod kept;
mod plan;
#[cfg(test)]
mod tests;

use crate::book::{asked_in, ingredient};
use crate::craft::clarify::{self, AGAR_SETS_AT, Agar, ENZYME_COLD, ENZYME_SOUR, ENZYME_TOO_HOT, Method, WARM_ENOUGH};
use crate::craft::measure::{Both, both_of};
use crate::craft::pour::litre_of;
use crate::quantity::{Acidity, Amount, Brix, Mass, Ratio, Volume};
use crate::reading::{label, yields};
use crate::screen::pad::Keys;
use crate::screen::percent::encode;
use crate::screen::plan::{Makes, Making};
use crate::screen::route::Route;
use crate::screen::{Answer, Bench, Block, Choice, Figure, Opt, Problem, Strip, Tone, Tool, form};
use crate::substance::fruit::{FRUIT, Fruit};
use crate::substance::mix::Mix;
use crate::text::{self, Dimension};

form! {
    /// What is typed.
    ClarifyForm {
        /// How: a key of [`Method`].
        method = "enzyme",
        /// Key of the fruit.
        fruit = "lime",
        /// Juice or purée to clear.
        juice = "400 g",
        /// Enzyme, percent of it.
        enzyme = "0.25",
        /// How warm it is, for the enzyme.
        enzyme_at = "20",
        /// Its pH, where measured.
        ph = "",
        /// Agar, g to the kg.
        agar = "2",
        /// Water for the agar, percent of the whole.
        agar_water = "25",
        /// How warm the juice is when the agar goes in.
        agar_at = "30",
        /// Gelatin, g to the kg.
        gelatin = "5",
        /// What came out clear.
        got = "",
        /// The spec it came from, and which form of it: "id/0"; empty for none.
        from_spec = "",
    }
}

const JUICE: &str = "juice";
const ENZYME: &str = "enzyme";
const ENZYME_AT: &str = "enzyme_at";
const PH: &str = "ph";
const AGAR: &str = "agar";
const AGAR_WATER: &str = "agar_water";
const AGAR_AT: &str = "agar_at";
const GELATIN: &str = "gelatin";
const GOT: &str = "got";

const G_PER_KG: &str = "Type grams to the kilogram, from 0.1 to 50.";

impl Tool for ClarifyForm {
    fn is_tall(&self) -> bool {
        true
    }

    fn layout(&self, _bench: &Bench) -> Vec<Block> {
        let fruit = FRUIT.iter().map(|fruit| Opt::new(fruit.key, fruit.name)).collect();
        let mut blocks = vec![
            Block::chips::<Method>("method", "How", false),
            Block::amount(JUICE, "Juice or purée", Keys::Bulk),
            Block::pick("fruit", "Fruit", fruit),
        ];
        blocks.extend(match self.method() {
            Method::Enzyme => vec![
                Block::amount(ENZYME, "Enzyme, % by weight", Keys::Percent),
                Block::amount(ENZYME_AT, "Temperature", Keys::Celsius),
                Block::amount(PH, "pH, if measured", Keys::Count),
            ],
            Method::Agar => vec![
                Block::amount(AGAR, "Agar, g per kg", Keys::Count),
                Block::amount(AGAR_WATER, "Water to boil it in, % of all", Keys::Percent),
                Block::amount(AGAR_AT, "Temperature of the juice", Keys::Celsius),
            ],
            Method::Gelatin => vec![Block::amount(GELATIN, "Gelatin, g per kg", Keys::Count)],
            Method::Rest => Vec::new(),
        });
        blocks.extend([
            Block::amount(GOT, "Clear juice you got", Keys::Bulk),
            Block::Buttons(Vec::new()),
            Block::Cells("", Vec::new()),
        ]);
        blocks
    }

    fn answer(&self, bench: &Bench) -> Answer {
        let mut answer = Answer::default();
        let Some(worked) = self.worked(bench, &mut answer.problems) else {
            return answer.without_answer("Type how much there is to clear.");
        };
        let Both { volume: clear, mass: clear_mass } = worked.clear;
        let share = text::percent(worked.share.value(), bench.decimal);
        let own = if worked.is_own { ", your own yield" } else { "" };
        let volume = text::litres_or_ml(clear, bench.decimal);
        answer.strip = Strip {
            figures: match &worked.doses[..] {
                [] => vec![Figure::new(volume.value.clone(), format!("{} clear", volume.unit))],
                doses => doses.iter().map(|(what, mass)| bench.grams_of(*mass, what)).collect(),
            },
            also: format!("{volume} should come clear, at {share}{own}"),
            tone: Tone::Answer,
            ..Strip::default()
        };
        answer.cells_title = "What comes clear";
        answer.cell("expected", text::grams(clear_mass, 0, bench.decimal));
        for (label, share) in [("poor", self.method().comes_clear()[0]), ("good", self.method().comes_clear()[2])] {
            let part = Ratio::from_value(share / worked.share.value()).unwrap_or(Ratio::ONE);
            answer.cell(
                format!("{label}, {}", text::percent(share, bench.decimal)),
                text::litres_or_ml(clear * part, bench.decimal),
            );
        }
        self.say(&worked, &mut answer, bench);
        let came = self.came(&worked, bench, &mut answer);
        answer.remarks.push(
            "How much comes clear is a rule of thumb, without a source: type what you got, and keep it as your yield."
                .into(),
        );
        let carried = bench.carried(came.unwrap_or(clear));
        let mut href = format!("{}&fruit={}", Route::Cordial.href_with("juice", &carried), worked.fruit.key);
        if worked.agar.is_some() {
            let (reads, acid) = worked.reads();
            let text = |value| encode(&text::editable(value, bench.decimal));
            let holds = encode(&text::whole_figures(&worked.litre, bench.decimal));
            href.push_str(&format!("&came_brix={}&came_acid={}&came_holds={holds}", text(reads), text(acid)));
        }
        answer.carry("Make a cordial", href);
        let plan = self.steps(&worked, bench);
        label::offer(&plan.title, None, &mut answer);
        self.keep(&mut answer, &worked, &plan, bench);
        answer.plan = Some(plan);
        answer
    }

    fn making(&self, _bench: &Bench) -> Making {
        let of = Fruit::of(&self.fruit).ingredient.into();
        let asks = asked_in(self.method().label()).collect();
        Making { makes: Makes::ClearJuice, of, takes: &[Makes::Juice], asks, ..Making::default() }
    }

    fn empty(&mut self) {
        self.juice.clear();
        self.got.clear();
    }

    fn take(&mut self, name: &str, text: &str) {
        match name {
            JUICE | "came" => text.clone_into(&mut self.juice),
            "fruit" => text.clone_into(&mut self.fruit),
            "came_ph" => text.clone_into(&mut self.ph),
            "came_celsius" => {
                text.clone_into(&mut self.enzyme_at);
                text.clone_into(&mut self.agar_at);
            }
            _ => {}
        }
    }
}

/// Juice and what clears it, worked out.
struct Worked {
    fruit: &'static Fruit,
    juice: Both,
    /// What goes in: its name and its mass.
    doses: Vec<(&'static str, Mass)>,
    agar: Option<Agar>,
    share: Ratio,
    is_own: bool,
    /// What should come out.
    clear: Both,
    /// What comes out, in some amount: with agar, the juice with its water.
    litre: Mix,
}

impl Worked {
    /// What comes out reads, °Bx, and titrates, g/l as citric.
    fn reads(&self) -> (f64, f64) {
        let acid = self.litre.titratable_acidity().map_or(0.0, Acidity::g_per_l);
        (self.litre.reads().map_or(0.0, Brix::degrees), acid)
    }
}

impl ClarifyForm {
    fn method(&self) -> Method {
        Method::read(&self.method)
    }

    fn yield_name(&self) -> String {
        yields::of_clear(Fruit::of(&self.fruit), self.method())
    }

    fn worked(&self, bench: &Bench, problems: &mut Vec<Problem>) -> Option<Worked> {
        let fruit = Fruit::of(&self.fruit);
        let litre = litre_of(&bench.house.takes(ingredient(fruit.ingredient)?));
        let amount = bench.amount(JUICE, &self.juice, Dimension::Either, problems);
        let per_kg = |mass: Mass, field, text: &str, problems: &mut Vec<Problem>| {
            let grams = bench.number(field, text, (0.1, 50.0), G_PER_KG, problems)?;
            Some(clarify::dose(mass, Ratio::from_value(grams / 1000.0).ok()?))
        };
        let mut agar = None;
        let juice = both_of(amount?, &litre);
        let mut doses = Vec::new();
        match self.method() {
            Method::Enzyme => {
                let percent = bench.percent(ENZYME, &self.enzyme, 20, problems)?;
                if percent <= Ratio::ZERO {
                    problems.push(Problem::new(ENZYME, "Type a percentage above zero, like 0.25 %."));
                    return None;
                }
                doses.push(("enzyme", clarify::dose(juice.mass, percent)));
            }
            Method::Agar => {
                let grams = bench.number(AGAR, &self.agar, (0.1, 50.0), G_PER_KG, problems)?;
                let water = bench.percent(AGAR_WATER, &self.agar_water, 90, problems)?;
                let at = bench.temperature(AGAR_AT, &self.agar_at, (0.0, 95.0), problems)?;
                if water <= Ratio::ZERO {
                    problems.push(Problem::new(AGAR_WATER, "Agar needs water to boil in: type 20 to 33 %."));
                    return None;
                }
                let worked = clarify::agar(juice.mass, at, water, grams)?;
                doses.extend([("agar", worked.agar), ("water", worked.water)]);
                agar = Some(worked);
            }
            Method::Gelatin => doses.push(("gelatin", per_kg(juice.mass, GELATIN, &self.gelatin, problems)?)),
            Method::Rest => {}
        }
        let own = bench.own_yield(&self.yield_name());
        let share = own.or_else(|| Ratio::from_value(self.method().comes_clear()[1]).ok())?;
        // With agar the water it was boiled in comes out too: the juice is thinner for it.
        let goes_in = agar.map_or(juice.mass, |agar| agar.together);
        let litre = match agar {
            Some(agar) => litre * Ratio::from_value(juice.mass.g() / litre.mass().g()).ok()? + Mix::water(agar.water),
            None => litre,
        };
        let clear = both_of(Amount::Mass(goes_in * share), &litre);
        Some(Worked { fruit, juice, doses, agar, share, is_own: own.is_some(), clear, litre })
    }

    /// What there is to know about a method: doses that were published, heat, what works badly.
    fn say(&self, worked: &Worked, answer: &mut Answer, bench: &Bench) {
        match self.method() {
            Method::Enzyme => self.say_of_enzyme(worked, answer, bench),
            Method::Agar => say_of_agar(worked, answer, bench),
            Method::Gelatin => {
                answer.cell("soaks in", text::grams(clarify::dose(worked.juice.mass, Ratio::ONE) * Ratio::from_value(0.1).unwrap_or(Ratio::ONE), 0, bench.decimal));
                answer.cautions.push("Gelatin comes from animals, and from fish in some: say so to guests.".into());
                answer.remarks.push("5 g to the kg, frozen whole and thawed in the cold over a cloth (International Culinary Center, Cooking Issues, 17 Jul 2009). Soak the gelatin in a tenth of the juice, warm that to melt it.".into());
            }
            Method::Rest => answer.remarks.push("Rest it cold and still overnight, then rack the clear juice off without stirring up the lees (rule of thumb).".into()),
        }
    }

    fn say_of_enzyme(&self, worked: &Worked, answer: &mut Answer, bench: &Bench) {
        answer.cells_title = "What comes clear, and published doses";
        let range = |text: &str| Figure::new(text.replace('.', &bench.decimal.mark().to_string()), "%");
        answer.explained("tried in lemon juice", range("0.01–0.04"), "0.1 to 0.4 ml of liquid pectinase to the litre; Ucan, Akyildiz, Agcam et al., J. Food Processing 2014, 215854 (authors from memory). The enzyme alone did not clear it: settling and filtering did.");
        answer.explained(
            "tried in carrot juice",
            range("0.01–0.1"),
            "By weight, best at 54 °C for two hours; CIGR Journal, abstract no. 2804.",
        );
        answer.remarks.push("0.25 % is 1 g to 400 g: blend a minute, rest 45 min, filter through paper (rule of thumb). Preparations differ: follow the supplier's sheet.".into());
        let ph = bench.number(PH, &self.ph, (1.0, 9.0), "Type a pH from 1 to 9, like 2.4.", &mut answer.problems);
        // The figure that was typed, as it was.
        let typed = |ph: f64| (ph, format!("at pH {}", self.ph.trim()));
        let about = |ph: f64| (ph, format!("about pH {}", text::plain(ph, 1, bench.decimal)));
        let sour = ph.map(typed).or_else(|| worked.litre.ph().ok().map(about)).filter(|(ph, _)| *ph < ENZYME_SOUR);
        if let Some((_, words)) = sour {
            answer.cautions.push(format!(
                "Many pectinases work poorly this sour, {words}: take one that stands acid, or wait longer."
            ));
        }
        answer.cautions.push("Food-grade enzyme only, dosed as its supplier's sheet says.".into());
        if let Some(at) = bench.temperature(ENZYME_AT, &self.enzyme_at, (0.0, 95.0), &mut answer.problems) {
            if at.celsius() < ENZYME_COLD {
                answer.cautions.push("Cold slows enzyme down: expect hours, or overnight, in place of 45 min.".into());
            } else if at.celsius() >= ENZYME_TOO_HOT {
                answer.cautions.push("From about 60 °C enzyme loses its work for good (from memory): the supplier's sheet says from where.".into());
            }
        }
    }

    /// What came out, and an offer to keep the yield that it makes.
    fn came(&self, worked: &Worked, bench: &Bench, answer: &mut Answer) -> Option<Volume> {
        let got = both_of(bench.amount(GOT, &self.got, Dimension::Either, &mut answer.problems)?, &worked.litre);
        let goes_in = worked.agar.map_or(worked.juice.mass, |agar| agar.together);
        let Some(share) = crate::craft::fruit::measured_share(got.mass, goes_in) else {
            answer.problems.push(Problem::new(GOT, "That is more than went in. Check both."));
            return None;
        };
        answer.buttons.push(bench.keep_yield(&self.yield_name(), share));
        Some(got.volume)
    }
}

/// Whether agar stays liquid until it is whisked in.
fn say_of_agar(worked: &Worked, answer: &mut Answer, bench: &Bench) {
    let Some(agar) = worked.agar else { return };
    let degrees = |celsius: f64| Figure::new(text::plain(celsius, 0, bench.decimal), "°C");
    let (sets, at_latest) = AGAR_SETS_AT;
    answer.explained(
        "comes to",
        degrees(agar.comes_to),
        "By the heat that juice and boiling water bring: 3.9 and 4.2 kJ/(kg K), from memory.",
    );
    answer.explained(
        "agar sets at",
        Figure::new("35–39", "°C"),
        "International Culinary Center, Cooking Issues, 9 Jun 2009.",
    );
    answer.cell("all together", text::grams(agar.together, 0, bench.decimal));
    let thinned = worked.juice.mass.g() / agar.together.g();
    answer.cell("of that, juice", Figure::new(text::plain(thinned * 100.0, 0, bench.decimal), "%"));
    let share = agar.water.g() / agar.together.g();
    if share < clarify::AGAR_WATER.0 - 1e-9 || share > clarify::AGAR_WATER.1 + 1e-9 {
        answer.remarks.push(
            "Usual is water of 20 to 33 % of all (International Culinary Center, Cooking Issues, 9 Jun 2009).".into(),
        );
    }
    let warm = agar.juice_at_least.max(0.0);
    let how = format!("Warm the juice to {} °C at least first.", text::plain(warm.ceil(), 0, bench.decimal));
    let comes_to = text::plain(agar.comes_to, 0, bench.decimal);
    if agar.comes_to < sets {
        answer.cautions.push(format!("At {comes_to} °C it sets while you whisk. {how}"));
    } else if agar.comes_to < WARM_ENOUGH {
        let close = if agar.comes_to <= at_latest { "it may set" } else { "it is close to setting" };
        answer.cautions.push(format!("At {comes_to} °C {close} while you whisk. {how}"));
    }
    answer.remarks.push("2 g to the kg of all (International Culinary Center, Cooking Issues, 20 Jul 2010). Boil the agar in the water, whisk the juice in by and by, let it set, break it gently and drain through a cloth: don't squeeze. The water stays in: the juice is thinner for it.".into());
}
