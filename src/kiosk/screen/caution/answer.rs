//! From an answer to its events. An answer is bound to the very words that were on the page.

use super::{Saving, State, pages};
use crate::kiosk::context::Ctx;
use crate::kiosk::screen::Action;
use crate::route::Caution;
use crate::script::Speaker;
use crate::walk::{Answer, Event, Shown};

/// The words of a caution as they stand on the page.
pub(super) fn shown(speaker: &Speaker<'_>, caution: &Caution) -> Shown {
    Shown { text: speaker.caution(caution).digest(), language: speaker.reader().lang.clone() }
}

/// For how long the page had been whole, in milliseconds.
pub(super) fn looked_ms(ctx: &Ctx<'_>, whole: Option<jiff::Timestamp>) -> u32 {
    let looked = whole.map_or(0, |whole| ctx.now.duration_since(whole).as_millis());
    u32::try_from(looked.max(0)).unwrap_or(u32::MAX)
}

impl State {
    /// Proposes the answer of whoever was chosen to all that stands on the page and waits for them.
    pub(super) fn answer(&mut self, ctx: &Ctx<'_>, how: Answer) -> Action {
        let Some((hall, speaker)) = ctx.hall.zip(ctx.renter()) else { return Action::None };
        let Some((step, cautions)) = self.page(hall) else { return Action::None };
        let Some((by, whole)) = self.person.zip(self.whole) else { return Action::None };
        let looked_ms = looked_ms(ctx, Some(whole));
        let events = cautions
            .into_iter()
            .filter(|c| pages::who_may(&hall.walk, step, c).contains(&by))
            .map(|c| Event::CautionAnswered {
                caution: c.id.clone(),
                version: c.version,
                by,
                how,
                shown: shown(&speaker, c),
                looked_ms,
            })
            .collect();
        self.propose(Saving::Answer, events)
    }
}
