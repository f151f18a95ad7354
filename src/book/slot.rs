//! What can be written down: each record lists its fields by name, and one reader and one writer serve them all.

use super::by_name::ByName;
use super::loose::Loose;

/// Where a value stands: a reader puts it there, a writer takes it from there.
pub enum Slot<'a> {
    /// A text.
    Text(&'a mut String),
    /// A whole number, or a time in milliseconds since 1970.
    Number(&'a mut u64),
    /// A small number, such as a key or a checksum.
    Small(&'a mut u32),
    /// Yes or no.
    Flag(&'a mut bool),
    /// A text or none.
    MaybeText(&'a mut Option<String>),
    /// A small number or none.
    MaybeSmall(&'a mut Option<u32>),
    /// Values in a row.
    List(&'a mut dyn Many),
    /// Values by name.
    Names(&'a mut dyn Many),
    /// A record.
    Record(&'a mut dyn Record),
    /// A value of any shape.
    Loose(&'a mut Loose),
    /// Something that is passed over.
    Passed,
}

impl Slot<'_> {
    /// The same place once more.
    #[must_use]
    pub fn again(&mut self) -> Slot<'_> {
        match self {
            Slot::Text(text) => Slot::Text(text),
            Slot::Number(number) => Slot::Number(number),
            Slot::Small(number) => Slot::Small(number),
            Slot::Flag(flag) => Slot::Flag(flag),
            Slot::MaybeText(text) => Slot::MaybeText(text),
            Slot::MaybeSmall(number) => Slot::MaybeSmall(number),
            Slot::List(many) => Slot::List(*many),
            Slot::Names(many) => Slot::Names(*many),
            Slot::Record(record) => Slot::Record(*record),
            Slot::Loose(loose) => Slot::Loose(loose),
            Slot::Passed => Slot::Passed,
        }
    }

    /// Whether there is nothing in it: what a field that may be left out leaves out.
    #[must_use]
    pub fn is_empty(&mut self) -> bool {
        match self {
            Slot::Text(text) => text.is_empty(),
            Slot::Number(number) => **number == 0,
            Slot::MaybeText(text) => text.is_none(),
            Slot::MaybeSmall(number) => number.is_none(),
            Slot::List(many) | Slot::Names(many) => many.at(0).is_none(),
            Slot::Loose(loose) => loose.is_empty(),
            Slot::Record(record) => {
                record.slots().iter_mut().filter_map(|field| field.slot.as_mut()).all(Slot::is_empty)
            }
            Slot::Small(_) | Slot::Flag(_) | Slot::Passed => false,
        }
    }
}

/// Whether a field stands in what is written, and must stand in what is read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rule {
    /// It is always written, and must be there.
    Needed,
    /// It is always written; where it is not there it is empty.
    Usual,
    /// It is written when there is something in it.
    Spare,
    /// Any field that no other has the name of: passed over.
    Others,
}

/// A field of a record.
pub struct Field<'a> {
    /// What it is kept under; never changed.
    pub name: &'static str,
    /// When it is there.
    pub rule: Rule,
    /// Where its value stands; none once it is taken.
    pub slot: Option<Slot<'a>>,
}

impl<'a> Field<'a> {
    /// A field that must be there.
    pub fn needed(name: &'static str, value: &'a mut impl Written) -> Field<'a> {
        Field { name, rule: Rule::Needed, slot: Some(value.slot()) }
    }

    /// A field that is always written.
    pub fn usual(name: &'static str, value: &'a mut impl Written) -> Field<'a> {
        Field { name, rule: Rule::Usual, slot: Some(value.slot()) }
    }

    /// A field that is left out when it is empty.
    pub fn spare(name: &'static str, value: &'a mut impl Written) -> Field<'a> {
        Field { name, rule: Rule::Spare, slot: Some(value.slot()) }
    }

    /// Fields that are not known are passed over; without this they are refused.
    #[must_use]
    pub const fn others() -> Field<'a> {
        Field { name: "", rule: Rule::Others, slot: None }
    }
}

/// Something with fields.
pub trait Record {
    /// Its fields, in the order they are written in.
    fn slots(&mut self) -> Vec<Field<'_>>;
}

/// Several values, in a row or by name.
pub trait Many {
    /// Takes all of them away.
    fn clear(&mut self);

    /// One more at the end, and its name where they have one. [`Many::settle`] follows the last.
    fn add(&mut self, name: &str) -> Slot<'_>;

    /// All are there now.
    fn settle(&mut self);

    /// What stands at a place, and its name where they have one.
    fn at(&mut self, at: usize) -> Option<(&str, Slot<'_>)>;
}

/// What can be written down.
pub trait Written: Clone + Default {
    /// Where its value stands.
    fn slot(&mut self) -> Slot<'_>;
}

impl<T: Record + Clone + Default> Written for T {
    fn slot(&mut self) -> Slot<'_> {
        Slot::Record(self)
    }
}

impl<T: Written> Many for Vec<T> {
    fn clear(&mut self) {
        Vec::clear(self);
    }

    fn add(&mut self, _: &str) -> Slot<'_> {
        self.push(T::default());
        self.last_mut().map_or(Slot::Passed, T::slot)
    }

    fn settle(&mut self) {}

    fn at(&mut self, at: usize) -> Option<(&str, Slot<'_>)> {
        self.get_mut(at).map(|value| ("", value.slot()))
    }
}

impl<T: Written> Many for ByName<T> {
    fn clear(&mut self) {
        ByName::clear(self);
    }

    fn add(&mut self, name: &str) -> Slot<'_> {
        self.push(name).slot()
    }

    fn settle(&mut self) {
        ByName::settle(self);
    }

    fn at(&mut self, at: usize) -> Option<(&str, Slot<'_>)> {
        ByName::at(self, at).map(|(name, value)| (name, value.slot()))
    }
}

impl<T: Written> Written for Vec<T> {
    fn slot(&mut self) -> Slot<'_> {
        Slot::List(self)
    }
}

impl<T: Written> Written for ByName<T> {
    fn slot(&mut self) -> Slot<'_> {
        Slot::Names(self)
    }
}

/// Says in which slot a value stands.
macro_rules! written {
    ($($slot:ident $kind:ty;)+) => {
        $(impl Written for $kind {
            fn slot(&mut self) -> Slot<'_> {
                Slot::$slot(self)
            }
        })+
    };
}

written! {
    Text String;
    Number u64;
    Small u32;
    Flag bool;
    MaybeText Option<String>;
    MaybeSmall Option<u32>;
    Loose Loose;
}
