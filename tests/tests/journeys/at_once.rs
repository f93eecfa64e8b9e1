//! Two taps in one task are two: the second is not made from what was drawn before the first. And a page that is loaded
//! again in the task of a tap or a key has it.

use reckoner_e2e::{App, Screen};

use crate::all_jobs::{jobs_on_the_shelf, with_two_jobs_to_take};
use crate::planner::{boards_of_the_demo, wait_for_the_end};
use crate::shelf::{BENCH, click, demo};

/// Taps both in one task.
fn tap_both(app: &App, ids: [&str; 2]) {
    for id in ids {
        app.wait_for(id);
    }
    app.script(&ids.map(click).join("; "));
}

fn wait_until_pressed(app: &App, ids: [&str; 2], is_pressed: bool) {
    for id in ids {
        app.wait_until(
            &format!("{id} is chosen: {is_pressed}"),
            &format!(
                "return document.querySelector('[data-testid=\"{id}\"]')?.getAttribute('aria-pressed') === '{is_pressed}'"
            ),
        );
    }
}

/// And they are there again when the page is loaded again in that task.
#[test]
fn two_places_where_a_piece_stands() {
    let app = demo();
    app.section("parts");
    app.tap("item-leg");
    app.tap("piece-2");
    app.wait_for("answer-headline");
    app.enter("thickness", &["3", "page-16", "3/16", "close"]);
    app.tap("own-size");
    app.wait_for("stands");
    let both = ["spot-at long rail, upper 1", "spot-at long rail, upper 2"];
    tap_both(&app, both);
    wait_until_pressed(&app, both, true);
    tap_both(&app, both);
    wait_until_pressed(&app, both, false);
    app.script(&format!(
        "document.documentElement.dataset.app = 'leaving'; {}; location.reload()",
        both.map(click).join("; ")
    ));
    app.wait_for_start();
    wait_until_pressed(&app, both, true);
    app.tap("stands-there");
    app.wait_for_words("left-leg 2", "too thin");
    assert_eq!(
        app.script("return Object.keys(localStorage).filter((it) => it.startsWith('reckoner.stands.')).length"),
        0
    );
    app.assert_quiet_console();
}

#[test]
fn two_sizes_that_must_stay() {
    let app = demo();
    app.tap("item-long rail");
    app.enter("as_cut", &["4", "0", "close"]);
    app.tap("back");
    app.tap("open-long rail");
    let both = ["hold-overall length", "hold-leg"];
    tap_both(&app, both);
    wait_until_pressed(&app, both, true);
    app.assert_quiet_console();
}

#[test]
fn two_jobs_of_a_file() {
    let app = with_two_jobs_to_take("at-once");
    let both = ["incoming-1", "incoming-2"];
    let second = if app.text(both[1]).contains(BENCH) { BENCH } else { "Seed trays" };
    wait_until_pressed(&app, both, false);
    tap_both(&app, both);
    wait_until_pressed(&app, both, true);
    // A third in the same task as the button that takes them.
    app.script(&format!("{}; {}", click("incoming-1"), click("take-jobs")));
    app.wait_for_words("taken", "1 job came in. 1 was left out.");
    assert!(jobs_on_the_shelf(&app).contains(&format!("{second} 2")));
    app.assert_quiet_console();
}

/// The options of the boards, when the page is loaded again in the very task of the key.
#[test]
fn the_options_of_the_boards() {
    let app = boards_of_the_demo(Screen::PHONE);
    app.tap("rack_only-yes");
    app.enter("kerf", &["1"]);
    let kerf = "document.querySelector('[data-testid=field-kerf]').value";
    let typed = reload_in_the_task_of(&app, "key-6", kerf);
    app.wait_for_value("field-kerf", &typed);
    app.wait_until(
        "from the rack alone",
        "return document.querySelector('#rack_only-yes').checked",
    );
    app.assert_quiet_console();
}

/// And what is written down of a board that came out different.
#[test]
fn a_board_that_came_out_different() {
    let app = boards_of_the_demo(Screen::PHONE);
    app.tap("plan-it");
    wait_for_the_end(&app);
    app.tap("use-plan");
    app.wait_for("boards-cut");
    let one = |what: &str| {
        let id = app.script(&format!(
            "return document.querySelector('[data-testid^={what}-]')?.dataset.testid ?? null"
        ));
        id.as_str().expect("one").to_owned()
    };
    app.tap(&one("different"));
    app.wait_for("different");
    let good = "return document.querySelector('.good__words').textContent";
    let all = app.script(good);
    app.tap(&one("less"));
    let fewer = app.script(good);
    assert_ne!(fewer, all);
    app.enter("left-0", &["1"]);
    let left = "document.querySelector('[data-testid=field-left-0]').value";
    let typed = reload_in_the_task_of(&app, "key-9", left);
    app.wait_for("different");
    app.wait_for_value("field-left-0", &typed);
    assert_eq!(app.script(good), fewer);
    app.assert_quiet_console();
}

/// Taps a key and loads the page again in one task; what stood in the field then.
fn reload_in_the_task_of(app: &App, key: &str, field: &str) -> String {
    app.script(&format!(
        "document.documentElement.dataset.app = 'leaving'; {}; sessionStorage.setItem('typed', {field}); location.reload()",
        click(key)
    ));
    app.wait_for_start();
    let typed = app.script("return sessionStorage.getItem('typed')");
    typed.as_str().expect("a text").to_owned()
}
