//! Answers that were once unsafe or not to be read, from a fresh form by thumb.
//!
//! The numbers are worked by hand or published where the core's tests of the same cases say so; here that taps
//! lead to them.

use reckoner_e2e::{Act, App, Screen};

/// Chooses from a long list, as the browser's own picker does.
fn choose(app: &App, field: &str, answer: &str) {
    app.wait_for(&format!("field-{field}"));
    app.script(&format!(
        "const list = document.querySelector('[data-testid=\"field-{field}\"] select');
         list.value = '{answer}'; list.dispatchEvent(new Event('change', {{ bubbles: true }}))",
    ));
}

/// A 3/8 x 4 lag screw through 1 in: both holes with their depths, 1 1/2 from the head and 3 in the receiver.
#[test]
fn a_lag_screw_has_two_holes_with_their_depths() {
    let app = App::open(Screen::PHONE);
    app.tap("home-screws");
    app.tap("question");
    app.tap("question-pilot");
    choose(&app, "fastener", "lag_3_8");
    app.enter("screw_length", &["4", "close"]);
    app.wait_for_words("figure-clearance_depth", "one and one half inches");
    app.wait_for_words("figure-pilot_depth", "three inches");
    app.wait_for_words("drawing", "1 1/2 deep");
    app.wait_for_words("drawing", "3 deep");
    app.picture("lag-screw");
    app.assert_quiet_console();
}

/// A 2x6 over 44 in: no middle support until one is put in, and the headline says what it counts.
#[test]
fn a_beam_is_judged_without_a_support_nobody_asked_for() {
    let app = App::open(Screen::PHONE);
    app.tap("home-strength");
    app.wait_for_words("answer-headline", "Don't");
    app.wait_for_words("answer-headline", "with no middle support");
    app.wait_for_words("figure-sudden_stress", "put on suddenly");
    app.picture("strength-start");
    app.enter("middle_supports", &["1", "close"]);
    app.wait_for_words("answer-headline", "Stiff");
    app.wait_for_words("answer-headline", "with 1 middle support");
    app.assert_quiet_console();
}

/// Boards laid tight and wet gap 3/16 as they dry (case N2): Wet and dry and the top say the same, and a tap lays
/// them tight.
#[test]
fn wet_boards_have_one_gap_wherever_it_is_asked() {
    let app = App::open(Screen::PHONE);
    let wanted = ["page-16", "1/16", "close"];
    let words = "Lay them tight, and take about 3/16 in.";
    app.tap("home-moisture");
    app.tap("question");
    app.tap("ask-gap");
    app.enter("width", &["5", "page-16", "1/2", "close"]);
    app.enter("later", &["1", "2", "close"]);
    app.tap("known-today");
    app.enter("gap_later", &wanted);
    app.wait_for_text("way-out-gap_later", words);
    app.tap("way-out-gap_later");
    app.wait_for_words("answer-headline", "three sixteenths");
    app.go("#/top");
    app.tap("question");
    app.tap("question-season");
    app.tap("season_find-today");
    app.enter("gap_later", &wanted);
    app.wait_for_text("way-out-gap_later", words);
    app.tap("way-out-gap_later");
    app.wait_for_words("answer-headline", "three sixteenths");
    app.assert_quiet_console();
}

/// Two edge distances of a No. 8 screw are 0.82 in, which no tape has: a tap writes the mark above it.
#[test]
fn a_way_out_writes_what_the_tape_shows() {
    let app = App::open(Screen::PHONE);
    app.tap("home-screws");
    app.tap("question");
    app.tap("question-placing");
    app.enter("board_width", &["page-16", "3/4", "close"]);
    app.wait_for_text("way-out-board_width", "Use a board of 7/8 in, or a thinner screw.");
    app.tap("way-out-board_width");
    app.wait_for_value("field-board_width", "7/8 in");
    app.wait_until_gone("problem-board_width");
    app.assert_quiet_console();
}

/// A lap of 1 1/2 over 1 7/16: half is 23/32, on no mark of the tape. Cut to 11/16, the other one to 13/16, which
/// leaves the show faces flush.
#[test]
fn a_half_lap_is_cut_to_marks_that_leave_the_faces_flush() {
    let app = App::open(Screen::PHONE);
    app.tap("home-frame");
    app.tap("question");
    app.tap("question-lap");
    app.enter("front_thickness", &["1", "page-16", "1/2", "close"]);
    app.enter("rear_thickness", &["1", "page-16", "7/16", "close"]);
    app.wait_for_words("answer-headline", "eleven sixteenths");
    app.wait_for_words("figure-lap_front", "thirteen sixteenths");
    app.wait_for_words("drawing", "cut 13/16 from the back");
    app.wait_for_words("drawing", "cut 11/16 from the show face");
    app.assert_quiet_console();
}

/// Rows with plus and minus, one taken out, one put in, and the text behind them; what is typed is there again
/// after the page was left and loaded anew.
#[test]
fn a_list_is_rows_and_its_text_stands_behind_them() {
    let app = App::open_at(
        Screen::PHONE,
        "#/cut?parts=leg:+4+@+40,+peg:+2+@+6&boards=96+at+10&scraps=&unit=in",
    );
    app.tap("more-parts-0");
    app.wait_for_text("count-parts-0", "5");
    app.picture("list-rows");
    app.tap("fewer-parts-1");
    app.wait_for_text("count-parts-1", "1");
    app.tap("fewer-parts-1");
    app.tap("keep-parts-1");
    app.tap("fewer-parts-1");
    app.tap("take-out-parts-1");
    app.wait_until_gone("field-parts-1");
    app.tap("add-parts");
    app.enter("parts-1", &["2", "0", "close"]);
    app.tap("as-text-parts");
    app.wait_for_value("field-parts", "leg: 5 @ 40, 20");
    app.tap("field-parts");
    app.type_keys("\u{e009}\u{e010}\u{e009}, rail 2 @ 30");
    app.tap("as-text-parts");
    // A name that runs into its count, mended in one tap.
    app.wait_for_words("problem-parts", "Put a colon after the name.");
    app.picture("list-colon");
    app.tap("way-out-parts");
    app.wait_for_value("name-parts-2", "rail");
    app.wait_for_text("count-parts-2", "2");
    app.go("#/");
    app.go("#/cut");
    app.wait_for_text("count-parts-2", "2");
    app.assert_no_sideways_scroll();
    app.assert_accessible();
    app.assert_quiet_console();
}

/// A slow phone and a quick thumb: each tap on the count and each letter of a name is taken, whatever is not drawn yet.
#[test]
fn taps_and_letters_at_once_in_a_row_are_all_taken() {
    let app =
        App::open_at(Screen::PHONE, "#/cut?parts=leg:+4+@+40&boards=96+at+10&scraps=&unit=in");
    app.wait_for("more-parts-0");
    app.slow_down(6);
    let (name, more) = (Act::Tap("name-parts-0"), Act::Tap("more-parts-0"));
    app.act(&[name, Act::Keys("s front"), more, more, more, name, Act::Keys("!"), more], 0);
    app.wait_for_text("count-parts-0", "8");
    app.wait_for_value("name-parts-0", "legs front!");
    app.slow_down(1);
    // The quickest there can be: nothing at all is drawn between the taps.
    app.script(
        "const button = document.querySelector('[data-testid=more-parts-0]');
         button.click(); button.click(); button.click();",
    );
    app.wait_for_text("count-parts-0", "11");
}

/// The widths of planks are rows like those of any list.
#[test]
fn a_list_of_lengths_is_rows_too() {
    let app =
        App::open_at(Screen::PHONE, "#/top?question=planks&find=top&planks=5+@+5+1/2&unit=in");
    app.wait_for_text("count-planks-0", "5");
    app.tap("add-planks");
    app.enter("planks-1", &["3", "page-16", "1/2", "close"]);
    app.tap("as-text-planks");
    app.wait_for_value("field-planks", "5 @ 5 1/2, 3 1/2");
    app.tap("as-text-planks");
    app.tap("fewer-planks-0");
    app.wait_for_text("count-planks-0", "4");
    app.tap("more-planks-0");
    app.picture("list-lengths");
    app.assert_no_sideways_scroll();
    app.assert_accessible();
    // Rows of a spreadsheet, with their columns named.
    app.tap("as-text-planks");
    app.script(
        "const text = document.querySelector('[data-testid=field-planks]');
         text.value = 'Qty\\tLength\\n2\\t5 1/2\\n1\\t3 1/2';
         text.dispatchEvent(new InputEvent('input', { bubbles: true }))",
    );
    app.wait_for_words("echo-planks", "3 1/2");
    app.assert_quiet_console();
}

/// What cannot be read in the text of a list is told once it is left, above what was pressed to leave it: that press is
/// of what it was on.
#[test]
fn a_press_that_leaves_the_text_of_a_list_is_of_what_it_was_on() {
    let app = App::open_at(Screen::PHONE, "#/cut?boards=96+at+10&scraps=44&unit=in");
    app.wait_for_text("count-scraps-0", "1");
    app.tap("as-text-boards");
    app.tap("field-boards");
    app.type_keys("cleat 6, :: 30 //");
    assert!(!app.shows("problem-boards"));
    app.tap("add-scraps");
    app.wait_for("field-scraps-1");
    app.wait_for("problem-boards");
    app.assert_quiet_console();
}

/// A count before an x is the count of its row, and one more is one more. What can be read two ways is asked.
#[test]
fn a_count_before_an_x_is_the_count_of_its_row() {
    let app = App::open_at(
        Screen::PHONE,
        "#/cut?parts=leg:+4+x+20,+rail:+33+x+4&boards=6+x+96+at+10&scraps=4+x+22&unit=in",
    );
    app.wait_for_text("count-parts-0", "4");
    app.wait_for_text("count-scraps-0", "4");
    app.wait_for_words("problem-parts", "can be read two ways");
    app.tap("way-out-parts");
    app.wait_for_text("count-parts-1", "4");
    app.tap("more-parts-0");
    app.wait_for_text("count-parts-0", "5");
    app.tap("more-scraps-0");
    app.wait_for_text("count-scraps-0", "5");
    // Rows that say it themselves are not said again; their text is.
    let echo = "return document.querySelector('[data-testid=echo-parts]').textContent";
    assert_eq!(app.script(echo), "");
    app.tap("as-text-parts");
    app.wait_for_words("echo-parts", "leg: 5 @ 20 in, rail: 4 @ 33 in");
    app.wait_for_value("field-parts", "leg: 5 @ 20, rail: 4 @ 33");
    // Of boards to buy it stands last: so many are at the yard.
    app.wait_for_words("problem-boards", "goes last");
    app.tap("way-out-boards");
    app.wait_for_text("count-boards-0", "6");
    app.assert_quiet_console();
}

/// Rows pasted from a spreadsheet stay rows when the text is left, and one tap on plus is one more; rows of which the
/// columns have no names stay text.
#[test]
fn rows_of_a_spreadsheet_stay_rows_when_the_text_is_left() {
    let app =
        App::open_at(Screen::PHONE, "#/cut?parts=leg:+4+@+40&boards=96+at+10&scraps=&unit=in");
    let paste = |rows: &str| {
        app.script(&format!(
            "const text = document.querySelector('[data-testid=field-parts]');
             text.value = '{rows}';
             text.dispatchEvent(new InputEvent('input', {{ bubbles: true }}))"
        ));
    };
    app.tap("as-text-parts");
    app.tap("field-parts");
    paste("4\\tleg\\t33,5\\n2\\trail\\t41");
    app.tap("as-text-parts");
    app.wait_for_words("problem-parts", "must name the columns");
    app.tap("field-parts");
    paste("Qty\\tName\\tLength\\n4\\tleg\\t33,5\\n2\\trail\\t41");
    app.tap("as-text-parts");
    app.wait_for_text("count-parts-0", "4");
    app.wait_for_value("name-parts-1", "rail");
    app.picture("list-pasted");
    app.tap("more-parts-1");
    app.wait_for_text("count-parts-1", "3");
    app.wait_for_words("echo-parts", "leg: 4 @ 33 1/2 in, rail: 3 @ 41 in");
    app.tap("as-text-parts");
    app.wait_for_value("field-parts", "leg: 4 @ 33.5, rail: 3 @ 41");
    app.assert_quiet_console();
}

/// Rows that were pasted, and a list that is longer than a link may be, are there again after a reload.
#[test]
fn what_was_pasted_in_a_list_is_there_after_a_reload() {
    let app = App::open_at(Screen::PHONE, "#/cut");
    let pasted = "Qty\tName\tLength\n4\tleg\t33\n2\trail\t41";
    for (text, in_address) in [(pasted, "parts=Qty"), (&"cedar ".repeat(3_000), "parts=cedar")] {
        app.tap("as-text-parts");
        app.tap("field-parts");
        app.script(&format!(
            "const text = document.querySelector('[data-testid=field-parts]');
             text.value = {};
             text.dispatchEvent(new InputEvent('input', {{ bubbles: true }}))",
            serde_json::json!(text)
        ));
        let is_there = format!("return location.hash.includes('{in_address}')");
        app.wait_until("the address has it", &is_there);
        app.reload();
        app.wait_for_start();
        app.tap("as-text-parts");
        app.wait_for_value("field-parts", text);
        assert!(!app.shows("link-trouble"));
        app.tap("as-text-parts");
        app.wait_for("add-parts");
    }
    app.assert_quiet_console();
}

/// A zone to keep out of is a row of two places, without a count; the text stands behind them.
#[test]
fn zones_to_keep_out_of_are_rows() {
    let app = App::open_at(
        Screen::PHONE,
        "#/spacing?mode=count&length=44&count=9&left_end=2&right_end=2&unit=in",
    );
    app.tap("field-keep_out-0");
    app.press(&["2", "1", "next", "2", "3", "close"]);
    app.wait_for_value("field-keep_out-1", "23");
    app.tap("add-keep_out");
    app.enter("keep_out-2", &["3", "0", "close"]);
    app.wait_for_words("problem-keep_out", "where it begins and ends");
    app.enter("keep_out-3", &["3", "1", "close"]);
    app.wait_until_gone("problem-keep_out");
    app.picture("zones-phone");
    app.tap("as-text-keep_out");
    app.wait_for_value("field-keep_out", "21 to 23, 30 to 31");
    app.tap("as-text-keep_out");
    app.tap("fewer-keep_out-1");
    app.tap("keep-keep_out-1");
    app.tap("fewer-keep_out-1");
    app.tap("take-out-keep_out-1");
    app.wait_until_gone("field-keep_out-2");
    app.wait_for_value("field-keep_out-0", "21");
    app.wait_for_value("field-keep_out-1", "23");
    app.assert_no_sideways_scroll();
    app.assert_quiet_console();
}

/// Who measures in millimetres buys litres, and reads a screw in millimetres beside its number.
#[test]
fn a_metric_shop_buys_cans_of_litres_and_reads_screws_in_millimetres() {
    let app = App::open_at(Screen::PHONE, "#/settings");
    app.tap("tape-mm");
    app.go("#/finish");
    app.wait_for_words("answer-headline", " L");
    for field in ["price_of_5", "price_of_2_5", "price_of_1", "price_of_0_75"] {
        app.wait_for(&format!("field-{field}"));
    }
    assert!(!app.shows("field-gallon_price"));
    app.enter("price_of_5", &["6", "0", "close"]);
    app.wait_for_words("answer-headline", "× 5 L");
    app.picture("finish-litres");
    app.assert_accessible();
    app.go("#/screws?question=length");
    app.wait_for_words("field-gauge", "No. 8 · 4.2 mm");
    app.picture("screws-millimetres");
    app.assert_quiet_console();
}

/// A row and a price that are typed half are there again, whatever way out is taken.
#[test]
fn what_is_typed_half_in_a_row_or_a_price_is_there_again() {
    let app = App::open_at(Screen::PHONE, "#/settings");
    app.tap("tape-mm");
    for (page, add, field, keys, half) in [
        (
            "#/top?question=planks&find=top&unit=mm",
            Some("add-planks"),
            "planks-1",
            ["8", "9", "point"],
            "89.",
        ),
        ("#/finish", None, "price_of_2_5", ["3", "4", "point"], "34."),
        ("#/cut", Some("add-scraps"), "scraps-1", ["9", "1", "point"], "91."),
    ] {
        let typed = format!("field-{field}");
        app.go("#/");
        app.go(page);
        app.wait_for_start();
        if let Some(add) = add {
            app.tap(add);
        }
        app.enter(field, &keys);
        app.wait_for_value(&typed, half);
        app.reload();
        app.wait_for_start();
        app.wait_for_value(&typed, half);
        let slug = page.split('?').next().expect("a page");
        app.script("history.back()");
        app.go("#/");
        app.go(slug);
        app.wait_for_value(&typed, half);
        let first = app.window();
        let second = app.open_window();
        app.turn_to(&first);
        app.close_window(&second);
        app.go(slug);
        app.wait_for_start();
        app.wait_for_value(&typed, half);
    }
    app.assert_quiet_console();
}
