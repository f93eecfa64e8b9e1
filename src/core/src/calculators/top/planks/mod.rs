//! Planks and gaps that fill a top, solved for any one of them.

mod sheet;

pub(super) use sheet::work;

use super::fields::{FIND, GAP, PLANKS, RIP_ALL, RIP_OUTER, TOP_WIDTH};
use crate::measure::text::exact_text;
use crate::measure::{Length, OutOfRange, Rounding};
use crate::say;
use crate::sheet::{Field, Refusal, Refused, Sentence, WayOut};

/// Narrowest that a plank is ripped: 3/4 in, as of a stick with no wider side that can be held down
/// and pushed. Common practice, no source.
pub const LEAST_PLANK: Length = Length::sixty_fourths(48);

/// What is wanted, and what is known for it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Find {
    /// The gap that fills the top.
    Gap {
        /// Width of the top, across the planks.
        top: Length,
    },
    /// One width to rip every plank to.
    RipAll {
        /// Width of the top, across the planks.
        top: Length,
        /// Between two planks.
        gap: Length,
    },
    /// One width to rip the outer two planks to; the others stay.
    RipOuter {
        /// Width of the top, across the planks.
        top: Length,
        /// Between two planks.
        gap: Length,
    },
    /// The width of the top.
    Top {
        /// Between two planks.
        gap: Length,
    },
}

/// What to reckon the planks from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Input {
    /// Width of each plank as measured, from the left.
    pub widths: Vec<Length>,
    /// What is wanted.
    pub find: Find,
}

/// Planks that fill the top.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answer {
    /// Width of each plank as it is laid, from the left.
    pub widths: Vec<Length>,
    /// Between two planks.
    pub gap: Length,
    /// Width of the top.
    pub top: Length,
    /// Left edge of each plank, from the left edge of the top.
    pub left_edges: Vec<Length>,
    /// All gaps together: the spacers laid side by side.
    pub gaps_together: Length,
    /// When the gap is no whole 32nd: the spacers just below and above it, and the tops they
    /// make.
    pub spacers: Option<[Spacer; 2]>,
}

/// A spacer on a mark of the tape.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Spacer {
    /// Its thickness.
    pub thickness: Length,
    /// Width of the top that it makes.
    pub top: Length,
}

/// Planks and gaps that fill a top.
///
/// Top = planks + (planks - 1) × gap. For the outer two, what the others and the gaps leave is
/// shared by two. Nothing is rounded; a spacer on a mark and what it makes stand beside the
/// exact gap.
///
/// # Errors
///
/// - `no-planks`, `one-plank`: fewer planks than the question needs.
/// - `planks-overfill`: planks wider than the top.
/// - `gaps-fill-top`: gaps that leave nothing.
/// - `plank-too-narrow`: narrower than what is wanted of it.
/// - `plank-too-thin`: a plank would be ripped to less than [`LEAST_PLANK`].
/// - [`Refused::OutOfRange`]: sizes beyond exact keeping.
///
/// # Source
///
/// Arithmetic; worked by hand as case T1 in `tests/reference/top.rs`.
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let answer = fill(input)?;
    match sliver(input, &answer) {
        Some(width) => Err(too_thin(input, width)?.into()),
        None => Ok(answer),
    }
}

/// The same, also with planks that come out too narrow to be ripped.
fn fill(input: &Input) -> Result<Answer, Refused> {
    let (Some(&first), Some(&last)) = (input.widths.first(), input.widths.last()) else {
        return Err(no_planks().into());
    };
    let n = u32::try_from(input.widths.len()).map_err(|_| OutOfRange)?;
    let planks = sum(&input.widths)?;
    let n_gaps = n.saturating_sub(1);
    let (widths, gap) = match input.find {
        Find::Top { gap } => (input.widths.clone(), gap),
        Find::Gap { .. } | Find::RipOuter { .. } if n_gaps == 0 => {
            let two = format!("2 @ {}", exact_text(first));
            return Err(Refusal::at(
                &PLANKS,
                "one-plank",
                say!["One plank has no gaps and no outer two."],
                WayOut::set(say!["Use two or more."], &PLANKS, two),
            )
            .into());
        }
        Find::Gap { top } => {
            if planks > top {
                Err(Refusal::at(
                    &TOP_WIDTH,
                    "planks-overfill",
                    say!["The planks alone take ", planks, ", more than a top of ", top, "."],
                    WayOut::set(say!["Rip the outer two instead."], &FIND, RIP_OUTER.id.to_owned()),
                ))?;
            }
            (input.widths.clone(), ((top - planks)? / n_gaps)?)
        }
        Find::RipAll { top, gap } => {
            let width = ((top - (gap * n_gaps)?)? / n)?;
            let have = input.widths.iter().copied().fold(first, Length::min);
            if !width.is_positive() {
                return Err(gaps_fill_top(top, true).into());
            }
            if width > have {
                let free = (top - (have * n)?)?;
                let gap = if n_gaps == 0 { None } else { Some((free / n_gaps)?) };
                return Err(too_narrow(width, have, gap).into());
            }
            (vec![width; input.widths.len()], gap)
        }
        Find::RipOuter { top, gap } => {
            let middle = ((planks - first)? - last)?;
            let width = (((top - (gap * n_gaps)?)? - middle)? / 2)?;
            let have = first.min(last);
            if !width.is_positive() {
                return Err(gaps_fill_top(top, top > middle).into());
            }
            if width > have {
                let free = ((top - middle)? - (have * 2)?)?;
                let gap = Some((free / n_gaps)?);
                return Err(too_narrow(width, have, gap).into());
            }
            let mut widths = input.widths.clone();
            for outer in [0, input.widths.len().saturating_sub(1)] {
                if let Some(plank) = widths.get_mut(outer) {
                    *plank = width;
                }
            }
            (widths, gap)
        }
    };
    let gaps_together = (gap * n_gaps)?;
    let laid = sum(&widths)?;
    let mut left_edges = Vec::with_capacity(widths.len());
    let mut edge = Length::ZERO;
    for width in &widths {
        left_edges.push(edge);
        edge = ((edge + *width)? + gap)?;
    }
    let spacers = if n_gaps > 0 { spacers(gap, n_gaps, laid)? } else { None };
    Ok(Answer { widths, gap, top: (laid + gaps_together)?, left_edges, gaps_together, spacers })
}

/// The width to which a plank is ripped, when that is too little.
fn sliver(input: &Input, answer: &Answer) -> Option<Length> {
    let ripped = answer.widths.iter().zip(&input.widths).filter(|(width, have)| width < have);
    ripped.map(|(width, _)| *width).min().filter(|width| *width < LEAST_PLANK)
}

/// A plank would be ripped to a sliver: all alike, fewer planks or a smaller gap may do. The first of them is a tap, and the
/// others are said.
fn too_thin(input: &Input, width: Length) -> Result<Refusal, OutOfRange> {
    let mut ways = ways_out_of_slivers(input)?.into_iter();
    let mut words = say![
        "A plank ripped to ",
        width,
        " is a sliver. Under ",
        LEAST_PLANK,
        " it cannot be held down and pushed."
    ];
    let way_out = match ways.next() {
        Some((way, field, typed)) => {
            let mut sentence = way;
            sentence.0.push(".".into());
            WayOut::set(sentence, field, typed)
        }
        None => WayOut::advice(say!["Use fewer planks, or a wider top."]),
    };
    for (way, ..) in ways {
        words.0.push(" Another way: ".into());
        words.0.extend(way.0);
        words.0.push(".".into());
    }
    Ok(Refusal::at(&PLANKS, "plank-too-thin", words, way_out))
}

/// What is done, without its full stop, the field that does it, and what is typed there.
type Way = (Sentence, &'static Field, Sentence);

fn ways_out_of_slivers(input: &Input) -> Result<Vec<Way>, OutOfRange> {
    let does = |other: &Input| fill(other).is_ok_and(|answer| sliver(other, &answer).is_none());
    let mut ways: Vec<Way> = Vec::new();
    if let Find::RipOuter { top, gap } = input.find {
        let alike = Input { find: Find::RipAll { top, gap }, ..input.clone() };
        if does(&alike) {
            ways.push((say!["Rip all of them alike instead"], &FIND, say![RIP_ALL.id]));
        }
    }
    let mut fewer = input.clone();
    while fewer.widths.len() > 2 {
        // One from within, so that the outer two stay.
        fewer.widths.remove(1);
        if does(&fewer) {
            let left = fewer.widths.len();
            let list: Vec<String> = fewer.widths.iter().map(|width| exact_text(*width)).collect();
            ways.push((say![format!("Use {left} planks")], &PLANKS, say![list.join(", ")]));
            break;
        }
    }
    let n = u32::try_from(input.widths.len()).map_err(|_| OutOfRange)?;
    if let (Some(first), Some(last), Some(n_gaps)) =
        (input.widths.first(), input.widths.last(), n.checked_sub(1).filter(|gaps| *gaps > 0))
    {
        let whole = ((sum(&input.widths)? - *first)? - *last)?;
        // The gap at which what is ripped comes out as narrow as it may be.
        let at_gap = |least: Length, top: Length| (top - least)? / n_gaps;
        let (gap, find) = match input.find {
            Find::RipAll { top, .. } => {
                let gap = at_gap((LEAST_PLANK * n)?, top)?;
                (gap, Find::RipAll { top, gap })
            }
            Find::RipOuter { top, .. } => {
                let gap = at_gap((whole + (LEAST_PLANK * 2)?)?, top)?;
                (gap, Find::RipOuter { top, gap })
            }
            // Nothing is ripped for these.
            Find::Gap { .. } | Find::Top { .. } => return Ok(ways),
        };
        if !gap.is_negative() && does(&Input { find, ..input.clone() }) {
            let gap = (gap, Rounding::Down);
            ways.push((say!["Leave gaps of ", gap, " or less"], &GAP, gap.into()));
        }
    }
    Ok(ways)
}

/// There are no planks.
pub(super) fn no_planks() -> Refusal {
    Refusal::at(
        &PLANKS,
        "no-planks",
        say!["There are no planks."],
        WayOut::set(say!["Start with two."], &PLANKS, "2 @ 5 1/2 in".to_owned()),
    )
}

/// The gaps leave nothing of the top for the planks; perhaps without gaps they fit.
fn gaps_fill_top(top: Length, without_gaps: bool) -> Refusal {
    let way_out = if without_gaps {
        WayOut::set(say!["Without gaps they fit."], &GAP, "0".to_owned())
    } else {
        WayOut::advice(say!["Leave out a plank."])
    };
    let words = say!["The gaps leave nothing of ", top, " for these planks."];
    Refusal::at(&GAP, "gaps-fill-top", words, way_out)
}

/// A plank is narrower than what is wanted of it; a wider `gap` may make up for that.
fn too_narrow(wanted: Length, have: Length, gap: Option<Length>) -> Refusal {
    let way_out = match gap {
        Some(gap) => {
            let gap = (gap, Rounding::Up);
            WayOut::set(say!["A gap of ", gap, " makes up for it."], &GAP, gap)
        }
        None => WayOut::advice(say!["Add a plank."]),
    };
    let words = say!["A plank of ", wanted, " is wanted, and one is only ", have, "."];
    Refusal::at(&PLANKS, "plank-too-narrow", words, way_out)
}

fn sum(lengths: &[Length]) -> Result<Length, OutOfRange> {
    lengths.iter().try_fold(Length::ZERO, |sum, length| sum + *length)
}

/// The spacers on the 32nds around a gap that lies on none.
fn spacers(gap: Length, n_gaps: u32, planks: Length) -> Result<Option<[Spacer; 2]>, OutOfRange> {
    let mark = Length::sixty_fourths(2);
    let marks = (gap / mark)?;
    if marks.is_whole() {
        return Ok(None);
    }
    let spacer = |count: i128| {
        let thickness = (mark * crate::measure::Number::ratio(count, 1)?)?;
        Ok(Spacer { thickness, top: (planks + (thickness * n_gaps)?)? })
    };
    Ok(Some([spacer(marks.floor())?, spacer(marks.ceil())?]))
}
