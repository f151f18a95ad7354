//! What has to be bought: how often preps are made, down to what nobody makes here; packs, and what they come to.

use crate::quantity::{Amount, Density, Mass, Money, Ratio};

/// More packs than anybody buys.
const MOST: f64 = 1e6;
/// More makings of a prep than anybody makes.
const MOST_TIMES: f64 = 1e9;

/// How often each of some things is made that are made of one another.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Makings {
    /// How often, in the order of the things.
    pub times: Vec<f64>,
    /// What leads back to itself, which is not followed: of which thing, and which line of it.
    pub cut: Vec<(usize, usize)>,
    /// The way round each of those: a thing, what it is made of, and so on, to the same thing.
    pub circles: Vec<Vec<usize>>,
}

/// How often each is made so that there is all that is `wanted`, less what is `there`, all counted in makings of it.
/// `takes` says for one making of each, line by line, which other goes into it, and how many makings of that; none for a
/// line of something that is not made. Each is looked at once, however many are made of it.
#[must_use]
pub fn makings(takes: &[Vec<Option<(usize, f64)>>], wanted: &[f64], there: &[f64]) -> Makings {
    let mut all = Makings { times: wanted.to_vec(), ..Makings::default() };
    let (mut is_begun, mut is_done) = (vec![false; takes.len()], vec![false; takes.len()]);
    // What goes into a thing stands before it.
    let mut order = Vec::new();
    for root in 0..takes.len() {
        let mut path = if is_begun[root] { Vec::new() } else { vec![(root, 0)] };
        is_begun[root] = true;
        while let Some((of, next)) = path.last_mut() {
            let (of, which) = (*of, *next);
            *next += 1;
            match takes[of].get(which) {
                None => {
                    is_done[of] = true;
                    order.push(of);
                    path.pop();
                }
                Some(Some((to, _))) if !is_begun[*to] => {
                    is_begun[*to] = true;
                    path.push((*to, 0));
                }
                Some(Some((to, _))) if !is_done[*to] => {
                    all.cut.push((of, which));
                    let from = path.iter().position(|(at, _)| at == to).unwrap_or(0);
                    all.circles.push(path[from..].iter().map(|(at, _)| *at).chain([*to]).collect());
                }
                Some(_) => {}
            }
        }
    }
    for of in order.into_iter().rev() {
        let times = (all.times[of] - there[of]).clamp(0.0, MOST_TIMES);
        all.times[of] = times;
        for (which, line) in takes[of].iter().enumerate() {
            if let Some((to, each)) = line
                && !all.cut.contains(&(of, which))
            {
                all.times[*to] += times * each;
            }
        }
    }
    all
}

/// An amount by the measure of another: what is poured and what is weighed by its density, pieces by what one weighs. None
/// where that is not known.
#[must_use]
pub fn as_measured(amount: Amount, like: Amount, density: Option<Density>, each: Option<Mass>) -> Option<Amount> {
    Some(match (amount, like) {
        (Amount::Volume(_), Amount::Volume(_))
        | (Amount::Mass(_), Amount::Mass(_))
        | (Amount::Count(_), Amount::Count(_)) => amount,
        (Amount::Volume(volume), Amount::Mass(_)) => Amount::Mass(volume * density?),
        (Amount::Mass(mass), Amount::Volume(_)) => Amount::Volume(mass.volume_at(density?)),
        (Amount::Mass(mass), Amount::Count(_)) => Amount::Count(Ratio::from_value(mass.g() / each?.g()).ok()?),
        (Amount::Count(count), Amount::Mass(_)) => Amount::Mass(each? * count),
        _ => return None,
    })
}

/// Millilitres, grams or pieces.
const fn number(amount: Amount) -> f64 {
    match amount {
        Amount::Volume(volume) => volume.ml(),
        Amount::Mass(mass) => mass.g(),
        Amount::Count(count) => count.value(),
    }
}

/// How many of another an amount by the same measure is; none where that is nothing.
#[must_use]
pub fn over(amount: Amount, of: Amount) -> Option<f64> {
    let many = number(amount) / number(of);
    many.is_finite().then_some(many)
}

/// What is left to get of an amount where there is some by the same measure: never below nothing, and what binary
/// fractions leave is nothing.
#[must_use]
pub fn less(amount: Amount, there: Amount) -> Amount {
    let part = 1.0 - over(there, amount).unwrap_or(0.0);
    amount.times(Ratio::from_value(if part > 1e-9 { part } else { 0.0 }).unwrap_or(Ratio::ZERO))
}

/// How many packs hold so much, of which the share `usable` ends in drinks: whole ones. None for over a million, or for a
/// pack of nothing.
#[must_use]
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
pub fn packs(amount: Amount, usable: Ratio, pack: Amount) -> Option<u32> {
    let many = (over(amount, pack)? / usable.value() - 1e-9).ceil();
    (0.0..=MOST).contains(&many).then_some(many as u32)
}

/// What a list comes to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bill {
    /// Things on it that are still to get.
    pub open: usize,
    /// What is still to pay of those whose price is known.
    pub to_pay: Money,
    /// What all of them come to.
    pub whole: Money,
    /// Things whose price is not known: with any, the sums are at least that.
    pub unknown: usize,
}

/// Adds up a list: whether each thing is got, and what it costs.
#[must_use]
pub fn bill(things: &[(bool, Option<Money>)]) -> Bill {
    let mut bill = Bill { open: 0, to_pay: Money::ZERO, whole: Money::ZERO, unknown: 0 };
    for (is_got, cost) in things {
        let cost = cost.unwrap_or_else(|| {
            bill.unknown += 1;
            Money::ZERO
        });
        bill.whole = bill.whole + cost;
        if !is_got {
            bill.open += 1;
            bill.to_pay = bill.to_pay + cost;
        }
    }
    bill
}
