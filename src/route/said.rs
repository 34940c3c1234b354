//! The words of a step and of its cautions, as they stand on their pages.

use super::{Caution, Signal, Step};
use crate::script::{CautionText, Speaker, StepText};

impl Speaker<'_> {
    /// A caution as it stands on the page; the same whatever trip is planned.
    #[must_use]
    pub fn caution(&self, caution: &Caution) -> CautionText {
        let part = |part: &str| self.say_steady(&format!("caution-{}{part}", caution.id));
        CautionText {
            title: part(".title"),
            signal: self.say_steady(signal_key(caution.signal)),
            hazard: part(""),
            harm: part(".harm"),
            avoid: part(".avoid"),
        }
    }

    /// A step as it stands on the page.
    #[must_use]
    pub fn step(&self, step: &Step) -> StepText {
        let all = |keys: &[String]| keys.iter().map(|k| self.say(k)).collect();
        StepText {
            title: self.say(&format!("step-{}", step.id)),
            show: all(&step.show),
            know: all(&step.know),
            notes: all(&step.notes),
        }
    }
}

/// Message of a signal word.
fn signal_key(signal: Signal) -> &'static str {
    match signal {
        Signal::Danger => "signal-danger",
        Signal::Warning => "signal-warning",
        Signal::Caution => "signal-caution",
        Signal::Notice => "signal-notice",
    }
}
