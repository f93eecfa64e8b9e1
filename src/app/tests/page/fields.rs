//! Fields: echo, problem, way out, undo, and the way through them by keyboard.

use wasm_bindgen_test::wasm_bindgen_test;

use crate::mounted::Mounted;

const TAPE: &str = "#/tape?strip=44&divide=parts&parts=4&start_mark=0&unit=in";

#[wasm_bindgen_test]
async fn a_field_says_how_it_was_understood() {
    let app = Mounted::fresh(TAPE).await;
    app.types("field-start_mark", "2 × 3/8").await;
    assert_eq!(app.text("echo-start_mark"), "2 × 3/8 = 3/4 in");
}

#[wasm_bindgen_test]
async fn half_typed_is_no_problem_until_it_is_left() {
    let app = Mounted::fresh(TAPE).await;
    app.types("field-start_mark", "1 3/").await;
    assert!(app.find("problem-start_mark").is_none());
    let headline = app.text("answer-headline");
    assert!(headline.starts_with("No answer yet. Before: "), "{headline}");
    assert!(headline.ends_with("Still needs: Tape starts at"), "{headline}");
    app.key("Escape").await;
    let words = app.text("problem-start_mark");
    assert!(words.contains("1 3/"), "{words}");
    assert_eq!(
        app.input("field-start_mark").get_attribute("aria-invalid").as_deref(),
        Some("true")
    );
    // Never a stale number beside a problem.
    assert_eq!(app.exact("answer-headline"), "");
}

#[wasm_bindgen_test]
async fn the_place_of_the_trouble_is_marked() {
    let app = Mounted::fresh(TAPE).await;
    app.types("field-start_mark", "3 x y").await;
    app.key("Escape").await;
    let marked = app.get("problem-start_mark").query_selector("mark").expect("a query");
    assert_eq!(marked.expect("marked").text_content().as_deref(), Some("y"));
}

#[wasm_bindgen_test]
async fn enter_goes_on_and_escape_closes() {
    let app = Mounted::fresh(TAPE).await;
    app.enter("field-parts").await;
    app.key("Enter").await;
    assert_eq!(app.focused(), "field-start_mark");
    assert!(app.find("keypad").is_some());
    app.key("Escape").await;
    assert!(app.find("keypad").is_none());
}

#[wasm_bindgen_test]
async fn every_step_can_be_undone_and_done_again() {
    let app = Mounted::fresh(TAPE).await;
    app.types("field-parts", "8").await;
    app.key("Escape").await;
    app.tap("divide-half").await;
    assert!(app.text("answer-headline").starts_with("Mark 1 of 2"));
    app.tap("undo").await;
    assert!(app.text("answer-headline").starts_with("Mark 1 of 8"));
    app.tap("undo").await;
    assert!(app.text("answer-headline").starts_with("Mark 1 of 4"));
    app.tap("redo").await;
    assert_eq!(app.value("field-parts"), "8");
    app.tap("start-fresh").await;
    assert_eq!(app.exact("answer-headline"), "52 7/8 in");
    app.tap("undo").await;
    assert_eq!(app.value("field-parts"), "8");
}

#[wasm_bindgen_test]
async fn another_unit_leaves_every_length_as_it_was() {
    let app = Mounted::fresh("#/tape?strip=44&start_mark=1&unit=in").await;
    app.tap("unit").await;
    assert_eq!(app.value("field-start_mark"), "1 in");
    app.types("field-start_mark", "25.4").await;
    assert_eq!(app.text("echo-start_mark"), "1 in");
}
