//! What finishing asks and how its answer is laid out.

use super::fields::{
    AREA, AREA_COLUMN, AS_THE_CAN, BUY, COATS, COST, COVERAGE, ENDS, FACES, FIELDS, FIRST_COAT,
    GALLON_PRICE, GALLONS_LEAST, GALLONS_MOST, NOT_UNDERSIDE, PART_AREAS, PARTS, PARTS_COLUMN,
    PRICE_OF_0_75, PRICE_OF_1, PRICE_OF_2_5, PRICE_OF_5, QUART_PRICE, RESERVE, RESULTS, ROUGH,
    SHOW_FACE, SURFACE, WEATHERED, WITH_RESERVE,
};
use super::{Answer, Coverage, Faces, Input, SoldBy, Why, drawing, reckon};
use crate::calculators::{Calculator, Stage};
use crate::measure::Number;
use crate::measure::text::decimal;
use crate::say;
use crate::sheet::{
    self, Act, Amount, Ask, Bench, Caution, Field, Goods, Note, Refusal, Source, Step, Term, Value,
    Working,
};

/// Finish: area and cans.
pub const CALCULATOR: Calculator = Calculator {
    slug: "finish",
    title: "Finish",
    question: "How much finish do these pieces take?",
    stage: Stage::Last,
    fields: FIELDS,
    results: RESULTS,
    work,
};

fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let parts = ask.sizes(&PARTS);
    let faces = match ask.choice(&FACES) {
        NOT_UNDERSIDE => Faces::NotTheUnderside,
        SHOW_FACE => Faces::ShowFace,
        ENDS => Faces::Ends,
        _ => Faces::All,
    };
    let coats = ask.count(&COATS);
    // Both ends of what trade texts give for each surface.
    let coverage = match ask.choice(&SURFACE) {
        ROUGH => Some(range(100, 200)),
        WEATHERED => Some(range(150, 200)),
        AS_THE_CAN => ask.number(&COVERAGE).map(|feet| Coverage { least: feet, most: feet }),
        _ => Some(range(200, 400)),
    };
    let reserve = ask.number(&RESERVE);
    let is_metric = ask.bench().tape.unit().is_metric();
    let (sold, prices): (_, &[&Field]) = if is_metric {
        (SoldBy::Litre, &[&PRICE_OF_5, &PRICE_OF_2_5, &PRICE_OF_1, &PRICE_OF_0_75])
    } else {
        (SoldBy::Gallon, &[&GALLON_PRICE, &QUART_PRICE])
    };
    let prices: Vec<_> = prices.iter().map(|field| ask.optional_money(field)).collect();
    let input = Input {
        parts: parts?,
        faces,
        coats: coats?,
        coverage: coverage?,
        reserve: reserve?,
        sold,
        prices: prices.into_iter().collect::<Option<_>>()?,
    };
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer, ask.bench())),
        Err(refused) => ask.refused(refused.into(), too_large()),
    }
}

fn too_large() -> Refusal {
    Refusal::too_large(&PARTS, "Work out a few of the pieces at a time.")
}

fn range(least: i64, most: i64) -> Coverage {
    Coverage { least: Number::whole(least), most: Number::whole(most) }
}

fn lay_out(input: &Input, answer: &Answer, bench: &Bench) -> sheet::Answer {
    let headline = BUY.figure("", Value::Words(say![answer.cans.in_words()]));
    let mut sheet = sheet::Answer::new(headline, working(input, answer, bench));
    sheet.figures = vec![
        AREA.figure("", Value::Area(answer.area)),
        GALLONS_MOST.figure("", gallons(answer.gallons_most)),
        GALLONS_LEAST.figure("", gallons(answer.gallons_least)),
    ];
    if input.coats > 1 {
        sheet.figures.push(FIRST_COAT.figure("", gallons(answer.first_coat)));
    }
    if input.reserve != Number::ZERO {
        sheet.figures.push(WITH_RESERVE.figure("", gallons(answer.gallons_to_buy)));
    }
    if let Some(cost) = answer.cans.cost {
        sheet.figures.insert(0, COST.figure("", Value::Exact(cost, 2, "")));
    }
    let areas = input.parts.iter().zip(&answer.part_areas);
    let areas =
        areas.map(|(part, area)| vec![Value::Words(say![part.to_string()]), Value::Area(*area)]);
    sheet.tables = vec![PART_AREAS.table(&[PARTS_COLUMN, AREA_COLUMN], areas.collect())];
    sheet.notes = notes(input, answer, bench);
    sheet.cautions = Caution::of(&[Act::Finish]);
    sheet.drawing = Some(drawing::draw(input, answer, bench));
    let bought = answer.cans.all.iter().map(|((size, each), count)| Goods {
        name: match input.sold {
            SoldBy::Gallon => format!("{} of finish", size.name),
            SoldBy::Litre => format!("{} can of finish", size.name),
        },
        across: None,
        length: None,
        count: Some(*count),
        spares: 0,
        each: *each,
    });
    sheet.goods = bought.collect();
    sheet
}

fn notes(input: &Input, answer: &Answer, bench: &Bench) -> Vec<Note> {
    let mut notes = vec![match answer.cans.why {
        Why::LeastOver => Note::new(
            "cans_leave_least_over",
            match input.sold {
                SoldBy::Gallon => say![
                    "These cans leave least over. A gallon can cost less than its quarts: give both prices to see."
                ],
                SoldBy::Litre => say![
                    "These cans leave least over. A large can may cost less than small ones: give their prices to see."
                ],
            },
        ),
        Why::OnlyOneHasAPrice => Note::new(
            "only_priced_can_counts",
            match input.sold {
                SoldBy::Gallon => {
                    say!["Only the can that has a price is counted. Give both prices to compare."]
                }
                SoldBy::Litre => {
                    say!["Only the can that has a price is counted. Give more prices to compare."]
                }
            },
        ),
        Why::Cheapest => Note::new(
            "cans_are_cheapest",
            say!["The cheapest cans that hold enough, by the prices you gave."],
        ),
    }];
    if input.coverage.least != input.coverage.most {
        let covers = |feet: Number| Value::Exact(feet, 0, "sq ft/gal").in_line(bench);
        notes.push(Note::new(
            "coverage_is_taken",
            say![format!(
                "Finish is taken to cover {} to {} here; sources span {} to {}. Read the can.",
                covers(input.coverage.least),
                covers(input.coverage.most),
                covers(Number::whole(75)),
                covers(Number::whole(650)),
            )],
        ));
    }
    if input.faces != Faces::Ends {
        notes.push(Note::new(
            "end_grain_drinks",
            say!["End grain drinks more. Stand the feet in a dish of finish, and seal them."],
        ));
    }
    if input.faces == Faces::ShowFace || input.faces == Faces::NotTheUnderside {
        notes.push(Note::new(
            "bare_faces_take_water",
            say!["Faces left bare take up water. Coat hidden faces before assembly."],
        ));
    }
    notes.push(Note::new("wait_for_dry_wood", say![
        "Wet wood: wait until a drop soaks in within about 10 minutes. No rain a day before or after."
    ]));
    notes.push(Note::new(
        "coat_again",
        say!["Coat again when water no longer beads on it: test, do not date."],
    ));
    notes
}

fn gallons(number: Number) -> Value {
    Value::Exact(number, 2, "gal")
}

fn working(input: &Input, answer: &Answer, bench: &Bench) -> Working {
    let (wide, edges, ends) = input.faces.coated();
    let mut steps = Vec::new();
    for (part, area) in input.parts.iter().zip(&answer.part_areas).take(6) {
        let length = || Term::of("L", part.length);
        let width = || Term::of("W", part.width);
        let thickness = || Term::of("T", part.thickness);
        let coated = Term::of("faces", wide) * length() * width()
            + Term::of("edges", edges) * length() * thickness()
            + Term::of("ends", ends) * width() * thickness();
        let all = Term::of("count", part.count) * coated;
        steps.push(Step::of("area", all, Value::Area(*area)));
    }
    // Square feet with so many places that hundredths of a gallon come out.
    let area = || {
        let feet = answer.area.in_square_feet();
        let feet = feet.map_or_else(|_| String::new(), |feet| decimal(feet, 3));
        Term::of("area", format!("{feet} sq ft"))
    };
    let covers = |name, feet: Number| Term::of(name, format!("{feet} sq ft"));
    let least = || covers("low end of the coverage", input.coverage.least);
    let coats = || {
        let more = Term::of("coats after the first", input.coats.saturating_sub(1));
        Term::fixed(1) + Term::fixed("3/4".to_owned()) * more
    };
    steps.push(Step::of("first coat", area() / least(), gallons(answer.first_coat)));
    steps.push(Step::of("all coats", area() / least() * coats(), gallons(answer.gallons_most)));
    let most = covers("high end", input.coverage.most);
    steps.push(Step::of("at least", area() / most * coats(), gallons(answer.gallons_least)));
    let reserve = Term::fixed(1) + Term::of("reserve", Amount::percent(input.reserve));
    let bought = area() / least() * coats() * reserve;
    steps.push(Step::of("with the reserve", bought, gallons(answer.gallons_to_buy)));
    // A working stays in the units of its formula; cans of litres are filled in litres.
    let (cans, filled) = match input.sold {
        SoldBy::Gallon => {
            ("cans that hold it, four quarts to a gallon", gallons(answer.gallons_to_buy))
        }
        SoldBy::Litre => {
            ("cans that hold it", gallons(answer.gallons_to_buy).in_units_of(bench.tape))
        }
    };
    steps.push(Step::in_words(
        cans,
        say![filled.in_line(bench)],
        Value::Words(say![answer.cans.in_words()]),
    ));
    Working { steps, sources: vec![Source::Arithmetic, Source::CommonPractice] }
}
