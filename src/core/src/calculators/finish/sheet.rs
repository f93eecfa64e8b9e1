//! What finishing asks and how its answer is laid out.

use super::{Answer, Coverage, Faces, Input, Prices, drawing, reckon};
use crate::calculators::{Calculator, ResultKind, ResultSpec, Stage};
use crate::measure::Number;
use crate::measure::text::{decimal, exact_text};
use crate::say;
use crate::sheet::{
    self, Ask, Bench, Caution, Choice, Field, Figure, Kind, Note, Source, Start, Step, Table,
    Value, Working,
};

/// Finish: area and cans.
pub const CALCULATOR: Calculator = Calculator {
    slug: "finish",
    title: "Finish",
    question: "How much finish do these parts take?",
    stage: Stage::Last,
    fields: FIELDS,
    results: RESULTS,
    work,
};

/// Parts of our invented potting bench: top, legs, long rails, short rails.
const BENCH_PARTS: &str = "5 @ 48 in × 5 1/2 in × 1 1/2 in, 4 @ 34 in × 3 in × 1 1/2 in, \
     2 @ 41 in × 3 1/2 in × 1 1/2 in, 2 @ 17 1/2 in × 3 1/2 in × 1 1/2 in";

const FIELDS: &[Field] = &[
    Field::new(
        "parts",
        "Parts",
        "how many @ length × width × thickness",
        Kind::Sizes,
        Start::Text(BENCH_PARTS),
    ),
    Field::new(
        "faces",
        "Coat",
        "",
        Kind::Choice(&[
            Choice { id: "all", label: "All faces" },
            Choice { id: "not_underside", label: "All but the underside" },
            Choice { id: "show_face", label: "One face" },
            Choice { id: "ends", label: "Ends only" },
        ]),
        Start::Text("all"),
    ),
    Field::new("coats", "Coats", "", Kind::Count { least: 1, most: 10 }, Start::Text("2")),
    Field::new(
        "surface",
        "Surface",
        "",
        Kind::Choice(&[
            Choice { id: "smooth", label: "Smooth" },
            Choice { id: "weathered", label: "Weathered" },
            Choice { id: "rough", label: "Rough or old" },
            Choice { id: "can", label: "As the can says" },
        ]),
        Start::Text("smooth"),
    ),
    Field::new(
        "coverage",
        "A gallon covers",
        "from the label, its lowest figure",
        Kind::Number { least: 20, most: 2000, unit: "sq ft" },
        Start::Text("250"),
    )
    .only_for("surface", &["can"]),
    Field::new("gallon_price", "Price of a gallon", "", Kind::OptionalMoney, Start::Text("")),
    Field::new("quart_price", "Price of a quart", "", Kind::OptionalMoney, Start::Text("")),
];

const RESULTS: &[ResultSpec] = &[
    ResultSpec { id: "buy", label: "Buy", kind: ResultKind::Words },
    ResultSpec { id: "area", label: "Area", kind: ResultKind::Area },
    ResultSpec { id: "gallons_most", label: "Finish, at most", kind: ResultKind::Number },
    ResultSpec { id: "gallons_least", label: "Finish, at least", kind: ResultKind::Number },
    ResultSpec { id: "first_coat", label: "First coat, at most", kind: ResultKind::Number },
    ResultSpec { id: "cost", label: "Cost", kind: ResultKind::Number },
    ResultSpec { id: "part_areas", label: "Area of each part", kind: ResultKind::Table },
];

fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let parts = ask.sizes(ask.field("parts"));
    let faces = match ask.choice(ask.field("faces")).id {
        "not_underside" => Faces::NotTheUnderside,
        "show_face" => Faces::ShowFace,
        "ends" => Faces::Ends,
        _ => Faces::All,
    };
    let coats = ask.count(ask.field("coats"));
    // Both ends of what trade texts give for each surface.
    let coverage = match ask.choice(ask.field("surface")).id {
        "rough" => Some(range(100, 200)),
        "weathered" => Some(range(150, 200)),
        "can" => ask.number(ask.field("coverage")).map(|feet| Coverage { least: feet, most: feet }),
        _ => Some(range(200, 400)),
    };
    let (gallon, quart) = (
        ask.optional_money(ask.field("gallon_price")),
        ask.optional_money(ask.field("quart_price")),
    );
    let input = Input {
        parts: parts?,
        faces,
        coats: coats?,
        coverage: coverage?,
        prices: Prices { gallon: gallon?, quart: quart? },
    };
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer, ask.bench())),
        Err(problems) => ask.refuse(&problems),
    }
}

fn range(least: i64, most: i64) -> Coverage {
    Coverage { least: Number::whole(least), most: Number::whole(most) }
}

fn lay_out(input: &Input, answer: &Answer, bench: &Bench) -> sheet::Answer {
    let headline = Figure {
        id: "buy",
        label: "Buy",
        from: "",
        value: Value::Words(say![answer.cans.in_words()]),
    };
    let gallons =
        |id, label, number| Figure { id, label, from: "", value: Value::Exact(number, 2, "gal") };
    let mut sheet = sheet::Answer::new(headline, working(input, answer));
    sheet.figures = vec![
        Figure { id: "area", label: "Area", from: "", value: Value::Area(answer.area) },
        gallons("gallons_most", "Finish, at most", answer.gallons_most),
        gallons("gallons_least", "Finish, at least", answer.gallons_least),
    ];
    if input.coats > 1 {
        sheet.figures.push(gallons("first_coat", "First coat, at most", answer.first_coat));
    }
    if let Some(cost) = answer.cans.cost {
        let value = Value::Exact(cost, 2, "");
        sheet.figures.insert(0, Figure { id: "cost", label: "Cost", from: "", value });
    }
    sheet.tables = vec![Table {
        id: "part_areas",
        title: "Area of each part",
        columns: &["Parts", "Area"],
        rows: input
            .parts
            .iter()
            .zip(&answer.part_areas)
            .map(|(part, area)| vec![Value::Words(say![part.to_string()]), Value::Area(*area)])
            .collect(),
    }];
    sheet.notes = notes(input);
    sheet.cautions = vec![Caution::OilyRags];
    sheet.drawing = Some(drawing::draw(input, answer, bench));
    sheet
}

fn notes(input: &Input) -> Vec<Note> {
    let mut notes = Vec::new();
    if input.coverage.least != input.coverage.most {
        notes.push(say![format!(
            "A gallon is taken to cover {} to {} sq ft here; sources span 75 to 650. Read the can.",
            input.coverage.least, input.coverage.most
        )]);
    }
    if input.faces != Faces::Ends {
        notes.push(say![
            "End grain drinks more. Stand the feet in a dish of finish, and seal them."
        ]);
    }
    if input.faces == Faces::ShowFace || input.faces == Faces::NotTheUnderside {
        notes.push(say!["Faces left bare take up water. Coat hidden faces before assembly."]);
    }
    notes.push(say![
        "Wet wood: wait until a drop soaks in within about 10 minutes. No rain a day before or after."
    ]);
    notes.push(say!["Coat again when water no longer beads on it: test, do not date."]);
    notes
}

fn working(input: &Input, answer: &Answer) -> Working {
    let (wide, edges, ends) = input.faces.coated();
    let mut steps = Vec::new();
    for (part, area) in input.parts.iter().zip(&answer.part_areas).take(6) {
        let [length, width, thickness] = [part.length, part.width, part.thickness].map(exact_text);
        steps.push(Step {
            rule: "area = count × (faces × L × W + edges × L × T + ends × W × T)".into(),
            put_in: say![format!(
                "{} × ({wide} × {length} × {width} + {edges} × {length} × {thickness} + {ends} × \
                 {width} × {thickness})",
                part.count
            )],
            gives: Value::Area(*area),
        });
    }
    let feet = answer.area.in_square_feet().map_or_else(|_| String::new(), |feet| decimal(feet, 1));
    let gallons = |number| Value::Exact(number, 2, "gal");
    steps.push(Step {
        rule: "first coat = area ÷ coverage, its low end".into(),
        put_in: say![format!("{feet} sq ft ÷ {} sq ft", input.coverage.least)],
        gives: gallons(answer.first_coat),
    });
    steps.push(Step {
        rule: "all coats = first coat × (1 + 3/4 for each one more)".into(),
        put_in: say![format!(
            "{} gal × (1 + 3/4 × {})",
            decimal(answer.first_coat, 2),
            input.coats.saturating_sub(1)
        )],
        gives: gallons(answer.gallons_most),
    });
    steps.push(Step {
        rule: "the same with the high end of the coverage".into(),
        put_in: say![format!("{feet} sq ft ÷ {} sq ft", input.coverage.most)],
        gives: gallons(answer.gallons_least),
    });
    steps.push(Step {
        rule: "cans that hold the most it may take, four quarts to a gallon".into(),
        put_in: say![format!("{} gal", decimal(answer.gallons_most, 2))],
        gives: Value::Words(say![answer.cans.in_words()]),
    });
    Working { steps, sources: vec![Source::Arithmetic, Source::CommonPractice] }
}
