//! [`tight`]: a string drawn tight through gates, exactly.

use crate::measure::{Length, OutOfRange};
use crate::sheet::Span;

/// A count as the factor or divisor of a length.
pub(super) fn count(count: usize) -> Result<u32, OutOfRange> {
    u32::try_from(count).map_err(|_| OutOfRange)
}

/// A string drawn tight from the first gate to the last: one place in each gate, with the steps
/// as even as the gates allow.
///
/// Of all ways through the gates it has the least sum of squared steps, and with it the smallest
/// widest and the largest least step.
pub(super) fn tight(gates: &[Span]) -> Result<Vec<Length>, OutOfRange> {
    let mut places: Vec<Length> = gates.first().map(|gate| gate.from).into_iter().collect();
    while places.len() < gates.len() {
        let Some(start) = places.last().copied() else { break };
        let (bend, place) = next_bend(start, gates.get(places.len()..).unwrap_or(&[]))?;
        let step = ((place - start)? / count(bend)?)?;
        for index in 1..=bend {
            places.push((start + (step * count(index)?)?)?);
        }
    }
    Ok(places)
}

/// How many gates further the string next touches an edge, and where.
///
/// It runs straight as long as one slope passes every gate. The steepest slope that stays under
/// the far edges and the flattest that stays over the near edges close in on each other; when a
/// gate lies beyond one of them, the string bends at the edge that set it.
fn next_bend(start: Length, gates: &[Span]) -> Result<(usize, Length), OutOfRange> {
    let mut over: Option<(Length, usize, Length)> = None;
    let mut under: Option<(Length, usize, Length)> = None;
    for (index, gate) in gates.iter().enumerate() {
        let steps = count(index + 1)?;
        let to_near = ((gate.from - start)? / steps)?;
        let to_far = ((gate.to - start)? / steps)?;
        match (over, under) {
            (_, Some((slope, bend, place))) if to_near > slope => return Ok((bend, place)),
            (Some((slope, bend, place)), _) if to_far < slope => return Ok((bend, place)),
            _ => {}
        }
        if over.is_none_or(|(slope, ..)| to_near >= slope) {
            over = Some((to_near, index + 1, gate.from));
        }
        if under.is_none_or(|(slope, ..)| to_far <= slope) {
            under = Some((to_far, index + 1, gate.to));
        }
    }
    // The last gate is a single place, and no gate before it is in the way.
    let end = gates.last().map_or(start, |gate| gate.from);
    Ok((gates.len().max(1), end))
}
