//! The hashes that manifests may use: those of RFC 8493 §2.4 and of the registry that it names.

use blake2::{Blake2b512, Blake2s256};
use md5::Md5;
use sha1::Sha1;
use sha2::digest::DynDigest;
use sha2::{Sha224, Sha256, Sha384, Sha512, Sha512_224, Sha512_256};
use sha3::{Sha3_224, Sha3_256, Sha3_384, Sha3_512};

use crate::record::seal::hex;

/// Makes a hasher.
type Make = fn() -> Box<dyn DynDigest>;

/// By the name in a file name: lower case, without punctuation (RFC 8493 §2.4). MD5 and SHA-1 are there for
/// bags that others made long ago.
const KNOWN: [(&str, Make); 16] = [
    ("md5", || Box::new(Md5::default())),
    ("sha1", || Box::new(Sha1::default())),
    ("sha224", || Box::new(Sha224::default())),
    ("sha256", || Box::new(Sha256::default())),
    ("sha384", || Box::new(Sha384::default())),
    ("sha512", || Box::new(Sha512::default())),
    ("sha512224", || Box::new(Sha512_224::default())),
    ("sha512256", || Box::new(Sha512_256::default())),
    ("sha3224", || Box::new(Sha3_224::default())),
    ("sha3256", || Box::new(Sha3_256::default())),
    ("sha3384", || Box::new(Sha3_384::default())),
    ("sha3512", || Box::new(Sha3_512::default())),
    ("blake2b", || Box::new(Blake2b512::default())),
    ("blake2b512", || Box::new(Blake2b512::default())),
    ("blake2s", || Box::new(Blake2s256::default())),
    ("blake2s256", || Box::new(Blake2s256::default())),
];

/// A hash that manifests may use.
#[derive(Debug, Clone, Copy)]
pub(super) struct Algorithm {
    make: Make,
}

impl Algorithm {
    /// The algorithm by its name in a file name.
    pub(super) fn named(name: &str) -> Option<Self> {
        KNOWN.iter().find(|(known, _)| *known == name).map(|(_, make)| Self { make: *make })
    }

    /// Digits of a digest in hex.
    pub(super) fn digits(self) -> usize {
        (self.make)().output_size() * 2
    }

    pub(super) fn hasher(self) -> Hasher {
        Hasher((self.make)())
    }
}

/// A digest in the making.
pub(super) struct Hasher(Box<dyn DynDigest>);

impl Hasher {
    pub(super) fn add(&mut self, bytes: &[u8]) {
        self.0.update(bytes);
    }

    /// The digest in lower-case hex.
    pub(super) fn end(self) -> String {
        hex(&self.0.finalize())
    }
}
