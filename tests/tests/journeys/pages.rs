//! Every calculator, as a thumb finds and uses it: from the list to an answer, on any screen.

use reckoner_e2e::{App, Screen};
use serde_json::{Value, json};

/// Slugs of all calculators, in the order of the list.
pub(crate) fn slugs(app: &App) -> Vec<String> {
    let ids = app.visible_ids();
    let slugs: Vec<String> =
        ids.iter().filter_map(|id| id.strip_prefix("home-")).map(str::to_owned).collect();
    assert!(!slugs.is_empty(), "no calculator is on the home page: {ids:?}");
    slugs
}

/// Test id of the first field that is typed.
fn first_input(app: &App) -> String {
    let id = app.script("return document.querySelector('input.field__input').dataset.testid");
    id.as_str().expect("a field to type in").to_owned()
}

#[test]
fn each_calculator_is_two_taps_from_an_open_keypad_with_all_in_sight() {
    let app = App::open(Screen::PHONE);
    for slug in slugs(&app) {
        app.tap(&format!("home-{slug}"));
        app.assert_on_first_screen("answer-headline");
        app.picture(&format!("{slug}-360"));
        let field = first_input(&app);
        app.tap(&field);
        app.wait_for("keypad");
        for id in ["answer-headline", field.as_str(), "keypad"] {
            app.assert_on_first_screen(id);
        }
        // Nothing covers anything: the answer ends above the field, the field above the keys.
        let ends = app.script(&format!(
            "const place = (id) => document.querySelector(`[data-testid='${{id}}']`).getBoundingClientRect();
             return [place('answer-headline').bottom, place('{field}').top, place('{field}').bottom, place('keypad').top]"
        ));
        let ends: Vec<f64> =
            ends.as_array().into_iter().flatten().filter_map(Value::as_f64).collect();
        assert!(ends.is_sorted(), "{slug}: answer, field and keys overlap: {ends:?}");
        app.picture(&format!("{slug}-360-keypad"));
        app.tap("key-close");
        app.go("#/");
        app.wait_for(&format!("home-{slug}"));
    }
    app.assert_quiet_console();
}

#[test]
fn keys_are_a_thumb_wide_and_all_else_a_finger() {
    let app = App::open_at(Screen::PHONE, "#/tape?start_mark=0&unit=in");
    app.tap("field-start_mark");
    app.wait_for("keypad");
    for page in ["digits", "16", "32", "64", "signs"] {
        app.tap(&format!("key-page-{page}"));
        let small = app.script(
            "return [...document.querySelectorAll('.key')].map((key) => [key.dataset.testid, key.getBoundingClientRect()])
                .filter(([, r]) => r.width < 80 || r.height < 80).map(([id, r]) => `${id} ${r.width}x${r.height}`)",
        );
        assert_eq!(small, json!([]), "keys under 80 px on {page}");
    }
    app.tap("key-close");
    let small = app.script(
        "return [...document.querySelectorAll('button, a, input, select, summary, .choice')]
            .filter((e) => e.checkVisibility() && !e.classList.contains('choice__input'))
            .map((e) => [e, e.getBoundingClientRect()]).filter(([, r]) => r.height < 48 && r.width > 0)
            .map(([e, r]) => `${e.tagName}.${e.className} ${r.width}x${r.height}`)",
    );
    assert_eq!(small, json!([]), "targets under 48 px");
}

#[test]
fn a_fraction_takes_five_taps_at_most_and_no_system_keyboard() {
    let app = App::open_at(Screen::PHONE, "#/tape?strip=44&start_mark=0&unit=in");
    app.tap("field-start_mark");
    app.press(&["3", "7", "page-16", "7/8"]);
    app.wait_for_text("echo-start_mark", "37 7/8 in");
    assert_eq!(app.attribute("field-start_mark", "inputmode").as_deref(), Some("none"));
    let focus = app.script("return document.activeElement.dataset.testid");
    assert_eq!(focus, "field-start_mark", "a key took the focus away");
    // Where the caret stands, the next key writes.
    app.script("document.activeElement.setSelectionRange(0, 0)");
    app.press(&["1", "page-signs", "plus"]);
    app.wait_for_text("echo-start_mark", "1 + 37 7/8 = 38 7/8 in");
    app.press(&["next"]);
    assert!(!app.shows("keypad"), "after the last field the keypad closes");
}

/// The further a strip goes, the more letters of its lines may be used: no key is pushed off the screen by them.
#[test]
fn every_key_of_a_strip_is_on_the_screen_and_a_line_has_a_clear_key() {
    let app = App::open_at(Screen::PHONE, "#/tape?strip=44%0AA+/+2%0AB+/+2&start_mark=0&unit=in");
    for screen in [Screen::NARROW, Screen::PHONE] {
        app.resize(screen);
        for line in ["field-strip-1", "field-strip-3"] {
            app.tap(line);
            let beyond = app.script(
                "return [...document.querySelectorAll('.keypad button, .is-docked button')]
                    .filter((it) => it.getBoundingClientRect().right > innerWidth + 0.5).map((it) => it.dataset.testid)",
            );
            assert_eq!(beyond, json!([]), "beyond the screen of {}", screen.width);
            app.picture(&format!("keypad-{line}-{}", screen.width));
            app.tap("key-close");
            app.wait_until_gone("keypad");
        }
    }
    app.tap("field-strip-3");
    app.press(&["C", "page-signs", "plus", "page-digits", "1"]);
    app.wait_for_value("field-strip-3", "C + 1");
    app.tap("key-clear");
    app.wait_for_value("field-strip-3", "");
    app.press(&["7", "close"]);
    app.wait_for_value("field-strip-3", "7");
    app.wait_for_value("field-strip-2", "B / 2");
}

#[test]
fn no_screen_scrolls_sideways() {
    let app = App::open(Screen::PHONE);
    for slug in slugs(&app) {
        app.go(&format!("#/{slug}"));
        app.wait_for("answer-headline");
        // All that can open is open.
        app.script("document.querySelectorAll('details').forEach((it) => { it.open = true })");
        for screen in Screen::ALL {
            app.resize(screen);
            app.assert_no_sideways_scroll();
        }
        app.picture(&format!("{slug}-1280"));
        app.resize(Screen::NARROW);
        app.script("document.querySelector('input.field__input').focus()");
        app.wait_for("keypad");
        app.assert_no_sideways_scroll();
        app.script("document.activeElement.blur()");
        app.resize(Screen::PHONE);
    }
    app.go("#/settings");
    app.wait_for("field-kerf");
    for screen in Screen::ALL {
        app.resize(screen);
        app.assert_no_sideways_scroll();
    }
}

#[test]
fn the_accessibility_engine_finds_nothing_in_any_theme() {
    let app = App::open(Screen::PHONE);
    let slugs = slugs(&app);
    for theme in ["light", "dark", "outdoor"] {
        app.go("#/settings");
        app.tap(&format!("theme-{theme}"));
        app.assert_accessible();
        app.picture(&format!("settings-360-{theme}"));
        app.go("#/");
        app.wait_for("home-tape");
        app.assert_accessible();
        for slug in &slugs {
            app.go(&format!("#/{slug}"));
            app.wait_for("answer-headline");
            app.script("document.querySelectorAll('details').forEach((it) => { it.open = true })");
            app.assert_accessible();
            app.picture(&format!("{slug}-360-{theme}"));
        }
    }
}

#[test]
fn a_problem_is_accessible_in_every_theme() {
    let app = App::open(Screen::PHONE);
    for theme in ["light", "dark", "outdoor"] {
        app.go("#/settings");
        app.tap(&format!("theme-{theme}"));
        app.go("#/tape?strip=44&start_mark=3+x&unit=in");
        app.wait_for("problem-start_mark");
        app.assert_accessible();
        app.tap("field-start_mark");
        app.wait_for("keypad");
        app.assert_accessible();
        app.tap("key-close");
    }
}
