//! Embeds the demo lot: one sorted table of names and contents.
#![allow(
    clippy::expect_used,
    clippy::disallowed_methods,
    reason = "a build that cannot read or write must stop, and runs before the library is there"
)]

use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use std::{env, fs};

fn main() {
    let root = PathBuf::from(env::var("CARGO_MANIFEST_DIR").expect("cargo sets the package folder"));
    let out = PathBuf::from(env::var("OUT_DIR").expect("cargo sets the output folder")).join("embedded.rs");
    let mut names = Vec::new();
    for folder in ["walkthroughs", "i18n", "assets/pictures"] {
        gather(&root, folder, &mut names);
    }
    names.sort();
    let mut table = String::from(
        "/// The demo lot: names and contents of its files, sorted by name.\npub const EMBEDDED: &[(&str, &[u8])] = &[\n",
    );
    for name in names {
        let path = root.join(&name);
        println!("cargo:rerun-if-changed={}", path.display());
        writeln!(table, "    ({name:?}, include_bytes!({:?})),", path.display().to_string())
            .expect("a string grows");
    }
    table.push_str("];\n");
    fs::write(out, table).expect("the output folder can be written");
}

fn gather(root: &Path, folder: &str, names: &mut Vec<String>) {
    println!("cargo:rerun-if-changed={}", root.join(folder).display());
    let Ok(entries) = fs::read_dir(root.join(folder)) else { return };
    for entry in entries.flatten() {
        let name = entry.file_name().to_string_lossy().into_owned();
        if name.starts_with('.') {
            continue;
        }
        let inner = format!("{folder}/{name}");
        if entry.path().is_dir() {
            gather(root, &inner, names);
        } else {
            names.push(inner);
        }
    }
}
