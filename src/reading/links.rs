//! Links from the lines of a spec to the tools that make something of them.

use super::Contents;
use crate::book::Kind;
use crate::craft::measure::both_of;
use crate::craft::pour::standard;
use crate::quantity::{Amount, Ratio, Temperature};
use crate::screen::percent::encode;
use crate::screen::route::Route;
use crate::screen::{Answer, Bench};
use crate::substance::fruit::FRUIT;
use crate::text::{self, Dimension, SpecLine, read_spec};

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

/// Offers to wash the lines of a spec with milk; of one that is washed already, to work its wash out: the drink in those
/// lines, and the milk as the ratio.
pub(crate) fn milk_wash(read: &Contents, is_washed: bool, lines: &str, answer: &mut Answer, bench: &Bench) {
    let Some((drink, milk, kind)) = read.wash().filter(|_| is_washed) else {
        return answer.carry("Wash it with milk", Route::MilkWash.href_with("spec", lines));
    };
    let Ok(volume) = drink.volume(Temperature::TWENTY) else { return };
    let is_milk = |line: &SpecLine| {
        let taken = line.read.as_ref().ok().and_then(|line| line.taken);
        taken.is_some_and(|taken| taken.ingredient.is_milk)
    };
    let lines = read_spec(lines, &bench.reading(Dimension::Either));
    let of_drink: Vec<&str> = lines.iter().filter(|line| !is_milk(line)).map(|line| line.typed.as_str()).collect();
    let href = Route::MilkWash.href_with("spec", &of_drink.join("\n"));
    // In millilitres: a ratio of one to so much would round, and with it the strength.
    let [milk, drink] = [milk, volume].map(|volume| text::editable(volume.ml(), bench.decimal));
    let ratio = format!("{milk}:{drink}");
    answer.carry("Its milk wash", format!("{href}&ratio={}&kind={}", encode(&ratio), kind.key));
}

/// Offers to wash fat into the first spirit of a spec that is made so many times.
pub(crate) fn fat_wash(lines: &[SpecLine], times: Ratio, answer: &mut Answer, bench: &Bench) {
    let spirit = lines
        .iter()
        .filter_map(|line| line.read.as_ref().ok())
        .find(|line| line.taken.is_some_and(|taken| taken.ingredient.kind == Kind::Spirit));
    if let Some(Amount::Volume(volume)) = spirit.map(|line| line.amount.times(times)) {
        answer.carry("Fat-wash", Route::Infuse.href_with("fat_wash", &bench.carried(volume)));
    }
}
