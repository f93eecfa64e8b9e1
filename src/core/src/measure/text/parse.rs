//! Reads a formula. The grammar is stated in [the module above](super).

use super::amount::{self, Amount, Cursor};
use super::formula::{Formula, Names, Node, Operator};
use super::problem::{TextProblem, TextProblemKind as Kind};
use super::seen::is_invisible;
use crate::measure::limits::{MAX_DEPTH, MAX_TEXT};

/// Reads a measure or a formula; it is worked out by [`Formula::length`] and its kin.
///
/// # Errors
///
/// [`TextProblem`] at the first place that cannot be read.
pub fn parse(text: &str, names: &dyn Names) -> Result<Formula, TextProblem> {
    if text.chars().count() > MAX_TEXT {
        return Err(TextProblem::new(0..text.len(), Kind::TooLong));
    }
    let mut parser = Parser { cursor: Cursor { text, at: 0 }, names, depth: 0 };
    parser.cursor.skip_spaces();
    if parser.cursor.peek().is_none() {
        return Err(TextProblem::new(0..text.len(), Kind::Empty));
    }
    let formula = parser.sum()?;
    // A habit from pocket calculators.
    if parser.cursor.peek() == Some('=') {
        let mut after = parser.cursor;
        after.advance();
        after.skip_spaces();
        if after.peek().is_none() {
            return Ok(formula);
        }
    }
    match parser.cursor.peek() {
        None => Ok(formula),
        Some(')') => Err(parser.here(Kind::UnopenedBracket)),
        Some(_) => Err(parser.unexpected(Kind::ExpectedOperator)),
    }
}

/// Names of boards are made of these, as in `2x4` and `5/4x6`: PS 20-20, Table 3.
const BOARD_THICKNESSES: &[&str] = &["1", "5/4", "6/4", "2", "3", "4", "6", "8"];
const BOARD_WIDTHS: &[&str] = &["2", "3", "4", "5", "6", "8", "10", "12"];

/// A sign between two parts, and how it was typed.
struct Sign {
    operator: Operator,
    /// The letter x.
    is_letter: bool,
    space_before: bool,
    space_after: bool,
}

impl Sign {
    fn is_tight(&self) -> bool {
        !self.space_before && !self.space_after
    }

    fn is_spaced(&self) -> bool {
        self.space_before && self.space_after
    }
}

struct Parser<'a> {
    cursor: Cursor<'a>,
    names: &'a dyn Names,
    depth: usize,
}

impl Parser<'_> {
    fn sum(&mut self) -> Result<Formula, TextProblem> {
        let mut left = self.product(false)?;
        while let Some(sign) = self.take_sign(&[Operator::Add, Operator::Subtract]) {
            let minus = sign.operator == Operator::Subtract;
            let right = self.product(minus && sign.is_tight())?;
            // A minus with spaces on both sides is one, and a tight hyphen that joins was read
            // with the amount. What is left looks like either.
            if minus && !sign.is_spaced() && self.could_join(&left, &right) {
                let from = left.last_leaf().map_or(left.at.start, |leaf| leaf.at.start);
                let to = right.first_leaf().map_or(right.at.end, |leaf| leaf.at.end);
                return Err(TextProblem::new(from..to, Kind::AmbiguousHyphen));
            }
            left = pair(sign.operator, left, right);
        }
        Ok(left)
    }

    fn product(&mut self, tight_minus_before: bool) -> Result<Formula, TextProblem> {
        let mut left = self.factor(tight_minus_before)?;
        while let Some(sign) = self.take_sign(&[Operator::Multiply, Operator::Divide]) {
            let right = self.factor(false)?;
            if sign.is_letter && sign.is_tight() {
                self.refuse_board_name(&left, &right)?;
            }
            left = pair(sign.operator, left, right);
        }
        Ok(left)
    }

    /// Whether a hyphen between the two would make one amount of them: `3` and `3/8`, or `2'` and
    /// `4"`.
    fn could_join(&self, left: &Formula, right: &Formula) -> bool {
        let (Some(left), Some(right)) = (left.last_leaf(), right.first_leaf()) else {
            return false;
        };
        let (before, after) = (self.written(left), self.written(right));
        let after_is_amount = matches!(right.node, Node::Bare(_) | Node::Length(_));
        match left.node {
            Node::Bare(_) if after_is_amount => {
                before.bytes().all(|b| b.is_ascii_digit()) && amount::begins_with_fraction(after)
            }
            Node::Length(_) if after_is_amount => {
                amount::ends_in_feet(before) && !amount::ends_in_feet(after)
            }
            _ => false,
        }
    }

    /// `2x4` is what a yard calls a board of 1 1/2 × 3 1/2: as a product it would be taken for 8.
    fn refuse_board_name(&self, left: &Formula, right: &Formula) -> Result<(), TextProblem> {
        let is_name = matches!((&left.node, &right.node), (Node::Bare(_), Node::Bare(_)))
            && BOARD_THICKNESSES.contains(&self.written(left))
            && BOARD_WIDTHS.contains(&self.written(right));
        if !is_name {
            return Ok(());
        }
        let at = left.at.start..right.at.end;
        let name = self.cursor.text.get(at.clone()).unwrap_or("").to_owned();
        Err(TextProblem::new(at, Kind::BoardName(name)))
    }

    fn written(&self, formula: &Formula) -> &str {
        self.cursor.text.get(formula.at.clone()).unwrap_or("")
    }

    fn factor(&mut self, tight_minus_before: bool) -> Result<Formula, TextProblem> {
        self.cursor.skip_spaces();
        let from = self.cursor.at;
        let named = self.names.longest_match(self.cursor.rest());
        if named > 0 {
            let name = self.cursor.rest().get(..named).unwrap_or("").to_owned();
            self.cursor.at += named;
            return Ok(self.finish(from, Node::Name(name)));
        }
        if amount::begins(self.cursor) {
            let amount = amount::read(&mut self.cursor, tight_minus_before)?;
            let node = match amount {
                Amount::Bare(number) => Node::Bare(number),
                Amount::Length(length) => Node::Length(length),
            };
            return Ok(self.finish(from, node));
        }
        match self.cursor.peek() {
            Some('(') => {
                self.cursor.advance();
                let inner = self.deeper(from, Parser::sum)?;
                if self.cursor.peek() != Some(')') {
                    let problem = match self.cursor.peek() {
                        None => TextProblem::new(from..from + 1, Kind::UnclosedBracket),
                        Some(_) => self.unexpected(Kind::ExpectedOperator),
                    };
                    return Err(problem);
                }
                self.cursor.advance();
                let unit = amount::take_unit(&mut self.cursor);
                Ok(self.finish(from, Node::Group(Box::new(inner), unit)))
            }
            Some('+') => {
                self.cursor.advance();
                self.deeper(from, |parser| parser.factor(false))
            }
            Some('-' | '−' | '–' | '‐' | '‑') => {
                self.cursor.advance();
                let inner = self.deeper(from, |parser| parser.factor(false))?;
                Ok(self.finish(from, Node::Negative(Box::new(inner))))
            }
            _ => Err(self.unexpected(Kind::ExpectedAmount)),
        }
    }

    fn deeper(
        &mut self,
        from: usize,
        read: impl FnOnce(&mut Self) -> Result<Formula, TextProblem>,
    ) -> Result<Formula, TextProblem> {
        self.depth += 1;
        if self.depth > MAX_DEPTH {
            return Err(TextProblem::new(from..self.cursor.at, Kind::TooDeep));
        }
        let formula = read(self)?;
        self.depth -= 1;
        Ok(formula)
    }

    /// Ends a node here and skips to what follows it.
    fn finish(&mut self, from: usize, node: Node) -> Formula {
        let at = from..self.cursor.at;
        self.cursor.skip_spaces();
        Formula { at, node }
    }

    /// Takes one of the wanted signs.
    fn take_sign(&mut self, wanted: &[Operator]) -> Option<Sign> {
        let c = self.cursor.peek()?;
        let is_letter = matches!(c, 'x' | 'X');
        let operator = match c {
            '+' => Operator::Add,
            '-' | '−' | '–' | '‐' | '‑' => Operator::Subtract,
            '×' | '*' | '·' | '✕' => Operator::Multiply,
            'x' | 'X' if self.cursor.word().len() == 1 => Operator::Multiply,
            '÷' | '/' | '∕' | '⁄' => Operator::Divide,
            _ => return None,
        };
        if !wanted.contains(&operator) {
            return None;
        }
        let before = self.cursor.text.get(..self.cursor.at).unwrap_or("");
        let space_before = before.ends_with(char::is_whitespace);
        self.cursor.advance();
        let space_after = self.cursor.peek().is_some_and(char::is_whitespace);
        Some(Sign { operator, is_letter, space_before, space_after })
    }

    /// An amount stands directly after another.
    fn side_by_side(&self) -> TextProblem {
        let from = self.cursor.at;
        let before = self.cursor.text.get(..from).unwrap_or("").trim_end();
        let mut ahead = self.cursor;
        let digits = ahead.take_while(|c| c.is_ascii_digit()).len();
        if before.ends_with(|c: char| c.is_ascii_digit()) && amount::grouped(self.cursor) {
            return TextProblem::new(from..ahead.at, Kind::GroupedDigits);
        }
        if digits > 0 && ahead.peek() == Some('\\') {
            return TextProblem::new(ahead.at..ahead.at + 1, Kind::UnknownCharacter('\\'));
        }
        ahead.skip_spaces();
        if digits > 0 && amount::is_slash(ahead.peek()) {
            ahead.advance();
            ahead.skip_spaces();
            let has_more = !ahead.take_while(|c| c.is_ascii_digit()).is_empty();
            let taken = ahead.text.get(from..ahead.at).unwrap_or("");
            if has_more && taken.contains(char::is_whitespace) {
                return TextProblem::new(from..ahead.at, Kind::SpacedFraction);
            }
        }
        self.here(Kind::ExpectedOperator)
    }

    fn here(&self, kind: Kind) -> TextProblem {
        let width = self.cursor.peek().map_or(0, char::len_utf8);
        TextProblem::new(self.cursor.at..self.cursor.at + width, kind)
    }

    /// What stands here cannot: an unknown word or character, or something that lacks `missing`.
    fn unexpected(&self, missing: Kind) -> TextProblem {
        let at = self.cursor.at;
        let word = self.cursor.word();
        let known_sign = word.eq_ignore_ascii_case("x");
        match self.cursor.peek() {
            Some(_) if missing == Kind::ExpectedOperator && amount::begins(self.cursor) => {
                self.side_by_side()
            }
            _ if amount::unit_word(word).is_some() || known_sign => {
                TextProblem::new(at..at + word.len(), missing)
            }
            _ if !word.is_empty() => {
                TextProblem::new(at..at + word.len(), Kind::UnknownWord(word.to_owned()))
            }
            Some(c) if is_invisible(c) && !c.is_whitespace() => self.here(Kind::Invisible),
            Some(c) if is_not_plain(c) => self.here(Kind::NotPlain(c)),
            Some(',') => self.here(Kind::DecimalComma),
            Some(c) if amount::begins(self.cursor) || "+-−–×*·÷/∕⁄()'\"′″’”´`".contains(c) => {
                self.here(missing)
            }
            Some(c) => self.here(Kind::UnknownCharacter(c)),
            None => TextProblem::new(at..at, missing),
        }
    }
}

/// A number that is no plain digit, such as `６` or `³`, or a wide sign such as `／`.
fn is_not_plain(c: char) -> bool {
    matches!(c, '\u{ff01}'..='\u{ff5e}')
        || (c.is_numeric() && !c.is_ascii() && amount::vulgar(c).is_none())
}

fn pair(operator: Operator, left: Formula, right: Formula) -> Formula {
    let at = left.at.start..right.at.end;
    Formula { at, node: Node::Pair(operator, Box::new(left), Box::new(right)) }
}
