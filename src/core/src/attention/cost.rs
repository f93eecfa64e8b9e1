//! What a way out costs in boards and money.

use super::named::pieces_of;
use super::{Does, Fact, Outcome};
use crate::job::moved::is_cut;
use crate::job::{Dimension, Item, ItemId, Job, Reckoned};
use crate::measure::Length;
use crate::planning::wanted::board_for;
use crate::say;
use crate::sheet::{Bench, Sentence, money};

/// What a way out of a fact costs and throws away: the board that pieces are cut again from, and its price; of a way
/// that brings others to be cut again, what they take together; what is trimmed off, and what is scrap. `comes` is what
/// comes of it. `None` where the way is no step, and the place that it leads to says it.
#[must_use]
pub fn cost(
    job: &Job,
    reckoned: &Reckoned,
    bench: &Bench,
    (fact, does): (&Fact, Does),
    comes: Option<&Outcome>,
) -> Option<Sentence> {
    match does {
        Does::CutAgain | Does::CutAgainFromRack => {
            let Some((part, pieces)) = fact.pieces() else { return Some(size_again(fact)) };
            let mut words = again(job, reckoned, bench, part, pieces.len());
            let is_one = pieces.len() == 1;
            let old = match does {
                Does::CutAgain => {
                    let who =
                        if is_one { " The old one is scrap" } else { " The old ones are scrap" };
                    scrap(who, length_of(job, reckoned, part, pieces))
                }
                _ if is_one => say![" Nothing is thrown away: the old one goes on the rack."],
                _ => say![" Nothing is thrown away: the old ones go on the rack."],
            };
            words.0.extend(old.0);
            Some(words)
        }
        Does::Shim(_) => fact.shims(job, reckoned),
        Does::GiveWay(..) | Does::TakePlan => comes.map(|comes| then(comes, bench, None)),
        Does::ToSmallest => {
            comes.map(|comes| then(comes, bench, trimmed(job, reckoned, comes, fact)))
        }
        Does::Trim(by) => {
            let words = say!["Takes no board and no money. What comes off is thrown away: ", by];
            let rest = match fact {
                Fact::Off { of, .. } if fact.many() < 2 => format!(" of the {}.", of.word()),
                Fact::Off { of, .. } => format!(" of the {} of each.", of.word()),
                _ => ".".to_owned(),
            };
            Some(joined(words, say![rest]))
        }
        Does::Leave | Does::TakePlace | Does::ToRack | Does::WantAgain => Some(nothing()),
        Does::Scrap => {
            let (part, pieces) = fact.pieces()?;
            let who = if pieces.len() == 1 { " It is scrap" } else { " They are scrap" };
            let words = say!["Takes no board and no money."];
            Some(joined(words, scrap(who, length_of(job, reckoned, part, pieces))))
        }
        Does::PlanAgain => Some(say![
            "Costs nothing yet: what is to buy is said before you use the new plan. What is cut and what is bought is \
             counted, and nothing is thrown away."
        ]),
        Does::OwnSize
        | Does::Measure
        | Does::MakeAgain
        | Does::GoThere
        | Does::SaveFile
        | Does::PutBack => None,
    }
}

fn nothing() -> Sentence {
    say!["Takes no board and no money, and nothing is thrown away."]
}

fn joined(mut words: Sentence, more: Sentence) -> Sentence {
    words.0.extend(more.0);
    words
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

/// A size that is cut has no board that it is known to come from.
fn size_again(fact: &Fact) -> Sentence {
    let words = say!["Which board it takes is not known."];
    let length = if let Fact::SizeOff { is, .. } = fact { Some(*is) } else { None };
    joined(words, scrap(" The old one is scrap", length))
}

/// How much wood pieces are, by their length. `None` where no tape was on them.
fn length_of(job: &Job, reckoned: &Reckoned, part: ItemId, pieces: &[usize]) -> Option<Length> {
    let Item::Part(part) = job.item(part)? else { return None };
    pieces.iter().try_fold(Length::ZERO, |sum, index| {
        (sum + part.piece(*index).size(Dimension::Length, reckoned)?.ok()?).ok()
    })
}

fn scrap(who: &'static str, length: Option<Length>) -> Sentence {
    match length {
        Some(length) => say![who, ": ", length, "."],
        None => say![who, "; how long is not known."],
    }
}

/// What a step that brings all of a group to the smallest takes off what is cut, in all. `None` where that is nothing.
fn trimmed(job: &Job, reckoned: &Reckoned, comes: &Outcome, fact: &Fact) -> Option<Length> {
    let Item::Match(group) = job.item(fact.item()?)? else { return None };
    let mut sum = Length::ZERO;
    for id in &group.measures {
        match job.item(*id)? {
            Item::Part(part) => {
                let cut = (0..part.pieces.len()).filter(|index| part.piece(*index).is_cut());
                for index in cut {
                    let before = length_of(job, reckoned, *id, &[index]);
                    let after = length_of(&comes.job, &comes.reckoned, *id, &[index]);
                    if let (Some(before), Some(after)) = (before, after) {
                        sum = (sum + (before - after).ok()?).ok()?;
                    }
                }
            }
            Item::Measure(measure) if is_cut(measure) => {
                let before = reckoned.measure(*id)?.length()?;
                let after = comes.reckoned.measure(*id)?.length()?;
                sum = (sum + (before - after).ok()?).ok()?;
            }
            _ => {}
        }
    }
    sum.is_positive().then_some(sum)
}

/// What is off after a step and was not before.
#[derive(Default)]
struct Brought {
    /// Pieces that are too small: they are cut again.
    again: Vec<(ItemId, Vec<usize>)>,
    /// Sizes that are too small.
    sizes: Vec<String>,
    /// How much comes off what is too large, and off what.
    off: Vec<(Length, String)>,
}

impl Brought {
    fn of(comes: &Outcome) -> Brought {
        let mut all = Brought::default();
        let too_small = comes.brings.iter().filter(|fact| match fact {
            Fact::Off { is, wanted, .. } | Fact::SizeOff { is, wanted, .. } => is < wanted,
            _ => false,
        });
        for fact in too_small {
            let Some((part, pieces)) = fact.pieces() else {
                all.sizes.push(fact.about(&comes.job));
                continue;
            };
            // A piece can be off in more than one of its sizes.
            match all.again.iter_mut().find(|(known, _)| *known == part) {
                Some((_, known)) => {
                    let more = pieces.iter().filter(|it| !known.contains(it)).collect::<Vec<_>>();
                    known.extend(more);
                }
                None => all.again.push((part, pieces.to_vec())),
            }
        }
        for fact in &comes.brings {
            let (Fact::Off { is, wanted, .. } | Fact::SizeOff { is, wanted, .. }) = fact else {
                continue;
            };
            let Some(by) = (*is - *wanted).ok().filter(|by| by.is_positive()) else { continue };
            let Some((part, pieces)) = fact.pieces() else {
                all.off.push((by, fact.about(&comes.job)));
                continue;
            };
            let again = all.again.iter().find(|(known, _)| *known == part);
            let is_again = |index: &usize| again.is_some_and(|(_, known)| known.contains(index));
            let kept: Vec<usize> = pieces.iter().copied().filter(|it| !is_again(it)).collect();
            if !kept.is_empty() {
                all.off.push((by, pieces_of(&comes.job, part, &kept)));
            }
        }
        all
    }
}

/// What it takes to put right all that is off then and is not now, and what is thrown away with that and with what the
/// step itself trims.
fn then(comes: &Outcome, bench: &Bench, trimmed: Option<Length>) -> Sentence {
    let Brought { again, sizes, off } = Brought::of(comes);
    if again.is_empty() && sizes.is_empty() && off.is_empty() && trimmed.is_none() {
        return nothing();
    }
    let mut words = match (again.is_empty(), sizes.is_empty()) {
        (false, _) => boards_then(comes, bench, &again),
        (true, true) => say!["Takes no board and no money."],
        (true, false) => say!["What it takes in boards is not known."],
    };
    if !again.is_empty() {
        let length = again.iter().try_fold(Length::ZERO, |sum, (part, pieces)| {
            (sum + length_of(&comes.job, &comes.reckoned, *part, pieces)?).ok()
        });
        let is_one = matches!(again.as_slice(), [(_, pieces)] if pieces.len() == 1);
        let who = if is_one { " The old one is scrap" } else { " The old ones are scrap" };
        words.0.extend(scrap(who, length).0);
    }
    if let Some(trimmed) = trimmed {
        words.0.extend(say![" What is trimmed off is thrown away, in all: ", trimmed, "."].0);
    }
    for (at, (by, what)) in off.iter().enumerate() {
        let before = if at == 0 { " Trimmed then, and thrown away: " } else { ", " };
        words.0.extend(say![before, *by, format!(" off {what}")].0);
    }
    if !off.is_empty() {
        words.0.extend(say!["."].0);
    }
    if !sizes.is_empty() {
        let sizes = sizes.join(", ");
        let more = if again.is_empty() { "" } else { "; which board that takes is not known" };
        words.0.extend(say![format!(" Cut again then: {sizes}{more}.")].0);
    }
    words
}

/// The boards that pieces are cut again from.
fn boards_then(comes: &Outcome, bench: &Bench, again: &[(ItemId, Vec<usize>)]) -> Sentence {
    let (mut boards, mut cents) = (0_u32, 0_i64);
    for (part, pieces) in again {
        let found = board_for(&comes.job, &comes.reckoned, bench, *part, count(pieces.len()));
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
