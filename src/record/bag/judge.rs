//! Whether any bag, ours or not, is complete and valid (RFC 8493 §3; drafts 0.93 to 0.97 by their own rules).
//!
//! This is a second opinion on bit rot and says nothing of who made a bag: someone who changes a file can
//! compute its manifests anew. Whether a record is what its tablet sealed, [`verify`](crate::record::verify)
//! says.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use super::listing::{self, Listing};
use super::text::{self, Encoding, V1_0, Version};
use crate::ports::Disk;
use crate::record::verify::folder;
use crate::record::zip;

/// The files of a bag by their paths in it.
pub type Files<'a> = BTreeMap<&'a str, &'a [u8]>;

/// Why a bag is not valid, or cannot be judged.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum BagFault {
    /// The declaration is missing or not as it must be.
    #[error("bagit.txt: {what}")]
    Declaration {
        /// What is wrong.
        what: String,
    },
    /// The bag cannot be read.
    #[error("the bag cannot be read: {what}")]
    Unreadable {
        /// Why not.
        what: String,
    },
    /// Nothing is wrong with the rest, but a part of it is not known here.
    #[error("cannot judge: {what} is not known here")]
    CannotJudge {
        /// What is not known.
        what: String,
    },
    /// A tag file is not in the encoding that `bagit.txt` names.
    #[error("{file} is not text in the encoding that bagit.txt names")]
    NotText {
        /// The file.
        file: String,
    },
    /// There is no payload manifest.
    #[error("the bag has no payload manifest")]
    NoManifest,
    /// A line that is not of its file's form.
    #[error("{file}, line {line}: {what}")]
    Line {
        /// The file.
        file: String,
        /// The line, from 1.
        line: usize,
        /// What is wrong.
        what: &'static str,
    },
    /// A path that leads out of the bag.
    #[error("{file} lists {path:?}, which leads out of the bag")]
    Unsafe {
        /// The file.
        file: String,
        /// The path.
        path: String,
    },
    /// A path listed twice.
    #[error("{file} lists {path} twice")]
    Twice {
        /// The file.
        file: String,
        /// The path.
        path: String,
    },
    /// A path that this list may not have.
    #[error("{file} lists {path}, which does not belong there")]
    Misplaced {
        /// The list.
        file: String,
        /// The path.
        path: String,
    },
    /// A listed file is not there.
    #[error("{path} is listed in {file} and is not there")]
    Missing {
        /// The list.
        file: String,
        /// The path.
        path: String,
    },
    /// A listed file is still to be fetched.
    #[error("{path} is not there: fetch.txt says where it can be fetched")]
    NotFetched {
        /// The path.
        path: String,
    },
    /// A file that a list does not have.
    #[error("{path} is not listed in {file}")]
    NotListed {
        /// The list.
        file: String,
        /// The path.
        path: String,
    },
    /// A file does not fit its digest.
    #[error("{path} is not what {file} says: it was changed")]
    Changed {
        /// The list.
        file: String,
        /// The path.
        path: String,
    },
    /// The metadata tell another size, or tell it wrongly.
    #[error("Payload-Oxum says {said}, and the payload has {found}")]
    Oxum {
        /// What stands there.
        said: String,
        /// Bytes and files, with a point between.
        found: String,
    },
}

impl BagFault {
    /// Whether the bag may well be valid.
    #[must_use]
    pub const fn cannot_judge(&self) -> bool {
        matches!(self, Self::CannotJudge { .. })
    }
}

/// Judges a bag. The answer lists what is allowed but does not travel well.
///
/// # Errors
/// What makes it invalid; [`BagFault::CannotJudge`] only when nothing else is wrong.
pub fn judge(files: &Files<'_>) -> Result<Vec<String>, BagFault> {
    let declared =
        files.get("bagit.txt").ok_or_else(|| BagFault::Declaration { what: "it is missing".to_owned() })?;
    let (version, encoding) = text::declaration(declared)?;
    let mut remarks = BTreeSet::new();
    let mut reader = Reader { files, version, encoding, remarks: &mut remarks };
    let payload = reader.manifests("manifest-")?;
    let tags = reader.manifests("tagmanifest-")?;
    if payload.is_empty() {
        return Err(BagFault::NoManifest);
    }
    let fetch = reader.fetch()?;
    check_payload(files, version, &payload, &fetch)?;
    check_tags(files, version, &payload, &tags)?;
    for list in payload.iter().chain(&tags) {
        check_digests(files, list)?;
    }
    // Last, since all the others say more of what is wrong.
    reader.check_oxum()?;
    if let Some(name) = payload.iter().chain(&tags).find_map(|list| list.algorithm.as_ref().err()) {
        return Err(BagFault::CannotJudge { what: format!("the manifest algorithm {name}") });
    }
    remarks.extend(portability(files));
    Ok(remarks.into_iter().collect())
}

/// Judges the bag in a folder, or in a ZIP file that is packed as records are.
///
/// # Errors
/// As [`judge`]; [`BagFault::Unreadable`] if there is nothing to judge, [`BagFault::CannotJudge`] for a ZIP file
/// of another layout: it has to be unpacked first.
pub fn judge_path(disk: &dyn Disk, path: &Path) -> Result<Vec<String>, BagFault> {
    let unreadable = |what: String| BagFault::Unreadable { what };
    if disk.is_dir(path) {
        let bag = folder::read(disk, path).map_err(|fault| unreadable(fault.to_string()))?;
        return judge(&bag.files.iter().map(|(name, bytes)| (name.as_str(), bytes.as_slice())).collect());
    }
    let bytes = disk.read(path, zip::MAX_BYTES).map_err(|fault| unreadable(fault.to_string()))?;
    let entries = zip::read(&bytes).map_err(|fault| BagFault::CannotJudge {
        what: format!("this layout of ZIP files ({fault}; unpack it and give the folder)"),
    })?;
    let root = entries
        .iter()
        .find_map(|entry| entry.name.strip_suffix("bagit.txt").filter(|r| r.matches('/').count() < 2));
    let within = |name| root.and_then(|root| str::strip_prefix(name, root));
    judge(&entries.iter().filter_map(|entry| Some((within(entry.name)?, entry.bytes))).collect())
}

struct Reader<'a> {
    files: &'a Files<'a>,
    version: Version,
    encoding: Encoding,
    remarks: &'a mut BTreeSet<String>,
}

impl Reader<'_> {
    fn text(&mut self, file: &str) -> Result<Option<String>, BagFault> {
        let Some(bytes) = self.files.get(file) else {
            return Ok(None);
        };
        let (text, marked) = text::decode(file, bytes, self.encoding)?;
        if marked && self.encoding == Encoding::Utf8 {
            self.remarks.insert(format!("{file} begins with a byte order mark"));
        }
        Ok(Some(text))
    }

    fn manifests(&mut self, prefix: &str) -> Result<Vec<Listing>, BagFault> {
        let named = |file: &&&str| file.starts_with(prefix) && file.ends_with(".txt") && !file.contains('/');
        let names: Vec<&str> = self.files.keys().filter(named).copied().collect();
        let mut lists = Vec::with_capacity(names.len());
        for file in names {
            let text = self.text(file)?.unwrap_or_default();
            let mut remark = |remark| {
                self.remarks.insert(remark);
            };
            lists.push(listing::manifest(file, &text, self.version, self.files, &mut remark)?);
        }
        Ok(lists)
    }

    fn fetch(&mut self) -> Result<Vec<String>, BagFault> {
        let file = "fetch.txt";
        let Some(text) = self.text(file)? else {
            return Ok(Vec::new());
        };
        let mut remark = |remark| {
            self.remarks.insert(remark);
        };
        listing::fetch(file, &text, self.version, self.files, &mut remark)
    }

    /// The metadata file, and the size it tells.
    fn check_oxum(&mut self) -> Result<(), BagFault> {
        let file = self.version.info_file();
        let Some(text) = self.text(file)? else {
            return Ok(());
        };
        let fields = text::fields(file, &text, self.version)?;
        let mut said = fields.iter().filter(|(label, _)| label.eq_ignore_ascii_case("Payload-Oxum"));
        let Some((_, first)) = said.next() else {
            return Ok(());
        };
        let payload = self.files.iter().filter(|(path, _)| path.starts_with("data/"));
        let (octets, streams) =
            payload.fold((0_u64, 0_u64), |(octets, n), (_, bytes)| (octets + bytes.len() as u64, n + 1));
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
    files: &Files<'_>,
    version: Version,
    lists: &[Listing],
    fetch: &[String],
) -> Result<(), BagFault> {
    for list in lists {
        let file = list.file.clone();
        for path in list.entries.keys() {
            if !path.starts_with("data/") {
                return Err(BagFault::Misplaced { file, path: path.clone() });
            }
            if files.contains_key(path.as_str()) {
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
    let payload = files.keys().copied().filter(|path| path.starts_with("data/"));
    let promised = fetch.iter().map(String::as_str).filter(|_| version >= V1_0);
    for path in payload.chain(promised) {
        if let Some(file) = listed(path) {
            return Err(BagFault::NotListed { file, path: path.to_owned() });
        }
    }
    Ok(())
}

/// Every listed tag file there; no payload and no tag manifest among them; since 1.0 every payload manifest.
fn check_tags(
    files: &Files<'_>,
    version: Version,
    payload: &[Listing],
    tags: &[Listing],
) -> Result<(), BagFault> {
    for list in tags {
        for path in list.entries.keys() {
            let own = tags.iter().any(|tag| tag.file == *path);
            if own || path.starts_with("data/") {
                return Err(BagFault::Misplaced { file: list.file.clone(), path: path.clone() });
            }
            if !files.contains_key(path.as_str()) {
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

fn check_digests(files: &Files<'_>, list: &Listing) -> Result<(), BagFault> {
    let Ok(algorithm) = list.algorithm else {
        return Ok(());
    };
    let changed = list.entries.iter().find(|(path, digest)| {
        let bytes = files.get(path.as_str());
        bytes.is_none_or(|bytes| algorithm.of(bytes) != **digest)
    });
    changed.map_or(Ok(()), |(path, _)| Err(BagFault::Changed { file: list.file.clone(), path: path.clone() }))
}

/// What another system might not take.
fn portability(files: &Files<'_>) -> Vec<String> {
    let mut remarks = Vec::new();
    let mut folded: BTreeMap<String, &str> = BTreeMap::new();
    for path in files.keys() {
        if let Some(before) = folded.insert(path.to_lowercase(), path) {
            remarks.push(format!("{before} and {path} differ in capitals only"));
        }
        let name = path.rsplit('/').next().unwrap_or_default();
        if matches!(name, ".DS_Store" | "Thumbs.db" | "desktop.ini") {
            remarks.push(format!("{path} is a file of an operating system"));
        }
    }
    remarks
}
