//! Reads arguments and environment, builds the outside world, and starts the kiosk or one command.

use std::process::ExitCode;

use clap::Parser as _;
use sendoff::commands::{self, Cli, Console, Task};

fn main() -> ExitCode {
    let cli = match Cli::try_parse() {
        Ok(cli) => cli,
        Err(help) => {
            let failed = help.use_stderr();
            // Nothing is left to be said when even this cannot be written.
            let _ = help.print();
            return ExitCode::from(if failed { commands::COULD_NOT_RUN } else { commands::GOOD });
        }
    };
    let ports = sendoff::ports::system::ports();
    let mut console = Console::system();
    let code = match cli.task() {
        Task::Kiosk(places) => sendoff::kiosk::start(&ports, &places, &environment(), &mut console),
        Task::Command(command) => commands::run(&command, &ports, &environment(), &mut console),
    };
    ExitCode::from(code)
}

/// What the start of the window depends on. Only `main` reads the environment.
#[expect(clippy::disallowed_methods, reason = "the one place that reads the environment")]
fn environment() -> Vec<(&'static str, String)> {
    ["DISPLAY", "WAYLAND_DISPLAY", "WAYLAND_SOCKET", "XDG_DATA_HOME", "HOME"]
        .into_iter()
        .filter_map(|name| std::env::var(name).ok().filter(|v| !v.is_empty()).map(|value| (name, value)))
        .collect()
}
