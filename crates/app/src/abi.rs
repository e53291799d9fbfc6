//! The door of the module: bytes in and out, nothing imported.
//!
//! The caller asks for room, writes there and hands it over. A reply begins with its length (four
//! bytes, the lowest first) and is given back with [`done`].

#![expect(
    unsafe_code,
    reason = "a foreign caller passes memory by address; nothing else does here"
)]

use crate::App;
use std::cell::RefCell;
use std::ptr;

thread_local! {
    static APP: RefCell<App> = RefCell::new(App::new());
}

/// Room for `len` bytes.
#[unsafe(no_mangle)]
pub(crate) extern "C" fn room(len: usize) -> *mut u8 {
    Box::into_raw(vec![0_u8; len].into_boxed_slice()).cast()
}

/// Reads a herbal of `len` bytes: 1 when it could be read, 0 else.
///
/// # Safety
/// `herbal` came from [`room`] with the same `len`, and is used for one call only.
#[unsafe(no_mangle)]
pub(crate) unsafe extern "C" fn read(herbal: *mut u8, len: usize) -> u32 {
    // SAFETY: by the contract above.
    let herbal = unsafe { taken(herbal, len) };
    APP.with_borrow_mut(|app| u32::from(app.read(&herbal).is_ok()))
}

/// The reply to a visit of `len` bytes.
///
/// # Safety
/// `visit` came from [`room`] with the same `len`, and is used for one call only.
#[unsafe(no_mangle)]
pub(crate) unsafe extern "C" fn visit(visit: *mut u8, len: usize) -> *mut u8 {
    // SAFETY: by the contract above.
    let visit = unsafe { taken(visit, len) };
    let reply = APP.with_borrow_mut(|app| app.answer(&visit));
    let framed = [&(reply.len() as u32).to_le_bytes(), reply.as_slice()].concat();
    Box::into_raw(framed.into_boxed_slice()).cast()
}

/// Gives a reply back.
///
/// # Safety
/// `reply` came from [`visit`] and is given back once; `len` is what stands in its first four bytes.
#[unsafe(no_mangle)]
pub(crate) unsafe extern "C" fn done(reply: *mut u8, len: usize) {
    // SAFETY: by the contract above; the frame is four bytes longer than what it holds.
    drop(unsafe { taken(reply, len + 4) });
}

/// # Safety
/// `at` is a boxed slice of `len` bytes that was given away.
unsafe fn taken(at: *mut u8, len: usize) -> Box<[u8]> {
    // SAFETY: by the contract above.
    unsafe { Box::from_raw(ptr::slice_from_raw_parts_mut(at, len)) }
}
