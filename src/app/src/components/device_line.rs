//! What becomes of the page and the jobs on this device, in a line that never moves what can be tapped.

use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

use crate::device::Offline;
use crate::platform::device;

/// Whether the page opens without a signal, now and whenever it changes.
#[hook]
fn use_offline() -> Offline {
    let offline = use_state_eq(device::offline);
    {
        let offline = offline.clone();
        use_effect_with((), move |()| {
            // It may have changed since the first drawing.
            offline.set(device::offline());
            let listener = device::on_change(move || offline.set(device::offline()));
            move || drop(listener)
        });
    }
    *offline
}

/// Where the data are, and whether the page opens without a signal.
#[component]
pub(crate) fn OfflineLine() -> Html {
    let words = use_offline().words();
    html! {
        <p class="device-line" data-testid="offline-line">{ "Nothing you type leaves this device. " }{ words }</p>
    }
}

/// What becomes of the jobs. Empty until the browser has answered; its place is kept.
#[component]
pub(crate) fn DeviceLine() -> Html {
    let words = use_state_eq(|| "");
    {
        let words = words.clone();
        use_effect_with((), move |()| {
            let look = move || {
                let words = words.clone();
                spawn_local(async move { words.set(device::look().await.jobs_words()) });
            };
            look();
            let listener = device::on_change(look);
            move || drop(listener)
        });
    }
    html! { <p class="device-line" data-testid="device-line">{ *words }</p> }
}

/// Both, under a heading.
#[component]
pub(crate) fn ThisDevice() -> Html {
    html! {
        <section class="this-device" aria-labelledby="this-device">
            <h2 id="this-device">{ "This device" }</h2>
            <OfflineLine />
            <DeviceLine />
        </section>
    }
}
