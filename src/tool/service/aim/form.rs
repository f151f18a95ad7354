//! A drink with what mends it in it, as a form of its spec.

use super::shown::volume_of;
use super::{AimForm, Named};
use crate::book::Way;
use crate::craft::aim::{Aimed, Part};
use crate::quantity::{Amount, Ratio};
use crate::reading::rows::line_of;
use crate::reading::{Content, Contents};
use crate::screen::Bench;
use crate::text::SpecLine;

impl AimForm {
    /// All lines as much smaller.
    pub(super) fn smaller_form(read: &Contents, times: f64, bench: &Bench) -> Box<Way> {
        let line = |line: &SpecLine| match (&line.read, Ratio::from_value(times)) {
            (Ok(read), Ok(times)) => line_of(read.amount.times(times), read.unit, &read.name, bench),
            _ => line.typed.clone(),
        };
        let lines: Vec<String> = read.lines.iter().map(line).collect();
        Box::new(Way { name: "smaller".into(), lines: lines.join("\n"), ..Way::default() })
    }

    /// The lines as they are then; a line that it takes away is left out.
    pub(super) fn form(
        &self,
        read: &Contents,
        hit: &Aimed,
        (parts, names): (&[Part], &[Named]),
        serves: Ratio,
        bench: &Bench,
    ) -> Box<Way> {
        let poured_to = Self::as_poured(hit, parts, bench);
        let to = |at: usize| poured_to.iter().find(|(part, _)| *part == at).map(|(_, measures)| *measures);
        let (mut lines, mut poured) = (Vec::new(), 0);
        for (line, content) in read.pairs() {
            let (Ok(read), Content::Poured(_)) = (&line.read, content) else {
                lines.push(line.typed.clone());
                continue;
            };
            let times = to(poured).and_then(|measures| Ratio::from_value(measures).ok());
            poured += 1;
            match times {
                None => lines.push(line.typed.clone()),
                Some(times) if times <= Ratio::ZERO => {}
                Some(times) => lines.push(line_of(read.amount.times(times), read.unit, &read.name, bench)),
            }
        }
        for at in poured..parts.len() {
            if let (Some(measures), Some(each)) = (to(at), serves.inverse()) {
                let volume = volume_of(&parts[at].measure, measures) * each;
                lines.push(line_of(Amount::Volume(volume), None, &names[at].name, bench));
            }
        }
        Box::new(Way { name: "aimed".into(), lines: lines.join("\n"), ..Way::default() })
    }
}
