//! What is written is read as it was, whatever stands in titles and names: else undo would find a text that it did not
//! leave.

use std::sync::LazyLock;

use proptest::prelude::*;
use reckoner_core::job::{
    CutPlan, History, Item, ItemId, Job, Kept, Match, Measure, MeasureKind, Part, RackBoard, Round,
    Saw, Step, Written, YardBoard, check_title,
};
use reckoner_core::measure::Unit;
use reckoner_core::planning::demo::demo_in_work;
use reckoner_formats::{open_job, read_history, read_step, write_history, write_job, write_step};
use serde_json::{Value, json};

/// The plan of the demo.
static PLAN: LazyLock<Box<CutPlan>> = LazyLock::new(|| {
    let (job, _) = demo_in_work();
    let plan = job.items().find_map(|(_, item)| match item {
        Item::CutPlan(plan) => Some(plan.clone()),
        _ => None,
    });
    plan.expect("the demo has a plan")
});

fn file(items: Value) -> Value {
    json!({"format": "sawdust-reckoner-job", "version": 2, "title": "t", "unit": "in", "next_id": 1, "items": items})
}

/// Titles longer than they may be, too: what is cut off may go through a picture.
fn written_title() -> impl Strategy<Value = String> {
    prop_oneof![
        4 => written_name(),
        1 => (490_usize..520, "[b ]{0,1}").prop_map(|(n, end)| "\u{1f469}\u{200d}".repeat(n / 2) + &end),
        1 => (495_usize..501).prop_map(|n| "b".repeat(n) + " 1\u{fe0f}\u{20e3}  bench"),
    ]
}

/// What thumbs, phones and pasted texts put into a name.
fn written_name() -> impl Strategy<Value = String> {
    const BITS: &str = "Potting bench 2x6 1 \u{2764} \u{fe0f} \u{1f469} \u{200d} \u{1f467} \u{1f3fd} \u{20e3} e \u{301} \u{323} \u{e9} \
        \u{200b} \u{202e} \u{2800} \u{ad}";
    let mut bits: Vec<&str> = BITS.split(' ').collect();
    bits.extend([" ", "  ", "\u{a0}", "\u{3000}", "\t", "\n"]);
    let bit = prop::sample::select(bits);
    prop_oneof![
        4 => prop::collection::vec(bit, 0..9).prop_map(|bits| bits.concat()),
        1 => "\\PC{0,20}",
    ]
}

/// An edit, worked out from the job as it stands.
type Edit = Box<dyn Fn(&Job) -> Step>;

/// An item of each kind that has names, with these.
fn named(kind: usize, name: &str, other: &str) -> Item {
    let text = str::to_owned;
    match kind {
        0 => Item::Measure(Measure::new(
            format!("size {name}"),
            MeasureKind::Length,
            Written::Formula(text("3")),
        )),
        1 => Item::Part(Part {
            stock: text(other),
            show_face: text(name),
            ..Part::new(name, "1", ["1", "2", "3"])
        }),
        2 => Item::Kept(Kept {
            rank: 0,
            title: text(name),
            slug: text("tape"),
            entries: vec![],
            left: Vec::new(),
        }),
        3 => Item::Match(Match { name: text(name), measures: vec![], drift: text(""), left: None }),
        4 => Item::RackBoard(RackBoard {
            name: text(name),
            section: text(other),
            quantity: 1,
            ..RackBoard::default()
        }),
        5 => Item::YardBoard(YardBoard::new(name, ["1", "2", "3"], 900)),
        6 => Item::Round(Round { name: text(name), diameter: text("6") }),
        7 => Item::Saw(Saw {
            name: text(name),
            kerf: text("1/8"),
            reach: text("3"),
            fence: Default::default(),
        }),
        _ => {
            let mut plan = PLAN.clone();
            plan.title = text(name);
            plan.labels.parts[0].name = text(other);
            plan.labels.sections[0].name = text(other);
            Item::CutPlan(plan)
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    /// Else undo finds another text than it left, and says that somebody else wrote it.
    #[test]
    fn reading_back_what_was_written_is_the_same(
        titles in prop::collection::vec(written_title(), 0..4),
        names in prop::collection::vec((0..9_usize, written_name(), written_name()), 0..6),
        again in prop::collection::vec((any::<prop::sample::Index>(), written_name(), written_name()), 0..4),
    ) {
        let mut job = Job::new("Bench", Unit::Inch);
        let mut history = History::default();
        let first = job.clone();
        let mut steps: Vec<Edit> = Vec::new();
        for title in titles {
            steps.push(Box::new(move |job| Step {
                title: Some((job.title.clone(), title.clone())),
                ..Step::new("rename the job", vec![])
            }));
        }
        let kinds: Vec<usize> = names.iter().map(|(kind, ..)| *kind).collect();
        for (kind, name, other) in names {
            steps.push(Box::new(move |job| Step::new("add", vec![job.adding(0, named(kind, &name, &other))])));
        }
        for (which, name, other) in again.into_iter().filter(|_| !kinds.is_empty()) {
            let at = which.index(kinds.len());
            let (id, kind) = (ItemId(at as u64 + 1), kinds[at]);
            steps.push(Box::new(move |job| Step::new("rename", vec![job.replacing(id, named(kind, &name, &other))])));
        }
        for step in steps {
            // An edit is written down by itself first.
            let step = step(&job);
            let noted = read_step(&write_step(&step)).expect("a step");
            let mut other = (job.clone(), history.clone());
            history.make(&mut job, step).expect("nobody else is here");
            other.1.make(&mut other.0, noted).expect("nobody else is here");
            prop_assert_eq!((&job, &history), (&other.0, &other.1));
            let opened = open_job(&write_job(&job)).expect("a job file");
            prop_assert_eq!(opened.set_aside, vec![]);
            prop_assert_eq!(&opened.job, &job);
            prop_assert_eq!(read_history(&write_history(&history)), history.clone());
        }
        while history.undo(&mut job).expect("nobody else is here") {}
        prop_assert_eq!(all_but_ids(&job), all_but_ids(&first));
    }

    /// What is stored of a title that was typed is what it will be read as.
    #[test]
    fn a_title_that_is_typed_is_stored_as_it_is_read(typed in written_title()) {
        let Ok(title) = check_title(&typed) else { return Ok(()) };
        let title = title.to_string();
        let mut job = Job::new("Bench", Unit::Inch);
        job.title.clone_from(&title);
        prop_assert_eq!(open_job(&write_job(&job)).expect("a job file").job.title, title);
    }
}

/// The title and the items of a job; an id is never given out again.
fn all_but_ids(job: &Job) -> (String, Vec<Item>) {
    (job.title.clone(), job.items().map(|(_, item)| item.clone()).collect())
}

/// Histories from before a title was folded when it was typed: the record has it as it was read since.
#[test]
fn an_old_step_with_a_title_as_it_was_typed_is_taken_back() {
    let kept = |title: &str| {
        let (title, slug) = (title.to_owned(), "tape".to_owned());
        Item::Kept(Kept { rank: 0, title, slug, entries: vec![], left: Vec::new() })
    };
    let history = json!({"version": 2, "undone": [], "made": [
        {"label": "rename the job", "changes": [], "title": ["Bench", "Potting \u{a0}bench"]},
        {"label": "keep", "changes": [{"id": 1, "after": {"kind": "reckoning", "rank": 0, "title": "Be\u{200b}nch  2", "calculator": "tape", "entries": []}}]},
    ]});
    let mut stored = file(
        json!([{"id": 1, "kind": "reckoning", "rank": 0, "title": "Be\u{200b}nch  2", "calculator": "tape", "entries": []}]),
    );
    stored["title"] = json!("Potting bench");
    let mut job = open_job(&stored.to_string()).expect("opens").job;
    let mut history = read_history(&history.to_string());
    assert_eq!(job.item(ItemId(1)), Some(&kept("Bench 2")));
    assert_eq!(history.undo(&mut job), Ok(true));
    assert_eq!(history.undo(&mut job), Ok(true));
    assert_eq!((job.title.as_str(), job.items().count()), ("Bench", 0));
}
