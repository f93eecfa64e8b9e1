//! What the fuzz targets start from: a text of each kind that is accepted, so that changes of it get past the door.
//! `UPDATE_SEEDS=1 cargo test -p reckoner-formats --test seeds` writes them anew.

use std::fs;
use std::path::Path;

use reckoner_core::job::{Item, Job, Measure, MeasureKind, Part, Step, Written};
use reckoner_core::measure::Unit;
use reckoner_core::measure::text::NoNames;
use reckoner_core::planning::quick_list::{QUICK_LIST, quick_list};
use reckoner_core::planning::wanted::Wanted;
use reckoner_core::sheet::{Ask, Bench, Entries};
use reckoner_formats::{
    Ask as Asked, Gatherer, Question, codes, codes_in, open_job, pack, read_question, unpack,
    write_job, write_question,
};

/// A bench of two lines.
fn job() -> Job {
    let mut job = Job::new("bench", Unit::Inch);
    let leg = Measure::new("leg", MeasureKind::Length, Written::Formula("33 1/2".to_owned()));
    let rail = Part::new("rail", "2", ["1 1/2", "3 1/4", "leg + 1/16"]);
    for item in [Item::Measure(leg), Item::Part(rail)] {
        let change = job.adding(0, item);
        job.make(&Step::new("add", vec![change])).expect("a fresh id");
    }
    job
}

const LIST: &str = "leg: 4 @ 33 1/2, 2 @ 22\n52, 2 @ 44";

fn list(text: &str) -> Wanted {
    let (parts, scraps) = text.split_once('\n').expect("two lines");
    let entries = Entries::from_pairs([("parts", parts), ("scraps", scraps)]);
    let bench = Bench::default();
    quick_list(&mut Ask::new(QUICK_LIST.fields, &entries, &bench, &NoNames)).expect("a list")
}

/// The text that is kept under this name, which is `made`.
#[track_caller]
fn seed(name: &str, made: &str) -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("fuzz/seeds").join(name).join("accepted");
    if std::env::var_os("UPDATE_SEEDS").is_some() {
        fs::create_dir_all(path.parent().expect("a folder")).expect("can be made");
        fs::write(&path, made).expect("can be written");
    }
    let kept = fs::read_to_string(&path).expect("a seed");
    assert_eq!(kept, made, "{name} is written in another way now");
    kept
}

#[test]
fn every_fuzz_target_starts_from_what_is_accepted() {
    let file = write_job(&job());
    let kept = seed("job_file", &file);
    assert_eq!(open_job(&kept).expect("opens").set_aside, []);
    assert_eq!(unpack(&seed("link", &pack(&file))), Ok(file.clone()));
    let pasted = codes(&file, 80).expect("few codes").join("\n");
    let mut gatherer = Gatherer::default();
    for code in codes_in(&seed("code", &pasted)) {
        assert_eq!(gatherer.take(&code), Ok(true));
    }
    assert_eq!(gatherer.whole(), Some(Ok(file)));
    let wanted = list(&seed("list", LIST));
    let question = Question { number: 7, job: wanted.job, ask: Asked::Cheapest { budget: 1_000 } };
    let message = seed("plan_message", &write_question(&question));
    assert_eq!(read_question(&message), Ok(question));
}

/// What the fuzz target of job files found: a title that is cut short between two words lost the space at the next reading.
#[test]
fn a_title_that_was_cut_short_is_written_as_it_is_read() {
    for length in 450..=520 {
        let title = format!("{} {}", "a".repeat(length), "b".repeat(600));
        let opened = open_job(&write_job(&Job::new(title, Unit::Inch))).expect("opens");
        let written = write_job(&opened.job);
        assert_eq!(write_job(&open_job(&written).expect("opens again").job), written, "{length}");
    }
}
