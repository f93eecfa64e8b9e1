//! A sentence of the core: words, with its lengths as they stand on the tape.

use reckoner_core::measure::Tape;
use reckoner_core::measure::text::{exact_text, show};
use reckoner_core::sheet::{Piece, Sentence, amount_text};
use yew::prelude::*;

use super::measure;

/// Words with lengths in them, fractions stacked.
pub(crate) fn sentence(sentence: &Sentence, tape: Tape) -> Html {
    let piece = |piece: &Piece| match piece {
        Piece::Text(text) => text.clone().into(),
        Piece::Amount(amount, unit) => amount_text(*amount, unit, tape.unit().is_metric()).into(),
        Piece::Length(length, rounding) => match show(*length, tape, *rounding) {
            Ok(shown) if shown.lean == "exact" => measure::marks(&shown),
            Ok(shown) => {
                html! { <><span aria-hidden="true">{ "about " }</span>{ measure::marks(&shown) }</> }
            }
            Err(_) => exact_text(*length).into(),
        },
    };
    html! { <>{ for sentence.0.iter().map(piece) }</> }
}
