//! Shims: thin pieces that fill what a piece came out too small by.

use super::{Does, Fact};
use crate::job::{Dimension, Item, Job, Reckoned};
use crate::measure::Length;
use crate::say;
use crate::sheet::Sentence;

/// The thickest shim that is offered, a quarter of an inch: what is missing beyond that is a piece of wood to be cut. Ours,
/// no source.
#[must_use]
pub fn thickest_shim() -> Length {
    Length::of_inch(1, 4).unwrap_or(Length::ZERO)
}

impl Fact {
    /// How thick a shim must be that fills what pieces are too small by. `None` where they are not, or no shim does.
    pub(super) fn shim(&self) -> Option<Length> {
        let Fact::Off { is, wanted, .. } = self else { return None };
        let missing = (*wanted - *is).ok()?;
        (missing.is_positive() && missing <= thickest_shim()).then_some(missing)
    }

    /// The shims that fill what its pieces are too small by: how many, how large, and what they take.
    pub(super) fn shims(&self, job: &Job, reckoned: &Reckoned) -> Option<Sentence> {
        let (thick, Fact::Off { part, pieces, of, .. }) = (self.shim()?, self) else { return None };
        let (Item::Part(item), Some(sizes)) = (job.item(*part)?, reckoned.part(*part)) else {
            return None;
        };
        // At an end it is as large as the end, else as long as the piece.
        let faces = match of {
            Dimension::Length => [Dimension::Thickness, Dimension::Width],
            Dimension::Width => [Dimension::Thickness, Dimension::Length],
            Dimension::Thickness => [Dimension::Width, Dimension::Length],
        };
        let mut found: Vec<(u32, Length, Length)> = Vec::new();
        for index in pieces {
            let piece = item.piece(*index);
            let size = |of: Dimension| {
                piece.size(of, reckoned).and_then(Result::ok).or_else(|| sizes.wanted(of))
            };
            let [across, long] = faces.map(size);
            let (across, long) = (across?, long?);
            match found.iter_mut().find(|it| (it.1, it.2) == (across, long)) {
                Some(alike) => alike.0 = alike.0.saturating_add(1),
                None => found.push((1, across, long)),
            }
        }
        let mut words = say!["To make from an offcut: "];
        for (at, (count, across, long)) in found.iter().enumerate() {
            let between = if at == 0 { "" } else { ", " };
            let one = say![format!("{between}{count} of "), thick, " × ", *across, " × ", *long];
            words.0.extend(one.0);
        }
        words.0.extend(say![". Takes no board and no money, and nothing is thrown away."].0);
        Some(words)
    }

    /// What somebody said of it who left it so, beside that: that a shim fills it.
    #[must_use]
    pub fn left_with(&self, job: &Job) -> Option<Sentence> {
        let Fact::Off { part, pieces, of, .. } = self else { return None };
        let Some(Item::Part(item)) = job.item(*part) else { return None };
        let is_so = pieces.iter().all(|index| item.piece(*index).has_shim(*of));
        let thick = self.shim().filter(|_| is_so)?;
        Some(say!["Filled with a shim of ", thick, "."])
    }
}

impl Does {
    /// What to be careful of.
    #[must_use]
    pub fn caution(self) -> Option<&'static str> {
        match self {
            Does::Shim(_) => Some(
                "A shim fills a gap. In a joint that holds weight it carries only where it bears on the whole face. \
                 Nothing here works out whether yours does: if in doubt, cut the piece again.",
            ),
            _ => None,
        }
    }
}
