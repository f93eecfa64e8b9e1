//! The root: which page is shown.

use yew::prelude::*;

use crate::platform::shell;

/// The whole app.
#[component]
pub(crate) fn App() -> Html {
    use_effect_with((), |()| shell::announce_start());
    html! {
        <main>
            <h1>{ "Sawdust Reckoner" }</h1>
        </main>
    }
}
