//! What is wanted: a cutting job made from the parts, the rack and the yard of the job book.
//!
//! A part's stock names the section of its boards. A part narrower or thinner than its boards has to be ripped or
//! resawn; the saw's limits are those of the resaw-and-rip calculator, so that a plan never asks for a strip that it
//! refuses. Pieces ticked off are not wanted any more, and what is left of a board that is begun is not counted; parts that wait for a measurement are left out and named.

mod again;
mod make;
mod options;
mod part;
mod problem;
mod sections;
mod stock;
#[cfg(test)]
mod tests;

pub use again::{FromBoard, board_for};
pub use make::Wanted;
pub(super) use make::{cautions_of, units};
pub use options::KEEP_FROM;
pub use options::{OPTIONS, Options, options, start_entries};
pub(super) use options::{end_trim, extra_percent, spare_each};
pub use part::NotYet;
pub use problem::{Named, Obstacle, WantedProblem};

use crate::job::sections::reads;
use crate::job::{BoardState, Item, Job, PartSizes, Reckoned, part_sizes};
use crate::say;
use crate::sheet::{Bench, Sentence};
use part::{WantedPart, read_part};
use stock::StockBoard;
pub use stock::places_to_keep_out_of;

/// What is tapped where a board comes out otherwise than it is drawn.
pub const CAME_OUT_DIFFERENT: &str = "It came out different";

/// The parts of the job book as a cutting job, with the boards of its rack and its yard.
///
/// # Errors
///
/// Everything that is in the way, each naming its part or board.
pub fn from_job_book(
    job: &Job,
    reckoned: &Reckoned,
    bench: &Bench,
    options: &Options,
) -> Result<Wanted, Vec<WantedProblem>> {
    let mut all = Gathered::of(job, reckoned, bench, options);
    if all.parts.is_empty() && all.problems.is_empty() {
        let waiting = u32::try_from(all.left_out.len()).unwrap_or(u32::MAX);
        return Err(vec![WantedProblem::NoParts { waiting }]);
    }
    if !all.problems.is_empty() {
        return Err(all.problems);
    }
    all.notes.extend(begun(job));
    all.made(bench, options, options.rack_only)
}

/// The same without the parts and boards that something is in the way of, and what that is; also parts that no board
/// gives are in it. It is for comparing with a plan, not to be planned.
///
/// # Errors
///
/// What keeps all of it from being put together.
pub(in crate::planning) fn as_far_as_it_goes(
    job: &Job,
    reckoned: &Reckoned,
    bench: &Bench,
    options: &Options,
) -> Result<(Wanted, Vec<WantedProblem>), Vec<WantedProblem>> {
    let mut all = Gathered::of(job, reckoned, bench, options);
    let problems = core::mem::take(&mut all.problems);
    Ok((all.made(bench, options, true)?, problems))
}

/// What a cutting job is made from, and what is in the way of it.
#[derive(Default)]
struct Gathered {
    parts: Vec<WantedPart>,
    boards: Vec<StockBoard>,
    left_out: Vec<NotYet>,
    notes: Vec<Sentence>,
    problems: Vec<WantedProblem>,
}

impl Gathered {
    fn of(job: &Job, reckoned: &Reckoned, bench: &Bench, options: &Options) -> Gathered {
        let mut all = Gathered::default();
        for sizes in part_sizes(job, reckoned) {
            let Some(Item::Part(part)) = job.item(sizes.id) else { continue };
            let named = Named { item: sizes.id, name: part.name.trim().to_owned() };
            let is_done = sizes.quantity.as_ref().is_ok_and(|quantity| sizes.done >= *quantity);
            if is_done {
                continue;
            }
            if !sizes.waits_for.is_empty() {
                all.left_out.push(not_yet(job, named, &sizes));
                continue;
            }
            match read_part(named, part, &sizes) {
                Ok(part) => all.parts.push(part),
                Err(more) => all.problems.extend(more),
            }
        }
        let asked: Vec<String> = all.parts.iter().map(|part| reads(&part.stock)).collect();
        let takes_any = all.parts.iter().any(WantedPart::takes_any);
        for raw in stock::boards(job, options) {
            let is_asked = asked.contains(&reads(raw.section));
            if !is_asked && !takes_any {
                continue;
            }
            match raw.read(reckoned, bench) {
                Ok(board) => {
                    if raw.wet && is_asked {
                        all.notes.push(say![
                            raw.named.name.clone(),
                            " is still wet. It will be narrower and thinner when it is dry: let it dry before the last cuts."
                        ]);
                    }
                    all.boards.push(board);
                }
                Err(more) if is_asked => all.problems.extend(more),
                // Nobody asks for it by name, so the plan can do without it.
                Err(more) => all.notes.extend(more.first().map(left_out_note)),
            }
        }
        all
    }

    fn made(
        self,
        bench: &Bench,
        options: &Options,
        keeps_what_no_board_gives: bool,
    ) -> Result<Wanted, Vec<WantedProblem>> {
        let told = (self.left_out, self.notes);
        make::make(&self.parts, &self.boards, (bench, options), told, keeps_what_no_board_gives)
    }
}

/// What is left of boards of which some pieces are cut. They are off the rack, and only the tape knows the rest: a tick
/// says how many pieces were cut, not where, and whoever lays a board out anew before the second cut is free to.
fn begun(job: &Job) -> Vec<Sentence> {
    let plan = job.find_cut_plan(false).and_then(|id| job.cut_plan(id));
    let states = plan.map_or_else(Vec::new, |(_, states)| states);
    let begun = (1_u32..).zip(&states).filter(|(_, it)| matches!(it, BoardState::Begun(_)));
    let told = begun.map(|(number, _)| {
        say![
            "Board ",
            number,
            " is begun. What is left of it is not counted: tap “",
            CAME_OUT_DIFFERENT,
            "” there and write down what is left."
        ]
    });
    told.collect()
}

fn left_out_note(problem: &WantedProblem) -> Sentence {
    let mut note = problem.sentence();
    note.0.push(" It is left out of the plan.".into());
    note
}

fn not_yet(job: &Job, named: Named, sizes: &PartSizes) -> NotYet {
    let names: Vec<&str> =
        sizes.waits_for.iter().filter_map(|id| job.item(*id)).map(Item::name).collect();
    NotYet {
        part: named.item,
        sentence: say![named.name.clone(), " waits for: ", names.join(", "), "."],
        name: named.name,
        waits_for: sizes.waits_for.clone(),
    }
}
