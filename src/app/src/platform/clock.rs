//! The time of day.

/// Milliseconds since 1970.
pub(crate) fn now() -> u64 {
    // It is above zero and whole.
    js_sys::Date::now() as u64
}

/// A moment in milliseconds since 1970, as a person here reads it: `27 Nov 2026, 14:05`.
pub(crate) fn told(when: u64) -> String {
    let options = js_sys::Object::new();
    for (id, how) in [("dateStyle", "medium"), ("timeStyle", "short")] {
        // A fresh object takes whatever is set in it.
        drop(js_sys::Reflect::set(&options, &id.into(), &how.into()));
    }
    let date = js_sys::Date::new(&(when as f64).into());
    date.to_locale_string("en-GB", &options).into()
}
