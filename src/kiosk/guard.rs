//! What is checked before the window opens, so that a missing display or library ends in a sentence and not in
//! a panic of the toolkit. Pure: the environment and the folders come in as arguments.

pub mod picture;

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::{Path, PathBuf};

/// The packages that hold the libraries the window needs, as Debian and its kin name them.
pub const PACKAGES: &str = "libx11-6 libx11-xcb1 libxcursor1 libxi6 libxkbcommon-x11-0";

/// The libraries the toolkit loads when it opens a window.
pub const LIBRARIES: [&str; 5] =
    ["libX11.so.6", "libX11-xcb.so.1", "libXcursor.so.1", "libXi.so.6", "libxkbcommon-x11.so.0"];

/// Why the window cannot open.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum StartFault {
    /// There is no screen.
    #[error(
        "there is no display: DISPLAY is not set. Start the kiosk in a desktop session, or use \
         'sendoff rehearse', which needs no screen"
    )]
    NoDisplay,
    /// There is a Wayland screen only.
    #[error(
        "there is a Wayland display but no X display, which the kiosk draws to: DISPLAY is not set. Start it \
         with Xwayland, or use 'sendoff rehearse', which needs no screen"
    )]
    WaylandOnly,
    /// Libraries are missing.
    #[error(
        "the window needs libraries that are not installed: {}. On Debian and its kin: apt-get install \
         {PACKAGES}. 'sendoff rehearse' works without them", missing.join(", ")
    )]
    NoLibraries {
        /// Their file names.
        missing: Vec<&'static str>,
    },
    /// The toolkit gave up.
    #[error(
        "the window could not be opened or kept open: {said}. Check that DISPLAY names a screen that is there; \
         'sendoff rehearse' needs none"
    )]
    Window {
        /// What the toolkit said.
        said: String,
    },
}

/// Checks that a window can be opened: `display` and `wayland` are the values of `DISPLAY` and
/// `WAYLAND_DISPLAY`, `has_library` says whether a library of that file name can be loaded.
///
/// # Errors
/// Says what is missing and what to do about it.
pub fn start(
    display: Option<&str>,
    wayland: Option<&str>,
    has_library: impl Fn(&str) -> bool,
) -> Result<(), StartFault> {
    let set = |value: Option<&str>| value.is_some_and(|value| !value.is_empty());
    if !set(display) {
        return Err(if set(wayland) { StartFault::WaylandOnly } else { StartFault::NoDisplay });
    }
    let missing: Vec<_> = LIBRARIES.into_iter().filter(|name| !has_library(name)).collect();
    if missing.is_empty() { Ok(()) } else { Err(StartFault::NoLibraries { missing }) }
}

/// Where a loader looks for libraries.
#[derive(Debug, Clone, Default)]
pub struct Libraries {
    /// The bytes of `/etc/ld.so.cache`, where there is one.
    pub cache: Option<Vec<u8>>,
    /// The value of `LD_LIBRARY_PATH`.
    pub path: Option<String>,
}

impl Libraries {
    /// Whether a library can be found: in the loader's cache, its path or the usual folders. Where the system
    /// has neither a cache nor one of these folders, it is laid out in a way not known here, and is trusted.
    pub fn has(&self, name: &str, exists: impl Fn(&Path) -> bool) -> bool {
        if self.cache.as_deref().is_some_and(|cache| lists(cache, name)) {
            return true;
        }
        let folders = self.folders();
        if folders.iter().any(|folder| exists(&folder.join(name))) {
            return true;
        }
        self.cache.is_none() && !folders.iter().any(|folder| exists(folder))
    }

    fn folders(&self) -> Vec<PathBuf> {
        let own =
            self.path.iter().flat_map(|path| path.split([':', ';'])).filter(|folder| !folder.is_empty());
        let mut folders: Vec<PathBuf> = own.map(PathBuf::from).collect();
        for root in ["/lib", "/usr/lib", "/usr/local/lib"] {
            let root = Path::new(root);
            folders.push(root.to_owned());
            for machine in
                ["x86_64-linux-gnu", "aarch64-linux-gnu", "arm-linux-gnueabihf", "riscv64-linux-gnu"]
            {
                folders.push(root.join(machine));
            }
        }
        folders.extend(["/lib64", "/usr/lib64"].map(PathBuf::from));
        folders
    }
}

/// Whether the loader's cache names a library: names stand in it between zero bytes.
fn lists(cache: &[u8], name: &str) -> bool {
    cache.split(|byte| *byte == 0).any(|entry| entry == name.as_bytes())
}

/// Runs the window; a panic of the toolkit becomes a fault that can be printed.
///
/// # Errors
/// The toolkit could not open the window, or gave up later.
pub fn run(window: impl FnOnce() -> iced::Result) -> Result<(), StartFault> {
    let said = match catch_unwind(AssertUnwindSafe(window)) {
        Ok(Ok(())) => return Ok(()),
        Ok(Err(error)) => error.to_string(),
        Err(panic) => panic
            .downcast_ref::<String>()
            .cloned()
            .or_else(|| panic.downcast_ref::<&str>().map(|said| (*said).to_owned()))
            .unwrap_or_else(|| "it panicked".to_owned()),
    };
    Err(StartFault::Window { said })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn without_a_display_it_says_what_works_instead() {
        let fault = start(None, None, |_| true).unwrap_err();
        assert_eq!(fault, StartFault::NoDisplay);
        assert!(fault.to_string().contains("sendoff rehearse"));
        assert_eq!(start(Some(""), None, |_| true), Err(StartFault::NoDisplay));
        assert_eq!(start(None, Some("wayland-0"), |_| true), Err(StartFault::WaylandOnly));
        assert_eq!(start(Some(":0"), None, |_| true), Ok(()));
    }

    #[test]
    fn a_missing_keyboard_library_is_named_with_its_package() {
        let fault = start(Some(":0"), None, |name| name != "libxkbcommon-x11.so.0").unwrap_err();
        let text = fault.to_string();
        assert!(text.contains("libxkbcommon-x11.so.0") && !text.contains("libXi.so.6"));
        assert!(text.contains("apt-get install libx11-6 libx11-xcb1 libxcursor1 libxi6 libxkbcommon-x11-0"));
        assert!(text.contains("sendoff rehearse"));
    }

    #[test]
    fn libraries_are_found_in_cache_path_and_folders() {
        let cache = b"glibc-ld.so.cache1.1\0libX11.so.6\0/lib/x86_64-linux-gnu/libX11.so.6\0".to_vec();
        let libraries = Libraries { cache: Some(cache), path: Some("/opt/x/lib".into()) };
        assert!(libraries.has("libX11.so.6", |_| false));
        assert!(!libraries.has("libX11.so", |_| false));
        assert!(libraries.has("libXi.so.6", |path| path == Path::new("/opt/x/lib/libXi.so.6")));
        assert!(libraries.has("libXi.so.6", |path| path == Path::new("/usr/lib64/libXi.so.6")));
        assert!(!libraries.has("libXi.so.6", |_| false));
    }

    #[test]
    fn an_unknown_layout_is_trusted() {
        assert!(Libraries::default().has("libXi.so.6", |_| false));
        assert!(!Libraries::default().has("libXi.so.6", |path| path == Path::new("/usr/lib")));
    }

    #[test]
    fn a_panic_of_the_toolkit_becomes_a_sentence() {
        let fault = run(|| panic!("Create event loop: XNotSupported")).unwrap_err();
        assert!(fault.to_string().contains("XNotSupported"));
    }
}
