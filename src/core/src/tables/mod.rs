//! Published data as constants, each with its source and how far it can be trusted.

pub mod lumber;
