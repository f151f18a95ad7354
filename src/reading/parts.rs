//! Lists in parts: what one part is, asked once for the list.

use crate::quantity::Volume;
use crate::screen::{Answer, Bench, Fix, Problem};
use crate::text::{self, LineProblem, SpecLine};

/// Asks under a spec what one part is, where lines of it are in parts and none says so: each offer is the whole spec with
/// a line that says it. Until then a part is a house ounce, which each line shows.
pub(crate) fn ask_part(answer: &mut Answer, field: &'static str, spec: &str, lines: &[SpecLine], bench: &Bench) {
    let is_said = lines.iter().any(|line| line.read == Err(LineProblem::Part));
    let is_in_parts = |line: &SpecLine| line.read.is_ok() && line.typed.split(' ').any(text::is_part);
    if is_said || !lines.iter().any(is_in_parts) {
        return;
    }
    let ounce = bench.house.conventions.ounce.volume();
    let in_ml = |volume: Volume| text::millilitres(volume, bench.decimal).to_string();
    let mut parts = vec!["1 oz".to_owned()];
    parts.extend([20, 30].map(Volume::whole_ml).into_iter().filter(|volume| *volume != ounce).map(in_ml));
    let offer = |part: String| {
        let label = format!("1 part = {part}");
        Fix { text: format!("{}\n{label}", spec.trim_end()), label, spoken: String::new() }
    };
    let words = format!("How much is one part? It is taken as 1 oz, {}.", in_ml(ounce));
    let fixes = parts.into_iter().map(offer).collect();
    answer.problems.push(Problem { fixes, ..Problem::new(field, words) });
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::reading::Contents;

    fn asked(spec: &str) -> Vec<Problem> {
        let (bench, mut answer) = (Bench::default(), Answer::default());
        ask_part(&mut answer, "spec", spec, &Contents::of(spec, &bench).lines, &bench);
        answer.problems
    }

    #[test]
    fn a_part_is_asked_about_once_and_a_tap_settles_it() {
        let problems = asked("2 parts gin\n1 part lemon juice\nStir\n");
        assert_eq!(problems.len(), 1);
        assert_eq!(problems[0].words, "How much is one part? It is taken as 1 oz, 29.6 ml.");
        let labels: Vec<&str> = problems[0].fixes.iter().map(|fix| fix.label.as_str()).collect();
        assert_eq!(labels, ["1 part = 1 oz", "1 part = 20 ml", "1 part = 30 ml"]);
        for fix in &problems[0].fixes {
            assert_eq!(fix.text, format!("2 parts gin\n1 part lemon juice\nStir\n{}", fix.label));
            assert!(asked(&fix.text).is_empty(), "{fix:?}");
        }
        assert!(asked("60 ml gin\nStir for the best part").is_empty());
    }
}
