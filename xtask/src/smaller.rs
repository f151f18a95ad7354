//! Makes a build smaller without changing what it does.

use std::fs;
use std::path::Path;

use anyhow::{Result, anyhow};

/// Takes comments and spare space out of a script or a sheet, in place.
///
/// # Errors
/// When it cannot be read or understood.
pub fn minify(path: &Path) -> Result<()> {
    let source = fs::read_to_string(path)?;
    let smaller = match path.extension().and_then(|ending| ending.to_str()) {
        Some("js") => minifier::js::minify(&source).map(|js| js.to_string()),
        _ => minifier::css::minify(&source).map(|css| css.to_string()),
    };
    fs::write(path, smaller.map_err(|problem| anyhow!("{}: {problem}", path.display()))?)?;
    Ok(())
}

const DIGITS: usize = 16;

/// Numbers the names that script and wasm call each other by. wasm-bindgen ends each with sixteen hex digits
/// of a hash, which no compressor can shorten; a count in the same sixteen places it can.
///
/// # Errors
/// When a file cannot be read or written.
pub fn number_imports(script: &Path, wasm: &Path) -> Result<()> {
    let (mut glue, mut binary) = (fs::read(script)?, fs::read(wasm)?);
    let mut count = 0;
    for hash in hashes(&glue) {
        let number = format!("{count:0DIGITS$x}");
        // Both sides or neither: a name that only one of them has is not ours to change.
        if replace(&mut binary.clone(), &hash, number.as_bytes()) > 0 {
            replace(&mut binary, &hash, number.as_bytes());
            replace(&mut glue, &hash, number.as_bytes());
            count += 1;
        }
    }
    fs::write(script, glue)?;
    fs::write(wasm, binary)?;
    Ok(())
}

/// The hashes at the ends of names that begin with `__wbg_` or hold `__h`.
fn hashes(glue: &[u8]) -> Vec<Vec<u8>> {
    let is_name = |byte: &u8| byte.is_ascii_alphanumeric() || *byte == b'_';
    let mut found: Vec<Vec<u8>> = Vec::new();
    for name in glue.split(|byte| !is_name(byte)) {
        let starts = name.starts_with(b"__wbg_").then(|| name.len().saturating_sub(DIGITS));
        let marked = name.windows(3).rposition(|part| part == b"__h").map(|at| at + 3);
        for at in starts.into_iter().chain(marked) {
            let hash = name.get(at..at + DIGITS).unwrap_or_default();
            let is_hash = hash.len() == DIGITS && hash.iter().all(|byte| matches!(byte, b'0'..=b'9' | b'a'..=b'f'));
            if is_hash && !found.iter().any(|known| known == hash) {
                found.push(hash.to_vec());
            }
        }
    }
    found
}

/// Writes `new` over every `old` of the same length, and says how many there were.
fn replace(bytes: &mut [u8], old: &[u8], new: &[u8]) -> usize {
    let mut count = 0;
    let mut at = 0;
    while at + old.len() <= bytes.len() {
        if &bytes[at..at + old.len()] == old {
            bytes[at..at + old.len()].copy_from_slice(new);
            count += 1;
            at += old.len();
        } else {
            at += 1;
        }
    }
    count
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_keep_their_length_and_still_meet() {
        let folder = tempfile::tempdir().expect("a folder");
        let (script, wasm) = (folder.path().join("a.js"), folder.path().join("a.wasm"));
        let names = ["__wbg_call_0123456789abcdef", "wasm_bindgen__closures__invoke__h89abcdef01234567_14"];
        let only_here = "__wbg_alone_ffffffffffffffff";
        let glue = format!("{}:1,{}(2);'./app-fedcba9876543210.wasm';{only_here}", names[0], names[1]);
        fs::write(&script, &glue).expect("written");
        fs::write(&wasm, format!("\0asm{}\u{1}{}", names[0], names[1])).expect("written");
        number_imports(&script, &wasm).expect("numbered");
        let (after, binary) = (fs::read_to_string(&script).expect("text"), fs::read_to_string(&wasm).expect("text"));
        assert_eq!(after.len(), glue.len());
        for name in ["__wbg_call_0000000000000000", "wasm_bindgen__closures__invoke__h0000000000000001_14"] {
            assert!(after.contains(name) && binary.contains(name), "{after} {binary}");
        }
        assert!(after.contains("fedcba9876543210") && after.contains(only_here));
    }
}
