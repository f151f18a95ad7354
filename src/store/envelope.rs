//! What a saved value looks like:
//! `{"sum":"0f1e2d3c","v":2,"rev":7,"at":1764072000000,"data":…}`, and how older ones become today's.
//!
//! `sum` is the CRC-32 of all that follows it and its comma, byte for byte: the stored text is its own canonical
//! form. `rev` counts the writes of this key, `at` is the time of the last in milliseconds since 1970.

use std::collections::BTreeMap;
use std::fmt;

use crate::book::Stamp;
use serde::de::{DeserializeOwned, IgnoredAny};
use serde::{Deserialize, Serialize};

/// The version this program writes.
pub const VERSION: u32 = 2;

/// A form as it is kept: its texts now, and those that taps on Undo bring back.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Kept {
    /// What is typed, by field.
    pub now: BTreeMap<String, String>,
    /// What was typed before each clearing and carrying over, the latest last.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub before: Vec<BTreeMap<String, String>>,
}

/// Taps on Undo that are kept.
const MOST_BEFORE: usize = 5;

impl Kept {
    /// Puts other texts in place of these, which Undo brings back.
    pub fn replace(&mut self, next: BTreeMap<String, String>) {
        if next == self.now {
            return;
        }
        self.before.push(std::mem::replace(&mut self.now, next));
        if self.before.len() > MOST_BEFORE {
            self.before.remove(0);
        }
    }

    /// Brings back what was replaced last. What stood there goes to the far end: enough taps bring it back too.
    pub fn undo(&mut self) {
        if let Some(before) = self.before.pop() {
            self.before.insert(0, std::mem::replace(&mut self.now, before));
        }
    }
}

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
/// When the value has no JSON, such as a map with keys that are not text.
pub fn seal<T: Serialize>(data: &T, stamp: Stamp) -> Result<String, serde_json::Error> {
    let data = serde_json::to_string(data)?;
    let body = format!("\"v\":{VERSION},\"rev\":{},\"at\":{},\"data\":{data}}}", stamp.rev, stamp.at);
    Ok(format!("{BEFORE_SUM}{:08x}{AFTER_SUM}{body}", checksum(&body)))
}

#[derive(Deserialize)]
struct Head {
    v: u32,
    #[serde(default)]
    rev: u32,
    #[serde(default)]
    at: u64,
    #[serde(rename = "data")]
    _data: IgnoredAny,
}

#[derive(Deserialize)]
struct Body<T> {
    data: T,
}

/// The value in a saved text, brought up to [`VERSION`].
///
/// # Errors
/// [`Unreadable`]; the text should then be set aside, not overwritten.
pub fn open<T: DeserializeOwned>(text: &str) -> Result<Opened<T>, Unreadable> {
    let damaged = |problem: serde_json::Error| Unreadable::Damaged(problem.to_string());
    let is_whole = is_whole(text);
    if is_whole == Some(false) {
        return Err(Unreadable::Damaged("its checksum does not fit".into()));
    }
    let head: Head = serde_json::from_str(text).map_err(damaged)?;
    let newer = match (head.v, is_whole) {
        (0, _) => return Err(Unreadable::Damaged("there was never a version 0".into())),
        // Version 1 had no checksum, revision and time. Its data is today's.
        (1, _) => None,
        (VERSION, Some(_)) => None,
        (VERSION, None) => return Err(Unreadable::Damaged("it has no checksum".into())),
        (later, _) => Some(later),
    };
    let body = serde_json::from_str::<Body<T>>(text);
    let stamp = Stamp { rev: head.rev, at: head.at };
    match (body, newer) {
        (Ok(Body { data }), newer) => Ok(Opened { data, stamp, newer }),
        (Err(_), Some(version)) => Err(Unreadable::Newer(version)),
        (Err(problem), None) => Err(damaged(problem)),
    }
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
    use super::*;

    fn texts(amount: &str) -> BTreeMap<String, String> {
        BTreeMap::from([("amount".to_owned(), amount.to_owned())])
    }

    #[test]
    fn what_is_sealed_opens() {
        let kept = Kept { now: texts("45 ml"), before: vec![texts("1 oz")] };
        let stamp = Stamp { rev: 7, at: 1_764_072_000_000 };
        let text = seal(&kept, stamp).expect("json");
        let body =
            r#""v":2,"rev":7,"at":1764072000000,"data":{"now":{"amount":"45 ml"},"before":[{"amount":"1 oz"}]}}"#;
        assert_eq!(text, format!("{{\"sum\":\"{:08x}\",{body}", checksum(body)));
        assert_eq!(open::<Kept>(&text), Ok(Opened { data: kept, stamp, newer: None }));
    }

    #[test]
    fn undo_goes_back_step_by_step_and_round() {
        let mut kept = Kept { now: texts("1"), before: Vec::new() };
        for next in ["2", "2", "3"] {
            kept.replace(texts(next));
        }
        let mut seen = Vec::new();
        for _ in 0..3 {
            kept.undo();
            seen.push(kept.now["amount"].clone());
        }
        assert_eq!(seen, ["2", "1", "3"]);
        for next in 0..20 {
            kept.replace(texts(&format!("x{next}")));
        }
        assert_eq!(kept.before.len(), MOST_BEFORE);
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
        ];
        for damaged in damaged {
            assert!(matches!(open::<Kept>(damaged), Err(Unreadable::Damaged(_))), "{damaged}");
        }
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
