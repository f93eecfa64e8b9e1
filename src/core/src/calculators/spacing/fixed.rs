//! A fixed step, set off from both ends towards the middle.

use super::asked::Input;
use super::even::{least_over_gap, least_too_large, too_many};
use super::fields::{LEFT_END, MOST_MARKS, RIGHT_END, STEP};
use super::gates::count;
use super::track::even_places;
use super::zones::Zones;
use crate::measure::{Length, OutOfRange, Rounding};
use crate::say;
use crate::sheet::{Refusal, Refused, Span, WayOut};

/// How many other first places are tried when a mark falls in a zone.
const MOST_TRIED: usize = 100;

/// Sets the step off from both ends as often as it goes into one half.
pub(super) fn places(input: &Input, step: Length, zones: &Zones) -> Result<Vec<Length>, Refused> {
    if let Some(least) = input.least_gap.filter(|least| *least > step) {
        return Err(least_over_gap(least, step).into());
    }
    let half = ((zones.to - zones.from)? / 2)?;
    let most = MOST_MARKS / 2;
    if (half / step)?.floor() >= i128::from(most) {
        let smallest = (half / most.saturating_sub(1))?;
        let step = input.tape.read(smallest, Rounding::Up)?.mark;
        return Err(too_many(&STEP, step).into());
    }
    let least = input.least_gap.unwrap_or(Length::ZERO);
    let places = from_both(zones.from, zones.to, step, least)?;
    if places.is_empty() {
        return Err(least_too_large(least).into());
    }
    if let Some((mark, zone)) = first_taken(zones, &places) {
        let clear = clear_ends(input, step, least, zones)?;
        return Err(step_in_zone(mark, zone, clear).into());
    }
    Ok(places)
}

/// A mark falls in a zone; `clear` are the nearest first and last distances with which none does.
fn step_in_zone(mark: Length, zone: Span, clear: Option<(Length, Length)>) -> Refusal {
    let words = say!["The mark at ", mark, " falls in the zone ", zone.from, " to ", zone.to, "."];
    let way_out = match clear {
        Some((left, right)) => Some(WayOut {
            sentence: say!["Start ", left, " from the left and ", right, " from the right."],
            set: vec![(LEFT_END.id, left.into()), (RIGHT_END.id, right.into())],
        }),
        None => WayOut::advice(say!["Space them evenly instead: the marks then miss the zones."]),
    };
    Refusal::at(&LEFT_END, "step-in-zone", words, way_out)
}

/// The marks of both halves. Two that meet in the middle are one; two that would stand closer
/// than `least` are left out.
fn from_both(
    from: Length,
    to: Length,
    step: Length,
    least: Length,
) -> Result<Vec<Length>, OutOfRange> {
    let whole = (to - from)?;
    let steps = ((whole / 2)? / step)?.floor();
    let mut from_each = usize::try_from(steps).map_err(|_| OutOfRange)? + 1;
    let apart = (whole - (step * count(from_each - 1)?)?)?;
    let apart = (apart - (step * count(from_each - 1)?)?)?;
    let meets = apart.is_zero();
    if !meets && apart < least {
        from_each -= 1;
    }
    let mut places = even_places(from, step, from_each)?;
    let both = (from + to)?;
    let mirrored: Result<Vec<Length>, OutOfRange> =
        places.iter().rev().skip(usize::from(meets)).map(|place| both - *place).collect();
    places.extend(mirrored?);
    Ok(places)
}

fn first_taken(zones: &Zones, places: &[Length]) -> Option<(Length, Span)> {
    places.iter().find_map(|place| zones.around(*place).map(|zone| (*place, zone)))
}

/// The end distances nearest to the given ones with which every mark is free: both moved alike.
fn clear_ends(
    input: &Input,
    step: Length,
    least: Length,
    zones: &Zones,
) -> Result<Option<(Length, Length)>, OutOfRange> {
    let mut moves = Vec::new();
    for place in from_both(zones.from, zones.to, step, Length::ZERO)? {
        for edge in zones.taken.iter().flat_map(|zone| [zone.from, zone.to]) {
            moves.extend([(edge - place)?, (place - edge)?]);
        }
    }
    crate::order::sort_by_key(&mut moves, |by| (by.abs(), *by));
    moves.dedup();
    let mut off_the_marks = None;
    for by in moves.into_iter().take(MOST_TRIED) {
        let (left, right) = ((zones.from + by)?, (zones.to - by)?);
        let right = (input.length - right)?;
        // On marks of the tape where these do as well; both ends rounded to the same side.
        for rounding in [Rounding::Up, Rounding::Down] {
            let mark = |end| Ok::<_, OutOfRange>(input.tape.read(end, rounding)?.mark);
            let ends = (mark(left)?, mark(right)?);
            if is_clear(input, step, least, zones, ends)? {
                return Ok(Some(ends));
            }
        }
        if off_the_marks.is_none() && is_clear(input, step, least, zones, (left, right))? {
            off_the_marks = Some((left, right));
        }
    }
    Ok(off_the_marks)
}

/// Whether with the first mark `left` from the left end and the last `right` from the right end
/// every mark is free.
fn is_clear(
    input: &Input,
    step: Length,
    least: Length,
    zones: &Zones,
    (left, right): (Length, Length),
) -> Result<bool, OutOfRange> {
    let to = (input.length - right)?;
    if left.is_negative() || right.is_negative() || left >= to {
        return Ok(false);
    }
    Ok(first_taken(zones, &from_both(left, to, step, least)?).is_none())
}
