//! Fruit: how many for the juice, or what this fruit will give; and what it gave.

use crate::book::ingredient;
use crate::craft::fruit::{Product, fruit_for, given_by, how_many, measured_share, share_of};
use crate::craft::measure::{Both, both_of};
use crate::craft::pour::litre_of;
use crate::quantity::{Acidity, Amount, Mass, Ratio, Temperature};
use crate::reading::label::{self, Keeps};
use crate::reading::yields;
use crate::screen::pad::Keys;
use crate::screen::plan::{MINUTE, Makes, Making, Need, Plan, Step, titled};
use crate::screen::route::Route;
use crate::screen::{Answer, Bench, Block, Choice, Figure, Opt, Problem, Strip, Tone, Tool, choice, form, plural};
use crate::substance::fruit::{FRUIT, Fruit};
use crate::substance::mix::Mix;
use crate::text::{self, Dimension};

/// What is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Given {
    /// What is wanted of it.
    Wanted,
    /// How many there are.
    Count,
    /// What they weigh.
    Weight,
}

choice! { Given:
    Wanted = "wanted", "I need";
    Count = "count", "Counted";
    Weight = "weight", "Weighed";
}

form! {
    /// What is typed.
    FruitForm {
        /// What is known: a key of [`Given`].
        known = "wanted",
        /// What it becomes: a key of [`Product`].
        product = "juice",
        /// Key of the fruit.
        fruit = "lime",
        /// What is needed of it.
        wanted = "750 ml",
        /// How many there are.
        count = "20",
        /// What they weigh.
        weight = "1.5 kg",
        /// What came out.
        got = "",
        /// The spec it came from, and which form of it: "id/0"; empty for none.
        from_spec = "",
    }
}

const WANTED: &str = "wanted";
const COUNT: &str = "count";
const WEIGHT: &str = "weight";
const GOT: &str = "got";

const READS: &str = "What a refractometer shows: sugar, acid and what else is dissolved, less about 0.2 for each percent of \
    acid (21 CFR 146.132). Not the sugar alone.";

impl Tool for FruitForm {
    fn is_tall(&self) -> bool {
        true
    }

    fn layout(&self, _bench: &Bench) -> Vec<Block> {
        let fruit = FRUIT.iter().map(|fruit| Opt::new(fruit.key, fruit.name)).collect();
        vec![
            Block::chips::<Given>("known", "What is known", false),
            match self.known() {
                Given::Wanted => Block::amount(WANTED, "Amount needed", Keys::Bulk),
                Given::Count => Block::amount(COUNT, "Number of fruit", Keys::Count),
                Given::Weight => Block::amount(WEIGHT, "Whole fruit", Keys::Weight),
            },
            Block::pick("fruit", "Fruit", fruit),
            Block::chips::<Product>("product", "Made into", true),
            Block::amount(GOT, "What you got", Keys::Bulk),
            Block::Buttons(Vec::new()),
            Block::Cells("", Vec::new()),
        ]
    }

    fn answer(&self, bench: &Bench) -> Answer {
        let mut answer = Answer::default();
        let Some(worked) = self.worked(bench, &mut answer.problems) else {
            return answer.without_answer("Type how much is needed, or how much fruit there is.");
        };
        let Worked { fruit, product, share, is_own, whole, given, litre } = &worked;
        let share_words = text::percent(share.value(), bench.decimal);
        let of_own = if *is_own { ", your own yield" } else { "" };
        let each = Mass::from_g(fruit.each).unwrap_or(Mass::ZERO);
        let noun = self.product().label().to_ascii_lowercase();
        let counted = match how_many(*whole, each) {
            Some(1) => Figure::new("1", fruit.name),
            Some(count) => Figure::new(text::count(f64::from(count), bench.decimal), fruit.plural),
            None => return answer.without_answer("That is more fruit than anybody can press. Check the amount."),
        };
        let (volume, mass) = (
            text::litres_or_ml(given.volume, bench.decimal),
            bench.weighed(given.mass, text::grams(given.mass, 0, bench.decimal)),
        );
        let weight = bench.weighed(*whole, text::grams(*whole, 0, bench.decimal));
        answer.strip = match self.known() {
            Given::Wanted => Strip {
                figures: vec![counted, weight],
                also: format!("for {volume} of {noun}, at {share_words}{of_own}"),
                tone: Tone::Answer,
                ..Strip::default()
            },
            _ => Strip {
                figures: vec![bench.headline_of(given.volume, &noun, None), mass.clone()],
                also: format!("from {weight}, {counted}, at {share_words}{of_own}"),
                tone: Tone::Answer,
                ..Strip::default()
            },
        };
        let [least, _, most] = share_of(fruit, *product).map(|share| Ratio::from_value(share).unwrap_or(Ratio::ZERO));
        answer.cells_title = "How much that varies";
        let per = |share: Ratio| match self.known() {
            Given::Wanted => {
                fruit_for(given.mass, share).map_or(Figure::new("–", ""), |mass| text::grams(mass, 0, bench.decimal))
            }
            _ => text::litres_or_ml(both_of(Amount::Mass(given_by(*whole, share)), litre).volume, bench.decimal),
        };
        let label = |share: Ratio, words: &str| format!("{words}, {}", text::percent(share.value(), bench.decimal));
        answer.cell(label(least, "poor fruit"), per(least));
        answer.cell(label(most, "good fruit"), per(most));
        if self.known() == Given::Wanted {
            answer.cell(format!("weight of the {noun}"), mass);
        }
        answer.cell("one of them", text::grams(each, 0, bench.decimal));
        let mut of_juice = String::new();
        if let Some(reads) = litre.reads().filter(|reads| reads.degrees() > 0.0) {
            let number = |value| text::count(value, bench.decimal);
            let source = ingredient(fruit.ingredient).map_or("", |row| row.source);
            answer.explained("reads, about", Figure::new(number(reads.degrees()), "°Bx"), READS);
            answer.cell("sugar, about", Figure::new(number(litre.g_per_l(litre.sugar())), "g/l"));
            let acid = litre.titratable_acidity().map_or(0.0, Acidity::g_per_l);
            answer.cell("acid, about", Figure::new(number(acid), "g/l"));
            of_juice = format!(" What its juice reads, its sugar and its acid by titration: {source}.");
        }
        let came = self.came(&worked, bench, &mut answer);
        answer.remarks.push(format!(
            "Share of the whole fruit by weight: {}. It varies with season and press.{of_juice}",
            fruit.source
        ));
        if *product != Product::Puree {
            answer.cautions.push("Fresh juice is best the day it is pressed. Keep it at 5 °C or below.".into());
        }
        let carried = bench.carried(came.unwrap_or(given.volume));
        let with_fruit = |href: String| format!("{href}&fruit={}", fruit.key);
        answer.carry("Clarify it", with_fruit(Route::Clarify.href_with("juice", &carried)));
        answer.carry("Make a cordial", with_fruit(Route::Cordial.href_with("juice", &carried)));
        answer.plan = self.steps(&worked, bench);
        if let Some(plan) = &answer.plan {
            label::offer(&plan.title.clone(), Some(Keeps::Fresh), &mut answer);
        }
        answer
    }

    fn making(&self, _bench: &Bench) -> Making {
        let of = Fruit::of(&self.fruit).ingredient.into();
        Making { makes: Makes::Juice, of, is_fresh: true, ..Making::default() }
    }

    fn empty(&mut self) {
        for text in [&mut self.wanted, &mut self.count, &mut self.weight, &mut self.got] {
            text.clear();
        }
    }

    fn take(&mut self, name: &str, text: &str) {
        match name {
            WANTED => {
                text.clone_into(&mut self.wanted);
                Given::Wanted.key().clone_into(&mut self.known);
            }
            // By its own key, or by that of the juice it gives.
            "fruit" => {
                if let Some(fruit) = FRUIT.iter().find(|fruit| fruit.key == text || fruit.ingredient == text) {
                    fruit.key.clone_into(&mut self.fruit);
                }
            }
            _ => {}
        }
    }
}

/// Fruit and what it gives, worked out.
struct Worked {
    fruit: &'static Fruit,
    product: Product,
    share: Ratio,
    is_own: bool,
    whole: Mass,
    given: Both,
    litre: Mix,
}

impl FruitForm {
    fn known(&self) -> Given {
        Given::read(&self.known)
    }

    fn product(&self) -> Product {
        Product::read(&self.product)
    }

    /// What its yield is called on the shelf: "lime juice".
    fn yield_name(&self) -> String {
        yields::of_fruit(Fruit::of(&self.fruit), self.product())
    }

    fn worked(&self, bench: &Bench, problems: &mut Vec<Problem>) -> Option<Worked> {
        let (fruit, product) = (Fruit::of(&self.fruit), self.product());
        let own = bench.own_yield(&self.yield_name());
        let share = own.or_else(|| Ratio::from_value(share_of(fruit, product)[1]).ok())?;
        let litre = litre_of(&bench.house.takes(ingredient(fruit.ingredient)?));
        let whole = match self.known() {
            Given::Wanted => {
                let amount = bench.amount(WANTED, &self.wanted, Dimension::Either, problems)?;
                fruit_for(both_of(amount, &litre).mass, share)?
            }
            Given::Count => Mass::from_g(fruit.each).ok()? * bench.count(COUNT, &self.count, problems)?,
            Given::Weight => bench.mass(WEIGHT, &self.weight, problems)?,
        };
        let given = both_of(Amount::Mass(given_by(whole, share)), &litre);
        Some(Worked { fruit, product, share, is_own: own.is_some(), whole, given, litre })
    }

    /// Pressing it, step by step.
    fn steps(&self, worked: &Worked, bench: &Bench) -> Option<Plan> {
        let Worked { fruit, whole, given, product, litre, .. } = worked;
        let each = Mass::from_g(fruit.each).ok()?;
        let count = how_many(*whole, each)?;
        let weight = text::grams(*whole, 0, bench.decimal);
        let noun = self.product().label().to_ascii_lowercase();
        let verb = if *product == Product::Puree { "Purée and sieve" } else { "Press" };
        let name = plural(count as usize, fruit.name, fruit.plural);
        let mut steps = vec![
            Step::work("press", format!("{verb} {count} {name}, {weight}"), (10 * MINUTE).max(count.min(500) * 30))
                .giving(Some(Amount::Volume(given.volume))),
        ];
        if *product == Product::Filtered {
            steps[0].gives = None;
            steps.push(
                Step::work("filter", "Filter it fine", 5 * MINUTE)
                    .then_wait(30 * MINUTE)
                    .giving(Some(Amount::Volume(given.volume))),
            );
        }
        let needs = Ratio::from_value(f64::from(count)).map(|count| Need::of(name, Amount::Count(count)));
        let needs = needs.into_iter().collect();
        let title = titled(format!("{} {noun}", fruit.name));
        Some(Plan { title, steps, needs, density: litre.density(Temperature::TWENTY).ok(), ..Plan::default() })
    }

    /// What came out, and an offer to keep the yield that it makes.
    fn came(&self, worked: &Worked, bench: &Bench, answer: &mut Answer) -> Option<crate::quantity::Volume> {
        let got = both_of(bench.amount(GOT, &self.got, Dimension::Either, &mut answer.problems)?, &worked.litre);
        let Some(share) = measured_share(got.mass, worked.whole) else {
            answer.problems.push(Problem::new(GOT, "That is more than the fruit weighs. Check both."));
            return None;
        };
        answer.cell("your yield this time", Figure::new(text::plain(share.value() * 100.0, 1, bench.decimal), "%"));
        answer.buttons.push(bench.keep_yield(&self.yield_name(), share));
        Some(got.volume)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::screen::Act;

    fn answer(change: impl FnOnce(&mut FruitForm)) -> Answer {
        let mut form = FruitForm::default();
        change(&mut form);
        form.answer(&Bench::default())
    }

    #[test]
    fn fruit_for_juice_and_back() {
        let wanted = answer(|_| {});
        // 750 ml at 28 ml to the lime: 27, by the reference of the trade.
        assert_eq!(wanted.strip.figures[0].to_string(), "27 limes");
        let have = answer(|form| form.known = "count".into());
        assert!(have.strip.figures[0].to_string().ends_with("ml juice"), "{:?}", have.strip);
        assert!(have.strip.also.starts_with("from 1\u{202f}300 g, 20 limes"), "{}", have.strip.also);
    }

    #[test]
    fn what_came_out_can_be_kept() {
        let got = answer(|form| {
            form.known = "weight".into();
            form.weight = "1 kg".into();
            form.got = "380 g".into();
        });
        assert_eq!(got.buttons[0].label, "Keep 38.0 % as my yield");
        assert_eq!(got.buttons[0].act, Act::KeepYield("lime juice 38 %".into()));
        let bench = Bench { yields: "lime juice 38 %".into(), ..Bench::default() };
        assert!(FruitForm::default().answer(&bench).strip.also.ends_with("at 38.0 %, your own yield"));
        let too_much = answer(|form| form.got = "90 kg".into());
        assert_eq!(too_much.problems[0].field, "got");
    }
}
