//! A spec as it is read and made: serves to count, lines to tick, steps with their waits; and what it says on paper.

use super::node::{Element, Node, Tap, button, element, number_and_unit, owned, said, with, words};
use crate::screen::{ASKED, Act, Doing, MOST_SERVES, Pour, Pours, Printed, Timing};
use crate::text::Figure;

/// How many: less, the number, more.
pub(super) fn serves(label: &'static str, serves: u32) -> Node {
    let to = |serves: u32| Some(Tap::Act(Act::Serves(serves)));
    let fewer = if serves > 1 { to(serves - 1) } else { None };
    let more = if serves < MOST_SERVES { to(serves + 1) } else { None };
    let children = vec![
        said("span", &[], label.into()),
        button("btn", "−".into(), "one less", fewer),
        said("b", &[("aria-live", "polite")], serves.to_string().into()),
        button("btn", "+".into(), "one more", more),
    ];
    with("div", &[("class", "serves"), ("role", "group")], vec![("aria-label", label.into())], children)
}

/// The lines; many are set closer. The head and the column of one serve are for paper.
pub(super) fn pours(pours: &Pours) -> Node {
    let class = if pours.lines.len() >= 7 { "pours many" } else { "pours" };
    // What is ticked by more than this tab is a list to buy.
    let is_bought = pours.lines.iter().any(|line| line.act.is_some());
    let is_read = pours.lines.iter().all(|line| line.tick.is_none());
    let mut children = Vec::new();
    if pours.serves > 1 {
        let for_all = format!("for {}", pours.serves).into();
        let head = vec![said("span", &[], "for one".into()), said("span", &[], for_all)];
        children.push(element("li", &[("class", "of"), ("aria-hidden", "true")], head));
    }
    let asked = pours.lines.iter().position(|line| line.marked);
    children.extend(pours.lines.iter().enumerate().map(|(at, line)| {
        let mut row = vec![pour(at, line, pours.serves)];
        row.extend(note(line));
        let mut attributes = Vec::new();
        if asked == Some(at) {
            attributes.extend([("id", ASKED.into()), ("tabindex", "-1".into())]);
        }
        with("li", &[], attributes, row)
    }));
    let class = if is_read { format!("{class} read") } else { class.to_owned() };
    let class = if is_bought { format!("{class} buy") } else { class };
    let fixed: &[_] = if is_bought { &[("aria-label", "To buy")] } else { &[("aria-label", "To pour")] };
    with("ul", fixed, vec![("class", class.into())], children)
}

/// A line as one large button; where there is nothing to tick, as it is.
fn pour(at: usize, line: &Pour, serves: u32) -> Node {
    let Figure { value, unit } = &line.amount;
    let mut amount = Vec::new();
    if !value.is_empty() {
        amount.extend(number_and_unit(value, unit));
    }
    if !line.beneath.is_empty() {
        amount.push(said("small", &[], owned(&line.beneath)));
    }
    let mut children = vec![
        element("span", &[("class", "tick"), ("aria-hidden", "true")], Vec::new()),
        said("span", &[("class", "name")], owned(&line.name)),
    ];
    if serves > 1 {
        children.push(said("span", &[("class", "one"), ("aria-hidden", "true")], owned(&line.one)));
    }
    children.push(element("span", &[("class", "much")], amount));
    match line.tick {
        None => element("div", &[("class", "pour")], children),
        Some(is_in) => Element {
            tag: "button",
            fixed: &[("type", "button"), ("class", "pour"), ("role", "checkbox")],
            attributes: vec![("aria-checked", if is_in { "true" } else { "false" }.into())],
            children,
            tap: Some(Tap::Act(line.act.clone().unwrap_or_else(|| Act::TickLine(at, line.typed.clone())))),
            ..Element::default()
        }
        .into(),
    }
}

fn note(line: &Pour) -> Option<Node> {
    let class = if line.marked { "problem" } else { "note" };
    let note = vec![said("span", &[], owned(&line.note))];
    (!line.note.is_empty()).then(|| with("p", &[], vec![("class", class.into())], note))
}

/// The steps, numbered.
pub(super) fn doing(steps: &[Doing]) -> Node {
    let step = |step: &Doing| {
        let mut children = vec![said("span", &[], owned(&step.words))];
        children.extend(step.wait.iter().flat_map(wait));
        element("li", &[], children)
    };
    element("ol", &[("class", "doing")], steps.iter().map(step).collect())
}

fn wait(wait: &Timing) -> Vec<Node> {
    let class = if wait.is_over { "to-go over" } else { "to-go" };
    let to_go = with("b", &[], vec![("class", class.into())], vec![words(&wait.to_go)]);
    let tap = Some(Tap::Act(wait.button.act.clone()));
    vec![to_go, button("btn", owned(&wait.button.label), &wait.button.spoken, tap)]
}

/// Letters of a name that the head of the narrowest phone has room for, beside its words.
const MOST_LETTERS: usize = 30;

/// The head of a spec on paper; the screen says it in its own head and strip. A name too long for that of a phone stands on
/// the page there, too.
pub(super) fn printed(shown: &Printed) -> Node {
    let [figure, also] = &shown.strip;
    let strip = vec![said("b", &[], owned(figure)), said("b", &[], owned(also))];
    let children = vec![
        said("p", &[("class", "called")], owned(&shown.name)),
        said("p", &[], owned(&shown.how)),
        element("p", &[("class", "tapeline")], strip),
        said("p", &[("class", "day")], owned(&shown.day)),
    ];
    let is_long = shown.name.chars().count() > MOST_LETTERS;
    let class = if is_long { "printed long" } else { "printed" };
    with("div", &[], vec![("class", class.into())], children)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::draw::html;
    use crate::screen::Button;

    fn line(name: &str, value: &str, unit: &str) -> Pour {
        let amount = Figure::new(value, unit);
        Pour { name: name.into(), amount, typed: format!("{value} {unit} {name}"), ..Pour::default() }
    }

    fn tap(node: &Node) -> Option<Tap> {
        match node {
            Node::Words(_) => None,
            Node::Element(element) => element.tap.clone().or_else(|| element.children.iter().find_map(tap)),
        }
    }

    #[test]
    fn a_line_is_one_button_that_ticks_it() {
        let ticked = Pour { tick: Some(true), beneath: "≈ 1½ oz".into(), ..line("gin", "45", "ml") };
        let words = Pour { tick: Some(false), typed: "Lemon twist".into(), ..line("Lemon twist", "", "") };
        let drawn = pours(&Pours { lines: vec![ticked, words], serves: 1 });
        assert_eq!(
            html(std::slice::from_ref(&drawn)),
            "<ul aria-label=\"To pour\" class=\"pours\"><li><button type=\"button\" class=\"pour\" role=\"checkbox\" \
             aria-checked=\"true\"><span class=\"tick\" aria-hidden=\"true\"></span><span class=\"name\">gin</span>\
             <span class=\"much\"><b>45</b> <i>ml</i><small>≈ 1½ oz</small></span></button></li><li><button \
             type=\"button\" class=\"pour\" role=\"checkbox\" aria-checked=\"false\"><span class=\"tick\" \
             aria-hidden=\"true\"></span><span class=\"name\">Lemon twist</span><span class=\"much\"></span></button>\
             </li></ul>"
        );
        assert_eq!(tap(&drawn), Some(Tap::Act(Act::TickLine(0, "45 ml gin".into()))));
    }

    #[test]
    fn a_thing_to_buy_is_ticked_by_an_act_of_its_own() {
        let act = Act::Put(vec![("got", "700 ml gin".into())]);
        let gin = Pour { tick: Some(false), act: Some(act.clone()), ..line("gin", "700", "ml") };
        let drawn = pours(&Pours { lines: vec![gin], serves: 1 });
        let page = html(std::slice::from_ref(&drawn));
        assert!(page.starts_with("<ul aria-label=\"To buy\" class=\"pours buy\"><li><button "), "{page}");
        assert_eq!(tap(&drawn), Some(Tap::Act(act)));
    }

    #[test]
    fn many_lines_are_set_closer_and_those_that_are_only_read_have_no_tick() {
        let many = Pours { lines: vec![line("gin", "45", "ml"); 7], serves: 1 };
        let drawn = html(&[pours(&many)]);
        assert!(
            drawn.starts_with("<ul aria-label=\"To pour\" class=\"pours many read\"><li><div class=\"pour\">"),
            "{drawn}"
        );
        assert!(!drawn.contains("<button"), "{drawn}");
        let marked = Pour { marked: true, note: "Not known.".into(), ..line("moon dust", "20", "ml") };
        let drawn = html(&[pours(&Pours { lines: vec![line("gin", "45", "ml"), marked], serves: 1 })]);
        assert!(drawn.contains("</li><li id=\"asked\" tabindex=\"-1\">"), "{drawn}");
        assert!(drawn.contains("<p class=\"problem\"><span>Not known.</span></p></li></ul>"), "{drawn}");
    }

    #[test]
    fn for_several_paper_says_what_one_takes() {
        let two = Pour { one: "45 ml".into(), ..line("gin", "90", "ml") };
        let drawn = html(&[pours(&Pours { lines: vec![two], serves: 2 })]);
        assert!(
            drawn.contains("<li class=\"of\" aria-hidden=\"true\"><span>for one</span><span>for 2</span></li>"),
            "{drawn}"
        );
        assert!(drawn.contains("<span class=\"one\" aria-hidden=\"true\">45 ml</span>"), "{drawn}");
    }

    #[test]
    fn serves_count_from_one_on() {
        let one = html(&[serves("Serves", 1)]);
        assert!(one.contains("aria-label=\"one less\" disabled=\"\">−</button><b aria-live=\"polite\">1</b>"), "{one}");
        assert_eq!(tap(&serves("Serves", 1)), Some(Tap::Act(Act::Serves(2))));
        assert_eq!(tap(&serves("Serves", MOST_SERVES)), Some(Tap::Act(Act::Serves(MOST_SERVES - 1))));
    }

    #[test]
    fn a_step_has_its_wait_beside_it() {
        let act = Act::Begin("Stir 30 s".into(), 30);
        let button = Button { label: "Start 30 s".into(), spoken: "Start 30 s: Stir 30 s".into(), act: act.clone() };
        let wait = Some(Timing { to_go: String::new(), is_over: false, button });
        let steps = [Doing { words: "Stir 30 s".into(), wait }, Doing { words: "Strain".into(), wait: None }];
        assert_eq!(
            html(&[doing(&steps)]),
            "<ol class=\"doing\"><li><span>Stir 30 s</span><b class=\"to-go\"></b><button type=\"button\" \
             class=\"btn\" aria-label=\"Start 30 s: Stir 30 s\">Start 30 s</button></li><li><span>Strain</span></li></ol>"
        );
        assert_eq!(tap(&doing(&steps)), Some(Tap::Act(act)));
    }

    /// The head has room for two lines; what it cuts off is read on the page.
    #[test]
    fn a_long_name_is_read_whole_on_the_page() {
        let of = |name: &str| {
            html(&[printed(&Printed {
                name: name.into(),
                how: String::new(),
                strip: Default::default(),
                day: String::new(),
            })])
        };
        let name = "The long way round the orchard, by lantern";
        let drawn = of(name);
        assert!(drawn.starts_with(&format!("<div class=\"printed long\"><p class=\"called\">{name}</p>")), "{drawn}");
        assert!(of("Orchard lantern").starts_with("<div class=\"printed\">"));
    }
}
