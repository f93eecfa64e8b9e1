//! Square up or resize a section: the fence for each cut, one fence move for all pieces.
//!
//! # Rule
//!
//! Faces are numbered round the near end: 1 and 3 are across the width, 2 and 4 across the
//! thickness. To cut face 1, face 3 goes to the fence, and the fence stands at what shall be
//! left. The cuts are taken from the widest fence setting to the narrowest, so that a square post
//! has two adjacent faces cut at the first setting and the other two at the second. The wider way
//! comes first: rip near the final width before resawing.
//!
//! # Source
//!
//! Common practice, no source, with the reach and height rules of [`super::saw`]. Worked by hand
//! as case R3 in `tests/reference/resaw_rip.rs`.

use super::fields::{EVEN, SHARE, STOCK_THICKNESS, STOCK_WIDTH, TARGET_THICKNESS, TARGET_WIDTH};
use super::nearest::{at_least, at_most, too_thin_at_fence};
use super::refused::add;
use super::saw::{MOST_ABOVE_WORK, Saw, Sweep, step_when_turned};
use crate::measure::text::exact_text;
use crate::measure::{Length, OutOfRange};
use crate::say;
use crate::sheet::{Field, Refusal, Refused, WayOut};

/// The two ways across a section.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// Between faces 1 and 3.
    Width,
    /// Between faces 2 and 4.
    Thickness,
}

impl Way {
    /// The face cut first and the face opposite.
    fn faces(self) -> [u32; 2] {
        match self {
            Way::Width => [1, 3],
            Way::Thickness => [2, 4],
        }
    }

    /// The field of the target.
    fn target(self) -> &'static Field {
        match self {
            Way::Width => &TARGET_WIDTH,
            Way::Thickness => &TARGET_THICKNESS,
        }
    }
}

/// How many faces of an opposite pair are cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Faces {
    /// Both.
    Both,
    /// Only the first; the other is good.
    One,
}

/// How what comes off is shared between opposite faces.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Share {
    /// The same off both.
    Even,
    /// A kerf off the first, the rest off the other: one useful strip instead of two thin ones.
    KerfFirst,
}

/// A section and what it shall become.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Input {
    /// Stock, between faces 2 and 4.
    pub thickness: Length,
    /// Stock, between faces 1 and 3.
    pub width: Length,
    /// Wanted thickness.
    pub target_thickness: Length,
    /// Wanted width.
    pub target_width: Length,
    /// Which of faces 2 and 4 are cut.
    pub thickness_faces: Faces,
    /// Which of faces 1 and 3 are cut.
    pub width_faces: Faces,
    /// How the two faces of a pair share.
    pub share: Share,
    /// How many pieces go through each setting.
    pub n_pieces: u32,
    /// The saw.
    pub saw: Saw,
}

/// One face cut, on every piece, before the next.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Cut {
    /// Number of the fence setting, from 1; cuts of one setting follow each other.
    pub setting: u32,
    /// Fence to near tooth: what is left this way.
    pub fence: Length,
    /// Which way across the section.
    pub way: Way,
    /// The face that is cut.
    pub face: u32,
    /// The face against the fence.
    pub at_fence: u32,
    /// How the cut goes through its depth.
    pub sweep: Sweep,
    /// All that comes off this face.
    pub off: Length,
    /// What of it the blade turns to dust: the kerf, or less when less comes off.
    pub dust: Length,
    /// Thickness of the strip that falls; zero when the blade takes everything.
    pub strip: Length,
    /// Step in the middle if the other face went to the fence on the second pass; zero in a cut
    /// from one side.
    pub step_if_turned: Length,
    /// Thickness before this cut.
    pub thickness_before: Length,
    /// Width before this cut.
    pub width_before: Length,
    /// Thickness after this cut.
    pub thickness_after: Length,
    /// Width after this cut.
    pub width_after: Length,
}

/// The cuts in order.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answer {
    /// At least one.
    pub cuts: Vec<Cut>,
    /// Times the fence is set.
    pub n_settings: u32,
    /// Passes over the blade for one piece.
    pub passes_per_piece: u32,
    /// Passes for all pieces.
    pub n_passes: u64,
}

/// One cut before its depth is known.
struct Planned {
    way: Way,
    face: u32,
    at_fence: u32,
    fence: Length,
}

/// The fence for each cut, in batch order.
///
/// # Errors
///
/// All that apply, with the nearest thing that works:
/// - `target-larger`, `nothing-to-cut`, `nothing-for-second-face`
/// - `too-thin-at-fence`, and `cannot-reach` of [`Saw::sweep`]
/// - `too-short`, `too-narrow`, `too-large` of [`Saw::unfit`]
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let sides = [(&STOCK_THICKNESS, input.thickness), (&STOCK_WIDTH, input.width)];
    let mut refusals = input.saw.unfit(sides);
    let mut cuts = Vec::new();
    match plan(input).and_then(|planned| saw_all(input, &planned)) {
        Ok(made) => cuts = made,
        Err(refused) => add(&mut refusals, refused),
    }
    Refused::unless_none(refusals)?;
    Ok(sum_up(cuts, input.n_pieces))
}

/// The cuts both ways in batch order, or all that is in the way.
fn plan(input: &Input) -> Result<Vec<Planned>, Refused> {
    let (mut planned, mut refusals) = (Vec::new(), Vec::new());
    for way in [Way::Width, Way::Thickness] {
        match plan_way(input, way) {
            Ok(cuts) => planned.extend(cuts),
            Err(refused) => add(&mut refusals, refused),
        }
    }
    if refusals.is_empty() && planned.is_empty() {
        refusals.push(Refusal::at(
            &TARGET_WIDTH,
            "nothing-to-cut",
            say!["The stock has this size already. There is nothing to cut."],
            WayOut::advice(say!["Give a target that is smaller in one way at least."]),
        ));
    }
    Refused::unless_none(refusals)?;
    // Within one way the fence only moves in, so this never puts a second face before the first.
    crate::order::sort_by(&mut planned, |a, b| b.fence.cmp(&a.fence).then(a.face.cmp(&b.face)));
    Ok(planned)
}

/// The cuts this way, or what is in the way.
fn plan_way(input: &Input, way: Way) -> Result<Vec<Planned>, Refused> {
    let (stock, target, faces) = match way {
        Way::Width => (input.width, input.target_width, input.width_faces),
        Way::Thickness => (input.thickness, input.target_thickness, input.thickness_faces),
    };
    let off = (stock - target)?;
    if off.is_negative() {
        return Err(target_larger(input, way, stock, target).into());
    }
    if off.is_zero() {
        return Ok(Vec::new());
    }
    let Saw { kerf, thinnest, .. } = input.saw;
    if target < thinnest {
        let field = way.target();
        let nearest = if thinnest <= stock { at_least(field, thinnest) } else { None };
        return Err(too_thin_at_fence(field, target, thinnest, nearest).into());
    }
    let fences = match (faces, input.share) {
        (Faces::One, _) => vec![target],
        (Faces::Both, Share::Even) => vec![(stock - (off / 2)?)?, target],
        (Faces::Both, Share::KerfFirst) if off <= kerf => {
            return Err(nothing_for_second_face(off, kerf).into());
        }
        (Faces::Both, Share::KerfFirst) => vec![(stock - kerf)?, target],
    };
    let [first, second] = way.faces();
    let pairs = [(first, second), (second, first)];
    let planned = fences.into_iter().zip(pairs).map(|(fence, (face, at_fence))| Planned {
        way,
        face,
        at_fence,
        fence,
    });
    Ok(planned.collect())
}

/// A section cannot grow.
fn target_larger(input: &Input, way: Way, stock: Length, target: Length) -> Refusal {
    let (width, thickness) = (input.target_thickness, input.target_width);
    let way_out = if thickness <= input.thickness && width <= input.width {
        Some(WayOut {
            sentence: say!["Turned a quarter it fits: ", width, " wide, ", thickness, " thick."],
            set: vec![
                (TARGET_WIDTH.id, exact_text(width).into()),
                (TARGET_THICKNESS.id, exact_text(thickness).into()),
            ],
        })
    } else {
        at_most(way.target(), stock)
    };
    let sentence =
        say!["The target is ", target, " but the stock only ", stock, ". A saw takes off."];
    Refusal::at(way.target(), "target-larger", sentence, way_out)
}

fn nothing_for_second_face(off: Length, kerf: Length) -> Refusal {
    Refusal::at(
        &SHARE,
        "nothing-for-second-face",
        say![
            "Only ",
            off,
            " comes off. A kerf of ",
            kerf,
            " off the first face leaves nothing for the second."
        ],
        WayOut::set(say!["Take the same off both faces."], &SHARE, EVEN.id.to_owned()),
    )
}

/// Takes the section through the cuts one by one.
fn saw_all(input: &Input, planned: &[Planned]) -> Result<Vec<Cut>, Refused> {
    let (mut thickness, mut width) = (input.thickness, input.width);
    let mut cuts: Vec<Cut> = Vec::new();
    for next in planned {
        let setting = match cuts.last() {
            Some(cut) if cut.fence == next.fence => cut.setting,
            Some(cut) => cut.setting.saturating_add(1),
            None => 1,
        };
        let (across, depth) = match next.way {
            Way::Width => (width, thickness),
            Way::Thickness => (thickness, width),
        };
        let sweep = input.saw.sweep(depth)?;
        let off = (across - next.fence)?;
        let dust = off.min(input.saw.kerf);
        let (thickness_before, width_before) = (thickness, width);
        match next.way {
            Way::Width => width = next.fence,
            Way::Thickness => thickness = next.fence,
        }
        let step_if_turned = if sweep.sides == 2 {
            step_when_turned(across, input.saw.kerf, next.fence)?
        } else {
            Length::ZERO
        };
        cuts.push(Cut {
            setting,
            fence: next.fence,
            way: next.way,
            face: next.face,
            at_fence: next.at_fence,
            sweep,
            off,
            dust,
            strip: (off - dust)?,
            step_if_turned,
            thickness_before,
            width_before,
            thickness_after: thickness,
            width_after: width,
        });
    }
    share_heights(&mut cuts, input.saw)?;
    Ok(cuts)
}

/// Cuts of one fence setting share one blade height where that stays within the rules, so that
/// the blade is not moved between them.
fn share_heights(cuts: &mut [Cut], saw: Saw) -> Result<(), OutOfRange> {
    for setting in cuts.chunk_by_mut(|a, b| a.setting == b.setting) {
        for sides in [1, 2] {
            let same = setting.iter().filter(|cut| cut.sweep.sides == sides);
            let Some(highest) = same.map(|cut| cut.sweep.height).max() else { continue };
            for cut in setting.iter_mut().filter(|cut| cut.sweep.sides == sides) {
                let above = (highest - cut.sweep.depth)?;
                if sides == 2 || above <= MOST_ABOVE_WORK {
                    cut.sweep = cut.sweep.with_height(highest, saw.rise)?;
                }
            }
        }
    }
    Ok(())
}

fn sum_up(cuts: Vec<Cut>, n_pieces: u32) -> Answer {
    let passes_per_piece =
        cuts.iter().fold(0_u32, |sum, cut| sum.saturating_add(cut.sweep.passes()));
    Answer {
        n_settings: cuts.last().map_or(0, |cut| cut.setting),
        passes_per_piece,
        n_passes: u64::from(passes_per_piece).saturating_mul(n_pieces.into()),
        cuts,
    }
}
