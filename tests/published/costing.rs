//! Cost of a drink. Source of the definitions: standard hospitality accounting definitions (general practice, from
//! memory): ingredient cost = amount used / pack size × pack price / yield; pour cost = ingredient cost / net price; price
//! for a target = ingredient cost / target, then add tax; gross profit = net price − ingredient cost.

use meniscus::book::{Measured, Price, Taken, ingredient};
use meniscus::craft::cost::{Sum, Tax, cost_of, net_for, pour_cost, sum};
use meniscus::craft::pour::pour;
use meniscus::quantity::{Amount, Mass, Money, Ratio, Volume};

use crate::near;

fn money(units: f64) -> Money {
    Money::from_units(units).expect("money")
}

fn ratio(value: f64) -> Ratio {
    Ratio::from_value(value).expect("a ratio")
}

fn ml(ml: f64) -> Amount {
    Amount::Volume(Volume::from_ml(ml).expect("a volume"))
}

fn grams(g: f64) -> Amount {
    Amount::Mass(Mass::from_g(g).expect("a mass"))
}

fn pieces(count: f64) -> Amount {
    Amount::Count(ratio(count))
}

fn price(pack: Amount, paid: f64, usable: f64) -> Price {
    Price {
        name: String::new(),
        library: "",
        pack,
        size: String::new(),
        paid: money(paid),
        usable: ratio(usable),
        day: String::new(),
    }
}

fn units(cost: Option<Money>) -> f64 {
    cost.expect("a cost").units()
}

const VAT_IN: Tax = Tax { rate: Ratio::ZERO, is_in: true };

/// Worked example of those definitions, its own rounding: a bottle of 700 ml at 24.00, a pour of 60 ml, 0.62 of other cost,
/// 12.00 on the menu with 20 % VAT in it: cost 2.68, net price 10.00, pour cost 26.8 %.
#[test]
fn a_pour_of_a_bottle() {
    let spirit = units(cost_of(ml(60.0), None, &price(ml(700.0), 24.0, 1.0)));
    near(spirit, 2.057, 5e-4, "60 / 700 × 24");
    let cost = money(spirit) + money(0.62);
    near(cost.units(), 2.68, 5e-3, "with what else is in it");
    let tax = Tax { rate: ratio(0.2), ..VAT_IN };
    let net = tax.net(money(12.0));
    near(net.units(), 10.0, 1e-9, "net");
    near(pour_cost(cost, net).expect("a share").value(), 0.268, 5e-4, "pour cost");
    // The common mistake: 2.68 / 12.00.
    near(pour_cost(cost, money(12.0)).expect("a share").value(), 0.223, 5e-4, "by the gross price");
    near(net.less(cost), 7.32, 5e-3, "gross profit");
    // A price below its cost is a loss.
    near(money(2.0).less(money(2.5)), -0.5, 1e-12, "a loss");
}

/// "20 % target: multiply cost by 5", from the same definitions; then tax is added: 2.68 × 5 × 1.2 = 16.08.
#[test]
fn the_price_for_a_target() {
    let net = net_for(money(2.68), ratio(0.2)).expect("a price");
    near(net.units(), 13.4, 1e-9, "net");
    let in_price = Tax { rate: ratio(0.2), is_in: true };
    let on_top = Tax { is_in: false, ..in_price };
    near(in_price.on_menu(net).units(), 16.08, 1e-9, "tax in it");
    near(on_top.on_menu(net).units(), 13.4, 1e-9, "tax on top");
    // What the guest pays is the same.
    near(in_price.paid(in_price.on_menu(net)).units(), 16.08, 1e-9, "paid, in it");
    near(on_top.paid(on_top.on_menu(net)).units(), 16.08, 1e-9, "paid, on top");
    near(on_top.net(money(13.4)).units(), 13.4, 1e-9, "nothing comes off");
    assert_eq!(net_for(money(2.68), Ratio::ZERO), None);
    assert_eq!(pour_cost(money(2.68), Money::ZERO), None);
}

/// By hand. 22.5 ml of what comes to 40 % of a kilogram at 4.00, as it weighs the same by volume: 22.5 g of 400 g. Three
/// of 24 pieces at 6.00, one in four spoilt: 3 / 18 × 6 = 1.
#[test]
fn packs_by_weight_volume_and_piece() {
    near(units(cost_of(grams(22.5), None, &price(grams(1000.0), 4.0, 0.4))), 0.225, 1e-9, "by weight, with its yield");
    near(units(cost_of(pieces(3.0), None, &price(pieces(24.0), 6.0, 0.75))), 1.0, 1e-9, "by the piece");
    // Two of sugar to one of water are 66.67 °Bx, 1.3268 g/ml (ICUMSA, as in library_figures.rs): 30 ml are 39.8 g, 0.0398 of a
    // kilogram at 5.00; and those 39.8 g are 30 ml of a litre at 5.00.
    let rich = Taken { ingredient: ingredient("rich-syrup").expect("in the library"), measured: Measured::default() };
    let poured = pour(&rich, ml(30.0)).expect("poured");
    let cost = units(cost_of(ml(30.0), Some(&poured), &price(grams(1000.0), 5.0, 1.0)));
    near(cost, 5.0 * 30.0 * 1.3268 / 1000.0, 2e-4, "poured, bought by weight");
    let weighed = poured.mass();
    let cost = units(cost_of(Amount::Mass(weighed), Some(&poured), &price(ml(1000.0), 5.0, 1.0)));
    near(cost, 0.15, 1e-6, "weighed, bought by volume");
    // What it weighs is not known, or it is by the piece: not guessed.
    assert_eq!(cost_of(ml(30.0), None, &price(grams(1000.0), 5.0, 1.0)), None);
    assert_eq!(cost_of(grams(30.0), None, &price(ml(1000.0), 5.0, 1.0)), None);
    assert_eq!(cost_of(pieces(1.0), Some(&poured), &price(ml(1000.0), 5.0, 1.0)), None);
    assert_eq!(cost_of(ml(30.0), Some(&poured), &price(pieces(12.0), 5.0, 1.0)), None);
}

/// 1.54 + 0.26 + 0.08 = 1.88, by hand; a line without a price is told, and is not nothing.
#[test]
fn lines_add_up_and_none_is_nothing() {
    let lines = [Some(money(0.26)), None, Some(money(1.54)), Some(money(0.08)), Some(money(1.54))];
    let Sum { known, unknown, dearest } = sum(&lines);
    near(known.units(), 3.42, 1e-12, "known");
    assert_eq!((unknown, dearest), (1, Some(2)), "the first of two alike");
    assert_eq!(sum(&[]), Sum { known: Money::ZERO, unknown: 0, dearest: None });
    assert_eq!(sum(&[None]), Sum { known: Money::ZERO, unknown: 1, dearest: None });
}
