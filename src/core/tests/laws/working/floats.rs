//! Works a line of numbers out in floating point: trigonometry, roots and powers, which the product's reader does not know.

/// What a line comes to.
#[derive(Clone, Copy, Debug)]
pub(super) struct Worked {
    /// Lengths in inches, angles in degrees.
    pub(super) number: f64,
    /// The largest number on the way to it.
    pub(super) largest: f64,
}

/// A function of an angle in radians.
type Function = fn(f64) -> f64;

const FUNCTIONS: [(&str, Function); 6] = [
    ("sin²", |angle| angle.sin().powi(2)),
    ("cos²", |angle| angle.cos().powi(2)),
    ("tan²", |angle| angle.tan().powi(2)),
    ("sin", f64::sin),
    ("cos", f64::cos),
    ("tan", f64::tan),
];

const POWERS: [(&str, i32); 3] = [("²", 2), ("³", 3), ("⁴", 4)];

/// Where a number and its unit end.
const ENDS: [&str; 8] = [" + ", " - ", " × ", " ÷ ", ")", "²", "³", "⁴"];

/// Whether a word is one of the functions.
pub(super) fn is_function(word: &str) -> bool {
    FUNCTIONS.iter().any(|(name, _)| *name == word)
}

/// What a line of numbers comes to, with `leaf` to read a number with its unit; `None` where it is no formula.
pub(super) fn worked_out(numbers: &str, leaf: impl Fn(&str) -> Option<f64>) -> Option<Worked> {
    let mut line = Line { rest: numbers, leaf, largest: 0.0 };
    let number = line.sum()?;
    line.rest.is_empty().then_some(Worked { number, largest: line.largest })
}

struct Line<'a, L> {
    rest: &'a str,
    leaf: L,
    largest: f64,
}

impl<L: Fn(&str) -> Option<f64>> Line<'_, L> {
    fn has(&mut self, next: &str) -> bool {
        match self.rest.strip_prefix(next) {
            Some(rest) => {
                self.rest = rest;
                true
            }
            None => false,
        }
    }

    fn seen(&mut self, number: f64) -> f64 {
        if number.is_finite() {
            self.largest = self.largest.max(number.abs());
        }
        number
    }

    fn sum(&mut self) -> Option<f64> {
        let mut sum = self.product()?;
        loop {
            if self.has(" + ") {
                sum += self.product()?;
            } else if self.has(" - ") {
                sum -= self.product()?;
            } else {
                return Some(self.seen(sum));
            }
        }
    }

    fn product(&mut self) -> Option<f64> {
        let mut product = self.power()?;
        loop {
            if self.has(" × ") {
                product *= self.power()?;
            } else if self.has(" ÷ ") {
                product /= self.power()?;
            } else {
                return Some(self.seen(product));
            }
        }
    }

    fn power(&mut self) -> Option<f64> {
        let one = self.one()?;
        let power = POWERS.iter().find(|(sign, _)| self.has(sign));
        Some(self.seen(power.map_or(one, |(_, power)| one.powi(*power))))
    }

    fn in_brackets(&mut self) -> Option<f64> {
        let sum = self.sum()?;
        self.has(")").then_some(sum)
    }

    fn one(&mut self) -> Option<f64> {
        if self.has("the angle whose tangent is ") {
            return Some(self.sum()?.atan().to_degrees());
        }
        if self.has("the angle whose sine is ") {
            return Some(self.sum()?.asin().to_degrees());
        }
        if self.has("√(") {
            return Some(self.in_brackets()?.sqrt());
        }
        if let Some((_, function)) = FUNCTIONS.iter().find(|(name, _)| self.has(name)) {
            self.has(" ");
            return Some(function(self.one()?.to_radians()));
        }
        if self.has("(") {
            return self.in_brackets();
        }
        let end = ENDS.iter().filter_map(|end| self.rest.find(end)).min();
        let (text, rest) = self.rest.split_at(end.unwrap_or(self.rest.len()));
        self.rest = rest;
        match (text, text.strip_suffix('°')) {
            ("π", _) => Some(std::f64::consts::PI),
            (_, Some(degrees)) => degrees.parse().ok(),
            _ => (self.leaf)(text),
        }
    }
}
