//! Characters that share one number in each row.

use super::Column;
use std::borrow::Cow;

/// The most numbers that several characters may share: their sums take 16 KiB.
pub(super) const MOST_SHARED: usize = 4096;
/// The numbers of a byte.
const BYTE: usize = 256;
/// Sums that are kept side by side, so that two rows of one kind need not wait for each other.
const LANES: usize = 4;

/// Some characters of every taxon: the kind of the first, plus that of the second times the kinds of
/// the first, and so on.
#[derive(Clone, Debug)]
pub(super) struct Bundle {
    codes: Codes,
    /// How many kinds each character has.
    kinds: Vec<usize>,
}

#[derive(Clone, Debug)]
enum Codes {
    Narrow(Vec<u8>),
    Wide(Vec<u16>),
}

impl Bundle {
    /// Columns of equal length, of at most [`MOST_SHARED`] numbers together, or one alone.
    pub(super) fn new(columns: &[Column]) -> Self {
        let mut codes = vec![0_u16; columns.first().map_or(0, |column| column.codes.len())];
        let mut stride = 1_u16;
        for column in columns {
            for (code, kind) in codes.iter_mut().zip(&column.codes) {
                *code += kind * stride;
            }
            // Of one column alone, which may have as many kinds as there are numbers, it is not used.
            stride = stride.saturating_mul(u16::try_from(column.kinds).unwrap_or(u16::MAX));
        }
        let kinds: Vec<usize> = columns.iter().map(|column| column.kinds).collect();
        let narrow: Option<Vec<u8>> = codes.iter().map(|code| u8::try_from(*code).ok()).collect();
        let codes = match narrow {
            Some(narrow) if kinds.iter().product::<usize>() <= BYTE => Codes::Narrow(narrow),
            _ => Codes::Wide(codes),
        };
        Self { codes, kinds }
    }

    pub(super) fn bytes(&self) -> usize {
        match &self.codes {
            Codes::Narrow(codes) => codes.len(),
            Codes::Wide(codes) => 2 * codes.len(),
        }
    }

    /// Adds to each row's sum what stands for the kind of one character.
    pub(super) fn add(&self, place: usize, by_kind: &[f64], to: &mut [f64]) {
        let stride: usize = self.kinds.iter().take(place).product();
        let kinds = self.kinds.get(place).copied().unwrap_or(1);
        let of = |number: usize| by_kind.get(number / stride % kinds).copied().unwrap_or(0.0);
        let by_number: Vec<f64> = (0..self.kinds.iter().product()).map(of).collect();
        match &self.codes {
            Codes::Narrow(codes) => add(codes, &by_number, to),
            Codes::Wide(codes) => add(codes, &by_number, to),
        }
    }

    /// For each character of all bundles the sum of the parts of each kind; all parts together are
    /// below 2³².
    pub(super) fn sums(bundles: &[Self], parts: &[u32]) -> Vec<Vec<u32>> {
        let pair = |pair: &[Self]| match pair {
            // Two at once read the parts once: a sixth less time.
            [one, other] => match (one.shared(), other.shared()) {
                (Some(codes), Some(others)) => {
                    let [sums, more] = two(codes, others, parts);
                    [one.apart(&sums), other.apart(&more)].concat()
                }
                _ => [one.own(parts), other.own(parts)].concat(),
            },
            _ => pair.iter().flat_map(|bundle| bundle.own(parts)).collect(),
        };
        bundles.chunks(2).flat_map(pair).collect()
    }

    /// The numbers, where several characters share two bytes.
    fn shared(&self) -> Option<&[u16]> {
        match &self.codes {
            Codes::Wide(codes) if self.kinds.len() > 1 => Some(codes),
            _ => None,
        }
    }

    fn own(&self, parts: &[u32]) -> Vec<Vec<u32>> {
        match &self.codes {
            Codes::Narrow(codes) => self.apart(&narrow(codes, parts)),
            Codes::Wide(codes) => self.apart(&wide(codes, parts, self.kinds.iter().product())),
        }
    }

    /// Sums of each number, taken apart by character. Beyond the numbers of the bundle all are nought.
    fn apart(&self, numbers: &[u32]) -> Vec<Vec<u32>> {
        let many = self.kinds.iter().product();
        let mut left = Cow::Borrowed(numbers.get(..many).unwrap_or(numbers));
        let mut sums = Vec::with_capacity(self.kinds.len());
        // The numbers of one kind of the last character stand together; without it, there is one less.
        for kinds in self.kinds.iter().skip(1).rev() {
            let stride = left.len() / kinds;
            let mut rest = vec![0; stride];
            let own = left.chunks(stride).map(|numbers| {
                rest.iter_mut().zip(numbers).for_each(|(rest, part)| *rest += part);
                numbers.iter().sum()
            });
            sums.push(own.collect());
            left = Cow::Owned(rest);
        }
        sums.push(left.into_owned());
        sums.reverse();
        sums
    }
}

fn add<C: Copy + Into<usize>>(codes: &[C], by_number: &[f64], to: &mut [f64]) {
    for (to, code) in to.iter_mut().zip(codes) {
        *to += by_number.get((*code).into()).copied().unwrap_or(0.0);
    }
}

fn narrow(codes: &[u8], parts: &[u32]) -> [u32; BYTE] {
    let mut sums = [[0_u32; BYTE]; LANES];
    let [first, second, third, fourth] = &mut sums;
    let (codes, last_codes) = codes.as_chunks::<LANES>();
    let (parts, last_parts) = parts.as_chunks::<LANES>();
    for ([a, b, c, d], [p, q, r, s]) in codes.iter().zip(parts) {
        put(first, *a, *p);
        put(second, *b, *q);
        put(third, *c, *r);
        put(fourth, *d, *s);
    }
    for (code, part) in last_codes.iter().zip(last_parts) {
        put(first, *code, *part);
    }
    let [mut all, others @ ..] = sums;
    for other in others {
        all.iter_mut().zip(other).for_each(|(all, other)| *all += other);
    }
    all
}

#[inline(always)]
fn put(sums: &mut [u32; BYTE], code: u8, part: u32) {
    if let Some(sum) = sums.get_mut(usize::from(code)) {
        *sum += part;
    }
}

fn two(codes: &[u16], others: &[u16], parts: &[u32]) -> [[u32; MOST_SHARED]; 2] {
    let mut sums = [[0; MOST_SHARED]; 2];
    let [one, other] = &mut sums;
    let put = |sums: &mut [u32; MOST_SHARED], code: u16, part: u32| {
        // No number is larger; said so, the compiler need not ask.
        if let Some(sum) = sums.get_mut(usize::from(code) % MOST_SHARED) {
            *sum += part;
        }
    };
    for ((code, another), part) in codes.iter().zip(others).zip(parts) {
        put(one, *code, *part);
        put(other, *another, *part);
    }
    sums
}

fn wide(codes: &[u16], parts: &[u32], numbers: usize) -> Vec<u32> {
    let mut sums = vec![0; numbers];
    for (code, part) in codes.iter().zip(parts) {
        if let Some(sum) = sums.get_mut(usize::from(*code)) {
            *sum += part;
        }
    }
    sums
}
