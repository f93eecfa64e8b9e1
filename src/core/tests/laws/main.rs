//! Properties that hold for every input, one file for each module.

mod crosscut;
mod frame;
mod measure;
mod tape;
