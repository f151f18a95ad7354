//! The one reader of JSON: every saved value, every backup and every recipe goes through it, into the slots of its
//! fields.

use std::borrow::Cow;
use std::fmt;

use serde::de::{DeserializeSeed, Deserializer, Error, IgnoredAny, MapAccess, SeqAccess, Visitor};

use crate::book::{Loose, Many, Record, Rule, Slot};

/// What becomes of fields that a record has not.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Unknown {
    /// The text is refused.
    Refused,
    /// They are passed over, for a text of a later version.
    Passed,
}

/// Reads a text into a slot. What was read before it turned out wrong is in the slot too.
///
/// # Errors
/// What the reader said, with line and column.
pub(super) fn read(text: &str, slot: Slot<'_>, unknown: Unknown) -> Result<(), serde_json::Error> {
    let mut from = serde_json::Deserializer::from_str(text);
    Reading { slot, unknown }.deserialize(&mut from)?;
    from.end()
}

/// A value about to be read into a slot.
struct Reading<'a> {
    slot: Slot<'a>,
    unknown: Unknown,
}

/// What a slot takes, in the reader's words.
const fn expected(slot: &Slot<'_>) -> &'static str {
    match slot {
        Slot::Text(_) | Slot::MaybeText(_) => "a string",
        Slot::Number(_) => "u64",
        Slot::Small(_) | Slot::MaybeSmall(_) => "u32",
        Slot::Flag(_) => "a boolean",
        Slot::List(_) => "a sequence",
        Slot::Names(_) => "a map",
        Slot::Record(_) => "a record",
        Slot::Loose(_) | Slot::Passed => "anything",
    }
}

/// In words of our own: serde's `Unexpected` can show fractions, and brings all that prints them along.
fn mistyped<E: Error>(found: fmt::Arguments<'_>, slot: &Slot<'_>) -> Result<(), E> {
    Err(E::custom(format_args!("invalid type: {found}, expected {}", expected(slot))))
}

impl<'de> DeserializeSeed<'de> for Reading<'_> {
    type Value = ();

    fn deserialize<D: Deserializer<'de>>(self, from: D) -> Result<(), D::Error> {
        match self.slot {
            Slot::Passed => from.deserialize_ignored_any(IgnoredAny).map(|_| ()),
            _ => from.deserialize_any(self),
        }
    }
}

impl<'de> Visitor<'de> for Reading<'_> {
    type Value = ();

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(expected(&self.slot))
    }

    fn visit_str<E: Error>(self, text: &str) -> Result<(), E> {
        match self.slot {
            Slot::Text(place) => text.clone_into(place),
            Slot::MaybeText(place) => *place = Some(text.to_owned()),
            Slot::Loose(place) => *place = Loose::Text(text.to_owned()),
            slot => return mistyped(format_args!("string \"{text}\""), &slot),
        }
        Ok(())
    }

    fn visit_u64<E: Error>(self, number: u64) -> Result<(), E> {
        let small = || {
            let too_large = || E::custom(format_args!("invalid value: integer `{number}`, expected u32"));
            u32::try_from(number).map_err(|_| too_large())
        };
        match self.slot {
            Slot::Number(place) => *place = number,
            Slot::Small(place) => *place = small()?,
            Slot::MaybeSmall(place) => *place = Some(small()?),
            Slot::Loose(place) => *place = Loose::Number(number),
            slot => return mistyped(format_args!("integer `{number}`"), &slot),
        }
        Ok(())
    }

    fn visit_bool<E: Error>(self, flag: bool) -> Result<(), E> {
        match self.slot {
            Slot::Flag(place) => *place = flag,
            Slot::Loose(place) => *place = Loose::Other,
            slot => return mistyped(format_args!("boolean `{flag}`"), &slot),
        }
        Ok(())
    }

    fn visit_i64<E: Error>(self, number: i64) -> Result<(), E> {
        match self.slot {
            Slot::Loose(place) => *place = Loose::Other,
            slot => return mistyped(format_args!("integer `{number}`"), &slot),
        }
        Ok(())
    }

    fn visit_f64<E: Error>(self, _: f64) -> Result<(), E> {
        match self.slot {
            Slot::Loose(place) => *place = Loose::Other,
            slot => return mistyped(format_args!("floating point"), &slot),
        }
        Ok(())
    }

    fn visit_unit<E: Error>(self) -> Result<(), E> {
        match self.slot {
            Slot::MaybeText(place) => *place = None,
            Slot::MaybeSmall(place) => *place = None,
            Slot::Loose(place) => *place = Loose::Nothing,
            slot => return mistyped(format_args!("null"), &slot),
        }
        Ok(())
    }

    fn visit_seq<A: SeqAccess<'de>>(mut self, mut seq: A) -> Result<(), A::Error> {
        if let Slot::Loose(place) = &mut self.slot {
            **place = Loose::List(Vec::new());
        }
        let many: &mut dyn Many = match self.slot {
            Slot::List(many) => many,
            Slot::Loose(Loose::List(list)) => list,
            slot => return mistyped(format_args!("sequence"), &slot),
        };
        many.clear();
        while seq.next_element_seed(Next { many, unknown: self.unknown })?.is_some() {}
        Ok(())
    }

    fn visit_map<A: MapAccess<'de>>(mut self, mut map: A) -> Result<(), A::Error> {
        if let Slot::Loose(place) = &mut self.slot {
            **place = Loose::Names(Default::default());
        }
        let many: &mut dyn Many = match self.slot {
            Slot::Record(record) => return fields(record, map, self.unknown),
            Slot::Names(many) => many,
            Slot::Loose(Loose::Names(names)) => names,
            slot => return mistyped(format_args!("map"), &slot),
        };
        many.clear();
        while let Some(name) = map.next_key_seed(Name)? {
            map.next_value_seed(Reading { slot: many.add(&name), unknown: self.unknown })?;
        }
        many.settle();
        Ok(())
    }
}

/// Reads the fields of a record.
fn fields<'de, A: MapAccess<'de>>(record: &mut dyn Record, mut map: A, unknown: Unknown) -> Result<(), A::Error> {
    let mut fields = record.slots();
    let passes = unknown == Unknown::Passed || fields.iter().any(|field| field.rule == Rule::Others);
    while let Some(name) = map.next_key_seed(Name)? {
        let known = fields.iter_mut().find(|field| field.name == name && field.rule != Rule::Others);
        let slot = match known.map(|field| field.slot.take()) {
            Some(Some(slot)) => slot,
            Some(None) => return Err(A::Error::custom(format_args!("duplicate field `{name}`"))),
            None if passes => Slot::Passed,
            None => {
                let known: Vec<&str> = fields.iter().map(|field| field.name).collect();
                let known = match known.as_slice() {
                    [one, other] => format!("`{one}` or `{other}`"),
                    all => format!("one of `{}`", all.join("`, `")),
                };
                return Err(A::Error::custom(format_args!("unknown field `{name}`, expected {known}")));
            }
        };
        map.next_value_seed(Reading { slot, unknown })?;
    }
    match fields.iter().find(|field| field.rule == Rule::Needed && field.slot.is_some()) {
        Some(missing) => Err(A::Error::custom(format_args!("missing field `{}`", missing.name))),
        None => Ok(()),
    }
}

/// The next value of a row, where there is one.
struct Next<'a> {
    many: &'a mut dyn Many,
    unknown: Unknown,
}

impl<'de> DeserializeSeed<'de> for Next<'_> {
    type Value = ();

    fn deserialize<D: Deserializer<'de>>(self, from: D) -> Result<(), D::Error> {
        Reading { slot: self.many.add(""), unknown: self.unknown }.deserialize(from)
    }
}

/// A name, as it stands in the text where nothing in it is quoted.
struct Name;

impl<'de> DeserializeSeed<'de> for Name {
    type Value = Cow<'de, str>;

    fn deserialize<D: Deserializer<'de>>(self, from: D) -> Result<Cow<'de, str>, D::Error> {
        from.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for Name {
    type Value = Cow<'de, str>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a name")
    }

    fn visit_borrowed_str<E: Error>(self, name: &'de str) -> Result<Cow<'de, str>, E> {
        Ok(Cow::Borrowed(name))
    }

    fn visit_str<E: Error>(self, name: &str) -> Result<Cow<'de, str>, E> {
        Ok(Cow::Owned(name.to_owned()))
    }
}
