//! All jobs of a device as one file, read again on another: nothing overwritten, nothing doubled.

use std::fs;
use std::path::{Path, PathBuf};

use reckoner_e2e::{App, Screen};
use serde_json::{Value, json};

use crate::device::pictures;
use crate::film;
use crate::shelf::{BENCH, cut_the_leg_thin, demo, fill, give_room};

const NONE_CAME: &str = "None of them came in";

/// The demo with a leg cut thin, and a job of our own, saved as one file.
fn saved(name: &str) -> (App, PathBuf) {
    let app = demo();
    cut_the_leg_thin(&app);
    app.go("#/jobs");
    app.tap("new-job");
    app.tap("job-title");
    app.script("document.activeElement.select()");
    app.type_keys("Seed trays");
    app.go("#/jobs");
    app.wait_for("job-Seed trays");
    let folder = film::files_of(name);
    app.save_files_to(&folder);
    app.tap("save-all");
    app.wait_for_words("saved-all", "2 jobs are in the file all.jobs.json");
    let file = app.saved_file(&folder);
    (app, file)
}

fn take_page(app: &App) {
    app.go("#/take");
    app.wait_for("pasted");
}

fn choose(app: &App, file: &Path) {
    app.choose_file("[data-testid=open-file]", file);
}

pub(crate) fn jobs_on_the_shelf(app: &App) -> Vec<String> {
    app.go("#/jobs");
    app.wait_for("jobs");
    let names = app.script(
        "return [...document.querySelectorAll('[data-testid=jobs] .row__name')].map((it) => it.textContent).sort()",
    );
    names.as_array().into_iter().flatten().map(|it| it.as_str().unwrap_or("").to_owned()).collect()
}

#[test]
fn all_jobs_go_to_another_browser_in_one_file_and_come_in_once() {
    let (first, file) = saved("all-jobs");
    pictures(&first, "all-jobs-saved");
    // None of them reminds of its file any more.
    let noted = first.script(
        "return Object.keys(localStorage).filter((it) => it.startsWith('reckoner.saved.')).length",
    );
    assert_eq!(noted, 2);
    let second = App::open_at(Screen::PHONE, "#/take");
    choose(&second, &file);
    assert_eq!(second.text("incoming-summary"), "2 jobs in this file: 2 not here yet.");
    pictures(&second, "all-jobs-preview");
    second.tap("take-jobs");
    assert_eq!(second.text("taken"), "2 jobs came in.");
    second.tap("to-jobs");
    assert_eq!(jobs_on_the_shelf(&second), [BENCH, "Seed trays"]);
    second.tap(&format!("job-{BENCH}"));
    second.section("sizes");
    second.wait_for_words("item-leg", "three and three sixteenths");

    // Read again, nothing is doubled.
    take_page(&second);
    choose(&second, &file);
    assert_eq!(second.text("incoming-summary"), "2 jobs in this file: 2 here already.");
    assert!(
        second.script("return document.querySelector('[data-testid=take-jobs]').disabled") == true
    );
    second.tap("leave-jobs");
    assert_eq!(jobs_on_the_shelf(&second).len(), 2);

    // What was changed here since is not overwritten.
    second.tap(&format!("job-{BENCH}"));
    second.section("sizes");
    second.tap("item-leg");
    second.enter("as_cut", &["clear", "2", "close"]);
    second.tap("back");
    second.wait_for_words("item-leg", "two inches");
    take_page(&second);
    choose(&second, &file);
    assert_eq!(
        second.text("incoming-summary"),
        "2 jobs in this file: 1 not here yet, 1 here already."
    );
    let number = if second.text("incoming-1").contains("Potting bench") { 1 } else { 2 };
    second.wait_for_words(&format!("incoming-{number}"), &format!("beside it as “{BENCH} 2”"));
    pictures(&second, "all-jobs-beside");
    second.tap("take-jobs");
    assert_eq!(second.text("taken"), "1 job came in. 1 was left out.");
    assert_eq!(jobs_on_the_shelf(&second), [BENCH, &format!("{BENCH} 2"), "Seed trays"]);
    second.tap(&format!("job-{BENCH}"));
    second.section("sizes");
    second.wait_for_words("item-leg", "two inches");
    second.go("#/jobs");
    second.tap(&format!("job-{BENCH} 2"));
    second.section("sizes");
    second.wait_for_words("item-leg", "three and three sixteenths");

    // And that one is known again under its number.
    take_page(&second);
    choose(&second, &file);
    assert_eq!(second.text("incoming-summary"), "2 jobs in this file: 2 here already.");
    second.assert_quiet_console();
}

/// The page that shows a file of two jobs, both of them here already.
pub(crate) fn with_two_jobs_to_take(name: &str) -> App {
    let (app, file) = saved(name);
    take_page(&app);
    choose(&app, &file);
    app.wait_for("incoming-2");
    app
}

#[test]
fn which_jobs_come_in_is_chosen() {
    let app = with_two_jobs_to_take("chosen");
    let second = if app.text("incoming-2").contains(BENCH) { BENCH } else { "Seed trays" };
    app.tap("incoming-1");
    app.wait_for("take-jobs");
    assert_eq!(app.text("take-jobs"), "Put 1 on my shelf");
    app.tap("incoming-2");
    app.tap("incoming-1");
    app.tap("take-jobs");
    app.wait_for_words("taken", "1 job came in. 1 was left out.");
    let mut expected = vec![BENCH.to_owned(), "Seed trays".to_owned(), format!("{second} 2")];
    expected.sort();
    assert_eq!(jobs_on_the_shelf(&app), expected);
    app.tap(&format!("job-{second} 2"));
    let is_bench = second == BENCH;
    app.wait_until(
        "it is that job",
        &format!("return Boolean(document.querySelector('[data-testid=item-leg]')) === {is_bench}"),
    );
}

/// Writes a changed file beside another.
fn changed(file: &Path, name: &str, change: impl FnOnce(&mut Value)) -> PathBuf {
    let mut value: Value =
        serde_json::from_slice(&fs::read(file).expect("the file")).expect("a file of jobs");
    change(&mut value);
    let path = film::files_of(name);
    fs::write(&path, value.to_string()).expect("writing");
    path
}

#[test]
fn a_damaged_job_keeps_the_others_out_of_nothing() {
    let (first, file) = saved("damaged");
    drop(first);
    let damaged = changed(&file, "damaged.json", |file| {
        let jobs = file["jobs"].as_array_mut().expect("jobs");
        let at = jobs.iter().position(|it| it["title"] == "Seed trays").expect("a job");
        jobs[at]["version"] = json!("none");
        // One size of the bench, which the others do without.
        let bench = jobs.iter_mut().find(|it| it["title"] == BENCH).expect("the bench");
        bench["items"].as_array_mut().expect("items")[0]["kind"] = json!("nothing");
    });
    let app = App::open_at(Screen::PHONE, "#/take");
    choose(&app, &damaged);
    assert_eq!(app.text("incoming-summary"), "2 jobs in this file: 1 not here yet, 1 damaged.");
    app.wait_for_words("incoming-jobs", "These cannot be opened");
    app.wait_for_words("incoming-1", "1 item is damaged and will be left out.");
    pictures(&app, "all-jobs-damaged");
    app.tap("take-jobs");
    assert_eq!(app.text("taken"), "1 job came in. 1 could not be opened.");
    assert_eq!(jobs_on_the_shelf(&app), [BENCH]);
}

#[test]
fn hostile_and_huge_files_of_jobs_are_refused_in_a_sentence() {
    let (app, file) = saved("hostile");
    let later = changed(&file, "later.json", |file| file["version"] = json!(9));
    let many = changed(&file, "many.json", |file| file["jobs"] = json!(vec![1; 1_001]));
    let odd = changed(&file, "odd.json", |file| file["jobs"] = json!({ "0": 1 }));
    // Not even read.
    let huge = film::files_of("huge-jobs.json");
    fs::write(&huge, vec![b' '; 40_000_001]).expect("writing");
    take_page(&app);
    for (file, words) in
        [(later, "later version"), (many, "1000"), (odd, "not a job"), (huge, "too large")]
    {
        choose(&app, &file);
        app.wait_for_words("job-trouble", words);
        assert!(!app.shows("incoming-jobs"), "{}", file.display());
    }
    app.assert_quiet_console();
}

#[test]
fn a_full_device_takes_none_and_says_so() {
    let (first, file) = saved("no-room");
    drop(first);
    let app = App::open_at(Screen::PHONE, "#/take");
    choose(&app, &file);
    app.wait_for("take-jobs");
    fill(&app);
    app.tap("take-jobs");
    app.wait_for_words("incoming-trouble", NONE_CAME);
    give_room(&app);
    app.tap("take-jobs");
    assert_eq!(app.text("taken"), "2 jobs came in.");
    assert_eq!(jobs_on_the_shelf(&app).len(), 2);
}

/// What found no room on the device is in the file.
#[test]
fn a_job_that_has_no_room_is_saved_with_the_others() {
    let app = demo();
    app.tap("back");
    app.wait_for(&format!("job-{BENCH}"));
    fill(&app);
    app.tap("new-job");
    app.wait_for("to-hand-on");
    app.section("front");
    app.wait_for_value("job-title", "New job");
    app.tap("back");
    let folder = film::files_of("no-room-saved");
    app.save_files_to(&folder);
    app.tap("save-all");
    app.wait_for_words("saved-all", "2 jobs are in the file");
    let text = fs::read_to_string(app.saved_file(&folder)).expect("the file");
    assert!(text.contains("New job") && text.contains("Potting bench"), "{text}");
}
