//! Outside tools.

use std::io::Write as _;
use std::process::{Command, Stdio};

/// Whether a tool can be run; says so if not, and fails where tools are required.
pub fn has(tool: &str, probe: &[&str]) -> bool {
    let run = Command::new(tool).args(probe).stdin(Stdio::null()).output();
    let there = if probe.is_empty() { run.is_ok() } else { run.is_ok_and(|out| out.status.success()) };
    if !there {
        let needs = format!("skipped: needs {tool} {}\n", probe.join(" "));
        std::io::stderr().write_all(needs.as_bytes()).unwrap();
        assert!(std::env::var_os("SENDOFF_REQUIRE_TOOLS").is_none_or(|v| v != "1"), "{needs}");
    }
    there
}
