//! What is left of a quick list. It has no rack: what is left is worked out from its ticks.

use super::quick_list::board_name;
use super::report::{How, worth_keeping};
use super::ticking::counted;
use super::wanted::{Wanted, cautions_of};
use crate::cutting::{
    self, CrossSize, Done, DoneProblem, Ends, Scrap, Section, Source, replan_from,
};
use crate::job::cut_labels::{Label, Labels, SectionLabel};
use crate::job::{BoardState, ItemId, Job};
use crate::measure::text::{NoNames, TextProblem, parse};
use crate::measure::{Length, Tape};
use crate::sheet::split_wide;

/// Why what is left of a quick list cannot be worked out.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum RestProblem {
    /// There is no such plan, or it is not a quick list's.
    NotThere,
    /// A length left over cannot be read.
    Text(TextProblem),
    /// More is ticked than the plan holds.
    Done(DoneProblem),
    /// The lengths have no unit in common that is coarse enough.
    TooFine,
}

/// What is left of a quick list: cut parts are not wanted any more, bought boards and offcuts of at least `keep_from` cost
/// nothing.
///
/// # Errors
///
/// [`RestProblem`] for a plan that is not a quick list's, and for lengths left over that cannot be read.
pub fn list_rest(job: &Job, id: ItemId, keep_from: Length) -> Result<Wanted, RestProblem> {
    let (kept, states) = job.cut_plan(id).ok_or(RestProblem::NotThere)?;
    if !kept.is_list {
        return Err(RestProblem::NotThere);
    }
    let measured = measured(job, &states)?;
    let lengths: Vec<Length> =
        measured.iter().flat_map(|(length, width)| [Some(*length), *width]).flatten().collect();
    let (mut asked, unit) =
        cutting::refined(&kept.asked, kept.labels.unit, &lengths).ok_or(RestProblem::TooFine)?;
    let mut labels = Labels { unit, ..kept.labels.clone() };
    let scaled = |length: Length| {
        let inches = length.in_inches();
        unit.units(inches.numer(), inches.denom()).ok_or(RestProblem::TooFine)
    };
    let mut done = Done::default();
    let mut names: Vec<String> = Vec::new();
    let mut measured = measured.iter();
    for (number, (cut, state)) in kept.plan.boards.iter().zip(&states).enumerate() {
        let mut left: Vec<Left> = Vec::new();
        match state {
            BoardState::ToCut => continue,
            BoardState::Bought(_) | BoardState::Begun(_) => {
                if let Source::Board(at) = cut.source {
                    done.bought.push((at, 1));
                }
                continue;
            }
            BoardState::Cut => {
                done.parts.extend(counted(cut));
                let how = How { tape: Tape::SIXTEENTHS, keep_from };
                let keep = worth_keeping(&kept.asked, &kept.plan, &kept.labels, number, how);
                for keep in keep.into_iter().flatten() {
                    left.extend(core::iter::repeat_n(
                        (keep.length, keep.width),
                        usize::try_from(keep.count).unwrap_or(0),
                    ));
                }
            }
            BoardState::Different { good, left: texts } => {
                done.parts.extend(good.iter().copied());
                left.extend(measured.by_ref().take(texts.len()));
            }
        }
        done.used.push((cut.source, 1));
        let own = match cut.source {
            Source::Board(at) => asked.boards.get(at).map(|board| board.section.clone()),
            Source::Scrap(at) => asked.scraps.get(at).map(|scrap| scrap.section.clone()),
        };
        let own = own.unwrap_or_default();
        for (length, width) in left {
            let section = match width {
                Some(width) => strip_section(&mut asked, &mut labels, &own, width)?,
                None => Some(own.clone()),
            };
            // A list that rips nothing has no use for what is narrower than its board.
            let Some(section) = section else { continue };
            let id = format!("left {}", done.new_scraps.len().saturating_add(1));
            names.push(format!("left of board {}", number.saturating_add(1)));
            done.new_scraps.push(Scrap {
                id,
                section,
                length: scaled(length)?,
                quantity: 1,
                trims: Ends::default(),
                knots: Vec::new(),
            });
        }
    }
    rest(&asked, labels, &done, &names)
}

/// The section of strips of that width from boards of a section, which is made where there is none yet. `None` where the
/// list rips nothing.
fn strip_section(
    asked: &mut cutting::Job,
    labels: &mut Labels,
    own: &str,
    width: Length,
) -> Result<Option<String>, RestProblem> {
    let Some(section) = asked.section(own) else { return Ok(None) };
    let Some(size) = section.size else { return Ok(None) };
    let inches = width.in_inches();
    let width_units = labels.unit.units(inches.numer(), inches.denom());
    let size = CrossSize { width: width_units.ok_or(RestProblem::TooFine)?, ..size };
    let alike = asked.sections.iter().find(|it| it.wood == section.wood && it.size == Some(size));
    if let Some(alike) = alike {
        return Ok(Some(alike.id.clone()));
    }
    let (name, wood) = (board_name(Some(width)), section.wood.clone());
    let id = format!("strip {}", asked.sections.len());
    asked.sections.push(Section { id: id.clone(), wood, size: Some(size) });
    labels.sections.push(SectionLabel { name, size: None });
    Ok(Some(id))
}

fn rest(
    asked: &cutting::Job,
    mut labels: Labels,
    done: &Done,
    names: &[String],
) -> Result<Wanted, RestProblem> {
    // Boards of one kind that are bought become one scrap each; an id must not come twice.
    let mut bought: Vec<(usize, u32)> = Vec::new();
    for &(at, count) in &done.bought {
        match bought.iter_mut().find(|(known, _)| *known == at) {
            Some((_, all)) => *all = all.saturating_add(count),
            None => bought.push((at, count)),
        }
    }
    let label = |name: String| Label { item: None, name };
    for (at, _) in &bought {
        let name = labels.boards.get(*at).map_or("", |label| &label.name);
        let name = format!("{name}, bought");
        labels.scraps.push(label(name));
    }
    labels.scraps.extend(names.iter().map(|name| label(name.clone())));
    let done = Done { bought, ..done.clone() };
    let job = replan_from(asked, &done).map_err(RestProblem::Done)?;
    let pieces = job.parts.iter().map(|part| part.quantity).collect();
    let cautions = cautions_of(&job);
    Ok(Wanted { job, labels, pieces, left_out: Vec::new(), notes: Vec::new(), cautions })
}

/// A piece that is left of a board: its length, and its width where it is not the board's.
type Left = (Length, Option<Length>);

/// What is left over of boards that came out different, in the order of the boards.
fn measured(job: &Job, states: &[BoardState]) -> Result<Vec<Left>, RestProblem> {
    let mut all = Vec::new();
    let length = |text: &str| {
        let formula = parse(text, &NoNames);
        formula.and_then(|f| f.length(job.unit, &NoNames)).map_err(RestProblem::Text)
    };
    for state in states {
        let BoardState::Different { left, .. } = state else { continue };
        for text in left {
            let (long, wide) = split_wide(text);
            all.push((length(long)?, wide.map(length).transpose()?));
        }
    }
    Ok(all)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cutting::{CutBoard, Layer, Layout, Placed, Plan, Strip};
    use crate::job::{CutPlan, CutTicks, Item, Step};
    use crate::measure::{Unit, length};
    use crate::planning::quick_list::{QUICK_LIST, quick_list};
    use crate::sheet::{Ask, Bench, Caution, Entries};

    /// Three slats of 1 3/4 from boards of 5 1/2, two of them planned on one strip of one board, in eighths of an inch; and what
    /// became of that board.
    fn rest_after(state: BoardState) -> Wanted {
        let entries = Entries::from_pairs([
            ("parts", "slat: 3 @ 30 wide 1 3/4"),
            ("boards", "96 wide 5 1/2 at 10"),
            ("scraps", ""),
        ]);
        let bench = Bench::default();
        let mut ask = Ask::new(QUICK_LIST.fields, &entries, &bench, &NoNames);
        let wanted = quick_list(&mut ask).expect("a list");
        let placed = |at| Placed { part: 0, at, turned: false };
        let layers = vec![Layer { at: 0, thickness: 1, parts: vec![placed(4), placed(245)] }];
        let layout = Layout::RipFirst(vec![Strip { at: 0, width: 14, layers }]);
        let boards = vec![CutBoard { source: Source::Board(0), layout }];
        let kept = CutPlan {
            title: "Boards".to_owned(),
            is_list: true,
            entries: Vec::new(),
            asked: wanted.job,
            labels: wanted.labels,
            pieces: wanted.pieces,
            plan: Plan { boards, left_out: Vec::new(), cost_cents: 1_000 },
            bound_cents: 0,
            backing: None,
            paid_cents: 0,
        };
        let mut job = Job::new("Cut list", Unit::Inch);
        job.make(&job.keeping_plan(kept)).expect("no conflict");
        let plan = job.find_cut_plan(true).expect("kept");
        let ticks = Item::CutTicks(CutTicks { plan, boards: vec![state] });
        job.make(&Step::new("tick", vec![job.adding(0, ticks)])).expect("no conflict");
        list_rest(&job, plan, length("12").expect("a length")).expect("what is left")
    }

    fn left(rest: &Wanted) -> Vec<(String, Length, Option<Length>)> {
        let width = |id: &str| rest.job.section(id).and_then(|section| section.size);
        let one = |scrap: &Scrap| {
            let width = width(&scrap.section).and_then(|it| rest.labels.length(it.width).ok());
            let name = rest.labels.section(&rest.job, &scrap.section).map(|it| it.name.clone());
            let length = rest.labels.length(scrap.length).expect("a length");
            (name.unwrap_or_default(), length, width)
        };
        rest.job.scraps.iter().map(one).collect()
    }

    fn strip(name: &str, long: &str, wide: &str) -> (String, Length, Option<Length>) {
        let of = |text: &str| length(text).expect("a length");
        (name.to_owned(), of(long), Some(of(wide)))
    }

    /// By hand: of the strip 1/2 + 30 + 1/8 + 30 + 1/8 = 60 3/4 is gone, and 1/2 at the other end: 34 3/4 is left, 1 3/4 wide.
    /// Beside it 5 1/2 − 1 3/4 − 1/8 = 3 5/8 is left along the whole board.
    #[test]
    fn what_is_left_of_a_ripped_board_is_as_wide_as_it_is() {
        let rest = rest_after(BoardState::Cut);
        assert_eq!(rest.job.validate(), Ok(()));
        assert_eq!(rest.job.parts[0].quantity, 1);
        let beside = strip("3 5/8 in board", "96", "3 5/8");
        assert_eq!(left(&rest), [strip("1 3/4 in board", "34 3/4", "1 3/4"), beside]);
        assert_eq!(rest.labels.sections.len(), rest.job.sections.len());
        // It is ripped again, and that is said.
        assert!(rest.cautions.contains(&Caution::Ripping), "{:?}", rest.cautions);
    }

    #[test]
    fn a_strip_that_came_out_different_is_as_wide_as_it_was_measured() {
        let texts = ["20 wide 2 1/16", "40"].map(str::to_owned).to_vec();
        let rest = rest_after(BoardState::Different { good: vec![(0, 1)], left: texts });
        assert_eq!(rest.job.parts[0].quantity, 2);
        let whole = strip("5 1/2 in board", "40", "5 1/2");
        assert_eq!(left(&rest), [strip("2 1/16 in board", "20", "2 1/16"), whole]);
    }
}
