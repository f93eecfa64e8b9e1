//! What is refused, taken out, or only looked at, is not lost.

use reckoner_e2e::{App, Screen};
use serde_json::{Value, json};

use crate::shelf::{address_of_job, click, demo};

/// A job file with one size.
fn job(title: &str) -> Value {
    json!({
        "format": "sawdust-reckoner-job", "version": 1, "title": title, "unit": "in", "next_id": 2,
        "items": [{ "id": 1, "kind": "measure", "rank": 1, "name": "leg", "formula": "3" }],
    })
}

/// Puts a job on the shelf that has as much as a job can have: 500 things beside sizes and pieces.
fn put_a_full_job(app: &App) {
    put_a_job_of(app, 500);
}

/// Puts a job with so many cans on the shelf, in the place of the one before.
fn put_a_job_of(app: &App, cans: u32) {
    app.script(&format!(
        "const cans = {cans}; {}",
        "const items = [];
         for (let id = 1; id <= cans; id++) items.push({ id, kind: 'round', rank: id, name: 'can ' + id, diameter: '6' });
         const job = JSON.stringify({ format: 'sawdust-reckoner-job', version: 1, title: 'Full', unit: 'in', next_id: cans + 1, items });
         const open = indexedDB.open('reckoner');
         await new Promise((done) => open.onsuccess = done);
         const edit = open.result.transaction('jobs', 'readwrite');
         edit.objectStore('jobs').put({ title: 'Full', job, history: '', changed: 1 }, 'full');
         await new Promise((done) => edit.oncomplete = done);
         open.result.close();"
    ));
}

/// A title that is typed for a job in which there is no room stays, and so does the page.
#[test]
fn a_title_for_a_job_that_is_full() {
    let app = App::open_at(Screen::PHONE, "#/jobs");
    app.wait_for("new-job");
    put_a_full_job(&app);
    let keep = "#/keep/tape?strip=44&unit=in";
    app.go(keep);
    app.wait_for("jobs");
    app.tap("keep-title");
    app.script("document.activeElement.select()");
    app.type_keys("Gate posts");
    app.script("document.querySelector('[data-testid=jobs] button').click()");
    app.wait_for_words("job-trouble", "500");
    assert_eq!(app.place(), keep);
    app.wait_for_value("keep-title", "Gate posts");
    app.reload();
    app.wait_for_start();
    app.wait_for_value("keep-title", "Gate posts");
    app.tap("keep-in-new");
    app.wait_until("it is kept", "return location.hash.startsWith('#/job/')");
    app.go(keep);
    app.wait_until(
        "the title that was used is no longer typed",
        "return ![undefined, 'Gate posts'].includes(document.querySelector('[data-testid=keep-title]')?.value)",
    );
    app.assert_quiet_console();
}

/// So does what is typed of a new thing.
#[test]
fn a_new_thing_for_a_job_that_is_full() {
    let app = App::open_at(Screen::PHONE, "#/jobs");
    app.wait_for("new-job");
    put_a_full_job(&app);
    app.go("#/job/full/new/round");
    app.tap("field-name");
    app.type_keys("drum");
    app.enter("diameter", &["9", "close"]);
    app.tap("save-item");
    app.wait_for_words("job-trouble", "500");
    assert_eq!(app.place(), "#/job/full/new/round");
    app.wait_for_value("field-name", "drum");
    app.wait_for_value("field-diameter", "9");
    // And a calculator that finds no room leads nowhere.
    app.go("#/job/full/kept");
    app.tap("keep-tape");
    app.wait_for_words("job-trouble", "500");
    assert_eq!(app.place(), "#/job/full/kept");
    app.assert_quiet_console();
}

/// And where there is no more room by the time that it comes to the shelf, of which this window has not heard.
#[test]
fn a_new_thing_for_a_job_that_another_window_has_filled() {
    let app = App::open_at(Screen::PHONE, "#/jobs");
    app.wait_for("new-job");
    put_a_job_of(&app, 1);
    app.go("#/job/full/new/round");
    app.tap("field-name");
    app.type_keys("drum");
    app.enter("diameter", &["9", "close"]);
    put_a_full_job(&app);
    app.tap("save-item");
    app.wait_for_words("job-trouble", "500");
    app.tap("begun-round");
    app.wait_for_value("field-name", "drum");
    app.wait_for_value("field-diameter", "9");
    app.assert_quiet_console();
}

/// What was tapped for one piece is there when that of another was tapped since.
#[test]
fn the_places_of_two_pieces() {
    let app = demo();
    let mut pages = Vec::new();
    for (piece, spot) in [("piece-2", 1), ("piece-3", 2)] {
        let spot = format!("spot-at long rail, upper {spot}");
        app.section("parts");
        app.tap("item-leg");
        app.tap(piece);
        app.wait_for("answer-headline");
        app.enter("thickness", &["3", "page-16", "3/16", "close"]);
        app.tap("own-size");
        app.tap(&spot);
        app.wait_for("moved");
        pages.push((app.place(), spot));
        app.tap("back");
        app.tap("back");
        app.tap("back");
    }
    for (page, spot) in &pages {
        app.go(page);
        app.wait_for("stands");
        let pressed = app.script(
            "return [...document.querySelectorAll('[data-testid^=spot-][aria-pressed=true]')].map((it) => it.dataset.testid)",
        );
        assert_eq!(pressed, json!([spot]));
    }
    app.tap("stands-there");
    app.wait_for("answer-headline");
    app.go(&pages[0].0);
    app.wait_for("moved");
    app.tap("stands-there");
    app.wait_for("answer-headline");
    let left =
        "return Object.keys(localStorage).filter((it) => it.startsWith('reckoner.stands.')).length";
    assert_eq!(app.script(left), 0);
    app.assert_quiet_console();
}

fn paste(app: &App, text: &str) {
    app.wait_for("pasted");
    app.script(&format!(
        "const box = document.querySelector('[data-testid=pasted]');
         box.value = {}; box.dispatchEvent(new Event('input', {{ bubbles: true }}))",
        json!(text)
    ));
    app.tap("look-at-text");
}

fn reload(app: &App) {
    app.reload();
    app.wait_for_start();
    app.wait_for("pasted");
}

/// A job's text that was looked at is there, and looked at, until it is on the shelf or left.
#[test]
fn a_text_that_was_looked_at() {
    let app = App::open_at(Screen::PHONE, "#/take");
    let text = job("Garden gate").to_string();
    paste(&app, &text);
    app.wait_for_words("incoming", "Garden gate");
    reload(&app);
    app.wait_for_value("pasted", &text);
    app.wait_for_words("incoming", "Garden gate");
    app.tap("leave-job");
    app.wait_until_gone("incoming");
    app.wait_for_value("pasted", "");
    reload(&app);
    app.wait_for_value("pasted", "");
    assert!(!app.shows("incoming"));
    paste(&app, &text);
    app.tap("take-job");
    app.wait_for("job-title");
    app.go("#/take");
    app.wait_for_value("pasted", "");
    assert!(!app.shows("incoming"));
    app.go("#/jobs");
    app.wait_for("job-Garden gate");
    // What was pasted since is not thrown away with what was looked at before.
    app.go("#/take");
    paste(&app, &text);
    app.wait_for("incoming");
    app.tap("pasted");
    app.script("const box = document.activeElement; box.select()");
    app.type_keys("half a link");
    app.tap("leave-job");
    app.wait_until_gone("incoming");
    app.wait_for_value("pasted", "half a link");
    app.assert_quiet_console();
}

/// Codes that came in, one text after the other, are there until their job is on the shelf.
#[test]
fn codes_that_came_so_far() {
    let app = demo();
    app.section("hand-on");
    app.tap("to-codes");
    app.script("navigator.clipboard.writeText = async (text) => { window.copied = text }");
    app.tap("copy-codes");
    app.wait_until("the codes are copied", "return Boolean(window.copied)");
    let texts = app.script("return window.copied").as_str().expect("a text").to_owned();
    let codes: Vec<&str> = texts.lines().collect();
    assert!(codes.len() > 2, "{texts}");
    app.go("#/take");
    paste(&app, codes[0]);
    paste(&app, codes[1]);
    let two = format!("2 of {}", codes.len());
    app.wait_for_words("progress", &two);
    app.wait_for_value("pasted", "");
    reload(&app);
    app.wait_for_words("progress", &two);
    paste(&app, &codes[2..].join("\n"));
    app.wait_for("incoming");
    reload(&app);
    app.wait_for("incoming");
    app.wait_for_words("progress", "codes are here");
    app.tap("take-job");
    app.wait_for("job-title");
    app.go("#/take");
    app.wait_for("pasted");
    app.wait_for_words("progress", "");
    assert!(!app.shows("incoming"));
    // Begun afresh, they are gone for good.
    paste(&app, codes[0]);
    app.tap("start-afresh");
    reload(&app);
    assert_eq!(app.text("progress"), "");
    app.assert_quiet_console();
}

/// The text of many jobs is there where the shelf could not be read, and until they are on it.
#[test]
fn a_text_of_many_jobs() {
    let app = App::open_at(Screen::PHONE, "#/take");
    let text = json!({
        "format": "sawdust-reckoner-jobs", "version": 1, "jobs": [job("Garden gate"), job("Bench")],
    })
    .to_string();
    app.script(
        "window.getAll ??= IDBObjectStore.prototype.getAll;
         window.openCursor ??= IDBObjectStore.prototype.openCursor;
         IDBObjectStore.prototype.getAll = IDBObjectStore.prototype.openCursor = function () { throw new DOMException('no', 'UnknownError') };",
    );
    paste(&app, &text);
    app.wait_for_words("job-trouble", "cannot be read");
    app.wait_for_value("pasted", &text);
    reload(&app);
    app.wait_for_value("pasted", &text);
    app.wait_for_words("incoming-summary", "2 jobs in this file");
    app.tap("take-jobs");
    app.wait_for_words("taken", "2 jobs came in.");
    app.wait_for_value("pasted", "");
    reload(&app);
    app.wait_for_value("pasted", "");
    app.assert_quiet_console();
}

/// An item that is taken out comes back with what is typed in it, readable or not.
#[test]
fn what_is_typed_in_an_item_that_is_taken_out() {
    let app = demo();
    let sizes = format!("{}/sizes", address_of_job(&app));
    app.tap("item-leg");
    app.enter("as_cut", &["2", "page-signs", "plus", "close"]);
    app.wait_for("problem-as_cut");
    let typed = app.script("return document.querySelector('[data-testid=field-as_cut]').value");
    let typed = typed.as_str().expect("a text").to_owned();
    app.tap("take-out");
    app.wait_until_gone("take-out");
    app.wait_for_words("gone-as_cut", "It may come back with Undo");
    app.tap("undo");
    app.tap("item-leg");
    app.wait_for_value("field-as_cut", &typed);
    app.wait_for("problem-as_cut");
    app.enter("as_cut", &["clear", "close"]);
    app.tap("back");
    // And what can be read, in the very task of its last key.
    app.tap("item-leg");
    app.enter("as_cut", &["2"]);
    app.script(&format!("{}; {}", click("key-5"), click("take-out")));
    app.wait_until("the page before", &format!("return location.hash === '{sizes}'"));
    app.wait_until_gone("item-leg");
    assert!(!app.shows("gone-as_cut"));
    app.tap("undo");
    app.wait_for_words("item-leg", "twenty-five inches");
    app.assert_quiet_console();
}
