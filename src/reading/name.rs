//! Names of records.

/// A name, or what stands for one.
pub(crate) fn named(name: &str) -> String {
    if name.trim().is_empty() { "Without a name".into() } else { name.trim().to_owned() }
}
