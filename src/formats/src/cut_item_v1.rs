//! Version 1 of a cut plan kept in a job, and of its ticks, as stored.

use reckoner_core::cutting::scale::CommonUnit;
use reckoner_core::cutting::{CheckOptions, check_plan};
use reckoner_core::job::cut_labels::{Label, Labels, Money, SectionLabel};
use reckoner_core::job::{CutPlan, ItemId};
use reckoner_core::measure::text::exact_text;
use reckoner_core::measure::{Length, length};

use crate::cut_v1::{
    BACKING, CUT, MOST_CUT_LINES, read_backing, read_cut, write_backing, write_cut_into,
};
use crate::json::{Fault, Faults, Field, Fields, I64, Kind, Record, U32, U64, Value, may, must};
use crate::texts::{ENTRIES, NAME, TEXT, entry, write_entry};

/// A cut plan with all that it was made from.
pub(crate) const CUT_PLAN: &[Field] = &[
    must("title", NAME, ""),
    may("list", Kind::Flag, "It comes from a quick list, not from the parts of the job."),
    may("entries", ENTRIES, "The form that it was made with."),
    must("per_inch", U64, "How many units make an inch."),
    must("sections", Kind::List(&Kind::Record(SECTION), MOST_CUT_LINES), ""),
    must("parts", LABELS, ""),
    may("boards", LABELS, ""),
    may("scraps", LABELS, ""),
    may("wood_for_a_cent", TEXT, "Without prices: how much board stands for a hundredth of money."),
    must("pieces", Kind::List(&U32, MOST_CUT_LINES), "Wanted of each part, without spares."),
    must("cut", Kind::Record(CUT), "What was asked, and the plan."),
    must("bound_cents", I64, ""),
    may("paid_cents", I64, "What boards cost that were bought by the plans before this one."),
    may(
        "backing",
        Kind::Record(BACKING),
        "What the search proved of the plan; without it nobody kept that.",
    ),
];

const LABELS: Kind = Kind::List(&Kind::Record(LABEL), MOST_CUT_LINES);

/// What something is called, and which item of the job it is.
const LABEL: &[Field] = &[must("name", NAME, ""), may("item", U64, "")];

const SECTION: &[Field] =
    &[must("name", NAME, ""), may("size", Kind::Row(&[TEXT, TEXT]), "Thickness and width.")];

pub(crate) fn write_cut_plan(out: &mut Fields, it: &CutPlan) {
    out.text(&it.title);
    out.flag(it.is_list);
    out.list(&it.entries, write_entry);
    // A unit that does not fit was never planned with: its lengths would be out of range.
    out.int(u64::try_from(it.labels.unit.per_inch()).unwrap_or(0));
    out.list(&it.labels.sections, |w, section| {
        w.record(SECTION, |out| {
            out.text(&section.name);
            out.value(section.size, |w, (thick, wide)| {
                w.list(&[thick, wide], |w, length| w.text(&exact_text(*length)));
            });
        });
    });
    for labels in [&it.labels.parts, &it.labels.boards, &it.labels.scraps] {
        out.list(labels, |w, label| {
            w.record(LABEL, |out| {
                out.text(&label.name);
                out.maybe_int(label.item.map(|id| id.0));
            });
        });
    }
    out.maybe_text(
        match it.labels.money {
            Money::Cents => None,
            Money::Wood { each } => Some(exact_text(each)),
        }
        .as_deref(),
    );
    out.list(&it.pieces, |w, count| w.int(*count));
    out.value(Some(()), |w, ()| write_cut_into(w, &it.asked, &it.plan));
    out.int(it.bound_cents);
    out.maybe_int((it.paid_cents != 0).then_some(it.paid_cents));
    out.value(it.backing, |w, it| write_backing(w, &it));
}

/// Reads a plan, and checks it against its own job, like any plan of the search.
pub(crate) fn read_cut_plan(it: &mut Record, faults: &Faults) -> Option<CutPlan> {
    let said = |words: &str| faults.add(Fault::Said(words.to_owned()));
    let length_of = |text: &str| {
        let found = length(text).map_err(|problem| said(&problem.to_string())).ok()?;
        if !found.is_positive() {
            said("a size of this plan is zero or less");
        }
        Some(found)
    };
    let (title, is_list, entries) = (it.text(), it.flag(), it.list(entry));
    let per_inch: u64 = it.int();
    let sections = it.list(|value| {
        let mut it = value.record();
        let (name, size) = (it.text(), it.next());
        let size = size.map(|size| {
            let mut row = size.row();
            (length_of(&row.text()), length_of(&row.text()))
        });
        let size: Option<(Length, Length)> = size.and_then(|(thick, wide)| Some((thick?, wide?)));
        SectionLabel { name, size }
    });
    let (parts, boards, scraps) = (labels(it), labels(it), labels(it));
    let each = it.maybe_text().map(|text| length_of(&text));
    let pieces = it.list(|value| value.int());
    let cut = it.next().map(|value| read_cut(value.raw));
    let bound_cents: i64 = it.int();
    let paid_cents: i64 = it.maybe_int().unwrap_or(0);
    let backing = it.next();
    let (asked, plan) = cut?.map_err(|problem| said(&problem.to_string())).ok()?;
    let backing = backing.map(|it| read_backing(it, (plan.cost_cents, bound_cents)));
    if asked.validate().is_err() {
        said("the job of this plan cannot be planned");
        return None;
    }
    if check_plan(&asked, &plan, CheckOptions { may_leave_out: true }).is_err() {
        said("this plan does not keep to its own job");
    }
    let Ok(unit) = CommonUnit::of(&[(1, i128::from(per_inch))]) else {
        said("the unit of this plan is out of range");
        return None;
    };
    let names = [(&parts, asked.parts.len()), (&boards, asked.boards.len())];
    let names = names.into_iter().chain([(&scraps, asked.scraps.len())]);
    if names.into_iter().any(|(labels, wanted)| labels.len() != wanted) {
        said("a name of this plan is missing");
    }
    if sections.len() != asked.sections.len() || pieces.len() != asked.parts.len() {
        said("a section or part of this plan is missing");
    }
    if !(0..=plan.cost_cents).contains(&bound_cents) {
        said("the bound of this plan is out of range");
    }
    if paid_cents < 0 {
        said("what was paid before this plan is less than nothing");
    }
    let money = match each {
        None => Money::Cents,
        Some(each) => Money::Wood { each: each? },
    };
    let labels = Labels { unit, sections, parts, boards, scraps, money };
    Some(CutPlan {
        title,
        is_list,
        entries,
        asked,
        labels,
        pieces,
        plan,
        bound_cents,
        backing,
        paid_cents,
    })
}

fn labels(it: &mut Record) -> Vec<Label> {
    it.list(|value: Value| {
        let mut it = value.record();
        Label { name: it.text(), item: it.maybe_int().map(ItemId) }
    })
}
