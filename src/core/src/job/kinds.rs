//! A job begun from a kind of piece: a frame with a top, its sizes linked, its parts and its sketch made.
//!
//! Everything stands in pencil: a size is ours until the person writes or confirms it. Where a size is published it
//! starts within what is published, and is held against that later ([`checks`]); all other sizes, and the prices, are
//! invented.

use super::sections::text_in;
use super::{
    Item, ItemId, Job, Measure, MeasureKind, Part, Reckoned, Sketch, Step, Written, YardBoard,
};
use crate::measure::text::Quantity;
use crate::measure::{Length, Unit};
use crate::say;
use crate::sentence::counted;
use crate::sheet::{Sentence, in_short, not_yours};
use crate::tables::furniture::{Usual, published};
use crate::tables::lumber::{self, Seasoning};

/// A kind of piece.
#[derive(Debug)]
pub struct Kind {
    /// Stable name, also in addresses: `bench`.
    pub id: &'static str,
    /// As it is called: `Bench`.
    pub name: &'static str,
    /// What is made.
    pub about: &'static str,
    /// Outside of the legs along the front, in inches.
    length: i32,
    /// The top, front to back.
    top_depth: i32,
    /// Floor to the top of the top.
    height: i32,
    /// The top beyond the legs, all round, in quarters of an inch.
    overhang: i32,
    /// What legs, rails and planks are cut from.
    stock: [&'static str; 3],
    /// Planks of the top.
    planks: u32,
    /// Floor to the upper side of the shelf; 0 for none.
    shelf: i32,
    /// What its sizes are published as: the whole length, the depth of the top, the height.
    usual: [&'static str; 3],
    /// Whether somebody sits at it.
    has_knees: bool,
}

/// Every kind of piece, as the page offers them.
pub static KINDS: [Kind; 5] = [
    Kind {
        id: "bench",
        name: "Bench",
        about: "four legs, a frame and a seat of slats",
        length: 48,
        top_depth: 20,
        height: 18,
        overhang: 0,
        stock: ["4x4", "2x4", "2x4"],
        planks: 5,
        shelf: 0,
        usual: ["seat-length", "seat-depth", "seat-height"],
        has_knees: false,
    },
    Kind {
        id: "table",
        name: "Table",
        about: "four legs, a frame and a top of planks",
        length: 60,
        top_depth: 30,
        height: 32,
        overhang: 8,
        stock: ["4x4", "2x4", "5/4x6"],
        planks: 5,
        shelf: 0,
        usual: ["", "", "table-height"],
        has_knees: true,
    },
    Kind {
        id: "potting-bench",
        name: "Potting bench",
        about: "a high top to stand at, and a shelf below",
        length: 48,
        top_depth: 24,
        height: 34,
        overhang: 4,
        stock: ["4x4", "2x4", "5/4x6"],
        planks: 4,
        shelf: 14,
        usual: ["", "", "table-height"],
        has_knees: false,
    },
    Kind {
        id: "planter",
        name: "Planter",
        about: "a low frame with a slatted top for tubs and troughs",
        length: 36,
        top_depth: 16,
        height: 14,
        overhang: 0,
        stock: ["2x2", "2x4", "1x4"],
        planks: 4,
        shelf: 0,
        usual: ["", "", ""],
        has_knees: false,
    },
    Kind {
        id: "stool",
        name: "Stool",
        about: "a square seat on four legs, with a low shelf",
        length: 14,
        top_depth: 15,
        height: 18,
        overhang: 2,
        stock: ["2x2", "2x4", "1x4"],
        planks: 4,
        shelf: 6,
        usual: ["", "", "seat-height"],
        has_knees: false,
    },
];

/// The kind with this id.
#[must_use]
pub fn kind(id: &str) -> Option<&'static Kind> {
    KINDS.iter().find(|kind| kind.id == id)
}

/// A size of a kind: its name, its formula or our size, what it is published as, and a note.
struct Size {
    name: &'static str,
    written: String,
    is_ours: bool,
    is_number: bool,
    usual: &'static str,
    note: &'static str,
}

impl Kind {
    /// Thickness and width of what legs, rails and planks are cut from, dressed dry.
    fn dressed(&self) -> Option<[(Length, Length); 3]> {
        let [leg, rail, plank] = self.stock.map(|id| lumber::section(id)?.dressed(Seasoning::Dry));
        Some([leg?, rail?, plank?])
    }

    fn sizes(&self, unit: Unit) -> Vec<Size> {
        let ours = |name, size: Length, usual, note| Size {
            name,
            written: text_in(unit, size),
            is_ours: true,
            is_number: false,
            usual,
            note,
        };
        let follows = |name, formula: &str, usual, note| Size {
            name,
            written: formula.to_owned(),
            is_ours: false,
            is_number: false,
            usual,
            note,
        };
        let inches = |whole: i32| Length::sixty_fourths(whole.saturating_mul(64));
        let [length, depth, height] = self.usual;
        let Some([(leg, _), (rail, rail_width), (top, plank_width)]) = self.dressed() else {
            return Vec::new();
        };
        let overhang = Length::sixty_fourths(self.overhang.saturating_mul(16));
        let mut all = vec![
            ours("length", inches(self.length), length, "outside of the legs, along the front"),
            ours("top depth", inches(self.top_depth), depth, "the top, front to back"),
            ours("height", inches(self.height), height, "floor to the top"),
        ];
        if self.shelf > 0 {
            all.push(ours("shelf height", inches(self.shelf), "", "floor to the top of the shelf"));
        }
        all.extend([
            ours("overhang", overhang, "", "the top beyond the legs, all round"),
            ours("leg", leg, "", "its side; measure one"),
            ours("rail", rail, "", "thickness of the rails; measure one"),
            ours("rail width", rail_width, "", "measure one"),
            ours("plank", top, "", "thickness of the planks; measure one"),
            ours("plank width", plank_width, "", "measure one"),
        ]);
        all.push(Size {
            name: "planks",
            written: self.planks.to_string(),
            is_ours: true,
            is_number: true,
            usual: "",
            note: "how many make the top",
        });
        all.extend([
            follows("depth", "top depth - 2 × overhang", "", "outside of the legs, front to back"),
            follows("top length", "length + 2 × overhang", "", ""),
            follows("leg length", "height - plank", "", ""),
            follows("long rail", "length - 2 × leg", "", "between the legs"),
            follows("short rail", "depth - 2 × leg", "", "between the legs"),
            follows(
                "gap",
                "(top depth - planks × plank width) / (planks - 1)",
                "",
                "between two planks",
            ),
        ]);
        if self.has_knees {
            all.extend([
                follows("under the rail", "leg length - rail width", "knee-height", "for knees"),
                follows("between the legs", "long rail", "knee-width", "for knees"),
                follows("under the top", "top depth", "knee-depth", "for knees, front to back"),
            ]);
        }
        if self.shelf > 0 {
            let toes = if self.height > 24 { "toe-height" } else { "" };
            all.extend([follows("under the shelf", "shelf height - plank - rail width", toes, "")]);
        }
        all
    }

    fn parts(&self) -> Vec<Part> {
        let [leg, rail, plank] = self.stock.map(str::to_owned);
        let of = |stock: &str, part: Part| Part { stock: stock.to_owned(), ..part };
        let mut all = vec![
            of(&leg, Part::new("leg", "4", ["leg", "leg", "leg length"])),
            of(&rail, Part::new("long rail", "2", ["rail", "rail width", "long rail"])),
            of(&rail, Part::new("short rail", "2", ["rail", "rail width", "short rail"])),
            of(&plank, Part::new("top plank", "planks", ["plank", "plank width", "top length"])),
        ];
        if self.shelf > 0 {
            let shelf = self.planks.saturating_sub(1).to_string();
            all.extend([
                of(&rail, Part::new("shelf rail", "2", ["rail", "rail width", "short rail"])),
                of(&plank, Part::new("shelf plank", &shelf, ["plank", "plank width", "long rail"])),
            ]);
        }
        all
    }

    /// Lengths at the yard for all that is cut, at prices that are invented.
    fn yard(&self, unit: Unit) -> Vec<YardBoard> {
        let mut all: Vec<YardBoard> = Vec::new();
        for id in self.stock {
            let Some(section) = lumber::section(id) else { continue };
            let Some((thickness, width)) = section.dressed(Seasoning::Dry) else { continue };
            if all.iter().any(|board| board.section == id) {
                continue;
            }
            for (feet, price) in [8, 10].into_iter().zip(price_of(id)) {
                let length = Length::sixty_fourths(feet * 12 * 64);
                let size = [thickness, width, length].map(|size| text_in(unit, size));
                let board = YardBoard::new(id, size.each_ref().map(String::as_str), price);
                all.push(YardBoard { is_ours: true, ..board });
            }
        }
        all
    }
}

/// What 8 and 10 feet of a section cost, in hundredths: invented.
fn price_of(section: &str) -> [u64; 2] {
    match section {
        "4x4" => [1_180, 1_510],
        "5/4x6" => [960, 1_220],
        "2x4" => [495, 640],
        "2x2" => [310, 405],
        _ => [365, 470],
    }
}

/// A job of a kind of piece, everything in it in pencil.
#[must_use]
pub fn job_of(kind: &Kind, unit: Unit) -> Job {
    let mut job = Job::new(kind.name, unit);
    let sizes = (0..).zip(kind.sizes(unit)).map(|(rank, it)| {
        let number = if it.is_number { MeasureKind::Number } else { MeasureKind::Length };
        Item::Measure(Measure {
            rank,
            is_ours: it.is_ours,
            usual: it.usual.to_owned(),
            note: it.note.to_owned(),
            ..Measure::new(it.name, number, Written::Formula(it.written))
        })
    });
    let parts = (0..).zip(kind.parts()).map(|(rank, part)| Item::Part(Part { rank, ..part }));
    let yard = kind.yard(unit).into_iter().map(Item::YardBoard);
    let sketch = Sketch {
        length: "length".to_owned(),
        depth: "depth".to_owned(),
        height: "leg length".to_owned(),
        leg: "leg".to_owned(),
        rail: "rail width".to_owned(),
        shelf: if kind.shelf > 0 { "shelf height".to_owned() } else { String::new() },
        top: "plank".to_owned(),
        overhang: "overhang".to_owned(),
    };
    let items = sizes.chain(parts).chain(yard).chain([Item::Sketch(sketch)]);
    let changes = (0..).zip(items).map(|(at, item)| job.adding(at, item)).collect();
    // Fresh ids in a fresh job: there is nothing to be in conflict with.
    let _fresh = job.make(&Step::new(format!("begin a {}", kind.name.to_lowercase()), changes));
    job
}

impl Item {
    /// Whether its size or price is ours, and not the person's yet.
    #[must_use]
    pub fn is_ours(&self) -> bool {
        match self {
            Item::Measure(it) => it.is_ours,
            Item::YardBoard(it) => it.is_ours,
            _ => false,
        }
    }

    /// The same, taken as the person's own; `None` where it is already.
    #[must_use]
    pub fn confirmed(&self) -> Option<Item> {
        match self {
            Item::Measure(it) if it.is_ours => {
                Some(Item::Measure(Measure { is_ours: false, ..it.clone() }))
            }
            Item::YardBoard(it) if it.is_ours => {
                Some(Item::YardBoard(YardBoard { is_ours: false, ..it.clone() }))
            }
            _ => None,
        }
    }
}

/// All that can be ours, in the order that it is gone through: sizes as they are listed, kept reckonings, then boards.
fn in_order(job: &Job) -> Vec<ItemId> {
    let sizes = job.measures().into_iter().map(|(id, _)| id);
    let kept = job.kept().into_iter().map(|(id, _)| id);
    let boards = job.items().filter(|(_, item)| matches!(item, Item::YardBoard(_)));
    sizes.chain(kept).chain(boards.map(|(id, _)| id)).collect()
}

/// How many examples of ours an item has: a kept reckoning all that it was worked out from.
fn examples_of(job: &Job, reckoned: &Reckoned, id: ItemId) -> usize {
    match job.item(id) {
        Some(Item::Kept(_)) => reckoned.kept(id).map_or(0, |it| it.assumed.fields().count()),
        item => usize::from(item.is_some_and(Item::is_ours)),
    }
}

/// What still has examples of ours, in the order that it is gone through.
#[must_use]
pub fn ours(job: &Job, reckoned: &Reckoned) -> Vec<ItemId> {
    let has_examples = |id: &ItemId| examples_of(job, reckoned, *id) > 0;
    in_order(job).into_iter().filter(has_examples).collect()
}

/// How many examples of ours there still are.
#[must_use]
pub fn examples_left(job: &Job, reckoned: &Reckoned) -> usize {
    in_order(job).into_iter().map(|id| examples_of(job, reckoned, id)).sum()
}

/// What still has examples of ours and comes after an item, whose own may be the person's by now; after the last comes
/// the first.
#[must_use]
pub fn next_ours(job: &Job, reckoned: &Reckoned, id: ItemId) -> Option<ItemId> {
    let all = in_order(job);
    let here = all.iter().position(|other| *other == id);
    let after = here.map_or(0, |here| here.saturating_add(1));
    let mut round = all.iter().skip(after).chain(all.iter().take(after)).copied();
    round.find(|other| *other != id && examples_of(job, reckoned, *other) > 0)
}

/// What still rests on examples of ours, in one line: `Not your sizes yet: length, height and 4 more. 3 examples in front
/// frame. 2 prices at the yard are our example`.
#[must_use]
pub fn ours_line(job: &Job, reckoned: &Reckoned) -> Option<String> {
    let (mut sizes, mut kept) = (Vec::new(), Vec::new());
    let (mut examples, mut prices) = (0_usize, 0_usize);
    for id in ours(job, reckoned) {
        match job.item(id) {
            Some(Item::Measure(it)) => sizes.push(&*it.name),
            Some(Item::Kept(it)) => {
                kept.push(&*it.title);
                examples = examples.saturating_add(examples_of(job, reckoned, id));
            }
            _ => prices = prices.saturating_add(1),
        }
    }
    let many = |count: usize, one| counted(u64::try_from(count).unwrap_or(u64::MAX), one);
    let examples =
        (examples > 0).then(|| format!("{} in {}", many(examples, " example"), in_short(&kept)));
    let prices = match prices {
        0 => None,
        1 => Some("1 price at the yard is our example".to_owned()),
        n => Some(format!("{n} prices at the yard are our example")),
    };
    let all: Vec<String> = [not_yours(&sizes), examples, prices].into_iter().flatten().collect();
    (!all.is_empty()).then(|| all.join(". "))
}

/// A size held against what is published.
#[derive(Clone, Debug, PartialEq)]
pub struct Check {
    /// The size.
    pub id: ItemId,
    /// Whether it is as published.
    pub holds: bool,
    /// `seat height 16 1/2; published benches are 17 to 19`
    pub sentence: Sentence,
    /// Where that is published.
    pub source: &'static str,
}

/// The size of a job held against what is published; `None` where nothing is, or the size is not known.
#[must_use]
pub fn check(job: &Job, reckoned: &Reckoned, id: ItemId) -> Option<Check> {
    let Item::Measure(measure) = job.item(id)? else { return None };
    let usual = published(&measure.usual)?;
    let Some(Quantity::Length(size)) = reckoned.measure(id)?.in_use() else { return None };
    let Usual { what, of, least, most, source, .. } = usual;
    let sentence = match (least, most) {
        (Some(least), Some(most)) => {
            say![what, " ", size, "; published ", of, " are ", least, " to ", most]
        }
        (Some(least), None) => {
            say![what, " ", size, "; published ", of, " are ", least, " or more"]
        }
        (None, Some(most)) => say![what, " ", size, "; published ", of, " are ", most, " or less"],
        (None, None) => return None,
    };
    Some(Check { id, holds: usual.holds(size), sentence, source })
}

/// Every size of the job that is not as published.
#[must_use]
pub fn checks(job: &Job, reckoned: &Reckoned) -> Vec<Check> {
    let all = job.measures().into_iter().filter_map(|(id, _)| check(job, reckoned, id));
    all.filter(|check| !check.holds).collect()
}

#[cfg(test)]
mod tests;
