//! Which windows of the app live: each holds a lock of its own for as long as it does.

use std::collections::BTreeSet;

use gloo::utils::window;
use js_sys::{Array, Function, Promise, Reflect};
use reckoner_core::order::set_of;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, spawn_local};

use super::clock;
use super::later::{first, later};

/// What the name of a window's lock begins with.
const LOCK: &str = "reckoner-page-";

thread_local! {
    /// When this window was loaded, in milliseconds since 1970.
    static BEGUN: u64 = clock::now();
    static PAGE: String = {
        let chance = js_sys::Math::random().to_string();
        let digits: String = chance.chars().skip(2).take(8).collect();
        format!("{}-{digits}", BEGUN.with(|begun| *begun))
    };
}

/// For how long this window lives, in milliseconds.
pub(crate) fn age() -> u64 {
    clock::now().saturating_sub(BEGUN.with(|begun| *begun))
}

/// The name of this window, which no other has.
pub(crate) fn page() -> String {
    PAGE.with(Clone::clone)
}

fn get(of: &JsValue, name: &str) -> Option<JsValue> {
    Reflect::get(of, &name.into()).ok().filter(|it| !it.is_undefined() && !it.is_null())
}

/// The browser's locks; a page that is not secure has none.
fn locks() -> Option<JsValue> {
    get(&window().navigator(), "locks")
}

/// Asks for a lock; `held` says when it is let go again.
fn request(name: &str, held: impl FnOnce() -> Promise + 'static) -> Option<Promise> {
    let locks = locks()?;
    let request: Function = get(&locks, "request")?.dyn_into().ok()?;
    let held = Closure::once_into_js(move |_: JsValue| held());
    request.call2(&locks, &name.into(), &held).ok()?.dyn_into().ok()
}

/// Takes this window's lock.
pub(crate) fn hold() {
    // It is let go when the page goes.
    drop(request(&format!("{LOCK}{}", page()), || Promise::new(&mut |_, _| {})));
}

/// The windows that live, or `None` where the browser cannot tell.
pub(crate) async fn living() -> Option<BTreeSet<String>> {
    let locks = locks()?;
    let query: Function = get(&locks, "query")?.dyn_into().ok()?;
    let asked: Promise = query.call0(&locks).ok()?.dyn_into().ok()?;
    let told = JsFuture::from(asked).await.ok()?;
    let name = |lock: JsValue| {
        let name = get(&lock, "name")?.as_string()?;
        name.strip_prefix(LOCK).map(str::to_owned)
    };
    let mut living = set_of(Array::from(&get(&told, "held")?).iter().filter_map(name));
    living.insert(page());
    Some(living)
}

/// Waits until a window lives no more.
pub(crate) async fn end_of(page: &str) {
    if let Some(ended) = request(&format!("{LOCK}{page}"), || Promise::resolve(&JsValue::NULL)) {
        drop(JsFuture::from(ended).await);
    }
}

/// Waits until none of these windows lives, so many milliseconds at most.
pub(crate) async fn ends_of(pages: BTreeSet<String>, milliseconds: u32) {
    let (first, told) = first();
    let patience = later(milliseconds, {
        let first = first.clone();
        move || first.tell()
    });
    spawn_local(async move {
        for page in &pages {
            end_of(page).await;
        }
        first.tell();
    });
    told.await;
    drop(patience);
}
