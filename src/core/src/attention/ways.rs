//! The ways out of a fact, each as a step of the job.

use std::collections::BTreeSet;

use super::named::pieces_of;
use super::{Fact, NotKept, attention};
use crate::job::make_parts::leaving;
use crate::job::moved::{Mismatch, Moved, MovedPart, moved, moved_parts};
use crate::job::own_size::size_of;
use crate::job::rescue::{Cut, Trouble, giving_way, rescues};
use crate::job::{
    Change, Dimension, Dimensions, Item, ItemId, Job, Measure, Part, PartSizes, Piece, RackBoard,
    Reckoned, Step, Written,
};
use crate::measure::Length;
use crate::measure::text::{Quantity, exact_text};
use crate::order::set_of;
use crate::sheet::Bench;

/// Most sizes that are offered to take up one error: more is no choice.
pub const MOST_RESCUES: usize = 4;

/// What a way out does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Does {
    /// It is wanted once more.
    CutAgain,
    /// It is wanted once more, and the old one goes on the rack.
    CutAgainFromRack,
    /// So much comes off it.
    Trim(Length),
    /// This size takes up the error.
    GiveWay(ItemId, Length),
    /// It stays off, and a shim so thick fills what is missing.
    Shim(Length),
    /// It stays off.
    Leave,
    /// It takes the place of a piece that is still to cut.
    TakePlace,
    /// It goes on the rack.
    ToRack,
    /// As many are wanted as are cut.
    WantAgain,
    /// It is no use any more.
    Scrap,
    /// It is as the plan says.
    TakePlan,
    /// All that must match come to the smallest.
    ToSmallest,
    /// Only this piece is so: it has a size of its own where it stands.
    OwnSize,
    /// The tape says it.
    Measure,
    /// The parts of a reckoning are made as it makes them now.
    MakeAgain,
    /// What is left is planned again.
    PlanAgain,
    /// It is put right where it stands.
    GoThere,
    /// The job is saved as a file.
    SaveFile,
    /// The job is put back on the device.
    PutBack,
}

/// A way out.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Way {
    /// What it does.
    pub does: Does,
    /// The step, where a tap is enough; `None` where it is done at its own place.
    pub step: Option<Step>,
}

/// What comes of a step.
#[derive(Clone, Debug)]
pub struct Outcome {
    /// The job as it is then.
    pub job: Job,
    /// The same, worked out.
    pub reckoned: Reckoned,
    /// The sizes that move.
    pub moves: Vec<Moved>,
    /// The parts that move.
    pub parts: Vec<MovedPart>,
    /// What wants looking at then, and does not now.
    pub brings: Vec<Fact>,
}

impl Outcome {
    /// What wants looking at then, by name, each piece once: `leg 1, 2 and 4, long rail`.
    #[must_use]
    pub fn then_look_at(&self) -> String {
        // A piece that is off in two ways is one to look at.
        let mut parts: Vec<(ItemId, BTreeSet<usize>)> = Vec::new();
        let mut all: Vec<Result<usize, String>> = Vec::new();
        for fact in &self.brings {
            let Some((part, pieces)) = fact.pieces() else {
                let about = Err(fact.about(&self.job));
                if !all.contains(&about) {
                    all.push(about);
                }
                continue;
            };
            match parts.iter_mut().find(|(known, _)| *known == part) {
                Some((_, known)) => known.extend(pieces),
                None => {
                    all.push(Ok(parts.len()));
                    parts.push((part, set_of(pieces.iter().copied())));
                }
            }
        }
        let name = |it: &Result<usize, String>| match it {
            Ok(at) => parts.get(*at).map_or_else(String::new, |(part, pieces)| {
                pieces_of(&self.job, *part, &pieces.iter().copied().collect::<Vec<_>>())
            }),
            Err(about) => about.clone(),
        };
        all.iter().map(name).collect::<Vec<_>>().join(", ")
    }
}

/// The ways out of a fact. Measures in `fixed` stay as they are.
#[must_use]
pub fn ways(
    job: &Job,
    reckoned: &Reckoned,
    bench: &Bench,
    fact: &Fact,
    fixed: &[ItemId],
) -> Vec<Way> {
    let way = |does: Does, step: Option<Step>| step.map(|step| Way { does, step: Some(step) });
    let go = |does: Does| vec![Way { does, step: None }];
    let mut all = Vec::new();
    match fact {
        Fact::Off { part: id, pieces, of, is, wanted } => {
            let Some(Item::Part(part)) = job.item(*id) else { return all };
            let by = (*is - *wanted).ok();
            let label = |words: &str| format!("{words} {}", part.name);
            let each = |words: &str, change: &dyn Fn(Piece) -> Piece| {
                Some(Step::new(label(words), vec![with_pieces(job, *id, part, pieces, change)]))
            };
            if let Some(by) = by.filter(|by| by.is_positive()) {
                all.extend(way(Does::Trim(by), each("trim", &|it| it.at(*of, *wanted))));
            }
            let again = |is_kept| cutting_again(job, reckoned, *id, pieces, is_kept);
            all.extend(way(Does::CutAgain, again(false)));
            all.extend(way(Does::CutAgainFromRack, again(true)));
            if pieces.len() == 1 && size_of(job, reckoned, *id, *of).is_some() {
                all.extend(go(Does::OwnSize));
            }
            all.extend(give_way(job, bench, fact, fixed));
            if let Some(thick) = fact.shim() {
                all.extend(way(Does::Shim(thick), each("shim", &|it| it.shimmed(*of, by))));
            }
            all.extend(way(Does::Leave, each("leave", &|it| it.leaving(*of, by))));
        }
        Fact::NotRecorded { part: id, pieces } => {
            let (Some(Item::Part(part)), Some(sizes)) = (job.item(*id), reckoned.part(*id)) else {
                return all;
            };
            let as_planned = |piece: Piece| {
                let missing = Dimension::ALL
                    .into_iter()
                    .filter(|of| piece.tape(*of).is_none() && piece.recorded(*of).is_none());
                let missing: Vec<_> = missing.collect();
                missing.into_iter().fold(piece, |piece, of| match sizes.wanted(of) {
                    Some(size) => piece.at(of, size),
                    None => piece,
                })
            };
            all.extend(go(Does::Measure));
            if Dimension::ALL.into_iter().all(|of| sizes.wanted(of).is_some()) {
                let change = with_pieces(job, *id, part, pieces, &as_planned);
                let label = format!("{} as planned", part.name);
                all.extend(way(Does::TakePlan, Some(Step::new(label, vec![change]))));
            }
            all.extend(way(Does::CutAgain, cutting_again(job, reckoned, *id, pieces, false)));
        }
        Fact::NotWanted { part, pieces } => all.extend(not_wanted(job, reckoned, *part, pieces)),
        Fact::SizeOff { size, is, wanted } => {
            let Some(Item::Measure(measure)) = job.item(*size) else { return all };
            let with = |words: &str, new: Measure| {
                let change = job.replacing(*size, Item::Measure(new));
                Some(Step::new(format!("{words} {}", measure.name), vec![change]))
            };
            let by = (*is - *wanted).ok();
            if let Some(by) = by.filter(|by| by.is_positive()) {
                let as_cut = Some(exact_text(*wanted));
                let trimmed = Measure { as_cut, left: None, ..measure.clone() };
                all.extend(way(Does::Trim(by), with("trim", trimmed)));
            }
            let again = Measure { as_cut: None, is_cut: false, left: None, ..measure.clone() };
            all.extend(way(Does::CutAgain, with("cut again:", again)));
            all.extend(give_way(job, bench, fact, fixed));
            let left = Measure { left: by, ..measure.clone() };
            all.extend(way(Does::Leave, with("leave", left)));
        }
        Fact::SizeNotRecorded { size } => {
            all.extend(go(Does::Measure));
            let Some(Item::Measure(measure)) = job.item(*size) else { return all };
            let planned = reckoned.measure(*size).and_then(|state| state.planned.clone().ok());
            if let Some(Quantity::Length(planned)) = planned {
                let new = Measure { as_cut: Some(exact_text(planned)), ..measure.clone() };
                let change = job.replacing(*size, Item::Measure(new));
                let label = format!("{} as planned", measure.name);
                all.extend(way(Does::TakePlan, Some(Step::new(label, vec![change]))));
            }
        }
        Fact::Apart(mismatch) => {
            all.extend(way(Does::ToSmallest, to_smallest(job, reckoned, mismatch)));
            if let Some(Item::Match(group)) = job.item(mismatch.group) {
                let mut left = group.clone();
                left.left = Some(mismatch.apart);
                let change = job.replacing(mismatch.group, Item::Match(left));
                let step = Step::new(format!("leave {}", group.name), vec![change]);
                all.extend(way(Does::Leave, Some(step)));
            }
        }
        Fact::Plan { .. } => all.extend(go(Does::PlanAgain)),
        Fact::Unread { .. } | Fact::Refused { .. } => all.extend(go(Does::GoThere)),
        Fact::Behind { kept, behind } => {
            all.extend(go(Does::MakeAgain));
            all.extend(way(Does::Leave, leaving(job, *kept, behind, true)));
        }
        Fact::ToMeasure { .. } => all.extend(go(Does::Measure)),
        Fact::NotKept(why) => {
            if *why == NotKept::TakenOff {
                all.extend(go(Does::PutBack));
            }
            all.extend(go(Does::SaveFile));
        }
    }
    all
}

/// What comes of a step, worked out on a copy. `None` where it cannot be made.
#[must_use]
pub fn outcome(job: &Job, reckoned: &Reckoned, bench: &Bench, step: &Step) -> Option<Outcome> {
    let mut trial = job.clone();
    trial.make(step).ok()?;
    let after = reckoned.after(&trial, bench);
    let before = attention(job, reckoned, bench).facts;
    let brings = attention(&trial, &after, bench).facts.into_iter();
    let touched = |fact: &Fact| matches!(fact, Fact::Plan { .. });
    // That the plan in use fits no more is told once.
    let is_known =
        |fact: &Fact| before.contains(fact) || (touched(fact) && before.iter().any(touched));
    Some(Outcome {
        moves: moved(&trial, reckoned, &after),
        parts: moved_parts(&trial, reckoned, &after),
        brings: brings.filter(|fact| !is_known(fact)).collect(),
        job: trial,
        reckoned: after,
    })
}

/// The step by which pieces are wanted once more: spoiled, or not the size wanted. Where the old
/// ones are kept, they go on the rack as what they are. `None` where there is nothing to keep.
#[must_use]
pub fn cutting_again(
    job: &Job,
    reckoned: &Reckoned,
    id: ItemId,
    pieces: &[usize],
    is_kept: bool,
) -> Option<Step> {
    let Item::Part(part) = job.item(id)? else { return None };
    let mut changes = vec![again(job, reckoned, id, part, pieces)];
    if is_kept {
        changes.extend(on_the_rack(job, reckoned, part, pieces, None)?);
    }
    Some(Step::new(format!("cut again: {}", part.name), changes))
}

/// The change by which pieces are wanted once more; they keep what they were.
pub(super) fn again(
    job: &Job,
    reckoned: &Reckoned,
    id: ItemId,
    part: &Part,
    pieces: &[usize],
) -> Change {
    let sizes = |piece: &Piece| Dimensions::of(|of| piece.size(of, reckoned)?.ok());
    with_pieces(job, id, part, pieces, &|piece| Piece::again(sizes(&piece)))
}

/// The changes by which pieces lie on the rack as what they are, or as long as what is `left` of each. `None` where that is
/// not known, or no plan would find them there.
pub(super) fn on_the_rack(
    job: &Job,
    reckoned: &Reckoned,
    part: &Part,
    pieces: &[usize],
    left: Option<Length>,
) -> Option<Vec<Change>> {
    // A board is found by its section.
    if part.stock.trim().is_empty() {
        return None;
    }
    let mut all: Vec<RackBoard> = Vec::new();
    for index in pieces {
        let piece = part.piece(*index);
        let size = |of: Dimension| Some(exact_text(piece.size(of, reckoned)?.ok()?));
        let board = RackBoard {
            name: format!("was for {}", part.name),
            section: part.stock.trim().to_owned(),
            thickness: size(Dimension::Thickness)?,
            width: size(Dimension::Width)?,
            length: left.map(exact_text).or_else(|| size(Dimension::Length))?,
            quantity: 1,
            sawn_ends: true,
            ..RackBoard::default()
        };
        match all.iter_mut().find(|it| RackBoard { quantity: 1, ..(**it).clone() } == board) {
            Some(alike) => alike.quantity = alike.quantity.saturating_add(1),
            None => all.push(board),
        }
    }
    Some((0..).zip(all).map(|(at, it)| job.adding(at, Item::RackBoard(it))).collect())
}

/// The ways out for pieces that are cut and of which fewer are wanted now.
fn not_wanted(job: &Job, reckoned: &Reckoned, id: ItemId, pieces: &[usize]) -> Vec<Way> {
    let (Some(Item::Part(part)), Some(sizes)) = (job.item(id), reckoned.part(id)) else {
        return Vec::new();
    };
    let Ok(wanted) = sizes.quantity else { return Vec::new() };
    let without = pieces
        .iter()
        .fold(part.clone(), |part, index| part.with_piece(*index, Piece::default()))
        .without_last_untouched();
    let step = |words: &str, new: Part, more: Vec<Change>| {
        let change = job.replacing(id, Item::Part(new));
        let changes = core::iter::once(change).chain(more).collect();
        Some(Step::new(format!("{words} {}", part.name), changes))
    };
    let mut all = Vec::new();
    let mut add = |does: Does, step: Option<Step>| {
        all.extend(step.map(|step| Way { does, step: Some(step) }));
    };
    let to_cut = usize::try_from(wanted.saturating_sub(sizes.done)).unwrap_or(usize::MAX);
    let with_all =
        |new: Part| pieces.iter().fold(new, |new, index| new.with_next_cut(part.piece(*index)));
    if pieces.len() <= to_cut {
        add(
            Does::TakePlace,
            step("in the place of one to cut:", with_all(without.clone()), Vec::new()),
        );
    }
    let more = on_the_rack(job, reckoned, part, pieces, None);
    add(Does::ToRack, more.and_then(|more| step("to the rack:", without.clone(), more)));
    add(
        Does::WantAgain,
        part.with_more(wanted, pieces).and_then(|new| step("wanted:", new, Vec::new())),
    );
    add(Does::Scrap, step("scrap:", without, Vec::new()));
    all
}

/// The step that looks again at what was left as it is.
#[must_use]
pub fn looking_again(job: &Job, fact: &Fact) -> Option<Step> {
    let id = fact.item()?;
    if let Fact::Behind { kept, behind } = fact {
        return leaving(job, *kept, behind, false);
    }
    let change = match (fact, job.item(id)?) {
        (Fact::Off { pieces, of, .. }, Item::Part(part)) => {
            with_pieces(job, id, part, pieces, &|piece| piece.leaving(*of, None))
        }
        (Fact::SizeOff { .. }, Item::Measure(measure)) => {
            job.replacing(id, Item::Measure(Measure { left: None, ..measure.clone() }))
        }
        (Fact::Apart(_), Item::Match(group)) => {
            let mut group = group.clone();
            group.left = None;
            job.replacing(id, Item::Match(group))
        }
        _ => return None,
    };
    let name = job.item(id).map_or("", Item::name);
    Some(Step::new(format!("look again at {name}"), vec![change]))
}

/// The change of a part by which something is done to some of its pieces.
fn with_pieces(
    job: &Job,
    id: ItemId,
    part: &Part,
    pieces: &[usize],
    change: &dyn Fn(Piece) -> Piece,
) -> Change {
    let changed = pieces.iter().fold(part.clone(), |part, index| {
        let piece = change(part.piece(*index));
        part.with_piece(*index, piece)
    });
    job.replacing(id, Item::Part(changed))
}

/// Sizes that could take up the error, those that cut fewest pieces again.
fn give_way(job: &Job, bench: &Bench, fact: &Fact, fixed: &[ItemId]) -> Vec<Way> {
    let Some(trouble) = fact.trouble() else { return Vec::new() };
    let found = rescues(job, bench, &trouble, fixed).into_iter();
    let found = found.filter_map(|rescue| match job.item(rescue.floats)? {
        Item::Measure(measure) => Some(Way {
            does: Does::GiveWay(rescue.floats, rescue.to),
            step: Some(giving_way(job, rescue.floats, measure, rescue.to)),
        }),
        _ => None,
    });
    found.take(MOST_RESCUES).collect()
}

/// The step by which all of a group come to the smallest: what is cut is trimmed, what is not is
/// planned so. Of a part, whose pieces are planned as one, all of them are.
fn to_smallest(job: &Job, reckoned: &Reckoned, mismatch: &Mismatch) -> Option<Step> {
    let Item::Match(group) = job.item(mismatch.group)? else { return None };
    let least = mismatch.least.1;
    let is_over = |length: Option<Length>| {
        length.and_then(|it| (it - least).ok()).is_some_and(|apart| apart > mismatch.drift)
    };
    let changes = group.measures.iter().filter_map(|id| {
        let text = exact_text(least);
        let measure = match job.item(*id)? {
            Item::Measure(measure) => measure,
            Item::Part(part) => {
                let new = shortened(part, reckoned, reckoned.part(*id)?, (least, &is_over));
                return (new != *part).then(|| job.replacing(*id, Item::Part(new)));
            }
            _ => return None,
        };
        if !is_over(reckoned.measure(*id)?.length()) {
            return None;
        }
        let new = if crate::job::moved::is_cut(measure) {
            Measure { as_cut: Some(text), ..measure.clone() }
        } else {
            Measure { written: Written::Formula(text), ..measure.clone() }
        };
        Some(job.replacing(*id, Item::Measure(new)))
    });
    Some(Step::new(format!("{} to the smallest", group.name), changes.collect()))
}

/// A part of which nothing is longer than it may be: pieces that are cut are trimmed, and all are planned so.
fn shortened(
    part: &Part,
    reckoned: &Reckoned,
    sizes: &PartSizes,
    (least, is_over): (Length, &dyn Fn(Option<Length>) -> bool),
) -> Part {
    let mut new = part.clone();
    for (index, piece) in part.pieces.iter().enumerate().filter(|(_, piece)| piece.is_cut()) {
        if is_over(piece.size(Dimension::Length, reckoned).and_then(Result::ok)) {
            new = new.with_piece(index, piece.clone().at(Dimension::Length, least));
        }
    }
    if is_over(sizes.wanted(Dimension::Length)) {
        new.length = exact_text(least);
    }
    new
}

impl Fact {
    /// What other sizes may take up, where it is that something is not the size wanted.
    #[must_use]
    pub fn trouble(&self) -> Option<Trouble> {
        let (cut, as_cut, wanted) = match self {
            Fact::Off { part, of, is, wanted, .. } => (Cut::Piece(*part, *of), *is, *wanted),
            Fact::SizeOff { size, is, wanted } => (Cut::Measure(*size), *is, *wanted),
            _ => return None,
        };
        Some(Trouble { cut, as_cut, wanted })
    }
}
