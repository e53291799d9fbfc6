//! Syllables of an English word, by rule.

/// Two vowels that are spoken apart though they stand together, by what stands around them.
fn parts(word: &[char], at: usize) -> bool {
    let letter = |back: isize| at.checked_add_signed(back).and_then(|at| word.get(at)).copied();
    let (Some(first), Some(second)) = (letter(-1), letter(0)) else { return false };
    let before = letter(-2).unwrap_or(' ');
    let after = letter(1).unwrap_or(' ');
    let then = letter(2).unwrap_or(' ');
    match (first, second) {
        ('i', 'a') => !"ctgs".contains(before) || after == 't',
        ('i', 'o') => !"tscgx".contains(before),
        ('i', 'u') | ('y', 'i') => true,
        ('e', 'o') => before != 'g' && !"pn".contains(after),
        ('i', 'e') => "tn".contains(after) && !"cshrt".contains(before),
        ('u', 'e') => "nl".contains(after) && !"qg".contains(before),
        ('u', 'i') => after == 'n' && !"qg".contains(before),
        ('u', 'a') => !"qg".contains(before),
        ('u', 'o') => before != 'q',
        ('e', 'a') => before == 'r' && after == 't' && "ei".contains(then),
        ('o' | 'e', 'i') => after == 'n' && then == 'g',
        _ => false,
    }
}

fn is_vowel(letter: Option<&char>) -> bool {
    letter.is_some_and(|letter| "aeiouy".contains(*letter))
}

/// Endings before which an `e` is not spoken, as a rule.
const AFTER_SILENT: [&str; 9] = ["", "s", "d", "ly", "ment", "ments", "ness", "ful", "less"];
/// First parts of words that end in a silent `e`.
const FIRST_PARTS: [&str; 14] = [
    "some", "where", "there", "house", "stone", "white", "fire", "home", "life", "time", "side",
    "wire", "snake", "name",
];

/// How many syllables an English word has, by rule: see [`crate::readability`] for how often the rule
/// is right. Other letters than those of English count for nothing.
///
/// ```
/// use page::syllables;
/// assert_eq!(["leaf", "nettle", "poisonous", "identification"].map(syllables), [1, 2, 3, 6]);
/// ```
#[must_use]
pub fn syllables(word: &str) -> u32 {
    let lower = word.to_lowercase();
    let letters: Vec<char> = lower.chars().filter(char::is_ascii_lowercase).collect();
    if letters.is_empty() {
        // A number or a sign is spoken as something.
        return u32::from(!word.is_empty());
    }
    let word: String = letters.iter().collect();
    let groups = (0..letters.len()).filter(|at| begins(&letters, *at)).count();
    let fewer = usize::from(AFTER_SILENT.iter().any(|end| silent(&word, end)))
        + usize::from(FIRST_PARTS.iter().any(|first| compound(&word, first)));
    let count = (groups + spoken_besides(&word)).saturating_sub(fewer).max(1);
    u32::try_from(count).unwrap_or(u32::MAX)
}

/// Whether a vowel that begins a syllable stands there.
fn begins(letters: &[char], at: usize) -> bool {
    let before = at.checked_sub(1).and_then(|at| letters.get(at));
    is_vowel(letters.get(at)) && (!is_vowel(before) || parts(letters, at))
}

/// Syllables that no vowel of their own tells: of *prism*, *drier*, *McNabb*.
fn spoken_besides(word: &str) -> usize {
    let longer = |end: &&str| {
        let stem = word.strip_suffix(*end).unwrap_or_default();
        stem.chars().rev().skip(1).any(|letter| is_vowel(Some(&letter)))
    };
    let murmured = ["sm", "sms", "thm", "thms"].iter().any(|end| word.ends_with(end));
    let son = word.strip_prefix("mc").is_some_and(|name| !is_vowel(name.chars().next().as_ref()));
    let more = ["ier", "iers", "iest"].iter().any(longer);
    [murmured, son, more].into_iter().filter(|yes| *yes).count()
}

/// Whether an `e` before this ending is silent: after a consonant that can close a syllable.
fn silent(word: &str, end: &str) -> bool {
    let stem = word.strip_suffix(end).and_then(|stem| stem.strip_suffix('e'));
    let Some(stem) = stem.filter(|stem| stem.len() > 1) else { return false };
    let mut back = stem.chars().rev();
    let (last, before) = (back.next().unwrap_or(' '), back.next().unwrap_or(' '));
    if is_vowel(Some(&last)) {
        return false;
    }
    // The l of nettle and apples makes a syllable of its own.
    let own = last == 'l' && !is_vowel(Some(&before)) && !"lrw".contains(before);
    match end {
        "" | "s" | "d" if own => false,
        "s" => !"sxzcg".contains(last) && !stem.ends_with("ch") && !stem.ends_with("sh"),
        "d" => !"td".contains(last),
        "" => true,
        _ => !"lrw".contains(last),
    }
}

/// Whether a word begins with this first part and goes on with a consonant.
fn compound(word: &str, first: &str) -> bool {
    let Some(rest) = word.strip_prefix(first) else { return false };
    let ending = ["s", "d", "r", "rs", "n"].contains(&rest);
    rest.len() > 1 && !ending && !is_vowel(rest.chars().next().as_ref())
}
