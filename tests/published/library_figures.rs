//! The library of ingredients against published figures.
//!
//! Sources: Penniston et al. 2008 for citrus; FDA, "Approximate pH of Foods" (lime 2.00–2.35, lemon 2.00–2.60);
//! Directive 2009/106/EC, minimum °Brix of juices (orange 11.2, apple 11.2, pineapple 12.8, lemon 8.0); ICUMSA for
//! syrups; OIML R 22 for spirits.

use meniscus::book::{COMMON, Kind, LIBRARY, Measured, Taken, ingredient};
use meniscus::craft::balance::balance;
use meniscus::craft::pour::{litre_of, pour, standard};
use meniscus::quantity::{Amount, Mass, Temperature, Volume};
use meniscus::substance::acid::Acid;

use crate::near;

fn litre(key: &str) -> meniscus::substance::mix::Mix {
    standard(ingredient(key).expect(key))
}

fn density(key: &str) -> f64 {
    litre(key).density(Temperature::TWENTY).expect("in range").g_per_ml()
}

/// Every row has a key of its own, a name, a source, and makes a litre that reads back as what it says.
#[test]
fn every_row_reads_back() {
    assert!(LIBRARY.len() >= 90, "{}", LIBRARY.len());
    for row in LIBRARY {
        assert_eq!(LIBRARY.iter().filter(|other| other.key == row.key).count(), 1, "{}", row.key);
        assert!(!row.name.is_empty() && !row.source.is_empty(), "{}", row.key);
        let mix = standard(row);
        if row.kind == Kind::Powder {
            continue;
        }
        near(mix.volume(Temperature::TWENTY).expect("in range").ml(), 1000.0, 1e-3, row.key);
        near(mix.strength().fraction() * 100.0, row.percent, 1e-3, row.key);
        near(mix.g_per_l(mix.sugar()), row.sugar, 0.01, row.key);
    }
    assert!(LIBRARY.iter().any(|row| row.source == COMMON));
}

/// OIML R 22: 948.05 kg/m³ at 40 % vol. ICUMSA: 1.2297 at 1:1 and 1.3268 g/ml at 2:1 by weight, 1.2071 by the cup.
#[test]
fn densities() {
    near(density("london-dry-gin"), 0.948_05, 1e-5, "gin");
    near(density("simple-syrup"), 1.2297, 3e-4, "simple syrup");
    near(density("rich-syrup"), 1.3268, 3e-4, "rich syrup");
    near(density("simple-syrup-cups"), 1.2071, 3e-4, "simple syrup by the cup");
    near(density("water"), 0.998_201, 1e-6, "water");
}

/// Honey: 1.41 to 1.43 g/ml and at most 18.6 % moisture (US grade standard).
#[test]
fn honey() {
    let honey = litre("honey");
    assert!((1.41..=1.43).contains(&density("honey")), "{}", density("honey"));
    let moisture = honey.water.g() / honey.mass().g();
    assert!((0.16..=0.20).contains(&moisture), "{moisture}");
}

/// FDA: lime juice 2.00 to 2.35, lemon juice 2.00 to 2.60.
#[test]
fn citrus_ph() {
    let ph = |key| balance(&litre(key)).ph.expect("a pH");
    assert!((2.0..=2.35).contains(&ph("lime-juice")), "{}", ph("lime-juice"));
    assert!((2.0..=2.6).contains(&ph("lemon-juice")), "{}", ph("lemon-juice"));
}

/// 21 CFR 146.114: lemon juice of at least 4.5 % by weight titratable acid, as anhydrous citric. Nour, Trandafir,
/// Ionica, Not Bot Hort Agrobot Cluj 2010;38(1):44–48: citrus from 6.88 to 73.93 g/l. FDA, "Approximate pH of
/// Foods": grapefruit 3.00 to 3.75.
#[test]
fn citrus_acid() {
    let acid = |key| litre(key).titratable_acidity().expect("possible").g_per_l();
    let lemon = litre("lemon-juice");
    assert!(acid("lemon-juice") / lemon.mass().g() * 100.0 >= 4.5, "{}", acid("lemon-juice"));
    // Karadeniz 2004: lemon 48.5 to 60.3 less its spread; Penniston 2008, two standard deviations.
    for (key, least, most) in [
        ("lemon-juice", 40.4, 60.3),
        ("lime-juice", 32.1, 59.7),
        ("orange-juice", 5.1, 13.3),
        ("grapefruit-juice", 6.88, 25.0),
    ] {
        assert!((least..=most).contains(&acid(key)), "{key}: {}", acid(key));
    }
    let grapefruit = balance(&litre("grapefruit-juice")).ph.expect("a pH");
    assert!((3.0..=3.75).contains(&grapefruit), "{grapefruit}");
}

/// Wine has pH 3.0 to 3.7, cider 3.2 to 3.9, beer 4.0 to 4.6, all from memory: their salts, which have no source, are set
/// so that they read as that. Grapefruit has 19.6 g/l of citric acid as published, 25.0 ready to drink (Penniston 2008).
#[test]
fn wine_cider_beer_and_grapefruit() {
    for (key, least, most) in [
        ("white-wine", 3.0, 3.4),
        ("sparkling-wine", 3.0, 3.4),
        ("red-wine", 3.3, 3.7),
        ("dry-vermouth", 3.1, 3.6),
        ("fino-sherry", 3.1, 3.6),
        ("cider", 3.2, 3.9),
        ("lager", 4.0, 4.6),
    ] {
        let ph = balance(&litre(key)).ph.expect("a pH");
        assert!((least..=most).contains(&ph), "{key}: {ph}");
    }
    // Titrated, wine has 5 to 7 g/l as tartaric (75.05 g to the equivalent), from memory.
    for key in ["white-wine", "red-wine", "dry-vermouth"] {
        let tartaric = litre(key).titratable_acidity().expect("possible").g_per_l() * 75.05 / 64.04;
        assert!((4.7..=7.0).contains(&tartaric), "{key}: {tartaric}");
    }
    let grapefruit = litre("grapefruit-juice").mass_of(Acid::Citric).g();
    assert!((19.6..=25.0).contains(&grapefruit), "{grapefruit}");
}

/// No sour row reads as lye, however its acid is given: a guard for the salts we assume, without a source. Orange juice that
/// titrates 0.5 g/l would have an eighth of its acid left over its 45 mmol/l of salts, near citric acid's last pKa of 6.4.
#[test]
fn what_is_sour_reads_sour() {
    for row in LIBRARY.iter().filter(|row| !row.acids.is_empty() && row.kind != Kind::Powder && !row.is_milk) {
        for acid in [None, Some(0.5), Some(2.0), Some(40.0)] {
            let acid = acid.and_then(|g| meniscus::quantity::Acidity::from_g_per_l(g).ok());
            let litre = litre_of(&Taken { ingredient: row, measured: Measured { acid, ..Measured::default() } });
            let ph = balance(&litre).ph.unwrap_or_else(|| panic!("{}: no pH", row.key));
            assert!((1.2..=6.1).contains(&ph), "{} {acid:?}: {ph}", row.key);
        }
    }
}

/// Densities of what is not spirit, syrup or juice, all from memory and to 2 %: cream 0.99 to 1.01, egg yolk 1.03,
/// egg white 1.035, saline of 20 % by weight of volume 1.13 to 1.15, cream liqueur 1.05, milk 1.03 g/ml.
#[test]
fn densities_from_memory() {
    for (key, g_per_ml) in [
        ("cream", 1.0),
        ("egg-yolk", 1.03),
        ("egg-white", 1.035),
        ("saline", 1.14),
        ("cream-liqueur", 1.05),
        ("whole-milk", 1.03),
    ] {
        near(density(key), g_per_ml, 0.02 * g_per_ml, key);
    }
}

/// Soluble solids at least the directive's minimum °Brix, less half a degree for what we leave out.
#[test]
fn juice_brix() {
    for (key, minimum) in [("orange-juice", 11.2), ("apple-juice", 11.2), ("pineapple-juice", 12.8)] {
        let mix = litre(key);
        let solids = (mix.sugar() + mix.acids() + mix.other).g() / mix.mass().g() * 100.0;
        assert!(solids >= minimum - 0.5, "{key}: {solids}");
    }
}

/// A 60 ml pour of gin holds 18.94 g of ethanol (OIML). Weighing and
/// pouring agree, a powder is only weighed.
#[test]
fn pours() {
    let taken = |key| Taken { ingredient: ingredient(key).expect("an ingredient"), measured: Measured::default() };
    let gin = taken("london-dry-gin");
    let poured = pour(&gin, Amount::Volume(Volume::whole_ml(60))).expect("poured");
    near(poured.ethanol.g(), 18.94, 0.005, "g");
    let weighed = pour(&gin, Amount::Mass(poured.mass())).expect("weighed");
    near(weighed.ethanol.g(), poured.ethanol.g(), 1e-9, "g");
    let citric = taken("citric-acid");
    assert_eq!(pour(&citric, Amount::Volume(Volume::whole_ml(5))), None);
    let five = Mass::from_g(5.0).expect("a mass");
    near(pour(&citric, Amount::Mass(five)).expect("weighed").mass_of(Acid::Citric).g(), 5.0, 1e-12, "g");
}
