//! The pure core: exact measures, the calculators, the drawings. No browser, no clock, no storage.
