//! The page of a calculator: the same for all of them, drawn from what they ask and answer.

pub(crate) mod answer;
mod page;

pub(crate) use answer::wanting;
pub(crate) use page::{
    CalculatorPage, Opening, last_tools, link_trouble, unit_choice, use_address,
};
