//! What is refused, taken out, or only looked at, is not lost.

use reckoner_e2e::{App, Screen};
use serde_json::{Value, json};

use crate::shelf::demo;

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
