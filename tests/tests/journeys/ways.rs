//! Another way to buy than the plan that was found: taken, kept, and told as what it is.

use crate::planner::{RAILS, as_text, wait_for_the_end};
use reckoner_e2e::{App, Screen};

/// Takes the other way to buy of [`RAILS`]: three boards of 96 in.
fn take_the_other_way(app: &App) {
    wait_for_the_end(app);
    app.wait_for_text("cost", "19.60");
    app.tap("compare");
    app.wait_for("compared");
    app.tap("take-way-1");
    app.wait_for_text("cost", "21.00");
}

/// What stands at the headline of a plan.
fn headline_of_the_plan(app: &App) -> [String; 2] {
    ["cost", "proof"].map(|it| app.text(it))
}

/// It stands after a reload and after the way home and Back, with the plan before behind it, until the list is another.
#[test]
fn a_way_that_was_taken_on_a_quick_list_stands_until_the_list_changes() {
    let app = App::open_at(Screen::PHONE, RAILS);
    take_the_other_way(&app);
    let taken = headline_of_the_plan(&app);
    app.reload();
    app.wait_for_start();
    app.wait_for_text("cost", "21.00");
    assert_eq!(headline_of_the_plan(&app), taken);
    assert!(app.text("answer-headline").contains("The plan you took"));
    assert!(app.shows("board-3"));
    app.picture("ways-taken-reloaded");
    app.tap("home");
    app.wait_for("to-cut");
    app.script("history.back()");
    app.wait_for_text("cost", "21.00");
    assert_eq!(headline_of_the_plan(&app), taken);
    // The plan before is behind it, and stands from then on.
    app.tap("go-back");
    app.wait_for_text("cost", "19.60");
    assert!(app.text("proof").starts_with("No cheaper way"), "{}", app.text("proof"));
    app.reload();
    app.wait_for_start();
    wait_for_the_end(&app);
    app.wait_for_text("cost", "19.60");
    assert!(!app.shows("go-back"));
    // Of another list it is dropped, and of the first one then, too.
    take_the_other_way(&app);
    as_text(&app, "parts", "rail: 3 @ 40");
    app.wait_for_text("cost", "9.80");
    wait_for_the_end(&app);
    app.go(RAILS);
    app.wait_for_start();
    wait_for_the_end(&app);
    app.wait_for_text("cost", "19.60");
    assert!(!app.shows("go-back"));
    app.assert_quiet_console();
}

/// A plan that is kept says in the job, on paper and as text what the search said of it.
#[test]
fn what_was_proved_of_a_plan_stands_in_the_job_that_keeps_it() {
    let app = App::open_at(Screen::PHONE, RAILS);
    wait_for_the_end(&app);
    app.wait_for_text("cost", "19.60");
    let said = |app: &App| ["proof", "vouched", "work"].map(|it| app.text(it));
    let found = said(&app);
    assert!(found[1].contains("second check"), "{found:?}");
    app.tap("keep-as-job");
    app.wait_for("boards-cut");
    assert_eq!(said(&app), found);
    app.wait_until_kept();
    app.reload();
    app.wait_for_start();
    app.wait_for("boards-cut");
    assert_eq!(said(&app), found);
    app.picture("proof-in-job");
    app.tap("to-buy-page");
    app.wait_for("known");
    let known = format!("{} {}", found[0], found[1]);
    assert_eq!(app.text("known"), known);
    app.assert_accessible();
    app.assert_no_sideways_scroll();
    app.picture("proof-to-buy");
    app.tap("to-yard-paper");
    app.wait_for("yard-paper");
    assert_eq!(app.text("known"), known);
    // A dearer one is told beside the cheapest.
    app.go(RAILS);
    app.wait_for_start();
    take_the_other_way(&app);
    app.tap("keep-as-job");
    app.wait_for("boards-cut");
    app.wait_until_kept();
    app.reload();
    app.wait_for_start();
    app.wait_for("boards-cut");
    assert_eq!(app.text("proof"), "1.40 more than the cheapest plan.");
    app.picture("taken-in-job");
    app.assert_quiet_console();
}
