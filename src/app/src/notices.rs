//! The page that says what the app is made of, as the build wrote it down beside the page.

use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

use crate::components::icon::{Icon, icon};
use crate::platform::{dom, files};

/// The text's name, from the page.
const FILE: &str = "./notices.txt";

/// Every licence, with what is under it.
#[component]
pub(crate) fn NoticesPage() -> Html {
    let text = use_state(|| None::<String>);
    {
        let text = text.clone();
        use_effect_with((), move |()| {
            dom::set_title("What this is made of · Sawdust Reckoner");
            spawn_local(async move {
                let read = files::read_published(FILE).await;
                text.set(Some(read.unwrap_or_else(|| {
                    "The list is not on this device yet. Open this page again with a signal."
                        .to_owned()
                })));
            });
        });
    }
    html! {
        <div class="page">
            <header class="bar">
                <a class="bar__link" href="#/settings" aria-label="Settings" data-testid="back">{ icon(Icon::Back) }</a>
                <h1 class="bar__title">{ "What this is made of" }</h1>
            </header>
            <main class="settings">
                <pre class="notices" data-testid="notices" tabindex="0" aria-busy={text.is_none().to_string()}>
                    { text.as_deref().unwrap_or_default() }
                </pre>
            </main>
        </div>
    }
}
