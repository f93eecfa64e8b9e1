//! Parts from reckonings: which they are, that they stay live, and that making again doubles none.

use super::*;
use crate::job::tests::job_of;
use crate::job::{PartSizes, YardBoard, check_name, part_sizes};
use crate::measure::{Length, length};

/// A job with a leg, a height and one kept reckoning.
fn job_with(title: &str, slug: &str, entries: &[(&str, &str)]) -> (Job, ItemId) {
    let mut job = job_of(&[("leg", "3 1/2"), ("overall", "44"), ("plank", "5 1/2")]);
    let entries = entries.iter().map(|(id, text)| ((*id).to_owned(), (*text).to_owned()));
    let kept = Kept {
        rank: 0,
        title: title.to_owned(),
        slug: slug.to_owned(),
        entries: entries.collect(),
        left: Vec::new(),
    };
    let change = job.adding(0, Item::Kept(kept));
    let id = change.id;
    job.make(&Step::new("keep", vec![change])).expect("a fresh id");
    (job, id)
}

fn making(job: &Job, id: ItemId) -> Option<Making> {
    let bench = Bench::default();
    make_parts(job, &Reckoned::of(job, &bench), &bench, id)
}

fn make(job: &mut Job, id: ItemId) -> Making {
    let making = making(job, id).expect("parts");
    job.make(making.step.as_ref().expect("something to do")).expect("no conflict");
    making
}

/// Name after the colon, quantity and sizes as far as they are known.
fn parts(job: &Job) -> Vec<(String, Option<u32>, [Option<Length>; 3])> {
    let sizes = part_sizes(job, &Reckoned::of(job, &Bench::default()));
    let one = |it: PartSizes| {
        let name = job.item(it.id).map_or("", Item::name);
        let name = name.rsplit_once(": ").map_or(name, |(_, part)| part).to_owned();
        (name, it.quantity.ok(), [it.thickness.ok(), it.width.ok(), it.length.ok()])
    };
    sizes.into_iter().map(one).collect()
}

fn inches(text: &str) -> Option<Length> {
    Some(length(text).expect("a length in a test"))
}

fn write(job: &mut Job, id: ItemId, change: impl FnOnce(&mut Item)) {
    let mut item = job.item(id).expect("here").clone();
    change(&mut item);
    job.make(&Step::new("edit", vec![job.replacing(id, item)])).expect("no conflict");
}

fn set(job: &mut Job, id: ItemId, field: &str, text: &str) {
    write(job, id, |item| {
        let Item::Kept(kept) = item else { panic!() };
        kept.entries.retain(|(id, _)| id != field);
        kept.entries.push((field.to_owned(), text.to_owned()));
    });
}

/// Source: [WH] J1, overall 44 and legs 3 1/2: a rail of 37; legs of 3 7/16: 37 1/8.
#[test]
fn j1_a_rail_made_into_a_part_follows_the_legs() {
    let entries = [("question", "rail"), ("overall", "overall"), ("leg_left", "leg")];
    let (mut job, id) = job_with("end frame, left", "frame", &entries);
    let made = make(&mut job, id);
    assert_eq!(made.measures, ["end frame left: left leg", "end frame left: rail cut length"]);
    assert_eq!(
        parts(&job),
        [
            ("leg".to_owned(), Some(2), [None, inches("3 1/2"), None]),
            ("rail".to_owned(), Some(1), [None, None, inches("37")]),
        ]
    );
    assert_eq!(made.parts[0].still_to_write(), ["thickness", "length"]);
    let leg = job.measures()[0].0;
    write(&mut job, leg, |item| {
        let Item::Measure(leg) = item else { panic!() };
        leg.as_cut = Some("3 7/16".to_owned());
    });
    assert_eq!(parts(&job)[1].2[2], inches("37 1/8"));
    assert_eq!(parts(&job)[0].2[1], inches("3 7/16"));
}

#[test]
fn making_again_doubles_nothing_and_keeps_what_the_user_wrote() {
    let (mut job, id) = job_with("end frame", "frame", &[("leg_left", "leg")]);
    make(&mut job, id);
    let again = making(&job, id).expect("parts");
    assert_eq!((again.step, again.measures.len()), (None, 0));
    assert!(again.parts.iter().all(|part| part.does == Does::Nothing));
    let rail = job.parts()[1].0;
    write(&mut job, rail, |item| {
        let Item::Part(part) = item else { panic!() };
        part.name = "front rail".to_owned();
        part.quantity = "4".to_owned();
        part.thickness = "1 1/2".to_owned();
        part.length = "30".to_owned();
    });
    // From here the overall is found from a rail that is cut.
    set(&mut job, id, "find", "overall");
    let made = make(&mut job, id);
    assert_eq!(
        made.parts.iter().map(|it| it.does).collect::<Vec<_>>(),
        [Does::Nothing, Does::Changes]
    );
    assert_eq!(
        parts(&job)[1],
        ("front rail".to_owned(), Some(4), [inches("1 1/2"), None, inches("39")])
    );
    assert_eq!(job.parts().len(), 2);
    // A right leg of its own: the two alike stay where they are, and are named as left behind.
    set(&mut job, id, "leg_right", "3");
    let made = make(&mut job, id);
    assert_eq!(made.left, [job.parts()[0].0]);
    assert_eq!(job.parts().len(), 4);
}

#[test]
fn making_is_one_step_that_can_be_taken_back() {
    let (mut job, id) = job_with("top", "top", &[("planks", "plank, 5, plank")]);
    let before = job.items().map(|(id, item)| (id, item.clone())).collect::<Vec<_>>();
    let made = make(&mut job, id);
    job.make(&made.step.expect("a step").turned_round()).expect("no conflict");
    assert_eq!(job.items().map(|(id, item)| (id, item.clone())).collect::<Vec<_>>(), before);
}

/// One question: calculator, entries, and the parts as name, quantity and sizes.
type Case = (
    &'static str,
    &'static [(&'static str, &'static str)],
    &'static [(&'static str, u32, [&'static str; 3])],
);

#[test]
fn each_question_has_its_parts() {
    let cases: &[Case] = &[
        (
            "frame",
            &[("leg_left", "3"), ("leg_right", "leg"), ("overall", "40")],
            &[
                ("left leg", 1, ["", "3", ""]),
                ("right leg", 1, ["", "3 1/2", ""]),
                ("rail", 1, ["", "", "33 1/2"]),
            ],
        ),
        (
            "frame",
            &[("find", "leg"), ("overall", "44"), ("rail", "37")],
            &[("leg", 2, ["", "3 1/2", ""]), ("rail", 1, ["", "", "37"])],
        ),
        ("frame", &[("question", "spacer")], &[("spacer block", 2, ["3/4", "", ""])]),
        (
            "frame",
            &[("question", "stretcher"), ("leg_length", "30"), ("apron_width", "0")],
            &[
                ("leg", 2, ["", "", "30"]),
                ("stretcher", 1, ["", "3 1/2", ""]),
                ("block under the stretcher", 2, ["", "", "6"]),
            ],
        ),
        (
            "frame",
            &[("question", "support"), ("supports", "3"), ("depth_overall", "24")],
            &[("support", 3, ["1 1/2", "", "19 1/2"])],
        ),
        (
            "frame",
            &[("question", "lap")],
            &[("front piece", 1, ["3/4", "", ""]), ("rear piece", 1, ["1 1/2", "", ""])],
        ),
        ("top", &[("planks", "4 @ plank")], &[("plank", 4, ["", "5 1/2", ""])]),
        (
            "top",
            &[("find", "rip_all"), ("planks", "5 @ 5 1/2"), ("top_width", "26"), ("gap", "1/4")],
            &[("plank", 5, ["", "5", ""])],
        ),
        (
            "top",
            &[
                ("find", "rip_outer"),
                ("planks", "5 @ plank"),
                ("top_width", "26 1/2"),
                ("gap", "1/4"),
            ],
            &[("outer plank", 2, ["", "4 1/2", ""]), ("inner plank", 3, ["", "5 1/2", ""])],
        ),
        (
            "top",
            &[("planks", "5, plank, 5 1/4"), ("top_width", "17")],
            &[
                ("plank 1", 1, ["", "5", ""]),
                ("plank 2", 1, ["", "5 1/2", ""]),
                ("plank 3", 1, ["", "5 1/4", ""]),
            ],
        ),
        (
            "top",
            &[("question", "overhang"), ("overhang_find", "top"), ("base_length", "overall")],
            &[("top", 1, ["", "28 1/2", "50"])],
        ),
        // Outside to outside 38, and twice the trim of 1/4; a rod of 1 in, measured.
        (
            "dowel",
            &[("overall", "38"), ("trim", "1/4"), ("dowel", "0.985")],
            &[("dowel", 1, ["1", "1", "38 1/2"])],
        ),
        // Between the parts 20, and at each end 1 deep less 1/16.
        (
            "dowel",
            &[("hold", "blind"), ("measured", "clear"), ("clear", "20"), ("dowel", "0.49")],
            &[("dowel", 1, ["1/2", "1/2", "21 7/8"])],
        ),
    ];
    for (slug, entries, expected) in cases {
        let (mut job, id) = job_with("it", slug, entries);
        make(&mut job, id);
        let known = |text: &&str| if text.is_empty() { None } else { inches(text) };
        let expected: Vec<_> = expected
            .iter()
            .map(|(name, n, sides)| {
                (
                    (*name).to_owned(),
                    Some(*n),
                    [known(&sides[0]), known(&sides[1]), known(&sides[2])],
                )
            })
            .collect();
        assert_eq!(parts(&job), expected, "{entries:?}");
    }
}

/// A dowel is called by the size of its rod, and follows it; what the user wrote stays. By hand: 1.02 is off by 0.02 from
/// a rod of 1 in, 0.74 by 0.01 from one of 3/4, and 1.1 by 0.025 from one of 1 1/8 that a yard has; of those sold, 1 and
/// 1 1/4 are off by more than 1/16. A 2x2 is lumber, however near.
#[test]
fn a_dowel_is_cut_from_the_rod_that_it_is() {
    let (mut job, id) = job_with("rail", "dowel", &[("dowel", "1.02"), ("part_height", "leg")]);
    let add = |job: &mut Job, section: &str, side: &str| {
        let board = Item::YardBoard(YardBoard::new(section, [side, side, "48"], 385));
        job.make(&Step::new("add", vec![job.adding(0, board)])).expect("fresh");
    };
    let put = |job: &mut Job| {
        make(job, id);
        let part = job.parts()[0].1.clone();
        [part.stock, part.thickness, part.width]
    };
    add(&mut job, "2x2", "1.02");
    assert_eq!(put(&mut job), ["1 in dowel", "1", "1"]);
    set(&mut job, id, "dowel", "0.74");
    assert_eq!(put(&mut job), ["3/4 in dowel", "3/4", "3/4"]);
    assert_eq!(making(&job, id).expect("a dowel").step, None);
    // No such rod: as it was measured.
    set(&mut job, id, "dowel", "1.1");
    assert_eq!(put(&mut job), ["", "rail: dowel", "rail: dowel"]);
    assert_eq!(parts(&job)[0].2[0], inches("1.1"));
    add(&mut job, "beech rod", "1 1/8");
    assert_eq!(put(&mut job), ["beech rod", "1 1/8", "1 1/8"]);
    // Turned by the user out of something else.
    let dowel = job.parts()[0].0;
    write(&mut job, dowel, |item| {
        let Item::Part(part) = item else { panic!() };
        part.stock = "2x2".to_owned();
        part.thickness = "leg".to_owned();
    });
    set(&mut job, id, "dowel", "0.985");
    let made = making(&job, id).expect("a dowel");
    assert_eq!((made.step, made.parts[0].does), (None, Does::Nothing));
}

#[test]
fn questions_without_parts_and_without_an_answer_offer_none() {
    for (slug, entries) in [
        ("frame", ("question", "square")),
        ("frame", ("question", "tenons")),
        ("top", ("question", "tip")),
        ("tape", ("strip", "leg")),
        ("frame", ("leg_left", "no such name")),
        ("dowel", ("overall", "no such name")),
    ] {
        let (job, id) = job_with("it", slug, &[entries]);
        assert_eq!(making(&job, id), None, "{slug} {entries:?}");
    }
}

/// Fields and results are looked up by id, results first: no id used here may be both.
#[test]
fn no_field_of_frame_or_top_has_the_id_of_a_result() {
    for slug in ["frame", "top"] {
        let calculator = calculators::find(slug).expect("known");
        for field in calculator.fields {
            assert!(calculator.results.iter().all(|result| result.id != field.id), "{}", field.id);
        }
    }
}

#[test]
fn names_of_linked_measures_can_be_used_whatever_the_title() {
    let emoji = "🪑".repeat(500);
    for title in ["2 in", "leg", "4 rails, long", "x", emoji.as_str(), "木の脚"] {
        let entries = [("leg_left", "leg"), ("overall", "44")];
        let (mut job, id) = job_with(title, "frame", &entries);
        for name in make(&mut job, id).measures {
            assert_eq!(check_name(&name, core::iter::empty()), Ok(()), "{name}");
        }
        assert_eq!(parts(&job)[1].2[2], inches("37"), "{title}");
    }
}

/// In what the parts of the job are behind: what is new, what is not made any more, what comes from elsewhere, by name;
/// and whether it is left so.
fn told(job: &Job) -> Option<([Vec<String>; 3], bool)> {
    let bench = Bench::default();
    let all = behind(job, &Reckoned::of(job, &bench), &bench);
    assert!(all.len() < 2, "one reckoning each: {all:?}");
    let (id, behind) = all.into_iter().next()?;
    let Some(Item::Kept(kept)) = job.item(id) else { panic!("{id:?}") };
    let named = |ids: &[ItemId]| {
        let name = |id: &ItemId| job.item(*id).map_or("", Item::name);
        ids.iter().map(name).map(|it| it.rsplit(": ").next().unwrap_or(it).to_owned()).collect()
    };
    let is_left = behind.is_left(kept);
    Some(([behind.missing.clone(), named(&behind.gone), named(&behind.elsewhere)], is_left))
}

type Lists<'a> = [&'a [&'a str]; 3];

fn told_as(lists: Lists, is_left: bool) -> Option<([Vec<String>; 3], bool)> {
    Some((lists.map(|list| list.iter().map(|it| (*it).to_owned()).collect()), is_left))
}

fn leave(job: &mut Job, id: ItemId, is_left: bool) {
    let bench = Bench::default();
    let (_, it) = behind(job, &Reckoned::of(job, &bench), &bench).remove(0);
    let step = leaving(job, id, &it, is_left).expect("a reckoning");
    job.make(&step).expect("no conflict");
}

#[test]
fn parts_of_an_answer_that_makes_others_now_are_told_until_they_are_made_or_left() {
    let (mut job, id) = job_with("top", "top", &[("planks", "5 @ plank"), ("top_width", "30")]);
    assert_eq!(told(&job), None, "nothing was made of it yet");
    make(&mut job, id);
    assert_eq!(told(&job), None);
    // One more of the same is counted by itself.
    set(&mut job, id, "planks", "6 @ plank");
    assert_eq!((told(&job), parts(&job)[0].1), (None, Some(6)));
    // One came out narrower than the others: no longer one part.
    set(&mut job, id, "planks", "plank, 5 3/8, plank");
    let new: Lists = [&["plank 1", "plank 2", "plank 3"], &["plank"], &[]];
    assert_eq!(told(&job), told_as(new, false));
    leave(&mut job, id, true);
    assert_eq!(told(&job), told_as(new, true));
    // More of it is told again.
    set(&mut job, id, "planks", "plank, 5 3/8, plank, plank");
    let more: Lists = [&["plank 1", "plank 2", "plank 3", "plank 4"], &["plank"], &[]];
    assert_eq!(told(&job), told_as(more, false));
    leave(&mut job, id, true);
    leave(&mut job, id, false);
    assert_eq!(told(&job), told_as(more, false), "looked at again");
    // Made again, what is not made any more stays, and is told until it is out.
    make(&mut job, id);
    assert_eq!(told(&job), told_as([&[], &["plank"], &[]], false));
    let plank = job.parts().into_iter().find(|(_, it)| it.name == "top: plank").expect("there").0;
    job.make(&Step::new("take out", without(&job, plank))).expect("no conflict");
    assert_eq!(told(&job), None);
}

#[test]
fn a_part_that_is_taken_out_is_not_asked_for() {
    let entries = [("question", "stretcher"), ("leg_length", "30"), ("apron_width", "0")];
    let (mut job, id) = job_with("it", "frame", &entries);
    make(&mut job, id);
    let block = job.parts()[2].0;
    job.make(&Step::new("take out", without(&job, block))).expect("no conflict");
    assert_eq!(told(&job), told_as([&["block under the stretcher"], &[], &[]], true));
    // An apron is another matter.
    set(&mut job, id, "apron_width", "4");
    let both: Lists = [&["apron", "block under the stretcher"], &[], &[]];
    assert_eq!(told(&job), told_as(both, false));
}

/// What came of the answer is told when it comes from elsewhere in it; what the user wrote is his.
#[test]
fn a_size_from_elsewhere_in_the_answer_is_told_and_one_of_the_user_is_not() {
    let (mut job, id) = job_with("it", "frame", &[("leg_left", "leg")]);
    make(&mut job, id);
    set(&mut job, id, "find", "overall");
    assert_eq!(told(&job), told_as([&[], &[], &["rail"]], false));
    let rail = job.parts()[1].0;
    write(&mut job, rail, |item| {
        let Item::Part(part) = item else { panic!() };
        part.length = "30".to_owned();
    });
    assert_eq!(told(&job), None);
    // 1.02 is a rod of 1 in, 0.74 one of 3/4.
    let (mut job, id) = job_with("rail", "dowel", &[("dowel", "1.02")]);
    make(&mut job, id);
    set(&mut job, id, "dowel", "0.74");
    assert_eq!(told(&job), told_as([&[], &[], &["dowel"]], false));
    leave(&mut job, id, true);
    // Another rod again is another difference.
    set(&mut job, id, "dowel", "0.51");
    assert_eq!(told(&job), told_as([&[], &[], &["dowel"]], false));
    make(&mut job, id);
    assert_eq!(told(&job), None);
}

/// A leg that is cut and came out thin stands at the left: the rail moves, and the two legs stay one part.
#[test]
fn a_piece_with_a_size_of_its_own_stays_in_its_part() {
    use crate::job::own_size::{size_of, spots, standing};
    use crate::job::{Dimension, Dimensions, Piece};
    let (mut job, id) = job_with("it", "frame", &[("leg_left", "leg"), ("overall", "44")]);
    make(&mut job, id);
    let (leg, bench) = (job.parts()[0].0, Bench::default());
    write(&mut job, leg, |item| {
        let Item::Part(part) = item else { panic!() };
        part.width = "leg".to_owned();
        let cut = Dimensions { width: inches("3 7/16"), ..Dimensions::default() };
        *part = part.clone().with_piece(0, Piece::cut(cut));
    });
    let reckoned = Reckoned::of(&job, &bench);
    let size = size_of(&job, &reckoned, leg, Dimension::Width).expect("a size by name");
    let all = spots(&job, &reckoned, size, leg);
    let at: Vec<_> = all.into_iter().filter(|it| it.words(&job) == "it: left leg").collect();
    let step = standing(&job, &reckoned, &bench, (leg, 0, Dimension::Width), &at);
    job.make(&step.expect("it stands there")).expect("no conflict");
    // By hand: 44 - 3 1/2 - 3 7/16.
    assert_eq!(parts(&job)[1].2[2], inches("37 1/16"));
    assert_eq!(told(&job), told_as([&["left leg", "right leg"], &["leg"], &[]], true));
}
