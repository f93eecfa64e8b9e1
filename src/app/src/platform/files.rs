//! Files: one that the user chose, one that is published beside the page, and one that the page gives.

use gloo::utils::{body, document, window};
use js_sys::{Array, Uint8Array};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{Blob, BlobPropertyBag, Event, HtmlAnchorElement, HtmlInputElement, Response, Url};

/// Reads the file that was chosen in the input of an event, unless it is larger than `most` bytes.
pub(crate) fn read_chosen(
    event: &Event,
    most: usize,
    done: impl FnOnce(Result<String, String>) + 'static,
) {
    let input = event.target().and_then(|target| target.dyn_into::<HtmlInputElement>().ok());
    let file = input.as_ref().and_then(|input| input.files()).and_then(|files| files.get(0));
    let Some(file) = file else { return };
    // The same file can be chosen again.
    if let Some(input) = input {
        input.set_value("");
    }
    let size = file.size();
    spawn_local(async move {
        let fits = u32::try_from(most).is_ok_and(|most| size <= f64::from(most));
        if !fits {
            done(Err("This file is too large for this app.".to_owned()));
            return;
        }
        let text = JsFuture::from(file.text()).await.ok().and_then(|text| text.as_string());
        done(text.ok_or_else(|| "This file cannot be read.".to_owned()));
    });
}

/// A text that is published beside the page; `None` when it cannot be fetched.
pub(crate) async fn read_published(address: &str) -> Option<String> {
    let answer = JsFuture::from(window().fetch_with_str(address)).await.ok()?;
    let answer: Response = answer.dyn_into().ok()?;
    if !answer.ok() {
        return None;
    }
    JsFuture::from(answer.text().ok()?).await.ok()?.as_string()
}

/// Gives the user a file to save.
pub(crate) fn save(name: &str, kind: &str, bytes: &[u8]) {
    let give = || -> Result<(), JsValue> {
        let parts = Array::of1(&Uint8Array::from(bytes));
        let options = BlobPropertyBag::new();
        options.set_type(kind);
        let blob = Blob::new_with_u8_array_sequence_and_options(&parts, &options)?;
        let address = Url::create_object_url_with_blob(&blob)?;
        let link: HtmlAnchorElement = document().create_element("a")?.unchecked_into();
        link.set_href(&address);
        link.set_download(name);
        body().append_child(&link)?;
        link.click();
        link.remove();
        Url::revoke_object_url(&address)
    };
    // A browser that gives no files has no other way; the link and the codes remain.
    drop(give());
}
