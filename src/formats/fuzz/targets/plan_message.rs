//! Any message to or from the planner: reading it never panics, and what is read is written and read the same.
#![no_main]

use libfuzzer_sys::fuzz_target;
use reckoner_formats::{
    number_of_reply, read_cut, read_question, read_reply, write_cut, write_question,
};

fuzz_target!(|text: &str| {
    let _ = number_of_reply(text);
    if let Ok(question) = read_question(text) {
        let _ = read_reply(text, &question.job);
        assert_eq!(read_question(&write_question(&question)), Ok(question));
    }
    if let Ok((job, plan)) = read_cut(text) {
        assert_eq!(read_cut(&write_cut(&job, &plan)), Ok((job, plan)));
    }
});
