//! The facts and their ways out in words.

use super::named::{name, pieces_of};
use super::{Does, Fact, NotKept};
use crate::job::make_parts::Behind;
use crate::job::moved::Member;
use crate::job::{Dimension, Item, ItemId, Job};
use crate::measure::Length;
use crate::say;
use crate::sheet::Sentence;

/// `leg 2`; of pieces that are not cut yet `leg, to cut,`.
fn member(job: &Job, member: Member) -> String {
    match member {
        Member::Measure(id) => name(job, id),
        Member::Cut(id, index) => pieces_of(job, id, &[index]),
        Member::ToCut(id) => format!("{}, to cut,", name(job, id)),
    }
}

/// `its pieces in the job are not those that it makes now. New: left leg, right leg. Not made any more: leg.`
fn not_those(job: &Job, behind: &Behind) -> String {
    let mut all = "its pieces in the job are not those that it makes now.".to_owned();
    let named = |ids: &[ItemId]| ids.iter().map(|id| name(job, *id)).collect::<Vec<_>>();
    for (words, which) in [
        ("New", behind.missing.clone()),
        ("Not made any more", named(&behind.gone)),
        ("Sizes from elsewhere in it", named(&behind.elsewhere)),
    ] {
        if !which.is_empty() {
            all.push_str(&format!(" {words}: {}.", which.join(", ")));
        }
    }
    all
}

fn lean(of: Dimension, is: Length, wanted: Length) -> &'static str {
    match (of, is < wanted) {
        (Dimension::Length, true) => "too short",
        (Dimension::Length, false) => "too long",
        (Dimension::Width, true) => "too narrow",
        (Dimension::Width, false) => "too wide",
        (Dimension::Thickness, true) => "too thin",
        (Dimension::Thickness, false) => "too thick",
    }
}

fn apart(is: Length, wanted: Length) -> Length {
    (is - wanted).map_or(Length::ZERO, Length::abs)
}

/// Why something is not kept by the device, and what that means, after "not kept: ".
#[must_use]
pub fn refused(why: &str) -> String {
    format!("{why}. It stays usable on this page, and keeping it is tried again.")
}

impl NotKept {
    /// Why, and what that means, after "not kept: ".
    fn sentence(&self) -> Sentence {
        const SAVE: &str = " Save it as a file before you close the page.";
        match self {
            NotKept::Refused(why) => say![refused(why), SAVE],
            NotKept::Unreadable(why) => say![why.clone(), SAVE],
            NotKept::TakenOff => say![
                "taken off this device. It stays usable on this page, and what you change goes in when you put it \
                 back."
            ],
            NotKept::Deleted => {
                say!["deleted in another window. It stays usable on this page.", SAVE]
            }
        }
    }
}

impl Fact {
    /// The pieces of a part that it is about, counted from 0.
    pub(super) fn pieces(&self) -> Option<(ItemId, &[usize])> {
        match self {
            Fact::Off { part, pieces, .. }
            | Fact::NotRecorded { part, pieces }
            | Fact::NotWanted { part, pieces } => Some((*part, pieces)),
            Fact::Unread { item, piece: Some(piece), .. } => {
                Some((*item, core::slice::from_ref(piece)))
            }
            _ => None,
        }
    }

    /// What it is about, by name: `long rail 1 and 2`.
    #[must_use]
    pub fn about(&self, job: &Job) -> String {
        if let Some((part, pieces)) = self.pieces() {
            return pieces_of(job, part, pieces);
        }
        match self {
            Fact::Plan { .. } => "The plan in use".to_owned(),
            Fact::NotKept(_) => "This job is not kept".to_owned(),
            fact => fact.item().map_or_else(String::new, |id| match job.item(id) {
                Some(Item::RackBoard(board)) if board.name.trim().is_empty() => {
                    board.section.clone()
                }
                _ => name(job, id),
            }),
        }
    }

    /// What is to be said of it, after its name.
    #[must_use]
    pub fn sentence(&self, job: &Job) -> Sentence {
        match self {
            Fact::Off { of, is, wanted, .. } => say![
                apart(*is, *wanted),
                " ",
                lean(*of, *is, *wanted),
                ": cut at ",
                *is,
                ", now wanted at ",
                *wanted,
                "."
            ],
            Fact::SizeOff { is, wanted, .. } => say![
                apart(*is, *wanted),
                if is < wanted { " too small: cut at " } else { " too large: cut at " },
                *is,
                ", now wanted at ",
                *wanted,
                "."
            ],
            Fact::NotRecorded { .. } | Fact::SizeNotRecorded { .. } => {
                say!["cut, and the size was not recorded."]
            }
            Fact::NotWanted { .. } => say!["cut, and not wanted any more."],
            Fact::Apart(it) => say![
                "must match: ",
                member(job, it.least.0),
                " is ",
                it.least.1,
                ", ",
                member(job, it.most.0),
                " is ",
                it.most.1,
                ". That is ",
                it.apart,
                " apart; they may drift ",
                it.drift,
                "."
            ],
            Fact::Plan { .. } => say!["no longer fits the job."],
            Fact::Unread { what, why, .. } => say![*what, ": ", why.clone()],
            Fact::Refused { why, .. } => {
                let mut words = say!["has no answer. "];
                words.0.extend(why.0.clone());
                words
            }
            Fact::Behind { behind, .. } => say![not_those(job, behind)],
            Fact::NotKept(why) => why.sentence(),
            Fact::ToMeasure { .. } => {
                say!["measure it on the real thing before pieces that need it are cut."]
            }
        }
    }

    /// `too short`, of a piece that is off.
    #[must_use]
    pub fn lean(&self) -> Option<&'static str> {
        match self {
            Fact::Off { of, is, wanted, .. } => Some(lean(*of, *is, *wanted)),
            _ => None,
        }
    }

    /// How many things it is about.
    #[must_use]
    pub fn many(&self) -> usize {
        match self {
            Fact::Off { pieces, .. }
            | Fact::NotRecorded { pieces, .. }
            | Fact::NotWanted { pieces, .. } => pieces.len(),
            _ => 1,
        }
    }

    /// What a way out of it does.
    #[must_use]
    pub fn way(&self, does: Does, job: &Job) -> Sentence {
        let is_one = self.many() < 2;
        match does {
            Does::CutAgain if is_one => say!["Cut it again"],
            Does::CutAgain => say!["Cut them again"],
            Does::CutAgainFromRack if is_one => say!["Cut it again; the old one goes on the rack"],
            Does::CutAgainFromRack => say!["Cut them again; the old ones go on the rack"],
            Does::Trim(by) => match self {
                Fact::Off { of: Dimension::Length, wanted, .. } => {
                    say!["Trim ", by, " off: stop at ", *wanted]
                }
                Fact::Off { wanted, .. } => say!["Trim ", by, " off: fence at ", *wanted],
                _ => say!["Trim ", by, " off"],
            },
            Does::GiveWay(size, to) => say!["Let ", name(job, size), " be ", to],
            Does::Shim(thick) if is_one => say!["Fill it with a shim of ", thick],
            Does::Shim(thick) => say!["Fill each with a shim of ", thick],
            Does::Leave if is_one && !matches!(self, Fact::Behind { .. }) => {
                say!["Leave it as it is"]
            }
            Does::Leave => say!["Leave them as they are"],
            Does::TakePlace if is_one => say!["It takes the place of one that is to be cut"],
            Does::TakePlace => say!["They take the places of some that are to be cut"],
            Does::ToRack if is_one => say!["It goes on the rack"],
            Does::ToRack => say!["They go on the rack"],
            Does::WantAgain if is_one => say!["It is wanted after all"],
            Does::WantAgain => say!["They are wanted after all"],
            Does::Scrap if is_one => say!["It is scrap"],
            Does::Scrap => say!["They are scrap"],
            Does::TakePlan if is_one => say!["It was cut at the size wanted now"],
            Does::TakePlan => say!["They were cut at the size wanted now"],
            Does::ToSmallest => match self {
                Fact::Apart(it) => say!["Bring all to ", it.least.1],
                _ => say!["Bring all to the smallest"],
            },
            Does::OwnSize => say!["Only this one is so: say where it stands"],
            Does::Measure => say!["Measure it"],
            Does::MakeAgain => say!["See the pieces it makes now"],
            Does::PlanAgain => say!["Plan what is left"],
            Does::GoThere => say!["Go there"],
            Does::SaveFile => say!["Save it as a file"],
            Does::PutBack => say!["Put it back"],
        }
    }
}
