//! Giving a text away: the clipboard, and the device's own way of sharing.

use gloo::utils::{body, document, window};
use js_sys::Reflect;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{HtmlTextAreaElement, ShareData};

fn navigator_has(name: &str) -> bool {
    let navigator: JsValue = window().navigator().into();
    Reflect::get(&navigator, &name.into()).is_ok_and(|value| !value.is_undefined())
}

/// Copies a text, then tells whether it worked.
pub(crate) fn copy(text: String, done: impl FnOnce(bool) + 'static) {
    spawn_local(async move {
        // Absent where the page is not served over https or from this machine itself.
        let modern = navigator_has("clipboard")
            && JsFuture::from(window().navigator().clipboard().write_text(&text)).await.is_ok();
        done(modern || copy_by_selection(&text).is_some());
    });
}

/// The older way: select the text in an element of the page and tell the browser to copy.
fn copy_by_selection(text: &str) -> Option<()> {
    let area = document().create_element("textarea").ok()?;
    let area: HtmlTextAreaElement = area.dyn_into().ok()?;
    area.set_value(text);
    area.set_read_only(true);
    area.set_class_name("voice");
    let had_focus = document().active_element();
    body().append_child(&area).ok()?;
    area.select();
    let document: JsValue = document().into();
    let command = Reflect::get(&document, &"execCommand".into()).ok()?;
    let command: js_sys::Function = command.dyn_into().ok()?;
    let copied = command.call1(&document, &"copy".into()).ok()?.as_bool()?;
    area.remove();
    if let Some(element) = had_focus.and_then(|it| it.dyn_into::<web_sys::HtmlElement>().ok()) {
        drop(element.focus());
    }
    copied.then_some(())
}

/// Whether the device has its own way of sharing.
pub(crate) fn can_share() -> bool {
    navigator_has("share")
}

/// Offers a link to the device's own way of sharing.
pub(crate) fn share(title: &str, link: &str) {
    let what = ShareData::new();
    what.set_title(title);
    what.set_url(link);
    give(&what);
}

/// Offers a text to the device's own way of sharing.
pub(crate) fn share_text(title: &str, text: &str) {
    let what = ShareData::new();
    what.set_title(title);
    what.set_text(text);
    give(&what);
}

fn give(what: &ShareData) {
    let promise = window().navigator().share_with_data(what);
    // The user may change their mind; that is no fault.
    spawn_local(async move { drop(JsFuture::from(promise).await) });
}
