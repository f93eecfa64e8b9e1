//! Bounds that the checker of plans works out again, against bounds worked out by hand.

use reckoner_core::cutting::{
    Board, Certificate, CertificateFault, Claim, CrossSize, Ends, Job, Part, RipRules, SawRules,
    Section, check_certificate,
};

/// Boards 21 wide at 5.00, 100 long, of which two strips of 10 are ripped with a kerf of 1; so many strips are wanted.
fn strips(quantity: u32) -> Job {
    let section = |id: &str, width| Section {
        id: id.to_owned(),
        wood: "fir".to_owned(),
        size: Some(CrossSize { width, thickness: 2 }),
    };
    Job {
        sections: vec![section("wide", 21), section("strip", 10)],
        parts: vec![Part {
            id: "strip".to_owned(),
            name: "strip".to_owned(),
            section: "strip".to_owned(),
            length: 100,
            quantity,
            priority: 1,
            may_rip: true,
            may_resaw: false,
            grain_free: false,
        }],
        boards: vec![Board {
            id: "wide".to_owned(),
            section: "wide".to_owned(),
            length: 100,
            price_cents: 500,
            limit: None,
            trims: Ends::default(),
            knots: Vec::new(),
        }],
        scraps: Vec::new(),
        saw: SawRules {
            kerf: 1,
            rip: Some(RipRules {
                kerf: 1,
                near_edge: 0,
                far_edge: 0,
                least_width: 1,
                least_length: 0,
                crosscut_first: false,
                resaw: None,
            }),
        },
    }
}

/// By hand: a board gives 10 + 1 + 10 = 21, two strips; four strips take two boards, 10.00, and five take three, 15.00.
#[test]
fn a_bound_counts_what_is_ripped_from_wider_boards() {
    let fault = |quantity, bound_cents| {
        let claim = Claim::Worth(vec![1]);
        check_certificate(&strips(quantity), &Certificate { parts: vec![0], bound_cents, claim })
    };
    assert_eq!(fault(4, 1_000), Ok(()));
    assert_eq!(fault(4, 1_001), Err(CertificateFault::NotProved));
    assert_eq!(fault(5, 1_500), Ok(()));
    assert_eq!(fault(5, 1_501), Err(CertificateFault::NotProved));
}
