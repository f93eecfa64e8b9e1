//! The woods offered, those of outdoor work first.

use crate::sheet::Choice;

/// Ordinary softwood, then every species of which a shrinkage or a coefficient is in the table.
pub(super) const WOODS: &[Choice] = &[
    Choice { id: "softwood", label: "Ordinary softwood" },
    Choice { id: "southern_pine", label: "Southern pine, mixed" },
    Choice { id: "loblolly_pine", label: "Loblolly pine" },
    Choice { id: "longleaf_pine", label: "Longleaf pine" },
    Choice { id: "shortleaf_pine", label: "Shortleaf pine" },
    Choice { id: "slash_pine", label: "Slash pine" },
    Choice { id: "douglas_fir", label: "Douglas-fir, coast" },
    Choice { id: "douglas_fir_north", label: "Douglas-fir, interior north" },
    Choice { id: "douglas_fir_west", label: "Douglas-fir, interior west" },
    Choice { id: "western_hemlock", label: "Western hemlock" },
    Choice { id: "western_larch", label: "Western larch" },
    Choice { id: "white_fir", label: "White fir" },
    Choice { id: "balsam_fir", label: "Balsam fir" },
    Choice { id: "subalpine_fir", label: "Subalpine fir" },
    Choice { id: "lodgepole_pine", label: "Lodgepole pine" },
    Choice { id: "jack_pine", label: "Jack pine" },
    Choice { id: "engelmann_spruce", label: "Engelmann spruce" },
    Choice { id: "red_spruce", label: "Red spruce" },
    Choice { id: "eastern_white_pine", label: "Eastern white pine" },
    Choice { id: "ponderosa_pine", label: "Ponderosa pine" },
    Choice { id: "western_redcedar", label: "Western redcedar" },
    Choice { id: "northern_white_cedar", label: "Northern white cedar" },
    Choice { id: "atlantic_white_cedar", label: "Atlantic white cedar" },
    Choice { id: "incense_cedar", label: "Incense cedar" },
    Choice { id: "port_orford_cedar", label: "Port-Orford cedar" },
    Choice { id: "yellow_cedar", label: "Yellow cedar" },
    Choice { id: "eastern_redcedar", label: "Eastern redcedar" },
    Choice { id: "redwood_old", label: "Redwood, old-growth" },
    Choice { id: "redwood_young", label: "Redwood, young-growth" },
    Choice { id: "baldcypress", label: "Baldcypress" },
    Choice { id: "white_oak", label: "White oak" },
    Choice { id: "white_oak_sold", label: "White oak, as sold" },
    Choice { id: "northern_red_oak", label: "Northern red oak" },
    Choice { id: "red_oak", label: "Red oak, as sold" },
    Choice { id: "black_locust", label: "Black locust" },
    Choice { id: "honeylocust", label: "Honeylocust" },
    Choice { id: "mesquite", label: "Mesquite" },
    Choice { id: "sugar_maple", label: "Sugar maple" },
    Choice { id: "white_ash", label: "White ash" },
    Choice { id: "beech", label: "American beech" },
    Choice { id: "yellow_birch", label: "Yellow birch" },
    Choice { id: "red_alder", label: "Red alder" },
    Choice { id: "pecan", label: "Pecan hickory" },
    Choice { id: "black_walnut", label: "Black walnut" },
    Choice { id: "black_cherry", label: "Black cherry" },
    Choice { id: "yellow_poplar", label: "Yellow-poplar" },
    Choice { id: "sweetgum", label: "Sweetgum" },
    Choice { id: "sycamore", label: "American sycamore" },
    Choice { id: "chestnut", label: "American chestnut" },
    Choice { id: "mahogany", label: "True mahogany" },
    Choice { id: "afrormosia", label: "Afrormosia" },
    Choice { id: "teak", label: "Teak" },
    Choice { id: "ipe", label: "Ipe" },
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
