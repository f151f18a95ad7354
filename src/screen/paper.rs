//! What stands on a printed run sheet beside its steps.

/// The head of a run sheet on paper.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct SheetHead {
    /// What the sheet is called.
    pub name: String,
    /// The day, and when the doors open: "Fri 27 Nov 2026 · doors 18:00".
    pub when: String,
    /// "All ready 17:30"; empty where no time is set.
    pub ready: String,
    /// What is made.
    pub makes: String,
}

/// What must be there before a run begins, and what guests must be told of.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct ToHave {
    /// What, and how much of it.
    pub things: Vec<(String, String)>,
    /// What may need declaring; empty for nothing that is known.
    pub declared: String,
}
