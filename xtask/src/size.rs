//! What a phone has to fetch, against a budget.

use std::io::Write;

use anyhow::{Result, bail};

use crate::{dist, inline, licences, precache, split, tools};

/// Most that everything needed to run may weigh, compressed, in bytes.
pub const BUDGET: usize = 529_000;
/// Most that the first screen needs of it, before it answers: all but the rest of the wasm, and the worker.
pub const FIRST_ANSWER_BUDGET: usize = 264_000;
/// What the standard library weighs more as it comes than compiled with the app, where its source cannot be had.
const STD_AS_IT_COMES: usize = 20_000;
/// Most that the first paint may weigh, compressed: the page, with its sheet, its first scripts and its first screen. So
/// much comes with the first answer of a host: ten packets (RFC 6928).
pub const FIRST_PAINT_BUDGET: usize = 14_000;

/// Compresses with brotli at a quality of 0 to 11.
///
/// # Errors
/// Never in practice: it writes to memory.
pub fn brotli(data: &[u8], quality: u32) -> Result<Vec<u8>> {
    let mut packed = Vec::new();
    let mut writer = brotli::CompressorWriter::new(&mut packed, 4096, quality, 22);
    writer.write_all(data)?;
    drop(writer);
    Ok(packed)
}

/// Prints the size of each file of dist/ that the app runs on, and fails over the budget.
///
/// # Errors
/// When there is no build or it is over a budget.
pub fn report() -> Result<()> {
    let mut names = precache::files(&dist())?;
    names.push(precache::WORKER.to_owned());
    // Icons are for the home screen, licences for those who ask: the app starts without them.
    names.retain(|name| !name.ends_with(".png") && name != licences::PAGE);
    println!("\n{:>9} {:>9}  needed to run", "raw", "brotli");
    let (mut raw, mut packed, mut paint, mut answer) = (0, 0, 0, 0);
    for name in names {
        let data = std::fs::read(dist().join(&name))?;
        let compressed = brotli(&data, 11)?.len();
        println!("{:>9} {:>9}  {name}", data.len(), compressed);
        raw += data.len();
        packed += compressed;
        if name == inline::PAGE {
            paint = compressed;
        }
        if !name.ends_with(split::REST) && name != precache::WORKER {
            answer += compressed;
        }
    }
    let more = if tools::has_std_source()? { 0 } else { STD_AS_IT_COMES };
    let sums = [
        (packed, BUDGET + more, "in all"),
        (answer, FIRST_ANSWER_BUDGET + more, "of which the first answer"),
        (paint, FIRST_PAINT_BUDGET, "of which the first paint"),
    ];
    println!("{raw:>9}");
    for (sum, budget, what) in sums {
        println!("{:>9} {sum:>9}  {what}, budget {budget}", "");
    }
    let licences = brotli(&std::fs::read(dist().join(licences::PAGE))?, 11)?.len();
    println!("{:>9} {licences:>9}  licences, kept offline, not needed to run", "");
    if sums.iter().any(|(sum, budget, _)| sum > budget) {
        bail!("over the size budget");
    }
    Ok(())
}
