//! The keypad: what a thumb types, where the caret stands, and that the focus stays.

use wasm_bindgen_test::wasm_bindgen_test;

use crate::mounted::Mounted;

const TAPE: &str = "#/tape?strip=44&start_mark=0&unit=in";

#[wasm_bindgen_test]
async fn a_measure_takes_four_taps_and_no_system_keyboard() {
    let app = Mounted::fresh(TAPE).await;
    app.enter("field-start_mark").await;
    assert_eq!(app.input("field-start_mark").get_attribute("inputmode").as_deref(), Some("none"));
    // The old text is selected, so the first key writes over it.
    app.press(&["3", "7", "page-16", "7/8"]).await;
    assert_eq!(app.value("field-start_mark"), "37 7/8");
    assert_eq!(app.focused(), "field-start_mark");
    assert_eq!(app.exact("answer-headline"), "81 7/8 in");
}

#[wasm_bindgen_test]
async fn keys_write_at_the_caret() {
    let app = Mounted::fresh(TAPE).await;
    app.types("field-start_mark", "3 - 1").await;
    app.input("field-start_mark").set_selection_range(1, 1).expect("a caret");
    app.press(&["page-16", "1/2"]).await;
    assert_eq!(app.value("field-start_mark"), "3 1/2 - 1");
    assert_eq!(app.input("field-start_mark").selection_start().ok().flatten(), Some(5));
    app.press(&["backspace"]).await;
    assert_eq!(app.value("field-start_mark"), "3 - 1");
    app.press(&["clear"]).await;
    assert_eq!(app.value("field-start_mark"), "");
}

#[wasm_bindgen_test]
async fn after_a_fraction_the_digits_are_back() {
    let app = Mounted::fresh(TAPE).await;
    app.enter("field-start_mark").await;
    app.press(&["page-64", "page-64"]).await;
    assert!(app.find("key-33/64").is_some());
    app.press(&["63/64"]).await;
    assert!(app.find("key-7").is_some());
    assert_eq!(app.value("field-start_mark"), "63/64");
}

#[wasm_bindgen_test]
async fn next_walks_through_the_fields_and_closes_after_the_last() {
    let app = Mounted::fresh(TAPE).await;
    app.enter("field-strip-0").await;
    assert_eq!(app.focused(), "field-strip-0");
    app.press(&["next"]).await;
    assert_eq!(app.focused(), "field-strip-1");
    app.press(&["next"]).await;
    // A choice is a panel of its own.
    assert!(app.get("field-divide").class_list().contains("is-panel"));
    app.tap("field-next").await;
    assert_eq!(app.focused(), "field-start_mark");
    assert!(app.text("key-next").starts_with("Done"));
    app.press(&["next"]).await;
    assert!(app.find("keypad").is_none());
}

#[wasm_bindgen_test]
async fn the_systems_keyboard_comes_when_it_is_asked_for() {
    let app = Mounted::fresh(TAPE).await;
    app.enter("field-start_mark").await;
    app.press(&["keyboard"]).await;
    assert!(app.find("keypad").is_none());
    assert_eq!(app.input("field-start_mark").get_attribute("inputmode").as_deref(), Some("text"));
    assert_eq!(app.focused(), "field-start_mark");
    app.press(&["keypad"]).await;
    app.enter("field-start_mark").await;
    assert!(app.find("keypad").is_some());
}
