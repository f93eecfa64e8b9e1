//! Finding a question by its words: those of its name, and those that are said for it in a shop.

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
    ("tape", "", "add subtract fraction divide half sum math convert millimetre metric feet decimal"),
    ("lumber", "size", "actual nominal dressed real 2x4 1x6 tag"),
    ("lumber", "amount", "board feet foot price cost money how much"),
    ("lumber", "weight", "heavy lift pounds"),
    ("lumber", "cover", "decking deck how many boards area"),
    ("moisture", "board", "shrink swell dry wet green movement"),
    ("moisture", "gap", "shrink swell decking slats gap"),
    ("moisture", "swing", "season year summer winter movement"),
    ("moisture", "air", "humidity weather equilibrium"),
    ("resaw-rip", "section", "post square up plane thickness fence blade resaw"),
    ("resaw-rip", "strips", "rip strips fence kerf how many width table saw"),
    ("resaw-rip", "guide", "circular saw straight edge clamp hand saw shoe"),
    ("crosscut", "", "stop block miter saw how many parts waste leftover length"),
    ("frame", "rail", "rail length joint legs outside"),
    ("frame", "spacer", "set back assemble block"),
    ("frame", "stretcher", "height lower shelf"),
    ("frame", "support", "middle support shelf"),
    ("frame", "tenons", "mortise tenon meet corner"),
    ("frame", "lap", "half lap halving notch"),
    ("frame", "square", "is it square diagonal corners racked out of true"),
    ("dowel", "", "round bar rod handle hole drill peg"),
    ("screws", "length", "how long screw too long poke through"),
    ("screws", "pilot", "pilot hole drill bit predrill clearance"),
    ("screws", "placing", "split edge end distance how far"),
    ("screws", "pocket", "pocket hole angle jig"),
    ("screws", "toe", "toe nail toenail angle skew"),
    ("screws", "corner", "meet collide two screws corner"),
    ("screws", "hold", "strength pull out load hold"),
    ("screws", "buy", "how many screws box"),
    ("spacing", "greatest_gap", "even evenly screws pegs holes on a rail at most apart"),
    ("spacing", "count", "how many screws pegs evenly divide"),
    ("spacing", "step", "every fixed step from end"),
    ("spacing", "slats_near", "slats fence bench seat spacer gap how many slats"),
    ("spacing", "slats", "how many slats bench seat fence spacer gap"),
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
    ("angles", "leg", "splay lean leg bevel cut stool"),
    ("angles", "two_ways", "compound splay rake stool leg drill"),
    ("angles", "sides", "planter box hopper bevel miter sloped compound"),
    ("strength", "", "sag bend hold break span shelf bench sit load strong enough"),
    ("finish", "", "paint oil stain how much cans gallon coat"),
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

/// The questions in which every word of a text begins some word, best first; none for no words.
#[must_use]
pub fn find_questions(text: &str) -> Vec<Found> {
    let text = text.to_lowercase();
    let wanted: Vec<&str> = words(&text).collect();
    if wanted.is_empty() {
        return Vec::new();
    }
    let mut found: Vec<(usize, usize, Found)> = Vec::new();
    for (at, it) in all().enumerate() {
        let own = it.question.map_or("", |(_, choice)| choice.label).to_lowercase();
        let shop = shop_words(&it);
        let of_all = format!("{} {}", it.calculator.title, it.calculator.question).to_lowercase();
        let has = |haystack: &str, word: &str| words(haystack).any(|it| it.starts_with(word));
        // What the question itself says goes before what is said for it, and that before what its
        // whole calculator says.
        let far = wanted.iter().map(|word| match word {
            word if has(&own, word) => Some(0),
            word if has(shop, word) => Some(1),
            word if has(&of_all, word) => Some(2),
            _ => None,
        });
        if let Some(far) = far.sum::<Option<usize>>() {
            found.push((far, at, it));
        }
    }
    crate::order::sort_by(&mut found, |a, b| (a.0, a.1).cmp(&(b.0, b.1)));
    found.into_iter().map(|(.., it)| it).collect()
}

/// The words of a text, without the little ones that every question has.
fn words(text: &str) -> impl Iterator<Item = &str> {
    let words = text.split(|c: char| !c.is_alphanumeric() && c != '/');
    words.filter(|word| !word.is_empty() && !LITTLE.contains(word))
}

/// Words that tell no question from another.
const LITTLE: &[&str] =
    &["a", "an", "the", "is", "it", "do", "does", "i", "my", "to", "of", "are", "be", "will"];

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
        ] {
            let found = find_questions(text);
            let first = found.first().unwrap_or_else(|| panic!("{text}: nothing"));
            let id = first.question.map_or("", |(_, choice)| choice.id);
            assert_eq!((first.calculator.slug, id), (slug, question), "{text}");
        }
        assert_eq!(find_questions("  "), []);
        assert_eq!(find_questions("zebra"), []);
    }
}
