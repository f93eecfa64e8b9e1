//! What this device and its browser do with the page and the jobs, asked of the browser.

use gloo::events::EventListener;
use gloo::utils::{document_element, window};
use js_sys::{Function, Reflect};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, spawn_local};

use super::storage;
use crate::device::{Device, Offline, Promise, forgets};

/// Said on `window` by `static/boot.js`, and here, when something about the device has changed.
const CHANGED: &str = "reckoner-offline";

/// Whether the page opens without a signal, as far as the shell knows now.
pub(crate) fn offline() -> Offline {
    let said = document_element().get_attribute("data-offline").unwrap_or_default();
    Offline::read(&said, window().is_secure_context())
}

/// Calls back when [`offline`] or the browser's promise may have changed, until it is dropped.
pub(crate) fn on_change(call: impl Fn() + 'static) -> EventListener {
    EventListener::new(&window(), CHANGED, move |_| call())
}

/// All that is known. The browser takes a moment to say what it promises.
pub(crate) async fn look() -> Device {
    Device {
        promise: promise().await,
        offline: offline(),
        has_storage: storage::is_there(),
        is_installed: is_installed(),
        forgets: {
            let navigator = window().navigator();
            forgets(&navigator.user_agent().unwrap_or_default(), navigator.max_touch_points())
        },
    }
}

/// Asks the browser not to throw the jobs away when room is short. It may say no; [`look`] tells.
pub(crate) fn ask_to_keep() {
    if let Some(asked) = of_storage("persist") {
        spawn_local(async move {
            // Its answer, yes or no, is what the browser says from now on.
            drop(JsFuture::from(asked).await);
            if let Ok(event) = web_sys::CustomEvent::new(CHANGED) {
                drop(window().dispatch_event(&event));
            }
        });
    }
}

async fn promise() -> Promise {
    let Some(asked) = of_storage("persisted") else { return Promise::Unknown };
    match JsFuture::from(asked).await.ok().and_then(|answer| answer.as_bool()) {
        Some(true) => Promise::Given,
        Some(false) => Promise::Refused,
        None => Promise::Unknown,
    }
}

/// Calls a function of the browser's storage manager, where there is one.
fn of_storage(name: &str) -> Option<js_sys::Promise> {
    let manager = Reflect::get(&window().navigator(), &"storage".into()).ok()?;
    let function: Function = Reflect::get(&manager, &name.into()).ok()?.dyn_into().ok()?;
    function.call0(&manager).ok()?.dyn_into().ok()
}

/// Opened from the home screen or as a window of its own.
fn is_installed() -> bool {
    let alone = window().match_media("(display-mode: standalone)").ok().flatten();
    // What an iPhone says instead.
    let says = Reflect::get(&window().navigator(), &"standalone".into()) == Ok(JsValue::TRUE);
    says || alone.is_some_and(|alone| alone.matches())
}

/// The time, in milliseconds since 1970.
pub(crate) fn now() -> u64 {
    // A clock before 1970 counts as 1970.
    js_sys::Date::now() as u64
}
