//! Which wood each part is cut from, how it lies in it, and what is in the way.

use super::part::WantedPart;
use super::problem::{Named, Obstacle};
use super::stock::StockBoard;
use super::{Options, WantedProblem};
use crate::calculators::resaw_rip::saw::{LARGEST, NARROWEST};
use crate::job::sections::reads;
use crate::measure::{Length, OutOfRange};
use crate::say;
use crate::sheet::{Bench, Sentence};

/// The woods of a job: section names that stand for the same pile.
pub(super) struct Woods {
    /// Of each name, as [`reads`] reads it, the number of its wood.
    of_name: Vec<(String, usize)>,
}

impl Woods {
    /// Every name a wood of its own, but for names that only parts without a name of their own can tell apart.
    pub(super) fn of(parts: &[WantedPart], boards: &[StockBoard]) -> Woods {
        let mut of_name: Vec<(String, usize)> = Vec::new();
        for name in boards.iter().map(|board| reads(&board.section)) {
            if !of_name.iter().any(|(known, _)| *known == name) {
                of_name.push((name, of_name.len()));
            }
        }
        let asked: Vec<String> =
            parts.iter().filter(|part| !part.takes_any()).map(|p| reads(&p.stock)).collect();
        let mut woods = Woods { of_name };
        for part in parts.iter().filter(|part| part.takes_any()) {
            let names = names_of_size(part, boards);
            if names.iter().all(|name| !asked.contains(name)) {
                woods.join(&names);
            }
        }
        woods
    }

    fn join(&mut self, names: &[String]) {
        let woods: Vec<usize> = names.iter().filter_map(|name| self.named(name)).collect();
        let Some(first) = woods.iter().copied().min() else { return };
        for (_, wood) in &mut self.of_name {
            if woods.contains(wood) {
                *wood = first;
            }
        }
    }

    fn named(&self, name: &str) -> Option<usize> {
        self.of_name.iter().find(|(known, _)| known == name).map(|(_, wood)| *wood)
    }

    /// The wood of a board.
    pub(super) fn of_board(&self, board: &StockBoard) -> Option<usize> {
        self.named(&reads(&board.section))
    }

    /// The wood of a part, and a note where one of several was chosen for it.
    ///
    /// # Errors
    ///
    /// [`WantedProblem::NoBoard`] or [`WantedProblem::NoBoardOfSize`].
    pub(super) fn of_part(
        &self,
        part: &WantedPart,
        boards: &[StockBoard],
    ) -> Result<(usize, Option<Sentence>), WantedProblem> {
        let of = part.named.clone();
        if !part.takes_any() {
            let wood = self.named(&reads(&part.stock));
            let stock = part.stock.trim().to_owned();
            return wood.map(|wood| (wood, None)).ok_or(WantedProblem::NoBoard { of, stock });
        }
        let names = names_of_size(part, boards);
        let (thickness, width) = (part.thickness, part.width);
        let Some(wood) = names.first().and_then(|name| self.named(name)) else {
            return Err(WantedProblem::NoBoardOfSize { of, thickness, width });
        };
        let is_choice = names.iter().any(|name| self.named(name) != Some(wood));
        let note = is_choice.then(|| {
            let chosen = boards.iter().find(|board| self.of_board(board) == Some(wood));
            let section = chosen.map_or(String::new(), |board| board.section.clone());
            say![
                of.name,
                " may come from any board of its size; it is planned from ",
                section,
                ". Write into the piece what it is cut from to choose another."
            ]
        });
        Ok((wood, note))
    }
}

fn names_of_size(part: &WantedPart, boards: &[StockBoard]) -> Vec<String> {
    let mut names: Vec<String> = Vec::new();
    for board in boards {
        let straight = (board.thickness, board.width) == (part.thickness, part.width);
        let turned = (board.thickness, board.width) == (part.width, part.thickness);
        let name = reads(&board.section);
        if (straight || turned) && !names.contains(&name) {
            names.push(name);
        }
    }
    names
}

/// Thickness and width of a part as it lies in the boards of its wood: as written, or turned by a quarter where
/// only then it is a whole board, or as thick as one.
pub(super) fn lying(part: &WantedPart, boards: &[&StockBoard]) -> (Length, Length) {
    let straight = (part.thickness, part.width);
    let turned = (part.width, part.thickness);
    let is_whole = |size: (Length, Length)| boards.iter().any(|b| (b.thickness, b.width) == size);
    let is_as_thick =
        |size: (Length, Length)| boards.iter().any(|b| b.thickness == size.0 && b.width >= size.1);
    let holds =
        |size: (Length, Length)| boards.iter().any(|b| b.thickness >= size.0 && b.width >= size.1);
    for does in [&is_whole as &dyn Fn((Length, Length)) -> bool, &is_as_thick, &holds] {
        if does(straight) {
            return straight;
        }
        if does(turned) {
            return turned;
        }
    }
    straight
}

/// Whether a board of this section can be ripped at all by the rules of the resaw-and-rip calculator.
pub(super) fn may_be_ripped(
    thickness: Length,
    width: Length,
    options: &Options,
) -> Result<bool, OutOfRange> {
    Ok(thickness <= (options.reach * 2)?
        && thickness.max(width) >= NARROWEST
        && thickness.max(width) <= LARGEST)
}

/// What keeps a part of this size from being cut out of that board; `None` for nothing.
pub(super) fn obstacle(
    part: &WantedPart,
    (thickness, width): (Length, Length),
    board: &StockBoard,
    options: &Options,
    bench: &Bench,
) -> Result<Option<Obstacle>, OutOfRange> {
    let thinnest = bench.thinnest_strip;
    if thickness > board.thickness || width > board.width {
        return Ok(Some(Obstacle::TooSmall));
    }
    let (rips, resaws) = (width < board.width, thickness < board.thickness);
    if !rips && !resaws {
        return Ok(None);
    }
    let most = (options.reach * 2)?;
    let depth = if rips { board.thickness } else { width };
    let deepest = if resaws { depth.max(width) } else { depth };
    let widest = board.thickness.max(board.width);
    Ok(if rips && !options.may_rip {
        Some(Obstacle::NoRips)
    } else if rips && !part.may_rip {
        Some(Obstacle::PartNotRipped)
    } else if resaws && !options.may_resaw {
        Some(Obstacle::NoResaw)
    } else if resaws && !part.may_resaw {
        Some(Obstacle::PartNotResawn)
    } else if rips && width < thinnest || resaws && thickness < thinnest {
        Some(Obstacle::TooThin { thinnest })
    } else if deepest > most {
        Some(Obstacle::TooDeep { most })
    } else if widest > LARGEST {
        Some(Obstacle::TooLarge)
    } else if widest < NARROWEST || resaws && is_too_slight(width, board.thickness) {
        Some(Obstacle::TooSlight)
    } else if rips && width > (board.width - (options.edge_cleanup * 2)?)?
        || resaws && thickness > (board.thickness - (options.face_cleanup * 2)?)?
    {
        Some(Obstacle::CleanUp)
    } else {
        None
    })
}

/// Whether a strip is too slight to be laid on its edge and resawn.
pub(super) fn is_too_slight(strip: Length, thickness: Length) -> bool {
    strip.max(thickness) < NARROWEST
}

/// Why none of the boards gives the part: the obstacle at the board where the least is in the way.
pub(super) fn why_not(
    part: &WantedPart,
    size: (Length, Length),
    boards: &[&StockBoard],
    options: &Options,
    bench: &Bench,
) -> Result<Option<WantedProblem>, OutOfRange> {
    let mut nearest: Option<(Obstacle, &StockBoard)> = None;
    for board in boards {
        match obstacle(part, size, board, options, bench)? {
            None => return Ok(None),
            // A board that is large enough says more than one that is not.
            Some(obstacle) => {
                let says_more = nearest.is_none_or(|(before, _)| {
                    before == Obstacle::TooSmall && obstacle != Obstacle::TooSmall
                });
                if says_more {
                    nearest = Some((obstacle, board));
                }
            }
        }
    }
    let of: Named = part.named.clone();
    Ok(nearest.map(|(obstacle, board)| WantedProblem::CannotBeHad {
        of,
        thickness: part.thickness,
        width: part.width,
        board: (board.thickness, board.width),
        obstacle,
    }))
}
