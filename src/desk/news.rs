//! What the app tells the desk that no person did on a screen: addresses, other tabs, files, the clock.

/// Something that has happened.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum News {
    /// The address is this, from "#" on.
    Address(String),
    /// Back was pressed, or a step of the history gone some other way.
    Back,
    /// Another tab has saved something under a key of the browser's store; empty for all of them.
    Stored(String),
    /// The page can be seen again, after other tabs may have done what they liked.
    Seen,
    /// A second has passed.
    Tick,
    /// A file has been shared or downloaded.
    Given(String),
    /// A file has been opened, or a link unpacked.
    File(String),
    /// The spec that is shared has been packed, in the letters of an address.
    Packed(String),
    /// A text was copied, or could not be.
    Copied(bool),
    /// What the copy button said for a moment is over.
    CopiedIsOver,
    /// What was said for a while is over.
    SaidIsOver(String),
    /// An act that was found unfinished can be taken back now.
    Recover,
    /// Whether numbers are at hand without the pad by now, or there is no room for it.
    Keyboard(bool),
    /// What the page has noted: whether a new version waits, whether the app can be installed, and whether it is.
    Page {
        /// A new version waits.
        update_waits: bool,
        /// The browser can be asked to install the app.
        can_install: bool,
        /// It is installed.
        is_installed: bool,
    },
}
