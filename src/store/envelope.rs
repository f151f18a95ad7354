//! What a saved value looks like:
//! `{"sum":"0f1e2d3c","v":3,"rev":7,"at":1764072000000,"data":…}`, and how older ones become today's.
//!
//! `sum` is the CRC-32 of all that follows it and its comma, byte for byte: the stored text is its own canonical
//! form. `rev` counts the writes of this key, `at` is the time of the last in milliseconds since 1970.

use std::fmt;

use super::read::{Unknown, read};
use super::write::{Layout, written};
use crate::book::{Field, Record, Rule, Slot, Stamp, Written};

/// The version this program writes; 1 had no checksum, 2 no slack and no temperatures in its runs, and no ingredient by all
/// that it holds, 3 no preps, no tastings, and no forms that say what they were made from.
pub const VERSION: u32 = 4;

/// A value that was read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Opened<T> {
    /// The value.
    pub data: T,
    /// Which write it is.
    pub stamp: Stamp,
    /// The version that wrote it, when that is later than ours: then it must not be written again.
    pub newer: Option<u32>,
}

/// Why a saved text cannot be used.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Unreadable {
    /// Not an envelope, or not what should be in it; what the reader said.
    Damaged(String),
    /// Written by a later version of the program, in a way that this one cannot show.
    Newer(u32),
}

impl fmt::Display for Unreadable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Unreadable::Damaged(_) => f.write_str("it could not be read"),
            Unreadable::Newer(version) => write!(f, "a newer Meniscus (version {version}) saved it"),
        }
    }
}

/// What stands before the checksum, and after it.
const BEFORE_SUM: &str = "{\"sum\":\"";
const AFTER_SUM: &str = "\",";
const SUM_DIGITS: usize = 8;

/// CRC-32 of a text (ISO-HDLC, as in ITU-T V.42 and RFC 1952).
#[must_use]
pub fn checksum(text: &str) -> u32 {
    const CRC: crc::Crc<u32, crc::NoTable> = crc::Crc::<u32, crc::NoTable>::new(&crc::CRC_32_ISO_HDLC);
    CRC.checksum(text.as_bytes())
}

/// The text to save.
///
/// # Errors
/// Never in practice: every text has JSON.
pub fn seal<T: Written>(data: &T, stamp: Stamp) -> Result<String, serde_json::Error> {
    sealed(data.clone().slot(), stamp)
}

/// The text to save of what stands in a slot.
pub(super) fn sealed(data: Slot<'_>, stamp: Stamp) -> Result<String, serde_json::Error> {
    let data = written(data, Layout::Close)?;
    let body = format!("\"v\":{VERSION},\"rev\":{},\"at\":{},\"data\":{data}}}", stamp.rev, stamp.at);
    Ok(format!("{BEFORE_SUM}{:08x}{AFTER_SUM}{body}", checksum(&body)))
}

/// The value in a saved text, brought up to [`VERSION`].
///
/// # Errors
/// [`Unreadable`]; the text should then be set aside, not overwritten.
pub fn open<T: Written>(text: &str) -> Result<Opened<T>, Unreadable> {
    let mut data = T::default();
    let (stamp, newer) = open_into(text, data.slot())?;
    Ok(Opened { data, stamp, newer })
}

/// Which write a saved text is, whatever is in it, and the version that wrote it when that is later than ours.
///
/// # Errors
/// [`Unreadable::Damaged`].
pub fn stamp_of(text: &str) -> Result<(Stamp, Option<u32>), Unreadable> {
    open_into(text, Slot::Passed)
}

/// An envelope, as it is read. It may hold more than we know of.
struct Envelope<'a> {
    v: u32,
    rev: u32,
    at: u64,
    data: Slot<'a>,
}

impl Record for Envelope<'_> {
    fn slots(&mut self) -> Vec<Field<'_>> {
        vec![
            Field::needed("v", &mut self.v),
            Field::usual("rev", &mut self.rev),
            Field::usual("at", &mut self.at),
            Field { name: "data", rule: Rule::Needed, slot: Some(self.data.again()) },
            Field::others(),
        ]
    }
}

/// Reads what a saved text holds into a slot. It is gone through once, but for texts of a later version, which may hold
/// fields that we do not know, and for those that cannot be read.
fn open_into(text: &str, mut data: Slot<'_>) -> Result<(Stamp, Option<u32>), Unreadable> {
    let is_whole = is_whole(text);
    if is_whole == Some(false) {
        return Err(Unreadable::Damaged("its checksum does not fit".into()));
    }
    let unsealed = |data: Slot<'_>, unknown: Unknown| {
        let mut envelope = Envelope { v: 0, rev: 0, at: 0, data };
        read(text, Slot::Record(&mut envelope), unknown)
            .map(|()| (envelope.v, Stamp { rev: envelope.rev, at: envelope.at }))
            .map_err(|problem| Unreadable::Damaged(problem.to_string()))
    };
    let known = unsealed(data.again(), Unknown::Refused);
    let (v, stamp) = known.clone().or_else(|_| unsealed(Slot::Passed, Unknown::Refused))?;
    let newer = match (v, is_whole) {
        (0, _) => return Err(Unreadable::Damaged("there was never a version 0".into())),
        // Version 1 had no checksum, revision and time. Its data is today's.
        (1, _) => None,
        // Versions 2 and 3 are today's with fewer fields.
        (2..=VERSION, Some(_)) => None,
        (2..=VERSION, None) => return Err(Unreadable::Damaged("it has no checksum".into())),
        (later, _) => Some(later),
    };
    match (known, newer) {
        (Err(problem), None) => return Err(problem),
        (Err(_), Some(version)) => {
            unsealed(data, Unknown::Passed).map_err(|_| Unreadable::Newer(version))?;
        }
        (Ok(_), _) => {}
    }
    Ok((stamp, newer))
}

/// Whether a text is as its checksum has it; none when it has no checksum.
fn is_whole(text: &str) -> Option<bool> {
    let rest = text.strip_prefix(BEFORE_SUM)?;
    let (sum, rest) = (rest.get(..SUM_DIGITS)?, rest.get(SUM_DIGITS..)?);
    let body = rest.strip_prefix(AFTER_SUM)?;
    Some(format!("{:08x}", checksum(body)) == sum)
}

#[cfg(test)]
mod tests {
    use super::super::kept::Kept;
    use super::*;
    use crate::book::{Card, Run, Texts, Way};

    fn texts(amount: &str) -> Texts {
        Texts::from([("amount".to_owned(), amount.to_owned())])
    }

    #[test]
    fn what_is_sealed_opens() {
        let kept = Kept { now: texts("45 ml"), before: vec![texts("1 oz")] };
        let stamp = Stamp { rev: 7, at: 1_764_072_000_000 };
        let text = seal(&kept, stamp).expect("json");
        let body =
            r#""v":4,"rev":7,"at":1764072000000,"data":{"now":{"amount":"45 ml"},"before":[{"amount":"1 oz"}]}}"#;
        assert_eq!(text, format!("{{\"sum\":\"{:08x}\",{body}", checksum(body)));
        assert_eq!(open::<Kept>(&text), Ok(Opened { data: kept, stamp, newer: None }));
    }

    #[test]
    fn what_cannot_be_read_says_why() {
        assert_eq!(open::<Kept>(r#"{"v":9,"data":{}}"#), Err(Unreadable::Newer(9)));
        assert_eq!(open::<Kept>(r#"{"v":9,"data":{"now":{}}}"#).map(|opened| opened.newer), Ok(Some(9)));
        let damaged = [
            "",
            "null",
            "{",
            "[]",
            r#"{"v":1}"#,
            r#"{"v":0,"data":1}"#,
            r#"{"v":1,"data":{"now":5}}"#,
            r#"{"v":2,"data":{"now":{}}}"#,
            r#"{"v":3,"data":{"now":{}}}"#,
        ];
        for damaged in damaged {
            assert!(matches!(open::<Kept>(damaged), Err(Unreadable::Damaged(_))), "{damaged}");
        }
    }

    /// What a later version writes is shown as far as we know it, wherever its version stands.
    #[test]
    fn fields_of_a_later_version_are_passed_over() {
        let way = Way { lines: "60 ml gin".into(), ..Way::default() };
        let card = Card { name: "Lamp".into(), ways: vec![way.clone(), way], ..Card::default() };
        let data = r#"{"name":"Lamp","made":0,"garden":{"a":[1.5,null]},"forms":[{"lines":"60 ml gin","x":-1},{"lines":"60 ml gin"}]}"#;
        let body = format!(r#""v":5,"rev":7,"at":9,"by":"her","data":{data}}}"#);
        let sealed = format!("{{\"sum\":\"{:08x}\",{body}", checksum(&body));
        for text in [sealed.clone(), format!(r#"{{"data":{data},"at":9,"rev":7,"v":5}}"#)] {
            let stamp = Stamp { rev: 7, at: 9 };
            assert_eq!(open::<Card>(&text), Ok(Opened { data: card.clone(), stamp, newer: Some(5) }), "{text}");
            assert_eq!(stamp_of(&text), Ok((stamp, Some(5))), "{text}");
            // Of our own version it is damaged; and what is mistyped is not shown.
            assert!(matches!(open::<Card>(&text.replace("\"v\":5", "\"v\":1")), Err(Unreadable::Damaged(_))), "{text}");
            assert!(open::<Card>(&text.replace("\"made\":0", "\"made\":\"\"")).is_err(), "{text}");
        }
        assert!(matches!(open::<Card>(&sealed.replace("Lamp", "Lamb")), Err(Unreadable::Damaged(_))));
        assert_eq!(open::<Card>(r#"{"v":5,"data":{"name":5}}"#), Err(Unreadable::Newer(5)));
        let run = open::<Run>(r#"{"v":5,"data":{"marks":{"0/a":{"done":5,"by":"her"}},"parts":[{"key":1,"hue":2}]}}"#);
        let run = run.expect("readable").data;
        assert_eq!((run.marks["0/a"].done, run.parts[0].key, run.parts.len()), (5, 1, 1));
    }

    #[test]
    fn a_record_is_read_as_strictly_as_ever() {
        let of = |data: &str| open::<Card>(&format!(r#"{{"v":1,"data":{data}}}"#)).map(|opened| opened.data);
        assert_eq!(of("{}"), Ok(Card::default()));
        assert_eq!(of(r#"{"forms":[{}]}"#), Ok(Card { ways: vec![Way::default()], ..Card::default() }));
        for (data, said) in [
            (r#"{"nmae":"x"}"#, "unknown field `nmae`, expected one of `name`, `tags`, `notes`, `made`, `forms`"),
            (r#"{"name":"x","name":"y"}"#, "duplicate field `name`"),
            (r#"{"name":5}"#, "invalid type: integer `5`, expected a string"),
            (r#"{"name":null}"#, "invalid type: null, expected a string"),
            (r#"{"made":-1}"#, "invalid type: integer `-1`, expected u64"),
            (r#"{"made":1.5}"#, "invalid type: floating point, expected u64"),
            (r#"{"forms":{}}"#, "invalid type: map, expected a sequence"),
            (r#"{"forms":[[]]}"#, "invalid type: sequence, expected a record"),
            (r#"{"forms":[true]}"#, "invalid type: boolean `true`, expected a record"),
            ("{},5", "key must be a string"),
        ] {
            let Err(Unreadable::Damaged(why)) = of(data) else { panic!("{data}") };
            assert!(why.starts_with(&format!("{said} at line 1 column ")), "{data}: {why}");
        }
        assert_eq!(
            open::<Kept>(r#"{"v":1,"data":{"now":{},"then":{}},"x":1}"#).map(|opened| opened.data),
            Ok(Kept::default())
        );
        let part = open::<Run>(r#"{"v":1,"data":{"parts":[{"key":5000000000}]}}"#);
        assert!(matches!(part, Err(Unreadable::Damaged(why)) if why.contains("integer `5000000000`, expected u32")));
    }

    #[test]
    fn a_flipped_byte_is_never_taken_for_the_value() {
        let text =
            seal(&Kept { now: texts("45 ml"), before: vec![texts("1 oz")] }, Stamp { rev: 1, at: 2 }).expect("json");
        for at in 0..text.len() {
            for flip in 1..=255_u8 {
                let mut bytes = text.clone().into_bytes();
                bytes[at] ^= flip;
                // Storage holds text: what is no text cannot come back from it.
                if let Ok(changed) = String::from_utf8(bytes) {
                    assert!(open::<Kept>(&changed).is_err(), "byte {at} ^ {flip}: {changed}");
                }
            }
        }
    }
}
