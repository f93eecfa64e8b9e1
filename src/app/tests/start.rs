//! In the browser: the app draws itself into the shell's element and says so.
#![cfg(target_arch = "wasm32")]

use gloo::events::EventListener;
use gloo::utils::{document, window};
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

#[wasm_bindgen_test]
async fn the_app_replaces_the_first_picture_and_announces_itself() {
    let root = document().create_element("div").expect("an element");
    root.set_id("app");
    root.set_inner_html("<p>first picture</p>");
    document().body().expect("a body").append_child(&root).expect("appended");

    let (heard, hears) = futures::channel::oneshot::channel();
    let _listener = EventListener::once(&window(), "reckoner-started", move |_| {
        heard.send(()).expect("somebody listens");
    });
    reckoner_app::start();
    hears.await.expect("announced");

    assert_eq!(
        root.query_selector("h1").expect("a query").map(|h| h.inner_html()).as_deref(),
        Some("Sawdust Reckoner")
    );
    assert!(!root.inner_html().contains("first picture"), "{}", root.inner_html());
}
