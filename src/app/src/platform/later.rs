//! Doing something a moment later, unless it is called off.

use gloo::timers::callback::Timeout;

/// Something that will be done; dropped before, it is not.
pub(crate) struct Later {
    _timeout: Timeout,
}

/// Does something after so many milliseconds, unless what is returned is dropped before.
pub(crate) fn later(milliseconds: u32, what: impl FnOnce() + 'static) -> Later {
    Later { _timeout: Timeout::new(milliseconds, what) }
}
