//! The pure core: exact measures, the calculators and their drawings. No browser, no clock, no
//! storage, no randomness.
//!
//! Read in this order: [`measure`] (lengths and what people write), [`sheet`] (what a calculator
//! asks and answers), [`drawing`], [`tables`] (published data), [`calculators`], [`cutting`].

// What a user writes is answered or refused in words; nothing in here may stop the app.
#![cfg_attr(
    not(test),
    deny(
        clippy::expect_used,
        clippy::indexing_slicing,
        clippy::panic,
        clippy::unreachable,
        clippy::unwrap_used
    )
)]

pub mod calculators;
pub mod cutting;
pub mod drawing;
pub mod job;
pub mod measure;
mod order;
pub mod paper;
pub mod sentence;
pub mod sheet;
pub mod tables;
