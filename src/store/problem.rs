//! Why a file is not taken, in words for the person who chose it.

use std::fmt;

/// Largest file that is read.
pub const MOST_BYTES: usize = 8_000_000;

/// Why a file is not taken.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ImportProblem {
    /// Nothing in it.
    Empty,
    /// Larger than any book.
    TooLarge,
    /// No JSON, or not what is expected there; what the reader said, with line and column.
    NotRead(String),
    /// JSON of something else.
    OtherKind,
    /// Written by a later version.
    Newer(u32),
    /// A record that cannot be taken: which, its name, and the field.
    Record(String, &'static str),
}

impl fmt::Display for ImportProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            ImportProblem::Empty => f.write_str("There is nothing in it."),
            ImportProblem::TooLarge => f.write_str("It is larger than 8 MB, which no book of specs is."),
            ImportProblem::NotRead(said) => write!(f, "It can't be read: {said}. Nothing was changed."),
            ImportProblem::OtherKind => {
                f.write_str("It is no Meniscus backup and no schema.org recipe. Nothing was changed.")
            }
            ImportProblem::Newer(version) => {
                write!(f, "A newer Meniscus wrote it (backup version {version}). Update first; nothing was changed.")
            }
            ImportProblem::Record(which, field) => {
                write!(f, "{which} its {field} can't be used. Nothing was changed.")
            }
        }
    }
}
