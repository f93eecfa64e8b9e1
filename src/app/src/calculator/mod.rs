//! The page of a calculator: the same for all of them, drawn from what they ask and answer.

pub(crate) mod answer;
mod page;

pub(crate) use page::{CalculatorPage, Opening};
