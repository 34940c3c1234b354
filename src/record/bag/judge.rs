//! Whether any bag, ours or not, is complete and valid (RFC 8493 §3; drafts 0.93 to 0.97 by their own rules).
//!
//! This is a second opinion on bit rot and says nothing of who made a bag: someone who changes a file can
//! compute its manifests anew. Whether a record is what its tablet sealed, [`verify`](crate::record::verify)
//! says.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use super::contents::{Contents, Files};
use super::fault::BagFault;
use super::hash::{Algorithm, Hasher};
use super::listing::{self, Listing, Reading};
use super::text::{self, Encoding, V1_0, Version};
use super::unzip;
use crate::ports::{Disk, Lies};

/// Judges a bag in memory. The answer lists what is allowed but does not travel well.
///
/// # Errors
/// What makes it invalid; [`BagFault::CannotJudge`] only when nothing else is wrong.
pub fn judge(files: &Files<'_>) -> Result<Vec<String>, BagFault> {
    judge_contents(&Contents::of(files))
}

/// Judges the bag in a folder or in a ZIP file.
///
/// # Errors
/// As [`judge`]; [`BagFault::Unreadable`] if there is nothing to judge, [`BagFault::CannotJudge`] for a ZIP file
/// that is packed in a way that is not known here.
pub fn judge_path(disk: &dyn Disk, path: &Path) -> Result<Vec<String>, BagFault> {
    let unreadable = |fault: crate::ports::DiskFault| BagFault::Unreadable { what: fault.to_string() };
    let path = disk.real(path).map_err(unreadable)?;
    match disk.look(&path).map_err(unreadable)? {
        Lies::Folder => judge_contents(&Contents::of_folder(disk, &path)?),
        Lies::File(len) => judge_contents(&unzip::open(disk, &path, len)?),
        Lies::Link | Lies::Other => {
            Err(BagFault::Unreadable { what: "it is neither a folder nor a file".to_owned() })
        }
    }
}

fn judge_contents(contents: &Contents<'_>) -> Result<Vec<String>, BagFault> {
    let declared = contents.read("bagit.txt")?;
    let declared = declared.ok_or_else(|| BagFault::Declaration { what: "it is missing".to_owned() })?;
    let (version, encoding) = text::declaration(&declared)?;
    let mut remarks: BTreeSet<String> = contents.remarks.iter().cloned().collect();
    let mut reader = Reader { contents, version, encoding, remarks: &mut remarks };
    let payload = reader.manifests("manifest-")?;
    let tags = reader.manifests("tagmanifest-")?;
    if payload.is_empty() {
        return Err(BagFault::NoManifest);
    }
    let fetch = reader.fetch()?;
    check_payload(contents, version, &payload, &fetch)?;
    check_tags(contents, version, &payload, &tags)?;
    if !contents.folders.contains("data") {
        return Err(BagFault::NoPayload);
    }
    let lists: Vec<&Listing> = payload.iter().chain(&tags).collect();
    check_digests(contents, &lists)?;
    // Last, since all the others say more of what is wrong.
    reader.check_info()?;
    if let Some(name) = lists.iter().find_map(|list| list.algorithm.as_ref().err()) {
        return Err(BagFault::CannotJudge { what: format!("the manifest algorithm {name}") });
    }
    remarks.extend(portability(contents));
    Ok(remarks.into_iter().collect())
}

struct Reader<'a> {
    contents: &'a Contents<'a>,
    version: Version,
    encoding: Encoding,
    remarks: &'a mut BTreeSet<String>,
}

impl Reader<'_> {
    fn text(&mut self, file: &str) -> Result<Option<String>, BagFault> {
        let Some(bytes) = self.contents.read(file)? else {
            return Ok(None);
        };
        let (text, marked) = text::decode(file, &bytes, self.encoding)?;
        if marked && !self.encoding.takes_mark() {
            // RFC 8493 §2.3; the drafts did not say so.
            if self.version >= V1_0 {
                return Err(BagFault::Marked { file: file.to_owned() });
            }
            self.remarks.insert(format!("{file} begins with a byte order mark"));
        }
        if !text.is_empty() && !text.ends_with(['\n', '\r']) {
            self.remarks.insert(format!("the last line of {file} has no end"));
        }
        Ok(Some(text))
    }

    /// Hands a list to `read`, with what it needs to be read by.
    fn list<T>(
        &mut self,
        file: &str,
        read: impl FnOnce(&mut Reading<'_>, &str) -> Result<T, BagFault>,
    ) -> Result<Option<T>, BagFault> {
        let Some(text) = self.text(file)? else {
            return Ok(None);
        };
        let mut remark = |remark| {
            self.remarks.insert(remark);
        };
        let (version, contents) = (self.version, self.contents);
        read(&mut Reading { file, version, contents, remark: &mut remark }, &text).map(Some)
    }

    fn manifests(&mut self, prefix: &str) -> Result<Vec<Listing>, BagFault> {
        let named =
            |file: &&String| file.starts_with(prefix) && file.ends_with(".txt") && !file.contains('/');
        let mut lists = Vec::new();
        for file in self.contents.files.keys().filter(named) {
            lists.extend(self.list(file, listing::manifest)?);
        }
        Ok(lists)
    }

    fn fetch(&mut self) -> Result<BTreeSet<String>, BagFault> {
        self.list("fetch.txt", listing::fetch).map(Option::unwrap_or_default)
    }

    /// The metadata file, and the size it tells.
    fn check_info(&mut self) -> Result<(), BagFault> {
        let file = self.version.info_file();
        let Some(text) = self.text(file)? else {
            return Ok(());
        };
        let fields = text::fields(file, &text, self.version, &mut |remark| {
            self.remarks.insert(remark);
        })?;
        let mut said = fields.iter().filter(|(label, _)| label.eq_ignore_ascii_case("Payload-Oxum"));
        let Some((_, first)) = said.next() else {
            return Ok(());
        };
        let payload = self.contents.files.iter().filter(|(path, _)| path.starts_with("data/"));
        let (octets, streams) =
            payload.fold((0_u64, 0_u64), |(octets, n), (_, size)| (octets.saturating_add(*size), n + 1));
        let number =
            |text: &str| text.bytes().all(|b| b.is_ascii_digit()).then(|| text.parse().ok()).flatten();
        let sizes = first.split_once('.').and_then(|(a, b)| Some((number(a)?, number(b)?)));
        let again = said.next();
        if sizes == Some((octets, streams)) && (again.is_none() || self.version < V1_0) {
            return Ok(());
        }
        let said = again.map_or_else(|| first.clone(), |(_, again)| format!("{first} and {again}"));
        Err(BagFault::Oxum { said, found: format!("{octets}.{streams}") })
    }
}

/// Every payload file listed (in each manifest since 1.0, in one before), every listed file there.
fn check_payload(
    contents: &Contents<'_>,
    version: Version,
    lists: &[Listing],
    fetch: &BTreeSet<String>,
) -> Result<(), BagFault> {
    let files = &contents.files;
    for list in lists {
        let file = list.file.clone();
        for path in list.entries.keys() {
            if !path.starts_with("data/") {
                return Err(BagFault::Misplaced { file, path: path.clone() });
            }
            if files.contains_key(path) {
                continue;
            }
            if fetch.contains(path) {
                return Err(BagFault::NotFetched { path: path.clone() });
            }
            return Err(BagFault::Missing { file, path: path.clone() });
        }
    }
    let listed = |path: &str| {
        let mut lacking = lists.iter().filter(|list| !list.entries.contains_key(path));
        let first = lacking.next()?;
        let none = lacking.count() + 1 == lists.len();
        (version >= V1_0 || none).then(|| first.file.clone())
    };
    let payload = files.keys().map(String::as_str).filter(|path| path.starts_with("data/"));
    let promised = fetch.iter().map(String::as_str).filter(|_| version >= V1_0);
    for path in payload.chain(promised) {
        if let Some(file) = listed(path) {
            return Err(BagFault::NotListed { file, path: path.to_owned() });
        }
    }
    Ok(())
}

/// Every listed tag file there; no payload among them, nor the list itself; since 1.0 every payload manifest.
fn check_tags(
    contents: &Contents<'_>,
    version: Version,
    payload: &[Listing],
    tags: &[Listing],
) -> Result<(), BagFault> {
    for list in tags {
        for path in list.entries.keys() {
            if *path == list.file || path.starts_with("data/") {
                return Err(BagFault::Misplaced { file: list.file.clone(), path: path.clone() });
            }
            if !contents.files.contains_key(path) {
                return Err(BagFault::Missing { file: list.file.clone(), path: path.clone() });
            }
        }
        let left_out = payload.iter().find(|p| !list.entries.contains_key(&p.file));
        if let Some(left_out) = left_out.filter(|_| version >= V1_0) {
            return Err(BagFault::NotListed { file: list.file.clone(), path: left_out.file.clone() });
        }
    }
    Ok(())
}

/// Reads each listed file once, for all lists that have it.
fn check_digests(contents: &Contents<'_>, lists: &[&Listing]) -> Result<(), BagFault> {
    let mut wanted: BTreeMap<&str, Vec<(&Listing, Algorithm, &str)>> = BTreeMap::new();
    for list in lists {
        if let Ok(algorithm) = &list.algorithm {
            for (path, digest) in &list.entries {
                wanted.entry(path).or_default().push((list, *algorithm, digest));
            }
        }
    }
    for (path, digests) in wanted {
        let mut hashers: Vec<Hasher> = digests.iter().map(|(_, algorithm, _)| algorithm.hasher()).collect();
        contents.stream(path, &mut |bytes| hashers.iter_mut().for_each(|hasher| hasher.add(bytes)))?;
        let judged = digests.iter().zip(hashers);
        let changed = judged
            .filter_map(|((list, _, digest), hasher)| (hasher.end() != **digest).then_some(*list))
            .next();
        if let Some(list) = changed {
            return Err(BagFault::Changed { file: list.file.clone(), path: path.to_owned() });
        }
    }
    Ok(())
}

/// Names that some systems keep for devices, with or without an ending (RFC 8493 §6.1.2).
const DEVICES: [&str; 4] = ["con", "prn", "aux", "nul"];

/// What another system might not take.
fn portability(contents: &Contents<'_>) -> Vec<String> {
    let mut remarks = Vec::new();
    let mut folded: BTreeMap<String, &str> = BTreeMap::new();
    for path in contents.files.keys() {
        if let Some(before) = folded.insert(path.to_lowercase(), path) {
            remarks.push(format!("{before} and {path} differ in capitals only"));
        }
        let name = path.rsplit('/').next().unwrap_or_default();
        if matches!(name, ".DS_Store" | "Thumbs.db" | "desktop.ini") {
            remarks.push(format!("{path} is a file of an operating system"));
        }
        let stem = name.split('.').next().unwrap_or_default().to_lowercase();
        let port = |kind| {
            stem.strip_prefix(kind).is_some_and(|n| n.len() == 1 && n.bytes().all(|b| b.is_ascii_digit()))
        };
        let device = DEVICES.contains(&stem.as_str()) || port("com") || port("lpt");
        if device || path.contains(['<', '>', ':', '"', '|', '?', '*', '\\']) {
            remarks.push(format!("{path:?} is a name that some systems cannot keep"));
        }
        if Contents::is_decomposed(path) {
            remarks.push(format!("{path} is written with marks apart from their letters"));
        }
    }
    remarks.extend(contents.alike().map(|path| format!("two files look alike as {path}")));
    remarks
}
