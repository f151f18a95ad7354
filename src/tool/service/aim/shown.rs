//! What mends a drink, as it is shown: what is poured, where it then is, what is out of reach.

use super::{AimForm, Named};
use crate::craft::aim::{AimProblem, Aimed, Of, Part, Target, drink, stands};
use crate::craft::jigger::plan;
use crate::quantity::{Temperature, Unit, Volume};
use crate::reading::pours;
use crate::screen::picture::{Changed, Picture};
use crate::screen::{Answer, Bench, Figure, Row};
use crate::substance::mix::Mix;
use crate::text;

impl AimForm {
    /// What is poured of each part: figure, name, and how; of what is left out, not how.
    pub(super) fn steps(
        &self,
        hit: &Aimed,
        parts: &[Part],
        names: &[Named],
        bench: &Bench,
    ) -> Vec<(Figure, String, String)> {
        let step = |(at, measures): &(usize, f64)| {
            let change = measures - parts[*at].now;
            let volume = volume_of(&parts[*at].measure, change.abs());
            let Figure { value, unit } = match names[*at].unit {
                Some(Unit::Ounce) => text::ounces(volume, &bench.house.conventions, bench.decimal),
                _ => text::millilitres(volume, bench.decimal),
            };
            let pour = plan(volume, &bench.house).filter(|_| change > 0.0);
            let pour = pour.map_or(String::new(), |plan| format!("pour {}", pours::measures(&plan)));
            let sign = if change < 0.0 { "−" } else { "+" };
            (Figure::new(format!("{sign}{value}"), unit), names[*at].name.clone(), pour)
        };
        hit.to.iter().map(step).collect()
    }

    /// How many measures of each part there are, as the jiggers pour what is added.
    pub(super) fn as_poured(hit: &Aimed, parts: &[Part], bench: &Bench) -> Vec<(usize, f64)> {
        let poured = |(at, measures): &(usize, f64)| {
            let more = measures - parts[*at].now;
            let plan = plan(volume_of(&parts[*at].measure, more.max(0.0)), &bench.house);
            let one = volume_of(&parts[*at].measure, 1.0).ml();
            (*at, plan.map_or(*measures, |plan| parts[*at].now + plan.total.ml() / one))
        };
        hit.to.iter().map(poured).collect()
    }

    /// One way: what is poured, and where it then is as the jiggers pour it.
    pub(super) fn row(
        &self,
        hit: &Aimed,
        when: &str,
        (parts, names): (&[Part], &[Named]),
        target: Target,
        serve: &dyn Fn(&Mix) -> Mix,
        bench: &Bench,
    ) -> Row {
        let steps = self.steps(hit, parts, names, bench);
        let words: Vec<String> = steps.iter().map(|(figure, name, _)| format!("{figure} {name}")).collect();
        let there = serve(&drink(parts, &Self::as_poured(hit, parts, bench)));
        let pour: Vec<&str> = steps.iter().map(|(.., pour)| pour.as_str()).filter(|pour| !pour.is_empty()).collect();
        let pour = if pour.is_empty() { String::new() } else { format!("{}: ", pour.join(", ")) };
        let others = [Of::Strength, Of::SugarToAcid].into_iter().filter(|of| *of != target.of);
        let others: Vec<String> = others.map(|of| said(of, stands(&there, of), bench)).collect();
        Row {
            name: words.join(", "),
            detail: format!("{when}{pour}{}, {}", said(target.of, stands(&there, target.of), bench), others.join(", ")),
            ..Row::default()
        }
    }

    pub(super) fn bars([now, there]: [&Mix; 2], target: Target, bench: &Bench) -> Picture {
        let bar = |(name, of): (&'static str, Of)| {
            let values = [stands(now, of), stands(there, of)];
            let said = format!("{} → {}", figure(of, values[0], bench), said(of, values[1], bench));
            Changed { of: name, said, values, aim: (of == target.of).then_some(target.value) }
        };
        let all =
            [("sugar", Of::Sugar), ("acid", Of::Acid), ("sugar to acid", Of::SugarToAcid), ("strength", Of::Strength)];
        Picture::Changed(all.into_iter().map(bar).collect())
    }

    pub(super) fn out_of_reach(&self, answer: Answer, target: Target, problem: AimProblem, bench: &Bench) -> Answer {
        answer.without_answer(&match problem {
            AimProblem::Nothing => "Add a line with an amount, like 60 ml gin.".to_owned(),
            AimProblem::NoneBrings(_) => match target.of {
                Of::Strength => "Nothing in it has alcohol: add a line that has.".to_owned(),
                _ => "Nothing in it is sweet and sour: add a line that is.".to_owned(),
            },
            AimProblem::Nearest(near) => format!(
                "No one line reaches {}: {} is as near as it gets",
                said(target.of, target.value, bench),
                said(target.of, near, bench)
            ),
            AimProblem::NotBoth => "No two lines do that. Try by one line".to_owned(),
        })
    }
}

pub(super) fn volume_of(measure: &Mix, measures: f64) -> Volume {
    let one = measure.volume(Temperature::TWENTY).unwrap_or(Volume::ZERO);
    Volume::from_ml(one.ml() * measures).unwrap_or(Volume::ZERO)
}

fn figure(of: Of, value: f64, bench: &Bench) -> String {
    match of {
        Of::Strength => text::plain(value * 100.0, 1, bench.decimal),
        _ => text::count(value, bench.decimal),
    }
}

/// "10.0 : 1", "22.1 % vol", "13.6 g/l", "95 ml".
pub(super) fn said(of: Of, value: f64, bench: &Bench) -> String {
    let unit = match of {
        Of::Sugar | Of::Acid => "g/l",
        Of::SugarToAcid => ": 1",
        Of::Strength => "% vol",
        Of::Volume => "ml",
    };
    format!("{} {unit}", figure(of, value, bench))
}
