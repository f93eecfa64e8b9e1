//! A film for a browser without a camera: pictures of a page, one after the other, in front of it.
//!
//! The form is the plainest there is: YUV4MPEG2, raw frames of lightness and two of colour.

use std::fs;
use std::path::{Path, PathBuf};

use reckoner_e2e::release;

const WIDTH: usize = 640;
const HEIGHT: usize = 480;

/// Frames that each picture stands, at ten a second.
const STANDS: usize = 3;

/// One picture of the film: how light each of its pixels is.
pub(crate) struct Frame(Vec<u8>);

impl Frame {
    /// A screenshot, scaled into the middle of the picture, as if the camera were held to it.
    pub(crate) fn of(screenshot: &[u8]) -> Frame {
        let mut decoder = png::Decoder::new(std::io::Cursor::new(screenshot));
        decoder.set_transformations(png::Transformations::normalize_to_color8());
        let mut reader = decoder.read_info().expect("a PNG");
        let mut pixels = vec![0; reader.output_buffer_size().expect("a size")];
        let info = reader.next_frame(&mut pixels).expect("a picture");
        let (wide, high) = (info.width as usize, info.height as usize);
        let samples = info.color_type.samples();
        let shown = HEIGHT - 60;
        let mut light = vec![120; WIDTH * HEIGHT];
        for y in 0..shown {
            for x in 0..shown {
                let from = (y * high / shown) * wide + x * wide / shown;
                // Dark on white: one colour tells as much as all.
                light[(y + 30) * WIDTH + x + (WIDTH - shown) / 2] = pixels[from * samples];
            }
        }
        Frame(light)
    }

    /// The same with a hand before a part of it.
    pub(crate) fn damaged(&self) -> Frame {
        let mut light = self.0.clone();
        for y in 180..330 {
            light[y * WIDTH + 240..y * WIDTH + 420].fill(150);
        }
        Frame(light)
    }
}

/// Writes a film and gives its path.
pub(crate) fn write(name: &str, frames: &[Frame]) -> PathBuf {
    let mut film = format!("YUV4MPEG2 W{WIDTH} H{HEIGHT} F10:1 Ip A1:1 C420mpeg2\n").into_bytes();
    let no_colour = vec![128; WIDTH * HEIGHT / 2];
    for frame in frames {
        for _ in 0..STANDS {
            film.extend(b"FRAME\n");
            film.extend(&frame.0);
            film.extend(&no_colour);
        }
    }
    let file = folder().join(format!("{name}.y4m"));
    fs::write(&file, film).expect("writing the film");
    file
}

fn folder() -> PathBuf {
    let folder = release::target_folder().join("films");
    fs::create_dir_all(&folder).expect("a folder for films");
    fs::canonicalize(&folder).expect("its path")
}

/// A folder of its own for the files of a journey.
pub(crate) fn files_of(name: &str) -> PathBuf {
    let folder = folder();
    Path::new(&folder).join(name)
}
