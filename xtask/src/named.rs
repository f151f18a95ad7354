//! Names the scripts of a build after their contents, so that a page never meets a script of another build.

use std::fs;
use std::path::Path;

use anyhow::{Context, Result, ensure};
use sha2::{Digest, Sha256};

use crate::inline::PAGE;

/// The scripts of public/, and the files that name each. Whatever is named in a script comes before it: the new name
/// changes its contents. (Trunk has named the wasm and its script; the sheets and the first scripts are in the page.)
const SCRIPTS: [(&str, &[&str]); 3] = [("mirror.js", &[PAGE, "boot.js"]), ("repair.js", &[PAGE]), ("boot.js", &[PAGE])];

/// Renames the scripts in `folder`, and writes their new names where they are named.
///
/// # Errors
/// When a file cannot be read or written, or does not name a script that it should.
pub fn after_contents(folder: &Path) -> Result<()> {
    for (script, namers) in SCRIPTS {
        let path = folder.join(script);
        let contents = fs::read(&path).with_context(|| format!("{script} is missing"))?;
        let hash: String = Sha256::digest(&contents).iter().take(8).map(|byte| format!("{byte:02x}")).collect();
        let stem = script.trim_end_matches(".js");
        let name = format!("{stem}-{hash}.js");
        fs::rename(&path, folder.join(&name))?;
        for namer in namers {
            let text = fs::read_to_string(folder.join(namer)).with_context(|| format!("{namer} is missing"))?;
            // With the mark before it: a name can be the end of another.
            let renamed = ["\"", "\"./"].into_iter().fold(text.clone(), |text, mark| {
                text.replace(&format!("{mark}{script}\""), &format!("{mark}{name}\""))
            });
            ensure!(renamed != text, "{namer} does not name {script}");
            fs::write(folder.join(namer), renamed)?;
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::precache::files;

    fn build(mirror: &str) -> tempfile::TempDir {
        let folder = tempfile::tempdir().expect("a folder");
        let page = r#"<link href="mirror.js"><script src="repair.js"></script><script src="boot.js"></script>"#;
        let written = [
            (PAGE, page),
            ("repair.js", "repair()"),
            ("mirror.js", mirror),
            ("boot.js", r#"import{a}from"./mirror.js";"#),
        ];
        for (name, contents) in written {
            fs::write(folder.path().join(name), contents).expect("written");
        }
        after_contents(folder.path()).expect("named");
        folder
    }

    #[test]
    fn a_script_is_named_after_what_is_in_it_and_in_what_it_names() {
        let (one, other) = (build("one()"), build("other()"));
        let (before, after) = (files(one.path()).expect("files"), files(other.path()).expect("files"));
        let same: Vec<_> = before.iter().filter(|name| after.contains(name)).map(|name| &name[..5]).collect();
        assert_eq!(same, ["index", "repai"]);
        let page = fs::read_to_string(one.path().join(PAGE)).expect("a page");
        for name in before.iter().filter(|name| name.ends_with(".js")) {
            assert!(page.contains(&format!("\"{name}\"")), "{page}");
        }
        assert_eq!(page.matches(".js").count(), 3);
    }

    #[test]
    fn a_script_that_nobody_names_is_an_error() {
        let folder = build("one()");
        fs::write(folder.path().join("mirror.js"), "one()").expect("written");
        let problem = after_contents(folder.path()).expect_err("not named").to_string();
        assert_eq!(problem, "index.html does not name mirror.js");
    }
}
