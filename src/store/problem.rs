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
    /// No whole JSON: the line where it goes wrong, and the field there; empty for none.
    NotRead {
        /// The line, from 1.
        line: usize,
        /// The field that stands at, or last before, that place; empty for none.
        field: String,
        /// Whether the text ends too soon.
        is_cut: bool,
    },
    /// JSON of something else.
    OtherKind,
    /// Written by a later version.
    Newer(u32),
    /// Text in which no line is an amount of something.
    NoSpec,
    /// Text that is longer than a spec.
    TooLong,
}

impl fmt::Display for ImportProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            ImportProblem::Empty => f.write_str("There is nothing in it."),
            ImportProblem::TooLarge => f.write_str("It is larger than 8 MB, which no book of specs is."),
            ImportProblem::NotRead { line, field, is_cut } => {
                write!(f, "It can't be read: line {line}")?;
                if !field.is_empty() {
                    write!(f, ", in “{field}”")?;
                }
                f.write_str(if *is_cut { ": it breaks off there" } else { ": something is missing or out of place" })?;
                f.write_str(". Nothing was changed.")
            }
            ImportProblem::OtherKind => {
                f.write_str("It is no Meniscus backup and no schema.org recipe. Nothing was changed.")
            }
            ImportProblem::Newer(version) => {
                write!(f, "A newer Meniscus wrote it (backup version {version}). Update first; nothing was changed.")
            }
            ImportProblem::NoSpec => {
                f.write_str("No line of it is an amount of something, like 60 ml gin. Nothing was changed.")
            }
            ImportProblem::TooLong => f.write_str("It is text, and too long to be one spec. Nothing was changed."),
        }
    }
}
