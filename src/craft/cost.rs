//! What a drink costs, and what to ask for it.
//!
//! Definitions of pour cost and gross profit, from memory: standard accounting of bars and kitchens, general practice.

use crate::book::Price;
use crate::quantity::{Amount, Money, Ratio, Temperature};
use crate::substance::mix::Mix;

/// What so much costs: amount / pack / usable share × price of a pack. `mix` is what is in the amount, where that is known:
/// by it what is poured is set against a pack by weight, and the other way round. None where one is by the piece and the
/// other is not, or where nothing says how much one weighs.
#[must_use]
pub fn cost_of(amount: Amount, mix: Option<&Mix>, price: &Price) -> Option<Money> {
    let packs = match (amount, price.pack) {
        (Amount::Volume(volume), Amount::Volume(pack)) => volume.ml() / pack.ml(),
        (Amount::Mass(mass), Amount::Mass(pack)) => mass.g() / pack.g(),
        (Amount::Count(count), Amount::Count(pack)) => count.value() / pack.value(),
        (Amount::Volume(_), Amount::Mass(pack)) => mix?.mass().g() / pack.g(),
        (Amount::Mass(_), Amount::Volume(pack)) => mix?.volume(Temperature::TWENTY).ok()?.ml() / pack.ml(),
        _ => return None,
    };
    Ratio::from_value(packs / price.usable.value()).ok().map(|packs| price.paid * packs)
}

/// What lines come to together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sum {
    /// All that is known.
    pub known: Money,
    /// Lines of which it is not: with any, the whole is more than `known`.
    pub unknown: usize,
    /// The line that costs most; none where none is known. Of two alike, the first.
    pub dearest: Option<usize>,
}

/// Adds up lines; one that is not known is counted as that, never as nothing.
#[must_use]
pub fn sum(lines: &[Option<Money>]) -> Sum {
    let mut sum = Sum { known: Money::ZERO, unknown: 0, dearest: None };
    for (at, line) in lines.iter().enumerate() {
        let Some(cost) = *line else {
            sum.unknown += 1;
            continue;
        };
        sum.known = sum.known + cost;
        let most = sum.dearest.and_then(|dearest| lines[dearest]);
        if cost > most.unwrap_or(Money::ZERO) {
            sum.dearest = Some(at);
        }
    }
    sum
}

/// A tax on what is sold.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tax {
    /// Its rate, as a fraction of the price without it.
    pub rate: Ratio,
    /// Whether the price on the menu has it in it already.
    pub is_in: bool,
}

impl Tax {
    fn factor(self) -> Ratio {
        if self.is_in { Ratio::ONE + self.rate } else { Ratio::ONE }
    }

    /// What is left of a price on the menu without the tax: all of it where that comes on top.
    #[must_use]
    pub fn net(self, menu: Money) -> Money {
        self.factor().inverse().map_or(menu, |part| menu * part)
    }

    /// The price on the menu that leaves so much.
    #[must_use]
    pub fn on_menu(self, net: Money) -> Money {
        net * self.factor()
    }

    /// What a guest pays for a price on the menu.
    #[must_use]
    pub fn paid(self, menu: Money) -> Money {
        if self.is_in { menu } else { menu * (Ratio::ONE + self.rate) }
    }
}

/// Pour cost: cost / net price. The common mistake is to divide by the price with tax, which makes it look smaller.
/// None where the price is nothing.
#[must_use]
pub fn pour_cost(cost: Money, net: Money) -> Option<Ratio> {
    cost.over(net)
}

/// The net price at which a cost is this share of it; none for a share of nothing.
#[must_use]
pub fn net_for(cost: Money, share: Ratio) -> Option<Money> {
    Some(cost * share.inverse()?)
}
