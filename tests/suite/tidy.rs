//! The house: which module may use which, what stands at the top level, how long files are.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

/// Modules from the outermost to the innermost, and the leaves that anyone may use.
const LAYERS: [&str; 13] = [
    "commands", "kiosk", "archive", "tablet", "record", "journal", "walk", "check", "route", "script",
    "figures", "words", "unit",
];
const LEAVES: [&str; 3] = ["measure", "ports", "source"];

/// What may stand at the top level.
const TOP: [&str; 21] = [
    ".ci",
    ".clippy.toml",
    ".git",
    ".gitignore",
    ".rustfmt.toml",
    "CHANGELOG.md",
    "Cargo.lock",
    "Cargo.toml",
    "DEVELOPERS.md",
    "LICENSE-APACHE",
    "LICENSE-MIT",
    "README.md",
    "assets",
    "benches",
    "build.rs",
    "fuzz",
    "i18n",
    "src",
    "target",
    "tests",
    "walkthroughs",
];

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

fn rust_files(dir: &Path, found: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(dir).expect("a folder of the package").flatten() {
        let path = entry.path();
        if path.is_dir() {
            rust_files(&path, found);
        } else if path.extension().is_some_and(|e| e == "rs") {
            found.push(path);
        }
    }
}

/// Source files of the library with the module each belongs to.
fn sources() -> Vec<(String, PathBuf, String)> {
    let src = root().join("src");
    let mut files = Vec::new();
    rust_files(&src, &mut files);
    files
        .into_iter()
        .map(|path| {
            let inner = path.strip_prefix(&src).expect("below src").to_string_lossy().replace('\\', "/");
            let module = inner.split('/').next().unwrap_or_default().trim_end_matches(".rs").to_owned();
            let text = fs::read_to_string(&path).expect("a source file");
            (module, path, text)
        })
        .collect()
}

/// Position of a module from the outermost; leaves come last.
fn depth(module: &str) -> Option<usize> {
    LAYERS.iter().position(|m| *m == module).or_else(|| LEAVES.contains(&module).then_some(LAYERS.len()))
}

/// The modules of the crate that a text names: `crate::x`, and `crate::{x, y}`.
fn named(text: &str) -> Vec<String> {
    let mut all = Vec::new();
    for part in text.split("crate::").skip(1) {
        let inside = part.strip_prefix('{').map_or_else(
            || vec![part],
            |list| list.split('}').next().unwrap_or_default().split(',').collect(),
        );
        for name in inside {
            let name: String =
                name.trim().chars().take_while(|c| c.is_ascii_alphanumeric() || *c == '_').collect();
            all.push(name);
        }
    }
    all
}

/// Whether a source file holds tests alone.
fn is_test(path: &Path) -> bool {
    let src = root().join("src");
    let inner = path.strip_prefix(src).unwrap_or(path);
    inner.components().any(|part| part.as_os_str().to_string_lossy().trim_end_matches(".rs") == "tests")
}

#[test]
fn modules_use_only_what_lies_below_them() {
    let mut wrong = Vec::new();
    for (module, path, text) in sources() {
        // Tests beside the code may take anything that helps them.
        if matches!(module.as_str(), "main" | "lib") || is_test(&path) {
            continue;
        }
        let own = depth(&module).unwrap_or_else(|| panic!("{} is in no layer", path.display()));
        for used in named(&text) {
            let Some(other) = depth(&used) else { continue };
            let allowed = used == module
                || other > own
                || LEAVES.contains(&used.as_str())
                || (module == "commands" && used == "kiosk" && text.contains("kiosk::headless"));
            // Leaves use nothing but leaves.
            let leaf_breaks = LEAVES.contains(&module.as_str()) && LAYERS.contains(&used.as_str());
            if !allowed || leaf_breaks || (module == "kiosk" && used == "commands") {
                wrong.push(format!("{} uses {used}", path.display()));
            }
        }
    }
    assert!(wrong.is_empty(), "imports against the table:\n{}", wrong.join("\n"));
}

#[test]
fn only_the_kiosk_names_the_toolkit() {
    for (module, path, text) in sources() {
        assert!(
            module == "kiosk" || !["iced::", "use iced"].iter().any(|name| text.contains(name)),
            "{} names the toolkit",
            path.display()
        );
    }
}

/// The database opens its own files, the ones that do not go through the ports: the index is a cache, made beside the
/// old one and given its name by the ports; what an audit sets down is gone when it ends.
#[test]
fn only_the_index_and_the_audit_name_the_database() {
    for (_, path, text) in sources() {
        let inside = path.components().any(|part| part.as_os_str() == "archive")
            && ["index", "scratch"].iter().any(|name| path.to_string_lossy().contains(name));
        assert!(inside || !text.contains("rusqlite"), "{} names the database", path.display());
    }
}

#[test]
fn only_ports_touch_files_clock_and_processes() {
    for (module, path, text) in sources() {
        if is_test(&path) {
            continue;
        }
        let text = text.split("#[cfg(test)]").next().unwrap_or_default();
        let door = ["std::fs", "SystemTime::now", "std::process::Command"];
        let used = door.iter().find(|d| text.contains(**d));
        assert!(module == "ports" || used.is_none(), "{} uses {used:?}", path.display());
    }
}

#[test]
fn files_fit_the_head() {
    let mut files = Vec::new();
    rust_files(&root().join("src"), &mut files);
    rust_files(&root().join("tests"), &mut files);
    let long: BTreeMap<PathBuf, usize> = files
        .into_iter()
        .map(|path| {
            let lines = fs::read_to_string(&path).expect("a source file").lines().count();
            (path, lines)
        })
        .filter(|(_, lines)| *lines > 500)
        .collect();
    assert!(long.is_empty(), "files past 500 lines: {long:#?}");
}

#[test]
fn the_top_level_holds_only_what_belongs_there() {
    let strange: Vec<String> = fs::read_dir(root())
        .expect("the package folder")
        .flatten()
        .map(|e| e.file_name().to_string_lossy().into_owned())
        .filter(|name| !TOP.contains(&name.as_str()))
        .collect();
    assert!(strange.is_empty(), "not at the top level: {strange:?}");
}

#[test]
fn the_demo_lot_is_embedded_whole() {
    let mut on_disk = Vec::new();
    for folder in ["walkthroughs", "i18n", "assets/pictures"] {
        gather(&root(), folder, &mut on_disk);
    }
    on_disk.sort();
    let embedded: Vec<&str> = sendoff::script::EMBEDDED.iter().map(|(name, _)| *name).collect();
    assert_eq!(embedded, on_disk, "table and folders differ");
    for (name, bytes) in sendoff::script::EMBEDDED {
        assert_eq!(*bytes, fs::read(root().join(name)).expect("an embedded file"), "{name} differs");
    }
}

fn gather(root: &Path, folder: &str, names: &mut Vec<String>) {
    for entry in fs::read_dir(root.join(folder)).expect("a folder of the lot").flatten() {
        let name = entry.file_name().to_string_lossy().into_owned();
        let inner = format!("{folder}/{name}");
        if name.starts_with('.') {
            continue;
        }
        if entry.path().is_dir() {
            gather(root, &inner, names);
        } else {
            names.push(inner);
        }
    }
}

#[test]
fn every_test_file_is_in_the_suite() {
    let dir = root().join("tests/suite");
    let main = fs::read_to_string(dir.join("main.rs")).expect("the suite");
    for entry in fs::read_dir(dir).expect("the suite's folder").flatten() {
        let name = entry.file_name().to_string_lossy().into_owned();
        if let Some(stem) = name.strip_suffix(".rs").filter(|s| *s != "main") {
            assert!(main.contains(&format!("mod {stem};")), "tests/suite/{name} is forgotten");
        }
    }
}
