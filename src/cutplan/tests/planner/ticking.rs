//! From the plan to the last board: buying, cutting, boards that come out different, and planning again from there.

use reckoner_core::attention::{Fact, attention};
use reckoner_core::cutting::{Plan, Source};
use reckoner_core::job::demo::demo;
use reckoner_core::job::{
    BoardState, CutPlan, History, Item, ItemId, Job, Measure, RackBoard, Reckoned, Step, Written,
    part_sizes,
};
use reckoner_core::measure::text::NoNames;
use reckoner_core::measure::{Length, Number};
use reckoner_core::planning::quick_list::{QUICK_LIST, quick_list};
use reckoner_core::planning::wanted::Wanted;
use reckoner_core::planning::{list_rest, since};
use reckoner_core::sheet::{Ask, Bench, Entries};

use crate::job_book::{inches, options, part, random_job, wanted, with};
use crate::support::{Dice, solve};

fn kept(wanted: &Wanted, plan: Plan, is_list: bool) -> CutPlan {
    CutPlan {
        title: "Plan".to_owned(),
        is_list,
        entries: Vec::new(),
        asked: wanted.job.clone(),
        labels: wanted.labels.clone(),
        pieces: wanted.pieces.clone(),
        bound_cents: 0,
        backing: None,
        paid_cents: 0,
        plan,
    }
}

fn planned(job: &Job) -> (Wanted, Plan) {
    let wanted = wanted(job, &options()).expect("can be planned");
    let plan = solve(&wanted.job, 100_000_000).expect("a plan").plan;
    (wanted, plan)
}

/// The demo with a plan kept in it.
fn begun() -> (Job, History, ItemId) {
    let (mut job, mut history) = (demo(), History::default());
    let (wanted, plan) = planned(&job);
    let step = job.keeping_plan(kept(&wanted, plan, false));
    history.make(&mut job, step).expect("no conflict");
    let id = job.find_cut_plan(false).expect("kept");
    (job, history, id)
}

fn done(job: &Job) -> u32 {
    let reckoned = Reckoned::of(job, &Bench::default());
    part_sizes(job, &reckoned).iter().map(|part| part.done).sum()
}

fn words(job: &Job, id: ItemId) -> Vec<String> {
    let now = wanted(job, &options()).expect("can be planned");
    since(job, id, &now).iter().map(ToString::to_string).collect()
}

/// The pieces that are cut and not what is wanted of them now: the part, what it is, what is wanted.
fn off(job: &Job) -> Vec<(String, Length, Length)> {
    let bench = Bench::default();
    let found = attention(job, &Reckoned::of(job, &bench), &bench).facts.into_iter();
    let off = found.filter_map(|fact| match fact {
        Fact::Off { part, is, wanted, .. } => Some((job.item(part)?.name().to_owned(), is, wanted)),
        Fact::NotRecorded { .. } => panic!("a board cut as drawn says its sizes"),
        _ => None,
    });
    off.collect()
}

/// A board that is cut by the drawing has what was drawn, whatever the job wants by then: with the
/// legs 1/16 in thinner both long rails want 41 1/8 in, and are 41.
#[test]
fn a_board_cut_as_drawn_records_what_was_drawn() {
    let (mut job, _, id) = begun();
    let (leg, thin) = {
        let all = job.measures();
        let (id, leg) = all.into_iter().find(|(_, it)| it.name == "leg").expect("the demo's");
        (id, Measure { as_cut: Some("3 3/16".to_owned()), ..leg.clone() })
    };
    let boards = job.cut_plan(id).expect("kept").1.len();
    let mut drawn = job.clone();
    for number in 0..boards {
        drawn.make(&drawn.cutting(id, number, inches("12")).expect("not cut")).expect("no other");
    }
    assert_eq!(off(&drawn), []);
    job.make(&Step::new("measure", vec![job.replacing(leg, Item::Measure(thin))])).expect("fresh");
    for number in 0..boards {
        job.make(&job.cutting(id, number, inches("12")).expect("not cut")).expect("no other");
    }
    let rails = ("long rail, upper".to_owned(), inches("41"), inches("41 1/8"));
    assert!(off(&job).contains(&rails), "{:?}", off(&job));
}

#[test]
fn what_is_bought_stays_bought_and_what_is_cut_stays_cut() {
    let (mut job, mut history, id) = begun();
    let begin = job.clone();
    assert_eq!(words(&job, id), Vec::<String>::new());
    let (kept, _) = job.cut_plan(id).expect("kept");
    let (boards, cost) = (kept.plan.boards.clone(), kept.plan.cost_cents);
    assert!(cost > 0);
    let step = job.buying(id, None).expect("something to buy");
    history.make(&mut job, step).expect("no conflict");
    assert_eq!(job.buying(id, None), None);
    // All of it is on the rack: planned again, nothing is to be bought.
    assert_eq!(planned(&job).1.cost_cents, 0);
    let mut pieces = 0;
    for (number, board) in boards.iter().enumerate() {
        let step = job.cutting(id, number, inches("12")).expect("not cut yet");
        history.make(&mut job, step).expect("no conflict");
        pieces += u32::try_from(board.placed().len()).expect("small");
        assert_eq!(done(&job), pieces);
        assert_eq!(job.cutting(id, number, inches("12")), None);
        if number + 1 < boards.len() {
            let (now, plan) = planned(&job);
            assert_eq!(plan.cost_cents, 0, "after board {number}");
            assert_eq!(since(&job, id, &now), []);
        }
    }
    // Nothing is left but what waits for the frame.
    assert_eq!(wanted(&job, &options()).expect_err("all cut")[0].code(), "no-parts");
    // The boards that were bought and cut are off the rack, their offcuts on it.
    let racks = job.items().filter_map(|(_, item)| match item {
        Item::RackBoard(board) => Some(board),
        _ => None,
    });
    let racks: Vec<_> = racks.collect();
    assert!(
        racks
            .iter()
            .all(|board| !board.name.contains("bought") || board.name.starts_with("offcut"))
    );
    assert!(racks.iter().any(|board| board.sawn_ends));
    for _ in 0..=boards.len() {
        assert_eq!(history.undo(&mut job), Ok(true));
    }
    let items = |job: &Job| job.items().map(|(id, item)| (id, item.clone())).collect::<Vec<_>>();
    assert_eq!(items(&job), items(&begin));
}

/// Whatever the job: once all is bought, nothing more is ever to be bought, whichever board is cut next.
#[test]
fn random_jobs_can_be_planned_again_after_every_board() {
    let (mut jobs, mut cut) = (0, 0);
    for seed in 0..400 {
        let mut dice = Dice(50_000 + seed);
        let mut job = random_job(&mut dice);
        let Ok(first) = wanted(&job, &options()) else { continue };
        let Ok(outcome) = solve(&first.job, 3_000_000) else { continue };
        jobs += 1;
        let mut left: Vec<usize> = (0..outcome.plan.boards.len()).collect();
        job.make(&job.keeping_plan(kept(&first, outcome.plan, false))).expect("fresh");
        let id = job.find_cut_plan(false).expect("kept");
        if let Some(step) = job.buying(id, None) {
            job.make(&step).expect("no conflict");
        }
        while !left.is_empty() {
            let at = usize::try_from(dice.roll(0, 99)).expect("small") % left.len();
            let number = left.swap_remove(at);
            let step = job.cutting(id, number, inches("12")).expect("not cut yet");
            job.make(&step).expect("no conflict");
            cut += 1;
            match wanted(&job, &options()) {
                Ok(now) => {
                    assert!(!left.is_empty(), "{seed}: all boards are cut, and not all parts");
                    assert_eq!(since(&job, id, &now), [], "{seed}");
                    let again = solve(&now.job, 3_000_000).expect("the boards are there");
                    // The offcuts may not be known to do it in so few steps, but the boards on the rack do.
                    assert_eq!(again.plan.cost_cents, 0, "{seed}");
                }
                Err(problems) => {
                    assert_eq!(problems[0].code(), "no-parts", "{seed}");
                    assert!(left.is_empty(), "{seed}");
                }
            }
        }
    }
    assert!(jobs > 100 && cut > 150, "{jobs} jobs, {cut} boards");
}

/// How much wood pieces of a size are, in cubic inches.
fn volume(size: [Length; 3], count: u32) -> Number {
    let [thickness, width, length] = size.map(Length::in_inches);
    let one = ((thickness * width).expect("small") * length).expect("small");
    (one * Number::whole(count.into())).expect("small")
}

/// The pieces that are cut, by part and place; the wood in them; the wood on the rack.
fn stands(job: &Job) -> (Vec<(ItemId, usize)>, Number, Number) {
    let reckoned = Reckoned::of(job, &Bench::default());
    let (mut cut, mut pieces, mut rack) = (Vec::new(), Number::ZERO, Number::ZERO);
    for sizes in part_sizes(job, &reckoned) {
        let Some(Item::Part(part)) = job.item(sizes.id) else { continue };
        let size = [&sizes.thickness, &sizes.width, &sizes.length]
            .map(|it| *it.as_ref().expect("a size of the random job"));
        let all = usize::try_from(*sizes.quantity.as_ref().expect("a number")).expect("small");
        for index in (0..all).filter(|index| part.piece(*index).is_cut()) {
            cut.push((sizes.id, index));
            pieces = (pieces + volume(size, 1)).expect("small");
        }
    }
    for (_, item) in job.items() {
        if let Item::RackBoard(board) = item {
            let size = [&board.thickness, &board.width, &board.length].map(|it| inches(it));
            rack = (rack + volume(size, board.quantity)).expect("small");
        }
    }
    (cut, pieces, rack)
}

/// Whatever is ticked, piece by piece or board by board, and whatever tick was a slip: no piece that is cut is wanted
/// again, every other one is, and no wood is offered that is cut away or stands in a board that is begun.
#[test]
fn nothing_that_is_cut_is_planned_again() {
    let (mut jobs, mut judged, mut begun_boards, mut slips, mut different) = (0, 0, 0, 0, 0);
    for seed in 0..600 {
        let mut dice = Dice(90_000 + seed);
        let mut job = random_job(&mut dice);
        let Ok(first) = wanted(&job, &options()) else { continue };
        let Ok(outcome) = solve(&first.job, 200_000) else { continue };
        jobs += 1;
        let boards = outcome.plan.boards.clone();
        job.make(&job.keeping_plan(kept(&first, outcome.plan, false))).expect("fresh");
        let id = job.find_cut_plan(false).expect("kept");
        if let Some(step) = job.buying(id, None) {
            job.make(&step).expect("no conflict");
        }
        let bench = Bench::default();
        let counted = job.items().filter_map(|(id, item)| match item {
            Item::Part(part) => Some((id, part.quantity.parse::<usize>().expect("a number"))),
            _ => None,
        });
        let all: Vec<(ItemId, usize)> =
            counted.flat_map(|(id, count)| (0..count).map(move |index| (id, index))).collect();
        let (_, _, at_first) = stands(&job);
        for _ in 0..dice.roll(1, 20) {
            let (cut, ..) = stands(&job);
            let one = |dice: &mut Dice, from: &[(ItemId, usize)]| {
                let at = usize::try_from(dice.roll(0, 999)).expect("small");
                (!from.is_empty()).then(|| from[at % from.len()])
            };
            let number = usize::try_from(dice.roll(0, 999)).expect("small") % boards.len();
            let step = match dice.roll(0, 9) {
                0 => one(&mut dice, &cut)
                    .and_then(|(id, index)| job.not_cutting(id, index))
                    .inspect(|_| slips += 1),
                1 => job.cutting(id, number, inches("12")),
                2 => {
                    let placed = boards[number].placed();
                    let good = placed.first().map(|it| (it.part, 1)).into_iter().collect();
                    job.coming_out_different(id, number, good, Vec::new(), Vec::new())
                        .inspect(|_| different += 1)
                }
                _ => one(&mut dice, &all).and_then(|piece| {
                    let reckoned = Reckoned::of(&job, &bench);
                    job.cutting_pieces(&reckoned, &bench, &[piece])
                }),
            };
            let Some(step) = step else { continue };
            job.make(&step).expect("no conflict");
            let (cut, pieces, rack) = stands(&job);
            let (_, states) = job.cut_plan(id).expect("kept");
            let begun: Vec<usize> = (1..)
                .zip(&states)
                .filter(|(_, it)| matches!(it, BoardState::Begun(_)))
                .map(|(at, _)| at)
                .collect();
            begun_boards += begun.len();
            // What a board was before the first cut is nowhere any more, but for its pieces and its offcuts.
            assert!((pieces + rack).expect("small") <= at_first, "{seed}: wood is there twice");
            match wanted(&job, &options()) {
                Ok(now) => {
                    for (at, label) in now.labels.parts.iter().enumerate() {
                        let of = |it: &&(ItemId, usize)| Some(it.0) == label.item;
                        let open = all.iter().filter(of).count() - cut.iter().filter(of).count();
                        assert_eq!(
                            usize::try_from(now.pieces[at]),
                            Ok(open),
                            "{seed}: {}",
                            label.name
                        );
                    }
                    let asked: u32 = now.pieces.iter().sum();
                    assert_eq!(usize::try_from(asked), Ok(all.len() - cut.len()), "{seed}");
                    let told =
                        now.notes.iter().filter(|it| it.to_string().contains(" is begun.")).count();
                    assert_eq!(told, begun.len(), "{seed}");
                    judged += 1;
                }
                Err(problems) if problems[0].code() == "no-parts" => {
                    assert_eq!(cut.len(), all.len(), "{seed}");
                }
                Err(problems) => panic!("{seed}: {problems:?}"),
            }
        }
    }
    assert!(jobs > 150, "{jobs} jobs");
    assert!(judged > 500 && begun_boards > 300, "{judged} {begun_boards}");
    assert!(slips > 50 && different > 30, "{slips} {different}");
}

/// Two boards on hand, one of them wet; 1/2 comes off each end, then 30, and 29 - 1/8 are left.
#[test]
fn a_wet_board_leaves_a_wet_offcut_and_half_used_piles_stay() {
    let on_hand = |name: &str, wet: bool, quantity: u32| {
        Item::RackBoard(RackBoard {
            name: name.to_owned(),
            section: "2x6".to_owned(),
            thickness: "1 1/2".to_owned(),
            width: "5 1/2".to_owned(),
            length: "60".to_owned(),
            quantity,
            wet,
            sawn_ends: false,
            knots: String::new(),
        })
    };
    for wet in [true, false] {
        let rail = Item::Part(part("rail", 1, ["1 1/2", "5 1/2", "30"], "2x6"));
        let mut job = with(vec![rail, on_hand("pile", wet, 2)]);
        let (wanted, plan) = planned(&job);
        job.make(&job.keeping_plan(kept(&wanted, plan, false))).expect("fresh");
        let id = job.find_cut_plan(false).expect("kept");
        job.make(&job.cutting(id, 0, inches("12")).expect("not cut yet")).expect("no conflict");
        let racks = job.items().filter_map(|(_, item)| match item {
            Item::RackBoard(board) => Some((board.length.as_str(), board.quantity, board.wet)),
            _ => None,
        });
        assert_eq!(racks.collect::<Vec<_>>(), [("60", 1, wet), ("28 7/8 in", 1, wet)]);
    }
}

#[test]
fn a_board_that_comes_out_different_is_planned_again() {
    let (mut job, mut history, id) = begun();
    let (kept, _) = job.cut_plan(id).expect("kept");
    let (number, board) = kept
        .plan
        .boards
        .iter()
        .enumerate()
        .find(|(_, cut)| cut.placed().len() > 1 && matches!(cut.source, Source::Board(_)))
        .expect("a board with several parts");
    let first = board.placed()[0].part;
    let name = kept.labels.parts[first].name.clone();
    assert_eq!(job.coming_out_different(id, number, vec![(first, 99)], vec![], vec![]), None);
    // A split: one piece is good, and a short length of the board.
    let piece = RackBoard {
        name: "split one".to_owned(),
        section: kept
            .labels
            .section(&kept.asked, &kept.asked.boards[0].section)
            .expect("known")
            .name
            .clone(),
        thickness: "3 1/2".to_owned(),
        width: "3 1/2".to_owned(),
        length: "20 3/16".to_owned(),
        quantity: 1,
        wet: false,
        sawn_ends: true,
        knots: String::new(),
    };
    let step = job
        .coming_out_different(id, number, vec![(first, 1)], vec![piece], vec![])
        .expect("it can");
    history.make(&mut job, step).expect("no conflict");
    assert_eq!(done(&job), 1);
    let told = words(&job, id);
    assert!(
        told.iter().any(|words| words.starts_with(&name) && words.contains("are wanted now")),
        "{told:?}"
    );
    let (now, plan) = planned(&job);
    assert!(now.labels.scraps.iter().any(|label| label.name == "split one"));
    let pieces: usize = plan.boards.iter().map(|cut| cut.placed().len()).sum();
    let wanted: u32 = now.pieces.iter().sum();
    assert_eq!(pieces, usize::try_from(wanted).expect("small"));
    assert_eq!(history.undo(&mut job), Ok(true));
    assert_eq!(words(&job, id), Vec::<String>::new());
}

/// A long rail sawn off the first board that gives one. Nobody knows what is left of that board until it is measured:
/// planning again says so, and counts it once, as measured.
#[test]
fn what_is_left_of_a_board_that_is_begun_is_counted_once_it_is_measured() {
    let (mut job, mut history, id) = begun();
    let bench = Bench::default();
    let note = |number: usize| {
        format!(
            "Board {number} is begun. What is left of it is not counted: tap “It came out different” there and write down what is left."
        )
    };
    let notes = |job: &Job| {
        let notes = wanted(job, &options()).expect("can be planned").notes;
        notes.iter().map(ToString::to_string).filter(|it| it.contains("begun")).collect::<Vec<_>>()
    };
    assert_eq!(notes(&job), Vec::<String>::new());
    // Everything is on the rack, so that a board that is used twice would be seen there.
    let step = job.buying(id, None).expect("something to buy");
    history.make(&mut job, step).expect("no conflict");
    let rail = job
        .parts()
        .into_iter()
        .find(|(_, it)| it.name == "long rail, upper")
        .expect("the demo's")
        .0;
    let (wanted_of, boards) = (
        |job: &Job| {
            let now = wanted(job, &options()).expect("can be planned");
            let at = now.labels.parts.iter().position(|it| it.item == Some(rail));
            at.map_or(0, |at| now.pieces[at])
        },
        |job: &Job| {
            let now = wanted(job, &options()).expect("can be planned");
            now.job.scraps.iter().map(|it| it.quantity).sum::<u32>()
        },
    );
    let (rails, on_rack) = (wanted_of(&job), boards(&job));
    let reckoned = Reckoned::of(&job, &bench);
    let step = job.cutting_pieces(&reckoned, &bench, &[(rail, 0)]).expect("not cut yet");
    history.make(&mut job, step).expect("no conflict");
    let (_, states) = job.cut_plan(id).expect("kept");
    let is_begun = |it: &BoardState| matches!(it, BoardState::Begun(_));
    let number = states.iter().position(is_begun).expect("a board is begun");
    assert_eq!(notes(&job), [note(number + 1)]);
    // The rail is not planned again, and the board is off the rack.
    assert_eq!((wanted_of(&job), boards(&job)), (rails - 1, on_rack - 1));

    let (kept, _) = job.cut_plan(id).expect("kept");
    let place = kept.labels.parts.iter().position(|it| it.item == Some(rail)).expect("planned");
    let rest = RackBoard {
        name: "rest of it".to_owned(),
        section: kept
            .labels
            .section(&kept.asked, &kept.asked.parts[place].section)
            .expect("known")
            .name
            .clone(),
        thickness: "1 1/2".to_owned(),
        width: "7 1/4".to_owned(),
        length: "53".to_owned(),
        quantity: 1,
        sawn_ends: true,
        ..RackBoard::default()
    };
    let step = job.coming_out_different(id, number, vec![(place, 1)], vec![rest], vec![]);
    history.make(&mut job, step.expect("it can")).expect("no conflict");
    // Nothing is ticked off twice, and the rest is there once.
    assert_eq!((wanted_of(&job), boards(&job)), (rails - 1, on_rack));
    let now = wanted(&job, &options()).expect("can be planned");
    let rests: Vec<u32> = now
        .labels
        .scraps
        .iter()
        .zip(&now.job.scraps)
        .filter(|(it, _)| it.name == "rest of it")
        .map(|(_, it)| it.quantity)
        .collect();
    assert_eq!((notes(&job), rests), (Vec::new(), vec![1]));
}

#[test]
fn sizes_that_moved_since_the_plan_are_named() {
    let (mut job, _, id) = begun();
    let edit = |job: &mut Job, name: &str, text: &str| {
        let found = job.measures().into_iter().find(|(_, measure)| measure.name == name);
        let (item, measure) = found.map(|(id, measure)| (id, measure.clone())).expect("there");
        let measure = Measure { written: Written::Formula(text.to_owned()), ..measure };
        let change = job.replacing(item, Item::Measure(measure));
        job.make(&Step::new("edit", vec![change])).expect("no conflict");
    };
    edit(&mut job, "bench height", "34 7/16");
    assert_eq!(words(&job, id), ["leg: the plan was made for 33 1/2 in; it is 33 7/16 in now."]);
    edit(&mut job, "rail width", "3 1/8");
    let told = words(&job, id);
    assert!(
        told.contains(
            &"long rail, upper: the plan was made for 1 1/2 in by 3 1/4 in; it is 1 1/2 in by 3 1/8 in now."
                .to_owned()
        ),
        "{told:?}"
    );
    let fresh = part("peg", 2, ["1 1/2", "3 1/8", "6"], "2x8");
    let change = job.adding(0, Item::Part(fresh));
    job.make(&Step::new("add", vec![change])).expect("fresh");
    let gone = job.items().find_map(|(id, item)| match item {
        Item::RackBoard(board) if board.name == "fence board ends" => Some(id),
        _ => None,
    });
    let price = job.items().find_map(|(id, item)| match item {
        Item::YardBoard(board) if board.section == "1 in dowel" => Some((id, board.clone())),
        _ => None,
    });
    let (yard, mut board) = price.expect("the dowel is sold");
    board.price = 410;
    let changes =
        vec![job.removing(gone.expect("on the rack")), job.replacing(yard, Item::YardBoard(board))];
    job.make(&Step::new("edit", changes)).expect("no conflict");
    let told = words(&job, id);
    for expected in [
        "peg is not in the plan.",
        "fence board ends is not on the rack any more.",
        "1 in dowel 48 in: it was 3.85; it is 4.10 now.",
    ] {
        assert!(told.contains(&expected.to_owned()), "{expected} in {told:?}");
    }
}

#[test]
fn a_new_plan_takes_the_place_of_the_old_one() {
    let (mut job, mut history, id) = begun();
    let step = job.cutting(id, 0, inches("12")).expect("not cut yet");
    history.make(&mut job, step).expect("no conflict");
    let (now, plan) = planned(&job);
    let step = job.keeping_plan(kept(&now, plan, false));
    history.make(&mut job, step).expect("no conflict");
    let (_, states) = job.cut_plan(id).expect("under the same id");
    assert!(states.iter().all(|state| *state == BoardState::ToCut));
    assert_eq!(history.undo(&mut job), Ok(true));
    assert_eq!(job.cut_plan(id).expect("back").1[0], BoardState::Cut);
    let step = job.dropping_plan(id);
    history.make(&mut job, step).expect("no conflict");
    assert_eq!(job.find_cut_plan(false), None);
}

fn list(texts: &[(&str, &str)]) -> Wanted {
    let (entries, bench) = (Entries::from_pairs(texts.iter().copied()), Bench::default());
    let mut ask = Ask::new(QUICK_LIST.fields, &entries, &bench, &NoNames);
    quick_list(&mut ask).expect("a list")
}

/// Whatever happens to the boards of a list, the rest holds exactly the pieces that are not good yet.
#[test]
fn the_rest_of_a_list_holds_what_is_not_cut_yet() {
    let keep = inches("12");
    for seed in 0..60 {
        let mut dice = Dice(seed);
        let asked = list(&[
            ("parts", "leg: 4 @ 33 1/2, rail: 6 @ 41, peg: 7 @ 5 1/8"),
            ("scraps", "52, 2 @ 44"),
        ]);
        let plan = solve(&asked.job, 50_000_000).expect("a plan").plan;
        let mut job = with(Vec::new());
        job.make(&job.keeping_plan(kept(&asked, plan.clone(), true))).expect("fresh");
        let id = job.find_cut_plan(true).expect("kept");
        if dice.one_in(2) {
            job.make(&job.buying(id, None).expect("something to buy")).expect("no conflict");
        }
        let mut good = 0;
        for (number, cut) in plan.boards.iter().enumerate() {
            match dice.roll(0, 2) {
                0 => {
                    let step = job.cutting(id, number, keep).expect("not cut yet");
                    job.make(&step).expect("no conflict");
                    good += cut.placed().len();
                }
                1 => {
                    let first = cut.placed()[0].part;
                    let left = vec!["13 7/32".to_owned(), "20 mm".to_owned()];
                    let fine = vec![(first, 1)];
                    let step = job.coming_out_different(id, number, fine, Vec::new(), left);
                    job.make(&step.expect("not cut yet")).expect("no conflict");
                    good += 1;
                }
                _ => {}
            }
        }
        let rest = list_rest(&job, id, keep).expect("a rest");
        let wanted: usize = rest.job.parts.iter().map(|part| part.quantity as usize).sum();
        assert_eq!(wanted, 17 - good);
        assert_eq!(rest.labels.scraps.len(), rest.job.scraps.len());
        if wanted > 0 {
            let again = solve(&rest.job, 50_000_000).expect("boards are to be had without limit");
            let (_, states) = job.cut_plan(id).expect("kept");
            if states.iter().all(|state| !matches!(state, BoardState::Different { .. })) {
                // The boards of the plan that are still at the yard are enough.
                let open =
                    plan.boards.iter().zip(&states).filter(|(_, s)| **s == BoardState::ToCut);
                let price = |source| match source {
                    Source::Board(at) => asked.job.boards[at].price_cents,
                    Source::Scrap(_) => 0,
                };
                let most: i64 = open.map(|(cut, _)| price(cut.source)).sum();
                assert!(again.plan.cost_cents <= most, "{seed}");
            }
        }
    }
    let (job, _, id) = begun();
    assert!(list_rest(&job, id, keep).is_err());
}
