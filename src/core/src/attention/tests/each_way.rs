//! Each way out of a fact: what it is called, that the fact is gone, and the job that comes of it.

use super::super::looking_again;
use super::*;
use crate::planning::demo::demo_in_work;

/// A way out of the first thing that wants looking at in a job, its words, and what of the job is another thing then.
struct Row {
    job: Job,
    does: Does,
    words: &'static str,
    then: Vec<(ItemId, Item)>,
}

fn measure_of(job: &Job, name: &str, change: impl Fn(&mut Measure)) -> (ItemId, Item) {
    let id = id_of(job, name);
    let Some(Item::Measure(measure)) = job.item(id) else { panic!("{name}") };
    let mut new = measure.clone();
    change(&mut new);
    (id, Item::Measure(new))
}

/// By hand: 40 less 3 is 37.
pub(super) fn rail(as_cut: Option<&str>) -> Job {
    let mut job = job_of(&[("overall", "40"), ("rail", "overall - 3")]);
    edit(&mut job, "rail", |m| (m.is_cut, m.as_cut) = (true, as_cut.map(str::to_owned)));
    job
}

fn of_rail(as_cut: Option<&str>, does: Does, words: &'static str, change: fn(&mut Measure)) -> Row {
    let job = rail(as_cut);
    let then = vec![measure_of(&job, "rail", change)];
    Row { job, does, words, then }
}

/// Three that must match within 1/16: one of 4 1/4 is cut, one of 4 1/8 and one of 4 are planned.
pub(super) fn three() -> (Job, ItemId, Match) {
    let mut job = job_of(&[("one", "4"), ("two", "4"), ("three", "4 1/8")]);
    edit(&mut job, "two", |m| m.as_cut = Some("4 1/4".to_owned()));
    let measures = ["one", "two", "three"].map(|name| id_of(&job, name)).to_vec();
    let name = "the three".to_owned();
    let group = Match { name, measures, drift: "1/16".to_owned(), left: None };
    let adding = job.adding(0, Item::Match(group.clone()));
    let id = adding.id;
    job.make(&Step::new("add", vec![adding])).expect("fresh");
    (job, id, group)
}

/// One piece, wanted 3/4 by 3 by 39, that is so much larger in one of its sizes.
pub(super) fn large(of: Dimension, is: &str) -> (Job, ItemId, Part) {
    let mut job = job_of(&[]);
    let sizes = Dimensions::of(|it| match it {
        it if it == of => Some(inches(is)),
        Dimension::Thickness => Some(inches("3/4")),
        Dimension::Width => Some(inches("3")),
        Dimension::Length => Some(inches("39")),
    });
    let part = Part::new("slat", "1", ["3/4", "3", "39"]).with_piece(0, Piece::cut(sizes));
    let adding = job.adding(0, Item::Part(part.clone()));
    let id = adding.id;
    job.make(&Step::new("add", vec![adding])).expect("fresh");
    (job, id, part)
}

fn trimmed(of: Dimension, is: &str, by: &str, words: &'static str) -> Row {
    let (job, id, part) = large(of, is);
    let mut right = part.clone();
    right.pieces = large(of, ["3/4", "3", "39"][of as usize]).2.pieces;
    Row { job, does: Does::Trim(inches(by)), words, then: vec![(id, Item::Part(right))] }
}

#[test]
fn each_way_ends_its_fact_and_does_what_it_says() {
    let (group_job, group_id, group) = three();
    let (piece_job, piece_id, piece) = large(Dimension::Length, "39 1/4");
    let left = piece.piece(0).leaving(Dimension::Length, Some(inches("1/4")));
    let table = [
        of_rail(Some("37 1/2"), Does::Trim(inches("1/2")), "Trim 1/2 in off", |it| {
            it.as_cut = Some("37 in".to_owned());
        }),
        of_rail(Some("37 1/2"), Does::CutAgain, "Cut it again", |it| {
            (it.as_cut, it.is_cut) = (None, false);
        }),
        of_rail(Some("36 1/2"), Does::CutAgain, "Cut it again", |it| {
            (it.as_cut, it.is_cut) = (None, false);
        }),
        of_rail(Some("36 1/2"), Does::Leave, "Leave it as it is", |it| {
            it.left = (inches("36 1/2") - inches("37")).ok();
        }),
        of_rail(None, Does::TakePlan, "It was cut at the size wanted now", |it| {
            it.as_cut = Some("37 in".to_owned());
        }),
        Row {
            then: vec![
                measure_of(&group_job, "two", |it| it.as_cut = Some("4 in".to_owned())),
                measure_of(&group_job, "three", |it| {
                    it.written = Written::Formula("4 in".to_owned());
                }),
            ],
            job: group_job.clone(),
            does: Does::ToSmallest,
            words: "Bring all to 4 in",
        },
        Row {
            then: vec![(group_id, Item::Match(Match { left: Some(inches("1/4")), ..group }))],
            job: group_job,
            does: Does::Leave,
            words: "Leave it as it is",
        },
        Row {
            then: vec![(piece_id, Item::Part(piece.with_piece(0, left)))],
            job: piece_job,
            does: Does::Leave,
            words: "Leave it as it is",
        },
        trimmed(Dimension::Length, "39 1/4", "1/4", "Trim 1/4 in off: stop at 39 in"),
        trimmed(Dimension::Width, "3 1/8", "1/8", "Trim 1/8 in off: fence at 3 in"),
        trimmed(Dimension::Thickness, "7/8", "1/8", "Trim 1/8 in off: fence at 3/4 in"),
    ];
    let bench = Bench::default();
    for Row { job, does, words, then } in table {
        let reckoned = Reckoned::of(&job, &bench);
        let before = attention(&job, &reckoned, &bench);
        let [fact] = before.facts.as_slice() else { panic!("{words}: {:?}", before.facts) };
        let all = ways(&job, &reckoned, &bench, fact, &[]);
        let way = all.iter().find(|way| way.does == does);
        let way = way.unwrap_or_else(|| panic!("no {does:?} of {all:?}"));
        assert_eq!(fact.way(does, &job).on(bench.tape), words);
        let step = way.step.as_ref().expect("a tap is enough");
        let comes = outcome(&job, &reckoned, &bench, step).expect("its own state");
        assert_eq!(comes.brings, [], "{words}");
        let mut wanted: Vec<(ItemId, Item)> =
            job.items().map(|(id, item)| (id, item.clone())).collect();
        for (id, item) in then {
            wanted.iter_mut().find(|(known, _)| *known == id).expect("an item").1 = item;
        }
        let is: Vec<(ItemId, Item)> =
            comes.job.items().map(|(id, item)| (id, item.clone())).collect();
        assert_eq!(is, wanted, "{words}");
        let after = attention(&comes.job, &comes.reckoned, &bench);
        assert_eq!(after.facts, [], "{words}");
        let is_left = does == Does::Leave;
        assert_eq!(after.left.first(), is_left.then_some(fact), "{words}");
    }
}

/// By hand: 39 long less 38 7/8 is 1/8, and the end of that slat is 3/4 × 3; 3/4 thick less 11/16 is 1/16, as wide and as
/// long as the slat; 3 wide less 2 7/8 is 1/8, as thick and as long. A quarter is the thickest, and there is no shim for what
/// is too large.
#[test]
fn a_shim_fills_what_a_piece_came_out_too_small_by() {
    let bench = Bench::default();
    let rest = "Takes no board and no money, and nothing is thrown away.";
    for (of, is, thick, shim) in [
        (Dimension::Length, "38 7/8", "1/8", "1/8 in × 3/4 in × 3 in"),
        (Dimension::Length, "38 3/4", "1/4", "1/4 in × 3/4 in × 3 in"),
        (Dimension::Thickness, "11/16", "1/16", "1/16 in × 3 in × 39 in"),
        (Dimension::Width, "2 7/8", "1/8", "1/8 in × 3/4 in × 39 in"),
        (Dimension::Length, "38 11/16", "", ""),
        (Dimension::Length, "39 1/8", "", ""),
    ] {
        let (job, id, part) = large(of, is);
        let reckoned = Reckoned::of(&job, &bench);
        let before = attention(&job, &reckoned, &bench);
        let [fact] = before.facts.as_slice() else { panic!("{is}: {:?}", before.facts) };
        let all = ways(&job, &reckoned, &bench, fact, &[]);
        let way = all.iter().find(|way| matches!(way.does, Does::Shim(_)));
        let Some(way) = way else {
            assert_eq!(thick, "", "{is}: {all:?}");
            continue;
        };
        assert_eq!(way.does, Does::Shim(inches(thick)), "{is}");
        assert_eq!(
            fact.way(way.does, &job).on(bench.tape),
            format!("Fill it with a shim of {thick} in")
        );
        assert!(way.does.caution().is_some_and(|it| it.contains("carries only where it bears")));
        let comes = outcome(&job, &reckoned, &bench, way.step.as_ref().expect("a tap is enough"));
        let comes = comes.expect("its own state");
        assert_eq!((comes.brings.len(), comes.moves.len(), comes.parts.len()), (0, 0, 0));
        let cost = cost(&job, &reckoned, &bench, (fact, way.does), Some(&comes)).expect("words");
        assert_eq!(cost.on(bench.tape), format!("To make from an offcut: 1 of {shim}. {rest}"));
        // The piece stays what it is, and says what fills it; what is asked of it again is asked without the shim.
        let after = attention(&comes.job, &comes.reckoned, &bench);
        assert_eq!((after.facts.as_slice(), after.left.as_slice()), (&[][..], &[fact.clone()][..]));
        let said = fact.left_with(&comes.job).expect("a shim").on(bench.tape);
        assert_eq!(said, format!("Filled with a shim of {thick} in."));
        let again = looking_again(&comes.job, fact).expect("it was left");
        let again = outcome(&comes.job, &comes.reckoned, &bench, &again).expect("its own state");
        assert_eq!(again.brings, std::slice::from_ref(fact));
        assert_eq!(again.job.item(id), Some(&Item::Part(part)), "{is}");
    }
}

/// Four legs wanted 33 1/2, three of them cut: 33 1/2, 33 3/8 and 33 1/2, so the fourth and two others are 1/8 longer than the
/// second. They may drift 1/16. Brought to the smallest the two are trimmed, and all are planned at 33 3/8; the second is
/// then what is wanted.
#[test]
fn the_pieces_of_a_part_must_match() {
    let mut job = job_of(&[]);
    let cut = |length: &str| {
        Piece::cut(Dimensions {
            thickness: Some(inches("3")),
            width: Some(inches("3")),
            length: Some(inches(length)),
        })
    };
    let legs = Part::new("leg", "4", ["3", "3", "33 1/2"]);
    let legs = ["33 1/2", "33 3/8", "33 1/2"]
        .iter()
        .zip(0..)
        .fold(legs, |legs, (length, at)| legs.with_piece(at, cut(length)));
    let adding = job.adding(0, Item::Part(legs.clone()));
    let id = adding.id;
    job.make(&Step::new("add", vec![adding])).expect("fresh");
    let group = Match {
        name: "the four legs".to_owned(),
        measures: vec![id],
        drift: "1/8".to_owned(),
        left: None,
    };
    let adding = job.adding(0, Item::Match(group.clone()));
    let group_id = adding.id;
    job.make(&Step::new("add", vec![adding])).expect("fresh");
    let bench = Bench::default();
    let apart = |job: &Job| {
        let found = attention(job, &Reckoned::of(job, &bench), &bench).facts;
        found.into_iter().find(|fact| matches!(fact, Fact::Apart(_)))
    };
    assert_eq!(apart(&job), None, "they may drift as far as they do");
    let group = Item::Match(Match { drift: "1/16".to_owned(), ..group });
    job.make(&Step::new("less", vec![job.replacing(group_id, group)])).expect("no conflict");
    let fact = apart(&job).expect("an eighth apart");
    assert_eq!(
        fact.sentence(&job).on(bench.tape),
        "must match: leg 2 is 33 3/8 in, leg, to cut, is 33 1/2 in. That is 1/8 in apart; they may drift 1/16 in."
    );
    let reckoned = Reckoned::of(&job, &bench);
    let all = ways(&job, &reckoned, &bench, &fact, &[]);
    let does: Vec<_> = all.iter().map(|way| way.does).collect();
    assert_eq!(does, [Does::ToSmallest, Does::Leave]);
    let step = all[0].step.as_ref().expect("a tap is enough");
    let comes = outcome(&job, &reckoned, &bench, step).expect("its own state");
    let after = attention(&comes.job, &comes.reckoned, &bench);
    assert_eq!((after.facts, after.left), (Vec::new(), Vec::new()));
    let length = "33 3/8 in".to_owned();
    let pieces = ["33 3/8"; 3].map(cut).to_vec();
    assert_eq!(comes.job.item(id), Some(&Item::Part(Part { length, pieces, ..legs })));
}

/// Of three short alike, one left as it is and two with shims are told apart.
#[test]
fn what_is_filled_is_told_apart_from_what_is_left() {
    let (mut job, id, part) = large(Dimension::Length, "38 7/8");
    let short = part.piece(0);
    let off = (inches("38 7/8") - inches("39")).ok();
    let three = Part { quantity: "3".to_owned(), ..part }
        .with_piece(0, short.clone().leaving(Dimension::Length, off))
        .with_piece(1, short.clone().shimmed(Dimension::Length, off))
        .with_piece(2, short.shimmed(Dimension::Length, off));
    job.make(&Step::new("three", vec![job.replacing(id, Item::Part(three))])).expect("fresh");
    let bench = Bench::default();
    let found = attention(&job, &Reckoned::of(&job, &bench), &bench);
    assert_eq!(found.facts, []);
    let left: Vec<_> =
        found.left.iter().map(|it| (it.about(&job), it.left_with(&job).is_some())).collect();
    assert_eq!(left, [("slat 1".to_owned(), false), ("slat 2 and 3".to_owned(), true)]);
}

/// Half a sixteenth where nobody said more; what the job says where it does.
#[test]
fn close_enough_is_what_the_job_says() {
    let bench = Bench::default();
    for (says, is, is_told) in [
        (None, "37 1/32", false),
        (None, "37 3/64", true),
        (Some("1/4"), "37 1/4", false),
        (Some("1/4"), "36 3/4", false),
        (Some("1/4"), "37 17/64", true),
        (Some("0"), "37 1/64", true),
    ] {
        let mut job = rail(Some(is));
        if let Some(says) = says {
            let item = Item::CloseEnough(CloseEnough { size: says.to_owned() });
            job.make(&Step::new("say", vec![job.adding(0, item)])).expect("fresh");
        }
        let facts = attention(&job, &Reckoned::of(&job, &bench), &bench).facts;
        assert_eq!(facts.len(), usize::from(is_told), "{says:?} {is}");
    }
}

/// The list says that the plan in use fits no more, and the way out is to plan; a step that only adds to it brings it not
/// again.
#[test]
fn a_plan_that_no_longer_fits_is_in_the_list_once() {
    let (mut job, _) = demo_in_work();
    let bench = Bench::default();
    let longer = |job: &Job, name: &str| {
        let found = job.parts().into_iter().find(|(_, part)| part.name == name);
        let (id, part) = found.expect("a part of the demo");
        let length = "50".to_owned();
        Step::new("longer", vec![job.replacing(id, Item::Part(Part { length, ..part.clone() }))])
    };
    let plans = |facts: &[Fact]| facts.iter().filter(|it| matches!(it, Fact::Plan { .. })).count();
    let reckoned = Reckoned::of(&job, &bench);
    let comes = outcome(&job, &reckoned, &bench, &longer(&job, "top plank")).expect("a step");
    assert_eq!(plans(&comes.brings), 1, "{:?}", comes.brings);
    job.make(&longer(&job, "top plank")).expect("a step");
    let reckoned = Reckoned::of(&job, &bench);
    let facts = attention(&job, &reckoned, &bench).facts;
    let fact = facts.iter().find(|it| matches!(it, Fact::Plan { .. })).expect("it fits no more");
    assert_eq!(fact.about(&job), "The plan in use");
    assert_eq!(fact.sentence(&job).on(bench.tape), "no longer fits the job.");
    assert_eq!(fact.way(Does::PlanAgain, &job).on(bench.tape), "Plan what is left");
    let all = ways(&job, &reckoned, &bench, fact, &[]);
    assert_eq!(all, [Way { does: Does::PlanAgain, step: None }]);
    let more = outcome(&job, &reckoned, &bench, &longer(&job, "shelf slat")).expect("a step");
    assert_eq!(plans(&more.brings), 0, "{:?}", more.brings);
}
