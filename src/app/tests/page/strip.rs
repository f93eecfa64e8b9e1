//! The running strip of the tape.

use wasm_bindgen_test::wasm_bindgen_test;

use crate::mounted::Mounted;

const STRIP: &str = "#/tape?strip=44%0AA+-+7%0AB+%2F+2&unit=in";

#[wasm_bindgen_test]
async fn later_lines_follow_an_edit_of_an_earlier_one() {
    let app = Mounted::fresh(STRIP).await;
    assert_eq!(app.exact("answer-headline"), "18 1/2 in");
    app.types("field-strip-0", "46").await;
    app.key("Escape").await;
    assert_eq!(app.exact("answer-field-strip-1"), "39 in");
    assert_eq!(app.exact("answer-field-strip-2"), "19 1/2 in");
    assert_eq!(app.exact("answer-headline"), "19 1/2 in");
    app.tap("undo").await;
    assert_eq!(app.exact("answer-headline"), "18 1/2 in");
}

#[wasm_bindgen_test]
async fn a_tap_on_its_letter_puts_a_line_in_use() {
    let app = Mounted::fresh(STRIP).await;
    app.tap("use-A").await;
    assert_eq!(app.exact("answer-headline"), "44 in");
    assert_eq!(app.get("use-A").get_attribute("aria-pressed").as_deref(), Some("true"));
    // Who writes on wants the last line again.
    app.types("field-strip-3", "C + 1").await;
    assert_eq!(app.exact("answer-headline"), "19 1/2 in");
}

#[wasm_bindgen_test]
async fn the_keypad_has_the_letters_of_the_lines_above() {
    let app = Mounted::fresh(STRIP).await;
    app.enter("field-strip-3").await;
    app.press(&["A", "minus", "1"]).await;
    assert_eq!(app.value("field-strip-3"), "A - 1");
    assert_eq!(app.exact("answer-headline"), "43 in");
    app.enter("field-strip-0").await;
    assert!(app.find("key-A").is_none(), "a line cannot use itself");
}

#[wasm_bindgen_test]
async fn one_bad_line_leaves_the_others_standing() {
    let app = Mounted::fresh(STRIP).await;
    app.types("field-strip-3", "Q + 1").await;
    app.key("Escape").await;
    assert_eq!(app.exact("answer-field-strip-2"), "18 1/2 in");
    assert!(app.text("answer-headline").contains("No answer yet"));
    app.tap("use-C").await;
    assert_eq!(app.exact("answer-headline"), "18 1/2 in");
}
