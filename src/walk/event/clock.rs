//! Times that events speak of.

use jiff::civil::DateTime;
use serde::{Deserialize, Serialize};

/// A local time with its offset from UTC, as a clock on the wall shows it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LocalTime {
    /// Date and time of day.
    pub local: DateTime,
    /// Offset from UTC in minutes, east positive.
    pub offset_minutes: i16,
}
