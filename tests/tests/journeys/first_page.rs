//! The first page: there before the program is, short enough, with what was answered last.

use reckoner_e2e::{App, Screen};

#[test]
fn what_was_used_last_stands_on_the_first_page_with_its_answer() {
    let app = App::open(Screen::PHONE);
    for slug in ["spacing", "resaw-rip", "screws"] {
        app.tap(&format!("home-{slug}"));
        app.wait_for("answer-headline");
        app.wait_until(
            "the answer is kept",
            &format!("return localStorage.getItem('reckoner.answer.{slug}') !== null"),
        );
        app.tap("home");
    }
    app.wait_for_words("recent-spacing", "7 7/8 in");
    app.wait_for_words("recent-spacing", "example");
    app.picture("home-used");
    let tall = app.script("return document.documentElement.scrollHeight");
    assert!(tall.as_u64().is_some_and(|tall| tall <= 1_000), "{tall} px");
    app.assert_no_sideways_scroll();
    app.assert_accessible();
    // All sizes the person's own: in ink.
    app.tap("recent-spacing");
    app.wait_for("go-through");
    app.tap("go-through");
    for field in ["length", "greatest_gap", "left_end"] {
        app.tap(&format!("confirm-{field}"));
    }
    app.wait_until(
        "in ink",
        "return localStorage.getItem('reckoner.answer.spacing').startsWith('ink')",
    );
    app.tap("home");
    app.wait_for("recent-spacing");
    assert!(!app.text("recent-spacing").contains("example"));
    app.assert_quiet_console();
}

/// The cut plan is used like a calculator; and no name is cut off, whatever its neighbours are.
#[test]
fn what_was_planned_last_stands_on_the_first_page_with_what_it_costs() {
    let app =
        App::open_at(Screen::PHONE, "#/cut?parts=leg:+4+@+40&boards=96+at+10&scraps=&unit=in");
    // Two of 40 in from each of two boards of 96.
    app.wait_for_text("cost", "20.00");
    app.wait_until("it is kept", "return localStorage.getItem('reckoner.answer.cut') !== null");
    for slug in ["resaw-rip", "moisture"] {
        app.go(&format!("#/{slug}"));
        app.wait_for("answer-headline");
    }
    app.go("#/");
    app.wait_for_words("recent-cut", "20.00");
    app.wait_for_words("recent-cut", "Cheapest");
    for screen in [Screen::PHONE, Screen::NARROW] {
        app.resize(screen);
        let cut = app.script(
            "return [...document.querySelectorAll('.recent__link, .recent__link > *')]
                .filter((it) => it.scrollWidth > it.clientWidth || it.scrollHeight > it.clientHeight + 1).map((it) => it.textContent)",
        );
        assert_eq!(cut, serde_json::json!([]), "cut off at {}", screen.width);
        app.picture(&format!("home-planned-{}", screen.width));
    }
    app.tap("recent-cut");
    app.wait_for("list-parts");
    app.assert_quiet_console();
}

/// Notes where things stand on the first page of the shell, as long as it is on the screen.
const NOTE: &str = "
  window.places = () => [...document.querySelectorAll('#app :is(.target, .home-head, .find)')]
    .filter((it) => it.checkVisibility())
    .map((it) => { const r = it.getBoundingClientRect(); return [r.left, r.top, r.width, r.height].map(Math.round).join(' '); });
  const note = () => {
    const isHere = document.querySelector('.first-page')?.checkVisibility();
    if (isHere && document.documentElement.dataset.app !== 'started') window.before = places();
    if (document.documentElement.dataset.app !== 'started') requestAnimationFrame(note);
  };
  requestAnimationFrame(note);";

#[test]
fn the_first_page_is_there_before_the_program_and_nothing_moves_when_it_comes() {
    for screen in [Screen::PHONE, Screen::NARROW, Screen::DESKTOP] {
        let app = App::arrive(screen);
        app.before_each_page(NOTE);
        app.slow_down(4);
        app.go("");
        app.wait_for_start();
        let (before, after) = (app.script("return window.before"), app.script("return places()"));
        assert_eq!(before.as_array().map(Vec::len), Some(18), "{screen:?}: {before}");
        assert_eq!(before, after, "{screen:?}");
        // Of another page it shows nothing.
        app.open("about:blank");
        app.go("#/spacing");
        app.wait_for_start();
        assert!(app.script("return window.before ?? null").is_null());
    }
}

#[test]
fn the_first_page_says_how_the_newest_job_stands_until_it_is_taken_off() {
    let app = App::open_at(Screen::PHONE, "#/jobs");
    app.tap("open-demo");
    app.wait_for("front");
    app.wait_until("it is kept", "return localStorage.getItem('reckoner.newest') !== null");
    let job = app.place();
    app.go("#/");
    app.wait_for_words("to-jobs", "Next: ");
    assert!(app.text("to-jobs").contains("to look at"), "{}", app.text("to-jobs"));
    app.picture("home-with-job");
    app.assert_no_sideways_scroll();
    app.assert_accessible();
    app.go(&format!("{job}/hand-on"));
    app.script("window.confirm = () => true");
    app.tap("remove-job");
    app.wait_until("it is forgotten", "return localStorage.getItem('reckoner.newest') === null");
    app.assert_quiet_console();
}
