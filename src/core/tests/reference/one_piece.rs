//! One piece that came out different has a size of its own where it stands: a frame with one thin
//! leg, a top with one narrow plank, a dowel through one thick leg. Source: worked by hand, beside
//! each number.

use reckoner_core::attention::{Fact, attention};
use reckoner_core::job::own_size::{Spot, size_of, spots, standing};
use reckoner_core::job::{
    CloseEnough, Dimension, Item, ItemId, Job, Measure, Part, PartSizes, Reckoned, Step,
};
use reckoner_core::sheet::Bench;

use crate::items::{inches, job, kept, planned, result, value};

fn part(name: &str, quantity: &str, sizes: [&str; 3]) -> Item {
    Item::Part(Part::new(name, quantity, sizes))
}

fn worked_out(job: &Job) -> Reckoned {
    Reckoned::of(job, &Bench::default())
}

fn named(job: &Job, name: &str) -> (ItemId, Part) {
    let found = job.parts().into_iter().find(|(_, part)| part.name == name);
    found.map(|(id, part)| (id, part.clone())).unwrap_or_else(|| panic!("no part {name}"))
}

/// A piece of a part is ticked, and the tape says something of it.
fn cut(job: &mut Job, name: &str, index: usize, tape: Option<(Dimension, &str)>) {
    let (id, part) = named(job, name);
    let wanted = worked_out(job).part(id).map(PartSizes::all_wanted).expect("its sizes");
    let piece = part.piece(index).ticked(wanted);
    let piece = match tape {
        Some((of, text)) => piece.measured(of, Some(text.to_owned())),
        None => piece,
    };
    let step = Step::new("cut", vec![job.replacing(id, Item::Part(part.with_piece(index, piece)))]);
    job.make(&step).expect("no other");
}

fn stands(job: &mut Job, name: &str, index: usize, of: Dimension, at: &[&str]) {
    let reckoned = worked_out(job);
    let (id, _) = named(job, name);
    let size = size_of(job, &reckoned, id, of).expect("a size by name");
    let all = spots(job, &reckoned, size, id);
    let words: Vec<String> = all.iter().map(|spot| spot.words(job)).collect();
    let at: Vec<Spot> = at
        .iter()
        .map(|wanted| {
            let place = words.iter().position(|it| it == wanted);
            all[place.unwrap_or_else(|| panic!("{wanted} is not in {words:?}"))].clone()
        })
        .collect();
    let step =
        standing(job, &reckoned, &Bench::default(), (id, index, of), &at).expect("they are there");
    job.make(&step).expect("no other");
}

/// 44 over two legs of 3 1/2: the rails are 37. Leg 2 is 3 7/16: the front rail, at which it
/// stands, is 44 - 3 1/2 - 3 7/16 = 37 1/16; the back rail stays 37.
#[test]
fn a_frame_with_one_thin_leg_moves_its_own_rail_by_the_sixteenth_and_no_other() {
    let mut job = job(vec![
        planned("overall", "44"),
        planned("leg thickness", "3 1/2"),
        planned("long rail", "overall - 2 × leg thickness"),
        part("leg", "4", ["leg thickness", "leg thickness", "30"]),
        part("rail", "2", ["1 1/2", "3 1/2", "long rail"]),
    ]);
    cut(&mut job, "rail", 0, None);
    cut(&mut job, "rail", 1, None);
    cut(&mut job, "leg", 1, Some((Dimension::Width, "3 7/16")));
    stands(&mut job, "leg", 1, Dimension::Width, &["at rail 1"]);
    assert_eq!(value(&job, "long rail"), inches("37"));
    assert_eq!(value(&job, "leg thickness"), inches("3 1/2"));
    assert_eq!(value(&job, "leg thickness 2"), inches("3 7/16"));
    assert_eq!(value(&job, "long rail with leg thickness 2"), inches("37 1/16"));
    let (own, rail) = named(&job, "rail with leg thickness 2");
    assert_eq!((rail.quantity.as_str(), named(&job, "rail").1.quantity.as_str()), ("1", "1"));
    // Both rails were cut at 37: the one at the thin leg is 1/16 too short, and nothing else is off.
    let found = attention(&job, &worked_out(&job), &Bench::default());
    let off = Fact::Off {
        part: own,
        pieces: vec![0],
        of: Dimension::Length,
        is: inches("37"),
        wanted: inches("37 1/16"),
    };
    assert_eq!((off.lean(), &found.facts[..]), (Some("too short"), &[off][..]));
    // That the leg is thin was said, and is not told again.
    assert_eq!(found.left.len(), 1, "{:?}", found.left);
}

/// The same in a reckoning: the right leg is as the left while it is empty.
#[test]
fn the_right_leg_of_a_frame_becomes_the_thin_one() {
    let mut job = job(vec![
        kept("Front frame", "frame", &[("overall", "44"), ("leg_left", "leg thickness")]),
        planned("leg thickness", "3 1/2"),
        result("rail", 1, "rail_cut"),
        part("leg", "4", ["leg thickness", "leg thickness", "30"]),
    ]);
    assert_eq!(value(&job, "rail"), inches("37"));
    cut(&mut job, "leg", 3, Some((Dimension::Thickness, "3 7/16")));
    stands(&mut job, "leg", 3, Dimension::Thickness, &["Front frame: right leg"]);
    assert_eq!(value(&job, "rail"), inches("37 1/16"));
}

/// The thin leg stands at the left: 44 - 3 7/16 - 3 1/2 = 37 1/16. The right leg was as the left, and stays what it was. With
/// both of them thin it is 44 - 2 × 3 7/16 = 37 1/8.
#[test]
fn the_left_leg_of_a_frame_is_thin_alone() {
    for (at, rail) in [
        (&["Front frame: left leg"][..], "37 1/16"),
        (&["Front frame: left leg", "Front frame: right leg"], "37 1/8"),
        (&["Front frame: right leg", "Front frame: left leg"], "37 1/8"),
    ] {
        let mut job = job(vec![
            kept("Front frame", "frame", &[("overall", "44"), ("leg_left", "leg thickness")]),
            planned("leg thickness", "3 1/2"),
            result("rail", 1, "rail_cut"),
            part("leg", "4", ["leg thickness", "leg thickness", "30"]),
        ]);
        cut(&mut job, "leg", 3, Some((Dimension::Thickness, "3 7/16")));
        stands(&mut job, "leg", 3, Dimension::Thickness, at);
        assert_eq!(value(&job, "rail"), inches(rail), "{at:?}");
    }
}

/// Five planks of 5 1/2 with four gaps of 5/16 are 28 3/4. One of 5 3/8 makes it 28 5/8.
#[test]
fn a_top_with_one_narrow_plank_is_narrower_by_the_eighth() {
    let mut job = job(vec![
        kept("Top", "top", &[("find", "top"), ("planks", "5 @ plank width"), ("gap", "5/16")]),
        planned("plank width", "5 1/2"),
        result("top width", 1, "top_overall"),
        planned("by formula", "5 × plank width + 4 × 5/16"),
        part("plank", "5", ["1", "plank width", "50"]),
    ]);
    assert_eq!(value(&job, "by formula"), inches("28 3/4"));
    cut(&mut job, "plank", 2, Some((Dimension::Width, "5 3/8")));
    let all = ["Top: plank widths", "by formula, and all that is worked out from it"];
    stands(&mut job, "plank", 2, Dimension::Width, &all);
    assert_eq!(value(&job, "by formula"), inches("28 5/8"));
    assert_eq!(value(&job, "top width"), inches("28 5/8"));
}

/// 30 between two legs of 3 1/2 with 1/4 proud at each end: 37 1/2. The right leg is 3 9/16 thick:
/// 37 9/16.
#[test]
fn a_dowel_through_one_thick_leg_is_longer_by_the_sixteenth() {
    let entries =
        [("measured", "clear"), ("clear", "30"), ("left_part", "leg thickness"), ("trim", "1/4")];
    let mut job = job(vec![
        kept("Dowel", "dowel", &entries),
        planned("leg thickness", "3 1/2"),
        result("dowel", 1, "cut"),
        part("leg", "4", ["leg thickness", "3 1/2", "30"]),
    ]);
    assert_eq!(value(&job, "dowel"), inches("37 1/2"));
    cut(&mut job, "leg", 1, Some((Dimension::Thickness, "3 9/16")));
    stands(&mut job, "leg", 1, Dimension::Thickness, &["Dowel: right piece"]);
    assert_eq!(value(&job, "dowel"), inches("37 9/16"));
}

/// "All of them" is the size itself: it is measured, and everything follows.
#[test]
fn a_piece_that_stands_nowhere_moves_nothing() {
    let mut job = job(vec![
        planned("leg thickness", "3 1/2"),
        planned("long rail", "44 - 2 × leg thickness"),
        part("leg", "4", ["leg thickness", "leg thickness", "30"]),
    ]);
    cut(&mut job, "leg", 0, Some((Dimension::Thickness, "3 1/4")));
    stands(&mut job, "leg", 0, Dimension::Thickness, &[]);
    assert_eq!(value(&job, "long rail"), inches("37"));
    let found = attention(&job, &worked_out(&job), &Bench::default());
    assert_eq!(found.facts, []);
}

/// On a tape in sixteenths half a mark is 1/32: a rail of 37 cut at 36 7/8 is off. It is right where the job says that 1/8
/// is close enough; one at 36 13/16 is 3/16 short, and is not.
#[test]
fn what_is_close_enough_is_what_the_job_says() {
    let rails = |said: Option<&str>, tape: &str| {
        let mut items = vec![part("rail", "1", ["1 1/2", "3 1/2", "37"])];
        let said = said.map(|size| CloseEnough { size: size.to_owned() });
        items.extend(said.map(Item::CloseEnough));
        let mut job = job(items);
        cut(&mut job, "rail", 0, Some((Dimension::Length, tape)));
        attention(&job, &worked_out(&job), &Bench::default()).facts.len()
    };
    assert_eq!(rails(None, "36 7/8"), 1);
    assert_eq!(rails(Some("1/8"), "36 7/8"), 0);
    assert_eq!(rails(Some("1/8"), "36 13/16"), 1);
}

/// A tick that was a slip takes nothing with it: what the tape said of the piece is still there when it is cut.
#[test]
fn what_was_typed_of_a_piece_stays_when_its_tick_is_taken_back() {
    let mut job = job(vec![part("rail", "1", ["1 1/2", "3 1/2", "37"])]);
    cut(&mut job, "rail", 0, Some((Dimension::Length, "36 7/8")));
    let (id, _) = named(&job, "rail");
    let back = job.not_cutting(id, 0).expect("a piece that is cut");
    job.make(&back).expect("no other");
    assert!(!named(&job, "rail").1.piece(0).is_cut());
    assert_eq!(named(&job, "rail").1.piece(0).tape(Dimension::Length), Some("36 7/8"));
}

/// A size that is measured on the real thing, and was: 39 7/8. The piece of 39 3/4 has a size of its own where it stands, and
/// that is known: nobody has to measure it, and what was noted of the other is not said of it.
#[test]
fn the_size_of_one_piece_does_not_wait_for_a_measurement() {
    let Item::Measure(size) = planned("inside", "40") else { panic!("a size") };
    let (as_cut, note) = (Some("39 7/8".to_owned()), "between the legs".to_owned());
    let mut job = job(vec![
        Item::Measure(Measure { wait: true, as_cut, note, ..size }),
        part("shelf", "2", ["3/4", "11", "inside"]),
        part("cleat", "2", ["3/4", "1", "inside"]),
    ]);
    cut(&mut job, "shelf", 0, Some((Dimension::Length, "39 3/4")));
    stands(&mut job, "shelf", 0, Dimension::Length, &["at cleat 1"]);
    let own = job.measures().into_iter().find(|(_, it)| it.name == "inside 1").expect("its size");
    assert_eq!((own.1.wait, own.1.note.as_str()), (false, ""));
    assert_eq!(value(&job, "inside 1"), inches("39 3/4"));
}

/// A leg stands in no setting of the saw that brought it to size, and in no sum of surfaces to be oiled.
#[test]
fn a_piece_stands_where_pieces_are_put_together() {
    let mut job = job(vec![
        planned("leg", "3 1/4"),
        part("leg", "4", ["leg", "leg", "34"]),
        kept("to size", "resaw-rip", &[("target_width", "leg")]),
        kept("oil", "finish", &[("parts", "4 @ 34 × leg × leg")]),
        kept("front", "frame", &[("overall", "44"), ("leg_left", "leg")]),
    ]);
    cut(&mut job, "leg", 1, Some((Dimension::Thickness, "3 3/16")));
    let (id, reckoned) = (named(&job, "leg").0, worked_out(&job));
    let size = size_of(&job, &reckoned, id, Dimension::Thickness).expect("a size by name");
    let all = spots(&job, &reckoned, size, id);
    let words: Vec<String> = all.iter().map(|spot| spot.words(&job)).collect();
    assert_eq!(words, ["front: left leg", "front: right leg"]);
}
