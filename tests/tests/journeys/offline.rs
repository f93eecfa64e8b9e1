//! In a shop without a signal.

use reckoner_e2e::{App, Screen};

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
    assert!(app.url().ends_with(bookmark), "{}", app.url());
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
