//! Input that means harm: it is refused in a sentence, or opened as far as it goes, and takes no
//! more memory than twenty times its text.

use std::sync::{Mutex, MutexGuard, PoisonError};

use peak_alloc::PeakAlloc;
use reckoner_core::job::{Item, Job, demo::demo};
use reckoner_formats::{
    Brought, Gatherer, MAX_FILE, MAX_HISTORY, brought, codes_in, open_job, open_jobs, pack,
    read_cut, read_history, read_step, unpack, write_job,
};

/// Counts what is held.
#[global_allocator]
static HELD: PeakAlloc = PeakAlloc;

/// One test at a time: what another one holds would be counted too.
fn alone() -> MutexGuard<'static, ()> {
    static TURN: Mutex<()> = Mutex::new(());
    TURN.lock().unwrap_or_else(PoisonError::into_inner)
}

/// What small things may take, however short the text.
const SMALL: usize = 200_000;

/// The memory that a reading takes, beside its input and what it gives: at most twenty times the
/// input.
fn within_twenty<T>(what: &str, text: &str, read: impl FnOnce(&str) -> T) -> T {
    let before = HELD.current_usage();
    HELD.reset_peak_usage();
    let found = read(text);
    let taken = HELD.peak_usage().saturating_sub(before);
    let most = 20 * text.len() + SMALL;
    assert!(taken <= most, "{what}: {taken} bytes for {}", text.len());
    found
}

fn file(items: &str) -> String {
    format!(
        "{{\"format\":\"sawdust-reckoner-job\",\"version\":1,\"title\":\"t\",\"unit\":\"in\",\"next_id\":1,\"items\":[{items}]}}"
    )
}

/// The same of version 2.
fn file_v2(items: &str) -> String {
    file(items).replacen("\"version\":1", "\"version\":2", 1)
}

/// As many of them as make a text of so many bytes.
fn many(one: &str, bytes: usize) -> String {
    let count = bytes / (one.len() + 1);
    vec![one; count].join(",")
}

const PART: &str = r#"{"id":ID,"kind":"part","rank":0,"name":"","quantity":"","thickness":"","width":"","length":"","pieces":[PIECES]}"#;

#[test]
fn a_job_of_nothing_many_times_over_takes_no_room() {
    let _turn = alone();
    let one_mb = 1_000_000;
    let in_one = |before: &str, one: &str, after: &str| {
        file(&format!("{before}{}{after}", many(one, one_mb)))
    };
    let in_one_v2 = |before: &str, one: &str, after: &str| {
        file_v2(&format!("{before}{}{after}", many(one, one_mb)))
    };
    let part = |pieces: &str| PART.replace("ID", "1").replace("PIECES", pieces);
    let cut = PART.replace("ID", "1").replace(r#""pieces":[PIECES]}"#, r#""cuts":["#);
    let parts = |pieces: &str| {
        let part = |id: usize| PART.replace("ID", &id.to_string()).replace("PIECES", pieces);
        file(&(1..=900).map(part).collect::<Vec<_>>().join(","))
    };
    let reckoning = r#"{"id":1,"kind":"reckoning","rank":0,"title":"","calculator":"","entries":["#;
    for (what, text) in [
        ("numbers", file(&many("0", one_mb))),
        ("empty items", file(&many("{}", one_mb))),
        ("empty lists", file(&many("[]", one_mb))),
        ("damaged items", file(&many(r#"{"id":1,"kind":"round"}"#, one_mb))),
        ("the same id", file(&many(r#"{"id":1,"kind":"round","name":"","diameter":""}"#, one_mb))),
        ("pieces", file(&part(&many("{}", one_mb)))),
        ("ticked pieces", file(&part(&many(r#"{"done":true}"#, one_mb)))),
        ("pieces of many parts", parts(&many("{}", 2_000))),
        ("as many pieces as there may be", file(&part(&many("{}", 599_000)))),
        ("entries", in_one(reckoning, r#"["",""]"#, "]}")),
        ("members", in_one(r#"{"id":1,"kind":"match","name":"","measures":["#, "0", "]}")),
        ("ticks", in_one(r#"{"id":1,"kind":"cut_ticks","plan":1,"boards":["#, "\"cut\"", "]}")),
        (
            "lengths left",
            in_one(
                r#"{"id":1,"kind":"cut_ticks","plan":1,"boards":[{"different":{"good":[],"left":["#,
                "\"\"",
                "]}}]}",
            ),
        ),
        ("empty cuts", in_one_v2(&cut, r#"["","",""]"#, "]}")),
        ("cuts", in_one_v2(&cut, r#"["1","2","3"]"#, "]}")),
        ("more cuts than pieces", file_v2(&format!("{cut}{}]}}", many("[]", one_mb)))),
        ("things ticked", in_one_v2(r#"{"id":1,"kind":"ticked","done":["#, r#"["",1]"#, "]}")),
        (
            "pieces cut of a board",
            in_one_v2(
                r#"{"id":1,"kind":"cut_ticks","plan":1,"boards":[{"begun":{"cut":["#,
                "[0,1]",
                "]}}]}",
            ),
        ),
        (
            "labels of a plan",
            in_one(
                r#"{"id":1,"kind":"cut_plan","title":"","per_inch":8,"sections":[],"parts":["#,
                r#"{"name":""}"#,
                r#"],"pieces":[],"cut":{},"bound_cents":0}"#,
            ),
        ),
        ("a huge name", in_one(r#"{"id":1,"kind":"round","name":""#, "n", r#"","diameter":""}"#)),
        ("a huge key", in_one(r#"{""#, "k", r#"":0}"#)),
        ("keys", in_one("{", r#""k":0"#, "}")),
        ("escapes", in_one(r#"{"id":1,"kind":"round","name":""#, "\\u0041", r#"","diameter":""}"#)),
        ("nesting", "[".repeat(one_mb)),
        ("nested items", file(&"[".repeat(one_mb))),
        (
            "a file that breaks off",
            file(&many("{}", one_mb)).trim_end_matches(['}', ']']).to_owned(),
        ),
    ] {
        let opened = within_twenty(what, &text, open_job);
        let refused = match &opened {
            Ok(opened) => opened.set_aside.first().map(|it| it.why.clone()),
            Err(problem) => Some(problem.to_string()),
        };
        let allowed = ["ticked pieces", "as many pieces as there may be", "empty cuts", "cuts"];
        let is_allowed = allowed.contains(&what);
        assert_eq!(refused.is_none(), is_allowed, "{what}: {refused:?}");
        let kept = opened.map_or(0, |opened| opened.set_aside.len());
        assert!(kept <= 100, "{what}: {kept}");
    }
}

/// A few kilobytes that unpack to megabytes: of the text that they unpack to.
#[test]
fn a_small_link_takes_no_more_than_twenty_times_what_it_unpacks_to() {
    let _turn = alone();
    for one in [
        "0",
        "{}",
        r#"{"id":1,"kind":"part"}"#,
        r#"{"id":7,"kind":"round","name":"","diameter":""}"#,
    ] {
        let text = file(&many(one, 2_000_000));
        let packed = pack(&text);
        assert!(packed.len() < 20_000, "{}", packed.len());
        let _opened = within_twenty(one, &text, |_| open_job(&unpack(&packed).expect("unpacks")));
    }
    let bomb = pack(&" ".repeat(MAX_FILE * 8));
    let whole = " ".repeat(MAX_FILE);
    let problem = within_twenty("bomb", &whole, |_| unpack(&bomb)).expect_err("too large");
    assert_eq!(problem.to_string(), "This link or code holds more than a job can be.");
    assert!(unpack(&"A".repeat(MAX_FILE * 2 + 1)).is_err());
}

#[test]
fn endless_codes_are_refused() {
    let _turn = alone();
    for text in ["SR1 ".repeat(1_000_000), "SR1 7F3A09C2 2/5 1B2C3D4E A ".repeat(100_000)] {
        let found = within_twenty("codes", &text, brought);
        assert!(found.expect_err("too many").to_string().ends_with('.'));
    }
    let long = format!("SR1 7F3A09C2 1/2 1B2C3D4E {}", "A".repeat(300_000));
    assert_eq!(within_twenty("a long code", &long, codes_in), Vec::<String>::new());
    assert!(
        matches!(brought("SR1 7F3A09C2 1/2 1B2C3D4E A"), Ok(Brought::Codes(all)) if all.len() == 1)
    );
    let mut gatherer = Gatherer::default();
    assert!(gatherer.take("SR1 7F3A09C2 1/999999999 1B2C3D4E A").is_err());
}

#[test]
fn a_hostile_history_or_plan_is_none() {
    let _turn = alone();
    let item = r#"{"id":1,"after":{"kind":"round","name":"","diameter":""}}"#;
    let empty = r#"{"label":"","changes":[]}"#;
    for (what, one) in [
        ("steps", empty.to_owned()),
        ("changes", format!(r#"{{"label":"","changes":[{}]}}"#, many(item, 2_000_000))),
        (
            "changes that say nothing",
            format!(r#"{{"label":"","changes":[{}]}}"#, many(r#"{"id":1}"#, 50_000)),
        ),
    ] {
        let text = format!(
            r#"{{"version":1,"made":[{}],"undone":[]}}"#,
            many(&one, 1_000_000.max(one.len() + 1))
        );
        let history = within_twenty(what, &text, read_history);
        assert_eq!(history.made().count(), 0, "{what}");
        let step = format!(r#"{{"version":1,"step":{one}}}"#);
        assert_eq!(within_twenty(what, &step, read_step).is_none(), what != "steps", "{what}");
    }
    let most = format!(r#"{{"label":"","changes":[{}]}}"#, many(item, 500_000));
    let text = format!(r#"{{"version":1,"made":[{most}],"undone":[]}}"#);
    assert_eq!(within_twenty("many changes", &text, read_history).made().count(), 1);
    assert!(read_step(&" ".repeat(MAX_HISTORY + 1)).is_none());
    let deep = format!(r#"{{"version":1,"job":{},"plan":0}}"#, "[".repeat(1_000_000));
    assert!(within_twenty("deep plan", &deep, read_cut).is_err());
    let placed = many(r#"{"part":0,"at":0}"#, 1_000_000);
    let plan = format!(
        r#"{{"version":1,"job":{{"sections":[],"parts":[],"kerf":1}},"plan":{{"boards":[{{"from":{{"board":0}},"crosscut":[{placed}]}}],"cost_cents":0}}}}"#
    );
    assert!(within_twenty("plan", &plan, read_cut).is_err());
}

#[test]
fn a_hostile_file_of_jobs_is_refused() {
    let _turn = alone();
    let jobs =
        |jobs: &str| format!(r#"{{"format":"sawdust-reckoner-jobs","version":1,"jobs":[{jobs}]}}"#);
    for (what, text) in [
        ("numbers", jobs(&many("0", 1_000_000))),
        ("jobs", jobs(&many(&file(""), 1_000_000))),
        ("one job", jobs(&file(&many("{}", 1_000_000)))),
    ] {
        let found = within_twenty(what, &text, open_jobs);
        assert!(found.as_ref().is_err() || found.is_ok_and(|it| it.jobs.is_empty()), "{what}");
    }
}

/// What is honest takes little, too.
#[test]
fn an_honest_job_takes_little_more_than_itself() {
    let _turn = alone();
    let mut job: Job = demo();
    let note = "measured by the door, twice";
    let sizes = (0..1_900).map(|n| {
        let Some(Item::Measure(measure)) = job.item(reckoner_core::job::ItemId(1)).cloned() else {
            panic!()
        };
        let name = format!("size {n}");
        job.adding(
            n,
            Item::Measure(reckoner_core::job::Measure { name, note: note.into(), ..measure }),
        )
    });
    let step = reckoner_core::job::Step::new("fill", sizes.collect());
    job.make(&step).expect("fresh");
    let text = write_job(&job);
    let opened = within_twenty("honest", &text, open_job).expect("opens");
    assert_eq!(opened.job, job);
}
