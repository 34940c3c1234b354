//! What a lot folder still holds as it came: it may be for units that the lot does not have yet.

use std::collections::BTreeSet;
use std::sync::LazyLock;

use crate::script::{Bundle, EMBEDDED};

use super::Check;
use super::messages::named;

const UNITS: &str = "walkthroughs/units/";

/// Messages of the embedded lot.
static MESSAGES: LazyLock<BTreeSet<&str>> = LazyLock::new(|| {
    let texts = EMBEDDED.iter().filter(|(name, _)| name.ends_with(".ftl"));
    texts
        .filter_map(|(_, bytes)| std::str::from_utf8(bytes).ok())
        .flat_map(|t| t.lines().filter_map(named))
        .collect()
});

/// Whether a lot has none of the embedded units: then it is one of somebody's own.
fn is_own(lot: &Bundle) -> bool {
    EMBEDDED.iter().filter(|(name, _)| name.starts_with(UNITS)).all(|(name, _)| !lot.has(name))
}

impl Check<'_> {
    /// Whether a file of a lot of one's own is as it came.
    pub(super) fn came_as_it_is(&self, name: &str) -> bool {
        let lot = &self.scripts.bundle;
        let came = EMBEDDED.iter().find(|(known, _)| *known == name).map(|(_, bytes)| *bytes);
        came.is_some() && lot.get(name).map(AsRef::as_ref) == came && is_own(lot)
    }

    /// Whether a lot of one's own came with a message.
    pub(super) fn came_with(&self, key: &str) -> bool {
        let id = key.split_once('.').map_or(key, |(id, _)| id);
        MESSAGES.contains(id) && is_own(&self.scripts.bundle)
    }
}
