//! Notes and cautions of an answer.

use reckoner_core::measure::Tape;
use reckoner_core::sheet::{Answer, Caution};
use yew::prelude::*;

/// What the user should know, and the dangers of the work.
pub(crate) fn notes(answer: &Answer, tape: Tape) -> Html {
    html! {
        <>
            if !answer.cautions.is_empty() {
                <section class="cautions" aria-label="Cautions">
                    { for answer.cautions.iter().map(|it| caution(*it)) }
                </section>
            }
            if !answer.notes.is_empty() {
                <ul class="notes">
                    { for answer.notes.iter().map(|note| html! { <li>{ note.on(tape) }</li> }) }
                </ul>
            }
        </>
    }
}

/// One line, which opens to more.
pub(crate) fn caution(caution: Caution) -> Html {
    html! {
        <details class="caution">
            <summary>{ caution.line() }</summary>
            <p>{ caution.more() }</p>
        </details>
    }
}
