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
            let mut at = (0.0, 0.0);
            for operation in Content::decode(&content).expect("operations").operations {
                let number =
                    |i: usize| f64::from(operation.operands[i].as_float().expect("a number"));
                let place = || (number(0) / 72.0, height - number(1) / 72.0);
                match operation.operator.as_str() {
                    "m" => at = place(),
                    "l" => {
                        lines.push((at, place()));
                        at = place();
                    }
                    _ => {}
                }
            }
            Read { width, height, lines }
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
        template_pdf(&stick("5", &["2 1/2"]), Paper::Letter, Tape::SIXTEENTHS).expect("prints");
    let cover = &read(&pdf)[0];
    let sides: Vec<f64> =
        cover.lines.iter().map(|((ax, ay), (bx, by))| (bx - ax).hypot(by - ay)).collect();
    assert_eq!(sides.len(), 4);
    assert!(sides.iter().all(|side| near(*side, 3.0)), "{sides:?}");
}

/// Sources: ANSI/ASME Y14.1 size A, 8.5 × 11 in; ISO 216 A4, 210 × 297 mm.
#[test]
fn pages_are_letter_or_a4_upright_or_on_their_side() {
    for (paper, short, long) in
        [(Paper::Letter, 8.5, 11.0), (Paper::A4, 210.0 / 25.4, 297.0 / 25.4)]
    {
        for page in read(&template_pdf(&stick("40", &[]), paper, Tape::SIXTEENTHS).expect("prints"))
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
        let pdf = template_pdf(&template, paper, Tape::SIXTEENTHS).expect("prints");
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

#[test]
fn what_is_too_large_or_has_no_size_is_refused() {
    let long = stick("1000", &[]);
    assert_eq!(template_pdf(&long, Paper::A4, Tape::SIXTEENTHS), Err(PaperProblem::TooManyPages));
    for (width, height) in [(0.0, 1.0), (1.0, -1.0), (f64::NAN, 1.0), (f64::INFINITY, 1.0)] {
        let template =
            Template { title: say!["t"], width, height, inks: vec![Ink::Hole(0.0, 0.0, 1.0)] };
        assert_eq!(template_pdf(&template, Paper::A4, Tape::SIXTEENTHS), Err(PaperProblem::NoSize));
    }
}

proptest! {
    /// Pages cover the whole template, and neighbours overlap by half an inch.
    #[test]
    fn pages_cover_everything_and_overlap(width in 0.1_f64..200.0, height in 0.1_f64..30.0, a4 in any::<bool>()) {
        let template = Template { title: say!["t"], width, height, inks: Vec::new() };
        let paper = if a4 { Paper::A4 } else { Paper::Letter };
        match tile(&template, paper) {
            Err(problem) => prop_assert_eq!(problem, PaperProblem::TooManyPages),
            Ok(pages) => {
                let last = pages.pages.last().expect("a page");
                prop_assert!(last.x + pages.area_width >= width - 1e-9);
                prop_assert!(last.y + pages.area_height >= height - 1e-9);
                for pair in pages.pages.windows(2).filter(|pair| pair[0].row == pair[1].row) {
                    prop_assert!((pair[0].x + pages.area_width - pair[1].x - 0.5).abs() < 1e-9);
                }
            }
        }
    }
}
