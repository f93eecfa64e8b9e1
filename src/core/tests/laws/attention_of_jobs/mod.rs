//! What wants looking at, in jobs of several kinds: a frame with a top by reckonings, a bench by formulas, a box whose
//! thicknesses, widths and lengths must match. Pieces are cut, spoiled, laid on the rack, come out different and get a size
//! of their own where they stand; what is told is held against a shop that remembers every cut, and each kind of entry must
//! have been judged often enough in each kind of job.

mod kinds;
mod shop;
mod ways;

use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};

use proptest::prelude::*;
use proptest::test_runner::TestRunner;
use reckoner_core::attention::{Does, Fact, attention, looking_again, most_left, spoiling, ways};
use reckoner_core::job::{
    Dimension, Dimensions, History, Item, ItemId, Job, Measure, Part, PartSizes, Piece, PieceState,
    Reckoned, Step, Written,
};
use reckoner_core::measure::Length;
use reckoner_core::sheet::Bench;

use crate::attention::from_the_rack;
use kinds::{KINDS, begin};
use shop::{
    By, KNOWN, Line, Shop, apart_line, beyond_line, off_line, plus, sixty_fourths, size_line,
    size_unknown_line, unknown_line,
};
use ways::{stand, take_way};

/// The most pieces of a part that the walk wants.
const MOST: usize = 6;

#[derive(Clone, Debug)]
enum Act {
    /// A size that is no formula is planned so much larger.
    Plan(prop::sample::Index, i128),
    /// A size is cut so much off what it is planned at, or is not cut.
    AsCut(prop::sample::Index, Option<i128>),
    /// A size is cut, and nobody says at what.
    CutSomehow(prop::sample::Index),
    Tick(prop::sample::Index, usize),
    /// As a file of before has it.
    TickOfBefore(prop::sample::Index, usize),
    PutBack(prop::sample::Index, usize),
    Count(prop::sample::Index, usize),
    /// The tape says of a piece that is cut that it is so much off what is wanted.
    Tape(prop::sample::Index, prop::sample::Index, usize, i128),
    /// A piece is spoiled, and so much of its length is left, in eighths.
    Spoil(prop::sample::Index, prop::sample::Index, u32),
    TakeWay([prop::sample::Index; 3]),
    /// A piece that is off has a size of its own in some of the places where it may stand.
    Stand(prop::sample::Index, u64),
    LookAgain(prop::sample::Index),
    Undo,
}

fn act() -> impl Strategy<Value = Act> {
    let at = any::<prop::sample::Index>;
    let piece = || (at(), 0..MOST);
    let little = || prop_oneof![3 => -12_i128..=12, 1 => -32_i128..=32];
    prop_oneof![
        3 => (at(), little()).prop_map(|(at, n)| Act::Plan(at, n)),
        2 => (at(), prop::option::weighted(0.8, little())).prop_map(|(at, n)| Act::AsCut(at, n)),
        1 => at().prop_map(Act::CutSomehow),
        8 => piece().prop_map(|(part, at)| Act::Tick(part, at)),
        1 => piece().prop_map(|(part, at)| Act::TickOfBefore(part, at)),
        1 => piece().prop_map(|(part, at)| Act::PutBack(part, at)),
        4 => (at(), prop_oneof![1..=2_usize, 1..=MOST]).prop_map(|(part, n)| Act::Count(part, n)),
        4 => (at(), at(), 0..3_usize, little())
            .prop_map(|(part, at, of, n)| Act::Tape(part, at, of, n)),
        1 => (at(), at(), 1..8_u32).prop_map(|(part, at, n)| Act::Spoil(part, at, n)),
        8 => any::<[prop::sample::Index; 3]>().prop_map(Act::TakeWay),
        2 => (at(), any::<u64>()).prop_map(|(fact, places)| Act::Stand(fact, places)),
        1 => at().prop_map(Act::LookAgain),
        1 => Just(Act::Undo),
    ]
}

/// How often each thing was judged or done, by the kind of job.
#[derive(Default)]
struct Seen(RefCell<BTreeMap<(usize, String), u32>>);

impl Seen {
    fn add(&self, kind: usize, what: impl Into<String>) {
        *self.0.borrow_mut().entry((kind, what.into())).or_default() += 1;
    }

    fn count(&self, kind: usize, what: &str) -> u32 {
        self.0.borrow().get(&(kind, what.to_owned())).copied().unwrap_or(0)
    }
}

fn place(of: Dimension) -> usize {
    Dimension::ALL.iter().position(|known| *known == of).expect("one of three")
}

/// A length as anybody may write it.
fn text(length: Length) -> String {
    format!("{}/{}", length.in_inches().numer(), length.in_inches().denom())
}

fn measure_step(job: &Job, id: ItemId, change: impl Fn(&mut Measure)) -> Step {
    let Some(Item::Measure(measure)) = job.item(id) else { panic!("a size") };
    let mut measure = measure.clone();
    change(&mut measure);
    Step::new("size", vec![job.replacing(id, Item::Measure(measure))])
}

fn piece_step(job: &Job, id: ItemId, index: usize, change: impl Fn(Piece) -> Piece) -> Step {
    let Some(Item::Part(part)) = job.item(id) else { panic!("a part") };
    let piece = change(part.piece(index));
    Step::new("piece", vec![job.replacing(id, Item::Part(part.clone().with_piece(index, piece)))])
}

/// One act in the shop and in the job. `None` where there is nothing to do.
fn act_on(
    shop: &mut Shop,
    job: &Job,
    reckoned: &Reckoned,
    act: &Act,
    done: &mut Vec<String>,
) -> Option<Step> {
    let bench = Bench::default();
    let part_of = |shop: &Shop, at: &prop::sample::Index| at.index(shop.parts.len());
    Some(match act {
        Act::Undo => return None,
        Act::Plan(at, more) => {
            let free: Vec<usize> =
                (0..shop.sizes.len()).filter(|at| !shop.sizes[*at].is_formula).collect();
            let at = free[at.index(free.len())];
            let to = plus(shop.planned(at), sixty_fourths(*more));
            shop.sizes[at].by = By::Is(to);
            let id = shop.sizes[at].id;
            measure_step(job, id, |it| it.written = Written::Formula(text(to)))
        }
        Act::AsCut(at, off) => {
            let at = at.index(shop.sizes.len());
            let cut = off.map(|off| plus(shop.planned(at), sixty_fourths(off)));
            shop.sizes[at].as_cut = cut;
            measure_step(job, shop.sizes[at].id, |it| it.as_cut = cut.map(text))
        }
        Act::CutSomehow(at) => {
            let at = at.index(shop.sizes.len());
            (shop.sizes[at].is_cut, shop.sizes[at].as_cut) = (true, None);
            measure_step(job, shop.sizes[at].id, |it| (it.is_cut, it.as_cut) = (true, None))
        }
        Act::Count(part, n) => {
            let part = part_of(shop, part);
            shop.parts[part].count = *n;
            let id = shop.parts[part].id;
            let Some(Item::Part(old)) = job.item(id) else { panic!("a part") };
            let new = Part { quantity: n.to_string(), ..old.clone() };
            Step::new("count", vec![job.replacing(id, Item::Part(new))])
        }
        Act::Tick(part, index) | Act::TickOfBefore(part, index) => {
            let part = part_of(shop, part);
            // What is not wanted has no box to tick.
            if *index >= shop.parts[part].count || shop.parts[part].pieces[*index].is_cut {
                return None;
            }
            let (wanted, id) = (shop.wanted(part).map(Some), shop.parts[part].id);
            let Some(Item::Part(known)) = job.item(id) else { panic!("a part") };
            if known.piece(*index).state() == PieceState::Again {
                done.push("cut once more".to_owned());
            }
            let is_known = matches!(act, Act::Tick(..));
            let sizes = if is_known { wanted } else { [None; 3] };
            shop.parts[part].pieces[*index] = shop::Piece { is_cut: true, sizes, left: [None; 3] };
            let all = reckoned.part(id).map(PartSizes::all_wanted)?;
            let cut = |_| Piece::cut(Dimensions::default());
            if is_known {
                piece_step(job, id, *index, |it| it.ticked(all))
            } else {
                piece_step(job, id, *index, cut)
            }
        }
        Act::PutBack(part, index) => {
            let part = part_of(shop, part);
            shop.parts[part].pieces[*index] = shop::Piece::default();
            piece_step(job, shop.parts[part].id, *index, |_| Piece::default())
        }
        Act::Tape(part, index, of, off) => {
            let part = part_of(shop, part);
            let is = plus(shop.wanted(part)[*of], sixty_fourths(*off));
            let id = shop.parts[part].id;
            let index = one_cut(&shop.parts[part], *index)?;
            shop.parts[part].pieces[index].sizes[*of] = Some(is);
            piece_step(job, id, index, |it| it.measured(Dimension::ALL[*of], Some(text(is))))
        }
        Act::Spoil(part, index, eighths) => {
            let part = part_of(shop, part);
            let id = shop.parts[part].id;
            let index = one_cut(&shop.parts[part], *index)?;
            let piece = &mut shop.parts[part].pieces[index];
            let [Some(thick), Some(wide), Some(long)] = piece.sizes else {
                assert_eq!(most_left(job, reckoned, id, index), None);
                return None;
            };
            assert_eq!(most_left(job, reckoned, id, index), Some(long));
            let left = ((long * *eighths).expect("small") / 8).expect("small");
            *piece = shop::Piece::default();
            shop.rack.push([thick, wide, left]);
            done.push("spoiled".to_owned());
            spoiling(job, reckoned, (id, index), left).expect("it was so long")
        }
        Act::TakeWay([kind, fact, way]) => {
            let facts = attention(job, reckoned, &bench).facts;
            // Those of which there are few are taken as often as the many.
            let kinds: BTreeSet<String> = facts.iter().map(kind_of).collect();
            // What is cut beyond that has the most ways.
            let kinds: Vec<&String> = kinds
                .iter()
                .flat_map(|it| vec![it; if it == "NotWanted" { 3 } else { 1 }])
                .collect();
            let of = (!kinds.is_empty()).then(|| kinds[kind.index(kinds.len())])?;
            let facts: Vec<&Fact> = facts.iter().filter(|it| kind_of(it) == *of).collect();
            let fact = facts[fact.index(facts.len())];
            let mut all = ways(job, reckoned, &bench, fact, &[]);
            all.retain(|way| way.step.is_some());
            let way = (!all.is_empty()).then(|| &all[way.index(all.len())])?;
            take_way(shop, fact, way.does);
            let does = format!("{:?}", way.does);
            done.push(format!("way {}", does.split('(').next().unwrap_or_default()));
            way.step.clone()?
        }
        Act::Stand(at, places) => {
            let facts = attention(job, reckoned, &bench).facts;
            let is_one = |it: &&Fact| matches!(it, Fact::Off { pieces, .. } if pieces.len() == 1);
            let facts: Vec<&Fact> = facts.iter().filter(is_one).collect();
            let fact = (!facts.is_empty()).then(|| facts[at.index(facts.len())])?;
            let all = ways(job, reckoned, &bench, fact, &[]);
            all.iter().find(|way| way.does == Does::OwnSize)?;
            let step = stand(shop, job, reckoned, fact, *places)?;
            done.push("own size".to_owned());
            step
        }
        Act::LookAgain(at) => {
            let left = attention(job, reckoned, &bench).left;
            let fact = (!left.is_empty()).then(|| &left[at.index(left.len())])?;
            match fact {
                Fact::Off { part, pieces, of, .. } => {
                    let part = shop.part_at(*part);
                    for index in pieces {
                        shop.parts[part].pieces[*index].left[place(*of)] = None;
                    }
                }
                Fact::SizeOff { size, .. } => {
                    let at = shop.size_at(*size);
                    shop.sizes[at].left = None;
                }
                Fact::Apart(it) => {
                    let at = shop.group_at(it.group);
                    shop.groups[at].left = None;
                }
                other => panic!("{other:?}"),
            }
            looking_again(job, fact)?
        }
    })
}

/// One of the pieces of a part that are cut.
fn one_cut(part: &shop::Part, which: prop::sample::Index) -> Option<usize> {
    let cut: Vec<usize> = (0..KNOWN).filter(|at| part.pieces[*at].is_cut).collect();
    (!cut.is_empty()).then(|| cut[which.index(cut.len())])
}

/// What kind of entry it is.
fn kind_of(fact: &Fact) -> String {
    let words = format!("{fact:?}");
    words.split([' ', '(']).next().unwrap_or_default().to_owned()
}

/// The list of the core, line by line.
fn told(job: &Job, reckoned: &Reckoned) -> Result<BTreeSet<Line>, TestCaseError> {
    let found = attention(job, reckoned, &Bench::default());
    let mut all = BTreeSet::new();
    let both = found.facts.iter().map(|it| (it, false));
    for (fact, is_left) in both.chain(found.left.iter().map(|it| (it, true))) {
        let lines: Vec<Line> = match fact {
            Fact::Off { part, pieces, of, is, wanted } => {
                let line = |at: &usize| off_line(*part, *at, place(*of), (*is, *wanted), is_left);
                pieces.iter().map(line).collect()
            }
            Fact::NotRecorded { part, pieces } => {
                pieces.iter().map(|at| unknown_line(*part, *at)).collect()
            }
            Fact::NotWanted { part, pieces } => {
                pieces.iter().map(|at| beyond_line(*part, *at)).collect()
            }
            Fact::SizeOff { size, is, wanted } => vec![size_line(*size, (*is, *wanted), is_left)],
            Fact::SizeNotRecorded { size } => vec![size_unknown_line(*size)],
            Fact::Apart(it) => vec![apart_line(it.group, it.apart, is_left)],
            other => return Err(TestCaseError::fail(format!("{other:?}"))),
        };
        for line in lines {
            prop_assert!(all.insert(line.clone()), "told twice: {}", line);
        }
    }
    Ok(all)
}

/// The list, the rack and what is still to be cut, against what is remembered.
fn judge(kind: usize, job: &Job, shop: &Shop, seen: &Seen) -> Result<(), TestCaseError> {
    let bench = Bench::default();
    let reckoned = Reckoned::of(job, &bench);
    let (expected, told_by_piece) = shop.expected();
    let mut told = told(job, &reckoned)?;
    told.retain(|line| expected.contains(line) || !told_by_piece.contains(line));
    prop_assert_eq!(&told, &expected);
    for line in &expected {
        let what = line.split(':').next().unwrap_or_default();
        seen.add(kind, what);
        if line.ends_with("left true") {
            seen.add(kind, format!("{what}, left as it is"));
        }
    }
    let mut rack: Vec<[Length; 3]> = Vec::new();
    for (_, item) in job.items() {
        let Item::RackBoard(board) = item else { continue };
        let sides = [&board.thickness, &board.width, &board.length];
        let sides = sides.map(|side| reckoned.length_of(side).expect("a length"));
        rack.extend(core::iter::repeat_n(sides, board.quantity as usize));
    }
    let mut laid = shop.rack.clone();
    rack.sort_unstable();
    laid.sort_unstable();
    prop_assert_eq!(rack, laid);
    planned_again(kind, job, &reckoned, shop, seen)
}

/// What is cut is not planned again, and all else is.
fn planned_again(
    kind: usize,
    job: &Job,
    reckoned: &Reckoned,
    shop: &Shop,
    seen: &Seen,
) -> Result<(), TestCaseError> {
    let Some(wanted) = from_the_rack(job, reckoned) else { return Ok(()) };
    seen.add(kind, "planned");
    for part in &shop.parts {
        let cut = part.pieces[..part.count].iter().filter(|piece| piece.is_cut).count();
        let at = wanted.labels.parts.iter().position(|label| label.item == Some(part.id));
        let planned = at.map_or(0, |at| wanted.pieces[at]) as usize;
        prop_assert_eq!(planned, part.count - cut, "{}", part.name);
    }
    Ok(())
}

/// Whether the walk goes there: every reckoning has its answer, and every text can be read.
fn goes_there(job: &Job, page: &Reckoned) -> bool {
    let facts = attention(job, page, &Bench::default()).facts;
    !facts.iter().any(|it| matches!(it, Fact::Unread { .. } | Fact::Refused { .. }))
}

fn walk(kind: usize, acts: &[Act], seen: &Seen) -> Result<(), TestCaseError> {
    let (mut job, mut shop) = begin(kind);
    let mut history = History::default();
    let mut before: Vec<Shop> = Vec::new();
    // Pages that are opened work the job out from what stood before.
    let mut page = Reckoned::of(&job, &Bench::default());
    judge(kind, &job, &shop, seen)?;
    for act in acts {
        if matches!(act, Act::Undo) {
            if history.undo(&mut job).expect("nobody else is here") {
                shop = before.pop().expect("a step made");
                seen.add(kind, "undone");
            }
        } else {
            let (mut then, mut done) = (shop.clone(), Vec::new());
            let Some(step) = act_on(&mut then, &job, &page, act, &mut done) else { continue };
            let mut trial = job.clone();
            trial.make(&step).expect("its own state");
            if !goes_there(&trial, &page.after(&trial, &Bench::default())) {
                seen.add(kind, "not gone");
                continue;
            }
            let made = history.made().count();
            history.make(&mut job, step).expect("the latest state");
            if history.made().count() > made {
                before.push(core::mem::replace(&mut shop, then));
            }
            done.into_iter().for_each(|what| seen.add(kind, what));
            seen.add(kind, "steps");
        }
        page = page.after(&job, &Bench::default());
        judge(kind, &job, &shop, seen)?;
    }
    Ok(())
}

/// So often at the least.
const OFTEN_ENOUGH: u32 = 4;
/// What must be judged and done in each kind of job.
const OFTEN: [&str; 25] = [
    "off",
    "off, left as it is",
    "not recorded",
    "beyond",
    "size",
    "size, left as it is",
    "size not recorded",
    "apart",
    "apart, left as it is",
    "planned",
    "undone",
    "spoiled",
    "cut once more",
    "own size",
    "way Trim",
    "way Shim",
    "way Leave",
    "way CutAgain",
    "way CutAgainFromRack",
    "way GiveWay",
    "way TakePlan",
    "way ToSmallest",
    "way ToRack",
    "way WantAgain",
    "way TakePlace",
];

#[test]
fn in_jobs_of_every_kind_the_list_holds_exactly_what_is_off() {
    const CASES: u32 = 120;
    let seen = Seen::default();
    for (kind, name) in KINDS.iter().enumerate() {
        let config =
            ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(CASES) };
        let drawn = prop::collection::vec(act(), 20..60);
        let all = TestRunner::new(config).run(&drawn, |acts| walk(kind, &acts, &seen));
        all.unwrap_or_else(|failure| panic!("{name}: {failure}"));
    }
    for (kind, name) in KINDS.iter().enumerate() {
        let counts: Vec<(&str, u32)> =
            OFTEN.iter().map(|what| (*what, seen.count(kind, what))).collect();
        println!("{name}: {counts:?}, not gone {}", seen.count(kind, "not gone"));
        let rare: Vec<&(&str, u32)> = counts.iter().filter(|it| it.1 < OFTEN_ENOUGH).collect();
        assert!(rare.is_empty(), "{name}: judged too seldom: {rare:?}");
        let (gone, not) = (seen.count(kind, "steps"), seen.count(kind, "not gone"));
        assert!(4 * not < gone, "{name}: {not} of {gone} steps led to no answer");
    }
}
