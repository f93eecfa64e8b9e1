//! Codes on the screen: a piece as a picture of squares, and pieces found in a camera's picture.
//!
//! The codes are QR codes (ISO/IEC 18004).

use qrcodegen::{QrCode, QrCodeEcc, QrSegment, Version};

/// White border round a code, in modules (ISO/IEC 18004).
const BORDER: u32 = 4;

/// Longest side of a picture that is searched, in pixels: enough for three pixels a module.
const MOST_SIDE: u32 = 720;

/// A code, to be drawn dark on white.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CodePicture {
    /// Width and height in modules, with the white border.
    pub side: u32,
    /// The dark modules as one path of SVG, a module one unit.
    pub path: String,
}

/// The picture of one piece; `None` when no code holds so much.
#[must_use]
pub fn code_picture(code: &str) -> Option<CodePicture> {
    let segments = QrSegment::make_segments(code);
    let code = QrCode::encode_segments_advanced(
        &segments,
        QrCodeEcc::Medium,
        Version::MIN,
        Version::MAX,
        None,
        true,
    )
    .ok()?;
    let size = code.size();
    let mut path = String::new();
    for y in 0..size {
        let mut x = 0;
        while x < size {
            let run = (x..size).take_while(|x| code.get_module(*x, y)).count();
            if run > 0 {
                let border = BORDER.cast_signed();
                path.push_str(&format!("M{} {}h{run}v1h-{run}z", x + border, y + border));
            }
            // One light module ends a run.
            x += i32::try_from(run).unwrap_or(size) + 1;
        }
    }
    Some(CodePicture { side: size.cast_unsigned() + 2 * BORDER, path })
}

/// The square in the middle of a camera's picture, and how large it is searched.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Middle {
    /// Left edge in the picture.
    pub left: u32,
    /// Top edge in the picture.
    pub top: u32,
    /// Width and height in the picture.
    pub side: u32,
    /// Width and height to draw it at before it is searched.
    pub drawn: u32,
}

/// The middle of a picture; `None` for one without a size.
#[must_use]
pub fn middle(width: u32, height: u32) -> Option<Middle> {
    let side = width.min(height);
    let middle = Middle {
        left: (width - side) / 2,
        top: (height - side) / 2,
        side,
        drawn: side.min(MOST_SIDE),
    };
    (side > 0).then_some(middle)
}

/// What the codes in a square picture say. `pixels` are red, green, blue and opacity, row by row.
///
/// Damaged codes, and pictures without one, give nothing.
#[must_use]
pub fn codes_seen(side: u32, pixels: &[u8]) -> Vec<String> {
    let (rows, _) = pixels.as_chunks::<4>();
    let light: Vec<u8> =
        rows.iter().map(|[red, green, blue, _]| grey(*red, *green, *blue)).collect();
    let side = side as usize;
    if side == 0 || light.len() != side * side {
        return Vec::new();
    }
    let mut finder = quircs::Quirc::default();
    let codes = finder.identify(side, side, &light);
    let texts = codes.filter_map(|code| String::from_utf8(code.ok()?.decode().ok()?.payload).ok());
    texts.collect()
}

/// How light a pixel is: the weights of ITU-R BT.601, in 256ths.
fn grey(red: u8, green: u8, blue: u8) -> u8 {
    let sum = 77 * u32::from(red) + 150 * u32::from(green) + 29 * u32::from(blue);
    u8::try_from(sum / 256).unwrap_or(u8::MAX)
}
