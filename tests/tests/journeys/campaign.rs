//! A few walks of the campaign, always the same: `cargo xtask soak` takes hundreds.

use reckoner_e2e::campaign::{Plan, campaign};

#[test]
fn nothing_that_is_typed_is_lost_whatever_way_out_is_taken() {
    let outcome = campaign(&Plan { first: 1, walks: 4, at_once: 1, goes_on: false });
    let stories = [outcome.losses, outcome.stuck].concat();
    assert!(stories.is_empty(), "{}", stories.join("\n"));
    assert_eq!(outcome.walks, 4);
}
