//! A character at the end of an identifier that shows when somebody copied it wrong.

/// The modulus: the letters, the digits and `*`.
const MODULUS: u32 = 37;
/// The value of `*`, which stands nowhere but at the end.
const STAR: u32 = 36;

/// The check character of an identifier of digits and capital letters; none for anything else.
///
/// ISO/IEC 7064:2003, the pure system MOD 37-2: with the values 0 to 9 of the digits, 10 to 35 of the
/// letters and 36 of `*`, the sum of value times 2 to the power of the place, counted from the end
/// from 0, is 1 modulo 37. Since 37 is a prime, neither a weight nor the difference of two neighbouring
/// ones is 0: every wrong character and every exchange of two neighbours is found.
///
/// ```
/// assert_eq!(ground::check_character("G123489654321"), Some('Y'));
/// ```
#[must_use]
pub fn check_character(of: &str) -> Option<char> {
    let sum = of.chars().try_fold(0, |sum, c| Some((sum + value(c)?) * 2 % MODULUS))?;
    let check = (MODULUS + 1 - sum) % MODULUS;
    (!of.is_empty()).then(|| if check == STAR { '*' } else { letter(check) })
}

/// Whether an identifier ends in its check character.
#[must_use]
pub fn ends_in_check_character(whole: &str) -> bool {
    let mut letters = whole.chars();
    let last = letters.next_back();
    last.is_some() && check_character(letters.as_str()) == last
}

/// The value of a digit or capital letter.
fn value(c: char) -> Option<u32> {
    (c.is_ascii_digit() || c.is_ascii_uppercase()).then(|| c.to_digit(36)).flatten()
}

fn letter(value: u32) -> char {
    char::from_digit(value, 36).map_or('*', |c| c.to_ascii_uppercase())
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// The first is the example in the documentation of `stdnum.iso7064.mod_37_2` of python-stdnum
    /// 2.2; the others were worked out with it.
    #[test]
    fn identifiers_of_another_implementation_have_the_same_check_characters() {
        let known = [
            ("G123489654321", 'Y'),
            ("A12425GABC1234002", '5'),
            ("7F3K9M", '6'),
            ("TRUG7F3K9M", '1'),
            ("0", '1'),
            ("Z", '5'),
            ("ABCDEFGHJKLMNPQRSTUVWXYZ23456789", 'J'),
        ];
        for (of, check) in known {
            assert_eq!(check_character(of), Some(check), "{of}");
            assert!(ends_in_check_character(&format!("{of}{check}")));
        }
    }

    #[test]
    fn what_holds_anything_but_digits_and_capitals_has_none() {
        for of in ["", "a", "7F-3K", "é", "*", " "] {
            assert_eq!(check_character(of), None, "{of}");
        }
        assert!(!ends_in_check_character("") && !ends_in_check_character("Y"));
    }

    /// The first place at which an identifier with `c` there instead is taken for right.
    fn unnoticed(whole: &[char]) -> Option<(usize, char)> {
        let all = ('0'..='9').chain('A'..='Z').chain(['*']);
        let wrong = all.flat_map(|c| (0..whole.len()).map(move |at| (at, c)));
        wrong.into_iter().find(|(at, c)| {
            let mut copy = whole.to_vec();
            copy[*at] = *c;
            copy != whole && ends_in_check_character(&String::from_iter(copy))
        })
    }

    proptest! {
        #[test]
        fn every_wrong_character_is_found(of in "[0-9A-Z]{1,24}") {
            let whole: Vec<char> = of.chars().chain(check_character(&of)).collect();
            prop_assert!(ends_in_check_character(&String::from_iter(&whole)));
            prop_assert_eq!(unnoticed(&whole), None);
        }

        #[test]
        fn every_exchange_of_two_neighbours_is_found(of in "[0-9A-Z]{1,24}") {
            let whole: Vec<char> = of.chars().chain(check_character(&of)).collect();
            for at in 1..whole.len() {
                let mut copy = whole.clone();
                copy.swap(at - 1, at);
                let found = !ends_in_check_character(&String::from_iter(&copy));
                prop_assert!(found || copy == whole, "{copy:?}");
            }
        }
    }
}
