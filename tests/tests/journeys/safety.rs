//! Safety is one row, that stands open until what can take fingers was read at the question.

use reckoner_e2e::{App, Screen};

#[track_caller]
fn wait_until_open(app: &App, is_open: bool) {
    app.wait_until(
        &format!("Safety is open: {is_open}"),
        &format!(
            "return document.querySelector('[data-testid=safety]')?.open === {is_open}
                 && document.documentElement.dataset.app === 'started'"
        ),
    );
}

/// Brings it on the screen, and waits until that is kept.
#[track_caller]
fn read(app: &App, name: &str, danger: &str) {
    app.script(
        "document.querySelector('[data-testid=safety]').scrollIntoView({ block: 'center' })",
    );
    app.wait_until(
        "it is kept that it was read",
        &format!(
            "return (localStorage.getItem('reckoner.read.{name}') ?? '').includes('{danger}')"
        ),
    );
}

#[test]
fn safety_stands_open_until_it_was_on_the_screen_and_again_for_a_new_danger() {
    let app = App::open_at(Screen::PHONE, "#/resaw-rip?question=strips&strip_width=2&unit=in");
    wait_until_open(&app, true);
    let cautions = app.script("return document.querySelectorAll('.cautions .caution').length");
    app.wait_for_words("safety", &format!("Safety{cautions}"));
    // Not seen yet: the next visit opens it again.
    app.reload();
    wait_until_open(&app, true);
    read(&app, "resaw-rip/strips", "ripping");
    app.reload();
    wait_until_open(&app, false);
    app.script(
        "document.querySelector('[data-testid=safety]').scrollIntoView({ block: 'center' })",
    );
    app.picture("safety-folded");
    // A strip so thin that it must fall on the far side: another danger.
    app.go("#/resaw-rip?question=strips&strip_width=1/8&falls=far_side&unit=in");
    wait_until_open(&app, true);
    read(&app, "resaw-rip/strips", "thin_strip");
    app.picture("safety-open");
    // Another question has not been read.
    app.go("#/resaw-rip?question=section&unit=in");
    wait_until_open(&app, true);
    app.assert_accessible();
    // What takes no fingers is folded from the start.
    app.go("#/finish");
    wait_until_open(&app, false);
    app.assert_quiet_console();
}
