//! Puts parts, boards and the saw together into a cutting job in one unit.

use super::part::{NotYet, WantedPart};
use super::problem::Named;
use super::sections::{Woods, is_too_slight, lying, may_be_ripped, why_not};
use super::stock::StockBoard;
use super::{Options, WantedProblem};
use crate::calculators::resaw_rip::saw::SHORTEST;
use crate::cutting::scale::{CommonUnit, ScaleProblem};
use crate::cutting::{
    Board, CrossSize, Ends, Job, KnotZone, Part, ResawRules, RipRules, SawRules, Scrap, Section,
    Units, with_spares,
};
use crate::job::cut_labels::{Label, Labels, Money, SectionLabel};
use crate::measure::{Length, OutOfRange};
use crate::sheet::{Act, Bench, Caution, Sentence};

/// A cutting job made from what the builder wrote, with the way back to his names.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wanted {
    /// What to hand to the planner.
    pub job: Job,
    /// Its names.
    pub labels: Labels,
    /// How many pieces of each of its parts are wanted, without spares.
    pub pieces: Vec<u32>,
    /// Parts that must wait.
    pub left_out: Vec<NotYet>,
    /// What the builder should know; not a danger.
    pub notes: Vec<Sentence>,
    /// Dangers of the work.
    pub cautions: Vec<Caution>,
}

/// The dangers of sawing what a job wants.
pub(in crate::planning) fn cautions_of(job: &Job) -> Vec<Caution> {
    let rip = job.saw.rip.is_some().then_some(Act::Rip);
    let acts: Vec<Act> = rip.into_iter().chain([Act::SawAtStop]).collect();
    Caution::of(&acts)
}

/// One wood in one thickness and width.
struct Kind {
    wood: usize,
    thickness: Length,
    width: Length,
    /// Its size is told to the planner, which may then rip it.
    is_sized: bool,
}

/// A part with the place of its section.
struct Lying<'a> {
    part: &'a WantedPart,
    kind: usize,
}

/// Puts everything together. A part that no board gives is in the way, or kept: that is left to the planner.
///
/// # Errors
///
/// Everything that is in the way.
pub(super) fn make(
    parts: &[WantedPart],
    boards: &[StockBoard],
    (bench, options): (&Bench, &Options),
    (left_out, notes): (Vec<NotYet>, Vec<Sentence>),
    keeps_what_no_board_gives: bool,
) -> Result<Wanted, Vec<WantedProblem>> {
    let out_of_range = |_: OutOfRange| vec![WantedProblem::OutOfRange];
    let woods = Woods::of(parts, boards);
    let mut kinds: Vec<Kind> = Vec::new();
    let mut board_kinds = Vec::new();
    for board in boards {
        let wood = woods.of_board(board).unwrap_or(usize::MAX);
        board_kinds.push(kind_of(&mut kinds, wood, (board.thickness, board.width)));
    }
    let (mut lie, mut notes, mut problems) = (Vec::new(), notes, Vec::new());
    for part in parts {
        let wood = match woods.of_part(part, boards) {
            Ok((wood, note)) => {
                notes.extend(note);
                wood
            }
            // From the rack only, what it does not have is left out, like all that does not fit.
            Err(_) if keeps_what_no_board_gives => usize::MAX,
            Err(problem) => {
                problems.push(problem);
                continue;
            }
        };
        let own: Vec<&StockBoard> =
            boards.iter().filter(|board| woods.of_board(board) == Some(wood)).collect();
        let size = lying(part, &own);
        if !keeps_what_no_board_gives
            && let Some(problem) =
                why_not(part, size, &own, options, bench).map_err(out_of_range)?
        {
            problems.push(problem);
        }
        lie.push(Lying { part, kind: kind_of(&mut kinds, wood, size) });
    }
    if !problems.is_empty() {
        return Err(problems);
    }
    give_sizes(&mut kinds, &lie, &board_kinds, options).map_err(out_of_range)?;
    let maker = Maker { bench, options, kinds: &kinds, parts: &lie, boards, board_kinds };
    let unit = maker.unit().map_err(|problem| vec![problem])?;
    maker.wanted(unit, left_out, notes).map_err(out_of_range)
}

fn kind_of(kinds: &mut Vec<Kind>, wood: usize, (thickness, width): (Length, Length)) -> usize {
    let known = kinds
        .iter()
        .position(|kind| (kind.wood, kind.thickness, kind.width) == (wood, thickness, width));
    known.unwrap_or_else(|| {
        kinds.push(Kind { wood, thickness, width, is_sized: false });
        kinds.len() - 1
    })
}

/// Tells the planner the sizes of the woods in which something may be ripped or turned, and only of those: a size
/// that is not needed would only make the unit finer.
fn give_sizes(
    kinds: &mut [Kind],
    parts: &[Lying<'_>],
    board_kinds: &[usize],
    options: &Options,
) -> Result<(), OutOfRange> {
    if !options.may_rip && !options.may_resaw {
        return Ok(());
    }
    let mut sized = Vec::new();
    for (at, kind) in kinds.iter().enumerate() {
        let alike = || kinds.iter().filter(|other| other.wood == kind.wood);
        let mut own = parts
            .iter()
            .filter(|lie| kinds.get(lie.kind).is_some_and(|other| other.wood == kind.wood));
        let helps = own.any(|lie| {
            (lie.part.may_rip || lie.part.may_resaw) && (alike().count() > 1 || lie.part.grain_free)
        });
        let is_board = board_kinds.contains(&at);
        let can = !is_board || may_be_ripped(kind.thickness, kind.width, options)?;
        sized.push(helps && can);
    }
    for (kind, is_sized) in kinds.iter_mut().zip(sized) {
        kind.is_sized = is_sized;
    }
    Ok(())
}

struct Maker<'a> {
    bench: &'a Bench,
    options: &'a Options,
    kinds: &'a [Kind],
    parts: &'a [Lying<'a>],
    boards: &'a [StockBoard],
    board_kinds: Vec<usize>,
}

impl Maker<'_> {
    fn rips(&self) -> bool {
        self.kinds.iter().any(|kind| kind.is_sized)
    }

    /// The unit that all lengths of the job share.
    fn unit(&self) -> Result<CommonUnit, WantedProblem> {
        let mut lengths: Vec<(Option<&Named>, Length)> = Vec::new();
        let Options { kerf, reach, end_trim, edge_cleanup, face_cleanup, .. } = *self.options;
        lengths.extend([(None, kerf), (None, end_trim)]);
        if self.rips() {
            let limits = [reach, edge_cleanup, face_cleanup, self.bench.thinnest_strip, SHORTEST];
            lengths.extend(limits.map(|length| (None, length)));
        }
        let is_sized = |kind: &usize| self.kinds.get(*kind).is_some_and(|kind| kind.is_sized);
        for (board, kind) in self.boards.iter().zip(&self.board_kinds) {
            let of = Some(&board.named);
            lengths.push((of, board.length));
            lengths.extend(board.knots.iter().flat_map(|knot| [(of, knot.from), (of, knot.to)]));
            if is_sized(kind) {
                lengths.extend([(of, board.thickness), (of, board.width)]);
            }
        }
        for Lying { part, kind } in self.parts {
            let of = Some(&part.named);
            lengths.push((of, part.length));
            if is_sized(kind) {
                lengths.extend([(of, part.thickness), (of, part.width)]);
            }
        }
        common_unit(&lengths)
    }

    fn wanted(
        &self,
        unit: CommonUnit,
        left_out: Vec<NotYet>,
        notes: Vec<Sentence>,
    ) -> Result<Wanted, OutOfRange> {
        let to = |length: Length| units(unit, length);
        let mut sections = Vec::new();
        for (at, kind) in self.kinds.iter().enumerate() {
            let size = if kind.is_sized {
                Some(CrossSize { width: to(kind.width)?, thickness: to(kind.thickness)? })
            } else {
                None
            };
            sections.push(Section {
                id: section_id(at),
                wood: format!("wood {}", kind.wood),
                size,
            });
        }
        let mut job = Job::of(sections, self.saw(unit)?);
        let mut labels = Labels {
            unit,
            sections: self.kinds.iter().map(|kind| self.section_label(kind)).collect(),
            parts: Vec::new(),
            boards: Vec::new(),
            scraps: Vec::new(),
            money: Money::Cents,
        };
        for (priority, Lying { part, kind }) in (1..).zip(self.parts) {
            let is_slight = self.is_slight(part, *kind);
            job.parts.push(Part {
                id: format!("part {}", part.named.item.0),
                name: part.named.name.clone(),
                section: section_id(*kind),
                length: to(part.length)?,
                quantity: part.quantity,
                priority,
                may_rip: part.may_rip && self.options.may_rip,
                may_resaw: part.may_resaw && self.options.may_resaw && !is_slight,
                grain_free: part.grain_free,
            });
            labels.parts.push(label(&part.named));
        }
        let trim = to(self.options.end_trim)?;
        for (board, kind) in self.boards.iter().zip(&self.board_kinds) {
            let (section, length) = (section_id(*kind), to(board.length)?);
            let trims =
                if board.sawn_ends { Ends::default() } else { Ends { left: trim, right: trim } };
            let mut knots = Vec::new();
            for knot in &board.knots {
                knots.push(KnotZone { from: to(knot.from)?, to: to(knot.to)? });
            }
            let id = board.named.item.0;
            match board.on_hand {
                Some(quantity) => {
                    let id = format!("rack {id}");
                    job.scraps.push(Scrap { id, section, length, quantity, trims, knots });
                    labels.scraps.push(label(&board.named));
                }
                None => {
                    job.boards.push(Board {
                        id: format!("yard {id}"),
                        section,
                        length,
                        price_cents: board.price_cents,
                        limit: board.limit,
                        trims,
                        knots,
                    });
                    labels.boards.push(label(&board.named));
                }
            }
        }
        let pieces = job.parts.iter().map(|part| part.quantity).collect();
        let job = with_spares(&job, self.options.spare_each, self.options.extra_percent);
        let cautions = cautions_of(&job);
        Ok(Wanted { job, labels, pieces, left_out, notes, cautions })
    }

    fn section_label(&self, kind: &Kind) -> SectionLabel {
        let wood = |at: usize| self.kinds.get(at).map(|kind| kind.wood);
        let mut boards = self.boards.iter().zip(&self.board_kinds);
        let board = boards.find(|(_, at)| wood(**at) == Some(kind.wood));
        let name = board.map_or(String::new(), |(board, _)| board.section.clone());
        SectionLabel { name, size: Some((kind.thickness, kind.width)) }
    }

    /// Whether a strip of the part's width would be too slight to stand on its edge before the saw, in any board.
    fn is_slight(&self, part: &WantedPart, kind: usize) -> bool {
        let Some(own) = self.kinds.get(kind) else { return true };
        let least = if part.grain_free { own.width.min(part.length) } else { own.width };
        let mut boards = self.board_kinds.iter().filter_map(|kind| self.kinds.get(*kind));
        boards.any(|board| board.wood == own.wood && is_too_slight(least, board.thickness))
    }

    fn saw(&self, unit: CommonUnit) -> Result<SawRules, OutOfRange> {
        let to = |length: Length| units(unit, length);
        let kerf = to(self.options.kerf)?;
        if !self.rips() {
            return Ok(SawRules { kerf, rip: None });
        }
        let (edge, face) = (to(self.options.edge_cleanup)?, to(self.options.face_cleanup)?);
        let thinnest = to(self.bench.thinnest_strip)?;
        let resaw = ResawRules {
            kerf,
            near_face: face,
            far_face: face,
            least_thickness: thinnest,
            greatest_width: Some(to((self.options.reach * 2)?)?),
        };
        let rip = RipRules {
            kerf,
            near_edge: edge,
            far_edge: edge,
            least_width: thinnest,
            least_length: to(SHORTEST)?,
            crosscut_first: self.options.crosscut_first,
            resaw: self.options.may_resaw.then_some(resaw),
        };
        Ok(SawRules { kerf, rip: Some(rip) })
    }
}

fn section_id(kind: usize) -> String {
    format!("section {kind}")
}

fn label(named: &Named) -> Label {
    Label { item: Some(named.item), name: named.name.clone() }
}

/// A length in units. The unit was made so that it is a whole number of them.
pub(in crate::planning) fn units(unit: CommonUnit, length: Length) -> Result<Units, OutOfRange> {
    let inches = length.in_inches();
    unit.units(inches.numer(), inches.denom()).ok_or(OutOfRange)
}

/// The unit that lengths share, each with the part or board it belongs to.
fn common_unit(lengths: &[(Option<&Named>, Length)]) -> Result<CommonUnit, WantedProblem> {
    let fractions: Vec<(i128, i128)> = lengths
        .iter()
        .map(|(_, length)| (length.in_inches().numer(), length.in_inches().denom()))
        .collect();
    // Which length comes one too many depends on the order of the list; the finest one is the one to change.
    CommonUnit::of(&fractions).map_err(|_: ScaleProblem| {
        let finest = lengths.iter().max_by_key(|(_, length)| length.in_inches().denom());
        finest.map_or(WantedProblem::OutOfRange, |(of, length)| WantedProblem::TooFine {
            of: of.cloned(),
            length: *length,
        })
    })
}
