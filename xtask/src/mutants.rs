//! Small errors put into the floors of numbers, one at a time: which of them does no check notice?

use std::process::Command;

use anyhow::{Context, Result};

use crate::{run, tools};

/// The floors whose numbers people pour by.
const FLOORS: [&str; 3] = ["src/quantity", "src/substance", "src/craft"];

/// Tries every mutant of the floors, or of the files and folders named; options, such as `--shard 0/8` or `--list`, are
/// those of cargo-mutants. What is tried with which checks stands in `.cargo/mutants.toml`. Hours for all of it.
///
/// # Errors
/// When a mutant lives, or the checks fail without one.
pub fn mutants(args: &[&str]) -> Result<()> {
    let mut command = Command::new(tools::cargo_mutants()?);
    command.args(["mutants", "--jobs", "2", "--timeout", "30", "--output", "target"]);
    command.args(arguments(args));
    // What a mutant breaks, few cases show; they are run for each, so that minutes of cases would be days.
    command.env("PROPTEST_CASES", "64");
    run(&mut command).context("what lives is listed in target/mutants.out/missed.txt, with what is tried beside it")
}

/// Files and folders as cargo-mutants takes them; all floors where none is named.
fn arguments(args: &[&str]) -> Vec<String> {
    let is_path = |arg: &&str| arg.starts_with("src/");
    let (paths, mut passed): (Vec<String>, Vec<String>) = (
        args.iter().filter(|arg| is_path(arg)).map(ToString::to_string).collect(),
        args.iter().filter(|arg| !is_path(arg)).map(ToString::to_string).collect(),
    );
    let paths = if paths.is_empty() { FLOORS.map(str::to_owned).to_vec() } else { paths };
    for path in paths {
        let glob = if path.ends_with(".rs") { path } else { format!("{}/**/*.rs", path.trim_end_matches('/')) };
        passed.extend(["--file".to_owned(), glob]);
    }
    passed
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn all_floors_unless_one_is_named() {
        let floors =
            ["--file", "src/quantity/**/*.rs", "--file", "src/substance/**/*.rs", "--file", "src/craft/**/*.rs"];
        assert_eq!(arguments(&["--shard", "0/8"]), [&["--shard", "0/8"], &floors[..]].concat());
        assert_eq!(arguments(&["src/craft/jigger.rs"]), ["--file", "src/craft/jigger.rs"]);
    }
}
