//! When the app cannot start or cannot go on, what was typed is still there.

use reckoner_e2e::{App, Fault, Screen};
use serde_json::{Value, json};

/// A page that has something stored, before the app gets to start.
fn visitor_with_typed_text() -> App {
    let app = App::arrive(Screen::PHONE);
    // The manifest lies at the same origin, so storage can be filled before the first start.
    app.go("manifest.webmanifest");
    app.script(
        r#"localStorage.setItem("reckoner.rip", JSON.stringify({ width: "9 1/4", strips: ["1 3/4"] }));
           localStorage.setItem("reckoner.note", "<b>not</b> JSON");
           localStorage.setItem("reckoner.saved.1772438400000-1", "saved");
           localStorage.setItem("other", "somebody else's")"#,
    );
    app
}

/// The path of the app's wasm or script on the server.
fn built_file(start: &str, end: &str) -> String {
    let entries = std::fs::read_dir(reckoner_e2e::release::built()).expect("the built app");
    let name = entries
        .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
        .find(|name| name.starts_with(start) && name.ends_with(end))
        .expect("a file of that kind");
    format!("/{name}")
}

#[test]
fn a_start_that_fails_shows_what_was_typed() {
    let cases = [
        (built_file("reckoner-app", ".wasm"), Fault::Missing),
        (built_file("reckoner-app", ".wasm"), Fault::Garbled),
        (built_file("reckoner-app", ".js"), Fault::Missing),
    ];
    let app = visitor_with_typed_text();
    for (path, fault) in cases {
        app.server.mend();
        app.server.spoil(path.as_str(), fault);
        app.go(&format!("?{fault:?}#/resaw-rip?blade=3+1%2F8"));
        // A new fragment alone would not load the page again.
        app.reload();
        app.wait_for("recovery");
        assert_eq!(
            app.text("recovery-typed"),
            "In the address, resaw-rip blade: 3 1/8 note <b>not</b> JSON rip width: 9 1/4 strips 0: 1 3/4",
            "{path} {fault:?}"
        );
        assert_eq!(
            app.script("return document.getElementById('app').checkVisibility()"),
            json!(false)
        );
        assert_eq!(app.script("return document.activeElement.tagName"), "H1");
    }
    app.assert_accessible();
    app.assert_no_sideways_scroll();
    app.picture("recovery");

    app.server.mend();
    app.tap("recovery-again");
    app.wait_for_start();
    assert!(!app.shows("recovery"));
}

#[test]
fn starting_without_what_was_typed_keeps_a_copy() {
    let app = visitor_with_typed_text();
    app.server.spoil(built_file("reckoner-app", ".wasm"), Fault::Missing);
    app.go("#/resaw-rip?blade=3+1%2F8");
    app.wait_for("recovery");
    app.script("sessionStorage.setItem('reckoner.over.resaw-rip', '#/resaw-rip of this window')");
    app.server.mend();
    app.tap("recovery-fresh");
    app.wait_for_start();
    assert!(!app.url().contains('#'), "{}", app.url());
    assert_eq!(app.script("return sessionStorage.getItem('reckoner.over.resaw-rip')"), Value::Null);

    let stored = app.script("return Object.fromEntries(Object.entries(localStorage))");
    let stored = stored.as_object().expect("storage");
    let kept = |end: &str| {
        let mut keys =
            stored.keys().filter(|k| k.starts_with("reckoner-kept.") && k.ends_with(end));
        keys.next().map(|key| stored[key].clone())
    };
    assert_eq!(kept(".reckoner.note"), Some(json!("<b>not</b> JSON")));
    assert_eq!(kept(".window.reckoner.over.resaw-rip"), Some(json!("#/resaw-rip of this window")));
    assert_eq!(kept(".address"), Some(json!("#/resaw-rip?blade=3+1%2F8")));
    assert!(kept(".reckoner.rip").is_some(), "{stored:?}");
    assert!(!stored.contains_key("reckoner.rip") && !stored.contains_key("reckoner.note"));
    assert_eq!(stored["other"], "somebody else's");
}

/// The database has what was typed too: once it is cleared it stays away.
#[test]
fn what_was_cleared_does_not_come_back() {
    let app = visitor_with_typed_text();
    app.script(
        "localStorage.setItem('reckoner.pasted', 'half a link');
         const open = indexedDB.open('reckoner', 2);
         open.onupgradeneeded = () => ['jobs', 'notes'].forEach((store) => open.result.createObjectStore(store));
         await new Promise((done) => open.onsuccess = done);
         const notes = open.result.transaction('notes', 'readwrite').objectStore('notes');
         const put = notes.put(`${Date.now()} half a link`, 'kept/pasted');
         await new Promise((done) => put.onsuccess = done);
         open.result.close()",
    );
    app.server.spoil(built_file("reckoner-app", ".wasm"), Fault::Missing);
    app.go("#/take");
    app.wait_for("recovery");
    app.wait_for_words("recovery-typed", "half a link");
    app.server.mend();
    app.tap("recovery-fresh");
    app.wait_for_start();
    app.go("#/take");
    app.wait_for_value("pasted", "");
}

#[test]
fn a_browser_without_webassembly_is_told_what_to_do() {
    let app = visitor_with_typed_text();
    app.before_each_page("delete globalThis.WebAssembly");
    app.go("");
    app.wait_for("recovery");
    let words = app.text("recovery-words");
    assert!(words.contains("Update the browser") && words.contains("Lockdown Mode"), "{words}");
    assert!(!app.text("recovery").contains("fault of the app"));
    assert!(app.text("recovery-typed").contains("width: 9 1/4"));
    // Nothing is fetched for use without a signal, so nothing can say that it is ready.
    let worker = app.script("return await navigator.serviceWorker.getRegistration() ?? null");
    assert_eq!(worker, json!(null));
    assert!(!app.shows("offline-ready"));
    app.assert_accessible();
    app.assert_no_sideways_scroll();
    for screen in [Screen::PHONE, Screen::DESKTOP] {
        app.resize(screen);
        app.picture(&format!("recovery-no-webassembly-{}", screen.width));
    }
}

#[test]
fn a_panic_inside_the_app_shows_the_recovery_page_and_its_reason() {
    let app = visitor_with_typed_text();
    // The browser refuses to make any element but those that the recovery page itself needs.
    app.before_each_page(
        "for (const name of ['createElement', 'createElementNS']) {
            const real = Document.prototype[name];
            Document.prototype[name] = function (...given) {
              if (given.some((g) => ['h3', 'pre'].includes(g))) return real.apply(this, given);
              throw new Error('no more elements');
            };
          }",
    );
    app.go("");
    app.wait_for("recovery");
    let reason = app.script("return document.getElementById('recovery-reason').textContent");
    assert!(reason.as_str().is_some_and(|text| text.contains("panicked at")), "{reason}");
    assert!(app.text("recovery-typed").contains("width: 9 1/4"));
}
