//! A new release comes out while somebody is at work.

use reckoner_e2e::{App, Fault, Screen, release};
use serde_json::{Value, json};

/// The releases that page, style sheet and start script come from; null for the first one.
fn releases(app: &App) -> Value {
    app.script(&format!(
        "return [document.documentElement.getAttribute('{}'),
                 getComputedStyle(document.documentElement).getPropertyValue('--release').trim() || null,
                 window.releaseOfScript ?? null]",
        release::MARK
    ))
}

/// Whether the files of one build are kept, and no others.
const ONE_BUILD: &str = "return (await caches.keys()).length === 1";

/// Asks for a new version and waits what becomes of it: "installed" or "redundant".
fn look_for_update(app: &App) -> Value {
    app.script(
        "const registration = await navigator.serviceWorker.getRegistration();
         const outcome = new Promise((tell) => registration.addEventListener('updatefound', () => {
           const worker = registration.installing;
           worker.addEventListener('statechange', () => tell(worker.state));
         }, { once: true }));
         await registration.update();
         return await outcome",
    )
}

#[test]
fn a_new_release_is_offered_and_waits_until_it_is_wanted() {
    let app = App::open(Screen::PHONE);
    app.wait_until_kept();
    app.script("localStorage.setItem('reckoner.test', 'typed before')");
    app.server.serve_folder(release::another("offered"));

    // The old release stays, whole, however often it is loaded.
    for _ in 0..2 {
        app.reload();
        app.wait_for_start();
        app.wait_for("update-banner");
        assert_eq!(releases(&app), json!([null, null, null]));
    }
    app.assert_accessible();
    app.assert_no_sideways_scroll();
    app.picture("update");

    // "Later" puts the offer away and changes nothing.
    app.tap("update-later");
    assert!(!app.shows("update-banner"));
    app.reload();
    app.wait_for_start();

    app.tap("update-take");
    app.wait_until(
        "the new release is on the screen",
        &format!("return document.documentElement.getAttribute('{}') === 'offered'", release::MARK),
    );
    app.wait_for_start();
    assert_eq!(releases(&app), json!(["offered", "offered", "offered"]));
    app.wait_until("old files are gone", ONE_BUILD);
    assert_eq!(app.script("return localStorage.getItem('reckoner.test')"), "typed before");
    assert!(!app.shows("update-banner"));

    app.server.stop();
    app.reload();
    app.wait_for_start();
    assert_eq!(releases(&app), json!(["offered", "offered", "offered"]));
}

#[test]
fn half_a_release_is_never_taken() {
    let app = App::open(Screen::PHONE);
    app.wait_until_kept();
    let next = release::another("half");
    app.server.serve_folder(next);
    // The server has the new list, but still an old icon under the same name.
    app.server.spoil("/icons/icon.svg", Fault::Garbled);
    assert_eq!(look_for_update(&app), "redundant");
    app.reload();
    app.wait_for_start();
    assert_eq!(releases(&app), json!([null, null, null]));
    assert!(!app.shows("update-banner"));

    app.server.mend();
    assert_eq!(look_for_update(&app), "installed");
    app.wait_for("update-banner");
}

#[test]
fn another_window_goes_on_undisturbed_when_one_takes_the_update() {
    let app = App::open(Screen::PHONE);
    app.wait_until_kept();
    let first = app.window();
    app.script("window.unsaved = 'in the middle of work'");

    app.open_window();
    app.server.serve_folder(release::another("elsewhere"));
    app.go("");
    app.wait_for_start();
    app.tap("update-take");
    app.wait_until(
        "the new release is in the second window",
        "return window.releaseOfScript === 'elsewhere'",
    );

    app.turn_to(&first);
    assert_eq!(app.script("return window.unsaved"), "in the middle of work");
    assert_eq!(releases(&app), json!([null, null, null]));
    app.wait_until(
        "the first window says what happened",
        "return document.getElementById('update').innerText.includes('another window')",
    );
    app.tap("update-take");
    app.wait_until(
        "the new release is in the first window",
        "return window.releaseOfScript === 'elsewhere'",
    );
}

#[test]
fn an_old_window_still_gets_what_it_first_needs_after_the_update() {
    let app = App::open_at(Screen::PHONE, "#/jobs");
    app.wait_until_kept();
    let old = app.window();
    app.script("window.unsaved = 'in the middle of work'");

    let new = app.open_window();
    app.server.serve_folder(release::with_renamed_programs("renamed"));
    app.go("");
    app.wait_for_start();
    app.tap("update-take");
    app.wait_until("the new release", "return window.releaseOfScript === 'renamed'");
    app.wait_for_start();
    app.wait_until_kept();

    // The planner of the old window is on no server any more.
    app.turn_to(&old);
    app.go("#/cut");
    app.wait_until(
        "the planner has ended",
        "return ['plan', 'planner-trouble'].some((id) => document.querySelector(`[data-testid=${id}]`))
            && document.querySelector('[data-testid=planning]') === null",
    );
    assert!(!app.shows("planner-trouble"), "{}", app.text("planner-trouble"));
    assert_eq!(app.script("return window.unsaved"), "in the middle of work");
    assert_eq!(releases(&app), json!([null, null, null]));

    // The new window looks again, and what the old one needs is not thrown away.
    app.turn_to(&new);
    app.reload();
    app.wait_for_start();
    app.wait_until_kept();
    assert_eq!(app.script("return (await caches.keys()).length"), json!(2));

    // With the last old window goes what it needed.
    app.turn_to(&old);
    app.tap("update-take");
    app.wait_until("the new release", "return window.releaseOfScript === 'renamed'");
    app.wait_until("old files are gone", ONE_BUILD);
    app.server.stop();
    app.reload();
    app.wait_for_start();
}

#[test]
fn a_release_that_does_not_start_can_be_replaced() {
    let app = App::arrive(Screen::PHONE);
    let broken = release::another("broken");
    let wasm = std::fs::read_dir(&broken)
        .expect("the release")
        .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
        .find(|name| name.starts_with("reckoner-app") && name.ends_with(".wasm"))
        .expect("the wasm that a first visit starts");
    std::fs::write(broken.join(&wasm), "not a program").expect("written");
    release::finish(&broken);
    app.server.serve_folder(broken);
    app.go("");
    app.wait_for("recovery");
    app.wait_until_kept();

    app.server.serve_folder(release::another("mended"));
    app.reload();
    app.tap("update-take");
    app.wait_until("the mended release", "return window.releaseOfScript === 'mended'");
    app.wait_for_start();
    assert!(!app.shows("recovery"));
}
