//! schema.org Recipes go out and come back, and hold nothing that a general reader of JSON-LD would drop.

use meniscus::book::{Card, Way, demo_cards};
use meniscus::store::backup;
use meniscus::store::recipe::{read, recipes};

/// Terms of schema.org that we write, by the type they stand in: as the class Recipe, and what it takes over from HowTo,
/// CreativeWork and Thing, stands in the crate schema_org_types on docs.rs (read, not built).
const TERMS: [(&str, &[&str]); 4] = [
    (
        "Recipe",
        &[
            "name",
            "alternateName",
            "keywords",
            "description",
            "recipeCategory",
            "recipeIngredient",
            "recipeInstructions",
            "recipeYield",
            "cookingMethod",
            "supply",
            "tool",
        ],
    ),
    ("HowToStep", &["text"]),
    ("HowToSupply", &["name", "description"]),
    ("HowToTool", &["name", "description"]),
];

#[test]
fn a_card_comes_back_with_its_forms() {
    let served = |notes: &str| Card { notes: notes.into(), ..demo_cards(0).remove(0).1 };
    let notes = ["Serves 4", "Warm the glass.\nServes 12", "Yield: two jugs", "Serves plenty\nYield: 4"];
    // Of two forms each says for itself how many it makes.
    let mut batched = demo_cards(0).remove(0).1;
    "12".clone_into(&mut batched.ways[1].makes);
    assert!(recipes(&batched).contains(r#""recipeYield": "12""#), "{}", recipes(&batched));
    for card in demo_cards(0).into_iter().map(|(_, card)| card).chain(notes.map(served)).chain([batched]) {
        let import = read(&recipes(&card)).expect("our own");
        assert_eq!(import.cards.len(), 1);
        assert_eq!(Card { made: 0, ..import.cards[0].1.clone() }, card);
        // The import of backups takes it too.
        assert_eq!(backup::read(&recipes(&card)).expect("our own"), import);
    }
}

#[test]
fn what_a_recipe_gives_comes_along_and_is_said_back() {
    for (given, makes, notes) in [
        (r#""4""#, "4", "Dry."),
        ("4", "4", "Dry."),
        (r#""4 cups""#, "", "Dry.\nYield: 4 cups"),
        (r#"["6","6 glasses"]"#, "6", "Dry."),
        (r#"{"@type":"QuantitativeValue","value":8}"#, "8", "Dry."),
        (r#""""#, "", "Dry."),
        ("null", "", "Dry."),
    ] {
        let text = format!(r#"{{"@type":"Recipe","name":"Sour","description":"Dry.","recipeYield":{given}}}"#);
        let card = read(&text).expect("a recipe").cards.remove(0).1;
        assert_eq!((card.ways[0].makes.as_str(), card.notes.as_str()), (makes, notes), "{given}");
        let back = recipes(&card);
        assert_eq!(back.contains("recipeYield"), !makes.is_empty() || notes.contains('\n'), "{back}");
        assert_eq!(read(&back).expect("our own").cards[0].1, card, "{given}");
    }
}

#[test]
fn recipes_of_others_are_read() {
    let text = r#"[{"@context":"https://schema.org","@type":["Recipe","NewsArticle"],"name":"Plain sour",
        "recipeIngredient":["2 oz gin","3/4 oz lemon juice"],
        "recipeInstructions":[{"@type":"HowToSection","itemListElement":[{"@type":"HowToStep","text":"Shake"},{"@type":"HowToStep","name":"Strain"}]}],
        "keywords":["sour","gin"]},{"@type":"Person","name":"Nobody"}]"#;
    let import = backup::read(text).expect("readable");
    let card = &import.cards[0].1;
    assert_eq!((card.name.as_str(), card.tags.as_str()), ("Plain sour", "sour, gin"));
    assert_eq!(
        card.ways,
        [Way { lines: "2 oz gin\n3/4 oz lemon juice".into(), steps: "Shake\nStrain".into(), ..Way::default() }]
    );
    assert_eq!(backup::read(text).expect("readable").cards[0].0, import.cards[0].0, "the same id twice");
    assert!(backup::read(r#"{"@type":"Person","name":"Nobody"}"#).is_err());
    assert!(backup::read(r#"{"@type":"Recipe","name":5,"recipeIngredient":{"a":[1,null,{}]}}"#).is_ok());
}

/// Expanded by the json-ld library, every value is still there under a term of schema.org.
#[tokio::test]
async fn a_general_reader_of_json_ld_keeps_all_of_it() {
    use json_ld::{
        JsonLdProcessor, NoLoader, RemoteDocument,
        syntax::{Parse, Value as Node},
    };
    let mut card = demo_cards(0).remove(0).1;
    card.notes = "Serves 4".into();
    let text = recipes(&card);
    let (value, _) = Node::parse_str(&text).expect("json");
    let document = RemoteDocument::new(None::<iref::IriBuf>, None, value);
    let expanded = document.expand(&NoLoader).await.expect("expands without asking anybody");
    let mut nodes = 0;
    for object in expanded.objects() {
        let node = object.as_node().expect("a node");
        assert!(node.types().iter().any(|kind| kind.as_str() == "https://schema.org/Recipe"));
        for (property, values) in node.properties() {
            let term = property.as_str().strip_prefix("https://schema.org/").expect("a term of schema.org");
            assert!(TERMS[0].1.contains(&term), "{term}");
            assert!(!values.is_empty());
        }
        nodes += 1;
    }
    assert_eq!(nodes, card.ways.len());
}
