use std::collections::HashSet;
use std::sync::Arc;

use super::node::{Node, element, words};
use super::*;
use crate::desk::{Notice, Pad, PlaceLink, ToolLink, View};
use crate::quantity::Unit;
use crate::screen::pad::{Key, Keys, face, others, units};
use crate::screen::picture::{Filled, Picture};
use crate::screen::route::{Place, Route};
use crate::screen::{Act, Bench, Block, Button, Drawing, Placed, Row, Screen, Texts};
use crate::text::{Decimal, qr};
use crate::tool::screen;

fn view(route: Route, typed: &[(&str, &str)]) -> View {
    let texts: Texts = typed.iter().map(|(name, text)| ((*name).to_owned(), (*text).to_owned())).collect();
    let place = |place| PlaceLink { place, is_here: place == Place::Service, has_sheet: place == Place::Service };
    let tool = |route: Route| ToolLink {
        label: route.row().label,
        question: route.row().question,
        href: route.href(),
        is_here: route == Route::Measure,
    };
    View {
        title: route.row().label,
        places: vec![place(Place::Service), place(Place::Prep)],
        tools: vec![tool(Route::Measure), tool(Route::Scale)],
        asks: Place::Service.question(),
        screen: screen(route, &texts, &Bench::default()).into(),
        has_pad: true,
        bare_unit: "ml",
        ..View::default()
    }
}

fn nodes(view: View) -> Vec<Node> {
    Canvas::of(view).page()
}

fn page_with(block: Block) -> String {
    let screen = Screen { blocks: vec![block], ..Screen::default() };
    html(&nodes(View { screen: screen.into(), ..View::default() })[2..3])
}

fn holds(html: &str, part: &str) {
    assert!(html.contains(part), "{part}\nis not in\n{html}");
}

/// The first button that says this, wherever it stands.
fn tap_on(nodes: &[Node], label: &str) -> Option<Tap> {
    nodes.iter().find_map(|node| match node {
        Node::Words(_) => None,
        Node::Element(element) if element.tag == "button" && element.children == [words(label)] => element.tap.clone(),
        Node::Element(element) => tap_on(&element.children, label),
    })
}

#[test]
fn measure_as_it_opens() {
    let mut view = view(Route::Measure, &[("amount", "1½ oz")]);
    view.active = Some("amount");
    let parts = nodes(view);
    assert_eq!(
        html(&parts[..1]),
        "<header class=\"head\"><h1 id=\"head\" tabindex=\"-1\" class=\"\">Measure</h1>\
         <div class=\"words\" aria-live=\"polite\"><button type=\"button\" class=\"word\">Copy</button></div></header>"
    );
    let strip = html(&parts[1..2]);
    assert!(
        strip.starts_with(
            "<output aria-live=\"off\" class=\"strip\"><span class=\"said\"><span class=\"figure f52\"><b>44.4</b>\
             <small class=\"\"> ml</small></span>"
        ),
        "{strip}"
    );
    let page = html(&parts[2..3]);
    holds(
        &page,
        "<main id=\"page\"><div class=\"column\"><div class=\"field on\"><label for=\"amount\">Amount</label><input type=\"text\" \
         autocomplete=\"off\" autocapitalize=\"off\" spellcheck=\"false\" enterkeyhint=\"done\" maxlength=\"20000\" \
         id=\"amount\" inputmode=\"none\" value=\"1½ oz\"><span class=\"assumed\" aria-hidden=\"true\"></span></div>",
    );
    let places = html(&parts[parts.len() - 1..]);
    holds(&places, "<nav aria-label=\"Places\" class=\"places\"><button type=\"button\" class=\"place here\"");
    holds(
        &places,
        "<a class=\"tool\" href=\"#/service/scale\"><b>Scale</b><span>This spec for so many, or for what I have</span></a>",
    );
}

#[test]
fn a_bare_number_shows_the_unit_it_is_read_in() {
    holds(&html(&nodes(view(Route::Measure, &[("amount", "45")]))), "aria-hidden=\"true\">ml</span>");
    holds(&html(&nodes(view(Route::Measure, &[("amount", "45 ml")]))), "aria-hidden=\"true\"></span>");
    for (time, unit) in [("30", "s"), ("1:30", ""), ("45 s", ""), ("2 min", "")] {
        let page = html(&nodes(view(Route::Chill, &[("time", time)])));
        holds(&page, &format!("value=\"{time}\"><span class=\"assumed\" aria-hidden=\"true\">{unit}</span>"));
    }
}

#[test]
fn a_number_being_typed_shows_the_unit_it_has_taken() {
    let mut view = view(Route::Serves, &[("made", "1.1 l")]);
    view.as_typed = Some(("made", "1.1".into()));
    holds(&html(&nodes(view)), "value=\"1.1\"><span class=\"assumed\" aria-hidden=\"true\">l</span>");
}

#[test]
fn a_problem_stands_under_its_field_with_what_would_settle_it() {
    let parts = nodes(view(Route::Measure, &[("amount", "1,725 ml")]));
    let page = html(&parts);
    holds(&page, "<div class=\"field wrong\">");
    holds(&page, "aria-invalid=\"true\" aria-describedby=\"amount-problem\" value=\"1,725 ml\">");
    holds(&page, "</div><p class=\"problem\" id=\"amount-problem\"><span>");
    let fix = tap_on(&parts, "1.7250 ml").expect("a fix");
    assert_eq!(fix, Tap::Fix("amount", "1.7250 ml".into()));
}

#[test]
fn a_line_that_is_not_read_is_rewritten_as_it_was_typed() {
    let parts = nodes(view(Route::Balance, &[("spec", "2 oz gin\n1,725 ml mystery")]));
    let page = html(&parts);
    holds(&page, "<div class=\"lines\"><label for=\"spec\">");
    holds(&page, ">2 oz gin\n1,725 ml mystery</textarea>");
    holds(
        &page,
        "<li class=\"marked\" id=\"asked\" tabindex=\"-1\"><span class=\"name\">1,725 ml mystery</span><span class=\"detail\">",
    );
    // A tap on the strip leads there.
    holds(&html(&parts[1..2]), "aria-label=\"1 line not counted: go there\"");
    assert_eq!(tap_on(&parts[1..2], ""), Some(Tap::Act(Act::Look)));
    let settled = nodes(view(Route::Balance, &[("spec", "2 oz gin")]));
    assert_eq!(tap_on(&settled[1..2], ""), None);
    assert!(!html(&settled).contains("id=\"asked\""));
    let fix = tap_on(&parts, "1.7250 ml mystery").expect("a fix");
    assert_eq!(fix, Tap::Act(Act::Rewrite("1,725 ml mystery".into(), "1.7250 ml mystery".into())));
}

#[test]
fn chips_are_radio_buttons_and_lists_have_their_headings() {
    let page = html(&nodes(view(Route::Acid, &[])));
    holds(&page, "<fieldset class=\"chips\"><legend");
    holds(&page, "<label class=\"chip\"><input type=\"radio\" name=\"");
    holds(&page, "checked=\"\"><span>");
    let page = html(&nodes(view(Route::MilkWash, &[])));
    let list = page.contains("<option");
    assert!(!list || page.contains("selected=\"\""), "{page}");
}

#[test]
fn a_label_is_drawn_as_often_as_it_is_printed() {
    let line = Placed { words: "Lime & mint".into(), x: 2.5, y: 6.0, size: 4.0, is_heavy: true };
    let code = qr("meniscus").map(|code| (code, [30.0, 2.0, 20.0]));
    let drawing = Drawing {
        width: 50.0,
        height: 25.0,
        texts: vec![line],
        rule: Some([2.0, 15.0, 26.0]),
        code,
        paper: "tape",
        copies: 2,
        is_cut: false,
    };
    let page = page_with(Block::Label(Some(drawing)));
    let svg = "<svg class=\"label\" role=\"img\" aria-label=\"Label, as it is printed\" viewBox=\"0 0 50.00000 25.00000\">\
               <rect class=\"tape\" width=\"50.00000\" height=\"25.00000\"></rect>\
               <text x=\"2.50000\" y=\"6.00000\" font-size=\"4.00000\" font-weight=\"700\">Lime &amp; mint</text>\
               <path d=\"M2.00000 15.00000H26.00000v0.3H2.00000z\"></path><path d=\"";
    holds(&page, &format!("<section aria-label=\"Label\" class=\"labels tape\">{svg}"));
    assert_eq!(page.matches(svg).count(), 2);
    holds(&page, " transform=\"translate(30.00000 2.00000) scale(");
}

#[test]
fn what_is_typed_is_never_taken_for_html() {
    let page = html(&nodes(view(Route::Measure, &[("amount", "\"><b onclick=x>&amp;")])));
    holds(&page, "value=\"&quot;&gt;&lt;b onclick=x&gt;&amp;amp;\"");
}

#[test]
fn the_pad_has_the_keys_of_its_face_and_turns_back() {
    let shown = Pad {
        field: "amount",
        units: units(Keys::Pour),
        keys: face(Keys::Pour, Decimal::Point),
        is_turned: false,
        lit: Some(Key::Unit(Unit::Ounce)),
        unit: Some(Unit::Ounce),
        decimal: Decimal::Point,
    };
    let press = |pad: &Pad, label: &str| {
        let view = View { pad: Some(pad.clone()), ..View::default() };
        let pad = &nodes(view)[3..4];
        holds(
            &html(pad),
            "<section aria-label=\"Pad\" class=\"pad\"><div class=\"units\"><button type=\"button\" tabindex=\"-1\" class=\"key",
        );
        tap_on(pad, label)
    };
    assert_eq!(press(&shown, "Done"), Some(Tap::Act(Act::Activate(None))));
    assert_eq!(press(&shown, "Next"), Some(Tap::Act(Act::Next)));
    assert_eq!(press(&shown, "more"), Some(Tap::Act(Act::Turn)));
    let expected = Press { field: "amount", key: Key::Unit(Unit::Ounce), decimal: Decimal::Point, turns: false };
    assert_eq!(press(&shown, "oz"), Some(Tap::Press(expected)));
    let turned = Pad { keys: others(Keys::Pour), is_turned: true, ..shown };
    assert!(matches!(press(&turned, "tsp"), Some(Tap::Press(Press { turns: true, .. }))));
    assert!(matches!(press(&turned, "⌫"), Some(Tap::Press(Press { turns: false, .. }))));
}

#[test]
fn a_notice_has_its_buttons_and_stands_below_the_page() {
    let buttons = vec![Button::new("OK", Act::Dismiss)];
    let notice = Some(Notice { words: "Saved nowhere.".into(), buttons });
    let parts = nodes(View { notice, ..view(Route::Measure, &[]) });
    holds(
        &html(&parts),
        "</main><div class=\"bars\"><p class=\"bar\" role=\"alert\"><span>Saved nowhere.</span>\
         <button type=\"button\" class=\"word\">OK</button></p></div>",
    );
    assert_eq!(tap_on(&parts, "OK"), Some(Tap::Act(Act::Dismiss)));
}

#[test]
fn the_hint_on_installing_goes_for_good() {
    let hint = |view: View| {
        html(&nodes(View { screen: Screen { blocks: vec![Block::InstallHint], ..Screen::default() }.into(), ..view }))
    };
    assert!(!hint(View { is_installed: true, ..View::default() }).contains("hint"));
    assert!(!hint(View::default()).contains(">Install<"));
    holds(
        &hint(View { can_install: true, ..View::default() }),
        "<button type=\"button\" class=\"btn\">Install</button>",
    );
}

#[test]
fn a_row_has_its_drawing_before_its_name() {
    let row = |picture| Row { name: "Gin sour".into(), picture, ..Row::default() };
    let table = |picture| page_with(Block::Table("", vec![row(picture)]));
    let vessel = crate::craft::vessel::TUMBLER.holding(300.0);
    let one = Filled { level: vessel.height() / 2.0, ice: Vec::new(), vessel };
    let drawn = table(Some(Picture::Vessels { text: "tumbler, 50 % full".into(), vessels: vec![one] }));
    holds(&drawn, "<li class=\"pictured\"><span class=\"glass\"><svg role=\"img\"");
    holds(&drawn, "aria-label=\"tumbler, ");
    holds(&drawn, "</svg></span><span class=\"name\">Gin sour</span>");
    holds(&table(None), "<li><span class=\"name\">");
}

fn whose(view: View) -> Vec<Whose> {
    Canvas::of(view).columns().concat().iter().map(|part| part.whose).collect()
}

#[test]
fn no_block_is_taken_for_another_on_its_screen_or_any_other() {
    let all: Vec<Whose> = Route::ALL.iter().flat_map(|route| whose(view(*route, &[]))).collect();
    let mut seen = HashSet::new();
    assert_eq!(all.iter().find(|block| !seen.insert(**block)), None);
}

/// Leptos may take a block out and put it in again where it finds others before it that it did not, and what is typed
/// in there would lose its caret.
#[test]
fn what_is_typed_in_a_field_does_not_move_it() {
    for route in Route::ALL {
        let fields = |view: &View| {
            let name = |block: &Block| match block {
                Block::Field(field) => Some(field.name),
                _ => None,
            };
            view.screen.blocks.iter().map(name).collect::<Vec<_>>()
        };
        let before = fields(&view(*route, &[]));
        for (at, name) in before.iter().enumerate().filter_map(|(at, name)| Some((at, (*name)?))) {
            for text in ["", "60 ml", "1,725 ml", "1/2 oz; 30", "60 ml gin\n20 ml moon dust"] {
                let after = fields(&view(*route, &[(name, text)]));
                assert_eq!(after.get(at), Some(&Some(name)), "{route:?}, {name}: {text}");
            }
        }
    }
}

/// What answers stands beside what asks: on To buy its list, and what there is and is needed besides below that, whether
/// there is a list or not.
#[test]
fn what_answers_stands_beside_the_fields() {
    let columns = |route: Route, typed: &[(&str, &str)]| {
        Canvas::of(view(route, typed))
            .columns()
            .map(|parts| parts.iter().map(|part| html(&part.nodes)).collect::<String>())
    };
    for typed in ["1 l gin", ""] {
        let [asked, found] = columns(Route::Buy, &[("lines", typed), ("run", "gone")]);
        holds(&asked, "No longer in the book");
        assert!(!asked.contains("<ul class=\"pours") && !asked.contains("id=\"have\""), "{asked}");
        assert_eq!(found.starts_with("<h2>Bottles</h2><ul"), !typed.is_empty(), "{found}");
        holds(&found, "id=\"have\"");
    }
    let [asked, found] = columns(Route::Cost, &[]);
    holds(&asked, "id=\"aim\"");
    holds(&found, "What costs what");
    let [asked, found] = columns(Route::Aim, &[]);
    holds(&asked, "id=\"ratio\"");
    holds(&found, "class=\"rows");
}

#[test]
fn a_path_leads_to_what_stands_there() {
    let button = element("i", &[], Vec::new());
    let tree = [words("so"), element("p", &[], vec![words("and"), element("b", &[], Vec::new()), button])];
    assert_eq!(at(&tree, &[0, 1]).map(|found| found.tag), Some("i"));
    assert_eq!(at(&tree, &[0]).map(|found| found.tag), Some("p"));
    assert!(at(&tree, &[]).is_none() && at(&tree, &[1]).is_none() && at(&tree, &[0, 2]).is_none());
}

#[test]
fn what_has_not_changed_is_the_very_piece_it_was() {
    let mut canvas = Canvas::of(view(Route::Measure, &[("amount", "45")]));
    let before = canvas.page();
    canvas.draw(view(Route::Measure, &[("amount", "46")]));
    let after = canvas.page();
    assert_eq!(after, nodes(view(Route::Measure, &[("amount", "46")])));
    let page = |nodes: &[Node]| at(nodes, &[2, 0]).map(|page| page.children.clone()).unwrap_or_default();
    let is_same = |(one, other): (&Node, &Node)| match (one, other) {
        (Node::Element(one), Node::Element(other)) => Arc::ptr_eq(one, other),
        _ => false,
    };
    let same: Vec<bool> = page(&before).iter().zip(&page(&after)).map(is_same).collect();
    assert_eq!(same[..3], [false, true, true], "{same:?}");
    // The active field looks otherwise, and so it is drawn again.
    let active = View { active: Some("at"), ..view(Route::Measure, &[("amount", "46")]) };
    canvas.draw(active);
    holds(&html(&canvas.page()), "<div class=\"field on\"><label for=\"at\">");
}

#[test]
fn drinks_side_by_side_are_a_table_with_heads_and_glasses_of_one_scale() {
    use crate::craft::vessel::{COUPE, TALL};
    use crate::screen::picture::{Filled, Picture};
    use crate::screen::{Column, Compared, Side, Sides};
    let column = |name: &str, picture| Column { name: name.into(), below: vec!["no ice".into()], picture };
    let glass = |text: &str, vessel| {
        Some(Picture::Vessels { text: text.into(), vessels: vec![Filled { vessel, level: 20.0, ice: Vec::new() }] })
    };
    let side = |said: &str, is_apart| Side { said: said.into(), below: String::new(), is_apart };
    let of = |count: usize| Sides {
        sides: vec![
            column("quick", glass("tall", TALL.holding(300.0))),
            column("a <long> name", glass("coupe", COUPE.holding(180.0))),
            column("third", None),
            column("fourth", None),
        ][..count]
            .to_vec(),
        rows: vec![Compared { of: "acid, g", each: vec![side("1.27", true), side("0.44", false)] }],
    };
    let html = page_with(Block::Sides(of(3)));
    holds(&html, r#"<div class="sides"><table aria-label="Side by side"><thead><tr><td></td>"#);
    holds(&html, r#"<th scope="col"><b>a &lt;long&gt; name</b><small>no ice</small></th>"#);
    holds(&html, r#"<th scope="row"><span class="unseen">glass</span></th>"#);
    holds(
        &html,
        r#"<th scope="row">acid, g</th><td class="apart"><i aria-hidden="true">≠ </i><span class="unseen">differs: </span>1.27</td><td>0.44</td>"#,
    );
    // All glasses have one height, and stand on one ground; one without a glass keeps its place.
    let heights: Vec<&str> = html.split("<svg").skip(1).filter_map(|svg| svg.split(" height=\"").nth(1)).collect();
    assert_eq!(heights.len(), 2);
    assert_eq!(heights[0].split('"').next(), heights[1].split('"').next());
    holds(&html, r#"<td class="glass"></td>"#);
    assert!(!html.contains("tabindex"), "{html}");
    holds(&page_with(Block::Sides(of(4))), r#"<div class="sides many" tabindex="0" role="region""#);
    assert!(!page_with(Block::Sides(Sides::default())).contains("<table"));
}
