//! The faces of a spec.

/// What is seen of a spec.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Face {
    /// How it is made.
    #[default]
    Read,
    /// Its fields.
    Change,
    /// What else can be done with it.
    More,
    /// How it tastes.
    Taste,
}
