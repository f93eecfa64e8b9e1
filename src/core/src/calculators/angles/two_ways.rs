//! A leg that leans front to back and side to side.

use super::fields::RAKE;
use super::leg;
use crate::measure::{Angle, Length, Number};
use crate::say;
use crate::sheet::{Refusal, Refused, WayOut};

/// How the leg is turned about its own length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Faces {
    /// Round, or square with a face turned to the lean.
    Turned,
    /// Square, with its side faces along the front-to-back rails.
    Square,
}

/// What is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Input {
    /// Straight up, from the floor to the underside of the top.
    pub height: Length,
    /// Lean front to back as seen from the side, in degrees from upright, below 90.
    pub rake: Number,
    /// Lean side to side as seen from the front, in degrees from upright, below 90.
    pub splay: Number,
    /// Diameter, or side of the square.
    pub thickness: Length,
    /// How the leg is turned.
    pub faces: Faces,
    /// Outside to outside of the legs at their tops, front to back.
    pub apart_rake: Option<Length>,
    /// Outside to outside of the legs at their tops, side to side.
    pub apart_splay: Option<Length>,
}

/// The leg.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Answer {
    /// Lean from upright in the direction in which the leg really leans: the angle to drill at.
    pub resultant: Angle,
    /// That direction on the underside of the top, from the front-to-back line.
    pub sightline: Angle,
    /// Along the middle of the leg, from end cut to end cut.
    pub middle: Length,
    /// Square-ended stick that the leg is cut from.
    pub blank: Length,
    /// Swing of the gauge from square across the leg, for both ends; a side face on the table
    /// when square, the lean across the table when turned.
    pub gauge: Angle,
    /// Tilt of the blade from upright, for both ends; none when turned.
    pub tilt: Angle,
    /// How far the foot stands out, front to back.
    pub foot_rake: Length,
    /// How far the foot stands out, side to side.
    pub foot_splay: Length,
    /// Outside to outside of the feet, front to back.
    pub spread_rake: Option<Length>,
    /// Outside to outside of the feet, side to side.
    pub spread_splay: Option<Length>,
}

/// The leg that leans two ways.
///
/// # Errors
///
/// - `upright`: it leans neither way.
/// - [`Refused::OutOfRange`]: a number beyond the limits.
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    if input.rake == Number::ZERO && input.splay == Number::ZERO {
        Err(Refusal::at(
            &RAKE,
            "upright",
            say!["With both at 0 the leg stands upright and leans nowhere."],
            WayOut::advice(say!["Give one of the two angles."]),
        ))?;
    }
    let (height, thickness) = (input.height.to_f64(), input.thickness.to_f64());
    let rake = Angle::degrees(input.rake.to_f64());
    let splay = Angle::degrees(input.splay.to_f64());
    let lean = libm::hypot(rake.tan(), splay.tan());
    let resultant = Angle::atan(lean);
    // The end cut of a square leg whose side faces hold the front-to-back line: seen on such a
    // face it runs at the gauge, and it is out of square to the face by the splay.
    let (gauge, tilt, across) = match input.faces {
        Faces::Turned => (resultant, Angle::degrees(0.0), lean),
        Faces::Square => {
            let gauge = Angle::atan(rake.tan() * splay.cos());
            // How much longer the stick is for each unit of its thickness, both faces together.
            let across = gauge.tan() + splay.sin() / resultant.cos();
            (gauge, splay, across)
        }
    };
    let middle = height / resultant.cos();
    let foot_rake = Length::near(height * rake.tan())?;
    let foot_splay = Length::near(height * splay.tan())?;
    Ok(Answer {
        resultant,
        sightline: Angle::atan2(splay.tan(), rake.tan()),
        middle: Length::near(middle)?,
        blank: Length::near(middle + thickness * across)?,
        gauge,
        tilt,
        foot_rake,
        foot_splay,
        spread_rake: leg::spread(input.apart_rake, foot_rake)?,
        spread_splay: leg::spread(input.apart_splay, foot_splay)?,
    })
}
