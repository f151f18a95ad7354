//! One pour of cordial in place of the juice, citrus and syrup of a fresh form.

use std::sync::Arc;

use super::{
    Batch, CordialForm, FILL, For, JUICE, KEPT_AT, LEAST_GRAMS, POUR, SERVES, SPEC, figures, grams, keeping, steps,
};
use crate::book::{Kind, Line, Way, allergens_in, ingredient};
use crate::craft::balance::{Balance, balance};
use crate::craft::cordial::{Fill, FromJuice, Made, Miss, Swap, swap};
use crate::craft::measure::both_of;
use crate::craft::pour::litre_of;
use crate::quantity::{Mass, Ratio, Temperature, Volume};
use crate::reading::rows::unscaled_row;
use crate::reading::{Content, Contents, origin};
use crate::screen::plan::{Cut, Plan};
use crate::screen::route::Route;
use crate::screen::{Act, Answer, Bench, Button, Choice, Figure, Problem, Row, Strip, Tone};
use crate::substance::mix::Mix;
use crate::text::{self, Dimension, SpecLine};

/// Less juice in a pour is none, ml.
const LEAST_JUICE: f64 = 0.05;

/// A fresh form, split in what stays and what a cordial stands for.
struct Split {
    lines: Arc<Vec<SpecLine>>,
    /// Which of them the cordial stands for.
    goes: Vec<bool>,
    stays: Mix,
    replaced: Mix,
    /// How much there is of the juice that the cordial is made from.
    before: Volume,
    missing: Option<String>,
}

impl CordialForm {
    fn split(&self, bench: &Bench) -> Split {
        let Contents { lines, each, .. } = Contents::of(&self.spec, bench);
        let mut split = Split {
            goes: Vec::new(),
            stays: Mix::default(),
            replaced: Mix::default(),
            before: Volume::ZERO,
            missing: None,
            lines,
        };
        for (line, content) in split.lines.iter().zip(each) {
            let taken = line.read.as_ref().ok().and_then(|line| line.taken);
            let (mut goes, mut mix) = (false, Mix::default());
            match content {
                Content::Poured(poured) => {
                    mix = *poured;
                    let sort = taken.map(|taken| taken.ingredient.kind);
                    // What is declared, and what a person keeps, is no cordial's to stand for.
                    let is_plain = taken.is_some_and(|taken| taken.ingredient.allergens.is_empty())
                        && allergens_in(&line.typed).next().is_none();
                    goes = matches!(sort, Some(Kind::Juice | Kind::Syrup | Kind::Powder))
                        && mix.ethanol.g() <= 0.0
                        && is_plain
                        && !self.keeps(&line.typed);
                }
                Content::Counted(_) | Content::Words => {}
                _ => split.missing = split.missing.or(Some(line.typed.clone())),
            }
            if goes {
                split.replaced = split.replaced + mix;
                if taken.is_some_and(|taken| taken.ingredient.key == self.juice_of) {
                    split.before = split.before + mix.volume(Temperature::TWENTY).unwrap_or(Volume::ZERO);
                }
            } else {
                split.stays = split.stays + mix;
            }
            split.goes.push(goes);
        }
        split
    }

    fn solved(&self, split: &Split, bench: &Bench, answer: &mut Answer) -> Option<Swap> {
        let litre = litre_of(&self.taken(bench, &mut answer.problems)?);
        let kept = Temperature::from_celsius(KEPT_AT).ok()?;
        let fill = Fill::read(&self.fill);
        // Without a line of this juice there is no "as before": then it fills up.
        let fill = if split.before <= Volume::ZERO { Fill::Juice } else { fill };
        let pour = bench.volume(POUR, &self.pour, &mut answer.problems);
        if pour.is_none() && !self.pour.trim().is_empty() {
            return None;
        }
        swap(&split.replaced, &FromJuice { litre, before: split.before, fill }, pour, &self.parts(), kept)
    }

    /// For how many serves it is made.
    fn serves(&self, swap: &Swap, bench: &Bench, answer: &mut Answer) -> Option<Ratio> {
        match For::read(&self.make_for) {
            For::Serves => bench.count(SERVES, &self.serves, &mut answer.problems),
            For::Juice => {
                let litre = litre_of(&self.taken(bench, &mut Vec::new())?);
                let amount = bench.amount(JUICE, &self.juice, Dimension::Either, &mut answer.problems)?;
                both_of(amount, &litre).volume.over(swap.juice).filter(|_| swap.juice.ml() > LEAST_JUICE)
            }
        }
    }

    /// The cordial for all serves, or for as many as the juice there is makes. Without juice it is a syrup, and made as
    /// one.
    fn batch(&self, swap: &Swap, serves: Option<Ratio>, bench: &Bench) -> Option<Batch> {
        let came = bench.volume("came", &self.came, &mut Vec::new()).and_then(|came| came.over(swap.juice));
        let serves = came.or(serves).filter(|_| swap.juice.ml() > LEAST_JUICE)?;
        let made = Made {
            sugar: swap.sugar * serves,
            acids: swap.acids.iter().map(|(row, mass)| (*row, *mass * serves)).collect(),
            mix: swap.mix * serves,
            is_too_sweet: false,
            is_too_sour: false,
        };
        Some(Batch {
            juice: swap.juice * serves,
            made,
            volume: swap.pour * serves,
            zest: Mass::ZERO,
            name: ingredient(&self.juice_of)?.name.to_ascii_lowercase(),
            water: swap.water * serves,
        })
    }

    /// Fewer serves than are asked, for want of juice.
    fn cut(&self, swap: &Swap, serves: Ratio, bench: &Bench) -> Option<Cut> {
        let came = bench.volume("came", &self.came, &mut Vec::new())?;
        let makes = came.over(swap.juice).filter(|makes| makes.value() < serves.value() * (1.0 - 1e-6))?;
        let ml = |volume| text::litres_or_ml(volume, bench.decimal);
        let name = ingredient(&self.juice_of)?.name.to_ascii_lowercase();
        Some(Cut {
            // A serve that is not full is none.
            made: format!(
                "{} of {} serves",
                text::plain((makes.value() + 1e-9).floor(), 0, bench.decimal),
                text::count(serves.value(), bench.decimal)
            ),
            there: format!("{} of {name}", ml(came)),
            asked: ml(swap.juice * serves).to_string(),
        })
    }

    pub(super) fn swap(&self, mut answer: Answer, bench: &Bench) -> Answer {
        let split = self.split(bench);
        if split.lines.is_empty() {
            return answer.without_answer("Type or paste the fresh form, a line for each ingredient.");
        }
        let Some(swap) = self.solved(&split, bench, &mut answer) else {
            return self.not_solved(answer, &split, bench);
        };
        let serves = self.serves(&swap, bench, &mut answer);
        let written = split.lines.iter().find_map(|line| line.read.as_ref().ok()?.unit);
        let replaced: Vec<&str> = split
            .lines
            .iter()
            .zip(&split.goes)
            .filter(|(_, goes)| **goes)
            .filter_map(|(line, _)| line.read.as_ref().ok())
            .map(|line| line.name.as_str())
            .collect();
        answer.strip = Strip {
            figures: vec![bench.headline_of(swap.pour, "cordial", written)],
            also: match &split.missing {
                Some(name) => format!("Without “{name}”, which is not counted"),
                None => "in each serve".into(),
            },
            below: format!("In place of {}", replaced.join(", ")),
            tone: Tone::Answer,
            ..Strip::default()
        };
        let was = split.replaced.volume(Temperature::TWENTY).unwrap_or(Volume::ZERO);
        misses(&mut answer, &swap, was, bench);
        if swap.juice.ml() <= LEAST_JUICE {
            answer
                .cautions
                .push("There is no juice in it: that is a syrup. Let another line go, or make it in Syrup.".into());
        }
        if split.before <= Volume::ZERO && Fill::read(&self.fill) == Fill::Water {
            answer.remarks.push("The fresh form has none of this juice, so it is filled up with it.".into());
        }
        side_by_side(&mut answer, &split, &swap, bench);
        answer.rows_title = "With the cordial";
        answer.rows = self.swapped_rows(&split, &swap, bench);
        let cut = serves.and_then(|serves| self.cut(&swap, serves, bench));
        answer.plan = self.batch(&swap, serves, bench).map(|batch| Plan { cut, ..steps(&batch, bench) });
        self.recipe(&mut answer, &swap, serves.unwrap_or(Ratio::ONE), bench);
        let lines = self.with_cordial(&split, &swap, swap.pour.ml(), bench);
        // What is kept is as a hand pours it, to half a millilitre: common practice, no source.
        let poured = ((swap.pour.ml() * 2.0).round() / 2.0).max(0.5);
        let kept = self.with_cordial(&split, &swap, poured, bench);
        answer.form = Some(Box::new(Way { name: "cordial".into(), lines: kept, ..Way::default() }));
        if let Some(plan) = &answer.plan {
            let made = swap.pour * serves.unwrap_or(Ratio::ONE);
            answer.prep = Some(origin::prep(&self.called(), "cordial", (&swap.mix, made), &plan.needs, bench));
        }
        answer.carry("Balance", Route::Balance.href_with("spec", &lines));
        answer.carry("Scale it", Route::Scale.href_with("spec", &lines));
        answer
    }

    /// Why there is no swap, and the lines with the way back for those that are kept.
    fn not_solved(&self, mut answer: Answer, split: &Split, bench: &Bench) -> Answer {
        if answer.problems.is_empty() {
            let words = match split.lines.iter().any(|line| self.keeps(&line.typed)) {
                true => "Every line that a cordial could stand for is kept: tap Let go beside one.",
                false => "Nothing here for a cordial to stand for: add juice or syrup, like 30 ml pear juice.",
            };
            answer.problems.push(Problem::new(SPEC, words));
        }
        answer.rows = split.lines.iter().map(|line| self.kept_row(line, bench)).collect();
        answer.without_answer("")
    }

    /// The lines of the new form: what stays, the cordial, what it stands for, and words.
    fn swapped_rows(&self, split: &Split, swap: &Swap, bench: &Bench) -> Vec<Row> {
        let is_poured = |line: &SpecLine| line.read.is_ok();
        let mut rows: Vec<Row> = Vec::new();
        let kept = split.lines.iter().zip(&split.goes).filter(|(_, goes)| !**goes).map(|(line, _)| line);
        rows.extend(kept.clone().filter(|line| is_poured(line)).map(|line| self.kept_row(line, bench)));
        rows.push(Row {
            name: "cordial".into(),
            amount: text::millilitres(swap.pour, bench.decimal).to_string(),
            detail: format!(
                "{}, in place of what follows",
                text::ounces(swap.pour, &bench.house.conventions, bench.decimal)
            ),
            ..Row::default()
        });
        let gone = split.lines.iter().zip(&split.goes).filter(|(_, goes)| **goes).map(|(line, _)| line);
        rows.extend(gone.map(|line| Row { buttons: vec![self.keep(line, true)], ..unscaled_row(line, bench) }));
        rows.extend(kept.filter(|line| !is_poured(line)).map(|line| unscaled_row(line, bench)));
        rows
    }

    /// What the cordial is called.
    fn called(&self) -> String {
        let name = ingredient(&self.juice_of).map_or_else(String::new, |juice| juice.name.to_ascii_lowercase());
        format!("{} cordial", name.trim_end_matches(" juice")).trim_start().to_owned()
    }

    /// Whether a person keeps a line as it is.
    fn keeps(&self, typed: &str) -> bool {
        self.stays.lines().any(|kept| kept == typed)
    }

    /// A button that keeps a line as it is, or lets it go into the cordial again.
    fn keep(&self, line: &SpecLine, is_kept: bool) -> Button {
        let others = self.stays.lines().filter(|kept| !kept.is_empty() && *kept != line.typed);
        let all: Vec<&str> = others.chain(is_kept.then_some(line.typed.as_str())).collect();
        let (label, spoken) = match is_kept {
            true => ("Keep", format!("keep {} as it is", line.typed)),
            false => ("Let go", format!("let {} go into the cordial", line.typed)),
        };
        Button::sign(label, spoken, Act::Put(vec![("stays", all.join("\n"))]))
    }

    /// A line that stays; where a person said so, with the way back.
    fn kept_row(&self, line: &SpecLine, bench: &Bench) -> Row {
        let buttons = if self.keeps(&line.typed) { vec![self.keep(line, false)] } else { Vec::new() };
        Row { buttons, ..unscaled_row(line, bench) }
    }

    /// The recipe of the cordial for all serves, as rows.
    fn recipe(&self, answer: &mut Answer, swap: &Swap, serves: Ratio, bench: &Bench) {
        let row = |name: String, amount: String| Row { name, amount, ..Row::default() };
        let mut scratch = Answer::default();
        let reading = figures(&mut scratch, &swap.mix, bench);
        let many = text::count(serves.value(), bench.decimal);
        let juice = text::litres_or_ml(swap.juice * serves, bench.decimal).to_string();
        let name = self.taken(bench, &mut Vec::new()).map_or("juice", |taken| taken.ingredient.name);
        answer.rows.push(Row {
            name: format!("The cordial, for {many} serves"),
            amount: text::litres_or_ml(swap.pour * serves, bench.decimal).to_string(),
            detail: reading,
            ..Row::default()
        });
        answer.rows.push(row(format!("{name}, clear"), juice));
        answer.rows.push(row("sugar".into(), grams(swap.sugar * serves, "", bench).trim_end().to_owned()));
        for (powder, mass) in swap.acids.iter().filter(|(_, mass)| (*mass * serves).g() >= LEAST_GRAMS) {
            answer
                .rows
                .push(row(powder.name.to_ascii_lowercase(), grams(*mass * serves, "", bench).trim_end().to_owned()));
        }
        if (swap.water * serves).g() >= LEAST_GRAMS {
            answer.rows.push(row("water".into(), grams(swap.water * serves, "", bench).trim_end().to_owned()));
        }
        keeping(answer, &swap.mix, bench);
    }

    /// The lines of the new form, with so many millilitres of the cordial; that carries its own figures.
    fn with_cordial(&self, split: &Split, swap: &Swap, ml: f64, bench: &Bench) -> String {
        let stays = split.lines.iter().zip(&split.goes).filter(|(_, goes)| !**goes).map(|(line, _)| line.typed.clone());
        let figures = text::whole_figures(&swap.mix, bench.decimal);
        let cordial = format!("{} ml {} ({figures})", text::editable(ml, bench.decimal), self.called());
        let is_poured = |line: &SpecLine| matches!(line.read, Ok(Line { .. }));
        let at = split.lines.iter().zip(&split.goes).filter(|(line, goes)| !**goes && is_poured(line)).count();
        let mut lines: Vec<String> = stays.collect();
        lines.insert(at.min(lines.len()), cordial);
        lines.join("\n")
    }
}

/// What could not be matched, and what is offered for it.
fn misses(answer: &mut Answer, swap: &Swap, replaced: Volume, bench: &Bench) {
    let ml = |volume| text::millilitres(volume, bench.decimal).to_string();
    for miss in &swap.misses {
        let words = match miss {
            Miss::TooMuchWater => format!(
                "Too much water in the juice to fit in {}: sugar and acid match in a pour of {}.",
                ml(swap.wanted),
                ml(swap.pour)
            ),
            Miss::JuiceTooSweet | Miss::JuiceTooSour => {
                let worse = if *miss == Miss::JuiceTooSweet { "sweeter" } else { "sourer" };
                let juice = ml(swap.juice);
                let words = format!(
                    "More juice would be {worse} than the drink: {juice} of it in a pour matches, the rest is water."
                );
                // At the choice that it belies.
                answer.problems.push(Problem::new(FILL, words));
                continue;
            }
            Miss::Crystals(limit) => format!(
                "So much sugar does not stay dissolved at 4 °C: thinned to {} °Bx, a pour is {} in place of {}.",
                text::plain(*limit, 1, bench.decimal),
                ml(swap.pour),
                ml(swap.wanted)
            ),
        };
        answer.cautions.push(words);
    }
    if swap.misses.is_empty() && (swap.pour.ml() - replaced.ml()).abs() > 0.5 {
        answer.remarks.push(format!(
            "Same sugar, same acid by titration in a serve; {} where there were {}, so the drink is another size and strength.",
            ml(swap.pour),
            ml(replaced)
        ));
    } else if swap.misses.is_empty() {
        answer.remarks.push("Same sugar, same acid by titration, same volume in a serve. Another acid tastes another way: taste before the batch.".into());
    }
}

/// Both forms, figure by figure.
fn side_by_side(answer: &mut Answer, split: &Split, swap: &Swap, bench: &Bench) {
    let fresh = split.stays + split.replaced;
    let with = split.stays + swap.mix;
    answer.cells_title = "Both forms, before ice";
    let (a, b): (Balance, Balance) = (balance(&fresh), balance(&with));
    let number = |value: f64, unit: &str| Figure::new(text::plain(value, 1, bench.decimal), unit);
    let rows = [
        ("volume", text::millilitres(a.volume, bench.decimal), text::millilitres(b.volume, bench.decimal)),
        ("strength", number(a.strength.fraction() * 100.0, "% vol"), number(b.strength.fraction() * 100.0, "% vol")),
        ("sugar", number(fresh.sugar().g(), "g"), number(with.sugar().g(), "g")),
        ("acid", number(fresh.titratable().g(), "g"), number(with.titratable().g(), "g")),
    ];
    for (what, fresh, with) in rows {
        answer.cell(format!("{what}, fresh"), fresh);
        answer.cell(format!("{what}, cordial"), with);
    }
    if let (Some(fresh), Some(with)) = (a.ph, b.ph) {
        let about = "About, at 25 °C. It differs where the cordial has less of the salts of juice.";
        answer.explained("pH, fresh", number(fresh, ""), about);
        answer.explained("pH, cordial", number(with, ""), about);
    }
}
