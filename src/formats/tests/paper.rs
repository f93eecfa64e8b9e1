//! Templates read back by an independent PDF reader: pages, the check square, and every mark to
//! 1/64 in.

use lopdf::content::Content;
use lopdf::{Document, Object};
use proptest::prelude::*;
use reckoner_core::measure::{Length, Tape, length};
use reckoner_core::paper::{Ink, Paper, PaperProblem, Template, story_stick, tile};
use reckoner_core::say;
use reckoner_formats::template_pdf;

const SIXTY_FOURTH: f64 = 1.0 / 64.0;

/// The straight lines of a page in inches from its left top corner, with its size.
struct Read {
    width: f64,
    height: f64,
    lines: Vec<((f64, f64), (f64, f64))>,
    /// Those of the lines that are dashed.
    dashed: Vec<((f64, f64), (f64, f64))>,
    /// Left and right edges of what is drawn in curves.
    circles: Vec<(f64, f64)>,
    /// What is written, with where it begins on its base line.
    words: Vec<(f64, f64, String)>,
    /// What the drawing is kept inside of: left, top, right and bottom.
    clips: Vec<[f64; 4]>,
}

/// Left and right edge of a circle that is drawn through these places: all are as far from its middle.
fn circle(places: &[(f64, f64)]) -> (f64, f64) {
    let count = places.len() as f64;
    let (x, y) = places.iter().fold((0.0, 0.0), |(x, y), it| (x + it.0 / count, y + it.1 / count));
    let radius = places.iter().map(|it| (it.0 - x).hypot(it.1 - y) / count).sum::<f64>();
    for it in places {
        assert!(near((it.0 - x).hypot(it.1 - y), radius), "no circle: {places:?}");
    }
    (x - radius, x + radius)
}

fn read(pdf: &[u8]) -> Vec<Read> {
    let document = Document::load_mem(pdf).expect("a PDF");
    document
        .get_pages()
        .into_values()
        .map(|page| {
            let dictionary = document.get_dictionary(page).expect("a page");
            let media_box = dictionary.get(b"MediaBox").and_then(Object::as_array).expect("a size");
            let side = |i: usize| f64::from(media_box[i].as_float().expect("a number")) / 72.0;
            let (width, height) = (side(2), side(3));
            let content = document.get_page_content(page);
            let mut lines = Vec::new();
            let mut circles: Vec<(f64, f64)> = Vec::new();
            let (mut round, mut clips) = (Vec::new(), Vec::new());
            let (mut dashed, mut is_dashed) = (Vec::new(), false);
            let mut words = Vec::new();
            let mut at = (0.0, 0.0);
            for operation in Content::decode(&content).expect("operations").operations {
                let number =
                    |i: usize| f64::from(operation.operands[i].as_float().expect("a number"));
                let place = || (number(0) / 72.0, height - number(1) / 72.0);
                match operation.operator.as_str() {
                    "m" => at = place(),
                    "d" => {
                        let dashes = operation.operands[0].as_array().expect("dashes and gaps");
                        is_dashed = !dashes.is_empty();
                    }
                    "Td" => at = place(),
                    "Tj" => {
                        let text = operation.operands[0].as_str().expect("words");
                        words.push((at.0, at.1, String::from_utf8_lossy(text).into_owned()));
                    }
                    "l" => {
                        lines.push((at, place()));
                        if is_dashed {
                            dashed.push((at, place()));
                        }
                        at = place();
                    }
                    "c" => {
                        let [(ax, ay), (bx, by), end] =
                            [0, 2, 4].map(|i| (number(i) / 72.0, height - number(i + 1) / 72.0));
                        // Where half of the curve is drawn.
                        let x = (at.0 + 3.0 * (ax + bx) + end.0) / 8.0;
                        let y = (at.1 + 3.0 * (ay + by) + end.1) / 8.0;
                        round.extend([(x, y), end]);
                        at = end;
                    }
                    "S" if !round.is_empty() => circles.push(circle(&std::mem::take(&mut round))),
                    "re" => {
                        let (left, bottom) = place();
                        clips.push([
                            left,
                            bottom - number(3) / 72.0,
                            left + number(2) / 72.0,
                            bottom,
                        ]);
                    }
                    _ => {}
                }
            }
            Read { width, height, lines, dashed, circles, words, clips }
        })
        .collect()
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() < SIXTY_FOURTH / 4.0
}

fn stick(overall: &str, marks: &[&str]) -> Template {
    let marks: Vec<Length> = marks.iter().map(|m| length(m).expect("a mark")).collect();
    story_stick(say!["story stick"], length(overall).expect("a length"), &marks, Tape::SIXTEENTHS)
}

#[test]
fn the_cover_has_a_square_of_three_inches() {
    let pdf =
        template_pdf(&stick("5", &["2 1/2"]), Paper::Letter, Tape::SIXTEENTHS, "").expect("prints");
    let cover = &read(&pdf)[0];
    let sides: Vec<f64> =
        cover.lines.iter().map(|((ax, ay), (bx, by))| (bx - ax).hypot(by - ay)).collect();
    assert_eq!(sides.len(), 4);
    assert!(sides.iter().all(|side| near(*side, 3.0)), "{sides:?}");
}

/// The drawing is kept inside of its area, and of half the width of a line beyond it.
#[test]
fn nothing_is_drawn_beyond_the_area_of_a_page() {
    let template = stick("30", &["2 1/2"]);
    for paper in [Paper::Letter, Paper::A4] {
        let pages = tile(&template, paper).expect("lays out");
        let pdf = template_pdf(&template, paper, Tape::SIXTEENTHS, "").expect("prints");
        let (right, bottom) = (pages.left + pages.area_width, pages.top + pages.area_height);
        let area = [pages.left, pages.top, right, bottom];
        for page in &read(&pdf)[1..] {
            let [clip] = page.clips[..] else { panic!("{:?}", page.clips) };
            let beyond =
                [area[0] - clip[0], area[1] - clip[1], clip[2] - area[2], clip[3] - area[3]];
            assert!(beyond.iter().all(|by| near(*by, SIXTY_FOURTH)), "{beyond:?}");
        }
    }
}

/// What is written of the square stands in it, above its lower side.
#[test]
fn the_square_says_how_large_it_is() {
    let pdf = template_pdf(&stick("5", &[]), Paper::A4, Tape::SIXTEENTHS, "").expect("prints");
    let cover = &read(&pdf)[0];
    let places = cover.lines.iter().flat_map(|(from, to)| [*from, *to]);
    let (left, bottom) = places.fold((f64::MAX, f64::MIN), |(x, y), it| (x.min(it.0), y.max(it.1)));
    let (x, y, _) = cover.words.iter().find(|(.., it)| it == "3 in").expect("its size");
    assert!(*x > left && *x < left + 1.0, "{x} and not right of {left}");
    assert!(*y < bottom && *y > bottom - 1.0, "{y} and not above {bottom}");
}

/// Where pages meet, each has a dashed line, and laid on each other the two are one line over the whole picture: in the
/// middle of the half inch that both show. There is none where no page follows.
#[test]
fn pages_meet_at_their_dashed_lines() {
    let inks = vec![Ink::Hole(12.0, 14.0, 1.0)];
    let template = Template { title: say!["t"], width: 24.0, height: 28.0, inks };
    for paper in [Paper::Letter, Paper::A4] {
        let pages = tile(&template, paper).expect("lays out");
        assert!(pages.rows >= 3 && pages.columns >= 3, "{} × {}", pages.rows, pages.columns);
        let pdf = template_pdf(&template, paper, Tape::SIXTEENTHS, "").expect("prints");
        for (page, drawn) in pages.pages.iter().zip(&read(&pdf)[1..]) {
            let (across, down) = (pages.area_width - 0.5, pages.area_height - 0.5);
            // Between the columns and rows before and after it, counted from the picture's own corner.
            let x_of = |column: usize| across * column as f64 + 0.25;
            let y_of = |row: usize| down * row as f64 + 0.25;
            let mut expected = Vec::new();
            let inner = |at: usize, count: usize| {
                [at, at + 1].into_iter().filter(move |it| *it > 0 && *it < count)
            };
            expected.extend(inner(page.column, pages.columns).map(|it| (x_of(it), true)));
            expected.extend(inner(page.row, pages.rows).map(|it| (y_of(it), false)));
            let found = drawn.dashed.iter().map(|((ax, ay), (bx, by))| {
                let is_upright = near(*ax, *bx);
                let long = (bx - ax).hypot(by - ay);
                assert!(near(long, if is_upright { pages.area_height } else { pages.area_width }));
                if is_upright {
                    (ax - pages.left + page.x, true)
                } else {
                    (ay - pages.top + page.y, false)
                }
            });
            let mut found: Vec<(f64, bool)> = found.collect();
            for wanted in expected {
                let at = found.iter().position(|it| near(it.0, wanted.0) && it.1 == wanted.1);
                found.remove(at.unwrap_or_else(|| panic!("{wanted:?} is not in {found:?}")));
            }
            assert_eq!(found, [], "row {}, column {}", page.row, page.column);
        }
    }
}

/// Sources: ANSI/ASME Y14.1 size A, 8.5 × 11 in; ISO 216 A4, 210 × 297 mm.
#[test]
fn pages_are_letter_or_a4_upright_or_on_their_side() {
    for (paper, short, long) in
        [(Paper::Letter, 8.5, 11.0), (Paper::A4, 210.0 / 25.4, 297.0 / 25.4)]
    {
        for page in
            read(&template_pdf(&stick("40", &[]), paper, Tape::SIXTEENTHS, "").expect("prints"))
        {
            let mut sides = [page.width, page.height];
            sides.sort_by(f64::total_cmp);
            assert!(near(sides[0], short) && near(sides[1], long), "{sides:?}");
        }
    }
}

/// Every mark of a long stick is found on some page, at its place on the whole stick to 1/64 in,
/// and every page but the cover has a line of 3 in to check.
#[test]
fn every_mark_lands_where_it_should_over_all_pages() {
    let marks = ["2", "8 5/8", "15 3/16", "21 13/16", "28 3/8", "35"];
    let template = stick("37", &marks);
    for paper in [Paper::Letter, Paper::A4] {
        let pages = tile(&template, paper).expect("lays out");
        let pdf = template_pdf(&template, paper, Tape::SIXTEENTHS, "").expect("prints");
        let read = read(&pdf);
        assert_eq!(read.len(), pages.pages.len() + 1);
        for mark in marks {
            let x = length(mark).expect("a mark").to_f64();
            let found = read[1..].iter().zip(&pages.pages).any(|(page, place)| {
                let wanted = pages.left + x - place.x;
                wanted >= pages.left
                    && wanted <= pages.left + pages.area_width
                    && page.lines.iter().any(|((ax, ay), (bx, by))| {
                        near(*ax, wanted) && near(*bx, wanted) && near((by - ay).abs(), 0.9)
                    })
            });
            assert!(found, "{mark} on {paper:?}");
        }
        for page in &read[1..] {
            let is_check = |((ax, ay), (bx, by)): &((f64, f64), (f64, f64))| {
                near((bx - ax).hypot(by - ay), 3.0)
            };
            assert!(page.lines.iter().any(is_check));
        }
    }
}

fn template_of(slug: &str, pairs: &[(&str, &str)]) -> Template {
    let calculator = reckoner_core::calculators::find(slug).expect("a calculator");
    let pairs = pairs.iter().map(|(id, text)| (*id, (*text).to_owned()));
    let entries = reckoner_core::sheet::Entries::from_pairs(pairs);
    let bench = reckoner_core::sheet::Bench::default();
    let sheet = calculator.sheet(&entries, &bench, &reckoner_core::measure::text::NoNames);
    sheet.answer.and_then(|answer| answer.template).expect("a template")
}

/// Case F1 of the project's rules of the trade ([WH]): 37 long, 2 in from each end, at most 8
/// apart; the marks stand at 2, 8.6, 15.2, 21.8, 28.4 and 35.
#[test]
fn the_stick_of_the_spacing_calculator_has_its_marks() {
    let pairs = [("length", "37"), ("greatest_gap", "8"), ("left_end", "2"), ("right_end", "2")];
    let template = template_of("spacing", &pairs);
    let marks = [2.0, 8.6, 15.2, 21.8, 28.4, 35.0];
    for paper in [Paper::Letter, Paper::A4] {
        let pages = tile(&template, paper).expect("lays out");
        let read = read(&template_pdf(&template, paper, Tape::SIXTEENTHS, "").expect("prints"));
        let mut found: Vec<f64> = Vec::new();
        for (page, place) in read[1..].iter().zip(&pages.pages) {
            let upright = |((ax, ay), (bx, by)): &&((f64, f64), (f64, f64))| {
                near(*ax, *bx) && near((by - ay).abs(), 0.9)
            };
            let on_stick = |((x, _), _): &((f64, f64), (f64, f64))| x - pages.left + place.x;
            found.extend(page.lines.iter().filter(upright).map(on_stick));
        }
        found.sort_by(f64::total_cmp);
        found.dedup_by(|a, b| near(*a, *b));
        assert_eq!(found.len(), marks.len(), "{found:?}");
        assert!(found.iter().zip(marks).all(|(a, b)| near(*a, b)), "{found:?}");
    }
}

/// The hole of a left part 5 in from the front and 1 5/8 in from the top, and the mirrored one of
/// the right part, as crosses on the page; their circles are as wide as the bit.
#[test]
fn the_holes_of_the_dowel_calculator_are_where_they_are_drilled() {
    let pairs = [
        ("dowel", "1.02"),
        ("part_height", "3 1/4"),
        ("from_top", "1 5/8"),
        ("part_length", "17"),
        ("from_front", "5"),
    ];
    let template = template_of("dowel", &pairs);
    for paper in [Paper::Letter, Paper::A4] {
        let pages = tile(&template, paper).expect("lays out");
        assert_eq!(pages.pages.len(), 1, "both parts stand on one page");
        let read = read(&template_pdf(&template, paper, Tape::SIXTEENTHS, "").expect("prints"));
        let page = &read[1];
        // A cross reaches a quarter of an inch beyond the hole of 1 1/32.
        let arm = 1.0 + 1.0 / 32.0 + 0.5;
        let crosses: Vec<(f64, f64)> = page
            .lines
            .iter()
            .filter(|((ax, ay), (bx, by))| near(*ay, *by) && near(bx - ax, arm))
            .map(|((ax, ay), (bx, _))| ((ax + bx) / 2.0 - pages.left, ay - pages.top))
            .collect();
        let [(left_x, left_y), (right_x, right_y)] = crosses[..] else { panic!("{crosses:?}") };
        assert!(near(left_x, 5.0) && near(left_y, 1.625), "{crosses:?}");
        assert!(near(template.width - right_x, 5.0), "{crosses:?}");
        assert!(near(right_y - left_y, 3.25 + 0.5), "{crosses:?}");
        let widths: Vec<f64> = page.circles.iter().map(|(from, to)| to - from).collect();
        assert!(
            widths.len() == 2 && widths.iter().all(|w| near(*w, 1.0 + 1.0 / 32.0)),
            "{widths:?}"
        );
    }
}

/// A line on the edge of the drawing is half a line wide beyond it, and is not cut off there.
#[test]
fn a_line_on_the_edge_is_whole() {
    let pdf = template_pdf(&stick("5", &[]), Paper::Letter, Tape::SIXTEENTHS, "").expect("prints");
    let document = Document::load_mem(&pdf).expect("a PDF");
    let page = *document.get_pages().get(&2).expect("a page after the cover");
    let content = Content::decode(&document.get_page_content(page)).expect("operations");
    let number = |object: &Object| f64::from(object.as_float().expect("a number"));
    let clip = content.operations.iter().find(|it| it.operator == "re").expect("a clip");
    let left = number(&clip.operands[0]) / 72.0;
    let thickest = content.operations.iter().filter(|it| it.operator == "w");
    let thickest = thickest.map(|it| number(&it.operands[0]) / 72.0).fold(0.0, f64::max);
    assert!(left <= 0.5 - thickest / 2.0 && left > 0.45, "{left}");
}

#[test]
fn what_is_too_large_or_has_no_size_is_refused() {
    let long = stick("1000", &[]);
    assert_eq!(
        template_pdf(&long, Paper::A4, Tape::SIXTEENTHS, ""),
        Err(PaperProblem::TooManyPages)
    );
    for (width, height) in [(0.0, 1.0), (1.0, -1.0), (f64::NAN, 1.0), (f64::INFINITY, 1.0)] {
        let template =
            Template { title: say!["t"], width, height, inks: vec![Ink::Hole(0.0, 0.0, 1.0)] };
        assert_eq!(
            template_pdf(&template, Paper::A4, Tape::SIXTEENTHS, ""),
            Err(PaperProblem::NoSize)
        );
    }
}

proptest! {
    /// Pages cover the whole template, and neighbours overlap by half an inch.
    #[test]
    fn pages_cover_everything_and_overlap(width in 0.1_f64..200.0, height in 0.1_f64..30.0, a4 in any::<bool>()) {
        let template = Template { title: say!["t"], width, height, inks: Vec::new() };
        let paper = if a4 { Paper::A4 } else { Paper::Letter };
        let pages = tile(&template, paper);
        prop_assert!(pages.is_ok() || pages == Err(PaperProblem::TooManyPages));
        prop_assume!(pages.is_ok(), "too many pages");
        let pages = pages.expect("it was laid out");
        let last = pages.pages.last().expect("a page");
        prop_assert!(last.x + pages.area_width >= width - 1e-9);
        prop_assert!(last.y + pages.area_height >= height - 1e-9);
        for pair in pages.pages.windows(2).filter(|pair| pair[0].row == pair[1].row) {
            prop_assert!((pair[0].x + pages.area_width - pair[1].x - 0.5).abs() < 1e-9);
        }
    }
}

/// A template of example sizes says so on every page.
#[test]
fn paper_tells_of_our_examples() {
    let words = |noted: &str| {
        let template = stick("5", &[]);
        let pdf = template_pdf(&template, Paper::Letter, Tape::SIXTEENTHS, noted).expect("prints");
        let document = Document::load_mem(&pdf).expect("a PDF");
        let page = |page| {
            let content = document.get_page_content(page);
            let operations = Content::decode(&content).expect("operations").operations;
            let shown = operations.iter().filter(|it| it.operator == "Tj");
            let text =
                |it: &Object| String::from_utf8_lossy(it.as_str().expect("words")).into_owned();
            shown.map(|it| text(&it.operands[0])).collect::<Vec<_>>().join("\n")
        };
        document.get_pages().into_values().map(page).collect::<Vec<_>>()
    };
    let noted = "from 1 example size: length";
    let pages = words(noted);
    assert!(pages[0].contains(noted), "{}", pages[0]);
    assert!(pages[1..].iter().all(|page| page.contains("example")), "{pages:?}");
    assert!(words("").iter().all(|page| !page.contains("example")));
}
