//! The signature beside a tag manifest: an SSHSIG (OpenSSH's `PROTOCOL.sshsig`), in one form only.

use ssh_key::{HashAlg, LineEnding, SshSig};

use super::PublicKey;

/// The namespace of a record's seal: a signature made for anything else is none here.
pub const NAMESPACE: &str = "record@sendoff";
/// The namespace of what the office signs: receipts and high-water marks.
pub const CHECKPOINT: &str = "checkpoint@sendoff";

/// An Ed25519 signature takes about 300 bytes.
const MAX_BYTES: usize = 4096;

/// Why bytes are no seal.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum SealFileFault {
    /// No SSH signature.
    #[error("it is not an SSH signature: {0}")]
    Form(String),
    /// A signature, but not in the bytes that `ssh-keygen -Y sign` writes.
    #[error("it is an SSH signature, but not in the form in which OpenSSH writes it")]
    NotCanonical,
    /// Made by another kind of key.
    #[error("it was not made by an Ed25519 key")]
    Kind,
}

/// A parsed SSH signature, not yet checked against a message.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SealFile {
    signature: SshSig,
    public: PublicKey,
}

impl SealFile {
    /// Reads the text that `ssh-keygen -Y sign` writes. Nothing else covers these bytes, so they are taken in
    /// exactly one form: what is parsed must give the same bytes when written again.
    ///
    /// # Errors
    /// See [`SealFileFault`].
    pub fn parse(bytes: &[u8]) -> Result<Self, SealFileFault> {
        if bytes.len() > MAX_BYTES {
            return Err(SealFileFault::Form(format!("{} bytes are too many", bytes.len())));
        }
        let signature = SshSig::from_pem(bytes).map_err(|e| SealFileFault::Form(e.to_string()))?;
        let again = signature.to_pem(LineEnding::LF).map_err(|e| SealFileFault::Form(e.to_string()))?;
        if again.as_bytes() != bytes || signature.version() != SshSig::VERSION {
            return Err(SealFileFault::NotCanonical);
        }
        let public = PublicKey::from_key_data(signature.public_key()).ok_or(SealFileFault::Kind)?;
        Ok(Self { signature, public })
    }

    /// The key that it says it was made with.
    #[must_use]
    pub const fn public(&self) -> &PublicKey {
        &self.public
    }

    /// Whether the message was hashed with SHA-256, as a record's is.
    #[must_use]
    pub fn is_sha256(&self) -> bool {
        self.signature.hash_alg() == HashAlg::Sha256
    }

    /// Whether [its key](Self::public) signed this message for this namespace.
    #[must_use]
    pub fn holds(&self, namespace: &str, message: &[u8]) -> bool {
        self.signature.reserved().is_empty()
            && self.public.stock("").verify(namespace, message, &self.signature).is_ok()
    }
}
