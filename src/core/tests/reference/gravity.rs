//! Assigned specific gravity of every group that was read.

use reckoner_core::tables::gravity;

/// AWC NDS 2018 Table 12.3.3A, p. 87.
#[test]
fn every_group_has_its_assigned_gravity() {
    let rows = [
        ("Southern pine", 0.55),
        ("Mixed southern pine", 0.51),
        ("Douglas fir-larch", 0.50),
        ("Hem-fir", 0.43),
        ("Spruce-pine-fir", 0.42),
        ("Spruce-pine-fir (south)", 0.36),
        ("Western cedars", 0.36),
        ("Redwood", 0.37),
        ("Eastern white pine", 0.36),
        ("Red oak", 0.67),
        ("White oak", 0.73),
        ("Mixed maple", 0.55),
        ("Northern white cedar", 0.31),
        ("Ponderosa pine", 0.43),
        ("Yellow poplar", 0.43),
        ("Alaska yellow cedar", 0.46),
        ("Western hemlock", 0.47),
    ];
    assert_eq!(rows.len(), gravity::GROUPS.len());
    for ((name, published), group) in rows.iter().zip(&gravity::GROUPS) {
        assert_eq!((group.name, group.gravity()), (*name, *published));
    }
}
