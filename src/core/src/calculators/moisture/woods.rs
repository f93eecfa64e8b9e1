//! The woods offered, those of outdoor work first.

use crate::sheet::Choice;

pub(super) const SOFTWOOD: Choice = Choice::new("softwood", "Ordinary softwood");
pub(super) const WESTERN_LARCH: Choice = Choice::new("western_larch", "Western larch");
pub(super) const SUBALPINE_FIR: Choice = Choice::new("subalpine_fir", "Subalpine fir");

/// Ordinary softwood, then every species of which a shrinkage or a coefficient is in the table.
pub(super) const WOODS: &[Choice] = &[
    SOFTWOOD,
    Choice::new("southern_pine", "Southern pine, mixed"),
    Choice::new("loblolly_pine", "Loblolly pine"),
    Choice::new("longleaf_pine", "Longleaf pine"),
    Choice::new("shortleaf_pine", "Shortleaf pine"),
    Choice::new("slash_pine", "Slash pine"),
    Choice::new("douglas_fir", "Douglas-fir, coast"),
    Choice::new("douglas_fir_north", "Douglas-fir, interior north"),
    Choice::new("douglas_fir_west", "Douglas-fir, interior west"),
    Choice::new("western_hemlock", "Western hemlock"),
    WESTERN_LARCH,
    Choice::new("white_fir", "White fir"),
    Choice::new("balsam_fir", "Balsam fir"),
    SUBALPINE_FIR,
    Choice::new("lodgepole_pine", "Lodgepole pine"),
    Choice::new("jack_pine", "Jack pine"),
    Choice::new("engelmann_spruce", "Engelmann spruce"),
    Choice::new("red_spruce", "Red spruce"),
    Choice::new("eastern_white_pine", "Eastern white pine"),
    Choice::new("ponderosa_pine", "Ponderosa pine"),
    Choice::new("western_redcedar", "Western redcedar"),
    Choice::new("northern_white_cedar", "Northern white cedar"),
    Choice::new("atlantic_white_cedar", "Atlantic white cedar"),
    Choice::new("incense_cedar", "Incense cedar"),
    Choice::new("port_orford_cedar", "Port-Orford cedar"),
    Choice::new("yellow_cedar", "Yellow cedar"),
    Choice::new("eastern_redcedar", "Eastern redcedar"),
    Choice::new("redwood_old", "Redwood, old-growth"),
    Choice::new("redwood_young", "Redwood, young-growth"),
    Choice::new("baldcypress", "Baldcypress"),
    Choice::new("white_oak", "White oak"),
    Choice::new("white_oak_sold", "White oak, as sold"),
    Choice::new("northern_red_oak", "Northern red oak"),
    Choice::new("red_oak", "Red oak, as sold"),
    Choice::new("black_locust", "Black locust"),
    Choice::new("honeylocust", "Honeylocust"),
    Choice::new("mesquite", "Mesquite"),
    Choice::new("sugar_maple", "Sugar maple"),
    Choice::new("white_ash", "White ash"),
    Choice::new("beech", "American beech"),
    Choice::new("yellow_birch", "Yellow birch"),
    Choice::new("red_alder", "Red alder"),
    Choice::new("pecan", "Pecan hickory"),
    Choice::new("black_walnut", "Black walnut"),
    Choice::new("black_cherry", "Black cherry"),
    Choice::new("yellow_poplar", "Yellow-poplar"),
    Choice::new("sweetgum", "Sweetgum"),
    Choice::new("sycamore", "American sycamore"),
    Choice::new("chestnut", "American chestnut"),
    Choice::new("mahogany", "True mahogany"),
    Choice::new("afrormosia", "Afrormosia"),
    Choice::new("teak", "Teak"),
    Choice::new("ipe", "Ipe"),
];

/// Every wood that is a species.
pub(super) const SPECIES_IDS: &[&str] = &{
    let mut ids = [""; WOODS.len() - 1];
    let mut i = 0;
    while i < ids.len() {
        ids[i] = WOODS[i + 1].id;
        i += 1;
    }
    ids
};
