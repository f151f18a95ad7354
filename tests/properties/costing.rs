//! Price and pour cost come back, lines sum to the whole, a price is read as it was written.

use proptest::prelude::*;

use meniscus::book::Price;
use meniscus::craft::cost::{Tax, cost_of, net_for, pour_cost, sum};
use meniscus::quantity::{Amount, Conventions, Mass, Money, Ratio, Unit};
use meniscus::text::{Decimal, Dimension, Reading, read_offer, read_price, with_price};

use super::volumes;

fn close(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * a.abs().max(b.abs()).max(1e-9)
}

fn money() -> impl Strategy<Value = Money> {
    (0.01_f64..1e5).prop_map(|units| Money::from_units(units).expect("money"))
}

fn shares() -> impl Strategy<Value = Ratio> {
    (0.01_f64..1.0).prop_map(|share| Ratio::from_value(share).expect("a share"))
}

fn taxes() -> impl Strategy<Value = Tax> {
    let rates = (0.0_f64..0.99).prop_map(|rate| Ratio::from_value(rate).expect("a rate"));
    (rates, any::<bool>()).prop_map(|(rate, is_in)| Tax { rate, is_in })
}

fn packs() -> impl Strategy<Value = Amount> {
    prop_oneof![
        volumes().prop_map(Amount::Volume),
        (0.1_f64..1e5).prop_map(|g| Amount::Mass(Mass::from_g(g).expect("g"))),
        (1.0_f64..500.0).prop_map(|count| Amount::Count(Ratio::from_value(count).expect("a count"))),
    ]
}

proptest! {
    /// The price on the menu for a pour cost has that pour cost, whatever the tax and wherever it stands.
    #[test]
    fn the_price_for_a_pour_cost_has_it(cost in money(), share in shares(), tax in taxes()) {
        let menu = tax.on_menu(net_for(cost, share).expect("a price"));
        let there = pour_cost(cost, tax.net(menu)).expect("a share");
        prop_assert!(close(there.value(), share.value()), "{there:?}");
        prop_assert!(tax.paid(menu) >= menu);
    }

    /// A pack costs its price over what of it is used, and each part of it its part.
    #[test]
    fn a_pack_costs_its_price(pack in packs(), paid in money(), usable in shares(), part in shares()) {
        let price = Price { name: String::new(), library: "", pack, size: String::new(), paid, usable, day: String::new() };
        let whole = cost_of(pack, None, &price).expect("a cost");
        prop_assert!(close(whole.units() * usable.value(), paid.units()));
        let of_it = cost_of(pack.times(part), None, &price).expect("a cost");
        prop_assert!(close(of_it.units(), whole.units() * part.value()));
    }

    /// What is kept of a price is read as that, whatever is called so and whatever stands there; nothing else is lost.
    #[test]
    fn a_kept_price_is_read(
        name in "[a-zA-Zé0-9 ,.%()-]{1,20}[a-z]",
        offer in prop_oneof![Just("24.00 for 700 ml"), Just("3.60 / 12 pieces"), Just("1 kg, 4, 38 %"), Just("£9 per 1 l")],
        others in "[ -~]{0,40}",
    ) {
        let conventions = Conventions::default();
        let (decimal, bare, kind) = (Decimal::Point, Unit::Millilitre, Dimension::Either);
        let reading = Reading { conventions: &conventions, decimal, bare, kind, own: &[] };
        let name = name.trim();
        let kept = with_price(&others, (name, offer), "2026-11-20", &reading);
        let line = kept.lines().last().expect("a line");
        let read = read_price(line, &reading).expect(line);
        let offered = read_offer(offer, &reading).expect(offer).expect(offer);
        prop_assert_eq!(&read.name, name);
        prop_assert_eq!((read.paid, read.usable, read.size), (offered.paid, offered.usable, offered.size));
        prop_assert!(others.trim().is_empty() || kept.starts_with(&others));
    }

    /// No text breaks the reader.
    #[test]
    fn any_text_is_read_or_refused(text in "\\PC{0,60}") {
        let conventions = Conventions::default();
        let (decimal, bare, kind) = (Decimal::Comma, Unit::Millilitre, Dimension::Either);
        let reading = Reading { conventions: &conventions, decimal, bare, kind, own: &[] };
        let sound = |price: &Price| price.paid > Money::ZERO && !price.pack.is_none() && price.usable > Ratio::ZERO;
        prop_assert!(read_price(&text, &reading).is_err() || sound(&read_price(&text, &reading).expect("read")));
        prop_assert!(read_offer(&text, &reading).is_ok_and(|read| read.is_none_or(|price| sound(&price)))
            || read_offer(&text, &reading).is_err_and(|unread| !unread.words.is_empty()));
    }

    /// Lines come to their sum, and the dearest is the dearest.
    #[test]
    fn lines_come_to_their_sum(lines in prop::collection::vec(prop::option::of(money()), 0..12)) {
        let all = sum(&lines);
        let known: Vec<Money> = lines.iter().flatten().copied().collect();
        prop_assert!(close(all.known.units(), known.iter().map(|cost| cost.units()).sum()));
        prop_assert_eq!(all.unknown + known.len(), lines.len());
        prop_assert_eq!(all.dearest.is_some(), !known.is_empty());
        if let Some(dearest) = all.dearest.and_then(|at| lines[at]) {
            prop_assert!(known.iter().all(|cost| *cost <= dearest));
        }
    }
}
