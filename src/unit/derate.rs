//! How a generator loses power with height and heat: the rule of its own manual, as data.

use std::fmt;

use serde::Deserialize;

use crate::measure::{Length, Ratio, Temperature};

use super::facts::{FactKind, Value};
use super::section::AsFact;

/// Power lost in the heat, on top of what is lost with height.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HeatLoss {
    /// Temperature up to which nothing is lost.
    pub above: Temperature,
    /// Part lost for each step.
    pub loss: Ratio,
    /// Size of a step: a difference of temperatures, as `5 °C`.
    pub per: Temperature,
}

/// A row of a table.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DerateRow {
    /// Height above the sea.
    pub at: Length,
    /// Part of the rated power that is left.
    pub part: Ratio,
}

/// Which row of a table counts between two heights.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Deserialize)]
pub enum Between {
    /// The last row reached, as manuals print their tables.
    #[default]
    Reached,
    /// The next row, which has less.
    Next,
    /// On the straight line between both.
    Straight,
}

/// The rule.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Derate {
    /// So much less for each part of a height, from a height on.
    Linear {
        /// Height up to which nothing is lost.
        above: Length,
        /// Part of the rated power lost.
        loss: Ratio,
        /// For each of these.
        per: Length,
        /// Loss in the heat, where the manual gives one.
        #[serde(default, alias = "heat?")]
        heat: Option<HeatLoss>,
    },
    /// So much less for each whole step of height.
    Step {
        /// Height up to which nothing is lost.
        above: Length,
        /// Part of the rated power lost.
        loss: Ratio,
        /// For each whole one of these.
        per: Length,
        /// Loss in the heat, where the manual gives one.
        #[serde(default, alias = "heat?")]
        heat: Option<HeatLoss>,
    },
    /// A table by height.
    Table {
        /// Rows, lowest first. Below the first nothing is lost; above the last nothing is known.
        rows: Vec<DerateRow>,
        /// What counts between two rows.
        #[serde(default, alias = "between?")]
        between: Between,
        /// Loss in the heat, where the manual gives one.
        #[serde(default, alias = "heat?")]
        heat: Option<HeatLoss>,
    },
    /// A table by height and temperature, with what humid air takes away. Between two rows or columns the lower
    /// part counts.
    Grid {
        /// Heights of the rows, lowest first.
        heights: Vec<Length>,
        /// Temperatures of the columns, coldest first.
        temperatures: Vec<Temperature>,
        /// Part of the rated power left, a list for each height.
        parts: Vec<Vec<Ratio>>,
        /// Humidity from which a part is taken away, driest first.
        #[serde(default, alias = "humid?")]
        humid: Vec<(Ratio, Ratio)>,
    },
}

impl fmt::Display for Derate {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Linear { above, loss, per, .. } => write!(f, "{loss} for each {per} above {above}"),
            Self::Step { above, loss, per, .. } => write!(f, "{loss} for each whole {per} above {above}"),
            Self::Table { rows, .. } => {
                f.write_str("table:")?;
                rows.iter().try_for_each(|row| write!(f, " {} {};", row.at, row.part))
            }
            Self::Grid { heights, temperatures, .. } => {
                write!(f, "table of {} heights and {} temperatures", heights.len(), temperatures.len())
            }
        }
    }
}

/// The rule as a text; figures read the rule itself.
impl AsFact for Derate {
    const KIND: FactKind = FactKind::Code;
    fn fact(&self) -> Option<Value> {
        Some(Value::Code(self.to_string()))
    }
}
