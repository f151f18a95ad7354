//! `cargo xtask …`

use anyhow::{Result, bail};
use xtask::{build, check, deny, mutants, precache, server, size, stand_in, weigh};

const USAGE: &str = "\
cargo xtask serve      build the app and serve it on this machine
cargo xtask check      everything that must hold before a change is kept
cargo xtask sweep      a host that goes wrong in every way with every file: minutes
cargo xtask engines    what is in dist/, tried in Firefox and in WebKit
cargo xtask mutants    small errors put into the floors of numbers: does a check notice? Hours
cargo xtask audit      known faults of the crates we use; needs the network
cargo xtask build      build the app into dist/, ready for any static host
cargo xtask measure    sizes, and timings in the browser
cargo xtask weigh      where the bytes of the wasm are: by crate, module and function
cargo xtask pictures   draw the icons and screenshots anew";

fn main() -> Result<()> {
    if stand_in::is_called() {
        return stand_in::pass_on();
    }
    let args: Vec<String> = std::env::args().skip(1).collect();
    match args.iter().map(String::as_str).collect::<Vec<_>>().as_slice() {
        ["serve"] => {
            build::build()?;
            server::serve_until_stopped()
        }
        ["check"] => check::check(),
        ["sweep"] => check::sweep(),
        ["engines"] => check::in_all_engines(),
        ["mutants", args @ ..] => mutants::mutants(args),
        ["audit"] => deny::audit(),
        ["build"] => {
            build::build()?;
            println!("\ndist/ is ready: copy it to any static host.");
            Ok(())
        }
        ["measure"] => {
            build::build()?;
            size::report()?;
            check::measure_in_browser()
        }
        ["weigh"] => weigh::weigh(),
        ["pictures"] => check::pictures(),
        // Called by Trunk when everything else is in place; see Trunk.toml.
        ["precache"] => precache::write_from_hook(),
        _ => bail!("what to do?\n\n{USAGE}"),
    }
}
