//! What is cut and off, and the sizes that could take it up.

mod cost_of_each;
mod each_way;
mod spoiled;

use super::{Does, Fact, NotKept, Outcome, Way, attention, cost, looking_again, outcome, ways};
use crate::job::make_parts::make_parts;
use crate::job::moved::{Means, moved};
use crate::job::own_size::{Spot, standing};
use crate::job::rescue::{self, Cut, Trouble, rescues};
use crate::job::tests::{FRAME, edit, id_of, inches, job_of, part};
use crate::job::{
    CloseEnough, Dimension, Dimensions, Item, ItemId, Job, Kept, Match, Measure, Part, Piece,
    RackBoard, Reckoned, Round, Saw, Screw, Sketch, Step, Written, YardBoard,
};
use crate::measure::Tape;
use crate::measure::text::Quantity;
use crate::sheet::{Bench, Side};

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
        cost(job, &reckoned, &bench, (off, does), None).map(|it| it.on(Tape::SIXTEENTHS))
    };
    let again = said(&job, Does::CutAgain);
    // Four old ones of 29 are 116.
    assert_eq!(
        again.as_deref(),
        Some("From the yard: 2 × 2x4, 96 in long, 21.80. The old ones are scrap: 116 in.")
    );
    assert_eq!(
        said(&job, Does::CutAgainFromRack).as_deref(),
        Some(
            "From the yard: 2 × 2x4, 96 in long, 21.80. Nothing is thrown away: the old ones go on the rack."
        )
    );
    let texts = ["2x4", "1 1/2", "3 1/2", "140"].map(str::to_owned);
    let [section, thickness, width, length] = texts;
    let name = "old rail".to_owned();
    let rack =
        RackBoard { name, section, thickness, width, length, quantity: 1, ..RackBoard::default() };
    job.make(&Step::new("find", vec![job.adding(0, Item::RackBoard(rack))])).expect("fresh");
    let again = said(&job, Does::CutAgain);
    assert_eq!(
        again.as_deref(),
        Some("From the rack: old rail, 140 in long. The old ones are scrap: 116 in.")
    );
}

/// Three rails of 39 were wanted and the third is cut at 36; then two are wanted. By hand: none of these two is cut, and
/// the third is one too many, until somebody says what becomes of it.
#[test]
fn a_piece_that_is_cut_and_not_wanted_any_more_is_not_counted_and_not_lost() {
    let mut job = job_of(&[]);
    let rail = Part { stock: "2x4".to_owned(), ..Part::new("rail", "3", ["36", "36", "39"]) };
    let rail = rail.with_piece(2, Piece::cut(Dimensions::of(|_| Some(inches("36")))));
    let adding = job.adding(0, Item::Part(rail.clone()));
    let id = adding.id;
    job.make(&Step::new("add", vec![adding])).expect("fresh");
    let bench = Bench::default();
    let facts = |job: &Job| attention(job, &Reckoned::of(job, &bench), &bench).facts;
    assert!(matches!(&facts(&job)[0], Fact::Off { pieces, .. } if *pieces == [2]));
    for quantity in ["2", "1 + 1"] {
        let mut fewer = job.clone();
        let new = Part { quantity: quantity.to_owned(), ..rail.clone() };
        fewer.make(&Step::new("two", vec![job.replacing(id, Item::Part(new))])).expect("fresh");
        let reckoned = Reckoned::of(&fewer, &bench);
        assert_eq!(reckoned.part(id).map(|it| it.done), Some(0));
        let fact = Fact::NotWanted { part: id, pieces: vec![2] };
        assert_eq!(facts(&fewer), std::slice::from_ref(&fact));
        assert_eq!(fact.about(&fewer), "rail 3");
        let said = fact.sentence(&fewer).on(Tape::SIXTEENTHS);
        assert_eq!(said, "cut, and not wanted any more.");
        let after = |does: Does| {
            let all = ways(&fewer, &reckoned, &bench, &fact, &[]);
            let way = all.into_iter().find(|way| way.does == does)?;
            let mut job = fewer.clone();
            job.make(&way.step.expect("a tap is enough")).expect("its own state");
            let Some(Item::Part(part)) = job.item(id).cloned() else { panic!("a part") };
            let cut = (0..4).filter(|at| part.piece(*at).is_cut()).collect::<Vec<_>>();
            let told = facts(&job).iter().map(|it| it.about(&job)).collect::<Vec<_>>().join(", ");
            Some((part.quantity, cut, told, job.items().count()))
        };
        let two = || quantity.to_owned();
        // In the place of the first it is too short there.
        assert_eq!(after(Does::TakePlace), Some((two(), vec![0], "rail 1".to_owned(), 1)));
        assert_eq!(after(Does::ToRack), Some((two(), vec![], String::new(), 2)));
        assert_eq!(after(Does::Scrap), Some((two(), vec![], String::new(), 1)));
        // A formula is the person's own.
        let again = (quantity == "2").then(|| ("3".to_owned(), vec![2], "rail 3".to_owned(), 1));
        assert_eq!(after(Does::WantAgain), again);
    }
}

/// Nine sizes can take up the error: a few of them are offered, and leaving it is still one of the ways.
#[test]
fn leaving_it_is_offered_however_many_sizes_can_give_way() {
    let names: Vec<String> = (1..=9).map(|n| format!("gap {n}")).collect();
    let sum = names.join(" + ");
    let mut sizes: Vec<(&str, &str)> = names.iter().map(|name| (name.as_str(), "4")).collect();
    sizes.push(("shelf", &sum));
    let mut job = job_of(&sizes);
    edit(&mut job, "shelf", |m| m.as_cut = Some("35".to_owned()));
    let (bench, reckoned) = (Bench::default(), Reckoned::of(&job, &Bench::default()));
    let fact = &attention(&job, &reckoned, &bench).facts[0];
    let found = ways(&job, &reckoned, &bench, fact, &[]);
    let rescues = found.iter().filter(|way| matches!(way.does, Does::GiveWay(..))).count();
    assert_eq!((rescues, found.last().map(|way| way.does)), (4, Some(Does::Leave)));
}

/// One leg of two came out at 3 3/16: what moves says that it is so, and where the rail that it stands at is cut already.
#[test]
fn a_size_of_one_piece_moves_as_it_was_cut_and_a_cut_piece_that_uses_it_is_said_to_be_cut() {
    let mut job = job_of(&[("overall", "47 1/2"), ("leg", "3 1/4"), ("rail", "overall - 2 × leg")]);
    let at = |thickness: &str| {
        let size = |of| if of == Dimension::Length { "27 3/4" } else { thickness };
        Piece::cut(Dimensions::of(|of| Some(inches(size(of)))))
    };
    let leg = Part { thickness: "leg".into(), ..part(0, "leg", "2", "27 3/4") };
    let leg = Part { width: "3 1/4".into(), pieces: vec![at("3 1/4"), at("3 3/16")], ..leg };
    let rail = Part { length: "rail".to_owned(), ..part(1, "rail", "1", "3") };
    let rail = rail.with_piece(0, Piece::cut(Dimensions::of(|_| Some(inches("41")))));
    let add = vec![job.adding(0, Item::Part(leg)), job.adding(1, Item::Part(rail))];
    let (leg, rail) = (add[0].id, add[1].id);
    job.make(&Step::new("add", add)).expect("fresh");
    let (bench, reckoned) = (Bench::default(), Reckoned::of(&job, &Bench::default()));
    let of = (leg, 1, Dimension::Thickness);
    let spots = [Spot::Piece(rail, 0, Some(id_of(&job, "rail")))];
    let step = standing(&job, &reckoned, &bench, of, &spots).expect("it stands there");
    let comes = outcome(&job, &reckoned, &bench, &step).expect("its own state");
    let moves: Vec<_> = comes
        .moves
        .iter()
        .map(|it| (comes.job.item(it.id).map_or("", Item::name), it.old, it.new, it.means))
        .collect();
    let length = |text: &str| Some(Quantity::Length(inches(text)));
    // 47 1/2 less 3 1/4 and 3 3/16 is 41 1/16.
    assert_eq!(
        moves,
        [
            ("leg 2", None, length("3 3/16"), Means::AsCut),
            ("rail with leg 2", None, length("41 1/16"), Means::PiecesCut),
        ]
    );
    // The piece is left as it is, and so is its own size: that is told once.
    let stands = attention(&comes.job, &Reckoned::of(&comes.job, &bench), &bench);
    let told = |facts: &[Fact]| facts.iter().map(|it| it.about(&comes.job)).collect::<Vec<_>>();
    assert_eq!(told(&stands.left), ["leg 2"]);
    assert!(told(&stands.facts).contains(&"rail 1".to_owned()), "{:?}", stands.facts);
    // A piece that is cut at a size by name is no mere number either.
    let mut wider = job.clone();
    edit(&mut wider, "overall", |m| m.written = Written::Formula("48".to_owned()));
    let list = moved(&wider, &reckoned, &Reckoned::of(&wider, &bench));
    let means: Vec<_> = list.iter().map(|it| it.means).collect();
    assert_eq!(means, [Means::NewNumber, Means::PiecesCut]);
}

/// Every text in which somebody writes a size: what cannot be read is told, by its item and in the words of its form.
#[test]
fn every_text_that_cannot_be_read_wants_looking_at() {
    let gone = || "gone + 1".to_owned();
    let four = || "4".to_owned();
    let rack = || RackBoard {
        section: "2x4".to_owned(),
        thickness: "1 1/2".to_owned(),
        width: "3 1/2".to_owned(),
        length: "96".to_owned(),
        quantity: 1,
        ..RackBoard::default()
    };
    let yard = |size: [&str; 3]| Item::YardBoard(YardBoard::new("2x6", size, 500));
    let saw = |kerf: String, reach: String| {
        Item::Saw(Saw { name: "old saw".to_owned(), kerf, reach, fence: Side::Left })
    };
    let sketch = || Sketch {
        length: four(),
        depth: four(),
        height: four(),
        leg: four(),
        rail: four(),
        ..Sketch::default()
    };
    let group = |drift: String| {
        let name = "the legs".to_owned();
        Item::Match(Match { name, measures: Vec::new(), drift, left: None })
    };
    let table = [
        (Item::RackBoard(RackBoard { thickness: gone(), ..rack() }), "2x4", "thickness"),
        (Item::RackBoard(RackBoard { width: gone(), ..rack() }), "2x4", "width"),
        (Item::RackBoard(RackBoard { length: gone(), ..rack() }), "2x4", "length"),
        (Item::RackBoard(RackBoard { knots: gone(), ..rack() }), "2x4", "places to keep clear of"),
        (yard(["gone", "5 1/2", "96"]), "2x6", "thickness"),
        (yard(["1 1/2", "gone", "96"]), "2x6", "width"),
        (yard(["1 1/2", "5 1/2", "gone"]), "2x6", "length"),
        (group(gone()), "the legs", "how far they may drift"),
        (Item::Round(Round { name: "can".to_owned(), diameter: gone() }), "can", "diameter"),
        (saw(gone(), four()), "old saw", "kerf"),
        (saw("1/8".to_owned(), gone()), "old saw", "reach"),
        (Item::Screw(Screw { gauge: 8, length: gone(), quantity: 9 }), "screws", "length"),
        (Item::CloseEnough(CloseEnough { size: "gone".to_owned() }), "close enough", "size"),
        (Item::Sketch(Sketch { length: gone(), ..sketch() }), "sketch", "length"),
        (Item::Sketch(Sketch { depth: gone(), ..sketch() }), "sketch", "depth"),
        (Item::Sketch(Sketch { height: gone(), ..sketch() }), "sketch", "height"),
        (Item::Sketch(Sketch { leg: gone(), ..sketch() }), "sketch", "leg"),
        (Item::Sketch(Sketch { rail: gone(), ..sketch() }), "sketch", "rail"),
        (Item::Sketch(Sketch { shelf: gone(), ..sketch() }), "sketch", "shelf"),
        (Item::Sketch(Sketch { top: gone(), ..sketch() }), "sketch", "top"),
        (Item::Sketch(Sketch { overhang: gone(), ..sketch() }), "sketch", "overhang"),
    ];
    let bench = Bench::default();
    let told = |item: Item| {
        let mut job = job_of(&[]);
        job.make(&Step::new("add", vec![job.adding(0, item)])).expect("fresh");
        let reckoned = Reckoned::of(&job, &bench);
        let facts = attention(&job, &reckoned, &bench).facts;
        for fact in &facts {
            let all = ways(&job, &reckoned, &bench, fact, &[]);
            assert_eq!(all, [Way { does: Does::GoThere, step: None }], "{fact:?}");
        }
        facts
            .iter()
            .map(|it| (it.about(&job), it.sentence(&job).on(bench.tape)))
            .collect::<Vec<_>>()
    };
    for (item, about, what) in table {
        let found = told(item.clone());
        let [(name, said)] = found.as_slice() else { panic!("{item:?}: {found:?}") };
        assert_eq!(name, about, "{item:?}");
        assert!(
            said.starts_with(&format!("{what}: ")) && said.contains("gone"),
            "{item:?}: {said}"
        );
    }
    // What may be left out is, and a board that is used up is wanted by nobody.
    let nothing = || String::new();
    for item in [
        Item::RackBoard(RackBoard { length: gone(), quantity: 0, ..rack() }),
        group(nothing()),
        saw(nothing(), nothing()),
        Item::CloseEnough(CloseEnough { size: nothing() }),
        Item::Sketch(sketch()),
        Item::Sketch(Sketch { length: nothing(), depth: gone(), ..sketch() }),
    ] {
        assert_eq!(told(item.clone()), [], "{item:?}");
    }
}

#[test]
fn a_reckoning_without_an_answer_wants_looking_at() {
    let mut job = job_of(&[]);
    let entries = vec![("overall".to_owned(), "gone + 1".to_owned())];
    let kept =
        Kept { rank: 0, title: "rod".into(), slug: "dowel".into(), entries, left: Vec::new() };
    job.make(&Step::new("keep", vec![job.adding(0, Item::Kept(kept))])).expect("fresh");
    let bench = Bench::default();
    let facts = attention(&job, &Reckoned::of(&job, &bench), &bench).facts;
    assert!(matches!(&facts[..], [Fact::Refused { kept: ItemId(1), .. }]), "{facts:?}");
}

#[test]
fn parts_that_their_reckoning_does_not_make_any_more_want_looking_at() {
    let mut job = job_of(&[("plank", "5 1/2")]);
    let entries = vec![("planks".to_owned(), "plank, plank".to_owned())];
    let kept = Kept { rank: 0, title: "top".into(), slug: "top".into(), entries, left: Vec::new() };
    let adding = job.adding(0, Item::Kept(kept));
    let id = adding.id;
    job.make(&Step::new("keep", vec![adding])).expect("fresh");
    let bench = Bench::default();
    let making = make_parts(&job, &Reckoned::of(&job, &bench), &bench, id).expect("two planks");
    job.make(&making.step.expect("new")).expect("fresh");
    let Some(Item::Kept(kept)) = job.item(id) else { panic!() };
    let entries = vec![("planks".to_owned(), "plank, 5 3/8".to_owned())];
    let narrow = Item::Kept(Kept { entries, ..kept.clone() });
    job.make(&Step::new("measure", vec![job.replacing(id, narrow)])).expect("no other");
    let reckoned = Reckoned::of(&job, &bench);
    let found = attention(&job, &reckoned, &bench);
    let told = |fact: &&Fact| matches!(fact, Fact::Behind { .. });
    let fact = found.facts.iter().find(told).expect("it is told");
    assert_eq!(
        (fact.about(&job), fact.sentence(&job).on(bench.tape)),
        (
            "top".to_owned(),
            "its pieces in the job are not those that it makes now. New: plank 1, plank 2. \
             Not made any more: top: plank."
                .to_owned()
        )
    );
    let all = ways(&job, &reckoned, &bench, fact, &[]);
    let words: Vec<_> = all.iter().map(|it| fact.way(it.does, &job).on(bench.tape)).collect();
    assert_eq!(words, ["See the pieces it makes now", "Leave them as they are"]);
    let leave = all.into_iter().find_map(|way| way.step).expect("a step");
    let comes = outcome(&job, &reckoned, &bench, &leave).expect("no other");
    assert_eq!(comes.brings, []);
    let after = attention(&comes.job, &comes.reckoned, &bench);
    assert_eq!(after.facts.iter().find(told), None);
    assert_eq!(after.left.iter().find(told), Some(fact));
    job.make(&leave).expect("no other");
    job.make(&looking_again(&job, fact).expect("left so")).expect("no other");
    let again = attention(&job, &Reckoned::of(&job, &bench), &bench);
    assert_eq!(again.facts.iter().find(told), Some(fact));
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
    let reckoned = Reckoned::of(&job, &Bench::default());
    let outcome = Outcome { job, reckoned, moves: Vec::new(), parts: Vec::new(), brings };
    assert_eq!(outcome.then_look_at(), "leg of it 1, 2, 3 and 4, rail of it 1, leg");
}
