//! The headline: the one figure that is wanted most, readable at arm's length.

use reckoner_core::measure::text::Shown;
use reckoner_core::sheet::{Bench, Face, Figure, face};
use yew::prelude::*;

use super::icon::{Icon, icon};
use super::measure;
use crate::words::{Room, room};

#[derive(Properties, PartialEq)]
pub(crate) struct HeadlineProps {
    pub(crate) figure: Figure,
    /// What it rests on of ours, for a voice.
    pub(crate) rests: Option<String>,
    pub(crate) bench: Bench,
    /// Which of several marks is shown.
    pub(crate) index: usize,
    /// The place of what is shown among all that the headline can show, and how many there are.
    pub(crate) at: usize,
    pub(crate) places: usize,
    pub(crate) on_step: Callback<usize>,
}

/// A figure as the headline; of several marks, one at a time.
#[component]
pub(crate) fn Headline(props: &HeadlineProps) -> Html {
    let HeadlineProps { figure, rests, bench, index, at, places, on_step } = props;
    let face = face(&figure.value, bench);
    let size = match room(&face, *index) {
        Room::Short => "is-short",
        Room::Long => "is-long",
        Room::Words => "is-words",
    };
    let from = (!figure.from.is_empty()).then(|| {
        html! {
            <span class="headline__from">{ figure.from }</span>
        }
    });
    let (label, body, rest) = match &face {
        Face::Measure(shown) => one(figure.label, shown),
        Face::Measures(all) => match all.get(*index).or(all.last()) {
            Some(shown) => {
                let (_, body, rest) = one(figure.label, shown);
                let place = index.saturating_add(1).min(all.len());
                let label = html! {
                    { format!("{} {place} of {}", figure.label, all.len()) }
                };
                (label, body, rest)
            }
            None => (figure.label.into(), html! { "none" }, None),
        },
        Face::Line { text, .. } => {
            (figure.label.into(), html! { <span class="line">{ text }</span> }, None)
        }
    };
    html! {
        <div class={classes!("headline__inside", size)}>
            <p class="headline__label">{ label }</p>
            <p class="headline__figure">
                <span class="headline__value">{ body }</span>
                if let Some(rests) = rests {
                    <span class="headline__example" aria-hidden="true">{ "example" }</span>
                    <span class="voice">{ ". " }{ rests }</span>
                }
            </p>
            <p class="headline__rest">{ rest }{ from }</p>
            if *places > 1 { { steps(*at, *places, on_step) } }
        </div>
    }
}

type Parts = (Html, Html, Option<Html>);

fn one(label: &'static str, shown: &Shown) -> Parts {
    (label.into(), measure::marks(shown), Some(measure::left_over(shown)))
}

/// The way through several marks.
fn steps(at: usize, places: usize, on_step: &Callback<usize>) -> Html {
    let go = |to: usize| on_step.reform(move |_: MouseEvent| to);
    let is_last = at.saturating_add(1) >= places;
    html! {
        <div class="headline__steps">
            <button type="button" class="step" data-testid="mark-previous" disabled={at == 0}
                aria-label="Mark before" onclick={go(at.saturating_sub(1))}>
                { icon(Icon::Previous) }
            </button>
            <button type="button" class="step" data-testid="mark-next" disabled={is_last}
                aria-label="Next mark" onclick={go(at.saturating_add(1))}>
                { icon(Icon::Next) }
            </button>
        </div>
    }
}
