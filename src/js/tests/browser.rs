//! The exported functions in a real browser, called with JavaScript objects.
#![cfg(target_arch = "wasm32")]

use js_sys::{JSON, Reflect};
use wasm_bindgen::JsValue;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

fn object(json: &str) -> JsValue {
    JSON::parse(json).expect("JSON in a test")
}

fn at(value: &JsValue, path: &[&str]) -> JsValue {
    path.iter()
        .fold(value.clone(), |value, key| Reflect::get(&value, &(*key).into()).expect("an object"))
}

#[wasm_bindgen_test]
fn a_plain_object_goes_in_and_a_plain_object_comes_out() {
    let answer = reckoner_js::tape(
        object(r#"{"strip":"61 3/8 - 2 × 3 1/2 - 2 × 3/4"}"#),
        JsValue::UNDEFINED,
    );
    assert_eq!(at(&answer, &["ok"]), JsValue::TRUE);
    assert_eq!(at(&answer, &["results", "read", "exact"]), JsValue::from_str("423/8"));
    assert_eq!(at(&answer, &["results", "read", "shown"]), JsValue::from_str("52 7/8 in"));
}

#[wasm_bindgen_test]
fn what_no_field_takes_is_named_with_its_field() {
    for nonsense in [r#"{"strip":{"a":1}}"#, r#"{"strip":null}"#, r#"{"strip":[["3"]]}"#] {
        let refused = reckoner_js::tape(object(nonsense), JsValue::UNDEFINED);
        let problem = at(&refused, &["problems", "0"]);
        assert_eq!(at(&problem, &["code"]), JsValue::from_str("wrong-type"));
        assert_eq!(at(&problem, &["field"]), JsValue::from_str("strip"));
    }
}

#[wasm_bindgen_test]
fn what_is_no_object_is_a_problem_and_not_an_exception() {
    for nonsense in [JsValue::from_str("strip"), JsValue::from_f64(7.0), object("[1]")] {
        let refused = reckoner_js::tape(nonsense, JsValue::UNDEFINED);
        assert_eq!(at(&refused, &["ok"]), JsValue::FALSE);
        assert_eq!(at(&refused, &["problems", "0", "code"]), JsValue::from_str("bad-call"));
    }
}

#[wasm_bindgen_test]
fn a_bench_that_is_null_is_told_and_not_passed_over() {
    let refused = reckoner_js::tape(object(r#"{"strip":"3"}"#), JsValue::NULL);
    assert_eq!(at(&refused, &["problems", "0", "code"]), JsValue::from_str("wrong-type"));
}
