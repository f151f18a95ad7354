//! What a name in a spec says of its ingredient: "rum 63 %", "quince liqueur (22 % vol, sugar 250 g/l)",
//! "moon dust (as spirit)".

use super::number::{Decimal, is_digit, is_space, read_number, replaced};
use super::show::editable;
use crate::book::{Fit, Kind, Measured, Taken, fit};
use crate::quantity::{Abv, Acidity, Brix, Mass, Ratio, Temperature, Volume};
use crate::substance::acid::Acid;
use crate::substance::ethanol;
use crate::substance::mix::Mix;

/// Most sugar and acid that a line may claim, g/l.
const MOST_SUGAR: f64 = 1_400.0;
const MOST_ACID: f64 = 400.0;
/// Most salts, mmol/l.
const MOST_SALTS: f64 = 1_000.0;

/// What was made of a name.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Named {
    /// What it is taken to be; none when nothing fits.
    pub taken: Option<Taken>,
    /// The name that it is read as, where it is spelt otherwise; empty where it is not.
    pub read_as: String,
    /// A figure in it that cannot be used.
    pub unread: Option<String>,
}

/// What a name is taken to be, with the figures it gives.
///
/// "as" and another name, in brackets, says what it is like. A plain percentage is a strength where
/// there is alcohol, and part of the name elsewhere: cream at 35 % is not a spirit. A ratio in the name of a syrup
/// is sugar : water by weight.
#[must_use]
pub fn read_named(name: &str, decimal: Decimal, own: &[(String, Taken)]) -> Named {
    let bare = likened(name).unwrap_or(without_figures(name));
    let (known, parts) = match fit(bare, own) {
        // A name of the library's may hold its ratio: "Rich syrup 2:1 by weight".
        Fit::As(known, read_as) if bare.trim().eq_ignore_ascii_case(known.ingredient.name) => {
            (Fit::As(known, read_as), None)
        }
        known => match without_ratio(bare, decimal).or_else(|| without_ratio(name, decimal)) {
            Some((rest, parts)) => {
                let rest = if likened(name).is_some() { bare } else { rest.as_str() };
                (fit(if rest.trim().is_empty() { "syrup" } else { rest }, own), Some(parts))
            }
            None => (known, None),
        },
    };
    let Given { measured: mut given, is_bare_percent, unread } = figures(name, decimal);
    let Fit::As(Taken { ingredient, measured: known }, read_as) = known else {
        return Named { unread, ..Named::default() };
    };
    if is_bare_percent && ingredient.percent <= 0.0 && known.strength.is_none() {
        given.strength = None;
    }
    if let Some(parts) = parts.filter(|_| ingredient.kind == Kind::Syrup && given.reads.is_none()) {
        // Honey and the like are mixed with water as they are.
        let solids = match ingredient.key {
            "honey" | "honey-syrup" => HONEY_BRIX,
            "agave-syrup" => AGAVE_BRIX,
            _ => 100.0,
        };
        given.reads = Brix::from_degrees(solids * parts / (1.0 + parts)).ok();
    }
    let sugar_given = given.sugar_per_litre.is_some() || given.reads.is_some();
    let measured = Measured {
        strength: given.strength.or(known.strength),
        sugar_per_litre: if sugar_given { given.sugar_per_litre } else { known.sugar_per_litre },
        reads: if sugar_given { given.reads } else { known.reads },
        acid: given.acid.or(if given.holds.acids.is_some() { None } else { known.acid }),
        holds: given.holds.or(known.holds),
        made: known.made,
    };
    Named { taken: Some(Taken { ingredient, measured }), read_as, unread }
}

/// As [`read_named`], what it is taken to be alone.
#[must_use]
pub fn read_taken(name: &str, decimal: Decimal, own: &[(String, Taken)]) -> Option<Taken> {
    read_named(name, decimal, own).taken
}

/// Honey of 18.6 % moisture, the US grade standard. Agave syrup: supplier practice, from memory.
const HONEY_BRIX: f64 = 81.4;
const AGAVE_BRIX: f64 = 75.0;

/// All that a mix holds, as figures that are read back as the same: "sugar 430 g/l, invert 90 g/l, citric 20 g/l, salts
/// 18 mmol/l, solids 7 g/l". What is not there and would be taken from the library is named as 0.
#[must_use]
pub fn whole_figures(mix: &Mix, decimal: Decimal) -> String {
    let litres = mix.volume(Temperature::TWENTY).map_or(1.0, Volume::ml) / 1000.0;
    let number = |value: f64| editable(value, decimal);
    let mut figures = Vec::new();
    if mix.ethanol > Mass::ZERO {
        figures.push(format!("{} % vol", number(mix.strength().fraction() * 100.0)));
    }
    let mut grams = |name: &str, mass: Mass| figures.push(format!("{name} {} g/l", number(mass.g() / litres)));
    grams("sugar", mix.sugar());
    grams("invert", mix.invert_sugar);
    let acids = Acid::ALL.into_iter().filter(|acid| mix.mass_of(*acid) > Mass::ZERO || *acid == Acid::Citric);
    acids.for_each(|acid| grams(acid.name(), mix.mass_of(acid)));
    grams("solids", mix.other);
    figures.push(format!("salts {} mmol/l", number(mix.cations.value() / litres)));
    figures.join(", ")
}

/// What figures like those of [`whole_figures`] give.
#[must_use]
pub fn read_figures(text: &str, decimal: Decimal) -> Measured {
    figures(text, decimal).measured
}

/// What stands after "(as ", in any bracket.
fn likened(name: &str) -> Option<&str> {
    let inside = name.split('(').skip(1).find_map(|inside| inside.trim_start().strip_prefix("as "))?;
    inside.split([')', ';', ',']).next()
}

/// The name up to its brackets.
fn without_figures(name: &str) -> &str {
    match name.split('(').next() {
        Some(before) if !before.trim().is_empty() => before,
        _ => name,
    }
}

/// The name without "2:1", and that as parts to one.
fn without_ratio(name: &str, decimal: Decimal) -> Option<(String, f64)> {
    if !name.contains(':') {
        return None;
    }
    let is_part = |word: &&str| {
        let (sugar, water) = word.split_once(':')?;
        let number = |text| read_number(text, decimal).ok().flatten().filter(|value| *value > 0.0);
        Some(number(sugar)? / number(water)?)
    };
    let cut = |c: char| is_space(c) || matches!(c, '(' | ')' | ',');
    let (word, parts) = name.split(cut).find_map(|word| Some((word, is_part(&word)?)))?;
    Some((replaced(name, word, "").replace("()", ""), parts)).filter(|(_, parts)| (0.05..=5.66).contains(parts))
}

#[derive(Default)]
struct Given {
    measured: Measured,
    /// Whether the strength is a percentage that does not say of what.
    is_bare_percent: bool,
    /// A figure with a unit of strength or sweetness that cannot be used.
    unread: Option<String>,
}

fn figures(name: &str, decimal: Decimal) -> Given {
    let mut given = Given::default();
    if !name.contains(is_digit) {
        return given;
    }
    // A clause ends at a bracket, a semicolon, or a comma that is no decimal mark.
    let mut rest = name;
    while !rest.is_empty() {
        let ends = |(at, c): &(usize, char)| match c {
            '(' | ')' | ';' => true,
            ',' => rest[*at + 1..].chars().next().is_none_or(is_space),
            _ => false,
        };
        let end = rest.char_indices().find(ends).map_or(rest.len(), |(at, _)| at);
        clause(&mut given, &rest[..end], decimal);
        rest = rest.get(end + 1..).unwrap_or_default();
    }
    given
}

/// Takes the figures of one clause: "22 % vol", "sugar 250 g/l".
fn clause(given: &mut Given, clause: &str, decimal: Decimal) {
    let words: Vec<&str> =
        clause.split(is_space).map(|word| word.trim_end_matches(':')).filter(|word| !word.is_empty()).collect();
    for (at, word) in words.iter().enumerate() {
        let unit_at = word.find(|c| !(is_digit(c) || matches!(c, '.' | ','))).unwrap_or(word.len());
        let (number, unit) = word.split_at(unit_at);
        let Ok(Some(value)) = read_number(number, decimal) else { continue };
        let next = |after: usize| words.get(at + after).copied().unwrap_or_default();
        let (unit, after) = match unit {
            "" | "°" => (next(1), next(2)),
            unit => (unit, next(1)),
        };
        // "66.7 ° Brix".
        let unit = if unit == "°" { after } else { unit };
        if give(given, value, unit, after, &words) == Some(false) {
            given.unread = Some(clause.trim().to_owned());
        }
    }
}

/// Takes a number by its unit and the words of its clause. None for a unit of something else, false when it cannot
/// be used.
fn give(given: &mut Given, value: f64, unit: &str, after: &str, words: &[&str]) -> Option<bool> {
    let is = |word: &str, names: &[&str]| names.iter().any(|name| word.eq_ignore_ascii_case(name));
    let says = |noun: &str| words.iter().any(|word| is(word, &[noun]));
    let measured = &mut given.measured;
    if is(unit, &["%", "abv"]) {
        measured.strength = Abv::from_fraction(value / 100.0).ok();
        given.is_bare_percent = is(unit, &["%"]) && !is(after, &["vol", "abv", "alc", "alcohol"]);
        Some(measured.strength.is_some())
    } else if is(unit, &["proof"]) {
        measured.strength = ethanol::strength_of_us_proof(value).ok();
        given.is_bare_percent = false;
        Some(measured.strength.is_some())
    } else if is(unit, &["°bx", "bx", "brix", "°brix"]) {
        measured.reads = Brix::from_degrees(value).ok().filter(|brix| brix.degrees() <= 85.0);
        Some(measured.reads.is_some())
    } else if is(unit, &["mmol/l"]) {
        measured.holds.salts =
            Ratio::from_value(value).ok().filter(|salts| says("salts") && salts.value() <= MOST_SALTS);
        Some(measured.holds.salts.is_some())
    } else if !is(unit, &["g/l"]) {
        None
    } else if let Some(acid) = Acid::ALL.into_iter().find(|acid| says(acid.name())) {
        let acids = measured.holds.acids.get_or_insert_default();
        let mass = Mass::from_g(value).ok().filter(|mass| mass.g() <= MOST_ACID);
        acids[acid as usize] = mass.unwrap_or_default();
        Some(mass.is_some())
    } else if says("invert") {
        measured.holds.invert = Mass::from_g(value).ok().filter(|sugar| sugar.g() <= MOST_SUGAR);
        Some(measured.holds.invert.is_some())
    } else if says("solids") {
        measured.holds.solids = Mass::from_g(value).ok().filter(|solids| solids.g() <= MOST_SUGAR);
        Some(measured.holds.solids.is_some())
    } else if says("sugar") {
        measured.sugar_per_litre = Mass::from_g(value).ok().filter(|sugar| sugar.g() <= MOST_SUGAR);
        Some(measured.sugar_per_litre.is_some())
    } else if says("acid") {
        measured.acid = Acidity::from_g_per_l(value).ok().filter(|acid| acid.g_per_l() <= MOST_ACID);
        Some(measured.acid.is_some())
    } else {
        // Grams of what?
        Some(false)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::book::named;

    #[track_caller]
    fn taken(name: &str) -> Taken {
        read_taken(name, Decimal::Point, &[]).expect(name)
    }

    #[test]
    fn a_name_may_carry_figures() {
        let rum = taken("rum 63 %");
        assert_eq!((rum.ingredient.key, rum.measured.strength), ("aged-rum", Abv::from_fraction(0.63).ok()));
        let rum = taken("rum (63% vol)");
        assert_eq!(rum.measured.strength, Abv::from_fraction(0.63).ok());
        let proof = taken("bourbon 100 proof").measured.strength.expect("a strength").fraction();
        assert!((proof - 0.5).abs() < 1e-3, "{proof}");
        let liqueur = taken("quince liqueur (22 % vol, sugar 250 g/l, 4 g/l acid)");
        assert_eq!(liqueur.ingredient.key, "liqueur");
        assert_eq!(liqueur.measured.strength, Abv::from_fraction(0.22).ok());
        assert_eq!(liqueur.measured.sugar_per_litre, Mass::from_g(250.0).ok());
        assert_eq!(liqueur.measured.acid, Acidity::from_g_per_l(4.0).ok());
        for order in [
            "250 g/l sugar, 4 g/l acid",
            "4 g/l acid, 250 g/l sugar",
            "sugar 250 g/l; acid 4 g/l",
            "acid 4 g/l, sugar 250 g/l, 22 %",
        ] {
            let measured = taken(&format!("quince liqueur ({order})")).measured;
            assert_eq!(measured.sugar_per_litre, Mass::from_g(250.0).ok(), "{order}");
            assert_eq!(measured.acid, Acidity::from_g_per_l(4.0).ok(), "{order}");
        }
        assert_eq!(taken("syrup 66.7° Brix").measured.reads, Brix::from_degrees(66.7).ok());
        assert_eq!(taken("apple juice 12.5 °Bx").measured.reads, Brix::from_degrees(12.5).ok());
    }

    #[test]
    fn a_percentage_of_fat_or_salt_is_no_strength() {
        for name in ["cream 35 %", "saline 20 %", "lactic acid 80 %"] {
            assert!(taken(name).measured.is_nothing(), "{name}");
        }
        assert!(taken("plum shrub 5 % vol").measured.strength.is_some());
        assert!(taken("Rich syrup 2:1 by weight").measured.is_nothing());
    }

    #[test]
    fn a_ratio_is_the_sweetness_of_a_syrup() {
        for name in [
            "2:1 syrup",
            "simple syrup 2:1",
            "simple syrup (2:1)",
            "2:1 simple syrup",
            "syrup 2:1",
            "2:1",
            "rich syrup 2:1",
        ] {
            let degrees = taken(name).measured.reads.expect(name).degrees();
            assert!((degrees - 200.0 / 3.0).abs() < 1e-9, "{name}: {degrees}");
        }
        let honey = taken("honey syrup 2:1");
        assert_eq!(honey.ingredient.key, "honey-syrup");
        assert!((honey.measured.reads.expect("sweet").degrees() - 54.27).abs() < 0.01);
        let agave = taken("agave syrup 2:1");
        assert_eq!(agave.ingredient.key, "agave-syrup");
        assert!((agave.measured.reads.expect("sweet").degrees() - 50.0).abs() < 0.01);
    }

    #[test]
    fn what_cannot_be_used_is_said() {
        let unread = |name| read_named(name, Decimal::Point, &[]).unread;
        assert_eq!(unread("gin 140 %").as_deref(), Some("gin 140 %"));
        assert_eq!(unread("bourbon (300 proof)").as_deref(), Some("300 proof"));
        assert_eq!(unread("liqueur 250 g/l").as_deref(), Some("liqueur 250 g/l"));
        assert_eq!(unread("vodka (sugar 2000 g/l)").as_deref(), Some("sugar 2000 g/l"));
        // Of what nobody knows, too.
        let moss = read_named("moss 140 %", Decimal::Point, &[]);
        assert_eq!((moss.taken, moss.unread.as_deref()), (None, Some("moss 140 %")));
        assert_eq!(unread("gin 57 %"), None);
        assert_eq!(unread("12 year old rum"), None);
    }

    #[test]
    fn what_it_is_like_can_be_said() {
        assert_eq!(taken("moon dust (as spirit)").ingredient.key, "spirit-40");
        let dust = taken("moon dust (as orange liqueur; 30 %)");
        assert_eq!((dust.ingredient.key, dust.measured.strength), ("orange-liqueur", Abv::from_fraction(0.3).ok()));
        assert_eq!(taken("moon dust (homemade) (as spirit)").ingredient.key, "spirit-40");
        assert_eq!(read_taken("moon dust", Decimal::Point, &[]), None);
        assert_eq!(read_taken("(as nothing", Decimal::Point, &[]), None);
    }

    #[test]
    fn a_bar_s_own_goes_before_the_library() {
        let measured = Measured { strength: Abv::from_fraction(0.45).ok(), ..Measured::default() };
        let house = Taken { ingredient: named("gin").expect("gin"), measured };
        let own = [("gin".to_owned(), house), ("moon dust".to_owned(), house)];
        let read = |name| read_taken(name, Decimal::Point, &own).expect(name);
        assert_eq!(read("moon dust").measured.strength, measured.strength);
        assert_eq!(read("our gin").measured.strength, measured.strength);
        assert!(read("London dry gin").measured.is_nothing(), "the longer name is another's");
        assert_eq!(read("gin 57 %").measured.strength, Abv::from_fraction(0.57).ok());
        assert_eq!(read("gin cordial").ingredient.key, "cordial");
    }
}
