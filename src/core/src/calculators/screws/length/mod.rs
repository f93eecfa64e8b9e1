//! How long a screw may be, from the two thicknesses.

mod sheet;

pub(super) use sheet::work;

use super::LEAST_INTO;
use super::fields::{HEAD_SUNK, RECEIVER_THICKNESS, TOP_THICKNESS};
use crate::measure::text::exact_text;
use crate::measure::{Length, OutOfRange, Rounding};
use crate::say;
use crate::sheet::{Refusal, Refused, Sentence, WayOut};
use crate::tables::fasteners::{Fastener, stock_lengths};

/// Thread in the receiver that is called enough in softwood: 1 in. Common practice, no source.
pub const ENOUGH_THREAD: Length = Length::sixty_fourths(64);

/// How much more it is in end grain: 1/2 in. Common practice, no source.
pub const MORE_IN_END_GRAIN: Length = Length::sixty_fourths(32);

/// What to reckon a screw length from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Input {
    /// The piece under the head.
    pub top: Length,
    /// The piece that the thread holds in.
    pub receiver: Length,
    /// How far the top of the head lies below the face.
    pub head_sunk: Length,
    /// Wood that must stay behind the tip.
    pub margin: Length,
    /// The screw.
    pub screw: Fastener,
    /// Into end grain of the receiver.
    pub end_grain: bool,
    /// A length at hand, to be checked beside the stock ones.
    pub at_hand: Option<Length>,
}

/// What becomes of a screw of one length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fit {
    /// Length of the screw.
    pub length: Length,
    /// How far it goes into the receiver; below zero when it does not reach it.
    pub into_receiver: Length,
    /// Thread in the receiver.
    pub thread_in_receiver: Length,
    /// Wood behind its tip; below zero when it shows through.
    pub behind_tip: Length,
}

/// The lengths that fit.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answer {
    /// Longest that keeps the margin, whether sold or not.
    pub longest: Length,
    /// Longest stock screw that keeps it.
    pub best: Fit,
    /// Shortest stock screw with enough thread in the receiver that keeps the margin, if any.
    pub enough: Option<Length>,
    /// How much thread that is: [`ENOUGH_THREAD`], and [`MORE_IN_END_GRAIN`] there.
    pub enough_thread: Length,
    /// Stock lengths from the first that grips to the first that shows through.
    pub stock: Vec<Fit>,
    /// The length at hand.
    pub at_hand: Option<Fit>,
    /// Least way into the receiver for any design value: 6 diameters, tip counted.
    pub least_by_rule: Length,
}

/// How long a screw may be.
///
/// A sunk head lets the tip go deeper by as much. Tip = sunk + length from the face, so
/// longest = top + receiver - margin - sunk, and into the receiver goes sunk + length - top.
/// The thread is two thirds of the screw.
///
/// # Errors
///
/// - `head-through-top`, beside how far it is sunk: a head sunk through its piece.
/// - `no-stock-so-long`, beside the piece under the head; `receiver-too-thin`, beside the
///   receiver: no stock length grips without coming within the margin.
///
/// # Source
///
/// Arithmetic; worked by hand as case F4 in `tests/reference/screws.rs`. Thread: NDS Table L3. Six diameters: NDS 12.1.5.6. Stock lengths:
/// NAVEDTRA 14119. That less than 3/8 in is no hold is common practice, no source.
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let Input { top, receiver, head_sunk, margin, .. } = *input;
    if head_sunk >= top {
        Err(Refusal::at(
            &HEAD_SUNK,
            "head-through-top",
            say!["Sunk ", head_sunk, ", the head goes right through a piece of ", top, "."],
            WayOut::set(say!["Leave the head flush: 0."], &HEAD_SUNK, "0".to_owned()),
        ))?;
    }
    let longest = longest(top, receiver, margin, head_sunk)?;
    let mut stock = Vec::new();
    let mut best = None;
    let mut enough = None;
    let more = if input.end_grain { MORE_IN_END_GRAIN } else { Length::ZERO };
    let enough_thread = (ENOUGH_THREAD + more)?;
    for length in stock_lengths() {
        let fit = fit(input, length)?;
        if fit.into_receiver < LEAST_INTO {
            continue;
        }
        let shows_through = fit.behind_tip.is_negative();
        if length <= longest {
            best = Some(fit);
            if enough.is_none() && fit.thread_in_receiver >= enough_thread {
                enough = Some(length);
            }
        }
        stock.push(fit);
        if shows_through {
            break;
        }
    }
    let Some(best) = best else {
        return Err(no_screw(input, longest)?.into());
    };
    Ok(Answer {
        longest,
        best,
        enough,
        enough_thread,
        stock,
        at_hand: input.at_hand.map(|length| fit(input, length)).transpose()?,
        least_by_rule: (input.screw.shank()? * 6)?,
    })
}

fn longest(
    top: Length,
    receiver: Length,
    margin: Length,
    head_sunk: Length,
) -> Result<Length, OutOfRange> {
    ((top + receiver)? - margin)? - head_sunk
}

fn fit(input: &Input, length: Length) -> Result<Fit, OutOfRange> {
    let tip = (input.head_sunk + length)?;
    let into_receiver = (tip - input.top)?;
    let thread = input.screw.thread(length)?;
    Ok(Fit {
        length,
        into_receiver,
        thread_in_receiver: thread.min(into_receiver).max(Length::ZERO),
        behind_tip: ((input.top + input.receiver)? - tip)?,
    })
}

/// Why no stock length grips, and whether driving it from the other side would.
fn no_screw(input: &Input, longest: Length) -> Result<Refusal, OutOfRange> {
    let Input { top, receiver, head_sunk, margin, .. } = *input;
    // The shortest stock screw that grips.
    let shortest = stock_lengths().into_iter().find(|length| {
        (head_sunk + *length).and_then(|tip| tip - top).is_ok_and(|into| into >= LEAST_INTO)
    });
    let Some(shortest) = shortest else {
        return Ok(Refusal::at(
            &TOP_THICKNESS,
            "no-stock-so-long",
            say!["No stock screw is long enough for a piece of ", top, "."],
            WayOut::advice(say!["Use a bolt, or bore a wide hole to sink the head deeper."]),
        ));
    };
    let receiver_needed = (((head_sunk + shortest)? - top)? + margin)?;
    let swapped_works = head_sunk < receiver
        && stock_lengths().into_iter().any(|length| {
            let into = (head_sunk + length).and_then(|tip| tip - receiver);
            length <= longest && into.is_ok_and(|into| into >= LEAST_INTO)
        });
    let way_out = if swapped_works {
        Some(WayOut {
            sentence: say!["Drive it from the other side, through the thinner piece."],
            set: vec![
                (TOP_THICKNESS.id, exact_text(receiver).into()),
                (RECEIVER_THICKNESS.id, exact_text(top).into()),
            ],
        })
    } else {
        WayOut::set(
            say!["The other piece must be ", (receiver_needed, Rounding::Up), " at least."],
            &RECEIVER_THICKNESS,
            (receiver_needed, Rounding::Up),
        )
    };
    Ok(Refusal::at(
        &RECEIVER_THICKNESS,
        "receiver-too-thin",
        no_stock_screw_holds(receiver),
        way_out,
    ))
}

/// Said of a receiver that is too thin.
pub(super) fn no_stock_screw_holds(receiver: Length) -> Sentence {
    say!["No stock screw holds in wood of ", receiver, " and keeps its tip inside the margin."]
}
