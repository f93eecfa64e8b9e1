//! The program in the browser: takes messages in a Web Worker, or calls from a page that has no workers.

use js_sys::{Function, global};
use wasm_bindgen::prelude::*;
use web_sys::{DedicatedWorkerGlobalScope, MessageEvent};

use crate::READY;

/// Answers one question; `tell` is called with each reply. For a page that has no workers.
///
/// # Errors
/// A sentence, for a text that is no question.
#[wasm_bindgen]
pub fn answer(question: &str, tell: &Function) -> Result<(), JsError> {
    let mut tell = |reply: String| drop(tell.call1(&JsValue::NULL, &reply.into()));
    crate::answer(question, &mut tell).map_err(JsError::from)
}

/// In a worker: listens, and says that it does. On a page: waits to be called.
pub fn start() {
    let Ok(scope) = global().dyn_into::<DedicatedWorkerGlobalScope>() else { return };
    let here = scope.clone();
    let listen = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
        let question = event.data().as_string().unwrap_or_default();
        // A reply that cannot be sent has nobody left to hear it.
        let mut tell = |reply: String| drop(here.post_message(&reply.into()));
        if let Err(problem) = crate::answer(&question, &mut tell) {
            // The page hears of it as an error of its worker.
            wasm_bindgen::throw_str(&problem.to_string());
        }
    });
    scope.set_onmessage(Some(listen.as_ref().unchecked_ref()));
    // It listens for as long as the worker lives.
    listen.forget();
    drop(scope.post_message(&READY.into()));
}
