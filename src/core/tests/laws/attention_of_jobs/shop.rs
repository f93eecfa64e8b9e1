//! A job as the one who builds it remembers it: what each size comes from, by hand, and every cut. Nothing of it is asked of
//! the core.

use std::collections::BTreeSet;

use reckoner_core::job::ItemId;
use reckoner_core::measure::Length;

/// Half a sixteenth: as near as anybody cuts to the tape of a bench that nobody has set.
const CLOSE: i128 = 2;

pub(super) fn sixty_fourths(n: i128) -> Length {
    Length::of_inch(n, 64).expect("small")
}

pub(super) fn plus(a: Length, b: Length) -> Length {
    (a + b).expect("small")
}

pub(super) fn less(a: Length, b: Length) -> Length {
    (a - b).expect("small")
}

/// What a size is worked out from.
#[derive(Clone, Debug)]
pub(super) enum By {
    Is(Length),
    /// A size of the shop, by its place.
    Size(usize),
    /// What a field of a kept reckoning says, by its place.
    Field(usize),
    Plus(Box<By>, Box<By>),
    Less(Box<By>, Box<By>),
    Times(u32, Box<By>),
    Over(Box<By>, u32),
}

pub(super) fn is(n: i128) -> By {
    By::Is(sixty_fourths(n))
}

pub(super) fn sum(a: By, b: By) -> By {
    By::Plus(Box::new(a), Box::new(b))
}

pub(super) fn without(a: By, b: By) -> By {
    By::Less(Box::new(a), Box::new(b))
}

pub(super) fn times(many: u32, of: By) -> By {
    By::Times(many, Box::new(of))
}

pub(super) fn over(a: By, by: u32) -> By {
    By::Over(Box::new(a), by)
}

impl By {
    /// The first thing that this size stands for gets another one: of two legs one is the thin one.
    pub(super) fn one_is(&mut self, size: usize, own: usize) -> bool {
        match self {
            By::Size(it) if *it == size => {
                *it = own;
                true
            }
            By::Times(many, of) if matches!(**of, By::Size(it) if it == size) => {
                let rest = By::Size(size);
                let rest = if *many == 2 { rest } else { times(*many - 1, rest) };
                *self = sum(rest, By::Size(own));
                true
            }
            By::Is(_) | By::Size(_) | By::Field(_) => false,
            By::Plus(a, b) | By::Less(a, b) => a.one_is(size, own) || b.one_is(size, own),
            By::Times(_, of) | By::Over(of, _) => of.one_is(size, own),
        }
    }

    /// All of this size is another one.
    pub(super) fn all_are(&mut self, size: usize, other: usize) {
        while self.one_is(size, other) {}
    }
}

/// A size by name.
#[derive(Clone, Debug)]
pub(super) struct Size {
    pub(super) id: ItemId,
    pub(super) name: String,
    pub(super) by: By,
    pub(super) is_formula: bool,
    /// Somebody said that it is cut.
    pub(super) is_cut: bool,
    pub(super) as_cut: Option<Length>,
    pub(super) left: Option<Length>,
    /// It is that of one piece.
    pub(super) is_own: bool,
}

/// A piece.
#[derive(Clone, Debug, Default)]
pub(super) struct Piece {
    pub(super) is_cut: bool,
    pub(super) sizes: [Option<Length>; 3],
    pub(super) left: [Option<Length>; 3],
}

/// Pieces that are alike.
#[derive(Clone, Debug)]
pub(super) struct Part {
    pub(super) id: ItemId,
    pub(super) name: String,
    pub(super) by: [By; 3],
    pub(super) count: usize,
    pub(super) pieces: Vec<Piece>,
}

/// Pieces that are remembered of a part: more than are ever cut.
pub(super) const KNOWN: usize = 16;

/// What must match: sizes and the lengths of parts, by their places.
#[derive(Clone, Debug)]
pub(super) struct Group {
    pub(super) id: ItemId,
    pub(super) sizes: Vec<usize>,
    pub(super) parts: Vec<usize>,
    pub(super) drift: Length,
    pub(super) left: Option<Length>,
}

/// Everything.
#[derive(Clone, Debug)]
pub(super) struct Shop {
    pub(super) sizes: Vec<Size>,
    /// What fields of kept reckonings say: the reckoning, the field, and what stands there.
    pub(super) fields: Vec<(ItemId, &'static str, By)>,
    pub(super) parts: Vec<Part>,
    pub(super) groups: Vec<Group>,
    /// What was laid on the rack, piece by piece.
    pub(super) rack: Vec<[Length; 3]>,
}

/// One line of the list. All that it says is in it, so that two lists are compared as sets.
pub(super) type Line = String;

/// A piece that is off in one of its sizes.
pub(super) fn off_line(
    part: ItemId,
    index: usize,
    of: usize,
    (is, wanted): (Length, Length),
    is_left: bool,
) -> Line {
    format!("off: part {part:?} piece {index} size {of} is {is} not {wanted} left {is_left}")
}

pub(super) fn size_line(id: ItemId, (is, wanted): (Length, Length), is_left: bool) -> Line {
    format!("size: {id:?} is {is} not {wanted} left {is_left}")
}

pub(super) fn apart_line(id: ItemId, apart: Length, is_left: bool) -> Line {
    format!("apart: {id:?} by {apart} left {is_left}")
}

pub(super) fn unknown_line(id: ItemId, index: usize) -> Line {
    format!("not recorded: {id:?} piece {index}")
}

pub(super) fn beyond_line(id: ItemId, index: usize) -> Line {
    format!("beyond: {id:?} piece {index}")
}

pub(super) fn size_unknown_line(id: ItemId) -> Line {
    format!("size not recorded: {id:?}")
}

impl Shop {
    pub(super) fn worth(&self, by: &By) -> Length {
        match by {
            By::Is(length) => *length,
            By::Size(at) => self.in_use(*at),
            By::Field(at) => self.worth(&self.fields[*at].2),
            By::Plus(a, b) => plus(self.worth(a), self.worth(b)),
            By::Less(a, b) => less(self.worth(a), self.worth(b)),
            By::Times(many, of) => (self.worth(of) * *many).expect("small"),
            By::Over(of, by) => (self.worth(of) / *by).expect("small"),
        }
    }

    pub(super) fn planned(&self, at: usize) -> Length {
        self.worth(&self.sizes[at].by)
    }

    pub(super) fn in_use(&self, at: usize) -> Length {
        self.sizes[at].as_cut.unwrap_or_else(|| self.planned(at))
    }

    pub(super) fn wanted(&self, part: usize) -> [Length; 3] {
        [0, 1, 2].map(|of| self.worth(&self.parts[part].by[of]))
    }

    pub(super) fn size_at(&self, id: ItemId) -> usize {
        self.sizes.iter().position(|it| it.id == id).expect("a size")
    }

    pub(super) fn part_at(&self, id: ItemId) -> usize {
        self.parts.iter().position(|it| it.id == id).expect("a part")
    }

    pub(super) fn group_at(&self, id: ItemId) -> usize {
        self.groups.iter().position(|it| it.id == id).expect("a group")
    }

    /// The lengths of a group, and how far they are apart where that is too far.
    pub(super) fn apart(&self, group: &Group) -> Option<(Length, Length)> {
        let mut all: Vec<Length> = group.sizes.iter().map(|at| self.in_use(*at)).collect();
        for at in &group.parts {
            let part = &self.parts[*at];
            let cut = part.pieces[..part.count].iter().filter(|piece| piece.is_cut);
            all.extend(cut.clone().filter_map(|piece| piece.sizes[2]));
            if cut.count() < part.count {
                all.push(self.wanted(*at)[2]);
            }
        }
        let least = *all.iter().min()?;
        let apart = less(*all.iter().max()?, least);
        (apart > group.drift).then_some((least, apart))
    }

    /// The whole list, and of it what need not be told twice: a size that one piece alone has, and its piece says it.
    pub(super) fn expected(&self) -> (BTreeSet<Line>, BTreeSet<Line>) {
        let (mut all, mut told_by_piece) = (BTreeSet::new(), BTreeSet::new());
        let is_off = |is: Length, wanted: Length| {
            let by = less(is, wanted);
            (by.abs() > sixty_fourths(CLOSE)).then_some(by)
        };
        let mut by_pieces = Vec::new();
        for (at, part) in self.parts.iter().enumerate() {
            let wanted = self.wanted(at);
            for (index, piece) in part.pieces.iter().enumerate().filter(|(_, it)| it.is_cut) {
                if index >= part.count {
                    all.insert(beyond_line(part.id, index));
                    continue;
                }
                for (of, wanted) in wanted.into_iter().enumerate() {
                    let Some(is) = piece.sizes[of] else {
                        all.insert(unknown_line(part.id, index));
                        continue;
                    };
                    if let Some(by) = is_off(is, wanted) {
                        by_pieces.push((is, wanted));
                        let is_left = piece.left[of] == Some(by);
                        all.insert(off_line(part.id, index, of, (is, wanted), is_left));
                    }
                }
            }
        }
        for (at, size) in self.sizes.iter().enumerate() {
            let planned = self.planned(at);
            match size.as_cut {
                None if size.is_cut => drop(all.insert(size_unknown_line(size.id))),
                Some(is) if size.is_formula => {
                    let Some(by) = is_off(is, planned) else { continue };
                    let is_left = size.left == Some(by);
                    let line = size_line(size.id, (is, planned), is_left);
                    if size.is_own && is_left && by_pieces.contains(&(is, planned)) {
                        told_by_piece.insert(line);
                    } else {
                        all.insert(line);
                    }
                }
                _ => {}
            }
        }
        for group in &self.groups {
            if let Some((_, apart)) = self.apart(group) {
                all.insert(apart_line(group.id, apart, group.left == Some(apart)));
            }
        }
        (all, told_by_piece)
    }
}
