//! Cordial: made from the juice there is, or made to stand for juice, citrus and syrup.

mod choices;
mod reading;
mod swap;
#[cfg(test)]
mod tests;

pub use choices::{Ask, Blend, For, To};

use crate::book::{Ingredient, Kind, LIBRARY, Measured, Taken, ingredient};
use crate::craft::cordial::{Fill, Made, made, to_target};
use crate::craft::pour::{fits, litre_of, pour};
use crate::quantity::{Acidity, Amount, Brix, Mass, Ratio, Temperature, Volume};
use crate::reading::rows::amount_words;
use crate::reading::{Contents, PLACEHOLDER, allergens, from_spec, label, origin};
use crate::screen::pad::Keys;
use crate::screen::plan::{HOUR, MINUTE, Makes, Making, Need, Plan, Step, titled};
use crate::screen::route::Route;
use crate::screen::{Answer, Bench, Block, Choice, Input, Opt, Problem, Strip, Tone, Tool, form};
use crate::substance::fruit::FRUIT;
use crate::text::{self, Dimension};
use reading::{figures, keeping};

form! {
    /// What is typed.
    CordialForm {
        /// What is asked: a key of [`Ask`].
        ask = "make",
        /// Clear juice there is.
        juice = "1 l",
        /// Key of the ingredient that it is.
        juice_of = "pear-juice",
        /// What it reads, where measured.
        brix = "",
        /// What it titrates, g/l as citric, where measured.
        acid = "",
        /// What else is known of it, where it was made here: as [`text::whole_figures`] writes it.
        holds = "",
        /// What it is made to: a key of [`To`].
        to = "house",
        /// House recipe: so much juice …
        house_juice = "105 ml",
        /// … so much sugar …
        house_sugar = "45 g",
        /// … so much acid …
        house_acid = "2.5 g",
        /// … and so much zest.
        house_zest = "0",
        /// Sweetness wanted, °Bx.
        to_brix = "40",
        /// Acidity wanted, g/l as citric.
        to_acid = "25",
        /// Acids that go in: a key of [`Blend`].
        blend = "citric",
        /// The fresh form of a spec.
        spec = "45 ml pear brandy\n30 ml pear juice\n15 ml lemon juice\n15 ml honey syrup",
        /// What fills it up: a key of [`Fill`].
        fill = "juice",
        /// How much of it is made: a key of [`For`].
        make_for = "serves",
        /// Serves to make it for.
        serves = "40",
        /// Cordial in a serve, where it is not to take the room of what it stands for.
        pour = "",
        /// Lines of the spec that stay as they are.
        stays = "",
        /// Clear juice there is for a swap, where it is not what the serves ask for.
        came = "",
        /// The spec it came from, and which form of it: "id/0"; empty for none.
        from_spec = "",
    }
}

const JUICE: &str = "juice";
const BRIX: &str = "brix";
const ACID: &str = "acid";
const SPEC: &str = "spec";
const SERVES: &str = "serves";
const POUR: &str = "pour";
const FILL: &str = "fill";
const TO_BRIX: &str = "to_brix";
const TO_ACID: &str = "to_acid";

/// Less of a powder is not weighed, g.
const LEAST_GRAMS: f64 = 0.05;

/// Where cordials are kept, °C: their sugar must stay dissolved there.
const KEPT_AT: f64 = 4.0;

impl Tool for CordialForm {
    fn is_tall(&self) -> bool {
        true
    }

    fn layout(&self, bench: &Bench) -> Vec<Block> {
        let juices = LIBRARY.iter().filter(|row| row.kind == Kind::Juice && row.key != "vinegar");
        let of = Block::pick("juice_of", "Juice", juices.map(|row| Opt::new(row.key, row.name)).collect());
        let measured = [
            Block::amount(BRIX, "Juice reads, °Brix", Keys::Count),
            Block::amount(ACID, "Acid by titration, g/l", Keys::Count),
        ];
        let mut blocks = vec![Block::chips::<Ask>("ask", "What is asked", false)];
        match self.ask() {
            Ask::Make => {
                blocks.extend([Block::amount(JUICE, "Clear juice", Keys::Bulk), of]);
                blocks.extend(measured);
                blocks.push(Block::chips::<To>("to", "Recipe", true));
                blocks.extend(match self.to() {
                    To::House => vec![
                        Block::amount("house_juice", "Juice in the recipe", Keys::Bulk),
                        Block::amount("house_sugar", "Sugar", Keys::Weight),
                        Block::amount("house_acid", "Acid", Keys::Weight),
                        Block::amount("house_zest", "Zest", Keys::Weight),
                    ],
                    To::Target => vec![
                        Block::amount(TO_BRIX, "Reading wanted, °Brix", Keys::Count),
                        Block::amount(TO_ACID, "Acid wanted, g/l", Keys::Count),
                    ],
                });
            }
            Ask::Swap => {
                blocks.extend(from_spec::fields(Route::Cordial, &self.from_spec, Some(&self.spec), bench));
                let placeholder = PLACEHOLDER;
                blocks.push(Block::field(
                    SPEC,
                    "The fresh form, a line for each ingredient",
                    Input::Lines { placeholder },
                ));
                blocks.push(of);
                blocks.extend(measured);
                blocks.extend([
                    Block::chips::<Fill>(FILL, "Filled up with", true),
                    Block::amount(POUR, "Cordial in a serve", Keys::Pour),
                    Block::chips::<For>("make_for", "Make it for", true),
                    match For::read(&self.make_for) {
                        For::Serves => Block::amount(SERVES, "Serves", Keys::Count),
                        For::Juice => Block::amount(JUICE, "Clear juice", Keys::Bulk),
                    },
                ]);
            }
        }
        blocks.push(Block::chips::<Blend>("blend", "Acid to add", true));
        blocks.extend([Block::Cells("", Vec::new()), Block::Table("", Vec::new()), Block::Buttons(Vec::new())]);
        blocks
    }

    fn answer(&self, bench: &Bench) -> Answer {
        match self.ask() {
            Ask::Make => self.make(Answer::default(), bench),
            Ask::Swap => self.swap(Answer::default(), bench),
        }
    }

    fn making(&self, bench: &Bench) -> Making {
        let allergens = match self.ask() {
            Ask::Make => Vec::new(),
            Ask::Swap => allergens(&Contents::of(&self.spec, bench).lines, bench),
        };
        let takes = &[Makes::Juice, Makes::ClearJuice];
        Making { makes: Makes::Cordial, of: self.juice_of.clone(), takes, allergens, ..Making::default() }
    }

    fn empty(&mut self) {
        match self.ask() {
            Ask::Make => {
                for text in [&mut self.juice, &mut self.brix, &mut self.acid, &mut self.holds] {
                    text.clear();
                }
            }
            Ask::Swap => self.spec.clear(),
        }
    }

    fn take(&mut self, name: &str, text: &str) {
        match name {
            "came" if self.ask() == Ask::Make => text.clone_into(&mut self.juice),
            "came" => text.clone_into(&mut self.came),
            JUICE => {
                // Another juice: what the last one read is not its own.
                self.brix.clear();
                self.acid.clear();
                self.holds.clear();
                text.clone_into(&mut self.juice);
                Ask::Make.key().clone_into(&mut self.ask);
            }
            "fruit" => {
                if let Some(fruit) = FRUIT.iter().find(|fruit| fruit.key == text) {
                    fruit.ingredient.clone_into(&mut self.juice_of);
                }
            }
            SPEC => {
                text.clone_into(&mut self.spec);
                self.stays.clear();
                self.came.clear();
                Ask::Swap.key().clone_into(&mut self.ask);
            }
            // Only along with juice, which goes first.
            from_spec::LINES => {
                text.clone_into(&mut self.spec);
                self.stays.clear();
                self.came.clear();
            }
            "came_brix" => text.clone_into(&mut self.brix),
            "came_acid" => text.clone_into(&mut self.acid),
            "came_holds" => text.clone_into(&mut self.holds),
            _ => {}
        }
    }
}

/// A cordial to make, whole.
struct Batch {
    juice: Volume,
    made: Made,
    volume: Volume,
    zest: Mass,
    name: String,
    water: Mass,
}

impl CordialForm {
    fn ask(&self) -> Ask {
        Ask::read(&self.ask)
    }

    fn to(&self) -> To {
        To::read(&self.to)
    }

    fn parts(&self) -> Vec<(&'static Ingredient, f64)> {
        Blend::read(&self.blend).parts()
    }

    /// The juice, as the library has it or as it was measured.
    fn taken(&self, bench: &Bench, problems: &mut Vec<Problem>) -> Option<Taken> {
        let before = problems.len();
        let brix = bench.number(BRIX, &self.brix, (0.0, 60.0), "Type what it reads, 0 to 60 °Bx.", problems);
        let acid =
            bench.number(ACID, &self.acid, (0.0, 100.0), "Type grams per litre from 0 to 100, like 6.", problems);
        let usual = bench.house.takes(ingredient(&self.juice_of)?);
        let made = text::read_figures(&self.holds, bench.decimal);
        let reads = brix.and_then(|degrees| Brix::from_degrees(degrees).ok());
        let measured = Measured {
            reads,
            sugar_per_litre: made.sugar_per_litre.filter(|_| reads.is_none()),
            acid: acid.and_then(|grams| Acidity::from_g_per_l(grams).ok()).or(usual.measured.acid),
            holds: made.holds.or(usual.measured.holds),
            ..Measured::default()
        };
        let taken = Taken { measured, ..usual };
        if problems.len() == before && !fits(&taken) {
            let least = litre_of(&taken).reads().map_or(0.0, Brix::degrees);
            let least = text::plain(least, 1, bench.decimal);
            problems.push(Problem::new(
                BRIX,
                format!("Its acid and what else is in it read {least} °Bx by themselves. Check both, or type what it titrates."),
            ));
        }
        (problems.len() == before).then_some(taken)
    }

    fn made(&self, bench: &Bench, problems: &mut Vec<Problem>) -> Option<Batch> {
        let taken = self.taken(bench, problems);
        let amount = bench.amount(JUICE, &self.juice, Dimension::Either, problems);
        let taken = taken?;
        let juice = pour(&taken, amount?)?;
        let volume = juice.volume(Temperature::TWENTY).ok()?;
        let (made, zest) = match self.to() {
            To::House => {
                let base = bench.amount("house_juice", &self.house_juice, Dimension::Either, problems);
                let sugar = bench.mass_or_none("house_sugar", &self.house_sugar, problems)?;
                let acid = bench.mass_or_none("house_acid", &self.house_acid, problems)?;
                let zest = bench.mass_or_none("house_zest", &self.house_zest, problems)?;
                let base = pour(&taken, base?)?;
                let times = Ratio::from_value(juice.mass().g() / base.mass().g()).ok()?;
                let parts = self.parts();
                let all: f64 = parts.iter().map(|(_, part)| part).sum();
                let acids: Vec<_> = parts.iter().map(|(row, part)| (*row, (acid * times).g() * part / all)).collect();
                (made(&juice, sugar * times, &acids), zest * times)
            }
            To::Target => {
                let brix =
                    bench.number(TO_BRIX, &self.to_brix, (1.0, 80.0), "Type a sweetness from 1 to 80 °Bx.", problems);
                let acid =
                    bench.number(TO_ACID, &self.to_acid, (0.0, 200.0), "Type grams per litre from 0 to 200.", problems);
                let (brix, acid) = (Brix::from_degrees(brix?).ok()?, Acidity::from_g_per_l(acid?).ok()?);
                match to_target(&juice, brix, acid, &self.parts()) {
                    Some(made) => (made, Mass::ZERO),
                    None => {
                        problems.push(Problem::new(TO_BRIX, "No cordial is like that. Type less sugar or less acid."));
                        return None;
                    }
                }
            }
        };
        let whole = made.mix.volume(Temperature::TWENTY).ok()?;
        let name = taken.ingredient.name.to_ascii_lowercase();
        Some(Batch { juice: volume, made, volume: whole, zest, name, water: Mass::ZERO })
    }

    fn make(&self, mut answer: Answer, bench: &Bench) -> Answer {
        let Some(batch) = self.made(bench, &mut answer.problems) else {
            return answer.without_answer("Type how much clear juice there is.");
        };
        let Batch { made, volume, zest, .. } = &batch;
        let reading = figures(&mut answer, &made.mix, bench);
        let acid: Mass = made.acids.iter().map(|(_, mass)| *mass).sum();
        answer.strip = Strip {
            figures: vec![bench.grams_of(made.sugar, "sugar"), bench.grams_of(acid, "acid")],
            also: format!("Makes {} at {reading}", text::litres_or_ml(*volume, bench.decimal)),
            tone: Tone::Answer,
            ..Strip::default()
        };
        for (powder, mass) in made.acids.iter().filter(|_| made.acids.len() > 1) {
            answer.cell(powder.name.to_ascii_lowercase(), text::fine_grams(*mass, bench.decimal));
        }
        if *zest > Mass::ZERO {
            answer.cell("zest", text::fine_grams(*zest, bench.decimal));
        }
        if made.is_too_sweet {
            answer.problems.push(Problem::new(TO_BRIX, "The juice reads more than that by itself: no sugar is added."));
        }
        if made.is_too_sour {
            answer.problems.push(Problem::new(TO_ACID, "The juice is sourer than that by itself: no acid is added."));
        }
        if self.to() == To::House {
            answer.remarks.push("105 ml juice, 45 g sugar, 2.5 g citric acid is a rule of thumb.".into());
        }
        keeping(&mut answer, &made.mix, bench);
        let name = format!("{} cordial", batch.name.trim_end_matches(" juice"));
        answer.carry("Label it", label::href(&label::Facts { name: name.clone(), ..label::Facts::default() }));
        answer.carry("Into serves", Route::Serves.href_with("made", &bench.carried(*volume)));
        let plan = steps(&batch, bench);
        answer.prep = Some(origin::prep(&name, "cordial", (&made.mix, *volume), &plan.needs, bench));
        answer.plan = Some(plan);
        answer
    }
}

fn grams(mass: Mass, what: &str, bench: &Bench) -> String {
    bench.grams_of(mass, what).to_string()
}

/// Making it, step by step.
fn steps(batch: &Batch, bench: &Bench) -> Plan {
    let Batch { juice, made, volume, zest, name, water } = batch;
    let mut parts = vec![grams(made.sugar, "sugar", bench)];
    let shows = |mass: &Mass| mass.g() >= LEAST_GRAMS;
    parts.retain(|_| shows(&made.sugar));
    let acids = made.acids.iter().filter(|(_, mass)| shows(mass));
    parts.extend(acids.map(|(powder, mass)| grams(*mass, &powder.name.to_ascii_lowercase(), bench)));
    if shows(water) {
        parts.push(grams(*water, "water", bench));
    }
    let into = amount_words(Amount::Volume(*juice), bench);
    let weighed = |what: &str, mass: Mass| Need::of(what, Amount::Mass(mass));
    let mut needs = vec![Need::given(name, Amount::Volume(*juice)), weighed("sugar", made.sugar)];
    needs.extend(made.acids.iter().map(|(powder, mass)| weighed(&powder.name.to_ascii_lowercase(), *mass)));
    needs.push(weighed("zest", *zest));
    let gives = Some(Amount::Volume(*volume));
    let mix = Step::work("mix", format!("Stir {} into {into} {name} till clear", parts.join(", ")), 15 * MINUTE);
    let steps = if *zest > Mass::ZERO {
        vec![
            mix,
            Step::work("zest", format!("Rest with {} in the cold", grams(*zest, "zest", bench)), 5 * MINUTE)
                .then_wait(HOUR),
            Step::work("strain", "Strain and bottle", 10 * MINUTE).giving(gives),
        ]
    } else {
        vec![mix.then_wait(30 * MINUTE), Step::work("bottle", "Stir again and bottle", 10 * MINUTE).giving(gives)]
    };
    let short = name.trim_end_matches(" juice").trim_end_matches(" purée");
    let title = titled(format!("{short} cordial"));
    let density = made.mix.density(Temperature::TWENTY).ok();
    Plan { title, steps, density, needs, ..Plan::default() }
}
