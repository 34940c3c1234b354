//! Bags that are valid.

use sha2::{Digest as _, Sha512};

use super::{
    BOTH, Bag, Case, HELLO, HELLO_1, HELLO_224, HELLO_384, HELLO_512, HELLO_MD5, NOTHING, agreed, differing,
};

/// All of them.
pub fn all() -> Vec<Case> {
    let mut cases = agreed(&BOTH, algorithms);
    cases.extend(agreed(&BOTH, lines));
    cases.extend(agreed(&BOTH, names));
    cases.extend(agreed(&BOTH, encodings));
    cases.extend(agreed(&BOTH, tag_files));
    cases.extend(agreed(&["0.93", "0.94", "0.95", "0.96"], old));
    cases.extend(agreed(&["0.96", "0.97"], drafts));
    cases.extend(agreed(&["0.97"], |bag| {
        let text = format!("\u{feff}{HELLO}  data/hello.txt\n");
        vec![("UTF-8 manifest with a byte order mark", bag.manifest(&text))]
    }));
    cases.extend(agreed(&["1.0"], old_mac));
    cases.extend(table());
    cases
}

fn algorithms(bag: Bag) -> Vec<(&'static str, Bag)> {
    let of = |name: &str, digest: &str| bag.clone().hashed(name, digest);
    let every =
        |name: &str, digest: &str| (format!("manifest-{name}.txt"), format!("{digest}  data/hello.txt\n"));
    let all = [("sha512", HELLO_512), ("sha1", HELLO_1), ("md5", HELLO_MD5), ("sha384", HELLO_384)];
    let several = all.iter().fold(bag.clone(), |bag, (name, digest)| {
        let (file, text) = every(name, digest);
        bag.with(&file, &text)
    });
    vec![
        ("basic", bag.clone()),
        ("md5", of("md5", HELLO_MD5)),
        ("sha1", of("sha1", HELLO_1)),
        ("sha224", of("sha224", HELLO_224)),
        ("sha384", of("sha384", HELLO_384)),
        ("sha512", of("sha512", HELLO_512)),
        ("two manifests", bag.second(HELLO_512, "data/hello.txt")),
        ("five manifests", several),
    ]
}

fn lines(bag: Bag) -> Vec<(&'static str, Bag)> {
    let line = |text: String| bag.clone().manifest(&text);
    vec![
        ("digest in capitals", line(format!("{}  data/hello.txt\n", HELLO.to_uppercase()))),
        ("tab", line(format!("{HELLO}\tdata/hello.txt\n"))),
        ("one space", line(format!("{HELLO} data/hello.txt\n"))),
        ("spaces and tabs", line(format!("{HELLO} \t  \tdata/hello.txt\n"))),
        ("md5sum's star", line(format!("{HELLO} *data/hello.txt\n"))),
        ("dot slash", line(format!("{HELLO}  ./data/hello.txt\n"))),
        ("dot in the middle", line(format!("{HELLO}  data/./hello.txt\n"))),
        ("two slashes", line(format!("{HELLO}  data//hello.txt\n"))),
        ("CRLF", line(format!("{HELLO}  data/hello.txt\r\n"))),
        ("no last line end", line(format!("{HELLO}  data/hello.txt"))),
        ("empty line at the end", line(format!("{HELLO}  data/hello.txt\n\n"))),
        ("empty file", bag.clone().with("data/empty", "").and(NOTHING, "data/empty")),
        (
            "nothing but an empty file",
            bag.without("data/hello.txt").with("data/x", "").manifest(&format!("{NOTHING} data/x\n")),
        ),
    ]
}

fn names(bag: Bag) -> Vec<(&'static str, Bag)> {
    let one = |name: &str| bag.clone().listing(name, name);
    let deep = format!("data/{}end", "d/".repeat(40));
    vec![
        ("blank in a name", one("data/a b.txt")),
        ("blanks in a row", one("data/a   b.txt")),
        ("dots in a name", one("data/a..b/...")),
        ("hidden file", one("data/.keep")),
        ("hidden folder", one("data/.git/config")),
        ("star in a name", one("data/*")),
        ("number sign in a name", one("data/#1")),
        ("quotes in a name", one("data/'\"")),
        ("Unicode", one("data/größe 测.txt")),
        ("composed letters", one("data/\u{fa}")),
        ("letters apart", one("data/u\u{301}")),
        ("listed composed, kept apart", bag.clone().listing("data/u\u{301}", "data/\u{fa}")),
        ("deep folders", one(&deep)),
        ("long name", one(&format!("data/{}", "n".repeat(200)))),
        ("capitals apart", one("data/HELLO.TXT")),
        (
            "names of tag files in the payload",
            one("data/bagit.txt").listing("data/manifest-sha256.txt", "data/manifest-sha256.txt"),
        ),
        ("line feed in a name", bag.clone().listing("data/a\nb", "data/a%0Ab")),
        ("carriage return in a name", bag.listing("data/a\rb", "data/a%0Db")),
    ]
}

fn wide(text: &str, big: bool) -> Vec<u8> {
    text.encode_utf16().flat_map(|u| if big { u.to_be_bytes() } else { u.to_le_bytes() }).collect()
}

fn encodings(bag: Bag) -> Vec<(&'static str, Bag)> {
    let encoded = |name: &str| {
        let text = String::from_utf8(bag.0["bagit.txt"].clone()).unwrap();
        bag.clone().with("bagit.txt", &text.replace("UTF-8", name))
    };
    let line = format!("{HELLO}  data/hello.txt\n");
    let marked = [&[0xfe, 0xff][..], &wide(&line, true)].concat();
    let little = [&[0xff, 0xfe][..], &wide(&line, false)].concat();
    let latin = [HELLO.as_bytes(), b"  data/Caf\xe9\n"].concat();
    let latin_name = encoded("ISO-8859-1").without("data/hello.txt").with("data/Café", "hello\n");
    vec![
        ("UTF-16", encoded("UTF-16").bytes("manifest-sha256.txt", &marked)),
        ("UTF-16, little end first", encoded("UTF-16").bytes("manifest-sha256.txt", &little)),
        ("UTF-16LE", encoded("UTF-16LE").bytes("manifest-sha256.txt", &wide(&line, false))),
        ("UTF-16BE", encoded("UTF-16BE").bytes("manifest-sha256.txt", &wide(&line, true))),
        ("Latin-1 metadata", encoded("ISO-8859-1").bytes("bag-info.txt", b"Source-Organization: Caf\xe9\n")),
        ("Latin-1 manifest", latin_name.bytes("manifest-sha256.txt", &latin)),
        ("encoding in small letters", encoded("utf-8")),
        ("US-ASCII", encoded("US-ASCII")),
    ]
}

fn tag_files(bag: Bag) -> Vec<(&'static str, Bag)> {
    let folded = "Source-Organization: Juniper Flat\n  Motorhome\n\tHire\nPayload-Oxum: 6.1\nContact-Name: a: b\nContact-Name: c\n";
    let crlf = String::from_utf8(bag.0["bagit.txt"].clone()).unwrap().replace('\n', "\r\n");
    let open = String::from_utf8(bag.0["bagit.txt"].clone()).unwrap().trim_end().to_owned();
    let fetch =
        |length: &str| bag.clone().fetch(&format!("https://example.org/a%20b {length} data/hello.txt\n"));
    let other = format!("{HELLO_512}  manifest-sha256.txt\n");
    let listed_tag = bag.clone().with("notes/more.txt", "hello\n");
    let listed_tag = listed_tag.clone().tagged("");
    vec![
        ("tag manifest", bag.clone().tagged("")),
        ("tag file in a folder, listed", listed_tag),
        (
            "other tag files, not listed",
            bag.clone().tagged("").with("notes/more.txt", "x").with("seal.sshsig", "y"),
        ),
        ("hidden tag file", bag.clone().with(".notes", "x")),
        ("a folder beside the payload", bag.clone().with("other/data/x", "x")),
        ("a tag file that looks like a list", bag.clone().with("notes/manifest-sha256.txt", &other)),
        ("folded and repeated metadata", bag.clone().info(folded)),
        ("empty metadata", bag.clone().info("")),
        ("metadata, CRLF", bag.clone().info("Payload-Oxum: 6.1\r\nContact-Name: x\r\n")),
        ("metadata, tab behind the colon", bag.clone().info("Payload-Oxum:\t6.1\n")),
        ("metadata, size in small letters", bag.clone().info("payload-oxum: 6.1\n")),
        ("metadata, blank in a label", bag.clone().info("My Label: x\n")),
        ("metadata, colon in a value", bag.clone().info("Contact-Name: a:b:c\n")),
        ("fetched already", fetch("6")),
        ("fetched already, no length", fetch("-")),
        ("fetched already, tabs", bag.clone().fetch("https://example.org/x\t6\tdata/hello.txt\n")),
        ("fetched already, other length", fetch("7")),
        ("empty fetch.txt", bag.clone().fetch("")),
        ("CRLF declaration", bag.clone().with("bagit.txt", &crlf)),
        ("declaration without a last line end", bag.clone().with("bagit.txt", &open)),
    ]
}

fn old(bag: Bag) -> Vec<(&'static str, Bag)> {
    vec![
        ("basic", bag.clone()),
        ("MD5", bag.clone().hashed("md5", HELLO_MD5)),
        ("tag manifest", bag.clone().tagged("")),
        ("metadata under the name of then", bag.clone().with("package-info.txt", "Bag-Size : 6 B\n")),
        ("blanks around a colon", bag.with("bag-info.txt", "Contact-Name  :   x\n")),
    ]
}

fn drafts(bag: Bag) -> Vec<(&'static str, Bag)> {
    let again = format!("{HELLO}  data/hello.txt\n").repeat(2);
    let lacking = super::tag_manifest(&bag.clone().without("manifest-sha256.txt"));
    let fetch = |line: &str| bag.clone().fetch(&format!("{line}\n"));
    vec![
        ("fetch from the payload folder on", fetch("file:///home/juniper/hello.txt 6 hello.txt")),
        ("fetch lists what no manifest lists", fetch("https://example.org/x 6 data/x")),
        ("files in either manifest", bag.clone().with("data/two", "hello\n").second(HELLO_512, "data/two")),
        ("listed twice, same digest", bag.clone().manifest(&again)),
        ("tag manifest without the manifest", bag.clone().with("tagmanifest-sha256.txt", &lacking)),
        ("size told twice", bag.info("Payload-Oxum: 6.1\nPayload-Oxum: 6.1\n")),
    ]
}

/// Line ends of old systems, and one tag manifest that lists the other.
fn old_mac(bag: Bag) -> Vec<(&'static str, Bag)> {
    let cr = |name: &str, text: &str| bag.clone().with(name, &text.replace('\n', "\r"));
    let line = format!("{HELLO}  data/hello.txt\n");
    let digest = hex(&Sha512::digest(line.as_bytes()));
    let first = bag.clone().with("tagmanifest-sha512.txt", &format!("{digest}  manifest-sha256.txt\n"));
    vec![
        ("declaration, CR", cr("bagit.txt", "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n")),
        ("manifest, CR", cr("manifest-sha256.txt", &line)),
        ("metadata, CR", cr("bag-info.txt", "Payload-Oxum: 6.1\nContact-Name: x\n")),
        ("tag manifest lists another", first.tagged("")),
    ]
}

fn hex(bytes: &[u8]) -> String {
    bytes.iter().map(|byte| format!("{byte:02x}")).collect()
}

/// What the RFC allows and `bagit` refuses.
fn table() -> Vec<Case> {
    let bag = || Bag::of("1.0");
    let sha3 = "b314e28493eae9dab57ac4f0c6d887bddbbeb810e900d818395ace558e96516d";
    let blake = "3969b3926654065966b6f8d9a65789b0f76d56e1e2ab67dd94faa770959187ca";
    let sha512256 = "7f3f0c0d5219f51459578305ed2bbc198588758da85d08024c79c1195d1cd611";
    differing(
        "invalid",
        vec![
            ("percent sign in a name", "2.1.3", bag().listing("data/50%.txt", "data/50%25.txt")),
            ("percent sign before hex", "2.1.3", bag().listing("data/a%0Ab", "data/a%250Ab")),
            ("code in small letters", "2.1.3 with RFC 3986 2.1", bag().listing("data/a\rb", "data/a%0db")),
            ("listed apart, kept composed", "6.1.1.3", bag().listing("data/\u{fa}", "data/u\u{301}")),
            ("blank at the end of a name", "2.1.3", bag().listing("data/a ", "data/a ")),
            ("line separator in a name", "2.3", bag().listing("data/a\u{2028}b", "data/a\u{2028}b")),
            ("an address without a host", "2.2.3", bag().fetch("urn:example:hello 6 data/hello.txt\n")),
            ("md5sum's backslash", "6.1.3", bag().manifest(&format!("\\{HELLO}  data/hello.txt\n"))),
            ("SHA-3 by its normalized name", "2.4", bag().hashed("sha3256", sha3)),
            ("SHA-512/256 by its normalized name", "2.4", bag().hashed("sha512256", sha512256)),
            ("BLAKE2s by its registered name", "2.4", bag().hashed("blake2s256", blake)),
        ],
    )
}
