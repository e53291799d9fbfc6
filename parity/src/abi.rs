//! The door of the module: plain numbers in and out, nothing imported.
//!
//! The caller asks for room, writes the request there and hands it over; the reply begins with its
//! length (four bytes, the lowest first). Replies are never freed: the module lives for one test.

#![expect(
    unsafe_code,
    reason = "a foreign caller passes memory by address; nothing else does here"
)]

use std::ptr;

/// Room for a request of `len` bytes.
#[unsafe(no_mangle)]
pub(crate) extern "C" fn alloc(len: usize) -> *mut u8 {
    Box::into_raw(vec![0_u8; len].into_boxed_slice()).cast()
}

/// The reply to the request of `len` bytes at `request`, whose room is taken back.
///
/// # Safety
/// `request` came from [`alloc`] with the same `len`, and is used for one call only.
#[unsafe(no_mangle)]
pub(crate) unsafe extern "C" fn answer(request: *mut u8, len: usize) -> *const u8 {
    // SAFETY: by the contract above, this is the box that `alloc` gave away.
    let request = unsafe { Box::from_raw(ptr::slice_from_raw_parts_mut(request, len)) };
    let reply = crate::answer(&request);
    let framed = [&(reply.len() as u32).to_le_bytes(), reply.as_slice()].concat();
    Box::into_raw(framed.into_boxed_slice()).cast_const().cast()
}
