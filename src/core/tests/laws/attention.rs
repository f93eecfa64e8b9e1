//! What wants looking at: whatever is cut, measured, changed and put right in whatever order, the
//! list holds exactly the pieces that are not what is wanted of them now; a way out gets rid of its
//! entry; and nothing that is cut is planned again unless somebody asked for it.

use std::cell::Cell;
use std::collections::BTreeSet;

use proptest::prelude::*;
use proptest::test_runner::TestRunner;
use reckoner_core::attention::{Does, Fact, attention, looking_again, ways};
use reckoner_core::job::{
    Dimension, Dimensions, History, Item, ItemId, Job, Match, Measure, MeasureKind, Part,
    PartSizes, Piece, RackBoard, Reckoned, Step, Written,
};
use reckoner_core::measure::{Length, Unit};
use reckoner_core::planning::wanted::{OPTIONS, Wanted, from_job_book, options};
use reckoner_core::sheet::{Ask, Bench, Entries};

/// Half a sixteenth: as near as anybody cuts to the tape of a bench that nobody has set.
const CLOSE: i128 = 2;
/// Pieces wanted of each part at first, and the most that the walk wants.
const QUANTITY: usize = 3;
const MOST: usize = 4;
/// Pieces that are remembered: as many as are ever cut and wanted after all.
const KNOWN: usize = 2 * MOST;
const SIZES: [&str; 3] = ["overall", "leg", "plank"];
const PARTS: [[&str; 3]; 3] = [
    ["leg", "leg", "overall"],
    ["plank", "leg + plank", "overall - 2 × leg"],
    ["3/4", "plank", "overall - plank"],
];

fn sixty_fourths(n: i128) -> Length {
    Length::of_inch(n, 64).expect("small")
}

fn sum(a: Length, b: Length) -> Length {
    (a + b).expect("small")
}

fn less(a: Length, b: Length) -> Length {
    (a - b).expect("small")
}

/// A piece as the one who cut it remembers it.
#[derive(Clone, Debug, Default)]
struct Remembered {
    is_cut: bool,
    sizes: [Option<Length>; 3],
    left: [Option<Length>; 3],
}

/// How far the sizes that must match, leg and plank, may drift: an inch and a half.
const DRIFT: i128 = 96;

/// The job as it is remembered: nothing of it is asked of the core.
#[derive(Clone, Debug)]
struct Shop {
    /// The rail as cut, `overall - 2 × leg` by its formula, and by how much it was left off.
    rail: Option<Length>,
    rail_left: Option<Length>,
    /// How far apart leg and plank were left.
    apart_left: Option<Length>,
    planned: [Length; 3],
    as_cut: [Option<Length>; 3],
    counts: [usize; 3],
    pieces: [[Remembered; KNOWN]; 3],
}

/// Part, piece, size, and whether it is left as it is.
type OffPieces = BTreeSet<(usize, usize, usize, bool)>;

impl Shop {
    fn in_use(&self, at: usize) -> Length {
        self.as_cut[at].unwrap_or(self.planned[at])
    }

    /// The sizes of [`PARTS`], by hand.
    fn wanted(&self, part: usize) -> [Length; 3] {
        let [overall, leg, plank] = [0, 1, 2].map(|at| self.in_use(at));
        match part {
            0 => [leg, leg, overall],
            1 => [plank, sum(leg, plank), less(less(overall, leg), leg)],
            _ => [sixty_fourths(48), plank, less(overall, plank)],
        }
    }

    /// The rail, where it is cut and off: what it is, what is wanted of it, and whether it is left so.
    fn rail_off(&self) -> Option<(Length, Length, bool)> {
        let (is, wanted) = (self.rail?, self.rail_wanted());
        let by = less(is, wanted);
        (by.abs() > sixty_fourths(CLOSE)).then_some((is, wanted, self.rail_left == Some(by)))
    }

    fn rail_wanted(&self) -> Length {
        less(less(self.in_use(0), self.in_use(1)), self.in_use(1))
    }

    /// How far leg and plank are apart, where that is too far, and whether they are left so.
    fn too_far_apart(&self) -> Option<(Length, bool)> {
        let apart = less(self.in_use(1), self.in_use(2)).abs();
        (apart > sixty_fourths(DRIFT)).then_some((apart, self.apart_left == Some(apart)))
    }

    /// What is off, which pieces have no size, and which are cut beyond what is wanted.
    fn expected(&self) -> (OffPieces, [BTreeSet<(usize, usize)>; 2]) {
        let (mut off, mut unknown) = (BTreeSet::new(), BTreeSet::new());
        let mut beyond = BTreeSet::new();
        for (part, pieces) in self.pieces.iter().enumerate() {
            let wanted = self.wanted(part);
            for (index, piece) in pieces.iter().enumerate().filter(|(_, it)| it.is_cut) {
                if index >= self.counts[part] {
                    beyond.insert((part, index));
                    continue;
                }
                for (of, wanted) in wanted.iter().enumerate() {
                    match piece.sizes[of] {
                        Some(is) => {
                            let by = less(is, *wanted);
                            if by.abs() > sixty_fourths(CLOSE) {
                                off.insert((part, index, of, piece.left[of] == Some(by)));
                            }
                        }
                        None => drop(unknown.insert((part, index))),
                    }
                }
            }
        }
        (off, [unknown, beyond])
    }
}

#[derive(Clone, Debug)]
enum Act {
    Plan(usize, i128),
    AsCut(usize, Option<i128>),
    Tick(usize, usize),
    /// As a file of before has it.
    TickOfBefore(usize, usize),
    PutBack(usize, usize),
    /// The rail is cut so much off what is wanted of it, or is not cut.
    RailCut(Option<i128>),
    /// So many are wanted.
    Count(usize, usize),
    Tape(usize, usize, usize, Option<i128>),
    TakeWay(prop::sample::Index, prop::sample::Index),
    LookAgain(prop::sample::Index),
    Undo,
}

fn act() -> impl Strategy<Value = Act> {
    let piece = || (0..3_usize, 0..MOST);
    let size = || prop_oneof![3 => 190_i128..260, 1 => 1_i128..4000];
    prop_oneof![
        4 => (0..3_usize, size()).prop_map(|(at, n)| Act::Plan(at, n)),
        2 => (0..3_usize, prop::option::weighted(0.7, size())).prop_map(|(at, n)| Act::AsCut(at, n)),
        6 => piece().prop_map(|(part, at)| Act::Tick(part, at)),
        1 => piece().prop_map(|(part, at)| Act::TickOfBefore(part, at)),
        1 => piece().prop_map(|(part, at)| Act::PutBack(part, at)),
        2 => prop::option::weighted(0.8, -8_i128..8).prop_map(Act::RailCut),
        3 => (0..3_usize, 1..=MOST).prop_map(|(part, n)| Act::Count(part, n)),
        2 => (piece(), 0..3_usize, prop::option::weighted(0.8, size()))
            .prop_map(|((part, at), of, n)| Act::Tape(part, at, of, n)),
        7 => any::<(prop::sample::Index, prop::sample::Index)>().prop_map(|(a, b)| Act::TakeWay(a, b)),
        1 => any::<prop::sample::Index>().prop_map(Act::LookAgain),
        1 => Just(Act::Undo),
    ]
}

fn begin() -> (Job, Shop) {
    let mut job = Job::new("potting bench (invented)", Unit::Inch);
    let planned = [2600, 224, 96].map(sixty_fourths);
    let mut items: Vec<Item> = Vec::new();
    for (rank, (name, size)) in (0..).zip(SIZES.iter().zip([2600, 224, 96])) {
        items.push(Item::Measure(Measure {
            rank,
            ..Measure::new(*name, MeasureKind::Length, Written::Formula(format!("{size}/64")))
        }));
    }
    for (rank, [thickness, width, length]) in (0..).zip(PARTS) {
        items.push(Item::Part(Part {
            rank,
            name: format!("part {rank}"),
            quantity: QUANTITY.to_string(),
            thickness: thickness.to_owned(),
            width: width.to_owned(),
            length: length.to_owned(),
            stock: "2x8".to_owned(),
            may_rip: true,
            ..Part::default()
        }));
    }
    items.push(Item::RackBoard(RackBoard {
        name: "by the door".to_owned(),
        section: "2x8".to_owned(),
        thickness: "5".to_owned(),
        width: "7 1/2".to_owned(),
        length: "99".to_owned(),
        quantity: 3,
        ..RackBoard::default()
    }));
    let written = Written::Formula("overall - 2 × leg".to_owned());
    items.push(Item::Measure(Measure {
        rank: 3,
        ..Measure::new("rail", MeasureKind::Length, written)
    }));
    items.push(Item::Match(Match {
        name: "leg and plank".to_owned(),
        measures: vec![id_of_size(1), id_of_size(2)],
        drift: format!("{DRIFT}/64"),
        left: None,
    }));
    let changes = (0..).zip(items).map(|(at, item)| job.adding(at, item)).collect();
    job.make(&Step::new("begin", changes)).expect("fresh");
    let counts = [QUANTITY; 3];
    let (rail, rail_left, apart_left) = (None, None, None);
    let pieces = Default::default();
    let shop = Shop { rail, rail_left, apart_left, planned, as_cut: [None; 3], counts, pieces };
    (job, shop)
}

/// The place of the rail behind the other sizes, and its id and that of the group behind everything else.
const RAIL: usize = 3;
const RAIL_ID: ItemId = ItemId(8);
const GROUP_ID: ItemId = ItemId(9);

fn id_of_size(at: usize) -> ItemId {
    if at == RAIL { RAIL_ID } else { ItemId(at as u64 + 1) }
}

fn id_of_part(part: usize) -> ItemId {
    ItemId(part as u64 + 4)
}

fn part_of(id: ItemId) -> usize {
    usize::try_from(id.0).expect("small") - 4
}

fn place(of: Dimension) -> usize {
    Dimension::ALL.iter().position(|known| *known == of).expect("one of three")
}

fn measure_step(job: &Job, at: usize, change: impl Fn(&mut Measure)) -> Step {
    let id = id_of_size(at);
    let Some(Item::Measure(measure)) = job.item(id) else { panic!("a size") };
    let mut measure = measure.clone();
    change(&mut measure);
    Step::new("size", vec![job.replacing(id, Item::Measure(measure))])
}

fn piece_step(job: &Job, part: usize, index: usize, change: impl Fn(Piece) -> Piece) -> Step {
    let id = id_of_part(part);
    let Some(Item::Part(part)) = job.item(id) else { panic!("a part") };
    let piece = change(part.piece(index));
    Step::new("piece", vec![job.replacing(id, Item::Part(part.clone().with_piece(index, piece)))])
}

#[derive(Default)]
struct Seen {
    off: Cell<u32>,
    ways: Cell<u32>,
    left: Cell<u32>,
    planned: Cell<u32>,
    beyond: Cell<u32>,
    /// Ways out taken for these.
    beyond_ways: Cell<u32>,
    rail: Cell<u32>,
    apart: Cell<u32>,
}

fn add(cell: &Cell<u32>, more: usize) {
    cell.set(cell.get() + u32::try_from(more).expect("few"));
}

/// What the one who takes this way does in the shop.
fn take_way(shop: &mut Shop, fact: &Fact, does: Does) {
    match fact {
        Fact::Off { part, pieces, of, is, wanted } => {
            let (part, of) = (part_of(*part), place(*of));
            for index in pieces {
                let piece = &mut shop.pieces[part][*index];
                match does {
                    Does::Trim(by) => {
                        assert_eq!(less(*is, *wanted), by);
                        piece.sizes[of] = Some(*wanted);
                        piece.left[of] = None;
                    }
                    Does::Shim(thick) => {
                        assert_eq!(less(*wanted, *is), thick);
                        assert!(thick.is_positive());
                        piece.left[of] = Some(less(*is, *wanted));
                    }
                    Does::Leave => piece.left[of] = Some(less(*is, *wanted)),
                    Does::CutAgain | Does::CutAgainFromRack => *piece = Remembered::default(),
                    Does::GiveWay(size, to) => shop.planned[size.0 as usize - 1] = to,
                    other => panic!("{other:?}"),
                }
            }
        }
        Fact::NotRecorded { part, pieces } => {
            let wanted = shop.wanted(part_of(*part));
            for index in pieces {
                let piece = &mut shop.pieces[part_of(*part)][*index];
                match does {
                    Does::CutAgain => *piece = Remembered::default(),
                    Does::TakePlan => {
                        for (size, wanted) in piece.sizes.iter_mut().zip(wanted) {
                            *size = size.or(Some(wanted));
                        }
                    }
                    other => panic!("{other:?}"),
                }
            }
        }
        Fact::SizeOff { is, wanted, .. } => match does {
            Does::Trim(by) => {
                assert_eq!(less(*is, *wanted), by);
                (shop.rail, shop.rail_left) = (Some(*wanted), None);
            }
            Does::CutAgain => (shop.rail, shop.rail_left) = (None, None),
            Does::GiveWay(size, to) => shop.planned[size.0 as usize - 1] = to,
            Does::Leave => shop.rail_left = Some(less(*is, *wanted)),
            other => panic!("{other:?}"),
        },
        Fact::Apart(it) => match does {
            Does::ToSmallest => {
                let least = shop.in_use(1).min(shop.in_use(2));
                for at in [1, 2] {
                    let is_over = less(shop.in_use(at), least) > sixty_fourths(DRIFT);
                    match &mut shop.as_cut[at] {
                        _ if !is_over => {}
                        Some(cut) => *cut = least,
                        None => shop.planned[at] = least,
                    }
                }
            }
            Does::Leave => shop.apart_left = Some(it.apart),
            other => panic!("{other:?}"),
        },
        Fact::NotWanted { part, pieces } => {
            let part = part_of(*part);
            let took: Vec<Remembered> =
                pieces.iter().map(|at| core::mem::take(&mut shop.pieces[part][*at])).collect();
            let count = shop.counts[part];
            match does {
                Does::ToRack | Does::Scrap => {}
                Does::TakePlace => {
                    for piece in took {
                        let free = shop.pieces[part][..count].iter_mut().find(|it| !it.is_cut);
                        *free.expect("one that is to be cut") = piece;
                    }
                }
                Does::WantAgain => {
                    for (piece, at) in took.into_iter().zip(count..) {
                        shop.pieces[part][at] = piece;
                        shop.counts[part] += 1;
                    }
                }
                other => panic!("{other:?}"),
            }
        }
        other => panic!("{other:?}"),
    }
}

/// One act in the shop and in the job. `None` where there is nothing to do.
fn act_on(shop: &mut Shop, job: &Job, reckoned: &Reckoned, act: &Act, seen: &Seen) -> Option<Step> {
    let bench = Bench::default();
    let text = |n: i128| format!("{n}/64");
    Some(match *act {
        Act::Undo => return None,
        Act::Plan(at, n) => {
            shop.planned[at] = sixty_fourths(n);
            measure_step(job, at, |it| it.written = Written::Formula(text(n)))
        }
        Act::AsCut(at, n) => {
            shop.as_cut[at] = n.map(sixty_fourths);
            measure_step(job, at, |it| it.as_cut = n.map(text))
        }
        Act::RailCut(off) => {
            let cut = off.map(|off| sum(shop.rail_wanted(), sixty_fourths(off)));
            // Nobody cuts a rail of nothing.
            if cut.is_some_and(|cut| !cut.is_positive()) {
                return None;
            }
            shop.rail = cut;
            let text =
                |cut: Length| format!("{}/{}", cut.in_inches().numer(), cut.in_inches().denom());
            measure_step(job, RAIL, |it| it.as_cut = cut.map(text))
        }
        Act::Count(part, n) => {
            shop.counts[part] = n;
            let id = id_of_part(part);
            let Some(Item::Part(old)) = job.item(id) else { panic!("a part") };
            let new = Part { quantity: n.to_string(), ..old.clone() };
            Step::new("count", vec![job.replacing(id, Item::Part(new))])
        }
        // What is not wanted has no box to tick.
        Act::Tick(part, index) | Act::TickOfBefore(part, index) if index >= shop.counts[part] => {
            return None;
        }
        Act::Tick(part, index) => {
            let wanted = shop.wanted(part).map(Some);
            let piece = &mut shop.pieces[part][index];
            if !piece.is_cut {
                let tape = piece.sizes;
                *piece = Remembered { is_cut: true, sizes: wanted, ..Remembered::default() };
                for (size, tape) in piece.sizes.iter_mut().zip(tape) {
                    *size = tape.or(*size);
                }
            }
            let sizes = reckoned.part(id_of_part(part)).map(PartSizes::all_wanted)?;
            piece_step(job, part, index, |it| it.ticked(sizes))
        }
        Act::TickOfBefore(part, index) => {
            shop.pieces[part][index] = Remembered { is_cut: true, ..Remembered::default() };
            piece_step(job, part, index, |_| Piece::cut(Dimensions::default()))
        }
        Act::PutBack(part, index) => {
            shop.pieces[part][index] = Remembered::default();
            piece_step(job, part, index, |_| Piece::default())
        }
        Act::Tape(part, index, of, n) => {
            let piece = &mut shop.pieces[part][index];
            // What the tape says is said of a piece that is cut.
            let n = n.filter(|_| piece.is_cut)?;
            piece.sizes[of] = Some(sixty_fourths(n));
            piece_step(job, part, index, |it| it.measured(Dimension::ALL[of], Some(text(n))))
        }
        Act::TakeWay(fact, way) => {
            let facts = attention(job, reckoned, &bench).facts;
            let fact = (!facts.is_empty()).then(|| &facts[fact.index(facts.len())])?;
            let mut all = ways(job, reckoned, &bench, fact, &[]);
            all.retain(|way| way.step.is_some());
            let way = &all[way.index(all.len())];
            let step = way.step.clone()?;
            let mut trial = job.clone();
            trial.make(&step).expect("its own state");
            let after = attention(&trial, &Reckoned::of(&trial, &bench), &bench).facts;
            for index in 0..KNOWN {
                let part = fact.item().expect("the job alone brings no other facts");
                if let Some(one) = fact.of_piece(part, index) {
                    assert!(!after.contains(&one), "{fact:?} stays after {way:?}");
                    let is_left =
                        after.iter().any(|it| it.of_piece(part, index) == Some(one.clone()));
                    assert!(!is_left, "{fact:?} stays after {way:?}");
                }
            }
            let is_same = |it: &Fact| {
                matches!(
                    (it, fact),
                    (Fact::SizeOff { .. }, Fact::SizeOff { .. }) | (Fact::Apart(_), Fact::Apart(_))
                )
            };
            assert!(!after.iter().any(is_same), "{fact:?} stays after {way:?}");
            take_way(shop, fact, way.does);
            add(&seen.beyond_ways, usize::from(matches!(fact, Fact::NotWanted { .. })));
            add(&seen.ways, 1);
            step
        }
        Act::LookAgain(at) => {
            let left = attention(job, reckoned, &bench).left;
            let fact = (!left.is_empty()).then(|| &left[at.index(left.len())])?;
            match fact {
                Fact::Off { part, pieces, of, .. } => {
                    for index in pieces {
                        shop.pieces[part_of(*part)][*index].left[place(*of)] = None;
                    }
                }
                Fact::SizeOff { .. } => shop.rail_left = None,
                Fact::Apart(_) => shop.apart_left = None,
                other => panic!("{other:?}"),
            }
            looking_again(job, fact)?
        }
    })
}

/// The list against what is remembered.
fn judge(job: &Job, shop: &Shop, seen: &Seen) -> Result<(), TestCaseError> {
    let bench = Bench::default();
    let reckoned = Reckoned::of(job, &bench);
    let found = attention(job, &reckoned, &bench);
    let (mut off, mut unknown) = (BTreeSet::new(), BTreeSet::new());
    let mut beyond = BTreeSet::new();
    let (mut rail, mut apart) = (None, None);
    let all =
        found.facts.iter().map(|it| (it, false)).chain(found.left.iter().map(|it| (it, true)));
    for (fact, is_left) in all {
        match fact {
            Fact::Off { part, pieces, of, is, wanted } => {
                for index in pieces {
                    let piece = &shop.pieces[part_of(*part)][*index];
                    prop_assert_eq!(piece.sizes[place(*of)], Some(*is));
                    prop_assert_eq!(shop.wanted(part_of(*part))[place(*of)], *wanted);
                    let is_new = off.insert((part_of(*part), *index, place(*of), is_left));
                    prop_assert!(is_new, "told twice: {:?}", fact);
                }
            }
            Fact::NotRecorded { part, pieces } => {
                unknown.extend(pieces.iter().map(|index| (part_of(*part), *index)));
            }
            Fact::SizeOff { size, is, wanted } => {
                prop_assert_eq!((*size, rail), (RAIL_ID, None));
                rail = Some((*is, *wanted, is_left));
            }
            Fact::Apart(it) => {
                prop_assert_eq!((it.group, apart), (GROUP_ID, None));
                apart = Some((it.apart, is_left));
            }
            Fact::NotWanted { part, pieces } => {
                beyond.extend(pieces.iter().map(|index| (part_of(*part), *index)));
            }
            other => prop_assert!(false, "{:?}", other),
        }
    }
    let (expected, [expected_unknown, expected_beyond]) = shop.expected();
    add(&seen.off, expected.len());
    add(&seen.left, expected.iter().filter(|(.., is_left)| *is_left).count());
    prop_assert_eq!(off, expected);
    prop_assert_eq!(unknown, expected_unknown);
    prop_assert_eq!(beyond, expected_beyond);
    prop_assert_eq!(rail, shop.rail_off());
    prop_assert_eq!(apart, shop.too_far_apart());
    add(&seen.beyond, shop.expected().1[1].len());
    add(&seen.rail, usize::from(rail.is_some()));
    add(&seen.apart, usize::from(apart.is_some()));
    planned_again(job, &reckoned, shop, seen)
}

/// What is wanted of a plan that buys nothing; `None` where something is in the way.
pub(crate) fn from_the_rack(job: &Job, reckoned: &Reckoned) -> Option<Wanted> {
    let bench = Bench::default();
    let entries = Entries::from_pairs([("rack_only", "yes")]);
    let options = options(&mut Ask::new(OPTIONS.fields, &entries, &bench, reckoned));
    from_job_book(job, reckoned, &bench, &options.expect("the form as it starts")).ok()
}

/// What is cut is not planned again, and all else is.
fn planned_again(
    job: &Job,
    reckoned: &Reckoned,
    shop: &Shop,
    seen: &Seen,
) -> Result<(), TestCaseError> {
    let Some(wanted) = from_the_rack(job, reckoned) else { return Ok(()) };
    for part in 0..PARTS.len() {
        let count = shop.counts[part];
        let cut = shop.pieces[part][..count].iter().filter(|piece| piece.is_cut).count();
        let id = id_of_part(part);
        let at = wanted.labels.parts.iter().position(|label| label.item == Some(id));
        let planned = at.map_or(0, |at| wanted.pieces[at]) as usize;
        prop_assert_eq!(planned, count - cut);
        add(&seen.planned, cut);
    }
    Ok(())
}

#[test]
fn the_list_holds_exactly_what_is_off_and_a_way_out_ends_its_entry() {
    let seen = Seen::default();
    let cases = 300;
    let config = ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(cases) };
    let mut runner = TestRunner::new(config);
    let walk = runner.run(&prop::collection::vec(act(), 1..40), |acts| {
        let (mut job, mut shop) = begin();
        let mut history = History::default();
        let mut before: Vec<Shop> = Vec::new();
        // Pages that are opened work the job out from what stood before.
        let mut page = Reckoned::of(&job, &Bench::default());
        for act in &acts {
            let was = shop.clone();
            if matches!(act, Act::Undo) {
                if history.undo(&mut job).expect("nobody else is here") {
                    shop = before.pop().expect("a step made");
                }
            } else if let Some(step) = act_on(&mut shop, &job, &page, act, &seen) {
                let made = history.made().count();
                history.make(&mut job, step).expect("the latest state");
                if history.made().count() > made {
                    before.push(was);
                }
            }
            page = page.after(&job, &Bench::default());
            judge(&job, &shop, &seen)?;
        }
        Ok(())
    });
    walk.unwrap_or_else(|failure| panic!("{failure}"));
    let Seen { off, ways, left, planned, beyond, beyond_ways, rail, apart } = &seen;
    let all = [off, ways, left, planned, beyond, rail, apart];
    let counts = all.map(Cell::get);
    assert!(counts.iter().all(|count| *count > cases / 3), "judged too seldom: {counts:?}");
    assert!(beyond_ways.get() > 9, "ways for too many: {}", beyond_ways.get());
    println!(
        "off, ways taken, left, cut and not planned again, too many, rails off, apart: {counts:?}"
    );
}
