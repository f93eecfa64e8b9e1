//! Species of wood: how much each shrinks, how stiff and strong it is, how heavy.
//!
//! Sources, all from the USDA Forest Products Laboratory Wood Handbook:
//! shrinkage from green to ovendry, FPL-GTR-190 (2010) Tables 4-3 and 4-4; dimensional change
//! for one point of moisture between 6 and 14 %, Table 13-5 (the chart of NWFA Technical
//! Publication A200 that quotes it for southern pine as one figure, teak and mesquite); specific
//! gravity, breaking stress and stiffness at 12 % moisture, Tables 5-3 and 5-5.
//!
//! Not every cell was seen when it was entered. Those that were not are marked
//! [`Trust::Unverified`]; whoever shows one says so. Strength values are those of small clear
//! straight-grained pieces, not design values.

use crate::measure::{Number, OutOfRange};

/// The document behind the shrinkage.
pub const SHRINKAGE_SOURCE: &str =
    "USDA FPL Wood Handbook, FPL-GTR-190 (2010), Tables 4-3 and 4-4: shrinkage green to ovendry";
/// The document behind the change for each point of moisture.
pub const CHANGE_SOURCE: &str =
    "USDA FPL Wood Handbook, FPL-GTR-190 (2010), Table 13-5: change for each point, 6 to 14 %";
/// The document behind gravity, breaking stress and stiffness.
pub const STRENGTH_SOURCE: &str =
    "USDA FPL Wood Handbook, FPL-GTR-190 (2010), Tables 5-3 and 5-5, at 12 % moisture";

/// How far a cell can be trusted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Trust {
    /// Read in the source or in a text copy of it.
    Read,
    /// From memory, unverified: shown with a warning, never a test oracle.
    Unverified,
}

/// One number of a table, in small whole units, and how far to trust it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cell {
    /// How many of the unit that the field names.
    pub units: u32,
    /// How far to trust it.
    pub trust: Trust,
}

impl Cell {
    /// `units / per`, exactly.
    ///
    /// # Errors
    ///
    /// [`OutOfRange`] when `per` is zero.
    pub fn over(self, per: u32) -> Result<Number, OutOfRange> {
        Number::ratio(self.units.into(), per.into())
    }
}

/// How a board lies in the tree.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Grain {
    /// Rings more or less parallel to the face: the width moves along the rings.
    FlatSawn,
    /// Rings more or less square to the face: the width moves across the rings.
    QuarterSawn,
}

impl Grain {
    /// The other way, which is how the thickness of the same board moves.
    #[must_use]
    pub fn other(self) -> Grain {
        match self {
            Grain::FlatSawn => Grain::QuarterSawn,
            Grain::QuarterSawn => Grain::FlatSawn,
        }
    }
}

/// Total shrinkage from green to ovendry, in tenths of a percent of the green size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Shrinkage {
    /// Across the rings.
    pub radial: Cell,
    /// Along the rings.
    pub tangential: Cell,
}

impl Shrinkage {
    /// That of the width of a board.
    #[must_use]
    pub fn of(self, grain: Grain) -> Cell {
        match grain {
            Grain::FlatSawn => self.tangential,
            Grain::QuarterSawn => self.radial,
        }
    }
}

/// Change of size for one point of moisture from 6 to 14 %, in hundred-thousandths of the size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Change {
    /// Across the rings: CR. Not every chart gives it.
    pub radial: Option<Cell>,
    /// Along the rings: CT.
    pub tangential: Cell,
}

impl Change {
    /// That of the width of a board.
    #[must_use]
    pub fn of(self, grain: Grain) -> Option<Cell> {
        match grain {
            Grain::FlatSawn => Some(self.tangential),
            Grain::QuarterSawn => self.radial,
        }
    }
}

/// A stress as its table prints it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pressure {
    /// Kilopascals.
    Kilopascals(u32),
    /// Pounds to the square inch.
    Psi(u32),
}

/// Kilopascals in one pound to the square inch (NIST SP 811, Appendix B).
const KILOPASCALS_IN_PSI: f64 = 6.894_757;

impl Pressure {
    /// In pounds to the square inch.
    #[must_use]
    pub fn in_psi(self) -> f64 {
        match self {
            Pressure::Kilopascals(kilopascals) => f64::from(kilopascals) / KILOPASCALS_IN_PSI,
            Pressure::Psi(psi) => f64::from(psi),
        }
    }
}

/// Clear wood at 12 % moisture.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Strength {
    /// Specific gravity in hundredths: ovendry mass over volume at 12 %. All three values of a
    /// species have the trust of this cell.
    pub gravity: Cell,
    /// Breaking stress in bending (modulus of rupture).
    pub rupture: Pressure,
    /// Modulus of elasticity.
    pub stiffness: Pressure,
}

/// What is known of one species.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Species {
    /// Stable name, also in links.
    pub id: &'static str,
    /// For the user.
    pub name: &'static str,
    /// Total shrinkage.
    pub shrinkage: Option<Shrinkage>,
    /// Change for each point of moisture.
    pub change: Option<Change>,
    /// Gravity, breaking stress and stiffness.
    pub strength: Option<Strength>,
}

const fn read(units: u32) -> Cell {
    Cell { units, trust: Trust::Read }
}

const fn unseen(units: u32) -> Cell {
    Cell { units, trust: Trust::Unverified }
}

const fn shrinks(radial: Cell, tangential: Cell) -> Option<Shrinkage> {
    Some(Shrinkage { radial, tangential })
}

const fn moves(radial: Option<Cell>, tangential: Cell) -> Option<Change> {
    Some(Change { radial, tangential })
}

/// Breaking stress in kPa, stiffness in MPa.
const fn metric(gravity: Cell, rupture: u32, stiffness: u32) -> Option<Strength> {
    let stiffness = Pressure::Kilopascals(stiffness * 1000);
    Some(Strength { gravity, rupture: Pressure::Kilopascals(rupture), stiffness })
}

/// Both in psi.
const fn inch_pound(gravity: Cell, rupture: u32, stiffness: u32) -> Option<Strength> {
    Some(Strength { gravity, rupture: Pressure::Psi(rupture), stiffness: Pressure::Psi(stiffness) })
}

const fn wood(
    id: &'static str,
    name: &'static str,
    shrinkage: Option<Shrinkage>,
    change: Option<Change>,
    strength: Option<Strength>,
) -> Species {
    Species { id, name, shrinkage, change, strength }
}

/// Every species.
#[rustfmt::skip]
pub const SPECIES: [Species; 53] = [
    wood("loblolly_pine", "Loblolly pine", shrinks(read(48), read(74)), moves(Some(unseen(165)), unseen(259)), metric(read(51), 88000, 12300)),
    wood("longleaf_pine", "Longleaf pine", shrinks(read(51), read(75)), moves(Some(unseen(176)), unseen(263)), metric(read(59), 100000, 13700)),
    wood("shortleaf_pine", "Shortleaf pine", shrinks(read(46), read(77)), moves(Some(unseen(158)), unseen(271)), metric(read(51), 90000, 12100)),
    wood("slash_pine", "Slash pine", shrinks(read(54), read(76)), moves(Some(unseen(187)), unseen(267)), metric(read(59), 112000, 13700)),
    wood("douglas_fir", "Douglas-fir, coast", shrinks(read(48), read(76)), moves(Some(unseen(165)), read(267)), metric(read(48), 85000, 13400)),
    wood("douglas_fir_north", "Douglas-fir, interior north", shrinks(read(38), read(69)), None, None),
    wood("douglas_fir_west", "Douglas-fir, interior west", shrinks(read(48), read(75)), None, None),
    wood("western_redcedar", "Western redcedar", shrinks(read(24), read(50)), moves(Some(unseen(111)), unseen(234)), metric(read(32), 51700, 7700)),
    wood("atlantic_white_cedar", "Atlantic white cedar", shrinks(read(29), read(54)), None, metric(read(32), 47000, 6400)),
    wood("eastern_redcedar", "Eastern redcedar", shrinks(read(31), read(47)), None, metric(read(47), 61000, 6100)),
    wood("northern_white_cedar", "Northern white cedar", shrinks(read(22), read(49)), None, metric(read(31), 45000, 5500)),
    wood("incense_cedar", "Incense cedar", shrinks(read(33), read(52)), None, None),
    wood("port_orford_cedar", "Port-Orford cedar", shrinks(read(46), read(69)), None, None),
    wood("yellow_cedar", "Yellow cedar", shrinks(read(28), read(60)), None, metric(read(44), 77000, 9800)),
    wood("balsam_fir", "Balsam fir", shrinks(read(29), read(69)), None, metric(read(35), 63000, 10000)),
    wood("subalpine_fir", "Subalpine fir", shrinks(read(26), read(74)), None, metric(read(32), 59000, 8900)),
    wood("white_fir", "White fir", shrinks(read(33), read(70)), moves(Some(read(112)), unseen(245)), None),
    wood("western_hemlock", "Western hemlock", shrinks(read(42), read(78)), moves(Some(unseen(144)), unseen(274)), metric(read(45), 78000, 11300)),
    wood("western_larch", "Western larch", shrinks(read(45), read(91)), None, metric(read(52), 90000, 12900)),
    wood("jack_pine", "Jack pine", shrinks(read(37), read(66)), None, metric(read(43), 68000, 9300)),
    wood("lodgepole_pine", "Lodgepole pine", shrinks(read(43), read(67)), moves(Some(unseen(148)), unseen(234)), metric(read(41), 65000, 9200)),
    wood("engelmann_spruce", "Engelmann spruce", shrinks(read(38), read(71)), None, metric(read(35), 64000, 8900)),
    wood("baldcypress", "Baldcypress", shrinks(read(38), read(62)), moves(Some(unseen(130)), unseen(216)), metric(read(46), 73000, 9900)),
    wood("eastern_white_pine", "Eastern white pine", shrinks(unseen(21), unseen(61)), moves(Some(unseen(71)), unseen(212)), metric(read(35), 59000, 8500)),
    wood("ponderosa_pine", "Ponderosa pine", shrinks(unseen(39), unseen(62)), moves(Some(unseen(133)), unseen(216)), metric(read(40), 65000, 8900)),
    wood("redwood_old", "Redwood, old-growth", shrinks(unseen(26), unseen(44)), moves(Some(unseen(120)), unseen(205)), metric(read(40), 69000, 9200)),
    wood("redwood_young", "Redwood, young-growth", shrinks(unseen(22), unseen(49)), moves(Some(unseen(101)), unseen(229)), metric(read(35), 54000, 7600)),
    wood("red_spruce", "Red spruce", shrinks(unseen(38), unseen(78)), None, metric(read(40), 74000, 11400)),
    wood("white_oak", "White oak", shrinks(read(56), read(105)), None, metric(read(68), 105000, 12300)),
    wood("northern_red_oak", "Northern red oak", shrinks(read(40), read(86)), None, metric(read(63), 99000, 12500)),
    wood("sugar_maple", "Sugar maple", shrinks(read(48), read(99)), moves(Some(read(165)), read(353)), metric(read(63), 109000, 12600)),
    wood("black_walnut", "Black walnut", shrinks(read(55), read(78)), moves(Some(read(190)), read(274)), metric(read(55), 101000, 11600)),
    wood("black_cherry", "Black cherry", shrinks(read(37), read(71)), moves(Some(read(126)), read(248)), metric(read(50), 85000, 10300)),
    wood("white_ash", "White ash", shrinks(read(49), read(78)), moves(Some(read(169)), read(274)), metric(read(60), 103000, 12000)),
    wood("yellow_poplar", "Yellow-poplar", shrinks(read(46), read(82)), None, metric(read(42), 70000, 10900)),
    wood("black_locust", "Black locust", shrinks(unseen(46), unseen(72)), moves(Some(read(158)), read(252)), metric(read(69), 134000, 14100)),
    wood("mahogany", "True mahogany", shrinks(unseen(30), unseen(41)), None, None),
    wood("afrormosia", "Afrormosia", shrinks(read(30), read(64)), None, None),
    wood("ipe", "Ipe", shrinks(unseen(66), unseen(80)), None, inch_pound(unseen(92), 25400, 3140000)),
    wood("teak", "Teak", shrinks(unseen(25), unseen(58)), moves(None, read(186)), inch_pound(read(55), 14600, 1550000)),
    wood("red_oak", "Red oak, as sold", None, moves(Some(read(158)), read(369)), None),
    wood("white_oak_sold", "White oak, as sold", None, moves(Some(read(180)), read(365)), None),
    wood("beech", "American beech", None, moves(Some(read(190)), read(431)), None),
    wood("yellow_birch", "Yellow birch", None, moves(Some(read(256)), read(338)), None),
    wood("red_alder", "Red alder", None, moves(Some(read(151)), read(256)), None),
    wood("sweetgum", "Sweetgum", None, moves(Some(read(183)), read(365)), None),
    wood("sycamore", "American sycamore", None, moves(Some(read(172)), read(296)), None),
    wood("pecan", "Pecan hickory", None, moves(Some(read(169)), read(315)), None),
    wood("honeylocust", "Honeylocust", None, moves(Some(read(144)), read(230)), None),
    wood("chestnut", "American chestnut", None, moves(Some(read(116)), read(234)), None),
    wood("southern_pine", "Southern pine, mixed", None, moves(None, read(265)), None),
    wood("mesquite", "Mesquite", None, moves(None, read(129)), None),
    wood("white_spruce", "White spruce", None, None, metric(read(36), 65000, 9600)),
];

/// The species with this id.
#[must_use]
pub fn species(id: &str) -> Option<&'static Species> {
    const ALL: &[Species] = &SPECIES;
    ALL.iter().find(|species| species.id == id)
}

/// The moisture, in percent, above which the strength of this species no longer falls: the
/// intersection moisture Mp of Wood Handbook FPL-GTR-282 (2021) Table 5-13; 25 where none is
/// listed.
#[must_use]
pub fn strength_falls_until(id: &str) -> u32 {
    match id {
        "douglas_fir" | "white_ash" => 24,
        "loblolly_pine" | "longleaf_pine" | "redwood_old" | "redwood_young" => 21,
        "western_hemlock" | "western_larch" => 28,
        "red_spruce" => 27,
        _ => 25,
    }
}
