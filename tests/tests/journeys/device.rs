//! What the page says about the device it is on, and the file that outlives the device.

use reckoner_e2e::{App, Fault, Screen, release};
use serde_json::json;

/// Loads the page again with the clock so much further on.
fn eight_days_later(app: &App) {
    app.before_each_page(
        "{ const now = Date.now; Date.now = () => now() + 8 * 24 * 60 * 60 * 1000; }",
    );
    app.reload();
}

/// Looks at a page on a phone and on a desk, light, dark and outdoors.
pub(crate) fn pictures(app: &App, name: &str) {
    for screen in [Screen::PHONE, Screen::DESKTOP] {
        app.resize(screen);
        app.assert_no_sideways_scroll();
        for theme in ["light", "dark", "outdoor"] {
            app.script(&format!("document.documentElement.dataset.theme = '{theme}'"));
            app.picture(&format!("{name}-{}-{theme}", screen.width));
        }
    }
    app.resize(Screen::PHONE);
    app.assert_accessible();
}

#[test]
fn without_a_service_worker_nothing_is_promised() {
    let app = App::arrive(Screen::PHONE);
    app.before_each_page("delete Navigator.prototype.serviceWorker");
    app.go("");
    app.wait_for_start();
    app.wait_for_text(
        "offline-line",
        "Nothing you type leaves this device. This page is not kept on the device: it needs a signal to open. \
         Open it in a window that is not private.",
    );
    assert!(!app.shows("offline-ready"));
    app.script("scrollTo(0, document.body.scrollHeight)");
    pictures(&app, "device-home");
    app.go("#/jobs");
    app.wait_until(
        "the jobs are in danger",
        "return document.querySelector('[data-testid=device-line]')?.innerText.startsWith('In a private window')",
    );
    app.assert_quiet_console();
}

/// The service worker itself, or a file that it wants, does not come: that is no private window.
#[test]
fn a_first_visit_on_a_bad_line_is_not_called_a_private_window() {
    let icon = "/icons/icon.svg";
    for (path, fault) in
        [("/sw.js", Fault::Missing), ("/sw.js", Fault::Garbled), (icon, Fault::Missing)]
    {
        let app = App::arrive(Screen::PHONE);
        app.server.spoil(path, fault);
        app.go("");
        app.wait_for_start();
        app.wait_for_text(
            "offline-line",
            "Nothing you type leaves this device. This page could not be made ready for use without a signal this time. \
             It is tried again at the next visit.",
        );
        app.script("scrollTo(0, document.body.scrollHeight)");
        pictures(&app, "device-not-ready");
        app.go("#/jobs");
        app.wait_until(
            "what becomes of the jobs is told",
            "return document.querySelector('[data-testid=device-line]')?.innerText.length > 0",
        );
        assert!(!app.text("device-line").contains("private"), "{}", app.text("device-line"));
        app.server.mend();
        app.reload();
        app.wait_until_kept();
    }
}

#[test]
fn the_first_visit_says_that_it_is_getting_ready_and_nothing_moves() {
    let app = App::open(Screen::PHONE);
    app.wait_for_text(
        "offline-line",
        "Nothing you type leaves this device. Works without a signal.",
    );
    let moved = app.script(
        "return await new Promise((tell) => {
           const watch = new PerformanceObserver((list) => {});
           watch.observe({ type: 'layout-shift', buffered: true });
           requestAnimationFrame(() => requestAnimationFrame(() =>
             tell(watch.takeRecords().reduce((sum, it) => sum + it.value, 0))));
         })",
    );
    assert_eq!(moved, json!(0));
}

#[test]
fn the_browsers_promise_is_asked_for_and_told() {
    let app = App::arrive(Screen::PHONE);
    app.before_each_page(
        "let given = false;
         StorageManager.prototype.persisted = async () => given;
         StorageManager.prototype.persist = () => new Promise((tell) => {
           window.answerYes = () => tell(given = true);
         });",
    );
    app.go("#/jobs");
    let line = |start: &str| {
        app.wait_until(
            start,
            &format!(
                "return document.querySelector('[data-testid=device-line]')?.innerText.startsWith({})",
                json!(start)
            ),
        );
    };
    line("The browser may delete your jobs when this device is short of room. Install this page");
    pictures(&app, "device-jobs");
    app.go("#/settings");
    line("The browser may delete your jobs");
    app.script("scrollTo(0, document.body.scrollHeight)");
    pictures(&app, "device-settings");
    app.go("#/jobs");
    app.tap("new-job");
    app.wait_until("the browser was asked", "return typeof window.answerYes === 'function'");
    app.tap("back");
    line("The browser may delete your jobs");
    // Some browsers ask a person first, who takes a while.
    app.script("answerYes()");
    line("The jobs are on this device alone, and the browser keeps them.");
}

#[test]
fn a_phone_that_forgets_says_so_unless_the_page_is_installed() {
    let app = App::arrive(Screen::PHONE);
    let phone = "Mozilla/5.0 (iPhone; CPU iPhone OS 18_5 like Mac OS X) AppleWebKit/605.1.15 Version/18.5 Mobile Safari/604.1";
    app.cdp("Emulation.setUserAgentOverride", &json!({ "userAgent": phone }));
    app.go("#/jobs");
    app.wait_for_words("device-line", "after 7 days");
    app.before_each_page("Object.defineProperty(navigator, 'standalone', { value: true })");
    app.reload();
    app.wait_until(
        "the installed page does not",
        "return document.querySelector('[data-testid=device-line]')?.innerText.length > 0",
    );
    assert!(!app.text("device-line").contains("7 days"), "{}", app.text("device-line"));
}

#[test]
fn an_old_job_reminds_once_of_its_file() {
    let app = App::open_at(Screen::PHONE, "#/jobs");
    app.tap("new-job");
    app.wait_for("section-sizes");
    assert!(!app.shows("remind"), "a new job");

    eight_days_later(&app);
    app.wait_for("remind");
    pictures(&app, "device-remind");
    app.tap("remind-later");
    assert!(!app.shows("remind"));
    app.reload();
    app.wait_for("section-sizes");
    assert!(!app.shows("remind"), "reminded twice");
}

#[test]
fn a_job_that_was_saved_as_a_file_reminds_of_nothing() {
    let folder = release::target_folder().join("journeys/reminded");
    let app = App::open_at(Screen::PHONE, "#/jobs");
    app.save_files_to(&folder);
    app.tap("new-job");
    app.section("hand-on");
    app.tap("save-file");
    app.saved_file(&folder);
    app.section("front");
    eight_days_later(&app);
    app.wait_for("section-sizes");
    assert!(!app.shows("remind"));
    app.tap("back");

    // From the reminder it is saved as well.
    app.tap("new-job");
    app.wait_for("section-sizes");
    eight_days_later(&app);
    app.save_files_to(&folder);
    app.tap("remind-save");
    app.saved_file(&folder);
    assert!(!app.shows("remind"));
}

#[test]
fn what_the_app_is_made_of_is_told_without_a_signal() {
    let app = App::open(Screen::PHONE);
    app.wait_until_kept();
    app.set_offline(true);
    app.tap("settings");
    app.tap("notices-link");
    app.wait_until(
        "licences are told",
        "return document.querySelector('[data-testid=notices]')?.innerText.includes('\\nwasm-bindgen 0.')",
    );
    pictures(&app, "notices");
    app.tap("back");
    app.wait_for_text("notices-link", "What this is made of");
}
