//! Tag files of any bag as text: the declaration, encodings, lines, `bag-info.txt`.

use super::fault::BagFault;

/// A version of BagIt that can be judged.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Version(pub(super) u32, pub(super) u32);

/// RFC 8493.
pub(super) const V1_0: Version = Version(1, 0);
const OLDEST: Version = Version(0, 93);
const LAST_DRAFT: Version = Version(0, 97);

impl Version {
    /// Name of the metadata file, which drafts up to 0.95 called otherwise.
    pub(super) fn info_file(self) -> &'static str {
        if self < Self(0, 96) { "package-info.txt" } else { super::INFO_FILE }
    }
}

/// How the tag files other than `bagit.txt` are written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Encoding {
    Ascii,
    Utf8,
    /// Byte order by its mark; big-endian (`true`) or little-endian without one.
    Utf16(bool),
    /// As UTF-16, four bytes each.
    Utf32(bool),
    Latin1,
}

impl Encoding {
    /// Whether a byte order mark belongs to it.
    pub(super) const fn takes_mark(self) -> bool {
        matches!(self, Self::Utf16(_) | Self::Utf32(_))
    }
}

/// Reads `bagit.txt`: exactly two lines, no byte order mark, one space behind each colon, nothing else.
pub(super) fn declaration(bytes: &[u8]) -> Result<(Version, Encoding), BagFault> {
    let fault = |what: &str| BagFault::Declaration { what: what.to_owned() };
    let text = std::str::from_utf8(bytes).map_err(|_| fault("it is not UTF-8"))?;
    if text.starts_with('\u{feff}') {
        return Err(fault("it begins with a byte order mark"));
    }
    let lines = lines(text);
    let [version, encoding] = lines.as_slice() else {
        return Err(fault(&format!("it has {} lines, not two", lines.len())));
    };
    let version = version.strip_prefix("BagIt-Version: ");
    let version = version.ok_or_else(|| fault("its first line is not 'BagIt-Version: ' and a version"))?;
    let (major, minor) = version.split_once('.').unwrap_or((version, ""));
    let number = |text: &str| text.bytes().all(|b| b.is_ascii_digit()).then(|| text.parse().ok()).flatten();
    let (Some(major), Some(minor)) = (number(major), number(minor)) else {
        return Err(fault(&format!("{version:?} is not a version such as 1.0")));
    };
    let encoding = encoding.strip_prefix("Tag-File-Character-Encoding: ");
    let encoding =
        encoding.ok_or_else(|| fault("its second line is not 'Tag-File-Character-Encoding: ' and a name"))?;
    if encoding.is_empty() || encoding.contains(char::is_whitespace) {
        return Err(fault(&format!("{encoding:?} is not the name of an encoding")));
    }
    let version = Version(major, minor);
    if version != V1_0 && !(OLDEST..=LAST_DRAFT).contains(&version) {
        return Err(BagFault::CannotJudge { what: format!("BagIt version {major}.{minor}") });
    }
    let encoding = match encoding.to_ascii_uppercase().as_str() {
        "UTF-8" | "UTF8" => Encoding::Utf8,
        "US-ASCII" | "ASCII" => Encoding::Ascii,
        "UTF-16" | "UTF-16BE" => Encoding::Utf16(true),
        "UTF-16LE" => Encoding::Utf16(false),
        "UTF-32" | "UTF-32BE" => Encoding::Utf32(true),
        "UTF-32LE" => Encoding::Utf32(false),
        "ISO-8859-1" | "ISO8859-1" | "LATIN1" | "LATIN-1" => Encoding::Latin1,
        _ => return Err(BagFault::CannotJudge { what: format!("the encoding {encoding}") }),
    };
    Ok((version, encoding))
}

/// A tag file as text, and whether a byte order mark stood before it.
pub(super) fn decode(file: &str, bytes: &[u8], encoding: Encoding) -> Result<(String, bool), BagFault> {
    let fault = || BagFault::NotText { file: file.to_owned() };
    let text = match encoding {
        Encoding::Ascii if !bytes.is_ascii() => return Err(fault()),
        Encoding::Ascii | Encoding::Utf8 => std::str::from_utf8(bytes).map_err(|_| fault())?.to_owned(),
        Encoding::Latin1 => bytes.iter().copied().map(char::from).collect(),
        Encoding::Utf16(big) => {
            let big = match bytes.first_chunk() {
                Some([0xfe, 0xff]) => true,
                Some([0xff, 0xfe]) => false,
                _ => big,
            };
            let (units, rest) = bytes.as_chunks::<2>();
            let unit =
                |pair: &[u8; 2]| if big { u16::from_be_bytes(*pair) } else { u16::from_le_bytes(*pair) };
            let text: Option<String> =
                char::decode_utf16(units.iter().map(unit)).collect::<Result<_, _>>().ok();
            text.filter(|_| rest.is_empty()).ok_or_else(fault)?
        }
        Encoding::Utf32(big) => {
            let big = match bytes.first_chunk() {
                Some([0, 0, 0xfe, 0xff]) => true,
                Some([0xff, 0xfe, 0, 0]) => false,
                _ => big,
            };
            let (units, rest) = bytes.as_chunks::<4>();
            let unit =
                |four: &[u8; 4]| if big { u32::from_be_bytes(*four) } else { u32::from_le_bytes(*four) };
            let text: Option<String> = units.iter().map(|four| char::from_u32(unit(four))).collect();
            text.filter(|_| rest.is_empty()).ok_or_else(fault)?
        }
    };
    match text.strip_prefix('\u{feff}') {
        Some(rest) => Ok((rest.to_owned(), true)),
        None => Ok((text, false)),
    }
}

/// Lines that end in LF, CR or CRLF; the last may have no end.
pub(super) fn lines(text: &str) -> Vec<&str> {
    let mut lines: Vec<&str> =
        text.split('\n').flat_map(|line| line.strip_suffix('\r').unwrap_or(line).split('\r')).collect();
    if lines.last().is_some_and(|line| line.is_empty()) {
        lines.pop();
    }
    lines
}

/// The fields of a `bag-info.txt`, folded lines put together. What is odd but allowed is told to `remark`.
pub(super) fn fields(
    file: &str,
    text: &str,
    version: Version,
    remark: &mut dyn FnMut(String),
) -> Result<Vec<(String, String)>, BagFault> {
    let fault =
        |line: usize, what: &'static str| BagFault::Line { file: file.to_owned(), line: line + 1, what };
    let mut fields: Vec<(String, String)> = Vec::new();
    for (at, line) in lines(text).into_iter().enumerate() {
        if line.trim().is_empty() {
            remark(format!("{file} has an empty line"));
            continue;
        }
        if line.starts_with([' ', '\t']) {
            let (_, value) = fields.last_mut().ok_or_else(|| fault(at, "a folded line follows no field"))?;
            value.push(' ');
            value.push_str(line.trim());
            continue;
        }
        let (label, value) = line.split_once(':').ok_or_else(|| fault(at, "it has no colon"))?;
        if label.trim().is_empty() {
            return Err(fault(at, "nothing stands before the colon"));
        }
        // RFC 8493 §2.2.2; earlier versions took blanks around the colon as they came.
        if version >= V1_0 && label.trim() != label {
            return Err(fault(at, "a blank stands before the colon"));
        }
        if version >= V1_0 && !value.starts_with([' ', '\t']) {
            if !value.is_empty() {
                return Err(fault(at, "no blank stands behind the colon"));
            }
            remark(format!("{file} has a field without a value"));
        }
        fields.push((label.trim().to_owned(), value.trim().to_owned()));
    }
    Ok(fields)
}
