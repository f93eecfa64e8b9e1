//! [`Term`]: a part of a rule with its numbers, so that the two are printed from one formula.

use core::ops::{Add, Div, Mul, Sub};

use crate::measure::text::{exact_number, exact_text, trim_zeros};
use crate::measure::{Length, Number};

/// A part of a rule with its numbers: `usable + kerf` and `95 in + 1/8 in`.
///
/// The signs are those of Rust, brackets come by themselves, and neither text can have a sign
/// that the other has not.
///
/// ```
/// # use reckoner_core::{measure::length, sheet::{Step, Term}};
/// let [board, trim] = [length("96")?, length("1/2")?];
/// let formula = Term::of("board", board) - Term::fixed(2) * Term::of("trim", trim);
/// let step = Step::of("usable", formula, length("95")?);
/// assert_eq!(step.rule, "usable = board - 2 × trim");
/// assert_eq!(step.put_in.to_string(), "96 in - 2 × 1/2 in");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Debug)]
pub struct Term {
    words: String,
    numbers: String,
    binds: Binds,
}

/// How tightly the parts of a term hold together.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Binds {
    Sum,
    Product,
    Alone,
}

impl Term {
    /// An amount with its name.
    #[must_use]
    pub fn of(name: &str, amount: impl Into<Amount>) -> Term {
        Term { words: name.to_owned(), numbers: amount.into().0, binds: Binds::Alone }
    }

    /// A number of the rule itself, the same in words and numbers.
    #[must_use]
    pub fn fixed(number: impl Into<Amount>) -> Term {
        let Amount(text) = number.into();
        Term { words: text.clone(), numbers: text, binds: Binds::Alone }
    }

    /// The sine of an angle: `sin lean` and `sin 4.5°`.
    #[must_use]
    pub fn sin(self) -> Term {
        self.after("sin")
    }

    /// The cosine of an angle.
    #[must_use]
    pub fn cos(self) -> Term {
        self.after("cos")
    }

    /// The tangent of an angle: `tan(corner ÷ 2)` and `tan(50.1° ÷ 2)`.
    #[must_use]
    pub fn tan(self) -> Term {
        self.after("tan")
    }

    /// The square of the sine of an angle: `sin² lean`.
    #[must_use]
    pub fn sin_squared(self) -> Term {
        self.after("sin²")
    }

    /// The square of the cosine of an angle.
    #[must_use]
    pub fn cos_squared(self) -> Term {
        self.after("cos²")
    }

    /// The square of the tangent of an angle.
    #[must_use]
    pub fn tan_squared(self) -> Term {
        self.after("tan²")
    }

    /// The angle with this tangent.
    #[must_use]
    pub fn angle_by_tangent(self) -> Term {
        self.behind("the angle whose tangent is ", "", Binds::Sum)
    }

    /// The angle with this sine.
    #[must_use]
    pub fn angle_by_sine(self) -> Term {
        self.behind("the angle whose sine is ", "", Binds::Sum)
    }

    /// Its square root: `√(near side² + left side²)`.
    #[must_use]
    pub fn root(self) -> Term {
        self.behind("√(", ")", Binds::Alone)
    }

    /// Its square: `near side²` and `(24 in)²`.
    #[must_use]
    pub fn squared(self) -> Term {
        self.raised('²')
    }

    /// Its third power.
    #[must_use]
    pub fn cubed(self) -> Term {
        self.raised('³')
    }

    /// Its fourth power.
    #[must_use]
    pub fn to_the_fourth(self) -> Term {
        self.raised('⁴')
    }

    /// In words and in numbers.
    pub(super) fn into_texts(self) -> (String, String) {
        (self.words, self.numbers)
    }

    fn join(self, sign: char, other: Term, binds: Binds) -> Term {
        // What is taken away or divided by is one thing: `a - (b - c)`.
        let right = match sign {
            '-' => Binds::Product,
            '÷' => Binds::Alone,
            _ => binds,
        };
        let (left, mut right) = (self.held(binds), other.held(right));
        if right.numbers.starts_with('-') {
            right.numbers = format!("({})", right.numbers);
        }
        Term {
            words: format!("{} {sign} {}", left.words, right.words),
            numbers: format!("{} {sign} {}", left.numbers, right.numbers),
            binds,
        }
    }

    /// With a name before it that takes all of it.
    fn after(self, name: &str) -> Term {
        let whole = self.held(Binds::Alone);
        let named = |text: String| match text.chars().next() {
            Some('(') => format!("{name}{text}"),
            Some('-') => format!("{name}({text})"),
            _ => format!("{name} {text}"),
        };
        Term { words: named(whole.words), numbers: named(whole.numbers), binds: Binds::Alone }
    }

    /// Between two texts.
    fn behind(self, before: &str, after: &str, binds: Binds) -> Term {
        Term {
            words: format!("{before}{}{after}", self.words),
            numbers: format!("{before}{}{after}", self.numbers),
            binds,
        }
    }

    /// With a small number above it.
    fn raised(self, power: char) -> Term {
        let Term { words, mut numbers, .. } = self.held(Binds::Alone);
        // `24 in²` would be an area.
        if numbers.contains(' ') && !numbers.starts_with('(') {
            numbers = format!("({numbers})");
        }
        Term {
            words: format!("{words}{power}"),
            numbers: format!("{numbers}{power}"),
            binds: Binds::Alone,
        }
    }

    /// In brackets, unless it holds together at least so tightly.
    fn held(self, binds: Binds) -> Term {
        if self.binds >= binds {
            return self;
        }
        Term {
            words: format!("({})", self.words),
            numbers: format!("({})", self.numbers),
            binds: Binds::Alone,
        }
    }
}

impl Add for Term {
    type Output = Term;
    fn add(self, other: Term) -> Term {
        self.join('+', other, Binds::Sum)
    }
}

impl Sub for Term {
    type Output = Term;
    fn sub(self, other: Term) -> Term {
        self.join('-', other, Binds::Sum)
    }
}

impl Mul for Term {
    type Output = Term;
    fn mul(self, other: Term) -> Term {
        self.join('×', other, Binds::Product)
    }
}

impl Div for Term {
    type Output = Term;
    fn div(self, other: Term) -> Term {
        self.join('÷', other, Binds::Product)
    }
}

/// An amount as it stands in a formula.
#[derive(Clone, Debug)]
pub struct Amount(String);

/// A short decimal where it is one, else a fraction: a formula is worked out with it again.
fn shortest(number: Number) -> String {
    exact_number(number, 4)
}

impl Amount {
    /// So many hundredths: `2.5 %`.
    #[must_use]
    pub fn percent(number: Number) -> Amount {
        Amount(format!("{} %", shortest(number)))
    }

    /// With a unit that is no length: `70 lb`.
    #[must_use]
    pub fn with_unit(number: Number, unit: &str) -> Amount {
        Amount(format!("{} {unit}", shortest(number)))
    }

    /// A number of physics to seven figures, enough for the result shown to come out, and its unit;
    /// empty for none.
    #[must_use]
    pub fn real(number: f64, unit: &str) -> Amount {
        let before_the_point = libm::floor(libm::log10(number.abs().max(f64::MIN_POSITIVE)));
        let places = (6.0 - before_the_point).clamp(0.0, 15.0) as usize;
        let text = format!("{number:.places$}");
        Amount(format!("{} {unit}", trim_zeros(&text)).trim_end().to_owned())
    }

    /// An angle in degrees, to seven figures: `4.763642°`.
    #[must_use]
    pub fn angle(degrees: f64) -> Amount {
        // Without a minus before a zero.
        Amount(format!("{}°", Amount::real(degrees + 0.0, "")))
    }
}

impl core::fmt::Display for Amount {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str(&self.0)
    }
}

impl From<Length> for Amount {
    fn from(length: Length) -> Amount {
        Amount(exact_text(length))
    }
}

impl From<Number> for Amount {
    fn from(number: Number) -> Amount {
        Amount(shortest(number))
    }
}

impl From<i32> for Amount {
    fn from(number: i32) -> Amount {
        Amount(number.to_string())
    }
}

impl From<u32> for Amount {
    fn from(count: u32) -> Amount {
        Amount(count.to_string())
    }
}

impl From<usize> for Amount {
    fn from(count: usize) -> Amount {
        Amount(count.to_string())
    }
}

/// As it is to be read: `0.162 in`, `70.0 lb`, `15 %`.
impl From<String> for Amount {
    fn from(text: String) -> Amount {
        Amount(text)
    }
}
