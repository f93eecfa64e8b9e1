//! How much moisture wood takes up from the air: equilibrium moisture content.
//!
//! An empirical curve, so floating-point numbers: degrees, percent.

use crate::tables::air::Place;

/// How warm the air is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Temperature {
    /// Degrees Fahrenheit.
    Fahrenheit(f64),
    /// Degrees Celsius.
    Celsius(f64),
}

impl Temperature {
    fn in_kelvin(self) -> f64 {
        match self {
            Temperature::Fahrenheit(f) => (f - 32.0) / 1.8 + 273.15,
            Temperature::Celsius(c) => c + 273.15,
        }
    }
}

/// What is asked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Input {
    /// Air of a temperature and a relative humidity in percent.
    Air(Temperature, f64),
    /// A place.
    Place(Place),
}

/// What wood settles at, in percent.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Answer {
    /// Driest.
    pub driest: f64,
    /// Wettest; the same as `driest` for given air.
    pub wettest: f64,
    /// By the newer formula, for given air.
    pub newer: Option<f64>,
}

/// Settles the wood. For air of 0 to 95 % humidity from 30 °F, down to which both published forms of the formula agree, to
/// boiling every number is finite.
#[must_use]
pub fn reckon(input: &Input) -> Answer {
    match *input {
        Input::Air(temperature, humidity) => {
            let percent = two_hydrates(temperature, humidity / 100.0);
            let newer = Some(newer(temperature, humidity / 100.0));
            Answer { driest: percent, wettest: percent, newer }
        }
        Input::Place(place) => Answer {
            driest: f64::from(place.driest) / 10.0,
            wettest: f64::from(place.wettest) / 10.0,
            newer: None,
        },
    }
}

/// The formula of the Wood Handbook; `h` from 0 to 1.
///
/// # Source
///
/// °C: USDA FPL Wood Handbook, FPL-GTR-282 (2021), Equation 4-5 (Simpson 1973). °F: FPL-RN-0268
/// (Simpson 1998), coefficients read in a quotation; the two agree within 0.15 points between 30
/// and 110 °F.
#[must_use]
pub fn two_hydrates(temperature: Temperature, h: f64) -> f64 {
    let (w, k, k1, k2) = match temperature {
        Temperature::Celsius(t) => (
            349.0 + 1.29 * t + 0.0135 * t * t,
            0.805 + 0.000_736 * t - 0.000_002_73 * t * t,
            6.27 - 0.009_38 * t - 0.000_303 * t * t,
            1.91 + 0.0407 * t - 0.000_293 * t * t,
        ),
        Temperature::Fahrenheit(t) => (
            330.0 + 0.452 * t + 0.004_15 * t * t,
            0.791 + 0.000_463 * t - 0.000_000_844 * t * t,
            6.34 + 0.000_775 * t - 0.000_093_5 * t * t,
            1.09 + 0.0284 * t - 0.000_090_4 * t * t,
        ),
    };
    let kh = k * h;
    let one = k1 * kh;
    let two = k1 * k2 * kh * kh;
    1800.0 / w * (kh / (1.0 - kh) + (one + 2.0 * two) / (1.0 + one + two))
}

/// The newer closed form; `h` from 0 to below 1.
///
/// # Source
///
/// USDA FPL Wood Handbook, FPL-GTR-282 (2021), Equation 4-6 (Glass and others 2014).
#[must_use]
pub fn newer(temperature: Temperature, h: f64) -> f64 {
    let t = temperature.in_kelvin();
    let base = -0.000_612 * t * libm::pow(1.0 - t / 647.1, 2.43) * libm::log(1.0 - h);
    100.0 * libm::pow(base, 0.0577 * libm::pow(t, 0.430))
}
