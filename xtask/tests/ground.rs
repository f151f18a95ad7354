//! What a phone paints round the page is the ground of the look: in the page, in its first script, and where it is installed.

fn read(file: &str) -> String {
    std::fs::read_to_string(xtask::root().join(file)).expect("readable")
}

/// What stands behind a name, up to a sign.
fn after(text: &str, name: &str, end: char) -> String {
    let (_, rest) = text.split_once(name).unwrap_or_else(|| panic!("no {name}"));
    rest.split(end).next().expect("a value").trim().to_owned()
}

#[test]
fn the_bar_of_a_phone_has_the_ground_of_each_look() {
    let tokens = read("style/tokens.css");
    let slate = after(&tokens, "--ground:", ';');
    let paper = after(tokens.split_once("[data-theme=\"paper\"]").expect("two looks").1, "--ground:", ';');
    assert_ne!(slate, paper);
    let (page, script, manifest) = (read("index.html"), read("public/theme.js"), read("public/manifest.webmanifest"));
    assert_eq!(after(&page, "media=\"(prefers-color-scheme: light)\" content=\"", '"'), paper);
    assert_eq!(after(&page, "name=\"theme-color\" content=\"", '"'), slate);
    assert_eq!([after(&script, "slate: \"", '"'), after(&script, "paper: \"", '"')], [slate.clone(), paper]);
    for name in ["\"background_color\": \"", "\"theme_color\": \""] {
        assert_eq!(after(&manifest, name, '"'), slate);
    }
}
