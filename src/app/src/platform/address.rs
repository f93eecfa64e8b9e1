//! The address of the page: reading it, hearing of its change, and writing it without a jump.

use std::cell::{Cell, RefCell};

use gloo::events::EventListener;
use gloo::utils::window;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{HashChangeEvent, PerformanceNavigation};

use super::{back, dom, page};

thread_local! {
    /// What was written into the address last, on this visit.
    static WRITTEN: RefCell<Option<String>> = const { RefCell::new(None) };
    /// The fragment of the page that is on the screen, as it was heard of or written last.
    static HERE: RefCell<String> = const { RefCell::new(String::new()) };
    static FROM_HOME: Cell<bool> = const { Cell::new(false) };
    /// Whether the user went to another page since this one was loaded.
    static HAS_MOVED: Cell<bool> = const { Cell::new(false) };
}

/// The fragment, with its `#`; empty when there is none.
pub(crate) fn fragment() -> String {
    window().location().hash().unwrap_or_default()
}

/// The whole address.
pub(crate) fn whole() -> String {
    window().location().href().unwrap_or_default()
}

/// Writes another fragment into the address, without a step in the history and without anybody
/// hearing of it; not where the address is that of another page already, which the app hears of a moment later, nor while the
/// page is about to go.
pub(crate) fn replace(shown: &str) {
    WRITTEN.set(Some(shown.to_owned()));
    if back::is_leaving() || is_left() || page::is_going() {
        return;
    }
    if let Ok(history) = window().history() {
        let state = history.state().unwrap_or(JsValue::NULL);
        // A browser may refuse too many changes a minute; the next one will do.
        drop(history.replace_state_with_url(&state, "", Some(shown)));
        let here = fragment();
        dom::set_look("place", &here);
        HERE.set(here);
    }
}

/// Says that the page of a fragment is drawn. On a busy device it may have written its own address by then.
pub(crate) fn tell_drawn(place: &str) {
    let has_written = WRITTEN.with_borrow(Option::is_some);
    dom::set_look("place", &if has_written { fragment() } else { place.to_owned() });
}

/// Writes what this visit wrote last into the address again, in another entry of its history.
fn write_again() {
    HERE.set(fragment());
    if let Some(shown) = WRITTEN.with_borrow(Clone::clone) {
        replace(&shown);
    }
}

/// Whether this page was loaded again, and nobody went to another of the app since.
pub(crate) fn is_loaded_again() -> bool {
    let how = window().performance().map(|it| it.navigation().type_());
    how == Some(PerformanceNavigation::TYPE_RELOAD) && !HAS_MOVED.get()
}

/// Whether the user came to this page from the first page of the app.
pub(crate) fn is_from_home() -> bool {
    FROM_HOME.get()
}

/// Calls back when the user goes to another page of the app; not when Back stays on the page.
pub(crate) fn on_change(call: impl Fn() + 'static) -> [EventListener; 3] {
    HERE.set(fragment());
    let other = EventListener::new(&window(), "hashchange", move |event| {
        HERE.set(fragment());
        if !back::is_of_this_visit() {
            let event: Option<&HashChangeEvent> = event.dyn_ref();
            let from = event.and_then(|event| Some(event.old_url().split_once('#')?.1.to_owned()));
            let is_home = matches!(from.as_deref(), None | Some("" | "/"));
            FROM_HOME.set(is_home && !back::is_known());
            HAS_MOVED.set(true);
            WRITTEN.set(None);
            call();
        }
    });
    [back::listen(write_again), page::listen(), other]
}

/// Whether the page on the screen is left: the address is that of another, which the app hears of a moment later.
fn is_left() -> bool {
    HERE.with_borrow(|here| *here != fragment())
}

/// Does what leads to another page, and goes there; with nowhere to go the page stays. A second tap before the other page is
/// here does nothing: what the first one put in is not put in again.
pub(crate) fn go_by(what: impl FnOnce() -> Option<String>) {
    if is_left() {
        return;
    }
    if let Some(to) = what() {
        go(&to);
    }
}

/// Goes to another page of the app.
pub(crate) fn go(fragment: &str) {
    drop(window().location().set_hash(fragment));
}
