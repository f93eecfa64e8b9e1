//! Whose size is it: ours is in pencil until it is typed, chosen or confirmed, and the answer says so.

use reckoner_e2e::{App, Screen};

const SCREENS: [Screen; 2] = [Screen::PHONE, Screen::DESKTOP];
const FRESH: &str = "Not your sizes yet: length, at most apart, first mark";

/// Whether an element, found by its selector, is drawn as ours.
fn is_pencil(app: &App, css: &str) -> bool {
    let style =
        app.script(&format!("return getComputedStyle(document.querySelector('{css}')).fontStyle"));
    style == "italic"
}

const HEADLINE: &str = ".headline__value";

#[test]
fn an_example_is_ours_until_it_is_typed_or_confirmed() {
    for screen in SCREENS {
        let app = App::open_at(screen, "#/spacing");
        app.wait_for_text("pencil-line", FRESH);
        assert!(is_pencil(&app, HEADLINE) && app.text("answer-headline").contains("example"));
        assert!(is_pencil(&app, "#field-length"));
        app.picture(&format!("ink-none-{}", screen.width));
        app.tap("go-through");
        app.wait_for("confirm-length");
        app.picture(&format!("ink-confirm-{}", screen.width));
        // Next leaves it an example.
        app.type_keys("\u{e007}");
        app.wait_for("confirm-greatest_gap");
        app.type_keys("\u{e00c}");
        app.wait_for_text("pencil-line", FRESH);
        // Confirmed as it stands, and on to the next that is ours.
        app.tap("go-through");
        app.tap("confirm-length");
        app.wait_for("confirm-greatest_gap");
        // The very figure of the example, typed: the first key takes the place of all of it.
        app.type_keys("8");
        app.wait_for_value("field-greatest_gap", "8");
        app.type_keys("\u{e007}");
        app.tap("confirm-left_end");
        app.wait_until("all is the person's", "return !document.querySelector('.pencil-line')");
        assert!(!is_pencil(&app, HEADLINE) && !app.text("answer-headline").contains("example"));
        assert!(!is_pencil(&app, "#field-length"));
        assert!(!app.shows("keypad"));
        app.wait_for("keep-in-job");
        app.picture(&format!("ink-all-{}", screen.width));
        // Undo brings a size back with its state.
        app.tap("undo");
        app.wait_for_text("pencil-line", "Not your size yet: first mark");
        app.assert_quiet_console();
    }
}

#[test]
fn a_reload_leaves_examples_examples() {
    let app = App::open_at(Screen::PHONE, "#/spacing");
    app.enter("length", &["3", "7", "close"]);
    app.wait_for_text("pencil-line", "Not your sizes yet: at most apart, first mark");
    app.wait_until("it is in the address", "return location.hash.includes('length=37')");
    let address = app.url();
    app.reload();
    app.wait_for_start();
    app.wait_for_text("pencil-line", "Not your sizes yet: at most apart, first mark");
    let elsewhere = App::arrive(Screen::PHONE);
    let fragment = address.split_once('#').map(|(_, it)| it).expect("a fragment");
    elsewhere.go(&format!("#{fragment}"));
    elsewhere.wait_for_start();
    elsewhere.wait_for_text("pencil-line", "Not your sizes yet: at most apart, first mark");
}

#[test]
fn the_first_key_in_the_strip_takes_the_place_of_our_sum() {
    for screen in SCREENS {
        let app = App::open_at(screen, "#/tape");
        app.wait_for_text("pencil-line", "Not your size yet: work it out");
        app.tap("field-strip-0");
        app.type_keys("3");
        app.wait_for_value("field-strip-0", "3");
        app.type_keys("7");
        app.wait_for_value("field-strip-0", "37");
        app.wait_until("it is the person's", "return !document.querySelector('.pencil-line')");
        // What is one's own is gone on with.
        app.type_keys("\u{e00c}");
        app.tap("field-strip-0");
        app.type_keys("5");
        app.wait_for_value("field-strip-0", "375");
        app.assert_quiet_console();
    }
}

#[test]
fn a_choice_is_ones_own_when_the_chosen_one_is_tapped() {
    for screen in SCREENS {
        let app = App::open_at(screen, "#/frame?overall=46&leg_left=3+1%2F2&unit=in");
        app.wait_for_text("pencil-line", "Not yours yet: rail ends");
        app.tap("joint-butt");
        app.wait_until("it is the person's", "return !document.querySelector('.pencil-line')");
        app.wait_for_text(
            "heard",
            "Cut the rail: thirty-nine inches, end to end. All sizes are yours.",
        );
        app.assert_quiet_console();
    }
}

#[test]
fn a_size_of_the_settings_is_ours_until_it_is_set_there() {
    let app = App::open_at(Screen::PHONE, "#/crosscut?board=96&part=17&trim=0&wanted=4&unit=in");
    app.wait_for_text("pencil-line", "Not your size yet: kerf");
    app.go("#/settings");
    app.tap("field-kerf");
    app.tap("confirm-kerf");
    app.press(&["close"]);
    app.go("#/crosscut?board=96&part=17&trim=0&wanted=4&unit=in");
    app.wait_for("answer-headline");
    app.wait_until("the kerf is the person's", "return !document.querySelector('.pencil-line')");
}

#[test]
fn pencil_can_be_read_in_every_look() {
    for screen in SCREENS {
        let app = App::open_at(screen, "#/settings");
        for look in ["light", "dark", "outdoor"] {
            app.go("#/settings");
            app.tap(&format!("theme-{look}"));
            for page in ["spacing", "resaw-rip", "screws"] {
                app.go(&format!("#/{page}"));
                app.wait_for("pencil-line");
                app.assert_accessible();
                app.assert_no_sideways_scroll();
                app.picture(&format!("ink-{page}-{look}-{}", screen.width));
            }
        }
    }
}

/// The question stands first, and its sheet has all that the page can be asked.
#[test]
fn the_question_is_the_first_thing_and_a_sheet_has_them_all() {
    for screen in SCREENS {
        let app = App::open_at(screen, "#/screws");
        app.assert_on_first_screen("question");
        assert!(!app.shows("question-toe"));
        let pictures = "return [...document.querySelectorAll('.question__picture > .outline')]
            .filter((it) => it.childElementCount > 2 && it.getBoundingClientRect().height > 30).length";
        assert_eq!(app.script(pictures), 0, "pictures that nobody sees");
        app.tap("question");
        app.wait_for("question-toe");
        assert_eq!(app.script(pictures), 6, "a picture of each question that has a drawing");
        app.assert_accessible();
        app.picture(&format!("question-{}", screen.width));
        // Escape closes it, and gives the focus back.
        app.type_keys("\u{e00c}");
        app.wait_until_gone("question-toe");
        assert_eq!(app.script("return document.activeElement.dataset.testid"), "question");
        app.tap("question");
        app.tap("question-close");
        app.wait_until_gone("question-toe");
        app.tap("question");
        app.tap("question-toe");
        app.wait_until_gone("question-toe");
        app.wait_for_words("question", "Toed screw");
        app.wait_for("field-toe_angle");
        app.tap("undo");
        app.wait_for_words("question", "How long");
        app.assert_quiet_console();
    }
}

/// What the sheet of a page does not have is found from its last row: without leaving, where it is of the same page.
#[test]
fn a_question_that_is_not_in_the_sheet_is_found_from_it() {
    for screen in SCREENS {
        let app = App::open_at(screen, "#/spacing?length=43&unit=in");
        app.tap("question");
        app.assert_on_first_screen("find");
        let said = app.script("return document.querySelector('.question__find').innerText");
        assert!(said.as_str().is_some_and(|it| it.contains("Not here? Find a question")), "{said}");
        app.tap("find");
        app.type_keys("fixed step");
        app.wait_for("found-spacing-step");
        app.assert_on_first_screen("found-spacing-step");
        app.assert_accessible();
        app.assert_no_sideways_scroll();
        app.picture(&format!("question-found-{}", screen.width));
        app.tap("found-spacing-step");
        app.wait_until_gone("find");
        app.wait_for_words("question", "step");
        app.wait_for_value("field-length", "43");
        let focus = "return document.activeElement.dataset.testid";
        assert_eq!(app.script(focus), "question");
        // By keys alone: Enter takes the best, Escape leaves, and Tab goes from the words to what they found.
        app.tap("question");
        app.tap("find");
        app.type_keys("zebra");
        app.wait_for("none-found");
        app.type_keys("\u{e00c}");
        app.wait_until_gone("find");
        app.tap("question");
        app.tap("find");
        app.type_keys("half lap");
        app.wait_for("found-frame-lap");
        app.type_keys("\u{e004}");
        assert_eq!(app.script(focus), "found-frame-lap");
        app.tap("find");
        app.type_keys("\u{e007}");
        app.wait_for_words("question", "lap");
        app.script("history.back()");
        app.wait_for_value("field-length", "43");
        app.assert_quiet_console();
    }
}

/// It comes a moment later, into room that was kept, and another question has another one.
#[test]
fn the_pill_has_the_picture_of_its_question_and_does_not_move_for_it() {
    let app = App::arrive(Screen::PHONE);
    app.go("#/spacing");
    app.wait_for_start();
    app.wait_for("question");
    let drawn = "const it = document.querySelector('.question__small svg');
                 return it && [it.outerHTML, it.closest('[aria-hidden]') !== null]";
    let is_there = "return document.querySelector('.question__small svg') !== null";
    app.wait_until("its picture", is_there);
    let first = app.script(drawn);
    assert_eq!(first[1], true, "a voice reads the question, not its picture");
    let moved = app.script(
        "const place = () => JSON.stringify(['.question__now', '.question__pill'].map((it) => document.querySelector(it).getBoundingClientRect()));
         const picture = document.querySelector('.question__small svg');
         const [beside, tall] = [place(), picture.getBoundingClientRect().height];
         picture.style.display = 'none';
         const before = place();
         picture.style.display = '';
         return [before === beside, tall]",
    );
    assert_eq!(moved[0], true, "what stands beside it moves when it comes");
    assert!(moved[1].as_f64().is_some_and(|it| (10.0..40.0).contains(&it)), "{moved}");
    app.picture("question-pill");
    app.tap("question");
    app.tap("mode-slats");
    app.wait_until_gone("question-close");
    app.wait_until("its picture", is_there);
    assert_ne!(app.script(drawn)[0], first[0], "the picture of the question before");
    app.assert_quiet_console();
}

/// Held, the key that takes away goes on; the hint of the field stays in sight.
#[test]
fn a_held_key_repeats_and_the_hint_stays() {
    let app = App::open_at(Screen::PHONE, "#/spacing?keep_out=10+to+12&length=43&unit=in");
    app.tap("field-length");
    app.press(&["1", "2", "3", "4", "5", "6"]);
    let seen =
        app.script("return document.querySelector('.is-docked .field__hint').checkVisibility()");
    assert_eq!(seen, true, "the hint");
    let point = |kind: &str| {
        app.script(&format!(
            "document.querySelector('[data-testid=key-backspace]').dispatchEvent(new PointerEvent('{kind}', {{ bubbles: true }}))"
        ))
    };
    point("pointerdown");
    app.wait_for_value("field-length", "");
    point("pointerup");
    app.press(&["4"]);
    app.wait_for_value("field-length", "4");
    app.assert_quiet_console();
}

/// Every calculator is on the first screens of a phone, and a question is found by what is said in a shop.
#[test]
fn the_first_page_is_short_and_finds_a_question() {
    for screen in SCREENS {
        let app = App::open(screen);
        app.wait_for("home-finish");
        let tall = app.script("return document.documentElement.scrollHeight");
        assert!(tall.as_f64().is_some_and(|it| it <= 1000.0), "{tall} px tall");
        app.assert_no_sideways_scroll();
        app.picture(&format!("home-{}", screen.width));
        app.tap("find");
        app.type_keys("is it square");
        app.wait_for("found-frame-square");
        assert!(!app.shows("home-tape"));
        app.assert_accessible();
        app.picture(&format!("home-found-{}", screen.width));
        app.tap("found-frame-square");
        app.wait_for_words("question", "square");
        // The person's own sizes stay, whatever question is found.
        app.tap("field-near_side");
        app.type_keys("40\u{e00c}");
        app.wait_for_value("field-near_side", "40");
        app.go("#/");
        app.tap("find");
        app.type_keys("half lap");
        app.tap("found-frame-lap");
        app.wait_for_words("question", "lap");
        app.tap("question");
        app.tap("question-square");
        app.wait_for_value("field-near_side", "40");
        app.go("#/");
        app.tap("find");
        app.type_keys("zebra");
        app.wait_for("none-found");
        app.wait_for("home-tape");
        app.assert_quiet_console();
    }
}
