//! A text as a QR code (ISO/IEC 18004).

use qrcodegen::{QrCode, QrCodeEcc};

/// A QR code, drawn.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Qr {
    /// Modules to a side, with the quiet zone of four round it.
    pub size: usize,
    /// An SVG path of the dark modules, one unit each.
    pub path: String,
}

/// Modules of light round the code.
const QUIET: i32 = 4;

/// The code of a text, at the lowest correction and higher where it costs no room. None when it is too long for any.
#[must_use]
pub fn qr(text: &str) -> Option<Qr> {
    let code = QrCode::encode_text(text, QrCodeEcc::Low).ok()?;
    let mut path = String::new();
    for y in 0..code.size() {
        let mut x = 0;
        while x < code.size() {
            let dark = (x..code.size()).take_while(|x| code.get_module(*x, y)).count();
            if dark > 0 {
                path.push_str(&format!("M{} {}h{dark}v1h-{dark}z", x + QUIET, y + QUIET));
            }
            x += i32::try_from(dark).unwrap_or(0) + 1;
        }
    }
    Some(Qr { size: usize::try_from(code.size() + 2 * QUIET).ok()?, path })
}
