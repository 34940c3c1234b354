//! Manifests and `fetch.txt` of any bag: lists of paths, which may try to lead out of the bag.

use std::collections::{BTreeMap, BTreeSet};

use super::contents::Contents;
use super::fault::BagFault;
use super::hash::Algorithm;
use super::text::{V1_0, Version, lines};

/// A list in the bag: its file, the version of its rules, what lies in the bag.
pub(super) struct Reading<'a> {
    pub(super) file: &'a str,
    pub(super) version: Version,
    pub(super) contents: &'a Contents<'a>,
    /// Takes what is odd but allowed.
    pub(super) remark: &'a mut dyn FnMut(String),
}

/// A manifest: paths with their digests in lower-case hex.
#[derive(Debug)]
pub(super) struct Listing {
    /// The file it stands in.
    pub(super) file: String,
    /// The hash it uses, if that is known here.
    pub(super) algorithm: Result<Algorithm, String>,
    /// Digest by path, decoded; a path that means a file of the bag has the name of that file.
    pub(super) entries: BTreeMap<String, String>,
}

/// The algorithm that the name of a manifest tells (RFC 8493 §2.4).
fn algorithm(file: &str) -> Result<Result<Algorithm, String>, BagFault> {
    let (kind, name) = file.strip_suffix(".txt").and_then(|file| file.split_once('-')).unwrap_or_default();
    let proper: String = name.chars().filter(char::is_ascii_alphanumeric).collect::<String>().to_lowercase();
    if proper != name || name.is_empty() {
        return Err(BagFault::ManifestName { file: file.to_owned(), proper: format!("{kind}-{proper}.txt") });
    }
    Ok(Algorithm::named(name).ok_or(proper))
}

impl Reading<'_> {
    fn fault(&self, at: usize, what: &'static str) -> BagFault {
        BagFault::Line { file: self.file.to_owned(), line: at + 1, what }
    }

    fn blank(&mut self, line: &str) -> bool {
        let blank = line.trim().is_empty();
        if blank {
            (self.remark)(format!("{} has an empty line", self.file));
        }
        blank
    }

    /// What `md5sum` and its kin write: '*' before the path for 'read as binary', and a backslash before the
    /// digest when the path holds escapes. It is taken, and told (RFC 8493 §6.1.3).
    fn legacy<'b>(&mut self, digest: &'b str, path: &str) -> (&'b str, String) {
        let mut path = path.to_owned();
        let file = self.file;
        let mut told =
            |what| (self.remark)(format!("{file} {what}, as md5sum does: strict readers refuse it"));
        if let Some(plain) = path.strip_prefix('*').filter(|_| !self.contents.files.contains_key(&path)) {
            told("marks files with '*'");
            path = plain.to_owned();
        }
        match digest.strip_prefix('\\') {
            Some(digest) => {
                told("marks escaped names with a backslash");
                (digest, unescape(&path))
            }
            None => (digest, path),
        }
    }

    /// A path as it stands in a list: safe, decoded, without a leading `./`, by the name of the file it means.
    fn path(&mut self, listed: &str) -> Result<String, BagFault> {
        let file = self.file;
        let plain: Vec<&str> = listed.split('/').filter(|part| !matches!(*part, "" | ".")).collect();
        let path = plain.join("/");
        if path != listed {
            (self.remark)(format!("{file} lists {listed}, which means {path}"));
        }
        let contents = self.contents;
        let decoded = decode(&path, self.version);
        let is_there = contents.files.contains_key(&decoded);
        if leads_out(listed, is_there) || leads_out(&decoded, is_there) {
            return Err(BagFault::Unsafe { file: file.to_owned(), path: listed.to_owned() });
        }
        // Drafts did not agree on what is encoded: there, a file that has the very name counts.
        if self.version < V1_0 && decoded != path && !is_there {
            return Ok(path);
        }
        if self.version >= V1_0 && has_bare_percent(&path) {
            (self.remark)(format!("{file} lists {path} with a percent sign that is not written %25"));
        }
        match contents.find(&decoded) {
            Some(found) if found != decoded => {
                (self.remark)(format!(
                    "{file} composes the letters of {decoded} otherwise than the bag does"
                ));
                Ok(found.to_owned())
            }
            _ if listed.ends_with('/') || contents.folders.contains(&decoded) => {
                Err(BagFault::Folder { file: file.to_owned(), path: decoded })
            }
            _ => Ok(decoded),
        }
    }
}

/// Reads a manifest.
pub(super) fn manifest(reading: &mut Reading<'_>, text: &str) -> Result<Listing, BagFault> {
    let algorithm = algorithm(reading.file)?;
    let mut entries: BTreeMap<String, String> = BTreeMap::new();
    for (at, line) in lines(text).into_iter().enumerate() {
        if reading.blank(line) {
            continue;
        }
        let parts = line.split_once([' ', '\t']);
        let (digest, path) = parts.ok_or_else(|| reading.fault(at, "it is not a digest and a path"))?;
        let path = path.trim_start_matches([' ', '\t']);
        let (digest, path) = reading.legacy(digest, path);
        if digest.is_empty() || !digest.bytes().all(|b| b.is_ascii_hexdigit()) {
            return Err(reading.fault(at, "it does not begin with a digest in hex"));
        }
        if algorithm.as_ref().is_ok_and(|a| a.digits() != digest.len()) {
            return Err(reading.fault(at, "the digest has not the length of its algorithm"));
        }
        let path = reading.path(&path)?;
        let digest = digest.to_ascii_lowercase();
        match entries.get(&path) {
            Some(before) if reading.version < V1_0 && *before == digest => {
                (reading.remark)(format!("{} lists {path} twice with the same digest", reading.file));
            }
            Some(_) => return Err(BagFault::Twice { file: reading.file.to_owned(), path }),
            None => {
                entries.insert(path, digest);
            }
        }
    }
    Ok(Listing { file: reading.file.to_owned(), algorithm, entries })
}

/// Reads the paths of a `fetch.txt`.
pub(super) fn fetch(reading: &mut Reading<'_>, text: &str) -> Result<BTreeSet<String>, BagFault> {
    let mut paths = BTreeSet::new();
    for (at, line) in lines(text).into_iter().enumerate() {
        if reading.blank(line) {
            continue;
        }
        let part = |text: &str| {
            let (first, rest) = text.split_once([' ', '\t'])?;
            Some((first.to_owned(), rest.trim_start_matches([' ', '\t']).to_owned()))
        };
        let parts = part(line).and_then(|(url, rest)| Some((url, part(&rest)?)));
        let (url, (length, path)) =
            parts.ok_or_else(|| reading.fault(at, "it is not an address, a length and a path"))?;
        if !is_absolute(&url) {
            return Err(reading.fault(at, "it does not begin with a whole address, as https://example.org/x"));
        }
        if length != "-" && (length.is_empty() || !length.bytes().all(|b| b.is_ascii_digit())) {
            return Err(reading.fault(at, "the length is neither a number nor '-'"));
        }
        let path = reading.path(&path)?;
        if !path.starts_with("data/") {
            // Bags of the drafts name what is fetched from the payload folder on.
            if reading.version >= V1_0 {
                return Err(BagFault::Misplaced { file: reading.file.to_owned(), path });
            }
            (reading.remark)(format!("{} lists {path}, which is not in data/", reading.file));
        }
        if paths.contains(&path) {
            (reading.remark)(format!("{} lists {path} twice", reading.file));
        }
        paths.insert(path);
    }
    Ok(paths)
}

/// Undoes the escapes of `md5sum`.
fn unescape(path: &str) -> String {
    let mut out = String::with_capacity(path.len());
    let mut chars = path.chars();
    while let Some(c) = chars.next() {
        let next = if c == '\\' { chars.next() } else { None };
        match next {
            Some('n') => out.push('\n'),
            Some('r') => out.push('\r'),
            Some(other) => out.push(other),
            None => out.push(c),
        }
    }
    out
}

/// Whether text is an absolute URI as far as its scheme tells (RFC 3986 §3.1, §4.3).
fn is_absolute(url: &str) -> bool {
    url.split_once(':').is_some_and(|(scheme, rest)| {
        scheme.starts_with(|c: char| c.is_ascii_alphabetic())
            && scheme.bytes().all(|b| b.is_ascii_alphanumeric() || b"+-.".contains(&b))
            && !rest.trim_matches('/').is_empty()
    })
}

fn has_bare_percent(path: &str) -> bool {
    let codes = ["0A", "0a", "0D", "0d", "25"];
    path.split('%').skip(1).any(|after| !codes.iter().any(|code| after.starts_with(code)))
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

/// Whether a path could mean a place outside the bag, on any system; a name that lies in the bag may begin oddly.
fn leads_out(path: &str, is_there: bool) -> bool {
    let drive =
        path.as_bytes().get(1) == Some(&b':') && path.as_bytes().first().is_some_and(u8::is_ascii_alphabetic);
    let begins = drive || path.starts_with(['\\', '~']);
    path.is_empty()
        || path.starts_with('/')
        || (begins && !is_there)
        || path.contains('\0')
        || path.split(['/', '\\']).any(|part| part == "..")
}
