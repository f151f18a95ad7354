//! Where the bytes of the wasm are: by crate, by module of our own and by function, told from the names of an
//! unstripped build.

use std::collections::HashMap;
use std::path::PathBuf;
use std::process::Command;

use anyhow::{Context, Result};
use wasmparser::{CustomSectionReader, KnownCustom, Name, Parser, Payload, TypeRef};

use crate::{build, cargo, root, run, tools};

/// The crate that is told apart by module.
const OURS: &str = "meniscus";
/// The crate of what has no path: helpers of the compiler and of wasm-bindgen.
const NO_PATH: &str = "(no path)";
const TOP: usize = 40;
/// Most of a name that is shown.
const MOST_LETTERS: usize = 160;

const HEADING: &str = "\
The app as wasm-bindgen leaves it, not compressed, in bytes. It is built as for release, but for its names.
A function belongs to the crate and module of the first path in its name: `a::b::f` to a; `<T>::f` and `<T as Trait>::f`
to T's, wherever the method is written, or the trait's where T has none (`str`, `u8`). So a generic function belongs to
the crate that wrote it, not to the one whose types it was made for. What is inlined counts where it ended up; functions
alike to the byte may be one, under one name.";

/// Builds the app with its names kept, in a folder of its own, and prints what is in it.
///
/// # Errors
/// When a step fails or the wasm cannot be read.
pub fn weigh() -> Result<()> {
    let tools = tools::ensure()?;
    let small = build::small_std()?;
    let folder =
        std::env::var_os("CARGO_TARGET_DIR").map_or_else(|| root().join("target"), PathBuf::from).join("weigh");
    run(cargo(&["build", "--release", "--locked", "--target", "wasm32-unknown-unknown"])
        .env("CARGO_TARGET_DIR", &folder)
        .env("RUSTFLAGS", build::flags(&small))
        .envs(small.env()))?;
    let built = folder.join("wasm32-unknown-unknown/release").join(OURS).with_extension("wasm");
    run(Command::new(tools.wasm_bindgen)
        .args(["--target", "web", "--no-typescript", "--no-demangle", "--out-dir"])
        .args([&folder, &built]))?;
    let bound = folder.join(format!("{OURS}_bg.wasm"));
    let wasm = std::fs::read(&bound).with_context(|| format!("{} could not be read", bound.display()))?;
    print(&read(&wasm)?);
    Ok(())
}

/// What a wasm file holds.
#[derive(Debug, Default)]
struct Weighed {
    /// Each function's name, as Rust writes it, and its bytes.
    functions: Vec<(String, u64)>,
    code: u64,
    data: u64,
    /// Types, imports, exports, tables and the like.
    rest: u64,
}

fn read(wasm: &[u8]) -> Result<Weighed> {
    let (mut weighed, mut imported, mut sizes, mut names) = (Weighed::default(), 0, Vec::new(), HashMap::new());
    let mut rest = u64::try_from(wasm.len())?;
    for payload in Parser::new(0).parse_all(wasm) {
        let payload = payload?;
        let size = payload.as_section().map_or(0, |(_, range)| range.end - range.start);
        match payload {
            Payload::ImportSection(section) => {
                for import in section.into_imports() {
                    imported += u32::from(matches!(import?.ty, TypeRef::Func(_)));
                }
                continue;
            }
            Payload::CodeSectionEntry(body) => sizes.push(body.range().end - body.range().start),
            Payload::CodeSectionStart { .. } => weighed.code = size,
            Payload::DataSection(_) => weighed.data = size,
            // Names and notes for tools: not in a build that is published.
            Payload::CustomSection(section) => add_names(&section, &mut names)?,
            _ => continue,
        }
        rest -= size;
    }
    weighed.rest = rest;
    let name =
        |index| names.get(&index).map_or_else(String::new, |name| format!("{:#}", rustc_demangle::demangle(name)));
    weighed.functions = (imported..).zip(sizes).map(|(index, size)| (name(index), size)).collect();
    Ok(weighed)
}

fn add_names<'a>(section: &CustomSectionReader<'a>, names: &mut HashMap<u32, &'a str>) -> Result<()> {
    let KnownCustom::Name(subsections) = section.as_known() else { return Ok(()) };
    for subsection in subsections {
        if let Name::Function(functions) = subsection? {
            for naming in functions {
                let naming = naming?;
                names.insert(naming.index, naming.name);
            }
        }
    }
    Ok(())
}

/// The first path in a name. Between and before paths stand `<`, `&mut `, `[`, `(`, `dyn ` and names without a path.
fn first_path(name: &str) -> Option<&str> {
    let is_of_path = |c: char| c.is_ascii_alphanumeric() || "_:{}#.$".contains(c);
    name.split(|c| !is_of_path(c)).map(|path| path.trim_end_matches("::")).find(|path| {
        let (first, more) = path.split_once("::").unwrap_or_default();
        !first.is_empty() && !more.is_empty()
    })
}

/// The crate a function belongs to.
fn crate_of(name: &str) -> &str {
    match first_path(name) {
        Some(path) => path.split("::").next().unwrap_or(path),
        // `<str>::find`: the compiler's own types are core's.
        None if name.starts_with('<') => "core",
        None => NO_PATH,
    }
}

/// The module of a function, two deep: "form::clear". The last of a path is the function or type itself.
fn module_of(name: &str) -> String {
    let parts = first_path(name).unwrap_or_default().split("::").filter(|part| !part.contains('{'));
    let mut parts: Vec<&str> = parts.skip(1).collect();
    parts.pop();
    let is_module = |part: &&str| part.starts_with(|c: char| c.is_ascii_lowercase());
    let modules: Vec<&str> = parts.into_iter().take_while(is_module).take(2).collect();
    if modules.is_empty() { "(root)".to_owned() } else { modules.join("::") }
}

/// Bytes and number of functions by what `key` says of their names, the heaviest first.
fn grouped(functions: &[(String, u64)], key: impl Fn(&str) -> Option<String>) -> Vec<(String, u64, u32)> {
    let mut groups: HashMap<String, (u64, u32)> = HashMap::new();
    for (name, size) in functions {
        if let Some(key) = key(name) {
            let group = groups.entry(key).or_default();
            *group = (group.0 + size, group.1 + 1);
        }
    }
    let mut sorted: Vec<_> = groups.into_iter().map(|(key, (size, count))| (key, size, count)).collect();
    sorted.sort_by(|a, b| b.1.cmp(&a.1).then_with(|| a.0.cmp(&b.0)));
    sorted
}

fn print(weighed: &Weighed) {
    let functions = &weighed.functions;
    let share = |size: u64| 100.0 * size as f64 / weighed.code.max(1) as f64;
    println!("\n{HEADING}");
    println!("\n{:>9}  in all, of which", weighed.code + weighed.data + weighed.rest);
    println!("{:>9}  code, {} functions", weighed.code, functions.len());
    println!("{:>9}  data: texts, tables of facts, and how to call by trait", weighed.data);
    println!("{:>9}  the rest: types, imports, exports, tables", weighed.rest);
    for (title, groups) in [
        ("by crate", grouped(functions, |name| Some(crate_of(name).to_owned()))),
        ("by module of our own", grouped(functions, |name| (crate_of(name) == OURS).then(|| module_of(name)))),
    ] {
        println!("\n{:>9} {:>7} {:>9}  code {title}", "bytes", "share", "functions");
        for (key, size, count) in groups {
            println!("{size:>9} {:>5.1} % {count:>9}  {key}", share(size));
        }
    }
    let ours = format!("{OURS}::");
    let for_ours = functions.iter().filter(|(name, _)| crate_of(name) != OURS && name.contains(&ours));
    println!(
        "\n{:>9}  code of other crates made for types or closures of {OURS}",
        for_ours.map(|(_, size)| size).sum::<u64>()
    );
    println!("\n{:>9} {:>7}  the {TOP} largest functions", "bytes", "share");
    let mut largest: Vec<&(String, u64)> = functions.iter().collect();
    largest.sort_by(|a, b| b.1.cmp(&a.1).then_with(|| a.0.cmp(&b.0)));
    for (name, size) in largest.into_iter().take(TOP) {
        let cut: String = name.chars().take(MOST_LETTERS).collect();
        let more = if cut.len() < name.len() { "…" } else { "" };
        println!("{size:>9} {:>5.1} %  {cut}{more}", share(*size));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_function_belongs_to_the_crate_its_path_begins_with() {
        for (name, of) in [
            ("meniscus::form::run::sheet::sheet", "meniscus"),
            ("core::ptr::drop_in_place::<meniscus::book::run::Run>", "core"),
            ("core::ptr::drop_in_place<meniscus::book::run::Run>", "core"),
            ("<meniscus::book::run::Run as serde_core::de::Deserialize>::deserialize::<Reader>", "meniscus"),
            ("<alloc::vec::Vec<meniscus::book::run::Part> as core::clone::Clone>::clone", "alloc"),
            ("<&mut serde_json::de::Deserializer<R> as serde_core::de::Deserializer>::deserialize_seq", "serde_json"),
            ("<<meniscus::form::bench::Bench>::count::{closure#0} as core::ops::FnOnce<()>>::call_once", "meniscus"),
            ("<(bool, [meniscus::text::show::Figure; 2]) as tachys::view::Render>::build", "meniscus"),
            ("__rustc::__rust_alloc", "__rustc"),
        ] {
            assert_eq!(crate_of(name), of, "{name}");
        }
    }

    #[test]
    fn what_has_no_crate_of_its_own_belongs_to_its_trait() {
        assert_eq!(crate_of("<str as core::fmt::Display>::fmt"), "core");
        assert_eq!(crate_of("<u8 as serde_core::ser::Serialize>::serialize::<S>"), "serde_core");
        assert_eq!(crate_of("<[u8]>::starts_with"), "core");
        assert_eq!(crate_of("memcpy"), NO_PATH);
        assert_eq!(crate_of("__wbindgen_malloc command export"), NO_PATH);
        assert_eq!(crate_of(""), NO_PATH);
    }

    #[test]
    fn modules_are_told_two_deep_without_types_functions_and_closures() {
        for (name, of) in [
            ("meniscus::form::run::sheet::sheet", "form::run"),
            ("meniscus::form::fill", "form"),
            ("meniscus::form::fill::<F>", "form"),
            ("meniscus::main", "(root)"),
            ("meniscus::form::bench::Bench::count", "form::bench"),
            ("<meniscus::form::bench::Bench>::count", "form::bench"),
            ("<meniscus::form::acid::AcidForm as meniscus::form::screen::Tool>::plan", "form::acid"),
            ("meniscus::app::part::on_tap::<F>::{closure#0}", "app::part"),
            ("meniscus::app::part::on_tap::{{closure}}", "app::part"),
        ] {
            assert_eq!(module_of(name), of, "{name}");
        }
    }
}
