//! The demo job: a potting bench for a school garden. Every number in it is invented.

mod reckonings;

use std::sync::LazyLock;

use reckonings::{KEPT, LINKED};

use super::{
    Grain, Hand, Item, ItemId, Job, Kept, Linked, Match, Measure, MeasureKind, Part, RackBoard,
    Reckoned, Round, Saw, Screw, Sketch, Step, Written, YardBoard,
};
use crate::measure::{Tape, Unit};
use crate::sheet::{Bench, Side};

/// The title of the demo job; it says that the numbers are invented.
pub const TITLE: &str = "Potting bench (demo, invented)";

/// Name, formula, note.
const MEASURES: &[(&str, &str, &str)] = &[
    ("overall length", "47 1/2", "outside of the legs, along the wall"),
    ("overall depth", "22", "outside of the legs, front to back"),
    ("bench height", "34 1/2", "floor to the top of the planks"),
    ("leg", "3 1/4", "resawn from 4x4 posts and cleaned on four faces"),
    ("rail", "1 1/2", "thickness of all rails"),
    ("rail width", "3 1/4", "ripped from a wet 2x8"),
    ("long rail", "overall length - 2 × leg", "between the legs"),
    ("short rail", "overall depth - 2 × leg", "between the legs"),
    ("plank", "1", "thickness of the top planks, 5/4 stock"),
    ("plank width", "5 1/2", ""),
    ("overhang", "1 1/2", "all round"),
    ("top length", "overall length + 2 × overhang", ""),
    ("top depth", "overall depth + 2 × overhang", ""),
    ("leg length", "bench height - plank", ""),
    ("set-back", "3/4", "rail behind the outside of the leg"),
    ("shelf height", "8", "floor to the top of the slats"),
    ("slat", "2 1/2", "width of a shelf slat"),
    ("slat length", "overall depth - 2 × set-back", "over both long shelf rails"),
    ("dowel trim", "1/4", "left proud at each end, sawn flush later"),
    (
        "tool dowel",
        "overall length - 2 × set-back + 2 × dowel trim",
        "rough cut, through both end frames",
    ),
    ("frame inside", "long rail", "measure it on the built frame before the shelf is cut"),
    ("kneeler spacing", "(long rail - 2 × slat) / 3", ""),
];

/// Name, quantity, thickness, width, length, stock.
const PARTS: &[(&str, &str, &str, &str, &str, &str)] = &[
    ("leg", "4", "leg", "leg", "leg length", "4x4"),
    ("long rail, upper", "2", "rail", "rail width", "long rail", "2x8"),
    ("long rail, shelf", "2", "rail", "rail width", "frame inside", "2x8"),
    ("short rail, upper", "2", "rail", "rail width", "short rail", "2x8"),
    ("short rail, shelf", "2", "rail", "rail width", "short rail", "2x8"),
    ("top plank", "5", "plank", "ripped plank", "top length", "5/4x6"),
    ("shelf slat", "14", "3/4", "slat", "slat length", "1x6"),
    ("end bracket", "2", "rail", "5 1/2", "12", "2x6"),
    ("tool dowel", "1", "1", "1", "tool dowel", "1 in dowel"),
];

/// The demo job, fresh.
#[must_use]
pub fn demo() -> Job {
    // What its reckonings ask beside is worked out, once.
    static DEMO: LazyLock<Job> = LazyLock::new(|| {
        let mut job = as_written();
        [Tape::SIXTEENTHS, Tape::Millimetres(0)].into_iter().for_each(|tape| fill(&mut job, tape));
        job
    });
    DEMO.clone()
}

/// Gives all that the kept reckonings read on a tape a text of its own: the demo is invented as a whole, and says so in its
/// title; nothing in it waits to be confirmed.
fn fill(job: &mut Job, tape: Tape) {
    let bench = Bench { tape, ..Bench::default() };
    let reckoned = Reckoned::of(job, &bench);
    let filled = job.kept().into_iter().filter_map(|(id, kept)| {
        let assumed = &reckoned.kept(id)?.assumed;
        let texts = assumed.fields().map(|it| (it.id.to_owned(), it.start_text(&bench, job.unit)));
        let entries = kept.entries.iter().cloned().chain(texts).collect();
        Some(job.replacing(id, Item::Kept(Kept { entries, ..kept.clone() })))
    });
    let step = Step::new("open the demo", filled.collect());
    // Nobody else has it: there is nothing to be in conflict with.
    let _fresh = job.make(&step);
}

fn as_written() -> Job {
    let mut job = Job::new(TITLE, Unit::Inch);
    let mut items: Vec<Item> = Vec::new();
    items.extend((0..).zip(MEASURES).map(|(rank, (name, formula, note))| {
        Item::Measure(Measure {
            rank,
            wait: *name == "frame inside",
            note: (*note).to_owned(),
            ..Measure::new(*name, MeasureKind::Length, Written::Formula((*formula).to_owned()))
        })
    }));
    items.extend((0..).zip(PARTS).map(
        |(rank, (name, quantity, thickness, width, length, stock))| {
            Item::Part(Part {
                rank,
                stock: (*stock).to_owned(),
                grain: Grain::Locked,
                show_face: if *name == "top plank" {
                    "best face up".to_owned()
                } else {
                    String::new()
                },
                hand: if *name == "end bracket" { Hand::Pairs } else { Hand::Alike },
                may_rip: ["2x8", "1x6", "4x4", "5/4x6"].contains(stock),
                may_resaw: *stock == "4x4",
                ..Part::new(name, quantity, [thickness, width, length])
            })
        },
    ));
    // Ids are given in order: the kept reckonings follow the measures and the parts.
    let first_kept = (MEASURES.len() + PARTS.len() + 1) as u64;
    items.extend((0..).zip(KEPT).map(|(rank, (slug, title, entries))| {
        let entries =
            entries.iter().map(|(id, text)| ((*id).to_owned(), (*text).to_owned())).collect();
        Item::Kept(Kept {
            rank,
            title: (*title).to_owned(),
            slug: (*slug).to_owned(),
            entries,
            left: Vec::new(),
        })
    }));
    let kept_as = |title: &str| (first_kept..).zip(KEPT).find(|(_, kept)| kept.1 == title);
    items.extend((1_000..).zip(LINKED).filter_map(|(rank, (name, title, result))| {
        let (kept, _) = kept_as(title)?;
        let result = (*result).to_owned();
        Some(Item::Measure(Measure {
            rank,
            ..Measure::new(
                *name,
                MeasureKind::Length,
                Written::Linked(Linked { kept: ItemId(kept), result, index: 0 }),
            )
        }))
    }));
    items.extend(rack());
    let rails = ["long rail", "frame inside"];
    let members =
        (1..).zip(MEASURES).filter(|(_, m)| rails.contains(&m.0)).map(|(id, _)| ItemId(id));
    items.push(Item::Match(Match {
        name: "long rails and the frame".to_owned(),
        measures: members.collect(),
        drift: "1/16".to_owned(),
        left: None,
    }));
    let changes = (0..).zip(items).map(|(offset, item)| job.adding(offset, item)).collect();
    // Fresh ids in a fresh job: there is nothing to be in conflict with.
    let _fresh = job.make(&Step::new("open the demo", changes));
    job
}

fn rack() -> Vec<Item> {
    let rack_board = |name: &str, section: &str, size: [&str; 3], quantity, knots: &str| {
        let [thickness, width, length] = size.map(str::to_owned);
        let (name, section, knots) = (name.to_owned(), section.to_owned(), knots.to_owned());
        let wet = section == "2x8";
        let sawn_ends = false;
        Item::RackBoard(RackBoard {
            name,
            section,
            thickness,
            width,
            length,
            quantity,
            wet,
            sawn_ends,
            knots,
        })
    };
    let yard = |section: &str, thickness: &str, width: &str, length: &str, price| {
        Item::YardBoard(YardBoard::new(section, [thickness, width, length], price))
    };
    vec![
        rack_board("left from the raised bed", "2x8", ["1 1/2", "7 1/2", "52"], 1, "20 to 23"),
        rack_board("short plank", "5/4x6", ["1", "5 1/2", "53"], 1, ""),
        rack_board("fence board ends", "1x6", ["3/4", "5 1/2", "44"], 2, ""),
        yard("4x4", "3 1/2", "3 1/2", "96", 1180),
        yard("4x4", "3 1/2", "3 1/2", "120", 1510),
        yard("2x8", "1 1/2", "7 1/2", "96", 1090),
        yard("2x8", "1 1/2", "7 1/2", "120", 1395),
        yard("2x6", "1 1/2", "5 1/2", "96", 820),
        yard("5/4x6", "1", "5 1/2", "96", 960),
        yard("5/4x6", "1", "5 1/2", "144", 1425),
        yard("1x6", "3/4", "5 1/2", "72", 415),
        yard("1x6", "3/4", "5 1/2", "96", 560),
        yard("1 in dowel", "1", "1", "48", 385),
        Item::Round(Round { name: "paint can".to_owned(), diameter: "6 5/8".to_owned() }),
        Item::Round(Round { name: "flower pot".to_owned(), diameter: "9 1/2".to_owned() }),
        Item::Saw(Saw {
            name: "table saw".to_owned(),
            kerf: "1/8".to_owned(),
            reach: "3 1/8".to_owned(),
            fence: Side::Right,
        }),
        Item::Screw(Screw { gauge: 8, length: "2 1/2".to_owned(), quantity: 120 }),
        Item::Screw(Screw { gauge: 10, length: "3".to_owned(), quantity: 40 }),
        Item::Sketch(Sketch {
            length: "overall length".to_owned(),
            depth: "overall depth".to_owned(),
            height: "leg length".to_owned(),
            leg: "leg".to_owned(),
            rail: "rail width".to_owned(),
            shelf: "shelf height".to_owned(),
            top: "plank".to_owned(),
            overhang: "overhang".to_owned(),
        }),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::kinds::ours_line;

    #[test]
    fn nothing_in_the_demo_waits_to_be_confirmed_on_any_tape() {
        for tape in [Tape::SIXTEENTHS, Tape::Millimetres(0), Tape::HalfMillimetres] {
            let bench = Bench { tape, ..Bench::default() };
            let (job, written) = (demo(), as_written());
            let (reckoned, before) = (Reckoned::of(&job, &bench), Reckoned::of(&written, &bench));
            assert_eq!(ours_line(&job, &reckoned), None);
            // And it answers what it answered.
            for (id, kept) in job.kept() {
                let answers = [&reckoned, &before]
                    .map(|it| format!("{:?}", it.kept(id).map(|it| &it.answer)));
                assert_eq!(answers[0], answers[1], "{}", kept.title);
            }
        }
    }
}
