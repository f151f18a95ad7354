//! Small measures, a dash and a barspoon, as the shelf takes them.

use crate::quantity::{Amount, Volume};
use crate::screen::{Problem, fixes};
use crate::text::{self, Reading};

/// A small measure within limits in ml; empty is the default.
pub(super) fn read(
    field: &str,
    text: &str,
    (least, most): (f64, f64),
    reading: &Reading<'_>,
    problems: &mut Vec<Problem>,
) -> Option<Volume> {
    let mut problem = |words: String, fixes| problems.push(Problem { field: field.to_owned(), words, fixes });
    match text::read_amount(text, reading) {
        Ok(Some(Amount::Volume(volume))) if (least..=most).contains(&volume.ml()) => Some(volume),
        Ok(Some(_)) => {
            let limit = |ml| text::plain(ml, usize::from(ml < 1.0), reading.decimal);
            problem(format!("Type {} to {} ml.", limit(least), limit(most)), Vec::new());
            None
        }
        Ok(None) => None,
        Err(wrong) => {
            problem(wrong.to_string(), fixes(wrong.fixes(text)));
            None
        }
    }
}
