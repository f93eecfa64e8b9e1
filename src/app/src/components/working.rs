//! The working of an answer: each rule in words, the numbers put in, and its source.

use reckoner_core::sheet::{Bench, Working};
use yew::prelude::*;

use super::fold::Fold;
use super::measure;

/// The working, closed until asked for.
pub(crate) fn working(working: &Working, bench: &Bench) -> Html {
    html! {
        <Fold name="working" class="working" toggle="working-toggle" summary={html! { "Working" }}>
            <div class="working__body" data-testid="working">
                <ol class="working__steps">
                    { for working.steps.iter().map(|step| html! {
                        <li>
                            <p class="working__rule">{ step.rule.to_string() }</p>
                            <p class="working__sum">
                                <span>{ format!("= {}", step.put_in) }</span>
                                <span class="working__gives">
                                    { "= " }{ measure::in_working(&step.gives, bench) }
                                </span>
                            </p>
                        </li>
                    }) }
                </ol>
                if !working.sources.is_empty() {
                    <h2 class="working__title">{ "Sources" }</h2>
                    <ul class="working__sources">
                        { for working.sources.iter().map(|source| html! {
                            <li>{ source.words() }</li>
                        }) }
                    </ul>
                }
            </div>
        </Fold>
    }
}
