//! [`labels`]: one for each piece of each part, to be cut out and stuck on.

use core::fmt;

use super::{Dimension, Hand, Item, ItemId, Job, PartSizes, Reckoned};
use crate::measure::Length;
use crate::sheet::Side;

/// Most labels made at once; one part never has more pieces.
pub const MOST_LABELS: usize = 1_000;

/// What stands on the label of one piece.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Label {
    /// The part.
    pub part: ItemId,
    /// Its name.
    pub name: String,
    /// Which piece, from 1.
    pub piece: u32,
    /// Of how many.
    pub of: u32,
    /// Thickness, width and length: of a piece that is cut what it is, as far as that is known,
    /// else what is wanted. `None` for a size that is not known.
    pub size: [Option<Length>; 3],
    /// What it is cut from.
    pub stock: String,
    /// Which face shows; empty when it does not matter.
    pub show_face: String,
    /// Left or right, for parts made in pairs: the odd pieces are left.
    pub hand: Option<Side>,
}

/// More labels than are made at once.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TooManyLabels(pub usize);

impl fmt::Display for TooManyLabels {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "That would be {} labels, and at most {MOST_LABELS} are made at once. Choose one of the pieces.",
            self.0
        )
    }
}

impl core::error::Error for TooManyLabels {}

/// The labels of a job, part by part; of one part when it is named. Parts whose number of pieces
/// is not known have none.
///
/// # Errors
///
/// [`TooManyLabels`].
pub fn labels(
    job: &Job,
    reckoned: &Reckoned,
    parts: &[PartSizes],
    only: Option<ItemId>,
) -> Result<Vec<Label>, TooManyLabels> {
    let wanted = || parts.iter().filter(|sizes| only.is_none_or(|only| only == sizes.id));
    let pieces = |sizes: &PartSizes| sizes.quantity.as_ref().map_or(0, |count| *count as usize);
    let count = wanted().map(pieces).fold(0, usize::saturating_add);
    if count > MOST_LABELS {
        return Err(TooManyLabels(count));
    }
    Ok(wanted().flat_map(|sizes| of_part(job, reckoned, sizes)).collect())
}

fn of_part(job: &Job, reckoned: &Reckoned, sizes: &PartSizes) -> Vec<Label> {
    let (Some(Item::Part(part)), Ok(of)) = (job.item(sizes.id), &sizes.quantity) else {
        return Vec::new();
    };
    let label = |piece: u32| {
        let it = part.piece((piece as usize).saturating_sub(1));
        let size = |of| it.size(of, reckoned).and_then(Result::ok).or_else(|| sizes.wanted(of));
        let hand = if piece.is_multiple_of(2) { Side::Right } else { Side::Left };
        Label {
            part: sizes.id,
            name: part.name.clone(),
            piece,
            of: *of,
            size: Dimension::ALL.map(size),
            stock: part.stock.clone(),
            show_face: part.show_face.clone(),
            hand: (part.hand == Hand::Pairs).then_some(hand),
        }
    };
    (1..=*of).map(label).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::{Dimensions, Piece, Step, demo::demo, part_sizes};
    use crate::measure::length;
    use crate::sheet::Bench;

    fn of(job: &Job, only: Option<ItemId>) -> Result<Vec<Label>, TooManyLabels> {
        let reckoned = Reckoned::of(job, &Bench::default());
        labels(job, &reckoned, &part_sizes(job, &reckoned), only)
    }

    fn changed(job: &mut Job, name: &str, change: impl Fn(&mut crate::job::Part)) {
        let found = job.parts().into_iter().find(|(_, part)| part.name == name);
        let (id, mut part) =
            found.map(|(id, part)| (id, part.clone())).expect("a part of the demo");
        change(&mut part);
        let step = Step::new("change", vec![job.replacing(id, Item::Part(part))]);
        job.make(&step).expect("nobody else is here");
    }

    #[test]
    fn every_piece_has_a_label_and_pairs_have_hands() {
        let job = demo();
        let all = of(&job, None).expect("few");
        let legs: Vec<_> = all.iter().filter(|it| it.name == "leg").collect();
        assert_eq!(
            legs.iter().map(|it| (it.piece, it.of)).collect::<Vec<_>>(),
            [(1, 4), (2, 4), (3, 4), (4, 4)]
        );
        let size = ["3 1/4", "3 1/4", "33 1/2"].map(|text| length(text).ok());
        assert!(legs.iter().all(|it| it.size == size && it.hand.is_none()));
        let hands: Vec<_> =
            all.iter().filter(|it| it.name == "end bracket").map(|it| it.hand).collect();
        assert_eq!(hands, [Some(Side::Left), Some(Side::Right)]);
        let only = of(&job, Some(legs[0].part)).expect("few");
        assert_eq!(only.len(), 4);
    }

    #[test]
    fn a_piece_as_cut_says_its_own_length() {
        let mut job = demo();
        let cut = Piece::default().ticked(Dimensions::default());
        let cut = cut.measured(Dimension::Length, Some("33 7/16".to_owned()));
        changed(&mut job, "leg", |leg| leg.pieces = vec![Piece::default(), cut.clone()]);
        let all = of(&job, None).expect("few");
        let lengths: Vec<_> =
            all.iter().filter(|it| it.name == "leg").map(|it| it.size[2]).collect();
        let [planned, as_cut] = ["33 1/2", "33 7/16"].map(|text| length(text).ok());
        assert_eq!(lengths, [planned, as_cut, planned, planned]);
    }

    #[test]
    fn too_many_are_refused_and_unknown_parts_have_none() {
        let mut job = demo();
        changed(&mut job, "leg", |leg| leg.quantity = "1000".to_owned());
        assert!(matches!(of(&job, None), Err(TooManyLabels(1001..))));
        changed(&mut job, "leg", |leg| leg.quantity = "some".to_owned());
        let all = of(&job, None).expect("few");
        assert!(!all.is_empty() && all.iter().all(|it| it.name != "leg"));
    }
}
