//! Measures: stacked fractions for the eye, words for a voice.

use reckoner_core::measure::text::{Quantity, Shown, Written, decimal, exact_text, show};
use reckoner_core::measure::{Length, Number, Rounding, Tape};
use reckoner_core::sheet::{Bench, Face, Value, face, face_in_working};
use yew::prelude::*;

/// A length as it stands on the tape, with its fraction stacked. For the eye alone.
pub(crate) fn written(written: &Written) -> Html {
    let feet = written.feet.map(|feet| html! { <>{ feet }<span class="unit">{ "ft" }</span></> });
    let fraction =
        written.fraction.map(|(above, below)| stacked(above.to_string(), below.to_string()));
    let is_bare = written.whole.is_none() && written.fraction.is_none();
    let wide = match written.columns() {
        0..=5 => None,
        6 => Some("is-broad"),
        7..=8 => Some("is-wide"),
        _ => Some("is-widest"),
    };
    html! {
        <span class={classes!("written", wide)} aria-hidden="true">
            if written.is_negative { { "−" } }
            { feet }
            { written.whole.clone() }
            { fraction }
            if !is_bare { <span class="unit">{ written.unit.short() }</span> }
        </span>
    }
}

/// A fraction with its line.
pub(crate) fn stacked(above: String, below: String) -> Html {
    html! {
        <span class="fraction">
            <span class="fraction__above">{ above }</span>
            <span class="fraction__line">{ "/" }</span>
            <span class="fraction__below">{ below }</span>
        </span>
    }
}

/// The mark, or the two that a length lies midway between, and the words for a voice.
pub(crate) fn marks(shown: &Shown) -> Html {
    html! {
        <span class="measure" data-exact={shown.exact.clone()}>
            { written(&shown.mark) }
            if let Some(or) = &shown.or_mark {
                <span class="measure__or" aria-hidden="true">{ "or" }</span>
                { written(or) }
            }
            <span class="voice">{ &shown.spoken }</span>
        </span>
    }
}

/// What is left over beside the mark, in words: `and about 1/64 more`.
pub(crate) fn left_over(shown: &Shown) -> Html {
    // The voice has heard it with the mark.
    html! { <span class="lean" aria-hidden="true">{ &shown.in_words }</span> }
}

/// Any value, small: in a table or in the list of other figures.
pub(crate) fn value(value: &Value, bench: &Bench) -> Html {
    faced(face(value, bench))
}

/// The same in a working, in the units of its formula.
pub(crate) fn in_working(value: &Value, bench: &Bench) -> Html {
    faced(face_in_working(value, bench))
}

fn faced(face: Face) -> Html {
    let with_rest = |shown: &Shown| {
        html! {
            <>
                { marks(shown) }
                if !matches!(shown.lean, "exact" | "midway") {
                    <span class="rest" aria-hidden="true">{ &shown.in_words }</span>
                }
            </>
        }
    };
    match face {
        Face::Measure(shown) => with_rest(&shown),
        Face::Measures(all) => html! {
            <ol class="measures">
                { for all.iter().map(|shown| html! { <li>{ with_rest(shown) }</li> }) }
            </ol>
        },
        Face::Line { text, .. } => html! { <span class="line">{ text }</span> },
    }
}

/// A quantity as it is shown in a row.
pub(crate) fn quantity(quantity: Option<Quantity>, tape: Tape) -> Html {
    match quantity {
        Some(Quantity::Length(length)) => self::length(length, tape),
        Some(Quantity::Plain(number) | Quantity::Bare(number)) => plain(number).into(),
        Some(Quantity::Area(_)) | None => "–".into(),
    }
}

/// A length on the tape.
pub(crate) fn length(length: Length, tape: Tape) -> Html {
    match show(length, tape, Rounding::Nearest) {
        Ok(shown) => marks(&shown),
        Err(_) => exact_text(length).into(),
    }
}

/// A quantity for a voice.
pub(crate) fn spoken(quantity: Option<Quantity>, tape: Tape) -> String {
    match quantity {
        Some(Quantity::Length(length)) => show(length, tape, Rounding::Nearest)
            .map_or_else(|_| exact_text(length), |shown| shown.spoken),
        Some(Quantity::Plain(number) | Quantity::Bare(number)) => plain(number),
        Some(Quantity::Area(_)) | None => "nothing yet".to_owned(),
    }
}

fn plain(number: Number) -> String {
    decimal(number, if number.is_whole() { 0 } else { 3 })
}
