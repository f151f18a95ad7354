//! Links from the lines of a spec to the tools that make something of them.

use crate::book::Kind;
use crate::craft::measure::both_of;
use crate::craft::pour::standard;
use crate::quantity::{Amount, Ratio};
use crate::screen::route::Route;
use crate::screen::{Answer, Bench};
use crate::substance::fruit::FRUIT;
use crate::text::SpecLine;

/// Offers to work out the fruit for each juice of a spec that is made so many times, and to clarify it: two at most.
pub(crate) fn fruit(lines: &[SpecLine], times: Ratio, answer: &mut Answer, bench: &Bench) {
    let juices = lines.iter().filter_map(|line| {
        let line = line.read.as_ref().ok()?;
        let key = line.taken?.ingredient.key;
        let fruit = FRUIT.iter().find(|fruit| fruit.ingredient == key && key != "water" && key != "puree")?;
        let (Amount::Volume(_) | Amount::Mass(_)) = line.amount else { return None };
        let litre = standard(line.taken?.ingredient);
        Some((fruit, both_of(line.amount.times(times), &litre).volume))
    });
    for (fruit, volume) in juices.take(2) {
        let href = format!("{}&fruit={}", Route::Fruit.href_with("wanted", &bench.carried(volume)), fruit.key);
        answer.carry(format!("Fruit for the {} juice", fruit.name), href);
        let href = format!("{}&fruit={}", Route::Clarify.href_with("juice", &bench.carried(volume)), fruit.key);
        answer.carry(format!("Clarify the {} juice", fruit.name), href);
    }
}

/// Offers to wash fat into the first spirit of a spec that is made so many times.
pub(crate) fn fat_wash(lines: &[SpecLine], times: Ratio, answer: &mut Answer, bench: &Bench) {
    let spirit = lines
        .iter()
        .filter_map(|line| line.read.as_ref().ok())
        .find(|line| line.taken.is_some_and(|taken| taken.ingredient.kind == Kind::Spirit));
    if let Some(Amount::Volume(volume)) = spirit.map(|line| line.amount.times(times)) {
        answer.carry("Wash its spirit with fat", Route::Infuse.href_with("fat_wash", &bench.carried(volume)));
    }
}
