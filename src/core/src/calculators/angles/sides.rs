//! The sides of a frame or box: upright, leaning or lying flat; mitred or butted.

use super::Lay;
use super::fields::{ACROSS, JOINT, MITRED};
use crate::measure::{Angle, Length, Number, Rounding};
use crate::say;
use crate::sheet::{Refusal, Refused, WayOut};

/// The steepest end of a butted side that is still an end and not a feather edge.
pub const STEEPEST_BUTT: f64 = 75.0;

/// How the sides meet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Joint {
    /// Both ends cut to the plane that halves the corner.
    Mitred,
    /// One end runs against the inside face of the next side.
    Butt,
}

/// The sizes of a mitred frame or box.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Size {
    /// Flat to flat across the wider end, outside: twice the distance from the middle to a side.
    pub across: Length,
    /// Width of the board, along the slope.
    pub board: Length,
}

/// What is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Input {
    /// How many sides, 3 or more.
    pub sides: u32,
    /// Degrees from upright: 0 for straight sides, 90 for a frame that lies flat.
    pub lean: Number,
    /// How they meet.
    pub joint: Joint,
    /// How the board is presented to the saw.
    pub lay: Lay,
    /// The sizes of a mitred box, if lengths are wanted.
    pub size: Option<Size>,
}

/// A setting of the saw for the end of a side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Setting {
    /// Swing of the gauge from square across the board.
    pub gauge: Angle,
    /// Tilt of the blade from upright.
    pub tilt: Angle,
}

/// The sides.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Answer {
    /// Half the turn from side to side: 180° ÷ sides.
    pub half_turn: Angle,
    /// For the lay that was asked.
    pub setting: Setting,
    /// For the other lay.
    pub other: Setting,
    /// Which face of the side comes out longer; neither when the ends are square to it.
    pub longer: Option<Face>,
    /// Of a mitred side: along its outside face at the wider end, and at the narrower end.
    pub edges: Option<(Length, Length)>,
    /// How far the last joint stands open if each end is cut a tenth of a degree off, in degrees.
    pub opens_by: f64,
}

/// A face of a side.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Face {
    /// The one away from the middle of the box.
    Outside,
    /// The one towards the middle.
    Inside,
}

/// The saw settings for the sides.
///
/// # Errors
///
/// - `feather-edge`: the end of a butted side would run out to one.
/// - `sides-meet`: the leaning sides meet before the boards end.
/// - [`Refused::OutOfRange`]: a number beyond the limits.
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let sides = f64::from(input.sides);
    let half_turn = Angle::degrees(180.0 / sides);
    let lean = Angle::degrees(input.lean.to_f64());
    let (flat, on_edge, outward) = match input.joint {
        Joint::Mitred => mitred(half_turn, lean),
        Joint::Butt => butt(half_turn, lean),
    };
    let (setting, other) = match input.lay {
        Lay::Flat => (flat, on_edge),
        Lay::OnEdge => (on_edge, flat),
    };
    let mut refusals = Vec::new();
    if input.joint == Joint::Butt && flat.tilt.in_degrees() > STEEPEST_BUTT {
        let tilt = flat.tilt.in_degrees();
        refusals.push(Refusal::at(
            &JOINT,
            "feather-edge",
            say![format!("This end would be cut {tilt:.0}° out of square, to a feather edge.")],
            WayOut::set(say!["Mitre the ends."], &JOINT, MITRED.id.to_owned()),
        ));
    }
    let edges = match input.size {
        Some(size) if input.joint == Joint::Mitred => {
            let wide = size.across.to_f64();
            let taken = 2.0 * size.board.to_f64() * lean.sin();
            if taken >= wide {
                refusals.push(sides_meet(size.across, Length::near(taken)?));
            }
            let edge = |across: f64| Length::near(across * half_turn.tan());
            Some((edge(wide)?, edge(wide - taken)?))
        }
        _ => None,
    };
    Refused::unless_none(refusals)?;
    let longer = if flat.tilt.in_degrees() < 0.005 {
        None
    } else if outward {
        Some(Face::Outside)
    } else {
        Some(Face::Inside)
    };
    Ok(Answer { half_turn, setting, other, longer, edges, opens_by: 2.0 * sides * 0.1 })
}

/// The lean of both sides takes more off the wider end than there is.
fn sides_meet(across: Length, taken: Length) -> Refusal {
    let words = say![
        "The lean takes ",
        taken,
        " off a width of ",
        across,
        ": the sides meet before the boards end."
    ];
    let enough = (taken + Length::sixty_fourths(64))
        .and_then(|enough| Length::of_inch(enough.in_inches().ceil(), 1));
    let way_out = enough.ok().and_then(|whole| {
        let whole = (whole, Rounding::Up);
        WayOut::set(say!["Use narrower boards, or ", whole, " across or more."], &ACROSS, whole)
    });
    Refusal::at(&ACROSS, "sides-meet", words, way_out)
}

/// Flat, on edge, and whether the outside face comes out longer.
fn mitred(half_turn: Angle, lean: Angle) -> (Setting, Setting, bool) {
    let flat = Setting {
        gauge: Angle::atan(lean.sin() * half_turn.tan()),
        tilt: Angle::asin(lean.cos() * half_turn.sin()),
    };
    let on_edge = Setting {
        gauge: Angle::atan(lean.cos() * half_turn.tan()),
        tilt: Angle::asin(lean.sin() * half_turn.sin()),
    };
    (flat, on_edge, true)
}

/// The end lies in the inside face of the next side, which is turned by twice `half_turn`. For
/// four sides these are atan(sin lean) and asin(sin² lean).
fn butt(half_turn: Angle, lean: Angle) -> (Setting, Setting, bool) {
    let turn = Angle::radians(2.0 * half_turn.in_radians());
    // The next side's face seen from this side: along its length, up its width, through it.
    let along = lean.cos() * turn.sin();
    let up = lean.sin() * lean.cos() * (1.0 - turn.cos());
    let through = lean.cos() * lean.cos() * turn.cos() + lean.sin() * lean.sin();
    let flat = Setting { gauge: Angle::atan2(up, along), tilt: Angle::asin(through.abs()) };
    let on_edge = Setting { gauge: Angle::atan2(through.abs(), along), tilt: Angle::asin(up) };
    (flat, on_edge, through < 0.0)
}
