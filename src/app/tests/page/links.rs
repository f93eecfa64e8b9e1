//! The state in the address and on the device.

use wasm_bindgen_test::wasm_bindgen_test;

use crate::mounted::{Mounted, fragment, store};

#[wasm_bindgen_test]
async fn what_is_the_persons_is_in_the_address_and_no_example() {
    let app = Mounted::fresh("#/tape").await;
    app.types("field-start_mark", "1 1/2").await;
    app.rest().await;
    let address = fragment();
    for part in ["start_mark=1+1%2F2", "divide=whole", "unit=in"] {
        assert!(address.contains(part), "{part} is not in {address}");
    }
    assert!(!address.contains("strip="), "an example is in {address}");
    drop(app);
    store().clear().expect("cleared");
    let elsewhere = Mounted::at(&address).await;
    assert_eq!(elsewhere.value("field-start_mark"), "1 1/2");
}

#[wasm_bindgen_test]
async fn what_was_typed_is_there_again_without_a_link() {
    let app = Mounted::fresh("#/tape").await;
    app.types("field-start_mark", "2").await;
    drop(app);
    let again = Mounted::at("#/tape").await;
    assert_eq!(again.value("field-start_mark"), "2");
}

#[wasm_bindgen_test]
async fn a_hostile_link_gets_words_and_loses_nothing() {
    let app = Mounted::fresh("#/tape").await;
    app.types("field-start_mark", "2").await;
    drop(app);
    let app = Mounted::at("#/tape?evil=%3Cscript%3E").await;
    assert!(app.text("link-trouble").contains("which is not asked here"));
    assert_eq!(app.value("field-start_mark"), "0");
    app.tap("undo").await;
    assert_eq!(app.value("field-start_mark"), "2");
    drop(app);
    let app = Mounted::at("#/no-such-page").await;
    assert!(app.text("link-trouble").contains("no page for this link"));
    assert!(app.find("home-tape").is_some());
}

#[wasm_bindgen_test]
async fn somebodys_link_gives_way_to_ones_own_with_undo() {
    let app = Mounted::fresh("#/tape").await;
    app.types("field-start_mark", "2").await;
    drop(app);
    let app = Mounted::at("#/tape?start_mark=5&unit=in").await;
    assert_eq!(app.value("field-start_mark"), "5");
    assert!(
        store().get_item("reckoner.last.tape").expect("read").unwrap_or_default().contains("=2")
    );
    app.tap("undo").await;
    assert_eq!(app.value("field-start_mark"), "2");
}

#[wasm_bindgen_test]
async fn spoiled_storage_is_a_fresh_form() {
    store().clear().expect("cleared");
    store().set_item("reckoner.last.tape", "%FF\u{0}garbage=1&&==").expect("kept");
    store().set_item("reckoner.settings", "{\"theme\":").expect("kept");
    store().set_item("reckoner.recent", "<b>,,tape").expect("kept");
    let app = Mounted::at("#/tape").await;
    assert_eq!(app.exact("answer-headline"), "52 7/8 in");
    drop(app);
    let app = Mounted::at("#/").await;
    assert_eq!(app.all(".recent__link").len(), 1);
}
