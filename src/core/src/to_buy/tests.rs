//! What is to be bought, by numbers worked out by hand.

use super::{InTheWay, Line, Money, to_buy};
use crate::cutting::{Backing, CutBoard, Layer, Layout, Placed, Plan, Source, Strip};
use crate::job::make_parts::make_parts;
use crate::job::tests::{inches, job_of};
use crate::job::{CutPlan, Item, ItemId, Job, Kept, Part, Piece, Reckoned, Screw, Step, YardBoard};
use crate::measure::text::NoNames;
use crate::measure::{Tape, Unit};
use crate::planning::quick_list::{QUICK_LIST, quick_list};
use crate::planning::wanted::{OPTIONS, from_job_book, options, start_entries};
use crate::sheet::{Ask, Bench, Entries};

fn add(job: &mut Job, item: Item) -> ItemId {
    let change = job.adding(0, item);
    let id = change.id;
    job.make(&Step::new("add", vec![change])).expect("fresh");
    id
}

fn keep(job: &mut Job, slug: &str, title: &str, entries: &[(&str, &str)]) -> ItemId {
    let text = |(id, text): &(&str, &str)| ((*id).to_owned(), (*text).to_owned());
    let entries = entries.iter().map(text).collect();
    let (slug, title) = (slug.to_owned(), title.to_owned());
    add(job, Item::Kept(Kept { rank: 0, title, slug, entries, left: Vec::new() }))
}

/// Two rails of 30 1/4 out of a 2x4 of 96 at 10.90.
pub(crate) fn rails() -> Job {
    let mut job = job_of(&[]);
    let part = Part::new("rail", "2", ["1 1/2", "3 1/2", "30 1/4"]);
    add(&mut job, Item::Part(Part { stock: "2x4".to_owned(), ..part }));
    let yard = YardBoard::new("2x4", ["1 1/2", "3 1/2", "96"], 1090);
    add(&mut job, Item::YardBoard(yard));
    job
}

/// The same with its plan: both rails one after the other, 1/2 off the end, a kerf of 1/8: 1/2 and 30 1/4 and 1/8 are 247/8.
pub(crate) fn planned() -> Job {
    with_plan(rails(), &[(1, 2), (247, 8)], 1090)
}

/// The job with a plan of one board, the first of its yard, in which pieces of its first part begin so many inches from
/// the end.
fn with_plan(mut job: Job, places: &[(i128, i128)], cost_cents: i64) -> Job {
    let bench = Bench::default();
    let reckoned = Reckoned::of(&job, &bench);
    let entries = start_entries(&job);
    let options = options(&mut Ask::new(OPTIONS.fields, &entries, &bench, &reckoned));
    let wanted = from_job_book(&job, &reckoned, &bench, &options.expect("its own start"));
    let wanted = wanted.expect("a job to plan");
    let unit = |numer, denom| wanted.labels.unit.units(numer, denom).expect("whole");
    let place =
        |(numer, denom): &(i128, i128)| Placed { part: 0, at: unit(*numer, *denom), turned: false };
    let layout = Layout::Crosscut(places.iter().map(place).collect());
    let plan = Plan {
        boards: vec![CutBoard { source: Source::Board(0), layout }],
        left_out: Vec::new(),
        cost_cents,
    };
    let kept = CutPlan {
        title: "by hand".to_owned(),
        is_list: false,
        entries: Vec::new(),
        asked: wanted.job,
        labels: wanted.labels,
        pieces: wanted.pieces,
        plan,
        bound_cents: cost_cents,
        backing: Some(Backing { is_proved: true, is_checked: true, ..Backing::default() }),
        paid_cents: 0,
    };
    job.make(&job.keeping_plan(kept)).expect("fresh");
    job
}

/// One board at 10.90 is bought; then a plan is taken that buys one more, which is bought too, and then a third.
#[test]
fn what_is_paid_stays_paid_when_another_plan_is_taken() {
    let mut job = planned();
    let again = |job: &Job| {
        let (kept, _) = job.cut_plan(job.plan_in_use().expect("a plan")).expect("the same");
        kept.clone()
    };
    let mut spent = Vec::new();
    for _ in 0..3 {
        let step = line(&list(&job), "2x4").ticking(&job).expect("a board to buy");
        job.make(&step).expect("nobody else is here");
        let next = job.keeping_plan(again(&job));
        job.make(&next).expect("nobody else is here");
        let money = list(&job).money;
        assert_eq!((money.before, money.to_come), (money.spent, 1_090));
        spent.push(money.spent);
    }
    assert_eq!(spent, [1_090, 2_180, 3_270]);
}

/// A quick list with widths, kept as a job: the board is told with its width, and what it is for by the names in the list.
#[test]
fn boards_of_a_list_have_their_width_and_what_they_are_for() {
    let texts = [
        ("parts", "slat: 2 @ 30 wide 1 3/4"),
        ("boards", "96 wide 5 1/2 at 10.90"),
        ("scraps", ""),
    ];
    let (entries, bench) = (Entries::from_pairs(texts), Bench::default());
    let mut ask = Ask::new(QUICK_LIST.fields, &entries, &bench, &NoNames);
    let wanted = quick_list(&mut ask).expect("a list");
    let parts = [0, 300].map(|at| Placed { part: 0, at, turned: false }).to_vec();
    let strip = Strip { at: 0, width: 14, layers: vec![Layer { at: 0, thickness: 1, parts }] };
    let layout = Layout::RipFirst(vec![strip]);
    let plan = Plan {
        boards: vec![CutBoard { source: Source::Board(0), layout }],
        left_out: Vec::new(),
        cost_cents: 1_090,
    };
    let mut job = Job::new("Cut list", Unit::Inch);
    let kept = CutPlan {
        title: "Boards".to_owned(),
        is_list: true,
        entries: Vec::new(),
        asked: wanted.job,
        labels: wanted.labels,
        pieces: wanted.pieces,
        plan,
        bound_cents: 1_090,
        backing: None,
        paid_cents: 0,
    };
    job.make(&job.keeping_plan(kept)).expect("fresh");
    let all = list(&job);
    let [board] = all.lines.as_slice() else { panic!("one line") };
    assert_eq!(
        (board.thickness, board.width, board.length),
        (None, Some(inches("5 1/2")), Some(inches("96")))
    );
    assert_eq!(
        (board.what().to_string(), board.uses()),
        ("5 1/2 in board, 96 in long".to_owned(), "for slat".to_owned())
    );
}

fn list(job: &Job) -> super::ToBuy {
    let bench = Bench::default();
    to_buy(job, &Reckoned::of(job, &bench), &bench)
}

fn line<'a>(list: &'a super::ToBuy, name: &str) -> &'a Line {
    list.lines.iter().find(|line| line.name == name).expect("this line")
}

/// By hand: 6 planks × 3 rails × 2 = 36, one in ten more is 40 (case F7 of the screws), 12 on hand, so
/// 28 to buy. 6 planks of 50 × 5 1/2 × 1 1/2 have 4299 sq in, 29.85 sq ft; at 200 to the gallon and a
/// tenth more, 0.164 gallon: one quart. Boards 10.90 and the quart 18.50 are 29.40.
#[test]
fn boards_screws_rod_and_finish_are_one_list() {
    let mut job = planned();
    let buy = [("question", "buy"), ("planks", "6"), ("rails", "3"), ("per_crossing", "2")];
    keep(&mut job, "screws", "planks down", &buy);
    let frames = [("overall", "38"), ("left_part", "1 1/2"), ("trim", "1/4"), ("dowel", "1")];
    keep(&mut job, "dowel", "hand tools", &frames);
    let planks = [("parts", "6 @ 50 × 5 1/2 × 1 1/2"), ("coats", "1"), ("quart_price", "18.50")];
    keep(&mut job, "finish", "oil", &planks);
    add(&mut job, Item::Screw(Screw { gauge: 8, length: "2 1/2".to_owned(), quantity: 12 }));
    let all = list(&job);
    assert_eq!(all.in_the_way, []);
    let names: Vec<&str> = all.lines.iter().map(|line| line.name.as_str()).collect();
    assert_eq!(names, ["2x4", "No. 8 screws", "dowel rod", "quart of finish"]);
    let screws = line(&all, "No. 8 screws");
    assert_eq!((screws.wanted, screws.spares, screws.on_hand, screws.to_come()), (40, 4, 12, 28));
    assert_eq!(screws.length, Some(inches("2 1/2")));
    assert_eq!(screws.uses, ["planks down"]);
    // Outside to outside 38, and a trim of 1/4 at each end.
    let rod = line(&all, "dowel rod");
    assert_eq!((rod.wanted, rod.length), (1, Some(inches("38 1/2"))));
    let board = line(&all, "2x4");
    assert_eq!((board.wanted, board.bought, board.each), (1, 0, Some(1090)));
    assert_eq!(board.uses, ["rail"]);
    assert_eq!(board.uses(), "for rail");
    let more = [board.uses.clone(), vec!["leg, front".to_owned()]].concat();
    assert_eq!(Line { uses: more, ..board.clone() }.uses(), "for rail; leg, front");
    assert_eq!(all.money, Money { spent: 0, before: 0, to_come: 2_940, without_price: 2 });

    // The text that is sent, written by hand: one line each, the sums, and a tick that is drawn.
    let sent = |all: &super::ToBuy, job: &Job| all.as_text(job, Tape::SIXTEENTHS);
    let title = format!("To buy for {}", job.title);
    let by_hand = [
        title.as_str(),
        "[ ] 2x4, 96 in long: 1 to buy, 10.90, for rail",
        "[ ] No. 8 screws, 2 1/2 in long: 40 wanted, 4 of them spare, 12 that I have, 28 to buy, no price, for planks down",
        "[ ] dowel rod, 1 in thick, 38 1/2 in long: 1 to buy, no price, for hand tools",
        "[ ] quart of finish: 1 to buy, 18.50, for oil",
        "Still to spend 29.40, spent 0.00. 2 lines have no price and are not in it.",
        "12 examples in planks down, hand tools, oil. 7 examples in the plan.",
        "No cheaper way with these boards, prices and cuts. The proof was worked out again by a second check.",
    ];
    assert_eq!(sent(&all, &job), by_hand.join("\n"));

    // Bought: the boards, and the screws; then one plank more.
    for name in ["2x4", "No. 8 screws"] {
        let step = line(&list(&job), name).ticking(&job).expect("something to buy");
        job.make(&step).expect("nobody else is here");
    }
    let after = list(&job);
    assert_eq!(after.money, Money { spent: 1_090, before: 0, to_come: 1_850, without_price: 2 });
    assert!(line(&after, "No. 8 screws").is_done());
    let text = sent(&after, &job);
    let lines: Vec<&str> = text.lines().collect();
    assert_eq!(lines[1], "[x] 2x4, 96 in long: 1 bought, 10.90, for rail");
    assert_eq!(
        lines[5],
        "Still to spend 18.50, spent 10.90. 2 lines have no price and are not in it."
    );
    // 7 planks: 42 screws and a tenth more, 46.2, are 47; 12 on hand, 28 bought.
    let (id, kept) = job.kept()[0];
    let mut more = kept.clone();
    more.entries[1].1 = "7".to_owned();
    job.make(&Step::new("more", vec![job.replacing(id, Item::Kept(more))])).expect("no conflict");
    assert_eq!(line(&list(&job), "No. 8 screws").to_come(), 7);
    // The tick is taken back.
    let step = line(&list(&job), "2x4").ticking(&job).expect("a board on the rack");
    job.make(&step).expect("nobody else is here");
    assert_eq!(line(&list(&job), "2x4").bought, 0);
    let rack = job.items().filter(|(_, item)| matches!(item, Item::RackBoard(_))).count();
    assert_eq!(rack, 0, "and the board is off the rack");
}

#[test]
fn what_is_missing_says_so() {
    // Pieces to cut, and no plan.
    assert_eq!(list(&rails()).in_the_way, [InTheWay::NoPlan]);
    // Nothing at all.
    let nothing = list(&job_of(&[]));
    assert_eq!((nothing.lines.len(), nothing.in_the_way.len()), (0, 0));
    // The part changed since the plan was made.
    let mut job = planned();
    let Some(Item::Part(part)) = job.item(ItemId(1)).cloned() else { panic!() };
    let longer = Part { length: "31".to_owned(), ..part };
    let step = Step::new("longer", vec![job.replacing(ItemId(1), Item::Part(longer))]);
    job.make(&step).expect("no conflict");
    assert!(matches!(list(&job).in_the_way[..], [InTheWay::Plan(_)]));
    // Two reckonings: one without an answer, one that says which screw and not how many.
    let mut job = job_of(&[]);
    let bad = keep(&mut job, "dowel", "rod", &[("overall", "gone + 1")]);
    let length = keep(&mut job, "screws", "which", &[("question", "length")]);
    let found = list(&job).in_the_way;
    assert!(
        matches!(&found[..], [InTheWay::Refused(one, _), InTheWay::NotCounted(two, ..)]
        if (*one, *two) == (bad, length)),
        "{found:?}"
    );
    // Counted by another reckoning: nothing is missing.
    let Some(InTheWay::NotCounted(_, _, Some(long))) = found.last() else { panic!() };
    let long = long.to_string();
    keep(&mut job, "screws", "how many", &[("question", "buy"), ("screw_length", &long)]);
    assert_eq!(list(&job).in_the_way.len(), 1);
}

#[test]
fn a_rod_that_is_a_part_is_bought_with_the_boards() {
    let mut job = job_of(&[]);
    keep(&mut job, "dowel", "rod", &[("overall", "38"), ("trim", "1/4"), ("dowel", "0.985")]);
    assert_eq!(list(&job).lines.len(), 1);
    let part = Part::new("rod", "1", ["1", "1", "38 1/2"]);
    let part = Part { pieces: vec![Piece::cut(Default::default())], ..part };
    add(&mut job, Item::Part(part));
    assert_eq!(list(&job).lines.len(), 0);
}

/// By hand: outside to outside 38 and twice 1/4 are 38 1/2, in one rod of 48; measured as 0.985, it is called 1 in.
#[test]
fn a_dowel_that_is_put_into_the_job_is_planned_and_bought_as_its_rod() {
    let mut job = job_of(&[]);
    let sizes = [("overall", "38"), ("left_part", "1 1/2"), ("trim", "1/4"), ("dowel", "0.985")];
    let id = keep(&mut job, "dowel", "tools", &sizes);
    add(&mut job, Item::YardBoard(YardBoard::new("1 in dowel", ["1", "1", "48"], 385)));
    let told = |job: &Job| {
        let all = list(job);
        let line = |it: &Line| (it.name.clone(), it.length, it.wanted, it.each, it.uses.clone());
        (all.lines.iter().map(line).collect::<Vec<_>>(), all.in_the_way)
    };
    let line = |name: &str, length: &str, each, of: &str| {
        (name.to_owned(), Some(inches(length)), 1, each, vec![of.to_owned()])
    };
    let as_goods = (vec![line("dowel rod", "38 1/2", None, "tools")], Vec::new());
    assert_eq!(told(&job), as_goods);
    let bench = Bench::default();
    let making = make_parts(&job, &Reckoned::of(&job, &bench), &bench, id).expect("a dowel");
    let step = making.step.expect("it is not there yet");
    job.make(&step).expect("nobody else is here");
    // Its boards have no plan yet, and the list says so.
    assert_eq!(told(&job), (Vec::new(), vec![InTheWay::NoPlan]));
    let planned = with_plan(job.clone(), &[(1, 2)], 385);
    assert_eq!(
        told(&planned),
        (vec![line("1 in dowel", "48", Some(385), "tools: dowel")], Vec::new())
    );
    // Taken back, it is a rod beside the boards again.
    job.make(&step.turned_round()).expect("nobody else is here");
    assert_eq!(told(&job), as_goods);
}
