use super::*;

fn read(text: &str, kind: Dimension) -> Result<Option<Amount>, AmountProblem> {
    let conventions = Conventions::default();
    read_amount(
        text,
        &Reading { conventions: &conventions, decimal: Decimal::Point, bare: Unit::Millilitre, kind, own: &[] },
    )
}

#[track_caller]
fn ml(text: &str, expected: f64) {
    match read(text, Dimension::Volume) {
        Ok(Some(Amount::Volume(volume))) => assert!((volume.ml() - expected).abs() < 1e-6, "{text}: {volume:?}"),
        other => panic!("{text}: {other:?}"),
    }
}

#[test]
fn amounts_with_and_without_unit_or_space() {
    ml("45", 45.0);
    ml("45ml", 45.0);
    ml("4.5 CL", 45.0);
    ml("0,75 cl", 7.5);
    ml("1 3/4 oz", 51.753_676_734_375);
    ml("1¾oz", 51.753_676_734_375);
    ml("1 1/2 oz + 2 dashes", 45.960_294_343_75);
    ml("1 oz +", 29.573_529_562_5);
    ml("1\u{202f}350 ml", 1350.0);
}

#[test]
fn each_mistake_has_its_own_words() {
    let words = |text: &str| read(text, Dimension::Volume).expect_err(text).to_string();
    assert_eq!(words("0 ml"), "Zero makes nothing. Type an amount above zero.");
    assert_eq!(words("-1 oz"), "Below zero can't be poured. Type an amount above zero.");
    assert_eq!(words("1000000 l"), "That is more than 10 000 l. Check the number and its unit.");
    assert_eq!(words("5 g"), "g is a weight, and this is poured. Type it in ml, cl, l or oz.");
    assert_eq!(words("5 splosh"), "No unit is called “splosh”. Try ml, cl, oz, dash, bsp or g.");
    assert_eq!(words("2 parts"), "A part is as much as you choose. Type the amount in ml or oz.");
    assert_eq!(AmountProblem::UnknownUnit("parts".into()).fixes("2 parts"), ["2 oz"]);
    assert_eq!(AmountProblem::UnknownUnit("splosh".into()).fixes("5 splosh"), [""; 0]);
    assert_eq!(words("5 splosh 2"), "No unit is called “splosh 2”. Try ml, cl, oz, dash, bsp or g.");
    assert_eq!(words("1 oz 2 dash"), "Put a + between two amounts, like 1 oz + 2 dash.");
    assert_eq!(words("lime"), "Type an amount, like 45 ml or 1½ oz.");
    assert_eq!(words("🍸"), "🍸 isn't a number. Type an amount, like 45 ml or 1½ oz.");
    assert_eq!(words("5 🍸"), "🍸 isn't a number. Type an amount, like 45 ml or 1½ oz.");
    assert_eq!(words(&"9".repeat(10_000)), "That is too long for an amount. Type one like 45 ml.");
    assert_eq!(words(&"9".repeat(100)), "That is more than 10 000 l. Check the number and its unit.");
    let mass = read("5 ml", Dimension::Mass).expect_err("a volume").to_string();
    assert_eq!(mass, "ml is a volume, and this is weighed. Type it in g, kg or lb.");
    assert_eq!(read("1 oz + 5 g", Dimension::Either), Err(AmountProblem::Mixed));
    assert_eq!(read("", Dimension::Volume), Ok(None));
}

#[test]
fn what_is_as_large_or_as_long_as_may_be_is_read() {
    for (most, more) in [("10000 l", "10001 l"), ("10000 kg", "10001 kg")] {
        assert!(matches!(read(most, Dimension::Either), Ok(Some(_))), "{most}");
        assert_eq!(read(more, Dimension::Either), Err(AmountProblem::TooMuch));
    }
    assert_eq!(read("0 g", Dimension::Mass), Err(AmountProblem::Zero));
    let padded = |length: usize| format!("{:>length$}", "45 ml");
    assert_eq!(read(&padded(LONGEST), Dimension::Volume), read("45 ml", Dimension::Volume));
    assert_eq!(read(&padded(LONGEST + 1), Dimension::Volume), Err(AmountProblem::TooLong));
    let count = |length: usize| read_count(&format!("{:>length$}", "18"), Decimal::Point);
    assert_eq!(count(LONGEST), read_count("18", Decimal::Point));
    assert_eq!(count(LONGEST + 1), Err(AmountProblem::TooLong));
    assert!(read_count("1000000", Decimal::Point).is_ok());
    assert_eq!(read_count("1000001", Decimal::Point), Err(AmountProblem::TooMuch));
}

#[test]
fn an_ambiguous_number_offers_both_readings() {
    let problem = read("1,000 ml", Dimension::Volume).expect_err("ambiguous");
    assert_eq!(problem.to_string(), "1,000 can be read two ways. Did you mean 1000 or 1?");
    assert_eq!(problem.fixes("1,000 ml"), ["1000 ml", "1 ml"]);
}

#[test]
fn pounds_and_ounces_are_weighed() {
    // A pound is 453.592 37 g (NIST Handbook 44, as in tests/published/nist_units.rs).
    for (text, pounds) in [
        ("1 lb 8 oz", 1.5),
        ("1lb 8oz", 1.5),
        ("2 lb 4", 2.25),
        ("1 lb. 8 oz.", 1.5),
        ("1 lb, 3½ oz wt", 1.218_75),
        ("½ lb", 0.5),
        ("1 lb 8 oz + 1 lb", 2.5),
    ] {
        let Ok(Some(Amount::Mass(mass))) = read(text, Dimension::Mass) else { panic!("{text}") };
        assert!((mass.g() - pounds * 453.592_37).abs() < 1e-6, "{text}: {mass:?}");
    }
    for text in ["1 lb 8 g", "1 lb 8 splosh"] {
        assert_eq!(read(text, Dimension::Mass), Err(AmountProblem::MissingPlus), "{text}");
    }
    let poured = read("1 lb 8 oz", Dimension::Volume).expect_err("a weight").to_string();
    assert!(poured.starts_with("lb is a weight"), "{poured}");
    let asked = read("5½ oz", Dimension::Mass).expect_err("a volume");
    assert_eq!(asked.to_string(), "oz is a volume, and this is weighed. An ounce by weight is oz wt.");
    assert_eq!(asked.fixes("5½ oz"), ["5½ oz wt"]);
    // Of a sum the other ounces would stay.
    assert_eq!(asked.fixes("1 oz + 2 oz"), [""; 0]);
    assert!(read("5½ oz wt", Dimension::Mass).is_ok());
}

#[test]
fn two_readings_are_asked_about() {
    let problem = read("45 oz? 45 ml?", Dimension::Volume).expect_err("two readings");
    assert_eq!(problem.to_string(), "Did you mean 45 oz or 45 ml?");
    assert_eq!(problem.fixes("45 oz? 45 ml?"), ["45 oz", "45 ml"]);
    for fix in problem.fixes("") {
        assert!(read(&fix, Dimension::Volume).is_ok(), "{fix}");
    }
}

#[test]
fn counts_and_percentages() {
    assert_eq!(read_count("×18", Decimal::Point).map(|c| c.map(Ratio::value)), Ok(Some(18.0)));
    assert_eq!(read_count("0", Decimal::Point), Err(AmountProblem::Zero));
    assert_eq!(read_percent("5 %", Decimal::Point, 100).map(|p| p.map(Ratio::value)), Ok(Some(0.05)));
    assert_eq!(
        read_percent("100", Decimal::Point, 100),
        Err("Type a percentage from 0 to under 100, like 5 %.".to_owned().into())
    );
}
