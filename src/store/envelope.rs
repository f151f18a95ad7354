//! What a saved value looks like: `{"v":1,"data":…}`, and how older ones become today's.

use std::borrow::Cow;
use std::collections::BTreeMap;
use std::fmt;

use serde::de::{DeserializeOwned, IgnoredAny};
use serde::{Deserialize, Serialize};

/// The version this program writes.
pub const VERSION: u32 = 1;

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

/// Why a saved text cannot be used.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Unreadable {
    /// Not an envelope, or not what should be in it; what the reader said.
    Damaged(String),
    /// Written by a later version of the program.
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

#[derive(Serialize, Deserialize)]
struct Envelope<T> {
    v: u32,
    data: T,
}

/// The text to save.
///
/// # Errors
/// When the value has no JSON, such as a map with keys that are not text.
pub fn seal<T: Serialize>(data: &T) -> Result<String, serde_json::Error> {
    serde_json::to_string(&Envelope { v: VERSION, data })
}

/// The value in a saved text, brought up to [`VERSION`].
///
/// # Errors
/// [`Unreadable`]; the text should then be set aside, not overwritten.
pub fn open<T: DeserializeOwned>(text: &str) -> Result<T, Unreadable> {
    let damaged = |problem: serde_json::Error| Unreadable::Damaged(problem.to_string());
    let Envelope { v, data: IgnoredAny } = serde_json::from_str(text).map_err(damaged)?;
    let today = migrate(v, text)?;
    serde_json::from_str::<Envelope<T>>(&today).map(|envelope| envelope.data).map_err(damaged)
}

/// Takes a saved text of an older version step by step to today's. Pure.
fn migrate(version: u32, text: &str) -> Result<Cow<'_, str>, Unreadable> {
    match version {
        VERSION => Ok(Cow::Borrowed(text)),
        0 => Err(Unreadable::Damaged("there was never a version 0".into())),
        newer => Err(Unreadable::Newer(newer)),
    }
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
        let text = seal(&kept).expect("json");
        assert_eq!(text, r#"{"v":1,"data":{"now":{"amount":"45 ml"},"before":[{"amount":"1 oz"}]}}"#);
        assert_eq!(open::<Kept>(&text), Ok(kept));
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
        for damaged in ["", "null", "{", "[]", r#"{"v":1}"#, r#"{"v":0,"data":1}"#, r#"{"v":1,"data":{"now":5}}"#] {
            assert!(matches!(open::<Kept>(damaged), Err(Unreadable::Damaged(_))), "{damaged}");
        }
    }
}
