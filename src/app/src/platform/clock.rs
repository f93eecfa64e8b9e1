//! The time of day.

/// Milliseconds since 1970.
pub(crate) fn now() -> u64 {
    // It is above zero and whole.
    js_sys::Date::now() as u64
}
