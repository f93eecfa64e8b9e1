//! What is left of a quick list. It has no rack: what is left is worked out from its ticks.

use super::report::{How, worth_keeping};
use super::ticking::counted;
use super::wanted::Wanted;
use crate::cutting::{self, Done, DoneProblem, Ends, Scrap, Source, replan_from};
use crate::job::cut_labels::{Label, Labels};
use crate::job::{BoardState, ItemId, Job};
use crate::measure::text::{NoNames, TextProblem, parse};
use crate::measure::{Length, Tape};
use crate::sheet::{Act, Caution};

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
    let lengths = measured(job, &states)?;
    let (asked, unit) =
        cutting::refined(&kept.asked, kept.labels.unit, &lengths).ok_or(RestProblem::TooFine)?;
    let labels = Labels { unit, ..kept.labels.clone() };
    let scaled = |length: Length| {
        let inches = length.in_inches();
        unit.units(inches.numer(), inches.denom()).ok_or(RestProblem::TooFine)
    };
    let mut done = Done::default();
    let mut names: Vec<String> = Vec::new();
    let mut lengths = lengths.iter();
    let section = asked.sections.first().map_or(String::new(), |section| section.id.clone());
    for (number, (cut, state)) in kept.plan.boards.iter().zip(&states).enumerate() {
        let mut left: Vec<Length> = Vec::new();
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
                        keep.length,
                        usize::try_from(keep.count).unwrap_or(0),
                    ));
                }
            }
            BoardState::Different { good, left: texts } => {
                done.parts.extend(good.iter().copied());
                left.extend(lengths.by_ref().take(texts.len()));
            }
        }
        done.used.push((cut.source, 1));
        for length in left {
            let id = format!("left {}", done.new_scraps.len().saturating_add(1));
            names.push(format!("left of board {}", number.saturating_add(1)));
            done.new_scraps.push(Scrap {
                id,
                section: section.clone(),
                length: scaled(length)?,
                quantity: 1,
                trims: Ends::default(),
                knots: Vec::new(),
            });
        }
    }
    rest(&asked, labels, &done, &names)
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
    Ok(Wanted {
        job,
        labels,
        pieces,
        left_out: Vec::new(),
        notes: Vec::new(),
        cautions: Caution::of(&[Act::SawAtStop]),
    })
}

/// The lengths left over of boards that came out different, in the order of the boards.
fn measured(job: &Job, states: &[BoardState]) -> Result<Vec<Length>, RestProblem> {
    let mut lengths = Vec::new();
    for state in states {
        let BoardState::Different { left, .. } = state else { continue };
        for text in left {
            let formula = parse(text, &NoNames);
            let length = formula.and_then(|f| f.length(job.unit, &NoNames));
            lengths.push(length.map_err(RestProblem::Text)?);
        }
    }
    Ok(lengths)
}
