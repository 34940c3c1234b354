//! Words that can stand in a script: signal words, hazards, kinds of answers, scales of readings.

use serde::{Deserialize, Serialize};

use super::bound::Bound;

/// Signal word of a caution, as ANSI Z535.4 defines them. Ordered from the mildest to the gravest.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Signal {
    /// Property or money only.
    Notice,
    /// Could cause a minor or moderate injury.
    Caution,
    /// Could kill or badly hurt.
    Warning,
    /// Will kill or badly hurt if not avoided.
    Danger,
}

/// How a caution asks to be answered.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Ask {
    /// One tap.
    Read,
    /// Press and hold.
    Hold,
    /// A demonstration.
    Demonstrate,
}

/// Who must answer the cautions of a topic.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Answers {
    /// One named adult for the party.
    Party,
    /// Each driver.
    EachDriver,
}

/// What is dangerous.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Hazard {
    /// Carbon monoxide.
    CarbonMonoxide,
    /// Fire.
    Fire,
    /// Explosion.
    Explosion,
    /// Electric shock.
    Shock,
    /// Burns and scalds.
    Heat,
    /// Frost.
    Cold,
    /// Fingers or hands between parts.
    Crush,
    /// Sharp or spinning parts.
    Cut,
    /// A fall from a height or over a step.
    Fall,
    /// Something that falls or hits from above.
    Overhead,
    /// Being hit, or hitting something, on the road or the lot.
    Strike,
    /// A crash.
    Crash,
    /// Germs and sewage.
    Germs,
    /// Poison and chemicals.
    Poison,
    /// A room one cannot get out of.
    Trapped,
    /// Strain from lifting or pulling.
    Strain,
    /// Water where it must not be.
    Water,
    /// Wind.
    Wind,
    /// Theft.
    Theft,
    /// Wear and damage.
    Wear,
}

/// The worst that can come of a hazard.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Harm {
    /// Property or money.
    Property,
    /// A minor or moderate injury.
    Minor,
    /// A bad injury.
    Injury,
    /// Death.
    Death,
}

/// What a reading is read in.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Scale {
    /// A decimal number with a measure, in steps, within a sane range. Out of the range nothing can be read; out of
    /// the bounds something is to be done.
    Number {
        /// Symbol of the measure, as `mi`, `h`, `V`, `psi`.
        measure: String,
        /// Smallest step, as `0.1`.
        step: rust_decimal::Decimal,
        /// Smallest sane value.
        min: rust_decimal::Decimal,
        /// Largest sane value.
        max: rust_decimal::Decimal,
        /// Least that is right on the unit.
        #[serde(default, alias = "least?")]
        least: Option<Bound>,
        /// Most that is right on the unit.
        #[serde(default, alias = "most?")]
        most: Option<Bound>,
    },
    /// A gauge in so many parts: `8` reads 0/8 to 8/8.
    Parts(u8),
    /// One of a few words (ids of messages `choice-<id>`).
    Choice(Vec<String>),
}
