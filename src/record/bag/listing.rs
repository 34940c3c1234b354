//! Manifests and `fetch.txt` of any bag: lists of paths, which may try to lead out of the bag.

use std::collections::BTreeMap;

use sha2::{Digest as _, Sha224, Sha256, Sha384, Sha512};

use super::judge::{BagFault, Files};
use super::text::{V1_0, Version, lines};
use crate::record::seal::hex;

/// A hash that manifests may use.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Algorithm {
    Sha224,
    Sha256,
    Sha384,
    Sha512,
}

impl Algorithm {
    /// The algorithm by its name in a file name: lower case, without punctuation (RFC 8493 §2.4).
    pub(super) fn named(name: &str) -> Option<Self> {
        match name {
            "sha224" => Some(Self::Sha224),
            "sha256" => Some(Self::Sha256),
            "sha384" => Some(Self::Sha384),
            "sha512" => Some(Self::Sha512),
            _ => None,
        }
    }

    /// The digest of bytes in lower-case hex.
    pub(super) fn of(self, bytes: &[u8]) -> String {
        match self {
            Self::Sha224 => hex(&Sha224::digest(bytes)),
            Self::Sha256 => hex(&Sha256::digest(bytes)),
            Self::Sha384 => hex(&Sha384::digest(bytes)),
            Self::Sha512 => hex(&Sha512::digest(bytes)),
        }
    }
}

/// A manifest: paths with their digests in lower-case hex.
#[derive(Debug)]
pub(super) struct Listing {
    /// The file it stands in.
    pub(super) file: String,
    /// The hash it uses, if that is known here.
    pub(super) algorithm: Result<Algorithm, String>,
    /// Digest by path, decoded.
    pub(super) entries: BTreeMap<String, String>,
}

/// Reads a manifest. What is odd but allowed is told to `remark`.
pub(super) fn manifest(
    file: &str,
    text: &str,
    version: Version,
    files: &Files<'_>,
    remark: &mut dyn FnMut(String),
) -> Result<Listing, BagFault> {
    let name = file.rsplit_once('-').map_or("", |(_, rest)| rest.trim_end_matches(".txt"));
    let algorithm = Algorithm::named(name).ok_or_else(|| name.to_owned());
    let mut entries: BTreeMap<String, String> = BTreeMap::new();
    for (at, line) in lines(text).into_iter().enumerate() {
        let fault = |what| BagFault::Line { file: file.to_owned(), line: at + 1, what };
        if line.trim().is_empty() {
            continue;
        }
        let (digest, path) =
            line.split_once([' ', '\t']).ok_or_else(|| fault("it is not a digest and a path"))?;
        if digest.is_empty() || !digest.bytes().all(|b| b.is_ascii_hexdigit()) {
            return Err(fault("it does not begin with a digest in hex"));
        }
        if algorithm.as_ref().is_ok_and(|a| a.of(b"").len() != digest.len()) {
            return Err(fault("the digest has not the length of its algorithm"));
        }
        let path = path.trim_start_matches([' ', '\t']);
        // The mark of md5sum and its kin for 'read as binary'.
        let path = path.strip_prefix('*').map_or(path, |path| {
            remark(format!("{file} marks files with '*', as md5sum does"));
            path
        });
        let path = read_path(file, path, version, files, remark)?;
        let digest = digest.to_ascii_lowercase();
        match entries.get(&path) {
            Some(before) if version < V1_0 && *before == digest => {
                remark(format!("{file} lists {path} twice with the same digest"));
            }
            Some(_) => return Err(BagFault::Twice { file: file.to_owned(), path }),
            None => {
                entries.insert(path, digest);
            }
        }
    }
    Ok(Listing { file: file.to_owned(), algorithm, entries })
}

/// The paths of a `fetch.txt`.
pub(super) fn fetch(
    file: &str,
    text: &str,
    version: Version,
    files: &Files<'_>,
    remark: &mut dyn FnMut(String),
) -> Result<Vec<String>, BagFault> {
    let mut paths = Vec::new();
    for (at, line) in lines(text).into_iter().enumerate() {
        let fault = |what| BagFault::Line { file: file.to_owned(), line: at + 1, what };
        if line.trim().is_empty() {
            continue;
        }
        let part = |text: &str| {
            let (first, rest) = text.split_once([' ', '\t'])?;
            Some((first.to_owned(), rest.trim_start_matches([' ', '\t']).to_owned()))
        };
        let parts = part(line).and_then(|(url, rest)| Some((url, part(&rest)?)));
        let (url, (length, path)) =
            parts.ok_or_else(|| fault("it is not an address, a length and a path"))?;
        if !url.contains(':') {
            return Err(fault("it does not begin with an address"));
        }
        if length != "-" && !length.bytes().all(|b| b.is_ascii_digit()) {
            return Err(fault("the length is neither a number nor '-'"));
        }
        paths.push(read_path(file, &path, version, files, remark)?);
    }
    Ok(paths)
}

/// A path as it stands in a list: safe, decoded, without a leading `./`.
fn read_path(
    file: &str,
    listed: &str,
    version: Version,
    files: &Files<'_>,
    remark: &mut dyn FnMut(String),
) -> Result<String, BagFault> {
    let path = listed.strip_prefix("./").map_or(listed, |path| {
        remark(format!("{file} lists {path} with ./ before it"));
        path
    });
    let decoded = decode(path, version);
    if leads_out(path) || leads_out(&decoded) {
        return Err(BagFault::Unsafe { file: file.to_owned(), path: listed.to_owned() });
    }
    // Drafts did not agree on what is encoded: there, a file that has the very name counts.
    if version < V1_0 && decoded != path && !files.contains_key(decoded.as_str()) {
        return Ok(path.to_owned());
    }
    if version >= V1_0
        && path.replace("%25", "").to_ascii_lowercase().replace("%0a", "").replace("%0d", "").contains('%')
    {
        remark(format!("{file} lists {path} with a percent sign that is not written %25"));
    }
    Ok(decoded)
}

/// RFC 8493 §2.1.3: LF, CR and the percent sign are written `%0A`, `%0D` and `%25`; drafts knew only the first two.
fn decode(path: &str, version: Version) -> String {
    let mut out = String::with_capacity(path.len());
    let mut rest = path;
    while let Some((before, after)) = rest.split_once('%') {
        out.push_str(before);
        let code = after.get(..2).map(str::to_ascii_uppercase);
        let (c, len) = match code.as_deref() {
            Some("0A") => ('\n', 2),
            Some("0D") => ('\r', 2),
            Some("25") if version >= V1_0 => ('%', 2),
            _ => ('%', 0),
        };
        out.push(c);
        rest = after.get(len..).unwrap_or_default();
    }
    out.push_str(rest);
    out
}

/// Whether a path could mean a place outside the bag, on any system.
fn leads_out(path: &str) -> bool {
    let drive =
        path.as_bytes().get(1) == Some(&b':') && path.as_bytes().first().is_some_and(u8::is_ascii_alphabetic);
    path.is_empty()
        || drive
        || path.starts_with(['/', '\\', '~'])
        || path.contains('\0')
        || path.split(['/', '\\']).any(|part| part == "..")
}
