//! The end of the page.

use gloo::events::EventListener;
use gloo::utils::window;

/// Calls when the page is left, closed or loaded again, until what is returned is dropped.
pub(crate) fn on_leave(call: impl Fn() + 'static) -> EventListener {
    EventListener::new(&window(), "pagehide", move |_| call())
}
