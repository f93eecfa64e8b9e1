//! A keyboard and nothing else.

use reckoner_e2e::{App, Screen};

const TAB: &str = "\u{e004}";
const ENTER: &str = "\u{e007}";
const ESCAPE: &str = "\u{e00c}";
const RIGHT: &str = "\u{e014}";

/// Presses Tab until the focus is on the element with this test id.
#[track_caller]
fn tab_to(app: &App, id: &str) {
    for _ in 0..60 {
        let focus = app.script(
            "const it = document.activeElement;
             return (it.dataset.testid ?? it.closest('[data-testid]')?.dataset.testid) || ''",
        );
        if focus == id {
            return;
        }
        app.type_keys(TAB);
    }
    panic!("Tab never comes to {id}");
}

#[test]
fn from_the_list_to_an_answer_and_back() {
    let app = App::open(Screen::DESKTOP);
    tab_to(&app, "home-tape");
    app.type_keys(ENTER);
    app.wait_for("answer-headline");
    tab_to(&app, "field-strip-1");
    app.type_keys("A / 2");
    app.wait_until(
        "half of 52 7/8 stands on the line",
        "return document.querySelector('[data-testid=answer-field-strip-1] [data-exact]')?.dataset.exact === '26 7/16 in'",
    );
    // Enter goes to the next line, then to the choice, whose answers the arrows change.
    app.type_keys(ENTER);
    app.type_keys(ENTER);
    app.type_keys(RIGHT);
    app.wait_until("half is chosen", "return document.getElementById('divide-half').checked");
    app.type_keys(ENTER);
    let focus = app.script("return document.activeElement.dataset.testid");
    assert_eq!(focus, "field-start_mark");
    app.type_keys("1 1/2");
    app.type_keys(ESCAPE);
    app.wait_for_text("echo-start_mark", "1 1/2 in");
    assert!(
        app.text("answer-headline").starts_with("Mark 1 of 2"),
        "{}",
        app.text("answer-headline")
    );
    tab_to(&app, "working-toggle");
    app.type_keys(ENTER);
    app.wait_for("working");
    app.assert_quiet_console();
}
