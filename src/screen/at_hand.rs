//! What lies on the bench for now, beside the book: nothing of it is kept.

use std::rc::Rc;

use super::face::Face;
use super::making::{Begun, InHand};
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
    /// Whether the import came inside a link.
    pub is_by_link: bool,
    /// What is seen of the spec of this id, which was opened last; of another, how it is made.
    pub face: (String, Face),
    /// Forms of specs that are being made.
    pub in_hand: Vec<InHand>,
    /// Waits begun at their steps.
    pub begun: Vec<Begun>,
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
    /// What is seen of a spec.
    #[must_use]
    pub fn face_of(&self, id: &str) -> Face {
        if self.face.0 == id { self.face.1 } else { Face::Read }
    }

    /// What is in hand of a form.
    #[must_use]
    pub fn in_hand(&self, which: &str) -> InHand {
        let found = self.in_hand.iter().find(|in_hand| in_hand.which == which);
        found.cloned().unwrap_or_else(|| InHand { which: which.to_owned(), ..InHand::default() })
    }

    /// The link that a spec, or a form of it, has been made into.
    #[must_use]
    pub fn link_of(&self, which: &str) -> Option<&str> {
        self.shared.as_ref().filter(|(id, link)| id == which && !link.is_empty()).map(|(_, link)| link.as_str())
    }
}
