//! A run: preps to be made for a time, what has been done of them, and afterwards the log of it. Texts as they were
//! typed; steps, amounts and times are derived.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

/// A run sheet; once finished, an entry of the log.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Run {
    /// What it is called.
    pub name: String,
    /// When it must be ready on the clock on the wall, as "2026-11-28T18:30"; empty for no time.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub ready: String,
    /// Anything else.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub notes: String,
    /// When it was first written down, in milliseconds since 1970.
    pub made: u64,
    /// When it was finished; 0 while it is not.
    #[serde(skip_serializing_if = "is_zero")]
    pub finished: u64,
    /// What is made, in order.
    pub parts: Vec<Part>,
    /// What has been done, by step: "2/rest" is the step "rest" of the part of key 2.
    pub marks: BTreeMap<String, Tick>,
    /// Its steps as they were when it was finished: figures that change later do not change what was done.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub log: Vec<Logged>,
}

/// A step as it was done.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Logged {
    /// Which: "2/rest".
    pub key: String,
    /// What its part made.
    pub title: String,
    /// What was done, with its amounts.
    pub words: String,
    /// How long it was to wait, and what it should have given.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub planned: String,
}

/// Something to make.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Part {
    /// Its number in this run, never used again.
    pub key: u32,
    /// The key of the form it comes from.
    pub tool: String,
    /// The part whose making it takes, by its number; none for its own amount.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub from: Option<u32>,
    /// What was typed in that form.
    pub texts: BTreeMap<String, String>,
}

/// What has been done of a step.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Tick {
    /// When its wait began, in milliseconds since 1970; 0 for not.
    #[serde(skip_serializing_if = "is_zero")]
    pub started: u64,
    /// When it was ticked off; 0 for not.
    #[serde(skip_serializing_if = "is_zero")]
    pub done: u64,
    /// What came out, as typed.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub got: String,
    /// What that reads, °Bx.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub brix: String,
    /// Its pH.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub ph: String,
}

#[allow(clippy::trivially_copy_pass_by_ref)]
const fn is_zero(value: &u64) -> bool {
    *value == 0
}

impl Run {
    /// The fields that are one text each, by the names they are kept under.
    pub fn fields(&mut self) -> [(&'static str, &mut String); 3] {
        [("name", &mut self.name), ("ready", &mut self.ready), ("notes", &mut self.notes)]
    }

    /// The number of the next part.
    #[must_use]
    pub fn next_key(&self) -> u32 {
        self.parts.iter().map(|part| part.key.saturating_add(1)).max().unwrap_or(0)
    }
}

impl Tick {
    /// Its texts, by the names they are kept under.
    pub fn fields(&mut self) -> [(&'static str, &mut String); 3] {
        [("got", &mut self.got), ("brix", &mut self.brix), ("ph", &mut self.ph)]
    }

    /// Whether its wait runs.
    #[must_use]
    pub const fn is_running(&self) -> bool {
        self.started > 0 && self.done == 0
    }
}
