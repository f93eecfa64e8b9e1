//! Whether an element is near the screen.

use js_sys::Array;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{Element, IntersectionObserver, IntersectionObserverEntry, IntersectionObserverInit};
use yew::NodeRef;

/// How far above and below the screen is near: about a flick of the thumb.
pub(crate) const NEAR: &str = "900px 0px";
/// On the screen itself.
pub(crate) const SEEN: &str = "0px";

/// Watches an element until it is dropped.
pub(crate) struct Watch {
    observer: IntersectionObserver,
    _call: Closure<dyn FnMut(Array)>,
}

impl Drop for Watch {
    fn drop(&mut self) {
        self.observer.disconnect();
    }
}

/// Calls back whether the element at this place is [`NEAR`] the screen or [`SEEN`] on it, and how tall it is then, at
/// first and whenever that changes. `None` where the browser cannot say.
pub(crate) fn watch(
    place: &NodeRef,
    around: &str,
    mut call: impl FnMut(bool, f64) + 'static,
) -> Option<Watch> {
    let element = place.cast::<Element>()?;
    let call = Closure::<dyn FnMut(Array)>::new(move |entries: Array| {
        if let Some(entry) = entries.pop().dyn_ref::<IntersectionObserverEntry>() {
            call(entry.is_intersecting(), entry.bounding_client_rect().height());
        }
    });
    let init = IntersectionObserverInit::new();
    init.set_root_margin(around);
    let function = call.as_ref().unchecked_ref();
    let observer = IntersectionObserver::new_with_options(function, &init).ok()?;
    observer.observe(&element);
    Some(Watch { observer, _call: call })
}
