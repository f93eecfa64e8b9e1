//! The cutting job of a list.

use super::List;
use crate::calculators::resaw_rip::saw::SHORTEST;
use crate::cutting::scale::CommonUnit;
use crate::cutting::{
    Board, CrossSize, Ends, Job, LARGEST_PRICE_CENTS, Part, RipRules, SawRules, Scrap, Section,
    Units,
};
use crate::job::cut_labels::{Label, Labels, Money, SectionLabel};
use crate::measure::text::exact_text;
use crate::measure::{Length, OutOfRange};
use crate::planning::wanted::{Wanted, cautions_of, units};

impl List {
    pub(super) fn in_units(&self, unit: CommonUnit) -> Result<Wanted, OutOfRange> {
        let to = |length: Length| units(unit, length);
        let kinds = self.kinds();
        let mut labels = Labels {
            unit,
            sections: kinds
                .iter()
                .map(|kind| SectionLabel { name: board_name(*kind), size: None })
                .collect(),
            parts: Vec::new(),
            boards: Vec::new(),
            scraps: Vec::new(),
            money: Money::Cents,
        };
        let named = |name: String| Label { item: None, name };
        let mut sections = Vec::new();
        for kind in &kinds {
            // Nothing is resawn, so any thickness does that is the same for all.
            let size = match kind.filter(|_| self.rips()) {
                Some(width) => Some(CrossSize { width: to(width)?, thickness: 1 }),
                None => None,
            };
            sections.push(Section { id: section_id(*kind), wood: SECTION.into(), size });
        }
        let mut job = Job::of(sections, self.saw(unit)?);
        for (number, part) in (1_u32..).zip(&self.parts) {
            job.parts.push(Part {
                id: format!("part {number}"),
                name: part.name.clone(),
                section: section_id(self.width_of(part)),
                length: to(part.length)?,
                quantity: part.count,
                priority: number,
                may_rip: self.rips(),
                may_resaw: false,
                grain_free: false,
            });
            labels.parts.push(named(part.name.clone()));
        }
        let trim = to(self.end_trim)?;
        for (number, board) in (1_u32..).zip(&self.boards) {
            job.boards.push(Board {
                id: format!("yard {number}"),
                section: section_id(board.width),
                length: to(board.length)?,
                price_cents: board.cents.unwrap_or(0),
                limit: board.limit,
                trims: Ends { left: trim, right: trim },
                knots: Vec::new(),
            });
            labels.boards.push(named(board_name(board.width)));
        }
        for scrap in &self.scraps {
            let (length, section) = (to(scrap.length)?, section_id(scrap.width));
            let is_alike = |known: &&mut Scrap| known.length == length && known.section == section;
            if let Some(alike) = job.scraps.iter_mut().find(is_alike) {
                alike.quantity += 1;
                continue;
            }
            job.scraps.push(Scrap {
                id: format!("rack {}", job.scraps.len() + 1),
                section,
                length,
                quantity: 1,
                trims: Ends::default(),
                knots: Vec::new(),
            });
            labels.scraps.push(named(match scrap.width {
                Some(width) => format!("{} on my rack", board_name(Some(width))),
                None => "on my rack".to_owned(),
            }));
        }
        if job.boards.iter().all(|board| board.price_cents == 0) && !job.boards.is_empty() {
            labels.money = Money::Wood { each: price_by_length(&mut job.boards, &labels)? };
        }
        Ok(Wanted {
            pieces: self.parts.iter().map(|part| part.count).collect(),
            cautions: cautions_of(&job),
            job,
            labels,
            left_out: Vec::new(),
            notes: Vec::new(),
        })
    }

    /// The widths that are kinds of stock of their own; a list of lengths only has one kind.
    fn kinds(&self) -> Vec<Option<Length>> {
        let widths = self.widths();
        if widths.is_empty() { vec![None] } else { widths.into_iter().map(Some).collect() }
    }

    fn saw(&self, unit: CommonUnit) -> Result<SawRules, OutOfRange> {
        let kerf = units(unit, self.kerf)?;
        if !self.rips() {
            return Ok(SawRules { kerf, rip: None });
        }
        let rip = RipRules {
            kerf,
            near_edge: 0,
            far_edge: 0,
            least_width: units(unit, self.thinnest)?,
            least_length: units(unit, SHORTEST)?,
            crosscut_first: false,
            resaw: None,
        };
        Ok(SawRules { kerf, rip: Some(rip) })
    }
}

/// What boards are called that say nothing of their width.
const SECTION: &str = "board";

fn section_id(width: Option<Length>) -> String {
    width.map_or(SECTION.to_owned(), |width| format!("{SECTION} {}", exact_text(width)))
}

/// `board`, or `5 1/2 in board`.
pub(in crate::planning) fn board_name(width: Option<Length>) -> String {
    width.map_or(SECTION.to_owned(), |width| format!("{} {SECTION}", exact_text(width)))
}

/// Lets the length of each board stand for its price, and says how much wood one cent is.
fn price_by_length(boards: &mut [Board], labels: &Labels) -> Result<Length, OutOfRange> {
    let step = boards.iter().fold(0, |step, board| common(step, board.length)).max(1);
    for board in boards {
        board.price_cents = board.length / step;
        if board.price_cents > LARGEST_PRICE_CENTS {
            return Err(OutOfRange);
        }
    }
    labels.length(step)
}

fn common(a: Units, b: Units) -> Units {
    if b == 0 { a } else { common(b, a % b) }
}
