//! The module that unpacks in a browser: packed bytes in, bytes out, nothing imported. It is loaded before
//! anything can be unpacked, and does nothing else.
//!
//! The caller asks for room, writes there and hands it over. How long the answer is, it reads in the
//! header of what it packed.

#![expect(
    unsafe_code,
    reason = "a foreign caller passes memory by address; nothing else does here"
)]

use std::ptr;

/// Room for `len` bytes.
#[unsafe(no_mangle)]
pub extern "C" fn room(len: usize) -> *mut u8 {
    Box::into_raw(vec![0_u8; len].into_boxed_slice()).cast()
}

/// What `len` packed bytes hold; nowhere when they cannot be read. A module unpacks once and is thrown
/// away: nothing is given back.
///
/// # Safety
/// `packed` came from [`room`] with the same `len`, and is used for one call only.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn unpack(packed: *mut u8, len: usize) -> *mut u8 {
    // SAFETY: by the contract above.
    let packed = unsafe { Box::from_raw(ptr::slice_from_raw_parts_mut(packed, len)) };
    let unpacked = pack::unpack(&packed);
    unpacked.map_or(ptr::null_mut(), |bytes| Box::into_raw(bytes.into_boxed_slice()).cast())
}
