use wasmparser::{Operator, Validator};

use super::*;

/// One part may do what is named in it: start, and call through the table. `$later` is not reached before the rest is here,
/// and of what it calls `$only` is its own, `$both` the first part's too.
const WHOLE: &str = r#"
(module
  (type $plain (func)) (type $sum (func (param i32 i32) (result i32)))
  (import "page" "say" (func $say (param i32)))
  (table (export "calls") 3 funcref) (memory (export "memory") 1) (global $stack (mut i32) (i32.const 7))
  (elem (i32.const 1) func $later $both)
  (export "start" (func $start))
  (func $start (call $"meniscus::app::browser::fetch_rest") (drop (call $called (i32.const 1) (i32.const 2))))
  (func $"meniscus::app::browser::fetch_rest" (call $say (i32.const 9)))
  (func $later (type $sum) (call $say (global.get $stack)) (call $only (local.get 0) (local.get 1)))
  (func $called (type $sum) (call $say (i32.const 1000)) (call $only (local.get 1) (call $both (local.get 0) (local.get 1))))
  (func $only (type $sum) (i32.add (local.get 0) (i32.load (local.get 1))))
  (func $both (type $sum) (i32.sub (local.get 0) (local.get 1)))
  (data (i32.const 0) "text"))
"#;

fn whole() -> Vec<u8> {
    wat::parse_str(WHOLE).expect("a module")
}

fn is_later(name: &str) -> bool {
    ["later", "called"].contains(&name)
}

/// How many functions of its own a part has, and how many it imports.
fn functions(part: &[u8]) -> (usize, u32) {
    let module = Module::read(part).expect("a part");
    (module.bodies.len(), module.imported)
}

#[test]
fn both_parts_are_sound_and_hold_each_function_once() {
    let parts = parts(&whole(), is_later, 0).expect("parts");
    for part in &parts {
        Validator::new().validate_all(part).expect("sound");
    }
    // start, fetch_rest and both, and stubs for later and called; then later, called and only, and what says that they are here.
    assert_eq!(functions(&parts[0]), (5, 1));
    assert_eq!(functions(&parts[1]), (4, 2), "say and both are the first part's");
}

#[test]
fn a_stub_fetches_the_rest_and_hands_on_what_it_was_given() {
    let [first, rest] = parts(&whole(), is_later, 0).expect("parts");
    let module = Module::read(&first).expect("a part");
    let stub = &module.bodies[3].0;
    let does: Vec<Operator<'_>> =
        stub.get_operators_reader().expect("read").into_iter().collect::<Result<_, _>>().expect("read");
    let calls = |operator: &Operator<'_>| matches!(operator, Operator::Call { function_index: 2 });
    assert!(does.iter().any(calls), "{does:?}");
    let handed = [0, 1].map(|local_index| Operator::LocalGet { local_index });
    assert!(does.windows(2).any(|two| two == handed), "{does:?}");
    // One is called in place 1, where it stood in the table; the other got the place behind the last.
    let place = |value| Operator::I32Const { value };
    assert!(does.contains(&place(3)), "{does:?}");
    assert_eq!(module.tables[0].initial, 4);
    let places: Vec<u32> = Module::read(&rest).expect("a part").table.iter().map(|(place, _)| *place).collect();
    assert_eq!(places, [1, 3]);
}

#[test]
fn what_is_not_worth_a_stub_stays() {
    let first = &parts(&whole(), is_later, 14).expect("parts")[0];
    assert_eq!(functions(first), (6, 1), "only `called` is that long: `later` and `only` stay");
}

#[test]
fn a_build_without_names_is_refused() {
    let nameless = wat::parse_str("(module (func))").expect("a module");
    let problem = parts(&nameless, is_later, 0).expect_err("no names").to_string();
    assert!(problem.contains(FETCH), "{problem}");
}

#[test]
fn tools_but_the_first_come_later_and_their_fields_at_once() {
    for (name, is_meant) in [
        ("<meniscus::tool::prep::acid::AcidForm as meniscus::screen::tool::Tool>::answer", true),
        ("<meniscus::tool::service::measure::MeasureForm as meniscus::screen::tool::Tool>::answer", false),
        ("<meniscus::tool::prep::acid::AcidForm as meniscus::screen::fields::Fields>::fields", false),
        ("<meniscus::desk::Desk>::do_to_book", true),
        ("<meniscus::desk::Desk>::do_act", false),
        ("meniscus::tool::specs::tool", false),
        ("meniscus::reading::cost::till", true),
        ("meniscus::reading::pours::measures", false),
    ] {
        assert_eq!(comes_later(name), is_meant, "{name}");
    }
}
