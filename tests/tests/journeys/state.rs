//! What was typed: in the link, after a reload, and undone.

use reckoner_e2e::{App, Screen};
use serde_json::json;

use crate::kept::and_reload_at_once;
use crate::shelf::click;

#[test]
fn a_reload_and_a_link_bring_back_what_was_typed() {
    let app = App::open_at(Screen::PHONE, "#/tape");
    app.enter("start_mark", &["1", "page-16", "1/2", "close"]);
    app.wait_until("it is in the address", "return location.hash.includes('start_mark=1+1%2F2')");
    let link = app.url();
    app.reload();
    app.wait_for_start();
    app.wait_for_text("echo-start_mark", "1 1/2 in");

    let elsewhere = App::arrive(Screen::DESKTOP);
    let fragment = link.split_once('#').map(|(_, it)| it).expect("a fragment");
    elsewhere.go(&format!("#{fragment}"));
    elsewhere.wait_for_start();
    elsewhere.wait_for_text("echo-start_mark", "1 1/2 in");
}

/// A page that was changed is left for the very link that it was opened with.
#[test]
fn a_link_that_is_opened_again_brings_its_sizes_again() {
    for (link, field, size) in [
        ("#/spacing?length=43&unit=in", "length", "43"),
        ("#/cut?kerf=1%2F8&unit=in", "kerf", "1/8"),
    ] {
        let app = App::open_at(Screen::PHONE, link);
        app.wait_for_value(&format!("field-{field}"), size);
        app.enter(field, &["1", "close"]);
        app.wait_until(
            "the address has it",
            &format!("return location.hash.includes('{field}=1&')"),
        );
        app.script(&format!("location.hash = '{link}'"));
        app.wait_for_value(&format!("field-{field}"), size);
        app.assert_quiet_console();
    }
}

#[test]
fn a_hostile_link_is_a_message_and_a_fresh_form() {
    for link in [
        "#/tape?evil=1",
        "#/tape?strip=%FF%FE",
        "#/tape?divide=%3Cimg%20src%3Dx%20onerror%3Dalert(1)%3E",
        "#/%3Cscript%3E",
    ] {
        let app = App::open_at(Screen::PHONE, link);
        app.wait_for("link-trouble");
        assert!(!app.shows("recovery"), "{link}");
        app.assert_quiet_console();
    }
}

#[test]
fn a_headline_can_be_copied() {
    let app = App::open_at(Screen::PHONE, "#/tape?strip=44&unit=in");
    app.allow_clipboard();
    app.tap("copy");
    app.wait_until("it says so", "return document.body.innerText.includes('Copied.')");
    let copied = app.script("return navigator.clipboard.readText()");
    assert_eq!(copied, "Read the tape at: 44 in (from the end of the tape)");
}

#[test]
fn a_changed_theme_is_there_after_a_reload() {
    let app = App::open_at(Screen::PHONE, "#/settings");
    app.tap("theme-dark");
    app.reload();
    app.wait_for_start();
    assert_eq!(app.script("return document.documentElement.dataset.theme"), "dark");
    let paper = app.script("return getComputedStyle(document.body).backgroundColor");
    assert_eq!(paper, "rgb(29, 32, 36)");
}

/// What is set in one window stays when something else is set in another, and each shows both.
#[test]
fn settings_of_two_windows_are_put_together() {
    let app = App::open_at(Screen::PHONE, "#/settings");
    app.tap("big-no");
    let first = app.window();
    app.open_window();
    app.go("#/settings");
    app.wait_for_start();
    app.enter("kerf", &["1", "close"]);
    let second = app.window();
    app.turn_to(&first);
    app.wait_for_value("field-kerf", "1");
    app.tap("theme-dark");
    app.turn_to(&second);
    app.wait_until("it is dark here", IS_DARK);
    app.wait_until("and chosen here", "return document.querySelector('#theme-dark').checked");
    for kept in [
        "return localStorage.getItem('reckoner.settings')",
        "const open = indexedDB.open('reckoner');
         await new Promise((done) => open.onsuccess = done);
         const asked = open.result.transaction('notes').objectStore('notes').get('kept/settings');
         await new Promise((done) => asked.onsuccess = done);
         open.result.close();
         return asked.result",
    ] {
        let kept = app.script(kept);
        let kept = kept.as_str().expect("a text");
        assert!(kept.contains("kerf=1&") && kept.contains("theme=dark"), "{kept}");
    }
    // Undo takes back what was done in its own window.
    app.tap("undo");
    app.turn_to(&first);
    app.wait_until(
        "the kerf is ours again",
        "return document.querySelector('[data-testid=field-kerf]').value !== '1'",
    );
    assert_eq!(app.script(IS_DARK), true);
    // A window that shows another page follows.
    app.go("#/tape");
    app.turn_to(&second);
    app.tap("theme-light");
    app.turn_to(&first);
    app.wait_until("it is light here", "return document.documentElement.dataset.theme === 'light'");
    app.assert_quiet_console();
}

const IS_DARK: &str = "return document.documentElement.dataset.theme === 'dark'";

/// What would be written into the address waits in `held`.
fn hold_the_address(app: &App) {
    app.script(
        "const later = window.setTimeout;
         window.held = [];
         window.setTimeout = (what, moment, ...rest) =>
             moment === 300 ? held.push(what) : later(what, moment, ...rest)",
    );
}

/// A browser that is started again opens a page by an address that is older than the last key.
#[test]
fn a_page_opened_by_an_older_address_goes_on_with_what_was_typed_over_it() {
    let link = "#/spacing?length=40&unit=in";
    let app = App::open_at(Screen::PHONE, "#/spacing");
    app.go("#/");
    app.go(link);
    app.wait_for_value("field-length", "40");
    app.wait_until("its address is written", "return location.hash.includes('mode=')");
    let address = app.place();
    hold_the_address(&app);
    app.enter("length", &["4", "1"]);
    app.wait_for_value("field-length", "41");
    assert_eq!(app.place(), address);
    let first = app.window();
    let second = app.open_window();
    app.turn_to(&first);
    app.close_window(&second);
    app.go(&address);
    app.wait_for_value("field-length", "41");
    app.wait_until("the address is written", "return location.hash.includes('length=41')");
    // The link itself brings its own size again.
    app.go("#/");
    app.go(link);
    app.wait_for_value("field-length", "40");
    app.assert_quiet_console();
}

/// The address is written a moment after a key. A link that is tapped just then is followed, also where the app hears of
/// the other page only after that moment.
#[test]
fn a_link_is_followed_while_the_address_is_still_to_be_written() {
    let app = App::open_at(Screen::DESKTOP, "#/spacing");
    app.wait_for("field-length");
    hold_the_address(&app);
    app.tap("field-length");
    app.type_keys("9");
    app.wait_until("the address is still to be written", "return held.length > 0");
    app.script(
        "document.querySelector('[data-testid=home]').click();
         for (const write of held) write()",
    );
    app.wait_for("home-spacing");
    app.assert_quiet_console();
}

/// On a slow line a page stays for a while after it was asked to load again. The address that it would write in that time is not
/// the one that is loaded, and what was typed last stands nevertheless.
#[test]
fn the_last_key_stands_when_the_page_is_loaded_again_over_a_slow_line() {
    let app = App::open_at(Screen::PHONE, "#/tape");
    app.enter("start_mark", &["1"]);
    app.wait_until("it is in the address", "return location.hash.includes('start_mark=1&')");
    app.slow_line(1_500);
    and_reload_at_once(&app, &click("key-2"));
    app.wait_for_text("echo-start_mark", "12 in");
    app.wait_until("it is in the address", "return location.hash.includes('start_mark=12')");
    app.assert_quiet_console();
}

/// A browser that is asked to load the page again may have taken its address a moment before the page wrote another. A link
/// to that address is followed as any other.
#[test]
fn what_was_typed_stands_when_the_page_comes_back_at_the_address_before() {
    let app = App::open_at(Screen::PHONE, "#/tape");
    app.enter("start_mark", &["1"]);
    app.wait_until("it is in the address", "return location.hash.includes('start_mark=1&')");
    let before = app.place();
    app.press(&["2"]);
    app.wait_until("it is in the address", "return location.hash.includes('start_mark=12')");
    app.script(&format!("history.replaceState(history.state, '', {})", json!(before)));
    app.reload();
    app.wait_for_start();
    app.wait_for_text("echo-start_mark", "12 in");
    app.wait_until("it is in the address", "return location.hash.includes('start_mark=12')");
    app.go("#/");
    app.go(&before);
    app.wait_for_text("echo-start_mark", "1 in");
    app.assert_quiet_console();
}
