//! The settings take effect at once and are remembered.

use gloo::utils::document_element;
use reckoner_core::calculators;
use wasm_bindgen_test::wasm_bindgen_test;

use crate::mounted::Mounted;

fn look(name: &str) -> String {
    document_element().get_attribute(&format!("data-{name}")).unwrap_or_default()
}

#[wasm_bindgen_test]
async fn a_theme_is_worn_at_once_and_remembered() {
    let app = Mounted::fresh("#/settings").await;
    for theme in ["dark", "outdoor", "light"] {
        app.tap(&format!("theme-{theme}")).await;
        assert_eq!(look("theme"), theme);
    }
    app.tap("big-yes").await;
    app.tap("hand-left").await;
    drop(app);
    document_element().remove_attribute("data-theme").expect("removed");
    let _app = Mounted::at("#/tape").await;
    assert_eq!(
        (look("theme"), look("answers"), look("hand")),
        ("light".into(), "big".into(), "left".into())
    );
}

#[wasm_bindgen_test]
async fn another_tape_shows_every_answer_anew_and_keeps_the_kerf() {
    let app = Mounted::fresh("#/settings").await;
    app.types("field-kerf", "3/32").await;
    app.key("Escape").await;
    app.tap("tape-mm").await;
    assert_eq!(app.value("field-kerf"), "3/32 in");
    assert!(app.find("field-fineness").is_none(), "millimetres have no finest fraction");
    drop(app);
    let app = Mounted::at("#/tape?strip=1+in").await;
    assert!(app.text("answer-headline").contains("25mm"), "{}", app.text("answer-headline"));
}

#[wasm_bindgen_test]
async fn a_kerf_that_cannot_be_read_says_so_and_counts_as_the_usual_one() {
    let app = Mounted::fresh("#/settings").await;
    app.types("field-kerf", "thin").await;
    app.key("Escape").await;
    assert!(app.text("problem-kerf").contains("thin"));
    app.tap("undo").await;
    assert!(app.find("problem-kerf").is_none());
    assert_eq!(app.value("field-kerf"), "1/8");
}

#[wasm_bindgen_test]
async fn a_changed_kerf_flows_into_what_was_not_typed() {
    let calculator = calculators::ALL.iter().find(|it| it.fields.iter().any(|f| f.id == "kerf"));
    let Some(calculator) = calculator else { return };
    let app = Mounted::fresh("#/settings").await;
    app.types("field-kerf", "5/64").await;
    drop(app);
    let app = Mounted::at(&format!("#/{}", calculator.slug)).await;
    assert_eq!(app.value("field-kerf"), "5/64");
}

#[wasm_bindgen_test]
async fn the_left_hand_has_its_own_keypad() {
    let app = Mounted::fresh("#/settings").await;
    app.tap("hand-left").await;
    app.enter("field-kerf").await;
    let first = app.all(".key").first().and_then(|key| key.get_attribute("data-testid"));
    assert_eq!(first.as_deref(), Some("key-backspace"));
}
