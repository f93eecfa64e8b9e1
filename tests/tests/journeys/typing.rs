//! What is typed the moment after a tap arrives whole, by either keyboard, at any speed, in every kind of field.

use reckoner_e2e::Act::{Key, Keys, Tap, TapAt};
use reckoner_e2e::{Act, App, Screen};

/// Milliseconds between one key and the next: a machine's speed, and a fast thumb's.
const PACES: [u32; 2] = [0, 80];
const SCREENS: [Screen; 2] = [Screen::PHONE, Screen::DESKTOP];
const ENTER: char = '\u{e007}';
const ESCAPE: char = '\u{e00c}';

fn new_size(screen: Screen) -> App {
    let app = App::open_at(screen, "#/jobs");
    app.tap("new-job");
    app.tap("add-measure");
    app.wait_for("field-name");
    app.tap("more-fields");
    app.wait_for("field-as_cut");
    app
}

/// Waits until a field holds this text, and the page has taken it.
#[track_caller]
fn holds(app: &App, field: &str, text: &str) {
    app.wait_for_value(&format!("field-{field}"), text);
}

#[test]
fn what_is_typed_at_once_after_a_tap_is_whole() {
    for screen in SCREENS {
        let app = new_size(screen);
        for pace in PACES {
            for (field, text) in [
                ("name", "front rail"),
                ("formula", "37 1/8"),
                ("as_cut", "37"),
                ("note", "of oak"),
            ] {
                let id = format!("field-{field}");
                app.act(&[Tap(&id), Keys(text)], pace);
                holds(&app, field, text);
                // The text is the person's own: another tap goes on with it.
                app.act(&[Key(ESCAPE)], pace);
                app.act(&[Tap(&id), Keys("5")], pace);
                holds(&app, field, &format!("{text}5"));
                app.picture(&format!("typed-{field}-{}", screen.width));
                app.tap("key-clear");
                holds(&app, field, "");
                app.act(&[Key(ESCAPE)], pace);
            }
            // A choice between two texts takes the tap, and neither text suffers.
            app.act(&[Tap("field-name"), Keys("rail")], pace);
            app.act(&[Tap("is_cut-yes")], pace);
            app.act(&[Tap("field-note"), Keys("of ash")], pace);
            holds(&app, "name", "rail");
            holds(&app, "note", "of ash");
            app.wait_until("it is cut", "return document.getElementById('is_cut-yes').checked");
            app.act(&[Tap("is_cut-no")], pace);
            // From field to field by the keyboard, without a look in between.
            let enter = Key(ENTER);
            app.act(
                &[Tap("field-name"), Keys("s"), enter, enter, Keys("3"), enter, Keys("4")],
                pace,
            );
            holds(&app, "name", "rails");
            holds(&app, "formula", "3");
            holds(&app, "as_cut", "4");
            for field in ["name", "formula", "as_cut", "note"] {
                app.act(&[Key(ESCAPE)], pace);
                app.tap(&format!("field-{field}"));
                app.tap("key-clear");
            }
            app.act(&[Key(ESCAPE)], pace);
        }
        app.assert_quiet_console();
    }
}

/// A key that writes over a text with the same text: the next one goes on after it.
#[test]
fn a_number_that_begins_as_it_stood_is_whole() {
    let app = App::open_at(Screen::PHONE, "#/jobs");
    app.tap("new-job");
    app.section("rack");
    app.tap("add-board");
    app.wait_for_value("field-quantity", "1");
    app.enter("quantity", &["1", "5"]);
    holds(&app, "quantity", "15");
    app.assert_quiet_console();
}

/// The middle of keys that the keypad shows, to be tapped before anybody could look for them.
fn places(app: &App, keys: &[&str]) -> Vec<Act<'static>> {
    let place = |key: &&str| {
        let at = app.script(&format!(
            "const r = document.querySelector('[data-testid=\"key-{key}\"]').getBoundingClientRect();
             return [r.left + r.width / 2, r.top + r.height / 2]"
        ));
        TapAt(at[0].as_f64().expect("across"), at[1].as_f64().expect("down"))
    };
    keys.iter().map(place).collect()
}

#[test]
fn keys_of_the_keypad_tapped_at_once_are_all_taken() {
    let app = new_size(Screen::PHONE);
    app.tap("field-formula");
    app.wait_for("keypad");
    let keys = places(&app, &["3", "7", "5"]);
    let next = places(&app, &["next"]);
    app.press(&["close"]);
    for pace in PACES {
        for field in ["formula", "as_cut"] {
            app.act(&[&[Tap(&format!("field-{field}"))], &keys[..]].concat(), pace);
            holds(&app, field, "375");
            app.press(&["close"]);
            app.act(&[&[Tap(&format!("field-{field}"))], &keys[..1]].concat(), pace);
            holds(&app, field, "3753");
            app.tap("key-clear");
            app.press(&["close"]);
        }
        // Next, and on at once.
        app.act(&[&[Tap("field-formula")], &keys[..], &next, &keys[..2]].concat(), pace);
        holds(&app, "formula", "375");
        holds(&app, "as_cut", "37");
        app.tap("key-clear");
        app.tap("field-previous");
        app.tap("key-clear");
        app.press(&["close"]);
    }
    app.assert_quiet_console();
}

/// What a calculator shows at first is an example: the first key writes over it.
#[test]
fn an_untouched_size_is_written_over_and_a_formula_is_gone_on_with() {
    for screen in SCREENS {
        for pace in PACES {
            let app = App::open_at(
                screen,
                "#/tape?strip=44%0AA+-+7&divide=parts&parts=4&start_mark=2&unit=in",
            );
            // By Enter as by a tap.
            app.act(&[Tap("field-parts"), Keys("8"), Key(ENTER), Keys("12")], pace);
            holds(&app, "parts", "8");
            holds(&app, "start_mark", "12");
            app.act(&[Key(ESCAPE)], pace);
            app.act(&[Tap("field-start_mark"), Keys("1 1/2")], pace);
            holds(&app, "start_mark", "1 1/2");
            app.act(&[Key(ESCAPE)], pace);
            // A line of the strip goes on where it ends.
            app.act(&[Tap("field-strip-1"), Keys(" - 1"), Key(ENTER), Keys("B / 2")], pace);
            holds(&app, "strip-1", "A - 7 - 1");
            holds(&app, "strip-2", "B / 2");
            // A size is one amount, and written over again; what was worked out is not.
            app.act(&[Key(ESCAPE)], pace);
            app.act(&[Tap("field-start_mark"), Keys("3 + 1")], pace);
            holds(&app, "start_mark", "3 + 1");
            app.act(&[Key(ESCAPE)], pace);
            app.act(&[Tap("field-start_mark"), Keys("/2")], pace);
            holds(&app, "start_mark", "3 + 1/2");
            app.assert_quiet_console();
        }
    }
}

/// Which field is being edited, by its test id.
const EDITED: &str =
    "return document.querySelector('.is-editing .field__input')?.dataset.testid ?? null";

/// To another field of the form is not out of it. To anything else is, and the tap does what it was meant for.
#[test]
fn a_tap_elsewhere_leaves_the_form_and_is_not_lost() {
    for screen in SCREENS {
        let app = App::open_at(screen, "#/tape?strip=44&divide=parts&parts=4&start_mark=1&unit=in");
        app.tap("field-parts");
        app.type_keys("8\u{e004}");
        assert_eq!(app.script(EDITED), "field-start_mark");
        app.type_keys("1 3/");
        assert!(!app.shows("problem-start_mark"), "half typed is not wrong");
        app.type_keys("8");
        if screen.touch {
            // There is no room for more than the answer, the field and the keys.
            assert!(!app.shows("mark-next"));
            app.tap("key-close");
        }
        app.tap("mark-next");
        assert!(app.text("answer-headline").starts_with("Mark 2 of 8"), "the tap was lost");
        assert_eq!(app.script(EDITED), serde_json::Value::Null);
        assert!(!app.shows("keypad"));
        // Nothing to be tapped is elsewhere too.
        app.tap("field-start_mark");
        assert_eq!(app.script(EDITED), "field-start_mark");
        app.click(".headline__figure");
        assert_eq!(app.script(EDITED), serde_json::Value::Null);
        app.assert_quiet_console();
    }
}

/// Enter in the text of a list is a new line of it, whatever was typed in before.
#[test]
fn enter_in_the_text_of_a_list_is_a_line_of_it() {
    let app = App::open_at(
        Screen::DESKTOP,
        "#/cut?parts=4+@+40&boards=96+at+10&scraps=&kerf=1/8&unit=in",
    );
    // A row of the list itself, which is gone with the text, and another field.
    app.tap("field-parts-0");
    app.type_keys("1");
    app.tap("as-text-parts");
    for (typed, all) in [(", 3", "4 @ 401, 3\n2"), (", 5", "4 @ 401, 3\n2, 5\n2")] {
        app.tap("field-parts");
        app.type_keys(&format!("{typed}\u{e007}2"));
        app.wait_for_value("field-parts", all);
        app.tap("field-kerf");
    }
}
