//! Files: one that the user chose, one that is published beside the page, and one that the page gives.

use std::rc::Rc;

use gloo::utils::{body, document, window};
use js_sys::{Array, Function, Promise, Reflect, Uint8Array};
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{
    Blob, BlobPropertyBag, Event, File, HtmlAnchorElement, HtmlInputElement, Response, Url,
};

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
    spawn_local(async move { done(read(&file, most).await) });
}

async fn read(file: &File, most: usize) -> Result<String, String> {
    let fits = u32::try_from(most).is_ok_and(|most| file.size() <= f64::from(most));
    if !fits {
        return Err("This file is too large for this app.".to_owned());
    }
    let text = JsFuture::from(file.text()).await.ok().and_then(|text| text.as_string());
    text.ok_or_else(|| "This file cannot be read.".to_owned())
}

/// Reads the file that the device opened the installed app with, also one that comes later, unless it is larger than
/// `most` bytes. Where a device opens no files with a page, nothing comes (Web App Launch Handler, W3C draft:
/// `launchQueue`, which the bindings do not have).
pub(crate) fn read_opened(most: usize, done: impl Fn(Result<String, String>) + 'static) {
    let done = Rc::new(done);
    let consumer = Closure::<dyn Fn(JsValue)>::new(move |launch: JsValue| {
        let done = done.clone();
        spawn_local(async move {
            let Some(file) = file_of(&launch).await else { return };
            done(read(&file, most).await);
        });
    });
    let set = || -> Result<JsValue, JsValue> {
        let queue = Reflect::get(&window(), &"launchQueue".into())?;
        let set: Function = Reflect::get(&queue, &"setConsumer".into())?.dyn_into()?;
        set.call1(&queue, &consumer.into_js_value())
    };
    // Without a queue files are chosen on the page.
    drop(set());
}

/// The first file of a launch.
async fn file_of(launch: &JsValue) -> Option<File> {
    let files = Reflect::get(launch, &"files".into()).ok()?;
    let handle = Reflect::get_u32(&files, 0).ok()?;
    let get: Function = Reflect::get(&handle, &"getFile".into()).ok()?.dyn_into().ok()?;
    let file: Promise = get.call0(&handle).ok()?.dyn_into().ok()?;
    JsFuture::from(file).await.ok()?.dyn_into().ok()
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
