//! All jobs as one file: saved, looked at, and each taken or set aside by itself.

use reckoner_core::job::{Job, demo::demo};
use reckoner_core::measure::Unit;
use reckoner_formats::{
    MAX_JOBS_FILE, MOST_JOBS, OpenProblem, TooManyJobs, is_of_jobs, open_job, open_jobs, write_job,
    write_job_file, write_jobs,
};

#[test]
fn every_job_comes_back_as_it_was_and_a_damaged_one_is_set_aside_alone() {
    let (whole, empty) = (demo(), Job::new("empty", Unit::Millimetre));
    let later = write_job(&empty).replace("\"version\":2", "\"version\":7");
    let broken = "{\"format\":\"sawdust-reckoner-job\",\"title\":\"half";
    let item_damaged = write_job(&whole).replacen("\"diameter\"", "\"circumference\"", 1);
    let texts = [write_job_file(&whole), write_job(&empty), later, broken.to_owned(), item_damaged];
    let file = write_jobs(texts.iter().map(String::as_str)).expect("room for five");
    assert!(is_of_jobs(&file) && !is_of_jobs(&texts[0]) && !is_of_jobs(broken));
    let opened = open_jobs(&file).expect("a file of jobs");
    let jobs: Vec<_> = opened.jobs.iter().map(|it| (&it.job, it.set_aside.len())).collect();
    assert_eq!(jobs[..2], [(&whole, 0), (&empty, 0)]);
    assert_eq!((jobs.len(), jobs[2].1), (3, 1));
    assert_eq!(jobs[2].0.items().count(), whole.items().count() - 1);
    let aside: Vec<_> = opened.set_aside.iter().map(|it| (it.number, &*it.name)).collect();
    assert_eq!(aside, [(3, "empty"), (4, "")]);
    assert!(opened.set_aside[0].why.contains("later version"), "{}", opened.set_aside[0].why);
    assert_eq!(opened.set_aside[1].text, broken, "kept as it stood");
    // The file of one job, taken out of it, is that job's own file.
    assert_eq!(
        open_job(
            file.lines().nth(1 + texts[0].lines().count()).expect("a line").trim_end_matches(',')
        )
        .expect("opens")
        .job,
        empty
    );
}

#[test]
fn no_jobs_are_a_file_too_and_what_is_none_is_refused() {
    let empty = write_jobs(core::iter::empty()).expect("room");
    assert!(
        open_jobs(&empty).is_ok_and(|opened| opened.jobs.is_empty() && opened.set_aside.is_empty())
    );
    for (text, problem) in [
        (write_job(&demo()), OpenProblem::NotAJob),
        (String::new(), OpenProblem::NotJson(1, 0)),
        (empty.replace("\"version\":1", "\"version\":2"), OpenProblem::Later(2)),
        (empty.replace("\"version\":1", "\"version\":0"), OpenProblem::NotAJob),
        (empty.replace("\"jobs\":[\n]", "\"jobs\":7"), OpenProblem::NotAJob),
        (" ".repeat(MAX_JOBS_FILE + 1), OpenProblem::FileTooLarge(MAX_JOBS_FILE)),
        (
            empty.replace("[\n]", &format!("[{}0]", "0,".repeat(MOST_JOBS))),
            OpenProblem::TooMany("jobs", MOST_JOBS),
        ),
    ] {
        assert_eq!(open_jobs(&text), Err(problem));
    }
}

/// What is written can be read, up to the limits, and is refused beyond them.
#[test]
fn as_many_jobs_as_are_written_are_read() {
    let one = write_job(&Job::new("empty", Unit::Inch));
    let jobs = |count: usize| core::iter::repeat_n(one.as_str(), count);
    let most = write_jobs(jobs(MOST_JOBS)).expect("room");
    assert_eq!(open_jobs(&most).expect("opens").jobs.len(), MOST_JOBS);
    assert_eq!(write_jobs(jobs(MOST_JOBS + 1)), Err(TooManyJobs));
    let large = " ".repeat(MAX_JOBS_FILE / 4);
    let large = format!("{{\"a\":0{large}}}");
    assert_eq!(write_jobs(core::iter::repeat_n(large.as_str(), 4)), Err(TooManyJobs));
    assert!(TooManyJobs.to_string().contains("40 MB"));
}
