//! Jobs that are taken off this device: put back with all that was typed, or deleted on purpose.

use reckoner_e2e::{App, Screen};
use serde_json::json;

use crate::device::pictures;
use crate::shelf::{
    BENCH, address_of_job, click, cut_the_leg_thin, demo, fail_to_put, fill, give_room, make_room,
    new_job_with_a_leg, second_window, stored_jobs, wait_for_the_record, wait_until_folded_in,
};

/// The demo with its leg cut thin, and a size that is begun and not put in.
fn bench_with_a_draft() -> App {
    let app = demo();
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
    app.wait_for_words("begun-measure", "spare cleat");
}

fn take_off(app: &App) {
    app.section("hand-on");
    app.tap("remove-job");
    app.wait_for("taken-off");
}

/// The job is as it was, with its draft and its history.
fn assert_whole(app: &App) {
    app.section("sizes");
    app.wait_for_words("item-leg", "three and three sixteenths");
    let undo = app.attribute("undo", "aria-label").unwrap_or_default();
    assert!(undo.contains("leg"), "{undo}");
    app.tap("begun-measure");
    app.wait_for_value("field-name", "spare cleat");
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
    app.wait_for_words("taken-off", &format!("Put back: {BENCH}"));
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
    let job = address_of_job(&app);
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
    app.wait_for_words("job-trouble", "taken off this device");
    app.tap("put-back");
    assert_whole(&app);
    take_off(&app);
    app.tap("to-removed");
    app.tap(&format!("put-back-{BENCH}"));
    app.tap(&format!("open-{BENCH}"));
    assert_whole(&app);
    let noted = app.script(&format!("return localStorage.getItem({})", json!(mark)));
    assert_eq!(noted, "not now", "the reminder's mark");
    assert_eq!(address_of_job(&app), job, "under its old key");

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
    wait_until_folded_in(&app);
    app.go(&job);
    app.wait_for_words("job-trouble", "not on this device");
    app.assert_quiet_console();
}

#[test]
fn another_window_is_told_and_what_it_does_goes_in_when_the_job_is_put_back() {
    let app = bench_with_a_draft();
    let first = second_window(&app);
    app.wait_for("sizes");
    let second = app.window();
    app.turn_to(&first);
    take_off(&app);
    app.turn_to(&second);
    app.wait_for_words("job-trouble", "taken off this device");
    app.tap("item-leg");
    app.enter("as_cut", &["clear", "2", "close"]);
    app.tap("back");
    app.wait_for_words("item-leg", "two inches");
    app.wait_for_words("job-trouble", "goes in when you put it back");
    app.picture("removed-elsewhere");
    app.assert_accessible();
    app.tap("put-back");
    app.wait_until_gone("job-trouble");
    wait_for_the_record(&app, "leg", "as_cut", "2");

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
    app.wait_for_words("job-trouble", "deleted in another window");
    app.tap("to-hand-on");
    app.wait_for("save-file");
    // Taken off once more it is in the list again.
    take_off(&app);
    app.tap("put-back");
    app.tap(&format!("job-{BENCH}"));
    app.section("sizes");
    app.wait_for_words("item-leg", "two inches");
    app.assert_quiet_console();
}

#[test]
fn a_full_device_says_that_a_job_is_still_here() {
    let app = bench_with_a_draft();
    app.section("hand-on");
    fill(&app);
    app.tap("remove-job");
    app.wait_for_words("hand-on-said", "It is still here: this browser has no room left.");
    give_room(&app);
    app.section("sizes");
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
    new_job_with_a_leg(&app);
    app.section("hand-on");
    app.tap("remove-job");
    app.wait_for_words("hand-on-said", "It is still here");
    // There is room, and the removal is the first to find it.
    make_room(&app, &click("remove-job"));
    app.wait_for("taken-off");
    app.tap("put-back");
    app.tap("job-New job");
    app.section("sizes");
    app.wait_for_words("item-leg", "three inches");
    give_room(&app);
    wait_until_folded_in(&app);
    app.wait_until_gone("job-trouble");
    app.reload();
    app.wait_for_start();
    app.wait_for_words("item-leg", "three inches");
    assert!(!app.shows("job-trouble"), "{}", app.text("job-trouble"));
    wait_until_folded_in(&app);
    // The step is in it once.
    app.tap("undo");
    app.wait_until_gone("item-leg");
    let undo = app.script("return document.querySelector('[data-testid=undo]').disabled");
    assert_eq!(undo, true, "{:?}", app.attribute("undo", "aria-label"));
}

/// The notes of its steps find room after it, and come in behind it: they do not stay.
#[test]
fn notes_that_come_in_behind_a_job_that_was_never_kept_go_again() {
    let app = App::open_at(Screen::PHONE, "#/jobs");
    app.wait_for("new-job");
    fill(&app);
    new_job_with_a_leg(&app);
    app.section("hand-on");
    let behind = "if (this.name === 'notes' && String(all[1]).includes('/step/'))
           throw new DOMException('full', 'QuotaExceededError');
         if (this.name === 'jobs') {
           IDBObjectStore.prototype.put = window.put;
           document.dispatchEvent(new Event('visibilitychange'));
         }
         return window.put.apply(this, all);";
    fail_to_put(&app, behind);
    app.tap("remove-job");
    app.wait_for("taken-off");
    app.tap("put-back");
    app.tap("job-New job");
    app.section("sizes");
    app.wait_for_words("item-leg", "three inches");
    wait_until_folded_in(&app);
}
