use super::*;
use crate::smaller;

const POLICY: &str = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self'";

/// A build whose page links to two sheets and runs one script from within and one from a file.
fn build(sheet: &str, script: &str) -> tempfile::TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    let page = format!(
        r#"<meta http-equiv="Content-Security-Policy" content="{POLICY}">
<script src="look.js" data-inline></script>
<link rel="stylesheet" href="./one-1.css"/>
<link rel="manifest" href="manifest.webmanifest">
<link rel="stylesheet" href="./two-2.css"/>
<!-- A remark. -->
<script type="module" src="boot.js"></script>
"#
    );
    let headers = format!("/*\n  Content-Security-Policy: {POLICY}; frame-ancestors 'none'\n  X: y\n");
    let files = [(PAGE, page.as_str()), (HEADERS, &headers), ("look.js", script)];
    for (name, text) in files.into_iter().chain([("one-1.css", "a{b:c}"), ("two-2.css", sheet), ("boot.js", "")]) {
        fs::write(folder.path().join(name), text).expect("written");
    }
    folder
}

/// How the policy must name what stands in this page.
fn sums(page: &str) -> Vec<String> {
    let Within { scripts, sheets } = Within::of(page);
    [scripts, sheets].concat()
}

fn read(folder: &tempfile::TempDir, name: &str) -> String {
    fs::read_to_string(folder.path().join(name)).expect("a file")
}

#[test]
fn sheets_become_one_and_marked_scripts_stand_in_the_page() {
    let folder = build("d{e:f}", "look()");
    write_into_page(folder.path()).expect("written");
    seal(folder.path()).expect("sealed");
    let policy = POLICY
        .replace("'wasm-unsafe-eval'", &format!("'wasm-unsafe-eval' {}", sum("look()")))
        .replace("style-src 'self'", &format!("style-src {}", sum("a{b:c}d{e:f}")));
    let expected = format!(
        r#"<meta http-equiv="Content-Security-Policy" content="{policy}">
<script>look()</script>
<style>a{{b:c}}d{{e:f}}</style>
<link rel="manifest" href="manifest.webmanifest">
<script type="module" src="boot.js"></script>
"#
    );
    assert_eq!(read(&folder, PAGE), expected);
    let headers = format!("/*\n  Content-Security-Policy: {policy}; frame-ancestors 'none'\n  X: y\n");
    assert_eq!(read(&folder, HEADERS), headers);
    let mut left = crate::precache::files(folder.path()).expect("files");
    left.retain(|name| name != PAGE);
    assert_eq!(left, ["boot.js"]);
}

/// What OpenSSL says: `printf 'doSomething();' | openssl dgst -sha256 -binary | base64`. That browsers take it so is tested
/// in one.
#[test]
fn a_text_is_named_as_browsers_name_it() {
    assert_eq!(sum("doSomething();"), "'sha256-RFWPLDbv2BY+rCkDzsE+0fr8ylGr2R2faWMhq4lfEQc='");
}

#[test]
fn a_changed_letter_is_another_seal_and_the_old_one_goes() {
    let folder = build("d{e:f}", "look()");
    write_into_page(folder.path()).expect("written");
    seal(folder.path()).expect("sealed");
    let before = read(&folder, PAGE);
    for sum in sums(&before) {
        assert!(before.contains(&sum) && read(&folder, HEADERS).contains(&sum), "{sum}");
    }
    let changed = before.replace("look()", "lock()");
    assert!(sums(&changed).iter().any(|sum| !changed.contains(sum)), "nobody would notice");
    fs::write(folder.path().join(PAGE), changed).expect("written");
    seal(folder.path()).expect("sealed anew");
    let after = read(&folder, PAGE);
    assert!(sums(&after).iter().all(|sum| after.contains(sum)));
    assert_eq!(after.matches("sha256-").count(), 2);
    assert_ne!(sums(&before), sums(&after));
}

#[test]
fn what_cannot_be_written_into_a_page_is_an_error() {
    for (sheet, script, said) in [
        ("d{content:'</style>'}", "", "a sheet would end"),
        ("", "a='</script>'", "would end within the page"),
        ("", "a='<!--'", "would end within the page"),
    ] {
        let problem = write_into_page(build(sheet, script).path()).expect_err("it would end").to_string();
        assert!(problem.contains(said), "{problem}");
    }
    let folder = build("", "look()");
    fs::write(folder.path().join(PAGE), "<script>look()</script>").expect("written");
    assert!(seal(folder.path()).expect_err("no policy").to_string().contains("no policy"));
}

/// A sheet may hold a drawing, which has no file of its own: it comes through as it was.
#[test]
fn a_drawing_in_a_sheet_keeps_its_letters() {
    let drawing = r#"url("data:image/svg+xml,%3Csvg xmlns='http://www.w3.org/2000/svg' width='8'%3E%3Cpath d='M4 0L1.5 4V0z'/%3E%3C/svg%3E")"#;
    let folder = build(&format!(".strip {{ mask: {drawing} 0 0 / 8px 52px repeat-y; }}"), "");
    smaller::minify(&folder.path().join("two-2.css")).expect("smaller");
    write_into_page(folder.path()).expect("written");
    assert!(read(&folder, PAGE).contains(drawing), "{}", read(&folder, PAGE));
}
