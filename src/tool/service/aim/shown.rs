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
    /// What is poured of each part: figure, name, and how; of what is left out, not how. What comes to nothing is no step.
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
            (value != "0").then(|| (Figure::new(format!("{sign}{value}"), unit), names[*at].name.clone(), pour))
        };
        hit.to.iter().filter_map(step).collect()
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
        targets: &[Target],
        serve: &dyn Fn(&Mix) -> Mix,
        bench: &Bench,
    ) -> Row {
        let steps = self.steps(hit, parts, names, bench);
        let words: Vec<String> = steps.iter().map(|(figure, name, _)| format!("{figure} {name}")).collect();
        let there = serve(&drink(parts, &Self::as_poured(hit, parts, bench)));
        let pour: Vec<String> = steps
            .iter()
            .filter(|(.., pour)| !pour.is_empty())
            .map(|(_, name, pour)| if steps.len() > 1 { format!("{pour} {name}") } else { pour.clone() })
            .collect();
        let pour = if pour.is_empty() { String::new() } else { format!("{}: ", pour.join(", ")) };
        let aimed = targets.iter().map(|target| target.of);
        let others =
            [Of::Strength, Of::SugarToAcid].into_iter().filter(|of| targets.iter().all(|target| target.of != *of));
        let there: Vec<Target> = aimed.chain(others).map(|of| Target { of, value: stands(&there, of) }).collect();
        // A jigger is not always at hand for what it takes.
        let is_off = list(&there[..targets.len()], bench) != list(targets, bench);
        let as_poured = if is_off { "as poured " } else { "" };
        let detail = format!("{when}{pour}{as_poured}{}", list(&there, bench));
        Row { name: words.join(", "), detail, ..Row::default() }
    }

    pub(super) fn bars([now, there]: [&Mix; 2], targets: &[Target], bench: &Bench) -> Picture {
        let bar = |(name, of): (&'static str, Of)| {
            let values = [stands(now, of), stands(there, of)];
            let said = format!("{} → {} {}", figure(of, values[0], bench), figure(of, values[1], bench), unit(of));
            let aim = targets.iter().find(|target| target.of == of).map(|target| target.value);
            Changed { of: name, said, values, aim }
        };
        let all =
            [("sugar", Of::Sugar), ("acid", Of::Acid), ("sugar to acid", Of::SugarToAcid), ("strength", Of::Strength)];
        Picture::Changed(all.into_iter().map(bar).collect())
    }

    pub(super) fn out_of_reach(
        answer: Answer,
        targets: &[Target],
        aims: usize,
        problem: AimProblem,
        bench: &Bench,
    ) -> Answer {
        let said = |at: &[Target]| list(at, bench);
        let near = |value: f64| said(&[Target { value, ..targets[0] }]);
        answer.without_answer(&match problem {
            AimProblem::Nothing => "Add a line with an amount, like 60 ml gin.".to_owned(),
            AimProblem::NoneBrings(of) => {
                let (verb, what) = match of {
                    Of::Strength => ("has", "alcohol"),
                    Of::Sugar => ("is", "sweet"),
                    Of::Acid => ("is", "sour"),
                    _ => ("is", "sweet and sour"),
                };
                format!("Nothing in it {verb} {what}: add a line that {verb}.")
            }
            AimProblem::Nearest(value) => {
                format!("No one line reaches {}: {} is as near as it gets", said(targets), near(value))
            }
            AimProblem::NotBoth(nearest) => {
                let [one, other] = [&targets[..1], &targets[1..]].map(said);
                let but = if aims == 1 { ". Try by one line" } else { "" };
                match nearest {
                    None => format!("No two lines reach {one}, or {other}{but}"),
                    Some(near) => {
                        let with = if near.of == targets[0].of { other.as_str() } else { one.as_str() };
                        let near = said(&[near]);
                        format!("No two lines reach {one} and {other} at once: with {with}, {near} is as near as it gets{but}")
                    }
                }
            }
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

const fn unit(of: Of) -> &'static str {
    match of {
        Of::Sugar | Of::Acid => "g/l",
        Of::SugarToAcid => ": 1",
        Of::Strength => "% vol",
        Of::Volume => "ml",
    }
}

/// "10 : 1", "22.1 % vol", "13.6 g/l sugar", "95 ml".
pub(super) fn said(of: Of, value: f64, bench: &Bench) -> String {
    let what = match of {
        Of::Sugar => " sugar",
        Of::Acid => " acid",
        _ => "",
    };
    format!("{} {}{what}", figure(of, value, bench), unit(of))
}

/// "60 g/l sugar, 6 g/l acid".
pub(super) fn list(targets: &[Target], bench: &Bench) -> String {
    let said: Vec<String> = targets.iter().map(|target| said(target.of, target.value, bench)).collect();
    said.join(", ")
}
