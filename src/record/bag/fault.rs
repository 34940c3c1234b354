//! What is wrong with a bag.

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
    /// There is no payload folder.
    #[error("the bag has no folder data/")]
    NoPayload,
    /// A tag file is not in the encoding that `bagit.txt` names.
    #[error("{file} is not text in the encoding that bagit.txt names")]
    NotText {
        /// The file.
        file: String,
    },
    /// A tag file in UTF-8 begins with a mark that only other encodings need.
    #[error("{file} begins with a byte order mark, which a tag file in UTF-8 must not")]
    Marked {
        /// The file.
        file: String,
    },
    /// The name of a manifest is not written as such names are.
    #[error(
        "{file} is no name of a manifest: the algorithm stands there in small letters and digits alone, as in {proper}"
    )]
    ManifestName {
        /// The file.
        file: String,
        /// How it would be written.
        proper: String,
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
    /// A list names a folder.
    #[error("{file} lists {path}, which is a folder; only files can be listed")]
    Folder {
        /// The list.
        file: String,
        /// The path.
        path: String,
    },
    /// A link that leads out of the bag or to a folder, a pipe, a device.
    #[error("{path} is {what}, and a bag holds files and folders")]
    NoFile {
        /// The path.
        path: String,
        /// What it is.
        what: &'static str,
    },
    /// A ZIP file that is not as ZIP files are, or that readers could see in two ways.
    #[error("the ZIP file: {what}")]
    Zip {
        /// What is wrong.
        what: String,
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
        matches!(self, Self::CannotJudge { .. } | Self::Unreadable { .. })
    }
}
