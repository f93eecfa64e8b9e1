//! Published data as constants, each with its source and how far it can be trusted.

pub mod air;
pub mod beams;
pub mod fasteners;
pub mod furniture;
pub mod gravity;
pub mod lumber;
pub mod shrinkage;
pub mod species;
