//! The end of the page.

use std::cell::Cell;

use gloo::events::EventListener;
use gloo::utils::window;

use super::clock;

/// How long a page that was asked to go may stay until another is there, in milliseconds. One that was only asked for a file
/// stays for good.
const GOING: u64 = 30_000;

thread_local! {
    /// When it was asked to go last, in milliseconds since 1970.
    static ASKED: Cell<Option<u64>> = const { Cell::new(None) };
}

/// Calls when the page is left, closed or loaded again, until what is returned is dropped.
pub(crate) fn on_leave(call: impl Fn() + 'static) -> EventListener {
    EventListener::new(&window(), "pagehide", move |_| call())
}

/// Hears that the page is asked to go, for as long as what is returned is kept.
pub(super) fn listen() -> EventListener {
    EventListener::new(&window(), "beforeunload", |_| ASKED.set(Some(clock::now())))
}

/// Whether the page is about to be left or loaded again. On a slow line it goes on for a while, and what it writes into its
/// address by then is not in the address that is loaded.
pub(super) fn is_going() -> bool {
    ASKED.get().is_some_and(|asked| clock::now().saturating_sub(asked) < GOING)
}
