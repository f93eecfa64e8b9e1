//! The parts of the program: fetched before they are wanted, never seen coming, and missed without a loss.

use std::collections::BTreeMap;

use reckoner_e2e::{App, Fault, Screen, release};
use serde_json::json;

/// The files of the parts that the page fetches after its start, as the server knows them.
fn parts() -> Vec<String> {
    let entries = std::fs::read_dir(release::built()).expect("the built app");
    let names = entries.filter_map(|entry| entry.ok()?.file_name().into_string().ok());
    let parts: Vec<String> = names
        .filter(|name| name.starts_with("reckoner-") && name.ends_with(".wasm"))
        .filter(|name| !name.starts_with("reckoner-app") && !name.starts_with("reckoner-planner"))
        .map(|name| format!("/{name}"))
        .collect();
    let alone = ["wood", "joints", "shapes", "shelf", "cut", "job"];
    assert!(alone.iter().all(|part| parts.iter().any(|path| fetched_by(path) == [*part])));
    parts
}

/// The parts that fetch a file: its name is made of theirs, and ends with a digest.
fn fetched_by(path: &str) -> Vec<&str> {
    let names = path.strip_prefix("/reckoner-").and_then(|name| name.rsplit_once('-'));
    names.map_or_else(Vec::new, |(names, _)| names.split('-').collect())
}

/// The file that this part alone fetches.
fn own_file(part: &str) -> String {
    let mut all = parts().into_iter();
    all.find(|path| fetched_by(path) == [part]).expect("a file of its own")
}

/// The files that going to a page of this part needs.
fn files_with(part: &str) -> Vec<String> {
    parts().into_iter().filter(|path| fetched_by(path).contains(&part)).collect()
}

/// The files that going to a page of this part does not need.
fn files_without(part: &str) -> Vec<String> {
    let needed = files_with(part);
    parts().into_iter().filter(|path| !needed.contains(path)).collect()
}

/// Waits until the page itself, not its service worker, has fetched every part.
fn wait_for_parts(app: &App) {
    app.wait_until(
        "every part is here",
        &format!(
            "const fetched = performance.getEntriesByType('resource').filter((it) => it.responseEnd > 0)
                 .map((it) => new URL(it.name).pathname);
             return {}.every((part) => fetched.includes(part))",
            json!(parts())
        ),
    );
}

/// Goes from home to each calculator and back, to the jobs and to the cut planner, by tapping.
fn tour(app: &App) {
    app.wait_for("home-tape");
    let ids = app.visible_ids();
    let calculators: Vec<&String> = ids.iter().filter(|id| id.starts_with("home-")).collect();
    assert_eq!(calculators.len(), 14, "{ids:?}");
    for calculator in calculators {
        app.tap(calculator);
        app.wait_for("answer-headline");
        if calculator == "home-tape" {
            // Its strip is open for the first key.
            app.tap("key-close");
            app.wait_until_gone("keypad");
        }
        app.tap("home");
    }
    app.tap("to-jobs");
    app.wait_for("new-job");
    app.tap("home");
    app.tap("to-cut");
    app.wait_for("plan");
    app.tap("home");
    app.wait_for("to-jobs");
}

#[test]
fn from_page_to_page_nothing_is_loaded_anew() {
    let app = App::open(Screen::PHONE);
    app.script("window.still = 'the same window'");
    tour(&app);
    assert_eq!(app.script("return window.still"), "the same window");
    app.wait_until_kept();
    app.server.stop();
    app.reload();
    app.wait_for_start();
    app.script("window.still = 'without a signal'");
    tour(&app);
    assert_eq!(app.script("return window.still"), "without a signal");
    app.assert_quiet_console();
}

#[test]
fn every_part_is_fetched_before_anybody_goes_there() {
    let app = App::open(Screen::PHONE);
    wait_for_parts(&app);
    // No copy of the service worker helps from here on.
    app.script(
        "const registration = await navigator.serviceWorker.getRegistration();
         await registration?.unregister();
         for (const name of await caches.keys()) await caches.delete(name)",
    );
    app.server.stop();
    app.script("location.hash = '#/resaw-rip'");
    app.wait_for("answer-headline");
    app.script("location.hash = '#/jobs'");
    app.wait_for("new-job");
}

#[test]
fn a_part_that_cannot_be_fetched_says_so_and_comes_when_asked_again() {
    let of_all = |path: &String| fetched_by(path).len() == 6;
    let of_all = parts().into_iter().find(of_all).expect("a file that every part fetches");
    let cases = [
        (own_file("shelf"), Fault::Missing, "#/jobs", "new-job"),
        (own_file("shelf"), Fault::Garbled, "#/jobs", "new-job"),
        (own_file("cut"), Fault::Missing, "#/cut", "plan"),
        (of_all, Fault::Missing, "#/tape?strip=44", "answer-headline"),
    ];
    for (path, fault, page, there) in cases {
        let app = App::arrive(Screen::PHONE);
        app.server.spoil(path, fault);
        app.go(page);
        app.wait_for_start();
        app.script("window.still = 'the same window'");
        app.wait_for("part-missing");
        assert!(!app.shows("recovery"));
        app.assert_accessible();
        app.assert_no_sideways_scroll();
        app.picture("part-missing");
        // Without a signal it says so again, however often it is asked.
        app.tap("part-again");
        app.wait_for("part-missing");
        // All else goes on.
        app.tap("home");
        app.wait_for("home-tape");
        app.script("history.back()");
        app.wait_for("part-missing");

        app.server.mend();
        app.tap("part-again");
        app.wait_for(there);
        // A page that has answered writes all it rests on behind what it was opened with.
        assert!(app.url().contains(page), "{}", app.url());
        assert_eq!(app.script("return window.still"), "the same window");
    }
}

#[test]
fn a_page_needs_the_files_of_its_own_part_and_no_others() {
    let cases = [
        ("wood", "#/lumber", "answer-headline"),
        ("joints", "#/screws", "answer-headline"),
        ("shapes", "#/strength", "answer-headline"),
        ("shelf", "#/jobs", "new-job"),
        ("shelf", "#/take", "watch"),
        ("cut", "#/cut", "plan"),
    ];
    for (part, page, there) in cases {
        let app = App::arrive(Screen::PHONE);
        let others = files_without(part);
        assert!(others.iter().any(|path| fetched_by(path) == ["job"]), "{others:?}");
        for path in others {
            app.server.spoil(path, Fault::Missing);
        }
        app.go(page);
        app.wait_for(there);
    }
}

/// Writes down when the program draws for the first time.
const WHEN_DRAWN: &str = "addEventListener('DOMContentLoaded', () => {
   const drawn = () => { window.drawnAt ??= performance.now() };
   new MutationObserver(drawn).observe(document.getElementById('app'), { childList: true });
 });";

#[test]
fn the_files_of_the_page_are_asked_for_before_there_is_anything_to_draw() {
    for (part, page) in [("wood", "#/tape?strip=44"), ("shelf", "#/jobs"), ("cut", "#/cut")] {
        let app = App::arrive(Screen::PHONE);
        app.before_each_page(WHEN_DRAWN);
        app.go(page);
        app.wait_for_start();
        let own = files_with(part);
        let asked = app.script(&format!(
            "const asked = {{}};
             for (const it of performance.getEntriesByType('resource')) {{
               const file = new URL(it.name).pathname;
               if ({}.includes(file)) (asked[file] ??= []).push(it.startTime < window.drawnAt);
             }}
             return asked",
            json!(own)
        ));
        let expected: BTreeMap<String, [bool; 1]> =
            own.into_iter().map(|it| (it, [true])).collect();
        assert_eq!(asked, json!(expected), "{page}");
    }
}

#[test]
fn a_job_whose_part_comes_late_is_made_all_the_same() {
    let app = App::arrive(Screen::PHONE);
    app.server.spoil(own_file("job"), Fault::Missing);
    app.go("#/jobs");
    app.tap("new-job");
    app.wait_for("part-missing");
    app.server.mend();
    app.tap("part-again");
    app.wait_for("job-title");
    app.tap("back");
    app.wait_for("job-New job");
}

#[test]
fn what_was_typed_is_there_again_when_a_part_came_late() {
    let app = App::arrive(Screen::PHONE);
    app.server.spoil(own_file("job"), Fault::Missing);
    app.go("#/tape");
    app.wait_for_start();
    app.enter("start_mark", &["1", "page-16", "1/2", "close"]);
    app.wait_until("it is in the address", "return location.hash.includes('start_mark=1+1%2F2')");
    app.tap("keep-in-job");
    app.wait_for("part-missing");
    app.server.mend();
    app.tap("part-again");
    app.wait_for("keep-title");
    app.script("history.back()");
    app.wait_for_text("echo-start_mark", "1 1/2 in");
}

#[test]
fn a_panic_on_a_page_of_a_part_shows_the_recovery_page() {
    let app = App::open(Screen::PHONE);
    wait_for_parts(&app);
    // From here on the browser makes no element but those that the recovery page itself needs.
    app.script(
        "for (const name of ['createElement', 'createElementNS']) {
           const real = Document.prototype[name];
           Document.prototype[name] = function (...given) {
             if (given.some((g) => ['h3', 'pre'].includes(g))) return real.apply(this, given);
             throw new Error('no more elements');
           };
         }
         location.hash = '#/jobs'",
    );
    app.wait_for("recovery");
    let reason = app.script("return document.getElementById('recovery-reason').textContent");
    assert!(reason.as_str().is_some_and(|text| text.contains("panicked at")), "{reason}");
}
