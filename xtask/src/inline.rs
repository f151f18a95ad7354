//! Writes the sheets and the first scripts into the page, so that one answer of a host paints it; and has the policy name
//! each by its SHA-256, so that nothing else can stand there.

use std::fs;
use std::path::Path;

use anyhow::{Context, Result, ensure};
use base64::Engine;
use base64::prelude::BASE64_STANDARD;
use sha2::{Digest, Sha256};

/// The start page.
pub const PAGE: &str = "index.html";
/// The policy once more, for hosts that read such a file.
const HEADERS: &str = "_headers";
/// What marks a script of the page that goes into it.
const MARK: &str = " data-inline>";

/// What stands before the policy, and the sign behind it: in the page, and in the headers.
const IN_PAGE: (&str, char) = ("http-equiv=\"Content-Security-Policy\" content=\"", '"');
const IN_HEADERS: (&str, char) = ("Content-Security-Policy: ", '\n');

/// Writes every sheet that the page links to into it, as one, and the scripts that are marked; the files go.
///
/// # Errors
/// When a file cannot be read or written, or holds what would end it within the page.
pub fn write_into_page(folder: &Path) -> Result<()> {
    let path = folder.join(PAGE);
    let mut page = fs::read_to_string(&path).with_context(|| format!("{PAGE} is missing"))?;
    let links = tags(&page, "<link ", |tag| tag.contains("rel=\"stylesheet\""));
    let mut sheet = String::new();
    for link in &links {
        sheet.push_str(&taken(folder, link, "href")?);
    }
    ensure!(!sheet.contains("</"), "a sheet would end within the page");
    for (turn, link) in links.iter().enumerate() {
        page = page.replacen(link, &if turn == 0 { format!("<style>{sheet}</style>") } else { String::new() }, 1);
    }
    for tag in tags(&page, "<script ", |tag| tag.ends_with(MARK)) {
        let code = taken(folder, &tag, "src")?;
        ensure!(!code.contains("</") && !code.contains("<!--"), "{tag} would end within the page");
        page = page.replacen(&tag, &format!("<script>{code}"), 1);
    }
    let lines = page.lines().filter(|line| !line.trim().is_empty() && !line.starts_with("<!--"));
    page = lines.map(|line| format!("{line}\n")).collect();
    fs::write(path, page)?;
    Ok(())
}

/// The text of the file that a tag names, which goes.
fn taken(folder: &Path, tag: &str, attribute: &str) -> Result<String> {
    let (_, value) = tag.split_once(&format!(" {attribute}=\"")).with_context(|| format!("{tag} names no file"))?;
    let name = value.split('"').next().unwrap_or_default().trim_start_matches("./");
    let text = fs::read_to_string(folder.join(name)).with_context(|| format!("{name} is missing"))?;
    fs::remove_file(folder.join(name))?;
    Ok(text)
}

/// The tags of the page that begin so and are meant. None of its attributes holds the sign that ends a tag.
fn tags(page: &str, start: &str, is_meant: impl Fn(&str) -> bool) -> Vec<String> {
    let from = page.match_indices(start).map(|(at, _)| &page[at..]);
    let found = from.filter_map(|rest| rest.split_inclusive('>').next());
    found.filter(|tag| is_meant(tag)).map(str::to_owned).collect()
}

/// What stands in the page itself.
struct Within {
    scripts: Vec<String>,
    sheets: Vec<String>,
}

impl Within {
    fn of(page: &str) -> Within {
        let sums = |tag: &str, end: &str| {
            let texts = page.split(tag).skip(1).filter_map(|rest| rest.split(end).next());
            texts.map(sum).collect()
        };
        Within { scripts: sums("<script>", "</script>"), sheets: sums("<style>", "</style>") }
    }
}

/// How a policy names a text that may stand in a page.
fn sum(text: &str) -> String {
    format!("'sha256-{}'", BASE64_STANDARD.encode(Sha256::digest(text)))
}

/// Has the policies of the build in `folder` name what stands in its page, and nothing that stood there before.
///
/// # Errors
/// When the page cannot be read or written, or has something in it and no policy.
pub fn seal(folder: &Path) -> Result<()> {
    let path = folder.join(PAGE);
    let page = fs::read_to_string(&path).with_context(|| format!("{PAGE} is missing"))?;
    let within = Within::of(&page);
    if within.scripts.is_empty() && within.sheets.is_empty() {
        return Ok(());
    }
    let sealed_page = sealed(&page, IN_PAGE, &within).with_context(|| format!("{PAGE} has no policy"))?;
    fs::write(path, sealed_page)?;
    let headers = folder.join(HEADERS);
    if let Ok(text) = fs::read_to_string(&headers) {
        fs::write(&headers, sealed(&text, IN_HEADERS, &within).with_context(|| format!("{HEADERS} has no policy"))?)?;
    }
    Ok(())
}

/// The text with its policy written anew. No sheet comes from a file any more.
fn sealed(text: &str, (before, after): (&str, char), within: &Within) -> Option<String> {
    let (head, rest) = text.split_once(before)?;
    let (policy, tail) = rest.split_once(after)?;
    let rule = |rule: &str| {
        let is_script = rule.starts_with("script-src");
        let sums = match rule.split(' ').next() {
            Some("script-src") => &within.scripts,
            Some("style-src") => &within.sheets,
            _ => return rule.to_owned(),
        };
        let stays = |word: &&str| !word.starts_with("'sha256-") && (is_script || *word != "'self'");
        rule.split(' ').filter(stays).chain(sums.iter().map(String::as_str)).collect::<Vec<_>>().join(" ")
    };
    let policy: Vec<String> = policy.split("; ").map(rule).collect();
    Some(format!("{head}{before}{}{after}{tail}", policy.join("; ")))
}

#[cfg(test)]
mod tests;
