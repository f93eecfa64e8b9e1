//! The app's manifest tells the truth of its pictures, and the icons are whole squares: what a phone puts round a clear
//! corner is not ours.

use std::fs::File;
use std::io::BufReader;
use std::path::{Path, PathBuf};

use serde_json::Value;

/// Where the manifest lies, with what it names.
fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../app/static")
}

fn manifest() -> Value {
    let file = File::open(folder().join("manifest.webmanifest")).expect("the manifest");
    serde_json::from_reader(BufReader::new(file)).expect("it is JSON")
}

/// Width and height of a picture, and whether a pixel of its edge lets through what is behind it.
struct Picture {
    size: (u32, u32),
    has_clear_edge: bool,
}

fn picture(src: &str) -> Picture {
    let file = File::open(folder().join(src)).expect(src);
    let mut decoder = png::Decoder::new(BufReader::new(file));
    decoder.set_transformations(png::Transformations::ALPHA | png::Transformations::STRIP_16);
    let mut reader = decoder.read_info().expect(src);
    let mut bytes = vec![0; reader.output_buffer_size().expect("a size")];
    let info = reader.next_frame(&mut bytes).expect(src);
    let (width, height) = (info.width as usize, info.height as usize);
    let samples = info.color_type.samples();
    let is_edge = |at: usize| {
        let (x, y) = (at % width, at / width);
        x == 0 || y == 0 || x + 1 == width || y + 1 == height
    };
    // Its last sample says how much a pixel covers.
    let pixels = bytes.chunks_exact(samples).take(width * height).enumerate();
    let mut edge = pixels.filter(|(at, _)| is_edge(*at));
    let has_clear_edge = edge.any(|(_, pixel)| pixel.last() != Some(&u8::MAX));
    Picture { size: (info.width, info.height), has_clear_edge }
}

/// The pictures of a list of the manifest: their files, and the sizes that are stated.
fn stated(list: &str) -> Vec<(String, String)> {
    let manifest = manifest();
    let all = manifest[list].as_array().expect(list);
    let text = |it: &Value, key: &str| it[key].as_str().expect(key).to_owned();
    all.iter().map(|it| (text(it, "src"), text(it, "sizes"))).collect()
}

#[test]
fn every_picture_has_the_size_that_is_stated() {
    let mut judged = 0;
    for (src, sizes) in ["icons", "screenshots"].into_iter().flat_map(stated) {
        if src.ends_with(".svg") {
            assert_eq!(sizes, "any", "{src}");
            continue;
        }
        let (width, height) = picture(&src).size;
        assert_eq!(sizes, format!("{width}x{height}"), "{src}");
        judged += 1;
    }
    assert!(judged >= 5, "{judged}");
}

#[test]
fn no_icon_has_clear_corners() {
    let mut judged = 0;
    for (src, _) in stated("icons") {
        if src.ends_with(".svg") {
            let drawn = std::fs::read_to_string(folder().join(&src)).expect("the drawing");
            // The first shape covers all of it.
            let shape = drawn.split('<').find(|it| it.starts_with("rect")).expect("a ground");
            assert!(drawn.contains("viewBox=\"0 0 512 512\""), "{src}");
            assert_eq!(shape.trim(), "rect width=\"512\" height=\"512\" fill=\"#f7f4ec\"/>");
        } else {
            assert!(!picture(&src).has_clear_edge, "{src}");
        }
        judged += 1;
    }
    assert!(judged >= 4, "{judged}");
}
