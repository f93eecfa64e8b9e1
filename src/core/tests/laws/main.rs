//! Properties that hold for every input, one file for each module.

mod angles;
mod attention;
mod crosscut;
mod curve;
mod cutting_forms;
mod dowel;
mod finish;
mod frame;
mod ids;
mod job;
mod job_edits;
mod job_merge;
mod lumber;
mod measure;
mod measure_text;
mod moisture;
mod resaw;
mod resaw_rip;
mod screws;
mod spacing;
mod strength;
mod tape;
mod template;
mod top;
mod working;
