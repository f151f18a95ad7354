//! Clearing juice: doses and heat.

use meniscus::craft::clarify::{
    AGAR_G_PER_KG, AGAR_SETS_AT, AGAR_WATER, ENZYME_BEST, ENZYME_SOUR, ENZYME_TOO_HOT, GELATIN_G_PER_KG,
    USUAL_ENZYME_PERCENT, agar, dose,
};
use meniscus::quantity::{Mass, Ratio, Temperature};
use meniscus::tool::prep::clarify::ClarifyForm;

use crate::near;

fn grams(value: f64) -> Mass {
    Mass::from_g(value).expect("a mass")
}

fn ratio(value: f64) -> Ratio {
    Ratio::from_value(value).expect("a ratio")
}

/// International Culinary Center, Cooking Issues: agar 2 g to the kg (20 Jul 2010), boiled in 20 to 33 % of the whole
/// as water, kept above where it sets, about 35 to 39 °C (9 Jun 2009); gelatin 5 g to the kg (17 Jul 2009).
#[test]
fn agar_and_gelatin() {
    near(AGAR_G_PER_KG, 2.0, 1e-12, "agar");
    near(GELATIN_G_PER_KG, 5.0, 1e-12, "gelatin");
    // The tool starts from these.
    let form = ClarifyForm::default();
    let starts = [form.agar, form.gelatin, form.enzyme].map(|text| text.parse::<f64>().unwrap_or(f64::NAN));
    for (start, published) in starts.into_iter().zip([AGAR_G_PER_KG, GELATIN_G_PER_KG, USUAL_ENZYME_PERCENT]) {
        near(start, published, 1e-12, "where the tool starts");
    }
    assert_eq!((AGAR_SETS_AT, AGAR_WATER), ((35.0, 39.0), (0.20, 0.33)));
    near(dose(grams(2_000.0), ratio(GELATIN_G_PER_KG / 1000.0)).g(), 10.0, 1e-9, "gelatin for 2 kg");
}

/// Worked example: 1 kg of juice at 20 °C and 250 g of boiling water, 2 g to the kg of both: 2.5 g of agar, and they
/// come to 37 °C ± 1 (heat capacities 3.9 and 4.2 kJ/(kg K), from memory): too close to where agar sets.
#[test]
fn agar_heat_balance() {
    let worked = agar(grams(1_000.0), Temperature::TWENTY, ratio(0.2), AGAR_G_PER_KG).expect("an answer");
    near(worked.agar.g(), 2.5, 1e-9, "agar");
    near(worked.water.g(), 250.0, 1e-9, "water");
    near(worked.comes_to, 37.0, 0.1, "mixed");
    assert!(worked.comes_to < AGAR_SETS_AT.1);
    // Juice as warm as it says comes to 42 °C.
    let warm = Temperature::from_celsius(worked.juice_at_least).expect("a temperature");
    near(agar(grams(1_000.0), warm, ratio(0.2), 2.0).expect("an answer").comes_to, 42.0, 1e-9, "warmed");
}

/// Common practice, no source: 1 g to 400 g. Published: 10 to 40 µl of liquid pectinase to 100 ml of lemon juice, 0.01
/// to 0.04 % (Ucan, Akyildiz, Agcam et al., J. Food Processing 2014, 215854); 0.092 % at 54.2 °C in carrot juice (CIGR
/// Journal, abstract no. 2804). The bar's dose is over both.
#[test]
fn enzyme() {
    near(dose(grams(400.0), ratio(USUAL_ENZYME_PERCENT / 100.0)).g(), 1.0, 1e-9, "1 g to 400 g");
    assert_eq!([0.04, 0.092].map(|published| published < USUAL_ENZYME_PERCENT), [true, true]);
    // An optimum, not a limit: what is published as best is never warned of.
    near(ENZYME_BEST, 54.2, 1e-12, "the best for carrot juice");
    assert_eq!([ENZYME_BEST].map(|best| best < ENZYME_TOO_HOT), [true]);
    // "Many pectinases work poorly near pH 2.2": lime juice, 2.00 to 2.35 (FDA list), is warned of.
    assert_eq!([2.00, 2.35].map(|lime| lime < ENZYME_SOUR), [true, true]);
}
