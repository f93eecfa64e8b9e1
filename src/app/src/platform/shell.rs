//! Talks with the static shell around the app: where to draw, "I am here", "I have stopped".

use std::cell::OnceCell;

use gloo::utils::{document, window};
use web_sys::{CustomEvent, CustomEventInit, Element};

/// Heard by `static/boot.js`: the first page is on the screen.
const STARTED: &str = "reckoner-started";
/// Heard by `static/boot.js`: what the other pages need was fetched, as far as that was possible.
const COMPLETE: &str = "reckoner-complete";
/// Heard by `static/boot.js`: the app panicked. It then shows what was typed.
const STOPPED: &str = "reckoner-stopped";

thread_local! {
    static PICTURES: OnceCell<Option<Element>> = const { OnceCell::new() };
}

/// The pictures of the first page, which stand in the shell's own first page and go with it: kept from the first call on, so
/// that they are in the page while home is, and nowhere else.
pub(crate) fn pictures() -> Option<Element> {
    let found = || document().query_selector(".pictures").ok().flatten();
    PICTURES.with(|kept| kept.get_or_init(found).clone())
}

/// The element that the app draws into. What the shell drew there goes when the app draws.
pub(crate) fn root() -> Element {
    let _kept = pictures();
    document()
        .get_element_by_id("app")
        .unwrap_or_else(|| document().body().expect("a page has a body").into())
}

/// Tells the shell that the first page is drawn.
pub(crate) fn announce_start() {
    send(STARTED, "");
}

/// Tells the shell that nothing more is being fetched.
pub(crate) fn announce_completion() {
    send(COMPLETE, "");
}

/// From now on a panic is handed to the shell, which shows the recovery page.
pub(crate) fn report_panics() {
    yew::set_custom_panic_hook(Box::new(|panic| {
        let reason = panic.to_string();
        gloo::console::error!(&reason);
        send(STOPPED, &reason);
    }));
}

/// Nothing more can be done about an event that the browser refuses.
fn send(name: &str, detail: &str) {
    let options = CustomEventInit::new();
    options.set_detail(&detail.into());
    if let Ok(event) = CustomEvent::new_with_event_init_dict(name, &options) {
        drop(window().dispatch_event(&event));
    }
}
