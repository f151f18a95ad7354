//! What lies on the bench for now, beside the book: nothing of it is kept.

use std::rc::Rc;

use crate::book::Import;

/// What is at hand.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct AtHand {
    /// An import that waits for a choice, or why it cannot be taken.
    pub import: Option<Result<Rc<Import>, String>>,
    /// A spec made into a link to share: which, and the link; empty until it is packed.
    pub shared: Option<(String, String)>,
    /// How what that import holds besides records stands to what is here.
    pub stands: Stands,
    /// Bytes taken up on this device; 0 where not counted.
    pub usage: usize,
    /// Keys of what is set aside here, or cannot be read and is left where it stands.
    pub aside: Vec<String>,
}

/// How what an import holds besides records stands to what is here.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Stands {
    /// Whether its settings differ from those here.
    pub settings: bool,
    /// Names of the tools in which it has something else typed.
    pub tools: Vec<&'static str>,
    /// How many of the texts set aside in it are not here.
    pub aside: usize,
    /// Bytes that taking all its records takes, with what Undo keeps.
    pub takes: usize,
    /// Bytes that are free for them.
    pub free: usize,
}

impl AtHand {
    /// The link that a spec, or a form of it, has been made into.
    #[must_use]
    pub fn link_of(&self, which: &str) -> Option<&str> {
        self.shared.as_ref().filter(|(id, link)| id == which && !link.is_empty()).map(|(_, link)| link.as_str())
    }
}
