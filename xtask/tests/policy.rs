//! The policy stands twice: in the page, for every host, and in the headers, for hosts that read such a file.

use std::collections::BTreeSet;

fn rules(text: &str, before: &str, after: char) -> BTreeSet<String> {
    let start = text.find(before).expect("a policy") + before.len();
    let policy = text[start..].split(after).next().expect("a policy");
    policy.split(';').map(|rule| rule.trim().to_owned()).collect()
}

#[test]
fn page_and_headers_have_the_same_policy() {
    let read = |file: &str| std::fs::read_to_string(xtask::root().join(file)).expect("readable");
    let page = rules(&read("index.html"), "http-equiv=\"Content-Security-Policy\" content=\"", '"');
    let headers = rules(&read("public/_headers"), "Content-Security-Policy:", '\n');
    // A page cannot say this one of itself.
    let only_headers: Vec<&String> = headers.difference(&page).collect();
    assert_eq!(only_headers, ["frame-ancestors 'none'"]);
    assert!(page.is_subset(&headers), "{page:?} {headers:?}");
    for rule in ["default-src 'none'", "require-trusted-types-for 'script'", "trusted-types meniscus"] {
        assert!(page.contains(rule), "{rule}");
    }
}
