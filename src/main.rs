//! Reads arguments and environment, builds the outside world, and starts the kiosk or one command.

use std::path::PathBuf;
use std::process::ExitCode;

use clap::Parser as _;
use sendoff::commands::{self, Cli, Console, Environment, Places, Task};
use sendoff::kiosk;
use sendoff::ports::{Ports, system};
use sendoff::script::Bundle;

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
    let ports = system::ports();
    let environment = environment();
    let mut console = Console::system();
    let code = match cli.task() {
        Task::Command(command) => commands::run(&command, &ports, &environment, &mut console),
        Task::Kiosk { places, archive, edit, windowed } => {
            match open_kiosk(&places, archive, (edit, windowed), &ports, &environment) {
                Ok(()) => commands::GOOD,
                Err(why) => {
                    console.complain(why);
                    commands::COULD_NOT_RUN
                }
            }
        }
    };
    ExitCode::from(code)
}

fn open_kiosk(
    places: &Places,
    archive: Option<PathBuf>,
    (edit, windowed): (bool, bool),
    ports: &Ports,
    environment: &Environment,
) -> Result<(), String> {
    let data = commands::data_folder(places.data.as_deref(), environment)?;
    // A folder that was mistyped is told before there is a window; what is built in is gathered beside it.
    let bundle: kiosk::Gather = match places.lot.as_deref() {
        None => Box::new(Bundle::demo),
        Some(dir) => {
            let read = commands::bundle(ports, Some(dir)).map_err(|e| e.to_string())?;
            Box::new(move || read)
        }
    };
    let edited = places.lot.as_deref().filter(|_| edit);
    let folders = kiosk::Folders { data, archive };
    kiosk::start(ports, bundle, folders, (edited, windowed), environment).map_err(|e| e.to_string())
}

/// What the start of the window depends on. Only `main` reads the environment.
#[expect(clippy::disallowed_methods, reason = "the one place that reads the environment")]
fn environment() -> Vec<(&'static str, String)> {
    ["DISPLAY", "WAYLAND_DISPLAY", "LD_LIBRARY_PATH", "XDG_DATA_HOME", "HOME"]
        .into_iter()
        .filter_map(|name| std::env::var(name).ok().filter(|v| !v.is_empty()).map(|value| (name, value)))
        .collect()
}
