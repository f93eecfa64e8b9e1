//! The sections of a job that are opened less often.

use yew::prelude::*;

use super::open::Open;

/// Their names in the address, and what is in them.
const SECTIONS: [(&str, &str, &str); 5] = [
    ("build", "Build order", "what is done next, step by step, and what waits for what"),
    ("buy", "Everything to buy", "boards, screws, rod and finish; on paper, as a list, as text"),
    ("rack", "Rack and yard", "boards on my rack, lengths at the yard, saws, screws, the sketch"),
    ("kept", "Calculators kept", "answers that follow the sizes of this job"),
    ("hand-on", "Send and print", "to another phone, on paper, as a list; off this device"),
];

/// The way to each of them.
pub(super) fn view(open: &Open) -> Html {
    html! {
        <ul class="rows">
            { for SECTIONS.iter().map(|(name, label, about)| html! {
                <li>
                    <a class="row" href={open.at(name)} data-testid={format!("section-{name}")}>
                        <span class="row__name">{ *label }</span>
                        <span class="row__more">{ *about }</span>
                    </a>
                </li>
            }) }
        </ul>
    }
}
