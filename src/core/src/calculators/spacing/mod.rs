//! Where do the screws, holes, pegs or slats go, so that they come out even and miss the joints?
//!
//! - Marks: the first and the last stand at set distances from the ends, or leave a gap like the
//!   others. With `n` gaps over a distance `D` each is `D ÷ n`; the fewest that keep no gap over
//!   `g` are `D ÷ g`, rounded up.
//! - Fixed step: the same distances are set off from both ends towards the middle.
//! - Slats: a gap and a slat repeat like a step. With a gap at each end there is one gap more
//!   than slats, with a slat at each end one fewer.
//! - Zones to keep out of, and a least gap: the marks that make the widest gap as small as it can
//!   be, exactly. The module `track` says how they are searched and why it
//!   misses none.
//!
//! A mark may stand on the edge of a zone, and a slat may touch it.
//!
//! # Source
//!
//! Arithmetic. The setting from both ends and the counting of gaps are worked by hand as cases F1
//! and F2 in `tests/reference/spacing.rs`.

mod asked;
mod drawing;
mod even;
// A table: a field in two lines.
#[rustfmt::skip]
mod fields;
mod fixed;
mod gates;
mod sheet;
mod stretches;
#[cfg(test)]
mod tests;
mod track;
mod zones;

use crate::measure::{Length, OutOfRange, Rounding};
use crate::sheet::{Refused, Span};
use even::Search;
use fields::{COUNT, SLATS};
use zones::Zones;

pub use asked::{End, Input, MOST_ZONES, Wish};
pub use even::Other;
pub use fields::MOST_MARKS;
pub use sheet::CALCULATOR;

/// Where they stand.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answer {
    /// Marks, or left edges of slats, from the left end.
    pub marks: Vec<Length>,
    /// From mark to mark, or from slat to slat; the gaps at the ends are among them where they
    /// are to be like the others.
    pub gaps: Vec<Length>,
    /// The gap, where all are equal.
    pub equal_gap: Option<Length>,
    /// The widest gap.
    pub widest: Length,
    /// The narrowest gap.
    pub narrowest: Length,
    /// Those up to the middle, to be set off from each end; where both ends mirror each other.
    pub each_end: Option<Vec<Length>>,
    /// From the right end: marks, or right edges of slats, in the same order.
    pub from_right: Vec<Length>,
    /// Both ends, every gap and every slat added up: the length again.
    pub closes_at: Length,
    /// What stepping off the rounded gap would do, where all gaps are equal but on no mark of
    /// the tape.
    pub stepped: Option<Stepped>,
    /// One fewer, this, and one more.
    pub others: Vec<Other>,
    /// What keeps the widest gap from being smaller, where zones make the gaps uneven.
    pub chain: Option<Chain>,
    /// The zones, those that meet joined.
    pub keep_out: Vec<Span>,
    /// Those that would stand in a zone if all were spaced evenly.
    pub moved: Vec<Moved>,
}

/// A mark, or the left edge of a slat, that a zone keeps from its even place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Moved {
    /// Number of the mark or slat, from 1 at the left.
    pub number: u32,
    /// Its even place, from the left end.
    pub from: Length,
    /// Where it stands.
    pub to: Length,
}

/// What stepping off the rounded gap would do.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stepped {
    /// The gap as the tape shows it.
    pub gap: Length,
    /// Where the last mark, or the last slat's left edge, would land, from the left end.
    pub ends_at: Length,
    /// How far beyond its place that is; below zero when it falls short.
    pub error: Length,
}

/// The marks that cannot be drawn closer: so many of the widest gaps between two places that
/// are held fast.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Chain {
    /// The first place, from the left end.
    pub from: Length,
    /// The last place.
    pub to: Length,
    /// How many of the widest gaps lie between.
    pub gaps: u32,
}

/// Spaces marks or slats.
///
/// # Errors
///
/// [`Refused`] with every reason that applies:
/// - `ends-meet`, `slat-too-wide`, `one-for-two-ends`: the ends leave nothing between them.
/// - `end-in-zone`, `zone-outside`, `too-many-zones`, `step-in-zone`, `no-free-place`: the zones.
/// - `no-room`, `gap-too-small`, `too-many`: so many do not fit, or too many would.
/// - `least-over-gap`, `least-too-large`: the least gap.
/// - [`Refused::OutOfRange`]: a number with more digits than can be kept exactly.
///
/// # Examples
///
/// ```
/// # use reckoner_core::{measure::{length, Tape}, calculators::spacing::{reckon, End, Input, Wish}};
/// let answer = reckon(&Input {
///     length: length("37")?,
///     wish: Wish::NoGapOver(length("8")?),
///     left: End::At(length("2")?),
///     right: End::At(length("2")?),
///     keep_out: Vec::new(),
///     least_gap: None,
///     tape: Tape::SIXTEENTHS,
/// });
/// let answer = answer.map_err(|refused| format!("{refused:?}"))?;
/// assert_eq!(answer.marks.len(), 6);
/// assert_eq!(answer.equal_gap, Some(length("6.6")?));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let zones = Zones::of(input)?;
    let mut search = Search::new(input, &zones)?;
    let places = match input.wish {
        Wish::Count(count) => search.so_many(count, &COUNT)?,
        Wish::Slats { count, .. } => search.so_many(count, &SLATS)?,
        Wish::NoGapOver(greatest) => search.no_gap_over(greatest)?,
        Wish::SlatsNear { gap, .. } => search.near(gap)?,
        Wish::Step(step) => fixed::places(input, step, &zones)?,
    };
    let mut answer = Answer::new(input, &zones, &places)?;
    if !matches!(input.wish, Wish::Step(_)) {
        answer.others = search.others(places.len())?;
    }
    Ok(answer)
}

impl Answer {
    /// From the places of a track, those beyond the ends included.
    fn new(input: &Input, zones: &Zones, places: &[Length]) -> Result<Answer, OutOfRange> {
        let width = input.wish.slat_width().unwrap_or(Length::ZERO);
        let mut gaps = Vec::new();
        for pair in places.windows(2) {
            if let [near, far] = pair {
                gaps.push(((*far - *near)? - width)?);
            }
        }
        let marks = real(input, places);
        let widest = gaps.iter().copied().max().unwrap_or(Length::ZERO);
        let narrowest = gaps.iter().copied().min().unwrap_or(Length::ZERO);
        let equal_gap = (widest == narrowest).then_some(widest);
        let mut from_right = Vec::new();
        for mark in &marks {
            from_right.push(((input.length - *mark)? - width)?);
        }
        let is_mirrored = marks.iter().eq(from_right.iter().rev());
        let half = marks.len().div_ceil(2);
        let slats = (width * gates::count(marks.len())?)?;
        let mut closes_at = slats;
        for part in gaps.iter().chain(&ends_apart(input)) {
            closes_at = (closes_at + *part)?;
        }
        Ok(Answer {
            each_end: is_mirrored.then(|| marks.iter().take(half).copied().collect()),
            stepped: equal_gap
                .map(|gap| Stepped::of(input, gap, places, marks.last().copied()))
                .transpose()?
                .flatten(),
            chain: if equal_gap.is_none() { chain(places, widest, width)? } else { None },
            keep_out: zones.joined.clone(),
            moved: moved(input, zones, places)?,
            others: Vec::new(),
            marks,
            gaps,
            equal_gap,
            widest,
            narrowest,
            from_right,
            closes_at,
        })
    }
}

/// The places without those that only stand for an end.
fn real(input: &Input, places: &[Length]) -> Vec<Length> {
    let is_step = matches!(input.wish, Wish::Step(_));
    let skip = usize::from(input.left == End::LikeTheGaps && !is_step);
    let drop = usize::from(input.right == End::LikeTheGaps && !is_step);
    places.iter().take(places.len().saturating_sub(drop)).skip(skip).copied().collect()
}

/// Those of the places that would stand in a zone, were as many spaced evenly between the ends.
fn moved(input: &Input, zones: &Zones, places: &[Length]) -> Result<Vec<Moved>, OutOfRange> {
    let gaps = gates::count(places.len().saturating_sub(1))?;
    if gaps == 0 || matches!(input.wish, Wish::Step(_)) {
        return Ok(Vec::new());
    }
    let even = track::even_places(zones.from, ((zones.to - zones.from)? / gaps)?, places.len())?;
    let pairs = real(input, &even).into_iter().zip(real(input, places));
    Ok((1..)
        .zip(pairs)
        .filter(|(_, (even, _))| zones.around(*even).is_some())
        .map(|(number, (from, to))| Moved { number, from, to })
        .collect())
}

/// The distances at the ends that are not among the gaps.
fn ends_apart(input: &Input) -> Vec<Length> {
    let like_the_gaps = match input.wish {
        Wish::Step(step) => Some(step),
        _ => None,
    };
    [input.left, input.right]
        .into_iter()
        .filter_map(|end| match end {
            End::At(distance) => Some(distance),
            End::LikeTheGaps => like_the_gaps,
        })
        .collect()
}

/// The first run of widest gaps.
fn chain(places: &[Length], widest: Length, width: Length) -> Result<Option<Chain>, OutOfRange> {
    let step = (widest + width)?;
    let mut found: Option<Chain> = None;
    for pair in places.windows(2) {
        let [near, far] = pair else { continue };
        if (*far - *near)? == step {
            found = match found {
                Some(chain) => {
                    Some(Chain { to: *far, gaps: chain.gaps.saturating_add(1), ..chain })
                }
                None => Some(Chain { from: *near, to: *far, gaps: 1 }),
            };
        } else if found.is_some() {
            break;
        }
    }
    Ok(found)
}

impl Stepped {
    fn of(
        input: &Input,
        exact: Length,
        places: &[Length],
        last: Option<Length>,
    ) -> Result<Option<Stepped>, OutOfRange> {
        let gap = input.tape.read(exact, Rounding::Nearest)?.mark;
        let Some(last) = last.filter(|_| gap != exact) else { return Ok(None) };
        let steps = places.iter().filter(|place| **place < last).count();
        let error = ((gap - exact)? * gates::count(steps)?)?;
        Ok(Some(Stepped { gap, ends_at: (last + error)?, error }))
    }
}
