//! How many there are of a thing: one fewer, the number, one more; and the question whether it goes.

use yew::prelude::*;

use super::icon::{Icon, icon};

/// A number that is counted.
pub(crate) struct Stepper {
    /// The end of its test ids.
    pub(crate) id: String,
    /// What is counted, in words.
    pub(crate) name: String,
    /// How many there are now.
    pub(crate) count: String,
    /// Takes one away; `None` where that cannot be.
    pub(crate) fewer: Option<Callback<MouseEvent>>,
    /// Adds one; `None` where that cannot be.
    pub(crate) more: Option<Callback<MouseEvent>>,
}

impl Stepper {
    pub(crate) fn view(self) -> Html {
        let Stepper { id, name, count, fewer, more } = self;
        html! {
            <div class="stepper" role="group" aria-label={format!("How many: {name}")}>
                <button type="button" class="count" aria-label={format!("One fewer: {name}")} disabled={fewer.is_none()}
                    data-testid={format!("fewer-{id}")} onclick={fewer}>{ icon(Icon::Minus) }</button>
                <output class="stepper__count" data-testid={format!("count-{id}")}>{ count }</output>
                <button type="button" class="count" aria-label={format!("One more: {name}")} disabled={more.is_none()}
                    data-testid={format!("more-{id}")} onclick={more}>{ icon(Icon::Plus) }</button>
            </div>
        }
    }
}

/// Asked when one fewer than one is wanted: whether the thing goes.
pub(crate) fn take_out(id: &str, take: Callback<MouseEvent>, keep: Callback<MouseEvent>) -> Html {
    html! {
        <p class="list__ask" role="alert">
            { "Take it out?" }
            <button type="button" class="tool" data-testid={format!("take-out-{id}")} onclick={take}>{ "Take it out" }</button>
            <button type="button" class="tool" data-testid={format!("keep-{id}")} onclick={keep}>{ "Keep" }</button>
        </p>
    }
}
