//! The address of the page: reading it, hearing of its change, and writing it without a jump.

use gloo::events::EventListener;
use gloo::utils::window;
use wasm_bindgen::JsValue;

use super::dom;

/// The fragment, with its `#`; empty when there is none.
pub(crate) fn fragment() -> String {
    window().location().hash().unwrap_or_default()
}

/// The whole address.
pub(crate) fn whole() -> String {
    window().location().href().unwrap_or_default()
}

/// Writes another fragment into the address, without a step in the history and without anybody
/// hearing of it.
pub(crate) fn replace(shown: &str) {
    if let Ok(history) = window().history() {
        // A browser may refuse too many changes a minute; the next one will do.
        drop(history.replace_state_with_url(&JsValue::NULL, "", Some(shown)));
        dom::set_look("place", &fragment());
    }
}

/// Calls back when the user goes to another page of the app.
pub(crate) fn on_change(call: impl Fn() + 'static) -> EventListener {
    EventListener::new(&window(), "hashchange", move |_| call())
}

/// Goes to another page of the app.
pub(crate) fn go(fragment: &str) {
    drop(window().location().set_hash(fragment));
}
