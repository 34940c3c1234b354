//! A tablet's key: Ed25519, kept as an OpenSSH private key, so that stock tools can use it and outlive us.
//!
//! The public key is known by three forms of the same *wire blob* (RFC 8709 §4: the string `ssh-ed25519`, then
//! the 32 bytes of the key, each with a four-byte length): the OpenSSH line, the fingerprint that
//! `ssh-keygen -l` prints (`SHA256:` and base64 of the blob's SHA-256), and the six hex digits in a record id,
//! which are the first three bytes of that very SHA-256.

mod signature;

pub use signature::{CHECKPOINT, NAMESPACE, SealFile, SealFileFault};

use std::fmt;
use std::path::Path;

use jiff::Timestamp;
use ssh_key::private::{Ed25519Keypair, KeypairData};
use ssh_key::public::{Ed25519PublicKey, KeyData};
use ssh_key::{Cipher, HashAlg, Kdf, LineEnding, PrivateKey};

use super::seal::Digest;
use crate::ports::{Access, Disk, DiskFault, Entropy};

/// The private key's file in its folder.
pub const PRIVATE_FILE: &str = "tablet";
/// The public key's file in its folder.
pub const PUBLIC_FILE: &str = "tablet.pub";

/// Key files are some hundred bytes.
const KEY_CAP: u64 = 64 << 10;
/// OpenSSH's own default for `bcrypt_pbkdf`.
const ROUNDS: u32 = 16;
/// A key file that asks for more would stall the tablet.
const MAX_ROUNDS: u32 = 1024;

/// What can go wrong with a key.
#[derive(Debug, Clone, thiserror::Error)]
pub enum KeyFault {
    /// A tablet name that could not stand in a record id.
    #[error(
        "{name:?} cannot be a tablet's name: use 1 to 32 of a-z, 0-9 and '-', starting with a letter or digit, as in 't2'"
    )]
    Name {
        /// The name.
        name: String,
    },
    /// A key stands there already.
    #[error(
        "{} holds a key already; it was left as it is. A tablet that starts anew takes a new, empty folder", dir.display()
    )]
    Exists {
        /// The folder.
        dir: std::path::PathBuf,
    },
    /// The bytes are no key that we can use.
    #[error("this is not an Ed25519 key in OpenSSH's form: {why}")]
    Form {
        /// What is wrong with it.
        why: String,
    },
    /// The key is encrypted and no passphrase was given.
    #[error("the key is locked: give the lot's passphrase")]
    Locked,
    /// The passphrase does not open the key.
    #[error("the passphrase does not open the key: try it again, mind capitals and spaces")]
    WrongPassphrase,
    /// An empty passphrase protects nothing.
    #[error("the passphrase is empty: give one, or none at all")]
    EmptyPassphrase,
    /// The key could not be encrypted or written out.
    #[error("the key cannot be written in OpenSSH's form: {why}")]
    Write {
        /// The library's words.
        why: String,
    },
    /// The system gave no randomness.
    #[error("no key can be made, the system gives no randomness: {why}")]
    Entropy {
        /// The system's words.
        why: String,
    },
    /// The disk refused.
    #[error(transparent)]
    Disk(#[from] DiskFault),
}

/// Whether a name may be a tablet's: `[a-z0-9][a-z0-9-]{0,31}`.
///
/// # Errors
/// [`KeyFault::Name`].
pub fn check_tablet_name(name: &str) -> Result<(), KeyFault> {
    let plain = |b: u8| b.is_ascii_lowercase() || b.is_ascii_digit();
    let good = name.bytes().next().is_some_and(plain)
        && name.len() <= 32
        && name.bytes().all(|b| plain(b) || b == b'-');
    if good { Ok(()) } else { Err(KeyFault::Name { name: name.chars().take(80).collect() }) }
}

/// An Ed25519 public key.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct PublicKey([u8; 32]);

impl PublicKey {
    /// The key of 32 bytes (RFC 8032 §5.1.5).
    #[must_use]
    pub const fn from_bytes(bytes: [u8; 32]) -> Self {
        Self(bytes)
    }

    /// The 32 bytes.
    #[must_use]
    pub const fn as_bytes(&self) -> &[u8; 32] {
        &self.0
    }

    /// Reads one line `ssh-ed25519 <base64> [comment]`.
    ///
    /// # Errors
    /// [`KeyFault::Form`] for anything else, another kind of key too.
    pub fn from_openssh(line: &str) -> Result<Self, KeyFault> {
        let form = |why: String| KeyFault::Form { why };
        let key = ssh_key::PublicKey::from_openssh(line.trim()).map_err(|e| form(e.to_string()))?;
        let public = Self::from_key_data(key.key_data())
            .ok_or_else(|| form(format!("it is of the kind {}", key.algorithm())))?;
        // Base64 can say one key in several ways; stock tools write one of them.
        let blob = line.split_whitespace().nth(1);
        if public.to_openssh("").split_whitespace().nth(1) == blob {
            Ok(public)
        } else {
            Err(form("its base64 is not in the usual form".to_owned()))
        }
    }

    pub(super) fn from_key_data(data: &KeyData) -> Option<Self> {
        data.ed25519().map(|key| Self(key.0))
    }

    fn stock(&self, comment: &str) -> ssh_key::PublicKey {
        ssh_key::PublicKey::new(KeyData::Ed25519(Ed25519PublicKey(self.0)), comment)
    }

    /// The line `ssh-ed25519 <base64> [comment]`, without a line end.
    #[must_use]
    pub fn to_openssh(&self, comment: &str) -> String {
        // Writing 51 bytes as base64 into a string cannot fail.
        self.stock(comment).to_openssh().unwrap_or_default()
    }

    /// The wire blob: what OpenSSH hashes for a fingerprint.
    #[must_use]
    pub fn wire(&self) -> Vec<u8> {
        let kind = b"ssh-ed25519";
        let mut blob = Vec::with_capacity(51);
        for part in [&kind[..], &self.0[..]] {
            blob.extend_from_slice(&u32::try_from(part.len()).unwrap_or_default().to_be_bytes());
            blob.extend_from_slice(part);
        }
        blob
    }

    /// `SHA256:…`, as `ssh-keygen -l` prints it.
    #[must_use]
    pub fn fingerprint(&self) -> String {
        self.stock("").fingerprint(HashAlg::Sha256).to_string()
    }

    /// The first six hex digits of the SHA-256 of the [wire blob](Self::wire): the key's part of a record id.
    #[must_use]
    pub fn short(&self) -> String {
        Digest::of(&self.wire()).to_string().chars().take(6).collect()
    }
}

impl fmt::Display for PublicKey {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.fingerprint())
    }
}

/// A tablet's private key, unlocked. Its debug form does not show it.
#[derive(Clone)]
pub struct TabletKey {
    key: PrivateKey,
    public: PublicKey,
}

impl fmt::Debug for TabletKey {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_tuple("TabletKey").field(&self.fingerprint()).finish()
    }
}

impl TabletKey {
    /// The key that RFC 8032 §5.1.5 makes of a secret seed; the tablet's name becomes its comment.
    ///
    /// # Errors
    /// [`KeyFault::Name`] for a name that no tablet may have.
    pub fn generate(seed: [u8; 32], tablet: &str) -> Result<Self, KeyFault> {
        check_tablet_name(tablet)?;
        let pair = Ed25519Keypair::from_seed(&seed);
        let key = PrivateKey::new(KeypairData::Ed25519(pair), tablet)
            .map_err(|e| KeyFault::Write { why: e.to_string() })?;
        Self::new(key)
    }

    fn new(key: PrivateKey) -> Result<Self, KeyFault> {
        let public = PublicKey::from_key_data(key.public_key().key_data())
            .ok_or_else(|| KeyFault::Form { why: format!("it is of the kind {}", key.algorithm()) })?;
        // Made anew, since a key remembers the check number of the file that it was read from.
        let key = PrivateKey::new(key.key_data().clone(), key.comment().clone())
            .map_err(|e| KeyFault::Form { why: e.to_string() })?;
        Ok(Self { key, public })
    }

    /// Reads an OpenSSH private key. A passphrase given for a key that is not locked is not looked at.
    ///
    /// # Errors
    /// [`KeyFault::Locked`], [`KeyFault::WrongPassphrase`], or [`KeyFault::Form`] for all that is no Ed25519 key.
    pub fn from_openssh(bytes: &[u8], passphrase: Option<&str>) -> Result<Self, KeyFault> {
        let form = |why: String| KeyFault::Form { why };
        let key = PrivateKey::from_openssh(bytes).map_err(|e| form(e.to_string()))?;
        if !key.is_encrypted() {
            return Self::new(key);
        }
        if let Kdf::Bcrypt { rounds, .. } = key.kdf()
            && *rounds > MAX_ROUNDS
        {
            return Err(form(format!("it asks for {rounds} rounds of bcrypt, more than {MAX_ROUNDS}")));
        }
        let passphrase = passphrase.ok_or(KeyFault::Locked)?;
        match key.decrypt(passphrase) {
            Ok(open) => Self::new(open),
            Err(ssh_key::Error::AlgorithmUnsupported { algorithm }) => {
                Err(form(format!("it is locked by {algorithm}, which is not known here")))
            }
            Err(_) => Err(KeyFault::WrongPassphrase),
        }
    }

    /// The OpenSSH private key, locked with `passphrase` if there is one (aes256-ctr, 16 rounds of bcrypt).
    ///
    /// The salt is not drawn: it is a SHA-256 of secret, passphrase and comment. A salt must differ wherever
    /// key or passphrase differ, and no more; nobody without the 32 secret bytes can compute it, and the same
    /// key written twice gives the same bytes.
    ///
    /// # Errors
    /// [`KeyFault::EmptyPassphrase`], or [`KeyFault::Write`].
    pub fn to_openssh(&self, passphrase: Option<&str>) -> Result<Vec<u8>, KeyFault> {
        let write = |e: ssh_key::Error| KeyFault::Write { why: e.to_string() };
        let text = match passphrase {
            None => self.key.to_openssh(LineEnding::LF).map_err(write)?,
            Some("") => return Err(KeyFault::EmptyPassphrase),
            Some(passphrase) => {
                let chance = self.salt(passphrase)?;
                let (salt, check) = chance.as_bytes().split_at(16);
                let check = check.first_chunk().copied().map_or(0, u32::from_be_bytes);
                let kdf = Kdf::Bcrypt { salt: salt.to_vec(), rounds: ROUNDS };
                let locked = self.key.encrypt_with(Cipher::Aes256Ctr, kdf, check, passphrase);
                locked.and_then(|key| key.to_openssh(LineEnding::LF)).map_err(write)?
            }
        };
        Ok(text.as_bytes().to_vec())
    }

    fn salt(&self, passphrase: &str) -> Result<Digest, KeyFault> {
        let secret = self.key.key_data().ed25519().ok_or(KeyFault::Locked)?.private.to_bytes();
        let mut text = b"salt of a tablet's key\0".to_vec();
        for part in [&secret[..], passphrase.as_bytes(), self.key.comment().as_bytes()] {
            text.extend_from_slice(&(part.len() as u64).to_be_bytes());
            text.extend_from_slice(part);
        }
        Ok(Digest::of(&text))
    }

    /// The public half.
    #[must_use]
    pub const fn public(&self) -> &PublicKey {
        &self.public
    }

    /// `SHA256:…`, as `ssh-keygen -l` prints it.
    #[must_use]
    pub fn fingerprint(&self) -> String {
        self.public.fingerprint()
    }

    /// The comment of the key: the tablet's name, if [`create`] made it.
    #[must_use]
    pub fn comment(&self) -> String {
        self.key.comment().as_str_lossy().to_owned()
    }

    /// Signs a message as `ssh-keygen -Y sign -O hashalg=sha256` does, byte for byte.
    ///
    /// # Errors
    /// [`KeyFault::Write`], which an unlocked Ed25519 key and a named namespace never give.
    pub fn sign(&self, namespace: &str, message: &[u8]) -> Result<String, KeyFault> {
        let signed = self.key.sign(namespace, HashAlg::Sha256, message);
        signed.and_then(|s| s.to_pem(LineEnding::LF)).map_err(|e| KeyFault::Write { why: e.to_string() })
    }
}

/// Makes a tablet's key in a folder: `tablet` (mode 0600) and `tablet.pub`.
///
/// # Errors
/// The name is not allowed, a key stands there already, no randomness, or the disk refuses.
pub fn create(
    disk: &dyn Disk,
    entropy: &dyn Entropy,
    dir: &Path,
    tablet: &str,
    passphrase: Option<&str>,
) -> Result<TabletKey, KeyFault> {
    create_as(disk, entropy, &dir.join(PRIVATE_FILE), tablet, passphrase)
}

/// Makes a key as [`create`] does, under another name: `path` and `path.pub`.
///
/// # Errors
/// As [`create`].
pub fn create_as(
    disk: &dyn Disk,
    entropy: &dyn Entropy,
    path: &Path,
    owner: &str,
    passphrase: Option<&str>,
) -> Result<TabletKey, KeyFault> {
    check_tablet_name(owner)?;
    let dir = path.parent().unwrap_or_else(|| Path::new(""));
    let public = path.with_extension("pub");
    let names = [path, &public].map(|path| path.file_name().map(std::ffi::OsStr::to_string_lossy));
    if disk.list(dir)?.iter().any(|name| names.iter().flatten().any(|own| own == name)) {
        return Err(KeyFault::Exists { dir: dir.to_owned() });
    }
    let seed = entropy.seed().map_err(|e| KeyFault::Entropy { why: e.to_string() })?;
    let key = TabletKey::generate(seed, owner)?;
    let private = key.to_openssh(passphrase)?;
    disk.make_dir(dir)?;
    disk.put_new(path, &private, Access::Owner).map_err(|fault| match fault {
        DiskFault::Exists { .. } => KeyFault::Exists { dir: dir.to_owned() },
        other => KeyFault::Disk(other),
    })?;
    let line = format!("{}\n", key.public.to_openssh(owner));
    disk.put_new(&public, line.as_bytes(), Access::Usual)?;
    Ok(key)
}

/// Reads the key that [`create`] made.
///
/// # Errors
/// It is missing, locked, or no key; see [`TabletKey::from_openssh`].
pub fn load(disk: &dyn Disk, dir: &Path, passphrase: Option<&str>) -> Result<TabletKey, KeyFault> {
    load_as(disk, &dir.join(PRIVATE_FILE), passphrase)
}

/// Reads the key that [`create_as`] made.
///
/// # Errors
/// As [`load`].
pub fn load_as(disk: &dyn Disk, path: &Path, passphrase: Option<&str>) -> Result<TabletKey, KeyFault> {
    TabletKey::from_openssh(&disk.read(path, KEY_CAP)?, passphrase)
}

/// A line for an `allowed_signers` file (without line end): this key alone may seal records as `tablet`, from
/// `valid_after` on.
#[must_use]
pub fn allowed_signers_line(key: &PublicKey, tablet: &str, valid_after: Timestamp) -> String {
    let after = valid_after.strftime("%Y%m%d%H%M%SZ");
    let key = key.to_openssh(tablet);
    format!("{tablet} namespaces=\"{NAMESPACE}\",valid-after=\"{after}\" {key}")
}
