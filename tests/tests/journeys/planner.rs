//! The cut planner: from a list or a job to a plan with its proof, in a worker and without one.

use crate::shelf::begin_the_demo_anew;
use reckoner_e2e::{App, Browser, Screen};
use serde_json::Value;

/// Waits until the planner has said its last.
pub(crate) fn wait_for_the_end(app: &App) {
    app.wait_for("plan");
    app.wait_until(
        "it is at rest",
        "return document.querySelector('[data-testid=answer-headline]')?.ariaBusy !== 'true'",
    );
}

/// A job too large to be proved in a moment: many different lengths, invented.
fn hard_list() -> String {
    let parts: Vec<String> =
        (0..60).map(|n| format!("{} @ {}/16", 3 + n % 4, 211 + 17 * n + n * n % 13)).collect();
    let boards = "96 at 10.90, 120 at 13.95, 144 at 16.40, 168 at 19.85, 192 at 23.10";
    format!(
        "#/cut?parts={}&boards={}",
        parts.join(", ").replace(' ', "+"),
        boards.replace(' ', "+")
    )
}

/// Writes a list anew as its text, over what is there.
pub(crate) fn as_text(app: &App, list: &str, text: &str) {
    app.tap(&format!("as-text-{list}"));
    app.tap(&format!("field-{list}"));
    app.script(&format!("document.querySelector('[data-testid=\"field-{list}\"]').select()"));
    app.type_keys(text);
}

#[test]
fn a_quick_list_is_planned_by_taps_with_the_server_stopped() {
    let app = App::open(Screen::PHONE);
    app.wait_until_kept();
    app.server.stop();
    app.tap("to-cut");
    app.wait_for_start();
    // The list that is there from the start is planned at once.
    wait_for_the_end(&app);
    let first = app.text("cost");
    app.assert_on_first_screen("answer-headline");
    app.script(
        "window.said = new Set();
         const headline = document.querySelector('[data-testid=answer-headline]');
         new MutationObserver(() => said.add(headline.querySelector('.headline__need')?.innerText))
           .observe(headline, { childList: true, characterData: true, subtree: true })",
    );
    // Another list, by thumb: two pieces of 45 in and one of 50 from boards of 96 in at 10 each.
    as_text(&app, "parts", "2 @ 45, 50");
    as_text(&app, "boards", "96 at 10");
    app.enter("scraps-0", &["backspace", "close"]);
    app.wait_for_text("cost", "20.00");
    wait_for_the_end(&app);
    assert_ne!(first, "20.00");
    // Between two plans, that one comes: never that none was made.
    let said = app.script("return [...said].filter((it) => it)");
    let said: Vec<&str> = said.as_array().into_iter().flatten().filter_map(Value::as_str).collect();
    assert!(said.contains(&"Planning starts in a moment."), "{said:?}");
    assert!(!said.contains(&"No plan was made."), "{said:?}");
    assert!(
        app.text("proof").contains("No cheaper way with these boards"),
        "{}",
        app.text("proof")
    );
    assert!(app.text("shopping").contains("20.00"), "{}", app.text("shopping"));
    assert!(app.shows("board-1") && app.shows("board-2") && !app.shows("board-3"));
    let folder = crate::film::files_of("cut-list");
    app.save_files_to(&folder);
    app.tap("save-boards");
    let file = std::fs::read_to_string(app.saved_file(&folder)).expect("the list");
    let long = |it: &str| {
        let cells: Vec<&str> = it.split(',').collect();
        (cells[4].is_empty(), cells[7].parse().unwrap_or(0.0) - cells[5].parse().unwrap_or(0.0))
    };
    let mut pieces: Vec<f64> =
        file.lines().skip(1).map(long).filter(|it| !it.0).map(|it| it.1).collect();
    pieces.sort_by(f64::total_cmp);
    assert_eq!(pieces, [45.0, 45.0, 50.0], "{file}");
    app.assert_no_sideways_scroll();
    app.assert_quiet_console();
}

#[test]
fn other_ways_to_buy_are_worked_out_when_asked_for() {
    let app = App::open_at(Screen::PHONE, "#/cut");
    wait_for_the_end(&app);
    app.tap("compare");
    app.wait_for("compared");
    let words = app.text("compared");
    assert!(words.contains("All board as"), "{words}");
    app.assert_accessible();
    app.assert_quiet_console();
}

/// By hand: two boards of 144 in are 19.60 and leave twice 22 5/8 in; three of 96 in are 21.00 and leave three times 14 3/4.
#[test]
fn another_way_to_buy_is_taken_on_a_quick_list_and_left_again() {
    let app = App::open_at(Screen::PHONE, RAILS);
    wait_for_the_end(&app);
    app.wait_for_text("cost", "19.60");
    app.tap("compare");
    app.wait_for("compared");
    let stood = app.text("way-stood");
    for words in ["forty-five and one quarter inches to keep", "twenty-two and five eighths"] {
        assert!(stood.contains(words), "{words}: {stood}");
    }
    let other = app.text("way-1");
    for words in [
        "All board as 96 in",
        "21.00 in all, 1.40 more than the plan.",
        "forty-four and one quarter inches to keep",
        "fourteen and three quarters",
    ] {
        assert!(other.contains(words), "{words}: {other}");
    }
    app.assert_accessible();
    app.assert_no_sideways_scroll();
    app.script("document.querySelector('[data-testid=comparison]').scrollIntoView()");
    app.picture("ways-quick");
    assert!(app.shows("board-2") && !app.shows("board-3"));
    app.tap("take-way-1");
    app.wait_for_text("cost", "21.00");
    assert!(app.shows("board-3") && app.text("board-1").contains("ninety-six inches"));
    assert_eq!(app.text("proof"), "1.40 more than the cheapest plan.");
    assert!(app.text("answer-headline").contains("The plan you took"));
    app.picture("ways-taken");
    app.tap("go-back");
    app.wait_for_text("cost", "19.60");
    assert!(!app.shows("board-3") && app.text("board-1").contains("one hundred forty-four"));
    app.assert_quiet_console();
}

#[test]
fn another_way_to_buy_is_taken_in_a_job_and_undone() {
    let app = boards_of_the_demo(Screen::PHONE);
    app.tap("plan-it");
    wait_for_the_end(&app);
    let cost = app.text("cost");
    let bought = app.text("shopping");
    app.tap("compare");
    app.wait_for("take-way-1");
    app.assert_accessible();
    app.assert_no_sideways_scroll();
    app.script("document.querySelector('[data-testid=comparison]').scrollIntoView()");
    app.picture("ways-job");
    app.tap("take-way-1");
    // It is the plan in use, as any that is taken.
    app.wait_for("boards-cut");
    let other = app.text("shopping");
    assert_ne!(other, bought);
    app.wait_until_kept();
    app.reload();
    app.wait_for_start();
    app.wait_for("boards-cut");
    assert_eq!(app.text("shopping"), other);
    app.tap("undo");
    app.wait_until_gone("boards-cut");
    app.tap("plan-it");
    wait_for_the_end(&app);
    assert_eq!((app.text("cost"), app.text("shopping")), (cost, bought));
    app.assert_quiet_console();
}

#[test]
fn a_board_on_hand_says_what_it_can_become() {
    let app = App::open_at(
        Screen::PHONE,
        "#/cut?parts=leg:+4+@+40,+peg:+9+@+6&boards=96+at+10&scraps=52&unit=in",
    );
    wait_for_the_end(&app);
    app.tap("become-0");
    app.wait_for("become");
    // Eight pegs of 6 in with seven kerfs are 48 7/8 in: more wood and more pieces than a leg and a peg.
    let words = app.text("become");
    assert!(words.contains("8 × peg"), "{words}");
    app.assert_accessible();
}

#[test]
fn stopping_keeps_the_best_plan_so_far_and_the_page_never_waits() {
    let app = App::open_at(Screen::PHONE, &hard_list());
    app.wait_for("plan");
    app.wait_for("stop-planning");
    // The page goes on drawing while the planner is at work.
    app.script(
        "return new Promise((done) => {
           let count = 0;
           const frame = () => { count += 1; count < 30 ? requestAnimationFrame(frame) : done(count) };
           requestAnimationFrame(frame);
         })",
    );
    assert!(app.shows("stop-planning"), "thirty frames were drawn, and it is still at work");
    app.tap("stop-planning");
    wait_for_the_end(&app);
    assert!(app.shows("plan") && app.shows("cost"));
    let headline = app.text("answer-headline");
    assert!(headline.contains("Best plan found"), "{headline}");
    assert!(headline.contains("It was stopped"), "{headline}");
    assert!(app.shows("plan-again"));
    // It is really gone: nothing changes any more.
    let cost = app.text("cost");
    app.script("return new Promise((done) => setTimeout(done, 1500))");
    assert_eq!(app.text("cost"), cost);
    app.assert_quiet_console();
}

#[test]
fn what_cannot_be_planned_is_named_beside_its_field() {
    let app = App::open_at(Screen::PHONE, "#/cut?parts=beam:+1+@+200&boards=96+at+10");
    app.wait_for("problem-parts");
    let words = app.text("problem-parts");
    assert!(words.contains("beam") && words.contains("longest"), "{words}");
    assert!(!app.shows("plan"));
    app.assert_accessible();
    app.go("#/cut?parts=&boards=96+at+10");
    app.wait_for("problem-parts");
    app.go("#/cut?parts=4+@+30&boards=96+at+0");
    app.wait_for("problem-boards");
    assert!(!app.shows("plan"));
    // Only so many boards, and they are not enough: the planner says so, in words.
    app.go("#/cut?parts=9+@+80&boards=96+at+10+max+3&scraps=");
    app.wait_for("cannot-plan");
    let words = app.text("cannot-plan");
    assert!(words.contains("not enough"), "{words}");
    app.assert_accessible();
    app.assert_quiet_console();
}

/// A browser in which no page finds workers.
fn without_workers() -> App {
    let app = App::with(Browser::start(Screen::PHONE));
    app.before_each_page("delete window.Worker");
    app
}

#[test]
fn a_device_without_workers_gets_the_quick_plan_and_is_told_so() {
    let app = without_workers();
    app.go(&hard_list());
    app.wait_for_start();
    assert_eq!(app.script("return typeof window.Worker"), "undefined");
    wait_for_the_end(&app);
    let words = app.text("planner-trouble");
    assert!(words.contains("cannot plan in the background"), "{words}");
    assert!(app.shows("cost") && app.shows("board-1"));
    app.assert_accessible();
    app.assert_quiet_console();
}

#[test]
fn a_planner_that_cannot_be_loaded_is_told_in_words() {
    let app = App::arrive(Screen::PHONE);
    let names = std::fs::read_dir(reckoner_e2e::release::built()).expect("the built app");
    let mut names = names.flatten().map(|entry| entry.file_name().to_string_lossy().into_owned());
    let wasm = names.find(|name| name.starts_with("reckoner-planner-") && name.ends_with(".wasm"));
    // Before the first visit, so that it is kept nowhere.
    app.server
        .spoil(format!("/{}", wasm.expect("the planner")), reckoner_devserver::Fault::Garbled);
    // It is told because the worker says so: the time that a start may take never ends here.
    app.before_each_page("const real = setTimeout;
            window.setTimeout = (what, wait, ...more) => wait >= 20000 ? 0 : real(what, wait, ...more)");
    app.go("#/cut");
    app.wait_for_start();
    app.wait_for_words("planner-trouble", "could not be loaded");
    assert!(!app.shows("recovery"), "the page itself goes on");
}

/// The demo job, from the list of jobs to its boards.
pub(crate) fn boards_of_the_demo(screen: Screen) -> App {
    let app = App::open(screen);
    app.tap("to-jobs");
    app.tap("open-demo");
    begin_the_demo_anew(&app);
    app.section("boards");
    app.wait_for("plan-it");
    app
}

#[test]
fn the_demo_is_planned_cut_and_planned_again_from_there() {
    let app = boards_of_the_demo(Screen::PHONE);
    app.wait_until_kept();
    app.server.stop();
    app.tap("plan-it");
    wait_for_the_end(&app);
    crate::yard::in_all_looks(&app, "boards-planned");
    let before = app.text("cost");
    app.tap("use-plan");
    app.wait_for("boards-cut");
    assert!(app.text("boards-cut").starts_with("0 of"), "{}", app.text("boards-cut"));
    // The store, then the first board.
    app.tap("bought");
    app.tap("cut-1");
    app.wait_for("is-cut-1");
    assert!(app.text("boards-cut").starts_with("1 of"), "{}", app.text("boards-cut"));
    app.assert_accessible();
    // Undo takes the tick back with all that it did; redo ticks it again.
    app.tap("undo");
    app.wait_for("cut-1");
    app.tap("redo");
    app.wait_for("is-cut-1");
    app.section("front");
    let spent = app.text("money");
    app.section("boards");
    // What is bought is paid for: the rest costs nothing more.
    app.tap("plan-it");
    wait_for_the_end(&app);
    let after = app.text("answer-headline");
    assert!(after.contains("Nothing to buy"), "it was {before}, then: {after}");
    app.tap("use-plan");
    app.wait_for("boards-cut");
    app.reload();
    app.wait_for_start();
    app.wait_for("boards-cut");
    // And stays paid for under the new plan.
    app.section("front");
    assert_eq!(app.text("money"), spent);
    app.assert_quiet_console();
}

#[test]
fn an_offcut_goes_on_the_rack_and_a_board_may_come_out_different() {
    let app = boards_of_the_demo(Screen::PHONE);
    app.tap("plan-it");
    wait_for_the_end(&app);
    app.tap("use-plan");
    app.wait_for("boards-cut");
    let offcut = app.script(
        "return document.querySelector('[data-testid^=offcut-of-]')?.dataset.testid ?? null",
    );
    let offcut = offcut.as_str().expect("the demo leaves an offcut worth keeping").to_owned();
    app.tap(&offcut);
    app.wait_until(
        "it is on the rack",
        "return document.querySelector('[data-testid=offcuts] .badge.is-cut') !== null",
    );
    // Another board splits: one piece less is good, and a length is left.
    let other = app.script(
        "return document.querySelector('[data-testid^=different-]')?.dataset.testid ?? null",
    );
    let other = other.as_str().expect("another board").to_owned();
    app.tap(&other);
    app.wait_for("different");
    let less = app.script("return document.querySelector('[data-testid^=less-]').dataset.testid");
    app.tap(less.as_str().expect("a button"));
    app.enter("left-0", &["1", "9", "close"]);
    app.assert_accessible();
    app.tap("take-different");
    app.wait_until(
        "it is written down",
        "return document.querySelector('.badge.is-different') !== null",
    );
    app.section("rack");
    assert!(app.text("rack").contains("left of board"), "{}", app.text("rack"));
    app.section("boards");
    app.tap("plan-it");
    wait_for_the_end(&app);
    app.assert_quiet_console();
}

#[test]
fn a_quick_list_is_kept_as_a_job_and_ticked_off() {
    let app =
        App::open_at(Screen::PHONE, "#/cut?parts=leg:+4+@+40&boards=96+at+10.90&scraps=&unit=in");
    wait_for_the_end(&app);
    app.tap("keep-as-job");
    app.wait_for("boards-cut");
    app.tap("cut-1");
    app.wait_for("is-cut-1");
    app.tap("plan-it");
    wait_for_the_end(&app);
    // Two legs are left: one board more.
    app.wait_for_text("cost", "10.90");
    app.assert_quiet_console();
}

#[test]
fn from_the_rack_alone_nothing_is_bought_and_what_is_short_is_told() {
    let app = boards_of_the_demo(Screen::PHONE);
    app.tap("rack_only-yes");
    app.tap("plan-it");
    wait_for_the_end(&app);
    let headline = app.text("answer-headline");
    // Neither posts nor a dowel are on the rack.
    assert!(headline.contains("From the rack") && headline.contains("pieces short"), "{headline}");
    // What waits for a size was not planned, and that stands beside what is claimed.
    assert!(app.text("rack-left-out").contains("long rail, shelf"), "{headline}");
    assert!(app.shows("board-1"));
    assert!(app.text("shopping").contains("Nothing"), "{}", app.text("shopping"));
    app.assert_quiet_console();
}

#[test]
fn the_boards_of_a_job_say_what_is_in_the_way() {
    let app = App::open_at(Screen::DESKTOP, "#/jobs");
    app.tap("new-job");
    app.section("boards");
    app.wait_for("in-the-way");
    assert!(!app.shows("plan"));
    app.assert_accessible();
    app.assert_quiet_console();
}

/// By hand: six rails of 40 in. A board of 144 in gives three, and 22 5/8 in is left; two at 9.80 are 19.60. One of 96 in
/// gives two, and 14 3/4 in is left; three at 7.00 are 21.00.
pub(crate) const RAILS: &str =
    "#/cut?parts=rail:+6+@+40&boards=96+at+7,+144+at+9.80&scraps=&kerf=1/8&end_trim=1/2&unit=in";

#[test]
fn a_length_that_the_yard_has_none_of_is_one_tap_on_a_quick_list() {
    let app = App::open_at(Screen::PHONE, RAILS);
    wait_for_the_end(&app);
    app.wait_for_text("cost", "19.60");
    app.tap("none-1");
    let said = "it costs 1.40 more, with 1 board more and";
    app.wait_for_words("without-said", said);
    assert!(app.text("then-buy").contains("21.00"), "{}", app.text("then-buy"));
    app.assert_accessible();
    app.assert_no_sideways_scroll();
    app.picture("without-quick");
    // Nothing is changed before it is taken.
    app.tap("leave-without");
    app.wait_until_gone("without");
    assert_eq!(app.text("cost"), "19.60");
    assert!(!app.url().contains("max"), "{}", app.url());
    app.tap("none-1");
    app.wait_for_words("without-said", said);
    app.tap("take-without");
    app.wait_for_text("cost", "21.00");
    wait_for_the_end(&app);
    app.wait_until("the list says so", "return location.hash.includes('max+0')");
    // Without the other one there is no plan, and which piece is in the way is said.
    app.tap("none-0");
    app.wait_for_words("without-said", "there is no plan. rail is");
    assert!(!app.shows("take-without"));
    app.assert_accessible();
    app.picture("without-impossible");
    app.tap("leave-without");
    // One tap back, and the yard has it again.
    app.tap("undo");
    app.wait_for_text("cost", "19.60");
    wait_for_the_end(&app);
    app.assert_quiet_console();
}

#[test]
fn a_length_that_the_yard_has_none_of_is_one_tap_in_a_job() {
    let app = boards_of_the_demo(Screen::PHONE);
    app.tap("plan-it");
    wait_for_the_end(&app);
    app.tap("use-plan");
    app.wait_for("boards-cut");
    let cost = app.text("cost");
    let first = app.script(
        "return [...document.querySelectorAll('[data-testid^=none-]')].map((it) => it.dataset.testid)",
    );
    let first = first[0].as_str().expect("a length to buy").to_owned();
    app.tap(&first);
    app.wait_for("then-buy");
    app.wait_for("take-without");
    app.assert_accessible();
    app.assert_no_sideways_scroll();
    app.picture("without-job");
    app.tap("take-without");
    app.wait_until_gone("without");
    app.wait_for("boards-cut");
    assert_ne!(app.text("cost"), cost);
    app.wait_until_kept();
    app.reload();
    app.wait_for_start();
    app.wait_for("boards-cut");
    assert_ne!(app.text("cost"), cost);
    app.section("rack");
    app.wait_until(
        "the yard has none of it",
        "return [...document.querySelectorAll('[data-testid^=count-at-yard-]')].some((it) => it.textContent === '0')",
    );
    app.section("boards");
    app.tap("undo");
    app.wait_for_text("cost", &cost);
    app.assert_quiet_console();
}

/// Worked by hand: three strips of 1 3/4 in and two kerfs are the 5 1/2 in of the board, and each gives three slats of 30 in.
#[test]
fn a_quick_list_rips_what_is_narrower_than_its_boards() {
    let app = App::open_at(
        Screen::PHONE,
        "#/cut?parts=slat:+9+@+30&boards=96+wide+5+1/2+at+10&scraps=&end_trim=0&kerf=1/8&unit=in",
    );
    wait_for_the_end(&app);
    // Without a width each is as wide as its board, and a board gives three.
    app.wait_for_text("cost", "30.00");
    app.enter("parts-0", &["wide", "1", "page-16", "3/4", "close"]);
    app.wait_for_text("cost", "10.00");
    wait_for_the_end(&app);
    let board = app.text("board-1");
    assert!(board.contains("5 1/2 in board") && board.contains("wide"), "{board}");
    app.tap("orders-1");
    app.wait_for_words("board-1", "Rip 3 strips");
    app.assert_accessible();
    app.assert_no_sideways_scroll();
    app.script("document.querySelector('[data-testid=board-1]').scrollIntoView()");
    app.picture("quick-ripped");
    // Kept as a job, the board is cut, and what is left of it is planned as wide as it is.
    app.tap("keep-as-job");
    app.wait_for("boards-cut");
    app.tap("cut-1");
    app.wait_for("is-cut-1");
    app.assert_quiet_console();
}
