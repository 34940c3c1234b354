//! A topic as people write it.

use serde::de::{self, MapAccess, Visitor, value::MapAccessDeserializer};
use serde::{Deserialize, Deserializer};

use crate::source::At;
use crate::unit::{Facts, When};

use super::kinds::{Answers, Ask, Harm, Hazard, Signal};

/// A topic file.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Topic {
    /// Id, as the file is named.
    pub id: At<String>,
    /// Who answers its cautions.
    pub who: Answers,
    /// Equipment it needs.
    #[serde(default, alias = "when?")]
    pub when: Option<When>,
    /// Its steps.
    pub steps: Vec<At<StepForm>>,
}

/// Where a step stands among others.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default, Deserialize)]
pub enum Priority {
    /// Before all others inside: exits and alarms.
    First,
    /// By its place.
    #[default]
    ByPlace,
}

/// One screenful.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StepForm {
    /// Id: the topic's, or the topic's with a suffix.
    pub id: At<String>,
    /// Place of the unit.
    pub place: At<String>,
    /// Minutes it takes.
    pub minutes: u16,
    /// Equipment it needs.
    #[serde(default, alias = "when?")]
    pub when: Option<When>,
    /// Order.
    #[serde(default, alias = "priority?")]
    pub priority: Priority,
    /// Steps it waits for.
    #[serde(default, alias = "after?")]
    pub after: Vec<At<String>>,
    /// Picture.
    #[serde(default, alias = "picture?")]
    pub picture: Option<At<String>>,
    /// Pictures for other equipment: the first whose condition holds is shown instead.
    #[serde(default, alias = "instead?")]
    pub instead: Vec<Guarded>,
    /// Lines that staff show.
    #[serde(default, alias = "show?")]
    pub show: Vec<LineForm>,
    /// What the renter should know.
    #[serde(default, alias = "know?")]
    pub know: Vec<LineForm>,
    /// Readings.
    #[serde(default, alias = "readings?")]
    pub readings: Vec<ReadingRef>,
    /// Figures.
    #[serde(default, alias = "figures?")]
    pub figures: Vec<At<String>>,
    /// Cautions.
    #[serde(default, alias = "cautions?")]
    pub cautions: Vec<At<CautionForm>>,
    /// Loaned items are counted here.
    #[serde(default, alias = "kit?")]
    pub kit: bool,
    /// The leaving check is done here.
    #[serde(default, alias = "leaving?")]
    pub leaving: bool,
}

impl StepForm {
    /// All pictures that it names.
    pub fn pictures(&self) -> impl Iterator<Item = &At<String>> {
        self.picture.iter().chain(self.instead.iter().map(|other| &other.name))
    }
}

/// A caution.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CautionForm {
    /// Id: the topic's with a number.
    pub id: At<String>,
    /// Version of its wording.
    pub version: u16,
    /// Signal word.
    pub signal: Signal,
    /// Hazard.
    pub hazard: Hazard,
    /// Worst harm.
    pub harm: Harm,
    /// How it asks to be answered.
    pub answer: Ask,
    /// Demonstrations that it asks for, one after the other; those for other equipment are left out.
    #[serde(default, alias = "demonstrate?")]
    pub demonstrate: Vec<Guarded>,
    /// Equipment it needs.
    #[serde(default, alias = "when?")]
    pub when: Option<When>,
}

/// Something named alone, or as `(name: "...", when: ...)`.
#[derive(Debug, Clone, PartialEq)]
pub struct Guarded {
    /// Name.
    pub name: At<String>,
    /// Equipment it needs.
    pub when: Option<When>,
}

/// The picture that fits the equipment: the first of `instead` whose condition holds, else `picture`.
#[must_use]
pub fn fitting(instead: &[Guarded], picture: Option<&At<String>>, facts: &Facts) -> Option<String> {
    let fits = |other: &&Guarded| other.when.as_ref().is_none_or(|w| w.holds(facts));
    let other = instead.iter().find(fits).map(|other| &other.name);
    other.or(picture).map(|p| p.value.clone())
}

/// A line of words.
pub type LineForm = Guarded;
/// A reading to take.
pub type ReadingRef = Guarded;

impl<'de> Deserialize<'de> for Guarded {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        #[derive(Deserialize)]
        #[serde(deny_unknown_fields)]
        struct Long {
            #[serde(alias = "line", alias = "id", alias = "picture")]
            name: At<String>,
            #[serde(default, alias = "when?")]
            when: Option<When>,
        }
        struct Either;
        impl<'de> Visitor<'de> for Either {
            type Value = (Option<String>, Option<Long>);
            fn expecting(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                f.write_str("a name in quotes, or (line: \"name\", when: ...)")
            }
            fn visit_str<E: de::Error>(self, name: &str) -> Result<Self::Value, E> {
                Ok((Some(name.to_owned()), None))
            }
            fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<Self::Value, A::Error> {
                Long::deserialize(MapAccessDeserializer::new(map)).map(|long| (None, Some(long)))
            }
        }
        struct Shell(At<(Option<String>, Option<Long>)>);
        impl<'de> Deserialize<'de> for Shell {
            fn deserialize<D: Deserializer<'de>>(d: D) -> Result<Self, D::Error> {
                struct Inner((Option<String>, Option<Long>));
                impl<'de> Deserialize<'de> for Inner {
                    fn deserialize<D: Deserializer<'de>>(d: D) -> Result<Self, D::Error> {
                        d.deserialize_any(Either).map(Inner)
                    }
                }
                At::<Inner>::deserialize(d).map(|at| Self(At { at: at.at, value: at.value.0 }))
            }
        }
        let Shell(At { at, value }) = Shell::deserialize(deserializer)?;
        match value {
            (Some(name), _) => Ok(Self { name: At { at, value: name }, when: None }),
            (None, Some(long)) => Ok(Self { name: long.name, when: long.when }),
            (None, None) => Err(de::Error::custom("nothing is named here")),
        }
    }
}
