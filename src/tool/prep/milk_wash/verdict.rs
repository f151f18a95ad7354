//! Whether the milk clots, and what the drink is afterwards.

use super::{GOT, MilkWashForm, Worked};
use crate::craft::balance::balance;
use crate::craft::milk_wash::{COMES_THROUGH, Clots, Verdict, Wash, verdict, washed};
use crate::quantity::{Ratio, Volume};
use crate::reading::yields::{self, MILK_WASH};
use crate::screen::picture::{Bar, Hatch, Picture};
use crate::screen::{Answer, Bench, Problem, Row, Strip, Tone};
use crate::substance::milk::{ALCOHOL_CLOTS_FROM, CASEIN_CLOTS_AT};
use crate::substance::ph::INDICATIVE_ABOVE;
use crate::text;

const OVER_IT: &str = "pour the drink over the milk";
const DISSOLVE: &str = "Dissolve the acid, and stir it into the drink before the wash.";
/// A drink warmer than this cooks the whey: it clots coarse and cloudy (from memory, 75 °C for whey protein).
const HOT: f64 = 60.0;

impl Worked {
    /// Whether it clots, where that is known: of milk of a cow, in a drink whose acid is known.
    pub(super) fn verdict(&self) -> Option<Verdict> {
        let drink = self.drink.as_ref().filter(|_| self.kind.is_of_cows() && self.has_acid_figure)?;
        Some(verdict(drink, self.wash.milk))
    }
}

impl MilkWashForm {
    /// That there is too little acid, and what to add: what would come of the wash is not told until it clots.
    pub(super) fn held_back(&self, mut answer: Answer, worked: &Worked, verdict: Verdict, bench: &Bench) -> Answer {
        answer.cells_title = "The wash";
        self.drawn(&worked.wash, &mut answer, bench);
        self.notes(worked, &mut answer);
        let grams = text::fine_grams(verdict.citric_to_add, bench.decimal);
        answer.strip = Strip {
            figures: vec![self.amounts(&mut answer, &worked.wash, bench)],
            also: format!("Too little acid to clot it: add about {grams} of citric acid"),
            tone: Tone::Answer,
            ..Strip::default()
        };
        together(&verdict, &mut answer, bench);
        answer.notes.push(DISSOLVE.into());
        answer.remarks.push("Yield, curd and steps are told once there is acid enough.".into());
        is_a_hint(worked, &mut answer);
        answer
    }

    /// What comes through the filter: drink and milk together, less what curd and filter keep.
    pub(super) fn comes_through(&self, worked: &Worked, bench: &Bench) -> (Volume, Ratio, bool) {
        let (share, is_own) = yields::through_milk(bench);
        (worked.wash.together() * share, share, is_own)
    }

    /// What came through, and an offer to keep the share that it is.
    pub(super) fn came(&self, worked: &Worked, answer: &mut Answer, bench: &Bench) -> Option<Volume> {
        let got = bench.volume(GOT, &self.got, &mut answer.problems)?;
        let share = got.over(worked.wash.together()).filter(|share| *share <= Ratio::ONE);
        let Some(share) = share else {
            answer.problems.push(Problem::new(GOT, "That is more than drink and milk together. Check it."));
            return None;
        };
        answer.buttons.push(bench.keep_yield(MILK_WASH, share));
        Some(got)
    }

    /// Says whether it clots, and shows what comes through; the verdict and what to do, for the strip.
    pub(super) fn judge(&self, worked: &Worked, judged: Option<Verdict>, answer: &mut Answer, bench: &Bench) -> String {
        answer.cells_title = "The wash";
        self.drawn(&worked.wash, answer, bench);
        self.notes(worked, answer);
        let (through, share, is_own) = self.comes_through(worked, bench);
        let own = if is_own { ", your own" } else { "" };
        answer.cell(
            format!("yield, {}{own}", text::percent(share.value(), bench.decimal)),
            text::litres_or_ml(through, bench.decimal),
        );
        answer.remarks.push(format!(
            "The yield is {} to {} of drink and milk together (rule of thumb). Type what came through, and keep it.",
            text::percent(COMES_THROUGH[0], bench.decimal),
            text::percent(COMES_THROUGH[2], bench.decimal)
        ));
        if !worked.kind.is_of_cows() {
            answer.remarks.push(format!(
                "How {} clots, and what stays in the drink, is not known here: try a glass first.",
                worked.kind.name.to_ascii_lowercase()
            ));
            return "How it clots is not known".into();
        }
        let Some(drink) = &worked.drink else { return "Pour the drink over the milk".into() };
        self.afterwards(worked, drink, answer, bench);
        let Some(judged) = judged else { return "Its acid is not known".into() };
        together(&judged, answer, bench);
        let grams = text::fine_grams(judged.citric_to_add, bench.decimal);
        let limit = text::plain(CASEIN_CLOTS_AT, 1, bench.decimal);
        let words = match judged.clots {
            Clots::Yes => {
                answer.remarks.insert(
                    0,
                    format!(
                        "It clots: even if the milk takes up as much acid as it may, the pH comes to {limit} or less."
                    ),
                );
                format!("It clots: {OVER_IT}")
            }
            Clots::Perhaps => format!("It may not clot: add about {grams} of citric acid to be sure"),
            Clots::No => format!("Too little acid to clot it: add about {grams} of citric acid"),
        };
        if judged.clots != Clots::Yes {
            answer.notes.push(DISSOLVE.into());
        }
        is_a_hint(worked, answer);
        words
    }

    /// Strength, sugar, acid and lactose after the wash.
    fn afterwards(&self, worked: &Worked, drink: &crate::substance::mix::Mix, answer: &mut Answer, bench: &Bench) {
        let after = washed(drink, worked.wash.milk, worked.kind);
        let (a, b) = (balance(drink), balance(&after.liquid));
        let plain = |value: f64| text::plain(value, 1, bench.decimal);
        let row = |name: &str, before: f64, then: f64, unit: &str| Row {
            name: name.into(),
            amount: format!("{} {unit}", plain(then)),
            detail: format!("before {} {unit}", plain(before)),
            ..Row::default()
        };
        answer.rows_title = "The drink after its wash";
        answer.rows = vec![
            row("strength", a.strength.fraction() * 100.0, b.strength.fraction() * 100.0, "% vol"),
            row("sugar", a.sugar, b.sugar, "g/l"),
            row("acid", a.acid, b.acid, "g/l"),
            Row {
                name: "lactose".into(),
                amount: format!("{} g/l", plain(after.liquid.g_per_l(after.lactose))),
                detail: "of the milk; hardly sweet, and it stays in".into(),
                ..Row::default()
            },
            Row {
                name: "curd, dry".into(),
                amount: text::grams(after.curd, 0, bench.decimal).to_string(),
                detail: format!(
                    "casein and fat of {}; it holds several times its weight of drink",
                    worked.kind.name.to_ascii_lowercase()
                ),
                ..Row::default()
            },
        ];
        if worked.has_acid_figure && a.acid > 0.0 {
            answer
                .remarks
                .push("Part of the acid is taken up by the milk: by taste less is left than by titration.".into());
        }
    }

    /// Drink and milk as they go together.
    pub(super) fn drawn(&self, wash: &Wash, answer: &mut Answer, bench: &Bench) {
        let ml = |volume| text::litres_or_ml(volume, bench.decimal);
        let Some(milk) = wash.milk.over(wash.together()).map(Ratio::value) else { return };
        let named = [format!("drink {}", ml(wash.drink)), format!("milk {}", ml(wash.milk))];
        let bar = Bar { of: "", text: named.join(", "), parts: vec![(Hatch::Strong, 1.0 - milk), (Hatch::Milk, milk)] };
        let [drink, milk] = named;
        let key = vec![(Hatch::Strong, drink), (Hatch::Milk, milk)];
        let heading = format!("Together, {}", ml(wash.together()));
        answer.pictures.push((heading, Picture::Shares { bars: vec![bar], key }));
    }

    /// What to mind about a drink that is hot, strong or without acid.
    fn notes(&self, worked: &Worked, answer: &mut Answer) {
        if worked.at > HOT {
            answer.cautions.push("So warm, the whey cooks and the drink stays cloudy: let it cool first.".into());
        }
        let Some(drink) = &worked.drink else { return };
        let together = drink.strength().fraction() * worked.wash.drink.ml() / worked.wash.together().ml();
        if together >= ALCOHOL_CLOTS_FROM {
            answer.cautions.push("So strong, the alcohol by itself may clot the milk, coarsely (from about 33 % vol together; J. Dairy Research 1958, from memory).".into());
        }
        if worked.has_acid_figure && drink.acids() <= crate::quantity::Mass::ZERO {
            answer.cautions.push("There is no acid in it: milk won't clot by it. Add citrus or acid.".into());
        }
    }
}

/// What drink and milk read together.
fn together(verdict: &Verdict, answer: &mut Answer, bench: &Bench) {
    let plain = |ph| text::plain(ph, 1, bench.decimal);
    let [least, likely, most] = verdict.ph.map(plain);
    let limit = plain(CASEIN_CLOTS_AT);
    let text = format!("pH {likely}, between {least} and {most}; milk clots at {limit} or less");
    let said = format!("{likely} ({least}–{most})");
    let line = Picture::PhLine { text, ph: verdict.ph, said, clots: (CASEIN_CLOTS_AT, limit) };
    answer.pictures.push(("pH of the two together".into(), line));
    answer.remarks.push(
        "Casein clots at pH 4.6 (Zoller 1921). The box is how much acid milk takes up on the way: 50 to 70 meq to the litre, an estimate, no published figure.".into(),
    );
}

/// That its pH is a hint only, where it is strong.
fn is_a_hint(worked: &Worked, answer: &mut Answer) {
    if worked.drink.is_some_and(|drink| drink.strength().fraction() > INDICATIVE_ABOVE) {
        let at = answer.remarks.len().min(1);
        answer.remarks.insert(
            at,
            "Reckoned as in water: alcohol makes acids weaker, so above about 15 % vol take it as a hint.".into(),
        );
    }
}
