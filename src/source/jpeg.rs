//! Whether a JPEG is whole: decoders fill what is missing of a cut file with grey and say nothing.

/// Whether the picture of a JPEG file goes on to its end marker. Bytes behind it are no fault.
#[must_use]
pub fn jpeg_is_whole(bytes: &[u8]) -> bool {
    let Some(scan) = first_scan(bytes) else { return false };
    bytes.get(scan..).is_some_and(|rest| rest.windows(2).any(|pair| pair == [0xFF, 0xD9]))
}

/// Where the first scan begins: behind the segments, of which one may hold a small picture with an end of its own.
fn first_scan(bytes: &[u8]) -> Option<usize> {
    let mut at: usize = bytes.starts_with(&[0xFF, 0xD8]).then_some(2)?;
    loop {
        let [0xFF, marker] = *bytes.get(at..at.checked_add(2)?)? else { return None };
        match marker {
            // Fill before a marker.
            0xFF => at += 1,
            0xDA => return Some(at),
            _ => {
                let [high, low] = *bytes.get(at.checked_add(2)?..at.checked_add(4)?)? else { return None };
                at = at.checked_add(2 + usize::from(u16::from_be_bytes([high, low])))?;
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Markers of ITU-T T.81, table B.1: SOI D8, APP1 E1, SOS DA, EOI D9.
    #[test]
    fn the_end_of_a_small_picture_inside_is_not_the_end() {
        let thumbnail = [0xFF, 0xE1, 0, 6, 0xFF, 0xD8, 0xFF, 0xD9];
        let scan = [0xFF, 0xDA, 0, 3, 1, 0x12, 0x34, 0xFF, 0];
        let cut = [&[0xFF, 0xD8][..], &thumbnail, &scan].concat();
        assert!(!jpeg_is_whole(&cut));
        assert!(jpeg_is_whole(&[&cut[..], &[0xFF, 0xD9]].concat()));
        assert!(jpeg_is_whole(&[&cut[..], &[0xFF, 0xD9, 7, 7]].concat()));
        for length in 0..cut.len() {
            assert!(!jpeg_is_whole(&cut[..length]));
        }
        assert!(!jpeg_is_whole(b"\x89PNG"));
    }
}
