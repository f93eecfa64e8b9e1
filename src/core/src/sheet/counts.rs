//! A count before the size that it counts, in every list, and what of a list can be read two ways.

/// What stands between a length and its width.
pub(super) const WIDE: &str = " wide ";

/// A whole number that stands by itself.
pub(super) fn is_whole(text: &str) -> bool {
    let text = text.trim();
    !text.is_empty() && text.bytes().all(|digit| digit.is_ascii_digit())
}

/// Splits at `×`, `*` and an `x` that touches no letter, so that words with an x stay whole.
pub(super) fn split_sides(text: &str) -> Vec<&str> {
    let mut sides = Vec::new();
    let mut begin = 0;
    let mut before = None;
    let mut letters = text.char_indices().peekable();
    while let Some((at, letter)) = letters.next() {
        let after = letters.peek().map(|(_, next)| *next);
        let alone = |near: Option<char>| !near.is_some_and(char::is_alphabetic);
        let splits = match letter {
            '×' | '*' => true,
            'x' | 'X' => alone(before) && alone(after),
            _ => false,
        };
        if splits {
            sides.push(text.get(begin..at).unwrap_or_default());
            begin = at + letter.len_utf8();
        }
        before = Some(letter);
    }
    sides.push(text.get(begin..).unwrap_or_default());
    sides
}

/// What stands before and after an `x` or a `×`.
pub(super) fn split_times(text: &str) -> Option<(&str, &str)> {
    text.split_once(['x', 'X', '×'])
}

/// What stands before and after the sign of a count: `@`, or `x` or `×` after a whole number.
pub(super) fn split_count(text: &str) -> Option<(&str, &str)> {
    text.split_once('@').or_else(|| split_times(text).filter(|(count, _)| is_whole(count)))
}

/// What can be read two ways, as it is likelier meant, and the question. Where there may be widths (`is_wide`), what may be
/// meant as one is asked too.
pub(super) fn two_ways(text: &str, is_wide: bool) -> Option<(String, String)> {
    three_sizes(text, is_wide)
        .or_else(|| turned_round(text, is_wide))
        .or_else(|| may_be_wide(text).filter(|_| is_wide))
        .or_else(|| larger_count(text))
}

/// How many boards of one length, and that length with the width that may be meant.
pub(super) type CountFirst = (Option<String>, String);

/// Where boards are counted last, `96 max 4`: a count that stands before the length all the same, as in `4 x 96`, or what
/// can be read two ways, as it is likelier meant, and the question.
pub(super) fn count_first(text: &str) -> Option<(CountFirst, String)> {
    let (meant, words) = match (two_ways(text, true), split_count(text)) {
        (Some(two_ways), _) => two_ways,
        (None, Some((_, length))) => {
            let words =
                format!("How many boards of {} there are goes last, after max.", length.trim());
            (text.to_owned(), words)
        }
        (None, None) => return None,
    };
    let (count, size) = match split_count(&meant) {
        Some((count, size)) => (Some(count.trim().to_owned()), size),
        None => (None, meant.as_str()),
    };
    Some(((count, size.trim().to_owned()), words))
}

/// `2 x 4 x 96`: a section with the length it is cut to, a size of three sides, or a count with a product. The longest is
/// likeliest the length, and of equal ones the last.
fn three_sizes(text: &str, is_wide: bool) -> Option<(String, String)> {
    let (count, size) = match text.split_once('@') {
        Some((count, size)) => (Some(count.trim()), size),
        None => (None, text),
    };
    let sides: Vec<&str> = split_sides(size).into_iter().map(str::trim).collect();
    // What is worked out is no size that is written down.
    let is_amount = |side: &&str| {
        side.starts_with(|c: char| c.is_ascii_digit())
            && !side.contains(['+', '(', ')', '−'])
            && !side.contains(" - ")
    };
    if sides.len() < 3 || size.contains('*') || !sides.iter().all(is_amount) {
        return None;
    }
    let (longest, _) = sides.iter().enumerate().max_by_key(|(_, side)| rank(side))?;
    // A count stands before the length, or before all three sides.
    let (count, sides, longest) = match (count, sides.as_slice()) {
        (None, [first, rest @ ..])
            if is_whole(first) && (longest == 1 || longest > 0 && rest.len() > 2) =>
        {
            (Some(*first), rest, longest.checked_sub(1)?)
        }
        _ => (count, sides.as_slice(), longest),
    };
    let length = sides.get(longest)?;
    let (meant, width) = match sides {
        [_, width] if longest == 0 => (format!("{length} long and {width} wide"), Some(width)),
        [_, width, thickness] if longest == 0 => {
            (format!("{length} long, {width} wide and {thickness} thick"), Some(width))
        }
        [section @ .., _] if longest == section.len() => {
            (format!("a {} that is {length} long", section.join(" x ")), None)
        }
        _ => (format!("{length} long"), None),
    };
    let before = count.map_or(String::new(), |count| format!("{count} @ "));
    let wide = width.filter(|_| is_wide).map_or(String::new(), |width| format!("{WIDE}{width}"));
    let of_each = count.map_or(String::new(), |count| format!("{count} pieces, each "));
    let here = if is_wide {
        "Here goes the length. A width goes after the word wide; the thickness is not asked."
    } else {
        "Here goes one size alone."
    };
    let text = text.trim();
    let words =
        format!("“{text}” can be read two ways: {of_each}{meant}, or a length worked out. {here}");
    Some((format!("{before}{length}{wide}"), words))
}

/// What tells a length from the sides of a section: feet and metres, then the whole number.
fn rank(side: &str) -> (bool, u32) {
    let unit = side.trim_start_matches(|c: char| !c.is_alphabetic() && !matches!(c, '\'' | '′'));
    let unit = unit.to_lowercase();
    let is_long = unit.starts_with(['\'', '′', 'f']) || (unit.starts_with('m') && unit != "mm");
    (is_long, whole_part(side).unwrap_or(0))
}

/// The whole number that a length begins with.
fn whole_part(text: &str) -> Option<u32> {
    let text = text.trim();
    let end = text.find(|c: char| !c.is_ascii_digit()).unwrap_or(text.len());
    text.get(..end)?.parse().ok()
}

/// `33 x 4` and `33 1/2 x 4`: what stands last may be meant as the count. Of two whole numbers the smaller one is the
/// likelier count.
fn turned_round(text: &str, is_wide: bool) -> Option<(String, String)> {
    let (length, count) = split_times(text)?;
    let (length, count) = (length.trim(), count.trim());
    let number = |text: &str| text.parse::<u32>().unwrap_or(u32::MAX);
    // A sum with a product in it is no length with its count.
    let is_amount = length.starts_with(|c: char| c.is_ascii_digit())
        && !length.contains(['@', '+', '(', '−'])
        && !length.contains(" - ");
    let is_turned = is_whole(count) && (!is_whole(length) || number(count) < number(length));
    if !(is_amount && is_turned) {
        return None;
    }
    let text = text.trim();
    let mut words = format!(
        "“{text}” can be read two ways: {count} pieces of {length}, or {length} of {count}."
    );
    if is_wide {
        words.push_str(&format!(" For a width write {length}{WIDE}{count}."));
    }
    Some((format!("{count} @ {length}"), words))
}

/// `33 x 1 1/2`: a count that is larger than the length it stands before, and that length.
fn counts_less(text: &str) -> Option<(&str, &str)> {
    let (first, last) = split_times(text)?;
    let (first, last) = (first.trim(), last.trim());
    let is_larger =
        is_whole(first) && whole_part(last).is_some_and(|it| Some(it) < whole_part(first));
    is_larger.then_some((first, last))
}

/// The same where there are no widths.
fn larger_count(text: &str) -> Option<(String, String)> {
    let (first, last) = counts_less(text)?;
    let text = text.trim();
    let words =
        format!("“{text}” can be read two ways: {first} pieces of {last}, or a length worked out.");
    Some((format!("{first} @ {last}"), words))
}

/// `4 @ 33 x 1 1/2` and `33 x 1 1/2`: what else may be meant than a product or a count, as it is written with a width,
/// and the question.
fn may_be_wide(text: &str) -> Option<(String, String)> {
    if text.contains(WIDE) {
        return None;
    }
    let (count, size) = match text.split_once('@') {
        Some((count, size)) => (Some(count.trim()), size),
        None => (None, text),
    };
    let sides = split_sides(size);
    let [first, last] = sides.as_slice() else { return None };
    let (first, last) = (first.trim(), last.trim());
    let other = match count {
        None if counts_less(text).is_some() => format!("{first} pieces of {last}"),
        None if is_whole(first) => return None,
        _ => "a length worked out".to_owned(),
    };
    let before = count.map_or(String::new(), |count| format!("{count} @ "));
    let written = format!("{before}{first}{WIDE}{last}");
    let text = text.trim();
    let words = format!("“{text}” can be read two ways: {first} long and {last} wide, or {other}.");
    Some((written, words))
}
