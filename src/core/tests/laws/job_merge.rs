//! Job book: two pages edit one job, each from what it showed last. What only one side changed is
//! never lost, and what both changed to different things is refused by item and by field.

use std::cell::Cell;
use std::collections::{BTreeMap, BTreeSet};

use proptest::prelude::*;
use proptest::test_runner::TestRunner;
use reckoner_core::job::{
    BoardState, Conflict, CutTicks, Dimension, Dimensions, History, Item, ItemId, Job, Kept, Match,
    Measure, MeasureKind, Part, Piece, RackBoard, Screw, Step, Ticked, Written,
};
use reckoner_core::measure::{Unit, length};

fn measure(name: &str, size: &str) -> Item {
    Item::Measure(Measure::new(name, MeasureKind::Length, Written::Formula(size.to_owned())))
}

/// Few items, so that the pages meet often.
fn job() -> Job {
    let mut job = Job::new("potting bench (invented)", Unit::Inch);
    let text = str::to_owned;
    let kept = |id: &str, said: &str| (text(id), text(said));
    let items = [
        measure("leg", "3 1/4"),
        measure("rail", "1 1/2"),
        Item::Part(Part { name: text("slat"), quantity: text("6"), ..Part::default() }),
        Item::Kept(Kept {
            rank: 0,
            title: text("frame"),
            slug: text("frame"),
            entries: vec![kept("width", "40"), kept("height", "leg")],
            left: Vec::new(),
        }),
        Item::Match(Match {
            name: text("pair"),
            measures: vec![ItemId(1), ItemId(2)],
            drift: String::new(),
            left: None,
        }),
        Item::RackBoard(RackBoard { name: text("plank"), quantity: 3, ..RackBoard::default() }),
        Item::CutTicks(CutTicks { plan: ItemId(99), boards: vec![BoardState::ToCut; 2] }),
        Item::Screw(Screw { gauge: 8, length: text("2"), quantity: 40 }),
        Item::Ticked(Ticked::default()),
    ];
    for item in items {
        job.make(&Step::new("begin", vec![job.adding(0, item)])).expect("fresh");
    }
    job
}

/// What a thumb may do to an item, whatever it is.
#[derive(Clone, Debug)]
enum Touch {
    Text(u8, &'static str),
    Tick(u8, bool),
    Count(u8),
    TakeOut,
    Add(&'static str),
    Title(&'static str),
}

fn touch() -> impl Strategy<Value = Touch> {
    let text = || prop::sample::select(vec!["", "1", "2 × leg", "37 7/8"]);
    prop_oneof![
        8 => (0_u8..4, text()).prop_map(|(field, text)| Touch::Text(field, text)),
        5 => (0_u8..4, any::<bool>()).prop_map(|(at, yes)| Touch::Tick(at, yes)),
        3 => (1_u8..5).prop_map(Touch::Count),
        1 => Just(Touch::TakeOut),
        2 => prop::sample::select(vec!["post", "brace", "cap"]).prop_map(Touch::Add),
        1 => prop::sample::select(vec!["bench", "table"]).prop_map(Touch::Title),
    ]
}

fn step(job: &Job, at: &prop::sample::Index, touch: &Touch) -> Step {
    let ids: Vec<ItemId> = job.items().map(|(id, _)| id).collect();
    let mut item = match touch {
        Touch::Title(title) => {
            let title = Some((job.title.clone(), (*title).to_owned()));
            return Step { title, ..Step::new("title", Vec::new()) };
        }
        Touch::Add(name) => {
            let first = measure(name, "1");
            let group = Match {
                name: "of it".to_owned(),
                measures: vec![ItemId(1), job.next_id()],
                drift: String::new(),
                left: None,
            };
            let changes = vec![job.adding(0, first), job.adding(1, Item::Match(group))];
            return Step::new("add", changes);
        }
        _ if ids.is_empty() => return Step::new("nothing", Vec::new()),
        Touch::TakeOut => return Step::new("out", vec![job.removing(ids[at.index(ids.len())])]),
        _ => job.item(ids[at.index(ids.len())]).expect("in the list").clone(),
    };
    match (touch, &mut item) {
        (Touch::Text(field, text), Item::Measure(it)) => match field {
            0 => it.written = Written::Formula((*text).to_owned()),
            1 => it.as_cut = Some((*text).to_owned()),
            2 => it.note = (*text).to_owned(),
            // A name ends in no space.
            _ => it.name = format!("size {text}").trim_end().to_owned(),
        },
        (Touch::Text(field, text), Item::Part(it)) => {
            let place = [&mut it.width, &mut it.length, &mut it.stock, &mut it.show_face];
            place.into_iter().nth((*field).into()).expect("four").replace_range(.., text);
        }
        (Touch::Text(field, text), Item::Kept(it)) => {
            let id = ["width", "height", "depth", "leg"][usize::from(*field)];
            it.entries.retain(|(known, _)| known != id);
            if !text.is_empty() {
                it.entries.push((id.to_owned(), (*text).to_owned()));
            }
        }
        (Touch::Text(_, text), Item::Match(it)) => it.drift = (*text).to_owned(),
        (Touch::Text(_, text), Item::RackBoard(it)) => it.knots = (*text).to_owned(),
        (Touch::Text(_, text), Item::Screw(it)) => it.length = (*text).to_owned(),
        (Touch::Tick(_, yes), Item::Measure(it)) => {
            (it.is_cut, it.wait, it.is_ours) = (*yes, !*yes, !*yes);
        }
        (Touch::Tick(at, yes), Item::Part(it)) => {
            let at = usize::from(*at);
            it.pieces.resize(it.pieces.len().max(at + 1), Piece::default());
            let tape = yes.then(|| format!("{at}"));
            // Which sizes a tick records is the page's, so that two ticks may differ.
            let wanted = Dimensions { length: length(&it.length).ok(), ..Dimensions::default() };
            let piece = if *yes { Piece::cut(wanted) } else { Piece::default() };
            it.pieces[at] = piece.measured(Dimension::Length, tape);
        }
        (Touch::Tick(at, yes), Item::Match(it)) => {
            let id = ItemId(u64::from(*at) + 1);
            it.measures.retain(|known| *known != id);
            if *yes {
                it.measures.push(id);
            }
        }
        (Touch::Tick(at, yes), Item::CutTicks(it)) => {
            let state = if *yes { BoardState::Cut } else { BoardState::Bought(None) };
            it.boards.resize(4, BoardState::ToCut);
            it.boards[usize::from(*at)] = state;
        }
        (Touch::Tick(at, yes), Item::Ticked(it)) => {
            let what = format!("setting {at}");
            if *yes {
                it.done.insert(what, u32::from(*at))
            } else {
                it.done.remove(&what)
            };
        }
        (Touch::Count(n), Item::Ticked(it)) => {
            it.done.insert("screws".to_owned(), u32::from(*n));
        }
        (Touch::Count(n), Item::Measure(it)) => it.rank = i64::from(*n),
        (Touch::Count(n), Item::Part(it)) => it.quantity = n.to_string(),
        (Touch::Count(n), Item::RackBoard(it)) => it.quantity = u32::from(*n),
        (Touch::Count(n), Item::Screw(it)) => it.quantity = u32::from(*n),
        _ => {}
    }
    Step::new("change", vec![job.replacing(ids[at.index(ids.len())], item)])
}

/// An item as a table of what can be changed on its own, written anew here: lists by place, entries
/// by id, members as a set. What is not touched is not in it.
fn table(item: Option<&Item>) -> BTreeMap<String, String> {
    let mut all = BTreeMap::new();
    let mut set = |what: String, is: String| all.insert(what, is);
    let Some(item) = item else { return all };
    set("there".to_owned(), String::new());
    match item {
        Item::Measure(it) => {
            set("planned".into(), format!("{:?}", it.written));
            set("the tape says".into(), format!("{:?}", it.as_cut));
            for (what, is) in [("note", &it.note), ("name", &it.name)] {
                set(what.into(), is.clone());
            }
            set("cut already".into(), it.is_cut.to_string());
            set("measure it first".into(), it.wait.to_string());
            set("place in the list".into(), it.rank.to_string());
            set("our example".into(), it.is_ours.to_string());
        }
        Item::Part(it) => {
            let texts = [
                ("how many", &it.quantity),
                ("width", &it.width),
                ("length", &it.length),
                ("cut from", &it.stock),
                ("show face", &it.show_face),
            ];
            for (what, is) in texts {
                set(what.into(), is.clone());
            }
            for (at, piece) in (1..).zip(&it.pieces) {
                if piece.is_cut() {
                    let recorded = piece.recorded(Dimension::Length);
                    set(format!("piece {at}, cut already"), format!("{recorded:?}"));
                }
                if let Some(text) = piece.tape(Dimension::Length) {
                    set(format!("piece {at}, the tape says"), text.to_owned());
                }
            }
        }
        Item::Kept(it) => {
            for (id, text) in &it.entries {
                set(format!("entry {id}"), text.clone());
            }
        }
        Item::Match(it) => {
            set("may drift".into(), it.drift.clone());
            for id in &it.measures {
                set(format!("member {}", id.0), String::new());
            }
        }
        Item::RackBoard(it) => {
            set("how many".into(), it.quantity.to_string());
            set("keep clear of".into(), it.knots.clone());
        }
        Item::Screw(it) => {
            set("how many".into(), it.quantity.to_string());
            set("length".into(), it.length.clone());
        }
        Item::CutTicks(it) => {
            for (at, board) in (1..).zip(&it.boards) {
                if *board != BoardState::ToCut {
                    set(format!("board {at}"), format!("{board:?}"));
                }
            }
        }
        Item::Ticked(it) => {
            for (what, count) in &it.done {
                set(format!("ticked off: {what}"), count.to_string());
            }
        }
        other => panic!("{other:?} is not in this job"),
    }
    all
}

/// What an item must come to by its tables, or the fields in question.
fn merged(
    before: Option<&Item>,
    after: Option<&Item>,
    now: Option<&Item>,
) -> Result<BTreeMap<String, String>, BTreeSet<String>> {
    if (after.is_none() || now.is_none()) && before != now && before != after && after != now {
        return Err(BTreeSet::new());
    }
    let [before, after, now] = [before, after, now].map(table);
    let mut all = BTreeMap::new();
    let mut both = BTreeSet::new();
    for what in before.keys().chain(after.keys()).chain(now.keys()) {
        let (b, a, n) = (before.get(what), after.get(what), now.get(what));
        let is = if n == b { a } else { n };
        if n != b && b != a && a != n {
            both.insert(what.clone());
        }
        all.extend(is.map(|is| (what.clone(), is.clone())));
    }
    if both.is_empty() { Ok(all) } else { Err(both) }
}

/// What really happened in all the walks.
#[derive(Default)]
struct Seen {
    merges: Cell<u32>,
    conflicts: Cell<u32>,
    additions: Cell<u32>,
}

fn add_one(cell: &Cell<u32>) {
    cell.set(cell.get() + 1);
}

/// Makes one step on the shelf and judges what it came to.
fn judge(
    shelf: &mut Job,
    history: &mut History,
    step: &Step,
    seen: &Seen,
) -> Result<bool, TestCaseError> {
    let was = shelf.clone();
    let result = history.make(shelf, step.clone());
    if let Some((before, after)) = &step.title {
        let is_both = was.title != *before && was.title != *after && before != after;
        prop_assert_eq!(result.as_ref().is_err_and(|it: &Conflict| it.title), is_both);
        let expected = if is_both || before == after { &was.title } else { after };
        prop_assert_eq!(&shelf.title, expected);
        return Ok(result.is_ok());
    }
    let is_added = step.changes.iter().any(|change| change.before.is_none());
    if is_added {
        prop_assert_eq!(&result, &Ok(()));
        // Both are there, under ids that nothing else had, and still belong together.
        let new: Vec<_> = shelf.items().filter(|(id, _)| was.item(*id).is_none()).collect();
        if new.is_empty() {
            prop_assert!(step.changes.iter().all(|it| was.item(it.id) == it.after.as_ref()));
            return Ok(true);
        }
        prop_assert_eq!(new.len(), 2);
        prop_assert_eq!(Some(new[0].1), step.changes[0].after.as_ref());
        let Item::Match(group) = new[1].1 else { panic!("a group") };
        prop_assert_eq!(&group.measures, &[ItemId(1), new[0].0]);
        prop_assert!(new.iter().all(|(id, _)| *id >= was.next_id()));
        seen.additions.set(seen.additions.get() + u32::from(new[0].0 != step.changes[0].id));
        return Ok(true);
    }
    let Some(change) = step.changes.first() else { return Ok(true) };
    let now = was.item(change.id);
    let expected = merged(change.before.as_ref(), change.after.as_ref(), now);
    match (&result, expected) {
        (Ok(()), Ok(expected)) => {
            let is = shelf.item(change.id);
            prop_assert_eq!(table(is), expected);
            if is != now && now != change.before.as_ref() {
                add_one(&seen.merges);
            }
        }
        (Err(conflict), Err(fields)) => {
            prop_assert_eq!(&*shelf, &was);
            prop_assert_eq!(conflict.items.len(), 1);
            let clash = &conflict.items[0];
            prop_assert_eq!(clash.id, change.id);
            if !fields.is_empty() {
                // A field of a calculator has the calculator's own word.
                let is_entry = |what: &String| what.starts_with("entry");
                let named: BTreeSet<_> = clash.what.iter().cloned().collect();
                prop_assert!(
                    fields.iter().all(is_entry) || named == fields,
                    "{named:?} {fields:?}"
                );
                prop_assert_eq!(clash.what.len(), fields.len());
            }
            add_one(&seen.conflicts);
        }
        (is, must) => prop_assert!(false, "{is:?}, and by the tables {must:?}"),
    }
    for (id, item) in was.items().filter(|(id, _)| *id != change.id) {
        prop_assert_eq!(shelf.item(id), Some(item));
    }
    Ok(result.is_ok())
}

#[test]
fn what_only_one_page_changed_is_never_lost_and_what_both_did_is_refused() {
    let edit = (any::<bool>(), any::<prop::sample::Index>(), touch(), prop::bool::weighted(0.1));
    let seen = Seen::default();
    let cases = 500;
    let config = ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(cases) };
    let mut runner = TestRunner::new(config);
    let walk = runner.run(&prop::collection::vec(edit, 1..50), |edits| {
        let first = job();
        let mut shelf = first.clone();
        let mut history = History::default();
        let mut pages = [shelf.clone(), shelf.clone()];
        for (page, at, touch, looks_again) in &edits {
            let page = usize::from(*page);
            let step = step(&pages[page], at, touch);
            let is_taken = judge(&mut shelf, &mut history, &step, &seen)?;
            if is_taken && !looks_again {
                pages[page].make(&step).expect("its own state");
            } else {
                pages[page] = shelf.clone();
            }
        }
        let last: Vec<_> = shelf.items().map(|(id, item)| (id, item.clone())).collect();
        while history.undo(&mut shelf).expect("nobody else is here") {}
        prop_assert_eq!(&shelf.title, &first.title);
        prop_assert!(shelf.items().eq(first.items()));
        while history.redo(&mut shelf).expect("nobody else is here") {}
        prop_assert!(shelf.items().map(|(id, item)| (id, item.clone())).eq(last));
        Ok(())
    });
    walk.unwrap_or_else(|failure| panic!("{failure}"));
    let counts = [&seen.merges, &seen.conflicts, &seen.additions].map(Cell::get);
    assert!(counts.iter().all(|count| *count > cases / 4), "too few met: {counts:?}");
}
