//! The phone's Back closes what is open over a page, then leaves the page; what was typed stays.

use reckoner_e2e::{App, Screen};

use crate::shelf::demo;

fn back(app: &App) {
    app.script("history.back()");
}

/// Opens the page of a calculator as a person does, from the first page.
fn spacing(screen: Screen) -> App {
    let app = App::open(screen);
    app.tap("home-spacing");
    app.wait_for("field-length");
    app
}

#[test]
fn back_puts_the_keys_away_then_leaves_and_what_was_typed_stays() {
    for screen in [Screen::PHONE, Screen::NARROW, Screen::TABLET] {
        let app = spacing(screen);
        app.enter("length", &["3", "7"]);
        app.wait_until("it is in the address", "return location.hash.includes('length=37')");
        back(&app);
        app.wait_until_gone("keypad");
        app.wait_for_value("field-length", "37");
        app.wait_until("the address too", "return location.hash.includes('length=37')");
        // Not another visit: Undo is still there.
        app.wait_until(
            "it can be undone",
            "return !document.querySelector('[data-testid=undo]').disabled",
        );
        back(&app);
        app.wait_for("home-spacing");
        app.tap("home-spacing");
        app.wait_for_value("field-length", "37");
        app.assert_quiet_console();
    }
}

#[test]
fn what_was_closed_by_a_tap_leaves_nothing_for_back_to_close() {
    let app = spacing(Screen::PHONE);
    for _ in 0..3 {
        app.enter("length", &["4", "close"]);
        app.wait_until_gone("keypad");
    }
    back(&app);
    app.wait_for("home-spacing");
    // Forward, and Back again: never a step that does nothing.
    app.script("history.forward()");
    app.wait_for_value("field-length", "4");
    back(&app);
    app.wait_for("home-spacing");
    app.assert_quiet_console();
}

#[test]
fn a_reload_with_the_keys_open_leaves_no_step_that_does_nothing() {
    let app = spacing(Screen::PHONE);
    app.enter("length", &["3", "9"]);
    app.wait_until("it is in the address", "return location.hash.includes('length=39')");
    app.reload();
    app.wait_for_start();
    app.wait_for_value("field-length", "39");
    assert!(!app.shows("keypad"));
    back(&app);
    app.wait_for("home-spacing");
    app.assert_quiet_console();
}

#[test]
fn back_closes_the_sheet_of_questions_and_leaves_by_links_are_steps_of_their_own() {
    let app = spacing(Screen::PHONE);
    app.tap("question");
    app.wait_for("mode-count");
    // On a busy machine it is seen some moments before it has its entry: a Back in between is of the page.
    app.wait_until("it has its entry", "return `${history.state}`.startsWith('over')");
    back(&app);
    app.wait_until(
        "the sheet is gone",
        "return !document.querySelector('[data-testid=mode-count]') || [location.hash, history.state, history.length]",
    );
    app.wait_for("field-length");
    // Away by a link while the keys are out.
    app.enter("length", &["5"]);
    app.wait_until("it is in the address", "return location.hash.includes('length=5')");
    app.script("location.hash = '#/tape'");
    app.wait_for("field-strip");
    back(&app);
    app.wait_for_value("field-length", "5");
    back(&app);
    app.wait_until(
        "the first page",
        "return document.querySelector('[data-testid=home-spacing]') ? true
            : [location.hash, history.state, history.length, document.querySelector('[data-testid=keypad]') !== null]",
    );
    app.assert_quiet_console();
}

#[test]
fn in_a_job_back_puts_the_keys_away_first_too() {
    let app = demo();
    app.tap("item-leg");
    app.tap("field-as_cut");
    app.press(&["2"]);
    back(&app);
    app.wait_until_gone("keypad");
    app.wait_for_value("field-as_cut", "2");
    back(&app);
    app.wait_for("sizes");
    app.wait_for_words("item-leg", "two inches");
    app.assert_quiet_console();
}

#[test]
fn on_a_desk_there_are_no_keys_to_close() {
    let app = spacing(Screen::DESKTOP);
    app.tap("field-length");
    app.type_keys("37");
    back(&app);
    app.wait_for("home-spacing");
    app.assert_quiet_console();
}
