//! Two screws, dowels or tenons that come into one leg from neighbouring faces: do they meet?

mod sheet;

pub(super) use sheet::work;

use super::fields::{A_DEEP, A_OUTSIDE, B_DEEP, B_HEIGHT, B_OUTSIDE};
use crate::measure::{Area, Length, OutOfRange, Rounding};
use crate::say;
use crate::sheet::{Field, Refusal, Refused, WayOut};

/// What comes into the leg; both are alike.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Section {
    /// A screw or dowel of this diameter.
    Round(Length),
    /// A tenon: thickness across the leg, and height along it.
    Tenon(Length, Length),
}

/// One of the two.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Member {
    /// How far it goes into the leg.
    pub deep: Length,
    /// Its axis from the outside face of the leg that it runs along.
    pub from_outside: Length,
    /// Its axis along the leg, from either end, the same for both.
    pub height: Length,
}

/// What to check.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Input {
    /// The leg, square.
    pub leg: Length,
    /// What comes into it.
    pub section: Section,
    /// The two, from neighbouring inner faces.
    pub members: [Member; 2],
}

/// Two that do not meet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Answer {
    /// Wood between them at the nearest place.
    pub between: Length,
    /// How far apart in height they never meet, whatever their lengths.
    pub always_clear: Length,
}

/// Whether two members in one leg meet.
///
/// The first comes in square from one inner face, the second from the neighbouring one. Round:
/// the shortest way between the two axes, each ended at its tip, against one diameter; rounded
/// tips are assumed, so a pointed screw is a little safer than said. Tenons: their boxes must be
/// apart in at least one direction.
///
/// # Errors
///
/// - `they-meet`, beside the second height: members that meet; sets the height that clears them.
/// - `through-leg` and `outside-leg`, beside the member: one that goes right through the leg, or
///   lies outside of it.
///
/// # Source
///
/// Solid geometry.
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let leg = input.leg;
    let across = match input.section {
        Section::Round(size) | Section::Tenon(size, _) => size,
    };
    let half = (across / 2)?;
    let mut refusals = Vec::new();
    let fields = [(&A_DEEP, &A_OUTSIDE), (&B_DEEP, &B_OUTSIDE)];
    for (member, (deep, outside)) in input.members.iter().zip(fields) {
        refusals.extend(through_leg(leg, member.deep, deep)?);
        if (member.from_outside - half)?.is_negative() || (member.from_outside + half)? > leg {
            let middle = (leg / 2)?;
            refusals.push(Refusal::at(
                outside,
                "outside-leg",
                say!["At that place it stands outside a leg of ", leg, "."],
                if across <= leg {
                    WayOut::set(say!["The middle is ", middle, "."], outside, middle)
                } else {
                    WayOut::advice(say!["It is thicker than the leg."])
                },
            ));
        }
    }
    Refused::unless_none(refusals)?;
    let [first, second] = input.members;
    // The first reaches from the inner face to leg - deep, measured from the far outside face;
    // the second's axis lies at its from_outside in the same direction. And the other way round.
    let gap_first = ((leg - first.deep)? - second.from_outside)?;
    let gap_second = ((leg - second.deep)? - first.from_outside)?;
    let apart = (first.height - second.height)?.abs();
    let (between, always_clear) = match input.section {
        Section::Round(diameter) => {
            let ways = [gap_first.max(Length::ZERO), gap_second.max(Length::ZERO), apart];
            let mut square = Area::ZERO;
            for way in ways {
                square = (square + (way * way)?)?;
            }
            let meets = square < (diameter * diameter)?;
            let way = Length::near(libm::sqrt(square.in_square_inches().to_f64()))?;
            // The float only measures; whether they meet is decided exactly.
            let between = (way - diameter)?;
            (if meets { None } else { Some(between.max(Length::ZERO)) }, diameter)
        }
        Section::Tenon(thickness, tall) => {
            let half = (thickness / 2)?;
            let widest = (gap_first - half)?.max((gap_second - half)?).max((apart - tall)?);
            (if widest.is_negative() { None } else { Some(widest) }, tall)
        }
    };
    match between {
        Some(between) => Ok(Answer { between, always_clear }),
        None => {
            let height = (first.height + always_clear)?;
            Err(Refusal::at(
                &B_HEIGHT,
                "they-meet",
                say!["The two meet in the leg."],
                WayOut::set(
                    say!["Set them ", (always_clear, Rounding::Up), " apart in height."],
                    &B_HEIGHT,
                    (height, Rounding::Up),
                ),
            )
            .into())
        }
    }
}

fn through_leg(leg: Length, deep: Length, field: &Field) -> Result<Option<Refusal>, OutOfRange> {
    if deep < leg {
        return Ok(None);
    }
    let half = (leg / 2)?;
    Ok(Some(Refusal::at(
        field,
        "through-leg",
        say!["Going in ", deep, " comes out of a leg of ", leg, "."],
        WayOut::set(say!["Half way in is ", half, "."], field, half),
    )))
}
