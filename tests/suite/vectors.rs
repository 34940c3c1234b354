//! Published check values through our own code: RFC 8032, FIPS 180-4, OpenSSH's signature format.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::string_slice,
    reason = "helpers of tests may fail loudly"
)]

use sendoff::record::keys::{PublicKey, SealFile, SealFileFault, TabletKey};
use sendoff::record::seal::Digest;

fn bytes<const N: usize>(hex: &str) -> [u8; N] {
    assert_eq!(hex.len(), 2 * N);
    std::array::from_fn(|at| u8::from_str_radix(&hex[2 * at..2 * at + 2], 16).unwrap())
}

/// RFC 8032 §7.1, TEST 1, 2, 3 and SHA(abc): secret and public key.
const ED25519: [(&str, &str); 4] = [
    (
        "9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60",
        "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a",
    ),
    (
        "4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb",
        "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c",
    ),
    (
        "c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7",
        "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025",
    ),
    (
        "833fe62409237b9d62ec77587520911e9a759cec1d19755b7da901b96dca3d42",
        "ec172b93ad5e563bf4932c70e1245034c35467ef2efd4d64ebf819683467e2bf",
    ),
];

#[test]
fn a_seed_gives_the_public_key_of_rfc_8032() {
    for (secret, public) in ED25519 {
        let key = TabletKey::generate(bytes(secret), "t2").unwrap();
        assert_eq!(key.public(), &PublicKey::from_bytes(bytes(public)));
    }
}

/// FIPS 180-4 example values (NIST, 'SHA256.pdf' and the long message of the earlier standard).
#[test]
fn digests_are_those_of_fips_180_4() {
    let million = "a".repeat(1_000_000);
    let cases = [
        ("", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"),
        ("abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"),
        (
            "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
            "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
        ),
        (
            "abcdefghbcdefghicdefghijdefghijkefghijklfghijklmghijklmnhijklmnoijklmnopjklmnopqklmnopqrlmnopqrsmnopqrstnopqrstu",
            "cf5b16a778af8380036ce59e7b0492370b249b11e8f07a51afac45037afee9d1",
        ),
        (&million, "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0"),
    ];
    for (text, digest) in cases {
        assert_eq!(Digest::of(text.as_bytes()).to_string(), digest);
    }
}

/// Made by OpenSSH 9.2p1 from the key of RFC 8032 TEST 1: namespace `file`, SHA-512, message `abc`.
const SIGNATURE: &str = "-----BEGIN SSH SIGNATURE-----
U1NIU0lHAAAAAQAAADMAAAALc3NoLWVkMjU1MTkAAAAg11qYAYKxCrfVS/7TyWQHOg7hcv
PapiMlrwIaaPcHURoAAAAEZmlsZQAAAAAAAAAGc2hhNTEyAAAAUwAAAAtzc2gtZWQyNTUx
OQAAAECsWdRdQJcrMHAI2daKb3TILa3oQmE89O07YF0AkOFGgZimmtAuB1EljLQ4KZJnvU
EU/KuOukFjQMVLq7kuaZcJ
-----END SSH SIGNATURE-----
";

#[test]
fn a_signature_by_openssh_holds_for_its_message_and_namespace_only() {
    let line = "ssh-ed25519 AAAAC3NzaC1lZDI1NTE5AAAAINdamAGCsQq31Uv+08lkBzoO4XLz2qYjJa8CGmj3B1Ea";
    let public = PublicKey::from_openssh(line).unwrap();
    assert_eq!(public, PublicKey::from_bytes(bytes(ED25519[0].1)));
    assert_eq!(public.to_openssh(""), line);
    let seal = SealFile::parse(SIGNATURE.as_bytes()).unwrap();
    assert_eq!(seal.public(), &public);
    assert!(!seal.is_sha256());
    assert!(seal.holds("file", b"abc"));
    assert!(!seal.holds("file", b"abd"));
    assert!(!seal.holds("file", b"abc\n"));
    assert!(!seal.holds("other", b"abc"));
    assert!(!seal.holds("", b"abc"));
}

/// The example printed in OpenSSH's PROTOCOL.sshsig has no hash algorithm: it is older than the field.
#[test]
fn a_signature_has_one_spelling() {
    for text in [
        SIGNATURE.replace('\n', "\r\n"),
        format!("{SIGNATURE}\n"),
        format!(" {SIGNATURE}"),
        SIGNATURE.trim_end().to_owned(),
        SIGNATURE.replacen("hcv\nPapi", "hcvP\napi", 1),
    ] {
        let fault = SealFile::parse(text.as_bytes()).unwrap_err();
        assert!(matches!(fault, SealFileFault::NotCanonical | SealFileFault::Form(_)), "{text}");
    }
    assert!(SealFile::parse(b"").is_err());
    assert!(SealFile::parse(&[b'-'; 1 << 20]).is_err());
}
