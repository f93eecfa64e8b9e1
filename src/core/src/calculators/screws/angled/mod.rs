//! Angled screws: from a pocket in the face, or toed in from it, through the end of one part into
//! the face of another.

mod drawing;
mod sheet;

pub(super) use sheet::work;

use super::LEAST_INTO;
use super::fields::{EXIT, RECEIVER_THICKNESS, SEAT_WOOD, START_BACK};
use super::length::no_stock_screw_holds;
use crate::measure::{Angle, Length, OutOfRange};
use crate::say;
use crate::sheet::{Refusal, Refused, WayOut};
use crate::tables::fasteners::stock_lengths;

/// Where the axis runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Find {
    /// The start, so that the axis leaves the end this far from the drilled face; `None` for the
    /// middle of the thickness.
    Start(Option<Length>),
    /// The exit, from a start this far from the end along the drilled face.
    Exit(Length),
}

/// Where the head stops.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Seat {
    /// At the drilled face: a toed screw.
    Face,
    /// On a shoulder in a pocket, with this much wood between it and the end, along the axis.
    Shoulder(Length),
}

/// What to reckon an angled screw from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Input {
    /// Thickness of the drilled part, from the drilled face to the far face.
    pub thickness: Length,
    /// Between axis and **drilled face**.
    pub angle: Angle,
    /// Where the axis runs.
    pub find: Find,
    /// Where the head stops.
    pub seat: Seat,
    /// The receiver, along the drilled part.
    pub receiver: Length,
    /// How far the receiver goes on past the far face of the drilled part.
    pub beyond: Length,
    /// Wood that must stay around the tip.
    pub margin: Length,
    /// How deep the tip is to go, square into the receiver.
    pub wanted_deep: Length,
    /// A length at hand, to be checked beside the stock ones.
    pub at_hand: Option<Length>,
}

/// Where the tip of a screw of one length ends up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fit {
    /// Length of the screw.
    pub length: Length,
    /// Past the end of the drilled part, along the axis; below zero when it stays in the part.
    pub past_end: Length,
    /// Into the receiver, square to its face.
    pub deep: Length,
    /// Sideways in the receiver, away from the drilled face.
    pub drift: Length,
    /// Tip to the drilled face, square to it.
    pub tip_from_face: Length,
    /// What is wrong with it, if anything.
    pub fault: Option<Fault>,
}

/// Why a length will not do.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// Less than 3/8 in into the receiver.
    TooShort,
    /// Within the margin of the receiver's far face, or through it.
    TooDeep,
    /// Within the margin of the receiver's side, or through it.
    TooFarAside,
}

/// An angled screw.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// Start of the axis, from the end along the drilled face.
    pub start: Length,
    /// Where it leaves the end, from the drilled face.
    pub exit: Length,
    /// The axis within the drilled part, face to end.
    pub axis: Length,
    /// From the face along the axis to the seat: how deep the pocket is drilled. Zero at the face.
    pub to_seat: Length,
    /// Shortest stock screw that goes as deep as wanted, else the longest that is at fault nowhere.
    pub best: Fit,
    /// Stock lengths from the first that passes the end to the first that goes too far.
    pub stock: Vec<Fit>,
    /// The length at hand.
    pub at_hand: Option<Fit>,
}

/// An angled screw through the end of one part into the face of another.
///
/// With A between axis and drilled face: start = exit ÷ tan A from the end, axis in the part =
/// exit ÷ sin A. The seat decides how much of the screw passes the end: P = length - wood under
/// the head. The tip lies P cos A deep in the receiver and P sin A aside of the exit.
///
/// # Errors
///
/// - `exit-outside`, beside the exit or the start: an exit outside the end of the part.
/// - `seat-outside`, beside the wood under the head: a seat outside of it.
/// - `no-angled-screw`, beside the receiver: no stock length grips without coming within the
///   margin.
///
/// # Source
///
/// Plane geometry; sines and tangents are floats.
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let thickness = input.thickness;
    let exit = match input.find {
        Find::Start(None) => (thickness / 2)?,
        Find::Start(Some(exit)) => exit,
        Find::Exit(start) => Length::near(start.to_f64() * input.angle.tan())?,
    };
    if exit >= thickness || !exit.is_positive() {
        return Err(exit_outside(input, exit)?.into());
    }
    let start = match input.find {
        Find::Exit(start) => start,
        Find::Start(_) => Length::near(exit.to_f64() / input.angle.tan())?,
    };
    let axis = Length::near(exit.to_f64() / input.angle.sin())?;
    let under_head = match input.seat {
        Seat::Face => axis,
        Seat::Shoulder(wood) => wood,
    };
    if under_head > axis {
        let half = (axis / 2)?;
        Err(Refusal::at(
            &SEAT_WOOD,
            "seat-outside",
            say![
                "There is only ",
                axis,
                " of wood along the screw: a seat cannot leave ",
                under_head,
                "."
            ],
            WayOut::set(say!["Leave ", half, ", half of it."], &SEAT_WOOD, half),
        ))?;
    }
    let mut stock = Vec::new();
    let mut best: Option<Fit> = None;
    for length in stock_lengths() {
        let fit = fit(input, exit, under_head, length)?;
        if !fit.past_end.is_positive() {
            continue;
        }
        if fit.fault.is_none() && best.is_none_or(|best| best.deep < input.wanted_deep) {
            best = Some(fit);
        }
        stock.push(fit);
        if matches!(fit.fault, Some(Fault::TooDeep | Fault::TooFarAside)) {
            break;
        }
    }
    let Some(best) = best else {
        return Err(no_angled_screw(input.receiver, &stock).into());
    };
    let at_hand = input.at_hand.map(|length| fit(input, exit, under_head, length)).transpose()?;
    Ok(Answer { start, exit, axis, to_seat: (axis - under_head)?, best, stock, at_hand })
}

/// The axis does not leave the part through its end.
fn exit_outside(input: &Input, exit: Length) -> Result<Refusal, OutOfRange> {
    let thickness = input.thickness;
    if let Find::Start(_) = input.find {
        return Ok(Refusal::at(
            &EXIT,
            "exit-outside",
            say!["An exit ", exit, " down is outside a piece of ", thickness, "."],
            WayOut::set(
                say!["Leave it empty for the middle of the thickness."],
                &EXIT,
                String::new(),
            ),
        ));
    }
    let start = Length::near(thickness.to_f64() / 2.0 / input.angle.tan())?;
    Ok(Refusal::at(
        &START_BACK,
        "exit-outside",
        say![
            "From there the screw breaks out of the far face: it would reach the end ",
            exit,
            " down, in a piece of ",
            thickness,
            "."
        ],
        WayOut::set(
            say!["Start ", start, " from the end to leave it in the middle."],
            &START_BACK,
            start,
        ),
    ))
}

fn no_angled_screw(receiver: Length, stock: &[Fit]) -> Refusal {
    let (sentence, way_out) = if stock.iter().any(|fit| fit.fault == Some(Fault::TooFarAside)) {
        (
            say!["The screw comes out of the side of the other piece before it holds."],
            say!["Leave the end nearer the drilled face, or drill less steeply."],
        )
    } else {
        (
            no_stock_screw_holds(receiver),
            say!["Leave more wood under the head, or make the other piece thicker."],
        )
    };
    Refusal::at(&RECEIVER_THICKNESS, "no-angled-screw", sentence, WayOut::advice(way_out))
}

fn fit(input: &Input, exit: Length, under_head: Length, length: Length) -> Result<Fit, OutOfRange> {
    let past_end = (length - under_head)?;
    let along = past_end.to_f64();
    let deep = Length::near(along * input.angle.cos())?;
    let drift = Length::near(along * input.angle.sin())?;
    let tip_from_face = (exit + drift)?;
    let sideways_limit = ((input.thickness + input.beyond)? - input.margin)?;
    let fault = if deep > (input.receiver - input.margin)? {
        Some(Fault::TooDeep)
    } else if tip_from_face > sideways_limit {
        Some(Fault::TooFarAside)
    } else if deep < LEAST_INTO {
        Some(Fault::TooShort)
    } else {
        None
    };
    Ok(Fit { length, past_end, deep, drift, tip_from_face, fault })
}
