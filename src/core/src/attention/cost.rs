//! What a way out costs in boards and money.

use super::{Does, Fact, Outcome};
use crate::job::{Dimension, Item, ItemId, Job, Reckoned};
use crate::measure::Length;
use crate::planning::wanted::board_for;
use crate::say;
use crate::sheet::{Bench, Sentence, money};

/// What a way out of a fact costs, where that can be said: the board that pieces are cut again from, and
/// its price; of a way that brings others to be cut again, what they take together. `comes` is what comes of it. `None`
/// where it is no matter of boards, or nothing is known of them.
#[must_use]
pub fn cost(
    job: &Job,
    reckoned: &Reckoned,
    bench: &Bench,
    (fact, does): (&Fact, Does),
    comes: Option<&Outcome>,
) -> Option<Sentence> {
    match (does, fact) {
        (
            Does::CutAgain | Does::CutAgainFromRack,
            Fact::Off { part, pieces, .. } | Fact::NotRecorded { part, pieces },
        ) => {
            let mut words = again(job, reckoned, bench, *part, pieces.len());
            if does == Does::CutAgain {
                words.0.extend(scrap(job, reckoned, *part, pieces).into_iter().flat_map(|it| it.0));
            }
            Some(words)
        }
        (Does::Shim(_), _) => fact.shims(job, reckoned),
        (Does::GiveWay(..) | Does::ToSmallest | Does::TakePlan, _) => {
            comes.map(|comes| all_again(comes, bench))
        }
        (
            Does::Trim(_)
            | Does::Leave
            | Does::TakePlace
            | Does::ToRack
            | Does::WantAgain
            | Does::Scrap,
            _,
        ) => Some(nothing()),
        _ => None,
    }
}

fn nothing() -> Sentence {
    say!["Takes no board and no money."]
}

fn count(pieces: usize) -> u32 {
    u32::try_from(pieces).unwrap_or(u32::MAX)
}

fn again(job: &Job, reckoned: &Reckoned, bench: &Bench, part: ItemId, pieces: usize) -> Sentence {
    let Some(found) = board_for(job, reckoned, bench, part, count(pieces)) else {
        return say!["No board on the rack or at the yard is known to give it."];
    };
    match found.cents {
        None => say!["From the rack: ", found.name, ", ", found.length, " long."],
        Some(cents) => say![
            format!("From the yard: {} × {}, ", found.boards, found.name),
            found.length,
            " long, ",
            money(cents),
            "."
        ],
    }
}

/// How much wood the old pieces are, by their length. `None` where no tape was on them.
fn scrap(job: &Job, reckoned: &Reckoned, part: ItemId, pieces: &[usize]) -> Option<Sentence> {
    let Item::Part(part) = job.item(part)? else { return None };
    let mut sum = Length::ZERO;
    for index in pieces {
        sum = (sum + part.piece(*index).size(Dimension::Length, reckoned)?.ok()?).ok()?;
    }
    let words =
        if pieces.len() == 1 { " The old one is scrap: " } else { " The old ones are scrap: " };
    Some(say![words, sum, "."])
}

/// What it takes to cut again all that wants it then and does not now.
fn all_again(comes: &Outcome, bench: &Bench) -> Sentence {
    let mut parts: Vec<(ItemId, Vec<usize>)> = Vec::new();
    for fact in &comes.brings {
        let Fact::Off { part, pieces, .. } = fact else { continue };
        // A piece can be off in more than one of its sizes.
        match parts.iter_mut().find(|(known, _)| known == part) {
            Some((_, known)) => {
                let more = pieces.iter().filter(|it| !known.contains(it)).collect::<Vec<_>>();
                known.extend(more);
            }
            None => parts.push((*part, pieces.clone())),
        }
    }
    if parts.is_empty() {
        return nothing();
    }
    let (mut boards, mut cents) = (0_u32, 0_i64);
    for (part, pieces) in parts {
        let found = board_for(&comes.job, &comes.reckoned, bench, part, count(pieces.len()));
        let Some(found) = found else {
            return say![
                "No board on the rack or at the yard is known to give all that is cut again then."
            ];
        };
        boards = boards.saturating_add(if found.cents.is_some() { found.boards } else { 0 });
        cents = cents.saturating_add(found.cents.unwrap_or(0));
    }
    match boards {
        0 => say!["What is cut again then comes from the rack."],
        1 => say!["What is cut again then takes a board from the yard, ", money(cents), "."],
        boards => say![
            format!("What is cut again then takes {boards} boards from the yard, "),
            money(cents),
            "."
        ],
    }
}
