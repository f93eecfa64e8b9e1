//! The exported functions cover every calculator, and the types say what they take and give.

use reckoner_core::calculators;
use reckoner_js::{BenchIn, FUNCTIONS, Given, reckon, types};
use serde_json::{Value, json};

fn call(slug: &str, input: Value, bench: Value) -> Value {
    let calculator = calculators::find(slug).expect("a calculator");
    let given: Given = serde_json::from_value(input).expect("an object");
    let bench: BenchIn = serde_json::from_value(bench).expect("a bench");
    serde_json::to_value(reckon(calculator, &given, &bench)).expect("a plain object")
}

#[test]
fn there_is_one_function_for_each_calculator() {
    let exported: Vec<&str> = FUNCTIONS.iter().map(|(_, slug)| *slug).collect();
    let known: Vec<&str> = calculators::ALL.iter().map(|calculator| calculator.slug).collect();
    assert_eq!(exported, known);
    for (function, slug) in FUNCTIONS {
        assert_eq!(*function, slug.replace('-', "_"));
    }
}

/// Run with `UPDATE_TYPES=1` to write the file anew after a calculator changed.
#[test]
fn the_types_are_current() {
    let file = concat!(env!("CARGO_MANIFEST_DIR"), "/src/types.d.ts");
    if std::env::var_os("UPDATE_TYPES").is_some() {
        std::fs::write(file, types::declarations()).expect("writing the types");
    }
    let written = std::fs::read_to_string(file).expect("reading the types");
    assert!(
        written == types::declarations(),
        "run this test with UPDATE_TYPES=1 and commit src/js/src/types.d.ts"
    );
}

#[test]
fn every_calculator_answers_an_empty_call_as_its_fresh_form_does() {
    for calculator in calculators::ALL {
        let out = call(calculator.slug, json!({}), json!({}));
        assert_eq!(out["ok"], true, "{out}");
        let id = out["headline"]["id"].as_str().expect("a headline");
        assert_eq!(out["results"][id], out["headline"]["value"]);
    }
}

/// Left out is assumed; what is handed in is not, be it the very figure of the example.
#[test]
fn an_answer_says_which_of_ours_it_rests_on() {
    let out = call("crosscut", json!({"board": 96, "part": "17 1/2"}), json!({}));
    assert_eq!(out["assumed"], json!(["trim", "wanted", "kerf"]));
    let given = json!({"board": 96, "part": "17 1/2", "trim": "1/2", "wanted": 10});
    let out = call("crosscut", given, json!({"kerf": "1/8"}));
    assert_eq!(out["assumed"], json!([]));
}

#[test]
fn lengths_come_exact_and_readable() {
    let out = call("tape", json!({"strip": ["6 3/4", "A / 2"]}), json!({}));
    let read = &out["results"]["read"];
    assert_eq!(read["kind"], "length");
    assert_eq!(read["exact"], "27/8");
    assert_eq!(read["shown"], "3 3/8 in");
    assert_eq!(read["spoken"], "three and three eighths inches");
}

#[test]
fn a_bare_number_takes_the_unit_of_the_call() {
    let out = call("tape", json!({"strip": "50.8", "unit": "mm"}), json!({}));
    assert_eq!(out["results"]["read"]["exact"], "2");
    let out = call("tape", json!({"strip": "2"}), json!({"tape": "mm"}));
    assert_eq!(out["results"]["read"]["exact"], "10/127");
}

#[test]
fn problems_name_their_field_their_place_and_a_way_out() {
    let out = call("tape", json!({"strip": "3 3/8 plus 2"}), json!({}));
    assert_eq!(out["ok"], false);
    let problem = &out["problems"][0];
    assert_eq!(problem["field"], "strip");
    assert_eq!(problem["code"], "cannot-read");
    assert_eq!(problem["at"], json!([6, 10]));
    assert_eq!(
        problem["message"],
        "“plus” is not a unit or a known name. Units are in, ft, mm, cm and m."
    );
}

#[test]
fn a_call_that_is_misspelt_is_refused_not_guessed() {
    for (input, bench, field) in [
        (json!({"stripe": "3"}), json!({}), "stripe"),
        (json!({"divide": "quarters"}), json!({}), "divide"),
        (json!({"unit": "cubit"}), json!({}), "unit"),
        (json!({}), json!({"tape": "fathoms"}), "tape"),
        (json!({}), json!({"fineness": 7}), "fineness"),
        (json!({}), json!({"kerf": "0"}), "kerf"),
        (json!({}), json!({"fence": "behind"}), "fence"),
    ] {
        let out = call("tape", input, bench);
        assert_eq!(out["problems"][0]["code"], "bad-call", "{out}");
        assert_eq!(out["problems"][0]["field"], field);
    }
}
