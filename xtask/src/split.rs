//! Puts the wasm of a build into two parts. The first is what the first screen runs on: it starts, and answers, while the
//! rest is still on its way. Both are one program: the rest brings functions into the memory and the tables of the first.
//!
//! Which functions come later is told by their names, so the build keeps them until here. Whatever only those call goes with
//! them. In the place of each that the first part calls stands a stub: where the rest has not come yet it has it fetched,
//! there and then, and hands on to it. So nothing depends on what is chosen here but how soon the app answers.

mod part;
mod read;

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use anyhow::{Context, Result, ensure};

use crate::inline::PAGE;
use read::Module;

/// How the name of the second part ends.
pub(crate) const REST: &str = "_rest.wasm";

/// What marks the line of the page that says where the wasm is.
const LINE: &str = " data-boot=\"wasm\"";

/// What the first part gives to the rest, as the rest calls it.
const FIRST: &str = "first";
/// The function of the app that has the rest fetched at once: `app::browser::fetch_rest`.
const FETCH: &str = "meniscus::app::browser::fetch_rest";

/// What a tool says and does: not needed of any but the first on the first screen.
const TOOL: &str = " as meniscus::screen::tool::Tool>::";
const FIRST_TOOL: &str = "::MeasureForm";
/// What else is not: by how its name begins, but for a `<`.
const LATER: [&str; 19] = [
    "meniscus::tool::batch::run::",
    "meniscus::tool::specs::card::",
    "meniscus::tool::specs::all::",
    "meniscus::tool::specs::texts::",
    "meniscus::tool::specs::find::",
    "meniscus::tool::specs::served::",
    "meniscus::tool::shelf::ingredients::",
    "meniscus::reading::",
    "meniscus::craft::chill::",
    "meniscus::text::spec::",
    "meniscus::text::figures::",
    "meniscus::text::prices::",
    "meniscus::book::named::",
    "meniscus::store::backup::",
    "meniscus::store::deeds::import",
    "meniscus::desk::Desk>::do_to_book",
    "meniscus::desk::Desk>::undo_deed",
    "meniscus::desk::Desk>::put_on_run",
    "meniscus::desk::Desk>::give_backup",
];
/// But this of any form, as each is opened when the app opens; and what the Shelf and the first screen are read with.
const AT_ONCE: [&str; 5] = [
    " as meniscus::screen::fields::Fields>::",
    " as core::default::Default>::",
    "meniscus::reading::glass::shape",
    "meniscus::reading::contents::figures",
    "meniscus::reading::pours::",
];

/// Bytes of a function that is not worth a stub.
const SMALL: u64 = 48;

/// Whether a function, by its name, comes with the rest.
fn comes_later(name: &str) -> bool {
    let path = name.trim_start_matches('<');
    let is_of_tool = name.contains(TOOL) && !name.contains(FIRST_TOOL);
    let is_later = is_of_tool || LATER.iter().any(|start| path.starts_with(start));
    is_later && !AT_ONCE.iter().any(|part| name.contains(part))
}

/// Splits the wasm of the build in `folder` in place, writes the rest beside it, and where that is into the page. Names and
/// notes for tools go.
///
/// # Errors
/// When a file cannot be read or written, or is not as the app's are: one table of functions, names, and a line in the page.
pub fn split(folder: &Path, wasm: &Path) -> Result<()> {
    let whole = fs::read(wasm).with_context(|| format!("{} could not be read", wasm.display()))?;
    let [first, rest] = parts(&whole, comes_later, SMALL)?;
    let named = wasm.file_name().context("a file has a name")?.to_string_lossy();
    let name = named.replace("_bg.wasm", REST);
    fs::write(wasm, first)?;
    fs::write(folder.join(&name), rest)?;
    let page = folder.join(PAGE);
    let text = fs::read_to_string(&page).with_context(|| format!("{PAGE} is missing"))?;
    ensure!(text.contains(LINE), "{PAGE} does not say where the wasm is");
    // Beside the first, as the page names that.
    fs::write(page, text.replace(LINE, &format!("{LINE} data-rest=\"./{name}\"")))?;
    Ok(())
}

/// The two parts of a module.
fn parts(wasm: &[u8], comes_later: impl Fn(&str) -> bool, small: u64) -> Result<[Vec<u8>; 2]> {
    let module = Module::read(wasm)?;
    let named = |is_meant: &dyn Fn(&str) -> bool| -> BTreeSet<u32> {
        module.defined().filter(|function| is_meant(&module.names[*function as usize])).collect()
    };
    let fetch = named(&|name| name == FETCH).first().copied();
    let fetch = fetch.with_context(|| format!("{FETCH} is not there: is it written into what calls it?"))?;
    // A stub is no smaller than the smallest; and of those that are alike, the compiler keeps one under any of their names.
    let size = |function: u32| module.body(function).map_or(0, |(body, _)| body.range().end - body.range().start);
    let later: BTreeSet<u32> = named(&comes_later).into_iter().filter(|function| size(*function) >= small).collect();
    ensure!(!later.is_empty(), "no function has a name that comes later: does the build keep names?");
    let first = module.reached(&later);
    ensure!(first.contains(&fetch), "nothing of the first part calls {FETCH}");
    let split = part::Split::of(&module, &first, fetch);
    Ok([split.first()?, split.rest()?])
}

#[cfg(test)]
mod tests;
