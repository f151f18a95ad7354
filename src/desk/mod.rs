//! The desk.
