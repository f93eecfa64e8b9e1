//! [`Written`]: a length as it stands on a tape.

use core::fmt;

use crate::measure::Unit;

/// A length as marks on a tape, in pieces, so that a page can set the fraction stacked.
///
/// `Display` joins the pieces in one line that [`parse`](super::parse) reads back to the same
/// length: `3 3/8`, `2' 4 1/2"`, `3.375`, `86 mm`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Written {
    /// Below zero.
    pub is_negative: bool,
    /// Whole feet, where the tape is in feet and inches and there are any.
    pub feet: Option<i128>,
    /// The whole number or decimal, if there is one; a lone fraction has none.
    pub whole: Option<String>,
    /// Top and bottom of the fraction.
    pub fraction: Option<(i128, i128)>,
    /// The unit.
    pub unit: Unit,
}

impl Written {
    pub(super) fn plain(is_negative: bool, whole: String, unit: Unit) -> Written {
        Written { is_negative, feet: None, whole: Some(whole), fraction: None, unit }
    }

    /// How many figures wide it is, where its fraction stands over its line: a sign, a point, `ft` and `in` are as wide as a
    /// figure, `mm` as two.
    #[must_use]
    pub fn columns(&self) -> usize {
        let figures = |number: i128| number.to_string().len();
        let sign = usize::from(self.is_negative);
        let feet = self.feet.map_or(0, |feet| figures(feet).saturating_add(1));
        let whole = self.whole.as_ref().map_or(0, String::len);
        let fraction = self.fraction.map_or(0, |(above, below)| figures(above).max(figures(below)));
        let unit = match self.unit {
            _ if whole == 0 && fraction == 0 => 0,
            Unit::Millimetre => 2,
            _ => 1,
        };
        [sign, feet, whole, fraction, unit].iter().fold(0, |all, part| all.saturating_add(*part))
    }

    /// The line without any unit, unless it has feet.
    #[must_use]
    pub fn amount(&self) -> String {
        let mut line = String::new();
        if self.is_negative {
            line.push('-');
        }
        let mut parts = Vec::new();
        if let Some(feet) = self.feet {
            parts.push(format!("{feet}'"));
        }
        parts.extend(self.whole.clone());
        if let Some((above, below)) = self.fraction {
            parts.push(format!("{above}/{below}"));
        }
        // `-2' 4"` is minus the whole; without brackets only the feet would be negative.
        let joined = parts.join(" ");
        if self.feet.is_some() {
            let inches = if self.whole.is_some() || self.fraction.is_some() { "\"" } else { "" };
            let joined = format!("{joined}{inches}");
            line.push_str(&if self.is_negative { format!("({joined})") } else { joined });
        } else {
            line.push_str(&joined);
        }
        line
    }
}

/// The line with its unit: `3 3/8 in`, `2' 4 1/2"`, `86 mm`.
impl fmt::Display for Written {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.amount())?;
        if self.feet.is_none() {
            write!(f, " {}", self.unit.short())?;
        }
        Ok(())
    }
}
