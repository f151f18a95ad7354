//! A value of any shape, as other programs write it.

use super::by_name::ByName;

/// A value of any shape.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub enum Loose {
    /// Nothing, or not there.
    #[default]
    Nothing,
    /// A whole number.
    Number(u64),
    /// A text.
    Text(String),
    /// Values in a row.
    List(Vec<Loose>),
    /// Values by name.
    Names(ByName<Loose>),
    /// Yes, no, a fraction, less than nothing: none of ours.
    Other,
}

impl Loose {
    /// The values by these names.
    #[must_use]
    pub fn names<const N: usize>(pairs: [(&str, Loose); N]) -> Loose {
        Loose::Names(pairs.into_iter().map(|(name, value)| (name.to_owned(), value)).collect())
    }

    /// The value of this name within it; nothing where there is none.
    #[must_use]
    pub fn get(&self, name: &str) -> &Loose {
        match self {
            Loose::Names(names) => names.get(name).unwrap_or(&Loose::Nothing),
            _ => &Loose::Nothing,
        }
    }

    /// Whether it is a text, a list or names with nothing in them, or nothing.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        match self {
            Loose::Nothing => true,
            Loose::Text(text) => text.is_empty(),
            Loose::List(list) => list.is_empty(),
            Loose::Names(names) => names.is_empty(),
            Loose::Number(_) | Loose::Other => false,
        }
    }
}

impl From<&str> for Loose {
    fn from(text: &str) -> Loose {
        Loose::Text(text.to_owned())
    }
}

impl FromIterator<Loose> for Loose {
    fn from_iter<I: IntoIterator<Item = Loose>>(values: I) -> Loose {
        Loose::List(values.into_iter().collect())
    }
}
