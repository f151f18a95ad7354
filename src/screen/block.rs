//! What a screen is put together from: fields, tables, buttons.

use crate::book::Ingredient;
use crate::screen::pad::Keys;
use crate::screen::picture::Picture;
use crate::screen::{
    Button, Carry, Cell, Choice, Doing, Drawing, Event, Pours, Printed, Problem, Row, SheetHead, Sides, ToHave,
};
use crate::text::Qr;

/// One of several, in a field.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Opt {
    /// The text the field takes.
    pub key: String,
    /// What is shown.
    pub label: String,
    /// The heading it stands under with those beside it; empty for none.
    pub group: &'static str,
}

impl Opt {
    /// An option under no heading.
    pub(crate) fn new(key: impl Into<String>, label: impl Into<String>) -> Opt {
        Opt { key: key.into(), label: label.into(), group: "" }
    }

    /// As the ingredient of the library, under what its kind is called.
    pub(crate) fn ingredient(ingredient: &Ingredient) -> Opt {
        Opt { group: ingredient.kind.plural(), ..Opt::new(ingredient.key, ingredient.name) }
    }
}

/// How a field is filled in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Input {
    /// A number, on the pad.
    Amount(Keys),
    /// A line of words.
    Words {
        /// Shown while it is empty.
        placeholder: &'static str,
    },
    /// Words that are looked for.
    Search {
        /// Shown while it is empty.
        placeholder: &'static str,
    },
    /// Lines of words.
    Lines {
        /// Shown while it is empty.
        placeholder: &'static str,
    },
    /// One of a few, all in sight.
    Chips {
        /// What there is.
        options: Vec<Opt>,
        /// Whether the label is in sight.
        captioned: bool,
    },
    /// One of many.
    Pick(Vec<Opt>),
    /// A day and a time.
    When,
}

/// A field of a screen.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Field {
    /// Its name in the form.
    pub name: &'static str,
    /// What it is for.
    pub label: &'static str,
    /// How it is filled in.
    pub input: Input,
    /// What is in it; filled in by [`screen`].
    pub text: String,
    /// What is wrong with it; filled in by [`screen`].
    pub problem: Option<Problem>,
}

/// Part of a screen below the strip.
#[derive(Clone, Debug, PartialEq)]
pub enum Block {
    /// A field.
    Field(Field),
    /// A heading.
    Heading(&'static str),
    /// A table under its heading. In a layout an empty one marks where the answer's goes.
    Table(&'static str, Vec<Row>),
    /// Steps on one line of time.
    Timeline(Vec<Event>),
    /// The head of a printed run sheet; on paper alone.
    SheetHead(SheetHead),
    /// What to have ready, and what guests must be told of.
    ToHave(ToHave),
    /// Small figures under their heading. In a layout empty ones mark where the answer's go.
    Cells(&'static str, Vec<Cell>),
    /// A plain remark.
    Remark(String),
    /// Where the figures come from, on demand: of which, and the words; of none in particular, of all.
    Sources(Vec<(String, String)>),
    /// A caution, with its triangle.
    Caution(String),
    /// Buttons that do something to the book.
    Buttons(Vec<Button>),
    /// A QR code, and the text in it.
    Code(Qr, String),
    /// A label to print. In a layout an empty one marks where the answer's goes.
    Label(Option<Drawing>),
    /// Drawings under their headings. In a layout no drawings mark where the answer's go.
    Pictures(Vec<(String, Picture)>),
    /// Drinks beside one another.
    Sides(Sides),
    /// Links to the tools that come next.
    Carry(Vec<Carry>),
    /// A quiet link to a page beside the app: what it says, and the address.
    Link(&'static str, &'static str),
    /// Buttons: one that clears, under this label, then Undo and Copy.
    Actions(&'static str),
    /// How to install the app.
    InstallHint,
    /// How many a spec is made for: what it is called, and the number.
    Serves(&'static str, u32),
    /// The lines of a spec, to pour. None say where what answers begins, though fields follow.
    Pours(Pours),
    /// The steps of a spec, to do.
    Doing(Vec<Doing>),
    /// What a spec says on paper alone.
    Printed(Printed),
    /// Nothing: keeps the place of a block that comes and goes above a field, which then stays where it is in the list,
    /// and in the document, with its caret.
    Nothing,
}

impl Block {
    /// A number, on the pad.
    #[must_use]
    pub fn amount(name: &'static str, label: &'static str, keys: Keys) -> Block {
        Block::field(name, label, Input::Amount(keys))
    }

    /// One of a few, all in sight. With `captioned`, its label too.
    #[must_use]
    pub fn chips<C: Choice>(name: &'static str, label: &'static str, captioned: bool) -> Block {
        Block::field(name, label, Input::Chips { options: options(C::ALL), captioned })
    }

    /// One of many.
    #[must_use]
    pub fn pick(name: &'static str, label: &'static str, options: Vec<Opt>) -> Block {
        Block::field(name, label, Input::Pick(options))
    }

    pub(crate) fn field(name: &'static str, label: &'static str, input: Input) -> Block {
        Block::Field(Field { name, label, input, text: String::new(), problem: None })
    }
}

fn options<C: Choice>(all: &[C]) -> Vec<Opt> {
    all.iter().map(|choice| Opt::new(choice.key(), choice.label())).collect()
}
