//! The page of a calculator: the same for all of them, drawn from what they ask and answer.

pub(crate) mod answer;
mod kept;
mod page;
mod question;

pub(crate) use answer::wanting;
pub(crate) use page::{
    Opening, last_tools, link_trouble, page, unit_choice, use_address, use_last_answer, use_narrow,
};
pub(crate) use question::question;
