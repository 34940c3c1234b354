//! The commands and examples of a lot folder's README are true.

use super::{faults, new_lot, run, text};

/// The blocks of a language.
fn blocks(readme: &str, language: &str) -> Vec<String> {
    let fence = format!("```{language}\n");
    readme.split(&fence).skip(1).map(|rest| rest.split("```").next().unwrap_or_default().to_owned()).collect()
}

/// A line as a shell takes it apart: quotes hold words together.
fn words(line: &str) -> Vec<String> {
    let mut all = Vec::new();
    for (at, piece) in line.split('\'').enumerate() {
        if at % 2 == 1 {
            all.push(piece.to_owned());
        } else {
            all.extend(piece.split_whitespace().map(str::to_owned));
        }
    }
    all
}

#[test]
fn its_commands_run_and_its_examples_are_right() {
    let lot = new_lot();
    let readme = std::fs::read_to_string(lot.path().join("README.md")).unwrap();
    assert!(readme.starts_with("# Marsh Road Motorhomes"));
    let mut ran = Vec::new();
    for line in blocks(&readme, "sh").iter().flat_map(|block| block.lines()) {
        let args: Vec<String> = words(line)
            .into_iter()
            .skip(1)
            .map(|word| match word.as_str() {
                "." => text(lot.path()).to_owned(),
                "pages" | "play" => {
                    text(&lot.path().join("..").join(format!("{word}-{}", std::process::id()))).to_owned()
                }
                _ => word,
            })
            .collect();
        let args: Vec<&str> = args.iter().map(String::as_str).collect();
        if args.contains(&"--edit") {
            // Opens a window; that it is a line of the kiosk is enough here.
            use clap::Parser as _;
            let cli = sendoff::commands::Cli::try_parse_from(["sendoff"].iter().chain(&args)).unwrap();
            assert!(matches!(cli.task(), sendoff::commands::Task::Kiosk { edit: true, .. }));
            continue;
        }
        let (code, out, err) = run(&args);
        assert_eq!(code, 0, "{line}\n{out}\n{err}");
        ran.push(args.first().copied().unwrap_or_default().to_owned());
        if let Some(out) = args.iter().position(|arg| *arg == "--out").and_then(|at| args.get(at + 1)) {
            std::fs::remove_dir_all(out).unwrap();
        }
    }
    assert_eq!(ran, ["lot", "lot", "check", "figures", "preview", "rehearse"]);

    // The example of `changes`, in the sheet and in the words.
    let (ron, ftl) = (blocks(&readme, "ron").concat(), blocks(&readme, "ftl").concat());
    let sheet = lot.path().join("walkthroughs/units/harrier.ron");
    let before = std::fs::read_to_string(&sheet).unwrap();
    let inner = ron.trim().strip_prefix("changes: [").and_then(|rest| rest.strip_suffix("],")).unwrap();
    // The oven's topic is for units with a cooktop; here the awning's stands in.
    let after = before.replace("    changes: [],", &format!("    changes: [{inner}],"));
    assert_ne!(before, after);
    std::fs::write(&sheet, after).unwrap();
    let own = lot.path().join("i18n/en-US/unit-harrier.ftl");
    let text = std::fs::read_to_string(&own).unwrap();
    std::fs::write(&own, text + &ftl).unwrap();
    assert_eq!(faults(lot.path()), Vec::<String>::new());
}
