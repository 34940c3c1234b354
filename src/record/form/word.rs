//! Words that a record can hold. A word of a newer minor version reads as `Unknown`.

use serde::{Deserialize, Deserializer, Serialize, Serializer};

use crate::{measure, script, unit, walk};

/// Declares sets of words; `from` names the type whose variants they are taken from.
macro_rules! words {
    ($($(#[$meta:meta])* $name:ident from $source:ty {
        $($(#[$vmeta:meta])* $variant:ident = $text:literal,)*
    })*) => {$(
        $(#[$meta])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
        pub enum $name {
            $($(#[$vmeta])* $variant,)*
            /// A word of a newer minor version of the schema; never written.
            Unknown,
        }

        impl $name {
            /// The word as records spell it.
            #[must_use]
            pub const fn as_str(self) -> &'static str {
                match self { $(Self::$variant => $text,)* Self::Unknown => "unknown" }
            }
        }

        impl From<$source> for $name {
            fn from(word: $source) -> Self {
                match word { $(<$source>::$variant => Self::$variant,)* }
            }
        }

        impl Serialize for $name {
            fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.serialize_str(self.as_str())
            }
        }

        impl<'de> Deserialize<'de> for $name {
            fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                Ok(match String::deserialize(deserializer)?.as_str() {
                    $($text => Self::$variant,)*
                    _ => Self::Unknown,
                })
            }
        }
    )*};
}

words! {
    /// How a caution was answered.
    How from walk::Answer {
        /// One tap after reading.
        Read = "read",
        /// Press and hold.
        Hold = "hold",
        /// Two taps on two places, after two holds that were too short.
        TwoTaps = "two-taps",
        /// A demonstration was passed.
        Demonstrate = "demonstrate",
    }
    /// How a caution asks to be answered.
    Asks from script::Ask {
        /// One tap after reading.
        Read = "read",
        /// Press and hold.
        Hold = "hold",
        /// A demonstration.
        Demonstrate = "demonstrate",
    }
    /// Signal word of a caution.
    Signal from script::Signal {
        /// Property or money only.
        Notice = "notice",
        /// Could cause a minor or moderate injury.
        Caution = "caution",
        /// Could kill or badly hurt.
        Warning = "warning",
        /// Will kill or badly hurt if not avoided.
        Danger = "danger",
    }
    /// What is dangerous.
    Hazard from script::Hazard {
        /// Carbon monoxide.
        CarbonMonoxide = "carbon-monoxide",
        /// Fire.
        Fire = "fire",
        /// Explosion.
        Explosion = "explosion",
        /// Electric shock.
        Shock = "shock",
        /// Burns and scalds.
        Heat = "heat",
        /// Frost.
        Cold = "cold",
        /// Fingers or hands between parts.
        Crush = "crush",
        /// Sharp or spinning parts.
        Cut = "cut",
        /// A fall.
        Fall = "fall",
        /// Something from above.
        Overhead = "overhead",
        /// Being hit, or hitting something.
        Strike = "strike",
        /// A crash.
        Crash = "crash",
        /// Germs and sewage.
        Germs = "germs",
        /// Poison and chemicals.
        Poison = "poison",
        /// A room one cannot get out of.
        Trapped = "trapped",
        /// Strain from lifting or pulling.
        Strain = "strain",
        /// Water where it must not be.
        Water = "water",
        /// Wind.
        Wind = "wind",
        /// Theft.
        Theft = "theft",
        /// Wear and damage.
        Wear = "wear",
    }
    /// The worst that can come of a hazard.
    Harm from script::Harm {
        /// Property or money.
        Property = "property",
        /// A minor or moderate injury.
        Minor = "minor",
        /// A bad injury.
        Injury = "injury",
        /// Death.
        Death = "death",
    }
    /// What the agent decided after a refusal.
    Decision from walk::Decision {
        /// The unit goes out all the same.
        HandOver = "hand-over",
        /// The unit stays on the lot.
        KeepUnit = "keep-unit",
    }
    /// Why a step was not shown.
    WhyNotShown from walk::NotShown {
        /// Wind, rain, ice, darkness.
        Weather = "weather",
        /// The renter did not want to see it.
        Declined = "declined",
        /// The renter knows it.
        Known = "known",
        /// Out of order that day.
        OutOfOrder = "out-of-order",
        /// No time.
        NoTime = "no-time",
    }
    /// Why a reading was not taken.
    WhyNotRead from walk::NotRead {
        /// The dial, gauge or sensor did not work.
        Broken = "broken",
        /// It could not be seen or reached.
        Unreachable = "unreachable",
        /// It would have been wrong then.
        WrongMoment = "wrong-moment",
    }
    /// Kind of a condition mark.
    MarkKind from walk::MarkKind {
        /// Scratch.
        Scratch = "scratch",
        /// Dent.
        Dent = "dent",
        /// Chip.
        Chip = "chip",
        /// Crack.
        Crack = "crack",
        /// Stain.
        Stain = "stain",
        /// Tear.
        Tear = "tear",
        /// Something is missing.
        Missing = "missing",
        /// Works, but badly.
        WorksBadly = "works-badly",
    }
    /// Size of a condition mark.
    MarkSize from walk::MarkSize {
        /// Up to a coin.
        Coin = "coin",
        /// Up to a hand.
        Hand = "hand",
        /// Up to an arm.
        Arm = "arm",
        /// Larger.
        Larger = "larger",
    }
    /// How the renter took the copy.
    CopyChoice from walk::CopyChoice {
        /// The slip with id, digest and code.
        Slip = "slip",
        /// A file on a stick.
        Stick = "stick",
        /// None at that time.
        Declined = "declined",
    }
    /// Where a fact came from.
    Origin from unit::Origin {
        /// The unit's data sheet.
        Sheet = "sheet",
        /// The lot's settings.
        Lot = "lot",
    }
    /// How sums are rounded to the cent.
    MoneyRounding from unit::MoneyRounding {
        /// Half away from zero, once per line and once for the tax.
        HalfUp = "half-up",
        /// Half to the even cent.
        HalfEven = "half-even",
    }
    /// In which direction a figure was rounded.
    Rounding from measure::Rounding {
        /// Down.
        Down = "down",
        /// Up.
        Up = "up",
        /// To the nearest, halves up.
        Nearest = "nearest",
        /// Not at all.
        Exact = "exact",
    }
    /// Which gallon the lot means.
    Gallon from measure::Gallon {
        /// 231 cubic inches.
        Us = "us",
        /// 4.546 09 liters.
        Imperial = "imperial",
    }
    /// Where a stop lies.
    Zone from crate::route::Zone {
        /// At the desk.
        Desk = "desk",
        /// Outside.
        Outside = "outside",
        /// Inside.
        Inside = "inside",
        /// In the cab or on the road.
        Leaving = "leaving",
    }
}
