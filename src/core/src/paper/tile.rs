//! [`tile`]: a template over several sheets, which overlap so that they can be joined.

use core::fmt;

use super::Template;

/// Most pages of one template, the cover not counted.
pub const MOST_PAGES: usize = 60;

/// Border that printers leave blank, on each side, in inches: common practice, no source.
const MARGIN: f64 = 0.5;

/// Room at the foot of a page for its name and its check line.
const FOOT: f64 = 0.6;

/// How far neighbouring pages overlap, in inches.
const OVERLAP: f64 = 0.5;

/// A sheet of paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paper {
    /// 8 1/2 × 11 in.
    Letter,
    /// 210 × 297 mm (ISO 216).
    A4,
}

impl Paper {
    /// Width and height upright, in inches.
    #[must_use]
    pub fn size(self) -> (f64, f64) {
        match self {
            Paper::Letter => (8.5, 11.0),
            Paper::A4 => {
                let millimetre = crate::measure::Unit::Millimetre.in_inches().to_f64();
                (210.0 * millimetre, 297.0 * millimetre)
            }
        }
    }
}

/// A template laid out over pages.
#[derive(Clone, Debug, PartialEq)]
pub struct Pages {
    /// Width of a page as it lies, in inches.
    pub width: f64,
    /// Height of a page as it lies, in inches.
    pub height: f64,
    /// Left and top of the drawing area on every page.
    pub left: f64,
    /// Top of the drawing area on every page.
    pub top: f64,
    /// Width of the drawing area.
    pub area_width: f64,
    /// Height of the drawing area.
    pub area_height: f64,
    /// How far the next page repeats this one.
    pub overlap: f64,
    /// Rows of pages.
    pub rows: usize,
    /// Pages in a row.
    pub columns: usize,
    /// Row by row, from the top left.
    pub pages: Vec<Page>,
}

/// One page of a template.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Page {
    /// From 0.
    pub row: usize,
    /// From 0.
    pub column: usize,
    /// Place on the template that lies in the left top corner of the drawing area.
    pub x: f64,
    /// The same, down.
    pub y: f64,
}

/// A template that cannot be printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PaperProblem {
    /// It would take more than [`MOST_PAGES`] pages.
    TooManyPages,
    /// It has no size.
    NoSize,
}

impl fmt::Display for PaperProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            PaperProblem::TooManyPages => write!(
                f,
                "This template would take more than {MOST_PAGES} pages. Print a shorter piece, or mark it with a tape."
            ),
            PaperProblem::NoSize => f.write_str("There is nothing to print here."),
        }
    }
}

impl core::error::Error for PaperProblem {}

/// Lays a template out, upright or on the side, whichever takes fewer pages.
///
/// # Errors
///
/// [`PaperProblem`].
pub fn tile(template: &Template, paper: Paper) -> Result<Pages, PaperProblem> {
    let drawable = |size: f64| size.is_finite() && size > 0.0;
    if !drawable(template.width) || !drawable(template.height) {
        return Err(PaperProblem::NoSize);
    }
    let (short, long) = paper.size();
    let upright = lay_out(template, short, long);
    let on_its_side = lay_out(template, long, short);
    let pages = |(_, _, rows, columns): &(f64, f64, usize, usize)| rows.saturating_mul(*columns);
    let best = if pages(&on_its_side) < pages(&upright) { on_its_side } else { upright };
    if pages(&best) > MOST_PAGES {
        return Err(PaperProblem::TooManyPages);
    }
    let (width, height, rows, columns) = best;
    let (area_width, area_height) = area(width, height);
    let pages = (0..rows)
        .flat_map(|row| (0..columns).map(move |column| (row, column)))
        .map(|(row, column)| Page {
            row,
            column,
            x: column as f64 * (area_width - OVERLAP),
            y: row as f64 * (area_height - OVERLAP),
        })
        .collect();
    Ok(Pages {
        width,
        height,
        left: MARGIN,
        top: MARGIN,
        area_width,
        area_height,
        overlap: OVERLAP,
        rows,
        columns,
        pages,
    })
}

fn area(width: f64, height: f64) -> (f64, f64) {
    (width - 2.0 * MARGIN, height - 2.0 * MARGIN - FOOT)
}

fn lay_out(template: &Template, width: f64, height: f64) -> (f64, f64, usize, usize) {
    let (area_width, area_height) = area(width, height);
    (width, height, count(template.height, area_height), count(template.width, area_width))
}

/// Pages that cover `size` when each but the first adds its area less the overlap.
fn count(size: f64, area: f64) -> usize {
    if size <= area {
        return 1;
    }
    // A number of pages too large to count saturates, and is refused.
    let more = (size - area) / (area - OVERLAP);
    1_usize.saturating_add(libm::ceil(more) as usize)
}
