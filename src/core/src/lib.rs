//! The pure core: exact measures, the calculators and their drawings. No browser, no clock, no
//! storage, no randomness.
//!
//! Read in this order: [`measure`] (lengths and what people write), [`sheet`] (what a calculator
//! asks and answers), [`drawing`], [`tables`] (published data), [`calculators`], [`job`],
//! [`cutting`], [`planning`]. Each uses only what stands below it in the picture of
//! `DEVELOPERS.md`.

// What a user writes is answered or refused in words; nothing in here may stop the app.
#![cfg_attr(
    not(test),
    deny(
        clippy::expect_used,
        clippy::indexing_slicing,
        clippy::panic,
        clippy::string_slice,
        clippy::unreachable,
        clippy::unwrap_used
    )
)]

pub mod attention;
pub mod build_order;
pub mod calculators;
pub mod cutting;
pub mod drawing;
pub mod job;
pub mod measure;
pub mod order;
pub mod paper;
pub mod planning;
pub mod sentence;
pub mod sheet;
pub mod tables;
pub mod to_buy;
