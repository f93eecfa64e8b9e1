//! Reads a formula. The grammar is stated in [the module above](super).

use super::amount::{self, Amount, Cursor};
use super::formula::{Formula, Names, Node, Operator};
use super::problem::{TextProblem, TextProblemKind as Kind};
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
    match parser.cursor.peek() {
        None => Ok(formula),
        Some(')') => Err(parser.here(Kind::UnopenedBracket)),
        Some(_) => Err(parser.unexpected(Kind::ExpectedOperator)),
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
        while let Some((operator, tight)) = self.take_operator(&[Operator::Add, Operator::Subtract])
        {
            let right = self.product(tight && operator == Operator::Subtract)?;
            left = pair(operator, left, right);
        }
        Ok(left)
    }

    fn product(&mut self, tight_minus_before: bool) -> Result<Formula, TextProblem> {
        let mut left = self.factor(tight_minus_before)?;
        while let Some((operator, _)) = self.take_operator(&[Operator::Multiply, Operator::Divide])
        {
            let right = self.factor(false)?;
            left = pair(operator, left, right);
        }
        Ok(left)
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

    /// Takes one of the wanted signs; tells whether it had no space on either side.
    fn take_operator(&mut self, wanted: &[Operator]) -> Option<(Operator, bool)> {
        let operator = match self.cursor.peek()? {
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
        let space_before = self
            .cursor
            .text
            .get(..self.cursor.at)
            .is_some_and(|t| t.ends_with(char::is_whitespace));
        self.cursor.advance();
        let space_after = self.cursor.peek().is_some_and(char::is_whitespace);
        Some((operator, !space_before && !space_after))
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
            _ if amount::unit_word(word).is_some() || known_sign => {
                TextProblem::new(at..at + word.len(), missing)
            }
            _ if !word.is_empty() => {
                TextProblem::new(at..at + word.len(), Kind::UnknownWord(word.to_owned()))
            }
            Some(',') => self.here(Kind::DecimalComma),
            Some(c) if amount::begins(self.cursor) || "+-−–×*·÷/∕⁄()'\"′″’”".contains(c) => {
                self.here(missing)
            }
            Some(c) => self.here(Kind::UnknownCharacter(c)),
            None => TextProblem::new(at..at, missing),
        }
    }
}

fn pair(operator: Operator, left: Formula, right: Formula) -> Formula {
    let at = left.at.start..right.at.end;
    Formula { at, node: Node::Pair(operator, Box::new(left), Box::new(right)) }
}
