//! What is cut and off, and the sizes that could take it up.

use super::{Does, Fact, NotKept, Outcome, attention, cost, ways};
use crate::job::moved::{Means, moved};
use crate::job::rescue::{self, Cut, Trouble, rescues};
use crate::job::tests::{FRAME, edit, id_of, inches, job_of, part};
use crate::job::{
    Dimension, Dimensions, Item, ItemId, Job, Kept, Part, Piece, RackBoard, Reckoned, Step,
};
use crate::measure::Tape;
use crate::sheet::Bench;

/// What is cut and is not the size wanted.
fn troubles(job: &Job) -> Vec<Trouble> {
    let bench = Bench::default();
    let found = attention(job, &Reckoned::of(job, &bench), &bench);
    let off = found.facts.into_iter().filter_map(|fact| match fact {
        Fact::Off { part, of, is, wanted, .. } => {
            Some(Trouble { cut: Cut::Piece(part, of), as_cut: is, wanted })
        }
        Fact::SizeOff { size, is, wanted } => {
            Some(Trouble { cut: Cut::Measure(size), as_cut: is, wanted })
        }
        _ => None,
    });
    off.collect()
}

/// A piece cut at whatever was wanted, and this long on the tape.
fn cut_at(length: &str) -> Piece {
    Piece::cut(Dimensions::default()).measured(Dimension::Length, Some(length.to_owned()))
}

#[test]
fn a_cut_rail_wants_recutting_or_the_overall_gives_way() {
    let mut job = job_of(FRAME);
    edit(&mut job, "front rail", |m| m.as_cut = Some("37".to_owned()));
    let before = Reckoned::of(&job, &Bench::default());
    edit(&mut job, "leg", |m| m.as_cut = Some("3 7/16".to_owned()));
    let after = Reckoned::of(&job, &Bench::default());
    let list = moved(&job, &before, &after);
    assert_eq!(list.len(), 1, "half rail keeps to the rail as cut: {list:?}");
    assert_eq!((list[0].means, list[0].by), (Means::Recut, Some(inches("1/8"))));

    let trouble = troubles(&job)[0];
    assert_eq!((trouble.as_cut, trouble.wanted), (inches("37"), inches("37 1/8")));
    let ways = rescues(&job, &Bench::default(), &trouble, &[]);
    // The legs are cut, so only the overall can give way: case J1 of the rules of the trade.
    assert_eq!(ways.len(), 1);
    assert_eq!(
        (ways[0].floats, ways[0].to, ways[0].recuts()),
        (id_of(&job, "overall"), inches("43 7/8"), 0)
    );
    let overall = id_of(&job, "overall");
    assert_eq!(rescues(&job, &Bench::default(), &trouble, &[overall]), []);
}

#[test]
fn the_rescue_that_cuts_fewest_parts_again_comes_first() {
    // A shelf between two cleats: the opening or the gap can take up a shelf cut short. The
    // opening has a cut back panel on it, so the gap comes first.
    let mut job = job_of(&[
        ("gap", "1/4"),
        ("opening", "40"),
        ("shelf", "opening - 2 × gap"),
        ("back panel", "opening - 1"),
    ]);
    edit(&mut job, "back panel", |m| m.is_cut = true);
    edit(&mut job, "shelf", |m| m.as_cut = Some("39 1/4".to_owned()));
    let trouble = troubles(&job)[0];
    let ways = rescues(&job, &Bench::default(), &trouble, &[]);
    let names: Vec<_> =
        ways.iter().map(|w| (job.item(w.floats).expect("here").name(), w.to, w.recuts())).collect();
    assert_eq!(names, [("gap", inches("3/8"), 0), ("opening", inches("39 3/4"), 1)]);
}

#[test]
fn a_piece_cut_short_has_a_rescue_and_is_told_beside_a_long_one() {
    let mut job = job_of(&[("overall", "44"), ("leg", "3 1/2"), ("rail", "overall - 2 × leg")]);
    let rail = Part { length: "rail".to_owned(), ..part(0, "front rail", "2", "3") };
    let short = Part { pieces: ["37 1/4", "36 3/4"].map(cut_at).to_vec(), ..rail };
    let shelf = Part {
        length: "overall - 1".to_owned(),
        pieces: vec![Piece::cut(Dimensions::default())],
        ..part(1, "shelf", "1", "3")
    };
    let add = vec![job.adding(0, Item::Part(short)), job.adding(1, Item::Part(shelf))];
    let (rail, shelf) = (add[0].id, add[1].id);
    job.make(&Step::new("add", add)).expect("fresh");
    let reckoned = Reckoned::of(&job, &Bench::default());
    let off = |as_cut: &str| Trouble {
        cut: Cut::Piece(rail, Dimension::Length),
        as_cut: inches(as_cut),
        wanted: inches("37"),
    };
    let short = off("36 3/4");
    assert_eq!(troubles(&job), [off("37 1/4"), short]);
    let ways = rescues(&job, &Bench::default(), &short, &[]);
    let ways: Vec<_> =
        ways.iter().map(|w| (job.item(w.floats).expect("here").name(), w.to, w.recuts())).collect();
    // Thicker legs cut nothing again; a shorter overall would cut the shelf again.
    assert_eq!(ways, [("leg", inches("3 5/8"), 0), ("overall", inches("43 3/4"), 1)]);
    let leg = id_of(&job, "leg");
    let held = rescues(&job, &Bench::default(), &short, &[leg]);
    assert_eq!((held.len(), held[0].parts[0].id), (1, shelf));
    assert_eq!(rescue::may_float(&job, &reckoned, &short), [id_of(&job, "overall"), leg]);
}

#[test]
fn a_part_cut_to_the_nearest_mark_is_not_in_trouble() {
    let mut job = job_of(&[("overall", "37"), ("third", "overall / 3")]);
    // 12 1/3: the nearest sixteenth is 12 5/16.
    edit(&mut job, "third", |m| m.as_cut = Some("12 5/16".to_owned()));
    assert_eq!(troubles(&job), []);
    edit(&mut job, "third", |m| m.as_cut = Some("12 1/4".to_owned()));
    assert_eq!(troubles(&job).len(), 1);
}

#[test]
fn what_is_not_straight_is_not_offered_as_a_rescue() {
    let mut job = job_of(&[("side", "6"), ("share", "36 in × 1 in / side")]);
    edit(&mut job, "share", |m| m.as_cut = Some("5".to_owned()));
    let trouble = troubles(&job)[0];
    assert_eq!(rescues(&job, &Bench::default(), &trouble, &[]), []);
}

/// By hand: a rail of 30 1/4 is cut again from a new 2x4 of 96 at 10.90; four of them take two, for one
/// board less its ends, 95, gives three (90 3/4 and two kerfs of 1/8 are 91). What is on the rack costs nothing.
#[test]
fn cutting_again_says_which_board_and_what_it_costs() {
    let mut job = crate::to_buy::tests::planned();
    let bench = Bench::default();
    let short = Piece::cut(Dimensions::default()).measured(Dimension::Length, Some("29".into()));
    let Some(Item::Part(rail)) = job.item(ItemId(1)).cloned() else { panic!() };
    let many = Part { quantity: "4".to_owned(), ..rail };
    let many = (0..4).fold(many, |part, at| part.with_piece(at, short.clone()));
    job.make(&Step::new("cut", vec![job.replacing(ItemId(1), Item::Part(many))])).expect("fresh");
    let said = |job: &Job, does: Does| {
        let reckoned = Reckoned::of(job, &bench);
        let facts = attention(job, &reckoned, &bench).facts;
        let off = facts.iter().find(|it| matches!(it, Fact::Off { .. })).expect("too short");
        cost(job, &reckoned, &bench, off, does).map(|it| it.on(Tape::SIXTEENTHS))
    };
    let again = said(&job, Does::CutAgain);
    assert_eq!(again.as_deref(), Some("From the yard: 2 × 2x4, 96 in long, 21.80."));
    assert_eq!(said(&job, Does::Leave).as_deref(), Some("Takes no board and no money."));
    let texts = ["2x4", "1 1/2", "3 1/2", "140"].map(str::to_owned);
    let [section, thickness, width, length] = texts;
    let name = "old rail".to_owned();
    let rack =
        RackBoard { name, section, thickness, width, length, quantity: 1, ..RackBoard::default() };
    job.make(&Step::new("find", vec![job.adding(0, Item::RackBoard(rack))])).expect("fresh");
    let again = said(&job, Does::CutAgain);
    assert_eq!(again.as_deref(), Some("From the rack: old rail, 140 in long."));
}

#[test]
fn a_reckoning_without_an_answer_wants_looking_at() {
    let mut job = job_of(&[]);
    let entries = vec![("overall".to_owned(), "gone + 1".to_owned())];
    let kept = Kept { rank: 0, title: "rod".into(), slug: "dowel".into(), entries };
    job.make(&Step::new("keep", vec![job.adding(0, Item::Kept(kept))])).expect("fresh");
    let bench = Bench::default();
    let facts = attention(&job, &Reckoned::of(&job, &bench), &bench).facts;
    assert!(matches!(&facts[..], [Fact::Refused { kept: ItemId(1), .. }]), "{facts:?}");
}

#[test]
fn a_job_that_the_device_does_not_keep_comes_first_and_can_be_saved_as_a_file() {
    let mut job = job_of(FRAME);
    edit(&mut job, "front rail", |m| m.as_cut = Some("36".to_owned()));
    let (bench, reckoned) = (Bench::default(), Reckoned::of(&job, &Bench::default()));
    let kept = attention(&job, &reckoned, &bench);
    for (why, words, does) in [
        (
            NotKept::Refused("this browser has no room left".to_owned()),
            "this browser has no room left. It stays usable on this page, and keeping it is tried again. \
             Save it as a file before you close the page.",
            vec![Does::SaveFile],
        ),
        (
            NotKept::Unreadable("It is damaged.".to_owned()),
            "It is damaged. Save it as a file before you close the page.",
            vec![Does::SaveFile],
        ),
        (
            NotKept::TakenOff,
            "taken off this device. It stays usable on this page, and what you change goes in when you put it back.",
            vec![Does::PutBack, Does::SaveFile],
        ),
        (
            NotKept::Deleted,
            "deleted in another window. It stays usable on this page. Save it as a file before you close the page.",
            vec![Does::SaveFile],
        ),
    ] {
        let found = kept.clone().not_kept(why.clone());
        let [first, rest @ ..] = found.facts.as_slice() else { panic!("nothing found") };
        assert_eq!(
            (first, rest),
            (&Fact::NotKept(why), kept.facts.as_slice()),
            "nothing else is lost"
        );
        assert_eq!(first.about(&job), "This job is not kept");
        assert_eq!(first.sentence(&job).on(bench.tape), words);
        let found = ways(&job, &reckoned, &bench, first, &[]);
        assert_eq!(found.iter().map(|way| way.does).collect::<Vec<_>>(), does);
        // No step of the job makes the device keep it.
        assert!(found.iter().all(|way| way.step.is_none()), "{found:?}");
    }
}

/// A leg that is too short and too thick is one leg to look at.
#[test]
fn what_is_to_be_looked_at_then_names_each_piece_once() {
    let mut job = job_of(FRAME);
    let mut add = |name: &str| {
        let change = job.adding(0, Item::Part(part(0, name, "4", "3 1/2")));
        let id = change.id;
        job.make(&Step::new("", vec![change])).expect("a part");
        id
    };
    let (leg, rail) = (add("leg of it"), add("rail of it"));
    let off = |part: ItemId, of: Dimension, pieces: &[usize]| Fact::Off {
        part,
        of,
        pieces: pieces.to_vec(),
        is: inches("2"),
        wanted: inches("1"),
    };
    let brings = vec![
        off(leg, Dimension::Length, &[0, 2, 3]),
        off(rail, Dimension::Length, &[0]),
        off(leg, Dimension::Width, &[0, 1, 2, 3]),
        Fact::SizeOff { size: id_of(&job, "leg"), is: inches("2"), wanted: inches("1") },
    ];
    let outcome = Outcome { job, moves: Vec::new(), parts: Vec::new(), brings };
    assert_eq!(outcome.then_look_at(), "leg of it 1, 2, 3 and 4, rail of it 1, leg");
}
