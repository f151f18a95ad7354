//! Drinks beside one another: a column each, a row for each thing that is compared.

use super::picture::Picture;

/// Drinks beside one another.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Sides {
    /// The drinks.
    pub sides: Vec<Column>,
    /// What is compared of them.
    pub rows: Vec<Compared>,
}

/// A drink.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Column {
    /// What it is called.
    pub name: String,
    /// Its ice, and what is not counted of it: small, a line each.
    pub below: Vec<String>,
    /// Its glass.
    pub picture: Option<Picture>,
}

/// A row: one thing of each drink.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Compared {
    /// What, with its unit: "sugar, g".
    pub of: &'static str,
    /// Of each drink.
    pub each: Vec<Side>,
}

/// One thing of one drink.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Side {
    /// What it is.
    pub said: String,
    /// The same in other words, small; empty for none.
    pub below: String,
    /// Whether it stands apart.
    pub is_apart: bool,
}

impl Sides {
    /// A line for each row, as text to copy.
    #[must_use]
    pub fn as_text(&self) -> String {
        let mut text = String::new();
        for row in &self.rows {
            text.push_str(row.of);
            for (at, (column, side)) in self.sides.iter().zip(&row.each).enumerate() {
                text.push_str(if at == 0 { ": " } else { "; " });
                text.push_str(&column.name);
                text.push_str(if side.is_apart { " ≠ " } else { " " });
                text.push_str(&side.said);
            }
            text.push('\n');
        }
        text
    }
}
