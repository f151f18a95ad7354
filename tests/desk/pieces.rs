//! How much is drawn when a screen opens, with a large book: each piece takes its time on a phone.

use crate::bar::Tab;
use crate::faulty::Faulty;
use meniscus::app::draw::{Canvas, Node};
use meniscus::store::Keeper;

/// A book of 220 specs, twenty of them on the list to buy, with prices and preps.
fn book() -> Faulty {
    let keeper = Faulty::default();
    let put = |key: String, text: String| keeper.set(&key, &text).expect("kept");
    for at in 0..40 {
        let sour = if at == 0 { "lemon juice".to_owned() } else { format!("house cordial {} x", at - 1) };
        let own = format!(
            r#"{{"v":1,"data":{{"name":"house cordial {at} x","like":"cordial","parts":"200 g honey\n200 g water\n20 ml {sour}","gives":"350 ml","made":1764072000000}}}}"#
        );
        put(format!("ingredient/own{at}"), own);
    }
    let paid = ["London dry gin", "rye whiskey", "pear brandy", "dry vermouth", "lemon juice", "rich syrup", "honey"];
    let prices = paid.map(|of| format!("{of}, 700 ml, 20.00, 2026-01-01")).join("\\n");
    put("tool/shelf".into(), format!(r#"{{"v":1,"data":{{"now":{{"prices":"{prices}"}}}}}}"#));
    for at in 0..220 {
        let card = format!(
            r#"{{"v":1,"data":{{"name":"amber list {at}","made":1764072000000,"forms":[{{"method":"stirred","glass":"tumbler","holds":"300 ml","lines":"45 ml pear brandy\n20 ml dry vermouth\n15 ml house cordial {} x\n10 ml rich syrup"}}]}}}}"#,
            at % 40
        );
        put(format!("spec/list{at}"), card);
    }
    let of: Vec<String> = (0..20).map(|at| format!("list{at}/0=30")).collect();
    put("tool/buy".into(), format!(r#"{{"v":1,"data":{{"now":{{"of":"{}"}}}}}}"#, of.join("\\n")));
    keeper
}

fn count(node: &Node) -> usize {
    match node {
        Node::Words(_) => 1,
        Node::Element(element) => 1 + element.children.iter().map(count).sum::<usize>(),
    }
}

/// Each takes its time on a phone: what a screen opens with is kept few. Of all that is drawn, lists to choose from and
/// rows of a list have most.
#[test]
fn little_is_drawn_when_a_screen_opens() {
    let keeper = book();
    let screens =
        [("specs/cost?from_spec=list7%2F0", 240), ("batch/buy", 440), ("service/aim?from_spec=list7%2F0", 275)];
    for (at, most) in screens {
        let canvas = Canvas::of(Tab::open(&keeper, at).view());
        let all: usize = canvas.page().iter().map(count).sum();
        assert!(all <= most, "{at}: {all} pieces");
    }
}
