//! Jobs of several kinds, each twice: as the job book has it, and as the shop remembers it.

use reckoner_core::job::{
    Item, ItemId, Job, Kept, Linked, Match, Measure, MeasureKind, Part, RackBoard, Step, Written,
};
use reckoner_core::measure::Unit;

use super::shop::{
    self, By, Group, KNOWN, Shop, Size, is, over, sixty_fourths, sum, times, without,
};

/// The kinds, by name.
pub(super) const KINDS: [&str; 3] =
    ["frame and top by reckonings", "bench by formulas", "box that must match"];

/// A job in the making, with what is remembered of it.
struct Begun {
    items: Vec<Item>,
    shop: Shop,
}

impl Begun {
    fn new() -> Begun {
        let (sizes, fields, parts, groups, rack) = Default::default();
        Begun { items: Vec::new(), shop: Shop { sizes, fields, parts, groups, rack } }
    }

    fn add(&mut self, item: Item) -> ItemId {
        self.items.push(item);
        ItemId(self.items.len() as u64)
    }

    fn measure(&mut self, name: &str, written: Written, by: By) -> By {
        let is_formula = !matches!(by, By::Is(_));
        let item = Measure::new(name, MeasureKind::Length, written);
        let id = self.add(Item::Measure(item));
        let (name, as_cut, left) = (name.to_owned(), None, None);
        let (is_cut, is_own) = (false, false);
        self.shop.sizes.push(Size { id, name, by, is_formula, is_cut, as_cut, left, is_own });
        By::Size(self.shop.sizes.len() - 1)
    }

    fn size(&mut self, name: &str, text: &str, by: By) -> By {
        self.measure(name, Written::Formula(text.to_owned()), by)
    }

    /// A reckoning, and what its fields say.
    fn kept(&mut self, slug: &str, entries: &[(&str, &str)]) -> ItemId {
        let text = |(id, text): &(&str, &str)| ((*id).to_owned(), (*text).to_owned());
        let entries = entries.iter().map(text).collect();
        let (title, slug) = (slug.to_owned(), slug.to_owned());
        self.add(Item::Kept(Kept { rank: 0, title, slug, entries, left: Vec::new() }))
    }

    fn field(&mut self, kept: ItemId, field: &'static str, by: By) -> By {
        self.shop.fields.push((kept, field, by));
        By::Field(self.shop.fields.len() - 1)
    }

    fn result(&mut self, name: &str, kept: ItemId, result: &str, by: By) -> By {
        let linked = Linked { kept, result: result.to_owned(), index: 0 };
        self.measure(name, Written::Linked(linked), by)
    }

    fn part(&mut self, name: &str, count: usize, texts: [&str; 3], by: [By; 3]) {
        let part = Part::new(name, &count.to_string(), texts);
        let part = Part { stock: "2x8".to_owned(), may_rip: true, may_resaw: true, ..part };
        let id = self.add(Item::Part(part));
        let (name, pieces) = (name.to_owned(), vec![shop::Piece::default(); KNOWN]);
        self.shop.parts.push(shop::Part { id, name, by, count, pieces });
    }

    fn group(&mut self, name: &str, sizes: Vec<usize>, parts: Vec<usize>, drift: i128) {
        let of_sizes = sizes.iter().map(|at| self.shop.sizes[*at].id);
        let of_parts = parts.iter().map(|at| self.shop.parts[*at].id);
        let measures = of_sizes.chain(of_parts).collect();
        let (name, text) = (name.to_owned(), format!("{drift}/64"));
        let id = self.add(Item::Match(Match { name, measures, drift: text, left: None }));
        let (drift, left) = (sixty_fourths(drift), None);
        self.shop.groups.push(Group { id, sizes, parts, drift, left });
    }

    fn job(mut self) -> (Job, Shop) {
        let side = |text: &str| text.to_owned();
        self.add(Item::RackBoard(RackBoard {
            name: "by the door".to_owned(),
            section: "2x8".to_owned(),
            thickness: side("6"),
            width: side("20"),
            length: side("99"),
            quantity: 3,
            ..RackBoard::default()
        }));
        self.shop.rack = vec![[6, 20, 99].map(|inches| sixty_fourths(64 * inches)); 3];
        let mut job = Job::new("invented", Unit::Inch);
        let changes = (0..).zip(self.items).map(|(at, item)| job.adding(at, item)).collect();
        job.make(&Step::new("begin", changes)).expect("fresh");
        (job, self.shop)
    }
}

/// The job of a kind.
pub(super) fn begin(kind: usize) -> (Job, Shop) {
    match kind {
        0 => frame_and_top(),
        1 => bench(),
        _ => a_box(),
    }
}

/// A rail between two legs is what is outside less both of them; the right leg is as the left while it is empty. Five planks
/// with four gaps between them are as wide as the top.
fn frame_and_top() -> (Job, Shop) {
    let mut it = Begun::new();
    let overall = it.size("overall", "2816/64", is(2816));
    let leg = it.size("leg", "224/64", is(224));
    let wide = it.size("top width", "1664/64", is(1664));
    let gap = it.size("gap", "16/64", is(16));
    let frame = it.kept("frame", &[("overall", "overall"), ("leg_left", "leg")]);
    let all = it.field(frame, "overall", overall.clone());
    let left = it.field(frame, "leg_left", leg.clone());
    let right = it.field(frame, "leg_right", leg.clone());
    let rip =
        [("find", "rip_all"), ("planks", "5 @ 15"), ("top_width", "top width"), ("gap", "gap")];
    let top = it.kept("top", &rip);
    let top_wide = it.field(top, "top_width", wide);
    let between = it.field(top, "gap", gap);
    let rail = it.result("rail", frame, "rail_cut", without(without(all, left), right));
    let four = times(4, between);
    let plank = it.result("plank", top, "plank_width", over(without(top_wide, four), 5));
    it.part("leg", 4, ["leg", "leg", "30"], [leg.clone(), leg, is(1920)]);
    it.part("rail", 2, ["1 1/2", "3 1/2", "rail"], [is(96), is(224), rail]);
    it.part("plank", 5, ["1", "plank", "overall"], [is(64), plank, overall]);
    // The rail as it is wanted, and each that is cut.
    it.group("rails", vec![4], vec![1], 4);
    it.job()
}

/// Sizes that hang on each other by formulas, and parts that are worked out from the same names.
fn bench() -> (Job, Shop) {
    let mut it = Begun::new();
    let overall = it.size("overall", "2816/64", is(2816));
    let leg = it.size("leg", "224/64", is(224));
    let high = it.size("height", "2000/64", is(2000));
    let over_leg = it.size("overhang", "96/64", is(96));
    let rail =
        it.size("rail", "overall - 2 × leg", without(overall.clone(), times(2, leg.clone())));
    let long = sum(overall, times(2, over_leg));
    let long = it.size("top length", "overall + 2 × overhang", long);
    it.part("leg", 4, ["leg", "leg", "height"], [leg.clone(), leg.clone(), high.clone()]);
    it.part("rail", 3, ["1 1/2", "3 1/4", "rail"], [is(96), is(208), rail]);
    it.part("post", 2, ["leg", "1 1/2", "height"], [leg, is(96), high]);
    it.part("plank", 3, ["1", "5 1/2", "top length"], [is(64), is(352), long]);
    it.group("legs and posts", vec![], vec![0, 2], 8);
    it.job()
}

/// Boards and lids of one thickness and one width, and sides of one length.
fn a_box() -> (Job, Shop) {
    let mut it = Begun::new();
    let board = it.size("board", "48/64", is(48));
    let lid = it.size("lid board", "48/64", is(48));
    let wide = it.size("board width", "352/64", is(352));
    let lid_wide = it.size("lid width", "352/64", is(352));
    let side = it.size("side", "1280/64", is(1280));
    let end = it.size("end", "800/64", is(800));
    let inside = without(end.clone(), times(2, board.clone()));
    it.part(
        "side",
        4,
        ["board", "board width", "side"],
        [board.clone(), wide.clone(), side.clone()],
    );
    it.part("end", 4, ["board", "board width", "end - 2 × board"], [board, wide, inside]);
    it.part("lid", 2, ["lid board", "lid width", "side"], [lid, lid_wide, side]);
    it.group("thickness", vec![0, 1], vec![], 2);
    it.group("width", vec![2, 3], vec![], 8);
    it.group("lengths", vec![4], vec![0, 2], 6);
    it.job()
}
