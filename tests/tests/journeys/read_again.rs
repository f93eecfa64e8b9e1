//! What could not be read, or was not answered, is asked for again; what lies beside the database is shown until it is in.

use std::fs;

use reckoner_e2e::App;
use serde_json::{Value, json};

use crate::film;
use crate::handing_on::paste;
use crate::kept::{measure, on_a_database_of_before};
use crate::shelf::{
    BENCH, address_of_job, demo, fail_to_put, fill, give_room, wait_for_the_record,
    wait_until_folded_in,
};

/// Undo takes back one step, and there is none before it: what was measured is in the job once.
fn assert_one_step(app: &App) {
    app.wait_until(
        "it can be undone",
        "return !document.querySelector('[data-testid=undo]').disabled",
    );
    app.tap("undo");
    app.wait_until(
        "there was but one step",
        "return document.querySelector('[data-testid=undo]').disabled",
    );
}

/// A window with the version before keeps the database shut: once it is closed, the pages that could not read show what
/// there is, without being loaded again.
#[test]
fn what_could_not_be_read_is_read_once_the_older_window_is_closed() {
    let app = on_a_database_of_before(
        "const job = JSON.stringify({ format: 'sawdust-reckoner-job', version: 1, title: 'old bench', unit: 'in', next_id: 2,
           items: [{ id: 1, kind: 'measure', rank: 1, name: 'leg', formula: '3' }] });
         const put = open.result.transaction('jobs', 'readwrite').objectStore('jobs').put({ title: 'old bench', job, history: '', changed: 1 }, 'old');
         await new Promise((done) => put.onsuccess = done);
         window.held = open.result;",
    );
    let older = app.window();
    let mut newer = Vec::new();
    // Only the first is told why: the others stand behind it.
    for (place, why) in [
        ("#/jobs", "another window has an older version of this app open"),
        ("#/job/old/sizes", NO_ANSWER),
        ("#/jobs/removed", NO_ANSWER),
    ] {
        app.open_window();
        app.go(place);
        app.wait_for_start();
        app.wait_for_words("job-trouble", why);
        newer.push(app.window());
    }
    app.turn_to(&older);
    app.script("window.held.close()");
    for (window, shown) in newer.iter().zip(["job-old bench", "item-leg", "no-removed"]) {
        app.turn_to(window);
        app.wait_for(shown);
        app.wait_until_gone("job-trouble");
    }
}

const NO_ANSWER: &str = "this browser does not answer";

/// The database never answers, until `window.answers`.
const NEVER_OPEN: &str = "{
    const open = IDBFactory.prototype.open;
    IDBFactory.prototype.open = function (...all) {
      if (window.answers) return open.apply(this, all);
      const request = open.call(this, 'elsewhere');
      for (const name of ['onsuccess', 'onerror', 'onblocked', 'onupgradeneeded']) {
        Object.defineProperty(request, name, { get: () => null, set: () => {} });
      }
      return request;
    }; }";

/// It answers from now on, and the window comes to the front.
const ANSWER: &str = "window.answers = true; document.dispatchEvent(new Event('visibilitychange'))";

#[test]
fn a_database_that_never_answers_is_told_and_asked_again() {
    let app = demo();
    wait_until_folded_in(&app);
    app.before_each_page(NEVER_OPEN);
    app.reload();
    app.wait_for_start();
    app.wait_for_words("job-trouble", NO_ANSWER);
    app.picture("read-again-no-answer");
    app.assert_accessible();
    app.script(ANSWER);
    app.wait_for("item-leg");
    app.wait_until_gone("job-trouble");
    app.go("?again#/jobs");
    app.wait_for_start();
    app.wait_for_words("job-trouble", NO_ANSWER);
    // Working from memory goes on.
    app.tap("new-job");
    app.wait_for_words("job-trouble", "not kept");
    app.wait_for_words("job-trouble", NO_ANSWER);
    app.tap("job-title");
    app.type_keys(" Z");
    app.script("document.activeElement.blur()");
    app.wait_for_value("job-title", "New job Z");
    app.script(ANSWER);
    app.wait_until_gone("job-trouble");
    wait_until_folded_in(&app);
    app.tap("back");
    app.wait_for("job-New job Z");
    app.wait_for(&format!("job-{BENCH}"));
    assert!(!app.shows("job-trouble"));
}

/// A transaction that never ends is given up and told; what was typed goes in once, whether or not the first try was taken.
#[test]
fn a_writing_that_never_ends_is_told_and_done_once() {
    let app = demo();
    wait_until_folded_in(&app);
    app.script(
        "window.isSilent = true;
         const silence = ({ prototype }, names) => names.forEach((name) => {
           const { get, set } = Object.getOwnPropertyDescriptor(prototype, name);
           const as = (call) => typeof call === 'function' ? (event) => window.isSilent || call(event) : call;
           Object.defineProperty(prototype, name, { configurable: true, get, set(call) { set.call(this, as(call)) } });
         });
         silence(IDBTransaction, ['oncomplete', 'onabort']);
         silence(IDBRequest, ['onsuccess', 'onerror']);",
    );
    measure(&app, "leg", &["2", "close"]);
    app.tap("back");
    app.wait_for_words("item-leg", "two inches");
    app.wait_for_words("job-trouble", NO_ANSWER);
    app.script("window.isSilent = false; document.dispatchEvent(new Event('visibilitychange'))");
    app.wait_until_gone("job-trouble");
    wait_until_folded_in(&app);
    wait_for_the_record(&app, "leg", "as_cut", "2");
    assert_one_step(&app);
}

/// Of a full device: what a page typed that was loaded again lies in the local storage.
#[test]
fn what_a_full_device_did_not_take_is_shown_after_a_reload_and_goes_in_once_there_is_room() {
    let app = demo();
    wait_until_folded_in(&app);
    app.before_each_page(
        "window.put ??= IDBObjectStore.prototype.put;
         IDBObjectStore.prototype.put = () => { throw new DOMException('full', 'QuotaExceededError') }",
    );
    fill(&app);
    measure(&app, "leg", &["2", "close"]);
    app.tap("back");
    app.wait_for_words("item-leg", "two inches");
    measure(&app, "overhang", &["5", "page-signs", "plus", "close"]);
    app.tap("back");
    app.wait_for("unread-as_cut");
    for _ in 0..2 {
        app.reload();
        app.wait_for_start();
        app.wait_for_words("item-leg", "two inches");
        app.wait_for_words("job-trouble", "not kept");
        app.wait_for("unread-as_cut");
    }
    app.picture("read-again-full");
    // It goes on from there.
    measure(&app, "leg", &["clear", "3", "close"]);
    app.tap("back");
    app.wait_for_words("item-leg", "three inches");
    app.reload();
    app.wait_for_start();
    app.wait_for_words("item-leg", "three inches");
    give_room(&app);
    app.wait_until_gone("job-trouble");
    wait_for_the_record(&app, "leg", "as_cut", "3");
    app.tap("look-as_cut");
    app.wait_until(
        "it stands as it was typed",
        "return document.querySelector('[data-testid=field-as_cut]')?.value.trim() === '5 +'",
    );
    app.enter("as_cut", &["clear", "5", "close"]);
    app.tap("back");
    app.wait_for_words("item-overhang", "five inches");
    wait_until_folded_in(&app);
    let undo = || app.attribute("undo", "aria-label").unwrap_or_default();
    // Overhang, leg, leg: each once.
    for of in ["overhang", "leg", "leg"] {
        app.wait_until(
            &format!("the step of {of} is the last"),
            &format!(
                "return document.querySelector('[data-testid=undo]').ariaLabel.includes('{of}')"
            ),
        );
        app.tap("undo");
    }
    app.wait_until(
        &format!("there is none before: {}", undo()),
        "return document.querySelector('[data-testid=undo]').disabled",
    );
}

/// On a full device a page crashed in the middle of a title, and the next page took the text over and went on in it. A
/// browser that is killed then brings the local storage back as it was before.
#[test]
fn what_a_killed_browser_brings_back_does_not_stand_in_the_place_of_what_was_typed_since() {
    let app = demo();
    wait_until_folded_in(&app);
    let job = address_of_job(&app);
    app.go(&job);
    app.before_each_page(
        "window.put ??= IDBObjectStore.prototype.put;
         IDBObjectStore.prototype.put = () => { throw new DOMException('full', 'QuotaExceededError') }",
    );
    app.reload();
    app.wait_for_start();
    let retype = |title: &str| {
        app.tap("job-title");
        app.script("document.activeElement.select()");
        app.type_keys(title);
    };
    retype("post 2");
    // Each page from now on finds the local storage as it is now.
    let typed = app.script("return { ...localStorage }");
    app.before_each_page(&format!(
        "localStorage.clear();
         for (const [name, text] of Object.entries({typed})) localStorage.setItem(name, text)"
    ));
    app.reload();
    app.wait_for_start();
    app.wait_for_value("job-title", "post 2");
    // Nothing tells the page that there is room: the next key finds it.
    app.script("IDBObjectStore.prototype.put = window.put");
    retype("front slat 3");
    app.script("document.activeElement.blur()");
    wait_until_folded_in(&app);
    app.before_each_page("IDBObjectStore.prototype.put = window.put");
    app.reload();
    app.wait_for_start();
    wait_until_folded_in(&app);
    app.wait_for_value("job-title", "front slat 3");
    app.assert_quiet_console();
}

/// Steps of a page that has ended and that are not in the record are in the list of jobs and in the file of all.
#[test]
fn what_a_page_that_ended_had_done_is_in_the_file_of_all_jobs() {
    let app = demo();
    app.tap("back");
    app.tap("new-job");
    app.section("hand-on");
    app.tap("remove-job");
    app.wait_for("taken-off");
    app.tap(&format!("job-{BENCH}"));
    wait_until_folded_in_but_for_what_was_removed(&app);
    fail_to_put(
        &app,
        "if (this.name === 'jobs') throw new DOMException('full', 'QuotaExceededError');
         return window.put.apply(this, all)",
    );
    app.tap("job-title");
    app.script("document.activeElement.select()");
    app.type_keys("Seed bench");
    app.section("sizes");
    measure(&app, "leg", &["3", "page-16", "3/16", "close"]);
    app.wait_for_words("job-trouble", "not kept");
    let job = address_of_job(&app);
    app.go("?again#/jobs");
    app.wait_for_start();
    app.wait_for("job-Seed bench");
    let folder = film::files_of("left-over");
    app.save_files_to(&folder);
    app.tap("save-all");
    app.wait_for_words("saved-all", "1 job is in the file all.jobs.json");
    app.wait_for_words("saved-all", "Removed jobs are not in it.");
    app.picture("read-again-saved");
    let file = fs::read_to_string(app.saved_file(&folder)).expect("the file");
    let file: Value = serde_json::from_str(&file).expect("a file of jobs");
    let saved = &file["jobs"][0];
    assert_eq!(saved["title"], "Seed bench");
    let items = saved["items"].as_array().expect("items");
    let leg = items.iter().find(|it| it["kind"] == "measure" && it["name"] == "leg");
    assert_eq!(leg.expect("the leg")["as_cut"], "3 3/16");
    app.go(&format!("{job}/sizes"));
    app.wait_for_words("item-leg", "three and three sixteenths");
    wait_for_the_record(&app, "leg", "as_cut", "3 3/16");
}

/// The name that a page gave before it ended, and that is not in the record, is one that a job that comes in meets.
#[test]
fn what_comes_in_is_set_against_what_a_page_that_ended_had_done() {
    let app = demo();
    wait_until_folded_in(&app);
    fail_to_put(
        &app,
        "if (this.name === 'jobs') throw new DOMException('full', 'QuotaExceededError');
         return window.put.apply(this, all)",
    );
    app.section("front");
    app.tap("job-title");
    app.script("document.activeElement.select()");
    app.type_keys("Seed bench");
    app.section("sizes");
    app.wait_for_words("job-trouble", "not kept");
    app.go("?again#/take");
    app.wait_for_start();
    let file = json!({
        "format": "sawdust-reckoner-job", "version": 1, "title": "Seed bench", "unit": "in", "next_id": 2,
        "items": [{ "id": 1, "kind": "measure", "rank": 1, "name": "leg", "formula": "3" }],
    });
    app.wait_for("pasted");
    paste(&app, &file.to_string());
    app.wait_for("incoming");
    app.wait_for("name-is-here");
    app.assert_quiet_console();
}

/// The same as [`wait_until_folded_in`], with a job that was taken off.
fn wait_until_folded_in_but_for_what_was_removed(app: &App) {
    app.wait_until(
        "every note is folded in",
        "const open = indexedDB.open('reckoner');
         await new Promise((done) => open.onsuccess = done);
         const asked = open.result.transaction('notes').objectStore('notes').getAllKeys();
         await new Promise((done) => asked.onsuccess = done);
         open.result.close();
         const left = asked.result.filter((key) => !/^(kept|taken)\\/|\\/removed$/.test(key));
         return left.length === 0 ? true : left",
    );
}
