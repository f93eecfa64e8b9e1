//! In a shop without a signal.

use reckoner_e2e::{App, Fault, Screen, release};
use serde_json::json;

/// Takes a file whose name begins and ends so from what is kept; its path.
fn lose(app: &App, start: &str, end: &str) -> String {
    let path = app.script(&format!(
        "const cache = await caches.open((await caches.keys())[0]);
         const name = (request) => new URL(request.url).pathname.split('/').pop();
         const lost = (await cache.keys()).find((it) => name(it).startsWith('{start}') && name(it).endsWith('{end}'));
         return await cache.delete(lost) && new URL(lost.url).pathname",
    ));
    path.as_str().unwrap_or_else(|| panic!("{start}{end} is not kept: {path}")).to_owned()
}

#[test]
fn after_one_visit_the_app_works_with_the_server_gone() {
    let app = App::open(Screen::PHONE);
    app.wait_until_kept();
    app.wait_for("offline-ready");
    app.server.stop();

    app.reload();
    app.wait_for_start();
    assert!(!app.shows("offline-ready"), "said again on a later visit");
    app.assert_quiet_console();

    // A bookmark with a query and a fragment opens the app and stays as it is.
    let bookmark = "?from=bookmark#/tape?strip=3+3%2F8";
    app.go(bookmark);
    app.wait_for_start();
    // A moment later the app writes down behind it what else the page has.
    assert!(app.url().contains(bookmark), "{}", app.url());
    app.go("index.html");
    app.wait_for_start();
}

#[test]
fn every_file_of_the_page_is_kept_on_the_first_visit() {
    let app = App::open(Screen::PHONE);
    app.wait_until_kept();
    let kept = app.script(
        "const [name] = await caches.keys();
         const cache = await caches.open(name);
         return (await cache.keys()).map((r) => new URL(r.url).pathname)",
    );
    let kept: Vec<&str> =
        kept.as_array().into_iter().flatten().filter_map(|p| p.as_str()).collect();
    for needed in ["/", "/manifest.webmanifest", "/icons/icon-512.png"] {
        assert!(kept.contains(&needed), "{needed} in {kept:?}");
    }
    for kind in [".js", ".wasm", ".css"] {
        assert!(kept.iter().any(|path| path.ends_with(kind)), "{kind} in {kept:?}");
    }
    assert!(!kept.iter().any(|path| path.starts_with("/js/")), "{kept:?}");
    assert!(!kept.contains(&"/sw.js"), "{kept:?}");
}

#[test]
fn the_browser_finds_nothing_against_installing_it() {
    let app = App::open(Screen::PHONE);
    app.wait_until_kept();
    let answer = app.cdp("Page.getInstallabilityErrors", &serde_json::json!({}));
    let errors: Vec<&str> = answer["installabilityErrors"]
        .as_array()
        .into_iter()
        .flatten()
        .filter_map(|error| error["errorId"].as_str())
        // A test browser keeps nothing, as a private window does.
        .filter(|id| *id != "in-incognito")
        .collect();
    assert!(errors.is_empty(), "{errors:?}");
    let manifest = app.cdp("Page.getAppManifest", &serde_json::json!({}));
    assert_eq!(manifest["errors"], serde_json::json!([]));
    assert!(manifest["data"].as_str().is_some_and(|text| text.contains("Sawdust Reckoner")));
}

#[test]
fn a_file_that_was_lost_is_fetched_again_on_the_next_visit() {
    let app = App::open(Screen::PHONE);
    app.wait_until_kept();
    let lost = lose(&app, "reckoner-app", ".wasm");
    app.reload();
    app.wait_for_start();
    app.wait_until_kept();
    let found = format!("return await caches.match({}) !== undefined", json!(lost));
    assert_eq!(app.script(&found), json!(true), "{lost} is kept again");
    app.server.stop();
    app.reload();
    app.wait_for_start();
    app.wait_for_text(
        "offline-line",
        "Nothing you type leaves this device. Works without a signal.",
    );
}

#[test]
fn what_is_not_kept_yet_is_counted_until_it_is() {
    let app = App::open(Screen::PHONE);
    app.wait_until_kept();
    for end in [".wasm", ".js"] {
        let path = lose(&app, "reckoner-planner", end);
        app.server.spoil(path, Fault::Missing);
    }
    app.reload();
    app.wait_for_start();
    app.wait_for_text(
        "offline-ready",
        "2 files are not kept yet; open this page once with a signal.",
    );
    app.wait_for_text(
        "offline-line",
        "Nothing you type leaves this device. Not ready for use without a signal.",
    );
    app.assert_accessible();
    app.assert_no_sideways_scroll();
    app.script("document.getElementById('offline-ready').scrollIntoView()");
    app.picture("offline-missing");

    // An installed app is not started again: it is looked at.
    app.server.mend();
    app.script("document.dispatchEvent(new Event('visibilitychange', { bubbles: true }))");
    app.wait_until_kept();
    app.wait_for_text("offline-ready", "Ready to work without a signal.");
    app.wait_for_text(
        "offline-line",
        "Nothing you type leaves this device. Works without a signal.",
    );
}

#[test]
fn a_start_without_a_signal_and_without_a_file_says_what_is_missing() {
    let app = App::open(Screen::PHONE);
    app.wait_until_kept();
    lose(&app, "reckoner-app", ".wasm");
    app.server.stop();
    app.reload();
    app.wait_for("recovery");
    app.wait_until(
        "the reason is told",
        "return document.getElementById('recovery-words').innerText.startsWith('1 file is not kept yet')",
    );
    assert!(app.text("recovery-words").contains("Open this page once with a signal"));
    assert!(!app.shows("offline-ready"));
}

#[test]
fn two_copies_on_one_origin_leave_each_other_alone() {
    let app = App::arrive(Screen::PHONE);
    let one = release::copied("copies/one");
    release::another("copies/two");
    app.server.serve_folder(one.parent().unwrap_or(&one));
    // What builds of before have left: a cache without a scope in its name for each copy.
    app.go("one/manifest.webmanifest");
    app.script(
        "for (const copy of ['one', 'two']) {
           const cache = await caches.open(`reckoner-build-of-${copy}`);
           await cache.put(new URL(`/${copy}/`, location.href).href, new Response('the page of before'));
         }",
    );
    app.go("one/");
    app.wait_until_kept();
    app.wait_until(
        "what the first copy kept before is gone",
        "return !await caches.has('reckoner-build-of-one')",
    );
    assert_eq!(app.script("return await caches.has('reckoner-build-of-two')"), json!(true));
    app.go("two/");
    app.wait_until_kept();
    app.wait_until(
        "what the second copy kept before is gone",
        "return !await caches.has('reckoner-build-of-two')",
    );

    app.server.stop();
    for copy in ["one/", "two/"] {
        app.go(copy);
        app.wait_for_start();
    }
}
