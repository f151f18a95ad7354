//! Lines as people write and paste them, against what each is read as: made up, of generic ingredients, in the ways that
//! lists, tables, messages and scans have them. `table.txt` says each with its reading.

use proptest::prelude::*;

use meniscus::quantity::{Amount, Conventions, Unit};
use meniscus::text::{Decimal, Dimension, LineProblem, Reading, SpecLine, read_spec};

fn rows() -> Vec<(String, String)> {
    let lines = include_str!("table.txt").lines().filter(|line| !line.starts_with(';') && line.contains(" => "));
    let row = |line: &str| line.split_once(" => ").map(|(typed, read)| (spelled_out(typed), read.to_owned()));
    lines.filter_map(row).collect()
}

/// "\t" and "\u00a0" as the characters they name.
fn spelled_out(text: &str) -> String {
    let mut parts = text.replace("\\t", "\t").split("\\u").map(str::to_owned).collect::<Vec<_>>().into_iter();
    let first = parts.next().unwrap_or_default();
    parts.fold(first, |text, part| {
        let (code, rest) = part.split_at(4);
        let c = u32::from_str_radix(code, 16).ok().and_then(char::from_u32).expect("a character");
        format!("{text}{c}{rest}")
    })
}

fn read(typed: &str) -> SpecLine {
    let conventions = Conventions::default();
    let reading = Reading {
        conventions: &conventions,
        decimal: Decimal::Point,
        bare: Unit::Millilitre,
        kind: Dimension::Either,
        own: &[],
    };
    read_spec(typed, &reading).remove(0)
}

/// Whether a line is read so.
fn is_read_as(line: &SpecLine, expected: &str) -> bool {
    let (expected, meant) = expected.split_once(" as ").map_or((expected, None), |(read, meant)| (read, Some(meant)));
    let taken = line.read.as_ref().ok().map(|read| read.taken.map_or("?", |taken| taken.ingredient.name));
    if meant.is_some() && meant != taken {
        return false;
    }
    let named = |amount: f64, unit: &str, name: &str| {
        let Some((wanted, rest)) = expected.trim_start_matches("× ").split_once(' ') else { return false };
        let rest = if unit.is_empty() { Some(rest) } else { rest.strip_prefix(unit).map(str::trim_start) };
        let near = wanted.parse::<f64>().is_ok_and(|wanted| (wanted - amount).abs() < 1e-3 * wanted.max(1.0));
        near && rest == Some(name) && expected.starts_with('×') == unit.is_empty()
    };
    match &line.read {
        Err(LineProblem::NoAmount | LineProblem::Part) => expected == "words",
        Err(_) => expected == "asks",
        Ok(read) => match read.amount {
            Amount::Volume(volume) => named(volume.ml(), "ml", &read.name),
            Amount::Mass(mass) => named(mass.g(), "g", &read.name),
            Amount::Count(count) => named(count.value(), "", &read.name),
        },
    }
}

#[test]
fn every_line_of_the_table_is_read_as_it_says() {
    let rows = rows();
    let wrong: Vec<String> = rows
        .iter()
        .filter(|(typed, expected)| !is_read_as(&read(typed), expected))
        .map(|(typed, expected)| {
            format!(
                "{typed:?} should be {expected:?}: {:?}",
                read(typed).read.map(|line| (line.amount, line.name, line.taken.map(|taken| taken.ingredient.name)))
            )
        })
        .collect();
    println!("{} of {} lines are read as they should be", rows.len() - wrong.len(), rows.len());
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn what_was_decided_is_said() {
    for (typed, said) in [
        ("2–3 dashes bitters", "2–3: the middle counts"),
        ("20 to 25 ml gin", "20–25: the middle counts"),
        ("2 x 30 ml gin", "2 × 30"),
        ("1 oz / 50 ml gin", "50 ml is not the same: the first counts"),
        ("100 g / 200 g sugar", "200 g is not the same: the first counts"),
        ("1 oz (50 ml) gin", "50 ml is not the same: the first counts"),
        ("1 oz / 50 ml crème  de pêche", "50 ml is not the same: the first counts"),
        ("60 ml gin or vodka", "not counted: or vodka"),
        ("juice of 2 limes", "2 limes: about 57 ml, rule of thumb"),
        ("25 ml lime juise", "read as lime juice"),
        ("2–3 dashes orange biters", "2–3: the middle counts; read as orange bitters"),
        ("30 ml vermuth or gin", "not counted: or gin; read as vermouth"),
        ("2 Eiweiß", "2 Eiweiß: about 60 ml, rule of thumb"),
        ("1 whole egg", "1 whole egg: about 48 ml, rule of thumb"),
        ("2 to 3 parts gin", "2–3: the middle counts; 2½ parts of 1 oz"),
        ("2 oz (60 ml) gin", ""),
        ("60 ml gin", ""),
    ] {
        assert_eq!(read(typed).read.expect(typed).said, said, "{typed}");
    }
    let top = read("top with soda water").read.expect_err("a question");
    assert_eq!(top.to_string(), "How much fills the glass? Write it like 90 ml soda water.");
    assert_eq!(top.fixes("top with soda water")[1], "90 ml soda water");
    for (typed, fixed) in [("- egg white (optional)", "1 egg white (optional)"), ("Egg whites", "2 Egg whites")] {
        let eggs = read(typed).read.expect_err("a question");
        assert_eq!(eggs.to_string(), format!("How many? Write it like {fixed}."));
        assert_eq!(eggs.fixes(typed), [fixed]);
        assert!(read(fixed).read.is_ok());
    }
}

#[test]
fn what_has_no_unit_is_asked_about_however_it_is_written() {
    for (typed, number) in
        [("2-.5 gin", "2-.5"), ("60gin(5 x", "60"), ("2 to 3 gin", "2 to 3"), ("1/2 tequilla", "1/2")]
    {
        assert_eq!(read(typed).read, Err(LineProblem::NoUnit(number.into())), "{typed}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 20_000, ..ProptestConfig::default() })]

    /// Whatever is put together of what lines are made of, reading it ends in a reading or a question.
    #[test]
    fn no_line_breaks_the_reader(parts in prop::collection::vec(0_usize..64, 1..12)) {
        let all = [
            "1", "2", "60", "½", "1/2", ".5", "0", "¹", "⁄", "-", "–", "/", "+", "(", ")", "=", "|", "\t", " ", " ", "  ", " ",
            "x", "×", "ml", "oz", "dash", "g", "parts", "bottle", "gin", "crème", "pêche", "é", "lime", "juice of ", "juiced",
            ", ", ": ", "or ", "and ", "to ", "half ", "a ", "one ", "about ", "top ", "with ", "serves ", "•", "🍋", "**", "[x]",
            "%", "water", "part", "egg white", "lime juise", "'s juice", "de ", "\u{feff}", "\u{202f}", "２", "c. à s.",
        ];
        let line: String = parts.into_iter().map(|at| all[at]).collect();
        for line in read_spec(&line, &Reading { conventions: &Conventions::default(), decimal: Decimal::Comma, bare: Unit::Millilitre, kind: Dimension::Either, own: &[] }) {
            if let Err(problem) = line.read {
                prop_assert!(!problem.to_string().is_empty());
                prop_assert!(problem.fixes(&line.typed).iter().all(|fix| !fix.is_empty()));
            }
        }
    }
}
