//! Yield modes of a dowel-type fastener in single shear: what gives way first under a side load.

/// What gives way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mode {
    /// The receiver is crushed along the whole length (Im).
    ReceiverCrushed,
    /// The piece under the head is crushed (Is).
    TopCrushed,
    /// Both are crushed and the fastener tilts (II).
    Tilts,
    /// It bends in the receiver (IIIm).
    BendsInReceiver,
    /// It bends in the piece under the head (IIIs).
    BendsInTop,
    /// It bends in both (IV).
    BendsInBoth,
}

/// One of the two pieces.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Member {
    /// Length of the fastener that bears in it, in inches.
    pub thickness: f64,
    /// Bearing strength in psi.
    pub bearing: f64,
}

/// Bearing strength of wood for a fastener under 1/4 in, in psi: 16 600 G^1.84, to the nearest
/// 50 as in the table.
///
/// # Source
///
/// AWC NDS 2018 Table 12.3.3, note 2.
#[must_use]
pub fn bearing_strength(gravity: f64) -> f64 {
    libm::round(16_600.0 * libm::pow(gravity, 1.84) / 50.0) * 50.0
}

/// The least of six yield modes, in pounds, and which it is.
///
/// `diameter` is the root for screws, in inches; `bending` the bending yield strength in psi.
/// `None` when a value is not finite or not above zero.
///
/// # Source
///
/// AWC NDS 2018 Tables 12.3.1A and 12.3.1B, for a diameter under 1/4 in.
#[must_use]
pub fn reckon(diameter: f64, bending: f64, side: Member, main: Member) -> Option<(f64, Mode)> {
    let reduction = if diameter <= 0.17 { 2.2 } else { 10.0 * diameter + 0.5 };
    let (ls, lm, fes, fem) = (side.thickness, main.thickness, side.bearing, main.bearing);
    let re = fem / fes;
    let rt = lm / ls;
    let bend = 2.0 * bending * diameter * diameter / (3.0 * fem);
    let k1 = (libm::sqrt(re + 2.0 * re * re * (1.0 + rt + rt * rt) + rt * rt * re * re * re)
        - re * (1.0 + rt))
        / (1.0 + re);
    let k2 = -1.0 + libm::sqrt(2.0 * (1.0 + re) + bend * (1.0 + 2.0 * re) / (lm * lm));
    let k3 = -1.0 + libm::sqrt(2.0 * (1.0 + re) / re + bend * (2.0 + re) / (ls * ls));
    let both = libm::sqrt(2.0 * fem * bending / (3.0 * (1.0 + re)));
    let loads = [
        (diameter * lm * fem, Mode::ReceiverCrushed),
        (diameter * ls * fes, Mode::TopCrushed),
        (k1 * diameter * ls * fes, Mode::Tilts),
        (k2 * diameter * lm * fem / (1.0 + 2.0 * re), Mode::BendsInReceiver),
        (k3 * diameter * ls * fem / (2.0 + re), Mode::BendsInTop),
        (diameter * diameter * both, Mode::BendsInBoth),
    ];
    let mut least: Option<(f64, Mode)> = None;
    for (load, mode) in loads {
        let load = load / reduction;
        if !load.is_finite() || load <= 0.0 {
            return None;
        }
        if least.is_none_or(|(so_far, _)| load < so_far) {
            least = Some((load, mode));
        }
    }
    least
}
