//! Properties that hold for every input, one file for each module.

mod measure;
mod tape;
