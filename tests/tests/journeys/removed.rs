//! Jobs that are taken off this device: put back with all that was typed, or deleted on purpose.

use reckoner_e2e::{App, Screen};
use serde_json::{Value, json};

use crate::device::pictures;
use crate::job::cut_the_leg_thin;
use crate::kept::{
    NO_NOTES, fill, give_room, place, stands, wait_for_value, wait_for_words, wait_until_gone,
};
use crate::kept_together::second_window;

/// The demo, by its title.
pub(crate) const BENCH: &str = "Potting bench (demo, invented)";

/// The demo with its leg cut thin, and a size that is begun and not put in.
fn bench_with_a_draft() -> App {
    let app = App::open_at(Screen::PHONE, "#/jobs");
    app.tap("open-demo");
    cut_the_leg_thin(&app);
    app.tap("back");
    begin_a_size(&app);
    app
}

fn begin_a_size(app: &App) {
    app.tap("add-measure");
    app.tap("field-name");
    app.type_keys("spare cleat");
    app.tap("back");
    wait_for_words(app, "begun-measure", "spare cleat");
}

fn take_off(app: &App) {
    app.tap("section-hand-on");
    app.tap("remove-job");
    app.wait_for("taken-off");
}

/// The job is as it was, with its draft and its history.
fn assert_whole(app: &App) {
    app.wait_for("sizes");
    wait_for_words(app, "item-leg", "three and three sixteenths");
    let undo = app.attribute("undo", "aria-label").unwrap_or_default();
    assert!(undo.contains("leg"), "{undo}");
    app.tap("begun-measure");
    wait_for_value(app, "field-name", "spare cleat");
    app.tap("back");
    app.wait_for("sizes");
    assert!(!app.shows("job-trouble"), "{}", app.text("job-trouble"));
}

/// Answers the next question of the page, and keeps what it asked.
fn answer(app: &App, with: bool) {
    app.script(&format!(
        "window.asked = null; window.confirm = (words) => {{ window.asked = words; return {with} }}"
    ));
}

/// How many jobs are in the database.
fn stored_jobs(app: &App) -> Value {
    app.script(
        "const open = indexedDB.open('reckoner');
         await new Promise((done) => open.onsuccess = done);
         const count = open.result.transaction('jobs').objectStore('jobs').count();
         await new Promise((done) => count.onsuccess = done);
         open.result.close();
         return count.result",
    )
}

#[test]
fn a_job_that_was_taken_off_is_put_back_at_once() {
    let app = bench_with_a_draft();
    take_off(&app);
    assert_eq!(app.text("taken-off"), format!("Taken off: {BENCH} Put it back"));
    app.assert_on_first_screen("put-back");
    app.wait_for("no-jobs");
    pictures(&app, "removed-undo");
    app.tap("put-back");
    app.wait_for(&format!("job-{BENCH}"));
    wait_for_words(&app, "taken-off", &format!("Put back: {BENCH}"));
    app.tap(&format!("job-{BENCH}"));
    assert_whole(&app);
    app.reload();
    app.wait_for_start();
    assert_whole(&app);
    // It is offered once.
    app.go("#/jobs");
    app.wait_for(&format!("job-{BENCH}"));
    assert!(!app.shows("taken-off"));
    app.assert_quiet_console();
}

#[test]
fn a_removed_job_stays_in_its_list_until_that_is_emptied() {
    let app = bench_with_a_draft();
    let job = place(&app);
    let key = job.rsplit('/').next().expect("a key").to_owned();
    let mark = format!("reckoner.saved.{key}");
    app.script(&format!("localStorage.setItem({}, 'not now')", json!(mark)));
    take_off(&app);
    app.go("#/jobs/removed");
    app.reload();
    app.wait_for_start();
    app.wait_for("removed");
    assert!(app.text("removed").contains(BENCH));
    pictures(&app, "removed-list");
    let small = app.script(
        "return [...document.querySelectorAll('#app button, #app a')].map((e) => [e.outerHTML, e.getBoundingClientRect()])
            .filter(([, r]) => r.height < 48 || r.width < 48).map(([html]) => html)",
    );
    assert_eq!(small, json!([]), "targets under 48 px");

    // Its own address says where it is, and puts it back.
    app.go(&job);
    wait_for_words(&app, "job-trouble", "taken off this device");
    app.tap("put-back");
    assert_whole(&app);
    take_off(&app);
    app.tap("to-removed");
    app.tap(&format!("put-back-{BENCH}"));
    app.tap(&format!("open-{BENCH}"));
    assert_whole(&app);
    let noted = app.script(&format!("return localStorage.getItem({})", json!(mark)));
    assert_eq!(noted, "not now", "the reminder's mark");
    assert_eq!(place(&app), job, "under its old key");

    take_off(&app);
    app.tap("to-removed");
    app.wait_for("removed");
    answer(&app, false);
    app.tap("empty-list");
    let asked = app.script("return window.asked");
    assert!(asked.as_str().expect("a question").starts_with("Delete 1 job for good?"), "{asked}");
    assert!(app.shows("removed"));
    answer(&app, true);
    app.tap("empty-list");
    app.wait_for("no-removed");
    assert_eq!(app.text("removed-said"), "1 job deleted for good.");
    app.reload();
    app.wait_for_start();
    app.wait_for("no-removed");
    app.wait_until(
        "nothing of it is left",
        &format!("return localStorage.getItem({}) === null", json!(mark)),
    );
    assert_eq!(stored_jobs(&app), 0);
    app.wait_until("no note is left", NO_NOTES);
    app.go(&job);
    wait_for_words(&app, "job-trouble", "not on this device");
    app.assert_quiet_console();
}

#[test]
fn another_window_is_told_and_what_it_does_goes_in_when_the_job_is_put_back() {
    let app = bench_with_a_draft();
    let first = second_window(&app, "");
    app.wait_for("sizes");
    let second = app.window();
    app.turn_to(&first);
    take_off(&app);
    app.turn_to(&second);
    wait_for_words(&app, "job-trouble", "taken off this device");
    app.tap("item-leg");
    app.enter("as_cut", &["clear", "2", "close"]);
    app.tap("back");
    wait_for_words(&app, "item-leg", "two inches");
    wait_for_words(&app, "job-trouble", "goes in when you put it back");
    app.picture("removed-elsewhere");
    app.assert_accessible();
    app.tap("put-back");
    wait_until_gone(&app, "job-trouble");
    app.wait_until("it stands in the record", &stands("as_cut", "2"));

    // Deleted for good it stays on its page, and can be saved.
    app.turn_to(&first);
    app.reload();
    app.wait_for_start();
    app.tap(&format!("job-{BENCH}"));
    take_off(&app);
    app.tap("to-removed");
    app.wait_for("removed");
    answer(&app, true);
    app.tap("empty-list");
    app.wait_for("no-removed");
    app.turn_to(&second);
    wait_for_words(&app, "job-trouble", "deleted in another window");
    app.tap("to-hand-on");
    app.wait_for("save-file");
    // Taken off once more it is in the list again.
    take_off(&app);
    app.tap("put-back");
    app.tap(&format!("job-{BENCH}"));
    wait_for_words(&app, "item-leg", "two inches");
    app.assert_quiet_console();
}

#[test]
fn a_full_device_says_that_a_job_is_still_here() {
    let app = bench_with_a_draft();
    app.tap("section-hand-on");
    fill(&app);
    app.tap("remove-job");
    wait_for_words(&app, "hand-on-said", "It is still here: this browser has no room left.");
    give_room(&app);
    app.tap("section-sizes");
    assert_whole(&app);
    app.reload();
    app.wait_for_start();
    assert_whole(&app);
    app.assert_quiet_console();
}

/// What never found room is put on the shelf with its removal, and comes back once.
#[test]
fn a_job_that_was_never_kept_is_put_back_as_well() {
    let app = App::open_at(Screen::PHONE, "#/jobs");
    app.wait_for("new-job");
    fill(&app);
    app.tap("new-job");
    app.tap("add-measure");
    app.tap("field-name");
    app.type_keys("leg");
    app.enter("formula", &["3", "close"]);
    app.tap("save-item");
    wait_for_words(&app, "item-leg", "three inches");
    app.tap("section-hand-on");
    app.tap("remove-job");
    wait_for_words(&app, "hand-on-said", "It is still here");
    // There is room, and the removal is the first to find it.
    app.script(
        "IDBObjectStore.prototype.put = window.put;
         document.querySelector('[data-testid=remove-job]').click()",
    );
    app.wait_for("taken-off");
    app.tap("put-back");
    app.tap("job-New job");
    wait_for_words(&app, "item-leg", "three inches");
    give_room(&app);
    app.wait_until("every note is folded in", NO_NOTES);
    wait_until_gone(&app, "job-trouble");
    app.reload();
    app.wait_for_start();
    wait_for_words(&app, "item-leg", "three inches");
    assert!(!app.shows("job-trouble"), "{}", app.text("job-trouble"));
    app.wait_until("every note is folded in", NO_NOTES);
    // The step is in it once.
    app.tap("undo");
    wait_until_gone(&app, "item-leg");
    let undo = app.script("return document.querySelector('[data-testid=undo]').disabled");
    assert_eq!(undo, true, "{:?}", app.attribute("undo", "aria-label"));
}
