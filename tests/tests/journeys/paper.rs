//! What a job looks like on paper: printed by the browser, read back by a general PDF reader.

use lopdf::{Document, Object};
use reckoner_e2e::{App, Screen};

use crate::job::demo;
use crate::shelf::cut_the_leg_thin;

/// Width and height in centimetres: ANSI/ASME Y14.1 size A, and ISO 216 A4.
pub(crate) const PAPERS: [(&str, f64, f64); 2] = [("letter", 21.59, 27.94), ("a4", 21.0, 29.7)];

/// Prints the page, checks the size of every sheet, and gives the words of each.
pub(crate) fn printed(
    app: &App,
    name: &str,
    (paper, width, height): (&str, f64, f64),
) -> Vec<String> {
    let pdf = app.printed(width, height);
    let file = app.picture(&format!("{name}-{paper}")).with_extension("pdf");
    std::fs::write(&file, &pdf).expect("writing the PDF");
    let document = Document::load_mem(&pdf).expect("a PDF");
    let pages = document.get_pages();
    for id in pages.values() {
        let page = document.get_dictionary(*id).expect("a page");
        let sides = page.get(b"MediaBox").and_then(Object::as_array).expect("a size");
        let side = |i: usize| f64::from(sides[i].as_float().expect("a number")) / 72.0 * 2.54;
        assert!((side(2) - width).abs() < 0.05 && (side(3) - height).abs() < 0.05, "{sides:?}");
    }
    let words = |number: &u32| {
        let text = document.extract_text(&[*number]).expect("its words");
        // The font joins some letters.
        let text =
            text.replace('\u{fb00}', "ff").replace('\u{fb01}', "fi").replace('\u{fb02}', "fl");
        text.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    pages.keys().map(words).collect()
}

#[test]
fn the_shop_card_prints_on_letter_and_a4() {
    let app = demo();
    cut_the_leg_thin(&app);
    app.tap("back");
    app.section("hand-on");
    app.tap("to-card");
    app.wait_for("card");
    app.assert_accessible();
    for screen in Screen::ALL {
        app.resize(screen);
        app.assert_no_sideways_scroll();
    }
    app.resize(Screen::PHONE);
    for paper in PAPERS {
        let pages = printed(&app, "card", paper);
        assert!((2..=9).contains(&pages.len()), "{} pages", pages.len());
        // Where a heading takes two lines, a PDF need not have the space between them.
        let unspaced = |text: &str| text.replace(' ', "");
        let all = unspaced(&pages.join(" "));
        for wanted in [
            "Potting bench (demo, invented)",
            "Date",
            "long rail",
            "The tape says",
            "Measure first.",
            "0 of 4 cut",
            "Build order",
            "Dry fit, and measure frame inside",
            "Riving knife on",
            "From above",
            "Half of the long rail",
        ] {
            assert!(all.contains(&unspaced(wanted)), "{wanted} is not on {}: {all}", paper.0);
        }
        for hidden in ["Print", "choose the paper", "forty-one"] {
            assert!(!all.contains(&unspaced(hidden)), "{hidden} is on {}", paper.0);
        }
    }
    app.assert_quiet_console();
}

#[test]
fn labels_print_one_for_each_piece() {
    let app = demo();
    app.section("hand-on");
    app.tap("to-labels");
    app.wait_for("labels");
    app.assert_accessible();
    app.assert_no_sideways_scroll();
    let count = app.script("return document.querySelectorAll('.label').length");
    let count = count.as_u64().expect("a count") as usize;
    assert!(count > 20, "{count} labels");
    for paper in PAPERS {
        let pages = printed(&app, "labels", paper);
        let all = pages.join(" ");
        assert_eq!(all.matches("this way up").count(), count, "on {}", paper.0);
        for wanted in ["leg 4 of 4", "LEFT", "RIGHT", "Show face: best face up"] {
            assert!(all.contains(wanted), "{wanted} is not on {}: {all}", paper.0);
        }
        // Two columns of five or more: a label is never so large that paper is wasted.
        assert!(pages.len() <= count.div_ceil(10), "{} pages of {count} labels", pages.len());
    }
    app.assert_quiet_console();
}

#[test]
fn a_template_is_offered_where_its_answer_stands() {
    let app = App::open(Screen::PHONE);
    app.tap("home-spacing");
    app.tap("to-print");
    app.wait_for("template-letter");
    assert!(app.text("template-title").contains("Story stick"));
    app.assert_accessible();
    app.assert_no_sideways_scroll();
    let folder = crate::film::files_of("template");
    app.save_files_to(&folder);
    app.tap("template-a4");
    let pdf = std::fs::read(app.saved_file(&folder)).expect("the file");
    let document = Document::load_mem(&pdf).expect("a PDF");
    let cover = document.extract_text(&[1]).expect("its words");
    assert!(cover.contains("Both sides must be 3 in"), "{cover}");
    assert!(document.get_pages().len() > 4, "43 1/2 in over A4 pages");
    // An answer without a template leads to no empty page.
    app.go("#/print/spacing?length=no");
    app.wait_for("template-trouble");
    app.assert_quiet_console();
}
