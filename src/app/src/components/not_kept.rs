//! What the device does not keep, at the foot of the screen, where it moves nothing that can be tapped.

use reckoner_core::attention::refused;
use yew::prelude::*;

use crate::platform::notes;

/// A line at the foot of the screen.
pub(crate) fn late(id: &'static str, inside: Html) -> Html {
    html! { <div class="trouble is-late" role="alert" data-testid={id}>{ inside }</div> }
}

/// That what is typed outside the jobs is not kept, and why, until it is.
#[component]
pub(crate) fn NotKeptLine() -> Html {
    let problem = use_state_eq(notes::not_kept);
    {
        let problem = problem.clone();
        use_effect_with((), move |()| {
            // It may have changed since the first drawing.
            problem.set(notes::not_kept());
            let listening = notes::listen(move || problem.set(notes::not_kept()));
            move || drop(listening)
        });
    }
    match &*problem {
        Some(why) => late(
            "not-kept",
            html! { <p>{ format!("What you type is not kept: {}", refused(&why.to_string())) }</p> },
        ),
        None => html! {},
    }
}
