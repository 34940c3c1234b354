//! One record: from the seal down to the last file.

use std::collections::{BTreeMap, BTreeSet};

use super::head::{self, Head};
use super::verdict::{Failure, Seen};
use super::{Trust, folder};
use crate::record::bag::{self, Info};
use crate::record::keys::{NAMESPACE, PublicKey, SealFile};
use crate::record::seal::{Digest, record_id};
use crate::record::zip::Entry;

/// The files of a record, by their names inside its folder.
#[derive(Debug)]
pub(super) struct Files<'a> {
    /// Name of the folder, if it is known.
    root: Option<&'a str>,
    files: BTreeMap<&'a str, &'a [u8]>,
    /// A file of the ZIP that lies outside the folder.
    outside: Option<&'a str>,
    /// Whether they stand in the order in which a record is written.
    ordered: bool,
}

impl<'a> Files<'a> {
    pub(super) fn of_zip(entries: &[Entry<'a>]) -> Self {
        let folder_of = |name: &'a str| name.split_once('/').map(|(folder, _)| folder);
        let declared =
            entries.iter().find_map(|e| e.name.strip_suffix("/bagit.txt").filter(|r| !r.contains('/')));
        let root = declared.or_else(|| folder_of(entries.first()?.name));
        let within = |name: &'a str| name.strip_prefix(root?)?.strip_prefix('/');
        let names: Vec<&str> = entries.iter().filter_map(|e| within(e.name)).collect();
        Self {
            root,
            files: entries.iter().filter_map(|e| Some((within(e.name)?, e.bytes))).collect(),
            outside: entries.iter().map(|e| e.name).find(|name| within(name).is_none()),
            ordered: names.is_sorted_by_key(place),
        }
    }

    pub(super) fn of_folder(bag: &'a folder::Bag) -> Self {
        let files = bag.files.iter().map(|(name, bytes)| (name.as_str(), bytes.as_slice()));
        Self { root: bag.name.as_deref(), files: files.collect(), outside: None, ordered: true }
    }

    fn text(&self, name: &str) -> Result<&'a str, Failure> {
        let bytes = self.files.get(name).ok_or_else(|| Failure::FileMissing(name.to_owned()))?;
        std::str::from_utf8(bytes).map_err(|_| Failure::NotARecord(format!("{name} is not text")))
    }

    /// Whether it means to be a record, and is not just any bag.
    fn claims_to_be_a_record(&self) -> bool {
        let info = self.files.get(bag::INFO_FILE).and_then(|bytes| std::str::from_utf8(bytes).ok());
        self.files.contains_key(bag::SEAL_FILE)
            || info.is_some_and(|info| info.contains("\nSendoff-Format: "))
    }
}

/// Tag files first, in their own order; then the payload by name.
fn place<'a>(name: &'a &'a str) -> (usize, &'a str) {
    let tag = bag::TAG_FILES.iter().position(|tag| tag == name);
    (tag.unwrap_or(bag::TAG_FILES.len()), name)
}

/// What was found out about one record. The outside may be known although the inside failed.
#[derive(Debug)]
pub(super) struct Judged {
    /// What is sealed on the outside, if the seal holds and the tablet is trusted.
    pub(super) seen: Option<Seen>,
    /// The first failure.
    pub(super) failure: Option<Failure>,
}

impl Judged {
    pub(super) const fn failed(failure: Failure) -> Self {
        Self { seen: None, failure: Some(failure) }
    }

    pub(super) fn into_result(self) -> Result<Seen, Failure> {
        match (self.failure, self.seen) {
            (Some(failure), _) => Err(failure),
            (None, Some(seen)) => Ok(seen),
            (None, None) => Err(Failure::NotARecord("nothing could be said about it".to_owned())),
        }
    }
}

/// What the seal covers at once.
struct Sealed<'a> {
    key: PublicKey,
    digest: Digest,
    /// Names in the tag manifest.
    tags: BTreeSet<&'a str>,
    info: &'a str,
    format: u32,
}

pub(super) fn judge(files: &Files<'_>, trust: Trust<'_>) -> Judged {
    let sealed = match open(files) {
        Ok(sealed) => sealed,
        Err(failure) => return Judged::failed(failure),
    };
    let whole = check_files(files, &sealed);
    let seen = identify(files, &sealed).and_then(|seen| {
        check_trust(&seen, trust)?;
        Ok(seen)
    });
    match (whole, seen) {
        (Err(failure), seen) => Judged { seen: seen.ok(), failure: Some(failure) },
        (Ok(()), Err(failure)) => Judged::failed(failure),
        (Ok(()), Ok(seen)) => {
            let failure = check_record(files, &sealed, &seen).err();
            Judged { seen: Some(seen), failure }
        }
    }
}

/// The seal, and the tag files it covers.
fn open<'a>(files: &Files<'a>) -> Result<Sealed<'a>, Failure> {
    if !files.claims_to_be_a_record() {
        let what =
            if files.files.contains_key(bag::BAGIT_FILE) { "a bag, but without a seal" } else { "no bag" };
        return Err(Failure::NotARecord(what.to_owned()));
    }
    if let Some(missing) = bag::TAG_FILES.into_iter().find(|name| !files.files.contains_key(name)) {
        return Err(Failure::FileMissing(missing.to_owned()));
    }
    let bytes = |name: &str| files.files.get(name).copied().unwrap_or_default();
    let list = bytes(bag::TAG_MANIFEST_FILE);
    let bad = |why: &str| Failure::BadSeal(why.to_owned());
    let seal = SealFile::parse(bytes(bag::SEAL_FILE))
        .map_err(|fault| bad(&format!("{}: {fault}", bag::SEAL_FILE)))?;
    if !seal.is_sha256() || !seal.holds(NAMESPACE, list) {
        return Err(bad("the signature does not fit tagmanifest-sha256.txt; one of the two was changed"));
    }
    let list = files.text(bag::TAG_MANIFEST_FILE)?;
    let tags =
        bag::parse_manifest(list).map_err(|fault| Failure::NotARecord(format!("tagmanifest: {fault}")))?;
    compare(files, &tags)?;
    let info = files.text(bag::INFO_FILE)?;
    let format = bag::format_of(info).unwrap_or(0);
    let names: BTreeSet<&str> = tags.iter().map(|(name, _)| *name).collect();
    let own = [bag::BAGIT_FILE, bag::INFO_FILE, bag::MANIFEST_FILE];
    let listed =
        if format > bag::FORMAT { own.iter().all(|n| names.contains(n)) } else { names == own.into() };
    if !listed {
        return Err(Failure::NotARecord(
            "tagmanifest-sha256.txt lists other files than a record's".to_owned(),
        ));
    }
    Ok(Sealed { key: *seal.public(), digest: Digest::of(list.as_bytes()), tags: names, info, format })
}

/// Whether the listed files are there and unchanged: first the changed ones, then the missing ones.
fn compare(files: &Files<'_>, list: &[(&str, Digest)]) -> Result<(), Failure> {
    let mut missing = None;
    for (name, digest) in list {
        match files.files.get(name) {
            Some(bytes) if Digest::of(bytes) != *digest => {
                return Err(Failure::FileChanged((*name).to_owned()));
            }
            Some(_) => {}
            None => missing = missing.or(Some(*name)),
        }
    }
    missing.map_or(Ok(()), |name| Err(Failure::FileMissing(name.to_owned())))
}

/// The payload, and that nothing else is there.
fn check_files(files: &Files<'_>, sealed: &Sealed<'_>) -> Result<(), Failure> {
    let list = files.text(bag::MANIFEST_FILE)?;
    let list = bag::parse_manifest(list).map_err(|fault| Failure::NotARecord(fault.to_string()))?;
    if list.iter().any(|(name, _)| !name.starts_with("data/")) {
        return Err(Failure::NotARecord("manifest-sha256.txt lists files outside data/".to_owned()));
    }
    compare(files, &list)?;
    let payload: BTreeSet<&str> = list.iter().map(|(name, _)| *name).collect();
    let known = |name: &str| {
        payload.contains(name)
            || sealed.tags.contains(name)
            || matches!(name, bag::TAG_MANIFEST_FILE | bag::SEAL_FILE)
    };
    let added = files.files.keys().copied().find(|name| !known(name)).or(files.outside);
    added.map_or(Ok(()), |name| Err(Failure::FileAdded(name.to_owned())))
}

/// What the outside says, and whether all of it agrees.
fn identify(files: &Files<'_>, sealed: &Sealed<'_>) -> Result<Seen, Failure> {
    let not = |why: String| Err(Failure::NotARecord(why));
    if files.text(bag::BAGIT_FILE)? != bag::BAGIT {
        return not("bagit.txt is not that of a record".to_owned());
    }
    let text = if sealed.format > bag::FORMAT { older(sealed.info) } else { sealed.info.to_owned() };
    let info = Info::parse(&text).map_err(|fault| Failure::NotARecord(fault.to_string()))?;
    let (tablet, number) = (info.id.tablet(), info.id.number());
    if info.id != record_id(tablet, &sealed.key, number) {
        return not(format!("its id {} does not belong to the key that sealed it", info.id));
    }
    if files.root.is_some_and(|root| root != info.id.to_string()) {
        return not(format!("its folder is named {:?}, not {}", files.root.unwrap_or_default(), info.id));
    }
    if (number == 1) == info.previous.is_some() {
        return not(format!("number {number} and its link to the record before do not fit each other"));
    }
    Ok(Seen {
        tablet: tablet.to_owned(),
        number,
        previous: info.previous,
        digest: sealed.digest,
        kind: info.kind,
        organization: info.organization,
        sealed: info.sealed,
        key: sealed.key,
        id: info.id,
    })
}

/// The ten lines that we know of a newer `bag-info.txt`, which may say more.
fn older(info: &str) -> String {
    let known = |line: &&str| {
        let label = line.split(':').next().unwrap_or_default();
        matches!(
            label,
            "Source-Organization" | "External-Identifier" | "Bagging-Date" | "Payload-Oxum" | "Sendoff-Kind"
        ) || matches!(label, "Sendoff-Tablet" | "Sendoff-Number" | "Sendoff-Previous" | "Sendoff-Sealed")
    };
    let line = |line: &str| {
        if line.starts_with("Sendoff-Format:") {
            format!("Sendoff-Format: {}\n", bag::FORMAT)
        } else {
            format!("{line}\n")
        }
    };
    info.lines().filter(|l| known(l) || l.starts_with("Sendoff-Format:")).map(line).collect()
}

fn check_trust(seen: &Seen, trust: Trust<'_>) -> Result<(), Failure> {
    let fingerprint = seen.key.fingerprint();
    let tablet = seen.tablet.clone();
    if trust.signers.is_distrusted(&seen.key) {
        return Err(Failure::Distrusted { tablet, fingerprint });
    }
    let unknown = |why: String| Failure::UnknownTablet { tablet: tablet.clone(), fingerprint, why };
    let Some(trusted) = trust.signers.find(&seen.key) else {
        return Err(unknown("its key is not listed".to_owned()));
    };
    if trusted.tablet != seen.tablet {
        return Err(unknown(format!("the key is listed as that of {}", trusted.tablet)));
    }
    if !trusted.may(NAMESPACE) {
        return Err(unknown(format!("the key is listed, but not for {NAMESPACE}")));
    }
    if trusted.valid_at(trust.at) {
        return Ok(());
    }
    let early = trusted.valid_after.filter(|after| trust.at < *after);
    let limit = early.or(trusted.valid_before).unwrap_or(trust.at);
    Err(Failure::NotValidAtThatTime { tablet, at: trust.at, limit, early: early.is_some() })
}

/// Newer formats; then the size that the outside tells, the order in the ZIP, and the head of `record.json`.
fn check_record(files: &Files<'_>, sealed: &Sealed<'_>, seen: &Seen) -> Result<(), Failure> {
    if sealed.format > bag::FORMAT {
        let (found, known) = (sealed.format, bag::FORMAT);
        return Err(Failure::NewerFormat { what: "Sendoff-Format", found, known });
    }
    let not = |why: &str| Err(Failure::NotARecord(why.to_owned()));
    let payload = || files.files.iter().filter(|(name, _)| name.starts_with("data/"));
    let octets: u64 = payload().map(|(_, bytes)| bytes.len() as u64).sum();
    if !sealed.info.contains(&format!("\nPayload-Oxum: {octets}.{}\n", payload().count())) {
        return not("Payload-Oxum does not tell the size of the payload");
    }
    if !files.ordered {
        return not("its files do not stand in the order in which a record is written");
    }
    let Some(record) = files.files.get(bag::RECORD_FILE) else {
        return not("it has no data/record.json");
    };
    let head = Head::read(record).map_err(|why| Failure::NotARecord(format!("data/record.json: {why}")))?;
    if head.major > head::SCHEMA {
        return Err(Failure::NewerFormat {
            what: "the schema of record.json,",
            found: head.major,
            known: head::SCHEMA,
        });
    }
    if head.id == seen.id.to_string() && head.tablet == seen.tablet && head.number == seen.number {
        Ok(())
    } else {
        not("data/record.json and bag-info.txt name different records")
    }
}
