//! Rules of the job book: names, circles, what moved, rescue, conflicts.

use super::moved::{Means, Member, mismatches, moved};
use super::*;
use crate::measure::text::Quantity;
use crate::measure::{Length, Number, length};
use crate::sheet::Bench;

/// A job of measures, for tests: `name = formula`.
pub(crate) fn job_of(measures: &[(&str, &str)]) -> Job {
    let mut job = Job::new("potting bench (invented)", Unit::Inch);
    for (rank, (name, formula)) in (0..).zip(measures) {
        let change = job.adding(0, Item::Measure(measure(rank, name, formula)));
        job.make(&Step::new("add", vec![change])).expect("a fresh id");
    }
    job
}

pub(crate) fn measure(rank: i64, name: &str, formula: &str) -> Measure {
    Measure {
        rank,
        ..Measure::new(name, MeasureKind::Length, Written::Formula(formula.to_owned()))
    }
}

pub(crate) fn id_of(job: &Job, name: &str) -> ItemId {
    job.measures().into_iter().find(|(_, m)| m.name == name).expect("this name").0
}

pub(crate) fn edit(job: &mut Job, name: &str, change: impl FnOnce(&mut Measure)) -> Step {
    let id = id_of(job, name);
    let Some(Item::Measure(old)) = job.item(id).cloned() else { panic!() };
    let mut new = old;
    change(&mut new);
    let step = Step::new("edit", vec![job.replacing(id, Item::Measure(new))]);
    job.make(&step).expect("no conflict");
    step
}

pub(crate) fn value(job: &Job, name: &str) -> Length {
    let reckoned = Reckoned::of(job, &Bench::default());
    reckoned.measure(id_of(job, name)).and_then(MeasureState::length).expect("a length")
}

pub(crate) fn problem(job: &Job, name: &str) -> String {
    let reckoned = Reckoned::of(job, &Bench::default());
    let state = reckoned.measure(id_of(job, name)).expect("this measure");
    state.planned.clone().expect_err("a problem").to_string()
}

pub(crate) fn inches(text: &str) -> Length {
    length(text).expect("a length in a test")
}

pub(crate) const FRAME: &[(&str, &str)] = &[
    ("overall", "44"),
    ("leg", "3 1/2"),
    ("front rail", "overall - 2 × leg"),
    ("half rail", "front rail / 2"),
];

#[test]
fn names_with_spaces_are_found_by_longest_match() {
    let job =
        job_of(&[("rail", "10"), ("rail long", "20"), ("sum", "rail long + rail"), ("legs", "1")]);
    assert_eq!(value(&job, "sum"), inches("30"));
    let job = job_of(&[("leg", "3"), ("x", "legs + 1")]);
    assert_eq!(
        problem(&job, "x"),
        "“legs” is not a unit or a known name. Units are in, ft, mm, cm and m."
    );
}

#[test]
fn names_of_any_script_work_in_formulas() {
    let job = job_of(&[
        ("脚の厚さ", "3 1/2"),
        ("🪑 width", "脚の厚さ × 2"),
        ("breite für tür", "🪑 width + 脚の厚さ"),
    ]);
    assert_eq!(value(&job, "breite für tür"), inches("10 1/2"));
}

#[test]
fn a_name_that_would_hide_a_measure_is_refused() {
    let check = |name: &str| check_name(name, ["leg"].into_iter());
    for name in ["2", "2 in", "in", "mm", "x", "3/8", "+", "½", "5'", "(", "- 4"] {
        assert_eq!(check(name), Err(NameProblem::IsAMeasure), "{name}");
    }
    assert_eq!(check("leg"), Err(NameProblem::Taken));
    assert_eq!(check(" \u{a0}"), Err(NameProblem::Empty));
    assert_eq!(check("a\nb"), Err(NameProblem::Invisible));
    assert_eq!(check(&"n".repeat(501)), Err(NameProblem::TooLong));
    for name in ["front rail", "leg 2", "2x4 leg", "腿", "🪑", "rail-left", &"n".repeat(500)] {
        assert_eq!(check(name), Ok(()), "{name}");
    }
}

#[test]
fn a_circle_names_its_members() {
    let job = job_of(&[
        ("a part", "b part + 1"),
        ("b part", "c part"),
        ("c part", "a part"),
        ("d part", "a part"),
    ]);
    assert_eq!(
        problem(&job, "a part"),
        "This needs itself: a part ← b part ← c part ← a part. Give one of them a size of its own."
    );
    assert!(problem(&job, "d part").contains("a part ← b part ← c part"));
}

/// A part that is made of such a size has its other sizes, and says why this one has none.
#[test]
fn a_part_made_of_a_circle_says_so() {
    let mut job = job_of(&[("a part", "b part + 1"), ("b part", "a part")]);
    let change = job.adding(0, Item::Part(part(0, "strip", "2", "a part")));
    job.make(&Step::new("add", vec![change])).expect("fresh");
    let sizes = part_sizes(&job, &Reckoned::of(&job, &Bench::default()));
    assert_eq!((sizes.len(), sizes[0].quantity.clone()), (1, Ok(2)));
    assert_eq!(sizes[0].length, Ok(inches("20")));
    assert!(sizes[0].width.is_err(), "{:?}", sizes[0].width);
}

#[test]
fn a_circle_of_the_most_sizes_is_told_at_once_and_opens_at_one_measure() {
    let all: Vec<(String, String)> =
        (0..2_000).map(|n| (format!("ring {n}"), format!("ring {}", (n + 1) % 2_000))).collect();
    let all: Vec<(&str, &str)> = all.iter().map(|(a, b)| (a.as_str(), b.as_str())).collect();
    let mut job = job_of(&all);
    assert!(
        problem(&job, "ring 1999").starts_with("This needs itself: ring 1999 ← ring 0 ← ring 1")
    );
    assert!(problem(&job, "ring 7").chars().count() < 200);
    edit(&mut job, "ring 5", |m| m.as_cut = Some("7".to_owned()));
    assert_eq!(value(&job, "ring 6"), inches("7"));
}

#[test]
fn formulas_a_hundred_deep_and_names_of_any_length_work() {
    let deep = format!("{}3{}", "(".repeat(100), ")".repeat(100));
    let long = "🪑".repeat(500);
    let formula = format!("2 × {}", "木".repeat(400));
    let job =
        job_of(&[("deep", &deep), (&long, "deep + 1"), (&"木".repeat(400), "4"), ("x2", &formula)]);
    assert_eq!(value(&job, &long), inches("4"));
    assert_eq!(value(&job, "x2"), inches("8"));
    let too_deep = format!("{}3{}", "(".repeat(200), ")".repeat(200));
    assert!(!problem(&job_of(&[("deep", &too_deep)]), "deep").is_empty());
}

#[test]
fn a_size_as_cut_opens_a_circle() {
    let mut job = job_of(&[("overall", "rail + 7"), ("rail", "overall - 7")]);
    edit(&mut job, "rail", |m| m.as_cut = Some("37".to_owned()));
    assert_eq!(value(&job, "overall"), inches("44"));
}

#[test]
fn legs_cut_thin_move_the_rail_and_what_depends_on_it() {
    let mut job = job_of(FRAME);
    let before = Reckoned::of(&job, &Bench::default());
    edit(&mut job, "leg", |m| m.as_cut = Some("3 7/16".to_owned()));
    let after = Reckoned::of(&job, &Bench::default());
    let list: Vec<_> = moved(&job, &before, &after)
        .into_iter()
        .map(|m| (job.item(m.id).expect("here").name().to_owned(), m.by, m.means))
        .collect();
    assert_eq!(
        list,
        [
            ("front rail".to_owned(), Some(inches("1/8")), Means::NewNumber),
            ("half rail".to_owned(), Some(inches("1/16")), Means::NewNumber),
        ]
    );
}

#[test]
fn a_size_is_as_the_tape_says_only_where_that_can_be_read() {
    let mut job = job_of(FRAME);
    let said = |job: &Job| {
        let reckoned = Reckoned::of(job, &Bench::default());
        let state = reckoned.measure(id_of(job, "leg")).expect("a leg");
        (state.is_as_cut(), state.length())
    };
    let planned = said(&job).1;
    assert_eq!(said(&job), (false, planned));
    edit(&mut job, "leg", |m| m.as_cut = Some("3 7/16".to_owned()));
    assert_eq!(said(&job), (true, Some(inches("3 7/16"))));
    edit(&mut job, "leg", |m| m.as_cut = Some("3 7/".to_owned()));
    assert_eq!(said(&job), (false, planned));
}

#[test]
fn legs_that_must_match_are_flagged_when_they_drift() {
    let mut job = job_of(&[("leg 1", "28"), ("leg 2", "28"), ("leg 3", "28")]);
    let members = job.measures().into_iter().map(|(id, _)| id).collect();
    let group =
        Match { name: "legs".to_owned(), measures: members, drift: "1/16".to_owned(), left: None };
    let change = job.adding(0, Item::Match(group));
    job.make(&Step::new("match", vec![change])).expect("fresh");
    edit(&mut job, "leg 2", |m| m.as_cut = Some("27 15/16".to_owned()));
    assert_eq!(mismatches(&job, &Reckoned::of(&job, &Bench::default())), []);
    edit(&mut job, "leg 3", |m| m.as_cut = Some("28 1/32".to_owned()));
    let flagged = mismatches(&job, &Reckoned::of(&job, &Bench::default()));
    let leg = |name| Member::Measure(id_of(&job, name));
    assert_eq!(flagged[0].least, (leg("leg 2"), inches("27 15/16")));
    assert_eq!(flagged[0].most, (leg("leg 3"), inches("28 1/32")));
}

#[test]
fn renaming_follows_into_every_formula_and_no_other_word() {
    let mut job =
        job_of(&[("leg", "3"), ("leg cap", "leg + 1"), ("both", "leg + leg cap + 2 × leg")]);
    let reckoned = Reckoned::of(&job, &Bench::default());
    let changes = job.renaming(id_of(&job, "leg"), "post", &reckoned);
    job.make(&Step::new("rename", changes)).expect("no conflict");
    let texts: Vec<_> = job
        .measures()
        .into_iter()
        .map(|(_, m)| match &m.written {
            Written::Formula(text) => (m.name.as_str(), text.as_str()),
            Written::Linked(_) => panic!(),
        })
        .collect();
    assert_eq!(
        texts,
        [("post", "3"), ("leg cap", "post + 1"), ("both", "post + leg cap + 2 × post")]
    );
}

#[test]
fn a_reckoning_is_worked_out_again_and_its_result_is_linked() {
    let mut job = job_of(&[("overall", "44")]);
    let kept = Kept {
        rank: 0,
        title: "half".to_owned(),
        slug: "tape".to_owned(),
        entries: vec![("strip".to_owned(), "overall / 2".to_owned())],
        left: Vec::new(),
    };
    let change = job.adding(0, Item::Kept(kept));
    let kept = change.id;
    job.make(&Step::new("keep", vec![change])).expect("fresh");
    let linked = Linked { kept, result: "read".to_owned(), index: 0 };
    let half = Measure { written: Written::Linked(linked), ..measure(1, "half", "") };
    let change = job.adding(0, Item::Measure(half));
    job.make(&Step::new("link", vec![change])).expect("fresh");
    assert_eq!(value(&job, "half"), inches("22"));
    edit(&mut job, "overall", |m| m.written = Written::Formula("45".to_owned()));
    assert_eq!(value(&job, "half"), inches("22 1/2"));
    let change = job.removing(kept);
    job.make(&Step::new("take out", vec![change])).expect("no conflict");
    assert_eq!(
        problem(&job, "half"),
        "The kept calculator that this came from is gone. Write a size instead."
    );
}

/// A choice may be called like a measure: `rail` is a question of the frame.
#[test]
fn a_choice_is_no_name() {
    let mut job = job_of(&[("rail", "30"), ("overall", "44")]);
    let entries = [("question", "rail"), ("find", "rail"), ("overall", "overall")];
    let kept = Kept {
        rank: 0,
        title: "frame".to_owned(),
        slug: "frame".to_owned(),
        entries: entries.map(|(id, text)| (id.to_owned(), text.to_owned())).to_vec(),
        left: Vec::new(),
    };
    let change = job.adding(0, Item::Kept(kept));
    let id = change.id;
    job.make(&Step::new("keep", vec![change])).expect("fresh");
    let reckoned = Reckoned::of(&job, &Bench::default());
    let overall = id_of(&job, "overall");
    assert_eq!(
        reckoned.needs(id).map(|needs| needs.iter().copied().collect()),
        Some(vec![overall])
    );
    let changes = job.renaming(id_of(&job, "rail"), "front rail", &reckoned);
    assert_eq!(changes.len(), 1, "only the measure itself");
    let changes = job.renaming(overall, "width", &reckoned);
    job.make(&Step::new("rename", changes)).expect("no conflict");
    let Some(Item::Kept(kept)) = job.item(id) else { panic!() };
    assert_eq!(kept.entries[2].1, "width");
}

#[test]
fn a_number_measure_counts_and_a_length_measure_measures() {
    let mut job = job_of(&[("slat", "3 1/2"), ("slats", "6"), ("bare", "slat × slats")]);
    edit(&mut job, "slats", |m| m.kind = MeasureKind::Number);
    assert_eq!(value(&job, "bare"), inches("21"));
    let reckoned = Reckoned::of(&job, &Bench::default());
    let slats = reckoned.measure(id_of(&job, "slats")).and_then(MeasureState::in_use);
    assert_eq!(slats, Some(Quantity::Plain(Number::whole(6))));
    edit(&mut job, "slats", |m| m.written = Written::Formula("6 in".to_owned()));
    assert_eq!(problem(&job, "slats"), "A plain number is wanted here. Take out the unit.");
}

pub(crate) fn part(rank: i64, name: &str, quantity: &str, width: &str) -> Part {
    Part { rank, may_rip: true, may_resaw: true, ..Part::new(name, quantity, ["3/4", width, "20"]) }
}

#[test]
fn a_part_waits_until_the_frame_is_measured() {
    let mut job = job_of(&[("frame inside", "40"), ("shelf", "frame inside - 1/4")]);
    edit(&mut job, "frame inside", |m| m.wait = true);
    let shelf = Part { length: "shelf".to_owned(), ..part(0, "shelf board", "2", "5 1/2") };
    let change = job.adding(0, Item::Part(shelf));
    job.make(&Step::new("add", vec![change])).expect("fresh");
    let sizes = |job: &Job| part_sizes(job, &Reckoned::of(job, &Bench::default()));
    assert_eq!(sizes(&job)[0].waits_for, [id_of(&job, "frame inside")]);
    edit(&mut job, "frame inside", |m| m.as_cut = Some("40 1/8".to_owned()));
    assert_eq!(sizes(&job)[0].waits_for, []);
    assert_eq!(sizes(&job)[0].length, Ok(inches("39 7/8")));
}

#[test]
fn a_quantity_is_a_whole_number_of_pieces() {
    let mut job = job_of(&[]);
    let change = job.adding(0, Item::Part(part(0, "strip", "2 1/2", "1")));
    job.make(&Step::new("add", vec![change])).expect("fresh");
    let sizes = part_sizes(&job, &Reckoned::of(&job, &Bench::default()));
    let problem = sizes[0].quantity.clone().expect_err("no whole number");
    assert_eq!(problem.to_string(), "This must be a whole number from 1 to 1000.");
}

#[test]
fn two_pages_never_overwrite_each_other_unseen() {
    let mut stored = job_of(FRAME);
    let mut other_page = stored.clone();
    edit(&mut stored, "leg", |m| m.as_cut = Some("3 7/16".to_owned()));
    // The other page still shows the old leg. Its edit of another measure goes in ...
    let rename = edit(&mut other_page, "overall", |m| m.note = "by the door".to_owned());
    assert_eq!(stored.make(&rename), Ok(()));
    // ... and its edit of the same field is refused by name.
    let clash = edit(&mut other_page, "leg", |m| m.as_cut = Some("3 1/4".to_owned()));
    let conflict = stored.rebased(&clash).expect_err("a conflict");
    assert_eq!(
        conflict.to_string(),
        "Changed elsewhere in the meantime: leg (the tape says). Look at it, then change it again."
    );
    assert_eq!(value(&stored, "leg"), inches("3 7/16"));
}

/// The limits that are promised: 2,000 sizes and 1,000 parts.
#[test]
fn a_job_takes_as_much_as_it_promises() {
    let mut job = Job::new("large", Unit::Inch);
    let size = |n: i64| Item::Measure(measure(n, &format!("size {n}"), "1"));
    let fill: Vec<Item> =
        (0..2_000).map(size).chain((0..1_000).map(|_| Item::Part(Part::default()))).collect();
    let changes = (0..).zip(fill).map(|(offset, item)| job.adding(offset, item)).collect();
    job.make(&Step::new("fill", changes)).expect("room for all");
    for one_more in [size(2_000), Item::Part(Part::default())] {
        let step = Step::new("one more", vec![job.adding(0, one_more)]);
        assert!(job.make(&step).is_err());
    }
}

#[test]
fn a_full_job_takes_no_more_and_gives_what_it_has() {
    let mut job = Job::new("full", Unit::Inch);
    let round = || Item::Round(Round { name: "can".to_owned(), diameter: "6".to_owned() });
    let all = (0..500).map(|offset| job.adding(offset, round())).collect();
    job.make(&Step::new("fill", all)).expect("room for all");
    let one_more = Step::new("add", vec![job.adding(0, round())]);
    let problem = job.make(&one_more).expect_err("no room");
    assert_eq!(
        problem.to_string(),
        "A job holds up to 500 other things. Take one out, or begin another job."
    );
    let first = job.items().next().expect("an item").0;
    let swap = Step::new("swap", vec![job.removing(first), job.adding(0, round())]);
    assert_eq!(job.make(&swap), Ok(()));
    assert_eq!(job.items().count(), 500);
}

#[test]
fn the_oldest_steps_are_let_go_and_a_new_step_ends_redoing() {
    let mut job = job_of(&[("leg", "1")]);
    let mut history = History::default();
    let id = id_of(&job, "leg");
    for n in 2..=251 {
        let step = Step::new(
            "edit",
            vec![job.replacing(id, Item::Measure(measure(0, "leg", &n.to_string())))],
        );
        history.make(&mut job, step).expect("no conflict");
    }
    let mut undone = 0;
    while history.undo(&mut job).expect("no conflict") {
        undone += 1;
    }
    assert_eq!((undone, value(&job, "leg")), (200, inches("51")));
    assert_eq!(history.redo(&mut job), Ok(true));
    assert_eq!(value(&job, "leg"), inches("52"));
    let step = Step::new("edit", vec![job.replacing(id, Item::Measure(measure(0, "leg", "9")))]);
    history.make(&mut job, step).expect("no conflict");
    assert_eq!(history.redo(&mut job), Ok(false));
}

#[test]
fn the_demo_says_it_is_invented_and_every_size_in_it_works_out() {
    let job = demo::demo();
    assert!(job.title.contains("invented"));
    let reckoned = Reckoned::of(&job, &Bench::default());
    for (id, measure) in job.measures() {
        let planned = &reckoned.measure(id).expect("worked out").planned;
        assert!(planned.is_ok(), "{}: {planned:?}", measure.name);
    }
    for sizes in part_sizes(&job, &reckoned) {
        assert!(sizes.quantity.is_ok() && sizes.thickness.is_ok(), "{sizes:?}");
        assert!(sizes.width.is_ok() && sizes.length.is_ok(), "{sizes:?}");
    }
    for (id, kept) in job.kept() {
        let sheet = reckoned.kept(id).expect("a known calculator");
        assert!(sheet.answer.is_some(), "{}: {:?}", kept.title, sheet.refusals);
    }
    let all = job.kept();
    for calculator in crate::calculators::ALL {
        let mut here = all.iter().filter(|(_, kept)| kept.slug == calculator.slug);
        let uses_names = |id| reckoned.needs(id).is_some_and(|needs| !needs.is_empty());
        assert!(here.any(|(id, _)| uses_names(*id)), "no {} with names", calculator.slug);
    }
    for (_, kept) in all {
        // What is kept is asked: an entry that is never read would be a slip.
        let (entries, bench) = (kept.as_entries(job.unit), Bench::default());
        let calculator = crate::calculators::find(&kept.slug).expect("known");
        for (field, _) in &kept.entries {
            let is_asked = calculator.asked(&entries, &bench).any(|it| it.id == field);
            assert!(is_asked, "{}: {field}", kept.title);
        }
    }
    assert_eq!(mismatches(&job, &reckoned), []);
    assert_eq!(value(&job, "long rail"), inches("41"));
}

/// The shapes of one role in a scene, as left, top, width and height.
fn rects(scene: &crate::drawing::Scene, role: crate::drawing::Role) -> Vec<[f64; 4]> {
    let of_role = scene.items.iter().filter(|item| item.role == role);
    of_role
        .filter_map(|item| match item.shape {
            crate::drawing::Shape::Rect(x, y, w, h) => Some([x, y, w, h]),
            _ => None,
        })
        .collect()
}

#[test]
fn the_sketch_is_to_scale_and_marks_what_moved_in_words_too() {
    use crate::drawing::{Role, Shape};
    let job = demo::demo();
    let reckoned = Reckoned::of(&job, &Bench::default());
    let nothing = std::collections::BTreeSet::new();
    let tape = Bench::default().tape;
    let views = sketch::views(&job, &reckoned, &nothing, tape).expect("a sketch");
    // Rail, two legs, top: 41 × 3 1/4 between legs 3 1/4 wide under a top 50 1/2 long.
    let wood = rects(&views.front, Role::Wood);
    let scale = wood[3][2] / 50.5;
    let inches: Vec<[f64; 2]> = wood.iter().map(|r| [r[2] / scale, r[3] / scale]).collect();
    for (found, expected) in
        inches.iter().zip([[41.0, 3.25], [3.25, 33.5], [3.25, 33.5], [50.5, 1.0]])
    {
        assert!(
            (found[0] - expected[0]).abs() < 1e-6 && (found[1] - expected[1]).abs() < 1e-6,
            "{inches:?}"
        );
    }
    let is_marked = |scene: &crate::drawing::Scene| {
        scene
            .items
            .iter()
            .any(|item| matches!(&item.shape, Shape::Text(.., words) if words == "moved: leg, rail length"))
            && scene.items.iter().any(|item| item.role == Role::CutLine)
    };
    assert!(!is_marked(&views.front));
    let leg = std::collections::BTreeSet::from([id_of(&job, "leg")]);
    let views = sketch::views(&job, &reckoned, &leg, tape).expect("a sketch");
    assert!(is_marked(&views.side), "{:?}", views.side);
}

#[test]
fn a_sketch_that_cannot_be_is_left_out() {
    let mut job = demo::demo();
    edit(&mut job, "leg", |m| m.written = Written::Formula("30".to_owned()));
    let reckoned = Reckoned::of(&job, &Bench::default());
    assert!(sketch::views(&job, &reckoned, &Default::default(), Bench::default().tape).is_none());
}
