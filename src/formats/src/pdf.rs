//! Templates as PDF: vector pages at full size, one unit a 72nd of an inch.
//!
//! The first page is a cover with a square to measure, since a printer that fits pages to its
//! paper spoils every template.

use reckoner_core::measure::Tape;
use reckoner_core::paper::{Ink, Page, Pages, Paper, PaperProblem, Template, tile};

use crate::pdf_file::{Content, file};

/// PDF units of one inch.
const INCH: f64 = 72.0;

/// How far a drawing may reach beyond its area, in inches, so that a line on its edge is whole.
const EDGE: f64 = 1.0 / 64.0;

/// Side of the square to measure, in inches.
const CHECK: f64 = 3.0;

/// A template as a PDF document. `noted` says which sizes of it are examples, or nothing.
///
/// # Errors
///
/// [`PaperProblem`] when it cannot be laid out.
pub fn template_pdf(
    template: &Template,
    paper: Paper,
    tape: Tape,
    noted: &str,
) -> Result<Vec<u8>, PaperProblem> {
    let pages = tile(template, paper)?;
    let title = template.title.on(tape);
    let mut contents = vec![cover(&pages, &title, noted)];
    contents.extend(pages.pages.iter().map(|page| {
        let title = if noted.is_empty() { title.clone() } else { format!("{title}, example") };
        sheet(template, &pages, page, &title)
    }));
    Ok(file((points(pages.width), points(pages.height)), &contents))
}

fn points(inches: f64) -> f64 {
    inches * INCH
}

/// Draws on one page: places in inches from its left top corner.
struct Pen<'a> {
    content: Content,
    pages: &'a Pages,
}

impl Pen<'_> {
    fn at(&self, (x, y): (f64, f64)) -> (f64, f64) {
        (points(x), points(self.pages.height - y))
    }

    fn line(&mut self, places: &[(f64, f64)], width: f64, dashes: &[f64]) {
        let mut places = places.iter().map(|place| self.at(*place)).collect::<Vec<_>>().into_iter();
        let Some((x, y)) = places.next() else { return };
        self.content.put(&[width], "w");
        self.content.dashes(dashes);
        self.content.put(&[x, y], "m");
        for (x, y) in places {
            self.content.put(&[x, y], "l");
        }
        self.content.put(&[], "S");
    }

    fn square(&mut self, left: f64, top: f64, side: f64) {
        let (right, bottom) = (left + side, top + side);
        self.line(
            &[(left, top), (right, top), (right, bottom), (left, bottom), (left, top)],
            0.75,
            &[],
        );
    }

    fn words(&mut self, place: (f64, f64), size: f64, words: &str) {
        let place = self.at(place);
        self.content.words(place, size, &latin(words));
    }
}

/// In the letters of the font that every PDF reader has; others become a question mark.
fn latin(words: &str) -> Vec<u8> {
    words
        .chars()
        .map(|c| match c {
            '–' | '−' => b'-',
            '’' => b'\'',
            '“' | '”' => b'"',
            c => u8::try_from(u32::from(c)).unwrap_or(b'?'),
        })
        .collect()
}

fn cover(pages: &Pages, title: &str, noted: &str) -> Content {
    let mut pen = Pen { content: Content::default(), pages };
    let left = pages.left;
    pen.words((left, pages.top + 0.3), 18.0, title);
    pen.words((left, pages.top + 0.52), 11.0, noted);
    let (rows, columns) = (pages.rows, pages.columns);
    let count = pages.pages.len();
    let follow = match (count, rows) {
        (1, _) => "One page follows.".to_owned(),
        (_, 1) => format!("{count} pages follow, side by side. Each overlaps the next by 1/2 in."),
        _ => format!(
            "{count} pages follow, in {rows} rows of {columns}. Each overlaps the next by 1/2 in."
        ),
    };
    for (line, words) in (0..).zip([
        "Print at 100 %, actual size. Do not fit to the page.".to_owned(),
        follow,
        "Lay the dashed lines on each other, tape the pages, then cut or prick through.".to_owned(),
        "Measure this square. Both sides must be 3 in. If they are not, do not use the pages."
            .to_owned(),
    ]) {
        pen.words((left, pages.top + 0.75 + 0.25 * f64::from(line)), 11.0, &words);
    }
    let top = pages.top + 1.9;
    pen.square(left, top, CHECK);
    pen.words((left + 0.1, top + CHECK - 0.12), 11.0, "3 in");
    pen.content
}

fn sheet(template: &Template, pages: &Pages, page: &Page, title: &str) -> Content {
    let mut pen = Pen { content: Content::default(), pages };
    let (left, top) = (pages.left, pages.top);
    let (right, bottom) = (left + pages.area_width, top + pages.area_height);
    let place = |(x, y): (f64, f64)| (left + x - page.x, top + y - page.y);
    pen.content.put(&[], "q");
    let (x, y) = pen.at((left - EDGE, bottom + EDGE));
    let beyond = 2.0 * EDGE;
    let area = [x, y, points(pages.area_width + beyond), points(pages.area_height + beyond)];
    pen.content.put(&area, "re");
    pen.content.put(&[], "W n");
    for ink in &template.inks {
        match ink {
            Ink::Cut(places) => {
                let places: Vec<_> = places.iter().map(|p| place(*p)).collect();
                pen.line(&places, 0.75, &[]);
            }
            Ink::Guide(places) => {
                let places: Vec<_> = places.iter().map(|p| place(*p)).collect();
                pen.line(&places, 0.4, &[6.0, 3.0]);
            }
            Ink::Hole(x, y, diameter) => {
                let (x, y) = place((*x, *y));
                circle(&mut pen, (x, y), diameter / 2.0);
                let reach = diameter / 2.0 + 0.25;
                pen.line(&[(x - reach, y), (x + reach, y)], 0.3, &[]);
                pen.line(&[(x, y - reach), (x, y + reach)], 0.3, &[]);
            }
            Ink::Words(x, y, words) => pen.words(place((*x, *y)), 9.0, words),
        }
    }
    pen.content.put(&[], "Q");
    overlaps(&mut pen, pages, page, (left, top, right, bottom));
    let name = format!("row {}, page {} of {}", page.row + 1, page.column + 1, pages.columns);
    pen.words((left, bottom + 0.25), 9.0, &format!("{title}: {name}"));
    let y = bottom + 0.45;
    pen.line(&[(left, y - 0.06), (left, y + 0.06)], 0.75, &[]);
    pen.line(&[(left, y), (left + CHECK, y)], 0.75, &[]);
    pen.line(&[(left + CHECK, y - 0.06), (left + CHECK, y + 0.06)], 0.75, &[]);
    pen.words((left + CHECK + 0.1, y + 0.04), 9.0, "this line must be 3 in");
    pen.content
}

/// Dashed lines where this page meets its neighbours.
fn overlaps(
    pen: &mut Pen,
    pages: &Pages,
    page: &Page,
    (left, top, right, bottom): (f64, f64, f64, f64),
) {
    let dashes = [2.0, 2.0];
    let mut joint = |from: (f64, f64), to: (f64, f64)| pen.line(&[from, to], 0.4, &dashes);
    if page.column > 0 {
        joint((left + pages.overlap / 2.0, top), (left + pages.overlap / 2.0, bottom));
    }
    if page.column + 1 < pages.columns {
        joint((right - pages.overlap / 2.0, top), (right - pages.overlap / 2.0, bottom));
    }
    if page.row > 0 {
        joint((left, top + pages.overlap / 2.0), (right, top + pages.overlap / 2.0));
    }
    if page.row + 1 < pages.rows {
        joint((left, bottom - pages.overlap / 2.0), (right, bottom - pages.overlap / 2.0));
    }
}

/// A circle of four cubic curves; the well-known factor 4/3 (√2 - 1) keeps it within 0.03 % of
/// its radius.
fn circle(pen: &mut Pen, (x, y): (f64, f64), radius: f64) {
    let handle = radius * 4.0 / 3.0 * (core::f64::consts::SQRT_2 - 1.0);
    let at = |pen: &Pen, dx: f64, dy: f64| pen.at((x + dx, y + dy));
    pen.content.put(&[0.75], "w");
    pen.content.dashes(&[]);
    let (sx, sy) = at(pen, radius, 0.0);
    pen.content.put(&[sx, sy], "m");
    for [(ax, ay), (bx, by), (cx, cy)] in [
        [(radius, handle), (handle, radius), (0.0, radius)],
        [(-handle, radius), (-radius, handle), (-radius, 0.0)],
        [(-radius, -handle), (-handle, -radius), (0.0, -radius)],
        [(handle, -radius), (radius, -handle), (radius, 0.0)],
    ] {
        let ((ax, ay), (bx, by), (cx, cy)) = (at(pen, ax, ay), at(pen, bx, by), at(pen, cx, cy));
        pen.content.put(&[ax, ay, bx, by, cx, cy], "c");
    }
    pen.content.put(&[], "S");
}
