//! The figures of a drink, each with what it means in plain words.

use crate::craft::balance::{Balance, balance};
use crate::quantity::Volume;
use crate::reading::freezer::{begins, in_freezer};
use crate::screen::{Answer, Bench, Choice, Figure};
use crate::substance::energy::{StandardDrink, energy};
use crate::substance::mix::Mix;
use crate::substance::ph::INDICATIVE_ABOVE;
use crate::text;

const STRENGTH: &str = "Alcohol by volume at 20 °C, with the contraction of spirit and water. Stirred drinks are often \
    served at 20 to 30, sours at 15 to 20 (rule of thumb).";
const SUGAR: &str = "All sugar, in a litre of the drink. Sours often have 60 to 90 g/l once diluted (rule of thumb). \
    Sweetness also hangs on cold and bitterness.";
const ACID: &str = "By titration, as citric: what base neutralises, to pH 8.2. What the salts of juice hold is not in it. \
    0.1 g/l matters less than the spread of a fresh lime, which is ten times that.";
const ACID_IN_ALL: &str = "As citric, with what the salts of juice hold of it, which no titration finds.";
const RATIO: &str = "Grams of sugar to the gram of acid. Many sours lie between 9 and 15 (rule of thumb).";
const PH: &str = "How sour by chemistry, at 25 °C, from the acids and salts. The tongue follows the acid in g/l more \
    than the pH. Juice varies by 0.2.";
const PH_STRONG: &str = "Worked out as in water. Above about 15 % vol alcohol shifts it: only a hint here.";
const ENERGY: &str = "A serve, by the factors of EU food labels: alcohol 29, sugar 17, acids 13 kJ to the gram. Milk, fat \
    and protein are left out.";
const DRINKS: &str = "Alcohol in a serve, by the standard drink chosen in Shelf. No measure of who may drive or drink: \
    follow your national body.";
const VOLUME: &str = "One serve at 20 °C. Less than its parts added up: spirit and water draw together.";

/// Strength, sugar, acid and their ratio, before ice.
pub(crate) fn four_cells(answer: &mut Answer, mix: &Mix, bench: &Bench) {
    four(answer, &balance(mix), bench);
}

fn four(answer: &mut Answer, reading: &Balance, bench: &Bench) {
    let figure = |value, unit| Figure::new(text::count(value, bench.decimal), unit);
    let strength = text::plain(reading.strength.fraction() * 100.0, 1, bench.decimal);
    answer.explained("strength", Figure::new(strength, "% vol"), STRENGTH);
    answer.explained("sugar", figure(reading.sugar, "g/l"), SUGAR);
    answer.explained("acid, as citric", figure(reading.acid, "g/l"), ACID);
    if let Some(ratio) = reading.sugar_to_acid {
        answer.explained("sugar to acid", figure(ratio, ": 1"), RATIO);
    }
}

/// Of a serve, its volume, and whether it has energy that is not in its figures.
pub(crate) fn all(
    answer: &mut Answer,
    reading: &Balance,
    (serve, volume, has_more): (&Mix, Volume, bool),
    bench: &Bench,
) {
    four(answer, reading, bench);
    if reading.acid_in_all > reading.acid * 1.02 {
        let in_all = text::count(reading.acid_in_all, bench.decimal);
        answer.explained("acid in all", Figure::new(in_all, "g/l"), ACID_IN_ALL);
    }
    ph(answer, reading, bench);
    answer.explained("a serve", text::litres_or_ml(volume, bench.decimal), VOLUME);
    let energy = energy(serve);
    let whole = |value| text::plain(value, 0, bench.decimal);
    let kilocalories = format!("kJ, {} kcal", whole(energy.kilocalories));
    let label = if has_more { "energy, at least" } else { "energy, a serve" };
    answer.explained(label, Figure::new(whole(energy.kilojoules), kilocalories), ENERGY);
    let drinks = text::plain(bench.house.region.count(serve), 1, bench.decimal);
    answer.explained("standard drinks, a serve", Figure::new(drinks, region(bench.house.region)), DRINKS);
    if let Some(frozen) = in_freezer(serve) {
        begins(answer, &frozen, bench);
    }
}

/// Its pH, where that is known.
pub(crate) fn ph(answer: &mut Answer, reading: &Balance, bench: &Bench) {
    if let Some(ph) = reading.ph {
        let (label, about) =
            if reading.strength.fraction() > INDICATIVE_ABOVE { ("pH, a hint", PH_STRONG) } else { ("pH, about", PH) };
        answer.explained(label, Figure::new(text::plain(ph, 1, bench.decimal), ""), about);
    }
}

/// "US", of "US, 14 g of ethanol".
fn region(region: StandardDrink) -> &'static str {
    region.label().split(',').next().unwrap_or_default()
}
