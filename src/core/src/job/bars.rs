//! The pieces of a job as bars: each to scale, longest first, under the end of the board that it is cut from.

use std::cmp::Reverse;
use std::collections::BTreeMap;

use super::sections::{reads, sized};
use super::sketch::Look;
use super::{ItemId, Job, PartSizes, Reckoned};
use crate::drawing::{Area, Item, Outline, Role, SCENE_WIDTH, Shape};
use crate::measure::Length;

/// Shortest that a bar is drawn to scale, in page units. A shorter one is drawn between half of that and all of it.
const SHORTEST: f64 = 8.0;

/// How high a bar is: to scale between these, in page units, and in the middle where the width is not known.
const LOWEST: f64 = 5.0;
const HIGHEST: f64 = 26.0;

/// Room for the end of a board, in page units: how wide, and most for an inch.
const END: f64 = 60.0;
const INCH_OF_END: f64 = 7.0;

/// Room for the stroke around a shape.
const STROKE: f64 = 1.0;

/// The pieces that are cut from one section.
#[derive(Clone, Debug, PartialEq)]
pub struct Group {
    /// As the pieces ask for it: `2x6`. Empty for those that may come from any board.
    pub stock: String,
    /// Thickness and width of its boards, where the job or the published table has them.
    pub size: Option<(Length, Length)>,
    /// The parts, the longest first. Those whose length is not known come last.
    pub parts: Vec<ItemId>,
}

/// All pieces of a job in their order, and the scale that they are drawn to: the longest of them is as wide as the page.
#[derive(Clone, Debug)]
pub struct Bars {
    /// In the order of the list of parts.
    pub groups: Vec<Group>,
    longest: Length,
    /// Page units for an inch of the end of a board, and how high the thickest is.
    ends: (f64, f64),
}

impl Bars {
    /// Of a job as it was worked out.
    #[must_use]
    pub fn of(job: &Job, reckoned: &Reckoned) -> Bars {
        let parts = job.parts();
        let mut groups: Vec<Group> = Vec::new();
        let mut places: BTreeMap<String, usize> = BTreeMap::new();
        // Many parts come from one section, and write it alike.
        let mut written: BTreeMap<&str, usize> = BTreeMap::new();
        for (id, part) in &parts {
            let place = *written.entry(&part.stock).or_insert_with(|| {
                *places.entry(reads(&part.stock)).or_insert_with(|| {
                    let stock = part.stock.trim().to_owned();
                    groups.push(Group { stock, size: None, parts: Vec::new() });
                    groups.len() - 1
                })
            });
            groups.get_mut(place).into_iter().for_each(|group| group.parts.push(*id));
        }
        let length = |id: &ItemId| reckoned.part(*id).and_then(|it| it.length.clone().ok());
        let sections = sized(job);
        for group in &mut groups {
            group.parts.sort_by_cached_key(|id| Reverse(length(id)));
            group.size = sections.get(&reads(&group.stock)).and_then(|it| {
                let side = |text: &str| reckoned.length_of(text).ok().filter(is_some_length);
                Some((side(&it.thickness)?, side(&it.width)?))
            });
        }
        let most =
            |lengths: &mut dyn Iterator<Item = Length>| lengths.max().map_or(0.0, Length::to_f64);
        let sizes = || groups.iter().filter_map(|group| group.size);
        let widest = most(&mut sizes().map(|(_, width)| width));
        let inch = INCH_OF_END.min((END - 2.0 * STROKE) / widest.max(1e-9));
        let thickest = most(&mut sizes().map(|(thickness, _)| thickness)) * inch;
        let longest = groups.iter().filter_map(|group| length(group.parts.first()?)).max();
        Bars {
            longest: longest.unwrap_or(Length::ZERO),
            ends: (inch, thickest + 2.0 * STROKE),
            groups,
        }
    }

    /// A piece of a part, as wide as it is long; `None` while its length is not known.
    #[must_use]
    pub fn bar(&self, sizes: &PartSizes, look: Look, is_ours: bool) -> Option<Outline> {
        let length = sizes.length.clone().ok().filter(is_some_length)?;
        let width = sizes.width.clone().ok().filter(is_some_length);
        let role = match look {
            Look::ToCut if is_ours => Role::ToCut,
            Look::ToCut => Role::Listed,
            Look::Cut => Role::ListedCut,
            Look::Changed => Role::Changes,
            Look::Wrong => Role::KeepOut,
        };
        let inch = (SCENE_WIDTH - 2.0 * STROKE) / self.longest.to_f64().max(1e-9);
        let long = length.to_f64() * inch;
        let long = if long < SHORTEST { (SHORTEST + long) / 2.0 } else { long.min(SCENE_WIDTH) };
        let middle = (LOWEST + HIGHEST) / 2.0;
        let high = width.map_or(middle, |it| (it.to_f64() * inch).clamp(LOWEST, HIGHEST));
        Some(one(role, (long, high), (SCENE_WIDTH, high + 2.0 * STROKE)))
    }

    /// The end of the boards of a group, to the same scale as those of all others.
    #[must_use]
    pub fn end(&self, group: &Group) -> Option<Outline> {
        let (thickness, width) = group.size?;
        let (inch, highest) = self.ends;
        let side = |length: Length| (length.to_f64() * inch).max(STROKE);
        Some(one(Role::EndGrain, (side(width), side(thickness)), (END, highest)))
    }
}

fn is_some_length(length: &Length) -> bool {
    *length > Length::ZERO
}

/// A rectangle at the left of its room, on its floor.
fn one(role: Role, (wide, high): (f64, f64), (room, floor): (f64, f64)) -> Outline {
    let top = (floor - STROKE - high).max(0.0);
    Outline {
        area: Area { left: 0.0, top: 0.0, right: room, bottom: floor },
        items: vec![Item { role, shape: Shape::Rect(STROKE, top, wide, high), field: None }],
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::demo::demo;
    use crate::job::{Item as JobItem, Part, Step, part_sizes};
    use crate::measure::Unit;
    use crate::sheet::Bench;

    /// Parts with name, stock and length; the widths are 3.
    fn job(parts: &[(&str, &str, &str)]) -> Job {
        let mut job = Job::new("", Unit::Inch);
        let items = (0..).zip(parts).map(|(rank, (name, stock, length))| {
            let stock = (*stock).to_owned();
            JobItem::Part(Part { rank, stock, ..Part::new(name, "2", ["1", "3", length]) })
        });
        let changes = (0..).zip(items).map(|(at, item)| job.adding(at, item)).collect();
        job.make(&Step::new("", changes)).expect("a fresh job");
        job
    }

    fn of(job: &Job) -> (Bars, Reckoned) {
        let reckoned = Reckoned::of(job, &Bench::default());
        (Bars::of(job, &reckoned), reckoned)
    }

    fn names(job: &Job, group: &Group) -> Vec<String> {
        group.parts.iter().filter_map(|id| Some(job.item(*id)?.name().to_owned())).collect()
    }

    /// How long and how high each bar is drawn, in the order of the list of parts.
    fn drawn(job: &Job) -> Vec<(f64, f64)> {
        let (bars, reckoned) = of(job);
        let bar = |it: &PartSizes| {
            let outline = bars.bar(it, Look::ToCut, false).expect("a length");
            match outline.items[..] {
                [Item { shape: Shape::Rect(x, y, wide, high), .. }] => {
                    assert!(x >= 0.0 && x + wide <= outline.area.right, "{outline:?}");
                    assert!(y >= 0.0 && y + high <= outline.area.bottom, "{outline:?}");
                    (wide, high)
                }
                _ => panic!("{outline:?}"),
            }
        };
        part_sizes(job, &reckoned).iter().map(bar).collect()
    }

    #[test]
    fn pieces_stand_longest_first_under_the_board_that_they_come_from() {
        let job = job(&[
            ("rail", "2x8", "15 1/2"),
            ("leg", "4x4", "33 1/2"),
            ("block", "", "4"),
            ("long rail", " 2X8", "41"),
            ("unknown", "2×8", "?"),
            ("cleat", "2x8", "15 1/2"),
        ]);
        let (bars, _) = of(&job);
        let all: Vec<_> = bars.groups.iter().map(|it| (&*it.stock, names(&job, it))).collect();
        assert_eq!(all[0].0, "2x8");
        assert_eq!(all[0].1, ["long rail", "rail", "cleat", "unknown"]);
        assert_eq!(all[1], ("4x4", vec!["leg".to_owned()]));
        assert_eq!(all[2], ("", vec!["block".to_owned()]));
        // PS 20-20, Table 3, dressed dry: 2 in is 1 1/2, 8 in is 7 1/4.
        let quarters = |n: i32| Length::sixty_fourths(16 * n);
        assert_eq!(bars.groups[0].size, Some((quarters(6), quarters(29))));
        assert_eq!(bars.groups[2].size, None);
        assert_eq!(bars.end(&bars.groups[2]), None);
    }

    #[test]
    fn the_ends_of_all_boards_are_to_one_scale_with_the_sizes_of_the_job_first() {
        let (bars, _) = of(&demo());
        let end = |stock: &str| {
            let group = bars.groups.iter().find(|it| it.stock == stock).expect(stock);
            match bars.end(group).expect(stock).items[..] {
                [Item { shape: Shape::Rect(_, _, wide, high), .. }] => (wide, high),
                _ => panic!("{stock}"),
            }
        };
        // The yard of the example has 2x8 of 1 1/2 by 7 1/2, 4x4 of 3 1/2 by 3 1/2.
        let ((wide, high), (post, _)) = (end("2x8"), end("4x4"));
        assert!((wide / high - 5.0).abs() < 1e-9, "{wide} by {high}");
        assert!((wide / post - 7.5 / 3.5).abs() < 1e-9, "{wide} and {post}");
    }

    /// Half as long is drawn half as long, and half as wide half as wide.
    #[test]
    fn bars_are_to_scale() {
        let all = drawn(&job(&[("a", "", "48"), ("b", "", "24"), ("c", "", "12")]));
        assert!((all[0].0 - 2.0 * all[1].0).abs() < 1e-9, "{all:?}");
        assert!((all[0].0 - 4.0 * all[2].0).abs() < 1e-9, "{all:?}");
        // 3 in of width on the scale of the length: a sixteenth of 48.
        assert!((all[0].1 - all[0].0 / 16.0).abs() < 1e-9, "{all:?}");
    }

    #[test]
    fn what_is_too_short_to_be_to_scale_is_seen_and_stands_in_its_order() {
        let lengths = ["144", "4", "3 1/2", "3", "1", "1/64"];
        let parts = lengths.map(|it| ("a", "", it));
        let all: Vec<f64> = drawn(&job(&parts)).into_iter().map(|(wide, _)| wide).collect();
        assert!(all.is_sorted_by(|longer, shorter| longer > shorter), "{all:?}");
        assert!(all.iter().all(|wide| *wide >= SHORTEST / 2.0), "{all:?}");
    }
}
