//! Steps in words, with the reason: a list that only gets shorter.

/// Rules of one calculator.
pub(super) struct Listed {
    /// The calculator.
    pub(super) slug: &'static str,
    /// Rules, as the page shows them, whose numbers the reader of lengths cannot read, and why.
    pub(super) in_words: &'static [(&'static str, &'static str)],
}

/// By calculator.
pub(super) const LIST: &[Listed] =
    &[CROSSCUT, CURVE, DOWEL, FINISH, LUMBER, MOISTURE, SCREWS, SPACING, STRENGTH, TAPE, TOP];

const CROSSCUT: Listed = Listed {
    slug: "crosscut",
    in_words: &[(
        "each piece begins one kerf after the last, or where the next knot ends",
        "a walk past the knots",
    )],
};

const CURVE: Listed = Listed {
    slug: "curve",
    in_words: &[
        ("height at a mark = √(radius² - mark²) - (radius - rise)", "a root, for a list of marks"),
        (
            "height up to the middle = radius - √(radius² - mark²); beyond it, turned over",
            "a root, for a list of marks",
        ),
    ],
};

const DOWEL: Listed = Listed {
    slug: "dowel",
    in_words: &[(
        "bit = dowel at its thickest, up to the next bit",
        "a caliper's decimals are rounded, and the bit is found from the size itself",
    )],
};

const FINISH: Listed = Listed {
    slug: "finish",
    in_words: &[
        ("cans that hold it", "the cheapest of a few cans"),
        ("cans that hold it, four quarts to a gallon", "the cheapest of a few cans"),
    ],
};

const LUMBER: Listed = Listed {
    slug: "lumber",
    in_words: &[
        ("thickness = as measured, or else as in the table", "read from a table or off the board"),
        ("width = as measured, or else as in the table", "read from a table or off the board"),
    ],
};

const MOISTURE: Listed = Listed {
    slug: "moisture",
    in_words: &[
        ("M = 100 × (A T (1 - T ÷ Tc)^B ln(1 - h))^(C T^D)", "a power"),
        (
            "M = 1800 ÷ W × (Kh ÷ (1 - Kh) + (K1 Kh + 2 K1 K2 (Kh)²) ÷ (1 + K1 Kh + K1 K2 (Kh)²))",
            "constants that are themselves curves of the warmth",
        ),
        ("driest month of the place", "read from a table"),
        ("wettest month of the place", "read from a table"),
    ],
};

const SCREWS: Listed = Listed {
    slug: "screws",
    in_words: &[
        ("pull per inch = 1380 G^2.5 D", "a power"),
        ("pull per inch = 1800 G^1.5 D^0.75, × 0.7 when wet, × 0.75 in end grain", "a power"),
        (
            "side load = least of six yield modes, × 0.7 when wet, × 0.67 in end grain",
            "the least of six, with roots",
        ),
        ("wood between = shortest way between the axes, ended at their tips, - diameter", "a root"),
        ("wood between = widest gap between the two boxes", "the largest of three ways"),
    ],
};

const SPACING: Listed = Listed {
    slug: "spacing",
    in_words: &[
        ("fewest gaps that keep clear and leave a mark", "a search"),
        ("mark = end distance + whole steps, from each end, up to the middle", "a list of marks"),
    ],
};

const STRENGTH: Listed = Listed {
    slug: "strength",
    in_words: &[
        ("moment, where it is greatest", "a search"),
        ("sag = sum of the sags of all loads, where it is greatest", "a search"),
        ("stiffness at its moisture = P12 × (P12 ÷ Pg)^((12 - M) ÷ (Mp - 12))", "a power"),
    ],
};

const TAPE: Listed = Listed {
    slug: "tape",
    in_words: &[
        ("length = what the line comes to", "the line itself is the formula"),
        ("mark i = i × length ÷ parts, never by adding rounded parts", "a list of marks"),
        ("what the line comes to", "the line itself is the formula"),
    ],
};

const TOP: Listed = Listed {
    slug: "top",
    in_words: &[
        ("a load over the feet lifts nothing", "nothing to work out"),
        ("left edge of a plank = planks and gaps before it", "a list of edges"),
    ],
};
