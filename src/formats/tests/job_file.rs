//! The job file: it opens again as it was, follows its schema, and refuses or sets aside what is
//! wrong.

use proptest::prelude::*;
use reckoner_core::attention::{Fact, attention};
use reckoner_core::job::{
    Dimension, Dimensions, History, Item, ItemId, Job, Made, Measure, MeasureKind, Part, Piece,
    PieceState, Reckoned, Saw, Step, Written, demo::demo,
};
use reckoner_core::measure::{Length, Unit};
use reckoner_core::sheet::Bench;
use reckoner_formats::{
    MAX_FILE, OpenProblem, open_job, read_history, read_step, schema, write_history, write_job,
    write_step,
};
use serde_json::{Value, json};

fn validator() -> jsonschema::Validator {
    let schema = serde_json::from_str(&schema()).expect("JSON");
    jsonschema::validator_for(&schema).expect("a valid schema")
}

fn file(items: Value) -> Value {
    json!({"format": "sawdust-reckoner-job", "version": 1, "title": "t", "unit": "in", "next_id": 1, "items": items})
}

#[test]
fn the_demo_opens_again_as_it_was_and_follows_the_schema() {
    let job = demo();
    let text = write_job(&job);
    let value: Value = serde_json::from_str(&text).expect("JSON");
    if let Err(error) = validator().validate(&value) {
        panic!("{error}");
    }
    let opened = open_job(&text).expect("a job file");
    assert_eq!(opened.job, job);
    assert_eq!(opened.set_aside, []);
}

/// Run with `UPDATE_SCHEMA=1` to write the file anew after the format changed.
#[test]
fn the_schema_in_the_repository_is_current() {
    let file = concat!(env!("CARGO_MANIFEST_DIR"), "/job.schema.json");
    let now = schema() + "\n";
    if std::env::var_os("UPDATE_SCHEMA").is_some() {
        std::fs::write(file, &now).expect("writing the schema");
    }
    let written = std::fs::read_to_string(file).expect("reading the schema");
    assert!(
        written == now,
        "run this test with UPDATE_SCHEMA=1 and commit src/formats/job.schema.json"
    );
}

#[test]
fn the_schema_refuses_what_the_reader_sets_aside() {
    let validator = validator();
    for item in [
        json!({"id": 1, "kind": "saw", "name": "s", "kerf": "1/8", "reach": "3"}),
        json!({"id": 1, "kind": "saw", "name": "s", "kerf": 0.125, "reach": "3", "fence": "left"}),
        json!({"id": 1, "kind": "hovercraft"}),
        json!({"id": -1, "kind": "round", "name": "can", "diameter": "6"}),
    ] {
        let value = file(json!([item]));
        assert!(!validator.is_valid(&value), "{value}");
        let opened = open_job(&value.to_string()).expect("the rest opens");
        assert_eq!(opened.set_aside.len(), 1, "{value}");
        assert_eq!(opened.job.items().count(), 0);
    }
}

/// A stored file of every version that was ever written must open.
#[test]
fn the_first_version_still_opens() {
    let opened = open_job(include_str!("fixtures/job_v1.json")).expect("a version 1 file");
    assert_eq!(opened.set_aside, []);
    assert_eq!(opened.job.title, "Potting bench (demo, invented)");
    let leg = opened.job.measures().into_iter().find(|(_, m)| m.name == "leg").expect("the leg");
    assert_eq!(leg.1.as_cut.as_deref(), Some("3 3/16"));
    assert_eq!(opened.job.parts().len(), 2);
    // Its ticks said no sizes: nobody may take them as right.
    let (id, part) = opened.job.parts()[0];
    let leg = part.piece(0);
    assert_eq!((leg.state(), leg.tape(Dimension::Length)), (PieceState::Cut, Some("33 7/16")));
    assert_eq!(Dimension::ALL.map(|of| leg.recorded(of)), [None; 3]);
    let bench = Bench::default();
    let found = attention(&opened.job, &Reckoned::of(&opened.job, &bench), &bench);
    assert!(found.facts.contains(&Fact::NotRecorded { part: id, pieces: vec![0] }), "{found:?}");
}

/// One of each: cut as wanted, measured, left as it is, to be cut again, as before, to cut.
#[test]
fn the_second_version_still_opens() {
    let opened = open_job(include_str!("fixtures/job_v2.json")).expect("a version 2 file");
    assert_eq!(opened.set_aside, []);
    let (_, rail) = opened.job.parts()[0];
    let inches = |n| Some(Length::of_inch(n, 16).expect("small"));
    let sizes =
        |length| Dimensions { thickness: inches(24), width: inches(52), length: inches(length) };
    let cut = || Piece::cut(sizes(656));
    let wide = cut().measured(Dimension::Width, Some("3 5/16".to_owned()));
    let expected = [
        cut(),
        wide.clone(),
        wide.leaving(Dimension::Width, inches(1)),
        Piece::again(sizes(650)),
        Piece::cut(Dimensions::default()),
        Piece::default(),
        cut().measured(Dimension::Length, Some("41 1/16".to_owned())),
    ];
    assert_eq!(rail.pieces, expected);
    let left = opened.job.items().filter_map(|(_, item)| match item {
        Item::Measure(it) => it.left,
        Item::Match(it) => it.left,
        _ => None,
    });
    assert_eq!(left.collect::<Vec<_>>(), [inches(-2).expect("some"), inches(3).expect("some")]);
    assert!(
        opened.job.items().any(|(_, it)| matches!(it, Item::CloseEnough(it) if it.size == "1/16"))
    );
    assert_eq!(open_job(&write_job(&opened.job)).expect("opens").job, opened.job);
}

#[test]
fn a_damaged_item_is_set_aside_and_the_rest_opens() {
    let good = json!({"id": 2, "kind": "round", "name": "can", "diameter": "6"});
    let both = json!({"id": 3, "kind": "measure", "rank": 0, "name": "leg", "formula": "1", "linked": {"reckoning": 1, "result": "read"}});
    let again = json!({"id": 2, "kind": "round", "name": "pot", "diameter": "7"});
    let hides = json!({"id": 4, "kind": "measure", "rank": 0, "name": "2 in", "formula": "1"});
    let long = json!({"id": 5, "kind": "round", "name": "n".repeat(501), "diameter": "7"});
    let last = json!({"id": u64::MAX, "kind": "round", "name": "pot", "diameter": "7"});
    let opened =
        open_job(&file(json!([good, both, again, hides, long, last, 7, null])).to_string())
            .expect("opens");
    assert_eq!(opened.job.items().count(), 1);
    let whys: Vec<_> = opened.set_aside.iter().map(|s| (s.number, s.why.as_str())).collect();
    assert_eq!(whys[0], (2, "a measure has either a formula or a linked result"));
    assert_eq!(whys[1], (3, "another item has the same id"));
    assert_eq!(whys[2], (4, "This reads as a measure or a sign. Choose a name with a word in it."));
    assert_eq!(whys[3], (5, "a text in it is longer than 500 characters"));
    assert_eq!(whys[4], (6, "its id is out of range"));
    assert_eq!(whys.len(), 7);
    assert!(opened.set_aside[1].text.contains("pot"), "the piece is kept as it stood");
}

/// Files from before names were looked at so closely, and files from elsewhere.
#[test]
fn names_that_cannot_be_seen_or_told_apart_lose_no_item() {
    let size = |id: u64, name: &str| json!({"id": id, "kind": "measure", "rank": id, "name": name, "formula": "3"});
    let items = json!([
        size(1, "leg"),
        size(2, "leg"),
        size(3, "le\u{200b}g"),
        size(4, "\u{202e}gel"),
        size(5, "\u{2066}\u{2069}"),
        {"id": 6, "kind": "round", "name": "ca\u{feff}n", "diameter": "6"},
    ]);
    let opened = open_job(&file(items).to_string()).expect("opens");
    assert_eq!(opened.set_aside, []);
    let names: Vec<_> = opened.job.items().map(|(_, item)| item.name().to_owned()).collect();
    assert_eq!(names, ["leg", "leg", "leg", "gel", "no name 5", "can"]);
    let mut named = file(json!([]));
    named["title"] = json!(" \u{202e}hcneb\u{200b} ");
    assert_eq!(open_job(&named.to_string()).expect("opens").job.title, "hcneb");
}

#[test]
fn what_is_no_job_is_refused_with_a_reason() {
    let many = |n: usize| {
        (1..=n)
            .map(|id| json!({"id": id, "kind": "round", "name": "c", "diameter": "6"}))
            .collect::<Value>()
    };
    for (text, problem) in [
        ("".to_owned(), OpenProblem::NotJson(1, 0)),
        ("{\"format\":".to_owned(), OpenProblem::NotJson(1, 10)),
        ("[]".to_owned(), OpenProblem::NotAJob),
        (json!({"format": "other"}).to_string(), OpenProblem::NotAJob),
        (
            json!({"format": "sawdust-reckoner-job", "version": 3, "items": []}).to_string(),
            OpenProblem::Later(3),
        ),
        (
            json!({"format": "sawdust-reckoner-job", "version": "1", "items": []}).to_string(),
            OpenProblem::NotAJob,
        ),
        (json!({"format": "sawdust-reckoner-job", "version": 1}).to_string(), OpenProblem::NotAJob),
        (file(many(501)).to_string(), OpenProblem::TooMany("other items", 500)),
        (" ".repeat(MAX_FILE + 1), OpenProblem::TooLarge),
    ] {
        assert_eq!(open_job(&text), Err(problem));
    }
    // Where it goes wrong is told of what begins as a job does.
    let words = |text: &str| open_job(text).expect_err("no job").to_string();
    for no_job in ["", "a photo", "\u{89}PNG"] {
        assert_eq!(words(no_job), "This is no job file: there is no job in it.");
    }
    assert!(words("{\"format\":").contains("breaks off or goes wrong at line 1, column 10"));
    let deep = "[".repeat(100_000);
    assert!(matches!(open_job(&deep), Err(OpenProblem::NotJson(..))));
    assert_eq!(
        OpenProblem::Later(3).to_string(),
        "This job was written by a later version of the app (format 3). Update the app, then open it."
    );
}

#[test]
fn history_opens_again_and_a_damaged_one_is_none() {
    let mut job = Job::new("t", Unit::Inch);
    let mut history = History::default();
    for n in 0..3 {
        let saw = Saw {
            name: format!("saw {n}"),
            kerf: "1/8".into(),
            reach: "3".into(),
            fence: Default::default(),
        };
        let step = Step::new("add", vec![job.adding(0, Item::Saw(saw))]);
        history.make(&mut job, step).expect("fresh");
    }
    history.undo(&mut job).expect("no other page");
    let text = write_history(&history);
    assert_eq!(read_history(&text), history);
    assert_eq!(read_history(&text[..text.len() / 2]), History::default());
    assert_eq!(read_history(&text.replace("\"version\":2", "\"version\":9")), History::default());
}

/// One step: of every kind of item, added, changed and taken out, and of the title.
#[test]
fn a_step_is_read_as_it_was_written_and_a_damaged_one_is_none() {
    let job = demo();
    let mut changes: Vec<_> = job.items().map(|(id, _)| job.removing(id)).collect();
    changes.extend(job.items().map(|(_, item)| job.adding(0, item.clone())));
    changes.extend(job.items().map(|(id, item)| job.replacing(id, item.clone())));
    let step = Step { title: Some(("a".into(), "b".into())), ..Step::new("all", changes) };
    let text = write_step(&step);
    assert_eq!(read_step(&text), Some(step));
    assert_eq!(read_step(&text[..text.len() / 2]), None);
    assert_eq!(read_step(&text.replace("\"version\":2", "\"version\":3")), None);
}

/// A title or a name, as it is typed or comes from elsewhere.
fn name() -> impl Strategy<Value = String> {
    prop_oneof![
        "\\PC{0,20}",
        "[a-zé木🪑 ]{1,20}",
        "[bé \u{a0}\u{301}\u{2764}\u{fe0f}\u{200b}\u{200d}🪑]{0,8}"
    ]
}

fn measure() -> impl Strategy<Value = Measure> {
    (
        name(),
        "\\PC{0,30}",
        prop::option::of("\\PC{0,8}"),
        any::<(i64, bool, bool, bool, bool)>(),
        "\\PC{0,30}",
        "[a-z-]{0,12}",
    )
        .prop_map(
            |(name, formula, as_cut, (rank, number, is_cut, wait, is_ours), note, usual)| Measure {
                rank,
                name: format!("name {name}"),
                kind: if number { MeasureKind::Number } else { MeasureKind::Length },
                written: Written::Formula(formula),
                as_cut,
                is_cut,
                wait,
                note,
                left: None,
                is_ours,
                usual,
            },
        )
}

fn piece() -> impl Strategy<Value = Piece> {
    let length = || {
        let size = (-9_999_i128..9_999, 1_i128..65);
        prop::option::of(size.prop_map(|(n, by)| Length::of_inch(n, by).expect("small")))
    };
    let sizes = move || {
        (length(), length(), length()).prop_map(|(thickness, width, length)| Dimensions {
            thickness,
            width,
            length,
        })
    };
    let tape = (0..3_usize, prop::option::of("\\PC{0,6}"));
    let with_shim = any::<bool>();
    (0..3_u8, sizes(), sizes(), tape, with_shim).prop_map(
        |(state, sizes, left, (of, text), shim)| {
            let piece = match state {
                0 => Piece::default(),
                1 => Piece::cut(sizes),
                _ => Piece::again(sizes),
            };
            let piece = piece.measured(Dimension::ALL[of], text);
            let piece = Dimension::ALL
                .into_iter()
                .fold(piece, |piece, of| piece.leaving(of, *left.get(of)));
            if shim {
                piece.shimmed(Dimension::ALL[of], *left.get(Dimension::ALL[of]))
            } else {
                piece
            }
        },
    )
}

fn part() -> impl Strategy<Value = Part> {
    (
        [name(), name(), name()],
        "\\PC{0,10}",
        any::<(bool, bool)>(),
        prop::collection::vec(piece(), 0..4),
    )
        .prop_map(|([name, stock, show_face], size, (free, rip), pieces)| Part {
            rank: 0,
            name,
            quantity: size.clone(),
            thickness: size.clone(),
            width: size.clone(),
            length: size,
            stock,
            grain: if free { reckoner_core::job::Grain::Free } else { Default::default() },
            show_face,
            hand: Default::default(),
            may_rip: rip,
            may_resaw: rip != free,
            note: String::new(),
            pieces,
            made: rip.then(|| Made { kept: ItemId(7), what: "rail".to_owned() }),
        })
}

proptest! {
    #[test]
    fn export_and_import_give_the_same_job(title in name(), measures in prop::collection::vec(measure(), 0..6), parts in prop::collection::vec(part(), 0..4), mm in any::<bool>()) {
        let mut job = Job::new(title, if mm { Unit::Millimetre } else { Unit::Inch });
        for (n, measure) in measures.into_iter().enumerate() {
            let measure = Measure { name: format!("{} {n}", measure.name), ..measure };
            let change = job.adding(0, Item::Measure(measure));
            job.make(&Step::new("add", vec![change])).expect("fresh");
        }
        for part in parts {
            let change = job.adding(3, Item::Part(part));
            job.make(&Step::new("add", vec![change])).expect("fresh");
        }
        let opened = open_job(&write_job(&job)).expect("a job file");
        prop_assert_eq!(opened.set_aside, vec![]);
        prop_assert_eq!(opened.job, job);
    }

    #[test]
    fn a_file_changed_anywhere_never_panics(at in any::<prop::sample::Index>(), with in any::<char>()) {
        let text: Vec<char> = write_job(&demo()).chars().collect();
        let mut changed = text.clone();
        let at = at.index(changed.len());
        changed[at] = with;
        let changed: String = changed.into_iter().collect();
        let opened = open_job(&changed);
        prop_assume!(opened.is_ok(), "refused");
        let opened = opened.expect("no refusal");
        prop_assert!(opened.job.items().count() + opened.set_aside.len() >= demo().items().count() - 1);
    }
}

#[test]
fn ids_are_never_given_out_again_after_reopening() {
    let mut job = Job::new("t", Unit::Inch);
    let saw = Item::Saw(Saw {
        name: "s".into(),
        kerf: "1/8".into(),
        reach: "3".into(),
        fence: Default::default(),
    });
    let add = Step::new("add", vec![job.adding(0, saw)]);
    job.make(&add).expect("fresh");
    job.make(&add.turned_round()).expect("no other page");
    assert_eq!(job.next_id(), ItemId(2));
    assert_eq!(open_job(&write_job(&job)).expect("opens").job.next_id(), ItemId(2));
}
