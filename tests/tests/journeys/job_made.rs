//! A job made by tapping: sizes, a formula out of names, a part, a board, a reckoning and the
//! parts of it, a group that must match, pieces as cut.

use reckoner_e2e::{App, Screen};

fn new_job() -> App {
    let app = App::open_at(Screen::PHONE, "#/jobs");
    app.tap("new-job");
    app.wait_for("add-measure");
    app
}

/// Adds a size: its name is typed, its formula is tapped on the keypad.
fn add_size(app: &App, name: &str, formula: &[&str]) {
    app.section("sizes");
    app.tap("add-measure");
    app.tap("field-name");
    app.type_keys(name);
    app.tap("field-formula");
    for key in formula {
        match key.strip_prefix("name ") {
            Some(name) => app.tap(&format!("name-{name}")),
            None => app.press(&[key]),
        }
    }
    app.press(&["close"]);
    app.tap("save-item");
    app.wait_for(&format!("item-{name}"));
}

/// Leg, overall and the rail between: [WH] J1, 44 and 3 1/2 give 37.
fn frame(app: &App) {
    add_size(app, "overall", &["4", "4"]);
    add_size(app, "leg", &["3", "page-16", "1/2"]);
    let formula =
        ["name overall", "page-signs", "minus", "page-digits", "2", "page-signs", "times"];
    add_size(app, "rail", &[&formula[..], &["name leg"]].concat());
}

#[test]
fn a_job_is_made_by_tapping_and_a_leg_cut_thin_is_told() {
    let app = new_job();
    frame(&app);
    app.wait_for_words("item-rail", "thirty-seven inches");
    // A part whose length is the rail.
    app.section("parts");
    app.tap("add-part");
    app.tap("field-name");
    app.type_keys("front rail");
    app.enter("quantity", &["backspace", "4", "5", "close"]);
    app.enter("thickness", &["1", "page-16", "1/2", "close"]);
    app.enter("width", &["3", "close"]);
    app.tap("field-length");
    app.tap("name-rail");
    app.press(&["close"]);
    app.tap("save-item");
    app.wait_for("item-front rail");
    // A board for it.
    app.section("rack");
    app.tap("add-board");
    app.tap("field-name");
    app.type_keys("scrap");
    app.enter("thickness", &["1", "page-16", "1/2", "close"]);
    app.enter("width", &["5", "close"]);
    app.enter("length", &["4", "8", "close"]);
    app.tap("save-item");
    app.wait_for("item-scrap");
    // The leg comes out thin: 3 7/16 gives 37 1/8.
    app.section("sizes");
    app.tap("item-leg");
    app.enter("as_cut", &["3", "page-16", "7/16", "close"]);
    app.wait_for_words("moved", "rail");
    let moved = app.text("moved");
    assert!(moved.contains("thirty-seven and one eighth"), "{moved}");
    assert!(moved.contains("front rail") && moved.contains("none cut yet"), "{moved}");
    app.assert_no_sideways_scroll();
    // One piece of the 45 is cut short: it can be reached, measured, and has a way out.
    app.tap("back");
    app.section("parts");
    app.tap("item-front rail");
    app.tap("pieces-after");
    app.tap("piece-45");
    app.enter("as_cut", &["3", "6", "close"]);
    app.wait_for_words("trouble-front rail 45", "too short");
    app.assert_accessible();
    app.assert_no_sideways_scroll();
    // The leg is cut; the overall may give way, unless it must stay.
    app.wait_for("rescue-overall");
    app.tap("hold-overall");
    app.wait_until_gone("rescue-overall");
    app.tap("hold-overall");
    app.tap("rescue-overall");
    app.wait_for_words("answer-headline", "as wanted");
    app.assert_quiet_console();
}

/// The frame with our examples, kept in a job of its own.
fn frame_in_a_new_job() -> App {
    let app = App::open_at(Screen::PHONE, "#/frame");
    app.wait_for_start();
    app.tap("keep-in-job");
    app.tap("keep-title");
    app.assert_accessible();
    app.tap("keep-in-new");
    app.wait_for("make-parts");
    app
}

#[test]
fn a_calculator_is_kept_in_a_job_and_its_parts_are_made_once() {
    let app = frame_in_a_new_job();
    assert!(app.text("answer-headline").contains("thirty-nine"), "{}", app.text("answer-headline"));
    app.tap("make-parts");
    let shown = app.text("making");
    assert!(shown.contains("Frame: rail") && shown.contains("Still to write"), "{shown}");
    app.assert_accessible();
    app.tap("put-parts");
    app.wait_for("item-Frame: rail");
    // The leg of the reckoning is changed: the part follows.
    app.section("kept");
    app.tap("item-Frame");
    app.enter("leg_left", &["3", "close"]);
    app.wait_for_words("answer-headline", "forty inches");
    app.tap("make-parts");
    app.wait_for_words("making", "in the job already");
    assert!(!app.shows("put-parts"));
    app.go("#/jobs");
    app.tap("job-New job");
    app.section("parts");
    app.wait_for_words("item-Frame: rail", "forty inches");
    app.tap("undo");
    app.wait_for_words("item-Frame: rail", "thirty-nine inches");
    app.assert_quiet_console();
}

/// By hand: between frames of 20 in outside to outside and with 1/4 proud at each end the dowel is 20 1/2. The one of the
/// demo is 47 1/2 less 2 × 3/4, and 2 × 1/4 more: 46 1/2. A rod of 48 has no room for both, so it takes two.
#[test]
fn a_kept_dowel_is_put_in_the_job_and_its_rod_is_bought() {
    let app = crate::shelf::demo();
    let job = crate::shelf::address_of_job(&app);
    app.go("#/dowel?overall=20&left_part=1+1/2&trim=1/4&dowel=0.985&part_length=17&unit=in");
    app.wait_for("answer-headline");
    app.tap("keep-in-job");
    app.wait_for("keep-title");
    app.click(".row--choose");
    app.wait_for("make-parts");
    // As long as it is only reckoned, it is a rod beside the boards.
    app.go(&format!("{job}/buy"));
    app.wait_for_words("buy-dowel rod", "for Dowel");
    app.go(&format!("{job}/kept"));
    app.tap("item-Dowel");
    app.tap("make-parts");
    app.wait_for_words("made-Dowel: dowel", "twenty and one half");
    app.wait_for_words("made-Dowel: dowel", "Cut from: 1 in dowel.");
    app.assert_accessible();
    app.assert_no_sideways_scroll();
    app.picture("dowel-put-in");
    app.tap("put-parts");
    app.wait_for_words("item-Dowel: dowel", "twenty and one half");
    app.section("boards");
    app.tap("plan-it");
    crate::planner::wait_for_the_end(&app);
    app.tap("use-plan");
    app.wait_for("boards-cut");
    app.tap("to-buy-page");
    app.wait_for_words("buy-1 in dowel", "2 to buy");
    app.wait_for_words("buy-1 in dowel", "for tool dowel; Dowel: dowel");
    assert!(!app.shows("buy-dowel rod"));
    app.picture("dowel-to-buy");
    // The plan is taken back, then the dowel.
    app.tap("undo");
    app.wait_until_gone("buy-1 in dowel");
    app.tap("undo");
    app.wait_for_words("buy-dowel rod", "for Dowel");
    app.go(&format!("{job}/parts"));
    app.wait_for("item-tool dowel");
    assert!(!app.shows("item-Dowel: dowel"));
    app.assert_quiet_console();
}

/// Two legs alike are one part. The right one is measured anew: now there is a left and a right leg, and until the job has
/// these it says so, on its front page too.
#[test]
fn pieces_that_an_answer_does_not_make_any_more_are_told() {
    let app = frame_in_a_new_job();
    app.tap("make-parts");
    app.tap("put-parts");
    app.wait_for("item-Frame: leg");
    assert!(!app.shows("trouble-Frame"));
    app.section("kept");
    app.tap("item-Frame");
    app.enter("leg_right", &["3", "close"]);
    app.wait_for_words("trouble-Frame", "New: left leg, right leg.");
    app.wait_for_words("trouble-Frame", "Not made any more: Frame: leg.");
    app.picture("pieces-behind");
    app.assert_accessible();
    app.assert_no_sideways_scroll();
    app.tap("back");
    app.section("front");
    app.tap("open-Frame");
    app.tap("make-again");
    app.wait_for_words("made-Frame: right leg", "new");
    app.tap("put-parts");
    app.wait_for_words("item-Frame: right leg", "three inches");
    // The two alike stay until they are taken out.
    app.wait_for_words("trouble-Frame", "Not made any more: Frame: leg.");
    app.tap("item-Frame: leg");
    app.tap("take-out");
    app.wait_until_gone("trouble-Frame");
    app.tap("undo");
    app.wait_for("trouble-Frame");
    app.tap("open-Frame");
    app.tap("leave");
    app.wait_for("left-Frame");
    app.tap("look-again-Frame");
    app.wait_for("trouble-Frame");
    app.assert_quiet_console();
}

#[test]
fn sizes_that_must_match_are_flagged_where_they_stand() {
    let app = new_job();
    add_size(&app, "left leg", &["2", "8"]);
    add_size(&app, "right leg", &["2", "8"]);
    app.tap("add-match");
    app.tap("field-name");
    app.type_keys("the legs");
    app.tap("member-left leg");
    app.tap("member-right leg");
    app.assert_accessible();
    app.tap("save-item");
    app.wait_for_words("item-the legs", "match");
    app.tap("item-right leg");
    app.enter("as_cut", &["2", "7", "close"]);
    app.tap("back");
    app.wait_for("trouble-the legs");
    app.wait_for_words("item-right leg", "does not match");
    app.wait_for_words("item-left leg", "does not match");
    // They may drift as far as that: then they match.
    app.tap("item-the legs");
    app.enter("drift", &["1", "close"]);
    app.tap("back");
    app.wait_until_gone("trouble-the legs");
    app.tap("item-the legs");
    app.tap("take-out");
    app.wait_until_gone("matches");
    app.assert_quiet_console();
}

/// Its pieces, its front and its build order are as sure as the reckoning that they were made of.
#[test]
fn what_is_made_of_our_examples_is_in_pencil_until_they_are_confirmed() {
    let app = frame_in_a_new_job();
    app.wait_for_words("pencil-line", "Not yours yet: rail ends, overall");
    app.tap("make-parts");
    app.tap("put-parts");
    app.wait_for_words("item-Frame: rail", "example");
    app.section("build");
    app.wait_for("this-step");
    while !app.text("this-step").contains("to length") {
        app.tap("next-step");
    }
    app.wait_for_words("setting", "example");
    app.tap("back");
    app.wait_for_text("pencil-line", "3 examples in Frame. Go through them");
    app.assert_accessible();
    app.assert_no_sideways_scroll();
    app.picture("example-kept-front");
    // They are gone through where they stand.
    app.tap("go-through");
    app.wait_for("make-parts");
    assert!(app.text("next-ours").contains("To the front"), "{}", app.text("next-ours"));
    app.assert_accessible();
    app.picture("example-kept");
    app.tap("go-through");
    app.tap("joint-butt");
    app.tap("field-next");
    app.tap("confirm-overall");
    app.tap("confirm-leg_left");
    app.wait_until("all is the person's", "return !document.querySelector('.pencil-line')");
    app.wait_until("none is left", "return !document.querySelector('.ends')");
    app.tap("back");
    app.section("front");
    app.wait_for("front");
    assert!(!app.shows("pencil-line"));
    app.section("parts");
    app.wait_for("item-Frame: rail");
    assert!(!app.text("item-Frame: rail").contains("example"));
    app.assert_quiet_console();
}

/// From the page that keeps one calculator straight to that of another: each has its own title, and what hides in one is
/// told beside it.
#[test]
fn each_calculator_that_is_kept_has_its_own_title() {
    let app = App::open_at(Screen::PHONE, "#/keep/tape?strip=44&unit=in");
    app.tap("keep-title");
    app.script("document.activeElement.select()");
    app.type_keys("My strip\u{202e}");
    app.wait_for_words("problem-keep-title", "cannot be seen");
    let is_off = "return document.querySelector('[data-testid=keep-in-new]').disabled";
    assert_eq!(app.script(is_off), true);
    app.picture("keep-title-hides");
    app.assert_accessible();
    app.type_keys("\u{e003}");
    app.wait_until_gone("problem-keep-title");
    app.go("#/keep/frame?");
    app.wait_for_value("keep-title", "Frame");
    app.script("history.back()");
    app.wait_for_value("keep-title", "My strip");
    app.go("#/keep/frame?");
    app.wait_for_value("keep-title", "Frame");
    app.tap("keep-in-new");
    app.wait_for_value("kept-title", "Frame");
    app.assert_quiet_console();
}
