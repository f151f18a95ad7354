//! The ice of a night: how many bags, where it goes, and what of it is to be clear.

use super::{BAG, GLASS, IceForm, MADE_WITH, MELTS, SERVES, TUBS, weight};
use crate::craft::ice::{Night, bags_for, night};
use crate::craft::vessel;
use crate::quantity::{Amount, Mass, Ratio, Volume};
use crate::reading::from_spec::href_of;
use crate::screen::picture::{Bar, Filled, Hatch, Picture};
use crate::screen::plan::Need;
use crate::screen::route::Route;
use crate::screen::{Answer, Bench, Figure, Problem, Row, Strip, Tone, plural};
use crate::text;

/// All of it that melts: none is left.
const ALL_MELTS: u8 = 100;
/// Bags that a strip has room for.
const MOST_DRAWN: u32 = 4;
/// What of a bag its ice fills.
const FULL: f64 = 0.8;

impl IceForm {
    pub(super) fn night(&self, mut answer: Answer, bench: &Bench) -> Answer {
        let problems = &mut answer.problems;
        let serves = bench.count(SERVES, &self.serves, problems);
        let made_with = bench.mass_or_none(MADE_WITH, &self.made_with, problems);
        let glass = bench.mass_or_none(GLASS, &self.glass, problems);
        let tubs = bench.mass_or_none(TUBS, &self.tubs, problems);
        let melts = bench.percent(MELTS, &self.melts, ALL_MELTS, problems);
        let bag = bench.mass(BAG, &self.bag, problems);
        let (Some(serves), Some(made_with), Some(glass), Some(tubs), Some(melts)) =
            (serves, made_with, glass, tubs, melts)
        else {
            return answer.without_answer("Type how many serves, and the ice that each takes.");
        };
        let Some(all) =
            night(serves, made_with, glass, tubs, melts).filter(|all| Mass::from_g(all.total().g()).is_ok())
        else {
            answer.problems.push(Problem::new(SERVES, "That is more ice than there is. Check serves and weights."));
            return answer.without_answer("");
        };
        let total = all.total();
        if total <= Mass::ZERO {
            return answer.without_answer("Type the ice that a serve takes, or the tubs.");
        }
        let bags = |mass: Mass| bag.map(|bag| (bags_for(mass, bag), bag));
        let said = |(count, bag): (u32, Mass)| {
            let bags = text::count(f64::from(count), bench.decimal);
            format!("{bags} {} of {}", plural(count as usize, "bag", "bags"), weight(bag, bench))
        };
        answer.strip = Strip {
            figures: vec![weight(total, bench)],
            also: bags(total).map_or_else(String::new, said),
            picture: bags(total).map(|(count, bag)| drawn(total, count, bag, said((count, bag)))),
            tone: Tone::Answer,
            ..Strip::default()
        };
        answer.pictures.push(("Goes where".into(), shares(&all, bench)));
        self.of_which_clear(&all, serves, glass, bench, &mut answer);
        let besides = less(total, all.glasses);
        if let Some(plan) = &mut answer.plan {
            plan.needs.push(Need::of("bagged ice", Amount::Mass(besides)));
            if let Some((count, bag)) = bags(besides) {
                let amount = format!("{} × {}", text::count(f64::from(count), bench.decimal), weight(bag, bench));
                answer.rows.push(Row { name: "bags for the rest".into(), amount, ..Row::default() });
            }
        }
        // Clear ice of one's own is not bought.
        let bagged = if answer.plan.is_some() { besides } else { total };
        let ice = format!("{} g", text::editable(bagged.g().ceil(), bench.decimal));
        let pairs = [("serves".to_owned(), self.serves.clone()), ("ice".to_owned(), ice)];
        answer.carry("To buy", href_of(Route::Buy, &pairs));
        answer.remarks.push("All that is used, over what does not melt: (serves × each + tubs) ÷ (1 − share). Each, by rule of thumb: 180 g to stir with, 200 g to shake, none where it is built; in the glass 90 g in one piece, 150 g in cubes, 200 g crushed; a fifth melts. Weigh what your own night takes.".into());
        answer
    }

    /// What of it is clear ice, and when that is to be frozen; nothing where no glass takes any.
    fn of_which_clear(&self, all: &Night, serves: Ratio, glass: Mass, bench: &Bench, answer: &mut Answer) {
        if glass <= Mass::ZERO {
            return;
        }
        answer.rows_title = "With clear ice of your own";
        // Its fields stand in another tray: what is wrong there is said there.
        let clear = self.block(glass, serves, bench, &mut Vec::new());
        let cubes = clear.as_ref().map_or_else(String::new, |clear| clear.cubes(bench));
        answer.rows.push(Row {
            name: "of which clear".into(),
            amount: weight(all.glasses, bench).to_string(),
            detail: cubes,
            ..Row::default()
        });
        let row = Row { name: "freeze clear blocks".into(), ..Row::default() };
        let Some(clear) = clear.filter(|clear| clear.in_block() > 0) else {
            answer.rows.push(Row { detail: "what size, and when: see Clear ice".into(), ..row });
            return;
        };
        answer.rows.push(Row { amount: clear.blocks_of(bench), detail: clear.before(bench), ..row });
        answer.plan = Some(clear.plan(bench));
    }
}

fn less(all: Mass, part: Mass) -> Mass {
    Mass::from_g((all.g() - part.g()).max(0.0)).unwrap_or(Mass::ZERO)
}

/// Bags, each as full as it is: of many the first and the last.
fn drawn(total: Mass, count: u32, bag: Mass, text: String) -> Picture {
    let vessel = vessel::BAG.holding(Volume::LITRE.ml());
    let filled = |share: f64| {
        let level = Volume::from_ml(Volume::LITRE.ml() * FULL * share).map_or(0.0, |volume| vessel.level(volume));
        Filled { level, vessel: vessel.clone(), ice: Vec::new() }
    };
    let mut vessels = vec![filled(1.0); count.saturating_sub(1).min(MOST_DRAWN - 1) as usize];
    vessels.push(filled((total.g() / bag.g() - f64::from(count.saturating_sub(1))).clamp(0.0, 1.0)));
    Picture::Vessels { text, vessels }
}

/// Where it goes, each by its share of all.
fn shares(all: &Night, bench: &Bench) -> Picture {
    let total = all.total().g();
    let parts = [
        (Hatch::Strong, "stir", all.made_with),
        (Hatch::Sour, "glass", all.glasses),
        (Hatch::Bitter, "tubs", all.tubs),
        (Hatch::Curd, "melts", all.melts),
    ];
    let parts = parts.into_iter().filter(|(_, _, mass)| *mass > Mass::ZERO);
    let (mut drawn, mut key) = (Vec::new(), Vec::new());
    for (hatch, what, mass) in parts {
        drawn.push((hatch, mass.g() / total));
        let shown = match mass < Mass::KILOGRAM {
            true => bench.weight(mass),
            false => bench.weighed(mass, Figure::new(text::plain(mass.g() / 1000.0, 1, bench.decimal), "kg")),
        };
        key.push((hatch, format!("{what} {shown}")));
    }
    let words: Vec<&str> = key.iter().map(|(_, words)| words.as_str()).collect();
    let text = words.join(", ");
    Picture::Shares { bars: vec![Bar { of: "", text, parts: drawn }], key }
}
