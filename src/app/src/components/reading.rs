//! [`use_reading`]: what a page shows of the database, read again where it could not be.

use std::rc::Rc;

use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

use crate::platform::database::Problem;
use crate::platform::notes::{self, Reading};

/// Has something read when the page is opened, when `revision` changes, and, where it could not be read, once the database
/// is there again.
#[hook]
pub(crate) fn use_reading<F, R>(revision: u32, read: F)
where
    F: Fn() -> R + 'static,
    R: Future<Output = Result<(), Problem>> + 'static,
{
    use_effect_with(revision, move |_| {
        let reading = Rc::new(Reading::new());
        let go = {
            let reading = reading.clone();
            move || {
                let (found, reading) = (read(), reading.clone());
                spawn_local(async move { reading.ended(found.await) });
            }
        };
        go();
        let again = notes::on_again(move || {
            if reading.has_failed() {
                go();
            }
        });
        move || drop(again)
    });
}
