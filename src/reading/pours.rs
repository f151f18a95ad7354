//! How an amount is poured with one's own jiggers, in words.

use crate::craft::jigger::{Plan, Vessel, plan};
use crate::quantity::Volume;
use crate::screen::Bench;
use crate::text;

/// "1½ oz + ¼ oz".
fn measures(plan: &Plan) -> String {
    let pours: Vec<String> = plan
        .pours
        .iter()
        .map(|pour| {
            let times = if pour.times > 1 { format!("{} × ", pour.times) } else { String::new() };
            match &pour.vessel {
                Vessel::Jigger(label) => format!("{times}{label}"),
                Vessel::Barspoon => format!("{} bsp", pour.times),
                Vessel::Dash if pour.times == 1 => "1 dash".to_owned(),
                Vessel::Dash => format!("{} dashes", pour.times),
            }
        })
        .collect();
    pours.join(" + ")
}

/// "1½ oz + ¼ oz, exact".
pub(crate) fn pour_words(plan: &Plan, bench: &Bench) -> String {
    let error = if plan.is_exact() {
        "exact".to_owned()
    } else {
        let ml = text::plain(plan.error_ml(), 1, bench.decimal);
        let sign = if plan.error_ml() > 0.0 { "+" } else { "" };
        let verdict = if plan.is_close() { "" } else { "closest: " };
        format!("{verdict}{sign}{ml} ml, {}", text::signed_percent(plan.error(), bench.decimal))
    };
    format!("{}, {error}", measures(plan))
}

/// "pour 1½ oz + ¼ oz, exact", beneath an amount that is shown as `shown`; none where the jiggers cannot, or where that is
/// what is shown.
pub(crate) fn poured(volume: Volume, shown: &str, bench: &Bench) -> Option<String> {
    let plan = plan(volume, &bench.house)?;
    (measures(&plan) != shown).then(|| format!("pour {}", pour_words(&plan, bench)))
}
