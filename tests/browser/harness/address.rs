//! Addresses as another program would write them.

/// The address of a screen with some fields filled in: everything but letters and digits is
/// percent-encoded.
pub fn link(screen: &str, fields: &[(&str, &str)]) -> String {
    let pairs: Vec<String> = fields
        .iter()
        .map(|(key, text)| format!("{key}={}", encode(text)))
        .collect();
    format!("#/{screen}?{}", pairs.join("&"))
}

fn encode(text: &str) -> String {
    text.bytes()
        .map(|byte| match byte {
            b'0'..=b'9' | b'a'..=b'z' | b'A'..=b'Z' => char::from(byte).to_string(),
            other => format!("%{other:02X}"),
        })
        .collect()
}
