//! Codes on the screen, read back by two decoders: the app's own and an independent one.

use proptest::prelude::*;
use reckoner_core::job::demo::demo;
use reckoner_formats::{
    CodePicture, Gatherer, Middle, PIECE, code_picture, codes, codes_seen, middle, write_job,
};

/// A picture of a code, each module so many pixels, on a grey table, with its left top corner at
/// a place. Its path is drawn here from the text that the page draws.
struct Photo {
    side: usize,
    light: Vec<u8>,
}

impl Photo {
    fn of(picture: &CodePicture, pixels: f64, side: usize, place: (f64, f64), turn: f64) -> Photo {
        let modules = modules(picture);
        let wide = picture.side as usize;
        let center = picture.side as f64 / 2.0;
        let (sin, cos) = turn.sin_cos();
        let mut light = vec![90; side * side];
        for y in 0..side {
            for x in 0..side {
                // Turned about the middle of the code.
                let (dx, dy) = (
                    (x as f64 + 0.5 - place.0) / pixels - center,
                    (y as f64 + 0.5 - place.1) / pixels - center,
                );
                let (u, v) = (dx * cos + dy * sin + center, dy * cos - dx * sin + center);
                if u >= 0.0 && v >= 0.0 && (u as usize) < wide && (v as usize) < wide {
                    light[y * side + x] =
                        if modules[v as usize * wide + u as usize] { 30 } else { 225 };
                }
            }
        }
        Photo { side, light }
    }

    /// Each pixel the mean of itself and its neighbours.
    fn blurred(self) -> Photo {
        let side = self.side;
        let at =
            |x: usize, y: usize| u32::from(self.light[y.min(side - 1) * side + x.min(side - 1)]);
        let mean = |x: usize, y: usize| {
            let rows = [y.saturating_sub(1), y, y + 1];
            let sum: u32 =
                rows.iter().map(|y| at(x.saturating_sub(1), *y) + at(x, *y) + at(x + 1, *y)).sum();
            (sum / 9) as u8
        };
        let light = (0..side * side).map(|i| mean(i % side, i / side)).collect();
        Photo { side, light }
    }

    /// A thumb over a square part of it.
    fn hide(&mut self, left: usize, top: usize, size: usize) {
        for y in top..(top + size).min(self.side) {
            for x in left..(left + size).min(self.side) {
                self.light[y * self.side + x] = 128;
            }
        }
    }

    fn pixels(&self) -> Vec<u8> {
        self.light.iter().flat_map(|light| [*light, *light, *light, 255]).collect()
    }

    fn seen(&self) -> Vec<String> {
        codes_seen(self.side as u32, &self.pixels())
    }

    /// What the independent decoder reads.
    fn read_by_another(&self) -> Option<String> {
        let side = self.side as u32;
        let read = rxing::helpers::detect_in_luma(
            self.light.clone(),
            side,
            side,
            Some(rxing::BarcodeFormat::QR_CODE),
        );
        Some(read.ok()?.getText().to_owned())
    }
}

/// The dark modules of a path of runs `Mx yhNv1h-Nz`.
fn modules(picture: &CodePicture) -> Vec<bool> {
    let side = picture.side as usize;
    let mut dark = vec![false; side * side];
    for run in picture.path.split('M').skip(1) {
        let (x, rest) = run.split_once(' ').expect("a place");
        let (y, rest) = rest.split_once('h').expect("a run");
        let (wide, rest) = rest.split_once('v').expect("its width");
        assert_eq!(rest, format!("1h-{wide}z"));
        let number = |text: &str| text.parse::<usize>().expect("a number");
        for x in number(x)..number(x) + number(wide) {
            dark[number(y) * side + x] = true;
        }
    }
    dark
}

fn of_the_demo() -> Vec<String> {
    codes(&write_job(&demo()), PIECE).expect("few codes")
}

/// The narrowest screen is 320 CSS pixels wide, 20 of them its margins.
#[test]
fn a_code_of_the_demo_is_read_from_the_narrowest_screen() {
    for code in of_the_demo() {
        let picture = code_picture(&code).expect("fits a code");
        assert!(picture.side <= 65, "{} modules", picture.side);
        let pixels = 300.0 / f64::from(picture.side);
        let photo = Photo::of(&picture, pixels, 320, (10.0, 10.0), 0.0);
        assert_eq!(photo.read_by_another().as_ref(), Some(&code));
        assert_eq!(photo.seen(), [code]);
    }
}

/// Held askew and out of focus, in the square that the app cuts out of a camera's picture. The app
/// looks several times at each code, so it need not read it every time.
#[test]
fn a_code_held_askew_and_out_of_focus_is_read() {
    let all = of_the_demo();
    let (mut views, mut read) = (0, 0);
    for n in 0..36_u32 {
        let code = &all[n as usize % all.len()];
        let picture = code_picture(code).expect("fits a code");
        let pixels = f64::from(500 + 10 * (n % 7)) / f64::from(picture.side);
        let turn = -0.35 + 0.02 * f64::from(n);
        let photo = Photo::of(&picture, pixels, 720, (100.3, 90.7), turn).blurred();
        assert_eq!(photo.read_by_another().as_ref(), Some(code));
        views += 1;
        read += usize::from(photo.seen() == [code.clone()]);
    }
    assert!(read * 10 >= views * 9, "{read} of {views} views");
}

#[test]
fn damaged_and_shuffled_codes_still_give_the_job() {
    let all = of_the_demo();
    let mut gatherer = Gatherer::default();
    let mut refused = 0;
    // A prime that does not divide the number of codes: every code has its turn.
    let stride =
        [5, 7, 11].into_iter().find(|prime| !all.len().is_multiple_of(*prime)).expect("few codes");
    // The order of a camera that looks now and then, every code met twice, once hidden in part.
    for round in 0..2 {
        for n in 0..all.len() {
            let number = (n * stride + 3) % all.len();
            let mut photo =
                Photo::of(&code_picture(&all[number]).expect("fits"), 4.0, 340, (12.0, 9.0), 0.02);
            if (n + round) % 2 == 0 {
                photo.hide(90, 120, 130);
            }
            let seen = photo.seen();
            refused += usize::from(seen.is_empty());
            for code in seen {
                gatherer.take(&code).expect("what is read is right");
            }
        }
    }
    assert_eq!(refused, all.len(), "a hidden code gives nothing");
    assert_eq!(gatherer.whole(), Some(Ok(write_job(&demo()))), "{}", gatherer.in_words());
}

/// A little of a code may be hidden: medium correction mends it.
#[test]
fn a_small_blot_is_mended() {
    let code = &of_the_demo()[0];
    let mut photo = Photo::of(&code_picture(code).expect("fits"), 4.0, 340, (12.0, 9.0), 0.0);
    photo.hide(150, 150, 34);
    assert_eq!(photo.seen(), std::slice::from_ref(code));
    assert_eq!(photo.read_by_another().as_ref(), Some(code));
}

#[test]
fn the_middle_of_a_picture_is_searched() {
    assert_eq!(middle(1280, 720), Some(Middle { left: 280, top: 0, side: 720, drawn: 720 }));
    assert_eq!(middle(1080, 1920), Some(Middle { left: 0, top: 420, side: 1080, drawn: 720 }));
    assert_eq!(middle(640, 480), Some(Middle { left: 80, top: 0, side: 480, drawn: 480 }));
    assert_eq!((middle(0, 480), middle(0, 0)), (None, None));
}

#[test]
fn what_is_no_picture_gives_nothing() {
    for (side, bytes) in [(0, 0), (3, 4), (u32::MAX, 16), (10, 399), (10, 400), (1, 4)] {
        assert_eq!(codes_seen(side, &vec![0; bytes]), Vec::<String>::new());
    }
    assert_eq!(code_picture(&"a".repeat(5_000)), None);
    let small = code_picture("").expect("an empty code");
    assert_eq!(small.side, 21 + 8);
}

/// Another app's code is read, and left to the gatherer, which refuses it.
#[test]
fn other_codes_in_the_picture_are_read_and_left_to_the_gatherer() {
    let other = code_picture("https://example.org/").expect("fits");
    let photo = Photo::of(&other, 5.0, 300, (20.0, 20.0), 0.0);
    assert_eq!(photo.seen(), ["https://example.org/"]);
    let mut gatherer = Gatherer::default();
    assert!(gatherer.take(&photo.seen()[0]).is_err());
    assert_eq!(gatherer, Gatherer::default());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(100))]

    /// A camera may see anything: noise, bars, codes torn to pieces. None of it stops the app.
    #[test]
    fn whatever_a_camera_sees_is_survived(seed in any::<u32>(), side in 1_u32..200, stripe in 1_u32..40, noise in 0_u32..256) {
        let mut state = seed;
        let light: Vec<u8> = (0..side * side).flat_map(|i| {
            state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            let (x, y) = (i % side, i / side);
            let bars = if (x / stripe + y / stripe) % 2 == 0 { 255 } else { 0 };
            let light = if state >> 24 < noise { (state >> 16) as u8 } else { bars };
            [light, light, light, 255]
        }).collect();
        let _ = codes_seen(side, &light);
    }

    /// A code with stripes and blots over it is read rightly or not at all.
    #[test]
    fn a_spoiled_code_is_read_rightly_or_not_at_all(seed in any::<u32>(), pixels in 1.5_f64..6.0, turn in -0.8_f64..0.8, blots in 0_usize..25, size in 2_usize..60) {
        let code = "SR1 7F3A09C2 2/5 1B2C3D4E ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";
        let mut photo = Photo::of(&code_picture(code).expect("fits"), pixels, 300, (30.0, 20.0), turn);
        let mut state = seed;
        for _ in 0..blots {
            state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            photo.hide((state >> 8) as usize % 280, (state >> 20) as usize % 280, size);
        }
        let seen = photo.seen();
        prop_assert!(seen.iter().all(|seen| seen == code), "{seen:?}");
    }
}
