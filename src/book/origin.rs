//! What a form, or a prep, was made from: so that it can be told whether that has changed since, and be worked out anew.

use super::by_name::Texts;
use super::slot::{Field, Record};

/// What something was made from, and by what.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Origin {
    /// Id of the spec; empty where it was made from none.
    pub spec: String,
    /// The form of it, by its key.
    pub form: String,
    /// The lines of that form, as they were.
    pub lines: String,
    /// Key of the form of the tool that worked it out; empty where none did.
    pub tool: String,
    /// What was typed in that tool, its lines left out.
    pub texts: Texts,
}

impl Record for Origin {
    fn slots(&mut self) -> Vec<Field<'_>> {
        vec![
            Field::spare("spec", &mut self.spec),
            Field::spare("form", &mut self.form),
            Field::spare("lines", &mut self.lines),
            Field::spare("tool", &mut self.tool),
            Field::spare("texts", &mut self.texts),
        ]
    }
}
