use super::*;
use crate::quantity::{Conventions, Mass};
use crate::text::{Decimal, Dimension};

fn read(line: &str) -> Result<Line, LineProblem> {
    let conventions = Conventions::default();
    let reading = Reading {
        conventions: &conventions,
        decimal: Decimal::Point,
        bare: Unit::Millilitre,
        kind: Dimension::Either,
        own: &[],
    };
    read_spec(line, &reading).remove(0).read
}

#[track_caller]
fn volume(line: &str, ml: f64, name: &str) {
    match read(line).expect(line) {
        Line { amount: Amount::Volume(volume), name: found, .. } => {
            assert!((volume.ml() - ml).abs() < 1e-3, "{line}: {volume:?}");
            assert_eq!(found, name, "{line}");
        }
        other => panic!("{line}: {other:?}"),
    }
}

#[test]
fn lines_as_bars_write_them() {
    volume("2 oz gin", 59.147, "gin");
    volume("3/4 oz lemon juice", 22.180, "lemon juice");
    volume("2 dashes bitters", 1.6, "bitters");
    volume("2 dashes of bitters", 1.6, "bitters");
    volume("Gin 60 ml", 60.0, "Gin");
    volume("Gin: 60ml", 60.0, "Gin");
    volume("Rich syrup 2:1 30 ml", 30.0, "Rich syrup 2:1");
    volume("• 1½ oz pear brandy", 44.360, "pear brandy");
    volume("- 22,5 ml lime", 22.5, "lime");
    volume("2 oz (60 ml) gin", 59.147, "gin");
    volume("Gin (60 ml)", 60.0, "Gin");
    volume("1 part vermouth", 29.574, "vermouth");
    volume("Vermouth 1 1/2 oz", 44.360, "Vermouth");
    volume("1. 60 ml gin", 60.0, "gin");
    volume("2) Gin 60 ml", 60.0, "Gin");
    volume("2 oz, gin", 59.147, "gin");
    volume("Lime .75 oz", 22.180, "Lime");
    volume("1 egg white", 30.0, "egg white");
    volume("○ 45 ml gin", 45.0, "gin");
}

#[test]
fn lines_beyond_the_limit_are_counted_not_dropped() {
    let conventions = Conventions::default();
    let reading = Reading {
        conventions: &conventions,
        decimal: Decimal::Point,
        bare: Unit::Millilitre,
        kind: Dimension::Either,
        own: &[],
    };
    let lines = read_spec(&"1 ml gin\n".repeat(210), &reading);
    assert_eq!(lines.len(), 201);
    assert_eq!((lines[200].typed.as_str(), &lines[200].read), ("… and 10 more", &Err(LineProblem::TooMany)));
}

/// What each line of a spec is read as.
fn list(text: &str) -> Vec<SpecLine> {
    let conventions = Conventions::default();
    let reading = Reading {
        conventions: &conventions,
        decimal: Decimal::Point,
        bare: Unit::Millilitre,
        kind: Dimension::Either,
        own: &[],
    };
    read_spec(text, &reading)
}

#[track_caller]
fn reads(line: &SpecLine, ml: f64, said: &str) {
    match &line.read {
        Ok(Line { amount: Amount::Volume(volume), said: found, .. }) => {
            assert!((volume.ml() - ml).abs() < 1e-3 && found == said, "{line:?}");
        }
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_list_says_what_one_part_is() {
    let parts = "2 parts gin\n1½ parts lemon juice\n1 part: syrup";
    reads(&list(parts)[0], 59.147, "2 parts of 1 oz");
    for said in ["1 part = 20 ml", "1 Part: 20 ml", "part = 2 cl", "(1 part = 20 ml)", "• a part is 20 ml"] {
        let lines = list(&format!("{parts}\n{said}"));
        reads(&lines[0], 40.0, "2 parts of 20 ml");
        reads(&lines[1], 30.0, "1½ parts of 20 ml");
        reads(&lines[2], 20.0, "1 part of 20 ml");
        assert_eq!(lines[3].read, Err(LineProblem::Part), "{said}");
    }
    // By weight, or of a thing, it says nothing about the others.
    for said in ["1 part = 20 g", "1 part gin = 20 ml", "part of the fun"] {
        assert!(list(&format!("{parts}\n{said}")).iter().all(|line| line.read != Err(LineProblem::Part)), "{said}");
    }
}

#[test]
fn water_may_be_a_share_of_the_whole() {
    for water in ["25 % water", "25% of water", "water 25 %", "Water (25%)", "water: 25 %", "25 % Wasser"] {
        let lines = list(&format!("60 ml gin\n{water}\n30 ml dry vermouth\n2 olives\nStir"));
        reads(&lines[1], 30.0, "25 % of the finished whole");
    }
    // Two shares are of the same whole.
    let lines = list("60 ml gin\n25 % water\n15 % water");
    reads(&lines[1], 25.0, "25 % of the finished whole");
    reads(&lines[2], 15.0, "15 % of the finished whole");
    // What has no volume yet leaves it asked about.
    for text in
        ["25 % water", "60 gin\n25 % water", "10 g sugar\n25 % water", "soda\n25 % water", "60 ml gin\n100 % water"]
    {
        let read = list(text).pop().map(|line| line.read);
        assert!(matches!(read, Some(Err(LineProblem::Share(..)))), "{text}: {read:?}");
    }
    for text in ["60 ml gin\n10 % lemon juice", "60 ml gin\n20 % moon dust"] {
        let problem = list(text).remove(1).read.expect_err(text).to_string();
        assert!(problem.starts_with("A share of how much? Write it like 30 ml "), "{problem}");
    }
    assert_eq!(list("60 ml gin 57 %")[0].read.as_ref().expect("a line").name, "gin 57 %");
}

#[test]
fn weights_and_counts() {
    let line = read("400 g pear purée").expect("a line");
    assert_eq!(line.amount, Amount::Mass(Mass::from_g(400.0).expect("mass")));
    assert_eq!((line.name.as_str(), line.taken.map(|taken| taken.ingredient.key)), ("pear purée", Some("puree")));
    assert!(matches!(read("8 mint leaves"), Ok(Line { amount: Amount::Count(_), .. })));
    assert!(matches!(read("½ lime"), Ok(Line { amount: Amount::Count(_), .. })));
    // What is squeezed is its juice.
    assert!(matches!(read("½ lime, squeezed"), Ok(Line { amount: Amount::Volume(_), .. })));
}

#[test]
fn what_cannot_be_read_says_why() {
    assert_eq!(read("Orchard lantern"), Err(LineProblem::NoAmount));
    assert_eq!(read("top with soda"), Err(LineProblem::Top("soda".into())));
    assert_eq!(read("60 gin"), Err(LineProblem::NoUnit("60".into())));
    assert_eq!(read("45 ml"), Err(LineProblem::NoName));
    assert_eq!(read("2 gin"), Err(LineProblem::NoUnit("2".into())));
    assert_eq!(read("Gin 60"), Err(LineProblem::NoUnit("60".into())));
    assert_eq!(read("1 bottle (750 ml) gin"), Err(LineProblem::Unclear));
    for (line, fixed) in [
        ("2 bottles London dry gin", "2 × 700 ml London dry gin"),
        ("½ bottle of gin", "½ × 700 ml gin"),
        ("gin, 3 Bottles", "3 × 700 ml gin"),
        ("1 bottle moon dust", "1 × 700 ml moon dust"),
    ] {
        let problem = read(line).expect_err(line);
        assert!(matches!(problem, LineProblem::Bottles(..)), "{line}: {problem:?}");
        assert_eq!(problem.fixes(line)[0], fixed);
        for fixed in problem.fixes(line) {
            assert!(read(&fixed).is_ok(), "{fixed}: {:?}", read(&fixed));
        }
    }
    for line in ["1 750 ml bottle gin", "Gin 1,000 ml", "Gin 3-2 oz"] {
        assert!(matches!(read(line), Err(LineProblem::Amount(AmountProblem::Number(_)))), "{line}");
    }
    assert_eq!(read("0 oz gin"), Err(LineProblem::Amount(AmountProblem::Zero)));
    assert_eq!(read("3-2 dashes bitters").map_err(|p| p.to_string()), Err("That is a range. Type one number.".into()));
    assert_eq!(read(&"x".repeat(300)), Err(LineProblem::TooLong));
    let problem = read("1,000 ml gin").expect_err("ambiguous");
    assert_eq!(problem.fixes("1,000 ml gin"), ["1000 ml gin", "1 ml gin"]);
    assert_eq!(LineProblem::NoUnit("60".into()).fixes("60 gin"), ["60 ml gin", "60 oz gin", "60 g gin"]);
}

#[test]
fn the_unit_a_line_is_written_in() {
    for (line, unit) in [
        ("2 oz gin", Some(Unit::Ounce)),
        ("1½oz rum", Some(Unit::Ounce)),
        ("• 1-1/2 oz — rum", Some(Unit::Ounce)),
        ("60ml/2oz gin", Some(Unit::Millilitre)),
        ("2–3 dashes bitters", Some(Unit::Dash)),
        ("2 x 30 ml gin", Some(Unit::Millilitre)),
        ("Gin: 4 cl", Some(Unit::Centilitre)),
        ("Rich syrup 2:1 1 oz", Some(Unit::Ounce)),
        ("2 parts gin", Some(Unit::Ounce)),
        ("1 fl oz gin", Some(Unit::Ounce)),
        ("½ lb sugar", Some(Unit::Pound)),
        ("8 mint leaves", None),
        ("juice of half a lime", None),
    ] {
        assert_eq!(read(line).expect(line).unit, unit, "{line}");
    }
}
