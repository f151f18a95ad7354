//! The built app in Chromium: what only a browser can show. One program, so that a test that waits leaves its time to another.

mod book;
mod cold;
mod faults;
mod first;
mod hosts;
mod killed;
mod labels;
mod licences;
mod looks;
mod mirror;
mod offline;
mod paper;
mod prep;
mod printed;
mod repair;
mod shell;
mod shift;
mod story;
mod sweeps;
mod tasks;
