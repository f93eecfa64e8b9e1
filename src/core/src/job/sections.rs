//! What a part can be cut from, as a list to choose from: what the job has, and what a yard sells.

use std::collections::{BTreeMap, BTreeSet};

use super::names::name_key;
use super::{Item, ItemId, Job, Reckoned};
use crate::measure::text::exact_text;
use crate::measure::{Length, Unit};
use crate::order::{map_of, set_of};
use crate::tables::lumber::{RODS, SECTIONS, Seasoning};

/// A section that can be chosen, with the size that it fills in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Section {
    /// As parts ask for it: `2x6`.
    pub name: String,
    /// Thickness, as a field of the job takes it.
    pub thickness: String,
    /// Width.
    pub width: String,
    /// The job has boards of it, or parts that are cut from it.
    pub is_own: bool,
}

/// Every section that can be chosen: those of the job first, then what a yard sells, with the least sizes of
/// the published table, dressed dry.
#[must_use]
pub fn sections(job: &Job) -> Vec<Section> {
    let sold = sold(job);
    let of_table = map_of(sold.iter().map(|it| (reads(&it.name), it)));
    let mut all = Vec::new();
    let mut known = BTreeSet::new();
    let mut put = |it: Section| {
        if known.insert(reads(&it.name)) {
            all.push(it);
        }
    };
    of_boards(job).for_each(&mut put);
    let mut asked = BTreeSet::new();
    for (_, part) in job.parts() {
        // Many parts come from one section.
        if !asked.insert(&part.stock) || part.stock.trim().is_empty() {
            continue;
        }
        put(match of_table.get(&reads(&part.stock)) {
            Some(it) => Section::new(&part.stock, &it.thickness, &it.width, true),
            None => Section::new(&part.stock, &part.thickness, &part.width, true),
        });
    }
    for it in &sold {
        put(it.clone());
    }
    all
}

/// The sections that are known to be of one size, by what they read: that of the boards of the job, else that of the table.
pub(super) fn sized(job: &Job) -> BTreeMap<String, Section> {
    let mut all = BTreeMap::new();
    for it in of_boards(job).chain(sold(job)) {
        all.entry(reads(&it.name)).or_insert(it);
    }
    all
}

/// What the boards of the job are. They say the size of their section; a part may be narrower than what it is cut from.
fn of_boards(job: &Job) -> impl Iterator<Item = Section> {
    let section = |(_, item): (ItemId, &Item)| match item {
        Item::YardBoard(it) => Some(Section::new(&it.section, &it.thickness, &it.width, true)),
        Item::RackBoard(it) => Some(Section::new(&it.section, &it.thickness, &it.width, true)),
        _ => None,
    };
    job.items().filter_map(section).filter(|it| !it.name.is_empty())
}

/// What a yard sells.
fn sold(job: &Job) -> Vec<Section> {
    let text = |length| text_in(job.unit, length);
    let boards = SECTIONS.iter().filter_map(|it| {
        let (thickness, width) = it.dressed(Seasoning::Dry)?;
        Some(Section::new(it.id, &text(thickness), &text(width), false))
    });
    let rods =
        RODS.iter().map(|(name, size)| Section::new(name, &text(*size), &text(*size), false));
    boards.chain(rods).collect()
}

/// The rod that a dowel of this size is cut from: a square section of the job that is no lumber, or one that is sold,
/// whichever is nearest. `None` where the nearest is off by 1/16 in or more: rods are sold in steps of 1/8.
pub(super) fn rod(job: &Job, reckoned: &Reckoned, across: Length) -> Option<Section> {
    let lumber = set_of(SECTIONS.iter().map(|it| reads(it.id)));
    let own = of_boards(job).filter(|it| !lumber.contains(&reads(&it.name)));
    let sold = sold(job).into_iter().filter(|it| is_a_rod(&it.name));
    let off = |it: Section| {
        let thickness = reckoned.length_of(&it.thickness).ok()?;
        let is_square = reckoned.length_of(&it.width).ok()? == thickness;
        let off = (thickness - across).ok()?.abs();
        (is_square && off < Length::sixty_fourths(4)).then_some((off, it))
    };
    // Of two that are as near, the first: the one of the job.
    own.chain(sold).filter_map(off).min_by_key(|(off, _)| *off).map(|(_, it)| it)
}

/// Whether it is called as a rod that is sold.
pub(super) fn is_a_rod(name: &str) -> bool {
    RODS.iter().any(|(rod, _)| is_same(rod, name))
}

impl Section {
    fn new(name: &str, thickness: &str, width: &str, is_own: bool) -> Section {
        let [name, thickness, width] = [name.trim(), thickness, width].map(str::to_owned);
        Section { name, thickness, width, is_own }
    }
}

/// The texts of thickness and width once a section is chosen: what is blank, and what the section chosen before
/// had filled in, follows it. What the person wrote stays.
#[must_use]
pub fn filled(
    all: &[Section],
    chosen: &Section,
    before: &str,
    thickness: &str,
    width: &str,
) -> (String, String) {
    let before = all.iter().find(|it| is_same(&it.name, before));
    let follows = |now: &str, was: Option<&String>, new: &String| {
        let is_free = now.trim().is_empty() || was.is_some_and(|was| was.trim() == now.trim());
        if is_free { new.clone() } else { now.to_owned() }
    };
    (
        follows(thickness, before.map(|it| &it.thickness), &chosen.thickness),
        follows(width, before.map(|it| &it.width), &chosen.width),
    )
}

/// A length as it is written in a field of a job in this unit.
pub(super) fn text_in(unit: Unit, length: Length) -> String {
    let text = exact_text(length);
    match text.strip_suffix(" in") {
        Some(bare) if unit == Unit::Inch => bare.to_owned(),
        _ => text,
    }
}

/// Sections are the same when they read the same: `2X8` and ` 2x8`, and as other names when they look the same.
#[must_use]
pub fn is_same(one: &str, other: &str) -> bool {
    reads(one) == reads(other)
}

/// What a section reads, in one way of writing.
pub(crate) fn reads(text: &str) -> String {
    let letters = name_key(text);
    let letters = letters.chars().flat_map(char::to_lowercase);
    letters.map(|letter| if letter == '×' { 'x' } else { letter }).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::{Part, Step, YardBoard};

    fn section<'a>(all: &'a [Section], name: &str) -> &'a Section {
        all.iter().find(|it| it.name == name).expect(name)
    }

    /// PS 20-20, Table 3, dressed dry: 2 in is 1 1/2, 4 in is 3 1/2, 1 in is 3/4, 6 in is 5 1/2.
    #[test]
    fn nominal_sizes_fill_in_the_dressed_ones_of_the_table() {
        let all = sections(&Job::new("", Unit::Inch));
        let sides = |name| (&*section(&all, name).thickness, &*section(&all, name).width);
        assert_eq!(sides("2x4"), ("1 1/2", "3 1/2"));
        assert_eq!(sides("1x6"), ("3/4", "5 1/2"));
        assert_eq!(sides("1 in dowel"), ("1", "1"));
        let all = sections(&Job::new("", Unit::Millimetre));
        // A bare number would be millimetres there.
        assert_eq!(section(&all, "2x4").thickness, "1 1/2 in");
    }

    #[test]
    fn the_sizes_of_the_job_come_first_and_each_section_once() {
        let mut job = Job::new("", Unit::Inch);
        let wet = YardBoard::new("2X8", ["1 5/8", "7 1/2", "96"], 900);
        let rail = Part { stock: "2x4".to_owned(), ..Part::new("rail", "2", ["1", "1", "20"]) };
        let changes = vec![job.adding(0, Item::YardBoard(wet)), job.adding(1, Item::Part(rail))];
        job.make(&Step::new("", changes)).expect("a fresh job");
        let all = sections(&job);
        let own: Vec<&str> = all.iter().filter(|it| it.is_own).map(|it| &*it.name).collect();
        assert_eq!(own, ["2X8", "2x4"]);
        assert_eq!(all.iter().filter(|it| is_same(&it.name, "2x8")).count(), 1);
        // As measured at the yard, not as the table has it; what a ripped part is has no say.
        assert_eq!(
            (&*section(&all, "2X8").width, &*section(&all, "2x4").width),
            ("7 1/2", "3 1/2")
        );
    }

    /// UAX 15: `É` in one character and in two; UAX 44: what has no width. A space at an end is none.
    #[test]
    fn sections_that_look_the_same_are_the_same() {
        for (one, other) in [
            ("Erable \u{c9}", "erable e\u{301}"),
            ("2\u{200b}x8", "2X8"),
            (" 1  in\u{a0}dowel ", "1 in dowel"),
            ("2 \u{d7} 8", "2 x 8"),
        ] {
            assert!(is_same(one, other), "{one:?} and {other:?}");
        }
        assert!(!is_same("2x8", "2x6") && !is_same("\u{e9}", "e"));
    }

    #[test]
    fn what_the_person_wrote_stays_when_a_section_is_chosen() {
        let all = sections(&Job::new("", Unit::Inch));
        let six = section(&all, "2x6");
        let to = |before, thickness, width| filled(&all, six, before, thickness, width);
        let texts = |one: &str, other: &str| (one.to_owned(), other.to_owned());
        assert_eq!(to("", "", ""), texts("1 1/2", "5 1/2"));
        assert_eq!(to("1x4", "3/4", "3 1/2"), texts("1 1/2", "5 1/2"));
        assert_eq!(to("1x4", "3/4", "2 1/2"), texts("1 1/2", "2 1/2"));
        assert_eq!(to("", "rail", ""), texts("rail", "5 1/2"));
    }
}
