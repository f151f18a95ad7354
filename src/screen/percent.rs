//! Texts in the letters of an address (percent-encoding, as forms of the web have it).

/// A text in the letters of an address.
pub(crate) fn encode(text: &str) -> String {
    text.bytes()
        .map(|byte| match byte {
            b'a'..=b'z' | b'A'..=b'Z' | b'0'..=b'9' | b'.' | b'-' => char::from(byte).to_string(),
            b' ' => "+".to_owned(),
            _ => format!("%{byte:02X}"),
        })
        .collect()
}

pub(crate) fn decode(text: &str) -> String {
    let mut bytes = Vec::new();
    let mut rest = text.bytes();
    while let Some(byte) = rest.next() {
        bytes.push(match byte {
            b'+' => b' ',
            b'%' => {
                let mut ahead = rest.clone();
                let digits = [ahead.next(), ahead.next()].map(|digit| digit.and_then(|d| char::from(d).to_digit(16)));
                if let [Some(high), Some(low)] = digits {
                    rest = ahead;
                    u8::try_from(high * 16 + low).unwrap_or(b'?')
                } else {
                    b'%'
                }
            }
            byte => byte,
        });
    }
    String::from_utf8_lossy(&bytes).into_owned()
}
