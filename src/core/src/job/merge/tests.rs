//! Steps that meet in the middle: two windows at the rack, two new sizes, the words of a conflict.

use crate::cutting::scale::CommonUnit;
use crate::cutting::{self, SawRules};
use crate::job::cut_labels::{Labels, Money};
use crate::job::tests::{job_of, measure};
use crate::job::{
    BoardState, Change, CutPlan, CutTicks, Dimensions, History, Item, ItemId, Job, Kept, Part,
    Piece, RackBoard, Step, Written,
};

/// A part, a stack of three boards, and a board to buy: what a cut takes from.
fn at_the_rack() -> (Job, ItemId, ItemId) {
    let mut job = job_of(&[]);
    let part = Part { name: "slat".to_owned(), quantity: "6".to_owned(), ..Part::default() };
    let board = RackBoard { name: "plank".to_owned(), quantity: 3, ..RackBoard::default() };
    let ids = [Item::Part(part), Item::RackBoard(board)].map(|item| {
        let change = job.adding(0, item);
        let id = change.id;
        job.make(&Step::new("begin", vec![change])).expect("fresh");
        id
    });
    (job, ids[0], ids[1])
}

/// The step of a board cut as the planner's pages make it: one board off the stack, two pieces
/// done, an offcut on the rack, the tick.
fn cut(job: &Job, (part, stack): (ItemId, ItemId), board: usize) -> Step {
    let plan = ItemId(90);
    let Some(Item::Part(mut done)) = job.item(part).cloned() else { panic!() };
    for _ in 0..2 {
        done = done.with_next_cut(Piece::cut(Dimensions::default()));
    }
    let Some(Item::RackBoard(left)) = job.item(stack).cloned() else { panic!() };
    let left = (left.quantity > 1)
        .then(|| Item::RackBoard(RackBoard { quantity: left.quantity - 1, ..left }));
    let ticks = job.ticks_of(plan).map(|(id, ticks)| (id, ticks.boards.clone()));
    let mut boards = ticks.clone().map_or(vec![BoardState::ToCut; 3], |(_, boards)| boards);
    boards[board] = BoardState::Cut;
    let offcut = RackBoard { name: "offcut".to_owned(), quantity: 1, ..RackBoard::default() };
    let ticked = Item::CutTicks(CutTicks { plan, boards });
    let changes = vec![
        job.replacing(part, Item::Part(done)),
        Change { id: stack, before: job.item(stack).cloned(), after: left },
        job.adding(0, Item::RackBoard(offcut)),
        match ticks {
            Some((id, _)) => job.replacing(id, ticked),
            None => job.adding(1, ticked),
        },
    ];
    Step::new("board cut", changes)
}

fn boards_left(job: &Job, stack: ItemId) -> u32 {
    match job.item(stack) {
        Some(Item::RackBoard(board)) => board.quantity,
        _ => 0,
    }
}

fn done(job: &Job, part: ItemId) -> usize {
    let Some(Item::Part(part)) = job.item(part) else { panic!() };
    part.pieces.iter().filter(|piece| piece.is_cut()).count()
}

fn offcuts(job: &Job) -> usize {
    job.items().filter(|(_, item)| item.name() == "offcut").count()
}

/// By hand: three boards, two pieces each. Two windows that show the same state cut one board
/// each: one board is left, four pieces are done, two offcuts lie there, and both ticks stand.
#[test]
fn two_windows_that_cut_a_board_each_take_two_off_the_rack() {
    let (mut job, part, stack) = at_the_rack();
    let begun = job.clone();
    let page = job.clone();
    let mut history = History::default();
    for board in [0, 1] {
        history.make(&mut job, cut(&page, (part, stack), board)).expect("merged");
    }
    assert_eq!((boards_left(&job, stack), done(&job, part), offcuts(&job)), (1, 4, 2));
    let (_, ticks) = job.ticks_of(ItemId(90)).expect("ticked");
    assert_eq!(ticks.boards, [BoardState::Cut, BoardState::Cut, BoardState::ToCut]);
    assert_eq!(job.items().filter(|(_, item)| matches!(item, Item::CutTicks(_))).count(), 1);
    // The third window still shows three boards; the last one leaves the rack with its cut.
    history.make(&mut job, cut(&page, (part, stack), 2)).expect("merged");
    assert_eq!((boards_left(&job, stack), done(&job, part)), (0, 6));
    assert_eq!(job.item(stack), None);
    while history.undo(&mut job).expect("nobody else is here") {}
    assert!(job.items().eq(begun.items()));
}

/// The same step twice, as after a reload in the middle, is done once; the same board cut from two
/// different states is in question, since its pieces would be counted twice.
#[test]
fn a_board_is_cut_once() {
    let (mut job, part, stack) = at_the_rack();
    let page = job.clone();
    let mut history = History::default();
    let step = cut(&page, (part, stack), 0);
    history.make(&mut job, step.clone()).expect("fresh");
    history.make(&mut job, step).expect("nothing to do");
    assert_eq!((boards_left(&job, stack), done(&job, part)), (2, 2));
    assert_eq!(history.made().count(), 1);
    history.make(&mut job, cut(&page, (part, stack), 1)).expect("merged");
    let again = history.make(&mut job, cut(&page, (part, stack), 0)).expect_err("cut already");
    assert_eq!(
        again.to_string(),
        "Changed elsewhere in the meantime: boards cut (board 1). Look at it, then change it again."
    );
    assert_eq!((boards_left(&job, stack), done(&job, part)), (1, 4));
}

/// Three boards on the rack, four windows.
#[test]
fn more_cannot_be_cut_than_there_are_boards() {
    let (mut job, part, stack) = at_the_rack();
    let page = job.clone();
    let mut history = History::default();
    let edit = |item: Option<&Item>| {
        let Some(Item::RackBoard(board)) = item.cloned() else { panic!() };
        Item::RackBoard(RackBoard { quantity: 1, ..board })
    };
    let fewer = job.replacing(stack, edit(job.item(stack)));
    history.make(&mut job, Step::new("count them", vec![fewer])).expect("fresh");
    history.make(&mut job, cut(&page, (part, stack), 0)).expect("the last one");
    let conflict = history.make(&mut job, cut(&page, (part, stack), 1)).expect_err("none left");
    assert_eq!(
        (conflict.items[0].id, &*conflict.items[0].what),
        (stack, &["taken out".to_owned()][..])
    );
}

/// Two windows put something new in: both are there, and a link made with it follows.
#[test]
fn what_two_windows_put_in_is_two_things() {
    let mut job = job_of(&[("leg", "3")]);
    let page = job.clone();
    let kept = |title: &str| {
        let (slug, entries) = ("tape".to_owned(), Vec::new());
        Item::Kept(Kept { rank: 0, title: title.to_owned(), slug, entries, left: Vec::new() })
    };
    let half = |kept: ItemId| {
        let linked = crate::job::Linked { kept, result: "read".to_owned(), index: 0 };
        let written = Written::Linked(linked);
        Item::Measure(crate::job::Measure { written, ..measure(1, "half", "") })
    };
    let mut history = History::default();
    for title in ["mine", "theirs"] {
        let first = page.adding(0, kept(title));
        let linked = page.adding(1, half(first.id));
        history.make(&mut job, Step::new("keep", vec![first, linked])).expect("merged");
    }
    let links: Vec<_> = job
        .measures()
        .into_iter()
        .filter_map(|(_, measure)| match &measure.written {
            Written::Linked(linked) => job.item(linked.kept).map(Item::name),
            Written::Formula(_) => None,
        })
        .collect();
    assert_eq!(links, ["mine", "theirs"]);
}

#[test]
fn a_conflict_names_the_item_and_the_field_in_the_words_of_its_form() {
    let mut job = job_of(&[("leg", "3")]);
    let entries = vec![("strip".to_owned(), "5".to_owned())];
    let kept = Kept {
        rank: 0,
        title: "shelf".to_owned(),
        slug: "tape".to_owned(),
        entries,
        left: Vec::new(),
    };
    job.make(&Step::new("keep", vec![job.adding(0, Item::Kept(kept))])).expect("fresh");
    let page = job.clone();
    let step = |size: &str, entry: &str| {
        let sized = Item::Measure(measure(0, "leg", size));
        let Some(Item::Kept(mut kept)) = page.item(ItemId(2)).cloned() else { panic!() };
        kept.entries[0].1 = entry.to_owned();
        let changes =
            vec![page.replacing(ItemId(1), sized), page.replacing(ItemId(2), Item::Kept(kept))];
        let title = Some((page.title.clone(), format!("bench {size}")));
        Step { title, ..Step::new("edit", changes) }
    };
    job.make(&step("4", "6")).expect("the first");
    let conflict = job.rebased(&step("5", "7")).expect_err("all of it");
    assert_eq!(
        conflict.to_string(),
        "Changed elsewhere in the meantime: the title, leg (planned), shelf (work it out). \
         Look at it, then change it again."
    );
    let out = Step::new("take out", vec![page.removing(ItemId(1))]);
    assert_eq!(
        job.rebased(&out).expect_err("changed").to_string(),
        "Changed elsewhere in the meantime: leg. Look at it, then change it again."
    );
}

/// A plan made anew or thrown away while another window ticks its first board: the new plan would
/// have the old one's ticks.
#[test]
fn a_plan_with_boards_cut_is_not_replaced_unseen() {
    let saw = SawRules { kerf: 1, rip: None };
    let (sections, parts, boards, scraps) = Default::default();
    let labels = Labels {
        unit: CommonUnit::of(&[(1, 8)]).expect("eighths"),
        sections: Vec::new(),
        parts: Vec::new(),
        boards: Vec::new(),
        scraps: Vec::new(),
        money: Money::Cents,
    };
    let plan = CutPlan {
        title: "plan".to_owned(),
        is_list: false,
        entries: Vec::new(),
        asked: cutting::Job { sections, parts, boards, scraps, saw },
        labels,
        pieces: Vec::new(),
        plan: cutting::Plan::default(),
        bound_cents: 0,
        backing: None,
        paid_cents: 0,
    };
    let mut job = job_of(&[]);
    let mut history = History::default();
    let keep = job.keeping_plan(plan.clone());
    history.make(&mut job, keep).expect("fresh");
    let id = job.find_cut_plan(false).expect("kept");
    let page = job.clone();
    let ticks = CutTicks { plan: id, boards: vec![BoardState::Cut] };
    history
        .make(&mut job, Step::new("tick", vec![page.adding(0, Item::CutTicks(ticks))]))
        .expect("fresh");
    let anew = CutPlan { title: "plan again".to_owned(), ..plan };
    for step in [page.keeping_plan(anew.clone()), page.dropping_plan(id)] {
        let conflict = history.make(&mut job, step).expect_err("a board is cut");
        assert_eq!(
            conflict.to_string(),
            "Changed elsewhere in the meantime: boards cut. Look at it, then change it again."
        );
    }
    let keep = job.keeping_plan(anew);
    history.make(&mut job, keep).expect("who knows of the ticks may");
    assert!(job.ticks_of(id).is_none());
}
