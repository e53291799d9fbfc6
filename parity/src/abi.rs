//! The door of the module: plain numbers in and out, nothing imported.
//!
//! The caller asks for room, writes the request there and hands it over; the reply begins with its
//! length (four bytes, the lowest first). Replies are never freed: the module lives for one test.

#![expect(
    unsafe_code,
    reason = "a foreign caller passes memory by address; nothing else does here"
)]

use crate::Machine;
use std::cell::RefCell;
use std::ptr;

thread_local! {
    static MACHINE: RefCell<Option<Machine>> = const { RefCell::new(None) };
}

/// Room for `len` bytes.
#[unsafe(no_mangle)]
pub(crate) extern "C" fn alloc(len: usize) -> *mut u8 {
    Box::into_raw(vec![0_u8; len].into_boxed_slice()).cast()
}

/// Opens the machine with a herbal of `len` bytes: 1 when it could be read, 0 else.
///
/// # Safety
/// `herbal` came from [`alloc`] with the same `len`, and is used for one call only.
#[unsafe(no_mangle)]
pub(crate) unsafe extern "C" fn open(herbal: *mut u8, len: usize) -> u32 {
    // SAFETY: by the contract above.
    let herbal = unsafe { taken(herbal, len) };
    let machine = Machine::open(&herbal).ok();
    let opened = machine.is_some();
    MACHINE.with_borrow_mut(|slot| *slot = machine);
    u32::from(opened)
}

/// The reply to the request of `len` bytes at `request`; nothing before a herbal was opened.
///
/// # Safety
/// `request` came from [`alloc`] with the same `len`, and is used for one call only.
#[unsafe(no_mangle)]
pub(crate) unsafe extern "C" fn answer(request: *mut u8, len: usize) -> *const u8 {
    // SAFETY: by the contract above.
    let request = unsafe { taken(request, len) };
    let reply =
        MACHINE.with_borrow_mut(|machine| machine.as_mut().map(|machine| machine.answer(&request)));
    let reply = reply.unwrap_or_default();
    let framed = [&(reply.len() as u32).to_le_bytes(), reply.as_slice()].concat();
    Box::into_raw(framed.into_boxed_slice()).cast_const().cast()
}

/// # Safety
/// `at` is the boxed slice of `len` bytes that [`alloc`] gave away.
unsafe fn taken(at: *mut u8, len: usize) -> Box<[u8]> {
    // SAFETY: by the contract above.
    unsafe { Box::from_raw(ptr::slice_from_raw_parts_mut(at, len)) }
}
