//! Lists of stretches along a board, in order and apart.

use crate::measure::{Length, OutOfRange};
use crate::sheet::Span;

/// What two lists of stretches, each in order and apart, have in common.
pub(super) fn overlap(these: &[Span], those: &[Span]) -> Vec<Span> {
    let mut common = Vec::new();
    let (mut these, mut those) = (these.iter().peekable(), those.iter().peekable());
    while let (Some(this), Some(that)) = (these.peek(), those.peek()) {
        let span = Span { from: this.from.max(that.from), to: this.to.min(that.to) };
        if span.from <= span.to {
            common.push(span);
        }
        if this.to <= that.to {
            these.next();
        } else {
            those.next();
        }
    }
    common
}

/// Whether a place lies in one of the stretches.
pub(super) fn holds(spans: &[Span], place: Length) -> bool {
    spans.iter().any(|span| span.from <= place && place <= span.to)
}

/// The place nearest to `target` that lies in the window and in one of the stretches.
pub(super) fn nearest(
    spans: &[Span],
    window: Span,
    target: Length,
) -> Result<Option<Length>, OutOfRange> {
    let mut best: Option<(Length, Length)> = None;
    for span in overlap(spans, &[window]) {
        let place = target.clamp(span.from, span.to);
        let off = (place - target)?.abs();
        if best.is_none_or(|(least, _)| off < least) {
            best = Some((off, place));
        }
    }
    Ok(best.map(|(_, place)| place))
}
