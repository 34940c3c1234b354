//! Bags that are not valid, each for one reason.

use super::{BOTH, Bag, Case, HELLO, HELLO_512, NOTHING, agreed, differing, tag_manifest};

/// All of them.
pub fn all() -> Vec<Case> {
    let mut cases = agreed(&BOTH, contents);
    cases.extend(agreed(&BOTH, paths));
    cases.extend(agreed(&BOTH, tag_files));
    cases.extend(agreed(&["0.93", "0.95"], |bag| {
        vec![
            ("corrupt data file", bag.clone().with("data/hello.txt", "hellO\n")),
            ("extra file", bag.clone().with("data/more.txt", "x")),
            ("wrong size", bag.with("package-info.txt", "Payload-Oxum: 7.1\n")),
        ]
    }));
    cases.extend(agreed(&["1.0"], lists));
    cases.extend(differing("valid", declarations()));
    cases.extend(differing("valid", since_1_0()));
    cases.extend(differing("valid", stricter()));
    cases
}

fn contents(bag: Bag) -> Vec<(&'static str, Bag)> {
    let wrong = HELLO_512.replace('e', "f");
    let one = |name: &str| bag.clone().with(name, "x");
    vec![
        ("no bagit.txt", bag.clone().without("bagit.txt")),
        ("no manifest", bag.clone().without("manifest-sha256.txt")),
        ("corrupt data file", bag.clone().with("data/hello.txt", "hellO\n")),
        ("data file cut off", bag.clone().with("data/hello.txt", "hello")),
        ("data file empty", bag.clone().with("data/hello.txt", "")),
        ("extra file", one("data/more.txt")),
        ("extra hidden file", one("data/.DS_Store")),
        ("extra file in a folder", one("data/a/b")),
        ("extra empty file", bag.clone().with("data/more.txt", "")),
        ("missing file", bag.clone().without("data/hello.txt")),
        ("file of other capitals", bag.clone().without("data/hello.txt").with("data/Hello.txt", "hello\n")),
        ("corrupt tag file", bag.clone().info("x: y\n").tagged("").info("x: z\n")),
        (
            "corrupt manifest under a tag manifest",
            bag.clone().tagged("").manifest(&format!("{HELLO} data/hello.txt\n")),
        ),
        ("corrupt declaration under a tag manifest", {
            let bag = bag.clone().tagged("");
            let text = String::from_utf8(bag.0["bagit.txt"].clone()).unwrap().replace("UTF-8", "utf-8");
            bag.with("bagit.txt", &text)
        }),
        ("missing tag file", bag.clone().tagged(&format!("{HELLO}  notes.txt\n"))),
        ("listed twice, other digest", bag.clone().and(NOTHING, "data/hello.txt")),
        ("second manifest is wrong", bag.clone().second(&wrong, "data/hello.txt")),
        ("a folder is listed", bag.clone().listing("data/a/b", "data/a/b").and(HELLO, "data/a")),
        ("manifest is no text", bag.bytes("manifest-sha256.txt", b"\xff\xfe\xfd")),
    ]
}

fn paths(bag: Bag) -> Vec<(&'static str, Bag)> {
    let listed = |path: &str| bag.clone().and(HELLO, path);
    vec![
        ("dot notation", listed("../../../README.md")),
        ("dot notation behind data", listed("data/../../x")),
        ("dot notation behind a dot", listed("./../x")),
        ("dot notation at the end", listed("data/..")),
        ("absolute path", listed("/etc/passwd")),
        ("absolute path, two slashes", listed("//etc/passwd")),
        ("home folder", listed("~/.bashrc")),
        ("drive letter", listed("D:\\x")),
        ("device path", listed("\\\\?\\c:\\x")),
        ("backslashes as slashes", bag.clone().manifest(&format!("{HELLO}  data\\hello.txt\n"))),
        ("dot notation in backslashes", listed("data\\..\\..\\x")),
        ("null in a path", listed("data/a\0b")),
        ("tag manifest leads out", bag.clone().tagged(&format!("{HELLO}  ../x\n"))),
        ("tag manifest lists an absolute path", bag.clone().tagged(&format!("{HELLO}  /etc/passwd\n"))),
        ("fetch leads out", bag.clone().fetch("https://example.org/x 6 ../x\n")),
        ("not fetched yet", listed("data/x").fetch("https://example.org/x 6 data/x\n")),
    ]
}

fn tag_files(bag: Bag) -> Vec<(&'static str, Bag)> {
    let marked = [&b"\xef\xbb\xbf"[..], &bag.0["bagit.txt"]].concat();
    let text = String::from_utf8(bag.0["bagit.txt"].clone()).unwrap();
    let wide: Vec<u8> = text.encode_utf16().flat_map(u16::to_be_bytes).collect();
    let wide = [&[0xfe, 0xff][..], &wide].concat();
    let utf16 = text.replace("UTF-8", "UTF-16");
    vec![
        ("BOM in bagit.txt", bag.clone().bytes("bagit.txt", &marked)),
        ("bagit.txt in UTF-16", bag.clone().bytes("bagit.txt", &wide)),
        ("manifest in UTF-8 where UTF-16 is told", bag.clone().with("bagit.txt", &utf16)),
        ("wrong size", bag.clone().info("Payload-Oxum: 7.1\n")),
        ("wrong count", bag.clone().info("Payload-Oxum: 6.2\n")),
        ("size is no number", bag.clone().info("Payload-Oxum: six.1\n")),
        ("size without a count", bag.clone().info("Payload-Oxum: 6\n")),
        ("metadata without colon", bag.info("Source-Organization\n")),
    ]
}

fn lists(bag: Bag) -> Vec<(&'static str, Bag)> {
    let line = |text: String| bag.clone().manifest(&text);
    let short: String = HELLO.chars().take(62).collect();
    let declared = Bag::declared;
    vec![
        ("no version", declared("BagIt-Version: one\nTag-File-Character-Encoding: UTF-8\n")),
        ("no version number", declared("BagIt-Version: \nTag-File-Character-Encoding: UTF-8\n")),
        ("no encoding", declared("BagIt-Version: 1.0\n")),
        ("encoding alone", declared("Tag-File-Character-Encoding: UTF-8\n")),
        ("other labels", declared("BagIt-version: 1.0\nTag-File-Character-encoding: UTF-8\n")),
        ("empty bagit.txt", declared("")),
        ("a digest alone", line(format!("{HELLO}\n"))),
        ("a path alone", line("data/hello.txt\n".to_owned())),
        ("path before digest", line(format!("data/hello.txt  {HELLO}\n"))),
        ("a digest that is too short", line(format!("{short}  data/hello.txt\n"))),
        ("a digest that is too long", line(format!("{HELLO}00  data/hello.txt\n"))),
        ("a digest that is none", line(format!("{}  data/hello.txt\n", HELLO.replace('5', "g")))),
        ("a digest of another algorithm", bag.clone().hashed("sha512", HELLO)),
        ("empty manifest", line(String::new())),
        ("listed twice, same digest", bag.clone().and(HELLO, "data/hello.txt")),
        ("listed twice, capitals apart", bag.clone().and(&HELLO.to_uppercase(), "data/hello.txt")),
        ("listed twice, by a dot", bag.clone().and(HELLO, "./data/hello.txt")),
        ("manifest of an odd name", bag.clone().hashed("sha-256", HELLO)),
        ("manifest in capitals", bag.clone().hashed("SHA256", HELLO)),
        ("manifest without an algorithm", bag.clone().hashed("", HELLO)),
        ("fetch without an address", bag.clone().fetch("x 6 data/hello.txt\n")),
        ("tag manifest lists payload", bag.clone().tagged(&format!("{HELLO}  data/hello.txt\n"))),
        (
            "tag manifest is wrong of its kind",
            bag.clone().tagged("").with("tagmanifest-md5.txt", "00 manifest-sha256.txt\n"),
        ),
    ]
}

/// Found by the conformance suite (v1.0 and v0.97 `bagit-with-invalid-whitespace`), accepted by `bagit` 1.9.0.
fn declarations() -> Vec<(&'static str, &'static str, Bag)> {
    let case = |name, text| (name, "2.1.1", Bag::declared(text));
    vec![
        case("blank before the colon", "BagIt-Version : 1.0\nTag-File-Character-Encoding: UTF-8\n"),
        case("two blanks", "BagIt-Version:  1.0\nTag-File-Character-Encoding: UTF-8\n"),
        case("no blank", "BagIt-Version:1.0\nTag-File-Character-Encoding: UTF-8\n"),
        case("blank at the end", "BagIt-Version: 1.0 \nTag-File-Character-Encoding: UTF-8\n"),
        case("a third line", "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\nMore: x\n"),
        case("lines changed over", "Tag-File-Character-Encoding: UTF-8\nBagIt-Version: 1.0\n"),
        case("an empty line", "BagIt-Version: 1.0\n\nTag-File-Character-Encoding: UTF-8\n"),
        case("an empty line at the end", "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n\n"),
    ]
}

/// What the RFC asks since 1.0 and `bagit` does not look at.
fn since_1_0() -> Vec<(&'static str, &'static str, Bag)> {
    let bag = || Bag::of("1.0");
    let lacking = tag_manifest(&bag().without("manifest-sha256.txt"));
    let marked = format!("\u{feff}{HELLO}  data/hello.txt\n");
    vec![
        (
            "manifests list other files",
            "2.1.3, 3",
            bag().with("data/two", "hello\n").second(HELLO_512, "data/two"),
        ),
        ("tag manifest without the manifest", "2.2.1", bag().with("tagmanifest-sha256.txt", &lacking)),
        ("empty tag manifest", "2.2.1", bag().with("tagmanifest-sha256.txt", "")),
        ("fetch lists what no manifest lists", "2.2.3", bag().fetch("https://example.org/x 6 data/x\n")),
        ("fetch lists a tag file", "2.2.3", bag().info("").fetch("https://example.org/x 6 bag-info.txt\n")),
        ("fetch with an odd length", "2.2.3", bag().fetch("https://example.org/x six data/hello.txt\n")),
        ("size told twice", "2.2.2", bag().info("Payload-Oxum: 6.1\nPayload-Oxum: 6.1\n")),
        ("blank before a colon of the metadata", "2.2.2", bag().info("Contact-Name : x\n")),
        ("no blank behind a colon of the metadata", "2.2.2", bag().info("Contact-Name:x\n")),
        ("metadata begin with a folded line", "2.2.2", bag().info("  folded: x\n")),
        ("UTF-8 manifest with a byte order mark", "2.3", bag().manifest(&marked)),
        ("UTF-8 metadata with a byte order mark", "2.3", bag().info("\u{feff}Contact-Name: x\n")),
    ]
}

/// What `bagit` passes over.
fn stricter() -> Vec<(&'static str, &'static str, Bag)> {
    let bag = || Bag::of("1.0");
    let line = format!("{HELLO}  data/hello.txt\n");
    vec![
        ("a tag file in the payload manifest", "2.1.3", bag().listing("hello.txt", "hello.txt")),
        ("wrong size in small letters", "2.2.2", bag().info("payload-oxum: 7.1\n")),
        (
            "fetch with a blank in the address",
            "2.2.3",
            bag().fetch("https://example.org/a b 6 data/hello.txt\n"),
        ),
        ("a line that is none", "2.1.3", bag().manifest(&format!("{line}data/hello.txt\n"))),
        ("a note in the manifest", "2.1.3", bag().manifest(&format!("# by hand\n{line}"))),
        ("a blank before the digest", "2.1.3", bag().manifest(&format!(" {line}"))),
        ("a blank behind the path", "2.1.3", bag().manifest(&format!("{HELLO}  data/hello.txt \n"))),
        ("another manifest of an odd name", "2.4", bag().with("manifest-sha-512.txt", &line)),
        (
            "SHA-3 by a name that is not normalized",
            "2.4",
            bag().hashed("sha3_256", "b314e28493eae9dab57ac4f0c6d887bddbbeb810e900d818395ace558e96516d"),
        ),
    ]
}
