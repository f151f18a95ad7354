//! What is shown: the strip, the bottles, what goes onto the scale, what is in the bottle, the freezer, how it keeps.

use super::drink::{Drink, is_top, uncounted};
use super::plan::{filling, scale_reads};
use super::{BottleItForm, By, EMPTY, FREEZER, LEFT, OPEN, Water};
use crate::craft::balance::balance;
use crate::craft::bottle_it::left;
use crate::craft::freezer::{self, State};
use crate::craft::keeping::Keeping;
use crate::craft::serves::share;
use crate::craft::vessel::BOTTLE;
use crate::quantity::{Amount, Density, Mass, Ratio, Temperature, Volume};
use crate::reading::contents::{guesses, question, washed_words};
use crate::reading::from_spec::{self, FromSpec, SPEC};
use crate::reading::label;
use crate::reading::pours::poured;
use crate::reading::rows::{carried, exact_figure, rewritten};
use crate::reading::{self, Content, Contents, cells, counted_row};
use crate::screen::picture::{Filled, Picture};
use crate::screen::route::Route;
use crate::screen::{Answer, Bench, Figure, Fix, Pour, Problem, Row, Strip, Tone, plural};
use crate::text;

/// Where ticks of this screen are kept, for this tab.
pub const IN_HAND: &str = "bottle";

/// Bottles that there is room to draw.
const MOST_DRAWN: u32 = 6;
/// What holds more is no bottle, ml.
const LARGEST_BOTTLE: f64 = 3000.0;

impl BottleItForm {
    /// Why there is no answer: the lines that are not counted, or what is still to be typed.
    pub(super) fn unanswered(&self, mut answer: Answer, read: &Contents, bench: &Bench) -> Answer {
        let open = uncounted(read);
        answer.leads = match open.len() {
            0 => String::new(),
            count => format!("{count} {} not counted", plural(count, "line", "lines")),
        };
        answer.rows_title = "Not counted";
        let row = |at: &usize| counted_row((&read.lines[*at], &read.each[*at]), &read.mix, bench);
        answer.rows = open.iter().map(row).collect();
        if let Some(at) = open.first() {
            let line = &read.lines[*at];
            let (words, fixes) = match (&line.read, &read.each[*at]) {
                (Ok(known), Content::Unknown) => (question(&known.name, bench), guesses(line, &known.name)),
                _ => ("See it below the drink's amounts.".to_owned(), Vec::new()),
            };
            let whole = |fix: Fix| Fix { text: rewritten(&self.spec, &line.typed, &fix.text), ..fix };
            let fixes = fixes.into_iter().map(whole).collect();
            let problem = Problem::new(SPEC, format!("“{}”. {words}", line.typed));
            answer.problems.push(Problem { fixes, ..problem });
        }
        answer.without_answer(match (read.is_something(), self.by()) {
            (false, _) => "Add a line with an amount, like 60 ml gin.",
            (_, By::Serves) => "Type how many serves, like 30.",
            (_, By::Bottles) => "Type how many bottles, like 6.",
            (_, By::Have) => "Type what there is, like 1 l gin.",
        })
    }

    /// The answer; what goes onto the scale into `pours`.
    pub(super) fn answered(
        &self,
        mut answer: Answer,
        read: &Contents,
        drink: &Drink,
        pours: &mut Vec<Pour>,
        bench: &Bench,
    ) -> Answer {
        *pours = self.pours(drink, bench);
        answer.strip = self.strip(read, drink, bench);
        answer.pictures.push((filling(drink, bench), drawn(drink, bench)));
        let mut copied = vec![answer.as_text()];
        copied.extend(pours.iter().map(|pour| format!("{} {}, {}", pour.amount, pour.name, pour.beneath)));
        answer.text = Some(copied.join("\n"));
        let serve = text::litres_or_ml(drink.serve, bench.decimal).to_string();
        if let Some(detail) = poured(drink.serve, &serve, bench) {
            answer.rows_title = "With your jiggers";
            answer.rows = vec![Row { name: "One serve".into(), amount: serve, detail, ..Row::default() }];
        }
        self.cells(&mut answer, read, drink, bench);
        self.freezer(&mut answer, drink, bench);
        answer.cautions.extend(reading::declared(&read.lines, bench));
        Self::keeps(&mut answer, read, drink);
        if let Some(line) = read.lines.iter().find(|line| is_top(line)) {
            answer.notes.push(format!("Goes in the glass, not in the bottle: {}.", line.typed));
        }
        if drink.is_washed {
            answer.notes.push(washed_words(bench));
        }
        self.left(&mut answer, drink, bench);
        self.sources(&mut answer);
        reading::ask_part(&mut answer, SPEC, &self.spec, &read.lines, bench);
        answer.form = self.form(drink, bench);
        answer.prep = Some(self.prep(drink, bench));
        answer.plan = Some(self.plan(drink, bench));
        let name = FromSpec::of(&self.from_spec, bench).map_or_else(|| "Batch".into(), |form| form.name());
        let facts = label::Facts {
            strength: text::editable(drink.made.strength().fraction() * 100.0, bench.decimal),
            pour: text::millilitres(drink.serve, bench.decimal).to_string(),
            spec: self.from_spec.rsplit_once('/').map(|(id, at)| (id.to_owned(), at.to_owned())),
            ..from_spec::of_lines(name, read, bench)
        };
        answer.carry("Label it", label::href(&facts));
        answer.carry("What it costs", Route::Cost.href_with("spec", &self.spec));
        answer.carry("To buy", self.to_buy(drink, bench));
        answer
    }

    /// What goes onto the scale, to be bought: in these amounts, whatever the spec says.
    fn to_buy(&self, drink: &Drink, bench: &Bench) -> String {
        let parts = drink.parts.iter().filter(|part| !part.amount.is_none());
        let lines: Vec<String> = parts.map(|part| format!("{} {}", carried(part.amount, bench), part.name)).collect();
        let pair = |name: &str, text: String| (name.to_owned(), text);
        let bottles = Self::bottles(drink, drink.bottling.bottles, "empty ", bench).to_string();
        let batch = pair("batch", lines.join("\n"));
        from_spec::href_of(Route::Buy, &[batch, pair("bottles", bottles), pair(from_spec::FROM, String::new())])
    }

    /// "5 bottles of 700 ml", with a word before what they are.
    pub(super) fn bottles(drink: &Drink, count: u32, word: &str, bench: &Bench) -> Figure {
        let size = text::litres_or_ml(drink.size, bench.decimal);
        let bottles = match drink.size.ml() > LARGEST_BOTTLE {
            true => plural(count as usize, "vessel", "vessels"),
            false => plural(count as usize, "bottle", "bottles"),
        };
        Figure::new(text::count(f64::from(count), bench.decimal), format!("{word}{bottles} of {size}"))
    }

    /// "5 bottles of 700 ml", "30 serves, pour 112 ml".
    fn strip(&self, read: &Contents, drink: &Drink, bench: &Bench) -> Strip {
        let asked = bench.count(super::SERVES, &self.serves, &mut Vec::new()).filter(|_| self.by() == By::Serves);
        let serves = asked.map_or(f64::from(drink.shared.serves), Ratio::value);
        let shown = text::fraction_of(serves).unwrap_or_else(|| text::count(serves, bench.decimal));
        let is_one = (serves - 1.0).abs() < 1e-9;
        let also =
            format!("{shown} {}, pour {}", if is_one { "serve" } else { "serves" }, bench.headline(drink.serve, None));
        let below = match &drink.enough {
            Some(of) => format!("First to run out: {}", name_of(read, of.first)),
            None => String::new(),
        };
        Strip {
            figures: vec![Self::bottles(drink, drink.bottling.bottles, "", bench)],
            also,
            below,
            tone: Tone::Answer,
            picture: None,
        }
    }

    /// What goes in, one after the other, with what the scale then shows.
    fn pours(&self, drink: &Drink, bench: &Bench) -> Vec<Pour> {
        let in_hand = bench.at_hand.in_hand(IN_HAND);
        let pour = |(at, (part, beneath)): (usize, (&super::drink::Part, String))| {
            let amount = match part.amount {
                Amount::Volume(volume) => bench.headline(volume, None),
                Amount::Mass(mass) => text::fine_grams(mass, bench.decimal),
                amount @ Amount::Count(_) => exact_figure(amount, None, bench),
            };
            // A tick is for this amount: of another, it is not in yet.
            let typed = format!("{amount} {}", part.name);
            Pour {
                tick: Some(in_hand.ticked.contains(&(at, typed.clone()))),
                typed,
                amount,
                beneath,
                note: if part.is_last { "goes in last".into() } else { String::new() },
                name: part.name.clone(),
                ..Pour::default()
            }
        };
        drink.parts.iter().zip(scale_reads(drink, bench)).enumerate().map(pour).collect()
    }

    fn cells(&self, answer: &mut Answer, read: &Contents, drink: &Drink, bench: &Bench) {
        answer.cells_title = "In the bottle";
        let made = &drink.made;
        reading::four_cells(answer, made, bench);
        if !drink.is_washed {
            cells::ph(answer, &balance(made), bench);
        }
        let ml = |volume| text::litres_or_ml(volume, bench.decimal);
        answer.cell("in all", ml(drink.volume));
        if self.by() != By::Serves {
            answer.cell("spare", ml(drink.shared.spare));
        }
        for (at, amount) in drink.enough.iter().flat_map(|of| &of.left) {
            answer.cell(format!("{} left over", name_of(read, *at)), exact_figure(*amount, None, bench));
        }
        if self.rounding != "1ml" && !drink.is_washed {
            let shown = |mix: &crate::substance::mix::Mix| {
                let volume = mix.volume(Temperature::TWENTY).unwrap_or(Volume::ZERO);
                let strength = text::plain(mix.strength().fraction() * 100.0, 1, bench.decimal);
                format!("{} at {strength} % vol", ml(volume))
            };
            answer.notes.push(format!("Rounded it makes {}; exactly, {}.", shown(made), shown(&drink.exact)));
        }
    }

    /// What it is in the freezer.
    fn freezer(&self, answer: &mut Answer, drink: &Drink, bench: &Bench) {
        if self.freezer.trim().is_empty() {
            return;
        }
        let Some(cold) = bench.temperature(FREEZER, &self.freezer, (-40.0, 0.0), &mut answer.problems) else { return };
        let degrees = |at: Temperature, places| text::plain(at.celsius(), places, bench.decimal);
        let at = degrees(cold, 0);
        let Ok(frozen) = freezer::at(&drink.made, cold) else {
            return answer.notes.push(format!(
                "At {at} °C it is not known whether it freezes: it is stronger or sweeter than the tables."
            ));
        };
        let begins = degrees(frozen.begins, 0);
        let fridge = match freezer::pourable(&drink.made, cold) {
            Some(water) if water > Mass::ZERO && self.water() != Water::None => {
                let in_it: f64 = drink.water_each().g() * drink.times.value() * drink.makes.value();
                match water.g() < in_it {
                    true => format!(
                        " Keep it in the fridge, or leave {} of the water out.",
                        text::millilitres(
                            Volume::from_ml(water.volume_at(Density::WATER).ml().ceil()).unwrap_or(Volume::ZERO),
                            bench.decimal
                        )
                    ),
                    false => " Keep it in the fridge.".to_owned(),
                }
            }
            _ => " Keep it in the fridge.".to_owned(),
        };
        match frozen.state {
            State::Pours => answer.cell(format!("at {at} °C"), Figure::new("pours", "")),
            State::Syrupy => answer.cell(format!("at {at} °C"), Figure::new("syrupy", "")),
            State::Slush => {
                answer.cautions.push(format!("Slush at {at} °C: it begins to freeze near {begins} °C.{fridge}"));
            }
            State::Solid => answer.cautions.push(format!(
                "Solid at {at} °C: it begins to freeze near {begins} °C. Glass bottles burst when solid.{fridge}"
            )),
        }
    }

    /// How it keeps, in a line.
    fn keeps(answer: &mut Answer, read: &Contents, drink: &Drink) {
        if drink.is_washed {
            return;
        }
        let words = match label::keeping_of(&read.lines, balance(&drink.made).ph, drink.made.ethanol) {
            Keeping::Fresh => "Fresh juice is best the day it is pressed: it goes in last, and is kept cold.",
            Keeping::Animal => "Milk, cream or egg: at 5 °C or less, 7 days at most, today counted.",
            Keeping::Drink => "Keep it cold. The limits published for food leave drinks with alcohol out.",
            Keeping::Acid => "Keep it cold. By its pH it is an acid food.",
            Keeping::Plain => "Not sour enough to be an acid food: 5 °C or less, 7 days at most, today counted.",
        };
        answer.notes.push(format!("{words} Your local food code goes first."));
    }

    /// Serves left, mid-shift.
    fn left(&self, answer: &mut Answer, drink: &Drink, bench: &Bench) {
        let problems = &mut answer.problems;
        let full = match self.left.trim() {
            "" | "0" => Some(Ratio::ZERO),
            text => bench.count(LEFT, text, problems),
        };
        let [open, empty] =
            [(OPEN, &self.open), (EMPTY, &self.empty)].map(|(field, text)| bench.mass_or_none(field, text, problems));
        let (Some(full), Some(open), Some(empty)) = (full, open, empty) else { return };
        if full <= Ratio::ZERO && open <= Mass::ZERO {
            return;
        }
        if open > Mass::ZERO && empty <= Mass::ZERO {
            return problems.push(Problem::new(EMPTY, "Weigh an empty one too, like 480 g."));
        }
        if open > Mass::ZERO && open < empty {
            return problems
                .push(Problem::new(OPEN, "That is less than the bottle weighs empty. Weigh it with its drink."));
        }
        let density = drink.made.density(Temperature::TWENTY).unwrap_or(Density::WATER);
        let volume = left(full, drink.bottling.full, open, empty, density);
        match share(volume, drink.serve, Ratio::ZERO) {
            Ok(shared) => {
                let count = text::count(f64::from(shared.serves), bench.decimal);
                answer.cell("serves left", Figure::new(count, plural(shared.serves as usize, "serve", "serves")));
            }
            Err(problem) => problems.push(Problem::new(LEFT, problem)),
        }
    }

    /// Where the figures come from.
    fn sources(&self, answer: &mut Answer) {
        let remarks = &mut answer.remarks;
        if let Water::Stirred | Water::Shaken = self.water() {
            remarks.push("Water as the usual ice gives it, by a balance of heat: see Chill.".into());
        }
        remarks.push("Weights by the density of what is in each line, at 20 °C. Strength with the contraction of spirit and water.".into());
        remarks.push("Acid food: pH 4.6 or less, drinks with alcohol left out (21 CFR 114.3). Cold food: 7 days at 5 °C (FDA Food Code 3-501.17, from memory). Fresh juice: rule of thumb.".into());
        if !self.freezer.trim().is_empty() {
            remarks.push("Freezing: by tables for spirit and for sugar in water, added up, our own rule, and what is left of the water. Slush to half of it ice (rule of thumb).".into());
        }
        if self.loss.trim().is_empty() {
            remarks.push("No loss is counted: walls and filters keep some. Type what share yours do.".into());
        }
    }
}

/// Name of a measured line.
fn name_of(read: &Contents, at: usize) -> &str {
    read.lines.iter().filter_map(|line| line.read.as_ref().ok()).nth(at).map_or("", |line| &line.name)
}

/// The bottles, as full as they are; of many the first and the last.
fn drawn(drink: &Drink, bench: &Bench) -> Picture {
    let vessel = BOTTLE.holding(drink.size.ml());
    let filled = |volume| Filled { level: vessel.level(volume), vessel: vessel.clone(), ice: Vec::new() };
    let before = drink.bottling.bottles.saturating_sub(1).min(MOST_DRAWN - 1) as usize;
    let mut vessels = vec![filled(drink.bottling.full); before];
    vessels.push(filled(drink.bottling.last));
    let [full, last] =
        [drink.bottling.full, drink.bottling.last].map(|volume| text::litres_or_ml(volume, bench.decimal));
    Picture::Vessels { text: format!("A full one holds {full}, the last {last}"), vessels }
}
