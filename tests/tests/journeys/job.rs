//! The job book: a part comes out different, and what else changes.

use reckoner_e2e::{App, Screen};

use crate::shelf::{begin_the_demo_anew, cut_the_leg_thin, wait_for_the_record};

/// Opens the demo by tapping, from the list of calculators.
pub(crate) fn demo() -> App {
    let app = App::open(Screen::PHONE);
    app.wait_until_kept();
    app.tap("to-jobs");
    app.wait_for("open-demo");
    app.tap("open-demo");
    begin_the_demo_anew(&app);
    app
}

#[test]
fn a_leg_cut_thin_moves_the_rails_and_is_still_so_with_the_server_gone() {
    let app = demo();
    assert!(
        app.text("item-long rail").contains("forty-one inches"),
        "{}",
        app.text("item-long rail")
    );
    cut_the_leg_thin(&app);
    // 47 1/2 less two legs of 3 3/16: 41 1/8.
    let moved = app.text("moved");
    assert!(moved.contains("long rail") && moved.contains("forty-one and one eighth"), "{moved}");
    assert!(moved.contains("not cut yet: only the number"), "{moved}");
    app.server.stop();
    app.tap("back");
    app.wait_for_words("sketch", "moved: leg");
    wait_for_the_record(&app, "leg", "as_cut", "3 3/16");
    app.reload();
    app.wait_for_start();
    app.wait_for("sizes");
    let rail = app.text("item-long rail");
    assert!(rail.contains("forty-one and one eighth inches"), "{rail}");
    app.tap("undo");
    app.wait_for_words("item-long rail", "forty-one inches");
    app.assert_quiet_console();
}

#[test]
fn a_rail_cut_before_the_legs_were_measured_has_a_rescue() {
    let app = demo();
    app.tap("item-long rail");
    app.enter("as_cut", &["4", "1", "close"]);
    app.tap("back");
    app.wait_for("sizes");
    cut_the_leg_thin(&app);
    app.tap("back");
    app.wait_for("attention");
    let words = app.text("trouble-long rail");
    assert!(words.contains("now wanted at"), "{words}");
    app.tap("open-long rail");
    // The overall length gives way: 41 and two legs of 3 3/16 are 47 3/8.
    assert!(app.text("rescue-overall length").contains("forty-seven and three eighths"));
    app.tap("rescue-overall length");
    app.wait_until_gone("trouble-long rail");
}

/// The rails are cut before one learns that the legs are thin: on no page is all well then, until
/// somebody says what is to be done, and what is cut again is planned again.
#[test]
fn rails_cut_before_the_legs_came_out_thin_are_never_said_to_be_right() {
    let app = demo();
    app.wait_until_kept();
    app.server.stop();
    app.section("parts");
    for tick in ["tick-long rail, upper-1", "tick-long rail, upper-2"] {
        app.tap(tick);
    }
    app.wait_until(
        "both are ticked",
        "return document.querySelector('[data-testid=\"tick-long rail, upper-2\"]').ariaPressed === 'true'",
    );
    app.section("sizes");
    cut_the_leg_thin(&app);
    // 47 1/2 less two legs of 3 3/16 are 41 1/8; both rails were cut at 41.
    let both = "trouble-long rail, upper 1 and 2";
    let is_told = |page: &str| {
        app.wait_for(both);
        let words = app.text(both);
        assert!(
            words.contains("too short") && words.contains("forty-one and one eighth"),
            "{page}: {words}"
        );
    };
    is_told("the size's own page");
    app.tap("back");
    for section in ["front", "sizes", "parts", "boards", "build"] {
        app.section(section);
        is_told(section);
        app.assert_no_sideways_scroll();
        app.assert_accessible();
    }
    app.reload();
    app.wait_for_start();
    is_told("after a reload");
    app.tap("back");
    app.section("parts");
    app.picture("attention-parts");
    app.tap("open-long rail, upper 1 and 2");
    app.wait_for("rescue-overall length");
    crate::yard::in_all_looks(&app, "attention-ways");
    // Left as they are, they are named so and can be looked at again.
    app.tap("leave");
    app.wait_for("left-long rail, upper 1 and 2");
    app.tap("look-again-long rail, upper 1 and 2");
    is_told("looked at again");
    app.tap("open-long rail, upper 1 and 2");
    app.tap("cut-again");
    app.wait_until_gone(both);
    app.wait_until(
        "the ticks are gone",
        "return document.querySelector('[data-testid=\"tick-long rail, upper-1\"]').ariaPressed === 'false'",
    );
    app.tap("undo");
    is_told("undone");
    app.assert_quiet_console();
}

/// Of the four legs one comes out thin: at which rail it stands is said, and that one alone moves.
#[test]
fn one_thin_leg_moves_the_rail_that_it_stands_at_and_no_other() {
    let app = demo();
    app.wait_until_kept();
    app.server.stop();
    app.section("parts");
    app.tap("item-leg");
    app.tap("piece-2");
    app.wait_for("answer-headline");
    app.enter("thickness", &["3", "page-16", "3/16", "close"]);
    app.wait_for_words("trouble-leg 2", "too thin");
    app.wait_for_words("answer-headline", "Thickness wanted");
    app.picture("piece-thin");
    app.tap("own-size");
    app.wait_for("stands");
    app.assert_no_sideways_scroll();
    app.assert_accessible();
    app.tap("spot-at long rail, upper 1");
    app.wait_for_words("moved", "long rail");
    app.picture("stands");
    app.tap("stands-there");
    app.wait_for_words("left-leg 2", "too thin");
    app.tap("back");
    app.tap("back");
    // 47 1/2 less 3 1/4 and 3 3/16 is 41 1/16; the other long rail is 41 as before.
    app.wait_for_words("item-long rail, upper with leg 2", "forty-one and one sixteenth");
    app.wait_for_words("item-long rail, upper", "forty-one inches");
    app.assert_quiet_console();
}

#[test]
fn every_section_of_a_job_is_clean_and_stays_in_the_page() {
    let app = demo();
    for section in ["front", "sizes", "parts", "more", "kept", "rack", "hand-on"] {
        app.section(section);
        app.assert_no_sideways_scroll();
        // Where one is can be read, however far that is along the row of sections.
        app.wait_until(
            "the section at hand lies on the screen",
            "const here = [...document.querySelectorAll('nav [aria-current]')].map((it) => it.getBoundingClientRect());
             return here.length === 1 && here[0].left >= 0 && here[0].right <= 360 && here[0].width > 0
                 ? true : here.map((it) => [it.left, it.right])",
        );
        app.assert_accessible();
        app.picture(&format!("job-{section}"));
    }
    app.section("parts");
    app.tap("tick-leg-1");
    app.wait_until(
        "it is ticked",
        "return document.querySelector('[data-testid=\"tick-leg-1\"]').ariaPressed === 'true'",
    );
    app.section("kept");
    app.tap("item-Half of the long rail");
    app.wait_for("answer-headline");
    // The lines of its strip know the names of the job as the answer does.
    let strip = app.text("field-strip");
    assert!(strip.contains("twenty and one half") && !strip.contains("not known"), "{strip}");
    assert!(!app.shows("problem-strip"));
    app.assert_no_sideways_scroll();
    app.assert_accessible();
    app.assert_quiet_console();
}

/// On a desk as on a phone: from an empty shelf to a job with a size in it.
#[test]
fn a_job_is_begun_on_a_wide_screen() {
    let app = App::open_at(Screen::DESKTOP, "#/jobs");
    app.tap("new-job");
    app.tap("add-measure");
    app.tap("field-name");
    app.type_keys("front rail");
    app.enter("formula", &[]);
    app.type_keys("37 1/8");
    app.tap("save-item");
    app.wait_for_words("item-front rail", "37");
    app.section("hand-on");
    app.wait_for("save-file");
    app.assert_accessible();
    app.assert_quiet_console();
}

#[test]
fn a_link_that_holds_no_job_says_so() {
    let app = App::open(Screen::PHONE);
    for link in ["#/take?nonsense", "#/take?", "#/job/none", "#/job/none/item/7"] {
        app.go(link);
        app.wait_for_start();
        app.wait_for("job-trouble");
        assert!(!app.shows("recovery"), "{link}");
    }
}

/// The promise of the home page is seen in the demo: boards bought, three cut, a leg thin, and what to do about it.
#[test]
fn the_demo_stands_in_the_middle_of_the_work() {
    for screen in [Screen::PHONE, Screen::DESKTOP] {
        let app = App::open_at(screen, "#/jobs");
        app.tap("open-demo");
        app.wait_for("front");
        app.wait_for_words("boards-so-far", "3 of 11 boards cut");
        app.wait_for_words("pieces-so-far", "10 of 34 pieces cut");
        // 2 × 11.80 + 10.90 + 8.20 + 2 × 14.25 + 4.15 + 3.85.
        app.wait_for_words("money", "79.20");
        app.wait_for_words("trouble-leg 2", "too thin");
        let words = app.script(
            "return document.querySelector('[data-testid=picture] [role=img]').getAttribute('aria-label')",
        );
        assert!(words.as_str().is_some_and(|it| it.contains("wrong: leg 2")), "{words}");
        // The number on the tab is that of the list.
        if app.shows("all-to-look-at") {
            app.tap("all-to-look-at");
        }
        let entries = app.script(
            "return document.querySelectorAll('[data-testid=attention] [data-testid^=trouble-]').length",
        );
        assert_eq!(app.text("to-look-at"), entries.to_string());
        assert!(entries.as_u64() > Some(0), "{entries}");
        // The boards are bought; the oil is not.
        app.wait_for_words("next", "Buy the rest");
        app.assert_no_sideways_scroll();
        app.assert_accessible();
        app.picture(&format!("front-{}", screen.width));
        // Its name is written where it is read.
        app.tap("job-title");
        app.type_keys(" 2");
        app.script("document.activeElement.blur()");
        app.reload();
        app.wait_for_start();
        // The tap put the caret into the name, wherever that was.
        app.wait_until(
            "the new name",
            "return document.querySelector('[data-testid=job-title]').value.includes(' 2')",
        );
        for (way, there) in [
            ("boards-so-far", "boards"),
            ("pieces-so-far", "parts"),
            ("money", "to-buy"),
            ("next", "to-buy"),
        ] {
            app.tap(way);
            app.wait_for(there);
            app.script("history.back()");
            app.wait_for("front");
        }
        // The build order says the same next, and what wants looking at.
        app.section("build");
        app.wait_for_words("this-step", "Buy the rest");
        app.wait_for_words("step-to-buy", "of finish");
        app.wait_for_words("attention", "too thin");
        app.script("history.back(); history.back()");
        app.wait_for("front");
        app.tap("open-leg 2");
        app.wait_for("own-size");
        app.assert_quiet_console();
    }
}

/// What is bought is not told as to buy; of a plan that fits the job no longer nothing is claimed.
#[test]
fn the_boards_of_the_demo_say_what_is_bought_and_claim_no_more_than_is_so() {
    let app = App::open_at(Screen::PHONE, "#/jobs");
    app.tap("open-demo");
    app.wait_for("front");
    app.section("boards");
    app.wait_for_words("shopping", "bought");
    app.wait_for("proof");
    app.picture("demo-boards");
    // The plan as a list of numbers: a row for each piece and for what is left over.
    let folder = crate::film::files_of("boards");
    app.save_files_to(&folder);
    app.tap("save-boards");
    let file = std::fs::read_to_string(app.saved_file(&folder)).expect("the list");
    let rows: Vec<Vec<&str>> = file.lines().skip(1).map(|it| it.split(',').collect()).collect();
    let pieces = rows.iter().filter(|it| !it[4].is_empty()).count();
    // All 34 but the two long rails of the shelf, which wait for the frame.
    assert_eq!(pieces, 32, "{file}");
    assert_eq!(rows.last().expect("a row")[0], "11", "{file}");
    app.section("sizes");
    app.tap("item-overall length");
    app.enter("formula", &["5", "0", "close"]);
    app.tap("back");
    app.section("boards");
    app.wait_for_words("attention", "no longer fits the job");
    app.picture("demo-boards-moved");
    assert!(!app.shows("proof"), "{}", app.text("proof"));
    app.assert_quiet_console();
}

/// How wide the bar of each piece in the list is drawn, under what it is cut from: `From 2x8`, then `leg 124`.
fn bars(app: &App) -> Vec<(String, f64)> {
    let all = app.script(
        "return [...document.querySelectorAll('[data-testid=parts] .from__name, [data-testid=parts] .part')].map((it) => {
            const bar = it.querySelector('.to-scale rect');
            return [(it.querySelector('.row__name') ?? it).textContent, bar?.getBoundingClientRect().width ?? 0];
        })",
    );
    serde_json::from_value(all).expect("names and widths")
}

#[test]
fn pieces_are_drawn_to_scale_longest_first_under_their_boards() {
    let app = demo();
    app.section("parts");
    app.wait_for("item-leg");
    for screen in Screen::ALL {
        app.resize(screen);
        let all = bars(&app);
        let names: Vec<&str> = all.iter().map(|(name, _)| &**name).collect();
        // The bracket of a foot is not lost beside the planks.
        let rails = ["From 2x8", "long rail, upper", "long rail, shelf", "short rail, upper"];
        let first = names.iter().position(|it| *it == rails[0]).expect("the rails' boards");
        assert_eq!(names[first..first + 4], rails);
        let wide = |name: &str| all.iter().find(|it| it.0 == name).map_or(0.0, |it| it.1);
        // 50 1/2, 33 1/2 and 12 in long.
        let plank = wide("top plank");
        assert!(plank > 280.0, "{all:?}");
        for (name, inches) in [("leg", 33.5), ("end bracket", 12.0)] {
            let off = wide(name) / plank - inches / 50.5;
            assert!(off.abs() < 0.02, "{name}: {all:?}");
        }
        app.assert_no_sideways_scroll();
        app.picture(&format!("pieces-{}", screen.width));
    }
    app.resize(Screen::PHONE);
    // What is read aloud has no bar in it.
    let words = app.text("item-leg");
    assert!(words.contains("thirty-three and one half inches"), "{words}");
    let aloud =
        app.script("return document.querySelectorAll('.to-scale:not([aria-hidden])').length");
    assert_eq!(aloud, 0);
    app.assert_accessible();
    app.tap("section-more");
    app.tap("section-build");
    app.wait_for("this-step");
    app.assert_quiet_console();
}

/// The demo as it stands, in the middle of the work: its long rails are cut at 41, and the one at the thin leg is then wanted
/// at 41 1/16.
#[test]
fn the_thin_leg_of_the_demo_says_which_cut_rail_is_to_be_looked_at() {
    let app = App::open_at(Screen::PHONE, "#/jobs");
    app.tap("open-demo");
    app.wait_for("front");
    app.tap("open-leg 2");
    app.tap("own-size");
    app.wait_for("stands");
    // Its own size is what the tape says, not what all of them were planned at.
    app.wait_for_words("moved", "three and three sixteenths");
    app.wait_for_words("moved", "new, as it was cut");
    app.tap("spot-at long rail, upper 1");
    app.wait_for_words("moved", "pieces of it are cut: look at them below");
    app.wait_for_words("then-look-at", "long rail, upper with leg 2 1");
    app.assert_no_sideways_scroll();
    app.assert_accessible();
    app.picture("stands-in-work");
    app.tap("stands-there");
    app.wait_for("answer-headline");
    app.tap("back");
    app.tap("back");
    app.section("front");
    app.wait_for("trouble-long rail, upper with leg 2 1");
    app.wait_for_words("picture", "Look at long rail, upper with leg 2 1");
    let left =
        app.script("return document.querySelectorAll('[data-testid=\"left-leg 2\"]').length");
    assert_eq!(left, 1, "what is left as it is is told once");
    app.picture("front-after-it-stands");
    app.assert_quiet_console();
}

/// What each way out of the thin leg takes, what it would move, and what wants looking at then, stand with it.
#[test]
fn the_ways_out_of_the_thin_leg_say_what_they_take_and_what_comes_of_them() {
    let app = App::open_at(Screen::PHONE, "#/jobs");
    app.tap("open-demo");
    app.wait_for("front");
    app.tap("open-leg 2");
    app.wait_for("own-size");
    let ways = app.script(
        "return [...document.querySelectorAll('[data-testid=\"trouble-leg 2\"] .attention__way')].map((it) => {
             const words = (id) => it.querySelector(`[data-testid=${id}]`)?.textContent ?? '';
             return [it.querySelector('button').dataset.testid, words('way-cost'), words('moved'), words('then-look-at')];
         })",
    );
    let ways: Vec<(String, String, String, String)> = serde_json::from_value(ways).expect("ways");
    let of =
        |id: &str| ways.iter().find(|it| it.0 == id).unwrap_or_else(|| panic!("{id}: {ways:?}"));
    // A leg of 33 1/2 takes one more 4x4 of 96, which the demo has at 11.80; the plan in use fits no longer then.
    let again = of("cut-again");
    assert!(again.1.contains("1 × 4x4") && again.1.contains("11.80"), "{again:?}");
    assert!(again.3.contains("Then look at: The plan in use"), "{again:?}");
    // 47 1/2 less two legs of 3 3/16 are 41 1/8, and the long rails are cut at 41.
    let gives_way = of("rescue-leg");
    assert!(gives_way.1.contains("from the yard"), "{gives_way:?}");
    assert!(gives_way.2.contains("forty-one and one eighth"), "{gives_way:?}");
    assert!(gives_way.3.contains("long rail"), "{gives_way:?}");
    app.picture("ways-of-the-thin-leg");
    app.assert_quiet_console();
}

/// The formula of a size and what it comes to are read whole on a phone.
#[test]
fn a_formula_of_a_size_is_not_cut_off() {
    let app = demo();
    app.tap("item-long rail");
    app.tap("field-formula");
    app.type_keys(" + 1");
    app.wait_for_words("echo-formula", "42");
    let whole = |when: &str| {
        let (text, beyond): (String, Vec<String>) = serde_json::from_value(app.script(
            "const field = document.querySelector('[data-testid=field-formula]');
             const all = [field, document.querySelector('[data-testid=echo-formula]')];
             return [field.value, all.filter((it) => it.scrollWidth > it.clientWidth || it.scrollHeight > it.clientHeight + 1)
                 .map((it) => `${it.dataset.testid}: ${it.scrollWidth} of ${it.clientWidth}`)]",
        ))
        .expect("texts");
        assert!(text.chars().count() >= 25, "{text}");
        assert_eq!(beyond, [""; 0], "{text}, {when}");
    };
    app.picture("formula-with-keys");
    whole("with the keys out");
    app.tap("key-close");
    app.picture("formula");
    whole("with the keys away");
    app.assert_quiet_console();
}

/// The thin leg of the demo takes a shim: it says how thick, what it takes and what to be careful of; then it is told as
/// filled, also when the page is loaded again, until somebody looks at it again.
#[test]
fn a_thin_leg_takes_a_shim() {
    for screen in [Screen::PHONE, Screen::DESKTOP] {
        let app = App::open_at(screen, "#/jobs");
        app.tap("open-demo");
        app.wait_for("front");
        app.tap("open-leg 2");
        app.wait_for_words("shim", "Fill it with a shim of");
        app.wait_for_words("trouble-leg 2", "nothing is thrown away");
        app.wait_for_words("way-caution", "only where it bears on the whole face");
        app.assert_no_sideways_scroll();
        app.assert_accessible();
        app.script(
            "document.querySelector('[data-testid=shim]').scrollIntoView({block: 'center'})",
        );
        app.picture(&format!("shim-{}", screen.width));
        app.tap("shim");
        app.wait_until_gone("trouble-leg 2");
        app.wait_for_words("left-leg 2", "Filled with a shim of");
        app.wait_until_kept();
        app.reload();
        app.wait_for_start();
        app.wait_for_words("left-leg 2", "Filled with a shim of");
        app.picture(&format!("shim-left-{}", screen.width));
        app.tap("look-again-leg 2");
        app.wait_for("trouble-leg 2");
        app.assert_quiet_console();
    }
}

/// The pieces of one part must match: of the four legs that are cut at 33 1/2 one is 33 on the tape.
#[test]
fn the_legs_of_the_demo_must_match_in_length() {
    let app = App::open_at(Screen::PHONE, "#/jobs");
    app.tap("open-demo");
    app.wait_for("front");
    app.section("sizes");
    app.tap("add-match");
    app.wait_for("members");
    app.tap("field-name");
    app.type_keys("the legs");
    app.tap("member-leg, its pieces");
    app.wait_until(
        "its pieces are in it",
        "return document.querySelector('.members [role=status]').textContent.includes('match each other in length')",
    );
    app.assert_no_sideways_scroll();
    app.assert_accessible();
    app.picture("match-pieces");
    app.tap("save-item");
    app.wait_for_words("matches", "leg, its pieces");
    app.section("parts");
    app.tap("item-leg");
    app.tap("piece-1");
    app.enter("as_cut", &["3", "3", "close"]);
    app.tap("back");
    app.tap("back");
    app.section("front");
    app.wait_for_words("trouble-the legs", "leg 1 is");
    app.tap("open-the legs");
    app.wait_for("to-smallest");
    app.assert_accessible();
    app.picture("match-apart");
    app.tap("to-smallest");
    app.wait_until_gone("trouble-the legs");
    app.assert_quiet_console();
}

/// Of a spoiled leg 20 in are left: that goes on the rack, the leg is wanted again, and one undo takes both back. More than the
/// leg was is refused, and what is typed half is there again.
#[test]
fn what_is_left_of_a_spoiled_piece_goes_on_the_rack() {
    let app = crate::shelf::first_leg();
    app.wait_until_kept();
    app.server.stop();
    app.tap("spoiled-rack");
    app.wait_for("spoiled-left");
    app.enter("left", &["4", "0", "close"]);
    app.tap("take-spoiled");
    app.wait_for_words("problem-left", "33 1/2");
    app.picture("spoiled");
    app.assert_no_sideways_scroll();
    app.assert_accessible();
    app.enter("left", &["clear", "2", "close"]);
    app.reload();
    app.wait_for_start();
    app.wait_for_value("field-left", "2");
    app.enter("left", &["0", "close"]);
    app.wait_for_value("field-left", "20");
    app.tap("take-spoiled");
    app.wait_until_gone("spoiled-left");
    app.wait_until_gone("spoiled");
    app.tap("back");
    app.tap("back");
    app.section("rack");
    app.wait_for_words("rack", "3 1/4 × 3 1/4 × 20 in,");
    app.picture("spoiled-rack");
    app.tap("undo");
    app.wait_until(
        "it is off the rack",
        "return !document.querySelector('[data-testid=rack]').textContent.includes('× 20 in,')",
    );
    app.assert_quiet_console();
}
