//! PINs and their hashes: Argon2id (RFC 9106) in the PHC string form.

use argon2::{Algorithm, Argon2, Params, Version};

/// Fewest digits of a PIN.
pub const PIN_MIN: usize = 4;
/// Most digits of a PIN.
pub const PIN_MAX: usize = 12;

/// Bytes of a salt that is made here.
const SALT: usize = 16;
/// Bytes of a hash that is made here.
const HASH: usize = 32;
/// Most memory that a hash of the file may ask for, in KiB: half a GiB.
const MEMORY_MAX: u32 = 512 * 1024;
/// Most passes that a hash of the file may ask for.
const PASSES_MAX: u32 = 16;

/// What a hash costs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Cost {
    /// Memory in KiB.
    pub memory: u32,
    /// Passes over it.
    pub passes: u32,
}

impl Cost {
    /// What new hashes cost: 64 MiB and 3 passes.
    pub const USUAL: Self = Self { memory: 64 * 1024, passes: 3 };
    /// The least that the OWASP cheat sheet on password storage allows for Argon2id: 19 MiB and 2 passes. A
    /// hash below it is not accepted.
    pub const FLOOR: Self = Self { memory: 19 * 1024, passes: 2 };
}

/// A PIN as it was typed. It is never written, and shows nothing of itself when it is printed.
#[derive(Clone, PartialEq, Eq, Default)]
pub struct Pin(String);

impl std::fmt::Debug for Pin {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("Pin(..)")
    }
}

impl Pin {
    /// A PIN of these digits; `None` when there is something else among them, or too many.
    #[must_use]
    pub fn of(digits: &str) -> Option<Self> {
        let fits = digits.len() <= PIN_MAX && digits.bytes().all(|b| b.is_ascii_digit());
        fits.then(|| Self(digits.to_owned()))
    }

    /// How many digits.
    #[must_use]
    pub fn len(&self) -> usize {
        self.0.len()
    }

    /// Whether nothing was typed yet.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// Whether there are enough digits.
    #[must_use]
    pub fn is_whole(&self) -> bool {
        self.0.len() >= PIN_MIN
    }

    /// One more digit; anything else, and a digit too many, changes nothing.
    pub fn push(&mut self, digit: char) {
        if digit.is_ascii_digit() && self.0.len() < PIN_MAX {
            self.0.push(digit);
        }
    }

    /// Takes the last digit back.
    pub fn pop(&mut self) {
        self.0.pop();
    }
}

/// A hash that can be checked; always Argon2id, version 19, one lane, at least as costly as [`Cost::FLOOR`].
#[derive(Clone, PartialEq, Eq)]
pub struct PinHash {
    cost: Cost,
    salt: Vec<u8>,
    hash: Vec<u8>,
}

impl std::fmt::Debug for PinHash {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "PinHash({:?})", self.cost)
    }
}

/// The hash cannot be computed: there is not the memory for it.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("the PIN cannot be checked: {0}; close other programs and try again")]
pub struct HashFault(String);

fn compute(cost: Cost, pin: &Pin, salt: &[u8], length: usize) -> Result<Vec<u8>, HashFault> {
    let fault = |e: argon2::Error| HashFault(e.to_string());
    let params = Params::new(cost.memory, cost.passes, 1, Some(length)).map_err(fault)?;
    let argon2 = Argon2::new(Algorithm::Argon2id, Version::V0x13, params);
    let mut out = vec![0; length];
    argon2.hash_password_into(pin.0.as_bytes(), salt, &mut out).map_err(fault)?;
    Ok(out)
}

impl PinHash {
    /// Hashes a PIN; `seed` is randomness of which the salt is taken. Takes a good part of a second.
    ///
    /// # Errors
    /// There is not the memory for it.
    pub fn make(pin: &Pin, cost: Cost, seed: &[u8; 32]) -> Result<Self, HashFault> {
        let salt: Vec<u8> = seed.iter().copied().take(SALT).collect();
        let hash = compute(cost, pin, &salt, HASH)?;
        Ok(Self { cost, salt, hash })
    }

    /// Whether this is the PIN. Takes as long for a wrong one.
    ///
    /// # Errors
    /// There is not the memory for it.
    pub fn is(&self, pin: &Pin) -> Result<bool, HashFault> {
        let other = compute(self.cost, pin, &self.salt, self.hash.len())?;
        Ok(self.hash.iter().zip(&other).fold(0, |all, (a, b)| all | (a ^ b)) == 0)
    }

    /// What it costs.
    #[must_use]
    pub const fn cost(&self) -> Cost {
        self.cost
    }

    /// The PHC string: `$argon2id$v=19$m=65536,t=3,p=1$salt$hash`.
    #[must_use]
    pub fn phc(&self) -> String {
        let Self { cost, salt, hash } = self;
        let (salt, hash) = (base64(salt), base64(hash));
        format!("$argon2id$v=19$m={},t={},p=1${salt}${hash}", cost.memory, cost.passes)
    }

    /// Reads a PHC string; `Err` says what it should be.
    ///
    /// # Errors
    /// Another kind of hash, a weaker one, or one that would take too much.
    pub fn from_phc(text: &str) -> Result<Self, &'static str> {
        let form = "a PHC string, as $argon2id$v=19$m=65536,t=3,p=1$salt$hash";
        let parts: Vec<&str> = text.split('$').collect();
        let ["", "argon2id", "v=19", params, salt, hash] = parts[..] else { return Err(form) };
        let mut params = params.split(',');
        let mut number = |name: &str| {
            let digits = params.next()?.strip_prefix(name)?.strip_prefix('=')?;
            let plain = digits.bytes().all(|b| b.is_ascii_digit()) && !digits.starts_with('0');
            digits.parse::<u32>().ok().filter(|_| plain)
        };
        let (Some(memory), Some(passes), Some(1)) = (number("m"), number("t"), number("p")) else {
            return Err(form);
        };
        if params.next().is_some() {
            return Err(form);
        }
        if memory < Cost::FLOOR.memory || passes < Cost::FLOOR.passes {
            return Err("a hash of at least m=19456,t=2; a weaker one is guessed too fast");
        }
        if memory > MEMORY_MAX || passes > PASSES_MAX {
            return Err("a hash of at most m=524288,t=16; another would take too long to check");
        }
        let (Some(salt), Some(hash)) = (from_base64(salt), from_base64(hash)) else { return Err(form) };
        if !(8..=64).contains(&salt.len()) || !(16..=64).contains(&hash.len()) {
            return Err(form);
        }
        Ok(Self { cost: Cost { memory, passes }, salt, hash })
    }
}

const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";

/// Base64 without padding, as PHC strings have it.
fn base64(bytes: &[u8]) -> String {
    let mut out = String::new();
    for part in bytes.chunks(3) {
        let byte = |at: usize| part.get(at).copied().map_or(0, u32::from);
        let word = byte(0) << 16 | byte(1) << 8 | byte(2);
        for at in 0..=part.len() {
            let six = (word >> (18 - 6 * at)) & 63;
            let letter = usize::try_from(six).ok().and_then(|six| LETTERS.get(six));
            out.extend(letter.map(|l| char::from(*l)));
        }
    }
    out
}

/// Reads what [`base64`] writes, and nothing that it would write otherwise.
fn from_base64(text: &str) -> Option<Vec<u8>> {
    let mut out = Vec::new();
    for part in text.as_bytes().chunks(4) {
        let mut word = 0_u32;
        for letter in part {
            let six = LETTERS.iter().position(|l| l == letter)?;
            word = word << 6 | u32::try_from(six).ok()?;
        }
        let word = word << (6 * (4 - part.len()));
        out.extend(word.to_be_bytes().iter().skip(1).take(part.len().checked_sub(1)?));
    }
    (base64(&out) == text).then_some(out)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The test vectors of RFC 4648, section 10, without their padding.
    #[test]
    fn base64_is_that_of_the_rfc() {
        for (plain, coded) in [
            ("", ""),
            ("f", "Zg"),
            ("fo", "Zm8"),
            ("foo", "Zm9v"),
            ("foob", "Zm9vYg"),
            ("fooba", "Zm9vYmE"),
            ("foobar", "Zm9vYmFy"),
        ] {
            assert_eq!(base64(plain.as_bytes()), coded);
            assert_eq!(from_base64(coded).as_deref(), Some(plain.as_bytes()));
        }
        for wrong in ["Z", "Zh", "Zg==", "Zm9vY", "Zm 9", "Zm9-"] {
            assert_eq!(from_base64(wrong), None, "{wrong}");
        }
    }
}
