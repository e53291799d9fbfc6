//! Bytes packed for the way to a device, and unpacked there: LZMA in its plain format, a header of
//! thirteen bytes and one stream (LZMA SDK, `lzma-specification.txt`).

use lzma_rust2::{EncodeMode, LzmaOptions, LzmaReader, LzmaWriter, MfType, Read as _, Write as _};

/// Where the header says how long the bytes were: eight bytes, the lowest first.
const LENGTH: std::ops::Range<usize> = 5..13;

/// How it is packed: with all the effort there is. Neither our program nor our herbal has words of four
/// bytes, so that the place of a byte says nothing; the byte before it says much.
fn options(len: usize) -> LzmaOptions {
    let window = u32::try_from(len).unwrap_or(u32::MAX).clamp(1 << 16, 1 << 24);
    LzmaOptions::new(window, 4, 0, 0, EncodeMode::Normal, 273, MfType::Bt4, 1000)
}

/// Packs bytes.
#[must_use]
#[expect(clippy::expect_used, reason = "memory takes every byte, and the length is the one told")]
pub fn pack(bytes: &[u8]) -> Vec<u8> {
    let length = Some(bytes.len() as u64);
    let options = options(bytes.len());
    let mut writer =
        LzmaWriter::new_use_header(Vec::new(), &options, length).expect("a header is written");
    writer.write_all(bytes).expect("all is written");
    writer.finish().expect("the length is right")
}

/// Unpacks what [`pack`] packed; nothing when it was cut short or changed so that it cannot be read.
#[must_use]
pub fn unpack(packed: &[u8]) -> Option<Vec<u8>> {
    let length = packed.get(LENGTH)?.try_into().ok()?;
    let mut reader = LzmaReader::new_mem_limit(packed, u32::MAX, None).ok()?;
    let mut bytes = vec![0; usize::try_from(u64::from_le_bytes(length)).ok()?];
    reader.read_exact(&mut bytes).ok()?;
    Some(bytes)
}
