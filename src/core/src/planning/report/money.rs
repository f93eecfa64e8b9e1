//! What a plan costs, and how far it is proved. Money is exact.

use crate::job::cut_labels::{Labels, Money};
use crate::measure::text::decimal;
use crate::measure::{Length, Number, OutOfRange};
use crate::say;
use crate::sheet::{Sentence, money};

/// What is spent on boards.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Spent {
    /// Money, in cents.
    Money {
        /// Hundredths of the user's money.
        cents: i64,
    },
    /// No price was given: so many boards, so much length in all.
    Wood {
        /// How many boards.
        boards: u32,
        /// Together.
        length: Length,
    },
}

impl Spent {
    /// `24.90`, or `3 boards, 26 ft`.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        match self {
            Spent::Money { cents } => say![money(*cents)],
            Spent::Wood { boards, length } => {
                let many = if *boards == 1 { "board" } else { "boards" };
                say![format!("{boards} {many}, {}", feet(*length))]
            }
        }
    }
}

/// A length of lumber in feet, exactly where three places do.
fn feet(length: Length) -> String {
    let feet = (length.in_inches() * Number::ratio(1, 12).unwrap_or(Number::ONE)).ok();
    let text = feet.map_or_else(|| length.to_string(), |feet| decimal(feet, 3));
    let text = text.trim_end_matches('0').trim_end_matches('.');
    format!("{text} ft")
}

/// What a cost of the cutting job stands for.
///
/// # Errors
///
/// [`OutOfRange`] when a length is too large to keep.
pub fn spent(labels: &Labels, cents: i64, boards: u32) -> Result<Spent, OutOfRange> {
    match labels.money {
        Money::Cents => Ok(Spent::Money { cents }),
        Money::Wood { each } => Ok(Spent::Wood { boards, length: (each * Number::whole(cents))? }),
    }
}

/// A cost of the cutting job as it is written: `24.90`, or `26 ft`.
pub(super) fn amount(labels: &Labels, cents: i64) -> String {
    match labels.money {
        Money::Cents => money(cents),
        Money::Wood { each } => (each * Number::whole(cents)).map_or_else(|_| String::new(), feet),
    }
}

/// How far a plan is proved.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Proof {
    /// No plan is cheaper.
    pub proved: bool,
    /// `24.90`
    pub cost: String,
    /// No plan costs less than this.
    pub bound: String,
    /// How much cheaper a plan could be at most; zero when proved.
    pub gap: String,
    /// All of it in words.
    pub sentence: Sentence,
}

/// How far a plan is proved; also for the news while the search runs.
///
/// What is claimed is what was proved: for these boards, prices and cuts. Parts that the plan leaves
/// out stand in the same line.
#[must_use]
pub fn proof(labels: &Labels, cost_cents: i64, bound_cents: i64, left_out: &[String]) -> Proof {
    let amount = |cents: i64| amount(labels, cents);
    let gap_cents = cost_cents.saturating_sub(bound_cents).max(0);
    let (cost, bound, gap) = (amount(cost_cents), amount(bound_cents), amount(gap_cents));
    let proved = gap_cents == 0;
    let least = match labels.money {
        Money::Cents => ["No cheaper way with these boards, prices and cuts.", "less than "],
        Money::Wood { .. } => {
            ["No way with less wood with these boards and cuts.", "less wood than "]
        }
    };
    let mut sentence = if proved {
        say![least[0]]
    } else {
        say![
            "Not proved yet. No plan takes ",
            least[1],
            bound.clone(),
            ": at most ",
            gap.clone(),
            format!(" ({}) could be saved.", percent(gap_cents, cost_cents))
        ]
    };
    if let Some(left_out) = left_out_words(left_out) {
        sentence.0.extend(say![" "].0.into_iter().chain(left_out.0));
    }
    Proof { proved, cost, bound, gap, sentence }
}

/// Which parts a plan leaves out, to stand beside what is claimed of it; `None` where it has all of them.
#[must_use]
pub fn left_out_words(left_out: &[String]) -> Option<Sentence> {
    (!left_out.is_empty()).then(|| say!["Left out: ", left_out.join("; "), "."])
}

/// A share in per cent with one place, rounded up: a gap is never told smaller than it is.
fn percent(part: i64, whole: i64) -> String {
    let tenths = i128::from(part) * 1_000;
    let tenths = tenths
        .checked_div(i128::from(whole))
        .map_or(0, |down| if down * i128::from(whole) < tenths { down + 1 } else { down });
    format!("{}.{} %", tenths / 10, tenths % 10)
}
