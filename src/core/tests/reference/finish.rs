//! Finish: hand-worked case W1 of the project's rules of the trade.

use reckoner_core::calculators::finish::{Coverage, Faces, Input, SoldBy, reckon};
use reckoner_core::measure::{Number, length, text::decimal};
use reckoner_core::sheet::PartSize;

/// Source: [WH] W1, table: 6 planks 50 × 5 1/2 × 1 1/2, 4 legs 28 1/2 × 3 1/2 square, 2 rails 37
/// and 2 at 19 (3 1/2 × 1 1/2): 7155 sq in = 49.7 sq ft.
#[test]
fn w1_all_faces_of_a_table() {
    let part = |count, sides: [&str; 3]| {
        let [length, width, thickness] = sides.map(|side| length(side).expect("a side"));
        PartSize { name: String::new(), count, length, width, thickness }
    };
    let input = Input {
        parts: vec![
            part(6, ["50", "5 1/2", "1 1/2"]),
            part(4, ["28 1/2", "3 1/2", "3 1/2"]),
            part(2, ["37", "3 1/2", "1 1/2"]),
            part(2, ["19", "3 1/2", "1 1/2"]),
        ],
        faces: Faces::All,
        coats: 1,
        coverage: Coverage { least: Number::whole(150), most: Number::whole(200) },
        reserve: Number::ZERO,
        sold: SoldBy::Gallon,
        prices: Vec::new(),
    };
    let answer = reckon(&input).expect("an answer");
    assert_eq!(answer.area.in_square_inches(), Number::whole(7155));
    assert_eq!(decimal(answer.area.in_square_feet().unwrap(), 1), "49.7");
}
