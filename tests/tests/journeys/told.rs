//! What the device does not keep is told on the page where it is typed, until it is kept.

use reckoner_e2e::{App, Screen};

use crate::kept::on_a_database_of_before;
use crate::shelf::{demo, fill, give_room, wait_until_folded_in};

/// The local storage takes nothing more.
const NO_LOCAL_ROOM: &str = "
    window.setItem ??= Storage.prototype.setItem;
    Storage.prototype.setItem = function () { throw new DOMException('full', 'QuotaExceededError') };";

/// What a field holds.
fn value(app: &App, id: &str) -> String {
    app.wait_for(id);
    let value = app.script(&format!("return document.querySelector('[data-testid={id}]').value"));
    value.as_str().expect("a text").to_owned()
}

const KEEP: &str = "#/keep/tape?strip=44&unit=in";

/// Neither the database nor the local storage has room: settings, pasted text, a title, a calculator.
#[test]
fn what_is_typed_outside_a_job_on_a_full_device_is_told_until_it_is_kept() {
    let app = App::open_at(Screen::PHONE, "#/take");
    app.tap("pasted");
    app.type_keys("half");
    assert!(!app.shows("not-kept"));
    fill(&app);
    app.script(NO_LOCAL_ROOM);
    app.type_keys(" a link");
    app.wait_for_words("not-kept", "What you type is not kept: this browser has no room left.");
    app.picture("told-take");
    app.assert_accessible();
    app.go(KEEP);
    app.tap("keep-title");
    app.type_keys(" X");
    app.wait_for("not-kept");
    app.go("#/settings");
    app.enter("kerf", &["1", "close"]);
    let kerf = value(&app, "field-kerf");
    app.wait_for("not-kept");
    app.assert_accessible();
    app.go("#/tape");
    app.tap("go-through");
    app.press(&["7", "7"]);
    app.wait_for("not-kept");
    app.picture("told-tape-keys");
    app.press(&["close"]);
    app.picture("told-tape");
    app.assert_accessible();
    // It stays usable on this page.
    app.go("#/take");
    app.wait_for_value("pasted", "half a link");
    app.script("Storage.prototype.setItem = window.setItem");
    give_room(&app);
    app.wait_until_gone("not-kept");
    app.reload();
    app.wait_for_start();
    app.wait_for_value("pasted", "half a link");
    assert!(!app.shows("not-kept"));
    app.go(KEEP);
    app.wait_until(
        "the title goes on",
        "return document.querySelector('[data-testid=keep-title]')?.value.endsWith(' X') ?? false",
    );
    app.go("#/settings");
    app.wait_for_value("field-kerf", &kerf);
    app.go("#/tape");
    app.wait_until(
        "the calculator goes on",
        "return (localStorage.getItem('reckoner.last.tape') ?? '').includes('77')",
    );
    app.assert_quiet_console();
}

/// The local storage alone is full: the database has the text, and the page that is loaded again has it from there.
#[test]
fn what_the_local_storage_has_no_room_for_is_read_from_the_database() {
    let app = App::open_at(Screen::PHONE, "#/take");
    app.tap("pasted");
    app.type_keys("half");
    app.before_each_page(NO_LOCAL_ROOM);
    app.script(NO_LOCAL_ROOM);
    app.type_keys(" a link");
    for _ in 0..2 {
        app.reload();
        app.wait_for_start();
        app.wait_for_value("pasted", "half a link");
        assert!(!app.shows("not-kept"));
    }
    app.assert_quiet_console();
}

/// A window with the version before keeps the database shut, until it is closed.
#[test]
fn an_older_window_that_keeps_the_database_shut_is_told() {
    let app = on_a_database_of_before("window.held = open.result;");
    let older = app.window();
    app.open_window();
    app.go("#/jobs");
    app.wait_for_start();
    app.tap("new-job");
    app.wait_for_words("job-trouble", "another window has an older version of this app open");
    app.tap("job-title");
    app.type_keys(" Z");
    app.wait_for_value("job-title", "New job Z");
    let newer = app.window();
    app.turn_to(&older);
    app.script("window.held.close()");
    app.turn_to(&newer);
    app.wait_until_gone("job-trouble");
    wait_until_folded_in(&app);
    app.reload();
    app.wait_for_start();
    app.wait_for_value("job-title", "New job Z");
    assert!(!app.shows("job-trouble"));
}

/// A newer version of the app has the database: the page that had it says so, and the one that is loaded after it says
/// what helps.
#[test]
fn a_newer_version_that_took_the_database_over_is_told() {
    let app = demo();
    app.section("front");
    wait_until_folded_in(&app);
    let page = app.window();
    app.open_window();
    app.go("manifest.webmanifest");
    app.script(
        "const open = indexedDB.open('reckoner', 9);
         await new Promise((done) => open.onsuccess = done)",
    );
    app.turn_to(&page);
    app.tap("job-title");
    app.type_keys(" Q");
    app.wait_for_words("job-trouble", "Load this page again.");
    let job = app.place();
    app.go(&format!("?again{job}"));
    app.wait_for_start();
    app.wait_for_words("job-trouble", "Close all windows of the app, then open it again");
    assert!(!app.text("job-trouble").contains("Load this page again"));
    app.go("#/jobs");
    app.wait_for_words("job-trouble", "Close all windows of the app, then open it again");
    app.picture("told-newer");
}
