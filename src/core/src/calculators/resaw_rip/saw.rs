//! The saw and what it can do to one cut: through in one go, from both sides, or not at all.

use super::fields::{CORE_BY_HAND, PIECE_LENGTH, REACH};
use super::nearest::at_most;
use crate::measure::{Length, OutOfRange};
use crate::say;
use crate::sheet::{Field, Refusal, Refused, WayOut};

/// The blade stands this much above the work in a cut that goes through: 1/8 in, the low end of
/// the 1/8 to 1/4 in that saw manuals give, so that the least blade shows.
pub const ABOVE_WORK: Length = Length::sixty_fourths(8);

/// Most that the blade may stand above the work: 1/4 in, the high end in saw manuals.
pub const MOST_ABOVE_WORK: Length = Length::sixty_fourths(16);

/// From both sides the blade goes this much past the middle: 1/4 in (saw manuals, textbooks), so
/// that the two kerfs overlap by twice as much.
pub const PAST_MIDDLE: Length = Length::sixty_fourths(16);

/// In hard or wet wood the blade goes up about this much at a time. Common practice, no source.
pub const RISE_STEP: Length = Length::sixty_fourths(64);

/// Shortest piece that is ripped on the table saw here: 6 in. Common practice, no source; saw
/// manuals name the same length for loose pieces that are crosscut.
pub const SHORTEST: Length = Length::sixty_fourths(6 * 64);

/// A piece with neither side this wide cannot be held down and pushed: 3/4 in. Common practice,
/// no source.
pub const NARROWEST: Length = Length::sixty_fourths(48);

/// Largest side of a section that is taken for lumber: 48 in.
pub const LARGEST: Length = Length::sixty_fourths(48 * 64);

/// How the blade is brought to its height.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rise {
    /// At once.
    AtOnce,
    /// About 1 in at a time, with a pass at each height: for hard or wet wood.
    InSteps,
}

/// The saw, and the length of the piece that is pushed through it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Saw {
    /// Width of the cut.
    pub kerf: Length,
    /// Deepest cut at 90 degrees.
    pub reach: Length,
    /// How the blade is brought to its height.
    pub rise: Rise,
    /// Whether a core that the blade cannot reach is sawn through by hand.
    pub core_by_hand: bool,
    /// Thinnest piece that may run between blade and fence.
    pub thinnest: Length,
    /// Length of the piece.
    pub piece_length: Length,
}

/// How one cut goes through its depth.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sweep {
    /// Thickness of the wood above the table.
    pub depth: Length,
    /// 1: the blade comes through. 2: once from each edge, the same face to the fence.
    pub sides: u32,
    /// Height of the blade above the table at the last pass.
    pub height: Length,
    /// Height at each pass from one side; the last is `height`.
    pub heights: Vec<Length>,
    /// How far the two kerfs run into each other; zero in a cut from one side.
    pub overlap: Length,
    /// What stays uncut in the middle, for a hand saw; zero when nothing does.
    pub core: Length,
}

impl Sweep {
    fn at(depth: Length, sides: u32, height: Length, rise: Rise) -> Result<Sweep, OutOfRange> {
        let met = ((height * sides)? - depth)?;
        let from_both = sides == 2;
        Ok(Sweep {
            depth,
            sides,
            height,
            heights: heights(height, rise)?,
            overlap: if from_both && met.is_positive() { met } else { Length::ZERO },
            core: if met.is_negative() { -met } else { Length::ZERO },
        })
    }

    /// The same cut with the blade at another height, as when two cuts share a setting.
    ///
    /// # Errors
    ///
    /// [`OutOfRange`] when a result is too fine to keep.
    pub fn with_height(&self, height: Length, rise: Rise) -> Result<Sweep, OutOfRange> {
        Sweep::at(self.depth, self.sides, height, rise)
    }

    /// Passes over the blade for one piece.
    #[must_use]
    pub fn passes(&self) -> u32 {
        u32::try_from(self.heights.len()).unwrap_or(u32::MAX).saturating_mul(self.sides)
    }
}

fn heights(height: Length, rise: Rise) -> Result<Vec<Length>, OutOfRange> {
    let mut heights = Vec::new();
    if rise == Rise::InSteps {
        let mut step = RISE_STEP;
        while step < height {
            heights.push(step);
            step = (step + RISE_STEP)?;
        }
    }
    heights.push(height);
    Ok(heights)
}

impl Saw {
    /// How a cut this deep is made.
    ///
    /// Through in one go when the blade reaches; else from both edges at half the depth + 1/4 in,
    /// or as high as the blade goes. What both passes leave between them is the core.
    ///
    /// # Errors
    ///
    /// `cannot-reach`, beside the reach, when a core is left that nobody means to saw by hand.
    ///
    /// ```
    /// # use reckoner_core::{measure::length, calculators::resaw_rip::saw::{Rise, Saw}};
    /// let saw = Saw {
    ///     kerf: length("1/8")?, reach: length("3 1/8")?, rise: Rise::AtOnce,
    ///     core_by_hand: false, thinnest: length("1/4")?, piece_length: length("30")?,
    /// };
    /// let sweep = saw.sweep(length("3 1/4")?).map_err(|_| "refused")?;
    /// assert_eq!((sweep.sides, sweep.height), (2, length("1 7/8")?));
    /// assert_eq!(sweep.overlap, length("1/2")?);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn sweep(&self, depth: Length) -> Result<Sweep, Refused> {
        if depth <= self.reach {
            let height = (depth + ABOVE_WORK)?.min(self.reach);
            return Ok(Sweep::at(depth, 1, height, self.rise)?);
        }
        let height = ((depth / 2)? + PAST_MIDDLE)?.min(self.reach);
        let sweep = Sweep::at(depth, 2, height, self.rise)?;
        if sweep.core.is_positive() && !self.core_by_hand {
            Err(Refusal::at(
                &REACH,
                "cannot-reach",
                say![
                    "The blade reaches ",
                    self.reach,
                    ". From both edges of ",
                    depth,
                    " it leaves ",
                    sweep.core,
                    " uncut in the middle."
                ],
                WayOut::set(
                    say!["Leave the ", sweep.core, " core and finish it with a hand saw."],
                    &CORE_BY_HAND,
                    "yes".to_owned(),
                ),
            ))?;
        }
        Ok(sweep)
    }

    /// What makes a piece of this section unfit for the table saw: too short, too narrow, or too
    /// large to be lumber. The fields are those of its two sides.
    #[must_use]
    pub fn unfit(&self, sides: [(&Field, Length); 2]) -> Vec<Refusal> {
        let mut refusals = Vec::new();
        for (field, side) in sides {
            if side > LARGEST {
                refusals.push(Refusal::at(
                    field,
                    "too-large",
                    say![side, " is more than lumber comes in. The limit here is ", LARGEST, "."],
                    at_most(field, LARGEST),
                ));
            }
        }
        if self.piece_length < SHORTEST {
            let length = self.piece_length;
            refusals.push(Refusal::at(
                &PIECE_LENGTH,
                "too-short",
                say!["A piece ", length, " long is too short to rip on a table saw."],
                WayOut::at_least(
                    "Rip it from a piece of ",
                    SHORTEST,
                    " or more, then cut it to length.",
                    &PIECE_LENGTH,
                ),
            ));
        }
        let [(_, thickness), (field, width)] = sides;
        let widest = thickness.max(width);
        if widest < NARROWEST {
            refusals.push(Refusal::at(
                field,
                "too-narrow",
                say!["A stick no wider than ", widest, " cannot be held down and pushed."],
                WayOut::advice(say![
                    "Cut it from a board of ",
                    NARROWEST,
                    " or wider, and let it fall on the far side."
                ]),
            ));
        }
        refusals
    }
}

/// Step in the middle when opposite faces go to the fence on the two passes of a cut from both
/// edges. With the same face to the fence there is none, wherever the cut is.
///
/// The two kerfs miss each other by thickness − kerf − 2 × fence: zero when the cut runs along the
/// middle. But a face is never stepped by more than what comes off it, thickness − fence: near a
/// face the kerfs lie on opposite sides, and each takes its rabbet there.
///
/// # Errors
///
/// [`OutOfRange`] when the result is too fine to keep.
///
/// ```
/// # use reckoner_core::{measure::length, calculators::resaw_rip::saw::step_when_turned};
/// let step = step_when_turned(length("3 1/2")?, length("1/8")?, length("1 1/2")?)?;
/// assert_eq!(step, length("3/8")?);
/// // 1/8 off the face of a 4×4.
/// let step = step_when_turned(length("3 1/2")?, length("1/8")?, length("3 3/8")?)?;
/// assert_eq!(step, length("1/8")?);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn step_when_turned(
    thickness: Length,
    kerf: Length,
    fence: Length,
) -> Result<Length, OutOfRange> {
    let apart = (((thickness - kerf)? - (fence * 2)?)?).abs();
    Ok(apart.min((thickness - fence)?))
}
