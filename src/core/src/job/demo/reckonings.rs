//! The reckonings of the demo job: one of every calculator that a real bench would need, with the
//! names of the job in their fields.

/// Calculator, title, entries.
type KeptEntry = (&'static str, &'static str, &'static [(&'static str, &'static str)]);

#[rustfmt::skip]
pub(super) const KEPT: &[KeptEntry] = &[
    ("tape", "Half of the long rail", &[("strip", "long rail / 2"), ("start_mark", "1")]),
    ("lumber", "Boards over the shelf", &[
        ("ask", "cover"), ("section", "1x6"), ("cover_width", "frame inside"), ("gap", "3/8"), ("waste", "15"),
    ]),
    ("moisture", "Gaps for wet planks", &[
        ("ask", "gap"), ("width", "ripped plank"), ("boards", "5"), ("known", "today"), ("gap_later", "1/4"),
    ]),
    ("resaw-rip", "Legs from 4x4 posts", &[
        ("question", "section"), ("stock", "4x4"), ("target_width", "leg"), ("target_thickness", "leg"),
        ("n_pieces", "4"), ("piece_length", "leg length"),
    ]),
    ("resaw-rip", "Rails from a wide board", &[
        ("question", "strips"), ("board", "2x8"), ("plan", "fit"), ("strip_width", "rail width"),
        ("piece_length", "long rail"),
    ]),
    ("crosscut", "Slats from a board", &[("board", "96"), ("part", "slat length"), ("wanted", "14")]),
    ("frame", "Front frame", &[("overall", "overall length"), ("leg_left", "leg")]),
    ("frame", "End frame", &[("overall", "overall depth"), ("leg_left", "leg")]),
    ("frame", "Block under a rail", &[
        ("question", "spacer"), ("lay", "inside"), ("leg", "leg"), ("rail_thickness", "rail"), ("set_back", "set-back"),
    ]),
    ("frame", "Shelf rail on the leg", &[
        ("question", "stretcher"), ("height", "shelf height - 3/4"), ("height_to", "upper"),
        ("stretcher_width", "rail width"), ("leg_length", "leg length"), ("apron_width", "rail width"),
    ]),
    ("dowel", "Dowel for hand tools", &[
        ("overall", "overall length - 2 × set-back"), ("left_part", "rail"), ("trim", "dowel trim"),
        ("dowel", "0.985"), ("part_height", "rail width"), ("part_length", "short rail"), ("from_front", "5"),
    ]),
    ("screws", "Screws through the planks", &[
        ("question", "length"), ("gauge", "screw_8"), ("top_thickness", "plank"), ("receiver_thickness", "rail width"),
        ("at_hand", "2 1/2"),
    ]),
    ("screws", "Planks screwed down", &[
        ("question", "buy"), ("gauge", "screw_8"), ("screw_length", "2 1/2"), ("planks", "5"), ("rails", "2"),
        ("per_crossing", "2"), ("spare", "10"),
    ]),
    ("screws", "Shelf slats screwed down", &[
        ("question", "buy"), ("gauge", "screw_8"), ("screw_length", "2"), ("planks", "14"), ("rails", "2"),
        ("per_crossing", "2"), ("spare", "10"),
    ]),
    ("spacing", "Slats along the shelf", &[
        ("mode", "slats"), ("length", "frame inside"), ("slat_width", "slat"), ("slats", "14"),
    ]),
    ("top", "Top planks", &[
        ("find", "rip_all"), ("planks", "5 @ plank width"), ("top_width", "top depth"), ("gap", "5/16"),
    ]),
    ("top", "Where the top lands", &[
        ("question", "overhang"), ("base_length", "overall length"), ("base_width", "overall depth"),
        ("top_length", "top length"), ("top_across", "top depth"),
    ]),
    ("curve", "End bracket", &[
        ("mode", "corner"), ("radius", "4 3/4"), ("corner", "90"), ("corners", "one"), ("edge", "5 1/2"),
        ("things", "6 5/8, 9 1/2"),
    ]),
    ("curve", "Arch under the shelf rail", &[
        ("mode", "arc"), ("chord", "frame inside - 4"), ("rise", "1"), ("board", "rail width"), ("keep", "2"),
    ]),
    ("angles", "Sides of the soil tray", &[
        ("mode", "sides"), ("sides", "4"), ("lean", "15"), ("across", "short rail"), ("board", "plank width"),
    ]),
    ("strength", "Pots on the top", &[
        ("across", "ripped plank"), ("depth", "plank"), ("span", "long rail"), ("load", "point"), ("pounds", "60"),
        ("middle_supports", "1"),
    ]),
    ("finish", "Oil for all of it", &[
        ("parts", "4 @ leg length × leg × leg, 4 @ long rail × rail width × rail, 4 @ short rail × rail width × rail, \
          5 @ top length × ripped plank × plank, 14 @ slat length × slat × 3/4"),
        ("coats", "2"),
    ]),
];

/// Name, title of the reckoning, and its result: measures that are linked, not copied.
pub(super) const LINKED: &[(&str, &str, &str)] = &[
    ("ripped plank", "Top planks", "plank_width"),
    ("block under the shelf rail", "Shelf rail on the leg", "floor_block"),
];
