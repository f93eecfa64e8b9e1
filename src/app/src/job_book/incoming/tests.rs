//! Jobs that come in, set against those that are here.

use reckoner_formats::open_jobs;

use super::*;
use crate::job_book::book::Book;

/// The file of a job with one size.
fn text(title: &str, formula: &str) -> String {
    format!(
        r#"{{"format":"sawdust-reckoner-job","version":1,"title":"{title}","unit":"in","next_id":2,
        "items":[{{"id":1,"kind":"measure","rank":1,"name":"slat","formula":"{formula}"}}]}}"#
    )
}

fn job(title: &str, formula: &str) -> Opened {
    open_job(&text(title, formula)).expect("a job")
}

fn stored(title: &str, formula: &str) -> Stored {
    Book::new(job(title, formula).job).stored()
}

#[test]
fn a_job_is_here_where_it_says_the_same_under_its_name() {
    let incoming = [
        job("bench", "3"),
        job("bench", "4"),
        job("bench", "4"),
        job("gate", "3"),
        job("bench 2", "7"),
    ];
    let here = [stored("bench", "3"), stored("shelf", "3")];
    let expected =
        [Standing::Here, Standing::Differs, Standing::Twice, Standing::New, Standing::New];
    assert_eq!(standings(&incoming, &here), expected);
}

#[test]
fn what_came_in_under_a_number_is_here_when_its_file_is_read_again() {
    let file = [job("bench", "3"), job("bench", "4"), job("bench", "5")];
    let mut here = vec![stored("bench", "9")];
    assert_eq!(standings(&file, &here), [Standing::Differs; 3]);
    let titles = titles(
        file.iter().map(|it| it.job.title.as_str()),
        here.iter().map(|it| it.title.as_str()),
    );
    assert_eq!(titles, ["bench 2", "bench 3", "bench 4"]);
    here.extend(
        file.iter().zip(&titles).map(|(it, title)| Book::new(titled(&it.job, title)).stored()),
    );
    assert_eq!(standings(&file, &here), [Standing::Here; 3]);
}

/// Another job may have a number at its end by itself.
#[test]
fn a_number_at_the_end_of_a_name_is_no_proof() {
    let here = [stored("bench 2", "3")];
    assert_eq!(standings(&[job("bench", "4")], &here), [Standing::New]);
    assert_eq!(standings(&[job("bench", "3")], &here), [Standing::Here]);
    // No number of ours is written so.
    let here = [stored("bench 02", "3")];
    assert_eq!(standings(&[job("bench", "3")], &here), [Standing::New]);
}

#[test]
fn a_damaged_job_on_the_shelf_is_the_same_as_none() {
    let here = [Stored { job: "{\"cut".to_owned(), ..stored("bench", "3") }];
    assert_eq!(standings(&[job("bench", "3")], &here), [Standing::Differs]);
}

#[test]
fn a_title_of_the_greatest_length_makes_room_for_its_number() {
    let long = "m".repeat(MOST_NAME);
    let titles = titles([long.as_str()].into_iter(), [long.as_str()].into_iter());
    assert_eq!(titles[0].chars().count(), MOST_NAME);
    assert!(titles[0].ends_with("m 2"), "{}", titles[0]);
    assert!(is_from(&ends(&titles[0]), &starts(&long)));
}

#[test]
fn titles_that_are_alike_are_numbered_past_those_that_are_taken() {
    let titles =
        titles(["bench", "bench", "gate", "bench 3"].into_iter(), ["bench 2", "bench"].into_iter());
    assert_eq!(titles, ["bench 3", "bench 4", "gate", "bench 3 2"]);
}

/// UAX 15: `é` in one character and in two. UTS 51: a heart with and without its colour.
#[test]
fn titles_that_look_the_same_are_one_name() {
    let here = [stored("Caf\u{e9} table", "3"), stored("Bench \u{2764}\u{fe0f}", "3")];
    let incoming = [job("Cafe\u{301} table", "4"), job("Bench \u{2764}", "4")];
    assert_eq!(standings(&incoming, &here), [Standing::Differs; 2]);
    let titles = titles(
        incoming.iter().map(|it| it.job.title.as_str()),
        here.iter().map(|it| it.title.as_str()),
    );
    assert_eq!(titles, ["Cafe\u{301} table 2", "Bench \u{2764} 2"]);
}

#[test]
fn a_file_of_jobs_is_summed_up_in_a_sentence() {
    let file = format!(
        r#"{{"format":"sawdust-reckoner-jobs","version":1,"jobs":[{},{},7]}}"#,
        text("bench", "3"),
        text("gate", "3")
    );
    let opened = open_jobs(&file).expect("a file of jobs");
    let standings = standings(&opened.jobs, &[stored("gate", "3")]);
    assert_eq!(
        summary(&standings, opened.set_aside.len()),
        "3 jobs in this file: 1 not here yet, 1 here already, 1 damaged."
    );
    assert_eq!(summary(&[], 0), "No job is in this file.");
    assert_eq!(result(1, 0, 0), "1 job came in.");
    assert_eq!(result(2, 1, 1), "2 jobs came in. 1 was left out. 1 could not be opened.");
    assert_eq!(result(0, 3, 0), "0 jobs came in. 3 were left out.");
}
