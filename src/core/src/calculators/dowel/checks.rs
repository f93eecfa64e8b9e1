//! What can be in the way of a dowel, and what would work.

use super::asked::{Apart, Blind, Hold, Input};
use super::fields::{ACROSS, DEPTH, DOWEL, FROM_FRONT, FROM_TOP, LEG, PART_LENGTH, ROOM, SET_BACK};
use crate::measure::text::exact_text;
use crate::measure::{Length, OutOfRange, Rounding};
use crate::say;
use crate::sheet::{Field, Refusal, WayOut};

/// Whether the parts fit in their legs.
pub(super) fn set_back(input: &Input, refusals: &mut Vec<Refusal>) -> Result<(), OutOfRange> {
    let Apart::Legs { leg, set_back, .. } = input.apart else { return Ok(()) };
    let part = input.left.max(input.right);
    let most = (leg - part)?;
    if most.is_negative() {
        refusals.push(Refusal::at(
            &LEG,
            "part-over-leg",
            say!["A piece ", part, " thick does not go into a leg of ", leg, "."],
            WayOut::set(
                say!["The leg must be ", (part, Rounding::Up), " or more."],
                &LEG,
                (part, Rounding::Up),
            ),
        ));
    } else if let Some(set_back) = set_back.filter(|set_back| *set_back > most) {
        refusals.push(Refusal::at(
            &SET_BACK,
            "set-back-too-far",
            say!["Set back by ", set_back, ", the piece comes out of the inside of the leg."],
            WayOut::set(
                say!["Set it back by ", (most, Rounding::Down), " or less."],
                &SET_BACK,
                (most, Rounding::Down),
            ),
        ));
    }
    Ok(())
}

/// Whether the blind holes stay in their parts and hold the dowel.
pub(super) fn blind(input: &Input, refusals: &mut Vec<Refusal>) -> Result<(), OutOfRange> {
    let (blind, part) = match input.hold {
        Hold::Through { .. } => return Ok(()),
        Hold::Blind(blind) => (blind, input.left.min(input.right)),
        Hold::OneEnd { blind, .. } => (blind, input.right),
    };
    let Blind { depth, room } = blind;
    if depth >= part {
        refusals.push(Refusal::at(
            &DEPTH,
            "deeper-than-part",
            say!["A hole ", depth, " deep goes through a piece of ", part, "."],
            most_depth(part).and_then(|most| {
                let most = (most, Rounding::Down);
                WayOut::set(say!["Drill ", most, " deep or less."], &DEPTH, most)
            }),
        ));
    }
    if room >= depth {
        refusals.push(Refusal::at(
            &ROOM,
            "no-depth-left",
            say!["With ", room, " left free, nothing goes into a hole ", depth, " deep."],
            (depth / 4).ok().and_then(|most| {
                let most = (most, Rounding::Down);
                WayOut::set(say!["Leave ", most, " or less."], &ROOM, most)
            }),
        ));
    }
    Ok(())
}

/// Whether enough wood stays round the hole.
pub(super) fn edges(
    input: &Input,
    bit: Length,
    from_top: Length,
    from_front: Length,
    refusals: &mut Vec<Refusal>,
) -> Result<(), OutOfRange> {
    let least = input.least_wood.map_or_else(|| bit / 2, Ok)?;
    let near = ((bit / 2)? + least)?;
    let room = (near * 2)?;
    if room > input.height {
        let most = match input.least_wood {
            Some(least) => (input.height - (least * 2)?)?,
            None => (input.height / 2)?,
        };
        let most = input.bits.not_over(most.max(Length::ZERO))?;
        refusals.push(dowel_too_big(bit, input.height, most));
    } else {
        refusals.extend(near_edge(&FROM_TOP, from_top, input.height, near, least)?);
    }
    if room > input.length {
        let bit = format!("A hole of {} leaves too little wood in a length of ", exact_text(bit));
        refusals.push(Refusal::at(
            &PART_LENGTH,
            "part-too-short",
            say![bit, input.length, "."],
            WayOut::set(
                say!["It takes a length of ", (room, Rounding::Up), "."],
                &PART_LENGTH,
                (room, Rounding::Up),
            ),
        ));
    } else {
        refusals.extend(near_edge(&FROM_FRONT, from_front, input.length, near, least)?);
    }
    Ok(())
}

/// The hole is bigger than the part, or leaves too little wood above and below; `most` does not.
fn dowel_too_big(bit: Length, height: Length, most: Length) -> Refusal {
    let hole = exact_text(bit);
    let words = if bit >= height {
        say![format!("A hole of {hole} is no smaller than the piece, "), height, "."]
    } else {
        say![format!("A hole of {hole} leaves too little wood in a piece of "), height, "."]
    };
    let way_out = if most.is_positive() {
        Some(WayOut {
            sentence: say![format!("Up to {} fits.", exact_text(most))],
            set: vec![(DOWEL.id, exact_text(most).into()), (ACROSS.id, "".into())],
        })
    } else {
        WayOut::advice(say!["Use a higher piece."])
    };
    Refusal::at(&DOWEL, "dowel-too-big", words, way_out)
}

/// The hole is too near an edge or an end; `from` is the field of its distance.
fn near_edge(
    from: &Field,
    center: Length,
    size: Length,
    near: Length,
    least: Length,
) -> Result<Option<Refusal>, OutOfRange> {
    let clear = center.clamp(near, (size - near)?);
    if clear == center {
        return Ok(None);
    }
    let half = (near - least)?;
    let wood = (center.min((size - center)?) - half)?;
    let words = if wood.is_positive() {
        say!["That leaves ", wood, " of wood beside the hole; ", least, " is wanted."]
    } else {
        say!["The hole breaks out of the piece there."]
    };
    // Between the two nearest places there may be no mark of the tape.
    let way_out = if (size - (near * 2)?)? < Length::sixty_fourths(16) {
        WayOut::set(say!["Only the middle will do: leave this empty."], from, String::new())
    } else {
        let clear = (clear, if clear == near { Rounding::Up } else { Rounding::Down });
        WayOut::set(say!["Use ", clear, "."], from, clear)
    };
    Ok(Some(Refusal::at(from, "near-edge", words, way_out)))
}

/// A quarter of an inch left under the hole for the point of the bit, or half of a thin part.
fn most_depth(part: Length) -> Option<Length> {
    let quarter = Length::sixty_fourths(16);
    let half = (part / 2).ok()?;
    Some((part - quarter).ok()?.max(half))
}
