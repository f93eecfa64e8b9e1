//! Two taps in one task are two: the second is not made from what was drawn before the first. A page that is loaded again in
//! the task of a tap or a key has it. And what puts something in and leads on does so once.

use reckoner_e2e::{App, Screen};

use crate::all_jobs::{jobs_on_the_shelf, with_two_jobs_to_take};
use crate::planner::{boards_of_the_demo, wait_for_the_end};
use crate::shelf::{BENCH, address_of_job, click, demo};

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

/// The first element whose test id begins so.
pub(crate) fn first_of(app: &App, start: &str) -> String {
    let id = app.script(&format!(
        "return document.querySelector('[data-testid^={start}]')?.dataset.testid ?? null"
    ));
    id.as_str().expect("one").to_owned()
}

/// How many elements have this test id.
fn how_many(app: &App, id: &str) -> u64 {
    let all =
        app.script(&format!("return document.querySelectorAll('[data-testid=\"{id}\"]').length"));
    all.as_u64().expect("a number")
}

/// A new size with a name and its first digit, the keys still out.
fn begin_a_brace(app: &App) {
    app.tap("add-measure");
    app.tap("field-name");
    app.type_keys("brace");
    app.enter("formula", &["1"]);
}

/// A key and the button that puts the size in.
#[test]
fn the_last_key_of_a_new_size() {
    let app = demo();
    begin_a_brace(&app);
    tap_both(&app, ["key-5", "save-item"]);
    app.wait_for_words("item-brace", "fifteen inches");
    assert!(!app.shows("begun-measure"));
    // A field that is emptied in that task still stands in the form: it cannot go in.
    begin_a_brace(&app);
    tap_both(&app, ["key-clear", "save-item"]);
    app.wait_for("problem-formula");
    app.assert_quiet_console();
}

/// The third of what must match, and the button that puts them in.
#[test]
fn the_last_of_what_must_match() {
    let app = demo();
    app.tap("add-match");
    app.tap("field-name");
    app.type_keys("alike");
    let first = ["member-leg", "member-overhang"];
    tap_both(&app, first);
    wait_until_pressed(&app, first, true);
    tap_both(&app, ["member-long rail", "save-item"]);
    app.tap("item-alike");
    wait_until_pressed(&app, ["member-leg", "member-overhang"], true);
    wait_until_pressed(&app, ["member-long rail", "member-leg"], true);
    app.assert_quiet_console();
}

/// What is left of a spoiled leg, to its last digit.
#[test]
fn the_last_key_of_what_is_left_of_a_spoiled_piece() {
    let app = crate::shelf::first_leg();
    app.tap("spoiled-rack");
    app.enter("left", &["2"]);
    tap_both(&app, ["key-1", "take-spoiled"]);
    app.wait_until_gone("spoiled-left");
    app.tap("back");
    app.tap("back");
    app.section("rack");
    app.wait_for_words("rack", "3 1/4 × 3 1/4 × 21 in,");
    app.assert_quiet_console();
}

/// What is left of a board that came out different, to its last digit.
#[test]
fn the_last_key_of_a_board_that_came_out_different() {
    let app = boards_of_the_demo(Screen::PHONE);
    app.tap("plan-it");
    wait_for_the_end(&app);
    app.tap("use-plan");
    app.wait_for("boards-cut");
    app.tap(&first_of(&app, "different-"));
    app.wait_for("different");
    app.tap(&first_of(&app, "less-"));
    app.enter("left-0", &["1"]);
    tap_both(&app, ["key-7", "take-different"]);
    app.wait_until(
        "it is written down",
        "return document.querySelector('.badge.is-different') !== null",
    );
    app.section("rack");
    app.wait_for_words("rack", "× 17 in,");
    app.assert_quiet_console();
}

/// The options that are typed in the task in which a plan is taken: they stay, and the plan is not that of other options.
#[test]
fn the_last_key_of_the_options_of_a_plan() {
    // On a phone the keys lie over it.
    let app = boards_of_the_demo(Screen::DESKTOP);
    app.tap("field-kerf");
    app.type_keys("1");
    app.tap("plan-it");
    wait_for_the_end(&app);
    app.wait_for("use-plan");
    app.script(&format!(
        "const input = document.querySelector('[data-testid=field-kerf]'); input.focus(); input.value += '6';
         input.dispatchEvent(new InputEvent('input', {{ bubbles: true }})); {}",
        click("use-plan")
    ));
    let typed = app.script("return document.querySelector('[data-testid=field-kerf]').value");
    let typed = typed.as_str().expect("a text").to_owned();
    assert!(typed.ends_with('6'), "{typed}");
    app.settle();
    app.reload();
    app.wait_for_start();
    app.wait_for_value("field-kerf", &typed);
    app.assert_quiet_console();
}

/// Writes the title of a reckoning that is to be kept and does something in the same task, then waits until it is kept in a
/// job of its own: the titles of the jobs.
fn keep_as_gate_posts(app: &App, and: &str) -> Vec<String> {
    app.wait_for("keep-title");
    app.script(&format!(
        "const title = document.querySelector('[data-testid=keep-title]');
         title.value = 'Gate posts'; title.dispatchEvent(new Event('input', {{ bubbles: true }})); {and}"
    ));
    app.wait_until(
        "it is kept",
        "return location.hash.startsWith('#/job/') && document.querySelector('h1') !== null",
    );
    jobs_on_the_shelf(app)
}

/// The title of a reckoning that is kept, and the button that keeps it.
#[test]
fn the_last_letter_of_a_title() {
    let app = App::open_at(Screen::PHONE, "#/keep/tape?strip=44&unit=in");
    assert_eq!(keep_as_gate_posts(&app, &click("keep-in-new")), ["New job"]);
    app.tap("job-New job");
    app.section("kept");
    app.wait_for_words("item-Gate posts", "Gate posts");
    app.assert_quiet_console();
}

/// The same button twice: it is one job.
#[test]
fn a_reckoning_is_kept_once() {
    let app = App::open_at(Screen::PHONE, "#/keep/tape?strip=44&unit=in");
    let keep = click("keep-in-new");
    assert_eq!(keep_as_gate_posts(&app, &format!("{keep}; {keep}")), ["New job"]);
    app.assert_quiet_console();
}

/// Two taps on what puts something in and leads on are one.
#[test]
fn what_is_put_in_goes_in_once() {
    let app = demo();
    begin_a_brace(&app);
    app.press(&["close"]);
    tap_both(&app, ["save-item", "save-item"]);
    app.wait_for("item-brace");
    assert_eq!(how_many(&app, "item-brace"), 1);
    begin_a_brace(&app);
    app.press(&["close"]);
    app.tap("field-name");
    app.type_keys("s");
    tap_both(&app, ["save-and-next", "save-and-next"]);
    app.wait_for_value("field-name", "");
    let job = address_of_job(&app);
    app.go(&format!("{job}/sizes"));
    app.wait_for("item-braces");
    assert_eq!(how_many(&app, "item-braces"), 1);
    app.go(&format!("{job}/kept"));
    tap_both(&app, ["keep-tape", "keep-tape"]);
    app.wait_until("its page", "return location.hash.includes('/item/')");
    app.go(&format!("{job}/kept"));
    app.wait_for("item-Tape");
    assert_eq!(how_many(&app, "item-Tape"), 1);
    app.go("#/jobs");
    tap_both(&app, ["new-job", "new-job"]);
    app.wait_for("job-title");
    assert_eq!(jobs_on_the_shelf(&app), ["New job", BENCH]);
    app.assert_quiet_console();
}

/// A piece that gets a size of its own gets one.
#[test]
fn where_a_piece_stands_is_put_in_once() {
    let app = demo();
    app.section("parts");
    app.tap("item-leg");
    app.tap("piece-2");
    app.wait_for("answer-headline");
    app.enter("thickness", &["3", "page-16", "3/16", "close"]);
    app.tap("own-size");
    app.tap("spot-at long rail, upper 1");
    app.wait_for("moved");
    tap_both(&app, ["stands-there", "stands-there"]);
    app.wait_for_words("left-leg 2", "too thin");
    app.go(&format!("{}/sizes", address_of_job(&app)));
    app.wait_for("sizes");
    let own = app.script(
        "return [...document.querySelectorAll('[data-testid^=\"item-leg 2\"]')].map((it) => it.dataset.testid)",
    );
    assert_eq!(own, serde_json::json!(["item-leg 2"]));
    app.assert_quiet_console();
}
