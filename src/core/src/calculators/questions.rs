//! Finding a question by its words: those of its name, and those that are said for it in a shop.

use core::cmp::Reverse;

use super::{LIST, Listed};
use crate::sheet::Choice;

/// A question of a calculator; of one that has but one question, the calculator itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Found {
    /// Whose question it is.
    pub calculator: &'static Listed,
    /// The field that chooses it and the choice, where there are several.
    pub question: Option<(&'static str, Choice)>,
}

/// What is said in a shop for a question that does not have the word in its name: the calculator,
/// the id of the question, and the words.
#[rustfmt::skip]
const SHOP_WORDS: &[(&str, &str, &str)] = &[
    ("tape", "", "add subtract fractions divide half sum math convert millimetres mm inches metric feet decimals"),
    ("lumber", "size", "actual nominal dressed real 2x4 1x6 tag"),
    ("lumber", "amount", "board feet foot price cost money how much"),
    ("lumber", "weight", "how heavy weight weigh lift pounds"),
    ("lumber", "cover", "decking deck how many boards area"),
    ("moisture", "board", "shrink swell dry wet green movement moisture expansion expand"),
    ("moisture", "gap", "shrink swell decking slats gap expansion moisture"),
    ("moisture", "swing", "season year summer winter movement expansion"),
    ("moisture", "air", "humidity weather equilibrium moisture content"),
    ("resaw-rip", "section", "post square up plane thickness fence blade resaw"),
    ("resaw-rip", "strips", "rip strips fence kerf how many width table saw setting"),
    ("resaw-rip", "guide", "circular saw straight edge clamp hand saw shoe"),
    ("crosscut", "", "stop block miter mitre saw how many parts waste leftover length cut list"),
    ("frame", "rail", "rail length joint legs outside"),
    ("frame", "spacer", "set back assemble block"),
    ("frame", "stretcher", "height lower shelf"),
    ("frame", "support", "middle support shelf"),
    ("frame", "tenons", "mortise tenon meet corner"),
    ("frame", "lap", "half lap halving notch"),
    ("frame", "square", "is it square diagonal corners racked out of true"),
    ("dowel", "", "round bar rod handle hole drill peg"),
    ("screws", "length", "how long screw too long poke through"),
    ("screws", "pilot", "pilot hole pilothole drill bit predrill clearance screw size"),
    ("screws", "placing", "split edge end distance how far"),
    ("screws", "pocket", "pocket hole angle jig"),
    ("screws", "toe", "toe nail toenail angle skew"),
    ("screws", "corner", "meet collide two screws corner"),
    ("screws", "hold", "strength pull out load hold"),
    ("screws", "buy", "how many screws box"),
    ("spacing", "greatest_gap", "even evenly equal spacing screws pegs holes on a rail at most how far apart centre center"),
    ("spacing", "count", "how many screws pegs evenly equal spacing divide"),
    ("spacing", "step", "every fixed step from end"),
    ("spacing", "slats_near", "slats pickets fence bench seat spacer gap how many slats equal spacing"),
    ("spacing", "slats", "how many slats pickets bench seat fence spacer gap equal spacing"),
    ("top", "planks", "table top gap planks width"),
    ("top", "overhang", "lip overhang top size"),
    ("top", "season", "shrink swell top movement gap later"),
    ("top", "slot", "slotted hole elongated movement screw"),
    ("top", "tip", "tip over lean stable sit edge"),
    ("curve", "arc", "arch bow bend radius compass"),
    ("curve", "rim", "round radius wheel barrel find circle"),
    ("curve", "corner", "round corner radius"),
    ("curve", "end", "round end half circle can lid"),
    ("curve", "s_curve", "ogee wave bracket"),
    ("angles", "leg", "splay lean leg bevel cut stool taper"),
    ("angles", "two_ways", "compound splay rake stool leg drill"),
    ("angles", "sides", "planter box hopper bevel miter mitre sloped compound"),
    ("strength", "", "sag bend hold break span shelf bench sit load strong enough"),
    ("finish", "", "paint oil stain varnish how much cans gallon coat"),
];

/// Every question of every calculator, in the order of the job.
fn all() -> impl Iterator<Item = Found> {
    LIST.iter().flat_map(|calculator| {
        let several = calculator.questions.into_iter().flat_map(move |(field, choices)| {
            choices.iter().map(move |choice| Found { calculator, question: Some((field, *choice)) })
        });
        let one = calculator.questions.is_none().then_some(Found { calculator, question: None });
        several.chain(one)
    })
}

fn shop_words(found: &Found) -> &'static str {
    let id = found.question.map_or("", |(_, choice)| choice.id);
    let mut words = SHOP_WORDS.iter();
    let line = words.find(|(slug, question, _)| *slug == found.calculator.slug && *question == id);
    line.map_or("", |(.., words)| words)
}

/// The questions in which words of a text begin a word, those with the most of them first; none for no words.
/// A word that no question has takes none of the others away.
#[must_use]
pub fn find_questions(text: &str) -> Vec<Found> {
    let text = text.to_lowercase();
    let wanted: Vec<&str> = words(&text).collect();
    let mut found: Vec<(Reverse<usize>, usize, usize, Found)> = Vec::new();
    for (at, it) in all().enumerate() {
        let own = it.question.map_or("", |(_, choice)| choice.label).to_lowercase();
        let shop = shop_words(&it);
        let of_all = format!("{} {}", it.calculator.title, it.calculator.question).to_lowercase();
        let has = |haystack: &str, word: &str| words(haystack).any(|it| it.starts_with(word));
        // What the question itself says goes before what is said for it, and that before what its
        // whole calculator says.
        let far = wanted.iter().filter_map(|word| match word {
            word if has(&own, word) => Some(0),
            word if has(shop, word) => Some(1),
            word if has(&of_all, word) => Some(2),
            _ => None,
        });
        let far: Vec<usize> = far.collect();
        if !far.is_empty() {
            found.push((Reverse(far.len()), far.iter().sum(), at, it));
        }
    }
    crate::order::sort_by(&mut found, |a, b| (a.0, a.1, a.2).cmp(&(b.0, b.1, b.2)));
    found.into_iter().map(|(.., it)| it).collect()
}

/// The words of a text, without the little ones that every question has, and without numbers: what is `2x4` is a word.
fn words(text: &str) -> impl Iterator<Item = &str> {
    let words = text.split(|c: char| !c.is_alphanumeric() && c != '/');
    let is_number = |word: &str| word.chars().all(|c| c.is_ascii_digit() || c == '/');
    words.filter(move |word| !LITTLE.contains(word) && !is_number(word))
}

/// Words that tell no question from another.
#[rustfmt::skip]
const LITTLE: &[&str] = &[
    "a", "an", "the", "is", "it", "do", "does", "i", "my", "to", "of", "are", "be", "will", "for", "between", "in",
    "on", "at", "from", "with", "and", "or", "can", "should", "need", "what", "s", "one", "two", "three", "four", "five", "six",
    "seven", "eight", "nine", "ten",
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_question_has_its_shop_words_and_every_line_its_question() {
        let questions: Vec<(&str, &str)> = all()
            .map(|it| (it.calculator.slug, it.question.map_or("", |(_, choice)| choice.id)))
            .collect();
        let lines: Vec<(&str, &str)> =
            SHOP_WORDS.iter().map(|(slug, id, _)| (*slug, *id)).collect();
        assert_eq!(lines, questions);
    }

    /// What is asked for by the design note: is it square, pilot hole, pocket, how many slats.
    #[test]
    fn what_is_said_in_a_shop_finds_the_question() {
        for (text, slug, question) in [
            ("is it square", "frame", "square"),
            ("square", "frame", "square"),
            ("pilot hole", "screws", "pilot"),
            ("pocket", "screws", "pocket"),
            ("how many slats", "spacing", "slats"),
            ("Board feet", "lumber", "amount"),
            ("will it sag", "strength", ""),
            ("kerf", "resaw-rip", "strips"),
            ("overhang", "top", "overhang"),
            ("half lap", "frame", "lap"),
            // What no question has takes nothing away.
            ("zebra square", "frame", "square"),
            ("gap between slats", "spacing", "slats_near"),
            ("fence for four strips", "resaw-rip", "strips"),
            ("four strips", "resaw-rip", "strips"),
            ("rip 4 strips", "resaw-rip", "strips"),
            ("moisture", "moisture", "board"),
            ("expansion", "moisture", "board"),
            ("mitre", "crosscut", ""),
            ("mm", "tape", ""),
            ("inches to mm", "tape", ""),
            ("add fractions", "tape", ""),
            ("how heavy", "lumber", "weight"),
            ("weight", "lumber", "weight"),
            ("equal spacing", "spacing", "greatest_gap"),
            ("how far apart", "spacing", "greatest_gap"),
            ("picket", "spacing", "slats_near"),
            ("centre", "spacing", "greatest_gap"),
            ("center", "spacing", "greatest_gap"),
            ("screw size", "screws", "pilot"),
            ("pilothole", "screws", "pilot"),
            ("varnish", "finish", ""),
            ("cut list", "crosscut", ""),
            ("taper", "angles", "leg"),
        ] {
            let found = find_questions(text);
            let first = found.first().unwrap_or_else(|| panic!("{text}: nothing"));
            let id = first.question.map_or("", |(_, choice)| choice.id);
            assert_eq!((first.calculator.slug, id), (slug, question), "{text}");
        }
        assert_eq!(find_questions("  "), []);
        assert_eq!(find_questions("for the 5 1/2"), []);
        assert_eq!(find_questions("zebra"), []);
    }
}
