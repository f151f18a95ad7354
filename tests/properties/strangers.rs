//! Backups as strangers may write them: refused in words, or taken entry by entry.

use meniscus::store::ImportProblem;
use meniscus::store::backup::read;

#[test]
fn hostile_files_are_refused_in_words() {
    let of = |data: &str| format!(r#"{{"kind":"meniscus backup","version":1,"at":1,"specs":[{data}]}}"#);
    let words = |text: &str| read(text).expect_err("hostile").to_string();
    assert_eq!(read("  "), Err(ImportProblem::Empty));
    assert_eq!(read("{}"), Err(ImportProblem::OtherKind));
    assert!(read(r#"{"@type":"Recipe","name":"Lamp","version":"1.0"}"#).is_ok(), "a recipe has versions of its own");
    assert_eq!(read(r#"{"kind":"shopping list","version":1,"at":1}"#), Err(ImportProblem::OtherKind));
    assert_eq!(read(r#"{"kind":"meniscus backup","version":7,"at":1}"#), Err(ImportProblem::Newer(7)));
    assert_eq!(read(&"9".repeat(8_000_001)), Err(ImportProblem::TooLarge));
    assert_eq!(words("{\n\"kind\":"), "It can't be read: line 2, in “kind”: it breaks off there. Nothing was changed.");
    let out_of_place = words("{\n\n\"kind\": \"x\" 5}");
    assert_eq!(
        out_of_place,
        "It can't be read: line 3, in “kind”: something is missing or out of place. Nothing was changed."
    );
    let deep = format!("{}{}", "[".repeat(100_000), "]".repeat(100_000));
    assert!(words(&deep).starts_with("It can't be read"), "depth is limited");
    assert!(words(&of(&format!(r#"{{"id":"a","data":{deep}}}"#))).starts_with("It can't be read"));
    let many = vec!["{}"; 20_001].join(",");
    assert_eq!(read(&of(&many)), Err(ImportProblem::TooLarge));
}

/// Each entry that is wrong is named, with what is wrong in words, and the others are taken.
#[test]
fn one_bad_entry_does_not_refuse_the_file() {
    let good = r#"{"id":"good","data":{"name":"Good"}}"#;
    let long = format!(r#"{{"id":"a","data":{{"name":"Lamp","forms":[{{"steps":"{}"}}]}}}}"#, "x".repeat(200_001));
    for (bad, said) in [
        (r#"{"id":"a","data":{"name":5}}"#, "Spec 2, “”: in “name” a text was expected."),
        (r#"{"id":"a","data":{"name":null}}"#, "Spec 2, “”: in “name” a text was expected."),
        (r#"{"id":"a","data":{"name":"Lamp","forms":{}}}"#, "Spec 2, “Lamp”: in “forms” a list was expected."),
        (
            r#"{"id":"a","data":{"name":"Lamp","forms":[5]}}"#,
            "Spec 2, “Lamp”: in “forms” a group of named values was expected.",
        ),
        (r#"{"id":"a","data":{"name":"Lamp","made":-1}}"#, "Spec 2, “Lamp”: in “made” a whole number was expected."),
        (r#"{"id":"a","data":{"name":"Lamp","nmae":"x"}}"#, "Spec 2, “Lamp”: “nmae” is not known here."),
        (r#"{"id":"a","data":{"name":"Lamp"},"x":1}"#, "Spec 2, “Lamp”: “x” is not known here."),
        (r#"{"id":"a"}"#, "Spec 2, “”: its “data” is missing."),
        ("7", "Spec 2, “”: a group of named values was expected."),
        (&long, "Spec 2, “Lamp”: its steps can't be used."),
    ] {
        let text = format!(r#"{{"kind":"meniscus backup","version":3,"at":1,"specs":[{good},{bad},{good}]}}"#);
        let import = read(&text).expect("the rest");
        assert_eq!(import.refused, [said], "{bad}");
        assert_eq!(import.cards.len(), 2, "{bad}");
    }
    let text = r#"{"kind":"meniscus backup","version":3,"at":1,"specs":5,"tools":[],"shelves":{},
        "settings":{"dash":5},"aside":[{"key":"x"}],"runs":[{"id":"r","data":{"parts":[{"key":5000000000}]}}],
        "ingredients":[{"id":"o","data":{"name":"quince","like":"liqueur"}}]}"#;
    let import = read(text).expect("the rest");
    assert_eq!(
        import.refused,
        [
            "Set aside, text 1: its “text” is missing.",
            "Run sheet 1, “”: in “key” a smaller number was expected.",
            "Settings: in “dash” a text was expected.",
            "“shelves” is not known here.",
            "“specs”: a list was expected.",
            "“tools”: a group of named values was expected."
        ]
    );
    assert_eq!(import.own[0].1.name, "quince");
}

#[test]
fn ids_that_cannot_be_kept_are_replaced_and_it_is_said() {
    let read_ids = |ids: &[&str]| {
        let specs: Vec<String> =
            (0..).zip(ids).map(|(at, id)| format!(r#"{{"id":"{id}","data":{{"made":{at}}}}}"#)).collect();
        let text = format!(r#"{{"kind":"meniscus backup","version":3,"at":1,"specs":[{}]}}"#, specs.join(","));
        let import = read(&text).expect("readable");
        assert_eq!(read(&text).as_ref(), Ok(&import), "the same file brings the same");
        assert_eq!(import.refused, Vec::<String>::new());
        (import.cards.into_iter().map(|(id, _)| id).collect::<Vec<_>>(), import.remarks)
    };
    let (long, rival) = ("x".repeat(201), format!("a{}", "~b".repeat(120)));
    let odd = ["", "a/b", "../acts", "a b", "~", "~a", "я", &long];
    for id in odd {
        let (ids, remarks) = read_ids(&[id]);
        assert!(ids[0].starts_with("i-") && ids[0].len() == 10, "{id}: {ids:?}");
        assert_eq!(remarks, ["Spec 1, “”: its id can't be kept, so it gets another."]);
    }
    // Versions of a record stay that; what is there twice is told apart.
    let (ids, remarks) = read_ids(&["a", "a~b", "a~", &rival, "a~b", "a", "A"]);
    assert_eq!(remarks.len(), 4, "{ids:?}");
    assert_eq!([ids[0].as_str(), &ids[1], &ids[6]], ["a", "a~b", "A"]);
    assert!(ids[2..5].iter().all(|id| id.starts_with("a~") && id.len() == 10), "{ids:?}");
    assert!(ids[5].starts_with("i-"), "{ids:?}");
    let same = r#"{"id":"s","data":{"name":"Lamp"}}"#;
    let text = format!(r#"{{"kind":"meniscus backup","version":3,"at":1,"specs":[{same},{same},{same}]}}"#);
    let ids: Vec<String> = read(&text).expect("readable").cards.into_iter().map(|(id, _)| id).collect();
    assert!(ids[0] == "s" && ids[1] != ids[2] && ids[2].ends_with("-2"), "{ids:?}");
}
