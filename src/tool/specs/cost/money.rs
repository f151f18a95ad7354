//! What is asked for a drink: its price on the menu, the tax, and the pour cost to come to.

use super::{AIM, CostForm, EXTRAS, MENU, SERVES, TAX, TaxIs};
use crate::craft::cost::{Tax, net_for, pour_cost};
use crate::quantity::{Money, Ratio};
use crate::screen::{Answer, Bench, Choice, Figure, Strip, Tone};
use crate::text;

/// Most that a drink costs.
const MOST: f64 = 1e6;
/// Least that is money.
const LEAST: f64 = 0.001;

/// The fields on money, read.
pub(super) struct Asked {
    serves: Ratio,
    menu: Option<Money>,
    tax: Tax,
    /// Garnish, glass and ice of one serve.
    pub(super) extras: Money,
    aim: Option<Ratio>,
}

impl CostForm {
    /// Reads them; none where one can't be used, which is said at its field.
    pub(super) fn ask(&self, answer: &mut Answer, bench: &Bench) -> Option<Asked> {
        let before = answer.problems.len();
        let problems = &mut answer.problems;
        let serves = match self.serves.trim() {
            "" => Some(Ratio::ONE),
            serves => bench.count(SERVES, serves, problems),
        };
        let mut money = |field, text: &str, least, words: &str| {
            let units = bench.number(field, text, (least, MOST), words, problems);
            units.and_then(|units| Money::from_units(units).ok())
        };
        let menu = money(MENU, &self.menu, LEAST, "Type a price above zero, like 9.50.");
        let extras = money(EXTRAS, &self.extras, 0.0, "Type what they cost for a serve, like 0.62.");
        let rate = bench.percent(TAX, &self.tax, 100, problems);
        let aim = self.aim.trim().trim_end_matches('%');
        let aim = bench.number(AIM, aim, (0.1, 100.0), "Type a pour cost from 0.1 to 100 %, like 20 %.", problems);
        (problems.len() == before).then_some(())?;
        Some(Asked {
            serves: serves?,
            menu,
            tax: Tax { rate: rate?, is_in: TaxIs::read(&self.tax_is) == TaxIs::In },
            extras: extras.unwrap_or(Money::ZERO),
            aim: aim.and_then(|aim| Ratio::from_value(aim / 100.0).ok()),
        })
    }
}

impl Asked {
    /// The answer for a serve that costs so much, or more where prices are missing.
    pub(super) fn show(&self, mut answer: Answer, cost: Money, missing: usize, bench: &Bench) -> Answer {
        let at_least = if missing > 0 { "at least " } else { "" };
        let is_taxed = self.tax.rate > Ratio::ZERO;
        let percent = |share: Ratio| format!("{} %", text::plain(share.value() * 100.0, 0, bench.decimal));
        let for_aim = self.aim.and_then(|aim| Some((aim, self.tax.on_menu(net_for(cost, aim)?))));
        let mut also = String::new();
        if let Some(menu) = self.menu {
            let net = self.tax.net(menu);
            let share = pour_cost(cost, net).map_or(String::new(), percent);
            let off = if is_taxed && self.tax.is_in { ", tax off" } else { "" };
            also = format!("Pour cost {at_least}{share} of {}{off}", bench.money(menu.units()));
            let label = if missing > 0 { "Left of a sale, at most" } else { "Left of a sale" };
            answer.explained(label, bench.money(net.less(cost)), "The price on the menu without tax, less the cost.");
        }
        if let Some((aim, menu)) = for_aim {
            let ask = bench.money(menu.units());
            if also.is_empty() {
                also = format!("For {}, ask {at_least}{ask}", percent(aim));
            } else {
                answer.cell(format!("For {}, ask {at_least}", percent(aim)).trim_end(), ask);
            }
            if is_taxed && !self.tax.is_in {
                answer.cell("That is, with tax", bench.money(self.tax.paid(menu).units()));
            }
        }
        if self.serves > Ratio::ONE {
            let all = bench.money((cost * self.serves).units());
            answer.cell(format!("For {} {at_least}", text::count(self.serves.value(), bench.decimal)).trim_end(), all);
        }
        let Figure { value, unit } = bench.money(cost.units());
        let unit = if unit.is_empty() { "a serve".into() } else { format!("{unit} a serve") };
        answer.strip = Strip {
            figures: vec![Figure::new(value, if missing > 0 { format!("{unit}, at least") } else { unit })],
            also,
            below: answer.leads.clone(),
            tone: Tone::Answer,
            ..Strip::default()
        };
        answer
    }
}
