//! ISO/IEC 18004, through a decoder of other make: rqrr 0.9 reads what we draw.

use meniscus::text::qr;

/// Paints the path of a code at `scale` pixels to the module.
fn painted(path: &str, size: usize, scale: usize) -> Vec<Vec<u8>> {
    let mut pixels = vec![vec![255_u8; size * scale]; size * scale];
    for run in path.split('M').filter(|run| !run.is_empty()) {
        let (start, rest) = run.split_once('h').expect("a run");
        let (x, y) = start.split_once(' ').expect("a place");
        let number = |text: &str| text.parse::<usize>().expect("a number");
        let length = number(rest.split('v').next().expect("a length"));
        for row in pixels.iter_mut().skip(number(y) * scale).take(scale) {
            row[number(x) * scale..(number(x) + length) * scale].fill(0);
        }
    }
    pixels
}

#[test]
fn a_decoder_reads_it_back() {
    for text in [
        "a".to_owned(),
        "https://example.org/meniscus/#/specs/backup?packed=abc_-0123456789".to_owned(),
        format!("https://example.org/#/specs/backup?packed={}", "xY9-_".repeat(180)),
        "Orchard lantern — 45 ml".to_owned(),
    ] {
        let code = qr(&text).expect("a code");
        let pixels = painted(&code.path, code.size, 4);
        let side = code.size * 4;
        let mut image = rqrr::PreparedImage::prepare_from_greyscale(side, side, |x, y| pixels[y][x]);
        let grids = image.detect_grids();
        assert_eq!(grids.len(), 1, "{text}");
        let (_, content) = grids[0].decode().expect("readable");
        assert_eq!(content, text);
    }
    assert_eq!(qr(&"x".repeat(4000)), None, "too long for any");
}
